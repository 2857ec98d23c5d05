package kinetics

import (
	"errors"
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Isothermal returns the time in seconds from state a0 to a later one at constant
// temperature, for any law.
//
//	t = integral from a0 to "to" of da / rate(a, T)
//
// split at the breaks of the law. The relative error is estimated and kept below
// 1e-8 (mostly 1e-11), else it is an error, as it is if the law never gets there.
// It starts from a0 = 0 where a law leaves 0 at all, and from below 0 for Radical.
func Isothermal(law Law, T si.Temp, a0, to float64) (si.Time, error) {
	if err := errors.Join(Check(law), checkTemp(T), checkSpan(law, a0, to)); err != nil {
		return 0, err
	}
	t, err := along(law, func(float64) si.Temp { return T }, a0, to)
	return si.Time(t), err
}

// along integrates da/rate along a temperature that depends on the state.
func along(law Law, T func(a float64) si.Temp, a0, to float64) (float64, error) {
	// A rate that starts from 0 as a^m is harmless for m < 1; from 1 on the resin
	// never leaves. The exponent is read off between two points close to 0.
	if near, far := a0+1e-12, a0+1e-9; a0 == 0 && far < to && len(Breaks(law)) == 0 {
		m := math.Log(law.Rate(far, T(far))/law.Rate(near, T(near))) / math.Log(far/near)
		if law.Rate(a0, T(a0)) == 0 && !(m < 0.999) {
			return 0, fmt.Errorf("from a conversion of 0 this law never starts (its rate grows as a^%.3g): give a seed, %g say", m, Seed)
		}
	}
	t, from := 0.0, a0
	for _, b := range append(Breaks(law), to) {
		if b < from || from >= to {
			continue
		}
		if b == from { // the rate at a break is the one below it
			from = math.Nextafter(b, 2)
			continue
		}
		b = min(b, to)
		piece, err := integrate(func(a float64) float64 { return 1 / law.Rate(a, T(a)) }, from, b)
		if err != nil {
			return 0, fmt.Errorf("time to a conversion of %g: %w", to, err)
		}
		t += piece
		from = math.Nextafter(b, 2)
	}
	return t, nil
}

// IsothermalConversion returns the state reached from a0 after a time at constant
// temperature, for any law: the inverse of Isothermal.
func IsothermalConversion(law Law, T si.Temp, a0 float64, t si.Time) (float64, error) {
	if err := errors.Join(Check(law), checkTemp(T), checkSpan(law, a0, a0), checkTime(t)); err != nil {
		return 0, err
	}
	if a0 == 0 { // a law that never starts has no inverse
		if _, err := Isothermal(law, T, 0, 1e-3); err != nil {
			return 0, err
		}
	}
	return invert(func(a float64) (float64, error) {
		s, err := Isothermal(law, T, a0, a)
		return float64(s), err
	}, func(a float64) float64 { return law.Rate(a, T) }, a0, float64(t)), nil
}

// invert finds the state at which time(a) is t by Newton's method, whose slope is
// the rate, held in a bracket. A state whose time can't be had lies beyond.
func invert(time func(float64) (float64, error), rate func(float64) float64, a0, t float64) float64 {
	low, high := a0, 1.0
	a := (low + high) / 2
	for range 200 {
		at, err := time(a)
		if err != nil || at > t {
			high = a
		} else {
			low = a
		}
		next := a + (t-at)*rate(a)
		if err != nil || !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-a) <= 1e-13*math.Abs(next) {
			return next
		}
		a = next
	}
	return a
}

// Time returns the time in seconds from a0 to a later degree of cure, in closed form.
//
//	k t = [(1-a)^(1-n) - (1-a0)^(1-n)] / (n-1),   ln[(1-a0)/(1-a)] for n = 1
func (l NthOrder) Time(T si.Temp, a0, to float64) (si.Time, error) {
	if err := errors.Join(l.Check(), checkTemp(T), checkSpan(l, a0, to)); err != nil {
		return 0, err
	}
	return si.Time((boxCox(1-a0, 1-l.N) - boxCox(1-to, 1-l.N)) / l.K.K(T)), nil
}

// Conversion returns the degree of cure in closed form; 1 once an order below 1
// has used up everything.
func (l NthOrder) Conversion(T si.Temp, a0 float64, t si.Time) (float64, error) {
	if err := errors.Join(l.Check(), checkTemp(T), checkSpan(l, a0, a0), checkTime(t)); err != nil {
		return 0, err
	}
	return 1 - unBoxCox(boxCox(1-a0, 1-l.N)-l.K.K(T)*float64(t), 1-l.N), nil
}

// Time returns the time in seconds from a0 to a later degree of cure. If m + n = 2
// it is a closed form in u = a/(1-a),
//
//	(1-m) k t = u^(1-m) - u0^(1-m),   k t = ln(u/u0) for m = 1
//
// else an integral over x = a^(1-m), smooth from a0 = 0 on,
//
//	(1-m) k t = integral from x0 to x of (1-a)^(-n) dx
//
// For m >= 1 it needs a0 > 0.
func (l Autocatalytic) Time(T si.Temp, a0, to float64) (si.Time, error) {
	if err := errors.Join(l.Check(), checkTemp(T), checkSpan(l, a0, to), l.checkSeed(a0)); err != nil {
		return 0, err
	}
	t, err := l.time(T, a0, to)
	return si.Time(t), err
}

