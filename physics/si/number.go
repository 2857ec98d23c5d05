package si

import (
	"errors"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Numbers as people write them, at the start of a text.

var (
	decimal  = regexp.MustCompile(`^(?:[0-9][0-9.,]*|[.,][0-9][0-9.,]*)(?:[eE][+-]?[0-9]+)?`)
	plain    = regexp.MustCompile(`^(?:[0-9]*[.,][0-9]+|[0-9]+)(?:[eE][+-]?[0-9]{1,4})?$`)
	grouped  = regexp.MustCompile("^[1-9][0-9]{0,2}(?:[ \u00a0\u2009\u202f][0-9]{3})+(?:[.,][0-9]+)?")
	fraction = regexp.MustCompile(`^([0-9]{1,6})\s*/\s*([0-9]{1,6})`)
	mixed    = regexp.MustCompile(`^([0-9]{1,6})(?:\s+|\s*-\s*)([0-9]{1,6})\s*/\s*([0-9]{1,6})`)
	vulgar   = regexp.MustCompile(`^([0-9]{0,6})\s*([½¼¾⅓⅔⅛⅜⅝⅞])`)
	comma    = regexp.MustCompile(`^[1-9][0-9]{0,2},[0-9]{3}$`)
	thousand = regexp.MustCompile(`^[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?$|^[0-9]{1,3}(?:\.[0-9]{3})+(?:,[0-9]+)?$`)
)

var vulgars = map[string][2]float64{"½": {1, 2}, "¼": {1, 4}, "¾": {3, 4}, "⅓": {1, 3}, "⅔": {2, 3},
	"⅛": {1, 8}, "⅜": {3, 8}, "⅝": {5, 8}, "⅞": {7, 8}}

var errNoNumber = errors.New("no number")

// number reads the number that s starts with, without a sign, and returns what
// stands behind it. An error's text is what is wrong, after "the text".
func number(s string) (x float64, rest string, err error) {
	if m := mixed.FindStringSubmatch(s); m != nil && !digitAt(s, len(m[0])) {
		x, err := quotient(atoi(m[2]), atoi(m[3]))
		if err == nil && x >= 1 {
			err = fmt.Errorf("%s is not a fraction below 1", quoted(m[2]+"/"+m[3]))
		}
		return atoi(m[1]) + x, s[len(m[0]):], err
	}
	if m := fraction.FindStringSubmatch(s); m != nil && !digitAt(s, len(m[0])) {
		x, err := quotient(atoi(m[1]), atoi(m[2]))
		return x, s[len(m[0]):], err
	}
	if m := vulgar.FindStringSubmatch(s); m != nil {
		v := vulgars[m[2]]
		return atoi(m[1]) + v[0]/v[1], s[len(m[0]):], nil
	}
	if m := grouped.FindString(s); m != "" && !digitAt(s, len(m)) && !strings.HasPrefix(s[len(m):], "/") {
		x, err := atof(strings.Map(dropSpace, m))
		return x, s[len(m):], err
	}
	m := decimal.FindString(s)
	if m == "" {
		return 0, s, errNoNumber
	}
	x, err = atof(m)
	return x, s[len(m):], err
}

// atof reads digits with a decimal point or comma, and refuses a comma that
// may part thousands.
func atof(m string) (float64, error) {
	if comma.MatchString(m) {
		return 0, fmt.Errorf("%s may be %s or %s; write one of these",
			quoted(m), strings.Replace(m, ",", ".", 1), strings.Replace(m, ",", "", 1))
	}
	if !plain.MatchString(m) {
		if thousand.MatchString(m) { // 1,234,567 or 1,234.5 or 1.234,5: say it without marks
			point := strings.LastIndexAny(m, ".,")
			if strings.Count(m, m[point:point+1]) > 1 {
				point = len(m)
			}
			whole := strings.NewReplacer(",", "", ".", "").Replace(m[:point])
			return 0, fmt.Errorf("%s mixes marks for thousands and decimals; write %s",
				quoted(m), whole+strings.Replace(m[point:], ",", ".", 1))
		}
		return 0, fmt.Errorf("%s is not a number", quoted(m))
	}
	x, err := strconv.ParseFloat(strings.Replace(m, ",", ".", 1), 64)
	if err != nil || math.IsInf(x, 0) {
		return 0, fmt.Errorf("%s is too large", quoted(m))
	}
	if x == 0 && strings.ContainsAny(strings.ToLower(strings.SplitN(strings.ToLower(m), "e", 2)[0]), "123456789") {
		return 0, fmt.Errorf("%s is too small", quoted(m))
	}
	return x, nil
}

func quotient(a, b float64) (float64, error) {
	if b == 0 {
		return 0, errors.New("a fraction cannot be over 0")
	}
	return a / b, nil
}

// atoi reads up to six digits that a pattern has matched; none are 0.
func atoi(s string) float64 {
	n, _ := strconv.Atoi(s)
	return float64(n)
}

func digitAt(s string, i int) bool { return i < len(s) && '0' <= s[i] && s[i] <= '9' }

func dropSpace(r rune) rune {
	if strings.ContainsRune(" \u00a0\u2009\u202f", r) {
		return -1
	}
	return r
}
