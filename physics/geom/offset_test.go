package geom_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/geom"
)

// tol is how far a vertex of an offset may stand from its distance: Tolerance
// from the arc's polygon, as much again where two polygons cross, and rounding.
const tol = 2*geom.Tolerance + 4*geom.Grid

// anyShape draws a star-shaped outline of 3 to 40 points, 20 to 600 mm across,
// sharp corners in and out, somewhere off the origin.
func anyShape(t *rapid.T) geom.Shape {
	n := rapid.IntRange(3, 40).Draw(t, "points")
	size := rapid.Float64Range(20, 600).Draw(t, "size")
	r := make(geom.Ring, n)
	for i := range r {
		d := size / 2 * rapid.Float64Range(0.2, 1).Draw(t, "r")
		s, c := math.Sincos(2 * math.Pi * (float64(i) + rapid.Float64Range(0, 0.9).Draw(t, "turn")) / float64(n))
		r[i] = geom.Point{X: d * c, Y: d * s}
	}
	dx, dy := rapid.Float64Range(-500, 500).Draw(t, "dx"), rapid.Float64Range(-500, 500).Draw(t, "dy")
	s, err := geom.NewShape(r.Translate(dx, dy))
	if err != nil {
		t.Skip(err)
	}
	return s
}

// anyConvex draws a hull.
func anyConvex(t *rapid.T) geom.Shape {
	s, err := geom.NewShape(anyShape(t).Hull())
	if err != nil {
		t.Skip(err)
	}
	return s
}

func offset(t rapid.TB, s geom.Shape, d float64) geom.Shape {
	t.Helper()
	out, err := s.Offset(d)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Steiner's formula: a convex outline grown by d has the area A + P d + pi d².
func TestConvexOffsetFollowsSteiner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyConvex(t)
		d := rapid.Float64Range(0.5, 300).Draw(t, "d")
		want := s.Area() + s.Perimeter()*d + math.Pi*d*d
		got := offset(t, s, d).Area()
		if math.Abs(got-want) > 1e-4*want+geom.Grid*s.Perimeter() {
			t.Errorf("by %g: area got %g, want %g", d, got, want)
		}
	})
}

// A convex outline grown and shrunk by the same distance is itself again.
func TestConvexOffsetThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyConvex(t)
		d := rapid.Float64Range(0.5, 200).Draw(t, "d")
		back := offset(t, offset(t, s, d), -d)
		diff, err := geom.Subtract(back, s)
		if err != nil {
			t.Fatal(err)
		}
		lost, err := geom.Subtract(s, back)
		if err != nil {
			t.Fatal(err)
		}
		if got, most := diff.Area()+lost.Area(), 0.1+tol*s.Perimeter(); got > most {
			t.Errorf("by ±%g: differs by %g, want at most %g", d, got, most)
		}
	})
}

// Every vertex of an offset stands at its distance from the outline, on the
// right side of it.
func TestOffsetVerticesStandAtTheirDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		d := rapid.Float64Range(-60, 200).Draw(t, "d")
		if math.Abs(d) < 0.1 {
			t.Skip("next to nothing")
		}
		for _, r := range offset(t, s, d) {
			for _, p := range r {
				if got := s.Distance(p); math.Abs(got-math.Abs(d)) > tol {
					t.Errorf("by %g: vertex %v stands %g away", d, p, got)
				}
				if s.Contains(p) != (d < 0) {
					t.Errorf("by %g: vertex %v on the wrong side", d, p)
				}
			}
		}
	})
}

// An outline grown contains the original; more growth gives more area, and
// Steiner's formula bounds it; less than nothing gives less.
func TestOffsetGrowsWithDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		last := -1.0
		for _, d := range []float64{-80, -30, -5, -0.5, 0, 0.5, 5, 30, 80, 200} {
			o := offset(t, s, d)
			a := o.Area()
			if a < last-geom.Grid*o.Perimeter() {
				t.Errorf("by %g: area %g is less than %g before", d, a, last)
			}
			last = a
			if most := s.Area() + s.Perimeter()*d + math.Pi*d*d; d > 0 && a > most*(1+1e-4)+geom.Grid*o.Perimeter() {
				t.Errorf("by %g: area %g above Steiner's %g", d, a, most)
			}
			inner, outer := s, o
			if d < 0 {
				inner, outer = o, s
			}
			if lost, err := geom.Subtract(inner, outer); err != nil || lost.Area() > 0.05 {
				t.Errorf("by %g: %g mm² of the inner outline lie outside the outer one (%v)", d, lost.Area(), err)
			}
		}
	})
}

