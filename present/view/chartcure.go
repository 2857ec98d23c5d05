package view

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/present/drawing"
)

// CureChart is temperature and degree of cure against time, with the windows
// in which something may be done. Times count from mixing.
type CureChart struct {
	Paper
	Clock bool    // the axis shows the time of day
	Mixed si.Time // time of day when mixed, since midnight of day 1; read if Clock

	Temps   []TempCurve
	Cures   []CureCurve
	Windows []ChartWindow
	Limits  []TempLimit
}

// TempCurve is a temperature against time.
type TempCurve struct {
	Name   string // "hull", "laminate, middle", "air"
	Points []TempAt
}

// TempAt is one point of a TempCurve.
type TempAt struct {
	At   si.Time
	Temp si.Temp
}

// CureCurve is a degree of cure against time.
type CureCurve struct {
	Name   string // "cure, middle"
	Points []CureAt
}

// CureAt is one point of a CureCurve.
type CureAt struct {
	At   si.Time
	Cure si.Ratio
}

// ChartWindow is a span of time in which something holds: "work",
// "recoat without sanding". To zero means that it stays so.
type ChartWindow struct {
	Name     string
	From, To si.Time
}

// TempLimit is a temperature that must not be passed, and over what.
type TempLimit struct {
	Name string // "over foam"
	Temp si.Temp
}

var (
	tempStyles = []stroked{
		{line: drawing.Wide},
		{line: drawing.Narrow},
		{line: drawing.Narrow, dash: []float64{4, 1.2}},
		{line: drawing.Narrow, dash: []float64{6, 1, 0.6, 1}},
	}
	cureStyles = []stroked{
		{line: drawing.Wide, dash: []float64{3, 1.2}, ink: drawing.Blue},
		{line: drawing.Narrow, dash: []float64{1, 1}, ink: drawing.Blue},
		{line: drawing.Wide, dash: []float64{0.6, 1.4}, ink: drawing.Blue},
	}
	limitStyle = stroked{line: drawing.Narrow, dash: []float64{2, 1}, ink: drawing.Vermilion}
)

// Scene returns the chart, nil where no temperature and no cure is given over
// any time.
func (c CureChart) Scene() *drawing.Scene {
	end := 0.0
	lo, hi := math.Inf(1), math.Inf(-1)
	see := func(t si.Temp) { v := c.degrees(t.Celsius()); lo, hi = min(lo, v), max(hi, v) }
	for _, t := range c.Temps {
		for _, p := range t.Points {
			end = max(end, p.At.Hours())
			see(p.Temp)
		}
	}
	for _, t := range c.Cures {
		for _, p := range t.Points {
			end = max(end, p.At.Hours())
		}
	}
	if end == 0 {
		return nil
	}
	for _, l := range c.Limits {
		see(l.Temp)
	}
	w := c.width()
	title := c.Title
	if title == "" {
		title = "Temperature and degree of cure"
	}
	s := drawing.New(w, 1000, title)
	lines, low := foot(c.Paper)
	writeFoot(s, lines)
	high := min(max(0.42*w, 48), 76)
	f := &plot{s: s, x1: end, box: drawing.Box{X0: 11, Y0: low + 10, X1: w - 9, Y1: low + 10 + high}}

	if lo > hi {
		lo, hi = 0, 1 // cure alone: the left axis is not drawn
	}
	tens := steps(lo-0.04*(hi-lo)-1, hi+0.06*(hi-lo)+1, int(high/8))
	step := tens[1] - tens[0]
	f.y0, f.y1 = tens[0], tens[len(tens)-1]
	for f.y0 > lo-0.02*step {
		f.y0 -= step
	}
	for f.y1 < hi+0.1*step {
		f.y1 += step
	}

	// Shades first, then the grid, the axes, and the curves on top.
	for _, v := range c.Windows {
		if a, b, closed := c.span(v, end); closed {
			s.Fill(drawing.Light, drawing.Box{X0: f.at(a, 0).X, Y0: f.box.Y0, X1: f.at(b, 0).X, Y1: f.box.Y1}.Corners())
		}
	}
	if len(c.Temps)+len(c.Limits) > 0 {
		for v := f.y0; v <= f.y1+1e-9; v += step {
			f.tickY(v, fmt.Sprintf("%.4g", v+0))
		}
		s.Text(drawing.P(0, f.box.Y1+2.2), drawing.TextSmall, drawing.Left, "temperature, "+c.degreeName())
	}
	c.timeAxis(f, end)
	f.axes(len(c.Cures) > 0)
	c.edges(f, end)
	c.draw(f)
	c.windows(f, end)
	s.Desc = c.words(end)
	return s
}

