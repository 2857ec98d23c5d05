package drawing

import (
	"fmt"
	"math"
)

// Pen draws on a scene. It is a value: In, On, Sized, View and Fit return
// another pen and leave the first as it was. A pen's points are in its own
// millimetres; line widths, text heights, hatch spacing and the distance of a
// dimension line from its object are always millimetres on paper.
type Pen struct {
	s              *Scene
	sx, sy, ox, oy float64 // paper = o + s * model
	size           float64 // height of text in dimensions and leaders
	ink            Ink
	layer          string
}

// In returns the pen with another ink.
func (p Pen) In(ink Ink) Pen { p.ink = ink; return p }

// On returns the pen drawing on a layer. Layers are told apart in DXF and SVG;
// names are upper-case letters, digits, _ and -, as R12 wants them.
func (p Pen) On(layer string) Pen {
	if !layerName(layer) {
		panic(fmt.Sprintf("drawing: layer %q: letters A-Z, digits, _ and - only, 31 at most", layer))
	}
	p.layer = layer
	return p
}

func layerName(s string) bool {
	for _, c := range s {
		if (c < 'A' || c > 'Z') && (c < '0' || c > '9') && c != '_' && c != '-' {
			return false
		}
	}
	return s != "" && len(s) <= 31
}

// Sized returns the pen with another height, in mm, for the text of its
// dimensions and leaders; TextSmall at first.
func (p Pen) Sized(h float64) Pen { p.size = h; return p }

// View returns a pen that puts the model point at the given place (in this
// pen's millimetres) and draws sx times as large in x, sy times in y: 0.1 is
// 1:10. Different scales exaggerate one direction; say so on the drawing.
func (p Pen) View(at, model Point, sx, sy float64) Pen {
	o := p.Paper(at)
	p.sx *= sx
	p.sy *= sy
	p.ox, p.oy = o.X-p.sx*model.X, o.Y-p.sy*model.Y
	return p
}

// Fit returns a pen that centres the model's box in the window (in this pen's
// millimetres), both ways at the same scale 1:k, and k. The scale is the
// largest of ISO 5455 (from memory) that fits: 10:1, 5:1, 2:1, 1:1, 1:2, 1:5, 1:10 ...
func (p Pen) Fit(window, model Box) (Pen, float64) {
	need := max(model.Width()/window.Width(), model.Height()/window.Height())
	if !(need >= 0) || math.IsInf(need, 0) || window.Width() <= 0 || window.Height() <= 0 {
		panic(fmt.Sprintf("drawing: cannot fit %v into %v", model, window))
	}
	k := 0.1
	for i := 0; k < need*(1-1e-9); i++ {
		k *= [3]float64{2, 2.5, 2}[i%3]
	}
	k = math.Round(k*10) / 10
	return p.View(window.centre(), model.centre(), 1/k, 1/k), k
}

// ScaleText returns "1:10" for k = 10 and "2:1" for k = 0.5.
func ScaleText(k float64) string {
	if k < 1 {
		return fmt.Sprintf("%g:1", math.Round(100/k)/100)
	}
	return fmt.Sprintf("1:%g", math.Round(100*k)/100)
}

// Paper returns where the pen puts a point, in paper millimetres.
func (p Pen) Paper(q Point) Point { return Point{p.ox + p.sx*q.X, p.oy + p.sy*q.Y} }

// paper returns the pen that draws in paper millimetres with the same ink.
func (p Pen) paper() Pen { p.sx, p.sy, p.ox, p.oy = 1, 1, 0, 0; return p }

func (p Pen) toPaper(pts []Point) []Point {
	out := make([]Point, len(pts))
	for i, q := range pts {
		out[i] = p.Paper(q)
		if math.IsNaN(out[i].X+out[i].Y) || math.IsInf(out[i].X+out[i].Y, 0) {
			panic(fmt.Sprintf("drawing: point %d is %v", i, q))
		}
	}
	return out
}

func (p Pen) stroke(l Line, paths ...path) {
	if l > ChainNarrow {
		panic(fmt.Sprintf("drawing: no line kind %d", l))
	}
	p.s.items = append(p.s.items, item{kind: stroke, line: l, ink: p.ink, layer: p.layer, paths: paths})
}

