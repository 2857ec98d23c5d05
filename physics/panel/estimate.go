package panel

import (
	"fmt"
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
// the error of the coarser run and overstates that of the finer one. It is doubled
// all the same, for two numbers may agree by chance. TestEstimate holds it against
// 60 random panels at degree 7.
func Solve(p Panel, o Options, largeDeflection bool) (Answer, error) {
	run := func(o Options) (*Result, error) {
		m, err := Prepare(p, o)
		if err != nil {
			return nil, err
		}
		return m.run(largeDeflection)
	}
	g, err := o.grading()
	if err != nil {
		return Answer{}, err
	}
	if g.degree < 3 {
		return Answer{}, fmt.Errorf("panel: degree %d leaves no lower one to compare with: 3 at least", g.degree)
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
	a.WError = si.Length(2 * differenceW(fine, coarse))
	a.StrainError = 2 * differenceStrain(fine, coarse, a.Worst.Zone, math.Abs(a.worst()))
	return a, nil
}

// differenceW returns the largest difference in deflection between two solutions on
// the same elements, at their corners and between the two maxima.
func differenceW(fine, coarse *Result) float64 {
	w, _ := fine.MaxDeflection()
	v, _ := coarse.MaxDeflection()
	most := math.Abs(float64(w - v))
	for i := range fine.mesh.elements {
		e, f := &fine.mesh.elements[i], &coarse.mesh.elements[i]
		for _, c := range [][4]int{{0, 0, 0, 0}, {e.pr, 0, f.pr, 0}, {0, e.ps, 0, f.ps}, {e.pr, e.ps, f.pr, f.ps}} {
			n, k := e.nodes[c[0]*(e.ps+1)+c[1]], f.nodes[c[2]*(f.ps+1)+c[3]]
			most = math.Max(most, math.Abs(fine.u[dofs*n+dofW]-coarse.u[dofs*k+dofW]))
		}
	}
	return most
}

// differenceStrain returns the largest difference between two solutions in those
// extremes along and across the fibres of the plies of a zone that come near the
// worst one. One alone may agree by chance; several seldom do. To this 0.2 % is
// added for the net on which the extremes were looked for.
func differenceStrain(fine, coarse *Result, zone int, worst float64) (most float64) {
	other := coarse.StrainExtremes()
	for i, x := range fine.StrainExtremes() {
		c := x.Component
		if x.Zone != zone || c == 2 {
			continue
		}
		y := other[i]
		for _, pair := range [][2]float64{{x.Max.Strain[c], y.Max.Strain[c]}, {x.Min.Strain[c], y.Min.Strain[c]}} {
			if math.Abs(pair[0]) > 0.7*worst {
				most = math.Max(most, math.Abs(pair[0]-pair[1]))
			}
		}
	}
	return most + 0.002*worst
}

func (a Answer) worst() float64 { return a.Worst.Strain[a.Component] }
