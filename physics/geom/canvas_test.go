package geom_test

import (
	"math"

	"github.com/tdewolff/canvas"

	"scarfwright/physics/geom"
)

// A second opinion on every operation, by path operations written by others on
// other principles (a sweep line over curves). It is fifty times slower and
// stays in the tests.

func canvasOffset(s geom.Shape, d float64) geom.Shape {
	all := &canvas.Path{}
	for _, part := range s.Parts() {
		p := canvasRing(part[0]).Settle(canvas.NonZero).Offset(d, geom.Tolerance)
		for _, h := range part[1:] {
			p = p.Not(canvasRing(h.Reverse()).Settle(canvas.NonZero).Offset(-d, geom.Tolerance))
		}
		all = all.Or(p)
	}
	return fromCanvas(all)
}

func canvasOverlay(a, b geom.Shape, op func(p, q *canvas.Path) *canvas.Path) geom.Shape {
	return fromCanvas(op(canvasShape(a), canvasShape(b)))
}

func canvasRing(r geom.Ring) *canvas.Path {
	p := &canvas.Path{}
	for i, q := range r {
		if i == 0 {
			p.MoveTo(q.X, q.Y)
		} else {
			p.LineTo(q.X, q.Y)
		}
	}
	p.Close()
	return p
}

func canvasShape(s geom.Shape) *canvas.Path {
	p := &canvas.Path{}
	for _, r := range s {
		p = p.Append(canvasRing(r))
	}
	return p.Settle(canvas.EvenOdd)
}

// fromCanvas works out for itself which rings are holes: the orientation that
// comes back cannot be relied on.
func fromCanvas(p *canvas.Path) geom.Shape {
	var rings []geom.Ring
	for _, sub := range p.Flatten(geom.Tolerance / 10).Split() {
		var r geom.Ring
		for _, c := range sub.Coords() {
			if q := (geom.Point{X: c.X, Y: c.Y}); len(r) == 0 || r[len(r)-1] != q {
				r = append(r, q)
			}
		}
		for len(r) > 1 && r[0] == r[len(r)-1] {
			r = r[:len(r)-1]
		}
		if len(r) >= 3 && math.Abs(r.Area()) > 0.01 {
			rings = append(rings, r)
		}
	}
	out := make(geom.Shape, len(rings))
	for i, r := range rings {
		in := 0
		for j, q := range rings {
			if i != j && q.Contains(innerPoint(r)) {
				in++
			}
		}
		if out[i] = r; (in%2 == 0) != (r.Area() > 0) {
			out[i] = r.Reverse()
		}
	}
	return out
}

// innerPoint returns a point just inside the middle of the longest edge.
func innerPoint(r geom.Ring) geom.Point {
	best, at := 0.0, geom.Point{}
	for i, p := range r {
		q := r[(i+1)%len(r)]
		if l := math.Hypot(q.X-p.X, q.Y-p.Y); l > best {
			k := 1e-6 / l
			if r.Area() < 0 {
				k = -k
			}
			best = l
			at = geom.Point{X: (p.X+q.X)/2 - k*(q.Y-p.Y), Y: (p.Y+q.Y)/2 + k*(q.X-p.X)}
		}
	}
	return at
}
