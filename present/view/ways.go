package view

import (
	"fmt"
	"math"

	"scarfwright/present/drawing"
	"scarfwright/repair/caution"
	"scarfwright/repair/design"
	"scarfwright/repair/job"
	"scarfwright/repair/ways"
)

// WaysBars returns the ways to repair a damage side by side: a bar for the strength
// of each, with its range, one for its stiffness, numbers at both, and words for what
// is weakest. It returns nil where there is nothing to compare.
func WaysBars(d job.Description, r ways.Result) *drawing.Scene {
	if len(r.Ways) == 0 {
		return nil
	}
	const (
		nameWide = 62.0
		barFrom  = 65.0
		barTo    = 130.0
		wordFrom = 134.0
		rowHigh  = 12.0
		barHigh  = 2.6
	)
	most, several := 1.2, false
	for _, w := range r.Ways {
		several = several || w.Kind != ways.Plug && w.List != r.Ways[len(r.Ways)-1].List
		most = max(most, math.Ceil(5*max(w.Strength.High, w.Stiffness.Likely))/5)
	}
	most = min(most, 2)
	x := func(v float64) float64 { return barFrom + min(v, most)/most*(barTo-barFrom) }
	low := 11.0
	high := low + rowHigh*float64(len(r.Ways)) + 10
	s := drawing.New(wide, high, "Ways to repair it, side by side")
	s.Desc = fmt.Sprintf("Bars for %d ways of repair: strength and stiffness against the panel as it was.", len(r.Ways))
	bottom := low + rowHigh*float64(len(r.Ways))
	for v := 0.0; v <= most+1e-9; v += 0.2 {
		line := drawing.Mid
		box := drawing.Box{X0: x(v) - 0.1, Y0: low, X1: x(v) + 0.1, Y1: bottom}
		if math.Abs(v-1) < 1e-9 {
			line, box = drawing.Solid, drawing.Box{X0: x(v) - 0.25, Y0: low - 1, X1: x(v) + 0.25, Y1: bottom}
		}
		s.Fill(line, box.Corners())
		s.Text(drawing.P(x(v), low-1.5), drawing.TextSmall, drawing.Centre|drawing.Top, fmt.Sprintf("%.1f", v))
	}
	s.Text(drawing.P(0, 1), drawing.TextSmall, drawing.Left, "Solid: strength, with its range. Hatched: stiffness. 1 is the panel as it was, under the same loads.")
	for i, w := range r.Ways {
		top := bottom - rowHigh*float64(i)
		s.Line(drawing.Narrow, drawing.P(0, top), drawing.P(wide, top))
		bold := w.Recommended || w.Chosen
		lines := drawing.Wrap(w.Name, nameWide, drawing.TextSmall, bold)
		if p := w.Standing(); p != "" {
			lines = append(lines, drawing.Wrap(p, nameWide, drawing.TextSmall, bold)...)
		}
		if several && w.Kind != ways.Plug && w.List != "" {
			lines = append(lines, drawing.Wrap(w.List, nameWide, drawing.TextSmall, false)...)
		}
		for k, t := range lines[:min(len(lines), 3)] {
			at := drawing.P(0, top-3.2-3.3*float64(k))
			if bold && k == 0 {
				s.Bold(at, drawing.TextSmall, drawing.Left, t)
			} else {
				s.Text(at, drawing.TextSmall, drawing.Left, t)
			}
		}
		words := w.Weakest()
		if w.Computed {
			strength := drawing.Box{X0: x(0), Y0: top - 2.2 - barHigh, X1: x(w.Strength.Likely), Y1: top - 2.2}
			s.In(drawing.Blue).Fill(drawing.Solid, strength.Corners())
			mid := (strength.Y0 + strength.Y1) / 2
			s.Line(drawing.Narrow, drawing.P(x(w.Strength.Low), mid), drawing.P(x(w.Strength.High), mid))
			for _, v := range []float64{w.Strength.Low, w.Strength.High} {
				s.Line(drawing.Narrow, drawing.P(x(v), mid-1), drawing.P(x(v), mid+1))
			}
			stiff := drawing.Box{X0: x(0), Y0: top - 8.2 - barHigh, X1: x(w.Stiffness.Likely), Y1: top - 8.2}
			s.Fill(drawing.Light, stiff.Corners())
			s.Hatch(45, 1.2, stiff.Corners())
			s.Ring(drawing.Narrow, stiff.Corners()...)
			s.Label(drawing.P(x(max(w.Strength.High, w.Strength.Likely))+1, mid), drawing.TextSmall, drawing.Left|drawing.Middle, ways.Num(w.Strength.Likely))
			s.Label(drawing.P(stiff.X1+1, (stiff.Y0+stiff.Y1)/2), drawing.TextSmall, drawing.Left|drawing.Middle, ways.Num(w.Stiffness.Likely))
		}
		for k, t := range drawing.Wrap(words, wide-wordFrom-8, drawing.TextSmall, false) {
			if k < 3 {
				s.Text(drawing.P(wordFrom+8, top-3.2-3.3*float64(k)), drawing.TextSmall, drawing.Left, t)
			}
		}
	}
	s.Line(drawing.Narrow, drawing.P(0, low), drawing.P(wide, low))
	head := bottom + 3
	s.Bold(drawing.P(0, head), drawing.TextSmall, drawing.Left, "Way")
	s.Bold(drawing.P(barFrom, head), drawing.TextSmall, drawing.Left, "Strength, stiffness: now / before")
	s.Bold(drawing.P(wordFrom+8, head), drawing.TextSmall, drawing.Left, "Weakest in")
	headed(s, referred(r.Referrals), caution.General, 0)
	return s
}

