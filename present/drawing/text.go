package drawing

import (
	"fmt"
	"math"
	"strings"
)

// Heights of capitals in mm, the first four of the series of ISO 3098 (from
// memory). 2.5 is the least that may be used.
const (
	TextSmall  = 2.5
	TextNormal = 3.5
	TextLarge  = 5.0
	TextHuge   = 7.0
)

// Anchor says which part of a text stands at its point. One of Left, Centre and
// Right may be joined with Middle or Top by |; without them the point is on the
// base line.
type Anchor uint8

// The anchors.
const (
	Left   Anchor = 0
	Centre Anchor = 1
	Right  Anchor = 2
	Middle Anchor = 4 // the middle of the capitals
	Top    Anchor = 8 // the top of the capitals
)

// label is a line of text on paper. at is its base line's left, middle or right
// end, by h.
type label struct {
	at   Point
	size float64 // height of capitals
	turn float64 // degrees, counter-clockwise
	h    Anchor  // Left, Centre or Right
	bold bool
	back bool // blanks what lies below
	s    string
}

// start returns the left end of the base line.
func (l label) start() Point {
	w := TextWidth(l.size, l.bold, l.s)
	s, c := math.Sincos(l.turn * math.Pi / 180)
	return l.at.sub(Point{w * float64(l.h) / 2, 0}.turn(s, c))
}

// corners returns the four corners of the letters' box, from below the base
// line (for the tails of g and y) to the top of the capitals, widened by pad
// except at the bottom, where a dimension line may be near.
func (l label) corners(pad float64) []Point {
	w := TextWidth(l.size, l.bold, l.s)
	s, c := math.Sincos(l.turn * math.Pi / 180)
	o := l.start()
	ring := Box{-pad, -0.25 * l.size, w + pad, l.size + pad}.Corners()
	for i := range ring {
		ring[i] = o.add(ring[i].turn(s, c))
	}
	return ring
}

func (l label) box() Box { return Bounds(l.corners(0)) }

// Text writes one line with capitals h mm high on paper.
func (p Pen) Text(at Point, h float64, a Anchor, s string) { p.write(at, h, 0, a, s, false, false) }

// Bold writes one line in the bold face.
func (p Pen) Bold(at Point, h float64, a Anchor, s string) { p.write(at, h, 0, a, s, true, false) }

// Turned writes one line turned by deg degrees, counter-clockwise.
func (p Pen) Turned(at Point, h, deg float64, a Anchor, s string) {
	p.write(at, h, deg, a, s, false, false)
}

// Label writes one line and blanks the paper below it, for text that must stand
// inside a hatched or shaded area.
func (p Pen) Label(at Point, h float64, a Anchor, s string) { p.write(at, h, 0, a, s, false, true) }

// TurnedLabel is Label turned by deg degrees, counter-clockwise.
func (p Pen) TurnedLabel(at Point, h, deg float64, a Anchor, s string) {
	p.write(at, h, deg, a, s, false, true)
}

func (p Pen) write(at Point, h, deg float64, a Anchor, s string, bold, back bool) {
	if s = strings.TrimSpace(s); s == "" {
		return
	}
	if strings.ContainsAny(s, "\n\r\t") {
		panic(fmt.Sprintf("drawing: text %q is more than one line: use Paragraph", s))
	}
	l := label{at: p.Paper(at), size: h, turn: deg, h: a & 3, bold: bold, back: back, s: s}
	down := 0.0
	if a&Middle != 0 {
		down = h / 2
	}
	if a&Top != 0 {
		down = h
	}
	sin, cos := math.Sincos(deg * math.Pi / 180)
	l.at = l.at.sub(Point{0, down}.turn(sin, cos))
	if back {
		p.s.over = append(p.s.over, item{kind: fill, shade: Paper, layer: p.layer,
			paths: []path{{l.corners(0.5), true}}})
	}
	p.s.over = append(p.s.over, item{kind: text, ink: p.ink, layer: p.layer, text: l})
}

// lead is the distance of base lines in heights of capitals.
const lead = 1.7

// Paragraph writes text in lines no wider than width mm, capitals h mm high,
// the top of the first capitals at the point, and returns the height in mm that
// it took. A newline in the text starts a new line.
func (p Pen) Paragraph(at Point, width, h float64, s string) float64 {
	lines := Wrap(s, width, h, false)
	o := p.Paper(at)
	for i, line := range lines {
		p.paper().Text(Point{o.X, o.Y - h - float64(i)*lead*h}, h, Left, line)
	}
	if len(lines) == 0 {
		return 0
	}
	return h * (1 + lead*float64(len(lines)-1) + 0.25)
}

// Wrap breaks text at spaces (a no-break space is none) into lines no wider than
// width mm. A single word that is wider is broken inside.
func Wrap(s string, width, h float64, bold bool) []string {
	var lines []string
	for _, para := range strings.Split(s, "\n") {
		line := ""
		for _, word := range strings.FieldsFunc(para, func(r rune) bool { return r == ' ' || r == '\t' }) {
			for TextWidth(h, bold, word) > width && len([]rune(word)) > 1 {
				if line != "" {
					lines, line = append(lines, line), ""
				}
				n := fitting(word, width, h, bold)
				lines, word = append(lines, string([]rune(word)[:n])), string([]rune(word)[n:])
			}
			switch {
			case line == "":
				line = word
			case TextWidth(h, bold, line+" "+word) <= width:
				line += " " + word
			default:
				lines, line = append(lines, line), word
			}
		}
		if line != "" {
			lines = append(lines, line)
		}
	}
	return lines
}

// fitting returns how many letters of a word fit the width, one at least.
func fitting(word string, width, h float64, bold bool) int {
	rs := []rune(word)
	n := len(rs)
	for n > 1 && TextWidth(h, bold, string(rs[:n])) > width {
		n--
	}
	return n
}
