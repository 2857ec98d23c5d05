package sheet

import (
	"cmp"
	"fmt"
	"io"
	"slices"

	"scarfwright/physics/si"
	"scarfwright/present/view"
	"scarfwright/repair"
	"scarfwright/repair/check"
	"scarfwright/repair/design"
	"scarfwright/repair/estimate"
	"scarfwright/repair/working"
)

// JobCard writes the paper the work is done from. A job that is not released
// gives ErrNotReleased and no paper.
func JobCard(w io.Writer, r repair.Result, o Options) error {
	if !r.Released() {
		return ErrNotReleased
	}
	r, o = settled(r, o)
	p := newPaper(r, o, "JOB CARD")
	p.title()
	p.stops()
	p.dish()
	p.cautions()
	p.verdicts()
	p.joints()
	p.unknowns()
	p.materials()
	p.cross()
	p.plies()
	p.plan()
	p.clocks()
	p.mixing()
	p.curing()
	p.warmth()
	p.operations()
	p.finishing()
	p.coats()
	p.pots()
	p.wall()
	p.closing()
	return p.finish(w)
}

// title is the block of fields that says which job this is.
func (p *paper) title() {
	d := p.r.Job
	cells := [][2]string{
		{"Job", d.Job.Number}, {"Title", d.Job.Title}, {"Revision", d.Job.Revision}, {"Surveyed", d.Job.Date},
		{"Yard", d.Job.Yard}, {"Boat", joined(", ", d.Boat.Name, d.Boat.Kind)}, {"Place", p.place()}, {"Damage", string(p.r.Survey.Class)},
		{"Measured by", d.Job.Author}, {"Event, as told", d.Job.Event}, {"Input hash", short(p.r.Hash)}, {"Printed", p.o.Now.UTC().Format("2006-01-02 15:04")},
	}
	shares := []float64{0.2, 0.42, 0.19, 0.19}
	for row := 0; row < len(cells); row += 4 {
		x, high := margin, 0.0
		for i, c := range cells[row : row+4] {
			n := len(wrap(cmp.Or(c[1], "not given"), shares[i]*p.width()-2*padX, body, i == 1 && row == 0))
			high = max(high, 5+float64(n)*lead(body)+padY)
		}
		for i, c := range cells[row : row+4] {
			w := shares[i] * p.width()
			p.box(x, p.y, w, high, narrow)
			p.at(x+padX, p.y+1, tiny, false, c[0])
			for j, line := range wrap(cmp.Or(c[1], "not given"), w-2*padX, body, i == 1 && row == 0) {
				p.at(x+padX, p.y+5+float64(j)*lead(body), body, i == 1 && row == 0, line)
			}
			x += w
		}
		p.y += high
	}
	p.y += 3
}

// cautions prints all cautions of the work in one box.
func (p *paper) cautions() {
	rows := [][]string{{"FIRST", p.r.Caution}}
	for _, c := range p.r.Cautions {
		rows = append(rows, []string{string(c.Signal), c.Text})
	}
	p.section("Cautions: read before the work", "", table{cols: []column{{"", 0.14, false, true}, {"", 0.86, false, false}}, frame: wide}, rows)
}

var stateWords = map[check.State]string{check.Stop: "STOP", check.Watch: "WATCH", check.OK: "ok"}

// verdicts prints what was checked, the heaviest first; what stops the job stands
// on page 1 (stops).
func (p *paper) verdicts() {
	vs := slices.Clone(p.r.Verdicts)
	weight := map[check.State]int{check.Stop: 0, check.Watch: 1, check.OK: 2}
	slices.SortStableFunc(vs, func(a, b check.Verdict) int { return weight[a.State] - weight[b.State] })
	var rows [][]string
	for _, v := range vs {
		if v.State == check.Stop || p.inJoints(v) {
			continue
		}
		rows = append(rows, []string{stateWords[v.State], v.What, v.Value, v.Limit, v.Why})
	}
	note := ""
	if p.r.Stopped() {
		note = "Besides what stops the job: see page 1."
	}
	p.section("What was checked", note, table{cols: []column{{"", 0.09, false, true}, {"checked", 0.17, false, false}, {"found", 0.21, false, false}, {"allowed", 0.15, false, false}, {"what follows", 0.38, false, false}}, pt: 8.5, heads: true}, rows)
}

