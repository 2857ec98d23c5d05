package cure

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
)

// Prediction is a figure with its 10 to 90 % range.
type Prediction[Q ~float64] struct {
	Low    Q `json:"low"`
	Likely Q `json:"likely"`
	High   Q `json:"high"`

	// Never says that the likely material doesn't get there within the horizon of
	// the question (60 days for a film, 14 for a history); a Low, Likely or High
	// that is beyond it is the horizon itself: read "more than".
	Never bool `json:"never,omitempty"`

	// Extrapolated says in words what of the question lies outside the sheet; empty
	// if nothing does.
	Extrapolated string `json:"extrapolated,omitempty"`
}

func predict[Q ~float64](likely float64, drawn []float64) Prediction[Q] {
	slices.Sort(drawn)
	quantile := func(p float64) float64 {
		x := p * float64(len(drawn)-1)
		i := int(x)
		return drawn[i] + (x-float64(i))*(drawn[min(i+1, len(drawn)-1)]-drawn[i])
	}
	return Prediction[Q]{Low: Q(min(quantile(0.1), likely)), Likely: Q(likely), High: Q(max(quantile(0.9), likely))}
}

func within(horizon, likely float64, drawn []float64) Prediction[si.Time] {
	for i, t := range drawn {
		if !(t < horizon) { // NaN and infinite too
			drawn[i] = horizon
		}
	}
	never := !(likely < horizon)
	if never {
		likely = horizon
	}
	p := predict[si.Time](likely, drawn)
	p.Never = never
	return p
}

// Drawn returns one of the possible materials as if it were the likely one, for
// whoever follows it further: its heat through a stack. i runs from 0 to 63.
func (m Model) Drawn(i int) Model {
	m.best, m.through = m.sample[i], m.throughDraws[i]
	return m
}

// CheckDose returns what to do about a dose outside the sheet's band, nil inside.
// The hardener of an epoxy is a fixed ratio and has no band: any dose passes.
func (m Model) CheckDose(dose si.Ratio) error {
	s := m.problem.sheet
	const slack = 1e-9
	switch {
	case s.Kind != Polyester:
		return nil
	case !(dose > 0 && dose <= 0.1):
		return fmt.Errorf("%s: catalyst %.3g %% is no dose; it must be more than 0 and at most 10 %% of the resin's mass", s.Name, dose.Percent())
	case s.DoseHigh == 0:
		return nil
	case dose < s.DoseLow-slack:
		return fmt.Errorf("%s: %.3g %% of catalyst is below the sheet's %.3g to %.3g %%: it may never cure; wait for cooler air, cool the resin or choose a slower one", s.Name, dose.Percent(), s.DoseLow.Percent(), s.DoseHigh.Percent())
	case dose > s.DoseHigh+slack:
		return fmt.Errorf("%s: %.3g %% of catalyst is above the sheet's %.3g to %.3g %%: cold is met with heat, not with peroxide; heat, wait, or choose a faster resin", s.Name, dose.Percent(), s.DoseLow.Percent(), s.DoseHigh.Percent())
	}
	return nil
}

// outside says in words what of a range of temperatures or a dose lies outside the
// sheet's.
func (m Model) outside(low, high si.Temp, dose si.Ratio) string {
	const slack = 1e-6
	s := m.problem.sheet
	covers := fmt.Sprintf("%.3g to %s", s.Low.Celsius(), both(s.High))
	if s.Low == s.High {
		covers = both(s.Low) + " only"
	}
	var words []string
	if low < s.Low-slack {
		words = append(words, fmt.Sprintf("%s is colder than the sheet's data (%s): the time rests on what is usual for its kind; warm resin and hull, or time a cup at this temperature", both(low), covers))
	}
	if high > s.High+slack {
		words = append(words, fmt.Sprintf("%s is warmer than the sheet's data (%s): the time rests on what is usual for its kind; take less of it and time a cup at this temperature", both(high), covers))
	}
	if s.Kind == Polyester {
		from, to := s.doses()
		if dose < from-1e-9 || dose > to+1e-9 {
			timed := fmt.Sprintf("%.3g to %.3g %%", from.Percent(), to.Percent())
			if from == to {
				timed = fmt.Sprintf("%.3g %% only", from.Percent())
			}
			words = append(words, fmt.Sprintf("%.3g %% of catalyst is outside the doses the sheet gives times for (%s)", dose.Percent(), timed))
		}
	}
	return strings.Join(words, "; ")
}

