package view

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/geom"
	"scarfwright/present/drawing"
	"scarfwright/repair"
)

// widest is the flattest taper that is drawn: a ring far outside the panel
// would only make the others small.
const widest = 30

// Options returns the repair at every taper ratio side by side: the feather
// edges nested in the panel, and a table of what each one takes and whether it
// fits. It returns nil where no laminate is renewed.
func Options(r repair.Result) *drawing.Scene {
	if r.Design == nil || len(r.Design.Options) == 0 {
		return nil
	}
	d, u, lk := r.Design, unitsOf(r), seen(r, groundFace(r.Design))
	w, h := r.Job.Panel.Long.MM()/2, r.Job.Panel.Short.MM()/2
	panel := drawing.Box{X0: -w, Y0: -h, X1: w, Y1: h}
	all := panel
	edges := make([][][]drawing.Point, len(d.Options))
	var left []string
	for i, o := range d.Options {
		if o.Ratio > widest && !o.Chosen {
			left = append(left, fmt.Sprintf("%g:1", o.Ratio))
			continue
		}
		edge, err := d.CutOut.Offset(o.Taper.MM())
		if err != nil {
			continue // too large to draw; its numbers still stand in the table
		}
		edges[i] = lk.rings(edge)
		b := drawing.Bounds(edges[i]...)
		all = drawing.Box{X0: min(all.X0, b.X0), Y0: min(all.Y0, b.Y0), X1: max(all.X1, b.X1), Y1: max(all.Y1, b.Y1)}
	}
	k := max(niceScale(all.Width(), wide-20), niceScale(all.Height(), 95))
	table := float64(len(d.Options))*5 + 19
	s := drawing.New(wide, table+all.Height()/k+14, "Taper ratios side by side")
	s.Desc = fmt.Sprintf("The feather edge at %d taper ratios, nested in the panel, and a table of their sizes.", len(d.Options))
	p := s.View(drawing.P(wide/2, table+6+all.Height()/k/2), drawing.P((all.X0+all.X1)/2, (all.Y0+all.Y1)/2), 1/k, 1/k)

	p.Rect(drawing.Wide, panel)
	p.Label(drawing.P(-w+2*k, -h), drawing.TextSmall, drawing.Left|drawing.Middle, "panel")
	if Partial(r) {
		lk.draw(p, drawing.Narrow, d.CutOut)
	} else {
		p.Fill(drawing.Light, lk.rings(d.CutOut)...)
		lk.draw(p, drawing.Wide, d.CutOut)
	}
	c := lk.point(d.CutOut.Centroid())
	if b := lk.box(d.CutOut); min(b.Width(), b.Height())/k > 20 {
		p.Label(c, drawing.TextSmall, drawing.Centre|drawing.Middle, opening(r))
	}
	for i, o := range d.Options {
		line, pen := drawing.Narrow, p
		if o.Chosen {
			line, pen = drawing.Wide, p.In(drawing.Blue)
		} else if !o.Fits {
			line = drawing.DashedNarrow
		}
		for _, ring := range edges[i] {
			pen.Ring(line, ring...)
		}
		if edges[i] != nil {
			// Every other name below, and each further round: close rings would
			// hide each other's.
			deg := 146 - 16*float64(i)
			if i%2 == 1 {
				deg = -deg
			}
			p.Label(along(edges[i][0], c, deg), drawing.TextSmall, drawing.Centre|drawing.Middle, fmt.Sprintf("%g:1", o.Ratio))
		}
	}
	optionTable(s, r, u, table-6)
	s.Text(drawing.P(0, 5.5), drawing.TextSmall, drawing.Left, fmt.Sprintf("Scale %s. %s. %s", drawing.ScaleText(k), lk.words(r), u.note()))
	text := fmt.Sprintf("Panel %s × %s. Wide blue: chosen. Dashed: does not fit.", u.len(2*w), u.full(2*h))
	if len(left) > 0 {
		text += " Not drawn: " + strings.Join(left, ", ") + "."
	}
	s.Text(drawing.P(0, 1), drawing.TextSmall, drawing.Left, text)
	notice(s, r, 0)
	return s
}

func optionTable(s *drawing.Scene, r repair.Result, u units, y float64) {
	x := []float64{0, 24, 37, 62, 82, 98, 118}
	heads := []string{"Taper", "length", "feather edge", "ground", "dust", "bond/mm", "room left, and to what"}
	if u.us {
		heads[5] = "bond/in"
	}
	for i, h := range heads {
		s.Bold(drawing.P(x[i], y), drawing.TextSmall, drawing.Left, h)
	}
	s.Line(drawing.Narrow, drawing.P(0, y-1.4), drawing.P(wide, y-1.4))
	for i, o := range r.Design.Options {
		y := y - 5*float64(i+1)
		room := fmt.Sprintf("%s to %s", u.full(o.Left.MM()), o.Nearest)
		if !o.Fits {
			room = fmt.Sprintf("NO FIT: %s over %s", u.full(-o.Left.MM()), o.Nearest)
		}
		ratio := fmt.Sprintf("%g:1", o.Ratio)
		write := s.Text
		if o.Chosen {
			ratio += " chosen"
			write = s.Bold
		}
		dust, bond := fmt.Sprintf("%.0f ml", o.Dust.ML()), fmt.Sprintf("%.0f mm²", o.BondPerEdge.MM())
		if u.us {
			dust, bond = fmt.Sprintf("%.1f in³", o.Dust.ML()/16.387064), fmt.Sprintf("%.2f in²", o.BondPerEdge.MM()/25.4)
		}
		if lines := drawing.Wrap(room, wide-x[6]-3, drawing.TextSmall, o.Chosen); len(lines) > 1 {
			room = lines[0] + " …"
		}
		for j, text := range []string{ratio, u.len(o.Taper.MM()), u.len(o.Width.MM()) + " × " + u.len(o.Height.MM()), u.area(o.Ground.M2()), dust, bond, room} {
			write(drawing.P(x[j], y), drawing.TextSmall, drawing.Left, text)
		}
	}
}

// along returns where the way from c at an angle leaves a ring, the angle being
// taken as if the ring were as high as it is wide.
func along(ring []drawing.Point, c drawing.Point, deg float64) drawing.Point {
	r := make(geom.Ring, len(ring))
	for i, p := range ring {
		r[i] = geom.Point(p)
	}
	b := drawing.Bounds(ring)
	s, k := math.Sincos(deg * math.Pi / 180)
	s, k = math.Sincos(math.Atan2(s*b.Height(), k*b.Width()))
	d, _ := geom.Shape{r}.Ray(geom.Point(c), math.Atan2(s, k))
	return drawing.P(c.X+d*k, c.Y+d*s)
}