// span returns the part of a window that is on the chart, in hours, and
// whether it ends there.
func (c CureChart) span(v ChartWindow, end float64) (a, b float64, closed bool) {
	a, b = min(v.From.Hours(), end), v.To.Hours()
	closed = b > 0
	if !closed || b > end {
		b = end
	}
	return a, b, closed && b > a
}

// edges draws where each window begins and ends within the plot.
func (c CureChart) edges(f *plot, end float64) {
	for _, v := range c.Windows {
		for _, t := range []float64{v.From.Hours(), v.To.Hours()} {
			if t > 0 && t < end {
				p := f.at(t, f.y0)
				f.s.Line(drawing.DashedNarrow, p, drawing.P(p.X, f.box.Y1))
				f.edges = append(f.edges, []drawing.Point{p, drawing.P(p.X, f.box.Y1)})
			}
		}
	}
}

func (c CureChart) draw(f *plot) {
	type curve struct {
		name  string
		style stroked
		pts   []drawing.Point
	}
	var all []curve
	for i, t := range c.Temps {
		var pts []drawing.Point
		for _, p := range t.Points {
			pts = append(pts, f.at(p.At.Hours(), c.degrees(p.Temp.Celsius())))
		}
		all = append(all, curve{t.Name, tempStyles[i%len(tempStyles)], pts})
	}
	if len(c.Cures) > 0 {
		for v := 0.0; v <= 100; v += 20 {
			y := f.box.Y0 + f.box.Height()*v/100
			f.s.Line(drawing.Narrow, drawing.P(f.box.X1, y), drawing.P(f.box.X1+tickLong, y))
			f.s.Text(drawing.P(f.box.X1+tickLong+0.8, y), drawing.TextSmall, drawing.Left|drawing.Middle, fmt.Sprintf("%.0f", v))
		}
		f.s.Text(drawing.P(f.s.Width, f.box.Y1+2.2), drawing.TextSmall, drawing.Right, "degree of cure, %")
	}
	for i, t := range c.Cures {
		var pts []drawing.Point
		for _, p := range t.Points {
			x := f.at(p.At.Hours(), f.y0)
			pts = append(pts, drawing.P(x.X, f.box.Y0+f.box.Height()*float64(p.Cure)))
		}
		all = append(all, curve{t.Name + " (%)", cureStyles[i%len(cureStyles)], pts})
	}
	for _, k := range all {
		f.curve(k.style, k.pts)
	}
	for _, l := range c.Limits {
		y := c.degrees(l.Temp.Celsius())
		f.limit(l.Name, c.temperature(l.Temp.Celsius()), f.at(f.x0, y), f.at(f.x1, y))
	}
	for _, k := range all {
		f.name(k.name, k.style, k.pts)
	}
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
	f.key = append(f.key, keyed{text, limitStyle})
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

// timeAxis draws the ticks of time: of the day, or since mixing.
func (c CureChart) timeAxis(f *plot, end float64) {
	room := int(f.box.Width() / 13)
	start := 0.0
	if c.Clock {
		start = c.Mixed.Hours()
	}
	step := 1.0 / 12
	for _, step = range []float64{1. / 12, 1. / 6, .25, .5, 1, 2, 3, 6, 12, 24, 48, 96, 168, 336, 672} {
		if end/step <= float64(room) {
			break
		}
	}
	title := "time since mixing, h"
	for k := math.Ceil(start/step - 1e-9); k*step <= start+end+1e-9; k++ {
		t := k * step
		text := fmt.Sprintf("%.4g", t)
		switch {
		case c.Clock:
			text = clock(t)
			if math.Abs(math.Mod(t, 24)) < 1e-9 {
				text = fmt.Sprintf("day %.0f", t/24+1)
			}
		case step < 0.5 || step == 0.5 && end <= 3:
			text = fmt.Sprintf("%.0f", t*60)
			title = "time since mixing, min"
		}
		f.tickX(t-start, text)
	}
	if c.Clock {
		title = "time of day; mixed at " + clock(start)
	}
	f.s.Text(drawing.P((f.box.X0+f.box.X1)/2, f.box.Y0-9), drawing.TextSmall, drawing.Centre, title)
}

// clock prints hours since midnight as the time of day, to the minute.
func clock(hours float64) string {
	m := int(math.Round(hours * 60))
	return fmt.Sprintf("%02d:%02d", m/60%24, m%60)
}

// when prints hours since mixing as a person reads them.
func (c CureChart) when(hours float64) string {
	if c.Clock {
		t := c.Mixed.Hours() + hours
		if d := int((math.Round(t*60) + 0.5) / 1440); d > int(c.Mixed.Hours()/24) {
			return fmt.Sprintf("day %d, %s", d+1, clock(t))
		}
		return clock(t)
	}
	if hours < 2 {
		return fmt.Sprintf("%.0f min", hours*60)
	}
	return strings.TrimSuffix(fmt.Sprintf("%.1f", hours), ".0") + " h"
}

// says puts a window in words: "recoat without sanding: 11:00 to 18:30".
func (c CureChart) says(v ChartWindow) string {
	switch {
	case v.To > 0 && v.From == 0:
		return fmt.Sprintf("%s: until %s", v.Name, c.when(v.To.Hours()))
	case v.To > 0:
		return fmt.Sprintf("%s: %s to %s", v.Name, c.when(v.From.Hours()), c.when(v.To.Hours()))
	}
	return fmt.Sprintf("%s: from %s", v.Name, c.when(v.From.Hours()))
}

// windows draws a bar for each window above the plot, on the same axis, with
// its words in it or beside it, and finishes the sheet.
func (c CureChart) windows(f *plot, end float64) {
	const bar, h = 3.8, drawing.TextSmall
	s, y := f.s, f.box.Y1+6.8
	for i := len(c.Windows) - 1; i >= 0; i-- {
		v := c.Windows[i]
		a, b, closed := c.span(v, end)
		x0, x1 := f.at(a, f.y0).X, f.at(b, f.y0).X
		box := drawing.Box{X0: x0, Y0: y, X1: x1, Y1: y + bar}
		corners := box.Corners()
		if x1 > x0 {
			s.Fill(drawing.Light, corners)
			if closed {
				s.Ring(drawing.Narrow, corners...)
			} else {
				s.Polyline(drawing.Narrow, corners[1], corners[0], corners[3], corners[2]) // open to the right
			}
		}
		text := c.says(v)
		w := drawing.TextWidth(h, false, text)
		mid := y + bar/2
		switch {
		case w+3 < x1-x0:
			s.Text(drawing.P(x0+1.5, mid), h, drawing.Left|drawing.Middle, text)
		case x1+1.5+w < s.Width:
			s.Text(drawing.P(x1+1.5, mid), h, drawing.Left|drawing.Middle, text)
		case x0-1.5-w > 0:
			s.Text(drawing.P(x0-1.5, mid), h, drawing.Right|drawing.Middle, text)
		default:
			rows := drawing.Wrap(text, s.Width, h, false)
			for j := len(rows) - 1; j >= 0; j-- {
				y += lineStep
				s.Text(drawing.P(0, y+1), h, drawing.Left, rows[j])
			}
			y += 0.4
		}
		y += bar + 1
	}
	f.finish(c.Paper, y+1)
}

// words says what the chart shows, for a reader who cannot see it.
func (c CureChart) words(end float64) string {
	var out []string
	for _, t := range c.Temps {
		top := TempAt{}
		for _, p := range t.Points {
			if p.Temp > top.Temp {
				top = p
			}
		}
		if top.Temp.Given() {
			out = append(out, fmt.Sprintf("%s: highest %s at %s", cmp.Or(t.Name, "temperature"), c.temperature(top.Temp.Celsius()), c.when(top.At.Hours())))
		}
	}
	for _, t := range c.Cures {
		if n := len(t.Points); n > 0 {
			out = append(out, fmt.Sprintf("%s: %.0f %% at %s", cmp.Or(t.Name, "cure"), 100*float64(t.Points[n-1].Cure), c.when(t.Points[n-1].At.Hours())))
		}
	}
	for _, l := range c.Limits {
		out = append(out, strings.TrimSpace(fmt.Sprintf("limit %s %s", c.temperature(l.Temp.Celsius()), l.Name)))
	}
	for _, v := range c.Windows {
		out = append(out, c.says(v))
	}
	return fmt.Sprintf("Temperature and degree of cure over %.3g h. ", end) + strings.Join(out, "; ") + "."
}
