package web

import (
	"fmt"
	"math"

	"scarfwright/present/view"
	"scarfwright/repair"
)

// curingView is heat and cure, session by session.
type curingView struct {
	Sessions      []cureRow
	Reached       string // what a day and a week really come to
	Charts        []picture
	Profile, Wall picture
	HasWall       bool
}

type cureRow struct{ Name, Laid, What, Hottest, Limit, Gelled, Next, Sandable string }

func curingOf(u units, r repair.Result) *curingView {
	v := &curingView{}
	for _, s := range r.Curing.Sessions {
		row := cureRow{
			Name: s.Name, Laid: "at the temperature given", What: fmt.Sprintf("%d plies, %s", len(s.Plies), u.length(s.Thickness)),
			Hottest: s.Hottest(r.Job.Choices.System()), Limit: celsius(s.Limit),
			Gelled: trimmed(s.Gelled().Minutes(), 0) + nb + "min", Next: s.RecoatWords, Sandable: trimmed(math.Ceil(s.Sand.Hours()), 0) + nb + "h",
		}
		if s.Day > 0 {
			row.Laid = fmt.Sprintf("day %d, from %02.0f"+nb+"h", s.Day, s.Hour)
		}
		v.Sessions = append(v.Sessions, row)
		v.Reached = s.Reached(r.Job.Choices.System())
	}
	for _, s := range view.Cures(r) {
		v.Charts = append(v.Charts, pictureOf(s))
	}
	v.Profile = pictureOf(view.Profile(r))
	if s := view.PotLife(r); s != nil {
		v.Wall, v.HasWall = pictureOf(s), true
	}
	return v
}
