package job

import (
	"fmt"

	"scarfwright/physics/si"
)

// maxPoints bounds an outline: more points than a person would mark by hand.
const maxPoints = 500

// Extent returns the smallest upright box round the outline, from its own
// centre; zero for an outline without a form. It ignores Corner.
func (o Outline) Extent() (x0, y0, x1, y1 si.Length) {
	box := func(w, h si.Length) { x0, y0, x1, y1 = -w/2, -h/2, w/2, h/2 }
	switch {
	case len(o.Ellipse) == 2:
		box(o.Ellipse[0], o.Ellipse[1])
	case len(o.Rectangle) == 2:
		box(o.Rectangle[0], o.Rectangle[1])
	case o.Circle > 0:
		box(o.Circle, o.Circle)
	case len(o.Points) > 0:
		x0, y0 = o.Points[0].X, o.Points[0].Y
		x1, y1 = x0, y0
		for _, p := range o.Points {
			x0, x1 = min(x0, p.X), max(x1, p.X)
			y0, y1 = min(y0, p.Y), max(y1, p.Y)
		}
	}
	return x0, y0, x1, y1
}

// outline checks that an outline has one form and that its form is one.
func (c *checker) outline(o *Outline, path string) {
	if o == nil {
		return
	}
	forms := 0
	for _, given := range [...]bool{len(o.Ellipse) > 0, len(o.Rectangle) > 0, o.Circle > 0, len(o.Points) > 0} {
		if given {
			forms++
		}
	}
	if forms != 1 {
		c.add(path, CodeRule, "An outline has exactly one of 'ellipse', 'rectangle', 'circle' and 'points'; %d stand here.", forms)
		return
	}
	switch {
	case len(o.Ellipse) > 0 && len(o.Ellipse) != 2:
		c.add(path+".ellipse", CodeRule, "An ellipse has two widths, along x and along y: [300 mm, 200 mm].")
	case len(o.Rectangle) > 0 && len(o.Rectangle) != 2:
		c.add(path+".rectangle", CodeRule, "A rectangle has two widths, along x and along y: [300 mm, 200 mm].")
	case len(o.Rectangle) > 0 && o.Corner > min(o.Rectangle[0], o.Rectangle[1])/2*(1+1e-12):
		c.add(path+".corner", CodeRule, "The corner radius is more than half the shorter width (%s).", mm(min(o.Rectangle[0], o.Rectangle[1])))
	case len(o.Points) > 0:
		c.polygon(o.Points, path+".points")
	}
}

func (c *checker) polygon(ps []Point, path string) {
	n := len(ps)
	if n < 3 {
		c.add(path, CodeRule, "An outline needs at least three points.")
		return
	}
	if n > maxPoints {
		c.add(path, CodeRule, "An outline has at most %d points; %d stand here.", maxPoints, n)
		return
	}
	for i := range ps {
		if ps[i] == ps[(i+1)%n] {
			c.add(fmt.Sprintf("%s[%d]", path, (i+1)%n), CodeRule, "This point is the same as the one before it. Do not repeat the first point at the end.")
			return
		}
	}
	for i := range ps {
		for j := i + 2; j < n; j++ {
			if i == 0 && j == n-1 {
				continue // neighbours round the end
			}
			if cross(ps[i], ps[i+1], ps[j], ps[(j+1)%n]) {
				c.add(path, CodeRule, "The outline crosses itself: the side after point %d meets the side after point %d. List the points in order round the outline.", i+1, j+1)
				return
			}
		}
	}
	if a := area(ps); a < si.MM2(1) && a > -si.MM2(1) {
		c.add(path, CodeRule, "The points enclose no area.")
	}
}

// area is the signed area by the shoelace formula, positive counter-clockwise.
//
//	A = 1/2 sum (x_i y_i+1 - x_i+1 y_i)
func area(ps []Point) si.Area {
	var twice float64
	for i, p := range ps {
		q := ps[(i+1)%len(ps)]
		twice += float64(p.X)*float64(q.Y) - float64(q.X)*float64(p.Y)
	}
	return si.Area(twice / 2)
}

// cross reports whether the sides ab and cd have a point in common.
func cross(a, b, c, d Point) bool {
	s1, s2 := turn(a, b, c), turn(a, b, d)
	s3, s4 := turn(c, d, a), turn(c, d, b)
	if s1*s2 < 0 && s3*s4 < 0 {
		return true
	}
	return s1 == 0 && within(a, b, c) || s2 == 0 && within(a, b, d) ||
		s3 == 0 && within(c, d, a) || s4 == 0 && within(c, d, b)
}

// turn is the sign of the turn from ab to c: 1 to the left, -1 to the right.
func turn(a, b, c Point) int {
	x := float64(b.X-a.X)*float64(c.Y-a.Y) - float64(b.Y-a.Y)*float64(c.X-a.X)
	switch {
	case x > 0:
		return 1
	case x < 0:
		return -1
	}
	return 0
}

// within reports whether c, known to lie on the line ab, lies between them.
func within(a, b, c Point) bool {
	return c.X >= min(a.X, b.X) && c.X <= max(a.X, b.X) && c.Y >= min(a.Y, b.Y) && c.Y <= max(a.Y, b.Y)
}
