package view

import (
	"fmt"
	"math"

	"scarfwright/physics/geom"
	"scarfwright/present/drawing"
	"scarfwright/repair"
	"scarfwright/repair/design"
	"scarfwright/repair/survey"
)

// Section returns the section through the repair along its shorter way: the
// old laminate hatched by kind, the taper, each ply with its label and class,
// the cover ply, and what stands behind. It returns nil where no laminate is
// renewed.
func Section(r repair.Result) *drawing.Scene {
	if r.Design == nil {
		return nil
	}
	c := newCut(r)
	c.old()
	c.coat()
	c.behind()
	for _, f := range c.faces {
		c.plies(f)
	}
	c.dimensions()
	c.words()
	notice(c.s, r, 0)
	return c.s
}

// Room on paper, in mm.
const (
	tail      = 24.0 // old laminate shown beyond the repair
	side      = 13.0 // left of it, for the thickness
	plyLeast  = 4.4  // height of the thinnest ply, so that its label fits
	coreHigh  = 13.0
	innerHigh = 6.0
	wordsHigh = 31.0
	sheetHigh = 1.8 // a backing or a form
)

// face is a ground face as the section sees it. up is counted from the bottom
// of the taper, deep is where that bottom lies below the face.
type face struct {
	name   string
	deep   float64
	plies  []design.Ply // in laying order
	cover  *design.Ply
	bottom []drawing.Point // upper profile of what is laid so far, left to right, y being up
}

// cut is a section in the making. Its model has u to the right, and y upwards
// with 0 at the old outer face.
type cut struct {
	r       repair.Result
	d       *design.Result
	u       units
	upright bool // cut from 6 to 12 o'clock, else from 9 to 3
	at      geom.Point

	thick, deep    float64 // of the laminate, of what is rebuilt
	hole, edge     [2]float64
	reach          [2]float64 // of the outermost thing drawn
	faces          []*face
	sx, sy, times  float64
	k              float64
	left, right    float64 // ends of the old laminate, model
	low            float64 // y of the lowest thing, model
	s              *drawing.Scene
	p              drawing.Pen // model pen
	sandwich, full bool
}

func newCut(r repair.Result) *cut {
	d := r.Design
	b := d.CutOut.Bounds()
	c := &cut{r: r, d: d, u: unitsOf(r), upright: b.Height() <= b.Width(), at: d.CutOut.Centroid()}
	c.thick, c.deep = d.Original.Thickness.MM(), d.Depth.MM()
	c.sandwich = r.Survey.Class == survey.SkinAndCore
	c.full = c.deep >= c.thick-0.01
	if c.full {
		c.deep = c.thick
	}
	c.hole, c.edge = c.span(d.CutOut), c.span(d.Edge)
	c.reach = c.edge
	for _, s := range []geom.Shape{d.CoverEdge, c.backing(), c.farSide()} {
		if len(s) > 0 {
			x := c.span(s)
			c.reach = [2]float64{min(c.reach[0], x[0]), max(c.reach[1], x[1])}
		}
	}
	c.split()
	c.scale()

	behind := 0.0
	switch {
	case c.sandwich:
		behind = coreHigh + innerHigh
	case d.FarSide != nil:
		behind = d.FarSide.Thickness.MM()*c.sy + 2
	case c.full:
		behind = sheetHigh + 2
	}
	// Room for three rows of dimensions on the ground face, two on the other.
	above, below := 36.0, 14.0
	if d.Backing != nil {
		below = 22
	}
	if d.Sides == "inside" {
		above, below = below, above
	}
	below += wordsHigh
	high := c.thick*c.sy + behind + above + below
	c.s = drawing.New(wide, high, "Section through the repair")
	c.s.Desc = fmt.Sprintf("Section: %d plies laid in a taper of %g to 1 ground from %s, thickness drawn %g times as large as length.",
		len(d.Plies), d.Ratio, Faces(d.Sides), c.times)
	mid := (c.reach[0] + c.reach[1]) / 2
	top := high - above
	if d.Sides == "inside" && c.sandwich {
		top -= behind
	}
	c.p = c.s.View(drawing.P(side+(wide-side)/2, top), drawing.P(mid, 0), c.sx, c.sy)
	c.left = mid - ((wide-side)/2-2)/c.sx
	c.right = mid + ((wide-side)/2-2)/c.sx
	c.low = -c.thick
	return c
}

