package view

import (
	"math"
	"slices"
	"strings"

	"scarfwright/present/drawing"
)

// name writes a curve's name beside it where it is nearer to its own curve than
// to any other and touches nothing. Where there is no such place, it goes to
// the key above the chart.
func (f *plot) name(text string, st stroked, pts []drawing.Point) {
	if text == "" {
		return
	}
	own := thin(pts)
	if !f.beside(text, st.ink, own, every(4, own)) {
		f.key = append(f.key, keyed{name: text, style: st})
	}
}

// beside writes a text next to one of some places on a curve, and tells whether
// it found room.
func (f *plot) beside(text string, ink drawing.Ink, own, places []drawing.Point) bool {
	const h = drawing.TextSmall
	w := drawing.TextWidth(h, false, text)
	best, cost := drawing.Box{}, math.Inf(1)
	for _, at := range places {
		for _, dx := range []float64{-w - 1, -w / 2, 1} {
			for gap := 1.0; gap <= 4; gap += 0.5 {
				for _, y := range []float64{at.Y + gap, at.Y - gap - h} {
					b := drawing.Box{X0: at.X + dx, Y0: y - 0.25*h, X1: at.X + dx + w, Y1: y + h}
					if c := f.costs(b, own, cost); c < cost {
						best, cost = b, c
					}
				}
			}
		}
	}
	if math.IsInf(cost, 1) {
		return false
	}
	f.taken = append(f.taken, best)
	pen := f.s.In(drawing.Black)
	if ink == drawing.Blue {
		pen = f.s.In(ink) // the only colour that text may have
	}
	pen.Label(drawing.P(best.X0, best.Y0+0.25*h), h, drawing.Left, text)
	return true
}

// every returns places along a run of points, no farther apart than d mm.
func every(d float64, pts []drawing.Point) []drawing.Point {
	out := append([]drawing.Point(nil), pts[:min(1, len(pts))]...)
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		n := math.Ceil(math.Hypot(b.X-a.X, b.Y-a.Y)/d - 1e-9)
		for k := 1.0; k <= n; k++ {
			out = append(out, drawing.P(a.X+(b.X-a.X)*k/n, a.Y+(b.Y-a.Y)*k/n))
		}
	}
	return out
}

// costs weighs a place for a name: infinite where it touches something, is out
// of the plot, or is nearer to another curve than to its own, and where it cannot
// be better than the best place yet.
func (f *plot) costs(b drawing.Box, own []drawing.Point, best float64) float64 {
	in := f.box.Inset(0.8)
	if b.X0 < in.X0 || b.X1 > in.X1 || b.Y0 < in.Y0 || b.Y1 > in.Y1 || f.onText(b) {
		return math.Inf(1)
	}
	near := away(b, own)
	if near < keepOff || near-0.25*6 >= best {
		return math.Inf(1)
	}
	other := math.Inf(1)
	for _, c := range f.curves {
		if slices.Equal(c, own) {
			continue
		}
		other = min(other, away(b, c))
		if other < keepOff || other < near+0.5 {
			return math.Inf(1)
		}
	}
	cost := near - 0.25*min(other, 6)
	for _, e := range f.edges {
		if away(b, e) < keepOff {
			cost += 2
		}
	}
	return cost
}

// away returns the distance in mm between a box and a run of points, 0 where it
// passes through.
func away(b drawing.Box, pts []drawing.Point) float64 {
	d := math.Inf(1)
	for i, q := range pts {
		p := q
		if i > 0 {
			p = pts[i-1]
		}
		// What is farther off in x or y alone than the nearest yet cannot be nearer.
		if max(min(p.X, q.X)-b.X1, b.X0-max(p.X, q.X), min(p.Y, q.Y)-b.Y1, b.Y0-max(p.Y, q.Y)) >= d {
			continue
		}
		if through(b, p, q) {
			return 0
		}
		for _, e := range [2]drawing.Point{p, q} {
			d = min(d, math.Hypot(max(b.X0-e.X, 0, e.X-b.X1), max(b.Y0-e.Y, 0, e.Y-b.Y1)))
		}
		for _, c := range [4]drawing.Point{{X: b.X0, Y: b.Y0}, {X: b.X1, Y: b.Y0}, {X: b.X1, Y: b.Y1}, {X: b.X0, Y: b.Y1}} {
			d = min(d, fromSegment(c, p, q))
		}
	}
	return d
}

