package figure

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

// reader reads the inputs of one calculation. The first thing wrong sticks, and
// everything read after it is zero, so a calculation reads straight through and
// checks once.
type reader struct {
	inputs []Input
	given  map[string]string
	used   map[string]string
	err    error
}

func (r *reader) ok() bool { return r.err == nil }

func (r *reader) fail(key, why, hint string) {
	if r.err == nil {
		r.err = &InputError{Key: key, Text: r.given[key], Why: why, Hint: hint}
	}
}

// text returns an input as typed, or its default.
func (r *reader) text(key string) string {
	i := slices.IndexFunc(r.inputs, func(in Input) bool { return in.Key == key })
	if i < 0 {
		panic("figure: undeclared input " + key)
	}
	in := r.inputs[i]
	t := strings.TrimSpace(r.given[key])
	if t == "" {
		if t = in.Default; t == "" {
			if !in.Optional {
				r.fail(key, "is needed.", fmt.Sprintf("Give %s, such as %s=%q.", in.Doc, key, in.Unit))
			}
			return ""
		}
	}
	r.used[key] = t
	return t
}

func (r *reader) word(key string) string {
	t := r.text(key)
	for _, in := range r.inputs {
		if in.Key == key && t != "" && !slices.Contains(in.Words, t) {
			r.fail(key, fmt.Sprintf("%q is not one of: %s.", t, strings.Join(in.Words, ", ")), strings.TrimSpace(didYouMean(t, in.Words)))
		}
	}
	return t
}

// bounds of a quantity in SI units; a nil check is open.
type bounds struct {
	low, high float64
	openLow   bool // low itself is refused
	words     string
}

var (
	positive = bounds{0, math.Inf(1), true, "more than 0"}
	anything = bounds{math.Inf(-1), math.Inf(1), false, ""}
	fraction = bounds{0, 1, true, "more than 0 and less than 100 %"}
)

func between(low, high float64, words string) bounds { return bounds{low, high, false, words} }

// quantity reads an input of one type and checks it against its bounds.
func quantity[Q si.Quantity](r *reader, key string, b bounds) Q {
	t := r.text(key)
	if t == "" || !r.ok() {
		return 0
	}
	q, err := si.Parse[Q](t)
	if err != nil {
		var e *si.Error
		if errors.As(err, &e) {
			r.fail(key, e.Error(), "")
		} else {
			r.fail(key, err.Error(), "")
		}
		return 0
	}
	x := float64(q)
	if x < b.low || x > b.high || b.openLow && x == b.low || b == fraction && x >= 1 {
		r.fail(key, fmt.Sprintf("must be %s. You gave %s.", b.words, t), "")
		return 0
	}
	return q
}

// number reads a plain number.
func (r *reader) number(key string, b bounds) float64 {
	t := r.text(key)
	if t == "" || !r.ok() {
		return 0
	}
	x, err := strconv.ParseFloat(strings.Replace(strings.TrimSuffix(t, ":1"), ",", ".", 1), 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		r.fail(key, fmt.Sprintf("%q is not a number.", t), "")
		return 0
	}
	if x < b.low || x > b.high || b.openLow && x == b.low {
		r.fail(key, fmt.Sprintf("must be %s. You gave %s.", b.words, t), "")
		return 0
	}
	return x
}

// share reads a number from 0 to 1 that may be written in per cent: a degree of cure,
// a ratio of groups. A bare 1 is all of it here, not one per cent.
func (r *reader) share(key string, b bounds) float64 {
	t := r.text(key)
	if t == "" || !r.ok() {
		return 0
	}
	x, err := strconv.ParseFloat(strings.Replace(t, ",", ".", 1), 64)
	if err != nil {
		return float64(quantity[si.Ratio](r, key, b))
	}
	switch {
	case x > 1 && x <= 100:
		r.fail(key, fmt.Sprintf("%s is more than 1.", t), fmt.Sprintf("Write it from 0 to 1, %s, or in per cent, %s %%.", num(x/100), t))
	case !(x >= b.low && x <= b.high) || b.openLow && x == b.low || b == fraction && x >= 1:
		r.fail(key, fmt.Sprintf("must be %s. You gave %s.", b.words, t), "")
	default:
		return x
	}
	return 0
}

