package kinetics

import (
	"fmt"
	"math"
)

// GelConversion returns the degree of cure at which a mixture of f-functional and
// g-functional molecules gels, by Flory and Stockmayer.
//
//	a = 1 / sqrt(r (f-1)(g-1))
//
// Flory1953, from memory; the form was read in a glossary. r is the ratio of the
// groups that run short to the others, at most 1, and a counts the groups that run
// short. A diamine has f = 4 (its hydrogens), a diepoxide g = 2. Mixtures take the
// weight-average f. It is an error if a would pass 1: such a mix never gels, a
// hardener measured far too short among them.
//
// Rings that close on themselves delay real gel beyond it. Radical resins are
// another thing: they gel at a few per cent (0.02 to 0.06, from memory).
func GelConversion(f, g, r float64) (float64, error) {
	switch {
	case !(f > 1 && finite(f)):
		return 0, fmt.Errorf("functionality f is %g: must be more than 1", f)
	case !(g > 1 && finite(g)):
		return 0, fmt.Errorf("functionality g is %g: must be more than 1", g)
	case !(r > 0 && r <= 1):
		return 0, fmt.Errorf("stoichiometric ratio %g: must be more than 0 and at most 1 (short groups over the others)", r)
	}
	a := 1 / math.Sqrt(r*(f-1)*(g-1))
	if a > 1 {
		return 0, fmt.Errorf("f %g, g %g, ratio %g: the mix never gels, for it would need a conversion of %.3f", f, g, r, a)
	}
	return a, nil
}
