package sheet

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/si"
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

// bench prints the mixing: a table of all sessions, then for each session a
// page to stand at the pot, one block for each batch.
func (p *paper) bench() {
	m := p.r.Mixing
	if m == nil {
		return
	}
	p.heading("Mixing: "+m.Name, 30)
	how := fmt.Sprintf("Hardener %.3g to 100 of resin by mass, %.3g by volume.", m.PerMass, m.PerVolume)
	if m.Catalysed {
		how = fmt.Sprintf("Catalyst %.3g %% by mass of the resin.", m.Dose.Percent())
	}
	p.text(small, how+fmt.Sprintf(" Losses %.0f %% included. %s", m.Waste.Percent(), mixing.CupNote))
	p.y += 1
	var rows [][]string
	for _, s := range m.Sessions {
		b := s.Batches
		rows = append(rows, []string{
			s.Name, labels(s), fmt.Sprintf("%d", b.Count), grams(b.Measured.Resin), measured(b), s.Words,
		})
	}
	p.table(table{cols: []column{
		{"session", 0.13, false, true}, {"plies", 0.2, false, false}, {"batches", 0.09, true, false}, {"resin, each", 0.13, true, false}, {second(m) + ", each", 0.2, true, false}, {"working time", 0.25, false, false},
	}, heads: true}, rows)
	p.text(small, fmt.Sprintf("In all %s of resin and %s (%s) of %s are mixed.", grams(m.Mixed.Resin), grams(m.Mixed.Second), millilitres(m.Mixed.SecondVolume), second(m)))
	for i := range m.Sessions {
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

// grams prints a mass as a scale shows it.
func grams(m si.Mass) string {
	g := m.Grams()
	switch {
	case g >= 100:
		return fmt.Sprintf("%.0f g", g)
	case g >= 10:
		return fmt.Sprintf("%.1f g", g)
	}
	return fmt.Sprintf("%.2f g", g)
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
	p.page()
	p.para(margin, p.width(), pot, true, fmt.Sprintf("At the pot: session %d of %d, plies %s", i+1, len(m.Sessions), labels(s)))
	p.y += 1
	p.para(margin, p.width(), pot, false, sentence(s.Words))
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
	if s.Batches.Measured.Off {
		p.para(margin, p.width(), pot, true, "These tools cannot measure this batch closely enough: use a finer scale or a syringe.")
	}
}

// sentence makes a text begin with a capital and end with a full stop.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	if strings.HasPrefix(s, "at most") {
		s = "Working time " + s
	}
	s = strings.ToUpper(s[:1]) + s[1:]
	return strings.TrimSuffix(s, ".") + "."
}

// batch prints one block: two numbers to pour, and the times to write down.
func (p *paper) batch(s mixing.Session, k int) {
	const pad, high = 3.0, 64.0
	p.need(high + 4)
	m, b := p.r.Mixing, s.Batches
	x0, y0 := margin, p.y
	p.box(x0, y0, p.width(), high, wide)
	p.box(p.w-margin-pad-10, y0+pad, 10, 10, wide)
	done := "done"
	p.at(p.w-margin-pad-12-textWidth(done, pot, false), y0+pad+3, pot, false, done)
	p.at(x0+pad, y0+pad+1, pot, true, fmt.Sprintf("Batch %d of %d", k, b.Count))

	half := p.width() / 2
	first, note := fmt.Sprintf("%.0f g", b.Measured.Resin.Grams()), millilitres(b.ResinVolume)
	if b.Measured.Resin.Grams() < 100 {
		first = grams(b.Measured.Resin)
	}
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
	y += 33
	x := x0 + pad
	for i, name := range []string{"mixed at", "use by", "initials"} {
		w := (p.width() - 2*pad - 8) / 3
		p.at(x, y+2, pot-4, false, name)
		start := x + textWidth(name, pot-4, false) + 2
		p.line(start, y+8, x+w, y+8, narrow)
		x += w + 4
		_ = i
	}
	p.y += high + 4
}

// wall prints the mix table, for when the telephone has died.
func (p *paper) wall() {
	t := p.r.MixTable
	if t == nil || len(t.Rows) == 0 {
		return
	}
	m := p.r.Mixing
	p.page()
	p.heading("Mix table for the wall: "+m.Name, 60)
	p.text(large, "The amounts are the same at every temperature. Cold is met with warmth or time, never with more "+second(m)+".")
	p.y += 2
	cols := []column{{"mix", 0.22, false, true}}
	head := []string{"resin"}
	doseRow := []string{second(m)}
	other := []string{"the same"}
	for i, a := range t.Sizes {
		cols = append(cols, column{"", 0.156, true, false})
		head = append(head, grams(t.Tools[i].Resin))
		if t.Tools[i].Syringe {
			doseRow, other = append(doseRow, millilitres(t.Tools[i].SecondVolume)), append(other, grams(a.Second))
		} else {
			doseRow, other = append(doseRow, grams(t.Tools[i].Second)), append(other, millilitres(a.SecondVolume))
		}
	}
	rows := [][]string{head, doseRow, other}
	p.table(table{cols: cols, pt: 14, frame: wide}, rows)
	p.y += 4
	rows = nil
	for _, r := range t.Rows {
		row := []string{si.Show(r.At, p.sys, 3)}
		if r.Time > 0 {
			row = append(row, fmt.Sprintf("at most %.0f min", math.Floor(r.Time.Minutes())))
		} else {
			row = append(row, r.Words)
		}
		for _, d := range r.ByDose {
			text := "–"
			if d.Time > 0 {
				text = fmt.Sprintf("%.0f min", math.Floor(d.Time.Minutes()))
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
		cols = append(cols, column{fmt.Sprintf("at %.3g %%", d.Dose.Percent()), 0.12, true, false})
	}
	p.table(table{cols: cols, pt: 14, frame: wide, heads: true}, rows)
	p.text(large, t.Note)
}
