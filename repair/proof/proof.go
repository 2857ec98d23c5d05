// Package proof is the table of checks against the outside world: what was
// computed, what a published source, an identity or an independent computation
// says it should be, and how far apart they may lie.
//
// The same table is printed by the command line, written to docs/proof.md, and
// run by the tests. A row's Provenance says how its expected value is known, in
// one of the words below; nothing recalled or computed is passed off as read.
package proof

import (
	"fmt"
	"math"
	"slices"

	"scarfwright/repair/figure"
)

// Provenance is how an expected value is known.
type Provenance string

// The sorts of provenance.
const (
	Read       Provenance = "read in the source, reproduced by independent computation"
	SecondHand Provenance = "read second-hand, where another document quotes it; reproduced by independent computation"
	Recalled   Provenance = "printed value recalled from memory, reproduced by independent computation (numpy)"
	Computed   Provenance = "independent computation (numpy, in Python)"
	Arithmetic Provenance = "arithmetic, worked by hand"
	FromMemory Provenance = "formula or value from memory"
	ClosedForm Provenance = "closed form"
	AnIdentity Provenance = "identity"
	Practice   Provenance = "common practice, no source"
	Table      Provenance = "published table, read"

	ComputedScipy    Provenance = "independent computation (scipy, in Python)"
	InputsSecondHand Provenance = "inputs read second-hand; outcome by independent computation (scipy, in Python)"
	FinerGrid        Provenance = "our own finer grid: shows that the grid settles, not that it is right"
	OwnRule          Provenance = "our own rule"
	InputsRead       Provenance = "inputs read in the source; outcome by independent computation (in Python)"
)

// Check is one row.
type Check struct {
	Group      string     `json:"group"` // what belongs together
	What       string     `json:"what"`
	Source     string     `json:"source"`
	Provenance Provenance `json:"provenance"`
	Expected   float64    `json:"expected"`
	Ours       float64    `json:"ours"`
	Unit       string     `json:"unit"`
	Abs        float64    `json:"tolerance_abs,omitempty"` // either of the two suffices
	Rel        float64    `json:"tolerance_rel,omitempty"`
	Err        string     `json:"error,omitempty"` // set when it could not be computed
}

// Pass reports whether ours lies within the tolerance. A value that is not a
// number never passes.
func (c Check) Pass() bool {
	d := math.Abs(c.Ours - c.Expected)
	return c.Err == "" && (d <= c.Abs || d <= c.Rel*math.Abs(c.Expected))
}

// Tolerance prints the tolerance in words.
func (c Check) Tolerance() string {
	switch {
	case c.Abs > 0 && c.Rel > 0:
		return fmt.Sprintf("%g or %g %%", c.Abs, 100*c.Rel)
	case c.Abs > 0:
		return fmt.Sprintf("%g", c.Abs)
	case c.Rel > 0:
		return fmt.Sprintf("%.3g %%", 100*c.Rel)
	}
	return "exact"
}

// All returns every check, computed now.
func All() []Check {
	return slices.Concat(thickness(), classRule(), section(), lamina(), laminates(), failure(), micromechanics(), tapers(), mixings(), cures(), structures(), limits(), practice())
}

// Failed returns those that do not pass.
func Failed(cs []Check) []Check {
	var out []Check
	for _, c := range cs {
		if !c.Pass() {
			out = append(out, c)
		}
	}
	return out
}

// group builds rows that share a source, a provenance and a tolerance.
type group struct {
	name, source string
	provenance   Provenance
	abs, rel     float64
	rows         []Check
}

func (g *group) add(what string, expected, ours float64, unit string) *group {
	g.rows = append(g.rows, Check{
		Group: g.name, What: what, Source: g.source, Provenance: g.provenance,
		Expected: expected, Ours: ours, Unit: unit, Abs: g.abs, Rel: g.rel,
	})
	return g
}

// figures computes a figure once and adds rows for its results.
func (g *group) figures(name string, inputs map[string]string, rows ...want) *group {
	return g.answered(shared(name, inputs), rows...)
}

// answer is a figure computed, for the rows of more than one group.
type answer struct {
	name    string
	results figure.Results
	err     error
}

func shared(name string, inputs map[string]string) answer {
	calc, err := figure.Find(name)
	var a figure.Answer
	if err == nil {
		a, err = calc.Compute(inputs)
	}
	return answer{name, a.Results, err}
}

// answered adds rows for the results of a figure.
func (g *group) answered(a answer, rows ...want) *group {
	for _, w := range rows {
		ours, ok := a.results.Get(w.key)
		g.add(w.what, w.expected, ours, w.unit)
		if a.err != nil {
			g.rows[len(g.rows)-1].Err = a.err.Error()
		} else if !ok {
			g.rows[len(g.rows)-1].Err = a.name + " has no result " + w.key
		}
	}
	return g
}

// want is one expected result of a figure.
type want struct {
	what, key string
	expected  float64
	unit      string
}
