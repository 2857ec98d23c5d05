package programme

import "scarfwright/repair/estimate"

// The tool's own rates in hours, low, likely and high, for a competent pair (from
// memory; a yard's own hours take their place).

// Grinding is the hours to cut out and grind a taper of so many square metres.
func Grinding(m2 float64) estimate.Range {
	return estimate.Range{Low: 0.75 + m2/0.6, Likely: 1 + m2/0.45, High: 1.5 + m2/0.3}
}

// Forming is the hours for a form or backing and to cut and fit so many plies.
func Forming(plies float64) estimate.Range {
	return estimate.Range{Low: 0.5 + plies*0.05, Likely: 1 + plies*0.08, High: 2 + plies*0.15}
}

// Laying is the hours of one laminating session with so many square metres of cloth.
func Laying(m2 float64) estimate.Range {
	return estimate.Range{Low: 0.4 + m2/3, Likely: 0.5 + m2/2, High: 0.8 + m2/1.2}
}

// Fairing is the hours to fair so many square metres.
func Fairing(m2 float64) estimate.Range {
	return estimate.Range{Low: 1.5 + 4*m2, Likely: 2.5 + 6*m2, High: 4 + 10*m2}
}
