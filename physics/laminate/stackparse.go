package laminate

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Bounds on what ParseStack reads. No boat comes near them; a file made to choke
// the program would.
const (
	maxStackText  = 500 // bytes
	maxStackPlies = 1000
	maxSetDepth   = 4
	maxCount      = 500
	maxDecimals   = 4 // of a degree
)

// StackError says what in the code of a lay-up can't be read, and where.
type StackError struct {
	Text string // the code as given, cut short if it is long
	At   int    // the place, in characters from 1
	What string // what is wrong
	Hint string // what to write instead; may be empty
}

// Error gives the text, the place, the fault, and the hint.
func (e *StackError) Error() string {
	message := fmt.Sprintf("lay-up code %q, character %d: %s", e.Text, e.At, e.What)
	if e.Hint != "" {
		message += " (" + e.Hint + ")"
	}
	return message
}

// ParseStack reads the code of a lay-up by the rules at Stack. The error is a
// *StackError that names the place. Spaces and degree signs are passed over.
//
// It promises: ParseStack(s.String()) gives s.
func ParseStack(text string) (s Stack, err error) {
	p := &stackParser{text: text}
	if len(text) > maxStackText {
		return Stack{}, p.fail(0, "longer than %d characters", maxStackText)
	}
	if !utf8.ValidString(text) {
		return Stack{}, p.fail(0, "not UTF-8 text")
	}
	defer func() { // the parser unwinds with its own error, and only with that
		if r := recover(); r != nil {
			fault, ours := r.(*StackError)
			if !ours {
				panic(r)
			}
			s, err = Stack{}, fault
		}
	}()
	return p.stack(), nil
}

func (p *stackParser) stack() Stack {
	if !p.take("[") {
		p.stop(p.pos, `as in "[0/90]s"`, `want "[", found %s`, p.found())
	}
	elements := p.list(0)
	if !p.take("]") {
		p.stop(p.pos, `plies are parted by "/" and closed by "]"`, `want "/" or "]", found %s`, p.found())
	}
	s := Stack{elements: elements, repeats: p.count(true)}
	switch {
	case p.take("s", "S"):
		s.symmetric = true
	case p.take("T", "t"):
	}
	if p.skip(); p.pos < len(p.text) {
		p.stop(p.pos, `after "]" may come a count and then s or T, as in "]2s"`, "found %s after the lay-up", p.found())
	}
	p.checkBar(s)
	if n := s.plyCount(); n > maxStackPlies {
		p.stop(0, "", "more than %d plies", maxStackPlies)
	}
	return s
}

// checkBar refuses an overbar that doesn't stand in the one place where it means something.
func (p *stackParser) checkBar(s Stack) {
	for i, e := range s.elements {
		if !e.bar {
			continue
		}
		switch {
		case !s.symmetric:
			p.stop(0, `write "]s", or drop the bar`, "a barred ply is cut by the middle of a symmetric lay-up, and this one isn't symmetric")
		case i != len(s.elements)-1:
			p.stop(0, "list it last", "a barred ply is the middle of the lay-up")
		case s.repeats > 1:
			p.stop(0, "write the plies out", "a repeated lay-up has more than one middle, so a barred ply could be read two ways")
		case e.count%2 == 0:
			p.stop(0, "leave the bar off and halve the count", "a barred ply with an even count has no middle ply")
		}
	}
}

func (s Stack) plyCount() int {
	n := s.repeats * countPlies(s.elements)
	if s.symmetric {
		n *= 2
	}
	return n
}

// countPlies counts without laying them out, and stops counting well above what is
// allowed: nested counts of 500 would pass what memory and then an int can hold.
func countPlies(elements []element) int {
	n := 0
	for _, e := range elements {
		one := 1
		if e.set != nil {
			one = countPlies(e.set)
		} else if e.pair {
			one = 2
		}
		n = min(n+one*e.count, 100*maxStackPlies)
	}
	return n
}

