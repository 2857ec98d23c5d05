package si

import (
	"errors"
	"math"
	"strings"
	"unicode/utf8"
)

// Parse reads a quantity from text with a unit; the package comment has the
// rules. The error is an *Error. A temperature below absolute zero is refused.
func Parse[Q Quantity](text string) (Q, error) {
	x, err := KindOf[Q]().Parse(text)
	return Q(x), err
}

// longest is more than any quantity a person writes needs, in bytes.
const longest = 100

// Parse reads a quantity of this kind and returns it in the unit Base names.
// The error is an *Error.
func (k Kind) Parse(text string) (float64, error) {
	s := strings.TrimSpace(text)
	switch {
	case s == "":
		return 0, k.refuse(text, "%s is empty; %s", k.Name(), k.want())
	case len(s) > longest:
		return 0, k.refuse(text, "%s is longer than any number and unit; %s", quoted(s), k.want())
	case !utf8.ValidString(s):
		return 0, k.refuse(text, "%s is not readable text; %s", quoted(s), k.want())
	}
	sign, s := cutSign(s)
	x, rest, err := number(s)
	if errors.Is(err, errNoNumber) {
		return 0, k.refuse(text, "%s cannot be %s; %s", k.Name(), quoted(text), k.want())
	}
	if err != nil {
		return 0, k.refuse(text, "%s cannot be read: %v", k.Name(), err)
	}
	base, err := k.withUnit(text, s, sign*x, sign, strings.TrimSpace(rest))
	if err != nil {
		return 0, err
	}
	if err := k.inRange(text, x, base); err != nil {
		return 0, err
	}
	return base, nil
}

// withUnit turns the number x, which typed stands behind, into base units. all
// is the text from the number on, for a compound.
func (k Kind) withUnit(text, all string, x, sign float64, typed string) (float64, error) {
	if typed == "" {
		if err := k.bare(text, x); err != nil {
			return 0, err
		}
		return x, nil
	}
	if strings.Count(typed, "(") != strings.Count(typed, ")") {
		return 0, k.refuse(text, "%s has a bracket too many or too few; %s", quoted(typed), k.want())
	}
	spelt := spell(typed)
	u, of, known := k.lookup(spelt)
	if known && of == k {
		return u.toBase(x), nil
	}
	if _, trapped := traps[k][strings.ToLower(spelt)]; !known && !trapped {
		if total, found, err := k.compound(text, all); found {
			return sign * total, err
		}
	}
	return 0, k.refuseUnit(text, typed, spelt, of, known)
}

// inRange refuses what a float64 cannot hold, and what cannot be.
func (k Kind) inRange(text string, x, base float64) error {
	switch {
	case math.IsInf(base, 0) || math.IsNaN(base):
		return k.refuse(text, "%s cannot be read: %s is too large", k.Name(), quoted(text))
	case k == KindTemp && (base < 0 || base == 0 && x != 0): // 0 would mean "not given"; only "0 K" says so
		return k.refuse(text, "temperature cannot be %s: it must be above absolute zero, -273.15 °C", quoted(text))
	case base == 0 && x != 0:
		return k.refuse(text, "%s cannot be read: %s is too small", k.Name(), quoted(text))
	}
	return nil
}

// bare says whether a number may stand without a unit.
func (k Kind) bare(text string, x float64) error {
	switch {
	case k == KindNumber:
		return nil
	case k == KindRatio && math.Abs(x) < 1:
		return nil
	case k == KindRatio:
		t := strings.TrimSpace(text)
		return k.refuse(text, `ratio needs %% unless it is below 1; %s may be "%s %%" or "%s times", write one of these`, quoted(t), t, t)
	}
	return k.refuse(text, "%s needs a unit; %s has none: write %s", k.Name(), quoted(strings.TrimSpace(text)), k.list())
}

// want is what to write, at the end of a refusal.
func (k Kind) want() string {
	if k == KindNumber {
		return "write a plain number such as 12.5"
	}
	return "write a number and " + k.such()
}

func cutSign(s string) (sign float64, rest string) {
	for _, minus := range []string{"-", "\u2212"} {
		if after, ok := strings.CutPrefix(s, minus); ok {
			return -1, after
		}
	}
	return 1, strings.TrimPrefix(s, "+")
}

// compound reads "2 ft 3 1/2 in", "1 h 20 min" or "2 lb 3 oz", without a sign,
// into base units; found is false if the text does not look like one. Units go
// from large to small, and only the last number may have a fraction.
func (k Kind) compound(text, s string) (total float64, found bool, err error) {
	if k != KindLength && k != KindTime && k != KindMass {
		return 0, false, nil // their units have digits in them, and nobody writes these in parts
	}
	no := func(why string) (float64, bool, error) {
		return 0, true, k.refuse(text, why, quoted(strings.TrimSpace(text)))
	}
	type part struct {
		x float64
		u unit
	}
	var parts []part
	for s != "" {
		x, rest, err := number(s)
		if err != nil {
			return 0, true, k.refuse(text, "%s cannot be read: %v", k.Name(), err)
		}
		end := numberAt(rest)
		if len(parts) == 0 && end == len(rest) {
			return 0, false, nil
		}
		typed := strings.TrimSpace(rest[:end])
		s = rest[end:]
		if s != "" { // 2'-3" is how drawings part feet and inches
			for _, feet := range []string{"'", "ft"} {
				if strings.HasSuffix(rest[:end], feet+"-") {
					typed = strings.TrimSuffix(typed, "-")
				}
			}
		}
		spelt := spell(typed)
		if k == KindMass && spelt == "oz" && len(parts) > 0 {
			spelt = "oz mass" // after pounds an ounce can only be one of mass
		}
		u, of, known := k.lookup(spelt)
		switch {
		case typed == "":
			return no("the last number of %s has no unit")
		case !known || of != k:
			return 0, true, k.refuseUnit(text, typed, spelt, of, known)
		case len(parts) > 0 && u.toBase(1) >= parts[len(parts)-1].u.toBase(1):
			return no("the units of %s do not go from large to small")
		case s != "" && x != math.Trunc(x):
			return no("only the last number of %s may have a fraction")
		}
		parts = append(parts, part{x, u})
	}
	// Summed in the smallest unit, where 2 ft 3 in is 27 in to the last bit.
	least := parts[len(parts)-1].u
	for _, p := range parts {
		total += p.x * (p.u.mul * least.div) / (p.u.div * least.mul)
	}
	return least.toBase(total), true, nil
}

// numberAt returns where the next number starts in s, len(s) if there is none.
func numberAt(s string) int {
	i := strings.IndexAny(s, "0123456789½¼¾⅓⅔⅛⅜⅝⅞")
	if i < 0 {
		return len(s)
	}
	if i > 0 && (s[i-1] == '.' || s[i-1] == ',') {
		i--
	}
	return i
}
