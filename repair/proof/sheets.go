package proof

import (
	"fmt"
	"slices"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/cure"
)

// sheets fits three invented data sheets, as another least-squares program did, with
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
	return concat(append(out, polyesterSheet())...)
}

// polyesterSheet fits the third invented sheet. Its fit has several optima, and the best
// of six starts is compared, which the other program found too.
func polyesterSheet() group {
	g := group{name: "invented sheet C, polyester", source: "maximum a posteriori with the priors of repair/cure, best of six starts; trust region, BDF", provenance: ComputedScipy, rel: 0.02}
	pot := func(celsius float64, dose si.Ratio, minutes float64) cure.Pot {
		return cure.Pot{At: si.Celsius(celsius), Dose: dose, Time: si.Minutes(minutes)}
	}
	m, err := cure.Fit(cure.Sheet{
		Name: g.name, Kind: cure.Polyester, DoseLow: 0.01, DoseHigh: 0.03,
		Pots:  []cure.Pot{pot(25, 0.02, 15), pot(20, 0.02, 21), pot(25, 0.01, 27)},
		Peaks: []cure.PeakSeen{{At: si.Celsius(25), Dose: 0.02, Peak: si.Celsius(150), When: si.Minutes(26)}},
	})
	if err != nil {
		g.add("fit", 14.9, 0, "min").rows[0].Err = err.Error()
		return g
	}
	fit := m.Misfit() // in the order of the sheet above
	return *g.add("fit: 100 g at 25 °C, 2 %, gels: the sheet says 15 min", 14.9, fit[0].Model/60, "min").
		add("fit: at 20 °C, 2 %: the sheet says 21 min", 21.3, fit[1].Model/60, "min").
		add("fit: at 25 °C, 1 %: the sheet says 27 min", 27.2, fit[2].Model/60, "min").
		add("fit: peak at 25 °C, 2 %: the sheet says 150 °C", 152, fit[3].Model+25, "°C").
		add("fit: time of that peak: the sheet says 26 min", 25.6, fit[4].Model/60, "min").
		add("half the sum of squares", 1.35, slices.Min(m.Costs())/2, "")
}
