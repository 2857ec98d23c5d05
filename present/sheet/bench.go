package sheet

import (
	"fmt"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/present/view"
	"scarfwright/repair/caution"
	"scarfwright/repair/mixing"
)

// second is what the second part is called: catalyst and hardener are
// different things.
func second(m *mixing.Result) string {
	if m.Catalysed {
		return "catalyst"
	}
	return "hardener"
}

// mixing prints what is mixed in each session, in a table.
func (p *paper) mixing() {
	m := p.r.Mixing
	if m == nil {
		return
	}
	how := fmt.Sprintf("Hardener %.3g to 100 of resin by mass, %.3g by volume.", m.PerMass, m.PerVolume)
	if m.Catalysed {
		how = fmt.Sprintf("Catalyst %.3g %% by mass of the resin.", m.Dose.Percent())
	}
	how += fmt.Sprintf(" Losses %.0f %% included. %s", m.Waste.Percent(), m.Note())
	if m.Mixable() {
		how += fmt.Sprintf(" In all %s of resin and %s (%s) of %s are mixed.", grams(m.Mixed.Resin), grams(m.Mixed.Second), millilitres(m.Mixed.SecondVolume), second(m))
	} else {
		how = noBatch + " " + how
	}
	var rows [][]string
	for _, s := range m.Sessions {
		b := s.Batches
		if s.WorkingTime == 0 {
			rows = append(rows, []string{s.Name, labels(s), "–", "–", "none", sentence(s.Words)})
			continue
		}
		rows = append(rows, []string{
			s.Name, labels(s), fmt.Sprintf("%d", b.Count), grams(b.Measured.Resin), measured(b) + "\n" + trueShare(m, b.Measured), sentence(s.Words),
		})
	}
	p.section("Mixing: "+m.Name, how, table{cols: []column{
		{"session", 0.12, false, true}, {"plies", 0.12, false, false}, {"batches", 0.08, true, false}, {"resin, each", 0.1, true, false}, {second(m) + ", each", 0.31, true, false}, {"working time", 0.27, false, false},
	}, heads: true}, rows)
}

// pots prints for each session a page to stand at the pot, one block for each
// batch.
func (p *paper) pots() {
	if p.r.Mixing == nil {
		return
	}
	for i := range p.r.Mixing.Sessions {
		p.potPage(i)
	}
}

func labels(s mixing.Session) string {
	var out []string
	for _, y := range s.Plies {
		out = append(out, y.Label)
	}
	return strings.Join(out, ", ")
}

// grams prints a mass as a scale shows it, without zeros at the end.
func grams(m si.Mass) string {
	g := m.Grams()
	digits := 2
	switch {
	case g >= 100:
		digits = 0
	case g >= 10:
		digits = 1
	}
	return trimmed(g, digits) + " g"
}

func trimmed(x float64, digits int) string {
	s := fmt.Sprintf("%.*f", digits, x)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

func millilitres(v si.Volume) string {
	if v.ML() >= 100 {
		return fmt.Sprintf("%.0f ml", v.ML())
	}
	return fmt.Sprintf("%.1f ml", v.ML())
}

// measured prints the second part by the tool that shows it more finely, and
// by the other behind it.
func measured(b mixing.Batch) string {
	m := b.Measured
	if m.Syringe {
		return millilitres(m.SecondVolume) + " (" + grams(b.Second) + ")"
	}
	return grams(m.Second) + " (" + millilitres(b.SecondVolume) + ")"
}

// potPage prints one session at the size of the pot: 18 point, doses 40 point.
func (p *paper) potPage(i int) {
	m := p.r.Mixing
	s := m.Sessions[i]
	// Sessions that must not be mixed need no page of their own.
	if i > 0 && s.WorkingTime == 0 && m.Sessions[i-1].WorkingTime == 0 {
		p.y += 8
		p.need(60)
	} else {
		p.page()
	}
	p.para(margin, p.width(), pot, true, fmt.Sprintf("At the pot: session %d of %d, plies %s", i+1, len(m.Sessions), labels(s)))
	p.y += 1
	p.para(margin, p.width(), pot, false, sentence(s.Words))
	if s.WorkingTime == 0 {
		p.y += 2
		p.band(noBatch, "")
		return
	}
	p.y += 1
	works := []caution.Work{caution.Epoxy, caution.Mixing}
	if m.Catalysed {
		works = []caution.Work{caution.Peroxide, caution.Polyester, caution.Mixing}
	}
	for _, c := range caution.For(works...) {
		p.para(margin, p.width(), body, false, string(c.Signal)+": "+c.Text)
		p.y += 0.5
	}
	p.y += 2
	for k := 1; k <= s.Batches.Count; k++ {
		p.batch(s, k)
	}
	p.order(s)
	if s.Batches.Measured.Off {
		p.para(margin, p.width(), pot, true, "These tools cannot measure this batch closely enough: use a finer scale or a syringe.")
	}
}

// order lists what is laid in a session, large enough to read at the laminate.
func (p *paper) order(s mixing.Session) {
	var rows [][]string
	for _, y := range s.Plies {
		for _, d := range p.r.Design.Plies {
			if d.Label == y.Label {
				rows = append(rows, []string{d.Label, d.Class, p.size(d.Width, d.Height), angle(d), grams(y.Mixed), "□"})
			}
		}
	}
	p.table(table{cols: []column{
		{"lay", 0.1, false, true}, {"class", 0.18, false, false}, {"width × height", 0.3, false, false}, {"angle", 0.13, true, false}, {"takes, mixed", 0.19, true, false}, {"laid", 0.1, false, false},
	}, pt: 14, frame: wide, heads: true}, rows)
}

// sentence makes a text begin with a capital and end with a full stop.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	if strings.HasPrefix(s, "at most") || strings.HasPrefix(s, "at least") {
		s = "Working time " + s
	}
	s = strings.ToUpper(s[:1]) + s[1:]
	return strings.TrimSuffix(s, ".") + "."
}

