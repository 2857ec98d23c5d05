package laminate

import (
	"math"
	"strconv"
	"strings"

	"scarfwright/physics/si"
)

// Stack is the code of a lay-up, as written: "[0/+-45/90]2s". The zero Stack has no
// plies; others come from ParseStack.
//
// The rules of the code are those of TM-1-1500 par. 5-7 (US Army, public), which
// names ASTM D6507 and CMH-17 as its origin; those two were not read. It is:
//
//	[0/90]       plies from the first one laid, a slash between, brackets round
//	45, -45      degrees, counter-clockwise looking at the mould; -90 to 90
//	[0_2/90]     subscript: two plies at 0 (also 0:2)
//	+-45         two plies, +45 laid first, then -45; -+45 the other way (also with one sign over the other)
//	(0/90)2      a set, laid twice
//	[0/90]s      symmetric: the half written, then its mirror image
//	[0/90bar]s   overbar: the ply that the middle cuts in two, laid once (also \90)
//	[0/90bar_3]s three plies in the middle: so many half plies on each side
//	[0/90]T      the total is written; taken for granted without
//	[0/90]2s     the bracket's contents twice, then the mirror image
//	30f          a woven ply, its warp at 30 degrees
//	(+-45)f      one woven ply, warp at +45, weft at -45; so too (0/90)f
//
// What could be read two ways is refused with the two ways to write it: "+-45_2"
// and "+-45f". The spellings _, :, bar and \ stand in for small and barred type;
// the colon and backslash are those of MIL-HDBK-17 (from memory).
type Stack struct {
	elements  []element
	repeats   int
	symmetric bool
}

// element is one entry between slashes.
type element struct {
	angle      float64 // degrees, as written, -90 < angle <= 90; the warp of a woven ply
	pair       bool    // +-angle, two plies; minusFirst turns their order
	minusFirst bool
	fabric     bool // woven
	crossed    bool // woven, written by both directions: (0/90)f
	bar        bool // laid once in a symmetric stack
	count      int
	set        []element // not nil: a set in parentheses, and only count counts beside it
}

// StackPly is one ply of a Stack.
type StackPly struct {
	Angle  si.Angle
	Fabric bool // woven: Angle is its warp
}

// Sequence returns every ply from the first laid to the last, repeats and mirror
// image written out.
func (s Stack) Sequence() []StackPly {
	var half, middle []StackPly
	for range s.repeats {
		for _, e := range s.elements {
			if e.bar {
				middle = e.appendTo(middle)
			} else {
				half = e.appendTo(half)
			}
		}
	}
	if !s.symmetric {
		return half
	}
	all := append(append([]StackPly{}, half...), middle...)
	for i := len(half) - 1; i >= 0; i-- {
		all = append(all, half[i])
	}
	return all
}

func (e element) appendTo(plies []StackPly) []StackPly {
	for range e.count {
		switch {
		case e.set != nil:
			for _, inner := range e.set {
				plies = inner.appendTo(plies)
			}
		case e.pair:
			first, second := e.angle, -e.angle
			if e.minusFirst {
				first, second = second, first
			}
			plies = append(plies, StackPly{Angle: si.Degrees(first)}, StackPly{Angle: si.Degrees(second)})
		default:
			plies = append(plies, StackPly{si.Degrees(e.angle), e.fabric})
		}
	}
	return plies
}

// Angles returns the direction of every ply from the first laid to the last.
func (s Stack) Angles() []si.Angle {
	sequence := s.Sequence()
	angles := make([]si.Angle, len(sequence))
	for i, p := range sequence {
		angles[i] = p.Angle
	}
	return angles
}

// Plies returns the laminate with this stack, all its plies of one lamina and
// thickness. A woven ply is then as good as the lamina says it is.
func (s Stack) Plies(l Lamina, thickness si.Length) []Ply {
	angles := s.Angles()
	plies := make([]Ply, len(angles))
	for i, a := range angles {
		plies[i] = Ply{l, thickness, a}
	}
	return plies
}

// Mirrored returns the stack as it reads on the other side's clock: every sign
// turned, the order of the plies kept. Seen from outside the hull, +45 is -45.
func (s Stack) Mirrored() Stack {
	s.elements = mirrored(s.elements)
	return s
}

func mirrored(elements []element) []element {
	out := make([]element, len(elements))
	for i, e := range elements {
		switch {
		case e.set != nil:
			e.set = mirrored(e.set)
		case e.pair:
			e.minusFirst = !e.minusFirst
		default:
			e.angle = acute(-e.angle)
		}
		out[i] = e
	}
	return out
}

// acute brings an angle in degrees into -90 < a <= 90: a fibre has no front end.
func acute(a float64) float64 {
	if a <= -90 {
		a += 180
	}
	if a > 90 {
		a -= 180
	}
	return a + 0 // no minus nought
}

// String returns the code in one spelling, which ParseStack reads back as the same
// Stack: plain ASCII, no spaces, no T, +- and bar spelt out. The structure stays as
// it was written: [0/0] doesn't turn into [0_2].
func (s Stack) String() string {
	var b strings.Builder
	b.WriteByte('[')
	writeElements(&b, s.elements)
	b.WriteByte(']')
	if s.repeats > 1 {
		b.WriteString(strconv.Itoa(s.repeats))
	}
	if s.symmetric {
		b.WriteByte('s')
	}
	return b.String()
}

func writeElements(b *strings.Builder, elements []element) {
	for i, e := range elements {
		if i > 0 {
			b.WriteByte('/')
		}
		e.write(b)
	}
}

func (e element) write(b *strings.Builder) {
	number := func(a float64) string { return strconv.FormatFloat(a, 'f', -1, 64) }
	// Rounded, because 0.1 - 90 isn't -89.9 to the last digit.
	const grain = 1e4 // maxDecimals
	weft := math.Round(acute(e.angle+90)*grain) / grain
	switch {
	case e.set != nil:
		b.WriteByte('(')
		writeElements(b, e.set)
		b.WriteByte(')')
		if e.count > 1 {
			b.WriteString(strconv.Itoa(e.count))
		}
		return
	case e.pair && e.minusFirst:
		b.WriteString("-+" + number(e.angle))
	case e.pair:
		b.WriteString("+-" + number(e.angle))
	case e.crossed && weft == -e.angle && e.angle < 0:
		b.WriteString("(-+" + number(-e.angle) + ")")
	case e.crossed && weft == -e.angle:
		b.WriteString("(+-" + number(e.angle) + ")")
	case e.crossed:
		b.WriteString("(" + number(e.angle) + "/" + number(weft) + ")")
	default:
		b.WriteString(number(e.angle))
	}
	if e.fabric {
		b.WriteByte('f')
	}
	if e.bar {
		b.WriteString("bar")
	}
	if e.count > 1 {
		b.WriteString("_" + strconv.Itoa(e.count))
	}
}

// MarshalText writes the code, so that a Stack prints as text in JSON and YAML.
func (s Stack) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the code.
func (s *Stack) UnmarshalText(text []byte) error {
	read, err := ParseStack(string(text))
	if err != nil {
		return err
	}
	*s = read
	return nil
}
