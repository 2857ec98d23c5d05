package view

import (
	"math"
	"testing"

	"scarfwright/present/drawing"
)

func netOf(nx, ny int, f func(x, y float64) float64) grid {
	g := grid{nx: nx, ny: ny, at: func(x, y float64) drawing.Point { return drawing.P(x, y) }}
	for j := range ny {
		for i := range nx {
			g.values = append(g.values, f(float64(i), float64(j)))
		}
	}
	return g
}

// area is the signed sum over rings: what is filled, for rings keep the high side left.
func area(rings [][]drawing.Point) (sum float64) {
	for _, r := range rings {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			sum += (p.X*q.Y - p.Y*q.X) / 2
		}
	}
	return sum
}

// A plane field is cut in straight lines at the exact places.
func TestContoursOfAPlane(t *testing.T) {
	g := netOf(11, 6, func(x, y float64) float64 { return x })
	for _, level := range []float64{0, 2.5, 7, 9.999} {
		if got, want := area(g.above(level)), (10-level)*5; math.Abs(got-want) > 1e-9 {
			t.Errorf("x at least %g: area %g, want %g", level, got, want)
		}
	}
	if r := g.above(10.5); len(r) != 0 {
		t.Errorf("above the highest: %v", r)
	}
	if got := area(g.above(-3)); math.Abs(got-50) > 1e-9 {
		t.Errorf("below the lowest: area %g, want the whole, 50", got)
	}
}

// A round hill and a hollow: areas of circles, and a ring inside a ring; and every
// saddle of a chequered net closes.
func TestContoursOfHills(t *testing.T) {
	hill := netOf(101, 101, func(x, y float64) float64 { return -math.Hypot(x-50, y-50) })
	if got, want := area(hill.above(-30)), math.Pi*900; math.Abs(got/want-1) > 0.002 {
		t.Errorf("a circle of 30: area %g, want %g", got, want)
	}
	hollow := netOf(101, 101, func(x, y float64) float64 { return math.Hypot(x-50, y-50) })
	if got, want := area(hollow.above(30)), 1e4-math.Pi*900; math.Abs(got/want-1) > 0.002 {
		t.Errorf("all but a circle: area %g, want %g", got, want)
	}
	if n := len(hollow.above(30)); n != 2 {
		t.Errorf("%d rings, want the border and the hole", n)
	}
	for _, shift := range []float64{-0.1, 0.1} {
		chequer := netOf(8, 8, func(x, y float64) float64 { return math.Mod(x+y, 2) })
		a := area(chequer.above(0.5 + shift))
		if !(a > 0 && a < 49) {
			t.Errorf("chequer at %g: area %g", 0.5+shift, a)
		}
	}
	gap := netOf(11, 11, func(x, y float64) float64 {
		if x > 4 && x < 6 {
			return math.NaN()
		}
		return 1
	})
	if got := area(gap.above(0.5)); math.Abs(got-80) > 1e-9 {
		t.Errorf("with a column unknown: area %g, want 80", got)
	}
}
