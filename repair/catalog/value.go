package catalog

import (
	"encoding"
	"fmt"
	"reflect"
	"strconv"
	"strings"
)

// Origin is where a figure comes from and when it was entered, year-month-day.
type Origin struct {
	Source string
	Date   string
}

// Value is a figure with its spread, in the SI unit of its type Q.
type Value[Q ~float64] struct {
	Low, Typical, High Q
	Unit               string // as written in the data, for people
	Origin
	text    [3]string // the three as written
	derived bool      // computed from other values of the entry
}

// Given reports whether the value was stated at all.
func (v Value[Q]) Given() bool { return v.Source != "" }

// Holds reports whether x lies within the spread.
func (v Value[Q]) Holds(x Q) bool { return x >= v.Low && x <= v.High }

// String prints the typical figure and the spread, as they were written.
func (v Value[Q]) String() string {
	if v.text[0] == v.text[2] {
		return v.text[1]
	}
	return fmt.Sprintf("%s (%s to %s)", v.text[1], v.text[0], v.text[2])
}

// exactly returns a value without spread, from a user's sheet.
func exactly[Q ~float64](x Q, o Origin) Value[Q] {
	s := fmt.Sprint(x)
	return Value[Q]{Low: x, Typical: x, High: x, Unit: unitOf(s), Origin: o, text: [3]string{s, s, s}}
}

// between returns a value with a spread and its middle, from a user's sheet.
func between[Q ~float64](low, high Q, o Origin) Value[Q] {
	v := exactly((low+high)/2, o)
	v.Low, v.High = low, high
	v.text[0], v.text[2] = fmt.Sprint(low), fmt.Sprint(high)
	return v
}

// scaled returns the value times k, as computed from others of its entry.
func (v Value[Q]) scaled(k float64, how string) Value[Q] {
	w := Value[Q]{
		Low: v.Low * Q(k), Typical: v.Typical * Q(k), High: v.High * Q(k),
		Unit: v.Unit, Origin: Origin{Source: how, Date: v.Date}, derived: true,
	}
	for i, x := range []Q{w.Low, w.Typical, w.High} {
		w.text[i] = strings.TrimSpace(fmt.Sprintf("%.4g %s", float64(x), v.Unit))
	}
	return w
}

// UnmarshalYAML reads {low, typical, high, source, date}. Low and high may be
// left out together: then the figure has no spread.
func (v *Value[Q]) UnmarshalYAML(unmarshal func(any) error) error {
	var raw struct{ Low, Typical, High, Source, Date string }
	if err := unmarshal(&raw); err != nil {
		return err
	}
	if (raw.Low == "") != (raw.High == "") {
		return fmt.Errorf("value %q: low and high go together", raw.Typical)
	}
	if raw.Low == "" {
		raw.Low, raw.High = raw.Typical, raw.Typical
	}
	*v = Value[Q]{
		Unit:   unitOf(raw.Typical),
		Origin: Origin{raw.Source, raw.Date},
		text:   [3]string{raw.Low, raw.Typical, raw.High},
	}
	for i, to := range []*Q{&v.Low, &v.Typical, &v.High} {
		if err := parse(v.text[i], to); err != nil {
			return err
		}
	}
	if !(v.Low <= v.Typical && v.Typical <= v.High) {
		return fmt.Errorf("value %s to %s to %s: low, typical and high must rise", raw.Low, raw.Typical, raw.High)
	}
	if v.Source == "" {
		return fmt.Errorf("value %s: no source", raw.Typical)
	}
	return nil
}

// parse reads a quantity with its unit, or a bare number where Q is one.
func parse[Q ~float64](text string, to *Q) error {
	if q, ok := any(to).(encoding.TextUnmarshaler); ok {
		return q.UnmarshalText([]byte(text))
	}
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return fmt.Errorf("%q is not a number", text)
	}
	*to = Q(x)
	return nil
}

// unitOf returns what follows the number: "g/ml" of "1.12 g/ml".
func unitOf(text string) string {
	return strings.TrimSpace(strings.TrimLeft(text, "+-0123456789., "))
}

// Fact is one value of an entry, as text, for the page that tells where the
// figures come from.
type Fact struct {
	Name   string // "hull min"
	Text   string // "1.5 % (1.0 % to 2.5 %)"
	Source string
	Date   string
}

// Facts lists every stated value of a catalogue entry with its source, in the
// order of the entry's fields.
func Facts(entry any) []Fact {
	var out []Fact
	visit(reflect.ValueOf(entry), "", func(name string, v stated, _ func(Origin)) {
		if o := v.origin(); o.Source != "" {
			out = append(out, Fact{Name: name, Text: v.String(), Source: o.Source, Date: o.Date})
		}
	})
	return out
}

// stated is a Value or a PotTable: a figure with an origin.
type stated interface {
	fmt.Stringer
	origin() Origin
}

func (v Value[Q]) origin() Origin { return v.Origin }

// visit walks an entry and calls f for each stated figure in it, with a way to
// set its origin where the entry is addressable.
func visit(v reflect.Value, name string, f func(string, stated, func(Origin))) {
	switch v.Kind() {
	case reflect.Pointer:
		visit(v.Elem(), name, f)
	case reflect.Slice:
		for i := range v.Len() {
			visit(v.Index(i), name, f)
		}
	case reflect.Struct:
		if s, ok := v.Interface().(stated); ok {
			f(name, s, func(o Origin) { v.FieldByName("Origin").Set(reflect.ValueOf(o)) })
			return
		}
		for i := range v.NumField() {
			if field := v.Type().Field(i); field.IsExported() {
				visit(v.Field(i), spaced(field.Name), f)
			}
		}
	}
}

// spaced turns HullMin into "hull min".
func spaced(name string) string {
	var b strings.Builder
	for i, r := range name {
		if i > 0 && r >= 'A' && r <= 'Z' {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
	}
	return strings.ToLower(b.String())
}
