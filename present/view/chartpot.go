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

// PotChart is the pot life against the mass mixed, a line for each
// temperature, for the wall of the shed; with a table of the same figures.
type PotChart struct {
	Paper
	Material  string // "laminating epoxy, slow"
	Criterion string // what ends the pot life: "gel in a cup", empty: "end of pot life"
	Lines     []PotLine
}

// PotLine is the pot life at one temperature, by rising mass.
type PotLine struct {
	Temp   si.Temp
	Points []PotAt
}

// PotAt is the pot life of one mass: the typical time, and the 10 to 90 % band.
type PotAt struct {
	Mass            si.Mass
	Low, Time, High si.Time
	Beyond          bool // outside the temperatures and masses of the sheet
}

// beyondWords says what a dashed line and a star mean.
const beyondWords = "Dashed, and * in the table: beyond the sheet's temperatures and masses, an estimate with no figure of the maker's near it."

var potStyles = []stroked{{line: drawing.Wide}, {line: drawing.Narrow}}

// Scene returns the chart, nil where no line has two points.
func (c PotChart) Scene() *drawing.Scene {
	c.Lines = slices.Clone(c.Lines)
	slices.SortFunc(c.Lines, func(a, b PotLine) int { return cmp.Compare(a.Temp, b.Temp) })
	x0, x1, y0, y1 := math.Inf(1), 0.0, math.Inf(1), 0.0
	beyond, band, lines := false, false, false
	for _, l := range c.Lines {
		lines = lines || len(l.Points) > 1
		for _, p := range l.Points {
			x0, x1 = min(x0, c.mass(p.Mass)), max(x1, c.mass(p.Mass))
			y0, y1 = min(y0, p.Low.Minutes(), p.Time.Minutes()), max(y1, p.High.Minutes(), p.Time.Minutes())
			beyond, band = beyond || p.Beyond, band || p.High > p.Low
		}
	}
	if !lines || x0 <= 0 || y0 <= 0 || x0 == x1 {
		return nil
	}
	var more []string
	if band {
		more = append(more, "Grey, and in brackets: 8 of 10 mixes lie in between by the model. Plan with the short end.")
	}
	if beyond {
		more = append(more, beyondWords)
	}
	s, low := c.begin(strings.TrimSuffix("Pot life against mass and temperature: "+c.Material, ": "), more...)
	low = c.table(s, low+1, band)

	f := &plot{s: s, x0: x0, x1: x1, y0: y0 * 0.95, y1: y1 * 1.05, logx: true, logy: true,
		box: drawing.Box{X0: 11, Y0: low + 10, X1: s.Width - 14, Y1: low + 10 + c.plot(0.42, 52, 76)}}
	for _, l := range c.Lines {
		c.band(f, l)
	}
	for _, m := range c.masses(x0, x1) {
		f.tickX(m, fmt.Sprintf("%g", m))
	}
	for _, t := range []float64{1, 2, 5, 10, 15, 20, 30, 45, 60, 90, 120, 180, 240, 360, 480, 720, 1440} {
		if t >= f.y0 && t <= f.y1 {
			f.tickY(t, fmt.Sprintf("%g", t))
		}
	}
	f.axes(false)
	c.draw(f)
	s.Text(drawing.P((f.box.X0+f.box.X1)/2, f.box.Y0-9), drawing.TextSmall, drawing.Centre, "mass mixed, "+c.massName())
	y := f.box.Y1 + axisName
	s.Text(drawing.P(0, y), drawing.TextSmall, drawing.Left, "minutes to "+c.end())
	f.finish(c.Paper, y+lineStep+1)
	s.Desc = c.words(c.masses(x0, x1))
	return s
}

func (c PotChart) end() string { return cmp.Or(c.Criterion, "end of pot life") }

// ounce is the avoirdupois ounce in grams, exact by definition.
const ounce = 28.349523125

func (c PotChart) mass(m si.Mass) float64 {
	if c.US {
		return m.Grams() / ounce
	}
	return m.Grams()
}

