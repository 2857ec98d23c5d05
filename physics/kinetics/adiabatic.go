package kinetics

import (
	"errors"
	"fmt"

	"scarfwright/physics/si"
)

// Adiabatic is a resin that keeps all its heat: the middle of a bucket, and the
// hottest that self-heating can make it.
//
//	T = T0 + (H/c)(a - a0)
//
// H and c must be per kg of the same thing, resin or composite.
type Adiabatic struct {
	Law   Law
	Heat  si.SpecificEnergy // H of the whole reaction
	C     si.SpecificHeat
	Start si.Temp
	From  float64 // a0, a state
}

// Rise returns the temperature rise in kelvin that is still to come, (H/c)(1 - a0).
func (b Adiabatic) Rise() si.TempDiff { return b.Temp(1).Sub(b.Start) }

// Temp returns the temperature at a state; at 1 it is the end temperature.
func (b Adiabatic) Temp(state float64) si.Temp {
	H, c := float64(b.Heat), float64(b.C)
	return b.Start.Add(si.TempDiff(H / c * (Degree(state) - Degree(b.From))))
}

// Time returns the time in seconds to a later state, by quadrature: exact in space,
// for there is none, and good to 1e-8.
//
//	t = integral from a0 to "to" of da / rate(a, T(a))
//
// It starts from a0 = 0 where the law leaves 0 at all.
func (b Adiabatic) Time(to float64) (si.Time, error) {
	if err := b.Check(); err != nil {
		return 0, err
	}
	if err := checkSpan(b.Law, b.From, to); err != nil {
		return 0, err
	}
	t, err := along(b.Law, b.Temp, b.From, to)
	return si.Time(t), err
}

// Check names the parameter that is out of range.
func (b Adiabatic) Check() error {
	var heat error
	if !(b.Heat >= 0 && b.C > 0 && finite(float64(b.Heat)) && finite(float64(b.C))) {
		heat = fmt.Errorf("heat of reaction %g J/kg, heat capacity %g J/(kg K): must be 0 or more, and more than 0", float64(b.Heat), float64(b.C))
	}
	return errors.Join(Check(b.Law), heat, checkTemp(b.Start))
}
