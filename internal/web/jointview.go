package web

import (
	"net/url"

	"scarfwright/repair"
	"scarfwright/repair/check"
	"scarfwright/repair/overcoat"
)

// jointView is one place of the job where one material goes on another.
type jointView struct {
	What, Surface string
	overcoat.Pair        // as the plan takes it
	Missed        string // what is done if the window it counts on is missed
	Link          string // the same in the whole table
	Above         bool   // not ok, so its check stands above with all its words
}

func jointsOf(r repair.Result) []jointView {
	var out []jointView
	for _, j := range r.Joints {
		x := j.Taken()
		q := url.Values{"on": {string(x.Below)}, "lay": {string(x.Above)}}
		out = append(out, jointView{j.What, j.Surface(), x, j.Missed(), "/overcoat?" + q.Encode(), x.Verdict != check.OK})
	}
	return out
}
