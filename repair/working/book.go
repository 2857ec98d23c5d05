package working

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Book is a chain of lines that a person follows with a pocket calculator: numbers
// given, and numbers worked from them and from earlier lines.
//
// A worked line is one formula in the symbols of earlier lines. The book computes it
// from their values as they are printed, so that whoever has only the paper comes to
// the same digits; it writes the numbers put in by itself. The first thing that is
// wrong (a symbol not known or defined twice, a formula that cannot be read, a number
// that is none) stops the book: Err says which line.
type Book struct {
	Entries []Entry
	values  map[string]string // printed, by symbol
	used    map[string]bool
	section string
	err     error
}

// Entry is one line of a book.
type Entry struct {
	ID      string  // "L7"
	Section string  //
	Symbol  string  //
	What    string  // in words
	Formula string  // in symbols; empty for a given number
	Numbers string  // the same with the numbers put in
	Value   float64 // as computed
	Printed string  // the value as it stands on the paper and goes on from there
	Unit    string
	Source  string
	Verdict string // against a limit, in words; empty where there is none
}

// digits of a printed value: enough that rounding does not show in three.
const digits = 5

// Section begins a section.
func (b *Book) Section(name string) { b.section = name }

// Err returns the first thing that was wrong, nil for none.
func (b *Book) Err() error { return b.err }

func (b *Book) fail(symbol, format string, args ...any) {
	if b.err == nil {
		b.err = fmt.Errorf("line of %s: %s", symbol, fmt.Sprintf(format, args...))
	}
}

// Given takes in a number with its unit and where it comes from.
func (b *Book) Given(symbol, what string, value float64, unit, source string) {
	b.add(Entry{Symbol: symbol, What: what, Value: value, Unit: unit, Source: source})
}

// Work computes a line from earlier ones and returns its value.
func (b *Book) Work(symbol, what, formula, unit, source string) float64 {
	if b.err != nil {
		return math.NaN()
	}
	e := Entry{Symbol: symbol, What: what, Formula: formula, Unit: unit, Source: source}
	v, numbers, err := b.evaluate(formula)
	if err != nil {
		b.fail(symbol, "%v", err)
		return math.NaN()
	}
	e.Value, e.Numbers = v, numbers
	b.add(e)
	return v
}

// Against gives the last line a verdict.
func (b *Book) Against(verdict string) {
	if n := len(b.Entries); n > 0 {
		b.Entries[n-1].Verdict = verdict
	}
}

func (b *Book) add(e Entry) {
	if b.err != nil {
		return
	}
	if b.values == nil {
		b.values, b.used = map[string]string{}, map[string]bool{}
	}
	switch _, twice := b.values[e.Symbol]; {
	case twice:
		b.fail(e.Symbol, "the symbol is defined twice")
		return
	case !name(e.Symbol):
		b.fail(e.Symbol, "%q is no symbol: a letter, then letters, digits and _", e.Symbol)
		return
	case math.IsNaN(e.Value) || math.IsInf(e.Value, 0):
		b.fail(e.Symbol, "the value is %v", e.Value)
		return
	}
	e.ID, e.Section = fmt.Sprintf("L%d", len(b.Entries)+1), b.section
	e.Printed = Num(e.Value, digits)
	if strings.Contains(e.Printed, ".") && !strings.Contains(e.Printed, "e") {
		e.Printed = strings.TrimRight(strings.TrimRight(e.Printed, "0"), ".")
	}
	b.values[e.Symbol] = e.Printed
	b.Entries = append(b.Entries, e)
}

// Orphans lists the symbols of given numbers that no line uses.
func (b *Book) Orphans() (out []string) {
	for _, e := range b.Entries {
		if e.Formula == "" && !b.used[e.Symbol] {
			out = append(out, e.Symbol)
		}
	}
	return out
}

func name(s string) bool {
	for i, c := range s {
		letter := c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z'
		if !letter && (i == 0 || c != '_' && (c < '0' || c > '9')) {
			return false
		}
	}
	return s != ""
}

var errEnd = errors.New("the formula ends too soon")

