package curing

import (
	"fmt"
	"math"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/design"
)

// run is how long a session is followed through its thickness.
var run = si.Hours(30)

// ownHours is how long a session may be hot by its own doing; what comes later is
// the weather's.
var ownHours = si.Hours(6)

// cells through the whole stack: twice as many change a demo job's peak by less
// than half a kelvin.
const cells = 40

// fresh reports a law whose state begins at -1: an inhibitor is used up first.
// The heat solver's degree runs from 0 to 1, so there the state is halved and
// moved, and no heat is given off in the first half.
func (r Resin) inhibited() bool { return kinetics.Fresh(r.law) < 0 }

// state returns the law's state of a degree of the heat solver, and toDegree the
// other way round.
func (r Resin) state(u float64) float64 {
	if r.inhibited() {
		return 2*u - 1
	}
	return u
}

func (r Resin) toDegree(s float64) float64 {
	if r.inhibited() {
		return (s + 1) / 2
	}
	return s
}

func (r Resin) seed() float64 { return r.toDegree(kinetics.Fresh(r.law)) }

// reaction returns the resin's law as the heat solver wants it. H is the heat per
// kilogram of laminate, not of resin.
func (r Resin) reaction(H si.SpecificEnergy) *heat.Reaction {
	scale := 1.0
	out := &heat.Reaction{Heat: H}
	if r.inhibited() {
		scale, out.Quiet = 0.5, 0.5
	}
	out.Rate = func(u, T float64) float64 { return scale * r.law.Rate(r.state(u), si.Temp(T)) }
	for _, b := range kinetics.Breaks(r.law) {
		out.Breaks = append(out.Breaks, r.toDegree(b))
	}
	return out
}

// stack is a session's wet plies on what lies under them, between the air of both faces.
func stack(plies []design.Ply, under []heat.Layer, r Resin, air Air, long si.Time, cells int) *heat.Slab {
	return &heat.Slab{
		Layers: append([]heat.Layer{wet(plies, r)}, under...), Start: air.start(), For: long, Cells: cells,
		First: heat.Convective(faceHeatTransfer, air.face(under)), Last: heat.Convective(faceHeatTransfer, air.History),
	}
}

// follow runs one session's stack: plies over what lies behind them.
func follow(w *heat.Workspace, plies []design.Ply, under []heat.Layer, names []Named, r Resin, air Air) (Session, error) {
	slab := stack(plies, under, r, air, run, cells)
	layer := slab.Layers[0]
	res, err := slab.Run(w)
	if err != nil {
		return Session{}, fmt.Errorf("the heat of the laminate: %w", err)
	}
	s := Session{
		Day: air.Day, Hour: air.Hour, Thickness: layer.Thickness, Start: air.start(),
		Layers: append([]Named{{"new plies", layer.Thickness, true}}, names...),
	}
	for _, p := range plies {
		s.Plies = append(s.Plies, p.Label)
	}
	peak := res.PeakIn(0)
	s.Peak, s.PeakAfter = peak.Temp, peak.Time
	s.Behind = res.PeakAt(layer.Thickness).Temp
	if res.Coarse {
		s.Coarse = res.Warning
	}
	last := func(state float64) si.Time {
		if _, t, ok := res.Throughout(0, r.toDegree(state)); ok {
			return t
		}
		return 0
	}
	s.Gel = last(r.Model.GelAt())
	s.curves(res, layer.Thickness, r, air)
	for i, at := range s.Curves[0].Time {
		if T := s.Curves[0].Temp[i]; at <= ownHours && T > s.Own {
			s.Own, s.OwnAfter = T, at
		}
	}
	if s.PeakAfter <= ownHours {
		s.Own, s.OwnAfter = s.Peak, s.PeakAfter
	}
	for _, x := range res.Depths() {
		s.Profile = append(s.Profile, Through{x, res.TempAt(x, s.OwnAfter)})
	}
	return s, nil
}

// curves samples the run for the pictures: every five minutes while it is
// hottest, every half hour after.
func (s *Session) curves(res *heat.Result, t si.Length, r Resin, air Air) {
	mid, back, out := Curve{Name: "middle of the new laminate"}, Curve{Name: "behind it"}, Curve{Name: "air"}
	for i := 0; ; i++ {
		at := si.Minutes(5 * float64(i))
		if i > 48 {
			at = si.Hours(4) + si.Minutes(30*float64(i-48))
		}
		if at > run {
			break
		}
		for _, c := range []struct {
			*Curve
			T si.Temp
		}{{&mid, res.TempAt(t/2, at)}, {&back, res.TempAt(t, at)}, {&out, air.History.At(at)}} {
			c.Time, c.Temp = append(c.Time, at), append(c.Temp, c.T)
		}
		s.Degree.Time = append(s.Degree.Time, at)
		s.Degree.Degree = append(s.Degree.Degree, si.Ratio(math.Max(0, r.state(res.DegreeAt(t/2, at)))))
	}
	s.Curves = []Curve{mid, back, out}
}
