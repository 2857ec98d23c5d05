package overcoat

import (
	"fmt"

	"scarfwright/repair/check"
)

// Materials are what a job lays on the boat, by sort. An empty sort is not in
// the job. Above the laminate go filler, barrier and finish, in that order, each
// on the last one that is in the job.
type Materials struct {
	Old     Sort // the boat's own; empty means OldLaminate
	Repair  Sort // laminating resin
	Filler  Sort
	Barrier Sort
	Finish  Sort // Gelcoat or Paint
}

// Joint is one place in a job where one material goes on another.
type Joint struct {
	What string `json:"what"` // "gelcoat on the filler"

	// Window is the pair while the surface below is still tacky, nil where the
	// job cannot be there in time or the table does not know it.
	Window *Pair `json:"window,omitempty"`
	// Later is the pair on the face it is mostly laid on: hard and then washed
	// and sanded, or ground.
	Later Pair `json:"later"`

	// Inside is whether the hours of the plan lie inside the window. Nobody may
	// count on that unless the plan was looked at: For leaves it false.
	Inside bool `json:"inside"`
	// When is the gap and the window in words, empty where neither is known.
	When string `json:"when,omitempty"` // "laid 23 h after, window 2.9 to 35.1 h"
}

// Taken is the pair that the plan comes to: that of the tacky face where it is
// laid inside the window, else that of the sanded face.
func (j Joint) Taken() Pair {
	if j.Inside && j.Window != nil {
		return *j.Window
	}
	return j.Later
}

// Surface says what is laid on what and in which state, with the planned hours where
// they are known: "polyester on polyester (tacky), laid 23 h after, window 2.9 to 35.1 h".
func (j Joint) Surface() string {
	if j.When == "" {
		return j.Taken().Name()
	}
	return j.Taken().Name() + ", " + j.When
}

// Check returns the joint as a verdict, that of the pair taken. Where the plan
// counts on the window, it also says what is done if that is missed.
func (j Joint) Check() check.Verdict {
	v := j.Taken().Check()
	v.What, v.Value = j.What, j.Surface()
	if s := j.Missed(); s != "" {
		v.Why += " " + s
	}
	return v
}

// Missed says what is done where the window that the plan counts on is missed, empty
// where it counts on none.
func (j Joint) Missed() string {
	if !j.Inside || j.Window == nil {
		return ""
	}
	return fmt.Sprintf("If the window is missed, go by %s, %s: %s. Risk then: %s.", j.Later.Name(), j.Later.Verdict, j.Later.Preparation, j.Later.Risk)
}

// For returns the joints of a job from the boat outwards: repair resin on the
// old laminate, ply session on ply session, filler on laminate, barrier, finish.
// A pair that the table does not know gives a joint that stops, with the reason;
// it never passes for ok. It panics on a sort that does not exist.
func For(m Materials) []Joint {
	old := m.Old
	if old == "" {
		old = OldLaminate
	}
	var out []Joint
	below, where := old, "the old laminate"
	lay := func(what string, above Sort, name string) {
		if above == "" {
			return
		}
		j := Joint{What: fmt.Sprintf("%s on %s", what, where)}
		// Nobody is on the old laminate while it is tacky.
		if p, ok := Find(below, above, Tacky); ok && where != "the old laminate" {
			j.Window = &p
		}
		j.Later = find(below, above, Sanded)
		out = append(out, j)
		below, where = above, name
	}
	lay("repair resin", m.Repair, "the last session")
	lay("next session", m.Repair, "the new laminate")
	lay("filler", m.Filler, "the filler")
	lay("barrier coat", m.Barrier, "the barrier coat")
	lay(string(m.Finish), m.Finish, "")
	return out
}

// find is Find with a pair that stops in place of none.
func find(below, above Sort, state State) Pair {
	if p, ok := Find(below, above, state); ok {
		return p
	}
	return Pair{
		Below: below, Above: above, State: state, Verdict: check.Stop,
		Preparation: "ask the makers of both materials",
		Risk:        "unknown",
		Ruling:      "The table knows nothing of this pair, and not knowing is no leave to go on.",
		Statements:  []Statement{{"nothing", check.Stop, string(Ours), Ours}},
	}
}
