package geom

import (
	"fmt"
	"math"
)

// Ellipse returns an ellipse of the given full width and height about the
// origin, starting at (width/2, 0).
//
// It is a polygon of n vertices at even steps of the parameter angle, each set
// out by the factor
//
//	k = sqrt( (2 pi/n) / sin(2 pi/n) )
//
// which gives the polygon the ellipse's own area (to rounding). Vertices then
// stand at most Tolerance outside the ellipse and edges half as far inside; a
// circle's perimeter is long by Tolerance/d, 1 part in 10 000 at 100 mm. It panics
// unless both sizes are positive and at most MaxCoordinate: whoever reads them
// has to check them.
func Ellipse(width, height float64) Ring {
	if !(width > 0 && height > 0 && width <= MaxCoordinate && height <= MaxCoordinate) {
		panic(fmt.Sprintf("geom: ellipse %v × %v: both sizes must be positive and at most %g", width, height, MaxCoordinate))
	}
	a, b := width/2, height/2
	// k - 1 is about (2 pi/n)²/12, and a (k - 1) <= Tolerance gives the step.
	// A multiple of four keeps both axes lines of symmetry.
	n := 4 * int(math.Ceil(2*math.Pi/math.Sqrt(12*Tolerance/max(a, b))/4))
	n = max(n, 12)
	step := 2 * math.Pi / float64(n)
	k := math.Sqrt(step / math.Sin(step))
	r := make(Ring, n)
	for i := range r {
		sin, cos := math.Sincos(step * float64(i))
		r[i] = Point{k * a * cos, k * b * sin}
	}
	return r
}

// Circle returns a circle of diameter d about the origin; see Ellipse.
func Circle(d float64) Ring { return Ellipse(d, d) }

// Rectangle returns an upright rectangle about the origin whose corners are
// arcs of the given radius (0 for sharp ones). The corners' polygons have the
// arcs' own area. It panics unless both sizes are positive and at most
// MaxCoordinate and the radius is between 0 and half the smaller size.
func Rectangle(width, height, corner float64) Ring {
	if !(width > 0 && height > 0 && width <= MaxCoordinate && height <= MaxCoordinate && corner >= 0 && corner <= min(width, height)/2) {
		panic(fmt.Sprintf("geom: rectangle %v × %v with corners of %v: sizes must be positive and at most %g, the radius 0 to half the smaller size", width, height, corner, MaxCoordinate))
	}
	x, y := width/2-corner, height/2-corner
	if corner == 0 {
		return Ring{{x, -y}, {x, y}, {-x, y}, {-x, -y}}
	}
	r := Ring{}
	n := Point{0, -1}
	for _, c := range [4]Point{{x, -y}, {x, y}, {-x, y}, {-x, -y}} {
		r = appendArc(r, c, n, corner, math.Pi/2)
		n = Point{-n.Y, n.X}
	}
	// A stadium or a circle has sides of no length.
	out := r[:0]
	for i, p := range r {
		if q := r[(i+1)%len(r)]; p.sub(q).length() > Grid/2 {
			out = append(out, p)
		}
	}
	return out
}

// appendArc adds the polygon of an arc about c that starts at c + r n, n a unit
// vector, and turns by sweep, counter-clockwise if positive. r may be negative.
//
// The ends lie on the arc. The k-1 vertices between stand at radius u r, with u
// such that the sector keeps the arc's own area: two triangles of sides r, ur
// and k-2 of sides ur, ur, each of angle delta = sweep/k,
//
//	(k-2) u² + 2 u = k delta / sin(delta)
func appendArc(dst Ring, c, n Point, r, sweep float64) Ring {
	// For small delta u - 1 is sweep²/(12 k (k-1)), and |r| (u-1) <= Tolerance
	// gives k.
	k := max(2, int(math.Ceil(0.5+math.Sqrt(0.25+sweep*sweep*math.Abs(r)/(12*Tolerance)))))
	delta := sweep / float64(k)
	sin, cos := math.Sincos(delta)
	want := float64(k) * delta / sin
	u := want / 2
	if k > 2 {
		m := float64(k - 2)
		u = (math.Sqrt(1+m*want) - 1) / m
	}
	dst = append(dst, Point{c.X + r*n.X, c.Y + r*n.Y})
	for range k - 1 {
		n = n.rotate(cos, sin)
		dst = append(dst, Point{c.X + u*r*n.X, c.Y + u*r*n.Y})
	}
	n = n.rotate(cos, sin)
	return append(dst, Point{c.X + r*n.X, c.Y + r*n.Y})
}

// Sagitta returns how far an arc of the given radius rises over a chord, valid
// for a chord of at most the diameter (NaN beyond):
//
//	h = R - sqrt(R² - c²/4)
//
// written so that a flat arc keeps its digits.
func Sagitta(radius, chord float64) float64 {
	half := chord / 2
	return half * half / (radius + math.Sqrt(radius*radius-half*half))
}

// RadiusFromSagitta returns the radius of the arc that rises by sag over a
// chord; +Inf for sag 0, a flat panel:
//
//	R = c²/(8h) + h/2
func RadiusFromSagitta(chord, sag float64) float64 {
	return chord*chord/(8*sag) + sag/2
}
