package cli

import (
	"fmt"
	"io"
	"strings"

	"scarfwright/repair/check"
	"scarfwright/repair/overcoat"
)

type overcoatCommand struct {
	On    string `help:"Material below: ${sorts}." placeholder:"SORT"`
	Lay   string `help:"Material to lay on it: ${laid}." placeholder:"SORT"`
	State string `help:"State of the surface below: ${states}." placeholder:"STATE"`
	JSON  bool   `help:"Print JSON."`
}

// overcoatWords are the words in the help, as they may be typed without quotes.
func overcoatWords() map[string]string {
	return map[string]string{"sorts": typed(overcoat.Sorts()), "laid": typed(overcoat.Laid()), "states": typed(overcoat.States())}
}

func typed[T ~string](words []T) string {
	var out []string
	for _, w := range words {
		first, _, _ := strings.Cut(string(w), ",")
		out = append(out, strings.ReplaceAll(first, " ", "-"))
	}
	return strings.Join(out, ", ")
}

// overcoatAnswer is the table as JSON, narrowed.
type overcoatAnswer struct {
	On       overcoat.Sort    `json:"on,omitempty"`
	Lay      overcoat.Sort    `json:"lay,omitempty"`
	State    overcoat.State   `json:"state,omitempty"`
	Pairs    []overcoat.Pair  `json:"pairs"`
	NotKnown []overcoat.State `json:"not_known"` // states of which the table knows nothing; only with on and lay
	Caution  string           `json:"caution"`
}

// Run prints what may be laid on what, with who says so.
func (c overcoatCommand) Run(p Program) error {
	ask, err := overcoat.Parse(c.On, c.Lay, c.State)
	if err != nil {
		return statusError{exitUsage, err}
	}
	pairs, missing := overcoat.Narrow(ask), overcoat.Unknown(ask)
	if c.JSON {
		return writeJSON(p.Out, overcoatAnswer{
			ask.On, ask.Lay, ask.State, append([]overcoat.Pair{}, pairs...), append([]overcoat.State{}, missing...), notice,
		})
	}
	printOvercoat(p.Out, ask, pairs, missing)
	return nil
}

func printOvercoat(out io.Writer, ask overcoat.Ask, pairs []overcoat.Pair, missing []overcoat.State) {
	for _, g := range overcoat.Grouped(pairs) {
		fmt.Fprintf(out, "On %s\n", g.Below)
		for _, e := range g.Entries {
			fmt.Fprintf(out, "\n  %s: %s on %s (%s)\n", verdictWord(e.Verdict), e.Laid(), g.Below, e.State)
			fmt.Fprintf(out, "    first: %s\n    risk: %s\n    our ruling: %s\n", e.Preparation, e.Risk, e.Ruling)
			for _, s := range e.Statements {
				fmt.Fprintf(out, "    %s: %s [%s]\n", s.Verdict, s.Says, s.Cited())
			}
			if e.Disputed() {
				fmt.Fprintf(out, "    SOURCES DISAGREE: %s\n", e.Disagreement)
			}
		}
		fmt.Fprintln(out)
	}
	if words := overcoat.NotKnown(ask, pairs, missing); words != "" {
		fmt.Fprintf(out, "%s\n\n", words)
	}
	fmt.Fprintf(out, "%s\n%s\n", overcoat.Legend, notice)
}

// verdictWord is a verdict as it stands in print: what is not ok stands out without colour.
func verdictWord(s check.State) string {
	if s == check.OK {
		return "ok"
	}
	return strings.ToUpper(string(s))
}
