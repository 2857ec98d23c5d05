package drawing

import (
	"fmt"
	"sync"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// capHeight is the height of a capital letter of the face, in parts of the font
// size: 1493 of 2048 units, read from the font's OS/2 table.
const capHeight = 1493.0 / 2048

// face is a parsed font and the widths of its commoner letters. It never
// changes once made.
type face struct {
	font   *sfnt.Font
	widths [0x500]float64 // advance in parts of the font size
}

// The faces are parsed on first use, because most commands draw nothing.
var (
	regularFace = sync.OnceValue(func() *face { return parse(dejavusanscondensed.TTF) })
	boldFace    = sync.OnceValue(func() *face { return parse(dejavusanscondensedbold.TTF) })
)

func faceOf(bold bool) *face {
	if bold {
		return boldFace()
	}
	return regularFace()
}

func parse(ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic(fmt.Sprintf("drawing: the font in the program does not parse: %v", err))
	}
	fc := &face{font: f}
	for r := range fc.widths {
		fc.widths[r] = fc.measure(rune(r))
	}
	return fc
}

func (f *face) measure(r rune) float64 {
	var buf sfnt.Buffer
	g, err := f.font.GlyphIndex(&buf, r)
	if err != nil {
		return 0
	}
	em := f.font.UnitsPerEm()
	adv, err := f.font.GlyphAdvance(&buf, g, fixed.I(int(em)), font.HintingNone)
	if err != nil {
		return 0
	}
	return float64(adv) / 64 / float64(em)
}

func (f *face) width(s string) float64 {
	w := 0.0
	for _, r := range s {
		if int(r) < len(f.widths) {
			w += f.widths[r]
		} else {
			w += f.measure(r)
		}
	}
	return w
}

// outline calls the three functions for the outlines of a letter, in parts of
// the font size, y upwards, and returns its advance.
func (f *face) outline(r rune, move, line func(Point), quad func(c, p Point)) float64 {
	var buf sfnt.Buffer
	g, err := f.font.GlyphIndex(&buf, r)
	if err != nil {
		return 0
	}
	em := float64(f.font.UnitsPerEm())
	segs, err := f.font.LoadGlyph(&buf, g, fixed.I(int(em)), nil)
	if err != nil {
		return 0
	}
	at := func(p fixed.Point26_6) Point {
		return Point{float64(p.X) / 64 / em, -float64(p.Y) / 64 / em}
	}
	for _, s := range segs {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			move(at(s.Args[0]))
		case sfnt.SegmentOpLineTo:
			line(at(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			quad(at(s.Args[0]), at(s.Args[1]))
		}
	}
	return f.width(string(r))
}

// TextWidth returns the width in mm of a line of text with capitals h mm high.
func TextWidth(h float64, bold bool, s string) float64 {
	return faceOf(bold).width(s) * h / capHeight
}
