package view

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/geom"
	"scarfwright/present/drawing"
	"scarfwright/repair"
	"scarfwright/repair/design"
)

// Plan returns the plan of the repair to a stated scale, as it is seen by
// whoever stands before the ground face: the cut-out, the plies' rings, the
// feather edge, the cover ply, the panel with what bounds it, what is left to
// each edge, the eight clock points, and a title block. Where the taper crosses
// something, the place is hatched and said in words. It returns nil where no
// laminate is renewed.
func Plan(r repair.Result) *drawing.Scene {
	if r.Design == nil {
		return nil
	}
	l := newLayout(r)
	l.panel()
	l.features()
	l.repair()
	l.crossings()
	l.clock()
	l.chains()
	l.arrows()
	l.table()
	notice(l.s, r, frame)
	return l.s
}

// Room round the panel on paper, in mm.
const (
	strip    = 6.0  // hatched band outside the panel, for what stands there
	roomSide = 22.0 // beside the panel: band, names, dimensions
	roomHigh = 24.0 // above and below
	titleTop = 46.0 // frame and title block
	barHigh  = 14.0 // arrows and scale bar
	rowStep  = 4.4
	frame    = 5.0 // from the sheet's edge to the title block's frame
)

// layout is a plan in the making.
type layout struct {
	r     repair.Result
	d     *design.Result
	u     units
	look  look
	w, h  float64 // half the panel, mm
	k     float64
	s     *drawing.Scene
	p     drawing.Pen
	named [4]string         // what stands fore, aft, above, below
	taken [][]drawing.Point // where words stand already
}

func newLayout(r repair.Result) *layout {
	l := &layout{r: r, d: r.Design, u: unitsOf(r), look: seen(r, groundFace(r.Design))}
	p := r.Job.Panel
	l.w, l.h = p.Long.MM()/2, p.Short.MM()/2
	for i, n := range []string{p.Edges.Fore, p.Edges.Aft, p.Edges.Upper, p.Edges.Lower} {
		l.named[i] = cmp.Or(n, "panel edge")
	}
	box := l.bounds()
	l.k = max(niceScale(box.Width(), wide-2*roomSide-2*5+0.5), niceScale(box.Height(), 130))
	rows := float64(len(l.d.Clearances)+1)*rowStep + 2
	high := titleTop + rows + barHigh + 2*roomHigh + box.Height()/l.k + 5
	l.s = drawing.New(wide, high, "Plan of the repair")
	l.s.Desc = fmt.Sprintf("Plan: a %s of %.0f by %.0f mm, feather edge %.0f by %.0f mm, in a panel of %.0f by %.0f mm. %s.",
		Opening(r), l.d.CutOut.Bounds().Width(), l.d.CutOut.Bounds().Height(), l.d.Edge.Bounds().Width(), l.d.Edge.Bounds().Height(), 2*l.w, 2*l.h, l.look.words(r))
	l.s.TitleBlock(title(r, "Plan of the repair", drawing.ScaleText(l.k), l.look.words(r)+". "+l.u.note()+" Clock points as seen here, 12 up. Do not scale unless the bar measures true."))
	centre := drawing.P((box.X0+box.X1)/2, (box.Y0+box.Y1)/2)
	l.p = l.s.View(drawing.P(wide/2, titleTop+rows+barHigh+roomHigh+box.Height()/l.k/2), centre, 1/l.k, 1/l.k)
	return l
}

// title fills the title block from the job.
func title(r repair.Result, name, scale, note string) drawing.TitleBlock {
	h := r.Job.Job
	return drawing.TitleBlock{
		Owner: cmp.Or(h.Yard, "not given"), Number: h.Number, Title: name, Date: cmp.Or(h.Date, "not given"),
		Sheet: 1, Sheets: 1, Creator: cmp.Or(h.Author, "not given"), Approval: "not yet", Kind: "repair drawing",
		Revision: h.Revision, Scale: scale, Hash: short(r.Hash), Note: note,
	}
}

// short cuts a hash to what people compare.
func short(hash string) string {
	hash = strings.TrimPrefix(hash, "sha256:")
	return hash[:min(12, len(hash))]
}

// bounds is the box that holds the panel and everything of the repair, as seen.
func (l *layout) bounds() drawing.Box {
	b := drawing.Box{X0: -l.w, Y0: -l.h, X1: l.w, Y1: l.h}
	for _, s := range []geom.Shape{l.d.Edge, l.d.CoverEdge} {
		if len(s) == 0 {
			continue
		}
		o := l.look.box(s)
		b = drawing.Box{X0: min(b.X0, o.X0), Y0: min(b.Y0, o.Y0), X1: max(b.X1, o.X1), Y1: max(b.Y1, o.Y1)}
	}
	return b
}

