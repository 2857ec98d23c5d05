package sheet

import (
	"fmt"
	"io"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/present/view"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/caution"
	"scarfwright/repair/job"
	"scarfwright/repair/survey"
	"scarfwright/repair/ways"
	"scarfwright/repair/working"
)

// ofWays is a paper about a comparison: a job and its cautions, without a plan.
func ofWays(d job.Description, r ways.Result, o Options, kind string) *paper {
	stub, o := settled(repair.Result{
		Job: d, Hash: repair.Hash(d), Catalogue: catalog.Default().Version, Caution: caution.General,
		Survey: survey.Classify(d), Cautions: r.Cautions,
	}, o)
	p := newPaper(stub, o, kind)
	p.title()
	if len(r.Referrals) > 0 {
		p.stopBand()
		p.rules()
	}
	return p
}

// intended is what the comparison is for and what it is not for; it stands first.
var intended = []string{
	"For: choosing between ways of repair of one panel, and showing a surveyor or naval architect how the choice was reckoned.",
	"Not for: showing that a panel meets a rule; keels, rudders, masts, engine beds, transoms under load, fibres other than glass; boats that an authority inspects.",
	"Stop, and ask a surveyor, where what is found on grinding is not what stands here.",
}

// OptionSheet writes the ways of repair compared: the recommendation with its reason,
// bars, what would narrow the figures, and what was assumed.
func OptionSheet(w io.Writer, d job.Description, r ways.Result, o Options) error {
	p := ofWays(d, r, o, "WAYS TO REPAIR IT")
	p.heading("Recommendation", 20)
	if r.Recommended >= 0 {
		x := r.Ways[r.Recommended]
		p.para(margin, p.width(), large, true, x.Name+": "+x.Plies)
	}
	p.text(body, r.Reason)
	p.y += 2
	var rows [][]string
	for _, x := range r.Ways {
		name := x.Name
		if at := x.Standing(); at != "" {
			name += ": " + at
		}
		rows = append(rows, []string{
			name, x.Strength.Text(), ways.Num(x.Stiffness.Likely), p.square(x), p.area(x.Ground.M2()), si.Show(x.DustMass, p.sys, 2),
			p.area(x.Bond.M2()), ways.Weight(x.Added, p.sys), fmt.Sprintf("%.1f", x.Hours.Likely), fmt.Sprint(x.Days), fmt.Sprintf("%.0f", x.Price),
		})
	}
	p.section("What each takes", "Strength and stiffness over the panel as it was. Dust: mass ground away. Weight: after less before. Hours, working days and price by the tool's own rough rates, so that ways compare.",
		table{cols: []column{{"way", 0.26, false, true}, {"strength", 0.16, false, false}, {"stiffness", 0.07, true, false}, {"size", 0.12, true, false}, {"ground", 0.08, true, false}, {"dust", 0.06, true, false}, {"bond", 0.08, true, false}, {"weight", 0.07, true, false}, {"hours", 0.05, true, false}, {"days", 0.04, true, false}, {"price", 0.05, true, false}}, pt: tiny, heads: true}, rows)
	p.measurements(r)
	p.founded(r)
	if s := view.WaysBars(d, r); s != nil {
		p.heading("Side by side", s.Height)
		p.scene(s)
	}
	p.cautions()
	return p.finish(w)
}

func (p *paper) square(w ways.Way) string {
	if w.Size[0] == 0 {
		return "–"
	}
	return p.size(w.Size[0], w.Size[1])
}

func (p *paper) area(m2 float64) string {
	if p.o.Units == "us" {
		return fmt.Sprintf("%.2f ft²", m2/0.09290304)
	}
	return fmt.Sprintf("%.3f m²", m2)
}

func (p *paper) measurements(r ways.Result) {
	var rows [][]string
	for _, m := range r.Measurements {
		rows = append(rows, []string{m.What, m.How, ways.Num(m.Now.Low) + " to " + ways.Num(m.Now.High)})
	}
	p.section("What to measure next, the most useful first", "", table{cols: []column{{"what", 0.2, false, true}, {"how", 0.6, false, false}, {"strength it alone leaves open", 0.2, false, false}}, heads: true}, rows)
}

