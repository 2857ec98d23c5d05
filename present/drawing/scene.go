package drawing

import (
	"fmt"
	"math"
)

// Point is a place in millimetres: on paper for the scene, on the boat for a
// view. X runs to the right and Y upwards.
type Point struct{ X, Y float64 }

// P returns the point (x, y).
func P(x, y float64) Point { return Point{x, y} }

// Pts returns any slice of points with fields X and Y as drawing points.
func Pts[Q ~struct{ X, Y float64 }](qs []Q) []Point {
	ps := make([]Point, len(qs))
	for i, q := range qs {
		ps[i] = Point(q)
	}
	return ps
}

func (p Point) add(q Point) Point       { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) sub(q Point) Point       { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) mul(k float64) Point     { return Point{p.X * k, p.Y * k} }
func (p Point) dist(q Point) float64    { return math.Hypot(p.X-q.X, p.Y-q.Y) }
func (p Point) left() Point             { return Point{-p.Y, p.X} }
func (p Point) turn(s, c float64) Point { return Point{p.X*c - p.Y*s, p.X*s + p.Y*c} }

// Box is an upright rectangle from (X0, Y0), lower left, to (X1, Y1).
type Box struct{ X0, Y0, X1, Y1 float64 }

// Width returns the box's extent in x, in mm.
func (b Box) Width() float64 { return b.X1 - b.X0 }

// Height returns the box's extent in y, in mm.
func (b Box) Height() float64 { return b.Y1 - b.Y0 }

// Inset returns the box with each side moved inwards by d (outwards if d < 0).
func (b Box) Inset(d float64) Box { return Box{b.X0 + d, b.Y0 + d, b.X1 - d, b.Y1 - d} }

// Corners returns the box as a ring, counter-clockwise from the lower left.
func (b Box) Corners() []Point {
	return []Point{{b.X0, b.Y0}, {b.X1, b.Y0}, {b.X1, b.Y1}, {b.X0, b.Y1}}
}

func (b Box) centre() Point { return Point{(b.X0 + b.X1) / 2, (b.Y0 + b.Y1) / 2} }

func (b Box) holds(p Point) bool {
	return p.X >= b.X0 && p.X <= b.X1 && p.Y >= b.Y0 && p.Y <= b.Y1
}

func (b Box) meets(c Box) bool {
	return b.X0 <= c.X1 && c.X0 <= b.X1 && b.Y0 <= c.Y1 && c.Y0 <= b.Y1
}

func (b Box) join(c Box) Box {
	return Box{min(b.X0, c.X0), min(b.Y0, c.Y0), max(b.X1, c.X1), max(b.Y1, c.Y1)}
}

// nothing is the box that joins to any other without changing it.
func nothing() Box { return Box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)} }

// Bounds returns the smallest box that holds every point of every ring. It
// panics when there is no point.
func Bounds(rings ...[]Point) Box {
	b := nothing()
	for _, ring := range rings {
		for _, p := range ring {
			b = b.join(Box{p.X, p.Y, p.X, p.Y})
		}
	}
	if b.X0 > b.X1 {
		panic("drawing: bounds of no points")
	}
	return b
}

// Line is a kind of line. There are two widths, Wide and the narrow ones, 2:1.
type Line uint8

// The lines of ISO 128-2:2020: 01.2, 01.1, 02.1 and 04.1.
const (
	Wide         Line = iota // visible outline, 0.5 mm
	Narrow                   // dimension, extension, leader, hatching, 0.25 mm
	DashedNarrow             // hidden edge, 0.25 mm
	ChainNarrow              // centre line, line of symmetry, 0.25 mm
)

// Width returns the line's width in mm: 0.5 or 0.25.
func (l Line) Width() float64 {
	if l == Wide {
		return 0.5
	}
	return 0.25
}

// dashes returns the lengths of strokes and gaps in mm, none for a whole line.
// Dash 12 d, long dash 24 d and gap 3 d of the width d are ISO 128 practice,
// from memory. The dot is 2 d instead of 0.5 d, because an office printer
// loses a stroke of 0.13 mm.
func (l Line) dashes() []float64 {
	switch l {
	case DashedNarrow:
		return []float64{3, 0.75}
	case ChainNarrow:
		return []float64{6, 0.75, 0.5, 0.75}
	}
	return nil
}

// Ink is a colour. The eight are the Okabe-Ito set, told apart under the common
// kinds of colour blindness. On white only Black and Blue have the contrast for
// text (4.5:1); Vermilion, Green and Purple will do for lines (3:1); the others
// are for fills inside a dark outline.
type Ink uint8

// The inks.
const (
	Black Ink = iota
	Blue
	Vermilion
	Green
	Purple
	Orange
	Sky
	Yellow
)