// panel draws the panel's edges, what stands outside them hatched and named.
// The hatching leaves the names' places out.
func (l *layout) panel() {
	m := strip * l.k
	outer := drawing.Box{X0: -l.w - m, Y0: -l.h - m, X1: l.w + m, Y1: l.h + m}
	inner := drawing.Box{X0: -l.w, Y0: -l.h, X1: l.w, Y1: l.h}
	right, left := l.named[0]+" (fore)", l.named[1]+" (aft)"
	if l.look.flip {
		right, left = left, right
	}
	mid := strip / 2 * l.k
	rings := [][]drawing.Point{outer.Corners(), inner.Corners()}
	name := func(at drawing.Point, text string, deg float64) {
		w, h := (drawing.TextWidth(drawing.TextSmall, false, text)/2+1)*l.k, (drawing.TextSmall/2+0.9)*l.k
		if deg != 0 {
			w, h = h, w
		}
		box := drawing.Box{X0: at.X - w, Y0: at.Y - h, X1: at.X + w, Y1: at.Y + h}.Corners()
		rings, l.taken = append(rings, box), append(l.taken, box)
		l.p.TurnedLabel(at, drawing.TextSmall, deg, drawing.Centre|drawing.Middle, text)
	}
	lead := func(text string) float64 {
		return -l.w + (drawing.TextWidth(drawing.TextSmall, false, text)/2+2)*l.k
	}
	name(drawing.P(lead(l.named[2]+" (upper)"), l.h+mid), l.named[2]+" (upper)", 0)
	name(drawing.P(lead(l.named[3]+" (lower)"), -l.h-mid), l.named[3]+" (lower)", 0)
	name(drawing.P(l.w+mid, 0), right, 90)
	name(drawing.P(-l.w-mid, 0), left, 90)
	l.p.Hatch(45, 2, rings...)
	l.p.Rect(drawing.Wide, inner)
}

// features draws the lines the repair must stay clear of.
func (l *layout) features() {
	for _, f := range l.r.Job.Panel.Features {
		a := l.look.point(geom.Point{X: f.From.X.MM(), Y: f.From.Y.MM()})
		b := l.look.point(geom.Point{X: f.To.X.MM(), Y: f.To.Y.MM()})
		l.p.Line(drawing.ChainNarrow, a, b)
		// The name stands on the end that is farther from the repair.
		c := l.look.box(l.d.Edge)
		end := a
		if gap(c, b) > gap(c, a) {
			end = b
		}
		in := drawing.P(clamp(end.X, l.w-18*l.k), clamp(end.Y, l.h-3*l.k))
		l.p.Label(in, drawing.TextSmall, drawing.Centre|drawing.Middle, f.What)
		w := (drawing.TextWidth(drawing.TextSmall, false, f.What)/2 + 1) * l.k
		l.taken = append(l.taken, drawing.Box{X0: in.X - w, Y0: in.Y - 2.2*l.k, X1: in.X + w, Y1: in.Y + 2.2*l.k}.Corners())
	}
}

func gap(b drawing.Box, p drawing.Point) float64 {
	return math.Hypot(p.X-(b.X0+b.X1)/2, p.Y-(b.Y0+b.Y1)/2)
}

func clamp(x, most float64) float64 { return max(-most, min(most, x)) }

// repair draws the rings: cut-out wide, plies narrow, feather edge wide, cover
// ply dashed.
func (l *layout) repair() {
	p := l.p
	if !Partial(l.r) { // a shade would look like a hole
		p.Fill(drawing.Light, l.look.rings(l.d.CutOut)...)
	}
	for _, ply := range l.d.Plies {
		if !isCover(ply) && ply.Outline.Area() < l.d.Edge.Area()-1 {
			l.look.draw(p.In(drawing.Blue), drawing.Narrow, ply.Outline)
		}
	}
	if len(l.d.CoverEdge) > 0 {
		l.look.draw(p.In(drawing.Blue), drawing.DashedNarrow, l.d.CoverEdge)
	}
	if l.d.Backing != nil {
		l.look.draw(p, drawing.DashedNarrow, l.d.Backing.Outline)
	}
	l.look.draw(p, drawing.Wide, l.d.Edge)
	if Partial(l.r) {
		l.look.draw(p, drawing.Narrow, l.d.CutOut)
	} else {
		l.look.draw(p, drawing.Wide, l.d.CutOut)
	}
	c := l.centre()
	b := l.look.box(l.d.CutOut)
	e := 4 * l.k
	p.Line(drawing.ChainNarrow, drawing.P(b.X0-e, c.Y), drawing.P(b.X1+e, c.Y))
	p.Line(drawing.ChainNarrow, drawing.P(c.X, b.Y0-e), drawing.P(c.X, b.Y1+e))
}

func (l *layout) centre() drawing.Point { return l.look.point(l.d.CutOut.Centroid()) }

// clock marks the eight clock points on the taper, named inside the cut-out
// where there is room.
func (l *layout) clock() {
	c := l.centre()
	b := l.look.box(l.d.CutOut)
	roomy := min(b.Width(), b.Height())/l.k >= 21
	for _, k := range l.d.Clocks {
		v := l.look.ray(k.Angle)
		at := func(d float64) drawing.Point { return drawing.P(c.X+v.X*d, c.Y+v.Y*d) }
		l.p.Line(drawing.Narrow, at(k.ToCut.MM()), at(k.ToEdge.MM()))
		l.p.Fill(drawing.Solid, l.p.EllipseRing(at(k.ToEdge.MM()), 0.7*l.k, 0.7*l.k, 0))
		if roomy {
			in := 3.2 + 2.2*math.Abs(v.X)
			l.p.Label(at(k.ToCut.MM()-in*l.k), drawing.TextSmall, drawing.Centre|drawing.Middle, k.Hour)
		}
	}
}
