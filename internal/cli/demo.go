package cli

import (
	"fmt"
	"path/filepath"
	"text/tabwriter"

	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

type demoCommand struct {
	Out string `help:"Plan every demo job and write its pack into a folder of its own under this one." placeholder:"DIR" type:"path" optional:""`
	At  string `name:"now" help:"Date and time to print on the papers; the clock's if left out." placeholder:"TIME"`
}

func (c demoCommand) Run(p Program) error {
	now, err := moment(c.At, p.Now)
	if err != nil {
		return statusError{exitUsage, err}
	}
	w := tabwriter.NewWriter(p.Out, 0, 4, 2, ' ', 0)
	for _, j := range demo.Jobs() {
		d, err := job.Parse(j.File, j.Data)
		if err != nil {
			return err
		}
		r, err := repair.Plan(d, catalog.Default())
		if err != nil {
			return fmt.Errorf("%s: %w", j.Name, err)
		}
		state := "planned"
		switch {
		case r.Survey.Referred():
			state = "refer on first"
		case !r.Released():
			state = "recorded, not planned"
		}
		fmt.Fprintf(w, "%s\t%s\t%s\n", j.Name, d.Job.Title, state)
		if c.Out != "" {
			dir := filepath.Join(c.Out, j.Name)
			names, err := writePack(dir, r, options(r, now))
			if err != nil {
				return fmt.Errorf("%s: %w", j.Name, err)
			}
			fmt.Fprintf(w, "\t%d files in %s\t\n", len(names), dir)
		}
	}
	if c.Out == "" {
		fmt.Fprintf(w, "\nPlan one with: scarfwright plan demo:NAME [--out DIR]\n")
	}
	return w.Flush()
}

type schemaCommand struct{}

func (schemaCommand) Run(p Program) error {
	b, err := job.Schema()
	if err != nil {
		return err
	}
	_, err = p.Out.Write(append(b, '\n'))
	return err
}
