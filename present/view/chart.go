package view

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/present/drawing"
)

// Paper is what every chart is told about the sheet it stands on.
type Paper struct {
	Width float64 // in mm; 0 means 180. From 80 mm on everything fits
	US    bool    // °F, inches and ounces in place of °C, mm and grams
	Title string  // empty: the chart's own

	Held    []string // what forbids to begin, in bold on top (Held of a result)
	Caution string   // on top, on every export
	Note    string   // at the foot: where the numbers come from, what they leave out
}

// Room of a chart on paper, in mm.
const (
	leastWidth = 80.0
	lineStep   = 1.7 * drawing.TextSmall
	tickLong   = 1.2
	keepOff    = 0.7 // between a label and any line
)

func (p Paper) width() float64 {
	if p.Width == 0 {
		return wide
	}
	return max(p.Width, leastWidth)
}

// stroked is how a curve is drawn. Two curves never differ by ink alone.
type stroked struct {
	line drawing.Line
	dash []float64 // strokes and gaps in mm; none is a whole line
	ink  drawing.Ink
}

// plot is the inside of a chart: where it stands on paper, what its axes run
// over, and what stands in it already.
type plot struct {
	s          *drawing.Scene
	box        drawing.Box // on paper
	x0, x1     float64     // ends of the axes, in their own units
	y0, y1     float64
	logx, logy bool
	curves     [][]drawing.Point // lines that text keeps off, on paper
	edges      [][]drawing.Point // lines that text may cover, but had better not
	taken      []drawing.Box     // texts that are placed
	key        []keyed           // curves without room for their name
}

type keyed struct {
	name  string
	style stroked
}

func (f *plot) at(x, y float64) drawing.Point {
	return drawing.P(f.box.X0+part(x, f.x0, f.x1, f.logx)*f.box.Width(), f.box.Y0+part(y, f.y0, f.y1, f.logy)*f.box.Height())
}

func part(v, a, b float64, logarithmic bool) float64 {
	if logarithmic {
		v, a, b = math.Log(v), math.Log(a), math.Log(b)
	}
	return (v - a) / (b - a)
}

// rule draws a line of the grid: a grey strip as wide as a narrow line, so that
// it stands behind the curves in black and white too.
func (f *plot) rule(a, b drawing.Point) {
	const half = 0.125
	box := drawing.Box{X0: min(a.X, b.X), Y0: min(a.Y, b.Y), X1: max(a.X, b.X), Y1: max(a.Y, b.Y)}
	f.s.Fill(drawing.Mid, box.Inset(-half).Corners())
}

// tickX draws a tick of the axis below, with its grid line, and its text.
func (f *plot) tickX(x float64, text string) {
	p := f.at(x, f.y0)
	f.rule(p, drawing.P(p.X, f.box.Y1))
	f.s.Line(drawing.Narrow, p, drawing.P(p.X, p.Y-tickLong))
	f.s.Text(drawing.P(p.X, p.Y-tickLong-0.8), drawing.TextSmall, drawing.Centre|drawing.Top, text)
}

// tickY draws a tick of the axis to the left, with its grid line, and its text.
func (f *plot) tickY(y float64, text string) {
	p := f.at(f.x0, y)
	f.rule(p, drawing.P(f.box.X1, p.Y))
	f.s.Line(drawing.Narrow, p, drawing.P(p.X-tickLong, p.Y))
	f.s.Text(drawing.P(p.X-tickLong-0.8, p.Y), drawing.TextSmall, drawing.Right|drawing.Middle, text)
}

// axes draws the two axes, and a third to the right if there is one. It comes
// after the shades and before the curves.
func (f *plot) axes(right bool) {
	b := f.box
	pts := []drawing.Point{{X: b.X0, Y: b.Y1}, {X: b.X0, Y: b.Y0}, {X: b.X1, Y: b.Y0}}
	if right {
		pts = append(pts, drawing.P(b.X1, b.Y1))
	}
	f.s.Polyline(drawing.Narrow, pts...)
}

// curve draws a run of points given on paper, and keeps names off it.
func (f *plot) curve(st stroked, pts []drawing.Point) {
	f.curves = append(f.curves, thin(pts))
	p := f.s.In(st.ink)
	if st.dash == nil {
		p.Polyline(st.line, pts...)
		return
	}
	for _, run := range dashes(pts, st.dash) {
		p.Polyline(st.line, run...)
	}
}

// thin leaves out the points without which the run stays within a tenth of a
// millimetre of where it was (Douglas and Peucker's way); the ends stay.
func thin(pts []drawing.Point) []drawing.Point {
	if len(pts) < 3 {
		return pts
	}
	a, b := pts[0], pts[len(pts)-1]
	far, at := 0.1, 0
	for i, p := range pts[1 : len(pts)-1] {
		if d := fromSegment(p, a, b); d > far {
			far, at = d, i+1
		}
	}
	if at == 0 {
		return []drawing.Point{a, b}
	}
	left := thin(pts[: at+1 : at+1])
	return append(left[:len(left)-1:len(left)-1], thin(pts[at:])...)
}

// fromSegment returns the distance of p from the segment ab.
func fromSegment(p, a, b drawing.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := 0.0
	if d := dx*dx + dy*dy; d > 0 {
		t = min(max(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/d, 0), 1)
	}
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}

