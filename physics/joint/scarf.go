package joint

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Uniform returns the mean shear along a taper of ratio:1 and the mean stress
// across it, for the mean tension sigma in the laminate, in pascals:
//
//	tau  = sigma sin a cos a = sigma R/(1+R^2)      tan a = 1/R
//	peel = sigma sin^2 a     = sigma/(1+R^2)
//
// Exact as means for any laminate, by equilibrium; exact at every point where both
// adherends are alike and homogeneous and the bond is thin, long and far from its
// ends. Plies of unlike stiffness take unlike shares: see Taper. Positive ratios.
// Closed form.
func Uniform(sigma si.Pressure, ratio float64) (tau, peel si.Pressure) {
	d := 1 + ratio*ratio
	return si.Scale(sigma, ratio/d), si.Scale(sigma, 1/d)
}

// Slope returns the angle of the taper and the length of its slope through the
// thickness t: t sqrt(1+R^2). Closed form.
func Slope(t si.Length, ratio float64) (angle si.Angle, slant si.Length) {
	return si.Angle(math.Atan(1 / ratio)), si.Scale(t, math.Sqrt(1+ratio*ratio))
}

// FullRatio returns the ratio at which the mean shear of the bond reaches its
// strength tauA just as the laminate reaches its own, sigmaU:
//
//	R = [k + sqrt(k^2 - 4)]/2,   k = sigmaU/tauA
//
// the longer root of R/(1+R^2) = 1/k. For k < 2 there is none: no taper loads its
// bond to more than half the tension (that happens at 1:1), so strength in shear sets
// no ratio and FullRatio refuses; something else must set it, peel for one. It is an
// answer about mean stress: unlike plies, edges and workmanship want more. Closed form.
func FullRatio(sigmaU, tauA si.Pressure) (float64, error) {
	k := float64(sigmaU / tauA)
	switch {
	case !(sigmaU > 0 && tauA > 0) || math.IsInf(k, 0):
		return 0, fmt.Errorf("strengths %.4g and %.4g MPa: both must be positive", sigmaU.MPa(), tauA.MPa())
	case k < 2:
		return 0, fmt.Errorf("bond of %.4g MPa in a laminate of %.4g MPa: the bond's shear strength sets no ratio when it is "+
			"more than half the laminate's; choose the ratio by another rule", tauA.MPa(), sigmaU.MPa())
	}
	// Divided by k, so that no k is too large to square.
	return k * (1 + math.Sqrt(1-4/k/k)) / 2, nil
}

// Efficiency returns the share of the laminate's strength sigmaU that a taper of
// ratio:1 carries when its mean shear may reach tauA:
//
//	min(1, tauA (1+R^2)/(R sigmaU))
//
// from 0 to 1; NaN unless all three are positive. It knows ratio and strength,
// not workmanship, and has the measured ranking (RothbarthPinto2019, abstract: 1:6
// worst, 1:12 about as good as 1:20), not measured percentages. Ratios below 1 give
// a steeper cut, whose bond fails across rather than along: don't ask for them.
func Efficiency(sigmaU, tauA si.Pressure, ratio float64) si.Ratio {
	if !(sigmaU > 0 && tauA > 0 && ratio > 0) {
		return si.Ratio(math.NaN())
	}
	return si.Ratio(min(1, float64(tauA/sigmaU)*(ratio+1/ratio)))
}
