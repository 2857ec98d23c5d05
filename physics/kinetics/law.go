package kinetics

import (
	"errors"
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Law gives the rate of cure da/dt in 1/s at a state a and an absolute
// temperature. It is 0 or more, and 0 at a = 1 and beyond; a state below 0 counts
// as 0 except for Radical.
type Law interface {
	Rate(a float64, T si.Temp) float64
}

// Seed is the degree of cure that Fresh gives a law which would otherwise never
// leave 0. The choice moves results and must be stated beside them: in the
// glass/polyester set a slab's peak comes 2.0 min sooner from 1e-3 than from 1e-6,
// and 5 s later from 1e-10 (independent computation: method of lines, implicit).
const Seed = 1e-6

// Fresh returns the state of a resin just mixed, from which an integrator may
// start: 0, or Seed where 0 is a false stationary solution (a^m is 0 there for
// ever), or -1 where an inhibitor must be used up first.
func Fresh(law Law) float64 {
	if l, ok := law.(interface{ Fresh() float64 }); ok {
		return l.Fresh()
	}
	return 0
}

// Degree returns the degree of cure of a state. Heat is set free, and stiffness
// gained, only while it grows.
func Degree(state float64) float64 { return max(state, 0) }

// Breaks returns the states at which the law's rate jumps, in rising order; nil
// for most laws. The rate at a break is the one from below, so an integrator stops
// there and goes on from the next number up.
func Breaks(law Law) []float64 {
	if l, ok := law.(interface{ Breaks() []float64 }); ok {
		return l.Breaks()
	}
	return nil
}

// Check returns what is wrong with the parameters of a law of this package, nil
// for a foreign one. Every solver here calls it once; Rate itself doesn't, being
// called millions of times.
func Check(law Law) error {
	if law == nil {
		return errors.New("rate law: none given")
	}
	if l, ok := law.(interface{ Check() error }); ok {
		return l.Check()
	}
	return nil
}

// NthOrder is the law of one reaction that only uses up what is left.
//
//	da/dt = k (1-a)^n
type NthOrder struct {
	K Arrhenius
	N float64 // 0 or more
}

// Rate returns da/dt in 1/s.
func (l NthOrder) Rate(a float64, T si.Temp) float64 {
	if a >= 1 {
		return 0
	}
	return l.K.K(T) * power(1-max(a, 0), l.N)
}

// Check names the parameter that is out of range.
func (l NthOrder) Check() error {
	return errors.Join(l.K.check("k"), checkOrder("n", l.N))
}

// Autocatalytic is the law of a reaction that needs its own product.
//
//	da/dt = k a^m (1-a)^n
//
// With m > 0 the rate at a = 0 is 0 and stays 0: the equation is solved by a resin
// that never sets. For m < 1 a second solution leaves 0 at once, and the
// integrals in isothermal.go and adiabatic.go take that one by counting in
// x = a^(1-m). A step-by-step solver can't see it and needs a seed (Fresh). For
// m >= 1 there is none, and the seed is part of the law.
type Autocatalytic struct {
	K    Arrhenius
	M, N float64 // 0 or more
}

// Rate returns da/dt in 1/s.
func (l Autocatalytic) Rate(a float64, T si.Temp) float64 {
	if a >= 1 {
		return 0
	}
	a = max(a, 0)
	if a == 0 {
		return l.K.K(T) * power(0, l.M)
	}
	// One exponential for all three factors: this is the innermost call of a heat solver.
	return l.K.A * math.Exp(l.M*math.Log(a)+l.N*math.Log(1-a)-float64(l.K.E)/(R*float64(T)))
}

// Fresh is Seed, or 0 where m = 0 leaves nothing to seed.
func (l Autocatalytic) Fresh() float64 {
	if l.M > 0 {
		return Seed
	}
	return 0
}

// Check names the parameter that is out of range.
func (l Autocatalytic) Check() error {
	return errors.Join(l.K.check("k"), checkOrder("m", l.M), checkOrder("n", l.N))
}

// Kamal is the law of Kamal and Sourour for epoxy and amine: one reaction helped
// by what is in the tin (k1), one by the hydroxyl it makes (k2).
//
//	da/dt = (k1 + k2 a^m)(1-a)^n
//
// KamalSourour1973, form from memory. The usual m = 1, n = 2 follows from third-order
// amine-epoxide steps at equal reactivity. With k1 > 0 no seed is needed.
// Wrapped in Braked it is the law for a resin that cures at room temperature.
type Kamal struct {
	K1, K2 Arrhenius
	M, N   float64 // 0 or more
}

// Rate returns da/dt in 1/s.
func (l Kamal) Rate(a float64, T si.Temp) float64 {
	if a >= 1 {
		return 0
	}
	a = max(a, 0)
	k1, k2 := l.K1.K(T), 0.0
	if l.K1.E == l.K2.E && l.K1.A > 0 {
		k2 = k1 * (l.K2.A / l.K1.A) // one exponential instead of two, in the innermost loop of all
	} else {
		k2 = l.K2.K(T)
	}
	return (k1 + k2*power(a, l.M)) * power(1-a, l.N)
}

// Fresh is Seed if k1 is missing, else 0.
func (l Kamal) Fresh() float64 {
	if l.K1.A == 0 && l.M > 0 {
		return Seed
	}
	return 0
}

// Check names the parameter that is out of range. Either constant may be the zero
// value, not both.
func (l Kamal) Check() error {
	var k1, k2 error
	if l.K1 != (Arrhenius{}) || l.K2 == (Arrhenius{}) {
		k1 = l.K1.check("k1")
	}
	if l.K2 != (Arrhenius{}) {
		k2 = l.K2.check("k2")
	}
	return errors.Join(k1, k2, checkOrder("m", l.M), checkOrder("n", l.N))
}

// Orders above 10 appear in no cure law we know of; one is a slip of the pen.
const maxOrder = 10

func checkOrder(name string, n float64) error {
	if n >= 0 && n <= maxOrder {
		return nil
	}
	return fmt.Errorf("order %s is %g: must lie from 0 to %d", name, n, maxOrder)
}

// power is x^n with the orders that laws mostly have taken out of the slow road.
func power(x, n float64) float64 {
	switch n {
	case 0:
		return 1
	case 1:
		return x
	case 2:
		return x * x
	}
	return math.Pow(x, n)
}