// dashes cuts a run of points into strokes: the drawing's own dashes are for
// narrow lines only, and curves need more than two kinds.
func dashes(pts []drawing.Point, pattern []float64) [][]drawing.Point {
	var out [][]drawing.Point
	if len(pts) == 0 {
		return nil
	}
	k, left, run := 0, pattern[0], pts[:1:1]
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		for {
			d := math.Hypot(b.X-a.X, b.Y-a.Y)
			if d < left {
				left -= d
				break
			}
			a = drawing.P(a.X+(b.X-a.X)*left/d, a.Y+(b.Y-a.Y)*left/d)
			if k%2 == 0 {
				out = append(out, append(run, a))
			}
			k++
			run, left = []drawing.Point{a}, pattern[k%len(pattern)]
		}
		run = append(run, b)
	}
	if k%2 == 0 && len(run) > 1 {
		out = append(out, run)
	}
	return out
}

// name writes a curve's name beside it where it is nearer to its own curve than
// to any other and touches nothing. Where there is no such place, it goes to
// the key above the chart.
func (f *plot) name(text string, st stroked, pts []drawing.Point) {
	if text == "" {
		return
	}
	own := thin(pts)
	if !f.beside(text, st.ink, own, every(4, own)) {
		f.key = append(f.key, keyed{text, st})
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
	if b.X0 < in.X0 || b.X1 > in.X1 || b.Y0 < in.Y0 || b.Y1 > in.Y1 {
		return math.Inf(1)
	}
	for _, t := range f.taken {
		if b.X0 < t.X1+1.2 && t.X0 < b.X1+1.2 && b.Y0 < t.Y1+0.8 && t.Y0 < b.Y1+0.8 {
			return math.Inf(1)
		}
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

// foot returns the lines of a note at the foot and the height they take.
func foot(p Paper, more ...string) ([]string, float64) {
	text := strings.TrimSpace(strings.Join(append(more, p.Note), " "))
	if text == "" {
		return nil, 0
	}
	lines := drawing.Wrap(text, p.width(), drawing.TextSmall, false)
	return lines, float64(len(lines))*lineStep + 1
}

func writeFoot(s *drawing.Scene, lines []string) {
	for i, l := range lines {
		s.Text(drawing.P(0, 1+lineStep*float64(len(lines)-1-i)), drawing.TextSmall, drawing.Left, l)
	}
}

// finish puts above the plot, from y upwards, the key of the curves without
// room for a name, the title, the caution and what holds the job, and gives the
// sheet its height.
func (f *plot) finish(p Paper, y float64) {
	const sample = 12.0
	s, w := f.s, p.width()
	for i := len(f.key) - 1; i >= 0; i-- {
		k := f.key[i]
		lines := drawing.Wrap(k.name, w-sample-2, drawing.TextSmall, false)
		for j := len(lines) - 1; j >= 0; j-- {
			s.Text(drawing.P(sample+2, y), drawing.TextSmall, drawing.Left, lines[j])
			if j > 0 {
				y += lineStep
			}
		}
		a, b := drawing.P(0, y+1.2), drawing.P(sample, y+1.2)
		pen := s.In(k.style.ink)
		if k.style.dash == nil {
			pen.Polyline(k.style.line, a, b)
		} else {
			for _, run := range dashes([]drawing.Point{a, b}, k.style.dash) {
				pen.Polyline(k.style.line, run...)
			}
		}
		y += lineStep
	}
	up := func(text string, bold bool) {
		lines := drawing.Wrap(text, w, drawing.TextSmall, bold)
		for i, l := range lines { // in reading order, for whoever reads the file aloud
			at := drawing.P(0, y+lineStep*float64(len(lines)-1-i))
			if bold {
				s.Bold(at, drawing.TextSmall, drawing.Left, l)
			} else {
				s.Text(at, drawing.TextSmall, drawing.Left, l)
			}
		}
		y += lineStep * float64(len(lines))
	}
	up(s.Title, true)
	if p.Caution != "" {
		up(p.Caution, false)
	}
	for i := len(p.Held) - 1; i >= 0; i-- {
		up(p.Held[i], true)
	}
	s.Height = y
}

// steps returns the round numbers from a to b in the smallest step of 1, 2 or
// 5 times a power of ten that gives at most n of them.
func steps(a, b float64, n int) []float64 {
	step := math.Pow(10, math.Floor(math.Log10((b-a)/float64(max(n, 1)))))
	for i := 0; (b-a)/step > float64(n-1)+1e-9; i++ {
		step *= [3]float64{2, 2.5, 2}[i%3]
	}
	var out []float64
	for k := math.Ceil(a/step - 1e-9); k*step <= b+1e-9*step; k++ {
		out = append(out, k*step+0) // + 0: no negative zero
	}
	return out
}

// spread moves places along an axis apart until they are at least gap apart,
// moving each as little as the others let it; they must come in rising order.
func spread(at []float64, gap, low, high float64) []float64 {
	out := append([]float64(nil), at...)
	for range 200 {
		for i := 1; i < len(out); i++ {
			if d := gap - (out[i] - out[i-1]); d > 0 {
				out[i-1] -= d / 2
				out[i] += d / 2
			}
		}
		for i := range out {
			out[i] = min(max(out[i], low+gap*float64(i)), high-gap*float64(len(out)-1-i))
		}
	}
	return out
}

// degrees turns a temperature in °C into what is printed.
func (p Paper) degrees(celsius float64) float64 {
	if p.US {
		return celsius*9/5 + 32
	}
	return celsius
}

func (p Paper) degreeName() string {
	if p.US {
		return "°F"
	}
	return "°C"
}

func (p Paper) temperature(celsius float64) string {
	return fmt.Sprintf("%.0f %s", math.Round(p.degrees(celsius))+0, p.degreeName())
}
