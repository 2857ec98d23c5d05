package geom_test

import (
	"fmt"
	"math"
	"testing"

	"scarfwright/physics/geom"
)

// The closed form: hole of radius 50, 6 thick. 12:1 gives outer radius 122,
// bond area 39 040.3 mm², 147.554 mL; 20:1 gives 170, 83 041.7 and 250.699.
// Independent computation: pi t/3 (R² + R r + r²) and pi (R + r) × slant, by
// hand calculator.
func TestConeFrustum(t *testing.T) {
	for _, c := range []struct{ ratio, outer, bond, volume float64 }{
		{12, 122, 39040.3, 147554}, {20, 170, 83041.7, 250699},
	} {
		outer, bond, volume := geom.ConeFrustum(50, c.ratio, 6)
		near(t, "outer radius", outer, c.outer, 1e-9)
		near(t, "bond area", bond, c.bond, 0.05)
		near(t, "volume", volume, c.volume, 0.5)
		// The polygon that stands for the circle has its area, and a perimeter
		// long by up to 1 in 10 000.
		hole := geom.Shape{geom.Circle(100)}
		got, err := geom.TaperFrustum(hole, c.ratio, 6)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "polygon's volume", got/volume, 1, 1e-4)
		// The slope is 1/R everywhere: bond = plan sqrt(1 + 1/R²).
		edge := offset(t, hole, c.ratio*6)
		near(t, "polygon's bond area", (edge.Area()-hole.Area())*math.Sqrt(1+1/(c.ratio*c.ratio))/bond, 1, 1e-4)
	}
}

// For other outlines the four-point rule is held against Simpson's with 128
// steps over the recorded outlines.
func TestTaperFrustumOfAnyOutline(t *testing.T) {
	worst := 0.0
	for i, o := range readRecorded(t).Outlines {
		if i >= 100 || i%4 != 0 && testing.Short() {
			continue
		}
		s := mustShape(t, o.Ring)
		const ratio, thick, n = 12.0, 6.0, 64
		sum := 0.0
		for k := range n + 1 {
			w := 2.0 + 2*float64(k%2)
			if k == 0 || k == n {
				w = 1
			}
			sum += w * offset(t, s, ratio*thick*float64(k)/n).Area()
		}
		want := sum * thick / n / 3
		got, err := geom.TaperFrustum(s, ratio, thick)
		if err != nil {
			t.Fatal(err)
		}
		if rel := math.Abs(got/want - 1); rel > worst {
			worst = rel
		}
		near(t, fmt.Sprintf("outline %d (%s)", i, o.Kind), got/want, 1, 1e-3)
	}
	t.Logf("worst %.4f %%", 100*worst)
}

func TestTaperFrustumLimits(t *testing.T) {
	s := mustShape(t, ell)
	v, err := geom.TaperFrustum(s, 0, 6)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "no taper: a prism", v, 4500*6, 1e-6)
	v, err = geom.TaperFrustum(s, 12, 0)
	if err != nil || v != 0 {
		t.Errorf("no thickness: got %g, %v", v, err)
	}
	for _, c := range [][2]float64{{-1, 6}, {12, -1}, {math.NaN(), 6}, {12, math.Inf(1)}} {
		if _, err := geom.TaperFrustum(s, c[0], c[1]); err == nil {
			t.Errorf("taper %v taken", c)
		}
	}
}
