package curing

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/si"
)

// Warmth is the first session with one way of warming the work, or with none: what
// a tent or a lamp changes.
type Warmth struct {
	Name    string   `json:"name"`    // "none", "tent", "lamp", as choices.heat has it
	Words   string   `json:"words"`   // what it does
	Chosen  bool     `json:"chosen"`  // the plan is made with it
	Assumed bool     `json:"assumed"` // how much it warms is not given: a usual figure
	Open    string   `json:"open"`    // hours open for laminating; empty where no days are given
	Session *Session `json:"session"` // nil where no hour is open
}

// Bare returns the session without its curves, which are for drawing.
func (s Session) Bare() *Session {
	s.Curves, s.Profile, s.Degree = nil, nil, Degree{}
	return &s
}

// WarmthNote stands under the comparison.
const WarmthNote = "The same plies in the first session. A tent warms the air, the mixing and the hull; a lamp only the face under it, " +
	"while it is on. Peaks are upper estimates: more heat is also a hotter laminate and a shorter pot. Lamps and heaters light vapour: " +
	"none over wet polyester, open solvent or in a tent without extraction; nothing left on unwatched; the thermometer decides."

// WarmthHeads are the heads of the comparison's columns, and Row its rows, the same
// on page and paper.
var WarmthHeads = []string{"heat", "hours open", "hottest", "gelled", "next without sanding", "sandable", "softens from, after a day", "after a week"}

// Row is one row of the comparison.
func (w Warmth) Row(sys si.System) []string {
	name := w.Words
	if w.Assumed {
		name += " (assumed)"
	}
	if w.Chosen {
		name += ", as planned"
	}
	open := cmp.Or(w.Open, "no days given")
	s := w.Session
	if s == nil {
		return []string{name, open, "–", "–", "–", "–", "–", "–"}
	}
	hot := strings.TrimPrefix(s.Hottest(sys), "peak ")
	if s.hottest() > s.Limit {
		hot += ", over the limit of " + Degrees(s.Limit, sys)
	}
	return []string{
		name, open, hot, fmt.Sprintf("%.0f min", s.Gelled().Minutes()), s.Next(),
		fmt.Sprintf("%.0f h", math.Ceil(s.Sand.Hours())), Degrees(s.AfterDay.Tg, sys), Degrees(s.AfterWeek.Tg, sys),
	}
}
