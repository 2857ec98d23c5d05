package drawing

import "fmt"

// sheet draws the page of a cell, the n-th of the tiling.
func (g *grid) sheet(c *gridCell, n int) *Scene {
	s := New(g.width, g.height, g.s.Title+", sheet "+c.name())
	s.Desc = g.s.Desc
	for _, it := range c.items {
		s.append(g.moved(c, it))
	}
	p := s.On("SHEET")
	p.Rect(Narrow, g.window)
	g.joins(p, c)
	g.bars(p)
	g.footer(p, c, n)
	g.pageMap(s, c)
	return s
}

func (s *Scene) append(it item) {
	if it.kind == text {
		s.over = append(s.over, it)
	} else {
		s.items = append(s.items, it)
	}
}

// moved returns an item of the drawing at its place on the sheet.
func (g *grid) moved(c *gridCell, it item) item {
	if it.kind == text {
		it.text.at = g.put(c, it.text.at)
		return it
	}
	paths := make([]path, len(it.paths))
	for i, q := range it.paths {
		pts := make([]Point, len(q.pts))
		for j, r := range q.pts {
			pts[j] = g.put(c, r)
		}
		paths[i] = path{pts, q.closed}
	}
	it.paths = paths
	return it
}

// joins draws, for each neighbour, the register marks in the shared overlap and
// the line on which the neighbour's edge is to lie: the sheet above and the one
// to the left lie on top.
func (g *grid) joins(p Pen, c *gridCell) {
	o, w := g.opt.Overlap, g.window
	if o < 2*markSize+1 {
		return // no room for marks; the dashed line and the frame still match
	}
	mark := func(x, y float64) {
		r := markSize
		p.Circle(Narrow, Point{x, y}, r)
		p.Line(Narrow, Point{x - r - 1, y}, Point{x + r + 1, y})
		p.Line(Narrow, Point{x, y - r - 1}, Point{x, y + r + 1})
	}
	quarter := func(a, b float64) [2]float64 { return [2]float64{a + (b-a)/4, b - (b-a)/4} }
	xs, ys := quarter(w.X0, w.X1), quarter(w.Y0, w.Y1)
	has := func(dr, dc int) bool { return g.at[[2]int{c.row + dr, c.col + dc}] }

	if has(0, -1) {
		x := w.X0 + o
		p.Line(DashedNarrow, Point{x, w.Y0}, Point{x, w.Y1})
		for _, y := range ys {
			mark(w.X0+o/2, y)
		}
	}
	if has(-1, 0) {
		y := w.Y1 - o
		p.Line(DashedNarrow, Point{w.X0, y}, Point{w.X1, y})
		for _, x := range xs {
			mark(x, w.Y1-o/2)
		}
	}
	if has(0, 1) {
		for _, y := range ys {
			mark(w.X1-o/2, y)
		}
	}
	if has(1, 0) {
		for _, x := range xs {
			mark(x, w.Y0+o/2)
		}
	}
	// Words last: they look for a stretch of their edge that no line crosses.
	lies, cut := "edge of %s lies here", "cut this edge, lay on %s"
	words := func(dr, dc int, a, b Point, deg float64, format string) {
		if has(dr, dc) {
			p.along(a, b, deg, fmt.Sprintf(format, tileName(c.row+dr, c.col+dc)))
		}
	}
	words(0, -1, Point{w.X0 + o - 1, w.Y0}, Point{w.X0 + o - 1, w.Y1}, 90, lies)
	words(-1, 0, Point{w.X0, w.Y1 - o + 1}, Point{w.X1, w.Y1 - o + 1}, 0, lies)
	words(0, 1, Point{w.X1 - 1, w.Y0}, Point{w.X1 - 1, w.Y1}, 90, cut)
	words(1, 0, Point{w.X0, w.Y0 + 1}, Point{w.X1, w.Y0 + 1}, 0, cut)
}

// along writes words on the way from a to b, in the middle or else where no
// line crosses them, if need be one line of text further in.
func (p Pen) along(a, b Point, deg float64, s string) {
	in := Point{0, 1.6 * footSize}
	if deg != 0 {
		in = Point{-1.6 * footSize, 0}
	}
	place := func(t, row float64) label {
		return label{at: a.add(b.sub(a).mul(t)).add(in.mul(row)), size: footSize, turn: deg, h: Centre, s: s}
	}
	best := place(0.5, 0)
search:
	for _, row := range []float64{0, 1} {
		for i := range 29 {
			l := place(0.5+0.025*float64((i+1)/2)*float64(1-2*(i%2)), row)
			if !p.s.busy(l) {
				best = l
				break search
			}
		}
	}
	p.Turned(best.at, footSize, deg, Centre, s)
}

