package view

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"scarfwright/physics/geom"
	"scarfwright/present/drawing"
	"scarfwright/repair"
	"scarfwright/repair/design"
)

// Piece is one thing to be marked or cut at 1:1.
type Piece struct {
	Label string // "cut-out", "taper", "P3", "C", "backing 1 of 2", "core"
	Title string // "P3 BXM800, 377 × 277 mm"
	Layer string // of the DXF: CUTOUT or FLOOR, TAPER, PLY_03, COVER, BACKING_1, CORE
	View  string // from where it is seen, mirrored or not, in words

	box   drawing.Box // as seen, mm
	draw  func(drawing.Pen)
	words func(p drawing.Pen, at drawing.Point, room float64)
}

// Around is the white edge kept round a piece on its own scene, in mm.
const around = 4.0

// Templates returns every piece of a repair: the cut-out (or a dish's floor), the taper with its
// rings, each ply in laying order, backing and core. They share the centre of
// the cut-out, marked by a cross and eight clock ticks, so that each finds its
// place on the hull. It returns nil where no laminate is renewed.
func Templates(r repair.Result) []Piece {
	if r.Design == nil {
		return nil
	}
	d := r.Design
	ground := seen(r, groundFace(d))
	out := []Piece{cutTemplate(r, ground)}
	if d.Sides == "both" {
		out = append(out, taperTemplate(r, "outside", "taper outside", "TAPER"), taperTemplate(r, "inside", "taper inside", "TAPER_IN"))
	} else {
		out = append(out, taperTemplate(r, d.Sides, "taper", "TAPER"))
	}
	for i := range d.Plies {
		out = append(out, plyTemplate(r, i))
	}
	if d.FarSide != nil {
		out = append(out, farTemplate(r, *d.FarSide))
	}
	if b := d.Backing; b != nil {
		for i, s := range b.Pieces {
			if len(s) > 0 {
				out = append(out, backTemplate(r, ground, i, s))
			}
		}
	}
	if k := d.Core; k != nil {
		p := newPiece(r, ground, k.Outline, "core", "CORE", fmt.Sprintf("core %s, %s thick", upper(k.Class), unitsOf(r).full(k.Thickness.MM())))
		p.say("CORE "+upper(k.Class), nil, fmt.Sprintf("%s thick, bedded on both faces", unitsOf(r).full(k.Thickness.MM())))
		out = append(out, p.Piece)
	}
	return out
}

// Scene returns the piece alone on a sheet of its own size, at 1:1, with its
// words in the middle.
func (p Piece) Scene() *drawing.Scene {
	return p.SceneWithWords(drawing.P(p.box.Width()/2+around, p.box.Height()/2+around), p.box.Width()*0.75)
}

// SceneWithWords is Scene with the words round another place, in mm on that
// sheet, and no wider than room: for a piece that is cut into sheets of paper,
// where the middle may be a joint.
func (p Piece) SceneWithWords(at drawing.Point, room float64) *drawing.Scene {
	s := drawing.New(p.box.Width()+2*around, p.box.Height()+2*around, p.Title)
	s.Desc = p.Title + " at 1:1. " + p.View + "."
	pen := s.On(p.Layer).View(drawing.P(around, around), drawing.P(p.box.X0, p.box.Y0), 1, 1)
	p.draw(pen)
	p.words(pen, drawing.P(at.X-around+p.box.X0, at.Y-around+p.box.Y0), room)
	return s
}

