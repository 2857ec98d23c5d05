// Package pack lists the files of a job pack: papers, pictures, templates, the
// plan as data and the job itself. The command line writes them to a folder,
// the pages offer them one by one; neither knows what is in them.
package pack

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"

	"scarfwright/present/drawing"
	"scarfwright/present/sheet"
	"scarfwright/present/view"
	"scarfwright/repair"
	"scarfwright/repair/job"
	"scarfwright/repair/ways"
)

// File is one file of a pack. Write may be called more than once.
type File struct {
	Name  string // "job-card.pdf"
	Title string // for people
	Type  string // media type
	Write func(io.Writer) error
}

// Media types.
const (
	pdf  = "application/pdf"
	svg  = "image/svg+xml"
	png  = "image/png"
	dxf  = "image/vnd.dxf"
	jsn  = "application/json"
	yaml = "application/yaml"
)

// pngDPI of the pictures in a pack: readable in a message, small enough to send.
const pngDPI = 150

// Files returns the files of a plan's pack in the order a person wants them. A
// plan that is referred on has a referral sheet where the job card would be, and
// no templates to cut from.
func Files(r repair.Result, o sheet.Options) []File {
	paper := func(name, title string, write func(io.Writer, repair.Result, sheet.Options) error) File {
		return File{name, title, pdf, func(w io.Writer) error { return write(w, r, o) }}
	}
	var out []File
	if r.Survey.Referred() {
		out = append(out, paper("referral-sheet.pdf", "Referral sheet: who must decide first", sheet.ReferralSheet))
	}
	if r.Released() {
		out = append(out, paper("job-card.pdf", "Job card: operations, doses, hold points", sheet.JobCard))
		if r.Design != nil {
			out = append(out, paper("templates.pdf", "Templates at 1:1, tiled", sheet.Templates))
		}
	}
	out = append(out,
		paper("estimate.pdf", "Shopping list, hours and price", sheet.Estimate),
		paper("working.pdf", "How every number was got", sheet.Working))
	if r.Design != nil {
		out = append(out, pictures("section", "Section through the repair", view.Section(r))...)
		out = append(out, pictures("plan", "Plan view", view.Plan(r))...)
		if r.Released() {
			t := view.Layout(r, view.Templates(r))
			out = append(out,
				File{"templates.svg", "Templates, one drawing", svg, t.WriteSVG},
				File{"templates.dxf", "Templates for a plotter or cutter", dxf, t.WriteDXF})
		}
	}
	for i, s := range view.Cures(r, view.Room{}) {
		out = append(out, pictures(fmt.Sprintf("cure-%d", i+1), fmt.Sprintf("Heat and cure, session %d", i+1), s)...)
	}
	if s := view.Profile(r, view.Room{}); s != nil {
		out = append(out, pictures("heat-through", "Heat through the thickness", s)...)
	}
	if s := view.PotLife(r, view.Room{}); s != nil {
		out = append(out, pictures("pot-life", "Working time against mass, for the wall", s)...)
	}
	return append(out,
		File{"plan.json", "The whole plan as data", jsn, func(w io.Writer) error {
			b, err := json.Marshal(r)
			if err != nil {
				return err
			}
			var pretty bytes.Buffer
			if err := json.Indent(&pretty, b, "", "  "); err != nil {
				return err
			}
			pretty.WriteByte('\n')
			_, err = pretty.WriteTo(w)
			return err
		}},
		File{"job.yaml", "The job file", yaml, func(w io.Writer) error { return job.Write(w, r.Job) }})
}

func pictures(name, title string, s *drawing.Scene) []File {
	return []File{
		{name + ".svg", title + ", SVG", svg, s.WriteSVG},
		{name + ".png", title + ", PNG", png, func(w io.Writer) error { return s.WritePNG(w, pngDPI) }},
	}
}

// WaysFiles returns the papers and pictures of a comparison of ways.
func WaysFiles(d job.Description, r ways.Result, o sheet.Options) []File {
	if len(r.Ways) == 0 {
		return nil
	}
	paper := func(name, title string, write func(io.Writer, job.Description, ways.Result, sheet.Options) error) File {
		return File{name, title, pdf, func(w io.Writer) error { return write(w, d, r, o) }}
	}
	out := []File{paper("options.pdf", "Ways to repair it, compared", sheet.OptionSheet)}
	if r.Calculation != nil {
		out = append(out, paper("calculation-sheet.pdf", "Calculation sheet: the strength line by line", sheet.CalculationSheet))
	}
	out = append(out, pictures("options", "Ways side by side", view.WaysBars(d, r))...)
	if s := view.WaysField(d, r); s != nil {
		out = append(out, pictures("strain", "Strain in the repaired panel", s)...)
	}
	if s := view.WaysSlope(d, r); s != nil {
		out = append(out, pictures("bond", "Shear of the bond along the slope", s)...)
	}
	return append(out, File{"options.json", "The comparison as data", jsn, func(w io.Writer) error {
		b, err := json.MarshalIndent(r, "", "  ")
		if err != nil {
			return err
		}
		_, err = w.Write(append(b, '\n'))
		return err
	}})
}
