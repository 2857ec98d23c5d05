package cli

import (
	"fmt"
	"io"
	"strings"

	"scarfwright/repair"
)

func printMixing(w io.Writer, r repair.Result) {
	m := r.Mixing
	second := "hardener"
	if m.Catalysed {
		second = fmt.Sprintf("catalyst at %.3g %%", m.Dose.Percent())
	}
	fmt.Fprintf(w, "\nMixing %s: %.0f g in the laminate, %.0f g mixed with %.0f %% waste, %.1f g of %s in all\n",
		m.Name, m.Total.Laminate.Grams(), m.Mixed.Mixed.Grams(), m.Waste.Percent(), m.Mixed.Second.Grams(), second)
	for _, s := range m.Sessions {
		b := s.Batches
		fmt.Fprintf(w, "  %s\t%d × %.0f g resin\t%.1f g = %.1f ml %s each\tworking time of 100 g %s\n",
			s.Name, b.Count, b.Resin.Grams(), b.Second.Grams(), b.SecondVolume.ML(), strings.Fields(second)[0], s.Words)
	}
}

func printFinish(w io.Writer, r repair.Result) {
	f := r.Finish
	if p := f.Paste; p != nil {
		fmt.Fprintf(w, "\nFilling\n")
		for _, x := range f.Fills {
			fmt.Fprintf(w, "  %s\t%.2f ml\n", x.What, x.Volume.ML())
		}
		fmt.Fprintf(w, "  paste\t%.1f g needed, mix %.0f g\n  catalyst at %.3g %%\t%.2f g = %.2f ml by %s; the true dose lies between %.2f and %.2f %%\n",
			p.Needed.Grams(), p.Mixed.Grams(), p.Dose.Percent(), p.Catalyst.Grams(), p.CatalystVolume.ML(), p.By, p.LowDose.Percent(), p.HighDose.Percent())
	}
	if f.Fairing > 0 || f.Barrier != nil || f.Coat != nil {
		fmt.Fprintln(w, "\nFinish")
	}
	if f.Fairing > 0 {
		fmt.Fprintf(w, "  fairing compound\t%.0f ml over %.3f m²\n", f.Fairing.ML(), f.FairArea.M2())
	}
	if b := f.Barrier; b != nil {
		fmt.Fprintf(w, "  %s\t%.0f ml, %d coats of %.2f mm over %.3f m²\n", b.Name, b.Volume.ML(), b.Coats, b.Film.MM(), b.Area.M2())
	}
	if c := f.Coat; c != nil {
		fmt.Fprintf(w, "  %s\t%.0f g, %d coats, %.2f mm over %.3f m²; catalyst at %.3g %% %.1f g = %.1f ml\n",
			c.Name, c.Mass.Grams(), c.Coats, c.Film.MM(), c.Area.M2(), c.Dose.Percent(), c.Catalyst.Grams(), c.CatalystVolume.ML())
	}
	if len(f.Grits) > 0 {
		var ps []string
		for _, g := range f.Grits {
			ps = append(ps, fmt.Sprintf("P%d", g.P))
		}
		fmt.Fprintf(w, "  sanding grades\t%s\n", strings.Join(ps, " "))
	}
}