func (c *cut) backing() geom.Shape {
	if c.d.Backing == nil {
		return nil
	}
	return c.d.Backing.Outline
}

func (c *cut) farSide() geom.Shape {
	if c.d.FarSide == nil {
		return nil
	}
	return c.d.FarSide.Outline
}

// span returns how far a shape reaches from the cut-out's centre, both ways.
func (c *cut) span(s geom.Shape) [2]float64 {
	a, b := math.Pi, 0.0
	if c.upright {
		a, b = -math.Pi/2, math.Pi/2
	}
	lo, _ := s.Ray(c.at, a)
	hi, _ := s.Ray(c.at, b)
	if !c.upright && seen(c.r, groundFace(c.d)).flip {
		lo, hi = hi, lo
	}
	return [2]float64{-lo, hi}
}

// split deals the plies out to the faces they are laid from.
func (c *cut) split() {
	names := []string{c.d.Sides}
	deep := c.deep
	if c.d.Sides == "both" {
		names, deep = []string{"outside", "inside"}, c.deep/2
	}
	for _, n := range names {
		f := &face{name: n, deep: deep}
		for i := range c.d.Plies {
			p := &c.d.Plies[i]
			switch {
			case p.Face != n:
			case isCover(*p):
				f.cover = p
			default:
				f.plies = append(f.plies, *p)
			}
		}
		f.bottom = []drawing.Point{drawing.P(c.edge[0], deep), drawing.P(c.hole[0], 0), drawing.P(c.hole[1], 0), drawing.P(c.edge[1], deep)}
		c.faces = append(c.faces, f)
	}
}

// scale picks the scale along and the factor across.
func (c *cut) scale() {
	c.k = niceScale(c.reach[1]-c.reach[0], wide-side-2*tail)
	c.sx = 1 / c.k
	thin := math.Inf(1)
	for _, p := range c.d.Plies {
		thin = min(thin, p.Thickness.MM())
	}
	for _, l := range c.d.Original.Layers {
		thin = min(thin, l.Thickness.MM())
	}
	want := min(max(plyLeast/thin, 22/c.thick), 70/c.thick)
	c.times = 1
	for _, n := range []float64{2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 150, 200} {
		if n*c.sx <= want*1.12 {
			c.times = n
		}
	}
	c.sy = c.times * c.sx
}

// y returns the model height of a place on a face, up from its taper's bottom.
func (c *cut) y(f *face, up float64) float64 {
	if f.name == "inside" {
		return -c.thick + f.deep - up
	}
	return up - f.deep
}

// slope returns where the taper cuts the depth h below the outer face, on one
// side of the hole, and false where the laminate is whole.
func (c *cut) slope(side int, h float64) (float64, bool) {
	for _, f := range c.faces {
		d := h
		if f.name == "inside" {
			d = c.thick - h
		}
		if d <= f.deep+1e-9 {
			t := d / f.deep
			return c.edge[side] + (c.hole[side]-c.edge[side])*t, true
		}
	}
	return 0, false
}

