package cure

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat/distuv"
)

// draws is how many materials a prediction tries. They are the same for every
// question (fixed points, no chance), so that a warmer or a bigger cup is compared
// with itself.
const draws = 64

// draw returns materials that would all pass for the sheet's. With L the root of the
// covariance at the optimum, Laplace's normal law is z = z0 + L u, u standard
// normal. That is exact where the model is linear; where it bends (time to gel is
// induction plus growth, and one may stand in for the other), such a z can miss the
// sheet by far. So each is pulled back until the residuals themselves, seen along
// the model's own directions, have moved by u:
//
//	L' J' [r(z) - r(z0)] = u
//
// by chord steps with the J of the optimum ("randomise then optimise", Bardsley and
// others 2014, from memory; its weights are left out).
func (p *problem) draw(o optimum, root *mat.Cholesky) []resin {
	const (
		corrections = 5
		close       = 0.15 // of a standard deviation
	)
	n, rows := len(o.z), len(o.res)
	var lower mat.TriDense
	root.LTo(&lower)
	var q mat.Dense
	q.Mul(o.jac, &lower)
	u, miss, move := mat.NewVecDense(n, nil), mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	moved := mat.NewVecDense(rows, nil)
	out := make([]resin, draws)
	for i := range out {
		z, nearest := append([]float64(nil), o.z...), math.Inf(1)
		for k := range n {
			u.SetVec(k, normal(i, k))
		}
		miss.CopyVec(u)
		for range corrections {
			move.MulVec(&lower, miss)
			for k := range n {
				z[k] += move.AtVec(k)
			}
			p.residuals(z, moved.RawVector().Data)
			for k := range rows {
				moved.SetVec(k, moved.AtVec(k)-o.res[k])
			}
			miss.MulVec(q.T(), moved)
			miss.SubVec(u, miss)
			away := mat.Norm(miss, 2)
			if away < nearest {
				nearest = away
				out[i] = newResin(p.sheet, z)
			}
			if away < close || !(away < 4*nearest) {
				break
			}
		}
	}
	return out
}

// normal is number i of a sequence that fills the normal law of dimension k evenly:
// Halton's radical inverse (from memory), stretched.
func normal(i, k int) float64 {
	base := primes[k]
	u, f := 0.0, 1.0
	for n := i + 20; n > 0; n /= base { // the first points of high bases lie in a line
		f /= float64(base)
		u += f * float64(n%base)
	}
	return distuv.UnitNormal.Quantile(min(max(u, 1e-4), 1-1e-4))
}