// both prints a temperature in either unit, for words that go on papers of both.
func both(T si.Temp) string {
	return fmt.Sprintf("%.3g °C (%.0f °F)", T.Celsius(), 1.8*T.Celsius()+32)
}

// doses are the least and the most for which something is timed.
func (s Sheet) doses() (low, high si.Ratio) {
	low = si.Ratio(math.Inf(1))
	see := func(d si.Ratio) { low, high = min(low, d), max(high, d) }
	for _, p := range s.Pots {
		see(p.Dose)
	}
	for _, p := range s.Peaks {
		see(p.Dose)
	}
	for _, f := range slices.Concat(s.FilmGel, s.Sandable) {
		see(f.Dose)
	}
	return low, high
}

// PotResult is what becomes of a batch left in its vessel.
type PotResult struct {
	Gel     Prediction[si.Time] `json:"gel"`     // from the end of mixing, or what the sheet's clock starts at
	Working Prediction[si.Time] `json:"working"` // end of pot life by the sheet's own criterion; at Gel or before
	Peak    Prediction[si.Temp] `json:"peak"`
	PeakAt  Prediction[si.Time] `json:"peak_at"`

	// Runaway says that the likely batch warms itself by more than R T^2/E, some 13
	// K, over which its rate grows e-fold: spread it or use it, don't leave it.
	// RunawayShare is the share of the possible materials that do; between 0.1 and
	// 0.9 the times are a gamble, and the range says so.
	Runaway      bool    `json:"runaway"`
	RunawayShare float64 `json:"runaway_share"`
}

// Batch is a mixed batch left in its vessel.
type Batch struct {
	Mass   si.Mass // of both parts
	Vessel heat.Vessel
	Air    si.Temp
	Start  si.Temp // of the mix; not given: the air's
	Dose   si.Ratio
}

func (b Batch) start() si.Temp {
	if b.Start.Given() {
		return b.Start
	}
	return b.Air
}

// Pot predicts a batch. It is an error where the dose is outside the sheet's band, or
// a figure is none.
func (m Model) Pot(in Batch) (PotResult, error) {
	if err := m.checkBatch(in); err != nil {
		return PotResult{}, err
	}
	criterion := m.Criterion()
	var gel, working, peak, peakAt [draws]float64
	ran := 0
	for i := range m.sample {
		r := &m.sample[i]
		b := r.bath(in)
		o := r.run(b, in.Dose, true)
		gel[i], working[i], peak[i], peakAt[i] = o.gel, o.pot(criterion), o.peak, o.peakAt
		if r.ranAway(b, o) {
			ran++
		}
	}
	b := m.best.bath(in)
	o := m.best.run(b, in.Dose, true)
	out := PotResult{
		Gel:          within(horizon, o.gel, gel[:]),
		Working:      within(horizon, o.pot(criterion), working[:]),
		Peak:         predict[si.Temp](o.peak, peak[:]),
		PeakAt:       within(horizon, o.peakAt, peakAt[:]),
		Runaway:      m.best.ranAway(b, o),
		RunawayShare: float64(ran) / draws,
	}
	words := m.outside(min(in.Air, in.start()), max(in.Air, in.start()), in.Dose)
	out.Gel.Extrapolated, out.Working.Extrapolated = words, words
	out.Peak.Extrapolated, out.PeakAt.Extrapolated = words, words
	return out, nil
}

