package ways

import (
	"fmt"
	"strings"

	"scarfwright/repair/check"
)

// AsBefore is the strength and stiffness that count as before: hand lay-up scatters
// by about a tenth (our own rule, see docs/decisions).
const AsBefore = 0.9

// nearHours are hours that count as the same.
const nearHours = 0.5

// choose recommends one way, or says why none.
//
// First come the ways that bring the panel back under every load, then those that do
// so under pressure; among them the fewest hours, and of nearly equal hours the
// strongest. What does not fit, or could not be computed, is not among them. Nor is
// anything where a rule refers the boat on.
func choose(r *Result, c *comparison) {
	switch {
	case len(r.Referrals) > 0:
		var rules []string
		for _, x := range r.Referrals {
			rules = append(rules, x.Rule)
		}
		r.Reason = "Referred on: " + strings.Join(rules, "; ") + ". Nothing is recommended here; the figures are for whoever decides. Print the referral sheet."
		if r.NotCompared != "" {
			r.Reason = strings.Replace(r.Reason, "; the figures are for whoever decides", "; "+r.NotCompared, 1)
		}
		return
	case r.NotCompared != "":
		r.Reason = "Nothing is recommended: " + r.NotCompared + ". Refer on."
		return
	case len(r.Ways) == 0:
		return
	}
	if stop := c.stop(); stop != "" {
		r.Reason = "Nothing is recommended before this is settled: " + stop
		return
	}
	full := func(w *Way) bool { return w.Strength.Likely >= AsBefore && w.Stiffness.Likely >= AsBefore }
	enough := func(w *Way) bool { return w.Pressure >= AsBefore && w.Stiffness.Likely >= AsBefore }
	whatever := func(*Way) bool { return true }
	best, tier := r.best(full, fewerHours), "full"
	if best < 0 {
		best, tier = r.best(enough, stronger), "pressure"
	}
	if best < 0 {
		best, tier = r.best(whatever, stronger), "none"
	}
	if open := r.unreckoned(); tier != "full" && open != "" {
		r.Reason = "Nothing is recommended: what fits but could not be reckoned may be better: " + open + ". Measure the room again, or have a naval architect look."
		return
	}
	if best < 0 {
		r.Reason = "No way fits between the panel's edges. Take off the tabbing and run the taper beneath it, with a surveyor who has seen the frames; or refer on."
		return
	}
	r.Recommended = best
	w := &r.Ways[best]
	w.Recommended = true
	r.Reason = c.reason(r, w, tier)
	r.Measurements = r.narrow(w)
}

// unreckoned names the ways that fit and could not be computed.
func (r *Result) unreckoned() string {
	var names []string
	for _, w := range r.Ways {
		if w.Fits && !w.Computed && w.Unsuited == "" {
			names = append(names, w.Name)
		}
	}
	return strings.Join(names, ", ")
}

// unsettledAt is the error of the arithmetic above which nothing is recommended.
const unsettledAt = 0.05

// settle takes a recommendation back whose arithmetic is not settled.
func (r *Result) settle() {
	if r.Recommended < 0 {
		return
	}
	w := &r.Ways[r.Recommended]
	if w.Error <= unsettledAt {
		return
	}
	w.Recommended, r.Recommended = false, -1
	r.Reason = fmt.Sprintf("Nothing is recommended: the arithmetic of the likeliest, %s, is not settled (%.0f %% off at the most), so that its strength of %.2f is no ground to choose on. Have a naval architect look.", w.Name, 100*w.Error, w.Strength.Likely)
}

// stop is what the design says must be settled whatever the way.
func (c *comparison) stop() string {
	for _, v := range append(c.s.Verdicts, c.base.Verdicts...) {
		fits := strings.HasPrefix(v.What, "taper to ") || strings.HasSuffix(v.What, "stiffness of the repair")
		if v.State == check.Stop && !fits {
			return v.What + ". " + v.Why
		}
	}
	return ""
}