// unknowns prints what the plan rests on and what nobody has seen.
func (p *paper) unknowns() {
	if len(p.r.Survey.Limitations) > 0 {
		p.heading("Limitations: not seen, not known", 12)
		p.bullets(small, p.r.Survey.Limitations)
	}
	if len(p.r.Assumptions) > 0 {
		p.heading("Assumptions", 12)
		p.bullets(small, p.r.Assumptions)
	}
}

// materials lists what is drawn from the store, with boxes for lot and expiry.
func (p *paper) materials() {
	var rows [][]string
	for _, m := range p.r.Estimate.Purchases {
		rows = append(rows, []string{m.Name, p.amount(m.Amount, m.Unit), empty, empty, empty})
	}
	if len(rows) == 0 {
		return
	}
	p.section("Materials issued", "", table{cols: []column{{"material", 0.39, false, false}, {"amount, with losses", 0.21, true, false}, {"lot", 0.16, false, false}, {"expires", 0.13, false, false}, {"issued by", 0.12, false, false}}, heads: true}, rows)
}

// amount prints a need in its own unit, or in the units of the paper.
func (p *paper) amount(x float64, unit string) string {
	switch unit {
	case "g":
		return si.Show(si.Grams(x), p.sys, 3)
	case "ml":
		return si.Show(si.ML(x), p.sys, 3)
	case "m²":
		if p.sys == si.Metric {
			return fmt.Sprintf("%.2f m²", x)
		}
		return fmt.Sprintf("%.2f ft²", x/0.09290304)
	}
	return working.Num(x, 3) + " " + unit
}

// bare takes off a plan what a drawing says on top when it stands alone: on a
// paper the head and the foot of every page say it.
func bare(r repair.Result) repair.Result {
	r.Caution, r.Verdicts, r.Survey.Referrals, r.Survey.NotPlanned = "", nil, nil, ""
	return r
}

func (p *paper) cross() {
	if s := view.Section(bare(p.r)); s != nil {
		p.heading("Section", s.Height)
		p.scene(s)
	}
}

func (p *paper) plan() {
	if s := view.Plan(bare(p.r)); s != nil {
		p.heading("Plan", s.Height)
		p.scene(s)
	}
}

// angle is how a ply's roll lies to the long span, in words for a mat.
func angle(y design.Ply) string {
	if view.IsMat(y.Class, float64(y.Glass/max(y.Glass+y.Resin, 1e-12))) {
		return "any"
	}
	return fmt.Sprintf("%.0f°", y.Angle.Degrees())
}

// plies is the cutting list.
func (p *paper) plies() {
	d := p.r.Design
	if d == nil {
		return
	}
	var rows [][]string
	for _, y := range d.Plies {
		rows = append(rows, []string{
			y.Label, y.Class, y.Face, p.size(y.Width, y.Height), p.amount(y.Area.M2(), "m²"), angle(y), y.Replaces,
			si.Show(y.Overlap, p.sys, 3), p.mass(y.Glass), p.mass(y.Resin), fmt.Sprint(y.Session),
		})
	}
	rows = append(rows, []string{"in all", "", "", "", p.amount(d.Cloth.M2(), "m²"), "", "", "", p.mass(d.Glass), p.mass(d.Resin), ""})
	unit := ", g"
	if p.sys == si.US {
		unit = ", oz (mass)"
	}
	p.section("Plies, in laying order", "", table{cols: []column{
		{"ply", 0.06, false, true}, {"class", 0.085, false, false}, {"laid from", 0.08, false, false}, {"width × height", 0.16, false, false}, {"area", 0.08, true, false}, {"angle", 0.065, true, false},
		{"stands for", 0.15, false, false}, {"overlap", 0.085, true, false}, {"glass" + unit, 0.09, true, false}, {"resin in it" + unit, 0.09, true, false}, {"session", 0.07, true, false},
	}, pt: 8.5, heads: true}, rows)
	p.text(tiny+0.5, "Angle: the roll's length to the panel's long span. Overlap: how far the ply reaches past the one beneath, all round. Resin without losses; what to mix stands on the mixing pages.")
	p.y += 1
	if f := d.FarSide; f != nil {
		p.text(small, fmt.Sprintf("Far side: %s %s, %s, from the %s, %s.", f.Label, f.Class, p.size(f.Width, f.Height), f.Face, f.Replaces))
	}
	if b := d.Backing; b != nil {
		p.text(small, "Backing: "+b.How)
	}
	if k := d.Core; k != nil {
		p.text(small, fmt.Sprintf("Core: %s, %s thick, %s; bedding paste %s for both faces.", k.Name, si.Show(k.Thickness, p.sys, 3), p.amount(k.Area.M2(), "m²"), si.Show(k.Paste, p.sys, 2)))
	}
}

