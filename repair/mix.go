package repair

import (
	"cmp"
	"fmt"
	"math"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/design"
	"scarfwright/repair/job"
	"scarfwright/repair/mixing"
)

// mix doses the plies session by session, each at the temperature of its hours.
func mix(d job.Description, ds design.Result, resin catalog.Resin, at func(session int) si.Temp, own mixing.Pot) (mixing.Result, mixing.MixTable, error) {
	o := mixing.Options{
		At: at(1), Start: d.Site.Mix, Dose: d.Choices.Dose, Waste: d.Choices.Waste, Largest: d.Choices.Batch,
		People: d.Crew.People, WetOut: d.Crew.WetOut, Scale: d.Shelf.Scale, Syringe: d.Shelf.Syringe, Pot: own, System: d.Choices.System(),
	}
	var sessions []mixing.Need
	for _, p := range ds.Plies {
		for len(sessions) < p.Session {
			sessions = append(sessions, mixing.Need{Name: fmt.Sprintf("session %d", len(sessions)+1), At: at(len(sessions) + 1)})
		}
		s := &sessions[p.Session-1]
		s.Plies = append(s.Plies, mixing.PlyNeed{Label: p.Label, Resin: p.Resin, Area: p.Area})
	}
	m, err := mixing.Plan(sessions, resin, o)
	if err != nil {
		return mixing.Result{}, mixing.MixTable{}, err
	}
	if err := mixing.CheckDose(resin.TwoPart, cmp.Or(o.Dose, resin.Dose.Typical)); err != nil {
		return m, mixing.MixTable{}, nil // the verdict stands; no wall table for a dose the sheet forbids
	}
	t, err := mixing.Table(resin.TwoPart, o, wallTemps(at(1)), wallSizes(resin.TwoPart))
	return m, t, err
}

// wallTemps are five temperatures round the day's, in steps of 5 K.
func wallTemps(at si.Temp) []si.Temp {
	from := 5*math.Floor(at.Celsius()/5) - 5
	out := make([]si.Temp, 5)
	for i := range out {
		out[i] = si.Celsius(from + 5*float64(i))
	}
	return out
}

// wallSizes are five batches with a round mass of resin, which is what is poured first.
func wallSizes(p catalog.TwoPart) []si.Mass {
	both := 1.0
	if !p.Catalysed() {
		both += p.PerHundred.Typical / 100
	}
	out := []si.Mass{si.Grams(50), si.Grams(100), si.Grams(200), si.Grams(300), si.Grams(500)}
	for i := range out {
		out[i] = si.Scale(out[i], both)
	}
	return out
}
