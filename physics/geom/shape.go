package geom

import (
	"cmp"
	"math"
	"slices"
)

// Area returns the area of the region, never negative.
func (s Shape) Area() float64 {
	sum := 0.0
	for _, r := range s {
		sum += r.Area()
	}
	return sum
}

// Perimeter returns the length of all edges, those of holes included.
func (s Shape) Perimeter() float64 {
	sum := 0.0
	for _, r := range s {
		sum += r.Perimeter()
	}
	return sum
}

// Centroid returns the centre of area; the origin for the empty shape.
func (s Shape) Centroid() Point {
	area, m := 0.0, Point{}
	for _, r := range s {
		a, f := r.moments()
		area += a
		m = m.add(f)
	}
	if area == 0 {
		return Point{}
	}
	return Point{m.X / area, m.Y / area}
}

// Bounds returns the smallest upright box round the shape; the zero box for the
// empty shape.
func (s Shape) Bounds() Box {
	if len(s) == 0 {
		return Box{}
	}
	b := s[0].Bounds()
	for _, r := range s[1:] {
		c := r.Bounds()
		b.Min.X, b.Max.X = min(b.Min.X, c.Min.X), max(b.Max.X, c.Max.X)
		b.Min.Y, b.Max.Y = min(b.Min.Y, c.Min.Y), max(b.Max.Y, c.Max.Y)
	}
	return b
}

// Contains reports whether p lies in the region. A point on an edge may be told
// either way.
func (s Shape) Contains(p Point) bool {
	in := false
	for _, r := range s {
		in = in != r.Contains(p)
	}
	return in
}

// Translate returns the shape moved by dx, dy.
func (s Shape) Translate(dx, dy float64) Shape {
	return s.each(func(r Ring) Ring { return r.Translate(dx, dy) })
}

// Rotate returns the shape turned about the origin. The start of each ring
// turns with it.
func (s Shape) Rotate(angle float64) Shape {
	return s.each(func(r Ring) Ring { return r.Rotate(angle) })
}

// Mirror returns the shape as seen from the other side of the skin, x turned
// to -x: the way a template for the inner face has to lie.
func (s Shape) Mirror() Shape {
	return s.each(func(r Ring) Ring {
		out := r.Reverse()
		for i := range out {
			out[i].X = -out[i].X
		}
		return out
	})
}

func (s Shape) each(f func(Ring) Ring) Shape {
	if len(s) == 0 {
		return nil
	}
	out := make(Shape, len(s))
	for i, r := range s {
		out[i] = f(r)
	}
	return out
}

// Parts returns the separate pieces of the shape, largest outline first, each
// an outer ring with its own holes.
func (s Shape) Parts() []Shape {
	var outers, holes []Ring
	for _, r := range s {
		if r.Area() > 0 {
			outers = append(outers, r)
		} else {
			holes = append(holes, r)
		}
	}
	slices.SortStableFunc(outers, func(a, b Ring) int { return cmp.Compare(b.Area(), a.Area()) })
	parts := make([]Shape, len(outers))
	for i, r := range outers {
		parts[i] = Shape{r}
	}
	for _, h := range holes {
		// The smallest outline round a hole owns it; they come largest first.
		// Smaller ones about its inner point are islands in it.
		p, area := h.inner(), -h.Area()
		for i := len(outers) - 1; i >= 0; i-- {
			if outers[i].Area() > area && outers[i].Contains(p) {
				parts[i] = append(parts[i], h)
				break
			}
		}
	}
	return parts
}

// inner returns a point inside the ring and off its line: half way across at
// the middle height between two neighbouring vertex heights.
func (r Ring) inner() Point {
	ys := make([]float64, 0, len(r))
	for _, p := range r {
		ys = append(ys, p.Y)
	}
	slices.Sort(ys)
	y, gap := ys[0], 0.0
	for i := 1; i < len(ys); i++ {
		if g := ys[i] - ys[i-1]; g > gap {
			y, gap = (ys[i]+ys[i-1])/2, g
		}
	}
	var xs []float64
	for a, b := range r.edges() {
		if (a.Y > y) != (b.Y > y) {
			xs = append(xs, a.X+(y-a.Y)*(b.X-a.X)/(b.Y-a.Y))
		}
	}
	slices.Sort(xs)
	if len(xs) < 2 {
		return r[0]
	}
	best := 0
	for i := 0; i+1 < len(xs); i += 2 {
		if xs[i+1]-xs[i] > xs[best+1]-xs[best] {
			best = i
		}
	}
	return Point{(xs[best] + xs[best+1]) / 2, y}
}

// normal puts rings in the order and start that Shape promises. Rings are kept
// as they run: outer and hole must be told already.
func normal(rings []Ring) Shape {
	if len(rings) == 0 {
		return nil
	}
	type measured struct {
		ring Ring
		area float64
	}
	ms := make([]measured, len(rings))
	for i, r := range rings {
		ms[i] = measured{r.fromEast(), r.Area()}
	}
	slices.SortStableFunc(ms, func(a, b measured) int {
		return cmp.Or(
			cmp.Compare(math.Abs(b.area), math.Abs(a.area)),
			cmp.Compare(a.ring[0].X, b.ring[0].X),
			cmp.Compare(a.ring[0].Y, b.ring[0].Y))
	})
	out := make(Shape, len(ms))
	for i, m := range ms {
		out[i] = m.ring
	}
	return out
}

// fromEast returns the ring started at the vertex just past the place where a
// line from the centroid towards +x last leaves it; a ring that bends clear of
// that line starts at its rightmost vertex.
func (r Ring) fromEast() Ring {
	c := r.Centroid()
	start, far := 0, math.Inf(-1)
	for i, a := range r {
		j := (i + 1) % len(r)
		b := r[j]
		if (a.Y >= c.Y) == (b.Y >= c.Y) {
			continue
		}
		if x := a.X + (c.Y-a.Y)*(b.X-a.X)/(b.Y-a.Y); x > c.X && x > far {
			start, far = j, x
		}
	}
	if math.IsInf(far, -1) {
		for i, p := range r {
			if p.X > r[start].X || p.X == r[start].X && p.Y < r[start].Y {
				start = i
			}
		}
	}
	out := make(Ring, 0, len(r))
	return append(append(out, r[start:]...), r[:start]...)
}