// mass prints the number of a mass whose unit stands in the table's head.
func (p *paper) mass(m si.Mass) string {
	if p.sys == si.US {
		return fmt.Sprintf("%.2f", m.Grams()/28.349523125)
	}
	return fmt.Sprintf("%.0f", m.Grams())
}

// size prints width x height in one unit.
func (p *paper) size(w, h si.Length) string {
	if p.sys == si.US {
		return fmt.Sprintf("%.2f × %.2f in", w.MM()/25.4, h.MM()/25.4)
	}
	return fmt.Sprintf("%.0f × %.0f mm", w.MM(), h.MM())
}

// length prints a length in mm or inches, never in metres.
func (p *paper) length(l si.Length) string {
	if p.sys == si.US {
		return fmt.Sprintf("%.2f in", l.MM()/25.4+0)
	}
	return fmt.Sprintf("%.0f mm", l.MM()+0)
}

// exact prints a length to what a rule shows: 0.1 mm or 0.01 in.
func (p *paper) exact(l si.Length) string {
	if p.sys == si.US {
		return p.length(l)
	}
	return fmt.Sprintf("%.1f mm", l.MM()+0)
}

// clocks is the table of the eight places where the taper is measured.
func (p *paper) clocks() {
	d := p.r.Design
	if d == nil || len(d.Clocks) == 0 {
		return
	}
	note := fmt.Sprintf("As you stand before the ground face: 12 is up, 3 to the right. Taper %g:1 on %s. Measure before hold point A.", d.Ratio, view.Faces(d.Sides))
	note += fmt.Sprintf(" The taper here is measured along the clock ray, which is longer than the taper length where the ray crosses the edge aslant; the number to hit square to the edge is the taper length, %s, all round.", p.exact(d.Taper))
	if s := d.CoverEdge; len(s) > 0 {
		b := s.Bounds()
		note += fmt.Sprintf(" Gelcoat and paint come off as far as the edge of the cover ply, %s.", p.size(si.MM(b.Width()), si.MM(b.Height())))
	}
	if w := view.DishWords(p.r); w != "" {
		note += " " + w
	}
	var rows [][]string
	for _, c := range d.Clocks {
		left := p.length(c.Left) + " to " + c.What
		if c.What == "" {
			left = ""
		} else if c.Left <= 0 {
			left = "CROSSES " + c.What + " by " + p.length(-c.Left)
		}
		rows = append(rows, []string{c.Hour, p.length(c.ToCut), p.length(c.ToEdge), p.length(c.Taper), left, empty, empty})
	}
	toInner := "centre to cut"
	if view.Partial(p.r) {
		toInner = "centre to floor's edge"
	}
	p.section("Taper at the eight clock points", note, table{cols: []column{
		{"clock", 0.08, false, true}, {toInner, 0.12, true, false}, {"centre to feather edge", 0.14, true, false}, {"taper", 0.1, true, false},
		{"room beyond the feather edge", 0.28, false, false}, {"taper measured", 0.16, false, false}, {"initials", 0.12, false, false},
	}, heads: true}, rows)
}

// closing is the room for what went differently, and the hours.
func (p *paper) closing() {
	hours := p.hoursRows()
	p.heading("What went differently, and what was done about it", 45+lead(large)+9+p.high(hoursTable, hours))
	p.box(margin, p.y, p.width(), 34, narrow)
	p.y += 38
	p.section("Hours", "", hoursTable, hours)
}

var hoursTable = table{cols: []column{{"step", 0.3, false, false}, {"likely (low to high)", 0.3, false, false}, {"actual", 0.2, false, false}, {"initials", 0.2, false, false}}, heads: true}

func (p *paper) hoursRows() [][]string {
	var rows [][]string
	for _, h := range p.r.Estimate.Hours {
		rows = append(rows, []string{stepName(h.Step), hoursText(h.Hours), empty, empty})
	}
	if len(rows) > 1 {
		rows = append(rows, []string{"in all", hoursText(p.r.Estimate.HoursTotal), empty, empty})
	}
	return rows
}

// stepName is a step's name; one figure for every step is told as that.
func stepName(s string) string {
	if s == "all" {
		return "all steps together"
	}
	return s
}

func hoursText(h estimate.Range) string {
	return fmt.Sprintf("%.1f h (%.1f to %.1f)", h.Likely, h.Low, h.High)
}
