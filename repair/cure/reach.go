package cure

import (
	"errors"
	"math"
	"sync"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// Reached is what a film comes to along a temperature history.
type Reached struct {
	Gel       Prediction[si.Time] `json:"gel"`
	Sandable  Prediction[si.Time] `json:"sandable"`
	Through   Prediction[si.Time] `json:"through"`
	AfterDay  State               `json:"after_day"`
	AfterWeek State               `json:"after_week"`
}

// State is how far it has come at a time.
type State struct {
	Degree Prediction[float64] `json:"degree"`
	Tg     Prediction[si.Temp] `json:"tg"`
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
	return m.reaches(h, dose, draws)
}

// LikelyReaches is Reaches of the likely material alone, in a hundredth of the time:
// low, likely and high are one.
func (m Model) LikelyReaches(h kinetics.History, dose si.Ratio) (Reached, error) {
	return m.reaches(h, dose, 0)
}

func (m Model) reaches(h kinetics.History, dose si.Ratio, count int) (Reached, error) {
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
	var times [3][]float64
	var degrees, glass [2][]float64
	ripe := m.problem.throughAt()
	follow := func(r *resin, through float64) track {
		k := r.follow(T[:], dose, [3]float64{r.gel, r.sand, through}, ripe)
		k.at[ToThrough] = max(k.at[ToThrough], k.ripe)
		return k
	}
	record := func(r *resin, k track) {
		for j := range times {
			times[j] = append(times[j], k.at[j])
		}
		for j := range degrees {
			degrees[j], glass[j] = append(degrees[j], k.degree[j]), append(glass[j], r.tg(k.degree[j]))
		}
	}
	tracks := make([]track, count)
	var done sync.WaitGroup
	for half := range 2 {
		done.Go(func() {
			for i := half; i < count; i += 2 {
				tracks[i] = follow(&m.sample[i], m.throughDraws[i])
			}
		})
	}
	done.Wait()
	for i := range tracks {
		record(&m.sample[i], tracks[i])
	}
	k := follow(&m.best, m.through)
	if count == 0 {
		record(&m.best, k)
	}
	words := m.outside(low, high, dose)
	when := func(j int) Prediction[si.Time] {
		p := within(furthest, k.at[j], times[j])
		p.Extrapolated = words
		return p
	}
	state := func(j int) State {
		s := State{
			Degree: predict[float64](k.degree[j], degrees[j]),
			Tg:     predict[si.Temp](m.best.tg(k.degree[j]), glass[j]),
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
	ripe   float64 // when it is as old as the sheet's through-cure time
}

// age is how many seconds at Tref a second at T is worth (kinetics.EquivalentAge).
func (r *resin) age(T, Tref float64) float64 { return math.Exp(r.eR * (1/Tref - 1/T)) }

// follow integrates by the midpoint rule, steps no longer than a hundredth of
// degree, half an hour (two hours after the first day), or the next time asked for. T is
// every sampling seconds.
func (r *resin) follow(T []float64, dose si.Ratio, to [3]float64, ripe Film) track {
	end := float64(len(T)-1) * sampling
	temp := func(t float64) float64 {
		i := min(int(t/sampling), len(T)-2)
		share := t/sampling - float64(i)
		return T[i] + share*(T[i+1]-T[i])
	}
	inf := math.Inf(1)
	out := track{at: [3]float64{inf, inf, inf}, ripe: inf}
	old := 0.0
	boost := r.boost(dose)
	t, a := r.wake(temp, dose, end), 0.0
	old += t * r.age(temp(t/2), float64(ripe.At))
	stops := [...]float64{day, 7 * day, end}
	for j, stop := range stops {
		if j == 2 && out.at[2] < inf && out.ripe < inf {
			break // nothing is left to ask
		}
		longest := 1800.0
		if j > 0 {
			longest = 7200
		}
		for t < stop {
			v := r.rate(a, temp(t), boost)
			// The early rate of a polyester grows from next to nothing: there the step is
			// bound by the degree already there.
			dt := min(0.01/max(v, 1e-300), longest, stop-t)
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
				older := dt * r.age(temp(t+dt/2), float64(ripe.At))
				if old < float64(ripe.Time) && old+older >= float64(ripe.Time) {
					out.ripe = t + dt*(float64(ripe.Time)-old)/older
				}
				old += older
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

// throughAt is what the sheet says of through-cured, or else 7 days at 20 °C ("full
// properties" of an epoxy, common practice, no source; for a polyester our choice).
func (p *problem) throughAt() Film {
	f := Film{At: si.Celsius(20), Dose: p.sheet.DoseRef, Time: si.Days(7)}
	if len(p.sheet.Through) > 0 {
		f = p.sheet.Through[0]
	}
	return f
}

// throughDegree is 95 % of the degree that the sheet's through-cure reaches. The
// last of it creeps, and a day's warmth moves it by weeks: it is left to the age.
func (p *problem) throughDegree(r *resin) float64 {
	f := p.throughAt()
	// Newton's method on ln t, kept in a bracket: the time of a film grows with degree.
	T, boost := float64(f.At), r.boost(f.Dose)
	low, high, a := 0.0, 0.9999, 0.8
	for range 30 {
		t := r.film(T, f.Dose, a)
		if t > float64(f.Time) {
			high = a
		} else {
			low = a
		}
		next := a + math.Log(float64(f.Time)/t)*t*r.rate(a, T, boost)
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-a) < 1e-6 {
			break
		}
		a = next
	}
	return 0.95 * a
}
