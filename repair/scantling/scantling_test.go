package scantling_test

import (
	"math"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/repair/scantling"
)

const knot = 1852.0 / 3600

// Source: arithmetic by independent computation (numpy, in Python) with formulas from
// memory; so these hold the arithmetic together, not the formulas.
func TestWorkedCraft(t *testing.T) {
	for _, c := range []struct {
		name                              string
		lwl, bc, mass, speed, beta        float64
		cat                               scantling.Category
		x, b, l                           float64
		n, kL, kARp, kARd, pd, pp, floor  float64
		pressure, stress, thickness, rest float64
	}{
		{"A", 8, 2.6, 3500, 25, 18, "B", 0.5, 400, 900, 3.1219, 0.92023, 0.46208, 0.63767, 26.036, 27.135, 12.409, 27.135, 76, 5.344, 1e-3},
		{"B", 5, 1.9, 900, 30, 16, "C", 0.4, 350, 700, 4.7192, 0.92937, 0, 0, 14.036, 17.340, 6.947, 17.340, 76, 3.728, 1e-3},
		{"C", 10, 3, 6500, 8, 12, "A", 0.7, 500, 1000, 0.4497, 1, 0, 0.62027, 39.386, 14.43, 17.16, 39.386, 76, 8.027, 1e-3},
	} {
		craft := scantling.Craft{
			Waterline: si.Length(c.lwl), Chine: si.Length(c.bc), Mass: si.Mass(c.mass), Speed: si.Speed(c.speed * knot),
			Deadrise: si.Degrees(c.beta), Category: c.cat,
		}
		panel := scantling.Panel{Short: si.MM(c.b), Long: si.MM(c.l), Forward: si.Ratio(c.x)}
		p, err := scantling.Bottom(craft, panel)
		if err != nil {
			t.Fatal(err)
		}
		near := func(what string, got, want float64) {
			if want != 0 && math.Abs(got/want-1) > c.rest {
				t.Errorf("craft %s, %s: %.5g, want %.5g", c.name, what, got, want)
			}
		}
		near("nCG", p.Acceleration, c.n)
		near("kL", p.Along, c.kL)
		near("kAR planing", p.AreaPlaning, c.kARp)
		near("kAR displacement", p.AreaDisplacement, c.kARd)
		near("displacement", float64(p.Displacement)/1e3, c.pd)
		near("planing", float64(p.Planing)/1e3, c.pp)
		near("least", float64(p.Least)/1e3, c.floor)
		near("pressure", float64(p.Design)/1e3, c.pressure)
		got, err := scantling.Thickness(panel, p.Design, si.MPa(c.stress))
		if err != nil {
			t.Fatal(err)
		}
		near("thickness", got.MM(), c.thickness)
	}
}

// Source: independent computation (numpy, in Python) with formulas from memory.
func TestPanelAlone(t *testing.T) {
	for _, c := range []struct{ b, l, crown, thick float64 }{
		{400, 800, 0, 6.3078}, {400, 400, 40, 3.8052},
	} {
		p := scantling.Panel{Short: si.MM(c.b), Long: si.MM(c.l), Crown: si.MM(c.crown)}
		got, err := scantling.Thickness(p, 40e3, si.MPa(80))
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got.MM()/c.thick-1) > 1e-4 {
			t.Errorf("%g x %g, crown %g: %.4f mm, want %.4f", c.b, c.l, c.crown, got.MM(), c.thick)
		}
	}
}

func TestRefusals(t *testing.T) {
	good := scantling.Craft{Waterline: 8, Chine: 2.6, Mass: 3500, Speed: 25 * knot, Deadrise: si.Degrees(18), Category: "B"}
	panel := scantling.Panel{Short: si.MM(400), Long: si.MM(900), Forward: 0.5}
	for name, change := range map[string]func(*scantling.Craft, *scantling.Panel){
		"a ship":         func(c *scantling.Craft, _ *scantling.Panel) { c.Waterline = 40 },
		"no mass":        func(c *scantling.Craft, _ *scantling.Panel) { c.Mass = 0 },
		"60 knots":       func(c *scantling.Craft, _ *scantling.Panel) { c.Speed = 60 * knot },
		"category":       func(c *scantling.Craft, _ *scantling.Panel) { c.Category = "E" },
		"spans swapped":  func(_ *scantling.Craft, p *scantling.Panel) { p.Short, p.Long = p.Long, p.Short },
		"beyond the bow": func(_ *scantling.Craft, p *scantling.Panel) { p.Forward = 1.2 },
		"not a number":   func(c *scantling.Craft, _ *scantling.Panel) { c.Chine = si.Length(math.NaN()) },
	} {
		c, p := good, panel
		change(&c, &p)
		if _, err := scantling.Bottom(c, p); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	if _, err := scantling.Thickness(panel, 0, si.MPa(70)); err == nil {
		t.Error("no pressure: no error")
	}
}
