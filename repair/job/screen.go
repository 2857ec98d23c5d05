package job

import (
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/scanner"
	"github.com/goccy/go-yaml/token"
)

// This file looks at a job file before anything is understood: first its bytes,
// then its tokens. It keeps out what YAML can do and job files do without
// (anchors, tags, several documents), what only a hostile file does (a megabyte,
// a thousand levels), and the slips of a typing person that YAML itself takes for
// something else: an item indented by one space too many is, to YAML, a
// continued line.

// maxLine bounds one line, in bytes: the library's time for one token grows with it.
const maxLine = 10_000

// screenBytes returns the text with \n line ends, or what is wrong with it.
func screenBytes(data []byte) (string, []Problem) {
	if len(data) > MaxBytes {
		return "", []Problem{{Line: 1, Column: 1, Code: CodeSize,
			Message: "This file is larger than 1 MB. A job file has some kilobytes. Nothing was read.",
			Allowed: "at most 1 MB"}}
	}
	if strings.HasPrefix(string(data[:min(3, len(data))]), "\ufeff") {
		return "", []Problem{{Line: 1, Column: 1, Code: CodeEncoding,
			Message: "Line 1: the file begins with a byte-order mark. Save it as UTF-8 without one.",
			Hint:    "Save the file as UTF-8 without a byte-order mark."}}
	}
	src := strings.ReplaceAll(string(data), "\r\n", "\n")
	if strings.Count(src, "\n") > MaxNodes {
		return "", []Problem{{Line: MaxNodes + 1, Column: 1, Code: CodeSize,
			Message: "This file has more than 10,000 lines. Nothing was read.",
			Allowed: "at most 10,000 lines"}}
	}
	var problems []Problem
	report := func(line, column int, code, message, hint string) {
		problems = append(problems, Problem{Line: line, Column: column, Code: code,
			Message: fmt.Sprintf("Line %d: %s", line, message), Hint: hint})
	}
	n := 0
	for line := range strings.SplitSeq(src, "\n") {
		n++
		if len(problems) >= maxProblems {
			break
		}
		if len(line) > maxLine {
			report(n, 1, CodeSize, "the line is longer than 10,000 characters. Nothing was read.", "Begin a long text with > and break it into lines.")
			continue
		}
		column, indent := 0, true
	characters:
		for i, r := range line {
			column++
			switch {
			case r == utf8.RuneError && !strings.HasPrefix(line[i:], "\ufffd"):
				report(n, column, CodeEncoding, "a character here is not UTF-8. Save the file as UTF-8.", "Save the file as UTF-8.")
				break characters
			case forbidden(r):
				report(n, column, CodeEncoding, fmt.Sprintf("a hidden or control character stands here (U+%04X). Delete it.", r), "Delete the character and type the line again.")
				break characters
			case r == '\t' && indent:
				report(n, column, CodeIndent, "a tab is used to indent. Use two spaces.", "Replace each tab by two spaces.")
				break characters
			case r != ' ':
				indent = false
			}
		}
	}
	return src, problems
}

// screenTokens returns the file's tokens, or what is wrong with them.
//
// The YAML library hands out its tokens only when it has scanned the whole text,
// and a hostile megabyte takes it a quarter of a second. So a growing part of
// the text is scanned first, and a part that passes a limit settles the matter.
func screenTokens(src string) (token.Tokens, []Problem) {
	lines := strings.Split(src, "\n")
	for part := 32 << 10; part < len(src); part *= 4 {
		// A text cut short has faults the whole one has not, such as an open
		// quote; only its size is judged.
		_, problems := scan(src[:part], lines)
		for _, p := range problems {
			if p.Code == CodeSize {
				return nil, problems
			}
		}
	}
	return scan(src, lines)
}

// scan looks at the tokens of a text one by one and stops where one is refused.
func scan(src string, lines []string) (token.Tokens, []Problem) {
	var s scanner.Scanner
	s.Init(src)
	c := tokenScreen{lines: lines}
	var tokens token.Tokens
	for {
		next, err := s.Scan()
		if errors.Is(err, io.EOF) {
			break
		}
		for _, t := range next {
			if !c.look(t) {
				return nil, c.problems
			}
		}
		tokens.Add(next...)
		if err != nil && len(next) == 0 {
			break
		}
	}
	return tokens, c.problems
}

// tokenScreen looks at one token after another.
type tokenScreen struct {
	lines    []string
	problems []Problem
	nodes    int
	flow     int          // open brackets
	levels   []int        // columns of the block levels open now
	last     *token.Token // the last token that is not a comment
	block    bool         // the next text is the body of a | or > text
}

// look returns false when scanning must stop.
func (c *tokenScreen) look(t *token.Token) bool {
	line, column := t.Position.Line, t.Position.Column
	switch t.Type {
	case token.InvalidType:
		c.add(line, column, CodeSyntax, fmt.Sprintf("Line %d: this is not YAML: %s. Nothing was read.", line, invalidWhy(t)))
		return false
	case token.AnchorType, token.AliasType:
		c.add(line, column, CodeYAML, fmt.Sprintf("Job files may not use YAML anchors (line %d).", line))
		return false
	case token.MergeKeyType:
		c.add(line, column, CodeYAML, fmt.Sprintf("Job files may not use YAML merge keys (line %d).", line))
		return false
	case token.TagType:
		c.add(line, column, CodeYAML, fmt.Sprintf("Job files may not use YAML tags (line %d). Put a text that begins with ! in quotes.", line))
		return false
	case token.DirectiveType:
		c.add(line, column, CodeYAML, fmt.Sprintf("Job files may not use YAML directives (line %d).", line))
		return false
	case token.MappingKeyType:
		c.add(line, column, CodeYAML, fmt.Sprintf("Line %d: a name may not begin with '?'. Write 'name: value'.", line))
		return false
	case token.DocumentHeaderType, token.DocumentEndType:
		if c.last != nil {
			c.problems = append(c.problems, manyDocuments(line, column))
			return false
		}
	}
	if counts(t.Type) {
		if c.nodes++; c.nodes > MaxNodes {
			c.add(line, column, CodeSize, fmt.Sprintf("This file has more than 10,000 entries (line %d). Nothing was read.", line))
			return false
		}
	}
	if t.Type == token.CommentType {
		return true
	}
	ok := c.lineBreaks(t) && c.indent(t) && c.depth(t)
	c.block = t.Type == token.LiteralType || t.Type == token.FoldedType
	c.last = t
	return ok
}
