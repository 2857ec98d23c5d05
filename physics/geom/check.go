package geom

import (
	"fmt"
	"math"
)

// NewShape returns the region inside a ring someone measured, whichever way
// round it was walked. Points are snapped to Grid; a point equal to the one
// before it, or to the first at the end, is dropped.
//
// It refuses a ring of fewer than three points, one with a point that is no
// place, one without area, and one that crosses, touches or doubles back on
// itself: an offset of such a ring would be wrong without a word. The error
// numbers points and edges from 1 as given; edge 3 runs from point 3 to the
// next.
func NewShape(r Ring) (Shape, error) {
	if len(r) > maxPoints {
		return nil, fmt.Errorf("outline has %d points, at most %d are read", len(r), maxPoints)
	}
	clean := make(Ring, 0, len(r))
	number := make([]int, 0, len(r)) // of the points kept, as given
	for i, p := range r {
		if err := p.check(); err != nil {
			return nil, fmt.Errorf("outline, point %d: %w", i+1, err)
		}
		p = Point{math.Round(p.X/Grid) * Grid, math.Round(p.Y/Grid) * Grid}
		if n := len(clean); n == 0 || clean[n-1] != p {
			clean, number = append(clean, p), append(number, i+1)
		}
	}
	if n := len(clean); n > 1 && clean[0] == clean[n-1] {
		clean, number = clean[:n-1], number[:n-1]
	}
	if len(clean) < 3 {
		return nil, fmt.Errorf("outline has %d different points, at least 3 are needed", len(clean))
	}
	for i, p := range clean {
		q, s := clean[(i+1)%len(clean)], clean[(i+2)%len(clean)]
		u, v := q.sub(p), s.sub(q)
		if u.cross(v) == 0 && u.dot(v) < 0 {
			return nil, fmt.Errorf("outline doubles back at point %d (%v): edge %d runs back along edge %d",
				number[(i+1)%len(clean)], q, number[(i+1)%len(clean)], number[i])
		}
	}
	area := clean.Area()
	if math.Abs(area) < minArea {
		return nil, fmt.Errorf("outline encloses no area")
	}
	if area < 0 {
		clean = clean.Reverse()
	}
	return normal([]Ring{clean}), nil
}

const maxPoints = 20000