// old draws the old laminate: layer by layer, on both sides of the taper.
func (c *cut) old() {
	cuts := []float64{0, c.thick}
	for _, f := range c.faces {
		d := f.deep
		if f.name == "inside" {
			d = c.thick - f.deep
		}
		cuts = append(cuts, d)
	}
	h := 0.0
	for i, l := range c.d.Original.Layers {
		top, bottom := h, h+l.Thickness.MM()
		h = bottom
		if i == len(c.d.Original.Layers)-1 {
			bottom = c.thick
		}
		// Cut the layer where the taper turns, so that each part is a simple ring.
		stops := []float64{top}
		for _, x := range cuts {
			if x > top+1e-6 && x < bottom-1e-6 {
				stops = append(stops, x)
			}
		}
		stops = append(stops, bottom)
		for j := 0; j+1 < len(stops); j++ {
			c.band(l, stops[j], stops[j+1])
		}
		name := fmt.Sprintf("%d %s", l.Number, upper(l.Class))
		if l.Thickness.MM()*c.sy >= 3.2 {
			c.p.Label(drawing.P(c.left+3/c.sx, -(top+bottom)/2), drawing.TextSmall, drawing.Left|drawing.Middle, name)
		}
	}
	for _, x := range []float64{c.left, c.right} {
		c.breakLine(x)
	}
}

// band draws one layer between two depths.
func (c *cut) band(l design.Layer, a, b float64) {
	mid := (a + b) / 2
	if _, cutThere := c.slope(0, mid); !cutThere {
		c.hatch(l, []drawing.Point{{X: c.left, Y: -a}, {X: c.right, Y: -a}, {X: c.right, Y: -b}, {X: c.left, Y: -b}})
		c.p.Line(drawing.Narrow, drawing.P(c.left, -b), drawing.P(c.right, -b))
		return
	}
	const eps = 1e-7 // stay on this band's side of a turn
	for side, far := range []float64{c.left, c.right} {
		ua, _ := c.slope(side, a+eps)
		ub, ok := c.slope(side, b-eps)
		if !ok {
			ub = c.hole[side]
		}
		c.hatch(l, []drawing.Point{{X: far, Y: -a}, {X: ua, Y: -a}, {X: ub, Y: -b}, {X: far, Y: -b}})
		c.p.Line(drawing.Narrow, drawing.P(far, -b), drawing.P(ub, -b))
		c.p.Line(drawing.Wide, drawing.P(ua, -a), drawing.P(ub, -b))
		if a == 0 {
			c.p.Line(drawing.Wide, drawing.P(far, 0), drawing.P(ua, 0))
		}
		if b >= c.thick-1e-6 {
			c.p.Line(drawing.Wide, drawing.P(far, -b), drawing.P(ub, -b))
		}
	}
}

// hatch fills a part of the old laminate by its kind: mat leaning right and
// open, woven and stitched cloth leaning left and close.
func (c *cut) hatch(l design.Layer, ring []drawing.Point) {
	hatchKind(c.p, IsMat(l.Class, float64(l.Glass)), ring)
}

func hatchKind(p drawing.Pen, mat bool, ring []drawing.Point) {
	if mat {
		p.Hatch(45, 2.2, ring)
	} else {
		p.Hatch(135, 1.1, ring)
	}
}

// breakLine ends the old laminate where the drawing stops and the panel goes on.
func (c *cut) breakLine(u float64) {
	n := 1.2 / c.sx
	top, bottom := 1.5/c.sy, -c.thick-1.5/c.sy
	mid := -c.thick / 2
	c.p.Polyline(drawing.Narrow, drawing.P(u, top), drawing.P(u, mid+1.5/c.sy), drawing.P(u-n, mid+0.7/c.sy),
		drawing.P(u+n, mid-0.7/c.sy), drawing.P(u, mid-1.5/c.sy), drawing.P(u, bottom))
}

// coat draws the old gelcoat where it stays.
func (c *cut) coat() {
	g := c.r.Job.Laminate.Gelcoat.MM()
	if g == 0 {
		return
	}
	from := c.edge
	switch {
	case c.d.Sides == "inside" && !c.full:
		from = [2]float64{0, 0}
	case c.d.Sides == "inside":
		from = c.hole
	case len(c.d.CoverEdge) > 0:
		from = c.span(c.d.CoverEdge)
	}
	high := max(g, 1/c.sy)
	for side, far := range []float64{c.left, c.right} {
		ring := []drawing.Point{{X: far, Y: 0}, {X: from[side], Y: 0}, {X: from[side], Y: high}, {X: far, Y: high}}
		c.p.Fill(drawing.Dark, ring)
		c.p.Polyline(drawing.Narrow, ring[1], ring[2], ring[3])
	}
}

