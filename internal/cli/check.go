package cli

import (
	"fmt"

	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
)

type checkCommand struct {
	Job string `arg:"" help:"Job file (YAML), demo:NAME, or - for standard input."`
}

// Run reads a job file. Everything wrong with it is told at once, each with its
// line; a file that reads clean is planned, and what the plan objects to is
// told too.
func (c checkCommand) Run(p Program) error {
	d, err := p.readJob(c.Job)
	if err != nil {
		return refused(err)
	}
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		return refused(fmt.Errorf("%s: reads clean, but cannot be planned: %w", c.Job, err))
	}
	fmt.Fprintf(p.Out, "%s: reads clean. Job %s, %s, hash %s.\n", c.Job, d.Job.Number, d.Job.Title, r.Hash)
	for _, ref := range r.Survey.Referrals {
		fmt.Fprintf(p.Out, "REFER ON: %s (%s): %s\n", ref.Rule, ref.Found, ref.To)
	}
	if r.Survey.NotPlanned != "" {
		fmt.Fprintln(p.Out, "NOT PLANNED:", r.Survey.NotPlanned)
	}
	for _, v := range r.Verdicts {
		if v.State != check.OK {
			fmt.Fprintf(p.Out, "%s: %s: %s. %s\n", v.State, v.What, v.Value, v.Why)
		}
	}
	for _, l := range r.Survey.Limitations {
		fmt.Fprintln(p.Out, "limitation:", l)
	}
	return planStatus(r)
}