// pictured is the way whose field was computed, nil for none.
func pictured(r ways.Result) *ways.Way {
	for i := range r.Ways {
		if r.Ways[i].Field != nil {
			return &r.Ways[i]
		}
	}
	return nil
}

// levelsOf returns the step between contours for a field that goes up to most: so
// that no more than the bands of colour are needed.
func levelsOf(most float64) float64 {
	for _, step := range []float64{0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1} {
		if most/step < drawing.Bands {
			return step
		}
	}
	return most / (drawing.Bands - 1)
}

// WaysField returns the panel with the repair in it and how much of their strength
// the plies use, as filled contours with their numbers: of the recommended way, or of
// the chosen one. It returns nil where none was computed.
func WaysField(d job.Description, r ways.Result) *drawing.Scene {
	w := pictured(r)
	if w == nil {
		return nil
	}
	f := w.Field
	u := units{d.Choices.Units == "us"}
	flip := 1.0
	forward := "forward to the right"
	if design.Mirrored(d.Panel.Side, "outside") {
		flip, forward = -1, "forward to the left"
	}
	hw, hh := d.Panel.Long.MM()/2, d.Panel.Short.MM()/2
	k := max(niceScale(2*hw, wide-44), niceScale(2*hh, 120))
	const low = 24.0
	s := drawing.New(wide, low+2*hh/k+14, "Strain in the repaired panel")
	s.Desc = fmt.Sprintf("Contours of the strain ratio over the panel of %.0f by %.0f mm for %s, %s: the most is %.2f, %s.", 2*hw, 2*hh, w.Name, f.Load, f.Used, f.Words)
	left := 12.0
	p := s.View(drawing.P(left+hw/k, low+hh/k), drawing.P(0, 0), 1/k, 1/k)
	at := func(x, y float64) drawing.Point {
		return drawing.P(flip*hw*(2*x/float64(f.NX-1)-1), hh*(2*y/float64(f.NY-1)-1))
	}
	g := grid{nx: f.NX, ny: f.NY, values: f.Values, at: at}
	step := levelsOf(g.highest())
	p.In(drawing.Band(0)).Fill(drawing.Solid, drawing.Box{X0: -hw, Y0: -hh, X1: hw, Y1: hh}.Corners())
	n := int(g.highest() / step)
	lines := make([][][]drawing.Point, n+1)
	for i := 1; i <= n; i++ {
		lines[i] = g.above(step * float64(i))
		p.In(drawing.Band(i)).Fill(drawing.Solid, lines[i]...)
	}
	onEdge := func(q drawing.Point) bool {
		return math.Abs(math.Abs(q.X)-hw) < 1e-6*hw || math.Abs(math.Abs(q.Y)-hh) < 1e-6*hh
	}
	for i := 1; i <= n; i++ {
		for _, run := range inner(lines[i], onEdge) {
			if long(run)/k > 5 { // shorter ones are the net's own at a jump of the laminate
				p.Polyline(drawing.Narrow, run...)
			}
		}
	}
	var named []drawing.Point
	for i := n; i >= 1; i-- {
		for _, run := range inner(lines[i], onEdge) {
			if long(run)/k < 14 {
				continue
			}
			if q, ok := apart(run, named, 9*k); ok {
				named = append(named, q)
				p.Label(q, drawing.TextSmall, drawing.Centre|drawing.Middle, fmt.Sprintf("%.3g", step*float64(i)))
			}
		}
	}
	for i, o := range w.Outlines {
		line := drawing.Narrow
		if i == 0 {
			line = drawing.Wide
		}
		for _, ring := range o.Shape {
			pts := make([]drawing.Point, len(ring))
			for j, q := range ring {
				pts[j] = drawing.P(flip*q.X, q.Y)
			}
			p.Ring(line, pts...)
		}
	}
	p.Rect(drawing.Wide, drawing.Box{X0: -hw, Y0: -hh, X1: hw, Y1: hh})
	worst := drawing.P(flip*f.Worst.X.MM(), f.Worst.Y.MM())
	c := 2.2 * k
	for _, sgn := range []float64{-1, 1} {
		p.Line(drawing.Wide, drawing.P(worst.X-c, worst.Y-sgn*c), drawing.P(worst.X+c, worst.Y+sgn*c))
	}
	p.DimH(drawing.P(-hw, -hh), drawing.P(hw, -hh), -7, u.len(2*hw))
	p.DimV(drawing.P(-hw, -hh), drawing.P(-hw, hh), -6, u.len(2*hh))
	colourBar(s, drawing.Box{X0: left + 2*hw/k + 5, Y0: low, X1: left + 2*hw/k + 10, Y1: low + min(2*hh/k, 60)}, step, n)
	if o := drawing.P(wide-24, low+4); o.X > left+2*hw/k+30 { // the axes, where there is room
		s.Arrow(o, drawing.P(o.X+flip*14, o.Y))
		s.Arrow(o, drawing.P(o.X, o.Y+14))
		s.Text(drawing.P(o.X+flip*14, o.Y-1.5), drawing.TextSmall, drawing.Centre|drawing.Top, "x, 0°")
		s.Text(drawing.P(o.X, o.Y+15.5), drawing.TextSmall, drawing.Centre, "y, 90°")
		s.Text(drawing.P(wide, o.Y+24), drawing.TextSmall, drawing.Right, "fibres: x along")
		s.Text(drawing.P(wide, o.Y+20.5), drawing.TextSmall, drawing.Right, "the long span")
	}
	var text []string
	say := func(t string, bold bool) { text = append(text, drawing.Wrap(t, wide, drawing.TextSmall, bold)...) }
	say(fmt.Sprintf("Strain over the strain at which a ply begins to fail: %s, %s.", w.Name, f.Load), true)
	bold := len(text)
	say(fmt.Sprintf("Cross: the most, %.2f, %s. The arithmetic may be %.1f %% off.", f.Used, f.Words, 100*f.Error), false)
	s.Height = low + 2*hh/k + 4 + lineStep*float64(len(text))
	for i, t := range text {
		at := drawing.P(0, s.Height-lineStep*float64(i+1))
		if i < bold {
			s.Bold(at, drawing.TextSmall, drawing.Left, t)
		} else {
			s.Text(at, drawing.TextSmall, drawing.Left, t)
		}
	}
	foot := fmt.Sprintf("Seen from outside, %s, up is up. 0° lies along the long span, 90° across.", forward)
	if o := w.Outlines; len(o) > 1 {
		foot += fmt.Sprintf(" Wide: %s. Narrow: %s.", o[0].Name, o[len(o)-1].Name)
	}
	feet := drawing.Wrap(foot+" Scale "+drawing.ScaleText(k)+". "+u.note(), wide, drawing.TextSmall, false)
	for i, t := range feet {
		s.Text(drawing.P(0, 1+lineStep*float64(len(feet)-1-i)), drawing.TextSmall, drawing.Left, t)
	}
	headed(s, referred(r.Referrals), caution.General, 0)
	return s
}

