package geom

import (
	"fmt"
	"math"
)

// maxPoints bounds an outline that is read in: a traced one has some hundreds
// of points, and the test for crossings slows with the square of what overlaps.
const maxPoints = 20000

// NewShape returns the region inside a ring someone measured, whichever way
// round it was walked. Points are snapped to Grid; a point equal to the one
// before it, or to the first at the end, is dropped.
//
// It refuses a ring of fewer than three points, one with a point that is no
// place, one without area, and one that crosses, touches or doubles back on
// itself: which side of such a line is the damage cannot be told. The error
// numbers points and edges from 1 as given; edge 3 runs from point 3 to the
// next.
func NewShape(r Ring) (Shape, error) {
	if len(r) > maxPoints {
		return nil, fmt.Errorf("outline has %d points, at most %d are read", len(r), maxPoints)
	}
	ring := make(Ring, 0, len(r))
	given := make([]int, 0, len(r)) // number of each point kept
	for i, p := range r {
		if err := p.check(); err != nil {
			return nil, fmt.Errorf("outline, point %d: %w", i+1, err)
		}
		if p = p.snapped(); len(ring) == 0 || ring[len(ring)-1] != p {
			ring, given = append(ring, p), append(given, i+1)
		}
	}
	for len(ring) > 1 && ring[0] == ring[len(ring)-1] {
		ring, given = ring[:len(ring)-1], given[:len(given)-1]
	}
	if len(ring) < 3 {
		return nil, fmt.Errorf("outline has %d different points, at least 3 are needed", len(ring))
	}
	if ring.convex() {
		return normal([]Ring{ring}), nil
	}
	if err := ring.crossing(given); err != nil {
		return nil, err
	}
	switch a := ring.Area(); {
	case math.Abs(a) < minArea:
		return nil, fmt.Errorf("outline encloses next to nothing: %.2g square units", math.Abs(a))
	case a < 0:
		ring = ring.Reverse()
	}
	return normal([]Ring{ring}), nil
}

// crossing returns an error naming the first two edges, by number, that have
// more in common than the point where one ends and the next starts.
func (r Ring) crossing(given []int) error {
	var m mesh
	m.add(r, 0)
	type place struct{ e, f, x, y int32 }
	first := place{e: math.MaxInt32}
	for _, p := range m.near() {
		e, f := p.e, p.f
		splits := m.pair(e, f, nil)
		found := place{min(e, f), max(e, f), 0, 0}
		touch := false
		if len(splits) > 0 {
			found.x, found.y, touch = splits[0].x, splits[0].y, true
		}
		for _, i := range [4]int32{e, f, m.v[e].next, m.v[f].next} {
			if v := &m.v[i]; v.node {
				found.x, found.y, touch = v.x, v.y, true
				v.node = false
			}
		}
		if touch && (found.e < first.e || found.e == first.e && found.f < first.f) {
			first = found
		}
	}
	if first.e == math.MaxInt32 {
		return nil
	}
	end := func(i int32) Point { return r[(int(i)+1)%len(r)] }
	near := Point{unsnap(first.x), unsnap(first.y)}
	return fmt.Errorf("outline meets itself near %.6g,%.6g: edge %d (%v to %v) and edge %d (%v to %v)",
		near.X, near.Y, given[first.e], r[first.e], end(first.e), given[first.f], r[first.f], end(first.f))
}
