package job

import (
	"fmt"
	"reflect"
	"strconv"
	"strings"

	"github.com/goccy/go-yaml/ast"
)

// reader walks the YAML tree and the layout side by side. It goes on after a
// problem, so that one run shows all of them.
type reader struct {
	problems []Problem
	places   map[string]place // where each path stands in the file
}

// place is where a value stands and what it says.
type place struct {
	line, column int
	text         string
}

// spot is the way to a value: its path and the name people know it by.
type spot struct {
	path, name string
	key        ast.Node // the name in the file; nil at the top
}

func (s spot) field(key string, node ast.Node) spot {
	path := key
	if s.path != "" {
		path = s.path + "." + key
	}
	return spot{path: path, name: spoken(key), key: node}
}

func (s spot) item(i int) spot {
	return spot{path: fmt.Sprintf("%s[%d]", s.path, i), name: fmt.Sprintf("%s, item %d,", s.name, i+1)}
}

// add reports a problem at a node.
func (r *reader) add(at ast.Node, p Problem) {
	if len(r.problems) >= maxProblems {
		return
	}
	pos := at.GetToken().Position
	p.Line, p.Column = pos.Line, max(1, pos.Column)
	if strings.HasPrefix(p.Message, "Line #: ") {
		p.Message = fmt.Sprintf("Line %d: %s", p.Line, p.Message[len("Line #: "):])
	}
	p.Text = shorten(p.Text)
	r.problems = append(r.problems, p)
}

// nearest returns the place of a path, or of the nearest thing around it.
func (r *reader) nearest(path string) place {
	for {
		if at, ok := r.places[path]; ok {
			return at
		}
		i := strings.LastIndexAny(path, ".[")
		if i < 0 {
			return place{line: 1, column: 1}
		}
		path = path[:i]
	}
}

// read sets v from the node, or reports why not.
func (r *reader) read(v reflect.Value, s *shape, n ast.Node, at spot) {
	n = unwrap(n)
	pos := n.GetToken().Position
	r.places[at.path] = place{pos.Line, max(1, pos.Column), scalarText(n)}
	if at.key != nil && !isScalar(n) {
		pos = at.key.GetToken().Position
		r.places[at.path] = place{line: pos.Line, column: pos.Column}
	}
	if n.Type() == ast.NullType {
		r.add(n, Problem{Path: at.path, Code: CodeMissing,
			Message: fmt.Sprintf("Line #: %s has no value. Give one, or leave the line out.", quotedName(at)),
			Allowed: s.allowed()})
		return
	}
	if s.pointer {
		v.Set(reflect.New(s.typ))
		v = v.Elem()
	}
	switch s.kind {
	case isGroup:
		r.group(v, s, n, at)
	case isList:
		r.list(v, s, n, at)
	case isTable:
		r.table(v, s, n, at)
	default:
		r.scalar(v, s, n, at)
	}
}

func (r *reader) group(v reflect.Value, s *shape, n ast.Node, at spot) {
	if !isMapping(n) {
		r.wrongKind(n, at, s, "a group of 'name: value' lines")
		return
	}
	first := map[string]ast.Node{}
	for _, e := range entries(n) {
		key := keyText(e.Key)
		f := s.field(key)
		if f == nil {
			r.unknown(e.Key, key, s, at)
			continue
		}
		if old, twice := first[key]; twice {
			r.duplicate(e, key, old, at)
			continue
		}
		first[key] = e.Value
		r.read(v.Field(f.index), f.shape, e.Value, at.field(key, e.Key))
	}
	for i := range s.fields {
		f := &s.fields[i]
		if _, given := first[f.key]; f.required && !given {
			r.missing(n, f, at)
		}
	}
}

func (r *reader) list(v reflect.Value, s *shape, n ast.Node, at spot) {
	seq, ok := n.(*ast.SequenceNode)
	if !ok {
		r.wrongKind(n, at, s, "a list: one '- item' a line, or [item, item]")
		return
	}
	if len(seq.Values) == 0 {
		return // an empty list says no more than a list left out
	}
	list := reflect.MakeSlice(v.Type(), len(seq.Values), len(seq.Values))
	for i, item := range seq.Values {
		r.read(list.Index(i), s.elem, item, at.item(i))
	}
	v.Set(list)
}

func (r *reader) table(v reflect.Value, s *shape, n ast.Node, at spot) {
	if !isMapping(n) {
		r.wrongKind(n, at, s, "a group of 'name: number' lines")
		return
	}
	es := entries(n)
	if len(es) == 0 {
		return
	}
	m := reflect.MakeMap(v.Type())
	first := map[string]ast.Node{}
	for _, e := range es {
		key := keyText(e.Key)
		if old, twice := first[key]; twice {
			r.duplicate(e, key, old, at)
			continue
		}
		first[key] = e.Value
		if why := badTableName(key); why != "" {
			r.add(e.Key, Problem{Path: at.path, Text: key, Code: CodeText, Message: "Line #: " + why})
			continue
		}
		x := reflect.New(s.elem.typ).Elem()
		r.read(x, s.elem, e.Value, at.field(key, e.Key))
		m.SetMapIndex(reflect.ValueOf(key), x)
	}
	v.Set(m)
}

