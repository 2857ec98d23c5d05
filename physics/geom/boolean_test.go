package geom_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/tdewolff/canvas"
	"pgregory.net/rapid"

	"scarfwright/physics/geom"
)

// Closed forms on overlapping rectangles, edges in common included.
func TestBooleans(t *testing.T) {
	for _, c := range []struct {
		why, a, b           string
		union, inter, minus float64
		rings               [3]int
	}{
		{"overlapping", "0,0 100,0 100,50 0,50", "50,25 150,25 150,75 50,75", 8750, 1250, 3750, [3]int{1, 1, 1}},
		{"apart", "0,0 10,0 10,10 0,10", "20,0 30,0 30,10 20,10", 200, 0, 100, [3]int{2, 0, 1}},
		{"one edge in common", "0,0 10,0 10,10 0,10", "10,0 30,0 30,10 10,10", 300, 0, 100, [3]int{1, 0, 1}},
		{"part of an edge in common", "0,0 10,0 10,10 0,10", "10,3 30,3 30,20 10,20", 440, 0, 100, [3]int{1, 0, 1}},
		{"a corner in common", "0,0 10,0 10,10 0,10", "10,10 30,10 30,20 10,20", 300, 0, 100, [3]int{2, 0, 1}},
		{"the same", "0,0 10,0 10,10 0,10", "0,0 10,0 10,10 0,10", 100, 100, 0, [3]int{1, 1, 0}},
		{"one inside the other", "0,0 90,0 90,90 0,90", "30,30 60,30 60,60 30,60", 8100, 900, 7200, [3]int{1, 1, 2}},
		{"a cross", "0,30 90,30 90,60 0,60", "30,0 60,0 60,90 30,90", 4500, 900, 1800, [3]int{1, 1, 2}},
	} {
		a, b := mustShape(t, c.a), mustShape(t, c.b)
		for i, op := range []struct {
			name string
			f    func(a, b geom.Shape) (geom.Shape, error)
			want float64
		}{{"union", geom.Union, c.union}, {"intersection", geom.Intersect, c.inter}, {"difference", geom.Subtract, c.minus}} {
			got, err := op.f(a, b)
			if err != nil {
				t.Errorf("%s, %s: %v", c.why, op.name, err)
				continue
			}
			near(t, c.why+", "+op.name, got.Area(), op.want, 1e-9)
			if len(got) != c.rings[i] {
				t.Errorf("%s, %s: got %d rings, want %d: %v", c.why, op.name, len(got), c.rings[i], got)
			}
		}
	}
}

// |A or B| + |A and B| = |A| + |B|, and |A less B| + |A and B| = |A|, for
// shapes with holes too.
func TestBooleanAreasAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyShape(t), anyShape(t)
		b = b.Translate(a.Centroid().X-b.Centroid().X+rapid.Float64Range(-100, 100).Draw(t, "off"), a.Centroid().Y-b.Centroid().Y)
		must := func(s geom.Shape, err error) geom.Shape {
			if err != nil {
				t.Fatal(err)
			}
			return s
		}
		if rapid.Bool().Draw(t, "hollow") {
			b = must(geom.Subtract(b, offset(t, b, -10)))
		}
		or, and := must(geom.Union(a, b)), must(geom.Intersect(a, b))
		less := must(geom.Subtract(a, b))
		slack := 0.1 + 0.002*(a.Perimeter()+b.Perimeter())
		if d := or.Area() + and.Area() - a.Area() - b.Area(); math.Abs(d) > slack {
			t.Errorf("union and intersection miss the sum by %g", d)
		}
		if d := less.Area() + and.Area() - a.Area(); math.Abs(d) > slack {
			t.Errorf("difference and intersection miss the whole by %g", d)
		}
		if again := must(geom.Union(or, a)); math.Abs(again.Area()-or.Area()) > slack {
			t.Errorf("adding a again changes %g to %g", or.Area(), again.Area())
		}
	})
}

// A second implementation on other principles agrees: path operations of
// github.com/tdewolff/canvas, on seeded random stars.
func TestAgreesWithCanvas(t *testing.T) {
	if testing.Short() {
		t.Skip("canvas takes seconds")
	}
	rnd := rand.New(rand.NewPCG(20261125, 1))
	star := func() geom.Shape {
		for {
			n := 4 + rnd.IntN(30)
			r := make(geom.Ring, n)
			for i := range r {
				s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.9*rnd.Float64()) / float64(n))
				d := 150 * (0.25 + 0.75*rnd.Float64())
				r[i] = geom.Point{X: d * c, Y: d * s}
			}
			if s, err := geom.NewShape(r); err == nil {
				return s
			}
		}
	}
	same := func(what string, got, want geom.Shape) {
		t.Helper()
		if d := math.Abs(got.Area() - want.Area()); d > 0.5 && d > 0.001*want.Area() {
			t.Errorf("%s: area got %g, canvas has %g", what, got.Area(), want.Area())
		}
	}
	must := func(s geom.Shape, err error) geom.Shape {
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	for range 40 {
		a, b := star(), star().Translate(100*rnd.Float64(), 50*rnd.Float64())
		for _, d := range []float64{-20, -5, 12, 60} {
			same("offset", must(a.Offset(d)), canvasOffset(a, d))
		}
		same("union", must(geom.Union(a, b)), canvasOverlay(a, b, (*canvas.Path).Or))
		same("intersection", must(geom.Intersect(a, b)), canvasOverlay(a, b, (*canvas.Path).And))
		same("difference", must(geom.Subtract(a, b)), canvasOverlay(a, b, (*canvas.Path).Not))
	}
}
