package geom_test

import (
	"math"
	"testing"

	"scarfwright/physics/geom"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.9g, want %.9g within %.3g", what, got, want, tol)
	}
}

// An ellipse's polygon has the ellipse's area pi a b, and its vertices stand
// outside the curve by no more than Tolerance.
func TestEllipse(t *testing.T) {
	for _, c := range [][2]float64{{300, 200}, {100, 100}, {60, 40}, {1000, 50}, {20, 20}, {6, 6}} {
		a, b := c[0]/2, c[1]/2
		r := geom.Ellipse(c[0], c[1])
		near(t, "area / pi a b", r.Area()/(math.Pi*a*b), 1, 1e-12)
		if c := r.Centroid(); math.Hypot(c.X, c.Y) > 1e-9 {
			t.Errorf("%v: centroid got %v, want the origin", c, r.Centroid())
		}
		for _, p := range r {
			f := math.Hypot(p.X/a, p.Y/b) // 1 on the curve; radial distance bounds the true one
			if out := (f - 1) * math.Hypot(p.X, p.Y); out < 0 || out > geom.Tolerance {
				t.Fatalf("%v: vertex %v stands %.4f outside, want 0 to %g", c, p, out, geom.Tolerance)
			}
		}
		if !(r[0].Y == 0 && r[0].X > 0) {
			t.Errorf("%v: starts at %v, want on the +x axis", c, r[0])
		}
	}
	// Closed form: perimeter pi d, here to the Tolerance/d the doc states.
	for _, d := range []float64{30, 100, 600} {
		near(t, "circle perimeter / pi d", geom.Circle(d).Perimeter()/(math.Pi*d), 1, geom.Tolerance/d)
	}
	// 4 a E(e) for a 300 × 200 ellipse, by independent numerical quadrature
	// of the arc length below.
	sum, n := 0.0, 100000
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(n))
		sum += math.Hypot(150*s, 100*c) * 2 * math.Pi / float64(n)
	}
	near(t, "perimeter 300 × 200", geom.Ellipse(300, 200).Perimeter()/sum, 1, 1e-4)
}

// A rectangle with round corners has the area w h - (4 - pi) r².
func TestRectangle(t *testing.T) {
	for _, c := range [][3]float64{{200, 100, 0}, {200, 100, 25}, {200, 100, 50}, {100, 100, 50}, {40, 30, 0.5}} {
		w, h, r := c[0], c[1], c[2]
		ring := geom.Rectangle(w, h, r)
		near(t, "area", ring.Area(), w*h-(4-math.Pi)*r*r, 1e-9*w*h)
		near(t, "perimeter", ring.Perimeter(), 2*(w+h)-(8-2*math.Pi)*r, 2*math.Pi*geom.Tolerance)
		b := ring.Bounds()
		near(t, "width", b.Width(), w, 2*geom.Tolerance)
		near(t, "height", b.Height(), h, 2*geom.Tolerance)
		if _, err := geom.NewShape(ring); err != nil {
			t.Errorf("rectangle %v: %v", c, err)
		}
	}
}

func TestCurvesRefuseWhatTheyCannotDraw(t *testing.T) {
	for name, f := range map[string]func(){
		"negative ellipse":     func() { geom.Ellipse(-1, 5) },
		"ellipse of NaN":       func() { geom.Ellipse(math.NaN(), 5) },
		"ellipse of Inf":       func() { geom.Ellipse(math.Inf(1), 5) },
		"flat rectangle":       func() { geom.Rectangle(10, 0, 0) },
		"corner beyond half":   func() { geom.Rectangle(10, 8, 4.1) },
		"negative corner":      func() { geom.Rectangle(10, 8, -1) },
		"line through nothing": func() { geom.Shape{geom.Circle(10)}.SignedClearance(geom.Point{}, geom.Point{}, geom.Point{}) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s: no panic", name)
				}
			}()
			f()
		}()
	}
}

// Closed form: the 3-4-5 triangle. A radius of 5 over a chord of 8 rises 2.
func TestSagitta(t *testing.T) {
	near(t, "sagitta", geom.Sagitta(5, 8), 2, 1e-12)
	near(t, "radius", geom.RadiusFromSagitta(8, 2), 5, 1e-12)
	near(t, "half circle", geom.Sagitta(5, 10), 5, 1e-12)
	if r := geom.RadiusFromSagitta(600, 0); !math.IsInf(r, 1) {
		t.Errorf("flat panel: radius got %g, want +Inf", r)
	}
	// Nearly flat: c²/(8R), which R - sqrt(R² - c²/4) would lose to rounding.
	near(t, "flat arc", geom.Sagitta(1e9, 100)/(100*100/(8*1e9)), 1, 1e-9)
	for r := 300.0; r < 1e6; r *= 3 {
		near(t, "there and back", geom.RadiusFromSagitta(500, geom.Sagitta(r, 500))/r, 1, 1e-9)
	}
}