// through reports whether the segment pq passes through a box: what the box
// leaves of it, side by side, is not empty (Liang and Barsky's way).
func through(b drawing.Box, p, q drawing.Point) bool {
	t0, t1 := 0.0, 1.0
	for _, e := range [4][2]float64{{p.X - q.X, p.X - b.X0}, {q.X - p.X, b.X1 - p.X}, {p.Y - q.Y, p.Y - b.Y0}, {q.Y - p.Y, b.Y1 - p.Y}} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return false
		case e[0] < 0:
			t0 = max(t0, e[1]/e[0])
		case e[0] > 0:
			t1 = min(t1, e[1]/e[0])
		}
	}
	return t0 <= t1
}

// mark draws a dot with its words at the nearest place round it where they touch
// nothing, or at the worst the edge of a window; without such a place they go to
// the key.
func (f *plot) mark(at drawing.Point, text string) {
	const h = drawing.TextSmall
	f.dot(at)
	w := drawing.TextWidth(h, false, text)
	const far = 7.0
	for try := 1.0; try < 2*far; try += 0.5 {
		gap, lines := try, [][][]drawing.Point{f.curves, f.edges}
		if try > far {
			gap, lines = try-far, lines[:1]
		}
		for _, p := range []drawing.Point{
			{X: at.X - w/2, Y: at.Y + dot + gap}, {X: at.X + dot + gap, Y: at.Y - h/2}, {X: at.X - dot - gap - w, Y: at.Y - h/2},
			{X: at.X + gap, Y: at.Y + gap}, {X: at.X - gap - w, Y: at.Y + gap}, {X: at.X - w/2, Y: at.Y - dot - gap - h},
		} {
			if b := (drawing.Box{X0: p.X, Y0: p.Y - 0.25*h, X1: p.X + w, Y1: p.Y + h}); f.free(b, lines...) {
				f.taken = append(f.taken, b)
				f.s.Label(p, h, drawing.Left, text)
				return
			}
		}
	}
	f.key = append(f.key, keyed{name: text, dot: true})
}

const dot = 0.9 // radius of a mark

func (f *plot) dot(at drawing.Point) { f.s.Fill(drawing.Solid, f.s.EllipseRing(at, dot, dot, 0)) }

// free reports whether a box is inside the plot and touches no text and none of
// the lines.
func (f *plot) free(b drawing.Box, lines ...[][]drawing.Point) bool {
	in := f.box.Inset(0.8)
	if b.X0 < in.X0 || b.X1 > in.X1 || b.Y0 < in.Y0 || b.Y1 > in.Y1 || f.onText(b) {
		return false
	}
	for _, l := range lines {
		if slices.ContainsFunc(l, func(line []drawing.Point) bool { return away(b, line) < keepOff }) {
			return false
		}
	}
	return true
}

// onText reports whether a box is too near to a text that is placed.
func (f *plot) onText(b drawing.Box) bool {
	return slices.ContainsFunc(f.taken, func(t drawing.Box) bool {
		return b.X0 < t.X1+1.2 && t.X0 < b.X1+1.2 && b.Y0 < t.Y1+0.8 && t.Y0 < b.Y1+0.8
	})
}

// limit draws a limit line from a to b with its name on the line.
func (f *plot) limit(name, value string, a, b drawing.Point) {
	f.curve(limitStyle, []drawing.Point{a, b})
	text := strings.TrimSpace("limit " + value + " " + name)
	line := []drawing.Point{a, b}
	if f.on(text, a, b) || f.beside(text, limitStyle.ink, line, every(1.5, line)) {
		return
	}
	f.on(value, a, b) // the figure at least, and the whole in the key
	f.key = append(f.key, keyed{name: text, style: limitStyle})
}

// on writes a text on a level line where no other curve passes.
func (f *plot) on(text string, a, b drawing.Point) bool {
	const h = drawing.TextSmall
	w := drawing.TextWidth(h, false, text)
	for x := b.X - w - 3; x >= a.X+1; x -= 1 {
		box := drawing.Box{X0: x, Y0: a.Y - 0.75*h, X1: x + w, Y1: a.Y + h/2}
		free := box.X0 > f.box.X0 && box.Y0 > f.box.Y0
		for _, c := range f.curves {
			free = free && (away(box, c) > keepOff || slices.Equal(c, []drawing.Point{a, b}))
		}
		for _, t := range f.taken {
			free = free && !(box.X0 < t.X1+1 && t.X0 < box.X1+1 && box.Y0 < t.Y1+0.8 && t.Y0 < box.Y1+0.8)
		}
		if free {
			f.taken = append(f.taken, box)
			f.s.Label(drawing.P(x, a.Y), h, drawing.Left|drawing.Middle, text)
			return true
		}
	}
	return false
}
