package heat_test

import (
	"math"
	"testing"

	"scarfwright/physics/heat"
)

// A law that spends its first half on an inhibitor, at a rate of 1/1200 a second,
// is the same law an induction time later: 600 s to degree 0.5.
func TestQuietPartGivesNoHeat(t *testing.T) {
	plain := epoxyCup(100, 25)
	plain.Tolerance = 1e-3
	late := plain
	inner := inventedEpoxy()
	late.Reaction = &heat.Reaction{
		Rate: func(u, T float64) float64 {
			if u < 0.5 {
				return 1. / 1200
			}
			return 0.5 * inner.Rate(2*u-1, T)
		},
		Heat: inner.Heat, Quiet: 0.5,
	}
	p, err := plain.Run(nil)
	if err != nil {
		t.Fatal(err)
	}
	peak, at, gel := p.Peak.Temp, p.Peak.Time, must(t, p, 0.58)
	q, err := late.Run(nil)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "still at the start after 590 s, C", q.TempAt(590).Celsius(), 25, 1e-6)
	near(t, "inhibitor gone, s", must(t, q, 0.5), 600, 0.05)
	near(t, "peak, K", float64(q.Peak.Temp), float64(peak), 0.02)
	near(t, "its time, s", float64(q.Peak.Time), float64(at)+600, 1)
	near(t, "gel, s", must(t, q, 0.79), gel+600, 1)
	near(t, "heat released, J", q.Energy.Released, 33000*(2*q.DegreeAt(late.For)-1), 1)
	near(t, "energy closes", q.Energy.Error, 0, 1e-3)
}

func must(t *testing.T, r *heat.CupResult, a float64) float64 {
	t.Helper()
	at, ok := r.Reached(a)
	if !ok {
		t.Fatalf("degree %g is not reached", a)
	}
	return float64(at)
}

// The same in a slab with prescribed faces, with the peak told by the plain law.
func TestQuietLayerBehindPrescribedFaces(t *testing.T) {
	s := bgA(25.4, 1e-3, 60)
	want := run(t, s)
	inner := glassPolyester()
	s.Layers[0].Seed = 0.5 + 0.5e-3
	s.Layers[0].Reaction = &heat.Reaction{
		Rate:  func(u, T float64) float64 { return 0.5 * inner.Rate(math.Max(0, 2*u-1), T) },
		Heat:  inner.Heat,
		Quiet: 0.5,
	}
	got := run(t, s)
	near(t, "peak, K", float64(got.Peak.Temp), float64(want.Peak.Temp), 0.01)
	near(t, "its time, s", float64(got.Peak.Time), float64(want.Peak.Time), 1)
	near(t, "heat lost, J/m2", got.Energy.Lost, want.Energy.Lost, 1e-3*math.Abs(want.Energy.Lost))
	near(t, "energy closes", got.Energy.Error, 0, 1e-3)
}