var inks = [...]struct {
	name    string
	r, g, b uint8
	aci     int // AutoCAD colour index, the only colour R12 knows
}{
	{"", 0, 0, 0, 7},
	{"blue", 0x00, 0x72, 0xb2, 5},
	{"vermilion", 0xd5, 0x5e, 0x00, 1},
	{"green", 0x00, 0x9e, 0x73, 3},
	{"purple", 0xcc, 0x79, 0xa7, 6},
	{"orange", 0xe6, 0x9f, 0x00, 30},
	{"sky", 0x56, 0xb4, 0xe9, 4},
	{"yellow", 0xf0, 0xe4, 0x42, 2},

	// cividis at ten even steps (Nuñez, Anderton and Renslow 2018, PLoS ONE 13(7)
	// e0199239; the figures from memory): even to the eye, in grey, and to the colour-blind.
	{"field0", 0x00, 0x22, 0x4e, 250},
	{"field1", 0x12, 0x35, 0x70, 250},
	{"field2", 0x3b, 0x49, 0x6c, 251},
	{"field3", 0x57, 0x5d, 0x6d, 251},
	{"field4", 0x70, 0x71, 0x73, 252},
	{"field5", 0x8a, 0x86, 0x78, 252},
	{"field6", 0xa5, 0x9c, 0x74, 253},
	{"field7", 0xc3, 0xb3, 0x69, 253},
	{"field8", 0xe1, 0xcc, 0x55, 254},
	{"field9", 0xfe, 0xe8, 0x38, 254},
}

// Bands is how many colours there are for the height of a field.
const Bands = 10

// Band returns the ink of one of the Bands of a field, dark for low and bright for
// high; beyond the ends it is the last. It is for filled areas, never for text.
func Band(i int) Ink { return Yellow + 1 + Ink(max(0, min(i, Bands-1))) }

// Shade is how much of its ink a filled area takes: from the bare paper, which
// blanks out what lies below, to solid.
type Shade uint8

// The shades: 0, 10, 25, 45 and 100 % of the ink.
const (
	Paper Shade = iota
	Light
	Mid
	Dark
	Solid
)

var shades = [...]struct {
	name string
	part float64
}{{"paper", 0}, {"light", 0.10}, {"mid", 0.25}, {"dark", 0.45}, {"solid", 1}}

// rgb returns the colour of an ink thinned to a shade over white paper.
func rgb(ink Ink, shade Shade) (r, g, b uint8) {
	k := shades[shade].part
	mix := func(c uint8) uint8 { return uint8(math.Round(255 - k*(255-float64(c)))) }
	c := inks[ink]
	return mix(c.r), mix(c.g), mix(c.b)
}

type kind uint8

const (
	stroke kind = iota
	fill
	text
)

// path is a run of points on paper, joined to its start when closed.
type path struct {
	pts    []Point
	closed bool
}

// item is one thing on the paper, in paper millimetres.
type item struct {
	kind  kind
	line  Line  // strokes
	shade Shade // fills
	ink   Ink
	layer string
	paths []path
	text  label
}

// Scene is a sheet of paper and what is drawn on it. Its embedded Pen draws in
// paper millimetres, in black, on layer 0.
type Scene struct {
	Pen
	Width, Height float64 // of the paper, mm
	Title         string  // what the drawing is, in a line
	Desc          string  // what it shows, in words, for a reader who cannot see it

	items []item // geometry, in the order drawn
	over  []item // text and the blanks below it: always above the geometry

	faults []string // what was noticed while drawing, told by Lint
}

// New returns an empty sheet of width by height millimetres.
func New(width, height float64, title string) *Scene {
	if !(width > 0 && height > 0) || math.IsInf(width+height, 0) {
		panic(fmt.Sprintf("drawing: sheet of %g x %g mm", width, height))
	}
	s := &Scene{Width: width, Height: height, Title: title}
	s.Pen = Pen{s: s, sx: 1, sy: 1, size: TextSmall, layer: "0"}
	return s
}

// all calls f for every item in the order of painting.
func (s *Scene) all(f func(*item)) {
	for i := range s.items {
		f(&s.items[i])
	}
	for i := range s.over {
		f(&s.over[i])
	}
}

// Extent returns the box around everything drawn, in paper mm, and false if
// nothing is. Line width is left out.
func (s *Scene) Extent() (Box, bool) {
	b := nothing()
	s.all(func(it *item) { b = b.join(it.box()) })
	return b, b.X0 <= b.X1
}

func (it *item) box() Box {
	if it.kind == text {
		return it.text.box()
	}
	b := nothing()
	for _, p := range it.paths {
		for _, q := range p.pts {
			b = b.join(Box{q.X, q.Y, q.X, q.Y})
		}
	}
	return b
}
