package ways

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Num prints a strength or a stiffness to two decimals, and what is not computed as
// a dash.
func Num(x float64) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return "–"
	}
	return fmt.Sprintf("%.2f", x)
}

// Text says a span with the cautious end first: "at least 0.62, likely 0.87".
func (s Span) Text() string {
	switch {
	case s.Likely == 0:
		return "–"
	case s.High-s.Low < 0.005:
		return Num(s.Likely)
	}
	return fmt.Sprintf("at least %s, likely %s", Num(s.Low), Num(s.Likely))
}

// Weakest says under which load, and in what, a way is weakest.
func (w Way) Weakest() string {
	if !w.Computed {
		return w.Why
	}
	c := w.Cases[w.Governs]
	return c.Mode + ", " + c.Load
}

// Standing says what a row of the comparison is: recommended, as chosen, not to be
// recommended and why; empty for the others.
func (w Way) Standing() string {
	switch {
	case w.Recommended && w.Chosen:
		return "recommended, as chosen"
	case w.Recommended:
		return "recommended"
	case !w.Fits:
		return "does not fit"
	case w.Chosen:
		return "as chosen"
	case w.Unsuited != "":
		return "never recommended"
	}
	return ""
}

// Weight prints a change of weight with its sign.
func Weight(m si.Mass, sys si.System) string {
	if m < 0 {
		return "−" + si.Show(-m, sys, 3)
	}
	return "+" + si.Show(m, sys, 3)
}