func (c PotChart) massName() string {
	if c.US {
		return "oz (mass)"
	}
	return "g"
}

// masses returns the round masses that are told.
func (c PotChart) masses(x0, x1 float64) []float64 {
	round := []float64{10, 20, 50, 100, 200, 500, 1000, 2000, 5000}
	if c.US {
		round = []float64{0.5, 1, 2, 4, 8, 16, 32, 64, 128}
	}
	var out []float64
	for _, m := range round {
		if m >= x0*(1-1e-9) && m <= x1*(1+1e-9) {
			out = append(out, m)
		}
	}
	return out
}

func (c PotChart) band(f *plot, l PotLine) {
	var up, down []drawing.Point
	for _, p := range l.Points {
		if p.Low > 0 && p.High > 0 {
			up = append(up, f.at(c.mass(p.Mass), p.High.Minutes()))
			down = append(down, f.at(c.mass(p.Mass), p.Low.Minutes()))
		}
	}
	slices.Reverse(down)
	f.s.Fill(drawing.Light, append(up, down...))
}

// draw draws the lines and their temperatures at the right ends.
func (c PotChart) draw(f *plot) {
	var ends []float64
	var names []string
	for i, l := range c.Lines {
		st := potStyles[i%2]
		if len(l.Points) == 0 {
			continue
		}
		// Runs within the sheet and beyond it are drawn apart.
		for a := 0; a+1 < len(l.Points); {
			out := func(k int) bool { return l.Points[k].Beyond || l.Points[k+1].Beyond }
			b := a + 1
			for b+1 < len(l.Points) && out(b) == out(a) {
				b++
			}
			var pts []drawing.Point
			for _, p := range l.Points[a : b+1] {
				pts = append(pts, f.at(c.mass(p.Mass), p.Time.Minutes()))
			}
			run := st
			if out(a) {
				run.dash = []float64{2.4, 1.4}
			}
			f.curve(run, pts)
			a = b
		}
		last := l.Points[len(l.Points)-1]
		ends, names = append(ends, f.at(c.mass(last.Mass), last.Time.Minutes()).Y), append(names, c.temperature(l.Temp.Celsius()))
	}
	// The lowest line is the warmest: spread from below.
	slices.Reverse(ends)
	slices.Reverse(names)
	for i, y := range spread(ends, 4, f.box.Y0+1, f.box.Y1) {
		f.s.Line(drawing.Narrow, drawing.P(f.box.X1, ends[i]), drawing.P(f.box.X1+1.8, y))
		f.s.Text(drawing.P(f.box.X1+2.2, y), drawing.TextSmall, drawing.Left|drawing.Middle, names[i])
	}
}

// told is what the table says of one mass.
type told struct {
	low, time, high float64 // min
	beyond          bool
}

// read returns the figures at a mass, between the points on log axes, and false
// outside them.
func (c PotChart) read(l PotLine, mass float64) (told, bool) {
	for i := 0; i+1 < len(l.Points); i++ {
		p, q := l.Points[i], l.Points[i+1]
		a, b := c.mass(p.Mass), c.mass(q.Mass)
		if mass < a*(1-1e-9) || mass > b*(1+1e-9) {
			continue
		}
		t := part(mass, a, b, true)
		mix := func(x, y si.Time) float64 {
			if x <= 0 || y <= 0 {
				return 0
			}
			return math.Exp(math.Log(x.Minutes())*(1-t) + math.Log(y.Minutes())*t)
		}
		// A mass that is a point is as far within the sheet as that point.
		out := p.Beyond && t < 1-1e-9 || q.Beyond && t > 1e-9
		return told{mix(p.Low, q.Low), mix(p.Time, q.Time), mix(p.High, q.High), out}, true
	}
	return told{}, false
}

