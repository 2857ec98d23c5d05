package curing

import (
	"slices"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// Lamp warms the new face: before the plies are laid and, from a time on, again.
// The zero Lamp is none.
//
// What is known of it is how much warmer it makes the bare face. The heat that
// takes runs off through the face and through the stack, so that the face's air is
// entered as warmer by
//
//	dT (1 + 1/(h R)),   R = sum t/k + 1/h behind the face
//
// A lamp over a thin skin is stronger than one that warms the same face on foam.
type Lamp struct {
	Warmer si.TempDiff // of the bare face
	From   si.Time     // since laying; taken away until then
	Lasts  si.Time     // from From on
}

// fades is how long the face takes to cool once the lamp is off, and to warm again (our
// own figure: some minutes for a few millimetres of laminate).
const fades = si.Time(600)

// at is how much of the warmth is there at a time since laying, 0 to 1.
func (l Lamp) at(t si.Time) float64 {
	ramp := func(from si.Time) float64 { return min(1, max(0, float64((t-from)/fades))) }
	on := 1 - ramp(l.From+l.Lasts)
	if l.From > 0 {
		on = min(on, max(1-ramp(0), ramp(l.From)))
	}
	return on
}

// moments are the whole hours of a fortnight, and those at which the lamp comes and goes.
func (l Lamp) moments() []si.Time {
	off := l.From + l.Lasts
	out := []si.Time{fades, l.From, l.From + fades, off, off + fades}
	for i := range 14*24 + 1 {
		out = append(out, si.Hours(float64(i)))
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// face is the air before the new face with the lamp's heat in it.
func (a Air) face(under []heat.Layer) heat.History {
	l := a.Lamp
	if l.Warmer <= 0 {
		return a.History
	}
	h := float64(faceHeatTransfer)
	R := 1 / h
	for _, x := range under {
		R += float64(x.Thickness) / float64(x.Conductivity)
	}
	full := si.Scale(l.Warmer, 1+1/(h*R))
	var out []heat.Moment
	for _, t := range l.moments() {
		out = append(out, heat.Moment{Time: t, Temp: a.History.At(t).Add(si.Scale(full, l.at(t)))})
	}
	return heat.Series(out...)
}

// start is how warm everything is when it is laid.
func (a Air) start() si.Temp { return a.Start.Add(a.Lamp.Warmer) }

// Film is the temperature a thin film follows: the hull's, under the lamp.
func (a Air) Film() (kinetics.History, error) {
	l := a.Lamp
	if l.Warmer <= 0 {
		return a.Hull, nil
	}
	var out []kinetics.Knot
	for _, t := range l.moments() {
		out = append(out, kinetics.Knot{Time: t, Temp: a.Hull.At(t).Add(si.Scale(l.Warmer, l.at(t)))})
	}
	return kinetics.NewHistory(out...)
}