func (l Autocatalytic) time(T si.Temp, a0, to float64) (float64, error) {
	k, p := l.K.K(T), 1-l.M
	switch {
	case l.closed():
		return (boxCox(to/(1-to), p) - boxCox(a0/(1-a0), p)) / k, nil
	case p > 0:
		kt, err := integrate(func(x float64) float64 {
			return power(1-min(math.Pow(x, 1/p), 1), -l.N) / p
		}, math.Pow(a0, p), math.Pow(to, p))
		return kt / k, err
	}
	t, err := Isothermal(l, T, a0, to)
	return float64(t), err
}

// m + n = 2 is meant exactly; printed orders miss it by rounding in binary.
func (l Autocatalytic) closed() bool { return math.Abs(l.M+l.N-2) < 1e-12 }

func (l Autocatalytic) checkSeed(a0 float64) error {
	if l.M < 1 || a0 > 0 {
		return nil
	}
	return fmt.Errorf("from a conversion of 0 an order m of %g never starts: give a seed, %g say", l.M, Seed)
}

// Conversion returns the degree of cure after a time, in closed form if m + n = 2.
func (l Autocatalytic) Conversion(T si.Temp, a0 float64, t si.Time) (float64, error) {
	if err := errors.Join(l.Check(), checkTemp(T), checkSpan(l, a0, a0), checkTime(t), l.checkSeed(a0)); err != nil {
		return 0, err
	}
	if l.closed() {
		u := unBoxCox(boxCox(a0/(1-a0), 1-l.M)+l.K.K(T)*float64(t), 1-l.M)
		if math.IsInf(u, 1) {
			return 1, nil
		}
		return u / (1 + u), nil
	}
	return invert(func(a float64) (float64, error) { return l.time(T, a0, a) },
		func(a float64) float64 { return l.Rate(a, T) }, a0, float64(t)), nil
}

// Time returns the time in seconds from a0 to a later degree of cure. With m = 1,
// n = 2 and kap = k1/k2 it is a closed form,
//
//	k2 t = F(a) - F(a0),   F(x) = ln[(kap+x)/(1-x)]/(1+kap)^2 + 1/[(1+kap)(1-x)]
//
// else Isothermal.
func (l Kamal) Time(T si.Temp, a0, to float64) (si.Time, error) {
	if err := errors.Join(l.Check(), checkTemp(T), checkSpan(l, a0, to)); err != nil {
		return 0, err
	}
	k1, k2 := l.K1.K(T), l.K2.K(T)
	if l.M != 1 || l.N != 2 || !(k2 > 0) || k1+k2*a0 == 0 {
		return Isothermal(l, T, a0, to)
	}
	kap := k1 / k2
	// The difference of logarithms is taken before the subtraction can lose digits.
	logs := math.Log1p((to-a0)/(kap+a0)) - math.Log1p(-(to-a0)/(1-a0))
	rest := (to - a0) / ((1 - to) * (1 - a0))
	return si.Time((logs/((1+kap)*(1+kap)) + rest/(1+kap)) / k2), nil
}

// Conversion returns the degree of cure after a time: Time inverted.
func (l Kamal) Conversion(T si.Temp, a0 float64, t si.Time) (float64, error) {
	if l.M != 1 || l.N != 2 || l.K1.A == 0 {
		return IsothermalConversion(l, T, a0, t)
	}
	if err := errors.Join(l.Check(), checkTemp(T), checkSpan(l, a0, a0), checkTime(t)); err != nil {
		return 0, err
	}
	return invert(func(a float64) (float64, error) {
		s, err := l.Time(T, a0, a)
		return float64(s), err
	}, func(a float64) float64 { return l.Rate(a, T) }, a0, float64(t)), nil
}

// boxCox is (x^p - 1)/p and its limit ln x at p = 0: one formula for both lines of
// a closed form, without losing digits near p = 0.
func boxCox(x, p float64) float64 {
	if p == 0 {
		return math.Log(x)
	}
	return math.Expm1(p*math.Log(x)) / p
}

// unBoxCox is its inverse: 0 below and infinite above what boxCox reaches.
func unBoxCox(y, p float64) float64 {
	if p == 0 {
		return math.Exp(y)
	}
	if p*y <= -1 {
		if p > 0 {
			return 0
		}
		return math.Inf(1)
	}
	return math.Exp(math.Log1p(p*y) / p)
}

// checkSpan allows from the fresh state to below 1.
func checkSpan(law Law, a0, to float64) error {
	low := min(Fresh(law), 0)
	if a0 >= low && to >= a0 && to < 1 {
		return nil
	}
	return fmt.Errorf("conversion from %g to %g: must satisfy %g <= from <= to < 1", a0, to, low)
}

func checkTime(t si.Time) error {
	if t >= 0 && finite(float64(t)) {
		return nil
	}
	return fmt.Errorf("time %g s: must be 0 or more", float64(t))
}
