package cli

import (
	"fmt"
	"io"
	"strings"
	"text/tabwriter"

	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/check"
	"scarfwright/repair/programme"
	"scarfwright/repair/survey"
	"scarfwright/repair/working"
)

// printer prints one plan for a terminal, in the job's system of units. Doses
// are always in grams and millilitres, as scales and syringes show them.
type printer struct {
	*tabwriter.Writer
	repair.Result
	sys si.System
}

func (p printer) f(format string, a ...any)  { fmt.Fprintf(p, format, a...) }
func (p printer) long(l si.Length) string    { return si.Show(l, p.sys, 3) }
func (p printer) size(w, h si.Length) string { return p.long(w) + " × " + p.long(h) }
func (p printer) area(a si.Area) string      { return si.Show(a, p.sys, 3) }
func (p printer) mass(m si.Mass) string      { return si.Show(m, p.sys, 3) }

// printPlan prints a plan: what stands against it first, then what to grind,
// cut and mix, in order.
func printPlan(out io.Writer, r repair.Result) error {
	p := printer{Writer: tabwriter.NewWriter(out, 0, 4, 2, ' ', 0), Result: r}
	if r.Job.Choices.Units == "us" {
		p.sys = si.US
	}
	p.f("Job %s: %s\nHash %s, catalogue %s\n%s\n", r.Job.Job.Number, r.Job.Job.Title, r.Hash, r.Catalogue, r.Caution)
	for _, ref := range r.Survey.Referrals {
		p.f("\nREFER ON FIRST: %s (%s). To: %s.\n", ref.Rule, ref.Found, ref.To)
	}
	if r.Survey.NotPlanned != "" {
		p.f("\nNOT PLANNED: %s\n", r.Survey.NotPlanned)
	}
	p.verdicts()
	if !r.Released() {
		p.f("\nNOT RELEASED. What follows is for whoever decides: it is no leave to begin, and holds no doses and no steps.\n")
	} else if r.Stopped() {
		p.f("\nSTOPPED. Settle every STOP above before work begins.\n")
	}
	if r.Design != nil {
		p.design()
	}
	if r.Mixing != nil {
		p.mixing()
	}
	if r.Curing != nil && r.Released() {
		p.curing()
		p.warmth()
	}
	if r.Released() {
		p.finish()
		p.coats()
	}
	p.programme()
	p.price()
	p.notes()
	return p.Flush()
}

func (p printer) verdicts() {
	head := false
	for _, state := range []check.State{check.Stop, check.Watch} {
		for _, v := range p.Verdicts {
			if v.State != state {
				continue
			}
			if !head {
				p.f("\nStands against it\n")
				head = true
			}
			p.f("  %s: %s%s. %s\n", strings.ToUpper(string(v.State)), v.What, found(v), v.Why)
		}
	}
}

// found is what was found and what is allowed, where they are known.
func found(v check.Verdict) string {
	s := ""
	if v.Value != "" {
		s = ": " + v.Value
	}
	if v.Limit != "" {
		s += " (limit " + v.Limit + ")"
	}
	return s
}