// cell prints the figures of a mass: typical, and the band.
func (c PotChart) cell(l PotLine, mass float64) (time, band string) {
	v, ok := c.read(l, mass)
	if !ok {
		return "–", ""
	}
	time = minutes(v.time)
	if v.beyond {
		time += "*"
	}
	if v.high > v.low {
		band = "(" + minutes(v.low) + "–" + minutes(v.high) + ")"
	}
	return time, band
}

// minutes prints a time as coarsely as it is known, rounded down: nobody is
// hurt by a minute too few.
func minutes(t float64) string {
	if t >= 100 {
		return fmt.Sprintf("%.0f", math.Floor(t/5+1e-9)*5)
	}
	return fmt.Sprintf("%.0f", math.Floor(t+1e-9))
}

// table writes the figures for who cannot read the chart, from the height low
// upwards, and returns the height above it. On narrow paper a cell takes two
// lines, and masses in between are left out until the rest fits.
func (c PotChart) table(s *drawing.Scene, low float64, band bool) float64 {
	const h, first = drawing.TextSmall, 11.0
	x0, x1 := math.Inf(1), 0.0
	for _, l := range c.Lines {
		for _, p := range l.Points {
			x0, x1 = min(x0, c.mass(p.Mass)), max(x1, c.mass(p.Mass))
		}
	}
	masses := c.masses(x0, x1)
	fits := func(two bool) bool {
		room := (s.Width-first)/float64(len(masses)) - 1
		for _, l := range c.Lines {
			for _, m := range masses {
				t, b := c.cell(l, m)
				if two && max(drawing.TextWidth(h, false, t), drawing.TextWidth(h, false, b)) > room ||
					!two && drawing.TextWidth(h, false, t+" "+b) > room-1 {
					return false
				}
			}
		}
		return true
	}
	two := band && !fits(false)
	for two && !fits(true) && len(masses) > 2 {
		masses = slices.Delete(masses, len(masses)-2, len(masses)-1)
	}
	if len(masses) == 0 {
		return low
	}
	y, pitch := low, (s.Width-first)/float64(len(masses))
	for i := len(c.Lines) - 1; i >= 0; i-- {
		l := c.Lines[i]
		if two {
			for k, m := range masses {
				_, b := c.cell(l, m)
				s.Text(drawing.P(first+pitch*(float64(k)+0.5), y), h, drawing.Centre, b)
			}
			y += lineStep
		}
		s.Text(drawing.P(0, y), h, drawing.Left, c.temperature(l.Temp.Celsius()))
		for k, m := range masses {
			t, b := c.cell(l, m)
			if !two {
				t = strings.TrimSpace(t + " " + b)
			}
			s.Text(drawing.P(first+pitch*(float64(k)+0.5), y), h, drawing.Centre, t)
		}
		y += lineStep + 0.5
	}
	s.Line(drawing.Narrow, drawing.P(0, y-0.6), drawing.P(s.Width, y-0.6))
	y += 0.6
	for k, m := range masses {
		s.Bold(drawing.P(first+pitch*(float64(k)+0.5), y), h, drawing.Centre, fmt.Sprintf("%g", m))
	}
	s.Bold(drawing.P(0, y), h, drawing.Left, "mass")
	y += lineStep
	s.Text(drawing.P(0, y), h, drawing.Left, "Minutes to "+c.end()+", by "+c.massName()+" mixed")
	return y + lineStep + 1
}

// words says the table in words, for a reader who cannot see it.
func (c PotChart) words(masses []float64) string {
	var out []string
	for _, l := range c.Lines {
		var row []string
		for _, m := range masses {
			t, b := c.cell(l, m)
			row = append(row, strings.TrimSpace(fmt.Sprintf("%g %s %s %s", m, c.massName(), t, b)))
		}
		out = append(out, c.temperature(l.Temp.Celsius())+": "+strings.Join(row, ", "))
	}
	text := "Minutes to " + c.end() + " by mass and temperature. " + strings.Join(out, "; ") + "."
	if strings.Contains(text, "*") {
		text += " * beyond the sheet."
	}
	return text
}
