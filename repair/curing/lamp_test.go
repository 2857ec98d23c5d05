package curing

import (
	"math"
	"testing"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// A lamp is stated by how much it warms the bare face; the air entered for it must
// bring the face just there, whatever stands behind.
func TestLampWarmsTheBareFaceByWhatIsStated(t *testing.T) {
	for _, under := range [][]heat.Layer{
		{set(si.MM(3))}, {set(si.MM(12))},
		{{Thickness: si.MM(20), Conductivity: foamConductivity, Density: 80, SpecificHeat: foamSpecificHeat}, set(si.MM(3))},
	} {
		air := Air{History: heat.Steady(si.Celsius(12)), Lamp: Lamp{Warmer: si.Kelvins(17), Lasts: si.Hours(48)}}
		slab := heat.Slab{
			Layers: under, Start: si.Celsius(12), For: si.Hours(40), Cells: cells,
			First: heat.Convective(faceHeatTransfer, air.face(under)), Last: heat.Convective(faceHeatTransfer, air.History),
		}
		res, err := slab.Run(nil)
		if err != nil {
			t.Fatal(err)
		}
		if got := res.TempAt(0, si.Hours(40)).Celsius(); math.Abs(got-29) > 0.01 {
			t.Errorf("%d layers: the face comes to %.3f °C, stated 29", len(under), got)
		}
	}
}

// A lamp taken away to lay comes back when it may, and goes when its time is over.
func TestLampComesAndGoes(t *testing.T) {
	hull, err := kinetics.Constant(si.Celsius(10))
	if err != nil {
		t.Fatal(err)
	}
	a := Air{Hull: hull, Lamp: Lamp{Warmer: si.Kelvins(20), From: si.Hours(1), Lasts: si.Hours(3)}}
	film, err := a.Film()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ minutes, celsius float64 }{
		{0, 30}, {5, 20}, {10, 10}, {59, 10}, {60, 10}, {65, 20}, {70, 30}, {240, 30}, {245, 20}, {251, 10}, {6000, 10},
	} {
		if got := film.At(si.Minutes(c.minutes)).Celsius(); math.Abs(got-c.celsius) > 1e-9 {
			t.Errorf("after %g min %.4g °C, want %g", c.minutes, got, c.celsius)
		}
	}
	if a.Start = si.Celsius(10); a.start() != si.Celsius(30) {
		t.Errorf("it is laid at %v", a.start())
	}
}

// A limit is never rounded past itself: 80 °C is 176 °F, not 180.
func TestDegrees(t *testing.T) {
	for _, c := range []struct {
		celsius    float64
		metric, us string
	}{{80, "80 °C", "176 °F"}, {60, "60 °C", "140 °F"}, {37.4, "37 °C", "99 °F"}, {9.6, "9.6 °C", "49 °F"}} {
		if m, u := Degrees(si.Celsius(c.celsius), si.Metric), Degrees(si.Celsius(c.celsius), si.US); m != c.metric || u != c.us {
			t.Errorf("%g °C is printed %q and %q, want %q and %q", c.celsius, m, u, c.metric, c.us)
		}
	}
}
