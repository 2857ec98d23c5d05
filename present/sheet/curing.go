package sheet

import (
	"fmt"
	"math"

	"scarfwright/present/drawing"
	"scarfwright/present/view"
	"scarfwright/repair/curing"
	"scarfwright/repair/working"
)

// curing prints when each session gels, may be laid on and sanded, with the charts.
func (p *paper) curing() {
	c := p.r.Curing
	if c == nil {
		return
	}
	var rows [][]string
	for _, s := range c.Sessions {
		laid := "at the temperature given"
		if s.Day > 0 {
			laid = fmt.Sprintf("day %d, from %02.0f h", s.Day, s.Hour)
		}
		rows = append(rows, []string{
			s.Name, laid, working.Count(len(s.Plies), "ply", "plies") + ", " + p.length(s.Thickness),
			s.Hottest(p.sys) + "; limit " + curing.Degrees(s.Limit, p.sys),
			fmt.Sprintf("%.0f min", s.Gelled().Minutes()), s.Next(), fmt.Sprintf("%.0f h", math.Ceil(s.Sand.Hours())),
		})
	}
	how := "All times from mixing, at the hull's temperatures. " + c.Sessions[len(c.Sessions)-1].Reached(p.sys)
	p.section("Heat and cure", how, table{cols: []column{
		{"session", 0.11, false, true}, {"laid", 0.14, false, false}, {"what", 0.15, false, false}, {"hottest", 0.25, false, false}, {"gelled", 0.09, true, false}, {"next without sanding", 0.15, true, false}, {"sandable", 0.11, true, false},
	}, heads: true}, rows)
	// One session on paper, the hottest; the charts of all are in the pack.
	p.pair(view.EstimateWords, func(high float64) (a, b *drawing.Scene) {
		return view.Cures(p.r, onCard(high))[view.Hottest(p.r)], view.Profile(p.r, onCard(0.7*high))
	})
}

// onCard is the place of a chart on the card, whose head and foot say on every page
// what a chart alone says on top.
func onCard(high float64) view.Room { return view.Room{Plot: high, Told: true} }

// pair prints a note and two charts to which it belongs on one page: on this one
// with plots as high as it has room for, in mm, else on the next. Where that would
// leave much of this page empty, only the second goes to the next.
func (p *paper) pair(note string, charts func(high float64) (a, b *drawing.Scene)) {
	const gap = 4.0
	high := []float64{72, 64, 56}
	words := float64(len(wrap(note, p.width(), small, false)))*lead(small) + 1
	fit := func(h float64) (a, b *drawing.Scene, k float64) {
		a, b = charts(h)
		return a, b, min(1, (p.bottom-p.y-words)/(a.Height+gap+b.Height))
	}
	a, b, k := fit(high[0])
	for _, h := range high[1:] {
		if k < leastScale {
			a, b, k = fit(h)
		}
	}
	if k < leastScale {
		if p.bottom-p.y < splitRoom {
			p.page()
		}
		a, b, k = fit(high[0])
	}
	p.text(small, note)
	p.y++
	if k < leastScale {
		p.scene(a)
		p.scene(b)
		return
	}
	p.draw(a, k)
	p.y += gap*k - 2
	p.draw(b, k)
}
