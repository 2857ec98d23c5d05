package laminate_test

import (
	"math"
	"testing"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// A solid strip: 3/2 of the mean in the middle, nothing at the faces, a parabola
// between (closed form).
func TestShearOfASolidStrip(t *testing.T) {
	layers := []laminate.Layer{{Thickness: si.MM(2), Tension: si.GPa(7)}, {Thickness: si.MM(4), Tension: si.GPa(7)}}
	const V = si.LineLoad(6000)
	mean := float64(V) / 0.006
	for _, c := range []struct{ mm, times float64 }{{0, 0}, {1.5, 1.125}, {3, 1.5}, {4.5, 1.125}, {6, 0}} {
		if got := float64(laminate.InterlaminarShear(layers, V, si.MM(c.mm))) / mean; math.Abs(got-c.times) > 1e-12 {
			t.Errorf("at %g mm: %g of the mean, want %g", c.mm, got, c.times)
		}
	}
}