// founded prints loads, assumptions and limits.
func (p *paper) founded(r ways.Result) {
	var rows [][]string
	for _, l := range r.Loads {
		rows = append(rows, []string{l.Name, l.Detail, l.Source})
	}
	p.section("Loads", "", table{cols: []column{{"load", 0.2, false, true}, {"what it is", 0.55, false, false}, {"method", 0.25, false, false}}, heads: true}, rows)
	p.heading("Assumptions", 15)
	p.bullets(small, r.Assumptions)
	p.heading("Outside the range of a formula", 12)
	p.bullets(small, orNone(r.Outside))
	p.heading("Limits", 12)
	p.bullets(small, r.Limits)
}

func orNone(lines []string) []string {
	if len(lines) == 0 {
		return []string{"none"}
	}
	return lines
}

// CalculationSheet writes the strength of the recommended way line by line: reference,
// working, result, each to be followed with a pocket calculator.
func CalculationSheet(w io.Writer, d job.Description, r ways.Result, o Options) error {
	c := r.Calculation
	if c == nil {
		return fmt.Errorf("calculation sheet: no way of job %s was computed", d.Job.Number)
	}
	p := ofWays(d, r, o, "CALCULATION SHEET")
	p.heading("Objective", 12)
	p.text(body, fmt.Sprintf("Strength of the panel repaired by this way against the panel as it was: %s, %s.", c.Way.Name, c.Way.Plies))
	p.heading("Intended use", 15)
	p.bullets(small, intended)
	p.founded(r)

	var rows [][]string
	for i, x := range c.Way.Cases {
		name := x.Load
		if i == c.Way.Governs {
			name += " (governs)"
		}
		verdict := "as before"
		if x.Strength < ways.AsBefore {
			verdict = "LESS than before"
		}
		rows = append(rows, []string{name, ways.Num(x.Strength), ways.Num(x.Hand), fmt.Sprintf("%.2f or more", ways.AsBefore), verdict, x.Mode + ": " + x.Where})
	}
	p.section("Verdict, load by load", "Strength: used by the panel as it was over used by the repaired one. Over all loads: "+c.Way.Strength.Text()+", with the bond, and a laminate that is only guessed, at the bad end of what is known.",
		table{cols: []column{{"load", 0.2, false, true}, {"numerical", 0.1, true, true}, {"by hand", 0.1, true, false}, {"limit", 0.12, false, false}, {"verdict", 0.14, false, true}, {"weakest", 0.34, false, false}}, heads: true}, rows)
	if s := view.WaysField(d, r); s != nil {
		p.heading("Sketch", s.Height)
		p.scene(s)
	}
	p.book(c.Book)
	p.heading("Numerical method", 20)
	p.text(small, c.Method)
	p.y += 2
	p.section("Signatures", "The checker is another person than the originator.", table{cols: []column{{"who", 0.16, false, true}, {"name", 0.28, false, false}, {"licence or office", 0.2, false, false}, {"signature", 0.22, false, false}, {"date", 0.14, false, false}}, heads: true}, [][]string{
		{"originator", empty, empty, empty, empty}, {"checker", empty, empty, empty, empty},
	})
	p.cautions()
	return p.finish(w)
}

// book prints a chain of lines, section by section.
func (p *paper) book(b *working.Book) {
	t := table{cols: []column{{"reference", 0.2, false, false}, {"working", 0.57, false, false}, {"result", 0.23, false, true}}, heads: true, pt: small}
	var rows [][]string
	section := ""
	for i, e := range b.Entries {
		how := e.Symbol + ", " + e.What
		if e.Formula != "" {
			how += ":\n" + e.Symbol + " = " + signs(e.Formula) + "\n= " + e.Numbers
		}
		result := strings.TrimSpace("= " + e.Printed + " " + e.Unit)
		if e.Verdict != "" {
			result += "\n" + e.Verdict
		}
		section = e.Section
		rows = append(rows, []string{e.ID + " " + e.Source, how, result})
		if i == len(b.Entries)-1 || b.Entries[i+1].Section != section {
			p.section(section, "", t, rows)
			rows = nil
		}
	}
}

// signs writes a formula with the signs of print.
func signs(formula string) string { return strings.ReplaceAll(formula, "*", " × ") }
