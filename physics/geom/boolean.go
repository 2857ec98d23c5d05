package geom

import "fmt"

// Union returns the points in a or in b or in both.
func Union(a, b Shape) (Shape, error) {
	return combine("union", a, b, func(inA, inB bool) bool { return inA || inB })
}

// Intersect returns the points in both a and b; the empty shape where they do
// not overlap.
func Intersect(a, b Shape) (Shape, error) {
	return combine("intersection", a, b, func(inA, inB bool) bool { return inA && inB })
}

// Subtract returns the points in a but not in b.
func Subtract(a, b Shape) (Shape, error) {
	return combine("difference", a, b, func(inA, inB bool) bool { return inA && !inB })
}

// combine reads both shapes as even-odd, so that crossing rings, too, mean what
// Shape says, and returns the region where in holds. Its edge stands within
// Grid of the exact one, slivers of less than minArea left out.
func combine(what string, a, b Shape, in func(inA, inB bool) bool) (Shape, error) {
	var m mesh
	for k, s := range [2]Shape{a, b} {
		if err := s.usable(); err != nil {
			return nil, fmt.Errorf("%s: %w", what, err)
		}
		for _, r := range s {
			m.add(r, int8(k))
		}
	}
	rings, err := m.enclosed(func(w windings) bool { return in(w[0]&1 != 0, w[1]&1 != 0) })
	if err != nil {
		return nil, fmt.Errorf("%s: %w", what, err)
	}
	return normal(rings), nil
}

// usable refuses a shape with a coordinate that is no number or too far away.
func (s Shape) usable() error {
	for i, r := range s {
		for j, p := range r {
			if err := p.check(); err != nil {
				return fmt.Errorf("ring %d, point %d: %w", i+1, j+1, err)
			}
		}
	}
	return nil
}
