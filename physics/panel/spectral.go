package panel

import (
	"math"
	"sync"
)

// legendre returns the Legendre polynomial P_n and its derivative at x in [-1, 1].
func legendre(n int, x float64) (P, dP float64) {
	P, prev := 1.0, 0.0
	for k := 1; k <= n; k++ {
		P, prev = (float64(2*k-1)*x*P-float64(k-1)*prev)/float64(k), P
	}
	if x*x == 1 {
		return P, math.Pow(x, float64(n+1)) * float64(n*(n+1)) / 2
	}
	return P, float64(n) * (prev - x*P) / (1 - x*x)
}

// gauss returns the n Gauss-Legendre points and weights, exact to degree 2n-1.
// Newton's method from the usual cosine guess settles in four or five steps.
func gauss(n int) (x, w []float64) {
	x, w = make([]float64, n), make([]float64, n)
	for i := range x {
		z := -math.Cos(math.Pi * (float64(i) + 0.75) / (float64(n) + 0.5))
		for range 50 {
			P, dP := legendre(n, z)
			z -= P / dP
			if math.Abs(P) < 1e-15 {
				break
			}
		}
		_, dP := legendre(n, z)
		x[i], w[i] = z, 2/((1-z*z)*dP*dP)
	}
	return x, w
}

// lobatto returns the p+1 Gauss-Lobatto points: the ends of [-1, 1] and the zeros
// of P_p'. They make good nodes for polynomials of degree p: their interpolation
// does not swing between the points.
func lobatto(p int) []float64 {
	x := make([]float64, p+1)
	x[0], x[p] = -1, 1
	for i := 1; i < p; i++ {
		z := -math.Cos(math.Pi * float64(i) / float64(p))
		for range 50 {
			// Legendre's equation gives P'' where P' is wanted to vanish.
			P, dP := legendre(p, z)
			ddP := (2*z*dP - float64(p*(p+1))*P) / (1 - z*z)
			z -= dP / ddP
			if math.Abs(dP) < 1e-13*float64(p*p) {
				break
			}
		}
		x[i] = z
	}
	return x
}

// line is a set of Lagrange polynomials on the Lobatto points of one degree, with
// their values N and slopes D at the Gauss points q (weights w) and the slopes at
// the nodes themselves. N[i][j] is polynomial j at point i. dense has values and
// slopes at twice as many points, to look for extremes.
type line struct {
	p           int
	x, q, w     []float64
	N, D, slope [][]float64
	dense       [2][][]float64
}

// highest is the greatest degree offered.
const highest = 12

// lines are made when first asked for, one for each degree.
var lines [highest + 1]struct {
	once sync.Once
	line *line
}

// lineOf returns the polynomials of degree p, 1 to highest.
func lineOf(p int) *line {
	l := &lines[p]
	l.once.Do(func() { l.line = newLine(p) })
	return l.line
}

func newLine(p int) *line {
	l := &line{p: p, x: lobatto(p)}
	l.q, l.w = gauss(p + 1)
	for _, q := range l.q {
		N, D := l.at(q)
		l.N, l.D = append(l.N, N), append(l.D, D)
	}
	for _, x := range l.x {
		_, D := l.at(x)
		l.slope = append(l.slope, D)
	}
	for _, x := range lobatto(2 * p) {
		N, D := l.at(x)
		l.dense[0], l.dense[1] = append(l.dense[0], N), append(l.dense[1], D)
	}
	return l
}

// at returns the values and slopes of the polynomials at any point z of [-1, 1].
func (l *line) at(z float64) (N, D []float64) {
	n := l.p + 1
	N, D = make([]float64, n), make([]float64, n)
	for j := range n {
		N[j] = 1
		for m := range n {
			if m == j {
				continue
			}
			f := 1 / (l.x[j] - l.x[m])
			D[j] = D[j]*(z-l.x[m])*f + N[j]*f
			N[j] *= (z - l.x[m]) * f
		}
	}
	return N, D
}
