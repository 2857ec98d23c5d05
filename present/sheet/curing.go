package sheet

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
	"scarfwright/present/view"
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
			s.Name, laid, fmt.Sprintf("%d plies, %s", len(s.Plies), p.length(s.Thickness)),
			s.Hottest(p.sys) + "; limit " + si.Show(s.Limit, p.sys, 2),
			fmt.Sprintf("%.0f min", s.Gelled().Minutes()), s.Next(), fmt.Sprintf("%.0f h", math.Ceil(s.Sand.Hours())),
		})
	}
	how := "All times from mixing, at the hull's temperatures. " + c.Sessions[len(c.Sessions)-1].Reached(p.sys)
	p.section("Heat and cure", how, table{cols: []column{
		{"session", 0.11, false, true}, {"laid", 0.14, false, false}, {"what", 0.15, false, false}, {"hottest", 0.25, false, false}, {"gelled", 0.09, true, false}, {"next without sanding", 0.15, true, false}, {"sandable", 0.11, true, false},
	}, heads: true}, rows)
	// One session on paper, the hottest; the charts of all are in the pack.
	hottest := 0
	for i, s := range c.Sessions {
		if s.Own > c.Sessions[hottest].Own {
			hottest = i
		}
	}
	p.scene(view.Cures(p.r)[hottest])
	p.scene(view.Profile(p.r))
}