// evaluate reads a formula: + - * / ^ with the usual order (^ binds tightest and to
// the right), parentheses, sqrt, min, max, abs of one or more arguments, pi, numbers
// and symbols.
func (b *Book) evaluate(formula string) (v float64, numbers string, err error) {
	p := &reader{b: b, rest: formula}
	v = p.sum()
	if p.err == nil && p.peek() != 0 {
		p.err = fmt.Errorf("%q cannot be read from %q on", formula, p.rest)
	}
	if p.err == nil && (math.IsNaN(v) || math.IsInf(v, 0)) {
		p.err = fmt.Errorf("%s is no number", p.out.String())
	}
	return v, p.out.String(), p.err
}

type reader struct {
	b    *Book
	rest string
	out  strings.Builder
	err  error
}

// peek returns the next character that is no space, 0 at the end.
func (p *reader) peek() byte {
	p.rest = strings.TrimLeft(p.rest, " ")
	if p.rest == "" || p.err != nil {
		return 0
	}
	return p.rest[0]
}

// take passes the next character on to the numbers.
func (p *reader) take(as string) {
	p.rest = p.rest[1:]
	p.out.WriteString(as)
}

func (p *reader) sum() float64 {
	v := p.product()
	for {
		switch p.peek() {
		case '+':
			p.take(" + ")
			v += p.product()
		case '-':
			p.take(" - ")
			v -= p.product()
		default:
			return v
		}
	}
}

func (p *reader) product() float64 {
	v := p.power()
	for {
		switch p.peek() {
		case '*':
			p.take(" × ")
			v *= p.power()
		case '/':
			p.take(" / ")
			v /= p.power()
		default:
			return v
		}
	}
}

func (p *reader) power() float64 {
	if p.peek() == '-' {
		p.take("-")
		return -p.power()
	}
	v := p.atom()
	if p.peek() == '^' {
		p.take("^")
		return math.Pow(v, p.power())
	}
	return v
}

func (p *reader) atom() float64 {
	c := p.peek()
	switch {
	case c == 0:
		if p.err == nil {
			p.err = errEnd
		}
		return 0
	case c == '(':
		p.take("(")
		v := p.sum()
		p.close()
		return v
	case c >= '0' && c <= '9' || c == '.':
		n := 0
		for n < len(p.rest) && (p.rest[n] >= '0' && p.rest[n] <= '9' || p.rest[n] == '.') {
			n++
		}
		if n+2 < len(p.rest) && p.rest[n] == 'e' && (p.rest[n+1] == '-' || p.rest[n+1] == '+') { // as Num prints the very small
			for n += 2; n < len(p.rest) && p.rest[n] >= '0' && p.rest[n] <= '9'; n++ {
			}
		}
		v, err := strconv.ParseFloat(p.rest[:n], 64)
		if err != nil {
			p.err = err
		}
		p.out.WriteString(p.rest[:n])
		p.rest = p.rest[n:]
		return v
	}
	n := 0
	for n < len(p.rest) && name(p.rest[:n+1]) {
		n++
	}
	word := p.rest[:n]
	p.rest = p.rest[n:]
	if word == "" {
		p.err = fmt.Errorf("%q is not understood", string(c))
		return 0
	}
	if p.peek() == '(' {
		return p.function(word)
	}
	if word == "pi" {
		p.out.WriteString("3.14159")
		return 3.14159
	}
	printed, ok := p.b.values[word]
	if !ok {
		p.err = fmt.Errorf("%q is not defined before this line", word)
		return 0
	}
	p.b.used[word] = true
	v, err := strconv.ParseFloat(printed, 64)
	if err != nil {
		p.err = err
	}
	if v < 0 {
		printed = "(" + printed + ")"
	}
	p.out.WriteString(printed)
	return v
}

func (p *reader) close() {
	if p.peek() != ')' {
		if p.err == nil {
			p.err = errors.New("a parenthesis is not closed")
		}
		return
	}
	p.take(")")
}

func (p *reader) function(word string) float64 {
	p.out.WriteString(word)
	p.take("(")
	args := []float64{p.sum()}
	for p.peek() == ',' {
		p.take(", ")
		args = append(args, p.sum())
	}
	p.close()
	v := args[0]
	switch {
	case word == "sqrt" && len(args) == 1:
		return math.Sqrt(v)
	case word == "abs" && len(args) == 1:
		return math.Abs(v)
	case word == "min" || word == "max":
		for _, a := range args[1:] {
			if word == "min" {
				v = min(v, a)
			} else {
				v = max(v, a)
			}
		}
		return v
	}
	if p.err == nil {
		p.err = fmt.Errorf("%s of %d numbers is not known", word, len(args))
	}
	return 0
}
