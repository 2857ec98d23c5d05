package job

import (
	"bytes"
	"crypto/sha256"
	"encoding"
	"encoding/hex"
	"fmt"
	"io"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Marshal returns the canonical job file of a description: names in the order of
// the format, quantities in canonical text, fields that are not set left out.
// Parse gives back an equal description, and Marshal of that the same bytes. A
// description Parse would refuse is an error here.
func Marshal(d Description) ([]byte, error) {
	if problems := Validate(d); len(problems) > 0 {
		return nil, fmt.Errorf("job: cannot write the description: %w", &Errors{Name: "description", Problems: problems})
	}
	return canonical(d), nil
}

// Write writes the canonical job file.
func Write(w io.Writer, d Description) error {
	b, err := Marshal(d)
	if err != nil {
		return err
	}
	_, err = w.Write(b)
	return err
}

// Hash returns the first 12 hexadecimal digits of the SHA-256 over the canonical
// job file. Comments, the order of names and the spelling of units do not change
// it; any value does. It is printed on each sheet to tell which input made it.
func Hash(d Description) string {
	sum := sha256.Sum256(canonical(d))
	return hex.EncodeToString(sum[:])[:12]
}

func canonical(d Description) []byte {
	w := writer{}
	w.group(reflect.ValueOf(d), layout, 0, false)
	return w.Bytes()
}

type writer struct{ bytes.Buffer }

func (w *writer) indent(depth int) { w.WriteString(strings.Repeat("  ", depth)) }

// group writes the names of a struct. The first line stands behind a list's
// dash when inline is set.
func (w *writer) group(v reflect.Value, s *shape, depth int, inline bool) {
	for i := range s.fields {
		f := &s.fields[i]
		x := v.Field(f.index)
		if left(x, f) {
			continue
		}
		if !inline {
			w.indent(depth)
		}
		inline = false
		w.WriteString(f.key)
		w.WriteByte(':')
		w.value(x, f.shape, depth)
	}
}

// left reports a field that is left out.
func left(v reflect.Value, f *field) bool {
	switch v.Kind() {
	case reflect.Slice, reflect.Map:
		return v.Len() == 0
	}
	if f.shape.kind == isGroup {
		return v.IsZero()
	}
	return v.IsZero() && !f.required
}

// value writes what stands behind a colon.
func (w *writer) value(v reflect.Value, s *shape, depth int) {
	if s.pointer {
		v = v.Elem()
	}
	switch s.kind {
	case isGroup:
		w.WriteByte('\n')
		w.group(v, s, depth+1, false)
	case isList:
		w.WriteByte('\n')
		for i := range v.Len() {
			w.indent(depth + 1)
			w.WriteByte('-')
			if s.elem.kind == isGroup {
				w.WriteByte(' ')
				w.group(v.Index(i), s.elem, depth+2, true)
				continue
			}
			w.value(v.Index(i), s.elem, depth+1)
		}
	case isTable:
		w.WriteByte('\n')
		var names []string
		for it := v.MapRange(); it.Next(); {
			names = append(names, it.Key().String())
		}
		slices.Sort(names)
		for _, name := range names {
			w.indent(depth + 1)
			w.WriteString(scalarYAML(name))
			w.WriteByte(':')
			w.value(v.MapIndex(reflect.ValueOf(name)), s.elem, depth+1)
		}
	default:
		w.WriteByte(' ')
		text := printed(v, s)
		if s.kind == isText || s.kind == isQuantity {
			text = scalarYAML(text)
		}
		w.WriteString(text)
		w.WriteByte('\n')
	}
}

// printed is the canonical text of a scalar.
func printed(v reflect.Value, s *shape) string {
	switch s.kind {
	case isText:
		return v.String()
	case isNumber:
		return strconv.FormatFloat(v.Float(), 'f', -1, 64)
	case isCount:
		return strconv.FormatInt(v.Int(), 10)
	}
	text, err := v.Interface().(encoding.TextMarshaler).MarshalText()
	if err != nil {
		return "?" // a value no file can hold; Validate has refused it
	}
	return string(text)
}

var (
	// What every YAML reader takes for plain text: it begins with a letter, or
	// with a number that a unit follows, and holds nothing that means something.
	plainText    = regexp.MustCompile(`^(\pL|-?[0-9][0-9.]* ?[\pL%°])[\pL0-9 ,.;()/+_%°@²³±'-]*$`)
	reservedText = regexp.MustCompile(`^(?i:true|false|yes|no|on|off|null|y|n|nan|inf|[-+]?[0-9._]+(e[-+]?[0-9]+)?|0[xob][0-9a-f_]+)$`)
	dateText     = regexp.MustCompile(`^[0-9]{4}-`)
)

// scalarYAML writes a text plain where it is plain to all readers, else in
// double quotes.
func scalarYAML(text string) string {
	if plainText.MatchString(text) && !reservedText.MatchString(text) && !dateText.MatchString(text) && !strings.HasSuffix(text, " ") {
		return text
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case forbidden(r):
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
