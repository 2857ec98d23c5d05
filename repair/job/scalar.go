package job

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// take reads text into v and checks it against the words and limits of its
// place. The problem has no place yet; name is the subject of its sentence.
func (s *shape) take(v reflect.Value, text, name string) *Problem {
	if s.kind == isText {
		v.SetString(text)
		return s.check(v, text, name)
	}
	if err := s.set(v, text); err != nil {
		return s.unreadable(err, text, name)
	}
	return s.check(v, text, name)
}

// check tells whether a value read, or set by a program, may stand here.
func (s *shape) check(v reflect.Value, text, name string) *Problem {
	if s.kind == isText {
		return s.checkText(v.String(), name)
	}
	for _, x := range numbers(v) {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return &Problem{Code: CodeNumber, Allowed: s.allowed(),
				Message: fmt.Sprintf("%s must be a finite number.", name)}
		}
	}
	if !s.within(v) {
		return &Problem{Code: CodeRange, Allowed: s.limits(),
			Message: fmt.Sprintf("%s must be %s. You gave %s.", name, s.limits(), shorten(text))}
	}
	return nil
}

func (s *shape) checkText(text, name string) *Problem {
	for _, r := range text {
		if forbidden(r) {
			return &Problem{Code: CodeEncoding, Message: fmt.Sprintf("%s holds a hidden or control character (U+%04X). Delete it.", name, r)}
		}
	}
	if text == "" {
		return nil // said by leaving it out, or missing; the caller knows which
	}
	if s.form == "date" {
		if day, err := time.Parse("2006-01-02", text); err != nil || day.Year() < 1950 || day.Year() > 2100 {
			return &Problem{Code: CodeText, Allowed: "year-month-day, 1950 to 2100",
				Message: fmt.Sprintf("%s must be a date written year-month-day, such as 2025-04-30; '%s' is not.", name, shorten(text))}
		}
	}
	if s.one == nil {
		return nil
	}
	for _, w := range s.one {
		if text == w {
			return nil
		}
	}
	p := &Problem{Code: CodeWord, Allowed: listed(s.one),
		Message: fmt.Sprintf("%s must be one of %s; '%s' is not.", name, listed(s.one), shorten(text))}
	if near := nearest(text, s.one); near != "" {
		p.Hint = fmt.Sprintf("Did you mean '%s'?", near)
		p.Message += " " + p.Hint
	}
	return p
}

// set reads text into v by its kind, without limits.
func (s *shape) set(v reflect.Value, text string) error {
	switch s.kind {
	case isNumber:
		x, err := parseNumber(text)
		v.SetFloat(x)
		return err
	case isCount:
		n, err := parseCount(text)
		v.SetInt(int64(n))
		return err
	}
	return v.Addr().Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(text))
}

// unreadable turns a reader's error into a problem.
func (s *shape) unreadable(err error, text, name string) *Problem {
	p := &Problem{Code: CodeNumber, Allowed: s.allowed()}
	if form := (*formError)(nil); errors.As(err, &form) {
		p.Code = form.code
		p.Message = fmt.Sprintf("%s %s.", name, form.why)
		p.Hint = form.hint
		if p.Hint != "" {
			p.Message += " " + p.Hint
		}
		return p
	}
	p.Code = CodeUnit
	p.Message = unitMessage(err, text, name)
	if units := unitsAllowed(err); units != "" {
		p.Allowed += "; units: " + units
	}
	return p
}

// formError is why a text that is not a quantity cannot be read. The sentence
// goes on after the field's name: "must be a plain number".
type formError struct{ code, why, hint string }

func (e *formError) Error() string { return strings.TrimSpace(e.why + ". " + e.hint) }

var (
	numberText    = regexp.MustCompile(`^[+-]?[0-9]+([.,][0-9]+)?$`)
	ambiguousText = regexp.MustCompile(`^[+-]?[0-9]{1,3}(,[0-9]{3})+$`)
	countText     = regexp.MustCompile(`^(0|[1-9][0-9]{0,8})$`)
)

// parseNumber reads a plain number, with a decimal point or a decimal comma.
// "1,234" is refused, for it is 1234 to one reader and 1.234 to another.
func parseNumber(text string) (float64, error) {
	t := strings.TrimSpace(text)
	if ambiguousText.MatchString(t) {
		plain := strings.ReplaceAll(t, ",", "")
		return 0, &formError{CodeNumber,
			fmt.Sprintf("cannot be '%s': a comma may part thousands or decimals", shorten(t)),
			fmt.Sprintf("Write %s or %s.", plain, strings.Replace(t, ",", ".", 1))}
	}
	bad := &formError{code: CodeNumber, why: fmt.Sprintf("must be a plain number without a unit, such as 12.5; '%s' is not", shorten(t))}
	if !numberText.MatchString(t) {
		return 0, bad
	}
	x, err := strconv.ParseFloat(strings.Replace(t, ",", ".", 1), 64)
	if err != nil {
		return 0, bad
	}
	return x, nil
}

// parseCount reads a whole number.
func parseCount(text string) (int, error) {
	t := strings.TrimSpace(text)
	if !countText.MatchString(t) {
		return 0, &formError{code: CodeNumber, why: fmt.Sprintf("must be a whole number such as 2; '%s' is not", shorten(t))}
	}
	return strconv.Atoi(t)
}

// allowed says in words what may stand at a place.
func (s *shape) allowed() string {
	switch s.kind {
	case isGroup:
		return "a group of " + strings.Join(s.keys(), ", ")
	case isList:
		return "a list; each item: " + s.elem.allowed()
	case isTable:
		return "names with " + s.elem.allowed()
	}
	if s.one != nil {
		return listed(s.one)
	}
	if s.form == "date" {
		return "year-month-day"
	}
	out := s.sort()
	if l := s.limits(); l != "" {
		out += ", " + l
	}
	return out
}

// sorts names the quantities and text forms, with an example each.
var sorts = map[string][2]string{
	"Length":      {"length", "12 mm"},
	"Area":        {"area", "0.25 m2"},
	"Volume":      {"volume", "100 ml"},
	"Mass":        {"mass", "5 kg"},
	"AreaDensity": {"weight of an area", "4.8 kg/m2"},
	"Density":     {"density", "1.1 g/ml"},
	"Temp":        {"temperature", "18 °C"},
	"TempDiff":    {"temperature difference", "9 K"},
	"Time":        {"time", "3 h"},
	"Ratio":       {"percentage", "1.5 %"},
	"Angle":       {"angle", "12 deg"},
	"Speed":       {"speed", "8.5 kn"},
	"Point":       {"point", "-310 mm, 190 mm"},
	"PlyRef":      {"ply", "wr600@45"},
	"Range":       {"length or range", "5 mm to 6 mm"},
}

// sort names what a scalar is: "length such as 12 mm".
func (s *shape) sort() string {
	switch s.kind {
	case isText:
		return "text"
	case isNumber:
		return "number"
	case isCount:
		return "whole number"
	}
	return fmt.Sprintf("%s such as %s", s.known()[0], s.example())
}

// example is a text that may stand where a quantity is wanted.
func (s *shape) example() string { return s.known()[1] }

func (s *shape) known() [2]string {
	sort, ok := sorts[s.typ.Name()]
	if !ok {
		panic("job: no name for " + s.typ.Name())
	}
	return sort
}
