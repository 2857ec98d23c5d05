package repair

import (
	"fmt"

	"scarfwright/repair/catalog"
	"scarfwright/repair/estimate"
	"scarfwright/repair/finish"
	"scarfwright/repair/job"
)

// Spares on cloth and core (common practice, no source). Pieces are reckoned as
// the rectangles round them: how they lie on the roll is not worked out yet.
const clothSpare = 1.05

// needs lists every material with what the plan takes, what is in stock and
// what is on sale.
func needs(d job.Description, r Result, cat catalog.Catalogue) ([]estimate.Need, error) {
	var out []estimate.Need
	add := func(class, name, unit string, amount float64) {
		if class == "" || amount <= 0 {
			return
		}
		for i := range out {
			if out[i].Class == class {
				out[i].Amount += amount
				return
			}
		}
		n := estimate.Need{Class: class, Name: name, Unit: unit, Amount: amount}
		n.Stock, n.StockNote = stock(d.Shelf.Stock, class, unit)
		n.OnSale = estimate.OnSale(d, cat, class, unit)
		out = append(out, n)
	}
	if ds := r.Design; ds != nil {
		for _, p := range ds.Plies {
			add(p.Class, p.Name, "m²", p.Width.Times(p.Height).M2()*clothSpare)
		}
		if ds.Core != nil {
			add(ds.Core.Class, ds.Core.Name, "m²", ds.Core.Area.M2()*clothSpare)
			add("core-bedding-paste", "bedding paste for the core", "g", ds.Core.Paste.Grams()*clothSpare)
		}
		if ds.Backing != nil {
			add("backing-skin", "thin laminate for the backing, made beforehand", "m²", ds.Backing.Width.Times(ds.Backing.Height).M2()*clothSpare)
		}
	}
	if m := r.Mixing; m != nil {
		resin, err := cat.Resin(d.Shelf.Resin)
		if err != nil {
			return nil, err
		}
		if resin.Catalysed() {
			add(d.Shelf.Resin, resin.Name, "g", m.Mixed.Resin.Grams())
			add(finish.CatalystClass(d), "catalyst", "ml", m.Mixed.SecondVolume.ML())
		} else {
			// A pack of epoxy holds both parts in their ratio.
			add(d.Shelf.Resin, resin.Name+" (both parts)", "g", m.Mixed.Mixed.Grams())
		}
	}
	if f := r.Finish; f.Fairing > 0 && d.Shelf.Filler == "" {
		add("fairing-compound", "fairing compound, none named on the shelf", "ml", f.Fairing.ML())
	} else if f.Fairing > 0 {
		fl, err := cat.Filler(d.Shelf.Filler)
		if err != nil {
			return nil, fmt.Errorf("shelf.filler: %w", err)
		}
		add(d.Shelf.Filler, fl.Name, "ml", f.Fairing.ML())
	}
	if b := r.Finish.Barrier; b != nil {
		add(b.Class, b.Name, "ml", b.Volume.ML())
	}
	if c := r.Finish.Coat; c != nil {
		add(c.Class, c.Name, "g", c.Mass.Grams())
		add(finish.CatalystClass(d), "catalyst", "ml", c.CatalystVolume.ML())
	}
	if p := r.Finish.Paste; p != nil {
		class := finish.PasteClass(d)
		g, err := cat.Gelcoat(class)
		if err != nil {
			return nil, fmt.Errorf("shelf.gelcoat: %w", err)
		}
		add(class, g.Name, "g", p.Mixed.Grams())
		add(finish.CatalystClass(d), "catalyst", "ml", p.CatalystVolume.ML())
	}
	return out, nil
}

// stock adds up what is left of a class in the wanted unit.
func stock(ss []job.Stock, class, unit string) (amount float64, note string) {
	note = "none given in stock: measure what is on the shelf"
	for _, s := range ss {
		if s.Class != class {
			continue
		}
		left := s.Area.M2()
		switch unit {
		case "g":
			left = s.Mass.Grams()
		case "ml":
			left = s.Volume.ML()
		}
		switch amount += left; {
		case left == 0:
			note = "in stock, but listed by another measure than " + unit + ", so not counted"
		case s.Age > 0:
			note = fmt.Sprintf("lot is %.0f days old", s.Age.Days())
		default:
			note = "age unknown"
		}
	}
	return amount, note
}