// Layout returns all pieces side by side at 1:1, each on its layer, for a
// cutter or a drawing program, with the cautions above them on layer CAUTION.
func Layout(r repair.Result, pieces []Piece) *drawing.Scene {
	if len(pieces) == 0 {
		return nil
	}
	const between, row, leastWide = 15.0, 1800.0, 150.0
	type place struct{ x, y float64 }
	places := make([]place, len(pieces))
	x, top, high, wide := around, around, 0.0, 0.0
	for i, p := range pieces {
		if x > around && x+p.box.Width() > row {
			x, top, high = around, top+high+between, 0
		}
		places[i] = place{x, top}
		x += p.box.Width() + between
		high, wide = max(high, p.box.Height()), max(wide, x)
	}
	full := top + high + around
	s := drawing.New(max(wide, leastWide), full, "All pieces at 1:1")
	s.Desc = fmt.Sprintf("%d pieces at 1:1, each on a layer of its own.", len(pieces))
	for i, p := range pieces {
		at := drawing.P(places[i].x, full-places[i].y-p.box.Height())
		pen := s.On(p.Layer).View(at, drawing.P(p.box.X0, p.box.Y0), 1, 1)
		p.draw(pen)
		p.words(pen, drawing.P((p.box.X0+p.box.X1)/2, (p.box.Y0+p.box.Y1)/2), p.box.Width()*0.75)
	}
	notice(s, r, around)
	return s
}

// builder gathers what a piece shows; its parts draw in the order they were
// added, lines first and words last.
type builder struct {
	Piece
	r       repair.Result
	look    look
	outline geom.Shape
	steps   []func(drawing.Pen)
}

// newPiece starts a piece from its outline, with the centre cross, the clock
// ticks and the marks for up and forward.
func newPiece(r repair.Result, l look, outline geom.Shape, label, layer, title string) *builder {
	u := unitsOf(r)
	b := outline.Bounds()
	p := &builder{r: r, look: l, outline: outline}
	p.Piece = Piece{
		Label: label, Layer: layer, box: l.box(outline),
		Title: fmt.Sprintf("%s, %s × %s", title, u.len(b.Width()), u.full(b.Height())),
		View:  l.words(r) + ", not mirrored; printed face up",
	}
	p.draw = func(pen drawing.Pen) {
		l.draw(pen, drawing.Wide, outline)
		for _, s := range p.steps {
			s(pen)
		}
	}
	p.steps = append(p.steps, p.cross, p.ticks, p.marks)
	return p
}

func (b *builder) centre() drawing.Point { return b.look.point(b.r.Design.CutOut.Centroid()) }

// cross draws the two lines through the cut-out's centre, across the piece.
func (b *builder) cross(p drawing.Pen) {
	c := b.centre()
	if c.Y > b.box.Y0 && c.Y < b.box.Y1 {
		p.Line(drawing.ChainNarrow, drawing.P(b.box.X0, c.Y), drawing.P(b.box.X1, c.Y))
	}
	if c.X > b.box.X0 && c.X < b.box.X1 {
		p.Line(drawing.ChainNarrow, drawing.P(c.X, b.box.Y0), drawing.P(c.X, b.box.Y1))
	}
}

// ticks draws the eight clock points as short strokes inward from the outline.
func (b *builder) ticks(p drawing.Pen) {
	o := b.r.Design.CutOut.Centroid()
	c := b.centre()
	small := min(b.box.Width(), b.box.Height()) < 90
	for _, k := range b.r.Design.Clocks {
		far, ok := b.outline.Ray(o, k.Angle.Radians())
		if !ok || !b.outline.Contains(o) {
			continue
		}
		v := b.look.ray(k.Angle)
		at := func(d float64) drawing.Point { return drawing.P(c.X+v.X*d, c.Y+v.Y*d) }
		p.Line(drawing.Narrow, at(far), at(far-5))
		if !small {
			p.Label(at(far-9-2*math.Abs(v.X)), drawing.TextSmall, drawing.Centre|drawing.Middle, k.Hour)
		}
	}
}

// marks draws which way is up and which is forward.
func (b *builder) marks(p drawing.Pen) {
	c := b.centre()
	w, h := b.box.Width(), b.box.Height()
	long := min(14, h/8, w/8)
	fwd := 1.0
	if b.look.flip {
		fwd = -1
	}
	x, y := c.X+w/6, c.Y+h*0.27
	p.Arrow(drawing.P(x, y), drawing.P(x, y+long))
	p.Label(drawing.P(x+1.5, y+1), drawing.TextNormal, drawing.Left, "TOP")
	x, y = c.X+fwd*w*0.27, c.Y-h/6
	p.Arrow(drawing.P(x, y), drawing.P(x+fwd*long, y))
	p.Label(drawing.P(x+fwd*long/2, y+1.5), drawing.TextNormal, drawing.Centre, "FWD")
}