// Line draws a straight line.
func (p Pen) Line(l Line, a, b Point) { p.Polyline(l, a, b) }

// Polyline draws an open run of straight lines. Fewer than two points draw
// nothing.
func (p Pen) Polyline(l Line, pts ...Point) {
	if len(pts) > 1 {
		p.stroke(l, path{p.toPaper(pts), false})
	}
}

// Ring draws a closed outline; the first point is not repeated.
func (p Pen) Ring(l Line, pts ...Point) {
	if len(pts) > 1 {
		p.stroke(l, path{p.toPaper(pts), true})
	}
}

// Rect draws a box.
func (p Pen) Rect(l Line, b Box) { p.Ring(l, b.Corners()...) }

// Circle draws a circle of radius r.
func (p Pen) Circle(l Line, c Point, r float64) { p.Ring(l, p.EllipseRing(c, r, r, 0)...) }

// Ellipse draws an ellipse of half axes a and b, a turned by deg from x.
func (p Pen) Ellipse(l Line, c Point, a, b, deg float64) {
	p.Ring(l, p.EllipseRing(c, a, b, deg)...)
}

// Arc draws an arc of radius r from angle a to angle b, in degrees,
// counter-clockwise from x.
func (p Pen) Arc(l Line, c Point, r, a, b float64) {
	for b < a {
		b += 360
	}
	n := max(2, int(math.Ceil(float64(p.chords(r))*(b-a)/360)))
	pts := make([]Point, n+1)
	for i := range pts {
		s, k := math.Sincos((a + (b-a)*float64(i)/float64(n)) * math.Pi / 180)
		pts[i] = c.add(Point{r * k, r * s})
	}
	p.Polyline(l, pts...)
}

// EllipseRing returns an ellipse as a ring in the pen's millimetres, in as many
// points as keep the chords within 0.01 mm of the curve on paper.
func (p Pen) EllipseRing(c Point, a, b, deg float64) []Point {
	sin, cos := math.Sincos(deg * math.Pi / 180)
	pts := make([]Point, p.chords(max(a, b)))
	for i := range pts {
		s, k := math.Sincos(2 * math.Pi * float64(i) / float64(len(pts)))
		pts[i] = c.add(Point{a * k, b * s}.turn(sin, cos))
	}
	return pts
}

// chords returns how many chords a full turn of radius r (pen mm) needs: the
// sagitta r(1 - cos(pi/n)) is to stay below 0.01 mm on paper.
func (p Pen) chords(r float64) int {
	rho := r * max(math.Abs(p.sx), math.Abs(p.sy))
	if rho <= 0.02 {
		return 8
	}
	return max(16, 4*int(math.Ceil(math.Pi/math.Acos(1-0.01/rho)/4)))
}

// Fill fills the area between rings (a ring inside another is a hole) with a
// shade of the pen's ink. It draws no outline.
func (p Pen) Fill(shade Shade, rings ...[]Point) {
	var paths []path
	for _, r := range rings {
		if len(r) > 2 {
			paths = append(paths, path{p.toPaper(r), true})
		}
	}
	if paths != nil {
		p.s.items = append(p.s.items, item{kind: fill, shade: shade, ink: p.ink, layer: p.layer, paths: paths})
	}
}

// Arrow draws a narrow line with a filled head at its far end.
func (p Pen) Arrow(from, to Point) {
	p.Polyline(Narrow, from, to)
	p.head(p.Paper(from), p.Paper(to))
}

// DoubleArrow draws a narrow line with a head at either end, as for a direction
// that has no sense (fibres).
func (p Pen) DoubleArrow(a, b Point) {
	p.Arrow(a, b)
	p.head(p.Paper(b), p.Paper(a))
}

const (
	headLength = 3.0 // of an arrow, mm on paper
	headWidth  = 1.0
)

// head fills an arrowhead whose tip is at to, in paper mm.
func (p Pen) head(from, to Point) {
	d := from.dist(to)
	if d == 0 {
		return
	}
	u := to.sub(from).mul(1 / d)
	base := to.sub(u.mul(headLength))
	side := u.left().mul(headWidth / 2)
	p.paper().Fill(Solid, []Point{to, base.add(side), base.sub(side)})
}
