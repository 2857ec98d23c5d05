package cli

import (
	"cmp"
	"fmt"
	"io"
	"text/tabwriter"

	"scarfwright/physics/si"
	"scarfwright/present/sheet"
	"scarfwright/repair/catalog"
	"scarfwright/repair/caution"
	"scarfwright/repair/job"
	"scarfwright/repair/ways"
)

type optionsCommand struct {
	Job   string `arg:"" help:"Job file (YAML), or demo:NAME for a demo job; - reads standard input."`
	JSON  bool   `help:"Print the comparison as JSON."`
	Out   string `help:"Write the calculation sheet and the drawings to this folder." placeholder:"DIR" type:"path" optional:""`
	Cases bool   `help:"Print every load of every way, not only the weakest."`
	Units string `help:"Units to print in: metric or us; the job's choice if left out." enum:",metric,us" default:""`
	Paper string `help:"Paper of the sheet: A4 or Letter; the job's choice if left out." enum:",A4,Letter" default:""`
	At    string `name:"now" help:"Date and time to print on the sheet, such as 2026-05-04; the clock's if left out." placeholder:"TIME"`
}

func (c optionsCommand) Run(p Program) error {
	now, err := moment(c.At, p.Now)
	if err != nil {
		return statusError{exitUsage, err}
	}
	d, err := p.readJob(c.Job)
	if err != nil {
		return refused(err)
	}
	d.Choices.Units = cmp.Or(c.Units, d.Choices.Units)
	d.Choices.Paper = cmp.Or(c.Paper, d.Choices.Paper)
	r, err := ways.Compare(d, catalog.Default(), nil)
	if err != nil {
		return refused(fmt.Errorf("%s: %w", c.Job, err))
	}
	if c.JSON {
		err = writeJSON(p.Out, r)
	} else {
		err = printWays(p.Out, d, r, c.Cases)
	}
	if err != nil {
		return err
	}
	if c.Out != "" {
		names, err := writeWays(c.Out, d, r, sheet.Options{Paper: d.Choices.Paper, Units: d.Choices.Units, Now: now, Program: "scarfwright " + Version})
		if err != nil {
			return err
		}
		if !c.JSON {
			fmt.Fprintf(p.Out, "\n%d files in %s\n", len(names), c.Out)
			for _, n := range names {
				fmt.Fprintln(p.Out, "  "+n)
			}
		}
	}
	switch {
	case len(r.Referrals) > 0, r.NotCompared != "":
		return statusError{exitReferred, nil}
	case len(r.Ways) > 0 && r.Recommended < 0: // nothing fits, or something must be settled first
		return statusError{exitStopped, nil}
	}
	return nil
}

// printWays prints the comparison: the recommendation and its reason first.
func printWays(out io.Writer, d job.Description, r ways.Result, cases bool) error {
	t := tabwriter.NewWriter(out, 0, 4, 2, ' ', 0)
	f := func(format string, a ...any) { fmt.Fprintf(t, format, a...) }
	sys := d.Choices.System()
	f("Job %s: %s\nWays to repair it, each against the panel as it was\n%s\n", d.Job.Number, d.Job.Title, caution.General)
	for _, x := range r.Referrals {
		f("\nREFER ON FIRST: %s (%s). To: %s.\n", x.Rule, x.Found, x.To)
	}
	if r.Recommended >= 0 {
		f("\nRECOMMENDED: %s, %s.\n", r.Ways[r.Recommended].Name, r.Ways[r.Recommended].Plies)
	}
	f("%s\n", r.Reason)
	if len(r.Ways) == 0 {
		return t.Flush()
	}
	f("\nWay\tPlies\tStrength\tWeakest in\tStiffness\tSize\tGround\tDust\tBond\tWeight\tHours\tDays\tPrice\t\n")
	for _, w := range r.Ways {
		f("%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%s\t%.1f\t%d\t%s%.0f\t%s\n", w.Name, w.Plies, w.Strength.Text(), w.Weakest(), ways.Num(w.Stiffness.Likely),
			size(w, sys), si.Show(w.Ground, sys, 2), si.Show(w.DustMass, sys, 2), si.Show(w.Bond, sys, 2), ways.Weight(w.Added, sys), w.Hours.Likely, w.Days, cmp.Or(d.Crew.Currency, "¤"), w.Price, w.Standing())
		if cases {
			for _, x := range w.Cases {
				f("\t  %s\t%s\t%s\t\t%s\n", x.Load, ways.Num(x.Strength), x.Mode, "by hand "+ways.Num(x.Hand)+": "+x.Where)
			}
		}
	}
	f("\nStrength and stiffness: repaired over original, 1 as before; the least over these loads:\n")
	for _, l := range r.Loads {
		f("  %s: %s. %s\n", l.Name, l.Detail, l.Source)
	}
	for i, m := range r.Measurements {
		if i == 0 {
			f("\nWhat would narrow the strength of the recommended way most:\n")
		}
		f("  %s (alone it makes %s to %s): %s\n", m.What, ways.Num(m.Now.Low), ways.Num(m.Now.High), m.How)
	}
	section := func(title string, lines []string) {
		for i, x := range lines {
			if i == 0 {
				f("\n%s\n", title)
			}
			f("  %s\n", x)
		}
	}
	for _, w := range r.Ways {
		if len(w.Notes) > 0 && (w.Unsuited != "" || w.Recommended || w.Chosen || w.Kind == ways.Stepped) {
			section(w.Name, w.Notes)
		}
	}
	section("Outside the range of a formula", r.Outside)
	section("Assumed", r.Assumptions)
	section("Limits", r.Limits)
	f("\nCautions\n")
	for _, x := range r.Cautions {
		f("  %s: %s\n", x.Signal, x.Text)
	}
	return t.Flush()
}

func size(w ways.Way, sys si.System) string {
	if w.Size[0] == 0 {
		return "–"
	}
	return si.Show(w.Size[0], sys, 3) + " × " + si.Show(w.Size[1], sys, 3)
}