// add puts one more thing on the piece.
func (b *builder) add(f func(drawing.Pen)) { b.steps = append(b.steps, f) }

// say sets the piece's name and what to know of it; roll, where it is not nil,
// is the angle of the roll's length to be drawn beneath, in radians.
func (b *builder) say(name string, roll *float64, lines ...string) {
	b.words = func(p drawing.Pen, at drawing.Point, room float64) {
		room = min(room, 110)
		size, small := drawing.TextHuge, drawing.TextNormal
		if room < 70 {
			size, small = drawing.TextLarge, drawing.TextSmall
		}
		var text []string
		for _, s := range lines {
			text = append(text, drawing.Wrap(s, max(36, room), small, false)...)
		}
		high := size + 3 + float64(len(text))*small*1.7
		y := at.Y + high/2 - size
		p.Label(drawing.P(at.X, y), size, drawing.Centre, name)
		y -= 3 + small
		for _, line := range text {
			p.Label(drawing.P(at.X, y), small, drawing.Centre, line)
			y -= small * 1.7
		}
		if roll == nil {
			return
		}
		s, c := math.Sincos(*roll)
		n := min(24, room/4)
		mid := drawing.P(at.X, y+small-math.Abs(s)*n-3)
		p.DoubleArrow(drawing.P(mid.X-c*n, mid.Y-s*n), drawing.P(mid.X+c*n, mid.Y+s*n))
	}
}

func (b *builder) jobLine() string {
	h := b.r.Job.Job
	return fmt.Sprintf("Job %s %s, %s", h.Number, h.Revision, short(b.r.Hash))
}

func cutTemplate(r repair.Result, l look) Piece {
	if Partial(r) {
		b := newPiece(r, l, r.Design.CutOut, "floor of the dish", "FLOOR", "Floor of the dish")
		b.say("FLOOR OF THE DISH", nil, "mark round it, grind down to it", DishWords(r), b.View, b.jobLine())
		return b.Piece
	}
	b := newPiece(r, l, r.Design.CutOut, "cut-out", "CUTOUT", "Cut-out")
	b.say("CUT-OUT", nil, "mark round it, cut back to sound laminate", b.View, b.jobLine())
	return b.Piece
}

// taperTemplate shows the feather edge with every ply's ring inside it.
func taperTemplate(r repair.Result, face, label, layer string) Piece {
	d, l := r.Design, seen(r, face)
	b := newPiece(r, l, d.Edge, label, layer, fmt.Sprintf("Taper %g:1, %s", d.Ratio, face))
	b.add(func(p drawing.Pen) {
		l.draw(p, drawing.Wide, d.CutOut)
		for _, ply := range d.Plies {
			if isCover(ply) || ply.Face != face || ply.Outline.Area() > d.Edge.Area()-1 {
				continue
			}
			l.draw(p, drawing.Narrow, ply.Outline)
		}
		// Each ring is named where it crosses a way of its own, between two ticks.
		o := d.CutOut.Centroid()
		n := float64(len(d.Plies))
		for i, ply := range d.Plies {
			if isCover(ply) || ply.Face != face {
				continue
			}
			deg := 97 + 30*float64(i)/n
			far, ok := ply.Outline.Ray(o, deg*math.Pi/180)
			if !ok {
				continue
			}
			s, k := math.Sincos(deg * math.Pi / 180)
			at := l.point(geom.Point{X: o.X + k*(far-4), Y: o.Y + s*(far-4)})
			p.Label(at, drawing.TextSmall, drawing.Centre|drawing.Middle, ply.Label)
		}
	})
	b.say("TAPER", nil, fmt.Sprintf("%g:1, %s all round, on the %s face", d.Ratio, unitsOf(r).full(d.Taper.MM()), face),
		"inner line: "+Opening(r)+"; outer line: feather edge; between: edges of the plies", DishWords(r), b.View, b.jobLine())
	return b.Piece
}

