package view

import (
	"fmt"
	"strings"

	"scarfwright/present/drawing"
	"scarfwright/repair"
	"scarfwright/repair/survey"
)

// StopWords is what every page and picture of a stopped job says, followed by
// where the reasons stand.
const StopWords = "STOP: not to be started"

// Held returns, in words, why nothing may be begun from what is printed: a job
// that is referred on or not planned, verdicts that stop it. Nothing is held
// where it returns none.
func Held(r repair.Result) []string {
	var out []string
	out = append(out, referred(r.Survey.Referrals)...)
	if r.Survey.NotPlanned != "" {
		out = append(out, "NOT RELEASED: "+r.Survey.NotPlanned)
	}
	var why []string
	for _, v := range r.Stops() {
		words := v.What
		if v.Value != "" {
			words += ", " + v.Value
		}
		why = append(why, words)
	}
	if len(why) > 0 {
		out = append(out, StopWords+" until these are settled: "+strings.Join(why, "; ")+".")
	}
	return out
}

// referred says that a job is referred on, and under which rules; nothing where it
// is not.
func referred(rs []survey.Referral) []string {
	if len(rs) == 0 {
		return nil
	}
	rules := make([]string, len(rs))
	for i, f := range rs {
		rules[i] = f.Rule
	}
	return []string{"NOT RELEASED: refer on first: " + strings.Join(rules, "; ") + "."}
}

// Partial reports whether the repair ends inside the laminate: a dish is ground
// and nothing is cut through.
func Partial(r repair.Result) bool { return r.Survey.Class == survey.PartialDepth }

// Opening is what the inner outline of a repair is called: the edge of what is
// cut away, or the floor of a dish under which the laminate stays.
func Opening(r repair.Result) string {
	if Partial(r) {
		return "floor of the dish"
	}
	return "cut-out"
}

// opening is the same where there is room for one word only.
func opening(r repair.Result) string {
	if Partial(r) {
		return "floor"
	}
	return "cut-out"
}

// DishWords says how deep a dish is ground and what stays below it, in the
// job's units; empty where the repair goes through.
func DishWords(r repair.Result) string {
	if !Partial(r) || r.Design == nil {
		return ""
	}
	u, d := unitsOf(r), r.Design
	return fmt.Sprintf("PARTIAL DEPTH: grind %s deep, %s stay below; do not cut through.", u.full(d.Depth.MM()), u.full((d.Original.Thickness - d.Depth).MM()))
}

// notice puts on top of a finished scene what stands on every export: what holds
// the job, how deep a dish goes, the general caution. The sheet grows by what
// that takes.
func notice(s *drawing.Scene, r repair.Result, margin float64) {
	bold := Held(r)
	if w := DishWords(r); w != "" {
		bold = append(bold, w)
	}
	headed(s, bold, r.Caution, margin)
}

// headed puts words on top of a finished scene, some of them in bold, and lets it grow.
func headed(s *drawing.Scene, bold []string, caution string, margin float64) {
	const step = 1.7 * drawing.TextSmall
	room := s.Width - 2*margin
	var lines []string
	for _, w := range bold {
		lines = append(lines, drawing.Wrap(w, room, drawing.TextSmall, true)...)
	}
	n := len(lines)
	lines = append(lines, drawing.Wrap(caution, room, drawing.TextSmall, false)...)
	if len(lines) == 0 {
		return
	}
	s.Height += float64(len(lines))*step + margin + 1
	p := s.On("CAUTION")
	y := s.Height - margin - drawing.TextSmall
	for i, line := range lines {
		if i < n {
			p.Bold(drawing.P(margin, y), drawing.TextSmall, drawing.Left, line)
		} else {
			p.Text(drawing.P(margin, y), drawing.TextSmall, drawing.Left, line)
		}
		y -= step
	}
}
