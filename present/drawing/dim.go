package drawing

import (
	"math"
	"strconv"
)

// Rules for dimensions, in mm on paper. The first dimension line usually stands
// 10 mm off the outline and the next ones 8 mm further. Schools differ about
// the gap before an extension line; ours is 1 mm (our choice, in the practice
// of ISO 129-1). The value stands above its line and reads from the bottom or
// from the right-hand side of the sheet.
const (
	extGap  = 1.0  // between the object and the extension line
	extOver = 2.0  // extension line beyond the dimension line
	dimTail = 6.0  // of an arrow that points inwards from outside
	textGap = 0.45 // between dimension line and base line, in heights of text
)

// Millimetres returns a length as a dimension prints it: to 0.1 mm, without a
// trailing zero.
func Millimetres(v float64) string {
	return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64)
}

// DimH dimensions the distance in x between a and b. The dimension line stands
// off mm of paper above the higher of them, or below the lower if off is
// negative. An empty text prints the distance in the pen's millimetres.
func (p Pen) DimH(a, b Point, off float64, s string) {
	if s == "" {
		s = Millimetres(math.Abs(b.X - a.X))
	}
	a, b = p.Paper(a), p.Paper(b)
	if a.X > b.X {
		a, b = b, a
	}
	y := max(a.Y, b.Y) + off
	if off < 0 {
		y = min(a.Y, b.Y) + off
	}
	p.paper().dim(a, b, Point{a.X, y}, Point{b.X, y}, s)
}

// DimV dimensions the distance in y between a and b. The dimension line stands
// off mm of paper to the right of them, or to the left if off is negative.
func (p Pen) DimV(a, b Point, off float64, s string) {
	if s == "" {
		s = Millimetres(math.Abs(b.Y - a.Y))
	}
	a, b = p.Paper(a), p.Paper(b)
	if a.Y > b.Y {
		a, b = b, a
	}
	x := max(a.X, b.X) + off
	if off < 0 {
		x = min(a.X, b.X) + off
	}
	p.paper().dim(a, b, Point{x, a.Y}, Point{x, b.Y}, s)
}

// DimAligned dimensions the distance from a to b along their join, off mm of
// paper to the left of the way from a to b.
func (p Pen) DimAligned(a, b Point, off float64, s string) {
	if s == "" {
		s = Millimetres(a.dist(b))
	}
	a, b = p.Paper(a), p.Paper(b)
	n := b.sub(a).mul(1 / max(a.dist(b), 1e-9)).left().mul(off)
	p.paper().dim(a, b, a.add(n), b.add(n), s)
}

// dim draws a dimension between paper points: extension lines from a to c and
// from b to d, the dimension line from c to d, the text above it.
func (p Pen) dim(a, b, c, d Point, s string) {
	p.extension(a, c)
	p.extension(b, d)
	size := c.dist(d)
	if size < 1e-9 {
		return
	}
	// u points the way the text reads: rightwards, or upwards when upright.
	u := d.sub(c).mul(1 / size)
	if u.X < -1e-9 || (math.Abs(u.X) <= 1e-9 && u.Y < 0) {
		c, d, u = d, c, u.mul(-1)
	}
	w := TextWidth(p.size, false, s)
	at, anchor := c.add(d).mul(0.5), Centre
	switch {
	case size >= max(w, 1)+2*headLength+1: // all of it inside
		p.Polyline(Narrow, c, d)
		p.head(d, c)
		p.head(c, d)
	case size >= w+1: // text inside, arrows outside
		p.outside(c, d, u, dimTail)
	default: // both outside, the text beyond the far end
		p.outside(c, d, u, dimTail+w)
		at, anchor = d.add(u.mul(dimTail)), Left
	}
	deg := math.Atan2(u.Y, u.X) * 180 / math.Pi
	p.write(at.add(u.left().mul(textGap*p.size)), p.size, deg, anchor, s, false, true)
}

// outside draws a dimension line with arrows that point inwards and a tail
// beyond the far end.
func (p Pen) outside(c, d, u Point, tail float64) {
	c0, d1 := c.sub(u.mul(dimTail)), d.add(u.mul(tail))
	p.Polyline(Narrow, c0, d1)
	p.head(c0, c)
	p.head(d1, d)
}

func (p Pen) extension(from, to Point) {
	size := from.dist(to)
	if size <= extGap {
		return
	}
	u := to.sub(from).mul(1 / size)
	p.Polyline(Narrow, from.add(u.mul(extGap)), to.add(u.mul(extOver)))
}

// Leader draws a leader whose arrow touches an outline at tip (pen mm), bent at
// elbow, which is an offset from the tip in paper mm, with the text on a short
// level line there.
func (p Pen) Leader(tip, elbow Point, s string) {
	a := p.Paper(tip)
	b := p.leader(a, elbow, s)
	p.head(b, a)
}

// LeaderDot draws a leader that ends in a dot inside an area.
func (p Pen) LeaderDot(tip, elbow Point, s string) {
	a := p.Paper(tip)
	p.leader(a, elbow, s)
	q := p.paper()
	q.Fill(Solid, q.EllipseRing(a, 0.6, 0.6, 0))
}

func (p Pen) leader(a, elbow Point, s string) Point {
	b := a.add(elbow)
	side, anchor := 1.0, Left
	if elbow.X < 0 {
		side, anchor = -1, Right
	}
	end := b.add(Point{side * (TextWidth(p.size, false, s) + 1), 0})
	q := p.paper()
	q.Polyline(Narrow, a, b, end)
	q.write(b.add(Point{side * 0.5, textGap * p.size}), p.size, 0, anchor, s, false, true)
	return b
}
