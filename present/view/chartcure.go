package view

import (
	"cmp"
	"fmt"
	"math"
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
	Mark    TempAt // told in words beside a dot, if given
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
	seen := nothing()
	for _, t := range c.Temps {
		for _, p := range t.Points {
			end = max(end, p.At.Hours())
			seen.see(c.degrees(p.Temp.Celsius()))
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
		seen.see(c.degrees(l.Temp.Celsius()))
	}
	s, low := c.begin("Temperature and degree of cure")
	f := &plot{s: s, x1: end, box: drawing.Box{X0: 11, Y0: low + 10, X1: s.Width - 9, Y1: low + 10 + c.plot(0.42, 48, 76)}}
	if seen.empty() {
		seen = reach{0, 1} // cure alone: the left axis is not drawn
	}
	levels := f.levels(seen)

	// Shades first, then the grid, the axes, and the curves on top.
	for _, v := range c.Windows {
		if a, b, closed := c.span(v, end); closed {
			s.Fill(drawing.Light, drawing.Box{X0: f.at(a, 0).X, Y0: f.box.Y0, X1: f.at(b, 0).X, Y1: f.box.Y1}.Corners())
		}
	}
	if len(c.Temps)+len(c.Limits) > 0 {
		f.temperatures(c.Paper, levels)
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
		f.s.Text(drawing.P(f.s.Width, f.box.Y1+axisName), drawing.TextSmall, drawing.Right, "degree of cure, %")
	}
	for i, t := range c.Cures {
		var pts []drawing.Point
		for _, p := range t.Points {
			x := f.at(p.At.Hours(), f.y0)
			pts = append(pts, drawing.P(x.X, f.box.Y0+f.box.Height()*float64(p.Cure)))
		}
		all = append(all, curve{t.Name + ", % (right)", cureStyles[i%len(cureStyles)], pts})
	}
	for _, k := range all {
		f.curve(k.style, k.pts)
	}
	for _, l := range c.Limits {
		y := c.degrees(l.Temp.Celsius())
		f.limit(l.Name, c.temperature(l.Temp.Celsius()), f.at(f.x0, y), f.at(f.x1, y))
	}
	if at := c.Mark; at.Temp.Given() {
		f.mark(f.at(at.At.Hours(), c.degrees(at.Temp.Celsius())), c.temperature(at.Temp.Celsius())+", "+c.when(at.At.Hours()))
	}
	for _, k := range all {
		f.name(k.name, k.style, k.pts)
	}
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
		if start >= 24 {
			title = fmt.Sprintf("time of day; mixed on day %d at %s", 1+int(start/24), clock(start))
		}
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
	const bar, h = 4.4, drawing.TextSmall
	s, y := f.s, f.box.Y1+axisName+4.6
	for i := len(c.Windows) - 1; i >= 0; i-- {
		v := c.Windows[i]
		a, b, closed := c.span(v, end)
		x0, x1 := f.at(a, f.y0).X, f.at(b, f.y0).X
		box := drawing.Box{X0: x0, Y0: y, X1: x1, Y1: y + bar}
		corners := box.Corners()
		if x1 > x0 {
			s.Fill(drawing.Light, corners)
			if closed && v.To.Hours() <= end {
				s.Ring(drawing.Narrow, corners...)
			} else {
				s.Polyline(drawing.Narrow, corners[1], corners[0], corners[3], corners[2]) // open to the right
			}
		}
		text := c.says(v)
		if v.From.Hours() >= end {
			text += " →" // it begins beyond the axis: an arrow in place of a bar
		}
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
				s.Text(drawing.P(0, y+1.5), h, drawing.Left, rows[j])
			}
			y += 0.9
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
