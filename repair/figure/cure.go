package figure

import (
	"fmt"
	"math"
	"slices"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

const (
	lostHeat     = "conservation of energy: no heat leaves"
	byQuadrature = "TakahasiMori1974: quadrature, from memory"
)

func cureFigures() []Calculation {
	return append([]Calculation{
		potLifeFigure(),
		{
			Name: "cure-isothermal", Title: "time to a degree of cure at one temperature", Inputs: slices.Concat([]Input{
				{Key: "temperature", Doc: "temperature of the resin", Unit: "100 °C"},
				{Key: "to", Doc: "degree of cure to come to", Unit: "0.5"},
				{Key: "time", Doc: "a time whose degree of cure is wanted too", Unit: "30 min", Optional: true},
				{Key: "seed", Doc: "degree of cure at the start, 0 if left out", Unit: "1e-6", Optional: true},
			}, lawInputs), work: cureIsothermal,
		},
		{
			Name: "cure-adiabatic", Title: "how hot a resin that keeps all its heat gets, and how soon", Inputs: slices.Concat([]Input{
				{Key: "start", Doc: "temperature at the start", Unit: "90 °C"},
				{Key: "to", Doc: "degree of cure to come to", Unit: "0.5"},
				{Key: "H", Doc: "heat of reaction, per kg of what c is of: resin or composite", Unit: "77.5 kJ/kg"},
				{Key: "c", Doc: "specific heat", Unit: "1260 J/(kg K)"},
				{Key: "seed", Doc: "degree of cure at the start, 0 if left out", Unit: "1e-6", Optional: true},
			}, lawInputs), work: cureAdiabatic,
		},
		{
			Name: "film-gel", Title: "when a thin film gels, so thin that it stays at the temperature of the air; of a catalogue material also when it is sandable and cured through", Inputs: append([]Input{
				{Key: "temperature", Doc: "temperature of the film", Unit: "20 °C"},
				{Key: "gel", Doc: "degree of cure at gel", Unit: "0.58", Default: "0.58"},
			}, batchLaw()...), work: filmGel,
		},
	}, gelFigures()...)
}

// degree reads a degree of cure.
func (r *reader) degree(key string) float64 {
	return r.share(key, fraction)
}

// timer is a law with closed forms, or its own integrals.
type timer interface {
	Time(T si.Temp, a0, to float64) (si.Time, error)
	Conversion(T si.Temp, a0 float64, t si.Time) (float64, error)
}

func (l cureLaw) time(T si.Temp, a0, to float64) (si.Time, error) {
	if c, ok := l.Law.(timer); ok {
		return c.Time(T, a0, to)
	}
	return kinetics.Isothermal(l.Law, T, a0, to)
}

func (l cureLaw) conversion(T si.Temp, a0 float64, t si.Time) (float64, error) {
	if c, ok := l.Law.(timer); ok {
		return c.Conversion(T, a0, t)
	}
	return kinetics.IsothermalConversion(l.Law, T, a0, t)
}

func cureIsothermal(r *reader) Answer {
	T := quantity[si.Temp](r, "temperature", shopTemp)
	to := r.degree("to")
	l := r.law()
	a0 := r.seed(l, 0)
	after := si.Time(0)
	if r.has("time") {
		after = quantity[si.Time](r, "time", longTime)
	}
	if r.ok() && to <= a0 {
		r.fail("to", fmt.Sprintf("must be more than the degree at the start, %s.", num(a0)), "")
	}
	if !r.ok() {
		return Answer{}
	}
	t, err := l.time(T, a0, to)
	if err != nil {
		r.fail("to", "the law gives no time: "+err.Error()+".", "")
		return Answer{}
	}
	a := Answer{Warnings: []string{degreeWarning}}
	a.long(t)
	a.Results, a.Working = l.at(T)
	a.Results = append(a.Results, Result{Key: "time_s", Value: float64(t)}, Result{Key: "time_min", Value: t.Minutes()}, Result{Key: "time_h", Value: t.Hours()})
	a.Working = append(a.Working, working.Line{
		Name: "time to a degree of cure of " + num(to), Formula: l.formula + ", t = ∫ da/rate", Numbers: fmt.Sprintf("%s, a from %s to %s at %s °C", l.numbers, num(a0), num(to), num(T.Celsius())),
		Value: t.Minutes(), Unit: "min", Source: l.source,
	})
	if after > 0 {
		x, err := l.conversion(T, a0, after)
		if err != nil {
			r.fail("time", "the law gives no degree of cure: "+err.Error()+".", "")
			return Answer{}
		}
		a.Results = append(a.Results, Result{Key: "conversion_fraction", Value: x})
		a.Working = append(a.Working, working.Line{
			Name: "degree of cure after the time", Formula: "the same, for a", Numbers: num(after.Minutes()) + " min", Value: x, Unit: "1", Source: l.source,
		})
	}
	return a
}

func cureAdiabatic(r *reader) Answer {
	T := quantity[si.Temp](r, "start", shopTemp)
	to := r.degree("to")
	h, c := quantity[si.SpecificEnergy](r, "H", reactionHeat), quantity[si.SpecificHeat](r, "c", heatCapacity)
	l := r.law()
	a0 := r.seed(l, 0)
	if r.ok() && to <= a0 {
		r.fail("to", fmt.Sprintf("must be more than the degree at the start, %s.", num(a0)), "")
	}
	if !r.ok() {
		return Answer{}
	}
	b := kinetics.Adiabatic{Law: l.Law, Heat: h, C: c, Start: T, From: a0}
	t, err := b.Time(to)
	if err != nil {
		r.fail("to", "the law gives no time: "+err.Error()+".", "")
		return Answer{}
	}
	_, lines := l.at(T)
	then := b.Temp(to)
	a := Answer{
		Results: Results{
			{Key: "rise_k", Value: float64(b.Rise())}, {Key: "end_c", Value: b.Temp(1).Celsius()},
			{Key: "time_s", Value: float64(t)}, {Key: "time_min", Value: t.Minutes()}, {Key: "time_h", Value: t.Hours()}, {Key: "then_c", Value: then.Celsius()},
		},
		Working: append(lines,
			working.Line{Name: "rise", Formula: "ΔT = (H/c)(1 - a0)", Numbers: fmt.Sprintf("%s kJ/kg / %s J/(kg K) × %s", num(float64(h)/1000), num(float64(c)), num(1-a0)), Value: float64(b.Rise()), Unit: "K", Source: lostHeat},
			working.Line{Name: "end temperature", Formula: "T0 + ΔT", Numbers: fmt.Sprintf("%s °C + %s K", num(T.Celsius()), num(float64(b.Rise()))), Value: b.Temp(1).Celsius(), Unit: "°C", Source: lostHeat, Holds: "the most that self-heating can reach where no heat is brought in"},
			working.Line{Name: "time to a degree of cure of " + num(to), Formula: "t = ∫ da/rate(a, T0 + (H/c)(a - a0)), " + l.formula, Numbers: fmt.Sprintf("%s, a from %s to %s, then %s °C", l.numbers, num(a0), num(to), num(then.Celsius())), Value: t.Minutes(), Unit: "min", Source: byQuadrature},
		),
		Warnings: []string{degreeWarning},
	}
	a.long(t)
	if end := b.Temp(1); end > hotHighEnd {
		a.warn(fmt.Sprintf("Kept from losing heat it comes to %.0f °C: resin that hot smokes, scorches and can start a fire. A real batch stays below that by what its vessel and the air carry off.", end.Celsius()))
	}
	return a
}

func filmGel(r *reader) Answer {
	if r.has("material") {
		return filmOf(r)
	}
	T := quantity[si.Temp](r, "temperature", shopTemp)
	gel := r.degree("gel")
	l := r.law()
	a0 := r.seed(l, 0)
	if r.ok() && gel <= a0 {
		r.fail("gel", fmt.Sprintf("must be more than the degree at the start, %s.", num(a0)), "")
	}
	if !r.ok() {
		return Answer{}
	}
	t, err := l.time(T, a0, gel)
	if err != nil {
		r.fail("gel", "the law gives no time: "+err.Error()+".", "")
		return Answer{}
	}
	a := Answer{Warnings: []string{"Gelled is neither sandable nor through-cured: those come hours and days later, by the data sheet."}}
	a.Results, a.Working = l.at(T)
	a.Results = append(a.Results, Result{Key: "gel_s", Value: float64(t)}, Result{Key: "gel_min", Value: t.Minutes()}, Result{Key: "gel_h", Value: t.Hours()})
	formula := l.formula + ", t = ∫ da/rate"
	if k, ok := l.Law.(kinetics.Kamal); ok && k.M == 1 && k.N == 2 && k.K1.E == k.K2.E && a0 == 0 {
		formula = "t = [F(a) - F(0)]/k2, F(x) = ln[(κ+x)/(1-x)]/(1+κ)² + 1/[(1+κ)(1-x)]"
	}
	a.Working = append(a.Working, working.Line{
		Name: "film gels", Formula: formula, Numbers: fmt.Sprintf("%s, a from %s to %s at %s °C", l.numbers, num(a0), num(gel), num(T.Celsius())),
		Value: t.Hours(), Unit: "h", Source: l.source, Holds: "a film that stays at the temperature of the air; below vitrification",
	})
	if r.has("k2") {
		if ref := r.reference(); math.Abs(float64(T.Sub(ref))) > 15 {
			a.warn(fmt.Sprintf("%s °C is %s K from the reference: beyond the temperatures of a sheet a rate is a guess", num(T.Celsius()), num(math.Abs(float64(T.Sub(ref))))))
		}
	}
	a.long(t)
	return a
}

// long warns of a time so long that it means never.
func (a *Answer) long(t si.Time) {
	if t > si.Days(60) {
		a.warn("That is " + never + ": read it as never. Warm it, or take another resin.")
	}
}
