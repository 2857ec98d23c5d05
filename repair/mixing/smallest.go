package mixing

import (
	"math"

	"scarfwright/physics/si"
)

// SmallestBatch returns the least resin for which one step d of the scale is no
// more than the allowed part of its catalyst, for positive arguments.
//
//	m = d/(p e)
//
// It looks at the catalyst alone; SmallestHonest adds the resin's own weighing.
func SmallestBatch(scale si.Mass, percent, within si.Ratio) si.Mass {
	return si.Scale(scale, 1/float64(percent*within))
}

// The relative error of the second part that is still honest.
const (
	CatalystWithin = si.Ratio(0.10) // of a peroxide's dose (from memory)
	HardenerWithin = si.Ratio(0.05) // of an epoxy's ratio (from memory; sheets ask for 2 to 5 %)
)

// Smallest is the smallest batch that can be measured honestly, and what the
// tools' steps still leave open.
type Smallest struct {
	Exact        si.Mass   `json:"exact_kg"` // resin, before rounding
	Resin        si.Mass   `json:"resin_kg"` // rounded up to 5 g
	Second       si.Mass   `json:"second_kg"`
	SecondVolume si.Volume `json:"second_m3"`
	Syringe      bool      `json:"syringe"`    // the second part is better measured by syringe than by scale
	Low          si.Ratio  `json:"low_ratio"`  // the true ratio lies between this and High
	High         si.Ratio  `json:"high_ratio"` // null in JSON when the first part itself cannot be seen on this scale
}

// SmallestHonest returns the smallest batch of resin for which the errors of
// weighing the resin and of measuring the second part (by scale or by syringe,
// whichever is finer) together stay within the allowed part of the dose, rounded
// up to 5 g. An error is taken as one whole step of the tool. No syringe is 0.
//
//	d/m + min(d, s rc)/(p m) <= e   so   m >= (d + min(d, s rc)/p)/e
//
// Scale, density, dose and within must be positive.
func SmallestHonest(scale si.Mass, syringe si.Volume, rho si.Density, dose, within si.Ratio) Smallest {
	step, bySyringe := finer(scale, syringe, rho)
	d, dc, p, e := float64(scale), float64(step), float64(dose), float64(within)
	exact := (d + dc/p) / e
	m := si.Grams(5 * math.Ceil(exact*1000/5-1e-12))
	s := Smallest{Exact: si.Kg(exact), Resin: m, Syringe: bySyringe}
	s.Second, s.SecondVolume = Dose(m, dose, rho)
	s.Low, s.High = spread(m, s.Second, scale, step)
	return s
}

// finer returns the smaller step for the second part, and whether it is the syringe's.
func finer(scale si.Mass, syringe si.Volume, rho si.Density) (si.Mass, bool) {
	if by := rho.Of(syringe); syringe > 0 && by < scale {
		return by, true
	}
	return scale, false
}

// spread returns the lowest and highest true ratio of the second part to the
// first when each may be off by one step of its tool.
func spread(first, second, step, secondStep si.Mass) (low, high si.Ratio) {
	low = si.Ratio(max(0, second-secondStep) / (first + step))
	if first <= step {
		return low, si.Ratio(math.Inf(1)) // the first part itself cannot be seen on this scale
	}
	return low, si.Ratio((second + secondStep) / (first - step))
}

// Measured is an amount as the tools at hand can show it.
type Measured struct {
	Resin        si.Mass   `json:"resin_kg"`   // to the scale's step
	Second       si.Mass   `json:"second_kg"`  // to the scale's step
	SecondVolume si.Volume `json:"second_m3"`  // to the syringe's graduation; unrounded without one
	Syringe      bool      `json:"syringe"`    // go by the syringe, it is finer
	Low          si.Ratio  `json:"low_ratio"`  // the true ratio lies between this and High
	High         si.Ratio  `json:"high_ratio"` // null in JSON when the first part itself cannot be seen on this scale
	Off          bool      `json:"off"`        // it may lie further from the wanted ratio than is honest
}

// Measure rounds an amount to a scale and a syringe (0 for none), and returns
// with it the range in which the true ratio then lies. The scale's step must be
// positive. within is the error allowed, CatalystWithin or HardenerWithin.
func Measure(a Amount, scale si.Mass, syringe si.Volume, rho si.Density, within si.Ratio) Measured {
	m := Measured{Resin: toStep(a.Resin, scale), Second: toStep(a.Second, scale), SecondVolume: a.SecondVolume}
	if syringe > 0 {
		m.SecondVolume = toStep(a.SecondVolume, syringe)
	}
	step, bySyringe := finer(scale, syringe, rho)
	second := m.Second
	if bySyringe {
		m.Syringe, second = true, rho.Of(m.SecondVolume)
	}
	m.Low, m.High = spread(m.Resin, second, scale, step)
	want := float64(a.Second / a.Resin)
	m.Off = math.Max(want-float64(m.Low), float64(m.High)-want) > want*float64(within)
	return m
}

// toStep rounds to the nearest whole step.
func toStep[Q ~float64](x, step Q) Q {
	return Q(math.Round(float64(x/step))) * step
}
