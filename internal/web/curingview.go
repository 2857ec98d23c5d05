package web

import (
	"fmt"
	"math"

	"scarfwright/present/view"
	"scarfwright/repair"
	"scarfwright/repair/curing"
	"scarfwright/repair/working"
)

// curingView is heat and cure, session by session.
type curingView struct {
	Sessions      []cureRow
	Reached       string // what a day and a week really come to
	Charts        []chart
	Profile, Wall chart
	HasWall       bool
	Warmth        *gridView // what a tent or a lamp changes
}

// gridView is a plain table with a note under it.
type gridView struct {
	Title string
	Heads []string
	Rows  [][]string
	Note  string
}

// coatsOf is the times of what is spread over the laminate, nil where nothing is.
func coatsOf(r repair.Result) *gridView {
	if len(r.Coats) == 0 {
		return nil
	}
	v := &gridView{Title: "How long each coat may be worked, and when it sets", Heads: curing.CoatHeads, Note: curing.CoatNote}
	for _, c := range r.Coats {
		v.Rows = append(v.Rows, c.Row(r.Job.Choices.System()))
	}
	return v
}

func warmthOf(r repair.Result) *gridView {
	v := &gridView{Title: "What a tent or a lamp changes", Heads: curing.WarmthHeads, Note: curing.WarmthNote}
	for _, w := range r.Curing.Warmth {
		v.Rows = append(v.Rows, w.Row(r.Job.Choices.System()))
	}
	return v
}

type cureRow struct{ Name, Laid, What, Hottest, Limit, Gelled, Next, Sandable string }

func curingOf(u units, r repair.Result) *curingView {
	v := &curingView{Warmth: warmthOf(r)}
	for _, s := range r.Curing.Sessions {
		row := cureRow{
			Name: s.Name, Laid: "at the temperature given", What: working.Count(len(s.Plies), "ply", "plies") + ", " + u.length(s.Thickness),
			Hottest: s.Hottest(r.Job.Choices.System()), Limit: curing.Degrees(s.Limit, r.Job.Choices.System()),
			Gelled: trimmed(s.Gelled().Minutes(), 0) + nb + "min", Next: s.RecoatWords, Sandable: trimmed(math.Ceil(s.Sand.Hours()), 0) + nb + "h",
		}
		if s.Day > 0 {
			row.Laid = fmt.Sprintf("day %d, from %02.0f"+nb+"h", s.Day, s.Hour)
		}
		v.Sessions = append(v.Sessions, row)
		v.Reached = s.Reached(r.Job.Choices.System())
	}
	slim := view.Cures(r, phone)
	for i, s := range view.Cures(r, desk) {
		v.Charts = append(v.Charts, chart{pictureOf(s), pictureOf(slim[i])})
	}
	v.Profile = chart{pictureOf(view.Profile(r, desk)), pictureOf(view.Profile(r, phone))}
	if s := view.PotLife(r, desk); s != nil {
		v.Wall, v.HasWall = chart{pictureOf(s), pictureOf(view.PotLife(r, phone))}, true
	}
	return v
}

// chart is one chart drawn twice: the page shows the one that is legible on the
// screen without scrolling sideways.
type chart struct{ Wide, Slim picture }

var (
	desk  = view.Room{}
	phone = view.Room{Width: 96} // its lettering comes to some 12 px on 360 px
)
