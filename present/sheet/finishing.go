package sheet

import (
	"fmt"

	"scarfwright/physics/si"
	"scarfwright/repair/finish"
)

// finishing prints fills, fairing, the last coat and the sanding grades.
func (p *paper) finishing() {
	f := p.r.Finish
	if len(f.Fills) == 0 && f.Coat == nil && f.Fairing == 0 && len(f.Grits) == 0 {
		return
	}
	p.heading("Filling, fairing, last coat", 30)
	if p.r.Stopped() {
		p.text(small, "For information while the job is stopped: nothing is mixed before page 1 is settled.")
		p.y++
	}
	var rows [][]string
	add := func(what, value string) { rows = append(rows, []string{what, value, empty}) }
	for _, x := range f.Fills {
		add(x.What, si.Show(x.Volume, p.sys, 2)+" to fill")
	}
	if s := f.Paste; s != nil {
		add("paste, mixed in one batch", fmt.Sprintf("%s (%s needed; the rest is thrown away)", grams(s.Mixed), grams(s.Needed)))
		add(fmt.Sprintf("catalyst in the paste, %.3g %%", s.Dose.Percent()), fmt.Sprintf("%s = %.2f ml, by %s; true dose %.2f to %.2f %%", grams(s.Catalyst), s.CatalystVolume.ML(), s.By, s.LowDose.Percent(), s.HighDose.Percent()))
	}
	if f.Fairing > 0 {
		add("fairing compound, about", fmt.Sprintf("%s over %s", si.Show(f.Fairing, p.sys, 2), p.amount(f.FairArea.M2(), "m²")))
	}
	if c := f.Coat; c != nil {
		add(c.Name, fmt.Sprintf("%s on %s: %d coats, %.2f mm wet in all", grams(c.Mass), p.amount(c.Area.M2(), "m²"), c.Coats, c.Film.MM()))
		add(fmt.Sprintf("catalyst in it, %.3g %%", c.Dose.Percent()), fmt.Sprintf("%s = %s in all, in proportion to each coat", grams(c.Catalyst), millilitres(c.CatalystVolume)))
	}
	p.table(table{cols: []column{{"what", 0.3, false, false}, {"amount", 0.5, false, true}, {"actual", 0.2, false, false}}, heads: true}, rows)
	if len(f.Grits) > 0 {
		rows = nil
		// Side by side, read down the left half and then down the right one.
		half := (len(f.Grits) + 1) / 2
		for i := range half {
			row := gritRow(f.Grits[i])
			if i+half < len(f.Grits) {
				row = append(row, gritRow(f.Grits[i+half])...)
			} else {
				row = append(row, "", "", "")
			}
			rows = append(rows, row)
		}
		cols := []column{{"grade", 0.09, false, true}, {"what for", 0.33, false, false}, {"done", 0.08, false, false}}
		p.table(table{cols: append(cols, cols...), heads: true}, rows)
	}
	if len(f.Film) > 0 {
		p.need(16)
		p.at(margin, p.y, body, true, "Film budget")
		p.y += lead(body)
		p.bullets(small, f.Film)
	}
}

func gritRow(g finish.Grit) []string { return []string{fmt.Sprintf("P%d", g.P), g.Why, "□"} }
