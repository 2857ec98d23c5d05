package geom

import (
	"math"
	"slices"
)

// Area returns the enclosed area, positive for a counter-clockwise ring and
// negative for a clockwise one; 0 below three points.
//
//	A = 1/2 sum (x_i y_i+1 - x_i+1 y_i)
//
// The sum is taken about the first point, so that a small ring far from the
// origin does not drown in rounding.
func (r Ring) Area() float64 {
	if len(r) < 3 {
		return 0
	}
	o, sum := r[0], 0.0
	for i := 1; i+1 < len(r); i++ {
		sum += r[i].sub(o).cross(r[i+1].sub(o))
	}
	return sum / 2
}

// Perimeter returns the length of the closed line.
func (r Ring) Perimeter() float64 {
	sum := 0.0
	for a, b := range r.edges() {
		sum += b.sub(a).length()
	}
	return sum
}

// Centroid returns the centre of area; the mean of the points where the ring
// encloses nothing.
func (r Ring) Centroid() Point {
	a, m := r.moments()
	if a == 0 {
		for _, p := range r {
			m = m.add(p)
		}
		n := max(1, float64(len(r)))
		return Point{m.X / n, m.Y / n}
	}
	return Point{m.X / a, m.Y / a}
}

// moments returns the signed area and its first moments about the origin.
func (r Ring) moments() (area float64, first Point) {
	if len(r) < 3 {
		return 0, Point{}
	}
	o := r[0]
	for i := 1; i+1 < len(r); i++ {
		u, v := r[i].sub(o), r[i+1].sub(o)
		t := u.cross(v) / 2
		area += t
		first.X += t * (u.X + v.X) / 3
		first.Y += t * (u.Y + v.Y) / 3
	}
	first.X += area * o.X
	first.Y += area * o.Y
	return area, first
}

// Bounds returns the smallest upright box round the ring; the zero box for no
// points.
func (r Ring) Bounds() Box {
	if len(r) == 0 {
		return Box{}
	}
	b := Box{r[0], r[0]}
	for _, p := range r[1:] {
		b.Min.X, b.Max.X = min(b.Min.X, p.X), max(b.Max.X, p.X)
		b.Min.Y, b.Max.Y = min(b.Min.Y, p.Y), max(b.Max.Y, p.Y)
	}
	return b
}

// Contains reports whether p is inside, whichever way the ring runs. A point on
// the line itself may be told either way.
func (r Ring) Contains(p Point) bool {
	in := false
	for a, b := range r.edges() {
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y) {
			in = !in
		}
	}
	return in
}

// Translate returns the ring moved by dx, dy.
func (r Ring) Translate(dx, dy float64) Ring {
	out := make(Ring, len(r))
	for i, p := range r {
		out[i] = Point{p.X + dx, p.Y + dy}
	}
	return out
}

// Rotate returns the ring turned about the origin.
func (r Ring) Rotate(angle float64) Ring {
	s, c := math.Sincos(angle)
	out := make(Ring, len(r))
	for i, p := range r {
		out[i] = p.rotate(c, s)
	}
	return out
}

// Reverse returns the ring run the other way, from the same first point.
func (r Ring) Reverse() Ring {
	out := slices.Clone(r)
	if len(out) > 1 {
		slices.Reverse(out[1:])
	}
	return out
}

// edges yields each edge once, the closing one last.
func (r Ring) edges() func(yield func(a, b Point) bool) {
	return func(yield func(a, b Point) bool) {
		for i := range r {
			j := i + 1
			if j == len(r) {
				j = 0
			}
			if !yield(r[i], r[j]) {
				return
			}
		}
	}
}

// convex reports whether a counter-clockwise ring turns left, or not at all, at
// every vertex and goes round just once: then it cannot cross itself. Straight
// angles are judged on the grid, as an arc's polygon must still pass after
// rounding.
func (r Ring) convex() bool {
	if len(r) < 3 {
		return false
	}
	flips, last := 0, 0.0 // changes of sign of dx round the ring: two if it goes round once
	for i, p := range r {
		q, s := r[(i+1)%len(r)], r[(i+2)%len(r)]
		u, v := q.sub(p), s.sub(q)
		if u.cross(v) < 0 || u.cross(v) == 0 && u.dot(v) <= 0 {
			return false
		}
		if u.X != 0 {
			if last != 0 && (u.X > 0) != (last > 0) {
				flips++
			}
			last = u.X
		}
	}
	return flips <= 2
}
