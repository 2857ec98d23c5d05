// Package working is the worked line: how one number was got, in a form that a
// person can follow with a pocket calculator.
//
// Every number that somebody could act on carries one or more lines: the
// formula in the book's symbols, the same formula with the numbers put in, the
// result with its unit, the source, the range in which the formula holds, and,
// outside that range, a warning in its place.
package working

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Sources that are not a document. A Source field holds either one of these,
// or a key of docs/sources.md with a place: "LR2013: Ch 3 s1".
const (
	CommonPractice = "common practice, no source"
	FromMemory     = "from memory"
	Geometry       = "geometry"
	Identity       = "identity"
	Ours           = "our own rule, see docs/decisions"
)

// Line is one worked line.
type Line struct {
	Name    string  `json:"name"`              // what is computed, in words
	Formula string  `json:"formula"`           // in symbols
	Numbers string  `json:"numbers"`           // the same with the numbers put in
	Value   float64 `json:"value"`             // the result, in Unit
	Unit    string  `json:"unit"`              // unit of Value
	Source  string  `json:"source"`            // where the formula comes from
	Holds   string  `json:"holds,omitempty"`   // where it holds
	Warning string  `json:"warning,omitempty"` // set when it is used outside that range
}

// Result prints the value with its unit, to four significant digits.
func (l Line) Result() string {
	if l.Unit == "" || l.Unit == "1" {
		return Num(l.Value, 4)
	}
	return Num(l.Value, 4) + " " + l.Unit
}

// String prints the line as "name: formula = numbers = result [source]".
func (l Line) String() string {
	parts := []string{l.Formula}
	if l.Numbers != "" {
		parts = append(parts, l.Numbers)
	}
	s := fmt.Sprintf("%s: %s = %s [%s]", l.Name, strings.Join(parts, " = "), l.Result(), l.Source)
	if l.Warning != "" {
		s += " ! " + l.Warning
	}
	return s
}

// Count prints a number of things in words: "1 batch", "2 batches".
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// Num prints x to n significant digits without an exponent where a person
// would not write one, and never a negative zero.
func Num(x float64, n int) string {
	switch {
	case x == 0 || math.IsNaN(x) || math.IsInf(x, 0):
		return strconv.FormatFloat(x+0, 'g', -1, 64)
	case math.Abs(x) >= 1e7 || math.Abs(x) < 1e-4:
		return strconv.FormatFloat(x, 'e', n-1, 64)
	}
	decimals := n - 1 - int(math.Floor(math.Log10(math.Abs(x))))
	if decimals < 0 {
		// Below the wanted digits the figures are kept: 39040 is not 39040.3 rounded to 39000.
		decimals = 0
	}
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if strings.Contains(s, ".") && n > 6 {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if strings.Trim(s, "-0.") == "" {
		return "0"
	}
	return s
}
