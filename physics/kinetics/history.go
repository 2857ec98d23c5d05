package kinetics

import (
	"errors"
	"fmt"
	"math"
	"sort"

	"scarfwright/physics/si"
)

// Knot is a temperature at a time.
type Knot struct {
	Time si.Time
	Temp si.Temp
}

// History is a temperature against time, straight between its knots, held before
// the first and after the last. Two knots at one time are a jump, and the later in
// the list holds from that time on. So it takes a weather series and a list of
// stages alike. Make it with NewHistory, Steps or Constant.
type History struct{ knots []Knot }

// NewHistory returns the history through the knots, whose times must not fall.
func NewHistory(knots ...Knot) (History, error) {
	if len(knots) == 0 {
		return History{}, errors.New("temperature history: no knots")
	}
	for i, k := range knots {
		if !finite(float64(k.Time)) || i > 0 && k.Time < knots[i-1].Time {
			return History{}, fmt.Errorf("temperature history, knot %d: time %g s must not fall", i+1, float64(k.Time))
		}
		if err := checkTemp(k.Temp); err != nil {
			return History{}, fmt.Errorf("temperature history, knot %d: %w", i+1, err)
		}
	}
	return History{append([]Knot(nil), knots...)}, nil
}

// Constant returns one temperature for ever.
func Constant(T si.Temp) (History, error) { return NewHistory(Knot{0, T}) }

// Stage is a stretch of time at one temperature.
type Stage struct {
	For  si.Time
	Temp si.Temp
}

// Steps returns the history of stages one after the other from time 0; the last
// temperature stays.
func Steps(stages ...Stage) (History, error) {
	var knots []Knot
	t := si.Time(0)
	for i, s := range stages {
		if !(s.For >= 0) {
			return History{}, fmt.Errorf("temperature history, stage %d: length %g s must be 0 or more", i+1, float64(s.For))
		}
		knots = append(knots, Knot{t, s.Temp}, Knot{t + s.For, s.Temp})
		t += s.For
	}
	return NewHistory(knots...)
}

// At returns the temperature at a time, absolute zero ("not given") for the zero History.
func (h History) At(t si.Time) si.Temp {
	// i is the first knot after t, so that of two knots at t the later counts.
	i := sort.Search(len(h.knots), func(i int) bool { return h.knots[i].Time > t })
	switch {
	case len(h.knots) == 0:
		return 0
	case i == 0:
		return h.knots[0].Temp
	case i == len(h.knots):
		return h.knots[i-1].Temp
	}
	return between(h.knots[i-1], h.knots[i], t)
}

// between is the temperature at a time on the straight piece from p to q.
func between(p, q Knot, t si.Time) si.Temp {
	if p.Temp == q.Temp { // q may lie infinitely late
		return p.Temp
	}
	return p.Temp.Add(si.Scale(q.Temp.Sub(p.Temp), float64((t-p.Time)/(q.Time-p.Time))))
}

// segment returns the straight piece that holds from t on: its ends, the second
// infinitely late after the last knot.
func (h History) segment(t si.Time) (p, q Knot) {
	i := sort.Search(len(h.knots), func(i int) bool { return h.knots[i].Time > t })
	switch {
	case i == len(h.knots):
		last := h.knots[i-1]
		return last, Knot{si.Time(math.Inf(1)), last.Temp}
	case i == 0:
		return Knot{t, h.knots[0].Temp}, h.knots[0]
	}
	return h.knots[i-1], h.knots[i]
}

// EquivalentAge returns the time in seconds at the reference temperature that does
// as much as the history from one time to another.
//
//	t_eq = integral of exp[-E/R (1/T - 1/Tref)] dt
//
// Exact over a flat stretch, to rounding over a sloping one. It holds for one activation
// energy, and only below vitrification: a resin that has stopped in the cold has
// stopped, whatever its age. It promises: at Tref it is clock time; ages add up;
// a warmer history is never younger.
func EquivalentAge(E si.MolarEnergy, h History, from, to si.Time, ref si.Temp) (si.Time, error) {
	if err := errors.Join(checkEnergy("equivalent age", E), checkTemp(ref), h.check()); err != nil {
		return 0, err
	}
	if !(to >= from && finite(float64(from)) && finite(float64(to))) {
		return 0, fmt.Errorf("equivalent age from %g s to %g s: the second must not be earlier", float64(from), float64(to))
	}
	age := 0.0
	for t := from; t < to; {
		p, q := h.segment(t)
		end := min(q.Time, to)
		age += stretch(E, between(p, q, t), between(p, q, end), float64(end-t), ref)
		t = end
	}
	return si.Time(age), nil
}

func (h History) check() error {
	if len(h.knots) == 0 {
		return errors.New("temperature history: none given")
	}
	return nil
}

// stretch integrates the rate ratio over a straight change of temperature. It is
// cut so that the exponent changes by 1 at most in a part, where Gauss's rule of
// four points errs by less than 1e-9 of the part (tried against 64 times as many
// parts, in the tests).
func stretch(E si.MolarEnergy, T0, T1 si.Temp, dt float64, ref si.Temp) float64 {
	if T0 == T1 {
		return dt * RateRatio(E, T0, ref)
	}
	change := math.Abs(float64(E) / R * (1/float64(T0) - 1/float64(T1)))
	parts := math.Ceil(change)
	sum := 0.0
	for i := range int(parts) {
		for _, g := range gauss4 {
			x := (float64(i) + (1+g.x)/2) / parts
			sum += g.w / 2 * RateRatio(E, T0.Add(si.Scale(T1.Sub(T0), x)), ref)
		}
	}
	return dt / parts * sum
}

// gauss4 holds the nodes and weights of Gauss-Legendre's four-point rule on
// [-1, 1]: x = ±sqrt(3/7 ± 2/7 sqrt(6/5)), w = (18 ∓ sqrt 30)/36. From memory.
var gauss4 = func() [4]struct{ x, w float64 } {
	near := math.Sqrt(3.0/7 - 2.0/7*math.Sqrt(6.0/5))
	far := math.Sqrt(3.0/7 + 2.0/7*math.Sqrt(6.0/5))
	big, small := (18+math.Sqrt(30))/36, (18-math.Sqrt(30))/36
	return [4]struct{ x, w float64 }{{-far, small}, {-near, big}, {near, big}, {far, small}}
}()
