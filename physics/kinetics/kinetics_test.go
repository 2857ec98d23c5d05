package kinetics_test

import (
	"math"
	"testing"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// figure is a check: a sentence, a figure, what it must be and within what, and
// where the expected number comes from.
type figure struct {
	what           string
	got, want, tol float64 // tol absolute
	source         string
}

func rel(want, share float64) float64 { return math.Abs(want) * share }

func checkFigures(t *testing.T, figures []figure) {
	t.Helper()
	for _, f := range figures {
		if !(math.Abs(f.got-f.want) <= f.tol) {
			t.Errorf("%s: got %.9g, want %.9g within %.2g (%s)", f.what, f.got, f.want, f.tol, f.source)
		}
	}
}

func near(t interface{ Errorf(string, ...any) }, what string, got, want, share float64) {
	if h, ok := t.(interface{ Helper() }); ok {
		h.Helper()
	}
	if !(math.Abs(got-want) <= share*math.Max(math.Abs(want), 1e-300)) {
		t.Errorf("%s: got %.15g, want %.15g within %g of it", what, got, want, share)
	}
}

// must returns a value whose error would be a fault of the test.
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// bare hides the closed forms and breaks of a law: what is left is its rate.
type bare struct{ law kinetics.Law }

func (b bare) Rate(a float64, T si.Temp) float64 { return b.law.Rate(a, T) }

// cup is the invented room-temperature epoxy of the check rows: k2 = 3e-4 1/s at 25
// degrees Celsius, k1 = 0.1 k2, E = 55 kJ/mol, gel at 0.58.
func cup() kinetics.Kamal {
	k2 := must(kinetics.FromReference(3e-4, si.Celsius(25), si.KJPerMol(55)))
	return kinetics.Kamal{K1: k2.Times(0.1), K2: k2, M: 1, N: 2}
}

// glassBrake is the brake of the check rows on an invented resin.
func glassBrake() kinetics.GlassBrake {
	return kinetics.GlassBrake{DiBenedetto: amine, Centre: 10, Width: 3}
}

// polyester is an invented resin, with what a fit to an invented sheet gave.
func polyester(peroxide float64) kinetics.Radical {
	return kinetics.Radical{
		Induction: kinetics.Induction{Ref: 525.9, E: si.KJPerMol(57.93), Q: 0.875},
		Peroxide:  si.Percent(peroxide),
		K:         must(kinetics.FromReference(1.2386e-3, si.Celsius(25), si.KJPerMol(47.95))),
		P:         0.875, M: 0.58, N: 1.42, Seed: 1e-4,
	}
}
