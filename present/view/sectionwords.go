package view

import (
	"cmp"
	"fmt"

	"scarfwright/present/drawing"
)

// words writes what the picture cannot show.
func (c *cut) words() {
	p := c.s.Pen
	ends := [2]string{"6 o'clock, down", "12 o'clock, up"}
	name := "6 to 12 o'clock"
	if !c.upright {
		ends, name = [2]string{"9 o'clock, aft", "3 o'clock, forward"}, "9 to 3 o'clock"
		if seen(c.r, groundFace(c.d)).flip {
			ends = [2]string{"9 o'clock, forward", "3 o'clock, aft"}
		}
	}
	y := wordsHigh - 4
	p.Text(drawing.P(0, y), drawing.TextSmall, drawing.Left, "← "+ends[0])
	p.Text(drawing.P(wide, y), drawing.TextSmall, drawing.Right, ends[1]+" →")
	c.legend(drawing.P(0, y-8))

	p.Bold(drawing.P(0, y-15), drawing.TextSmall, drawing.Left, fmt.Sprintf("Section %s. Along %s, thickness drawn %g times as large. %s", name, drawing.ScaleText(c.k), c.times, c.u.note()))
	p.Paragraph(drawing.P(0, y-17.2), wide, drawing.TextSmall, c.remark())
}

func (c *cut) remark() string {
	total := c.d.Repair.Thickness.MM()
	text := fmt.Sprintf("Taper %g:1. Plies %s thick in %s of depth", c.d.Ratio, c.u.full(total), c.u.full(c.d.Depth.MM()))
	switch diff := total - c.d.Depth.MM(); {
	case diff > 0.05:
		text += fmt.Sprintf(": they stand %s proud in the middle before fairing.", c.u.full(diff))
	case diff < -0.05:
		text += fmt.Sprintf(": %s is made up by filler.", c.u.full(-diff))
	default:
		text += "."
	}
	text += fmt.Sprintf(" Laid %s.", cmp.Or(c.d.Order, "smallest first"))
	if c.d.Original.Assumed {
		text += " The old plies are assumed from a thickness alone."
	}
	if f := c.d.FarSide; f != nil {
		text += fmt.Sprintf(" Once the form is off, %s %s.", f.Label, f.Replaces)
	}
	if c.d.Backing != nil {
		text += " Backing and form not to scale."
	}
	return text
}

// legend shows the kinds of filling beside their words.
func (c *cut) legend(at drawing.Point) {
	p := c.s.Pen
	x := at.X
	swatch := func(text string, draw func([]drawing.Point)) {
		b := drawing.Box{X0: x, Y0: at.Y - 0.6, X1: x + 9, Y1: at.Y + 3.2}
		draw(b.Corners())
		p.Rect(drawing.Narrow, b)
		p.Text(drawing.P(x+10.5, at.Y), drawing.TextSmall, drawing.Left, text)
		x += 10.5 + drawing.TextWidth(drawing.TextSmall, false, text) + 5
	}
	swatch("old mat", func(r []drawing.Point) { hatchKind(p, true, r) })
	swatch("old roving, cloth", func(r []drawing.Point) { hatchKind(p, false, r) })
	swatch("new mat", func(r []drawing.Point) { p.In(drawing.Blue).Fill(drawing.Light, r) })
	swatch("new roving, cloth", func(r []drawing.Point) { p.In(drawing.Blue).Fill(drawing.Mid, r) })
	if c.r.Job.Laminate.Gelcoat > 0 {
		swatch("gelcoat", func(r []drawing.Point) { p.Fill(drawing.Dark, r) })
	}
}