// best returns the way that no other passes, among those that may be recommended and
// pass; -1 for none.
func (r *Result) best(pass func(*Way) bool, better func(w, than *Way) bool) int {
	best := -1
	for i := range r.Ways {
		w := &r.Ways[i]
		if !w.Computed || w.Unsuited != "" || !pass(w) {
			continue
		}
		if best < 0 || better(w, &r.Ways[best]) {
			best = i
		}
	}
	return best
}

// alike are strengths that count as the same.
const alike = 0.02

// fewerHours prefers the fewer hours; of hours that count as the same, the stronger.
func fewerHours(w, than *Way) bool {
	d := w.Hours.Likely - than.Hours.Likely
	return d < -nearHours || d < nearHours && w.Strength.Likely > than.Strength.Likely+alike
}

// stronger prefers the stronger; of strengths that count as the same, the fewer hours.
func stronger(w, than *Way) bool {
	d := w.Strength.Likely - than.Strength.Likely
	return d > alike || d > -alike && w.Hours.Likely < than.Hours.Likely-0.01
}

func (c *comparison) reason(r *Result, w *Way, tier string) string {
	g := w.Cases[w.Governs]
	var s string
	switch tier {
	case "full":
		s = fmt.Sprintf("Of the ways that fit and likely bring the panel back under every load (%.2f or more), it asks for the fewest hours, or is stronger within half an hour of them. ", AsBefore)
	case "pressure":
		s = fmt.Sprintf("No way that fits brings the laminate's whole strength back in its plane; this one does under pressure (%.2f), and of those that do it is the strongest, or within 0.02 of it in fewer hours. ", w.Pressure)
	default:
		s = "No way that fits brings the panel back; this is the strongest, or within 0.02 of it in fewer hours. Ask a surveyor whether it is enough. "
	}
	s += fmt.Sprintf("Its least is %.2f, %s, in the %s; it is %.2f as stiff.", w.Strength.Likely, g.Load, g.Mode, w.Stiffness.Likely)
	if chosen := r.chosen(); chosen != nil && chosen != w {
		switch {
		case !chosen.Fits:
			s += fmt.Sprintf(" What was chosen, %s, does not fit: it %s.", chosen.Name, chosen.Left)
		case chosen.Computed:
			x := chosen.Cases[chosen.Governs]
			s += fmt.Sprintf(" What was chosen, %s, comes to %.2f (%s, %s), and to %.2f under pressure, %s.",
				chosen.Name, chosen.Strength.Likely, x.Load, x.Mode, chosen.Pressure, hoursMore(chosen.Hours.Likely-w.Hours.Likely))
		}
	}
	for i := range r.Ways {
		if p := &r.Ways[i]; p.Kind == Plug && p.Computed {
			s += fmt.Sprintf(" A filler plug with cloth over it would have %.2f of the strength.", p.Strength.Likely)
		}
	}
	return s
}

func (r *Result) chosen() *Way {
	for i := range r.Ways {
		if r.Ways[i].Chosen {
			return &r.Ways[i]
		}
	}
	return nil
}

// pictured is the way that is drawn and worked out line by line: the recommended one,
// else the chosen one, else the strongest; nil where none was computed.
func (r *Result) pictured() *Way {
	if r.Recommended >= 0 {
		return &r.Ways[r.Recommended]
	}
	if w := r.chosen(); w != nil && w.Computed {
		return w
	}
	if i := r.best(func(*Way) bool { return true }, stronger); i >= 0 {
		return &r.Ways[i]
	}
	return nil
}

// hoursMore says a difference in hours.
func hoursMore(h float64) string {
	switch {
	case h >= 0.05:
		return fmt.Sprintf("with %.1f h more", h)
	case h <= -0.05:
		return fmt.Sprintf("with %.1f h less", -h)
	}
	return "in the same hours"
}
