package view

import (
	"slices"

	"scarfwright/present/drawing"
	"scarfwright/repair/design"
)

// plies draws what is laid from one face, in laying order.
//
// Smallest first, each ply lies on the last one and its edge on the taper: the
// ply's outline says how far it reaches, its edge stands on the slope there and
// its upper face, further in, at the true height of what is laid so far. Largest
// first, each ply follows the slope down and ends at the old face.
func (c *cut) plies(f *face) {
	laid := 0.0
	total := 0.0
	for _, p := range f.plies {
		total += p.Thickness.MM()
	}
	last := c.hole // reach of the ply below
	for i, p := range f.plies {
		laid += p.Thickness.MM()
		reach := c.span(p.Outline)
		var top []drawing.Point
		if c.d.Order == "largest first" {
			next := c.hole // the reach of the ply above is where this one ends
			if i+1 < len(f.plies) {
				next = c.span(f.plies[i+1].Outline)
			}
			top = c.dish(f, next, laid)
		} else {
			share := f.deep * laid / total
			top = []drawing.Point{drawing.P(reach[0], share), drawing.P(last[0], laid), drawing.P(last[1], laid), drawing.P(reach[1], share)}
		}
		c.ply(f, p, top, i)
		last = reach
	}
	if laid < f.deep-0.05 {
		c.filler(f)
	}
	if f.cover != nil {
		c.cover(f)
	}
}

// dish returns the upper profile of a ply that follows the taper: it meets the
// old face at next and lies at the height laid in the middle.
func (c *cut) dish(f *face, next [2]float64, laid float64) []drawing.Point {
	run := c.edge[0] - c.hole[0] // negative: the taper's length on the left
	inner := func(side int, sign float64) float64 {
		in := next[side] - sign*run*max(0, f.deep-laid)/f.deep
		if side == 0 {
			return min(in, 0)
		}
		return max(in, 0)
	}
	return []drawing.Point{
		drawing.P(next[0], f.deep), drawing.P(inner(0, 1), laid),
		drawing.P(inner(1, -1), laid), drawing.P(next[1], f.deep),
	}
}

// ply fills the room between what was laid before and a new upper profile.
func (c *cut) ply(f *face, p design.Ply, top []drawing.Point, i int) {
	ring := slices.Clone(f.bottom)
	if c.d.Order != "largest first" {
		// Only as far as this ply reaches: the slope beyond is still bare.
		for k := range ring {
			ring[k].X = min(max(ring[k].X, top[0].X), top[len(top)-1].X)
		}
		if i == 0 {
			ring[0], ring[3] = top[0], top[3]
		}
	}
	up := slices.Clone(top)
	slices.Reverse(up)
	ring = append(ring, up...)
	c.fill(f, ring, IsMat(p.Class, glassOf(p)))
	high := p.Thickness.MM() * c.sy
	x := (c.hole[0] + c.hole[1]) / 2
	text := p.Label + " " + upper(p.Class)
	if high < 3.4 {
		// Too low for its label: neighbours stand side by side instead.
		x += []float64{-1, 1}[i%2] * (drawing.TextWidth(drawing.TextSmall, false, text)/2 + 2) / c.sx
	}
	mid := (top[1].Y + c.floor(f)) / 2
	c.p.Label(drawing.P(x, c.y(f, mid)), drawing.TextSmall, drawing.Centre|drawing.Middle, text)
	f.bottom = top
}

// floor is the height of what is laid so far in the middle.
func (c *cut) floor(f *face) float64 { return f.bottom[len(f.bottom)/2].Y }

func (c *cut) fill(f *face, ring []drawing.Point, mat bool) {
	c.place(f, ring)
	shade := drawing.Mid
	if mat {
		shade = drawing.Light
	}
	blue := c.p.In(drawing.Blue)
	blue.Fill(shade, ring)
	blue.Ring(drawing.Narrow, ring...)
}

// place turns heights above the taper's bottom into the section's y.
func (c *cut) place(f *face, ring []drawing.Point) {
	for i := range ring {
		ring[i].Y = c.y(f, ring[i].Y)
	}
}

// filler closes the room between the last ply and the old face.
func (c *cut) filler(f *face) {
	ring := append(slices.Clone(f.bottom), drawing.P(f.bottom[len(f.bottom)-1].X, f.deep), drawing.P(f.bottom[0].X, f.deep))
	short := f.deep - c.floor(f)
	c.place(f, ring)
	c.p.Hatch(0, 1, ring)
	c.p.Ring(drawing.Narrow, ring...)
	if short*c.sy >= 3.2 {
		c.p.Label(drawing.P((c.hole[0]+c.hole[1])/2, c.y(f, f.deep-short/2)), drawing.TextSmall, drawing.Centre|drawing.Middle, "filler "+c.u.full(short))
	}
	f.bottom = []drawing.Point{drawing.P(c.edge[0], f.deep), drawing.P(c.hole[0], f.deep), drawing.P(c.hole[1], f.deep), drawing.P(c.edge[1], f.deep)}
}

