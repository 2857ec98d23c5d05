package view

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"scarfwright/present/drawing"
)

// Room is the place a chart is drawn for.
type Room struct {
	Width float64 // in mm; 0 means 180. From 80 mm on everything fits
	Plot  float64 // height of the plot in mm; 0 means what suits the width
	Told  bool    // stops, caution and the note at the foot stand on the paper round it
}

// Paper is what every chart is told about the sheet it stands on.
type Paper struct {
	Room
	US    bool   // °F, inches and ounces in place of °C, mm and grams
	Title string // empty: the chart's own

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
	keyGap     = 6.0 // between two names of the key
	axisName   = 3.0 // from the plot's top to the name of the axis beside it
)

func (r Room) width() float64 {
	if r.Width == 0 {
		return wide
	}
	return max(r.Width, leastWidth)
}

// plot is the height of the plot: a share of the width, within the ends given.
func (r Room) plot(share, low, high float64) float64 {
	if r.Plot > 0 {
		return r.Plot
	}
	return min(max(share*r.width(), low), high)
}

// begin returns a sheet with the note at its foot, and the height that takes. The
// title is the paper's, or the usual one.
func (p Paper) begin(usual string, more ...string) (*drawing.Scene, float64) {
	s := drawing.New(p.width(), 1000, cmp.Or(p.Title, usual))
	text := strings.TrimSpace(strings.Join(append(more, p.Note), " "))
	if text == "" {
		return s, 0
	}
	lines := drawing.Wrap(text, p.width(), drawing.TextSmall, false)
	for i, l := range lines {
		s.Text(drawing.P(0, 1+lineStep*float64(len(lines)-1-i)), drawing.TextSmall, drawing.Left, l)
	}
	return s, float64(len(lines))*lineStep + 1
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
	dot   bool // a dot in place of a line
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
	f.stroke(st, pts)
}

// stroke draws a line in a style.
func (f *plot) stroke(st stroked, pts []drawing.Point) {
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

// finish puts above the plot, from y upwards, the key of the curves without
// room for a name, the title, the caution and what holds the job, and gives the
// sheet its height.
func (f *plot) finish(p Paper, y float64) {
	const sample = 12.0
	s, w := f.s, p.width()
	rows := f.keyRows(sample+2, w)
	for i := len(rows) - 1; i >= 0; i-- {
		f.keyRow(rows[i], sample, w, &y)
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

// keyRows shares the key out over as few rows as hold it, in order; indent is
// what stands before each name.
func (f *plot) keyRows(indent, w float64) [][]keyed {
	var rows [][]keyed
	x := math.Inf(1)
	for _, k := range f.key {
		wide := indent + drawing.TextWidth(drawing.TextSmall, false, k.name)
		if x+wide > w {
			rows, x = append(rows, nil), 0
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], k)
		x += wide + keyGap
	}
	return rows
}

// keyRow writes one row of the key from y upwards, each name after a sample of
// its line, and moves y above it.
func (f *plot) keyRow(row []keyed, sample, w float64, y *float64) {
	x, top := 0.0, *y
	for _, k := range row {
		lines := drawing.Wrap(k.name, w-sample-2, drawing.TextSmall, false)
		at := *y + lineStep*float64(len(lines)-1)
		for j, l := range lines {
			f.s.Text(drawing.P(x+sample+2, at-lineStep*float64(j)), drawing.TextSmall, drawing.Left, l)
		}
		if k.dot {
			f.dot(drawing.P(x+sample/2, at+1.2))
		} else {
			f.stroke(k.style, []drawing.Point{{X: x, Y: at + 1.2}, {X: x + sample, Y: at + 1.2}})
		}
		x += sample + 2 + drawing.TextWidth(drawing.TextSmall, false, k.name) + keyGap
		top = max(top, at)
	}
	*y = top + lineStep
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

// reach is the lowest and the highest of what is seen, as printed.
type reach struct{ low, high float64 }

func nothing() reach { return reach{math.Inf(1), math.Inf(-1)} }

func (r reach) empty() bool { return r.low > r.high }

func (r *reach) see(v float64) { r.low, r.high = min(r.low, v), max(r.high, v) }

// levels sets the axis to the left to round numbers that hold r with room above
// and below, and returns them.
func (f *plot) levels(r reach) []float64 {
	span := r.high - r.low
	var out []float64
	for n := int(f.box.Height() / 8); len(out) < 2; n++ { // a coarse step may fall between the ends
		out = steps(r.low-0.04*span-1, r.high+0.06*span+1, n)
	}
	step := out[1] - out[0]
	for out[0] > r.low-0.02*step {
		out = append([]float64{out[0] - step}, out...)
	}
	for out[len(out)-1] < r.high+0.1*step {
		out = append(out, out[len(out)-1]+step)
	}
	f.y0, f.y1 = out[0], out[len(out)-1]
	return out
}

// temperatures draws the axis of temperature to the left.
func (f *plot) temperatures(p Paper, levels []float64) {
	for _, v := range levels {
		f.tickY(v, fmt.Sprintf("%.4g", v+0))
	}
	f.s.Text(drawing.P(0, f.box.Y1+axisName), drawing.TextSmall, drawing.Left, "temperature, "+p.degreeName())
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
