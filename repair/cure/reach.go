package cure

import (
	"errors"
	"math"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// Reached is what a film comes to along a temperature history.
type Reached struct {
	Gel, Sandable, Through Prediction[si.Time]
	AfterDay, AfterWeek    State
}

// State is how far it has come at a time.
type State struct {
	Degree Prediction[float64]
	Tg     Prediction[si.Temp]
}

const (
	day      = 86400.0
	furthest = 14 * day // how far Reaches looks
	sampling = 900.0    // s between the temperatures it reads: a jump is smeared so far
)

// Reaches predicts a thin film, at the temperature of the history from its time 0
// on (which stays at its last temperature), for 14 days. A thick coat is warmer
// than that: physics/heat has it.
func (m Model) Reaches(h kinetics.History, dose si.Ratio) (Reached, error) {
	if err := m.CheckDose(dose); err != nil {
		return Reached{}, err
	}
	var T [furthest/sampling + 1]float64
	low, high := si.Temp(math.Inf(1)), si.Temp(0)
	for i := range T {
		at := h.At(si.Time(float64(i) * sampling))
		low, high = min(low, at), max(high, at)
		T[i] = float64(at)
	}
	if err := errors.Join(checkAir(low), checkAir(high)); err != nil {
		return Reached{}, err
	}
	var times [3][draws]float64
	var degrees, glass [2][draws]float64
	follow := func(r *resin, through float64) track {
		return r.follow(T[:], dose, [3]float64{r.gel, r.sand, through})
	}
	for i := range m.sample {
		r := &m.sample[i]
		k := follow(r, m.throughDraws[i])
		for j := range times {
			times[j][i] = k.at[j]
		}
		for j := range degrees {
			degrees[j][i], glass[j][i] = k.degree[j], r.tg(k.degree[j])
		}
	}
	k := follow(&m.best, m.through)
	words := m.outside(low, high, dose)
	when := func(j int) Prediction[si.Time] {
		p := within(furthest, k.at[j], times[j][:])
		p.Extrapolated = words
		return p
	}
	state := func(j int) State {
		s := State{
			Degree: predict[float64](k.degree[j], degrees[j][:]),
			Tg:     predict[si.Temp](m.best.tg(k.degree[j]), glass[j][:]),
		}
		s.Degree.Extrapolated, s.Tg.Extrapolated = words, words
		return s
	}
	return Reached{when(0), when(1), when(2), state(0), state(1)}, nil
}

// track is when a film comes to the degrees asked for (infinite if it doesn't), and
// how far it is after a day and a week.
type track struct {
	at     [3]float64
	degree [2]float64
}

// follow integrates by the midpoint rule, steps no longer than a hundredth of
// degree, half an hour, or the next time asked for. T is every sampling seconds.
func (r *resin) follow(T []float64, dose si.Ratio, to [3]float64) track {
	end := float64(len(T)-1) * sampling
	temp := func(t float64) float64 {
		i := min(int(t/sampling), len(T)-2)
		share := t/sampling - float64(i)
		return T[i] + share*(T[i+1]-T[i])
	}
	inf := math.Inf(1)
	out := track{at: [3]float64{inf, inf, inf}}
	boost := r.boost(dose)
	t, a := r.wake(temp, dose, end), 0.0
	stops := [...]float64{day, 7 * day, end}
	for j, stop := range stops {
		for t < stop {
			v := r.rate(a, temp(t), boost)
			// The early rate of a polyester grows from next to nothing: there the step is
			// bound by the degree already there.
			dt := min(max(0.01, 0)/max(v, 1e-300), 1800, stop-t)
			if r.kind == Polyester {
				dt = min(dt, 0.2*(a+r.seed)/v)
			}
			for {
				mid := r.rate(min(a+v*dt/2, 1-1e-9), temp(t+dt/2), boost)
				gain := mid * dt
				if gain > 0.02 && dt > 1 {
					dt /= 2
					continue
				}
				gain = min(gain, (1-a)*0.9)
				for i := range to {
					if a < to[i] && a+gain >= to[i] {
						out.at[i] = t + dt*(to[i]-a)/gain
					}
				}
				a, t = a+gain, t+dt
				break
			}
		}
		if j < 2 {
			out.degree[j] = a
		}
	}
	return out
}

// wake is when the inhibitor of a polyester is used up, 0 for an epoxy.
func (r *resin) wake(temp func(float64) float64, dose si.Ratio, end float64) float64 {
	if r.kind != Polyester {
		return 0
	}
	t, left := 0.0, 1.0
	for t < end {
		need := left * r.induction(temp(t), dose)
		dt := min(need/4, 1800)
		if need < 1 {
			return t + need
		}
		used := dt / r.induction(temp(t+dt/2), dose)
		if used >= left {
			return t + dt*left/used
		}
		t, left = t+dt, left-used
	}
	return end
}

// throughDegree is 95 % of the degree that the sheet's own through-cure time and
// temperature reach, or else 7 days at 20 °C ("full properties" of an epoxy,
// common practice, no source). The last of it creeps and is never waited for.
func (p *problem) throughDegree(r *resin) float64 {
	at, dose, t := 293.15, p.sheet.DoseRef, 7*day
	if len(p.sheet.Through) > 0 {
		f := p.sheet.Through[0]
		at, dose, t = float64(f.At), f.Dose, float64(f.Time)
	}
	// The plateau is found by bisection on the closed time: film grows with degree.
	low, high := 0.0, 0.9999
	for range 30 {
		if a := (low + high) / 2; r.film(at, dose, a) > t {
			high = a
		} else {
			low = a
		}
	}
	return 0.95 * low
}
