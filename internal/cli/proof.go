package cli

import (
	"fmt"
	"io"
	"os"
	"strings"
	"text/tabwriter"

	"scarfwright/repair/proof"
	"scarfwright/repair/working"
)

type proofCommand struct {
	Markdown string `help:"Write the table to this file as Markdown." placeholder:"FILE" type:"path" optional:""`
	JSON     bool   `help:"Print JSON."`
}

func (c proofCommand) Run(p Program) error {
	checks := proof.All()
	failed := proof.Failed(checks)
	switch {
	case c.Markdown != "":
		var b strings.Builder
		proof.WriteMarkdown(&b, checks)
		if err := os.WriteFile(c.Markdown, []byte(b.String()), 0o644); err != nil {
			return err
		}
		fmt.Fprintf(p.Out, "%d checks, %d off, written to %s\n", len(checks), len(failed), c.Markdown)
	case c.JSON:
		if err := writeJSON(p.Out, proof.Rows(checks)); err != nil {
			return err
		}
	default:
		if err := printProof(p.Out, checks); err != nil {
			return err
		}
	}
	if len(failed) > 0 {
		return refused(fmt.Errorf("%d of %d checks are off", len(failed), len(checks)))
	}
	return nil
}

func printProof(out io.Writer, checks []proof.Check) error {
	w := tabwriter.NewWriter(out, 0, 4, 2, ' ', 0)
	group := ""
	for _, c := range checks {
		if head := c.Group + "\n  source: " + c.Source + "\n  known by: " + string(c.Provenance); head != group {
			group = head
			fmt.Fprintf(w, "\n%s\n", head)
			fmt.Fprintf(w, "  what\texpected\tours\ttolerance\t\n")
		}
		mark := "ok"
		if !c.Pass() {
			mark = "OFF " + c.Err
		}
		fmt.Fprintf(w, "  %s\t%s %s\t%s\t%s\t%s\n", c.What, working.Num(c.Expected, 6), c.Unit, working.Num(c.Ours, 7), c.Tolerance(), mark)
	}
	fmt.Fprintf(w, "\n%d checks, %d off\n", len(checks), len(proof.Failed(checks)))
	return w.Flush()
}