// batch prints one block: two numbers to pour, and the times to write down.
func (p *paper) batch(s mixing.Session, k int) {
	const pad, high = 3.0, 67.0
	p.need(high + 4)
	m, b := p.r.Mixing, s.Batches
	x0, y0 := margin, p.y
	p.box(x0, y0, p.width(), high, wide)
	p.box(p.w-margin-pad-10, y0+pad, 10, 10, wide)
	done := "done"
	p.at(p.w-margin-pad-12-textWidth(done, pot, false), y0+pad+3, pot, false, done)
	p.at(x0+pad, y0+pad+1, pot, true, fmt.Sprintf("Batch %d of %d", k, b.Count))

	half := p.width() / 2
	first, note := grams(b.Measured.Resin), millilitres(b.ResinVolume)
	big, other := grams(b.Measured.Second), millilitres(b.SecondVolume)
	if b.Measured.Syringe {
		big, other = millilitres(b.Measured.SecondVolume), grams(b.Second)
	}
	if p.sys == si.US {
		note += " = " + si.Show(b.Resin, si.US, 3)
		other += " = " + si.Show(b.Second, si.US, 3)
	}
	y := y0 + pad + 13
	for i, c := range [][3]string{{"resin", first, "= " + note}, {second(m), big, "= " + other}} {
		x := x0 + pad + float64(i)*half
		p.at(x, y, pot, false, c[0])
		p.at(x, y+9, dose, true, c[1])
		p.at(x, y+24, large, false, c[2])
	}
	p.at(x0+pad+half, y+30.5, body, false, trueShare(m, b.Measured))
	y += 36
	x := x0 + pad
	for _, name := range []string{"mixed at", "use by", "initials"} {
		w := (p.width() - 2*pad - 8) / 3
		p.at(x, y+2, pot-4, false, name)
		start := x + textWidth(name, pot-4, false) + 2
		p.line(start, y+8, x+w, y+8, narrow)
		x += w + 4
	}
	p.y += high + 4
}

// wall prints the mix table, for when the telephone has died.
func (p *paper) wall() {
	t := p.r.MixTable
	m := p.r.Mixing
	if t == nil || len(t.Rows) == 0 || p.noneHasTime() {
		return
	}
	p.page()
	p.heading("Mix table for the wall: "+m.Name, 60)
	p.text(large, "The amounts are the same at every temperature. Cold is met with warmth or time, never with more "+second(m)+".")
	p.y += 2
	cols := []column{{"mix", 0.22, false, true}}
	head := []string{"resin"}
	doseRow := []string{second(m)}
	other := []string{"the same"}
	shares := []string{"true share, %"}
	if !m.Catalysed {
		shares = []string{"true ratio to 100"}
	}
	for i, a := range t.Sizes {
		cols = append(cols, column{"", 0.156, true, false})
		head = append(head, grams(t.Tools[i].Resin))
		shares = append(shares, shareRange(t.Tools[i])+by(t.Tools[i]))
		if t.Tools[i].Syringe {
			doseRow, other = append(doseRow, millilitres(t.Tools[i].SecondVolume)), append(other, grams(a.Second))
		} else {
			doseRow, other = append(doseRow, grams(t.Tools[i].Second)), append(other, millilitres(a.SecondVolume))
		}
	}
	rows := [][]string{head, doseRow, other, shares}
	p.table(table{cols: cols, pt: 14, frame: wide}, rows)
	p.y += 4
	rows = nil
	for _, r := range t.Rows {
		row := []string{si.Show(r.At, p.sys, 3)}
		if r.Time > 0 {
			row = append(row, fmt.Sprintf("at most %.0f min", mixing.WholeMinutes(r.Time)))
		} else {
			row = append(row, "none on the sheet: do not mix")
		}
		for _, d := range r.ByDose {
			text := "–"
			if d.Time > 0 {
				text = fmt.Sprintf("%.0f min", mixing.WholeMinutes(d.Time))
			}
			row = append(row, text)
		}
		rows = append(rows, row)
	}
	name := "working time"
	if m.Catalysed {
		name = fmt.Sprintf("working time at %.3g %%", t.Dose.Percent())
	}
	cols = []column{{"pot and air at", 0.2, false, true}, {name, 0.44, false, true}}
	for _, d := range t.Rows[0].ByDose {
		cols = append(cols, column{fmt.Sprintf("at %.3g %%", d.Dose.Percent()), 0.16, true, false})
	}
	p.table(table{cols: cols, pt: 14, frame: wide, heads: true}, rows)
	p.text(large, t.Note)
	p.scene(view.PotLife(p.r, view.Room{}))
}
