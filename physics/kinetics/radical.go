package kinetics

import (
	"errors"
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// The state at which Induction.Ref is given: 25 degrees Celsius and 2 % of
// peroxide solution by mass of resin, what most sheets print.
const (
	refPeroxide = 0.02
	refTemp     = si.Temp(298.15)
)

// Induction is the time a radical resin lies still after the peroxide goes in,
// while the inhibitor that kept it in the tin is used up.
//
//	t = Ref (c/2%)^(-Q) exp[E/R (1/T - 1/298.15)]
//
// The same form serves for the gel time of a sheet, since gel follows within a few
// per cent of conversion. Working form, E 55 to 60 kJ/mol and Q 0.7 to 1.0 (from
// memory; one published pair of gel times at 21 and 27 degrees Celsius implies
// 58 kJ/mol by independent computation). It holds inside the sheet's own band of
// peroxide: below about 1 % a resin may never cure, and a formula doesn't say so.
type Induction struct {
	Ref si.Time // at 25 degrees Celsius and 2 %
	E   si.MolarEnergy
	Q   float64 // order in peroxide, 0 or more
}

// Time returns the induction time at a temperature and a mass fraction of peroxide
// solution (0.02 for 2 %).
func (i Induction) Time(T si.Temp, peroxide si.Ratio) (si.Time, error) {
	if err := errors.Join(i.Check(), checkTemp(T), checkPeroxide(peroxide)); err != nil {
		return 0, err
	}
	return si.Time(1 / i.rate(T, peroxide)), nil
}

func (i Induction) rate(T si.Temp, peroxide si.Ratio) float64 {
	return power(float64(peroxide)/refPeroxide, i.Q) * RateRatio(i.E, T, refTemp) / float64(i.Ref)
}

// Check names the parameter that is out of range.
func (i Induction) Check() error {
	var ref error
	if !(i.Ref > 0 && finite(float64(i.Ref))) {
		ref = fmt.Errorf("induction time %g s: must be more than 0", float64(i.Ref))
	}
	return errors.Join(ref, checkEnergy("induction", i.E), checkOrder("q", i.Q))
}

// A solution dosed above 10 % is no dose; 2 typed for 2 % is the likelier reading.
const maxPeroxide = si.Ratio(0.10)

func checkPeroxide(c si.Ratio) error {
	if c > 0 && c <= maxPeroxide {
		return nil
	}
	return fmt.Errorf("peroxide %g: must be more than 0 and at most %g (mass fraction of the resin, 0.02 for 2 %%)", float64(c), float64(maxPeroxide))
}

// Radical is the law of polyester and vinylester with peroxide and promoter.
//
// Its memory is more than a degree of cure: a resin of degree 0 may have all its
// inhibitor left or none, and on a cold night it uses part of it. Inhibitor and
// cure never move together (no chain grows while there is inhibitor to stop it),
// so one number holds both, and a node of a heat solver needs no second variable:
//
//	s < 0    -s is the share of inhibitor left    ds/dt = 1/t_ind(T)
//	s > 0    s is the degree of cure              ds/dt = k (c/2%)^P (s+seed)^m (1-s)^n
//
// A fresh mix has s = -1, and s never falls. The first line is the rule that
// inhibitor is used at constant speed at constant temperature; over a history it
// adds up the parts of induction times, which is what makes gel in changing
// weather computable. The rate jumps at s = 0 (Breaks). Heat comes only from s > 0
// (Degree). Seed > 0 stands for the chains begun when the inhibitor ends; written
// as s+seed it differs from a start at s = seed by terms of order seed.
//
// P is 0.5 by the square-root law of chain reactions (Flory1953, from memory); where
// one exponent was fitted to induction and cure together, it is Q again.
//
// Limits: a fixed amount of peroxide that doesn't run out, so the plateau is left
// to Braked; no air, which stops the surface; self-heating shortens the induction
// only through T.
type Radical struct {
	Induction Induction
	Peroxide  si.Ratio  // mass fraction of the resin
	K         Arrhenius // at 2 %
	P         float64   // order of k in peroxide
	M, N      float64
	Seed      float64 // degree, above 0 and at most 0.01
}

// Rate returns ds/dt in 1/s.
func (l Radical) Rate(s float64, T si.Temp) float64 {
	switch {
	case s >= 1:
		return 0
	case s <= 0:
		return l.Induction.rate(T, l.Peroxide)
	}
	// One exponential for all four factors: this is the innermost call of a heat solver.
	return l.K.A * math.Exp(l.P*math.Log(float64(l.Peroxide)/refPeroxide)+
		l.M*math.Log(s+l.Seed)+
		l.N*math.Log(1-s)-
		float64(l.K.E)/(R*float64(T)))
}

// Fresh is -1: all the inhibitor is there.
func (l Radical) Fresh() float64 { return -1 }

// Breaks returns 0, where the inhibitor ends.
func (l Radical) Breaks() []float64 { return []float64{0} }

// Check names the parameter that is out of range.
func (l Radical) Check() error {
	var seed error
	if !(l.Seed > 0 && l.Seed <= 0.01) {
		seed = fmt.Errorf("seed %g: must be more than 0 and at most 0.01", l.Seed)
	}
	return errors.Join(l.Induction.Check(), checkPeroxide(l.Peroxide), l.K.check("k"),
		checkOrder("p", l.P), checkOrder("m", l.M), checkOrder("n", l.N), seed)
}
