package kinetics

import (
	"errors"
	"fmt"
	"math"
	"sort"

	"scarfwright/physics/si"
)

// Cure returns the state at each of the times, which must not fall, for a resin in
// state a0 at time 0 under a temperature history. A state below 0 is inhibitor
// left (Degree).
//
// It promises: the states never fall and never pass 1; the error per step is kept
// below 1e-9 of the state and of what is left to 1 (or 1e-13); steps end on the knots
// of the history and on the breaks of the law, so that neither costs accuracy.
//
// A law that can't leave a0 is an error: start from Fresh(law).
func Cure(law Law, h History, a0 float64, times []si.Time) ([]float64, error) {
	s, err := newSolver(law, h, a0)
	if err != nil {
		return nil, err
	}
	states := make([]float64, len(times))
	for i, t := range times {
		if !(float64(t) >= s.t && finite(float64(t))) {
			return nil, fmt.Errorf("time %d, %g s: times must be 0 or more and must not fall", i+1, float64(t))
		}
		if err := s.advance(float64(t), 2); err != nil { // 2: no state to stop at
			return nil, err
		}
		states[i] = s.a
	}
	return states, nil
}

// Reach returns the time in seconds at which a resin in state a0 at time 0 comes to
// a later state under a temperature history: when it gels, when it may be sanded.
// It is false, with the limit, if that isn't reached by the limit.
func Reach(law Law, h History, a0, to float64, limit si.Time) (t si.Time, reached bool, err error) {
	s, err := newSolver(law, h, a0)
	if err := errors.Join(err, checkSpan(law, a0, to), checkTime(limit)); err != nil {
		return 0, false, err
	}
	if err := s.advance(float64(limit), to); err != nil {
		return 0, false, err
	}
	return si.Time(s.t), s.a >= min(to, through), nil
}

// Beyond this a law has nothing left to say, and 1-a only collects rounding.
const through = 1 - 1e-14

const (
	cureTolerance = 1e-9
	maxSteps      = 2_000_000 // a year of weather by the minute takes half of it
)

// solver marches one state through time.
//
// An explicit method will do. What makes cure stiff is a big rate constant, and
// it uses up the reaction: near the end the time constant of every law here is
// about the time spent already (order 2 has 1-a = 1/kt), or a is 1 to rounding and
// the march is over.
type solver struct {
	law    Law
	h      History
	breaks []float64
	t, a   float64
	step   float64 // to try next; 0 at the start
}

func newSolver(law Law, h History, a0 float64) (*solver, error) {
	if err := errors.Join(Check(law), h.check()); err != nil {
		return nil, err
	}
	if err := checkSpan(law, a0, a0); err != nil {
		return nil, err
	}
	if a0 == 0 && Fresh(law) > 0 {
		return nil, fmt.Errorf("from a conversion of 0 this law never starts: give a seed, %g say", Fresh(law))
	}
	return &solver{law: law, h: h, breaks: Breaks(law), a: a0}, nil
}

// advance marches to the time end, or to the state stop if that comes first.
func (s *solver) advance(end, stop float64) error {
	for range maxSteps {
		if s.t >= end || s.a >= stop || s.a >= through {
			return nil
		}
		if i := sort.SearchFloat64s(s.breaks, s.a); i < len(s.breaks) && s.breaks[i] == s.a {
			s.a = math.Nextafter(s.a, 2)
		}
		target := stop
		if i := sort.SearchFloat64s(s.breaks, s.a); i < len(s.breaks) {
			target = min(stop, s.breaks[i])
		}
		p, q := s.h.segment(si.Time(s.t))
		if err := s.forward(p, q, min(end, float64(q.Time)), target); err != nil {
			return err
		}
	}
	return fmt.Errorf("cure: more than %d steps by %g s", maxSteps, s.t)
}

