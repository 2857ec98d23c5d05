package curing

import (
	"math"
	"testing"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// A polyester whose parameters are all given, on 6 mm of old laminate, air on both
// sides at 8 W/(m2 K).
//
// Source: independent computation by the author of the invented sheet C (own
// solver, 40 cells). Its properties of wet laminate are its own, so the peaks need
// only agree to a few kelvin.
func TestPeakOnOldLaminate(t *testing.T) {
	for _, c := range []struct{ mm, air, peak float64 }{
		{2, 20, 31}, {4, 20, 48}, {6, 20, 68}, {4, 15, 36}, {4, 25, 60},
	} {
		r := sheetC(t)
		law := r.reaction(si.Scale(si.SpecificEnergy(255.8e3), 0.67))
		layer := heat.Layer{
			Thickness: si.MM(c.mm), Conductivity: wetConductivity, Density: 1430, SpecificHeat: 1500,
			Reaction: law, Seed: r.seed(),
		}
		h := heat.Steady(si.Celsius(c.air))
		slab := heat.Slab{
			Layers: []heat.Layer{layer, set(si.MM(6))}, Start: si.Celsius(c.air), For: si.Hours(4), Cells: cells,
			First: heat.Convective(faceHeatTransfer, h), Last: heat.Convective(faceHeatTransfer, h),
		}
		res, err := slab.Run(nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := res.PeakIn(0).Temp.Celsius(); math.Abs(got-c.peak) > 0.1*(c.peak-c.air)+2 {
			t.Errorf("%g mm at %g °C: peak %.1f °C, want %g", c.mm, c.air, got, c.peak)
		}
	}
}

// The state of an inhibited law is moved onto 0 to 1 and back.
func TestStateAndDegree(t *testing.T) {
	r := sheetC(t)
	for _, s := range []float64{-1, -0.5, 0, 0.3, 1} {
		if got := r.state(r.toDegree(s)); math.Abs(got-s) > 1e-15 {
			t.Errorf("state %g came back as %g", s, got)
		}
	}
	if r.toDegree(0) != 0.5 {
		t.Errorf("heat must begin at degree 0.5, got %g", r.toDegree(0))
	}
}

// The thin film of the heat solver, which has no heat to speak of, sets as the law
// alone says.
func TestThinLayerFollowsTheLaw(t *testing.T) {
	r := sheetC(t)
	re := r.reaction(0) // no heat: the slab stays at its temperature
	slab := heat.Slab{
		Layers: []heat.Layer{{Thickness: si.MM(0.1), Conductivity: 0.2, Density: 1400, SpecificHeat: 1500, Reaction: re, Seed: r.seed(), Cells: 4}},
		Start:  si.Celsius(20), For: si.Hours(3),
	}
	res, err := slab.Run(nil)
	if err != nil {
		t.Fatal(err)
	}
	h, err := kinetics.Constant(si.Celsius(20))
	if err != nil {
		t.Fatal(err)
	}
	for _, state := range []float64{0.03, 0.3} {
		_, got, ok := res.Throughout(0, r.toDegree(state))
		want, reached, err := kinetics.Reach(r.law, h, kinetics.Fresh(r.law), state, si.Hours(3))
		if err != nil || !ok || !reached {
			t.Fatalf("not reached: %v, %v, %v", ok, reached, err)
		}
		if math.Abs(float64(got/want)-1) > 2e-3 {
			t.Errorf("state %g: %v, the law alone %v", state, got, want)
		}
	}
}

// sheetC is the invented polyester of the two tests above, at 2 % of peroxide.
func sheetC(t *testing.T) Resin {
	t.Helper()
	k, err := kinetics.FromReference(1.2386e-3, si.Celsius(25), 47.95e3)
	if err != nil {
		t.Fatal(err)
	}
	return Resin{law: kinetics.Radical{
		Induction: kinetics.Induction{Ref: 525.9, E: 57.93e3, Q: 0.875}, Peroxide: 0.02,
		K: k, P: 0.875, M: 0.58, N: 2 - 0.58, Seed: 1e-4,
	}}
}
