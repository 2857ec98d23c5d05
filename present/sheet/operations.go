package sheet

import (
	"fmt"

	"scarfwright/repair/programme"
)

// operations prints the steps in order: what to do, the number to hit beside a
// box for the actual one, and the hold points across the page.
func (p *paper) operations() {
	if len(p.r.Programme.Steps) == 0 {
		return
	}
	p.heading("Operations, in order", p.stepHigh(p.r.Programme.Steps[0]))
	for _, s := range p.r.Programme.Steps {
		p.step(s)
		if s.Hold != nil {
			p.hold(*s.Hold)
		}
	}
}

// stepHigh estimates how much room a step takes.
func (p *paper) stepHigh(s programme.Step) float64 {
	high := lead(large) + 12 + float64(max(1, len(s.Targets)))*boxHigh
	for _, c := range s.Cautions {
		high += float64(len(wrap(string(c.Signal)+": "+c.Text, p.width()-5, small, false)))*lead(small) + 0.4
	}
	for _, d := range s.Do {
		high += float64(len(wrap(d, p.width()-5, body, false)))*lead(body) + 0.6
	}
	return high
}

func (p *paper) step(s programme.Step) {
	p.need(min(p.stepHigh(s), keepWhole))
	p.at(margin, p.y, large, true, fmt.Sprintf("%d  %s", s.Number, s.Name))
	hours := fmt.Sprintf("about %.1f h", s.Hours)
	p.at(p.w-margin-textWidth(hours, small, false), p.y+0.8, small, false, hours)
	p.y += lead(large) + 0.8
	for _, c := range s.Cautions {
		p.para(margin+5, p.width()-5, small, false, string(c.Signal)+": "+c.Text)
		p.y += 0.4
	}
	p.y += 0.6
	p.bullets(body, s.Do)
	var rows [][]string
	for _, t := range s.Targets {
		value := t.Value
		if value == "" {
			value = "write down"
		}
		rows = append(rows, []string{t.What, value, empty, empty, empty})
	}
	if len(rows) == 0 {
		rows = [][]string{{"done", "", empty, empty, empty}}
	}
	p.y += 0.6
	p.table(table{cols: []column{{"target", 0.31, false, false}, {"to hit", 0.31, false, true}, {"actual", 0.16, false, false}, {"initials", 0.1, false, false}, {"time", 0.12, false, false}}, heads: true}, rows)
	if s.WaitWhy != "" {
		wait := "Wait " + s.WaitWhy + "."
		if s.Wait > 0 {
			wait = fmt.Sprintf("Wait %.0f h at least: %s.", s.Wait.Hours(), s.WaitWhy)
		}
		p.text(small, wait)
	}
	p.y += 2.5
}

// hold prints a hold point as a band across the page: a red frame, and the word.
func (p *paper) hold(h programme.Hold) {
	const pad = 2.5
	var lines []string
	for _, s := range h.Look {
		lines = append(lines, wrap("□  "+s, p.width()-2*pad, body, false)...)
	}
	signs := wrap("Signs: "+h.Signs+". Work goes on only when the lines below are filled in.", p.width()-2*pad, body, false)
	high := pad + lead(14) + 1 + float64(len(lines)+len(signs))*lead(body) + 2 + 10 + pad
	p.need(high + 3)
	p.pdf.SetDrawColor(200, 0, 0)
	p.box(margin, p.y, p.width(), high, 4*narrow)
	p.pdf.SetDrawColor(0, 0, 0)
	y := p.y + pad
	p.at(margin+pad, y, 14, true, fmt.Sprintf("HOLD %s: %s", h.Letter, h.What))
	y += lead(14) + 1
	for _, s := range append(lines, signs...) {
		p.at(margin+pad, y, body, false, s)
		y += lead(body)
	}
	y += 8
	x := margin + pad
	for i, name := range []string{"name", "signature", "date and time"} {
		w := (p.width() - 2*pad - 8) * []float64{0.36, 0.36, 0.28}[i]
		p.line(x, y, x+w, y, narrow)
		p.at(x, y+0.8, tiny, false, name)
		x += w + 4
	}
	p.y += high + 5
}