// busy tells whether a line crosses a text's place or another text is there.
func (s *Scene) busy(l label) bool {
	ring, box := l.corners(0.3), l.box()
	for i := range s.items {
		if it := &s.items[i]; it.kind == stroke && crossed(ring, box, it) {
			return true
		}
	}
	for i := range s.over {
		if o := &s.over[i]; o.kind == text && overlap(ring, o.text.corners(0.3)) {
			return true
		}
	}
	return false
}

// bars draws the two bars of 100 mm, ends and middle ticked.
func (g *grid) bars(p Pen) {
	p = p.paper().On("CHECK")
	x, y := g.window.X0, g.window.Y0-5.5
	p.Line(Narrow, Point{x, y}, Point{x + checkBar, y})
	for i := range 3 {
		t := x + checkBar/2*float64(i)
		p.Line(Narrow, Point{t, y - 2}, Point{t, y + 2})
	}
	p.Text(Point{x + checkBar/4, y + 1}, footSize, Centre, "check bar X: 100.0 mm")

	x, y = g.window.X0-3, g.window.Y0
	p.Line(Narrow, Point{x, y}, Point{x, y + checkBar})
	for i := range 3 {
		t := y + checkBar/2*float64(i)
		p.Line(Narrow, Point{x - 2, t}, Point{x + 2, t})
	}
	p.Turned(Point{x - 1, y + checkBar/4}, footSize, 90, Centre, "check bar Y: 100.0 mm")
}

func (g *grid) footer(p Pen, c *gridCell, n int) {
	m := g.opt.Margin
	name := c.name()
	y := g.window.Y0 - barStrip - TextLarge - 0.5
	p.Bold(Point{m, y}, TextLarge, Left, name)
	x := m + TextWidth(TextLarge, true, name) + 4
	title := g.s.Title
	size := TextNormal
	room := g.width - m - mapWide - mapGap - x
	if TextWidth(size, true, title) > room {
		size = TextSmall
	}
	if lines := Wrap(title, room, size, true); len(lines) > 0 {
		p.Bold(Point{x, y}, size, Left, lines[0])
	}

	w := g.window
	lines, bold := g.footLines(Point{w.X0, w.Y0}.dist(Point{w.X1, w.Y1}), g.opt.Before+n, max(g.opt.All, len(g.cells)))
	for i, line := range lines {
		p.write(Point{m, y - float64(i+1)*footPitch - 0.6}, footSize, 0, Left, line, i < bold, false)
	}
}

// makeThumb draws the page map's small picture once for all sheets: strokes of
// the drawing, thinned to what can be seen.
func (g *grid) makeThumb(footHigh float64) {
	m := g.opt.Margin
	box := Box{g.width - m - mapWide, m, g.width - m, m + footHigh - 1.5}
	g.mapScale = min(box.Width()/g.all.Width(), (box.Height()-footPitch)/g.all.Height())
	w, h := g.all.Width()*g.mapScale, g.all.Height()*g.mapScale
	g.mapBox = Box{box.X1 - w, box.Y1 - h, box.X1, box.Y1}
	for _, it := range g.s.items {
		if it.kind != stroke || len(it.paths) > 4 {
			continue // hatching only blackens a small picture
		}
		t := item{kind: stroke, line: Narrow, layer: "MAP"}
		for _, q := range it.paths {
			var pts []Point
			for _, r := range q.pts {
				r = g.small(r)
				if len(pts) == 0 || pts[len(pts)-1].dist(r) > 0.4 {
					pts = append(pts, r)
				}
			}
			if len(pts) > 1 {
				t.paths = append(t.paths, path{pts, q.closed})
			}
		}
		if t.paths != nil {
			g.thumb = append(g.thumb, t)
		}
	}
}

// small returns a place of the drawing on the page map.
func (g *grid) small(p Point) Point {
	return Point{g.mapBox.X0 + (p.X-g.all.X0)*g.mapScale, g.mapBox.Y0 + (p.Y-g.all.Y0)*g.mapScale}
}

func (g *grid) smallBox(b Box) Box {
	lo, hi := g.small(Point{b.X0, b.Y0}), g.small(Point{b.X1, b.Y1})
	return Box{lo.X, lo.Y, hi.X, hi.Y}
}

// pageMap draws where the sheet lies among the others: this one dark, those
// printed framed, those left out without a frame.
func (g *grid) pageMap(s *Scene, c *gridCell) {
	p := s.On("MAP")
	own := func(d *gridCell) []Point { return g.smallBox(d.owned).Corners() }
	p.Fill(Mid, own(c))
	for i := range g.cells {
		d := &g.cells[i]
		p.Ring(Narrow, own(d)...)
		b := g.smallBox(d.owned)
		if h := TextSmall; b.Height() > h+1 && b.Width() > TextWidth(h, false, d.name())+1 {
			p.Label(Point{b.X0 + 0.8, b.Y1 - 0.8}, h, Left|Top, d.name())
		}
	}
	s.items = append(s.items, g.thumb...)
	p.Text(Point{g.mapBox.X1, g.mapBox.Y0 - 1}, footSize, Right|Top, "this is sheet "+c.name())
}
