package overcoat

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"github.com/goccy/go-yaml"

	"scarfwright/repair/check"
)

//go:embed table.yaml
var data []byte

// table is read a single time; nobody outside gets its slices.
var table = sync.OnceValue(func() []Pair {
	pairs, err := read(data)
	if err != nil {
		panic("overcoat: embedded table: " + err.Error())
	}
	return pairs
})

// block is one row of the data: the same holds for each below and each above.
type block struct {
	Below, Above       []Sort
	State              State
	Verdict            check.State
	Prepare, Risk, Why string
	Said               []struct {
		Says    string
		Verdict check.State
		Source  string
		How     Provenance
	}
	Disagree string
}

// read returns the pairs of a table. It refuses one without a source, a pair
// that stands twice, and a contradiction between statements that is not told in words.
func read(text []byte) ([]Pair, error) {
	var rows []block
	if err := yaml.UnmarshalWithOptions(text, &rows, yaml.Strict()); err != nil {
		return nil, err
	}
	var out []Pair
	for i, r := range rows {
		for _, b := range r.Below {
			for _, a := range r.Above {
				p := Pair{Below: b, Above: a, State: r.State, Preparation: r.Prepare, Risk: r.Risk, Verdict: r.Verdict, Ruling: r.Why, Disagreement: r.Disagree}
				for _, s := range r.Said {
					p.Statements = append(p.Statements, Statement{s.Says, s.Verdict, s.Source, s.How})
				}
				if err := p.sound(); err != nil {
					return nil, fmt.Errorf("row %d, %s: %w", i+1, p.Name(), err)
				}
				if slices.ContainsFunc(out, func(o Pair) bool { return o.Below == b && o.Above == a && o.State == r.State }) {
					return nil, fmt.Errorf("row %d: %s stands twice", i+1, p.Name())
				}
				out = append(out, p)
			}
		}
		if len(r.Below)*len(r.Above) == 0 {
			return nil, fmt.Errorf("row %d: below and above name a material each", i+1)
		}
	}
	return out, nil
}

// sound tells what is wrong with a pair, nil if nothing is.
func (p Pair) sound() error {
	known := append([]Sort{Anything}, sorts...)
	verdicts := []check.State{check.OK, check.Watch, check.Stop}
	switch {
	case !slices.Contains(known, p.Below) || !slices.Contains(known, p.Above):
		return fmt.Errorf("no such material; one of %q", known)
	case !slices.Contains(states, p.State):
		return fmt.Errorf("no such state; one of %q", states)
	case !slices.Contains(verdicts, p.Verdict):
		return fmt.Errorf("verdict %q: one of %q", p.Verdict, verdicts)
	case p.Preparation == "" || p.Risk == "" || p.Ruling == "":
		return fmt.Errorf("prepare, risk and why are all needed")
	case len(p.Statements) == 0:
		return fmt.Errorf("nobody is named who says so")
	}
	for _, s := range p.Statements {
		switch {
		case s.Says == "" || s.Source == "":
			return fmt.Errorf("a statement needs its words and its source")
		case !slices.Contains([]Provenance{Read, MakerPage, ForumPost, Memory, Practice}, s.Provenance):
			return fmt.Errorf("provenance %q of %q is unknown", s.Provenance, s.Source)
		case !slices.Contains(verdicts, s.Verdict):
			return fmt.Errorf("verdict %q of %q: one of %q", s.Verdict, s.Source, verdicts)
		case s.Verdict != p.Statements[0].Verdict && p.Disagreement == "":
			return fmt.Errorf("sources contradict each other and no words say so")
		}
	}
	return nil
}
