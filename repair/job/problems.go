package job

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// Problem is one thing wrong with a job file, or with a Description.
type Problem struct {
	Line    int    // from 1; 0 where there is no file
	Column  int    // from 1, in characters
	Path    string // "laminate.plies[2]", items counted from 0
	Text    string // what stood there, shortened
	Message string // a whole sentence for the person who wrote the file
	Allowed string // what may stand there, where that can be said
	Hint    string // what to do next
	Code    string // one of the constants below
}

// One code for each rule a file can break.
const (
	CodeEncoding  = "encoding"  // not UTF-8, a byte-order mark, a control character
	CodeSize      = "size"      // too many bytes, nodes or levels
	CodeIndent    = "indent"    // a tab, a slipped indent
	CodeYAML      = "yaml"      // a YAML feature job files do without: anchors, tags, several documents
	CodeSyntax    = "syntax"    // not YAML at all
	CodeFormat    = "format"    // written by a newer program
	CodeUnknown   = "unknown"   // a name that is not in the format
	CodeDuplicate = "duplicate" // a name given twice
	CodeMissing   = "missing"   // a required name left out, or a name without a value
	CodeKind      = "kind"      // a list where a group of names belongs, and the like
	CodeNumber    = "number"    // not a plain finite number
	CodeUnit      = "unit"      // no unit, a wrong or an ambiguous one
	CodeRange     = "range"     // outside the limits of the field
	CodeWord      = "word"      // not one of the words allowed
	CodeText      = "text"      // a date, a ply, a point that cannot be read
	CodeRule      = "rule"      // fields that contradict each other
)

// Errors is every problem found in one file, in the order of its lines.
type Errors struct {
	Name     string // of the file, as given to Parse
	Problems []Problem

	lines []string // of the source, for the excerpt
}

// maxProblems bounds the list: a file of another sort than ours would bury the
// reader, and the memory, in complaints.
const maxProblems = 100

// Error prints each problem as "file:line:column: message" with the line it is
// about and a caret under the place.
func (e *Errors) Error() string {
	var b strings.Builder
	for i, p := range e.Problems {
		if i > 0 {
			b.WriteByte('\n')
		}
		fmt.Fprintf(&b, "%s:%d:%d: %s", e.Name, p.Line, p.Column, p.Message)
		if x := e.Excerpt(p); x != "" {
			b.WriteByte('\n')
			b.WriteString(x)
		}
	}
	return b.String()
}

// Excerpt returns the source line a problem is about, numbered, and a caret
// under the place on the next line; "" where the line is not known.
func (e *Errors) Excerpt(p Problem) string {
	if p.Line < 1 || p.Line > len(e.lines) {
		return ""
	}
	// A line is shown through a window, for it may be a megabyte long.
	const before, window = 60, 100
	line := []rune(e.lines[p.Line-1][:min(len(e.lines[p.Line-1]), 4096)])
	at := min(max(p.Column-1, 0), len(line))
	from := max(0, at-before)
	to := min(len(line), from+window)
	shown := strings.Map(printable, string(line[from:to]))
	return fmt.Sprintf("%5d | %s\n      | %s^", p.Line, shown, strings.Repeat(" ", at-from))
}

// printable keeps one character one column wide, so that the caret stands right,
// and keeps a hostile file from steering the terminal.
func printable(r rune) rune {
	switch {
	case r == '\t':
		return ' '
	case forbidden(r) || r == utf8.RuneError:
		return '?'
	}
	return r
}

// forbidden reports control characters and the marks that turn text round or
// hide in it; none belongs in a job file, and some deceive the eye.
func forbidden(r rune) bool {
	switch {
	case r == '\n' || r == '\t':
		return false
	case r < 0x20 || r >= 0x7f && r < 0xa0:
		return true
	case r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069:
		return true
	case r == 0x2028 || r == 0x2029 || r == 0xfeff || r == 0xfffe || r == 0xffff:
		return true
	}
	return false
}

// shorten returns s on one line and at most 60 characters long.
func shorten(s string) string { return shortenTo(s, 60) }

func shortenTo(s string, most int) string {
	cut := len(s) > 4*most
	if cut {
		s = s[:4*most]
	}
	s = strings.Map(printable, strings.ReplaceAll(s, "\n", " "))
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "..."
	}
	if cut {
		return s + "..."
	}
	return s
}

// spoken returns a key as the subject of a sentence: "blister_frame" is
// "Blister frame".
func spoken(key string) string {
	key = strings.ReplaceAll(key, "_", " ")
	if key == "" {
		return "The value"
	}
	return strings.ToUpper(key[:1]) + key[1:]
}

// listed joins words for a sentence: "a, b or c".
func listed(words []string) string {
	switch n := len(words); n {
	case 0:
		return ""
	case 1:
		return words[0]
	default:
		return strings.Join(words[:n-1], ", ") + " or " + words[n-1]
	}
}

// nearest returns the word of the list that was most likely meant, or "". A word
// is near when about a third of it at most has to be changed, or when it is the
// start of what was typed ("thickness_mm").
func nearest(typed string, words []string) string {
	if len(typed) > 60 {
		return ""
	}
	typed = strings.ToLower(typed)
	best, least := "", 1000
	for _, w := range words {
		d := distance(typed, w)
		if len(w) >= 4 && strings.HasPrefix(typed, w) {
			d = min(d, 2)
		}
		if d <= max(1, max(len(w), len(typed))/3) && d < least {
			best, least = w, d
		}
	}
	return best
}

// distance counts the single letters to add, drop, change or swap with their
// neighbour to turn a into b (optimal string alignment; common practice in
// spelling checkers, from memory).
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	d := make([][]int, len(s)+1)
	for i := range d {
		d[i] = make([]int, len(t)+1)
		d[i][0] = i
	}
	for j := range d[0] {
		d[0][j] = j
	}
	for i := 1; i <= len(s); i++ {
		for j := 1; j <= len(t); j++ {
			change := 1
			if s[i-1] == t[j-1] {
				change = 0
			}
			d[i][j] = min(d[i-1][j]+1, d[i][j-1]+1, d[i-1][j-1]+change)
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				d[i][j] = min(d[i][j], d[i-2][j-2]+1)
			}
		}
	}
	return d[len(s)][len(t)]
}
