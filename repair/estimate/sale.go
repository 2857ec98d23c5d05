package estimate

import (
	"slices"

	"scarfwright/repair/catalog"
	"scarfwright/repair/job"
)

// OnSale returns the packs of a class in the wanted unit: the job's own prices
// where there are any, the catalogue's otherwise. Cloth and core are sold by
// the half square metre.
func OnSale(d job.Description, cat catalog.Catalogue, class, unit string) []Pack {
	packs := slices.DeleteFunc(slices.Clone(d.Shelf.Packs), func(p job.Pack) bool { return p.Class != class })
	if len(packs) == 0 {
		packs = cat.Packs(class)
	}
	var out []Pack
	for _, p := range packs {
		size := p.Area.M2()
		switch unit {
		case "g":
			size = p.Mass.Grams()
		case "ml":
			size = p.Volume.ML()
		}
		if size > 0 {
			out = append(out, Pack{Size: size, Price: p.Price})
		}
	}
	if c, err := cat.Cloth(class); err == nil && len(out) == 0 && c.Price > 0 {
		out = append(out, Pack{Size: 0.5, Price: c.Price / 2})
	}
	if c, err := cat.Core(class); err == nil && len(out) == 0 && c.Price > 0 {
		out = append(out, Pack{Size: 0.5, Price: c.Price / 2})
	}
	return out
}
