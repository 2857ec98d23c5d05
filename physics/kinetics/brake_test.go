package kinetics_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// Two invented sheets, with what a fit gave: the degree of cure after a day and
// after a week at 20 C, by an independent computation that rounds k2, kap, E to three
// digits, which is worth up to 0.003.
func TestADayAndAWeek(t *testing.T) {
	for _, r := range []struct{ k2, kap, E, day, week float64 }{
		{3.13e-4, 0.112, 56.3, 0.791, 0.825},
		{6.45e-4, 0.091, 54.6, 0.805, 0.835},
	} {
		k2 := must(kinetics.FromReference(r.k2, si.Celsius(25), si.KJPerMol(r.E)))
		law := kinetics.Braked{Law: kinetics.Kamal{K1: k2.Times(r.kap), K2: k2, M: 1, N: 2}, Brake: glassBrake()}
		h := must(kinetics.Constant(si.Celsius(20)))
		a := must(kinetics.Cure(law, h, 0, []si.Time{si.Days(1), si.Days(7)}))
		checkFigures(t, []figure{
			{"after a day at 20 C", a[0], r.day, 0.003, rows},
			{"after a week at 20 C", a[1], r.week, 0.003, rows},
		})
		// The week ends close to the plateau, whose Tg lies 10 to 30 K above the cure.
		plateau := must(kinetics.Plateau(law, si.Celsius(20), kinetics.Stalled))
		if d := amine.Tg(plateau).Celsius() - 20; plateau < a[1]-0.02 || plateau > a[1]+0.05 || d < 10 || d > 32 {
			t.Errorf("plateau %g, Tg %g K above the cure, after %g in a week", plateau, d, a[1])
		}
	}
}

// The brake halves the rate at its centre, lets go far below, and holds far above.
func TestBrakes(t *testing.T) {
	g, T := glassBrake(), si.Celsius(20)
	centre := must(amine.Cure(si.Celsius(30)))
	near(t, "glass brake at its centre", g.Factor(centre, T), 0.5, 1e-9)
	near(t, "three widths above", g.Factor(must(amine.Cure(si.Celsius(39))), T), 1/(1+math.Exp(3)), 1e-9)
	c := kinetics.ConversionBrake{C: 30, Ac0: -1.1, AcT: 0.0065}
	near(t, "conversion brake at ac", c.Factor(-1.1+0.0065*293.15, T), 0.5, 1e-9)
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(0, 1).Draw(t, "a"), rapid.Float64Range(0, 1).Draw(t, "b")
		T := si.Celsius(rapid.Float64Range(-10, 100).Draw(t, "T"))
		for _, brake := range []kinetics.Brake{g, c} {
			f := brake.Factor(a, T)
			if !(f >= 0 && f <= 1) || a < b && brake.Factor(b, T) > f || brake.Factor(a, T.Add(5)) < f {
				t.Fatalf("%#v: factor %g at %g, must fall with cure and rise with warmth", brake, f, a)
			}
			law := kinetics.Braked{Law: cup(), Brake: brake}
			near(t, "the law times the factor", law.Rate(a, T), cup().Rate(a, T)*f, 1e-13)
		}
	})
	for what, err := range map[string]error{
		"C 0":     kinetics.ConversionBrake{Ac0: 0.8}.Check(),
		"width 0": kinetics.GlassBrake{DiBenedetto: amine, Centre: 10}.Check(),
		"no Tg":   kinetics.GlassBrake{Centre: 10, Width: 3}.Check(),
	} {
		if err == nil {
			t.Errorf("%s: no error", what)
		}
	}
}

func TestPlateau(t *testing.T) {
	law := kinetics.Braked{Law: cup(), Brake: glassBrake()}
	last := 0.0
	for T := -5.0; T <= 120; T += 5 {
		p := must(kinetics.Plateau(law, si.Celsius(T), kinetics.Stalled))
		if !(p > last && p <= 1) {
			t.Fatalf("plateau %g at %g C after %g: warmer must go further", p, T, last)
		}
		if p < 1-1e-6 {
			near(t, "rate at the plateau", law.Rate(p, si.Celsius(T)), kinetics.Stalled, 1e-6)
		}
		last = p
	}
	if p := must(kinetics.Plateau(law, si.Celsius(-120), kinetics.Stalled)); p != 0 {
		t.Errorf("frozen: plateau %g, want 0", p)
	}
	// Unbraked, first order: k (1-a) = floor, by hand.
	first := kinetics.NthOrder{K: cup().K2, N: 1}
	near(t, "first order", 1-must(kinetics.Plateau(first, si.Celsius(25), 3e-6)), 0.01, 1e-9)
	for _, err := range []error{second(kinetics.Plateau(law, 0, 1e-8)), second(kinetics.Plateau(law, 293, 0))} {
		if err == nil {
			t.Error("no error")
		}
	}
}