// Moving or turning the outline moves or turns the offset.
func TestOffsetDoesNotDependOnPlaceOrTurn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		d := rapid.Float64Range(-40, 150).Draw(t, "d")
		want := offset(t, s, d)
		a := rapid.Float64Range(0, 6.3).Draw(t, "angle")
		moved := s.Translate(1234.567, -890.123).Rotate(a)
		got := offset(t, moved, d)
		if most := 0.5 + tol*want.Perimeter(); math.Abs(got.Area()-want.Area()) > most {
			t.Errorf("by %g: area got %g, want %g", d, got.Area(), want.Area())
		}
	})
}

// A plate with a hole. 400 × 300 with a 200 × 100 hole, rim 100 wide: closed
// forms with quarter arcs outside, square corners inside.
func TestOffsetWithHole(t *testing.T) {
	f := frame(t)
	for _, c := range []struct {
		why     string
		d, want float64
		rings   int
	}{
		{"grown by 20 the hole shrinks to 160 × 60", 20, 400*300 + 1400*20 + math.Pi*400 - 160*60, 2},
		{"grown by 60 the hole has closed", 60, 400*300 + 1400*60 + math.Pi*3600, 1},
		{"shrunk by 20 the hole's corners are round", -20, 360*260 - (200*100 + 600*20 + math.Pi*400), 2},
		{"shrunk by 60 the 100 mm rim is gone", -60, 0, 0},
	} {
		got := offset(t, f, c.d)
		near(t, c.why, got.Area(), c.want, 0.0001*f.Area())
		if len(got) != c.rings {
			t.Errorf("%s: got %d rings, want %d", c.why, len(got), c.rings)
		}
	}
	// An island in the hole is its own part: it grows, and merges.
	with, err := geom.Union(f, mustShape(t, "180,140 220,140 220,160 180,160"))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "island, grown by 10", offset(t, with, 10).Area(),
		400*300+1400*10+math.Pi*100-180*80+40*20+120*10+math.Pi*100, 2)
	near(t, "island, shrunk by 5", offset(t, with, -5).Area(),
		390*290-(200*100+600*5+math.Pi*25)+30*10, 2)
	if got := offset(t, with, 60); len(got) != 1 {
		t.Errorf("island, grown by 60: got %d rings, want 1", len(got))
	}
}

// A neck gives way: two discs of 60 mm joined by a 10 mm bar.
func TestOffsetSplitsAndVanishes(t *testing.T) {
	disc := geom.Shape{geom.Circle(60)}
	bar := mustShape(t, "0,-5 100,-5 100,5 0,5")
	s, err := geom.Union(disc, disc.Translate(100, 0))
	if err != nil {
		t.Fatal(err)
	}
	if s, err = geom.Union(s, bar); err != nil {
		t.Fatal(err)
	}
	if len(s) != 1 {
		t.Fatalf("union: got %d rings, want 1", len(s))
	}
	two := offset(t, s, -6)
	if len(two) != 2 || len(two.Parts()) != 2 {
		t.Fatalf("shrunk by 6: got %d rings, want 2", len(two))
	}
	// Two discs of 48 mm, and a little more where the neck joins each.
	for _, p := range two.Parts() {
		if a, disc := p.Area(), math.Pi*24*24; a < disc-0.1 || a > disc+10 {
			t.Errorf("part: area got %g, want %g to %g", a, disc, disc+10)
		}
	}
	if none := offset(t, s, -31); none != nil {
		t.Errorf("shrunk by 31: got %v, want nothing", none)
	}
	if again := offset(t, nil, 5); again != nil {
		t.Errorf("nothing grown: got %v, want nothing", again)
	}
}

func TestOffsetRefuses(t *testing.T) {
	s := mustShape(t, plate)
	for _, d := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e6} {
		if _, err := s.Offset(d); err == nil || !strings.Contains(err.Error(), "offset by") {
			t.Errorf("by %g: error %v", d, err)
		}
	}
	if _, err := (geom.Shape{{{0, 0}, {100, 0}, {math.NaN(), 5}}}).Offset(5); err == nil || !strings.Contains(err.Error(), "point 3") {
		t.Errorf("NaN in the outline: error %v does not name point 3", err)
	}
	// A figure of eight, put together by hand past NewShape: half of it has
	// the wrong side in.
	if got, err := (geom.Shape{{{0, 0}, {100, 100}, {100, 0}, {0, 100}}}).Offset(5); err == nil {
		t.Errorf("a figure of eight taken: area %g", got.Area())
	}
}

// Labels stay put: the start of an offset outline, seen from the centroid, does
// not jump when the distance changes a little.
func TestOffsetStartsInTheSameDirection(t *testing.T) {
	s := blob()
	for d := 1.0; d < 150; d += 3 {
		o := offset(t, s, d)
		c, p := o[0].Centroid(), o[0][0]
		if a := math.Atan2(p.Y-c.Y, p.X-c.X); a < 0 || a > 0.2 {
			t.Errorf("by %g: starts at %.3f rad, want just past +x", d, a)
		}
	}
}