// behind draws what stands on the far side: a core with its other skin, a
// backing, or the form that is taken off.
func (c *cut) behind() {
	away := -1.0 // the way from the ground face
	at := -c.thick
	if c.d.Sides == "inside" {
		away, at = 1, 0
	}
	y := func(paper float64) float64 { return at + away*paper/c.sy }
	box := func(x0, x1, from, to float64) []drawing.Point {
		return []drawing.Point{{X: x0, Y: y(from)}, {X: x1, Y: y(from)}, {X: x1, Y: y(to)}, {X: x0, Y: y(to)}}
	}
	centre := drawing.Centre | drawing.Middle
	mid := (c.hole[0] + c.hole[1]) / 2
	switch {
	case c.sandwich:
		old := c.p.In(drawing.Black)
		for side, far := range []float64{c.left, c.right} {
			honey(old, box(far, c.hole[side], 0, coreHigh))
			c.p.Line(drawing.Wide, drawing.P(c.hole[side], y(0)), drawing.P(c.hole[side], y(coreHigh)))
		}
		text := "core"
		if k := c.d.Core; k != nil {
			c.p.Fill(drawing.Light, box(c.hole[0], c.hole[1], 0, coreHigh))
			text = fmt.Sprintf("new core %s, %s thick", upper(k.Class), c.u.full(k.Thickness.MM()))
		}
		c.p.Label(drawing.P(mid, y(coreHigh/2)), drawing.TextSmall, centre, text)
		c.p.Label(drawing.P(c.left+3/c.sx, y(coreHigh/2)), drawing.TextSmall, drawing.Left|drawing.Middle, "old core")
		inner := box(c.left, c.right, coreHigh, coreHigh+innerHigh)
		c.p.Hatch(45, 2.2, inner)
		c.p.Ring(drawing.Wide, inner...)
		c.p.Label(drawing.P(mid, y(coreHigh+innerHigh/2)), drawing.TextSmall, centre, "skin behind, not cut (core and this skin not to scale)")
		c.low = min(c.low, y(coreHigh+innerHigh))
	case c.d.Backing != nil:
		b := c.span(c.d.Backing.Outline)
		ring := box(b[0], b[1], 0, sheetHigh)
		c.p.Fill(drawing.Mid, ring)
		c.p.Ring(drawing.Wide, ring...)
		c.low = min(c.low, y(sheetHigh))
	case c.d.FarSide != nil:
		f := c.d.FarSide
		b := c.span(f.Outline)
		high := f.Thickness.MM() * c.sy
		ring := box(b[0], b[1], 0, high)
		blue := c.p.In(drawing.Blue)
		blue.Fill(drawing.Light, ring)
		blue.Ring(drawing.Narrow, ring...)
		c.p.Label(drawing.P(mid, y(high/2)), drawing.TextSmall, centre, f.Label+" "+upper(f.Class)+", far side")
		c.low = min(c.low, y(high))
	case c.formed():
		w := min(c.hole[0]-c.edge[0], 12/c.sx)
		ring := box(c.hole[0]-w, c.hole[1]+w, 0.4, sheetHigh)
		c.p.Ring(drawing.DashedNarrow, ring...)
		c.low = min(c.low, y(sheetHigh))
	}
}

// formed reports whether a form stands on the far face while the plies are laid:
// somebody must get there to set it and to take it off.
func (c *cut) formed() bool {
	return c.full && c.d.Sides != "both" && !c.sandwich && c.d.Backing == nil && c.d.FarSide == nil && c.r.Job.Damage.Access == "both"
}

// honey marks a core with a cross-hatch wide enough not to look like laminate.
func honey(p drawing.Pen, ring []drawing.Point) {
	p.Hatch(30, 3.2, ring)
	p.Hatch(150, 3.2, ring)
}