func (p printer) design() {
	d := p.Design
	cut, edge := d.CutOut.Bounds(), d.Edge.Bounds()
	from := "the " + d.Sides
	if d.Sides == "both" {
		from = "both faces"
	}
	p.f("\nDesign: %g:1 from %s, %s\n", d.Ratio, from, d.Order)
	inner := "cut-out"
	if p.Survey.Class == survey.PartialDepth {
		inner = "floor of the dish, " + p.long(d.Depth) + " deep"
	}
	p.f("  original\t%s\n  "+inner+"\t%s\n  taper\t%s\n  feather edge\t%s\n", p.long(d.Original.Thickness),
		p.size(si.MM(cut.Width()), si.MM(cut.Height())), p.long(d.Taper), p.size(si.MM(edge.Width()), si.MM(edge.Height())))
	if b := d.Backing; b != nil {
		p.f("  backing\t%s of %s\n", working.Count(len(b.Pieces), "piece", "pieces"), p.size(b.PieceLong, b.PieceShort))
	}
	if c := d.Core; c != nil {
		p.f("  core\t%s, %s, %s, %s; paste %s\n", c.Name, p.long(c.Thickness), p.area(c.Area), si.Show(c.Volume, p.sys, 2), p.mass(c.Paste))
	}
	p.f("\nPly lists\n")
	for _, x := range d.Proposals {
		mark := ""
		if x.Chosen {
			mark = ", taken"
		}
		p.f("  %s\t%s\t%s, stiffness %.2f × the original%s\n", x.Name, x.Code, p.long(x.Thickness), x.StiffnessRatio, mark)
	}
	p.f("\nTaper ratios side by side\n  ratio\tfeather edge\tground\tdust\tbond a mm of edge\tclear\tfits\n")
	for _, o := range d.Options {
		fits := "yes"
		if !o.Fits {
			fits = "NO: past " + o.Nearest
		}
		if o.Chosen {
			fits += ", taken"
		}
		p.f("  %g:1\t%s\t%s\t%s\t%.1f mm²\t%s\t%s\n", o.Ratio, p.size(o.Width, o.Height), p.area(o.Ground), si.Show(o.Dust, p.sys, 3), o.BondPerEdge.MM(), p.long(o.Left), fits)
	}
	p.f("\nPlies in laying order\n  ply\tclass\tsize\tarea\tangle\tstep\tglass\tresin\tsession\treplaces\n")
	for _, x := range d.Plies {
		p.f("  %s\t%s\t%s\t%s\t%.0f°\t%s\t%s\t%s\t%d\t%s\n", x.Label, strings.ToUpper(x.Class), p.size(x.Width, x.Height), p.area(x.Area),
			x.Angle.Degrees(), p.long(x.Overlap), p.mass(x.Glass), p.mass(x.Resin), x.Session, x.Replaces)
	}
	p.f("  all\t\t\t%s\t\t\t%s\t%s\n", p.area(d.Cloth), p.mass(d.Glass), p.mass(d.Resin))
}

func (p printer) programme() {
	if ws := p.Programme.Windows; len(ws) > 0 {
		p.f("\nHours with the hull warm and dry enough\n")
		for _, w := range ws {
			p.f("  %s\t%s%s\n", w.What, w.Text(), remark(w))
		}
	}
	if !p.Released() {
		return
	}
	p.f("\nSteps\n")
	for _, s := range p.Programme.Steps {
		hold := ""
		if s.Hold != nil {
			hold = "HOLD " + s.Hold.Letter + " after"
		}
		p.f("  %d\t%s\t%s\n", s.Number, s.Name, hold)
	}
}

// remark says at what time of day a window can never be, or why it never is.
func remark(w programme.Windows) string {
	if len(w.Open) == 0 {
		return ": never, " + w.Reason
	}
	if daily := w.Daily(); daily != "" {
		return ". " + strings.ToUpper(daily[:1]) + daily[1:]
	}
	return ""
}

func (p printer) price() {
	e := p.Estimate
	p.f("\nHours %.1f (%.1f to %.1f), price %s %.0f (%.0f to %.0f), without tax\n", e.HoursTotal.Likely, e.HoursTotal.Low, e.HoursTotal.High,
		e.Currency, e.Total.Likely, e.Total.Low, e.Total.High)
	if e.ShareOfInsured > 0 {
		p.f("%.0f %% of the insured value\n", 100*e.ShareOfInsured)
	}
	for _, b := range e.Purchases {
		if b.Short <= 0 {
			continue
		}
		var packs []string
		for _, x := range b.Buy {
			packs = append(packs, fmt.Sprintf("%d × %.4g %s", x.Count, x.Size, b.Unit))
		}
		if len(packs) == 0 {
			packs = append(packs, b.Note)
		}
		p.f("  buy %s\tshort of %.3g %s (%s)\t%s\t%s %.0f\n", b.Name, b.Short, b.Unit, b.StockNote, strings.Join(packs, ", "), e.Currency, b.Price)
	}
}

func (p printer) notes() {
	if len(p.Assumptions)+len(p.Survey.Limitations) == 0 {
		return
	}
	p.f("\nAssumptions and limitations\n")
	for _, s := range append(append([]string(nil), p.Survey.Limitations...), p.Assumptions...) {
		p.f("  - %s\n", s)
	}
}
