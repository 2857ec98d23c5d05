package heat_test

import (
	"math"
	"strings"
	"testing"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
)

// Each refusal names what was wrong.
func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		want  string
		spoil func(*heat.Slab)
	}{
		{"no layer", func(s *heat.Slab) { s.Layers = nil }},
		{"layer 1: thickness", func(s *heat.Slab) { s.Layers[0].Thickness = 0 }},
		{"layer 1: conductivity", func(s *heat.Slab) { s.Layers[0].Conductivity = -1 }},
		{"layer 1: density", func(s *heat.Slab) { s.Layers[0].Density = si.Density(math.NaN()) }},
		{"layer 1: specific heat", func(s *heat.Slab) { s.Layers[0].SpecificHeat = si.SpecificHeat(math.Inf(1)) }},
		{"layer 1: start", func(s *heat.Slab) { s.Start = 0 }},
		{"layer 1: degree", func(s *heat.Slab) { s.Layers[0].Seed = 1.5 }},
		{"no rate", func(s *heat.Slab) { s.Layers[0].Reaction = &heat.Reaction{} }},
		{"heat", func(s *heat.Slab) { s.Layers[0].Reaction.Heat = -1 }},
		{"breaks must ascend", func(s *heat.Slab) { s.Layers[0].Reaction.Breaks = []float64{0.3, 0.2} }},
		{"cells", func(s *heat.Slab) { s.Cells = -1 }},
		{"duration", func(s *heat.Slab) { s.For = 0 }},
		{"tolerance", func(s *heat.Slab) { s.Tolerance = -1 }},
		{"first face", func(s *heat.Slab) { s.First = heat.Convective(8, heat.History{}) }},
		{"last face", func(s *heat.Slab) { s.Last = heat.Convective(-8, heat.Steady(300)) }},
		{"backwards", func(s *heat.Slab) {
			s.Last = heat.Prescribed(heat.Series(heat.Moment{Time: 5, Temp: 300}, heat.Moment{Time: 4, Temp: 300}))
		}},
		{"outside 0", func(s *heat.Slab) { s.Last = heat.Prescribed(heat.Steady(-3)) }},
		{"goes off faster than can be followed", func(s *heat.Slab) {
			s.Layers[0].Reaction = &heat.Reaction{Rate: func(a, T float64) float64 { return math.NaN() }}
		}},
	} {
		s := bgA(25.4, 1e-6, 20)
		c.spoil(&s)
		_, err := s.Run(nil)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("got %v, want an error with %q", err, c.want)
		}
	}
	for _, c := range []struct {
		want  string
		spoil func(*heat.Cup)
	}{
		{"mass", func(c *heat.Cup) { c.Mass = 0 }},
		{"perimeter", func(c *heat.Cup) { c.Around = 0 }},
		{"air", func(c *heat.Cup) { c.Air = heat.History{} }},
		{"heat transfer", func(c *heat.Cup) { c.Top = -1 }},
		{"duration", func(c *heat.Cup) { c.For = 0 }},
	} {
		cup := epoxyCup(100, 20)
		c.spoil(&cup)
		_, err := cup.Run(nil)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("got %v, want an error with %q", err, c.want)
		}
	}
}

// A degree is told of reactive layers only, on both sides of a seam.
func TestDegreeBelongsToItsLayer(t *testing.T) {
	r := run(t, setA(34, 66, false))
	if a := r.DegreeAt(si.MM(5), r.End); !math.IsNaN(a) {
		t.Errorf("degree of the old hull: got %g, want NaN", a)
	}
	if _, ok := r.Reached(si.MM(5), 0.1); ok {
		t.Error("the old hull has cured")
	}
	if _, _, ok := r.Throughout(0, 0.1); ok {
		t.Error("the old hull has cured throughout")
	}
	first, last, ok := r.Throughout(1, 0.5)
	in, _ := r.Reached(si.MM(10), 0.5)
	if !ok || !(first < last) || in < first || in > last {
		t.Errorf("laminate comes to 0.5 from %v to %v (%v), at the seam %v", first, last, ok, in)
	}
	warm, ok := r.Warmed(si.MM(20), si.Celsius(60))
	near(t, "temperature when it has come up to 60 C", r.TempAt(si.MM(20), warm).Celsius(), 60, 1e-6)
	if _, ever := r.Warmed(si.MM(20), si.Celsius(200)); !ok || ever {
		t.Error("came up to 200 C, or not to 60")
	}
}

// Two reactive layers side by side keep their own degrees on the node they share.
func TestTwoResinsSideBySide(t *testing.T) {
	slow, quick := glassPolyesterLayer(5, 1e-6), glassPolyesterLayer(5, 0.2)
	air := heat.Convective(50, heat.Steady(si.Celsius(100)))
	r := run(t, heat.Slab{Layers: []heat.Layer{slow, quick}, First: air, Last: air, Start: si.Celsius(25), For: si.Minutes(5), Cells: 20})
	if a := r.DegreeAt(si.MM(5), r.End); a < 0.2 {
		t.Errorf("behind the seam: degree %g, want that of the second layer, 0.2 or more", a)
	}
	if a := r.DegreeAt(si.MM(4.99), 0); math.Abs(a-1e-6) > 1e-9 {
		t.Errorf("before the seam: degree %g, want that of the first layer, 1e-6", a)
	}
}
