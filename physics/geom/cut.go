package geom

import (
	"fmt"
	"math"
)

// Clip returns what of the shape lies in the box. It panics where the shape
// holds a coordinate that NewShape refuses.
func (s Shape) Clip(b Box) Shape {
	if b.Width() <= 0 || b.Height() <= 0 {
		return nil
	}
	window := Shape{{b.Min, {b.Max.X, b.Min.Y}, b.Max, {b.Min.X, b.Max.Y}}}
	out, err := Intersect(s, window)
	if err != nil {
		panic("geom: Clip: " + err.Error())
	}
	return out
}

// SplitStrips cuts the shape into n pieces of equal width, the widths measured
// along the direction angle and the cuts square to it, in that direction's
// order. A strip of a bent shape may be of several parts, and a strip across a
// gap of none.
func (s Shape) SplitStrips(n int, angle float64) ([]Shape, error) {
	if n < 1 || n > maxStrips {
		return nil, fmt.Errorf("%d strips: want 1 to %d", n, maxStrips)
	}
	if math.IsNaN(angle) || math.IsInf(angle, 0) {
		return nil, fmt.Errorf("strips along %v: want an angle in radians", angle)
	}
	out := make([]Shape, n)
	b := s.Rotate(-angle).Bounds()
	sin, cos := math.Sincos(angle)
	at := func(i int, y float64) Point {
		return Point{b.Min.X + b.Width()*float64(i)/float64(n), y}.rotate(cos, sin)
	}
	low, high := b.Min.Y-1, b.Max.Y+1
	for i := range out {
		strip := Shape{{at(i, low), at(i+1, low), at(i+1, high), at(i, high)}}
		// The outermost strips reach past the shape, so that rounding of the
		// turned box shaves nothing off.
		if i == 0 {
			strip[0][0], strip[0][3] = strip[0][0].add(Point{-cos, -sin}), strip[0][3].add(Point{-cos, -sin})
		}
		if i == n-1 {
			strip[0][1], strip[0][2] = strip[0][1].add(Point{cos, sin}), strip[0][2].add(Point{cos, sin})
		}
		var err error
		if out[i], err = Intersect(s, strip); err != nil {
			return nil, fmt.Errorf("strip %d of %d: %w", i+1, n, err)
		}
	}
	return out, nil
}

// maxStrips only keeps a slip of the pen from filling the memory.
const maxStrips = 1000
