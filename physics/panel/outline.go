package panel

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Point is a place on the panel, from its middle.
type Point struct{ X, Y si.Length }

// vec is a point in metres for arithmetic.
type vec struct{ x, y float64 }

func (a vec) add(b vec) vec              { return vec{a.x + b.x, a.y + b.y} }
func (a vec) sub(b vec) vec              { return vec{a.x - b.x, a.y - b.y} }
func (a vec) scale(f float64) vec        { return vec{f * a.x, f * a.y} }
func (a vec) cross(b vec) float64        { return a.x*b.y - a.y*b.x }
func (a vec) norm() float64              { return math.Hypot(a.x, a.y) }
func mix(a, b vec, t float64) vec        { return a.scale(1 - t).add(b.scale(t)) }
func vecOf(p Point) vec                  { return vec{float64(p.X), float64(p.Y)} }
func (a vec) point() Point               { return Point{si.Length(a.x), si.Length(a.y)} }
func (a vec) near(b vec, d float64) bool { return a.sub(b).norm() <= d }

// Outline is a closed curve that bounds a zone: an ellipse, or a polygon that
// stands for whatever was drawn round the damage. Make one with Ellipse or Polygon.
type Outline struct {
	centre vec
	a, b   float64 // semi-axes; 0 for a polygon
	turn   float64 // of the a axis from x, counter-clockwise
	points []vec   // counter-clockwise
	err    error
}

// Ellipse returns the ellipse with semi-axes a (turned from the x axis by the
// angle) and b, both positive.
func Ellipse(centre Point, a, b si.Length, turn si.Angle) Outline {
	o := Outline{centre: vecOf(centre), a: float64(a), b: float64(b), turn: float64(turn)}
	if !(o.a > 0 && o.b > 0) || !finite(o.a, o.b, o.turn, o.centre.x, o.centre.y) {
		o.err = fmt.Errorf("ellipse with semi-axes %v and %v: both must be positive", a, b)
	}
	return o
}

// Polygon returns the closed outline through at least three points, in either
// sense, not repeating the first. It must be star-shaped about the centroid of the
// innermost zone: every point of it visible from there.
func Polygon(points []Point) Outline {
	var o Outline
	area := 0.0
	for i, p := range points {
		q := vecOf(points[(i+1)%len(points)])
		v := vecOf(p)
		if !finite(v.x, v.y) {
			o.err = fmt.Errorf("outline point %d is not a number", i+1)
			return o
		}
		o.points = append(o.points, v)
		c := v.cross(q)
		area += c / 2
		o.centre = o.centre.add(v.add(q).scale(c / 6))
	}
	if len(points) < 3 || area == 0 {
		o.err = fmt.Errorf("outline of %d points encloses no area", len(points))
		return o
	}
	o.centre = o.centre.scale(1 / area)
	if area < 0 {
		for i, j := 0, len(o.points)-1; i < j; i, j = i+1, j-1 {
			o.points[i], o.points[j] = o.points[j], o.points[i]
		}
	}
	return o
}

// star returns an error when part of the outline is hidden from the point c.
func (o Outline) star(c vec) error {
	if o.err != nil {
		return o.err
	}
	if len(o.points) == 0 {
		if o.a == 0 {
			return fmt.Errorf("no outline: make one with Ellipse or Polygon")
		}
		if d := o.toUnit(c); d.norm() >= 1 {
			return fmt.Errorf("the zone does not enclose the centre (%.4g, %.4g) m of the innermost zone", c.x, c.y)
		}
		return nil
	}
	sum := 0.0
	for i, p := range o.points {
		a, b := p.sub(c), o.points[(i+1)%len(o.points)].sub(c)
		if !(a.cross(b) > 0) {
			return fmt.Errorf("outline: the piece from point (%.4g, %.4g) m cannot be seen from the centre (%.4g, %.4g) m"+
				" of the innermost zone; the outlines must be star-shaped about it", p.x, p.y, c.x, c.y)
		}
		sum += math.Atan2(a.cross(b), a.x*b.x+a.y*b.y)
	}
	if math.Abs(sum-2*math.Pi) > 1e-6 {
		return fmt.Errorf("the outline goes round the centre %.3g times; it must do so once", sum/(2*math.Pi))
	}
	return nil
}

// toUnit maps the ellipse to the unit circle.
func (o Outline) toUnit(p vec) vec {
	s, c := math.Sincos(o.turn)
	d := p.sub(o.centre)
	return vec{(c*d.x + s*d.y) / o.a, (-s*d.x + c*d.y) / o.b}
}

// ray returns where a ray from c along d leaves the outline, which must be
// star-shaped about c.
func (o Outline) ray(c, d vec) vec {
	if len(o.points) == 0 {
		p, q := o.toUnit(c), o.toUnit(c.add(d)).sub(o.toUnit(c))
		A, B, C := q.x*q.x+q.y*q.y, p.x*q.x+p.y*q.y, p.x*p.x+p.y*p.y-1
		return c.add(d.scale((-B + math.Sqrt(B*B-A*C)) / A))
	}
	for i, p := range o.points {
		a, b := p.sub(c), o.points[(i+1)%len(o.points)].sub(c)
		if a.cross(d) >= 0 && d.cross(b) >= 0 {
			return c.add(d.scale(a.cross(b) / d.cross(b.sub(a))))
		}
	}
	return c // no edge crossed: star was not checked
}

// size returns half the width and height of the outline's box about c.
func (o Outline) size(c vec) (w, h float64) {
	if len(o.points) == 0 {
		s, cs := math.Sincos(o.turn)
		return math.Hypot(o.a*cs, o.b*s), math.Hypot(o.a*s, o.b*cs)
	}
	for _, p := range o.points {
		w, h = math.Max(w, math.Abs(p.x-c.x)), math.Max(h, math.Abs(p.y-c.y))
	}
	return w, h
}