func plyTemplate(r repair.Result, i int) Piece {
	d := r.Design
	ply := d.Plies[i]
	l := seen(r, ply.Face)
	layer := "COVER"
	switch {
	case !isCover(ply):
		layer = fmt.Sprintf("PLY_%02d", plyNumber(ply))
	case d.Sides == "both" && ply.Face == "inside":
		layer = "COVER_IN"
	}
	b := newPiece(r, l, ply.Outline, ply.Label, layer, ply.Label+" "+upper(ply.Class))
	under, what := d.CutOut, "dashed: edge of the "+Opening(r)
	switch {
	case isCover(ply):
		under, what = d.Edge, "dashed: feather edge"
	case i > 0 && d.Plies[i-1].Face == ply.Face && d.Plies[i-1].Outline.Area() < ply.Outline.Area():
		under = d.Plies[i-1].Outline
		what = fmt.Sprintf("dashed: edge of %s below, overlap %s", d.Plies[i-1].Label, unitsOf(r).full(ply.Overlap.MM()))
	}
	b.add(func(p drawing.Pen) {
		if under.Area() < ply.Outline.Area()-1 {
			l.draw(p, drawing.DashedNarrow, under)
		}
	})
	b.say(ply.Label+"  "+upper(ply.Class), roll(b, ply),
		fmt.Sprintf("laid %s of %d, session %d, from the %s", nth(i+1), len(d.Plies), ply.Session, ply.Face),
		fibreWords(ply), what, b.View, b.jobLine())
	return b.Piece
}

// plyNumber is the number in a ply's label, which its layer carries too; the
// cover plies laid before it do not count.
func plyNumber(p design.Ply) int {
	n, err := strconv.Atoi(strings.TrimPrefix(p.Label, "P"))
	if err != nil {
		panic(fmt.Sprintf("view: ply label %q carries no number", p.Label))
	}
	return n
}

// roll returns the way of the roll's length as it is seen, nil for a mat.
func roll(b *builder, ply design.Ply) *float64 {
	if IsMat(ply.Class, glassOf(ply)) {
		return nil
	}
	a := float64(ply.Angle)
	if b.look.flip {
		a = math.Pi - a
	}
	return &a
}

func fibreWords(p design.Ply) string {
	if IsMat(p.Class, glassOf(p)) {
		return "mat: any direction"
	}
	return fmt.Sprintf("roll's length at %.0f° to the panel's long span (double arrow)", p.Angle.Degrees())
}

// farTemplate is the light ply on the face that is not ground.
func farTemplate(r repair.Result, ply design.Ply) Piece {
	l := seen(r, ply.Face)
	b := newPiece(r, l, ply.Outline, ply.Label, "FAR_SIDE", ply.Label+" "+upper(ply.Class)+", far side")
	b.add(func(p drawing.Pen) { l.draw(p, drawing.DashedNarrow, r.Design.CutOut) })
	b.say(ply.Label+"  "+upper(ply.Class), roll(b, ply), ply.Replaces, "laid from the "+ply.Face, fibreWords(ply), "dashed: edge of the "+Opening(r), b.View, b.jobLine())
	return b.Piece
}

func backTemplate(r repair.Result, l look, i int, s geom.Shape) Piece {
	n := len(r.Design.Backing.Pieces)
	name := fmt.Sprintf("backing %d of %d", i+1, n)
	b := newPiece(r, l, s, name, fmt.Sprintf("BACKING_%d", i+1), "Backing "+fmt.Sprintf("%d of %d", i+1, n))
	b.say(fmt.Sprintf("BACKING %d of %d", i+1, n), nil, "goes behind the hole, seen through it", b.View, b.jobLine())
	return b.Piece
}

func nth(n int) string {
	switch {
	case n%100 >= 11 && n%100 <= 13:
		return fmt.Sprintf("%dth", n)
	case n%10 == 1:
		return fmt.Sprintf("%dst", n)
	case n%10 == 2:
		return fmt.Sprintf("%dnd", n)
	case n%10 == 3:
		return fmt.Sprintf("%drd", n)
	}
	return fmt.Sprintf("%dth", n)
}
