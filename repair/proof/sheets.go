package proof

import (
	"fmt"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/cure"
)

// sheets fits two invented data sheets, as another least-squares program did, with
// the same laws and priors.
func sheets() []Check {
	type pot struct{ celsius, grams, minutes float64 }
	var out []group
	for _, row := range []struct {
		name            string
		kind            cure.Kind
		pot, film, sand si.Time    // on the sheet
		fit             [3]float64 // min, h, h
		pots            []pot
		peak, day, week float64
	}{
		{"invented sheet A, laminating epoxy", cure.Epoxy, si.Minutes(35), si.Hours(4.5), si.Hours(9), [3]float64{35.5, 4.47, 8.79},
			[]pot{{20, 50, 75}, {20, 100, 57}, {20, 400, 48}, {30, 100, 23.5}}, 177, 0.791, 0.825},
		{"invented sheet B, putty in equal parts", cure.Putty, si.Minutes(30), si.Hours(2.2), si.Hours(5), [3]float64{29.9, 2.30, 4.89},
			[]pot{{20, 100, 47}, {30, 100, 20}}, 97, 0.805, 0.835},
	} {
		g := group{name: row.name, source: "maximum a posteriori with the priors of repair/cure; trust region, BDF", provenance: ComputedScipy, rel: 0.05}
		m, err := cure.Fit(cure.Sheet{
			Name: row.name, Kind: row.kind,
			Pots:     []cure.Pot{{At: si.Celsius(25), Time: row.pot}},
			FilmGel:  []cure.Film{{At: si.Celsius(20), Time: row.film}},
			Sandable: []cure.Film{{At: si.Celsius(20), Time: row.sand}},
		})
		if err != nil {
			g.add("fit", row.fit[0], 0, "min").rows[0].Err = err.Error()
			out = append(out, g)
			continue
		}
		fit := m.Misfit() // in the order of the sheet above
		g.add("fit: 100 g at 25 °C gels", row.fit[0], fit[0].Model/60, "min").
			add("fit: film gels at 20 °C", row.fit[1], fit[1].Model/3600, "h").
			add("fit: sandable at 20 °C", row.fit[2], fit[2].Model/3600, "h")
		add := func(what string, want, ours float64, unit string, err error) {
			if g.add(what, want, ours, unit); err != nil {
				g.rows[len(g.rows)-1].Err = err.Error()
			}
		}
		cup := heat.StraightCup(si.MM(75))
		for _, p := range row.pots {
			got, err := m.Pot(cure.Batch{Mass: si.Grams(p.grams), Vessel: cup, Air: si.Celsius(p.celsius), Dose: 0})
			add(fmt.Sprintf("predicted: %g g at %g °C gels", p.grams, p.celsius), p.minutes, got.Gel.Likely.Minutes(), "min", err)
		}
		got, err := m.Pot(cure.Batch{Mass: si.Grams(100), Vessel: cup, Air: si.Celsius(25), Dose: 0})
		add("predicted: peak of 100 g at 25 °C", row.peak, got.Peak.Likely.Celsius(), "°C", err)
		h, err := kinetics.Constant(si.Celsius(20))
		var r cure.Reached
		if err == nil {
			r, err = m.Reaches(h, 0)
		}
		add("predicted: degree of cure after a day at 20 °C", row.day, r.AfterDay.Degree.Likely, "", err)
		add("predicted: after a week: it has stopped short", row.week, r.AfterWeek.Degree.Likely, "", err)
		out = append(out, g)
	}
	return concat(out...)
}
