package job

import (
	"errors"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml"
	"github.com/goccy/go-yaml/token"
)

// add appends a problem of the token screen.
func (c *tokenScreen) add(line, column int, code, message string) {
	c.problems = append(c.problems, Problem{Line: line, Column: column, Code: code, Message: message})
}

// counts reports whether a token is a node of its own, not a mark between nodes.
func counts(t token.Type) bool {
	switch t {
	case token.MappingValueType, token.CollectEntryType, token.SequenceEndType, token.MappingEndType:
		return false
	}
	return true
}

// lineBreaks refuses a text that runs on over several lines without a | or >.
// YAML would join "- csm300" and a following, deeper "- csm450" into one text.
func (c *tokenScreen) lineBreaks(t *token.Token) bool {
	text := strings.TrimSpace(t.Origin)
	if c.block || !strings.Contains(text, "\n") {
		return true
	}
	if t.Type == token.LiteralType || t.Type == token.FoldedType {
		return true
	}
	// The library gives now the first and now the last line of such a text as
	// its place, so it is looked for in the source.
	first, _, _ := strings.Cut(text, "\n")
	start := 1
	if c.last != nil {
		start = c.last.Position.Line
	}
	for start < len(c.lines) && !strings.Contains(c.lines[start-1], strings.TrimSpace(first)) {
		start++
	}
	next := start + 1
	for next < len(c.lines) && blank(c.lines[next-1]) {
		next++
	}
	if next > len(c.lines) {
		next = len(c.lines)
	}
	switch body := strings.TrimSpace(c.lines[next-1]); {
	case t.Type == token.DoubleQuoteType || t.Type == token.SingleQuoteType:
		c.add(start, column(c.lines[start-1]), CodeSyntax, fmt.Sprintf("Line %d: a text in quotes must end on its own line. Is the closing quote missing?", start))
	case strings.HasPrefix(body, "- ") || strings.HasSuffix(body, ":") || strings.Contains(body, ": "):
		c.slip(next, column(c.lines[next-1]))
	default:
		c.add(next, column(c.lines[next-1]), CodeIndent, fmt.Sprintf("Line %d: the text of line %d runs on here. Keep it on one line, or begin a long text with > and indent its lines.", next, start))
	}
	return false
}

// indent checks that a line stands at the level of an earlier one, or one level
// deeper than a line that opens a level.
func (c *tokenScreen) indent(t *token.Token) bool {
	line, column := t.Position.Line, t.Position.Column
	if c.flow > 0 || c.block {
		return true
	}
	if c.last != nil && c.last.Position.Line == line {
		// "- what: frame": the name after the dash opens a level at its own column.
		if c.last.Type == token.SequenceEntryType {
			c.levels = append(c.levels, column)
		}
		return true
	}
	opened := c.last == nil || c.last.Type == token.MappingValueType || c.last.Type == token.SequenceEntryType ||
		c.last.Type == token.DocumentHeaderType
	dedent := false
	for len(c.levels) > 0 && c.levels[len(c.levels)-1] > column {
		c.levels, dedent = c.levels[:len(c.levels)-1], true
	}
	switch {
	case len(c.levels) > 0 && c.levels[len(c.levels)-1] == column:
		return true
	case opened && !dedent:
		c.levels = append(c.levels, column)
		return true
	case t.Type == token.DocumentHeaderType || t.Type == token.DocumentEndType:
		return true // refused elsewhere, with its own message
	}
	c.slip(line, column)
	return false
}

// slip reports an indent that fits no level.
func (c *tokenScreen) slip(line, column int) {
	before := line - 1
	for before > 1 && blank(c.lines[before-1]) {
		before--
	}
	c.problems = append(c.problems, Problem{
		Line: line, Column: column, Code: CodeIndent,
		Message: fmt.Sprintf("Line %d: the indent does not match line %d. Use two spaces.", line, before),
		Hint:    "Indent with two spaces a level.",
	})
}

// depth counts open brackets and levels.
func (c *tokenScreen) depth(t *token.Token) bool {
	switch t.Type {
	case token.SequenceStartType, token.MappingStartType:
		c.flow++
	case token.SequenceEndType, token.MappingEndType:
		c.flow = max(0, c.flow-1)
	}
	if c.flow+len(c.levels) <= MaxDepth {
		return true
	}
	c.add(t.Position.Line, t.Position.Column, CodeSize,
		fmt.Sprintf("This file is nested more than %d levels deep (line %d). Nothing was read.", MaxDepth, t.Position.Line))
	return false
}

// blank reports a line without content.
func blank(line string) bool {
	line = strings.TrimSpace(line)
	return line == "" || strings.HasPrefix(line, "#")
}

// column returns where a line's content begins, from 1.
func column(line string) int {
	return len(line) - len(strings.TrimLeft(line, " ")) + 1
}

func manyDocuments(line, column int) Problem {
	return Problem{Line: line, Column: column, Code: CodeYAML,
		Message: fmt.Sprintf("A job file holds one document; a second one begins in line %d. Keep one job in one file.", line)}
}

// syntaxProblem puts the library's complaint into plain words.
func syntaxProblem(err error) Problem {
	p := Problem{Line: 1, Column: 1, Code: CodeSyntax}
	why := "it cannot be read"
	if syntax := (*yaml.SyntaxError)(nil); errors.As(err, &syntax) {
		why = syntax.Message
		if syntax.Token != nil && syntax.Token.Position != nil {
			p.Line, p.Column = syntax.Token.Position.Line, max(1, syntax.Token.Position.Column)
		}
	}
	p.Message = fmt.Sprintf("Line %d: this is not YAML: %s. Nothing was read.", p.Line, plainWhy(why))
	return p
}

// invalidWhy is the same for a token the library could not form.
func invalidWhy(t *token.Token) string { return plainWhy(t.Error) }

func plainWhy(why string) string {
	for _, w := range [...]struct{ part, plain string }{
		{"mapping value is not allowed", "a second ': ' stands on the line; put a text with a colon in quotes"},
		{"end character of double-quoted", "the closing quote is missing"},
		{"end character of single-quoted", "the closing quote is missing"},
		{"',' or ']'", "a list in [ ] is not closed"},
		{"sequence end token ']'", "a list in [ ] is not closed"},
		{"',' or '}'", "a group in { } is not closed"},
		{"mapping end token '}'", "a group in { } is not closed"},
		{"non-map value is specified", "a line has no 'name: value'"},
		{"unexpected key name", "a line has no 'name: value'"},
		{"block sequence entries are not allowed", "a list's first '- item' belongs on a line of its own"},
		{"cannot start any token", "a character here cannot begin a text; put the text in quotes"},
		{"value is not allowed in this context", "this line does not belong to the one above; look at the indents"},
	} {
		if strings.Contains(why, w.part) {
			return w.plain
		}
	}
	return strings.TrimRight(shorten(why), ".")
}
