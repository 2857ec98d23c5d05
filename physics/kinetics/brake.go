package kinetics

import (
	"errors"
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Brake is the factor from 0 to 1 by which slow diffusion holds a rate back.
type Brake interface {
	Factor(a float64, T si.Temp) float64
	Check() error
}

// Braked is a law with a brake on it.
type Braked struct {
	Law
	Brake Brake
}

// Rate returns da/dt in 1/s. Using up inhibitor (a < 0) isn't braked.
func (l Braked) Rate(a float64, T si.Temp) float64 {
	r := l.Law.Rate(a, T)
	if a < 0 || r == 0 {
		return r
	}
	return r * l.Brake.Factor(a, T)
}

// Fresh is that of the law within.
func (l Braked) Fresh() float64 { return Fresh(l.Law) }

// Breaks are those of the law within.
func (l Braked) Breaks() []float64 { return Breaks(l.Law) }

// Check names the parameter that is out of range.
func (l Braked) Check() error {
	if l.Brake == nil {
		return errors.Join(Check(l.Law), errors.New("brake: none given"))
	}
	return errors.Join(Check(l.Law), l.Brake.Check())
}

// ConversionBrake holds the reaction back past a critical degree of cure.
//
//	f = 1 / (1 + exp(C (a - ac))),   ac = Ac0 + AcT T
//
// ChernPoehlein1987, from memory, with the 1 that keeps f below 1. AcT is per
// kelvin of absolute temperature.
type ConversionBrake struct {
	C        float64 // above 0
	Ac0, AcT float64 // 1, 1/K
}

// Factor returns the factor at a degree of cure.
func (b ConversionBrake) Factor(a float64, T si.Temp) float64 {
	return 1 / (1 + math.Exp(b.C*(a-b.Ac0-b.AcT*float64(T))))
}

// Check names the parameter that is out of range.
func (b ConversionBrake) Check() error {
	if b.C > 0 && finite(b.C) && finite(b.Ac0) && b.AcT >= 0 && finite(b.AcT) {
		return nil
	}
	return fmt.Errorf("diffusion brake C %g, ac0 %g, acT %g: C must be more than 0, acT not negative", b.C, b.Ac0, b.AcT)
}

// GlassBrake holds the reaction back as the glass transition passes the
// temperature of cure.
//
//	f = 1 / (1 + exp[(Tg(a) - T - Centre)/Width])
//
// Our own rule, for it needs no parameter that a sheet doesn't give: Centre 10 K
// and Width 3 K stop an epoxy 10 to 20 K above its temperature, as observed.
type GlassBrake struct {
	DiBenedetto
	Centre, Width si.TempDiff
}

// Factor returns the factor at a degree of cure.
func (b GlassBrake) Factor(a float64, T si.Temp) float64 {
	return 1 / (1 + math.Exp(float64((b.Tg(a).Sub(T)-b.Centre)/b.Width)))
}

// Check names the parameter that is out of range.
func (b GlassBrake) Check() error {
	var width error
	if !(b.Width > 0 && finite(float64(b.Width)) && finite(float64(b.Centre))) {
		width = fmt.Errorf("glass brake centre %g K, width %g K: the width must be more than 0", float64(b.Centre), float64(b.Width))
	}
	return errors.Join(b.DiBenedetto.Check(), width)
}

// Stalled is the rate in 1/s at which we call a resin stopped: one per cent of
// conversion a week. Our own rule: a yard waits a week at most for hardness.
const Stalled = 0.01 / (7 * 86400)

// Plateau returns the degree of cure above which the rate at T stays below the
// floor in 1/s (Stalled will do): where a braked resin stops whatever the wait. A
// brake leaves a creep behind, so the plateau depends on the floor; by how little
// is easily tried. It is 0 if the rate is below the floor everywhere.
func Plateau(law Law, T si.Temp, floor float64) (float64, error) {
	if err := errors.Join(Check(law), checkTemp(T)); err != nil {
		return 0, err
	}
	if !(floor > 0 && finite(floor)) {
		return 0, fmt.Errorf("rate floor %g 1/s: must be more than 0", floor)
	}
	// From the top down, since an autocatalytic law may be below the floor at both ends.
	const steps = 4096
	for i := steps - 1; i > 0; i-- {
		a := float64(i) / steps
		if law.Rate(a, T) < floor {
			continue
		}
		low, high := a, float64(i+1)/steps
		for range 60 {
			middle := (low + high) / 2
			if law.Rate(middle, T) < floor {
				high = middle
			} else {
				low = middle
			}
		}
		return (low + high) / 2, nil
	}
	return 0, nil
}
