package geom

import (
	"fmt"
	"math"
)

// Round returns the shape with every corner rounded to at least radius r where
// that fits: an opening, which takes the tips off outward corners, and a
// closing, which fills inward ones. Parts and necks narrower than 2r go, gaps
// and holes narrower than 2r fill.
func (s Shape) Round(r float64) (Shape, error) {
	if err := radius(r); err != nil {
		return nil, err
	}
	return s.offsets(-r, r, r, -r)
}

// RoundOut returns a shape that holds all of s and whose corners have at least
// radius r where that fits: the cut-out round a dead area, of which nothing may
// stay. It is s closed by r, grown by the least e that serves, and opened by r.
//
// At a lone corner of angle theta the opening draws the tip back by
// (r - e)/sin(theta/2) - (r - e), and the tip stays covered from
//
//	e = r (1 - sin(theta/2))
//
// on: 0.29 r at a square corner. Where short edges follow each other that is too
// little, and e is sought between it and r, which always serves, to an eighth of
// r.
func (s Shape) RoundOut(r float64) (Shape, error) {
	if err := radius(r); err != nil {
		return nil, err
	}
	if r == 0 || len(s) == 0 {
		return s, nil
	}
	closed, err := s.offsets(r, -r)
	if err != nil {
		return nil, err
	}
	least := 0.0
	for _, ring := range s {
		for i, p := range ring {
			u, v := ring[(i+1)%len(ring)].sub(p), ring[(i+2)%len(ring)].sub(ring[(i+1)%len(ring)])
			if turn := math.Atan2(u.cross(v), u.dot(v)); turn > 0 {
				least = max(least, r*(1-math.Cos(turn/2)))
			}
		}
	}
	// Tolerance stands for the polygons' own error.
	e, low, high := min(least+Tolerance, r), 0.0, r
	var best Shape
	for range roundOutSteps {
		out, err := closed.offsets(e, -r, r)
		if err != nil {
			return nil, err
		}
		if s.within(out) {
			best, high = out, e
		} else {
			low = e
		}
		if low == 0 {
			break // the least that can serve did
		}
		e = (low + high) / 2
	}
	if best == nil {
		return closed.Offset(r) // opening by r changes nothing now
	}
	return best, nil
}

// roundOutSteps leaves at most an eighth of r more growth than needed, 3 mm at
// a corner radius of 25 mm.
const roundOutSteps = 4

// within reports whether every vertex of s lies in t or on its edge, to within
// Tolerance.
func (s Shape) within(t Shape) bool {
	for _, r := range s {
		for _, p := range r {
			if !t.Contains(p) && t.Distance(p) > Tolerance {
				return false
			}
		}
	}
	return true
}

func (s Shape) offsets(ds ...float64) (Shape, error) {
	var err error
	for _, d := range ds {
		if s, err = s.Offset(d); err != nil {
			return nil, err
		}
	}
	return s, nil
}

func radius(r float64) error {
	if !(r >= 0 && r <= MaxCoordinate) {
		return fmt.Errorf("corner radius %g: want 0 to %g", r, MaxCoordinate)
	}
	return nil
}