// Working predicts the end of pot life alone, as Pot has it, in a part of Pot's time:
// it stops at gel.
func (m Model) Working(in Batch) (Prediction[si.Time], error) {
	if err := m.checkBatch(in); err != nil {
		return Prediction[si.Time]{}, err
	}
	criterion := m.Criterion()
	var t [draws]float64
	for i := range m.sample {
		r := &m.sample[i]
		t[i] = r.run(r.bath(in), in.Dose, false).pot(criterion)
	}
	o := m.best.run(m.best.bath(in), in.Dose, false)
	p := within(horizon, o.pot(criterion), t[:])
	p.Extrapolated = m.outside(min(in.Air, in.start()), max(in.Air, in.start()), in.Dose)
	return p, nil
}

// LikelyPot returns the likely end of pot life alone, in a hundredth of the time of
// Pot: for whoever searches a mass, and asks Pot at the end.
func (m Model) LikelyPot(in Batch) (si.Time, error) {
	if err := m.checkBatch(in); err != nil {
		return 0, err
	}
	o := m.best.run(m.best.bath(in), in.Dose, false)
	return si.Time(min(o.pot(m.Criterion()), horizon)), nil
}

const horizon = 60 * 86400 // s

// Beyond reports whether a time of a film or a batch is the horizon itself, 60 days:
// read "more than".
func Beyond(t si.Time) bool { return !(t < horizon) }

// Criterion is the one the sheet's pot life is stated by.
func (m Model) Criterion() Criterion {
	for _, p := range m.problem.sheet.Pots {
		return p.Criterion
	}
	return Gel
}

func (m Model) checkBatch(b Batch) error {
	err := errors.Join(m.CheckDose(b.Dose), checkAir(b.Air), checkAir(b.start()))
	v := b.Vessel
	switch {
	case !(b.Mass > 0 && b.Mass < 1000):
		return errors.Join(err, fmt.Errorf("a batch of %g kg must be more than 0 and less than 1000", float64(b.Mass)))
	case !(v.Bottom > 0 && v.Around > 0 && v.Top >= 0 && v.Side >= 0 && v.Base >= 0 && v.Top+v.Base > 0 && v.Capacity >= 0):
		return errors.Join(err, errors.New("the vessel must have a bottom, a wall and heat transfer"))
	}
	return err
}

func checkAir(air si.Temp) error {
	if air.Celsius() >= -20 && air.Celsius() <= 80 {
		return nil
	}
	return fmt.Errorf("air of %.4g °C must lie within -20 to 80 °C", air.Celsius())
}

// Stage is how far a film is to set.
type Stage int

// The stages.
const (
	ToGel Stage = iota
	ToSandable
	ToThrough
)

func (m Model) degree(s Stage, draw int) float64 {
	r, through := &m.best, m.through
	if draw >= 0 {
		r, through = &m.sample[draw], m.throughDraws[draw]
	}
	return [...]float64{r.gel, r.sand, through}[s]
}

// Ripe returns the age that a film must have come to at a temperature before it counts
// as cured through, whatever its degree, and the time and temperature it is
// reckoned from: the sheet's own, or else 7 days at 20 °C.
func (m Model) Ripe(air si.Temp) (age, from si.Time, at si.Temp) {
	f := m.problem.throughAt()
	return si.Time(float64(f.Time) / m.best.age(float64(air), float64(f.At))), f.Time, f.At
}

// Film predicts when a thin film at one temperature comes to a stage.
func (m Model) Film(air si.Temp, dose si.Ratio, to Stage) (Prediction[si.Time], error) {
	if err := errors.Join(m.CheckDose(dose), checkAir(air)); err != nil {
		return Prediction[si.Time]{}, err
	}
	T, ripe := float64(air), m.problem.throughAt()
	when := func(r *resin, a float64) float64 {
		t := r.film(T, dose, a)
		if to == ToThrough {
			t = max(t, float64(ripe.Time)/r.age(T, float64(ripe.At)))
		}
		return t
	}
	var t [draws]float64
	for i := range m.sample {
		t[i] = when(&m.sample[i], m.degree(to, i))
	}
	p := within(horizon, when(&m.best, m.degree(to, -1)), t[:])
	p.Extrapolated = m.outside(air, air, dose)
	return p, nil
}
