package kinetics

import (
	"errors"
	"fmt"

	"scarfwright/physics/si"
)

// TwoRegime is the law fitted to graphite/epoxy prepreg, in two pieces.
//
//	da/dt = (k1 + k2 a)(1-a)(Bound-a)    a <= Switch
//	da/dt = k3 (1-a)                     a >  Switch
//
// LeeLoosSpringer1982, form from memory, with Bound 0.47 and Switch 0.3; k2 is
// negative there. The rate jumps at the switch (Breaks), by a factor that depends on
// temperature: an integrator that steps across it loses its order. Below about 7
// degrees Celsius the published k1 + k2 a turns negative before the switch; Rate
// returns 0 there, and the law says nothing about such temperatures.
type TwoRegime struct {
	K1, K2, K3    Arrhenius
	Bound, Switch float64
}

// Rate returns da/dt in 1/s.
func (l TwoRegime) Rate(a float64, T si.Temp) float64 {
	if a >= 1 {
		return 0
	}
	if a > l.Switch {
		return l.K3.K(T) * (1 - a)
	}
	a = max(a, 0)
	return max((l.K1.K(T)+l.K2.K(T)*a)*(1-a)*(l.Bound-a), 0)
}

// Breaks returns the switch.
func (l TwoRegime) Breaks() []float64 { return []float64{l.Switch} }

// Check names the parameter that is out of range. Only k2 may be negative.
func (l TwoRegime) Check() error {
	var split error
	if !(l.Switch > 0 && l.Switch < l.Bound && l.Bound <= 1) {
		split = fmt.Errorf("switch %g and bound %g: must satisfy 0 < switch < bound <= 1", l.Switch, l.Bound)
	}
	var k2 error
	if !finite(l.K2.A) {
		k2 = fmt.Errorf("k2: A is %g 1/s, must be finite", l.K2.A)
	} else if l.K2.A != 0 {
		k2 = checkEnergy("k2", l.K2.E)
	}
	return errors.Join(l.K1.check("k1"), k2, l.K3.check("k3"), split)
}
