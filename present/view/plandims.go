package view

import (
	"fmt"

	"scarfwright/present/drawing"
)

// chains writes the dimensions in chains outside the panel: gap, feather edge,
// gap on the right and on top, the cut-out on the left and below.
func (l *layout) chains() {
	b, e, c := l.bounds(), l.look.box(l.d.Edge), l.look.box(l.d.CutOut)
	off := strip + 4.5
	at := drawing.P
	l.p.DimH(at(e.X0, b.Y1), at(e.X1, b.Y1), off, l.u.len(e.Width()))
	l.p.DimV(at(b.X1, e.Y0), at(b.X1, e.Y1), off, l.u.len(e.Height()))
	l.p.DimH(at(c.X0, b.Y0), at(c.X1, b.Y0), -off, l.u.len(c.Width())+" "+opening(l.r))
	l.p.DimV(at(b.X0, c.Y0), at(b.X0, c.Y1), -off, l.u.len(c.Height()))
	// The panel itself, one row further out.
	l.p.DimH(at(-l.w, b.Y0), at(l.w, b.Y0), -off-7, l.u.len(2*l.w)+" panel")
	l.p.DimV(at(b.X0, -l.h), at(b.X0, l.h), -off-7, l.u.len(2*l.h))

	room := func(text string, size float64) float64 {
		if size/l.k >= drawing.TextWidth(drawing.TextSmall, false, text)+1 {
			return off
		}
		return off + 7
	}
	type gap struct{ from, to float64 }
	for i, g := range []gap{{-l.w, e.X0}, {e.X1, l.w}} {
		if d := g.to - g.from; d > 0 {
			o := off
			if i == 0 {
				o = room(l.u.len(d), d)
			}
			l.p.DimH(at(g.from, b.Y1), at(g.to, b.Y1), o, l.u.len(d))
		}
	}
	for i, g := range []gap{{-l.h, e.Y0}, {e.Y1, l.h}} {
		if d := g.to - g.from; d > 0 {
			o := off
			if i == 0 {
				o = room(l.u.len(d), d)
			}
			l.p.DimV(at(b.X1, g.from), at(b.X1, g.to), o, l.u.len(d))
		}
	}
}

// arrows draws which way is up and forward, the scale bar, and what the lines
// mean.
func (l *layout) arrows() {
	s := l.s
	rows := float64(len(l.d.Clearances)+1)*rowStep + 2
	y := titleTop + rows + 2
	x := 14.0
	s.Arrow(drawing.P(x+6, y), drawing.P(x+6, y+9))
	s.Text(drawing.P(x+8, y+7), drawing.TextSmall, drawing.Left, "up")
	tip, name := x+18, "fwd"
	if l.look.flip {
		s.Arrow(drawing.P(x+6, y), drawing.P(x-5, y))
		s.Text(drawing.P(x-7, y+1.5), drawing.TextSmall, drawing.Left, name)
	} else {
		s.Arrow(drawing.P(x+6, y), drawing.P(tip, y))
		s.Text(drawing.P(tip-6, y+1.5), drawing.TextSmall, drawing.Left, name)
	}
	l.bar(drawing.P(36, y+3))

	x = 88
	key := func(line drawing.Line, ink drawing.Ink, text string, dx, dy float64) {
		p := s.In(ink)
		p.Line(line, drawing.P(x+dx, y+dy+1.2), drawing.P(x+dx+9, y+dy+1.2))
		s.Text(drawing.P(x+dx+10.5, y+dy), drawing.TextSmall, drawing.Left, text)
	}
	if Partial(l.r) {
		key(drawing.Wide, drawing.Black, "feather edge", 0, 5)
		key(drawing.Narrow, drawing.Black, "floor of the dish", 47, 0)
	} else {
		key(drawing.Wide, drawing.Black, "cut-out, feather edge", 0, 5)
	}
	key(drawing.Narrow, drawing.Blue, "edge of a ply", 0, 0)
	key(drawing.DashedNarrow, drawing.Blue, "cover ply", 47, 5)
	if l.d.Backing != nil {
		key(drawing.DashedNarrow, drawing.Black, "backing behind", 47, 0)
	}
}

// bar draws a scale bar in round lengths of the boat.
func (l *layout) bar(at drawing.Point) {
	step, unit := 50.0, 1.0
	if l.u.us {
		step, unit = 2*25.4, 25.4
	}
	for 2*step/l.k < 30 {
		step *= 2
	}
	for 2*step/l.k > 42 {
		step /= 2
	}
	w := step / l.k
	s := l.s
	for i := range 2 {
		b := drawing.Box{X0: at.X + w*float64(i), Y0: at.Y, X1: at.X + w*float64(i+1), Y1: at.Y + 1.5}
		if i == 0 {
			s.Fill(drawing.Solid, b.Corners())
		}
		s.Rect(drawing.Narrow, b)
	}
	for i := range 3 {
		text := fmt.Sprintf("%g", step*float64(i)/unit)
		if i == 2 {
			text += " " + l.u.name()
		}
		s.Text(drawing.P(at.X+w*float64(i), at.Y-3.3), drawing.TextSmall, drawing.Centre, text)
	}
}

// table lists what is left to each thing the repair comes near, in words.
func (l *layout) table() {
	s := l.s
	y := titleTop + float64(len(l.d.Clearances))*rowStep
	x := [4]float64{9, 62, 100, 136}
	for i, head := range []string{"Room left to", "from feather edge", "from cover ply", "in words"} {
		s.Bold(drawing.P(x[i], y), drawing.TextSmall, drawing.Left, head)
	}
	for i, c := range l.d.Clearances {
		y := titleTop + float64(len(l.d.Clearances)-1-i)*rowStep
		words, cover := "clear", l.u.full(c.Cover.MM())
		switch {
		case c.Left <= 0:
			words = "TAPER CROSSES IT"
		case len(l.d.CoverEdge) == 0:
			cover = "no cover ply"
		case c.Cover < 0:
			words = "trim the cover ply there"
		}
		s.Text(drawing.P(x[0], y), drawing.TextSmall, drawing.Left, c.What)
		s.Text(drawing.P(x[1], y), drawing.TextSmall, drawing.Left, l.u.full(c.Left.MM()))
		s.Text(drawing.P(x[2], y), drawing.TextSmall, drawing.Left, cover)
		if c.Left <= 0 {
			s.Bold(drawing.P(x[3], y), drawing.TextSmall, drawing.Left, words)
		} else {
			s.Text(drawing.P(x[3], y), drawing.TextSmall, drawing.Left, words)
		}
	}
}
