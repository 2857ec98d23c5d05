package view

import (
	"fmt"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/present/drawing"
)

// ProfileChart is temperature through the thickness, over the layers it runs through.
type ProfileChart struct {
	Paper
	Faces    [2]string // what lies left and right of the stack: "outside", "inside"
	Layers   []ProfileLayer
	Profiles []ProfileCurve
	Limits   []LayerLimit
}

// LayerKind is how a layer is hatched.
type LayerKind int

// The kinds of layer.
const (
	OldLayer LayerKind = iota // old laminate, gelcoat
	CoreLayer
	NewLayer
)

// ProfileLayer is one layer of the stack, the first at the left face.
type ProfileLayer struct {
	Name  string
	Thick si.Length
	Kind  LayerKind
}

// ProfileCurve is one temperature through the thickness.
type ProfileCurve struct {
	Name   string // "at the peak, 52 min"
	Points []TempDeep
}

// TempDeep is one point of a profile.
type TempDeep struct {
	Deep si.Length // below the left face
	Temp si.Temp
}

// LayerLimit is a temperature that must not be passed in a layer.
type LayerLimit struct {
	Name  string // "over foam"
	Temp  si.Temp
	Layer int // number of the layer from 1; 0 means through all
}

var profileStyles = []stroked{
	{line: drawing.Wide},
	{line: drawing.Narrow, dash: []float64{4, 1.2}},
	{line: drawing.Narrow},
	{line: drawing.Narrow, dash: []float64{6, 1, 0.6, 1}},
}

// Scene returns the chart, nil without layers or without a profile.
func (c ProfileChart) Scene() *drawing.Scene {
	deep := 0.0
	for _, l := range c.Layers {
		deep += c.length(l.Thick)
	}
	seen := nothing()
	for _, k := range c.Profiles {
		for _, p := range k.Points {
			seen.see(c.degrees(p.Temp.Celsius()))
		}
	}
	if deep == 0 || seen.empty() {
		return nil
	}
	for _, l := range c.Limits {
		seen.see(c.degrees(l.Temp.Celsius()))
	}
	s, low := c.begin("Temperature through the thickness at its peak")
	numbered, key := c.key()
	if key != "" {
		rows := drawing.Wrap(key, s.Width, drawing.TextSmall, false)
		for i, r := range rows {
			s.Text(drawing.P(0, low+1+lineStep*float64(len(rows)-1-i)), drawing.TextSmall, drawing.Left, r)
		}
		low += lineStep*float64(len(rows)) + 1
	}
	const strip = 9.0
	below := 10.0 + strip
	if len(numbered) > 0 {
		below += 7
	}
	low += below
	f := &plot{s: s, x1: deep, box: drawing.Box{X0: 11, Y0: low, X1: s.Width - 3, Y1: low + c.plot(0.36, 44, 66)}}
	f.temperatures(c.Paper, f.levels(seen))
	c.strip(f, strip, numbered)
	f.axes(false)
	c.draw(f)

	f.finish(c.Paper, f.box.Y1+axisName+lineStep+1)
	s.Desc = c.words()
	return s
}

func (c ProfileChart) length(l si.Length) float64 {
	if c.US {
		return l.MM() / 25.4
	}
	return l.MM()
}

func (c ProfileChart) lengthName() string {
	if c.US {
		return "in"
	}
	return "mm"
}

// key numbers the layers whose names do not fit into the strip, and names them.
func (c ProfileChart) key() (numbered map[int]int, text string) {
	deep := 0.0
	for _, l := range c.Layers {
		deep += c.length(l.Thick)
	}
	numbered = map[int]int{}
	var out []string
	for i, l := range c.Layers {
		w := c.length(l.Thick) / deep * (c.width() - 14)
		if l.Name == "" || drawing.TextWidth(drawing.TextSmall, false, l.Name)+3 <= w {
			continue
		}
		numbered[i] = len(numbered) + 1
		out = append(out, fmt.Sprintf("%d\u00a0%s, %s\u00a0%s", numbered[i], l.Name, units{c.US}.len(l.Thick.MM()), c.lengthName()))
	}
	if len(out) > 0 {
		text = strings.Join(out, "; ") + "."
	}
	return numbered, text
}

