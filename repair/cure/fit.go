package cure

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
)

// datum is one number of the sheet and how to compute it.
type datum struct {
	name  string
	sheet float64 // s or K
	sigma float64 // of the logarithm
}

// problem is a sheet made ready.
type problem struct {
	sheet Sheet
	data  []datum
}

func newProblem(s Sheet) *problem {
	p := &problem{sheet: s}
	add := func(sheet, sigma float64, format string, args ...any) {
		p.data = append(p.data, datum{fmt.Sprintf(format, args...), sheet, sigma})
	}
	at := func(T si.Temp, dose si.Ratio) string {
		if s.Kind == Polyester {
			return fmt.Sprintf("%.4g °C, %.3g %%", T.Celsius(), dose.Percent())
		}
		return fmt.Sprintf("%.4g °C", T.Celsius())
	}
	for _, c := range s.Pots {
		add(float64(c.Time), c.Sigma, "pot life of %.4g g at %s", c.Mass.Grams(), at(c.At, c.Dose))
	}
	for _, f := range s.FilmGel {
		add(float64(f.Time), f.Sigma, "film gel at %s", at(f.At, f.Dose))
	}
	for _, f := range s.Sandable {
		add(float64(f.Time), f.Sigma, "sandable at %s", at(f.At, f.Dose))
	}
	for _, k := range s.Peaks {
		add(float64(k.Peak.Sub(k.At)), k.Sigma, "rise of %.4g g at %s", k.Mass.Grams(), at(k.At, k.Dose))
		if k.When > 0 {
			add(float64(k.When), k.SigmaWhen, "time of the peak of %.4g g at %s", k.Mass.Grams(), at(k.At, k.Dose))
		}
	}
	return p
}

// model computes every datum, in the order of newProblem; those of cups are left as
// they are where only films have changed.
func (p *problem) model(r *resin, out []float64, cups bool) {
	i := 0
	put := func(x float64) { out[i] = x; i++ }
	for _, c := range p.sheet.Pots {
		if !cups {
			i++
			continue
		}
		b := r.bath(Batch{Mass: c.Mass, Vessel: heat.StraightCup(c.Diameter), Air: c.At})
		put(r.run(b, c.Dose, false).pot(c.Criterion))
	}
	for _, f := range p.sheet.FilmGel {
		put(r.film(float64(f.At), f.Dose, r.gel))
	}
	for _, f := range p.sheet.Sandable {
		put(r.film(float64(f.At), f.Dose, r.sand))
	}
	for _, k := range p.sheet.Peaks {
		if !cups {
			break // they are last
		}
		b := r.bath(Batch{Mass: k.Mass, Vessel: heat.StraightCup(k.Diameter), Air: k.At})
		o := r.run(b, k.Dose, true)
		put(max(o.peak-b.air, 1e-3))
		if k.When > 0 {
			put(o.peakAt)
		}
	}
}

// residuals are those of the data and then z itself, the priors'.
func (p *problem) residuals(z, out []float64) {
	r := newResin(p.sheet, z)
	n := len(p.data)
	p.model(&r, out[:n], true)
	for i, d := range p.data {
		out[i] = math.Log(out[i]/d.sheet) / d.sigma
	}
	copy(out[n:], z)
}

// column is how the residuals change with parameter j, by a forward difference.
func (p *problem) column(z, res []float64, j int, out []float64) {
	const step = 1e-3 // of a prior's standard deviation
	keep := z[j]
	z[j] += step
	r := newResin(p.sheet, z)
	z[j] = keep
	n := len(p.data)
	for i, d := range p.data { // what the model leaves alone has not changed
		out[i] = d.sheet * math.Exp(res[i]*d.sigma)
	}
	p.model(&r, out[:n], !usual[p.sheet.Kind].parameters[j].films)
	for i, d := range p.data {
		out[i] = (math.Log(out[i]/d.sheet)/d.sigma - res[i]) / step
	}
	clear(out[n:])
	out[n+j] = 1
}

