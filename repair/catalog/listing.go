package catalog

import (
	"fmt"
	"strings"
)

// Listed is one entry with the name it goes by.
type Listed struct {
	Class, Name string
	Entry       any // a Cloth, a Resin, ...
}

// Group is the entries of one sort.
type Group struct {
	Name    string
	Entries []Listed
}

// Groups lists everything in the catalogue, sort by sort, in its own order.
func (c Catalogue) Groups() []Group {
	var cloths, catalysts, resins, gelcoats, fillers, barriers, cores, rest []Listed
	for _, x := range c.Cloths {
		cloths = append(cloths, Listed{x.Class, x.Name, x})
	}
	for _, x := range c.Resins {
		resins = append(resins, Listed{x.Class, x.Name, x})
	}
	for _, x := range c.Catalysts {
		catalysts = append(catalysts, Listed{x.Class, x.Name, x})
	}
	for _, x := range c.Gelcoats {
		gelcoats = append(gelcoats, Listed{x.Class, x.Name, x})
	}
	for _, x := range c.Fillers {
		fillers = append(fillers, Listed{x.Class, x.Name, x})
	}
	for _, x := range c.Barriers {
		barriers = append(barriers, Listed{x.Class, x.Name, x})
	}
	for _, x := range c.Cores {
		cores = append(cores, Listed{x.Class, x.Name, x})
	}
	for _, x := range c.Consumables {
		rest = append(rest, Listed{x.Class, x.Name, x})
	}
	return []Group{
		{"reinforcement (shelf.cloth, laminate.plies)", cloths}, {"resin (shelf.resin)", resins}, {"catalyst (shelf.hardener)", catalysts},
		{"gelcoat (shelf.gelcoat)", gelcoats}, {"fairing compound (shelf.filler)", fillers}, {"barrier coat (shelf.barrier)", barriers},
		{"core (laminate.core)", cores}, {"consumables", rest},
	}
}

// Classes lists every class and sheet name, in the catalogue's order.
func (c Catalogue) Classes() []string {
	var out []string
	for _, g := range c.Groups() {
		for _, e := range g.Entries {
			out = append(out, e.Class)
		}
	}
	return out
}

// Entry returns the entry of a class, whatever its sort.
func (c Catalogue) Entry(class string) (Listed, error) {
	for _, g := range c.Groups() {
		for _, e := range g.Entries {
			if e.Class == class {
				return e, nil
			}
		}
	}
	classes := c.Classes()
	hint := ""
	if near := nearest(class, classes); near != "" {
		hint = fmt.Sprintf(" Did you mean %q?", near)
	}
	return Listed{}, fmt.Errorf("nothing is called %q.%s The classes are: %s", class, hint, strings.Join(classes, ", "))
}
