package job

import (
	"encoding"
	"fmt"
	"reflect"
	"strings"
)

// The format of the job file is written once, in the tags of job.go. This file
// turns the tags into a tree that the reader, the checks, the writer, the schema
// and the table of the manual all walk, so that none can disagree with another.

// kind is the sort of thing that stands at a place in a job file.
type kind int

const (
	isGroup    kind = iota // names and values, a struct
	isList                 // items
	isTable                // free names, each with a number
	isQuantity             // text with a unit, or another text form
	isText                 // free text
	isNumber               // a plain number
	isCount                // a whole number
)

// shape is what may stand at one place.
type shape struct {
	kind     kind
	typ      reflect.Type // without the pointer
	pointer  bool
	fields   []field // of a group
	elem     *shape  // of a list or table
	min, max *bound
	one      []string // words allowed, of a text
	form     string   // "date", of a text
}

// field is one name of a group.
type field struct {
	key, doc string
	required bool
	index    int
	shape    *shape
}

// bound is one end of a range.
type bound struct {
	value float64
	text  string // as people read it: "100 mm"
	open  bool   // the bound itself is excluded
}

// layout is the tree of the whole file. It is made once, before main, and never
// changed; a tag that cannot be read is a bug of ours and panics there.
var layout = shapeOf(reflect.TypeFor[Description](), "")

func shapeOf(t reflect.Type, tag reflect.StructTag) *shape {
	s := &shape{typ: t}
	if t.Kind() == reflect.Pointer {
		s.pointer, s.typ = true, t.Elem()
	}
	limits := true
	switch {
	case reflect.PointerTo(s.typ).Implements(reflect.TypeFor[encoding.TextUnmarshaler]()):
		s.kind = isQuantity
	case s.typ.Kind() == reflect.Struct:
		s.kind, s.fields, limits = isGroup, fieldsOf(s.typ), false
	case s.typ.Kind() == reflect.Slice:
		s.kind, s.elem, limits = isList, shapeOf(s.typ.Elem(), tag), false
	case s.typ.Kind() == reflect.Map:
		s.kind, s.elem, limits = isTable, shapeOf(s.typ.Elem(), tag), false
	case s.typ.Kind() == reflect.String:
		s.kind = isText
	case s.typ.Kind() == reflect.Float64:
		s.kind = isNumber
	case s.typ.Kind() == reflect.Int:
		s.kind = isCount
	default:
		panic(fmt.Sprintf("job: no file form for %v", t))
	}
	if limits { // a list's limits are its items'
		s.min, s.max = boundOf(s, tag.Get("min")), boundOf(s, tag.Get("max"))
		if one := tag.Get("one"); one != "" {
			s.one = strings.Split(one, "|")
		}
		s.form = tag.Get("form")
	}
	return s
}

func fieldsOf(t reflect.Type) []field {
	var out []field
	for i := range t.NumField() {
		f := t.Field(i)
		key, rest, _ := strings.Cut(f.Tag.Get("job"), ",")
		if key == "" {
			panic(fmt.Sprintf("job: %v.%s has no key", t, f.Name))
		}
		out = append(out, field{
			key:      key,
			doc:      f.Tag.Get("doc"),
			required: rest == "required",
			index:    i,
			shape:    shapeOf(f.Type, f.Tag),
		})
	}
	return out
}

func boundOf(s *shape, text string) *bound {
	if text == "" {
		return nil
	}
	b := &bound{text: text}
	b.text, b.open = strings.CutPrefix(text, "over ")
	v := reflect.New(s.typ)
	if err := s.set(v.Elem(), b.text); err != nil {
		panic(fmt.Sprintf("job: limit %q: %v", text, err))
	}
	b.value = numbers(v.Elem())[0]
	return b
}

// numbers returns what a limit is compared with: the value itself, both ends of
// a Range; nothing for forms that have no size.
func numbers(v reflect.Value) []float64 {
	if r, ok := v.Interface().(Range); ok {
		return []float64{r.Low.M(), r.High.M()}
	}
	switch v.Kind() {
	case reflect.Float64:
		return []float64{v.Float()}
	case reflect.Int:
		return []float64{float64(v.Int())}
	}
	return nil
}

// keys returns the names of a group, in the order of the file.
func (s *shape) keys() []string {
	var out []string
	for _, f := range s.fields {
		out = append(out, f.key)
	}
	return out
}

// limits says the range in words: "more than 0 mm and at most 100 mm".
func (s *shape) limits() string {
	var out []string
	if s.min != nil {
		word := "at least "
		if s.min.open {
			word = "more than "
		}
		out = append(out, word+s.min.text)
	}
	if s.max != nil {
		word := "at most "
		if s.max.open {
			word = "less than "
		}
		out = append(out, word+s.max.text)
	}
	return strings.Join(out, " and ")
}

// within reports whether a value keeps the limits. A part in 1e12 is forgiven:
// 10 cm and 100 mm need not be the same float64.
func (s *shape) within(v reflect.Value) bool {
	for _, x := range numbers(v) {
		if b := s.min; b != nil {
			slack := 1e-12 * max(abs(x), abs(b.value))
			if b.open && x <= b.value || !b.open && x < b.value-slack {
				return false
			}
		}
		if b := s.max; b != nil {
			slack := 1e-12 * max(abs(x), abs(b.value))
			if b.open && x >= b.value || !b.open && x > b.value+slack {
				return false
			}
		}
	}
	return true
}

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}
