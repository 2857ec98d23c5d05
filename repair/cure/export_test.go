package cure

import "slices"

// FitFrom fits from so many starts, and returns where each came to rest.
func FitFrom(s Sheet, starts int) (Model, error) { return fit(s, starts) }

// Truth is a sheet's material drawn from the priors: fields of a test that knows
// what the fit may not.
type Truth struct{ Model }

// NewTruth returns the material that lies z standard deviations off the prior means,
// as a model without doubt. The sheet only says its kind and what the film doses are.
func NewTruth(s Sheet, z []float64) Truth {
	s, err := s.settled()
	if err != nil {
		panic(err)
	}
	p := newProblem(s)
	r := newResin(s, z)
	m := Model{problem: p, best: r, z: slices.Clone(z), through: p.throughDegree(&r)}
	m.sample = slices.Repeat([]resin{r}, draws)
	m.throughDraws = slices.Repeat([]float64{m.through}, draws)
	return Truth{m}
}

// Parameters is how many unknowns a kind has.
func Parameters(k Kind) int { return len(usual[k].parameters) }

// Posterior gives a test the cost at z, and the optimum with its deviations, all in
// units of the priors.
func (m Model) Posterior() (costAt func(z []float64) float64, z, sd []float64) {
	res := make([]float64, len(m.problem.data)+len(m.z))
	return func(z []float64) float64 {
		m.problem.residuals(z, res)
		return cost(res)
	}, m.z, m.sd
}
