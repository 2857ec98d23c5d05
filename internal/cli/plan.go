package cli

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"

	"scarfwright/present/pack"
	"scarfwright/present/sheet"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

type planCommand struct {
	Job   string `arg:"" help:"Job file (YAML), or demo:NAME for a demo job; - reads standard input."`
	Out   string `help:"Write the job pack to this folder." placeholder:"DIR" type:"path" optional:""`
	JSON  bool   `help:"Print the whole plan as JSON."`
	Units string `help:"Units to print in: metric or us; the job's choice if left out." enum:",metric,us" default:""`
	Paper string `help:"Paper of the sheets: A4 or Letter; the job's choice if left out." enum:",A4,Letter" default:""`
	At    string `name:"now" help:"Date and time to print on the papers, such as 2026-05-04 or 2026-05-04T08:00; the clock's if left out." placeholder:"TIME"`
}

func (c planCommand) Run(p Program) error {
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
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		return refused(fmt.Errorf("%s: %w", c.Job, err))
	}
	if c.JSON {
		if err := writeJSON(p.Out, r); err != nil {
			return err
		}
	} else if err := printPlan(p.Out, r); err != nil {
		return err
	}
	if c.Out != "" {
		names, err := writePack(c.Out, r, options(r, now))
		if err != nil {
			return err
		}
		if !c.JSON {
			fmt.Fprintf(p.Out, "\nJob pack: %d files in %s\n", len(names), c.Out)
			for _, n := range names {
				fmt.Fprintln(p.Out, "  "+n)
			}
		}
	}
	return planStatus(r)
}

// planStatus makes hard stops and stops visible to a script.
func planStatus(r repair.Result) error {
	switch {
	case !r.Released():
		return statusError{exitReferred, nil}
	case r.Stopped():
		return statusError{exitStopped, nil}
	}
	return nil
}

// options are the papers' settings: the job's choices, the clock, this program.
func options(r repair.Result, now time.Time) sheet.Options {
	return sheet.Options{Paper: r.Job.Choices.Paper, Units: r.Job.Choices.Units, Now: now, Program: "scarfwright " + Version}
}

// moment reads --now, or asks the clock.
func moment(text string, clock func() time.Time) (time.Time, error) {
	if text == "" {
		return clock(), nil
	}
	for _, layout := range []string{time.RFC3339, "2006-01-02T15:04", "2006-01-02 15:04", "2006-01-02"} {
		if t, err := time.Parse(layout, text); err == nil {
			return t, nil
		}
	}
	return time.Time{}, fmt.Errorf("--now: %q is not a date or a time such as 2026-05-04 or 2026-05-04T08:00", text)
}

// readJob reads a job file, a demo job, or standard input.
func (p Program) readJob(name string) (job.Description, error) {
	if n, ok := strings.CutPrefix(name, "demo:"); ok {
		return demo.Parse(n)
	}
	if name == "-" {
		return job.Read("standard input", p.In)
	}
	f, err := os.Open(name)
	if err != nil {
		if errors.Is(err, os.ErrNotExist) {
			return job.Description{}, fmt.Errorf("there is no file %s; \"scarfwright demo\" lists the demo jobs", name)
		}
		return job.Description{}, err
	}
	defer f.Close()
	return job.Read(filepath.Base(name), f)
}

// writePack writes the files of a job pack and returns their names in order. A
// file is written beside its place and moved there whole, so that a pack that
// is interrupted never leaves half a template to be cut from.
func writePack(dir string, r repair.Result, o sheet.Options) ([]string, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	var names []string
	for _, f := range pack.Files(r, o) {
		if err := writeWhole(filepath.Join(dir, f.Name), f.Write); err != nil {
			return names, fmt.Errorf("%s: %w", f.Name, err)
		}
		names = append(names, f.Name)
	}
	return names, nil
}

func writeWhole(path string, write func(io.Writer) error) error {
	tmp, err := os.CreateTemp(filepath.Dir(path), ".part-*")
	if err != nil {
		return err
	}
	defer os.Remove(tmp.Name()) // no-op once renamed
	if err := errors.Join(write(tmp), tmp.Chmod(0o644), tmp.Close()); err != nil {
		return err
	}
	return os.Rename(tmp.Name(), path)
}