// cost is the sum of squares.
func cost(res []float64) float64 {
	s := 0.0
	for _, x := range res {
		s += x * x
	}
	return s
}

// optimum is where one start came to rest.
type optimum struct {
	z, res []float64 // there, and the residuals
	cost   float64
	jac    *mat.Dense
	jtj    *mat.SymDense // the curvature
}

// descend is Levenberg-Marquardt with forward differences. The priors make the
// curvature at least 1 in every direction, so it is never singular.
//
// A start that comes close to an optimum known from another is that optimum.
func (p *problem) descend(start []float64, known []optimum) (optimum, error) {
	const (
		most   = 60
		enough = 1e-3 // fall in cost that no longer counts
	)
	n, rows := len(start), len(p.data)+len(start)
	z := append([]float64(nil), start...)
	res, next := make([]float64, rows), make([]float64, rows)
	p.residuals(z, res)
	f := cost(res)
	jac := mat.NewDense(rows, n, nil)
	jtj, damped := mat.NewSymDense(n, nil), mat.NewSymDense(n, nil)
	slope, move := mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	trial := make([]float64, n)
	differentiate := func() {
		for j := range n {
			p.column(z, res, j, next)
			jac.SetCol(j, next)
		}
		jtj.SymOuterK(1, jac.T())
		slope.MulVec(jac.T(), mat.NewVecDense(rows, res))
	}
	differentiate()
	lambda := 1e-2
	for range most {
		damped.CopySym(jtj)
		for j := range n {
			damped.SetSym(j, j, jtj.At(j, j)*(1+lambda))
		}
		var chol mat.Cholesky
		if !chol.Factorize(damped) {
			return optimum{}, errors.New("the fit broke down: the sheet's numbers contradict each other beyond reason")
		}
		if err := chol.SolveVecTo(move, slope); err != nil {
			return optimum{}, err
		}
		for j := range n {
			trial[j] = z[j] - min(max(move.AtVec(j), -2), 2)
		}
		p.residuals(trial, next)
		g := cost(next)
		if !(g < f) {
			if lambda *= 8; lambda > 1e8 {
				break
			}
			continue
		}
		fall := f - g
		copy(z, trial)
		res, next = next, res
		f = g
		lambda = max(lambda/8, 1e-7)
		for _, k := range known {
			if f < k.cost+0.2 && floats.Distance(z, k.z, math.Inf(1)) < 0.4 {
				return k, nil
			}
		}
		differentiate()
		if fall < enough*(1+f) {
			break
		}
	}
	return optimum{z, res, f, jac, jtj}, nil
}

// starts are fixed points in units of the priors: the means, and round them by the
// golden-ratio rule, so that no two parameters move together.
func starts(n, count int) [][]float64 {
	out := make([][]float64, count)
	for i := range out {
		out[i] = make([]float64, n)
		for j := range n {
			if i > 0 {
				_, f := math.Modf(float64(i) * math.Sqrt(float64(primes[j])))
				out[i][j] = 2.4*f - 1.2
			}
		}
	}
	return out
}

var primes = [...]int{2, 3, 5, 7, 11, 13, 17, 19, 23, 29}

// Fit returns the model of a sheet: the most likely parameters, and how uncertain
// they are. It is an error where a field of the sheet is out of range, or nothing
// in it is timed.
func Fit(s Sheet) (Model, error) { return fit(s, 0) }

func fit(s Sheet, count int) (Model, error) {
	s, err := s.settled()
	if err != nil {
		return Model{}, err
	}
	if count == 0 {
		count = 4
		if s.Kind == Polyester {
			count = 6 // there are several optima
		}
	}
	p := newProblem(s)
	var best optimum
	var known []optimum
	var costs []float64
	for _, z := range starts(len(usual[s.Kind].parameters), count) {
		o, err := p.descend(z, known)
		if err != nil {
			return Model{}, fmt.Errorf("sheet %q: %w", s.Name, err)
		}
		costs, known = append(costs, o.cost), append(known, o)
		if best.z == nil || o.cost < best.cost {
			best = o
		}
	}
	return newModel(p, best, costs)
}
