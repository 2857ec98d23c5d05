package geom_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/geom"
)

const plate = "0,0 100,0 100,50 0,50"

// An L of 90 × 90 less a 60 × 60 notch: area 8100 - 3600, perimeter 360,
// centroid by moments (8100·45 - 3600·60)/4500 = 33 both ways.
const ell = "0,0 90,0 90,30 30,30 30,90 0,90"

func frame(t testing.TB) geom.Shape {
	s, err := geom.Subtract(mustShape(t, "0,0 400,0 400,300 0,300"), mustShape(t, "100,100 300,100 300,200 100,200"))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Closed forms throughout.
func TestMeasures(t *testing.T) {
	l := mustShape(t, ell)
	near(t, "L area", l.Area(), 4500, 1e-9)
	near(t, "L perimeter", l.Perimeter(), 360, 1e-9)
	near(t, "L centroid x", l.Centroid().X, 33, 1e-9)
	near(t, "L centroid y", l.Centroid().Y, 33, 1e-9)
	near(t, "L clockwise area", l[0].Reverse().Area(), -4500, 1e-9)
	if l.Contains(geom.Point{X: 60, Y: 60}) || !l.Contains(geom.Point{X: 60, Y: 10}) {
		t.Error("L: the notch is outside, the foot inside")
	}

	f := frame(t)
	near(t, "frame area", f.Area(), 400*300-200*100, 1e-9)
	near(t, "frame perimeter", f.Perimeter(), 1400+600, 1e-9)
	near(t, "frame centroid x", f.Centroid().X, (120000*200.-20000*200)/100000, 1e-9)
	if f.Contains(geom.Point{X: 200, Y: 150}) || !f.Contains(geom.Point{X: 50, Y: 150}) {
		t.Error("frame: the hole is outside, the rim inside")
	}
	if len(f) != 2 || f[0].Area() < 0 || f[1].Area() > 0 {
		t.Errorf("frame: want an outer ring and a hole, got %v", f)
	}
	m := f.Translate(-200, 0).Mirror().Translate(200, 0)
	near(t, "mirrored frame", m.Area(), f.Area(), 1e-9)
	if m[0].Area() < 0 || m[1].Area() > 0 {
		t.Error("mirrored frame: rings run the wrong way")
	}
	var none geom.Shape
	if none.Area() != 0 || none.Perimeter() != 0 || none.Bounds() != (geom.Box{}) || none.Contains(geom.Point{}) || !math.IsInf(none.Distance(geom.Point{}), 1) {
		t.Error("the empty shape measures something")
	}
}

func TestDistances(t *testing.T) {
	s := mustShape(t, plate)
	near(t, "from inside", s.Distance(geom.Point{X: 50, Y: 20}), 20, 1e-12)
	near(t, "from outside a corner", s.Distance(geom.Point{X: 103, Y: 54}), 5, 1e-12)
	for _, c := range []struct {
		why  string
		a, b geom.Point
		want float64
	}{
		{"a stiffener clear of it", geom.Point{X: -50, Y: 80}, geom.Point{X: 150, Y: 80}, 30},
		{"one that crosses without an end inside", geom.Point{X: -50, Y: 20}, geom.Point{X: 150, Y: 30}, 0},
		{"one that ends inside", geom.Point{X: 50, Y: 25}, geom.Point{X: 150, Y: 300}, 0},
		{"one that is wholly inside", geom.Point{X: 40, Y: 20}, geom.Point{X: 60, Y: 30}, 0},
		{"one along an edge", geom.Point{X: -50, Y: 50}, geom.Point{X: 150, Y: 50}, 0},
		{"one that touches a corner", geom.Point{X: 50, Y: 100}, geom.Point{X: 150, Y: 0}, 0},
		{"one past a corner, 3-4-5", geom.Point{X: 103, Y: 54}, geom.Point{X: 203, Y: 154}, 5},
		{"one that points at it and stops short", geom.Point{X: 200, Y: 25}, geom.Point{X: 110, Y: 25}, 10},
		{"a point", geom.Point{X: 110, Y: 25}, geom.Point{X: 110, Y: 25}, 10},
	} {
		near(t, c.why, s.DistanceToSegment(c.a, c.b), c.want, 1e-12)
		near(t, c.why+", the other way round", s.DistanceToSegment(c.b, c.a), c.want, 1e-12)
	}
	if d := frame(t).DistanceToSegment(geom.Point{X: 150, Y: 150}, geom.Point{X: 250, Y: 150}); d != 50 {
		t.Errorf("a bar inside the frame's hole: got %g, want 50", d)
	}
}

func TestSignedClearance(t *testing.T) {
	s := mustShape(t, plate)
	ref := geom.Point{X: 50, Y: 25}
	line := func(x float64) (geom.Point, geom.Point) {
		return geom.Point{X: x, Y: -10}, geom.Point{X: x, Y: 20}
	}
	for x, want := range map[float64]float64{130: 30, 100: 0, 80: -20, -15: 15, 12: -12} {
		a, b := line(x)
		near(t, "line at x", s.SignedClearance(ref, a, b), want, 1e-12)
		near(t, "line run the other way", s.SignedClearance(ref, b, a), want, 1e-12)
	}
}

func TestRay(t *testing.T) {
	s := mustShape(t, ell)
	for _, c := range []struct{ x, y, deg, want float64 }{
		{15, 15, 0, 75}, {15, 15, 90, 75}, {15, 15, 180, 15}, {15, 15, 45, 15 * math.Sqrt2},
		{-10, 60, 0, 40}, // in and out again: the farthest counts
	} {
		got, ok := s.Ray(geom.Point{X: c.x, Y: c.y}, c.deg*math.Pi/180)
		if !ok {
			t.Errorf("%v: no hit", c)
		}
		near(t, "ray", got, c.want, 1e-9)
	}
	if d, ok := s.Ray(geom.Point{X: 60, Y: 60}, math.Pi/4); ok {
		t.Errorf("out of the notch: got a hit at %g", d)
	}
}

// Closed forms: a rectangle turned by 30 degrees is as narrow as its shorter
// side, and as wide as its diagonal.
func TestWidths(t *testing.T) {
	turn := math.Pi / 6
	s := mustShape(t, plate).Rotate(turn)
	w, a := s.MinWidth()
	near(t, "least width", w, 50, 1e-9)
	near(t, "its direction", a, turn+math.Pi/2-math.Pi, 1e-9)
	w, a = s.MaxWidth()
	near(t, "greatest width", w, math.Hypot(100, 50), 1e-9)
	if d := math.Abs(a - turn); math.Abs(d-math.Atan2(50, 100)) > 1e-9 {
		t.Errorf("greatest width at %g: want the diagonal", a)
	}
	w, _ = geom.Shape{geom.Ellipse(300, 200)}.MinWidth()
	near(t, "ellipse, least", w, 200, 2*geom.Tolerance)
	w, a = geom.Shape{geom.Ellipse(300, 200)}.MaxWidth()
	near(t, "ellipse, greatest", w, 300, 2*geom.Tolerance)
	near(t, "its direction", a, 0, 1e-9)
	if w, a := (geom.Shape)(nil).MinWidth(); w != 0 || a != 0 {
		t.Error("the empty shape has a width")
	}
}

// Every strip's pieces together are the shape, and each is as wide as the
// others along the direction.
func TestSplitStripsSharesTheShapeOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		n := rapid.IntRange(1, 6).Draw(t, "n")
		angle := rapid.Float64Range(-4, 4).Draw(t, "angle")
		pieces, err := s.SplitStrips(n, angle)
		if err != nil || len(pieces) != n {
			t.Fatalf("got %d pieces, %v", len(pieces), err)
		}
		all := s.Rotate(-angle).Bounds()
		sum := 0.0
		for i, p := range pieces {
			sum += p.Area()
			if len(p) == 0 {
				continue
			}
			b := p.Rotate(-angle).Bounds()
			low := all.Min.X + all.Width()*float64(i)/float64(n)
			if b.Min.X < low-0.01 || b.Max.X > low+all.Width()/float64(n)+0.01 {
				t.Errorf("piece %d lies at %g to %g, want within %g to %g", i, b.Min.X, b.Max.X, low, low+all.Width()/float64(n))
			}
		}
		if tol := 0.01 + 0.002*s.Perimeter(); math.Abs(sum-s.Area()) > tol {
			t.Errorf("pieces sum to %g, want %g within %g", sum, s.Area(), tol)
		}
	})
	for _, n := range []int{0, -1, 100000} {
		if _, err := mustShape(t, plate).SplitStrips(n, 0); err == nil {
			t.Errorf("%d strips taken", n)
		}
	}
	if _, err := mustShape(t, plate).SplitStrips(2, math.NaN()); err == nil {
		t.Error("strips along NaN taken")
	}
}

func TestClip(t *testing.T) {
	f := frame(t)
	got := f.Clip(geom.Box{Min: geom.Point{X: -5, Y: -5}, Max: geom.Point{X: 200, Y: 150}})
	near(t, "quarter of the frame", got.Area(), f.Area()/4, 1e-6)
	if got := f.Clip(geom.Box{Min: geom.Point{X: 500, Y: 0}, Max: geom.Point{X: 600, Y: 9}}); got != nil {
		t.Errorf("a box beside it: got %v, want nothing", got)
	}
	if got := f.Clip(geom.Box{}); got != nil {
		t.Errorf("no box: got %v, want nothing", got)
	}
}
