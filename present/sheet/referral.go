package sheet

import (
	"fmt"
	"io"

	"scarfwright/physics/si"
	"scarfwright/present/view"
	"scarfwright/repair"
)

// ReferralSheet writes the paper of a job that is stopped: what is known and
// not known, who must decide by which rule, the drawings, amounts for
// information, and the lines to sign on. It holds no operations.
func ReferralSheet(w io.Writer, r repair.Result, o Options) error {
	if r.Released() {
		return fmt.Errorf("referral sheet: job %s is not referred", r.Job.Job.Number)
	}
	r, o = settled(r, o)
	p := newPaper(r, o, "REFERRAL SHEET")
	p.title()
	p.stopBand()
	p.rules()
	p.stops()
	p.dish()
	p.known()
	p.unknowns()
	p.verdicts()
	if r.Design != nil {
		section := view.Section(bare(r))
		p.heading("A repair as it would be drawn, for whoever decides", section.Height)
		p.scene(section)
		p.scene(view.Plan(bare(r)))
		p.quantities()
	}
	p.cautions()
	p.signatures()
	return p.finish(w)
}

// stopBand is the hard stop, in a red frame and in words.
func (p *paper) stopBand() {
	text := "Do not cut, grind or laminate. This job must be decided by the people named below before any work. No job card is printed for it."
	if !p.r.Survey.Referred() {
		text = p.r.Survey.NotPlanned
	}
	p.band("STOP", text)
}

func (p *paper) rules() {
	var rows [][]string
	for _, f := range p.r.Survey.Referrals {
		rows = append(rows, []string{f.Rule, f.Found, f.To, f.Source, empty})
	}
	if len(rows) == 0 {
		return
	}
	p.section("Rule by rule: who must decide", "", table{cols: []column{{"rule", 0.19, false, true}, {"found", 0.25, false, false}, {"who decides", 0.24, false, true}, {"source of the rule", 0.14, false, false}, {"decided by, date", 0.18, false, false}}, heads: true}, rows)
}

// known lists what was measured and told.
func (p *paper) known() {
	d := p.r.Job
	var rows [][]string
	add := func(what, value string) {
		if value != "" {
			rows = append(rows, []string{what, value})
		}
	}
	add("boat", joined(", ", d.Boat.Name, d.Boat.Kind, "use: "+d.Boat.Use))
	add("event, as told", d.Job.Event)
	add("panel", joined(", ", p.place(), p.size(d.Panel.Long, d.Panel.Short)+" between stiffeners"))
	add("damage", joined(", ", d.Damage.Kind, "depth: "+d.Damage.Depth, "access: "+d.Damage.Access))
	if x := p.r.Design; x != nil {
		b := x.CutOut.Bounds()
		add(view.Opening(p.r)+" as it would be", p.size(si.MM(b.Width()), si.MM(b.Height())))
		add("laminate", fmt.Sprintf("%d plies, %s thick, found by: %s", len(x.Original.Layers), si.Show(x.Original.Thickness, p.sys, 3), d.Laminate.Known))
	}
	add("note", d.Job.Note)
	p.section("What is known", "", table{cols: []column{{"", 0.2, false, true}, {"", 0.8, false, false}}}, rows)
}

func (p *paper) quantities() {
	var rows [][]string
	for _, m := range p.r.Estimate.Purchases {
		rows = append(rows, []string{m.Name, p.amount(m.Amount, m.Unit)})
	}
	if len(rows) == 0 {
		return
	}
	p.section("Amounts, for information only", "These are what the repair drawn above would take. They are no leave to begin.", table{cols: []column{{"material", 0.7, false, false}, {"amount, with losses", 0.3, true, false}}, heads: true}, rows)
}

func (p *paper) signatures() {
	p.section("Decision", "", table{cols: []column{{"who", 0.2, false, true}, {"decision", 0.35, false, false}, {"name and signature", 0.28, false, false}, {"date", 0.17, false, false}}, heads: true}, [][]string{
		{"surveyor", empty, empty, empty}, {"naval architect or builder", empty, empty, empty},
		{"authority or insurer", empty, empty, empty}, {"owner, informed", empty, empty, empty}, {"yard, informed", empty, empty, empty},
	})
}