func TestRound(t *testing.T) {
	s := mustShape(t, "0,0 200,0 200,100 0,100")
	r, err := s.Round(25)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rounded rectangle", r.Area(), 200*100-(4-math.Pi)*625, 1)
	// RoundOut grows by e = 25 (1 - sin 45°) = 7.32 each side.
	e := 25 * (1 - math.Sqrt2/2)
	out, err := s.RoundOut(25)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rounded out", out.Area(), (200+2*e)*(100+2*e)-(4-math.Pi)*625, 8)
	// The L's inward corner is filled by (1 - pi/4) r², its outward ones cut.
	l, err := mustShape(t, ell).Round(10)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rounded L", l.Area(), 4500-5*(1-math.Pi/4)*100+(1-math.Pi/4)*100, 0.5)
	if r, err := s.Round(51); err != nil || r != nil {
		t.Errorf("rounded by more than half its height: got %v, %v, want nothing", r, err)
	}
	for _, r := range []float64{-1, math.NaN(), math.Inf(1)} {
		if _, err := s.Round(r); err == nil {
			t.Errorf("Round(%g) taken", r)
		}
		if _, err := s.RoundOut(r); err == nil {
			t.Errorf("RoundOut(%g) taken", r)
		}
	}
}

// RoundOut holds the whole of the original, exceeds it by no more than growing
// by r would, and is round: opening it by a hair less than r takes next to
// nothing. (By r itself, what was a sliver to begin with would go.)
func TestRoundOutContainsTheOriginal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := anyShape(t)
		r := rapid.Float64Range(1, 40).Draw(t, "r")
		out, err := s.RoundOut(r)
		if err != nil {
			t.Fatal(err)
		}
		lost, err := geom.Subtract(s, out)
		if err != nil {
			t.Fatal(err)
		}
		if most := 0.02 + 2*geom.Tolerance*s.Perimeter()/10; lost.Area() > most {
			t.Errorf("r %g: %g mm² of the original are left out", r, lost.Area())
		}
		if grown := offset(t, s, r); out.Area() > offset(t, grown, 0.05).Area() {
			t.Errorf("r %g: area %g exceeds the outline grown by r, %g", r, out.Area(), grown.Area())
		}
		open := offset(t, offset(t, out, 0.1-r), r-0.1)
		if d := out.Area() - open.Area(); d > 0.5+0.02*out.Perimeter() {
			t.Errorf("r %g: opening takes another %g mm²", r, d)
		}
	})
}

// The benchmark's outline. Areas from an independent computation: shapely 1.8.5
// with 4096 steps a quarter turn.
func TestBlobReferenceAreas(t *testing.T) {
	s := blob()
	near(t, "area", s.Area(), 98445.327189, 0.7) // the outline is snapped to 0.001 mm
	near(t, "perimeter", s.Perimeter(), 1403.419332, 0.02)
	for d, want := range map[float64]float64{
		12: 115706.659, 24: 133680.050, 36: 152354.412, 48: 171785.612, 60: 192027.057, 72: 213086.605,
		84: 234950.664, 96: 257634.278, 108: 281160.026, 120: 305542.364, 132: 330791.691, 144: 356916.483,
		-4: 92883.369, -8: 87424.848, -12: 82070.860, -16: 76833.219, -20: 71732.361, -24: 66782.194,
		-28: 61985.324, -32: 57340.462, -36: 52844.774, -40: 48491.203, -44: 44275.143, -48: 40194.664,
	} {
		near(t, fmt.Sprintf("by %g", d), offset(t, s, d).Area()/want, 1, 1e-4)
	}
}

func FuzzOffset(f *testing.F) {
	f.Add([]byte{0, 0, 100, 0, 100, 50, 0, 50}, 12.0)
	f.Add([]byte{0, 0, 100, 100, 100, 0, 0, 100}, -3.0)
	f.Add([]byte{0, 0, 100, 0, 100, 40, 130, 40, 100, 40, 100, 80, 0, 80}, 7.5)
	f.Fuzz(func(t *testing.T, b []byte, d float64) {
		if len(b) > 200 {
			return
		}
		var r geom.Ring
		for i := 0; i+1 < len(b); i += 2 {
			r = append(r, geom.Point{X: float64(int8(b[i])), Y: float64(int8(b[i+1]))})
		}
		_, _ = geom.Shape{r}.Offset(d) // whatever the ring, no panic
		s, err := geom.NewShape(r)
		if err != nil || !(math.Abs(d) <= 300) {
			return
		}
		o, err := s.Offset(d)
		if err != nil {
			t.Fatalf("%v by %g: %v", s, d, err)
		}
		for _, r := range o {
			for _, p := range r {
				if got := s.Distance(p); math.Abs(d) > 0.1 && math.Abs(got-math.Abs(d)) > tol {
					t.Errorf("%v by %g: vertex %v stands %g away", s, d, p, got)
				}
			}
		}
	})
}