// scalar reads a single text.
func (r *reader) scalar(v reflect.Value, s *shape, n ast.Node, at spot) {
	literal, block := n.(*ast.LiteralNode)
	switch {
	case !isScalar(n):
		r.wrongKind(n, at, s, "a single value")
		return
	case block && (s.kind != isText || s.one != nil || s.form != ""):
		r.wrongKind(n, at, s, "a single value on the same line")
		return
	}
	text := scalarText(n)
	if block {
		text = strings.TrimRight(literal.Value.Value, "\n")
	}
	if p := s.take(v, text, at.name); p != nil {
		p.Path, p.Text = at.path, text
		r.add(n, *p)
	}
}

func (r *reader) wrongKind(n ast.Node, at spot, s *shape, want string) {
	got := "a single value"
	switch {
	case isMapping(n):
		got = "a group of names"
	case n.Type() == ast.SequenceType:
		got = "a list"
	case n.Type() == ast.LiteralType:
		got = "a text over several lines"
	}
	what := quotedName(at)
	if at.path == "" {
		what = "the file"
	}
	r.add(n, Problem{Path: at.path, Text: scalarText(n), Code: CodeKind, Allowed: s.allowed(),
		Message: fmt.Sprintf("Line #: %s must be %s; %s stands there.", what, want, got)})
}

func (r *reader) unknown(n ast.Node, key string, s *shape, at spot) {
	p := Problem{Path: at.field(key, nil).path, Text: key, Code: CodeUnknown, Allowed: strings.Join(s.keys(), ", ")}
	short := shorten(key)
	switch near := nearest(key, s.keys()); {
	case near != "":
		p.Hint = fmt.Sprintf("Did you mean '%s'?", near)
	case len(homes(layout, key, "")) > 0:
		p.Hint = fmt.Sprintf("'%s' belongs under %s.", short, listed(homes(layout, key, "")))
	default:
		p.Hint = fmt.Sprintf("Names known here: %s.", p.Allowed)
	}
	p.Message = fmt.Sprintf("Line #: '%s' is not a known name%s. %s Nothing was read.", short, under(at), p.Hint)
	if strings.HasPrefix(p.Hint, "Did") {
		p.Message = fmt.Sprintf("Line #: '%s' is not a known name. %s Nothing was read.", short, p.Hint)
	}
	r.add(n, p)
}

func (r *reader) duplicate(e *ast.MappingValueNode, key string, old ast.Node, at spot) {
	a, b := scalarText(unwrap(old)), scalarText(unwrap(e.Value))
	what := ""
	if isScalar(unwrap(old)) && isScalar(unwrap(e.Value)) {
		what = fmt.Sprintf(" (%s and %s)", shorten(a), shorten(b))
	} else {
		what = fmt.Sprintf(" (first in line %d)", old.GetToken().Position.Line)
	}
	r.add(e.Key, Problem{Path: at.field(key, nil).path, Text: b, Code: CodeDuplicate,
		Message: fmt.Sprintf("Line #: '%s' is given twice%s. Keep one.", shorten(key), what),
		Hint:    "Keep one."})
}

func (r *reader) missing(n ast.Node, f *field, at spot) {
	where := "The file"
	anchor := n
	if at.key != nil {
		where, anchor = "Line #: "+quotedName(at), at.key
	} else if at.path != "" {
		where = "Line #: " + quotedName(at)
	}
	if es := entries(n); at.key == nil && len(es) > 0 {
		anchor = es[0].Key
	}
	p := Problem{Path: at.field(f.key, nil).path, Code: CodeMissing, Allowed: f.shape.allowed()}
	p.Message = fmt.Sprintf("%s has no '%s', which is required: %s.", where, f.key, f.doc)
	if f.shape.one != nil {
		p.Message += " It is one of " + listed(f.shape.one) + "."
	}
	r.add(anchor, p)
}

// quotedName names a value as it stands in the file: 'plies', or 'plies', item 2.
func quotedName(at spot) string {
	path := at.path[strings.LastIndexByte(at.path, '.')+1:]
	name, rest, item := strings.Cut(path, "[")
	if !item {
		return "'" + shorten(name) + "'"
	}
	i, err := strconv.Atoi(strings.TrimSuffix(rest, "]"))
	if err != nil {
		panic("job: a path of ours ends in " + rest)
	}
	return fmt.Sprintf("'%s', item %d,", shorten(name), i+1)
}

func under(at spot) string {
	if at.path == "" {
		return " at the top level"
	}
	return " under " + strings.TrimSuffix(quotedName(at), ",")
}

// homes lists the groups that do know a name.
func homes(s *shape, key, path string) []string {
	var out []string
	for _, f := range s.fields {
		p := strings.TrimPrefix(path+"."+f.key, ".")
		if f.key == key && path != "" {
			out = append(out, path)
		}
		inner := f.shape
		if inner.kind == isList {
			inner = inner.elem
		}
		out = append(out, homes(inner, key, p)...)
	}
	return out
}
