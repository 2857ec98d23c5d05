package cli

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/repair/curing"
)

func (p printer) mixing() {
	m := p.Mixing
	word, second := "hardener", fmt.Sprintf("hardener at %.4g to 100 by mass", m.PerMass)
	if m.Catalysed {
		word, second = "catalyst", fmt.Sprintf("catalyst at %.3g %%", m.Dose.Percent())
	}
	p.f("\nMixing %s: %.0f g in the laminate, %.0f g with losses of %.0f %%", m.Name, m.Total.Laminate.Grams(), m.Total.Mixed.Grams(), m.Waste.Percent())
	if !p.Released() {
		p.f("\n")
		return
	}
	if m.Mixable() {
		p.f(", %.0f g mixed in all; %.1f g of %s", m.Mixed.Mixed.Grams(), m.Mixed.Second.Grams(), second)
	}
	p.f("\n")
	for _, s := range m.Sessions {
		if s.WorkingTime == 0 {
			p.f("  %s\tNOTHING MAY BE MIXED YET. %s\n", s.Name, s.Words)
			continue
		}
		b := s.Batches
		p.f("  %s\t%d × %.0f g resin\t%.1f g = %.1f ml %s each\t%s\n",
			s.Name, b.Count, b.Resin.Grams(), b.Second.Grams(), b.SecondVolume.ML(), word, s.Told())
	}
	var losses []string
	for _, l := range m.Losses {
		losses = append(losses, fmt.Sprintf("%s %.0f g", l.What, l.Mass.Grams()))
	}
	if len(losses) > 0 {
		p.f("  losses in all: %s\n", strings.Join(losses, ", "))
	}
}

// curing prints when each session gels, may be laid on and sanded, and what it
// comes to.
func (p printer) curing() {
	p.f("\nCure, fitted to the sheet, at the middle of the repair\n")
	for _, s := range p.Curing.Sessions {
		when := ""
		if s.Day > 0 {
			when = fmt.Sprintf(", laid day %d from %02.0f h", s.Day, s.Hour)
		}
		p.f("  %s%s: %d plies, %s; %s, limit %s\n", s.Name, when, len(s.Plies), p.long(s.Thickness), s.Hottest(p.sys), curing.Degrees(s.Limit, p.sys))
		p.f("    gelled after %.0f min; next session without sanding %s after mixing; sandable after %.0f h\n", s.Gelled().Minutes(), s.Next(), math.Ceil(s.Sand.Hours()))
		p.f("    %s\n", s.Reached(p.sys))
	}
}

// warmth prints what a tent or a lamp changes.
func (p printer) warmth() {
	p.f("\nWhat a tent or a lamp changes, first session\n")
	for _, w := range p.Curing.Warmth {
		row := w.Row(p.sys)
		p.f("  %s: open %s\n", row[0], row[1])
		if w.Session != nil {
			p.f("    hottest %s; gelled after %s; next without sanding %s; sandable after %s; softens from %s after a day, %s after a week\n",
				row[2], row[3], row[4], row[5], row[6], row[7])
		}
	}
	p.f("  %s\n", curing.WarmthNote)
}

// coats prints how long each coat may be worked, and when it sets.
func (p printer) coats() {
	if len(p.Coats) == 0 {
		return
	}
	p.f("\nHow long each coat may be worked, and when it sets\n")
	for _, c := range p.Coats {
		row := c.Row(p.sys)
		if c.Gel == 0 {
			p.f("  %s: %s\n", row[0], c.Why)
			continue
		}
		p.f("  %s: %s; batch %s, working time %s; gelled on the hull after %s, sandable after %s\n", row[0], row[1], row[2], row[3], row[4], row[5])
	}
}

func (p printer) finish() {
	f := p.Finish
	if x := f.Paste; x != nil {
		p.f("\nFilling\n")
		for _, m := range f.Fills {
			p.f("  %s\t%.2f ml\n", m.What, m.Volume.ML())
		}
		p.f("  paste\t%.2f g needed, mix %.0f g\n  catalyst at %.3g %%\t%.2f g = %.2f ml by %s; the true dose lies between %.2f and %.2f %%\n",
			x.Needed.Grams(), x.Mixed.Grams(), x.Dose.Percent(), x.Catalyst.Grams(), x.CatalystVolume.ML(), x.By, x.LowDose.Percent(), x.HighDose.Percent())
	}
	if f.Fairing > 0 || f.Barrier != nil || f.Coat != nil {
		p.f("\nFinish\n")
	}
	if f.Fairing > 0 {
		p.f("  fairing compound\t%.0f ml over %s\n", f.Fairing.ML(), p.area(f.FairArea))
	}
	if b := f.Barrier; b != nil {
		p.f("  %s\t%.0f ml, %d coats of %s over %s\n", b.Name, b.Volume.ML(), b.Coats, p.long(b.Film), p.area(b.Area))
	}
	if c := f.Coat; c != nil {
		p.f("  %s\t%.0f g, %d coats, %s over %s; catalyst at %.3g %%: %.1f g = %.1f ml\n",
			c.Name, c.Mass.Grams(), c.Coats, p.long(c.Film), p.area(c.Area), c.Dose.Percent(), c.Catalyst.Grams(), c.CatalystVolume.ML())
	}
	if len(f.Grits) > 0 {
		var ps []string
		for _, g := range f.Grits {
			ps = append(ps, fmt.Sprintf("P%d", g.P))
		}
		p.f("  sanding grades\t%s\n", strings.Join(ps, " "))
	}
}
