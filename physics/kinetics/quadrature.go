package kinetics

import (
	"fmt"
	"math"
)

// What integrate aims at, and what it refuses to call an answer.
const (
	quadratureGoal  = 1e-11
	quadratureLimit = 1e-8
)

// integrate returns the integral of a positive f from low to high by the double
// exponential rule: the variable is stretched so that both ends lie at infinity,
//
//	x = low + (high-low) / (1 + exp(-pi sinh u))
//
// and the trapezoidal rule, which is superb on such a line, is halved until it
// settles. TakahasiMori1974, from memory; the tests integrate powers with it. An
// end where f grows like x^-m, m < 1, needs no special care: that is the start of
// every autocatalytic cure from 0. The estimate of the error is the last change,
// which is far above the error itself, since the digits double at each halving.
func integrate(f func(float64) float64, low, high float64) (float64, error) {
	if low == high {
		return 0, nil
	}
	width := high - low
	term := func(u float64) float64 {
		q := math.Exp(-math.Pi * math.Sinh(math.Abs(u)))
		x := low + width*q/(1+q) // the distance from the nearer end keeps its digits
		if u > 0 {
			x = high - width*q/(1+q)
		}
		weight := width * math.Pi * math.Cosh(u) * q / ((1 + q) * (1 + q))
		if weight == 0 {
			return 0
		}
		return weight * f(x)
	}
	sum := term(0)
	// sweep adds the terms from u on, step by step to either side, until they no
	// longer count. Close to the middle a small term may yet be followed by a big one.
	sweep := func(first, step float64) {
		for _, side := range []float64{-1, 1} {
			for u := first; u < 6.1; u += step {
				t := term(side * u)
				sum += t
				if u > 3 && t < 1e-18*sum {
					break
				}
			}
		}
	}
	h := 0.5
	sweep(h, h)
	result, change := h*sum, math.Inf(1)
	for range 9 {
		sweep(h/2, h)
		h /= 2
		change = math.Abs(h*sum - result)
		result = h * sum
		if change <= quadratureGoal*math.Abs(result) {
			return result, nil
		}
	}
	if !(change <= quadratureLimit*math.Abs(result)) { // true for NaN
		return 0, fmt.Errorf("the integral from %g to %g does not converge: a rate vanishes between", low, high)
	}
	return result, nil
}
