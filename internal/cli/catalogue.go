package cli

import (
	"fmt"
	"text/tabwriter"

	"scarfwright/repair/catalog"
)

type catalogueCommand struct {
	Class string `arg:"" optional:"" help:"Class to show; left out, all are listed."`
}

// Run lists the classes by kind, or every value of one class with its range,
// source and date.
func (c catalogueCommand) Run(p Program) error {
	cat := catalog.Default()
	w := tabwriter.NewWriter(p.Out, 0, 4, 2, ' ', 0)
	if c.Class != "" {
		e, err := cat.Entry(c.Class)
		if err != nil {
			return statusError{exitUsage, err}
		}
		fmt.Fprintf(w, "%s: %s\n", e.Class, e.Name)
		for _, f := range catalog.Facts(e.Entry) {
			fmt.Fprintf(w, "  %s\t%s\t%s\t%s\n", f.Name, f.Text, f.Source, f.Date)
		}
		return w.Flush()
	}
	for _, k := range cat.Groups() {
		fmt.Fprintf(w, "%s\n", k.Name)
		for _, e := range k.Entries {
			fmt.Fprintf(w, "  %s\t%s\n", e.Class, e.Name)
		}
	}
	fmt.Fprintf(w, "\nEvery value of one, with its source: scarfwright catalogue CLASS\n%s\n", notice)
	return w.Flush()
}
