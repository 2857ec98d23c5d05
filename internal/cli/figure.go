package cli

import (
	"encoding/json"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"text/tabwriter"

	"scarfwright/repair/figure"
)

type figureCommand struct {
	Name   string   `arg:"" optional:"" help:"Figure to compute; left out, all are listed."`
	Inputs []string `arg:"" optional:"" help:"Inputs as key=value, with units: areal=18oz/yd2."`
	JSON   bool     `help:"Print JSON."`
}

func (c figureCommand) Run(p Program) error {
	if c.Name == "" {
		return listFigures(p.Out, c.JSON)
	}
	calc, err := figure.Find(c.Name)
	if err != nil {
		return statusError{exitUsage, err}
	}
	given := map[string]string{}
	for _, in := range c.Inputs {
		key, value, ok := strings.Cut(in, "=")
		if i := slices.IndexFunc(calc.Inputs, func(x figure.Input) bool { return x.File }); i >= 0 && !ok {
			text, err := p.readText(in)
			if err != nil {
				return refused(err)
			}
			key, value, ok = calc.Inputs[i].Key, text, true
		}
		if !ok || key == "" {
			return statusError{exitUsage, fmt.Errorf("%q is not key=value.\n%s", in, usage(calc))}
		}
		if old, twice := given[key]; twice {
			return statusError{exitUsage, fmt.Errorf("%s is given twice (%s and %s). Keep one.", key, old, value)}
		}
		given[key] = value
	}
	a, err := calc.Compute(given)
	if err != nil {
		return refused(fmt.Errorf("%w\n%s", err, usage(calc)))
	}
	if c.JSON {
		return writeJSON(p.Out, a)
	}
	return printAnswer(p.Out, calc, a)
}

// readText reads a small file, or standard input for -.
func (p Program) readText(name string) (string, error) {
	const most = 1 << 20
	from := p.In
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return "", fmt.Errorf("%s: %w", name, err)
		}
		defer f.Close()
		from = f
	}
	text, err := io.ReadAll(io.LimitReader(from, most+1))
	if err == nil && len(text) > most {
		err = fmt.Errorf("%s is larger than 1 MB", name)
	}
	return string(text), err
}

// usage is one line that shows every input, and one that runs as it stands.
func usage(c figure.Calculation) string {
	return c.Usage() + "\nExample: " + c.ExampleLine()
}

func listFigures(out io.Writer, asJSON bool) error {
	all := figure.All()
	if asJSON {
		return writeJSON(out, all)
	}
	w := tabwriter.NewWriter(out, 0, 4, 2, ' ', 0)
	for i, c := range all {
		if i > 0 {
			fmt.Fprintln(w)
		}
		fmt.Fprintf(w, "%s\t%s\n", c.Name, c.Title)
		for _, in := range c.Inputs {
			unit := in.Unit
			if in.File {
				unit = figure.FileName
			}
			fmt.Fprintf(w, "  %s\t%s, such as %s%s\n", in.Key, in.Doc, unit, note(in))
		}
		fmt.Fprintf(w, "  example:\t%s\n", c.ExampleLine())
	}
	fmt.Fprintf(w, "\n%s\n", notice)
	return w.Flush()
}

func note(in figure.Input) string {
	var parts []string
	if len(in.Words) > 0 {
		parts = append(parts, "one of "+strings.Join(in.Words, ", "))
	}
	if in.Range != "" {
		parts = append(parts, in.Range)
	}
	if in.Default != "" {
		parts = append(parts, in.Default+" if left out")
	}
	if len(parts) == 0 {
		return ""
	}
	return " (" + strings.Join(parts, "; ") + ")"
}

func printAnswer(out io.Writer, c figure.Calculation, a figure.Answer) error {
	w := tabwriter.NewWriter(out, 0, 4, 2, ' ', 0)
	fmt.Fprintf(w, "%s: %s\n", c.Name, c.Title)
	for _, in := range c.Inputs {
		if t, ok := a.Inputs[in.Key]; ok {
			if in.File {
				t = "from the file"
			}
			fmt.Fprintf(w, "  %s\t%s\t%s\n", in.Key, t, in.Doc)
		}
	}
	fmt.Fprintln(w, "\nResults")
	for _, r := range a.Results.Shown(6) {
		fmt.Fprintf(w, "  %s\t%s\n", r.Name, r.Text)
	}
	for _, s := range a.Warnings {
		fmt.Fprintf(w, "\n! %s\n", s)
	}
	worked, fit := a.Lines()
	fmt.Fprintln(w, "\nWorking")
	for _, l := range worked {
		fmt.Fprintf(w, "  %s\n    %s\n", l.Name, l.Formula)
		if l.Numbers != "" {
			fmt.Fprintf(w, "    %s\n", l.Numbers)
		}
		fmt.Fprintf(w, "    = %s   [%s]\n", l.Result(), l.Source)
		if l.Holds != "" {
			fmt.Fprintf(w, "    holds for: %s\n", l.Holds)
		}
	}
	if len(fit) > 0 {
		fmt.Fprintf(w, "\nHow the entry was fitted   [%s]\n", fit[0].Source)
		for _, l := range fit {
			fmt.Fprintf(w, "  %s\t%s\t%s\n", l.Name, l.Result(), l.Numbers)
		}
	}
	fmt.Fprintf(w, "\n%s\n", notice)
	return w.Flush()
}

func writeJSON(out io.Writer, v any) error {
	enc := json.NewEncoder(out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(v)
}