// forward makes one step that the error allows, at most to the time end on the
// straight piece of history from p to q, and at most to the target state.
func (s *solver) forward(p, q Knot, end, target float64) error {
	temp := func(t float64) si.Temp { return between(p, q, si.Time(t)) }
	rate := func(t, a float64) float64 { return s.law.Rate(min(max(a, s.a), target), temp(t)) }
	h := s.step
	if h == 0 {
		h = s.firstStep(rate(s.t, s.a), end)
	}
	for {
		if !(s.t+h > s.t) { // true for NaN
			return fmt.Errorf("cure: no step is small enough at %g s and a state of %g: the rate there is %g 1/s", s.t, s.a, rate(s.t, s.a))
		}
		last := s.t+h >= end
		if last {
			h = end - s.t
		}
		rise, e := dormandPrince(rate, s.t, s.a, h)
		next := s.a + rise
		// Relative to the state, and near the end to what is left, or an order below 1
		// would dawdle before the end it must reach.
		scale := cureTolerance*max(min(max(math.Abs(s.a), math.Abs(next)), 1-next), 0) + 1e-13
		worst := math.Abs(e) / scale
		if next > target || next > 1 {
			// Change the roles: dt/da = 1/rate has a for its clock and lands on the
			// target (Henon's trick), with no stage beyond it.
			if target <= 1 && s.land(temp, target, scale) {
				return nil
			}
			h /= 2
			continue
		}
		if !(worst <= 1 && next >= s.a-scale) { // true for NaN
			h *= min(0.5, max(0.2, 0.9*math.Pow(worst, -0.2)))
			continue
		}
		s.a = max(next, s.a) // a fall within the tolerance is rounding, the rate being 0 or more
		if last {
			s.t = end
		} else {
			s.t += h
		}
		if grown := h * min(5, 0.9*math.Pow(max(worst, 1e-10), -0.2)); !last || grown > s.step {
			s.step = grown
		}
		return nil
	}
}

// firstStep changes a by about a thousandth of itself: well within what the error
// control would allow, and grown fivefold at each step from there.
func (s *solver) firstStep(rate, end float64) float64 {
	if rate <= 0 {
		return (end - s.t) / 10
	}
	return min((end-s.t)/10, 1e-3*max(math.Abs(s.a), 1e-6)/rate)
}

// land steps from the present state to the target with a as the clock, if that can
// be done within the error.
func (s *solver) land(temp func(float64) si.Temp, target, scale float64) bool {
	slow := func(a, t float64) float64 { return 1 / s.law.Rate(min(max(a, s.a), target), temp(t)) }
	dt, e := dormandPrince(slow, s.a, s.t, target-s.a)
	if !(dt >= 0 && finite(dt) && math.Abs(e)*s.law.Rate(target, temp(s.t+dt)) <= scale) {
		return false
	}
	s.t, s.a, s.step = s.t+dt, target, 0
	return true
}

// dormandPrince makes one step of dy/dx = f(x, y) and returns the rise of y, of
// fifth order, and its difference from the fourth-order result beside it.
//
// DormandPrince1980, coefficients from memory; the tests measure the order.
func dormandPrince(f func(x, y float64) float64, x, y, h float64) (rise, e float64) {
	k1 := f(x, y)
	k2 := f(x+h/5, y+h*k1/5)
	k3 := f(x+h*3/10, y+h*(k1*3/40+k2*9/40))
	k4 := f(x+h*4/5, y+h*(k1*44/45-k2*56/15+k3*32/9))
	k5 := f(x+h*8/9, y+h*(k1*19372/6561-k2*25360/2187+k3*64448/6561-k4*212/729))
	k6 := f(x+h, y+h*(k1*9017/3168-k2*355/33+k3*46732/5247+k4*49/176-k5*5103/18656))
	rise = h * (k1*35/384 + k3*500/1113 + k4*125/192 - k5*2187/6784 + k6*11/84)
	k7 := f(x+h, y+rise)
	e = h * (k1*71/57600 - k3*71/16695 + k4*71/1920 - k5*17253/339200 + k6*22/525 - k7/40)
	return rise, e
}