// strip draws the layers below the plot, hatched by kind, with the axis below
// them, and their borders through the plot.
func (c ProfileChart) strip(f *plot, high float64, numbered map[int]int) {
	s, top := f.s, f.box.Y0
	low := top - high
	x := 0.0
	var mids []float64
	var nums []int
	for i, l := range c.Layers {
		a, b := f.at(x, f.y0).X, f.at(x+c.length(l.Thick), f.y0).X
		x += c.length(l.Thick)
		ring := drawing.Box{X0: a, Y0: low, X1: b, Y1: top}.Corners()
		switch l.Kind {
		case OldLayer:
			s.Hatch(45, 2.2, ring)
		case CoreLayer:
			honey(s.Pen, ring)
		case NewLayer:
			s.Fill(drawing.Mid, ring)
			s.Hatch(135, 1.1, ring)
		}
		s.Ring(drawing.Wide, ring...)
		if i > 0 {
			f.rule(drawing.P(a, top), drawing.P(a, f.box.Y1))
		}
		if n := numbered[i]; n > 0 {
			mids, nums = append(mids, (a+b)/2), append(nums, n)
		} else {
			s.Label(drawing.P((a+b)/2, (low+top)/2), drawing.TextSmall, drawing.Centre|drawing.Middle, l.Name)
		}
	}
	// Numbers stand below the strip, far enough apart to be read.
	base := low
	if len(nums) > 0 {
		for i, at := range spread(mids, 4.6, f.box.X0, f.box.X1) {
			s.Line(drawing.Narrow, drawing.P(mids[i], low+high/4), drawing.P(at, low-3))
			s.Text(drawing.P(at, low-3.4), drawing.TextSmall, drawing.Centre|drawing.Top, fmt.Sprint(nums[i]))
		}
		base -= 7
	}
	for _, v := range steps(f.x0, f.x1, int(f.box.Width()/14)) {
		p := drawing.P(f.at(v, f.y0).X, base)
		s.Line(drawing.Narrow, p, drawing.P(p.X, p.Y-tickLong))
		s.Text(drawing.P(p.X, p.Y-tickLong-0.6), drawing.TextSmall, drawing.Centre|drawing.Top, fmt.Sprintf("%.4g", v))
	}
	s.Line(drawing.Narrow, drawing.P(f.box.X0, base), drawing.P(f.box.X1, base))
	title := "depth, " + c.lengthName()
	s.Text(drawing.P((f.box.X0+f.box.X1)/2, base-9), drawing.TextSmall, drawing.Centre, title)
	if c.Faces[0] != "" {
		s.Text(drawing.P(f.box.X0, base-9), drawing.TextSmall, drawing.Left, "← "+c.Faces[0])
	}
	if c.Faces[1] != "" {
		s.Text(drawing.P(f.box.X1, base-9), drawing.TextSmall, drawing.Right, c.Faces[1]+" →")
	}
}

func (c ProfileChart) draw(f *plot) {
	var all [][]drawing.Point
	for i, k := range c.Profiles {
		var pts []drawing.Point
		for _, p := range k.Points {
			pts = append(pts, f.at(c.length(p.Deep), c.degrees(p.Temp.Celsius())))
		}
		f.curve(profileStyles[i%len(profileStyles)], pts)
		all = append(all, pts)
	}
	for _, l := range c.Limits {
		a, b := f.x0, f.x1
		if l.Layer > 0 && l.Layer <= len(c.Layers) {
			a = 0
			for _, k := range c.Layers[:l.Layer-1] {
				a += c.length(k.Thick)
			}
			b = a + c.length(c.Layers[l.Layer-1].Thick)
		}
		y := c.degrees(l.Temp.Celsius())
		f.limit(l.Name, c.temperature(l.Temp.Celsius()), f.at(a, y), f.at(b, y))
	}
	if top, ok := c.hottest(); ok {
		f.mark(f.at(c.length(top.Deep), c.degrees(top.Temp.Celsius())), c.temperature(top.Temp.Celsius()))
	}
	for i, k := range c.Profiles {
		f.name(k.Name, profileStyles[i%len(profileStyles)], all[i])
	}
}

// hottest returns the hottest point of the first profile.
func (c ProfileChart) hottest() (TempDeep, bool) {
	var top TempDeep
	if len(c.Profiles) > 0 {
		for _, p := range c.Profiles[0].Points {
			if p.Temp > top.Temp {
				top = p
			}
		}
	}
	return top, top.Temp.Given()
}

// words says what the chart shows, for a reader who cannot see it.
func (c ProfileChart) words() string {
	var out []string
	at, where := 0.0, ""
	top, _ := c.hottest()
	for _, l := range c.Layers {
		out = append(out, fmt.Sprintf("%s %s", l.Name, units{c.US}.full(l.Thick.MM())))
		if d := top.Deep.MM(); d >= at-1e-9 && d <= at+l.Thick.MM()+1e-9 {
			where = l.Name
		}
		at += l.Thick.MM()
	}
	text := "Temperature through " + strings.Join(out, ", ") + "."
	if top.Temp.Given() {
		text += fmt.Sprintf(" Hottest %s, %s deep", c.temperature(top.Temp.Celsius()), units{c.US}.full(top.Deep.MM()))
		if where != "" {
			text += ", in " + where
		}
		text += "."
	}
	for _, l := range c.Limits {
		text += fmt.Sprintf(" Limit %s %s.", c.temperature(l.Temp.Celsius()), l.Name)
	}
	return text
}
