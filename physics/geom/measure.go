package geom

import (
	"cmp"
	"math"
	"slices"
)

// Distance returns the distance from p to the nearest edge, inside or outside
// alike; +Inf for the empty shape.
func (s Shape) Distance(p Point) float64 {
	best := math.Inf(1)
	for _, r := range s {
		for a, b := range r.edges() {
			best = min(best, toSegment(p, a, b))
		}
	}
	return best
}

// DistanceToSegment returns the distance between the region and the segment
// a-b: 0 where any of it lies in the region or on its edge, +Inf for the empty
// shape.
func (s Shape) DistanceToSegment(a, b Point) float64 {
	if s.Contains(a) || s.Contains(b) {
		return 0
	}
	best := math.Inf(1)
	for _, r := range s {
		for p, q := range r.edges() {
			if segmentsMeet(a, b, p, q) {
				return 0
			}
			best = min(best, toSegment(p, a, b), toSegment(a, p, q), toSegment(b, p, q))
		}
	}
	return best
}

// SignedClearance returns what is left between the shape and the infinite line
// through a and b, counted from the side on which ref lies: positive while the
// whole shape keeps to that side, negative by as much as it reaches across.
// With ref on the line the left of a-b is its side. The empty shape gives +Inf.
// It panics where a and b are the same point.
func (s Shape) SignedClearance(ref, a, b Point) float64 {
	along := b.sub(a)
	if along == (Point{}) {
		panic("geom: SignedClearance wants two different points for its line")
	}
	side := 1 / along.length()
	if along.cross(ref.sub(a)) < 0 {
		side = -side
	}
	best := math.Inf(1)
	for _, r := range s {
		for _, p := range r {
			best = min(best, side*along.cross(p.sub(a)))
		}
	}
	return best
}

// Ray returns the distance from a point to the farthest edge met in a
// direction; ok is false where none is met.
func (s Shape) Ray(from Point, angle float64) (dist float64, ok bool) {
	sin, cos := math.Sincos(angle)
	d := Point{cos, sin}
	for _, r := range s {
		for a, b := range r.edges() {
			u, v := d.cross(a.sub(from)), d.cross(b.sub(from))
			if (u > 0) == (v > 0) {
				continue
			}
			t := u / (u - v)
			hit := a.sub(from).dot(d)*(1-t) + b.sub(from).dot(d)*t
			if hit >= 0 && (!ok || hit > dist) {
				dist, ok = hit, true
			}
		}
	}
	return dist, ok
}

// Hull returns the convex hull, counter-clockwise from its leftmost point,
// without points in the middle of a side; nil for the empty shape.
func (s Shape) Hull() Ring {
	var ps []Point
	for _, r := range s {
		ps = append(ps, r...)
	}
	slices.SortFunc(ps, func(p, q Point) int { return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y)) })
	ps = slices.Compact(ps)
	if len(ps) < 3 {
		return Ring(ps)
	}
	// Andrew's two chains: along the bottom, then back along the top.
	hull := make(Ring, 0, 2*len(ps))
	half := func(ps []Point) {
		base := len(hull)
		for _, p := range ps {
			for len(hull) >= base+2 && hull[len(hull)-1].sub(hull[len(hull)-2]).cross(p.sub(hull[len(hull)-1])) <= 0 {
				hull = hull[:len(hull)-1]
			}
			hull = append(hull, p)
		}
		hull = hull[:len(hull)-1]
	}
	half(ps)
	slices.Reverse(ps)
	half(ps)
	return hull
}

// MinWidth returns the least width of the shape between two parallel lines and
// the direction it is measured in, -pi/2 < angle <= pi/2: what has to pass a
// slot. The empty shape gives 0, 0.
//
// One of the two lines holds a side of the hull (rotating calipers).
func (s Shape) MinWidth() (width, angle float64) {
	h := s.Hull()
	if len(h) < 3 {
		return 0, 0
	}
	width = math.Inf(1)
	for a, b := range h.edges() {
		side := b.sub(a)
		n := Point{-side.Y / side.length(), side.X / side.length()}
		far := 0.0
		for _, p := range h {
			far = max(far, n.dot(p.sub(a)))
		}
		// A hair, so that equal sides of a rectangle do not compete in rounding.
		if far < width-1e-9 {
			width, angle = far, math.Atan2(n.Y, n.X)
		}
	}
	return width, halfTurn(angle)
}

// MaxWidth returns the greatest distance between two points of the shape and
// its direction, -pi/2 < angle <= pi/2. The empty shape gives 0, 0.
func (s Shape) MaxWidth() (width, angle float64) {
	h := s.Hull()
	for i, p := range h {
		for _, q := range h[i+1:] {
			if d := q.sub(p); d.length() > width+1e-9 {
				width, angle = d.length(), math.Atan2(d.Y, d.X)
			}
		}
	}
	return width, halfTurn(angle)
}

// halfTurn folds the direction of a line, which has no front, to one of its
// two.
func halfTurn(angle float64) float64 {
	switch {
	case angle <= -math.Pi/2:
		return angle + math.Pi
	case angle > math.Pi/2:
		return angle - math.Pi
	}
	return angle
}

// toSegment returns the distance from p to the segment a-b.
func toSegment(p, a, b Point) float64 {
	along := b.sub(a)
	l := along.dot(along)
	if l == 0 {
		return p.sub(a).length()
	}
	t := min(1, max(0, p.sub(a).dot(along)/l))
	return p.sub(Point{a.X + t*along.X, a.Y + t*along.Y}).length()
}

// segmentsMeet reports whether a-b and p-q have a point in common, touching
// included as far as rounding lets it be seen; where it does not, the distance
// between an end and the other segment comes out as 0.
func segmentsMeet(a, b, p, q Point) bool {
	ab, pq := b.sub(a), q.sub(p)
	u, v := ab.cross(p.sub(a)), ab.cross(q.sub(a))
	w, x := pq.cross(a.sub(p)), pq.cross(b.sub(p))
	return (u > 0) != (v > 0) && (w > 0) != (x > 0) && u != v && w != x
}
