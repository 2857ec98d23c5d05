package heat

import (
	"fmt"
	"math"
	"slices"

	"scarfwright/physics/si"
)

// A Moment is a temperature at a time.
type Moment struct {
	Time si.Time
	Temp si.Temp
}

// A History is a temperature over time, of the air before a face or of the face
// itself. Make one with Steady, Series or Varying. It is never changed, so many
// runs may share it.
type History struct {
	times, temps []float64
	f            func(si.Time) si.Temp
}

// Steady returns the history that stays at one temperature.
func Steady(T si.Temp) History {
	return History{times: []float64{0}, temps: []float64{float64(T)}}
}

// Series returns the history that runs straight from moment to moment, and stays
// at the first and last temperature outside them. Two moments at one time make a
// jump. The integration stops and starts again at every moment, so that no kink
// is smeared.
func Series(moments ...Moment) History {
	var h History
	for _, m := range moments {
		h.times = append(h.times, float64(m.Time))
		h.temps = append(h.temps, float64(m.Temp))
	}
	return h
}

// Varying returns the history that follows a function. Times at which it has a
// kink must be listed; a jump can't be expressed so, use Series.
func Varying(f func(si.Time) si.Temp, kinks ...si.Time) History {
	h := History{f: f}
	for _, t := range kinks {
		h.times = append(h.times, float64(t))
	}
	return h
}

// At returns the temperature at a time; on a jump, the one after it.
func (h History) At(t si.Time) si.Temp {
	if h.f != nil {
		return h.f(t)
	}
	c := course{History: h}
	c.enter(float64(t))
	return si.Temp(c.at(float64(t)))
}

func (h History) check(what string) error {
	if h.f == nil && len(h.times) == 0 {
		return fmt.Errorf("%s: no temperature is given; use Steady, Series or Varying", what)
	}
	if !slices.IsSorted(h.times) {
		return fmt.Errorf("%s: the times must not go backwards", what)
	}
	for i, T := range h.temps {
		if !(T > 0 && T < hottest) {
			return fmt.Errorf("%s: temperature %g K at %g s is outside 0 to %g K", what, T, h.times[i], hottest)
		}
	}
	return nil
}

// A course is a History under way: it holds the piece that the present step lies
// in, so that both ends of a step see their own side of a kink.
type course struct {
	History
	t0, T0, rate float64
}

// enter moves to the piece that starts at t or holds it.
func (c *course) enter(t float64) {
	if c.f != nil {
		return
	}
	i, found := slices.BinarySearch(c.times, t)
	for found && i+1 < len(c.times) && c.times[i+1] == t {
		i++ // a jump: the last of the moments at t counts from here on
	}
	if !found {
		i--
	}
	switch n := len(c.times); {
	case i < 0:
		c.t0, c.T0, c.rate = t, c.temps[0], 0
	case i == n-1:
		c.t0, c.T0, c.rate = t, c.temps[n-1], 0
	default:
		c.t0, c.T0 = c.times[i], c.temps[i]
		c.rate = (c.temps[i+1] - c.T0) / (c.times[i+1] - c.t0)
	}
}

func (c *course) at(t float64) float64 {
	if c.f != nil {
		return float64(c.f(si.Time(t)))
	}
	return c.T0 + c.rate*(t-c.t0)
}

// slope returns the rate of change at the start t of a step h, looking only
// forward, because t may be a kink.
func (c *course) slope(t, h float64) float64 {
	if c.f != nil {
		return forward(c.at, t, h)
	}
	return c.rate
}

// forward returns the derivative of f from t on, by the one-sided difference of
// second order over a thousandth of h.
func forward(f func(float64) float64, t, h float64) float64 {
	d := math.Max(1e-3*h, 1e-9*math.Abs(t))
	return (-3*f(t) + 4*f(t+d) - f(t+2*d)) / (2 * d)
}