// cover lays the cover ply over everything and beyond the feather edge.
func (c *cut) cover(f *face) {
	reach := c.span(f.cover.Outline)
	t := f.cover.Thickness.MM()
	under := []drawing.Point{drawing.P(reach[0], f.deep), drawing.P(c.edge[0], f.deep)}
	for _, p := range f.bottom {
		if p.X > c.edge[0] && p.X < c.edge[1] {
			p.Y = max(p.Y, f.deep)
			under = append(under, p)
		}
	}
	under = append(under, drawing.P(c.edge[1], f.deep), drawing.P(reach[1], f.deep))
	ring := slices.Clone(under)
	for i := len(under) - 1; i >= 0; i-- {
		ring = append(ring, drawing.P(under[i].X, under[i].Y+t))
	}
	c.fill(f, ring, IsMat(f.cover.Class, glassOf(*f.cover)))
	mid := under[len(under)/2].Y + t/2
	c.p.Label(drawing.P((c.hole[0]+c.hole[1])/2, c.y(f, mid)), drawing.TextSmall, drawing.Centre|drawing.Middle, f.cover.Label+" "+upper(f.cover.Class)+", cover ply")
}

// glassOf returns the glass content of a ply, 0 where the ply weighs nothing.
func glassOf(p design.Ply) float64 {
	if m := p.Glass + p.Resin; m > 0 {
		return float64(p.Glass / m)
	}
	return 0
}

// dimensions writes the sizes: the ground face's beside that face, the cut-out
// on the far side.
func (c *cut) dimensions() {
	inside := c.d.Sides == "inside"
	near, far := 0.0, c.low
	sign := 1.0
	if inside {
		near, far, sign = -c.thick, 0, -1
		if c.sandwich {
			far = (coreHigh + innerHigh) / c.sy
		}
	}
	proud := 0.0
	if len(c.faces) > 0 {
		f := c.faces[0]
		proud = max(0, c.floor(f)-f.deep)
		if f.cover != nil {
			proud += f.cover.Thickness.MM()
		}
	}
	surface := near + sign*proud
	if len(c.faces) > 1 && c.faces[1].cover != nil {
		far -= c.faces[1].cover.Thickness.MM()
	}
	at := func(u, y float64) drawing.Point { return drawing.P(u, y) }
	c.p.DimH(at(c.edge[0], surface), at(c.hole[0], surface), sign*7, c.u.len(c.hole[0]-c.edge[0]))
	c.p.DimH(at(c.hole[1], surface), at(c.edge[1], surface), sign*7, c.u.len(c.edge[1]-c.hole[1]))
	c.p.DimH(at(c.edge[0], surface), at(c.edge[1], surface), sign*15, c.u.len(c.edge[1]-c.edge[0])+" feather edge")
	if len(c.d.CoverEdge) > 0 {
		x := c.span(c.d.CoverEdge)
		c.p.DimH(at(x[0], surface), at(x[1], surface), sign*23, c.u.len(x[1]-x[0])+" cover ply")
	}
	hole := c.u.len(c.hole[1]-c.hole[0]) + " " + opening(c.r)
	if Partial(c.r) {
		// On the ground face: from the far one it would look cut through.
		row := 7.0
		if (c.hole[1]-c.hole[0])*c.sx < drawing.TextWidth(drawing.TextSmall, false, hole)+8 {
			row = 31
		}
		c.p.DimH(at(c.hole[0], surface), at(c.hole[1], surface), sign*row, hole)
	} else {
		c.p.DimH(at(c.hole[0], far), at(c.hole[1], far), -sign*9, hole)
	}
	if b := c.d.Backing; b != nil {
		x := c.span(b.Outline)
		c.p.DimH(at(x[0], far), at(x[1], far), -sign*17, c.u.len(x[1]-x[0])+" backing")
	} else if c.formed() {
		c.p.LeaderDot(at(c.hole[0], far), drawing.P(-10, -sign*5), "form, taken off")
	}
	c.p.DimV(at(c.left, -c.thick), at(c.left, 0), -5, c.u.len(c.thick))
	if !c.full {
		f := c.faces[0]
		c.p.DimV(at(c.hole[1], c.y(f, 0)), at(c.right-14/c.sx, c.y(f, f.deep)), 6, c.u.len(f.deep))
		if left := c.thick - c.deep; Partial(c.r) && left*c.sy >= 3.6 {
			back := -c.thick
			if inside {
				back = 0
			}
			c.p.Label(at((c.hole[0]+c.hole[1])/2, (back+c.y(f, 0))/2), drawing.TextSmall, drawing.Centre|drawing.Middle, c.u.full(left)+" stay: do not cut through")
		}
	}
	gel := c.r.Job.Laminate.Gelcoat.MM()
	right := c.right - 2/c.sx
	c.s.Bold(c.p.Paper(at(right, max(gel, 1/c.sy)+1.6/c.sy)), drawing.TextSmall, drawing.Right, "OUTSIDE")
	bottom := -c.thick
	if !inside {
		bottom = c.low
		if c.d.Backing != nil || !c.sandwich {
			bottom = -c.thick
		}
	}
	c.s.Bold(c.p.Paper(at(right, bottom-1.6/c.sy)), drawing.TextSmall, drawing.Right|drawing.Top, "INSIDE")
}