// parts reads a mix ratio such as 2:1 or 100:30.
func (r *reader) parts(key string) (a, b float64) {
	t := r.text(key)
	if t == "" || !r.ok() {
		return 0, 0
	}
	left, right, found := strings.Cut(t, ":")
	a, errA := strconv.ParseFloat(strings.TrimSpace(strings.Replace(left, ",", ".", 1)), 64)
	b, errB := strconv.ParseFloat(strings.TrimSpace(strings.Replace(right, ",", ".", 1)), 64)
	if !found || errA != nil || errB != nil || !(a > 0) || !(b > 0) || math.IsInf(a, 0) || math.IsInf(b, 0) {
		r.fail(key, fmt.Sprintf("%q is not a mix ratio.", t), "Write parts of resin to parts of hardener, such as 2:1.")
		return 0, 0
	}
	return a, b
}

// lamina reads the elastic constants E1, E2, nu12, G12.
func (r *reader) lamina() laminate.Lamina {
	l := laminate.Lamina{
		E1:   quantity[si.Pressure](r, "E1", positive),
		E2:   quantity[si.Pressure](r, "E2", positive),
		G12:  quantity[si.Pressure](r, "G12", positive),
		Nu12: r.number("nu12", between(-1, 1, "between -1 and 1")),
	}
	if r.ok() {
		if err := l.Check(); err != nil {
			r.fail("nu12", err.Error(), "")
		}
	}
	return l
}

// strength reads Xt, Xc, Yt, Yc, S.
func (r *reader) strength() laminate.Strength {
	return laminate.Strength{
		Xt: quantity[si.Pressure](r, "Xt", positive), Xc: quantity[si.Pressure](r, "Xc", positive),
		Yt: quantity[si.Pressure](r, "Yt", positive), Yc: quantity[si.Pressure](r, "Yc", positive),
		S: quantity[si.Pressure](r, "S", positive),
	}
}

// mostFigurePlies keeps a mistyped stack from filling the memory.
const mostFigurePlies = 2000

// plies reads a stack of one material and one ply thickness, or of as many ply
// thicknesses as there are plies.
func (r *reader) plies(l laminate.Lamina) (laminate.Stack, []laminate.Ply) {
	t := r.text("stack")
	if !r.ok() {
		return laminate.Stack{}, nil
	}
	s, err := laminate.ParseStack(t)
	if err != nil {
		r.fail("stack", err.Error(), "")
		return s, nil
	}
	angles := s.Angles()
	if len(angles) > mostFigurePlies {
		r.fail("stack", fmt.Sprintf("%d plies are more than %d.", len(angles), mostFigurePlies), "")
		return s, nil
	}
	ts := strings.Split(r.text("ply"), ";")
	if len(ts) != 1 && len(ts) != len(angles) {
		r.fail("ply", fmt.Sprintf("%s for %s.", working.Count(len(ts), "thickness", "thicknesses"), plyCount(len(angles))), "Give one, or one a ply, with semicolons between.")
		return s, nil
	}
	plies := make([]laminate.Ply, len(angles))
	for i, a := range angles {
		q, err := si.Parse[si.Length](strings.TrimSpace(ts[min(i, len(ts)-1)]))
		if err != nil || q <= 0 {
			if err == nil {
				err = fmt.Errorf("must be more than 0")
			}
			r.fail("ply", err.Error(), "")
			return s, nil
		}
		plies[i] = laminate.Ply{Lamina: l, Thickness: q, Angle: a}
	}
	return s, plies
}
