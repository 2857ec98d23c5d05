package panel

import (
	"math"

	"scarfwright/physics/si"
)

// Answer is a solved panel with its headline figures and how far they may be off
// through the mesh. That is the error of the arithmetic only: nothing in it knows
// how well the laminate, the load and the edges are known.
type Answer struct {
	*Result
	W           si.Length // the largest deflection, and where
	WAt         Point
	Worst       PlyState // the largest strain along or across the fibres, and where
	Component   int      // which of the two
	WError      si.Length
	StrainError float64
}

// Solve prepares and solves a panel twice, the second time with polynomials one
// degree lower, and takes the difference for the error of the first.
//
// The error falls by several times with each degree, so the difference is close to
// the error of the coarser run and overstates that of the finer one. Measured on 60
// random panels against degree 8 (TestEstimate).
func Solve(p Panel, o Options, largeDeflection bool) (Answer, error) {
	run := func(o Options) (*Result, error) {
		m, err := Prepare(p, o)
		if err != nil {
			return nil, err
		}
		if largeDeflection {
			return m.LargeDeflection()
		}
		return m.Linear()
	}
	g, err := o.grading()
	if err != nil {
		return Answer{}, err
	}
	fine, err := run(o)
	if err != nil {
		return Answer{}, err
	}
	o.Degree = g.degree - 1
	coarse, err := run(o)
	if err != nil {
		return Answer{}, err
	}
	a := Answer{Result: fine}
	a.W, a.WAt = fine.MaxDeflection()
	a.Worst, a.Component = fine.Governing()
	w, _ := coarse.MaxDeflection()
	a.WError = si.Length(math.Abs(float64(a.W - w)))
	a.StrainError = math.Abs(math.Abs(a.worst()) - math.Abs(governing(coarse)))
	// The same place may have fared worse than the largest value.
	if same, err := coarse.Plies(a.Worst.At, a.Worst.Zone); err == nil {
		for _, s := range same {
			if s.Ply == a.Worst.Ply && s.Place == a.Worst.Place {
				a.StrainError = math.Max(a.StrainError, math.Abs(s.Strain[a.Component]-a.worst()))
			}
		}
	}
	return a, nil
}

func (a Answer) worst() float64 { return a.Worst.Strain[a.Component] }

func governing(r *Result) float64 {
	s, c := r.Governing()
	return s.Strain[c]
}