// colourBar draws the bands with the numbers at their borders.
func colourBar(s *drawing.Scene, b drawing.Box, step float64, n int) {
	h := b.Height() / float64(n+1)
	for i := 0; i <= n; i++ {
		box := drawing.Box{X0: b.X0, Y0: b.Y0 + h*float64(i), X1: b.X1, Y1: b.Y0 + h*float64(i+1)}
		s.In(drawing.Band(i)).Fill(drawing.Solid, box.Corners())
		s.Text(drawing.P(b.X1+1.2, box.Y0), drawing.TextSmall, drawing.Left|drawing.Middle, fmt.Sprintf("%.3g", step*float64(i)))
	}
	s.Ring(drawing.Narrow, b.Corners()...)
}

// inner cuts the parts of rings that run along the border out of them.
func inner(rings [][]drawing.Point, onEdge func(drawing.Point) bool) (runs [][]drawing.Point) {
	for _, r := range rings {
		start := -1 // a point after a stretch along the border
		for i := range r {
			if onEdge(r[i]) && onEdge(r[(i+len(r)-1)%len(r)]) {
				start = i
				break
			}
		}
		if start < 0 {
			runs = append(runs, append(r[:len(r):len(r)], r[0]))
			continue
		}
		var run []drawing.Point
		for k := range len(r) + 1 {
			q := r[(start+k)%len(r)]
			if len(run) > 0 && onEdge(q) && onEdge(run[len(run)-1]) {
				if len(run) > 1 {
					runs = append(runs, run)
				}
				run = nil
			}
			run = append(run, q)
		}
		if len(run) > 1 {
			runs = append(runs, run)
		}
	}
	return runs
}

