package sheet

import "scarfwright/repair/curing"

// warmth prints what a tent or a lamp changes.
func (p *paper) warmth() {
	if p.r.Curing == nil {
		return
	}
	var rows [][]string
	for _, w := range p.r.Curing.Warmth {
		rows = append(rows, w.Row(p.sys))
	}
	p.grid("What a tent or a lamp changes", curing.WarmthNote, curing.WarmthHeads, []float64{0.18, 0.2, 0.16, 0.08, 0.12, 0.09, 0.1, 0.08}, rows)
}

// coats prints how long each coat over the laminate may be worked, and when it sets.
func (p *paper) coats() {
	var rows [][]string
	for _, c := range p.r.Coats {
		rows = append(rows, c.Row(p.sys))
	}
	if len(rows) > 0 {
		p.grid("How long each coat may be worked, and when it sets", curing.CoatNote, curing.CoatHeads, []float64{0.24, 0.24, 0.1, 0.2, 0.11, 0.11}, rows)
	}
}

// grid is a section with a plain table, its first column bold.
func (p *paper) grid(title, note string, heads []string, shares []float64, rows [][]string) {
	t := table{heads: true}
	for i, h := range heads {
		t.cols = append(t.cols, column{h, shares[i], false, i == 0})
	}
	p.section(title, note, t, rows)
}
