package sheet

import (
	"io"
	"regexp"
	"strconv"
	"strings"

	"scarfwright/repair"
)

// Working writes every worked line: the formula, the numbers put in, the
// result, the source, and where it holds.
func Working(w io.Writer, r repair.Result, o Options) error {
	r, o = settled(r, o)
	p := newPaper(r, o, "WORKING")
	p.stops()
	p.text(body, "Each number can be followed with a pocket calculator. Sources are keys of docs/sources.md, or say what they are: common practice, from memory, geometry.")
	p.y += 2
	var rows [][]string
	for _, l := range r.Working {
		how := l.Formula
		if l.Numbers != "" {
			how += "\n= " + tens(l.Numbers)
		}
		source := l.Source
		if l.Holds != "" {
			source += "\nHolds: " + l.Holds
		}
		if l.Warning != "" {
			source += "\nWARNING: " + l.Warning
		}
		rows = append(rows, []string{l.Name, how, tens(l.Result()), source})
	}
	p.table(table{cols: []column{{"what", 0.2, false, true}, {"formula, and with the numbers", 0.38, false, false}, {"result", 0.15, true, true}, {"source", 0.27, false, false}}, heads: true}, rows)
	if len(r.Assumptions) > 0 {
		p.heading("Assumptions", 15)
		p.bullets(small, r.Assumptions)
	}
	return p.finish(w)
}

var exponent = regexp.MustCompile(`(\d)e([+-]\d+)`)

// tens writes a number's power of ten the way it is read: 1.45e+07 is 1.45 × 10⁷.
func tens(s string) string {
	return exponent.ReplaceAllStringFunc(s, func(m string) string {
		n, err := strconv.Atoi(m[2:])
		if err != nil {
			return m
		}
		high := strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")
		return m[:1] + " × 10" + high.Replace(strconv.Itoa(n))
	})
}