func long(run []drawing.Point) (l float64) {
	for i := 1; i < len(run); i++ {
		l += math.Hypot(run[i].X-run[i-1].X, run[i].Y-run[i-1].Y)
	}
	return l
}

// apart returns the place on a run that lies farthest from all others, if that is
// farther than the gap.
func apart(run, others []drawing.Point, gap float64) (best drawing.Point, ok bool) {
	far := gap
	for i := 1; i+1 < len(run); i++ {
		q := run[i]
		d := math.Inf(1)
		for _, o := range others {
			d = min(d, math.Hypot(q.X-o.X, q.Y-o.Y))
		}
		if math.IsInf(d, 1) {
			return run[len(run)/2], true
		}
		if d > far {
			far, best, ok = d, q, true
		}
	}
	return best, ok
}

// WaysSlope returns the shear of the bond along the slope, ply by ply, of the way that
// is pictured, with the strength that is known of it. It returns nil where there is
// no slope.
func WaysSlope(d job.Description, r ways.Result) *drawing.Scene {
	w := pictured(r)
	if w == nil || w.Slope == nil {
		return nil
	}
	sl := w.Slope
	us := d.Choices.Units == "us"
	unit, scale := "mm", 1.0
	if us {
		unit, scale = "in", 1/25.4
	}
	p := Paper{Caution: caution.General, Held: referred(r.Referrals), US: us,
		Title: fmt.Sprintf("Shear of the bond along the slope: %s", w.Name),
		Note: fmt.Sprintf("The laminate pulled to %.0f MPa in the mean, where it began to fail before. The mean shear follows from equilibrium; stiff plies load their stretch more. Ends drawn dashed are not resolved: a feather edge is a sharp corner. Strength of the bond, as a mean: low %.3g, likely %.3g, high %.3g MPa.",
			sl.Sigma.MPa(), sl.Low.MPa(), sl.Likely.MPa(), sl.High.MPa())}
	s, low := p.begin("")
	end := sl.Plies[len(sl.Plies)-1].To.MM() * scale
	top := sl.High.MPa()
	for _, q := range sl.Points {
		if q.Resolved {
			top = max(top, q.Shear.MPa())
		}
	}
	low += 14
	f := &plot{s: s, x1: end, y1: math.Ceil(top * 1.1), box: drawing.Box{X0: 11, Y0: low, X1: s.Width - 3, Y1: low + p.plot(0.36, 44, 66)}}
	for _, v := range steps(0, f.y1, 7) {
		f.tickY(v, fmt.Sprintf("%.3g", v))
	}
	for i, pl := range sl.Plies {
		a, b := f.at(pl.From.MM()*scale, 0), f.at(pl.To.MM()*scale, 0)
		if i > 0 {
			f.rule(a, drawing.P(a.X, f.box.Y1))
		}
		f.s.Text(drawing.P((a.X+b.X)/2, low-5.5), drawing.TextSmall, drawing.Centre|drawing.Top, pl.Name)
	}
	for _, v := range steps(0, end, 8) {
		f.tickX(v, fmt.Sprintf("%.4g", v))
	}
	f.s.Text(drawing.P(f.box.X1, low-10), drawing.TextSmall, drawing.Right|drawing.Top, "along the slope, "+unit+", from the feather edge of the patch to the cut-out; plies of the old laminate")
	f.s.Text(drawing.P(0, f.box.Y1+axisName), drawing.TextSmall, drawing.Left, "shear, MPa")
	f.axes(false)
	level := func(name string, v float64, st stroked) {
		pts := []drawing.Point{f.at(0, v), f.at(end, v)}
		f.curve(st, pts)
		f.key = append(f.key, keyed{name: name, style: st})
	}
	level(fmt.Sprintf("mean, %.3g MPa", sl.Mean.MPa()), sl.Mean.MPa(), stroked{line: drawing.Narrow, dash: []float64{4, 1.2}})
	level(fmt.Sprintf("strength, likely %.3g MPa", sl.Likely.MPa()), sl.Likely.MPa(), stroked{line: drawing.Wide, ink: drawing.Vermilion, dash: []float64{6, 1, 0.6, 1}})
	level("strength, low and high", sl.Low.MPa(), stroked{line: drawing.Narrow, ink: drawing.Vermilion, dash: []float64{1, 1}})
	f.curve(stroked{line: drawing.Narrow, ink: drawing.Vermilion, dash: []float64{1, 1}}, []drawing.Point{f.at(0, sl.High.MPa()), f.at(end, sl.High.MPa())})
	var run []drawing.Point
	for i, q := range sl.Points {
		at := f.at(min(q.Along.MM()*scale, end), min(max(q.Shear.MPa(), 0), f.y1))
		if i > 0 && q.Resolved != sl.Points[i-1].Resolved {
			f.curve(slopeStyle(sl.Points[i-1].Resolved), append(run, at))
			run = nil
		}
		run = append(run, at)
	}
	f.curve(slopeStyle(sl.Points[len(sl.Points)-1].Resolved), run)
	f.key = append(f.key, keyed{name: "shear, ply by ply", style: slopeStyle(true)})
	f.finish(p, f.box.Y1+axisName+lineStep+1)
	s.Desc = fmt.Sprintf("Shear along %.0f mm of slope: mean %.1f MPa, strength likely %.1f MPa.", sl.Plies[len(sl.Plies)-1].To.MM(), sl.Mean.MPa(), sl.Likely.MPa())
	return s
}

func slopeStyle(resolved bool) stroked {
	if resolved {
		return stroked{line: drawing.Wide, ink: drawing.Blue}
	}
	return stroked{line: drawing.Narrow, ink: drawing.Blue, dash: []float64{1.5, 1}}
}
