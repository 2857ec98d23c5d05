package laminate

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The small parts of a lay-up code: marks, angles, counts, and the error that
// stops the reading.

type stackParser struct {
	text string
	pos  int // in bytes
}

func (p *stackParser) fail(at int, format string, args ...any) *StackError {
	shown := p.text
	if len(shown) > 80 {
		shown = strings.ToValidUTF8(shown[:80], "") + "..."
	}
	return &StackError{Text: shown, At: utf8.RuneCountInString(p.text[:at]) + 1, What: fmt.Sprintf(format, args...)}
}

// stop unwinds to ParseStack.
func (p *stackParser) stop(at int, hint, format string, args ...any) {
	e := p.fail(at, format, args...)
	e.Hint = hint
	panic(e)
}

func (p *stackParser) skip() {
	for {
		rest := strings.TrimLeft(p.text[p.pos:], " \t\u00a0\u00b0") // spaces and degree signs
		if len(rest) == len(p.text)-p.pos {
			return
		}
		p.pos = len(p.text) - len(rest)
	}
}

// take passes over the first of the spellings that comes next and reports whether one did.
func (p *stackParser) take(spellings ...string) bool {
	p.skip()
	for _, s := range spellings {
		if strings.HasPrefix(p.text[p.pos:], s) {
			p.pos += len(s)
			return true
		}
	}
	return false
}

// found describes what stands at the reading place, for messages.
func (p *stackParser) found() string {
	p.skip()
	if p.pos == len(p.text) {
		return "the end of the text"
	}
	r, _ := utf8.DecodeRuneInString(p.text[p.pos:])
	return strconv.QuoteRune(r)
}

func (p *stackParser) bar(depth int) bool {
	start := p.pos
	if !p.take("bar") {
		return false
	}
	if depth > 0 {
		p.stop(start, "list it last in the brackets", "a barred ply can't be part of a set")
	}
	return true
}

// angle reads digits, at most one decimal point among them.
func (p *stackParser) angle() float64 {
	p.skip()
	start := p.pos
	for p.pos < len(p.text) && (isDigit(p.text[p.pos]) || p.text[p.pos] == '.') {
		p.pos++
	}
	word := p.text[start:p.pos]
	if word == "" {
		hint := ""
		if strings.ContainsRune("+-±∓", firstRune(p.text[start:])) {
			hint = `"+-45" is +45 laid first, then -45; more than two signs are written as a set, "(+-45)2"`
		}
		p.stop(start, hint, "want an angle in degrees, found %s", p.found())
	}
	if plain := strings.TrimLeft(word, "0"); len(plain) < len(word) && plain != "" && plain[0] != '.' {
		// In print the small 2 of two plies at 0 stands below the line; typed plainly it reads as 2 degrees.
		p.stop(start, fmt.Sprintf(`two plies at 0 are "0_2"; %s degrees are "%s"`, plain, plain), "%q can be read two ways", word)
	}
	a, err := strconv.ParseFloat(word, 64)
	_, decimals, _ := strings.Cut(word, ".")
	if err != nil || len(word) > 12 || len(decimals) > maxDecimals {
		p.stop(start, fmt.Sprintf(`as in "45" or "22.5", at most %d decimals`, maxDecimals), "%q is not an angle", word)
	}
	if p.pos < len(p.text) && p.text[p.pos] == ',' {
		p.stop(p.pos, `plies are parted by "/", and decimals take a point`, `found ","`)
	}
	if a > 90 {
		p.stop(start, "turn it by 180: 135 is -45", "an angle of %s degrees is outside -90 to 90", word)
	}
	return a
}

// count reads a subscript, 1 when there is none. After a bracket the mark before it
// may be missing: ]2s, )2.
func (p *stackParser) count(bare bool) int {
	p.skip()
	start := p.pos
	marked := p.take("_", ":")
	p.skip()
	if rest := p.text[p.pos:]; marked && len(rest) > 0 && strings.ContainsRune("sST", rune(rest[0])) {
		return 1 // "]_s" and "]:s": the mark belongs to the letter
	}
	if !marked && !bare {
		return 1
	}
	digits := p.pos
	for p.pos < len(p.text) && isDigit(p.text[p.pos]) {
		p.pos++
	}
	word := p.text[digits:p.pos]
	if word == "" && !marked {
		return 1
	}
	n, err := strconv.Atoi(word)
	if err != nil || n < 1 || n > maxCount {
		p.stop(start, `as in "0_2"`, "want a count from 1 to %d, found %q", maxCount, word)
	}
	return n
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

func firstRune(s string) rune {
	r, _ := utf8.DecodeRuneInString(s)
	return r
}
