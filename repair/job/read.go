package job

import (
	"cmp"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/parser"
)

// Limits of a job file. The largest demo job has 4.3 kB and 5 levels; the limits
// leave room and still refuse a hostile file at once.
const (
	MaxBytes = 1 << 20
	MaxNodes = 10_000
	MaxDepth = 20
)

// Read reads a job file; see Parse.
func Read(name string, r io.Reader) (Description, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return Description{}, fmt.Errorf("reading job file %s: %w", name, err)
	}
	return Parse(name, data)
}

// Parse reads a job file strictly. Every problem found is returned in one
// *Errors, and then nothing is read: the Description is zero. The name is only
// used in messages.
//
// It goes from coarse to fine and stops after the first stage that finds
// something, because what a broken indent hides cannot be judged: bytes, then
// tokens, then YAML, then names and values, then the rules of Validate.
func Parse(name string, data []byte) (Description, error) {
	src, problems := screenBytes(data)
	var tree ast.Node
	if problems == nil {
		tree, problems = parseTree(src)
	}
	var d Description
	if problems == nil {
		d, problems = readTree(tree)
	}
	if problems == nil {
		return d, nil
	}
	slices.SortStableFunc(problems, func(a, b Problem) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
	})
	if len(problems) > maxProblems {
		problems = problems[:maxProblems]
	}
	return Description{}, &Errors{Name: name, Problems: problems, lines: strings.Split(src, "\n")}
}

// parseTree returns the one mapping the file must be.
func parseTree(src string) (tree ast.Node, problems []Problem) {
	// The YAML library is not ours. A panic of its on a strange file must not
	// take the workshop's server down, so here, and only here, it is caught.
	defer func() {
		if r := recover(); r != nil {
			tree, problems = nil, []Problem{{Line: 1, Column: 1, Code: CodeSyntax,
				Message: "This file cannot be read as YAML. Nothing was read."}}
		}
	}()
	tokens, problems := screenTokens(src)
	if problems != nil {
		return nil, problems
	}
	file, err := parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
	if err != nil {
		return nil, []Problem{syntaxProblem(err)}
	}
	for _, doc := range file.Docs {
		if doc.Body == nil {
			continue
		}
		if doc.Body.Type() == ast.CommentType {
			continue
		}
		if tree != nil {
			at := doc.Body.GetToken().Position
			return nil, []Problem{manyDocuments(at.Line, at.Column)}
		}
		tree = doc.Body
	}
	if tree == nil {
		return nil, []Problem{{Line: 1, Column: 1, Code: CodeMissing,
			Message: "This file is empty. A job file begins with 'format: 1'."}}
	}
	return tree, nil
}

// readTree reads names and values, then checks the rules.
func readTree(tree ast.Node) (Description, []Problem) {
	r := reader{places: map[string]place{}}
	var d Description
	if newer := newerFormat(tree); newer != nil {
		return d, []Problem{*newer}
	}
	r.read(reflect.ValueOf(&d).Elem(), layout, tree, spot{})
	if len(r.problems) > 0 {
		return Description{}, r.problems
	}
	problems := Validate(d)
	for i := range problems {
		at := r.nearest(problems[i].Path)
		problems[i].Line, problems[i].Column = at.line, at.column
		problems[i].Text = cmp.Or(problems[i].Text, at.text)
	}
	return d, problems
}

// newerFormat looks at the format before anything else: a newer file would
// otherwise be met with a heap of unknown names.
func newerFormat(tree ast.Node) *Problem {
	for _, e := range entries(tree) {
		if e.Key.String() != "format" {
			continue
		}
		n, err := parseCount(scalarText(e.Value))
		if err != nil || n <= Format {
			return nil
		}
		at := e.Value.GetToken().Position
		return &Problem{
			Line: at.Line, Column: at.Column, Path: "format", Text: scalarText(e.Value), Code: CodeFormat,
			Message: fmt.Sprintf("This file is format %d; this program reads up to %d. Update the program, or export the job as format %d.", n, Format, Format),
			Allowed: fmt.Sprintf("1 to %d", Format),
			Hint:    "Update the program.",
		}
	}
	return nil
}
