package proof

import (
	"scarfwright/physics/heat"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/cure"
)

// trade holds what the fitted catalogue entries say against what the trade goes
// by. Times of the trade are spans: the middle is expected, half the span allowed.
func trade() []Check {
	cat := catalog.Default()
	g := group{name: "cure of the catalogue's entries, against common practice", source: "common practice, no source", provenance: Practice}
	row := func(what string, middle, half float64, unit string, ours func() (float64, error)) {
		g.abs = half
		x, err := ours()
		if g.add(what, middle, x, unit); err != nil {
			g.rows[len(g.rows)-1].Err = err.Error()
		}
	}
	sandable := func(p catalog.TwoPart, kind cure.Kind, celsius float64, dose si.Ratio) (si.Time, error) {
		m, err := cure.Fit(cure.FromCatalogue(p, kind))
		if err != nil {
			return 0, err
		}
		film, err := m.Film(si.Celsius(celsius), dose, cure.ToSandable)
		return film.Likely, err
	}
	row("light epoxy filler at 21 °C is sandable after 4 to 5 h", 4.5, 0.5, "h", func() (float64, error) {
		x, err := cat.Filler("epoxy-filler-light")
		if err != nil {
			return 0, err
		}
		t, err := sandable(x.TwoPart, cure.Putty, 21, 0)
		return t.Hours(), err
	})
	for _, class := range []string{"epoxy-fast", "epoxy-slow"} {
		row(class+" left for 24 h at 20 °C is sanded: sandable between 0 and 24 h", 12, 12, "h", func() (float64, error) {
			x, err := cat.Resin(class)
			if err != nil {
				return 0, err
			}
			t, err := sandable(x.TwoPart, cure.Epoxy, 20, 0)
			return t.Hours(), err
		})
	}
	paste, missing := cat.Gelcoat("gelcoat-paste")
	row("gelcoat paste with 2.5 % is workable for about 5 min at 20 °C, within a minute", 5, 1, "min", func() (float64, error) {
		if missing != nil {
			return 0, missing
		}
		m, err := cure.Fit(cure.FromCatalogue(paste.TwoPart, cure.Polyester))
		if err != nil {
			return 0, err
		}
		t, err := m.Working(cure.Batch{Mass: si.Grams(50), Vessel: heat.StraightCup(si.MM(75)), Air: si.Celsius(20), Dose: si.Percent(2.5)})
		return t.Likely.Minutes(), err
	})
	row("gelcoat paste is ready to sand after about 60 min, within 10", 60, 10, "min", func() (float64, error) {
		if missing != nil {
			return 0, missing
		}
		t, err := sandable(paste.TwoPart, cure.Polyester, 20, si.Percent(2.5))
		return t.Minutes(), err
	})
	return g.rows
}
