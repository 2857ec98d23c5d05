package view

import (
	"math"

	"scarfwright/physics/geom"
	"scarfwright/present/drawing"
	"scarfwright/repair/design"
)

// crossings hatches what of the taper lies beyond an edge or a feature, and
// says it in words. The words come even where the place cannot be computed.
func (l *layout) crossings() {
	lines := l.lines()
	for i, c := range l.d.Clearances {
		if c.Left > 0 || i >= len(lines) {
			continue
		}
		far := beyond(l.d.Edge, l.d.CutOut.Centroid(), lines[i][0], lines[i][1])
		zone, err := geom.Intersect(l.d.Edge, far)
		if err != nil || len(zone) == 0 {
			l.crossed(l.look.box(geom.Shape{lines[i][:]}), i, c)
			continue
		}
		rings := l.look.rings(zone)
		bold := l.p.In(drawing.Vermilion)
		bold.Hatch(135, 0.9, rings...)
		for _, r := range rings {
			bold.Ring(drawing.Wide, r...)
		}
		l.crossed(drawing.Bounds(rings...), i, c)
	}
}

// lines returns what the clearances are measured to, in their order: the four
// edges of the panel, then its features.
func (l *layout) lines() [][2]geom.Point {
	w, h := l.w, l.h
	out := [][2]geom.Point{
		{{X: w, Y: -h}, {X: w, Y: h}}, {{X: -w, Y: -h}, {X: -w, Y: h}},
		{{X: -w, Y: h}, {X: w, Y: h}}, {{X: -w, Y: -h}, {X: w, Y: -h}},
	}
	for _, f := range l.r.Job.Panel.Features {
		out = append(out, [2]geom.Point{{X: f.From.X.MM(), Y: f.From.Y.MM()}, {X: f.To.X.MM(), Y: f.To.Y.MM()}})
	}
	return out
}

// crossed says in words what is crossed and by how much: as near to the hatched
// place as there is paper no line of the repair runs over, with an arrow to it
// where that is not beside it.
func (l *layout) crossed(b drawing.Box, i int, c design.Clearance) {
	zone := drawing.P((b.X0+b.X1)/2, (b.Y0+b.Y1)/2)
	text := "CROSSES " + c.What + " by " + l.u.full(-c.Left.MM())
	half := func() float64 { return (drawing.TextWidth(drawing.TextSmall, false, text)/2 + 1) * l.k }
	w, h := half(), (drawing.TextSmall/2+0.8)*l.k
	at, found := l.room(zone, w, h)
	if !found && i < 4 { // the edge is named beside it
		text = "CROSSES by " + l.u.full(-c.Left.MM())
		w = half()
		at, found = l.room(zone, w, h)
	}
	if !found {
		at = drawing.P(clamp(zone.X, l.w-w), clamp(zone.Y, l.h-h))
	}
	box := drawing.Box{X0: at.X - w, Y0: at.Y - h, X1: at.X + w, Y1: at.Y + h}
	l.taken = append(l.taken, box.Corners())
	l.p.Label(at, drawing.TextSmall, drawing.Centre|drawing.Middle, text)
	from := drawing.P(max(box.X0, min(box.X1, zone.X)), max(box.Y0, min(box.Y1, zone.Y)))
	if math.Hypot(from.X-zone.X, from.Y-zone.Y) > 4*l.k {
		l.p.Arrow(from, zone)
	}
}

// room returns the place nearest to a point where a box of half sizes w and h
// meets no line of the plan, in the panel or in the band round it.
func (l *layout) room(near drawing.Point, w, h float64) (drawing.Point, bool) {
	rings := l.obstructed()
	best, found := math.Inf(1), false
	var at drawing.Point
	m := (strip - 0.2) * l.k
	for x := -l.w - m + w; x <= l.w+m-w; x += l.k {
		for y := -l.h - m + h; y <= l.h+m-h; y += l.k / 2 {
			d := math.Hypot(x-near.X, y-near.Y)
			box := drawing.Box{X0: x - w, Y0: y - h, X1: x + w, Y1: y + h}
			if d < best && open(box, rings) && !l.within(drawing.P(x, y)) {
				best, at, found = d, drawing.P(x, y), true
			}
		}
	}
	return at, found
}

// within reports whether a place as it is seen lies on the repair.
func (l *layout) within(p drawing.Point) bool {
	if l.look.flip {
		p.X = -p.X
	}
	return l.d.Edge.Contains(geom.Point(p))
}

// obstructed returns the lines words must not be set over.
func (l *layout) obstructed() [][]drawing.Point {
	out := append([][]drawing.Point{drawing.Box{X0: -l.w, Y0: -l.h, X1: l.w, Y1: l.h}.Corners()}, l.taken...)
	shapes := []geom.Shape{l.d.CutOut, l.d.Edge, l.d.CoverEdge}
	for _, p := range l.d.Plies {
		shapes = append(shapes, p.Outline)
	}
	if l.d.Backing != nil {
		shapes = append(shapes, l.d.Backing.Outline)
	}
	for _, s := range shapes {
		out = append(out, l.look.rings(s)...)
	}
	for _, f := range l.lines()[4:] {
		out = append(out, l.look.ring(geom.Ring(f[:])))
	}
	o := l.centre()
	for _, k := range l.d.Clocks {
		v := l.look.ray(k.Angle)
		out = append(out, []drawing.Point{drawing.P(o.X+v.X*k.ToCut.MM(), o.Y+v.Y*k.ToCut.MM()), drawing.P(o.X+v.X*k.ToEdge.MM(), o.Y+v.Y*k.ToEdge.MM())})
	}
	return out
}

// open reports whether no side of any ring comes into a box.
func open(b drawing.Box, rings [][]drawing.Point) bool {
	for _, r := range rings {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			if max(p.X, q.X) < b.X0 || min(p.X, q.X) > b.X1 || max(p.Y, q.Y) < b.Y0 || min(p.Y, q.Y) > b.Y1 {
				continue
			}
			// The corners all on one side of the line through p and q: it passes by.
			left, right := false, false
			for _, c := range b.Corners() {
				if (q.X-p.X)*(c.Y-p.Y) > (q.Y-p.Y)*(c.X-p.X) {
					left = true
				} else {
					right = true
				}
			}
			if left && right {
				return false
			}
		}
	}
	return true
}

// beyond returns what of the plane round a shape lies on the far side of the
// line through a and b, as seen from a point: a square large enough to hold the
// shape, with its near side on the line.
func beyond(s geom.Shape, from, a, b geom.Point) geom.Shape {
	dx, dy := b.X-a.X, b.Y-a.Y
	n := math.Hypot(dx, dy)
	if n == 0 {
		return nil
	}
	dx, dy = dx/n, dy/n
	nx, ny := -dy, dx
	if (from.X-a.X)*nx+(from.Y-a.Y)*ny > 0 {
		nx, ny = -nx, -ny
	}
	// The foot of the shape's middle on the line, so that the square stays near.
	box := s.Bounds()
	c := box.Centre()
	t := (c.X-a.X)*dx + (c.Y-a.Y)*dy
	foot := geom.Point{X: a.X + dx*t, Y: a.Y + dy*t}
	far := box.Width() + box.Height()
	at := func(s, t float64) geom.Point {
		return geom.Point{X: foot.X + dx*s + nx*t, Y: foot.Y + dy*s + ny*t}
	}
	r := geom.Ring{at(-far, 0), at(far, 0), at(far, far), at(-far, far)}
	if r.Area() < 0 {
		r = r.Reverse()
	}
	return geom.Shape{r}
}
