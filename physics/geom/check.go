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
	given := make([]int, 0, len(r)) // number of the edge from each point kept
	for i, p := range r {
		if err := p.check(); err != nil {
			return nil, fmt.Errorf("outline, point %d: %w", i+1, err)
		}
		if p = p.snapped(); len(ring) > 0 && ring[len(ring)-1] == p {
			given[len(given)-1] = i + 1
			continue
		}
		ring, given = append(ring, p), append(given, i+1)
	}
	for len(ring) > 1 && ring[0] == ring[len(ring)-1] {
		ring, given = ring[:len(ring)-1], given[:len(given)-1]
	}
	if len(ring) < 3 {
		return nil, fmt.Errorf("outline has %d different points, at least 3 are needed", len(ring))
	}
	if !ring.convex() {
		if err := ring.crossing(given); err != nil {
			return nil, err
		}
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
// more in common than the point where one ends and the next starts; two in a
// row, where the line doubles back, before any others.
func (r Ring) crossing(given []int) error {
	var m mesh
	m.add(r, 0)
	type place struct {
		rank, e, f int
		at         Point
	}
	first := place{rank: math.MaxInt}
	for _, p := range m.near() {
		e, f := min(p.e, p.f), max(p.e, p.f)
		met := m.pair(e, f, nil)
		for _, i := range [4]int32{e, f, m.v[e].next, m.v[f].next} {
			if v := &m.v[i]; v.node {
				met = append(met, split{x: v.x, y: v.y})
				v.node = false
			}
		}
		if len(met) == 0 {
			continue
		}
		found := place{int(e)*len(r) + int(f), int(e), int(f), Point{unsnap(met[len(met)-1].x), unsnap(met[len(met)-1].y)}}
		if m.v[e].next == f || m.v[f].next == e {
			found.rank -= len(r) * len(r)
		}
		if found.rank < first.rank {
			first = found
		}
	}
	if first.rank == math.MaxInt {
		return nil
	}
	end := func(i int) Point { return r[(i+1)%len(r)] }
	return fmt.Errorf("outline meets itself near %v: edge %d (%v to %v) and edge %d (%v to %v)",
		first.at, given[first.e], r[first.e], end(first.e), given[first.f], r[first.f], end(first.f))
}
