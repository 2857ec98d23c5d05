package cli

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"scarfwright/repair"
	"scarfwright/repair/check"
)

// printPlan prints a plan for a terminal: what to grind, cut, mix, in order, and
// what stands against it.
func printPlan(out io.Writer, r repair.Result) error {
	w := tabwriter.NewWriter(out, 0, 4, 2, ' ', 0)
	fmt.Fprintf(w, "Job %s: %s\nHash %s, catalogue %s\n", r.Job.Job.Number, r.Job.Job.Title, r.Hash, r.Catalogue)
	fmt.Fprintf(w, "%s\n", r.Caution)
	for _, ref := range r.Survey.Referrals {
		fmt.Fprintf(w, "\nREFER ON FIRST: %s (%s). To: %s.\n", ref.Rule, ref.Found, ref.To)
	}
	if r.Survey.NotPlanned != "" {
		fmt.Fprintf(w, "\nNOT PLANNED: %s\n", r.Survey.NotPlanned)
	}
	printVerdicts(w, r)
	if r.Design != nil {
		printDesign(w, r)
	}
	if r.Mixing != nil {
		printMixing(w, r)
	}
	printFinish(w, r)
	if len(r.Programme.Windows) > 0 {
		fmt.Fprintln(w, "\nHours with the hull warm and dry enough")
		for _, x := range r.Programme.Windows {
			fmt.Fprintf(w, "  %s\t%s\n", x.What, x.Text())
		}
	}
	fmt.Fprintln(w, "\nSteps")
	for _, s := range r.Programme.Steps {
		fmt.Fprintf(w, "  %d\t%s\t", s.Number, s.Name)
		if s.Hold != nil {
			fmt.Fprintf(w, "HOLD %s after", s.Hold.Letter)
		}
		fmt.Fprintln(w)
	}
	e := r.Estimate
	fmt.Fprintf(w, "\nHours %.1f (%.1f to %.1f), price %s %.0f (%.0f to %.0f), without tax\n", e.HoursTotal.Likely, e.HoursTotal.Low, e.HoursTotal.High, e.Currency, e.Total.Likely, e.Total.Low, e.Total.High)
	if e.ShareOfInsured > 0 {
		fmt.Fprintf(w, "%.0f %% of the insured value\n", 100*e.ShareOfInsured)
	}
	for _, b := range e.Purchases {
		if b.Short > 0 {
			var packs []string
			for _, x := range b.Buy {
				packs = append(packs, fmt.Sprintf("%d × %.4g %s", x.Count, x.Size, b.Unit))
			}
			if len(packs) == 0 {
				packs = append(packs, b.Note)
			}
			fmt.Fprintf(w, "  buy %s\tshort of %.4g %s\t%s\t%s %.0f\n", b.Name, b.Short, b.Unit, strings.Join(packs, ", "), e.Currency, b.Price)
		}
	}
	if len(r.Assumptions) > 0 {
		fmt.Fprintln(w, "\nAssumptions and limitations")
		for _, s := range append(r.Survey.Limitations, r.Assumptions...) {
			fmt.Fprintln(w, "  - "+s)
		}
	}
	return w.Flush()
}

func printVerdicts(w io.Writer, r repair.Result) {
	head := false
	for _, state := range []check.State{check.Stop, check.Watch} {
		for _, v := range r.Verdicts {
			if v.State != state {
				continue
			}
			if !head {
				fmt.Fprintln(w, "\nStands against it")
				head = true
			}
			fmt.Fprintf(w, "  %s: %s: %s (limit %s). %s\n", strings.ToUpper(string(v.State)), v.What, v.Value, v.Limit, v.Why)
		}
	}
}

func printDesign(w io.Writer, r repair.Result) {
	d := r.Design
	cut, edge := d.CutOut.Bounds(), d.Edge.Bounds()
	fmt.Fprintf(w, "\nDesign: %g:1 from the %s, %s\n", d.Ratio, d.Sides, d.Order)
	fmt.Fprintf(w, "  original\t%.2f mm\t\n  cut-out\t%.0f × %.0f mm\t\n  taper\t%.1f mm\t\n  feather edge\t%.0f × %.0f mm\t\n", d.Original.Thickness.MM(), cut.Width(), cut.Height(), d.Taper.MM(), edge.Width(), edge.Height())
	for _, p := range d.Proposals {
		mark := ""
		if p.Chosen {
			mark = "<- taken"
		}
		fmt.Fprintf(w, "  %s\t%s\t%.2f mm, stiffness %.2f × the original %s\n", p.Name, p.Code, p.Thickness.MM(), p.StiffnessRatio, mark)
	}
	if b := d.Backing; b != nil {
		fmt.Fprintf(w, "  backing\t%d piece(s) of %.0f × %.0f mm\t\n", len(b.Pieces), b.PieceLong.MM(), b.PieceShort.MM())
	}
	fmt.Fprintln(w, "\nTaper ratios side by side\n  ratio\tfeather edge mm\tground m²\tdust ml\tbond mm²/mm\tclear mm\tfits")
	for _, o := range d.Options {
		fits := "yes"
		if !o.Fits {
			fits = "NO: past " + o.Nearest
		}
		if o.Chosen {
			fits += ", taken"
		}
		fmt.Fprintf(w, "  %g:1\t%.0f × %.0f\t%.4f\t%.0f\t%.1f\t%.0f\t%s\n", o.Ratio, o.Width.MM(), o.Height.MM(), o.Ground.M2(), o.Dust.ML(), o.BondPerEdge.MM(), o.Left.MM(), fits)
	}
	fmt.Fprintln(w, "\nPlies in laying order\n  ply\tclass\tsize mm\tarea m²\tangle\tstep mm\tglass g\tresin g\tsession\treplaces")
	for _, p := range d.Plies {
		fmt.Fprintf(w, "  %s\t%s\t%.0f × %.0f\t%.4f\t%.0f°\t%.1f\t%.0f\t%.0f\t%d\t%s\n", p.Label, strings.ToUpper(p.Class), p.Width.MM(), p.Height.MM(), p.Area.M2(), p.Angle.Degrees(), p.Overlap.MM(), p.Glass.Grams(), p.Resin.Grams(), p.Session, p.Replaces)
	}
	fmt.Fprintf(w, "  all\t\t\t%.3f\t\t\t%.0f\t%.0f\n", d.Cloth.M2(), d.Glass.Grams(), d.Resin.Grams())
}
