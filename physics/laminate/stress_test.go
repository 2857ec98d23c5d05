package laminate_test

import (
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

func nx(n si.LineLoad) laminate.Load { return laminate.Load{N: [3]si.LineLoad{n}} }

// state finds a point in the list.
func state(t *testing.T, points []laminate.Point, ply int, place laminate.Place) laminate.Point {
	t.Helper()
	for _, p := range points {
		if p.Ply == ply && p.Place == place {
			return p
		}
	}
	t.Fatalf("no point in ply %d at the %v", ply, place)
	return laminate.Point{}
}

func TestPublishedPlyStresses(t *testing.T) {
	// Kaw draws z downwards and lists the top ply first, so his "top" of a ply is
	// the face towards the first ply: our bottom.
	kaw := laminate.Points(plies(t, "[0/30/-45]", kawCarbon, si.MM(5)), laminate.Load{N: [3]si.LineLoad{1000, 1000}})
	p30 := state(t, kaw, 1, laminate.Bottom)
	cross := laminate.Points(plies(t, "[0/90bar]s", kawCarbon, si.MM(5)), nx(1))
	p0, p90 := state(t, cross, 0, laminate.Middle), state(t, cross, 1, laminate.Middle)
	tol := func(x float64) float64 {
		if x < 0 {
			x = -x
		}
		return 5e-4 * x
	}
	row := func(what string, got, want float64, origin string) figure {
		return figure{what, got, want, tol(want), origin}
	}
	checkFigures(t, []figure{
		row("30 ply, global sx", float64(p30.Stress[0]), 6.930e4, kaw42),
		row("30 ply, global sy", float64(p30.Stress[1]), 7.391e4, kaw42),
		row("30 ply, global txy", float64(p30.Stress[2]), 3.381e4, kaw42),
		row("30 ply, along", float64(p30.PlyStress[0]), 9.973e4, kaw42),
		row("30 ply, across", float64(p30.PlyStress[1]), 4.348e4, kaw42),
		row("30 ply, shear", float64(p30.PlyStress[2]), 1.890e4, kaw42),
		row("[0/90/0] eps x", p0.Strain[0], 5.353e-10, kawOpen),
		row("[0/90/0] eps y", p0.Strain[1], -2.297e-11, kawOpen),
		row("0 ply, along", float64(p0.PlyStress[0]), 97.26, kawOpen),
		row("0 ply, across", float64(p0.PlyStress[1]), 1.313, kawOpen),
		row("90 ply, along", float64(p90.PlyStress[0]), -2.626, kawOpen),
		row("90 ply, across", float64(p90.PlyStress[1]), 5.472, kawOpen),
	})
}

// Jones's cross-ply of thickness 1/10/1, the inner layer at 90, stresses per unit
// of average stress.
func TestPublishedCrossPlyStresses(t *testing.T) {
	const origin = "Jones1999 ch. 4, inputs read in a public example, print from memory; reproduced by independent computation"
	stack := []laminate.Ply{
		{Lamina: jones, Thickness: si.MM(1)},
		{Lamina: jones, Thickness: si.MM(10), Angle: si.Degrees(90)},
		{Lamina: jones, Thickness: si.MM(1)},
	}
	points := laminate.Points(stack, nx(si.LineLoad(12e-3))) // 1 Pa on average
	outer, inner := state(t, points, 0, laminate.Middle), state(t, points, 1, laminate.Middle)
	checkFigures(t, []figure{
		{"outer, along", float64(outer.PlyStress[0]), 2.27, 0.005, origin},
		{"outer, across", float64(outer.PlyStress[1]), 0.12, 0.005, origin},
		{"inner, along x", float64(inner.Stress[0]), 0.746, 0.005, origin},
		{"inner, along its fibres", float64(inner.PlyStress[0]), -0.024, 0.005, origin},
		{"outer, along, more digits", float64(outer.PlyStress[0]), 2.2724, 5e-5, computed},
		{"outer, across, more digits", float64(outer.PlyStress[1]), 0.1193, 5e-5, computed},
		{"inner, along x, more digits", float64(inner.Stress[0]), 0.7455, 5e-5, computed},
		{"inner, along its fibres, more digits", float64(inner.PlyStress[0]), -0.0239, 5e-5, computed},
	})
	x := laminate.Strength{Xt: si.MPa(1050), Xc: si.MPa(1050), Yt: si.MPa(28), Yc: si.MPa(140), S: si.MPa(42)}
	first := laminate.FirstPlyFailure(stack, []laminate.Strength{x}, nx(si.LineLoad(12e-3)), laminate.MaxStress)
	near(t, "first failure of the inner plies, MPa average ["+computed+"]", first.Ratio/1e6, 37.6, 0.05)
}

func TestGlassCrossPlyStresses(t *testing.T) {
	// Stresses per unit of mean stress, 1 mm thick.
	cross := laminate.Points(plies(t, "[0/90]s", glassUD, si.MM(0.25)), nx(si.LineLoad(1e-3)))
	p90 := state(t, cross, 1, laminate.Middle)
	near(t, "90 ply, along ["+glassC+"]", float64(p90.PlyStress[0]), -0.0683, 6e-5)
	near(t, "90 ply, across", float64(p90.PlyStress[1]), 0.3969, 6e-5)
	slant := laminate.Points(plies(t, "[+-45]s", glassUD, si.MM(0.25)), nx(si.LineLoad(1e-3)))
	for ply, shear := range []float64{-0.5, 0.5} {
		p := state(t, slant, ply, laminate.Middle)
		near(t, "45 ply, along", float64(p.PlyStress[0]), 0.7674, 6e-5)
		near(t, "45 ply, across", float64(p.PlyStress[1]), 0.2326, 6e-5)
		near(t, "45 ply, shear", float64(p.PlyStress[2]), shear, 6e-5)
	}
}

func TestStressesBalanceTheLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stack := drawPlies(t)
		h := float64(laminate.NewStiffness(stack).H)
		load := laminate.Load{N: [3]si.LineLoad{2e3, -1e3, 400}, M: [3]float64{1e3 * h, 0, 200 * h}}
		var N, M [3]float64
		points := laminate.Points(stack, load)
		for i, p := range stack {
			bottom, middle, top := points[3*i], points[3*i+1], points[3*i+2]
			for k := range 3 {
				// Stress is linear through a ply, so Simpson's rule is exact for both integrals.
				t := float64(p.Thickness)
				N[k] += t / 6 * float64(bottom.Stress[k]+4*middle.Stress[k]+top.Stress[k])
				M[k] += t / 6 * float64(bottom.Stress[k]*si.Pressure(bottom.Z)+
					4*middle.Stress[k]*si.Pressure(middle.Z)+top.Stress[k]*si.Pressure(top.Z))
			}
		}
		for k := range 3 {
			near(t, "force", N[k], float64(load.N[k]), 1e-7*2e3)
			near(t, "moment", M[k], load.M[k], 1e-7*2e3*h)
		}
	})
}

func TestAxesThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, a := drawLamina(t), angle.Draw(t, "angle")
		draw := func(name string) float64 { return rapid.Float64Range(-1e8, 1e8).Draw(t, name) }
		s := laminate.Stress{si.Pressure(draw("sx")), si.Pressure(draw("sy")), si.Pressure(draw("txy"))}
		there := s.InPlyAxes(a)
		back, e := there.InPlyAxes(-a), l.Strain(there)
		around := l.Stress(e)
		energy, turned := 0.0, 0.0
		global := e.InPlyAxes(-a)
		for k := range 3 {
			near(t, "stress there and back", float64(back[k]), float64(s[k]), 1e-6)
			near(t, "stress of the strain of the stress", float64(around[k]), float64(there[k]), 1e-6)
			energy += float64(there[k]) * e[k]
			turned += float64(s[k]) * global[k]
		}
		near(t, "strain energy in either axes", turned, energy, 1e-9*(1+energy))
	})
}

func TestNoPlies(t *testing.T) {
	if got := laminate.Points(nil, nx(1)); got != nil {
		t.Errorf("points of no plies: got %v", got)
	}
	if got := laminate.NewStiffness(nil); got != (laminate.Stiffness{}) {
		t.Errorf("stiffness of no plies: got %v", got)
	}
	if got := laminate.NewSection(nil); got != (laminate.Section{}) {
		t.Errorf("section of no layers: got %v", got)
	}
}
