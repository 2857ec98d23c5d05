package sheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scarfwright/present/view"
	"scarfwright/repair/mixing"
)

// What a stopped job says.
const (
	stopHead = view.StopWords + ", see page 1"
	noBatch  = "No batch may be mixed until this is settled."
)

// heldWords stands in the head of every page of a job that may not be begun.
func (p *paper) heldWords() string {
	switch {
	case p.r.Stopped():
		return stopHead
	case !p.r.Released():
		return "STOP: not released, see page 1"
	}
	return ""
}

// red draws with a red pen.
func (p *paper) red(draw func()) {
	p.pdf.SetDrawColor(200, 0, 0)
	draw()
	p.pdf.SetDrawColor(0, 0, 0)
}

// band prints words in a red frame across the page, the first of them large.
func (p *paper) band(head, text string) {
	const pad = 3.0
	heads := wrap(head, p.width()-2*pad, pot, true)
	lines := wrap(text, p.width()-2*pad, large, false)
	high := pad + float64(len(heads))*lead(pot) + float64(len(lines))*lead(large) + pad
	p.need(high)
	p.red(func() { p.box(margin, p.y, p.width(), high, 4*narrow) })
	y := p.y + pad
	for _, s := range heads {
		p.at(margin+pad, y, pot, true, s)
		y += lead(pot)
	}
	for _, s := range lines {
		p.at(margin+pad, y, large, false, s)
		y += lead(large)
	}
	p.y += high + 2
}

// stops prints every verdict that stops the job, with room to settle it, in red.
func (p *paper) stops() {
	var rows [][]string
	for _, v := range p.r.Stops() {
		found := v.Value
		if v.Limit != "" {
			found = joined("\n", found, "allowed: "+v.Limit)
		}
		rows = append(rows, []string{v.What, cmp.Or(found, "–"), sentence(v.Why), empty})
	}
	if len(rows) == 0 {
		return
	}
	p.band("STOP: settle these first", "Nothing is cut, ground or mixed until each line below is settled and signed, or the job is planned again.")
	p.y -= 2
	p.red(func() {
		p.table(table{cols: []column{{"what", 0.18, false, true}, {"found", 0.21, false, false}, {"why, and what to do", 0.44, false, false}, {"settled by, date", 0.17, false, false}}, frame: 4 * narrow, heads: true}, rows)
	})
	p.y += 2
}

// dish says on the first page that a repair of part of the depth is no hole.
func (p *paper) dish() {
	if w := view.DishWords(p.r); w != "" {
		p.band(w, "The inner line of every drawing and template is the floor of the dish.")
	}
}

func (p *paper) noneHasTime() bool {
	return !slices.ContainsFunc(p.r.Mixing.Sessions, func(s mixing.Session) bool { return s.WorkingTime > 0 })
}

// trueShare says by which tool the second part is measured, and between what it
// then truly lies.
func trueShare(m *mixing.Result, x mixing.Measured) string {
	if m.Catalysed {
		return "by " + tool(x) + ": true share " + shareRange(x) + " %"
	}
	return "by " + tool(x) + ": true ratio " + shareRange(x) + " to 100"
}

func by(x mixing.Measured) string { return "\nby " + tool(x) }

func tool(x mixing.Measured) string {
	if x.Syringe {
		return "syringe"
	}
	return "scale"
}

// shareRange prints the second part's share of the first, in hundredths.
func shareRange(x mixing.Measured) string {
	digits := 2
	if x.Low > 0.1 {
		digits = 1
	}
	if math.IsInf(float64(x.High), 0) {
		return fmt.Sprintf("%.*f or more", digits, x.Low.Percent())
	}
	return fmt.Sprintf("%.*f to %.*f", digits, x.Low.Percent(), digits, x.High.Percent())
}
