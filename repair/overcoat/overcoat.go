// Package overcoat is the table of what may be laid on what: for a surface and
// the state it is in, whether the next material holds on it, what has to be
// done to the surface first, what can go wrong, and who says so.
//
// The table is data, in table.yaml, and every statement in it carries its
// source and how much of that source was in front of us. Where sources
// contradict each other all of them are shown, with what we make of it and
// why; a reader who trusts another of them can see what he is choosing.
//
//	p, ok := overcoat.Find(overcoat.Epoxy, overcoat.Gelcoat, overcoat.Sanded)
//	p.Verdict       // check.Watch
//	p.Disagreement  // "One maker ... another ..."
//
// # What a verdict means
//
// It is the verdict for laying the upper material on after the preparation
// named. A hard, unsanded face is therefore ok where washing and sanding makes
// it good, and stop where nothing does.
//
// # Limits
//
// Pairs are not symmetric: epoxy holds on polyester, polyester does not hold on
// epoxy. Looking a pair up the wrong way round finds the other pair or none,
// never the mirror image. What is not in the table is not known here, and For
// stops on it. Generic materials only: the sheets of both materials in hand go
// over every line. No figure for a tie coat between epoxy and gelcoat was found
// in any source, so none is given.
package overcoat

import (
	"fmt"
	"slices"
	"strings"

	"scarfwright/repair/check"
)

// Sort is a sort of material, below or above.
type Sort string

// The sorts. OldLaminate is the boat's own, polyester or of a resin nobody
// knows; a boat known to be built in epoxy has Epoxy below.
const (
	OldLaminate  Sort = "old laminate"
	Polyester    Sort = "polyester"
	VinylEster   Sort = "vinyl ester"
	Epoxy        Sort = "epoxy"
	EpoxyFiller  Sort = "epoxy filler"
	EpoxyBarrier Sort = "epoxy barrier"
	Gelcoat      Sort = "gelcoat" // polyester, with or without wax in it
	Paint        Sort = "paint"
	Anything     Sort = "anything" // in the table only, never looked up
)

// State is the state of the surface below.
type State string

// The states, from the youngest surface to the worst.
const (
	Wet          State = "wet"            // not gelled
	Tacky        State = "tacky"          // gelled, a nail dents it: the bond is chemical
	Hard         State = "hard, unsanded" // past that; shiny or with blush on it
	Sanded       State = "sanded"         // dull all over, within a day
	Waxed        State = "waxed"          // cured with wax in it, or polished
	Contaminated State = "contaminated"   // silicone, oil, salt, damp, smoke, hand marks
)

// Provenance is how much of a source was in front of us.
type Provenance string

// The provenances. Pages of makers and dealers are read in part and their
// addresses withheld, for the project names no brand.
const (
	Read      Provenance = "read in part"
	MakerPage Provenance = "maker's or dealer's page, read in part, address withheld"
	ForumPost Provenance = "forum post, read"
	Memory    Provenance = "from memory"
	Practice  Provenance = "common practice, no source"
	Ours      Provenance = "our own rule, see docs/decisions" // of a pair the table does not know
)

// Statement is what one source says about a pair, and the verdict that it comes to.
type Statement struct {
	Says       string      `json:"says"`
	Verdict    check.State `json:"verdict"`
	Source     string      `json:"source"` // key of docs/sources.md, or the words there
	Provenance Provenance  `json:"provenance"`
}

// Cited names the source and, where it is not said by that already, its provenance.
func (s Statement) Cited() string {
	if s.Source == string(s.Provenance) {
		return s.Source
	}
	return s.Source + " (" + string(s.Provenance) + ")"
}

// Pair is one material on another.
type Pair struct {
	Below        Sort        `json:"below"`
	Above        Sort        `json:"above"`
	State        State       `json:"state"` // of the surface below
	Preparation  string      `json:"preparation"`
	Risk         string      `json:"risk"`
	Verdict      check.State `json:"verdict"` // after the preparation
	Ruling       string      `json:"ruling"`  // why this verdict, in our words
	Statements   []Statement `json:"statements"`
	Disagreement string      `json:"disagreement,omitempty"` // where sources part, in words
}

// Name says the pair in words: "gelcoat on epoxy (sanded)".
func (p Pair) Name() string { return fmt.Sprintf("%s on %s (%s)", p.Above, p.Below, p.State) }

// Source names every source of the pair, each once, with its provenance.
func (p Pair) Source() string {
	var out []string
	for _, s := range p.Statements {
		if w := s.Cited(); !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return strings.Join(out, "; ")
}

// Check returns the pair as a verdict of the plan.
func (p Pair) Check() check.Verdict {
	why := "First: " + p.Preparation + ". " + p.Ruling + " Risk: " + p.Risk + "."
	if p.Disagreement != "" {
		why += " Sources disagree: " + p.Disagreement
	}
	return check.Verdict{What: p.Name(), State: p.Verdict, Why: why, Source: p.Source()}
}

// Pairs returns the whole table in its own order, rows for anything included.
// The slices belong to the caller.
func Pairs() []Pair {
	out := slices.Clone(table())
	for i := range out {
		out[i].Statements = slices.Clone(out[i].Statements)
	}
	return out
}

// Find returns what the table says about laying above on below in that state,
// and false where it says nothing. A row for the very pair goes before a row
// for anything. The pair returned names what was asked for. It panics on a sort
// or a state that does not exist, so that a swapped or misspelt argument cannot
// pass for "not known".
func Find(below, above Sort, state State) (Pair, bool) {
	must(below)
	must(above)
	if !slices.Contains(states, state) {
		panic(fmt.Sprintf("overcoat: no state %q", state))
	}
	p, ok := row(below, above, state)
	if ok {
		p.Below, p.Above = below, above
		p.Statements = slices.Clone(p.Statements)
	}
	return p, ok
}

// row is the row of the table that holds for a pair, as the table names it.
func row(below, above Sort, state State) (Pair, bool) {
	for _, want := range [][2]Sort{{below, above}, {Anything, above}, {below, Anything}, {Anything, Anything}} {
		for _, p := range table() {
			if p.Below == want[0] && p.Above == want[1] && p.State == state {
				return p, true
			}
		}
	}
	return Pair{}, false
}

var (
	sorts  = []Sort{OldLaminate, Polyester, VinylEster, Epoxy, EpoxyFiller, EpoxyBarrier, Gelcoat, Paint}
	states = []State{Wet, Tacky, Hard, Sanded, Waxed, Contaminated}
)

// Sorts returns the sorts that can be looked up.
func Sorts() []Sort { return slices.Clone(sorts) }

// States returns the states of a surface.
func States() []State { return slices.Clone(states) }

func must(s Sort) {
	if !slices.Contains(sorts, s) {
		panic(fmt.Sprintf("overcoat: no material %q to look up", s))
	}
}

// Of returns the sort of a laminating resin by its kind in the catalogue:
// "epoxy", "polyester" or "vinyl ester".
func Of(kind string) (Sort, error) {
	for _, s := range []Sort{Epoxy, Polyester, VinylEster} {
		if string(s) == kind {
			return s, nil
		}
	}
	return "", fmt.Errorf("resin kind %q: epoxy, polyester or vinyl ester", kind)
}