func (p *stackParser) list(depth int) []element {
	elements := []element{p.element(depth)}
	for p.take("/") {
		elements = append(elements, p.element(depth))
	}
	return elements
}

func (p *stackParser) element(depth int) element {
	p.skip()
	if start := p.pos; p.take("(") {
		if depth == maxSetDepth {
			p.stop(start, "", "sets nested deeper than %d", maxSetDepth)
		}
		return p.set(start, depth)
	}
	return p.ply(depth)
}

// set reads on from "(": a repeated set, or a woven ply written by its two directions.
func (p *stackParser) set(start, depth int) element {
	e := element{set: p.list(depth + 1)}
	if !p.take(")") {
		p.stop(p.pos, `a set is closed by ")"`, `want "/" or ")", found %s`, p.found())
	}
	if p.take("f", "w") {
		e = p.woven(start, e.set)
		e.bar = p.bar(depth)
	} else if p.skip(); strings.HasPrefix(p.text[p.pos:], "bar") {
		p.stop(p.pos, "bar the one ply that the middle cuts", "a set can't be barred")
	}
	e.count = p.count(true)
	return e
}

// woven turns the two directions inside (0/90)f or (+-45)f into one ply.
func (p *stackParser) woven(start int, inside []element) element {
	warp, weft := math.NaN(), math.NaN()
	if len(inside) == 1 && inside[0].pair && inside[0].count == 1 {
		warp, weft = inside[0].angle, -inside[0].angle
		if inside[0].minusFirst {
			warp, weft = weft, warp
		}
	}
	if len(inside) == 2 && inside[0].plain() && inside[1].plain() {
		warp, weft = inside[0].angle, inside[1].angle
	}
	if square := math.Abs(warp-weft) - 90; !(math.Abs(square) < 1e-9) { // NaN lands here too
		p.stop(start, `as in "(0/90)f" or "(+-45)f"`, "a woven ply is written by its warp and weft, 90 degrees apart")
	}
	return element{angle: warp, fabric: true, crossed: true}
}

func (e element) plain() bool {
	return e.set == nil && !e.pair && !e.fabric && !e.bar && e.count == 1
}

func (p *stackParser) ply(depth int) element {
	p.skip()
	start := p.pos
	e := element{bar: p.take(`\`)}
	minus := false
	switch {
	case p.take("+-", "±", "+/-"):
		e.pair = true
	case p.take("-+", "∓", "-/+"):
		e.pair, e.minusFirst = true, true
	case p.take("-", "−"): // hyphen, minus sign
		minus = true
	case p.take("+"):
	}
	e.angle = p.angle()
	if minus {
		e.angle = -e.angle
	}
	e.angle = acute(e.angle)
	e.fabric = p.take("f", "w")
	if e.bar && depth > 0 {
		p.stop(start, "list it last in the brackets", "a barred ply can't be part of a set")
	}
	e.bar = p.bar(depth) || e.bar
	countAt := p.pos
	e.count = p.count(false)
	if e.pair {
		p.checkPair(e, start, countAt)
	}
	return e
}

// checkPair refuses what +- could mean in two ways, or in none.
func (p *stackParser) checkPair(e element, start, countAt int) {
	a := strconv.FormatFloat(e.angle, 'f', -1, 64)
	switch {
	case e.angle == 0 || e.angle == 90:
		p.stop(start, fmt.Sprintf(`for two plies write "%s_2"`, a), "+ and - %s are the same direction", a)
	case e.fabric:
		p.stop(start, fmt.Sprintf(`write "(+-%s)f" for one woven ply, "(%[1]sf/-%[1]sf)" for two`, a), "a woven +-%s can be read two ways", a)
	case e.bar:
		p.stop(start, "bar a single ply", "+-%s is two plies, and the middle cuts only one", a)
	case e.count > 1:
		p.stop(countAt, fmt.Sprintf(`write "(+-%s)%d" for + - + -, "%[1]s_%[2]d/-%[1]s_%[2]d" for + + - -`, a, e.count), "a count on +-%s can be read two ways", a)
	}
}
