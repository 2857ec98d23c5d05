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
			Name: "film-gel", Title: "when a thin film of an epoxy gels: so thin that it stays at the temperature of the air", Inputs: []Input{
				{Key: "k2", Doc: "rate constant k2 at the reference temperature", Unit: "3e-4/s", Unless: []string{"material"}},
				{Key: "kappa", Doc: "k1/k2", Unit: "0.10", Unless: []string{"material"}},
				{Key: "E", Doc: "activation energy", Unit: "55 kJ/mol", Unless: []string{"material"}},
				{Key: "temperature", Doc: "temperature of the film", Unit: "20 °C"},
				{Key: "reference", Doc: "temperature of k2", Unit: "25 °C", Default: "25 °C"},
				{Key: "gel", Doc: "degree of cure at gel", Unit: "0.58", Default: "0.58"},
				materialInput(false, true),
				percentInput,
			}, work: filmGel,
		},
	}, gelFigures()...)
}

// degree reads a degree of cure.
func (r *reader) degree(key string) float64 {
	return float64(quantity[si.Ratio](r, key, fraction))
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
	return Answer{
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
}

func filmGel(r *reader) Answer {
	if r.has("material") {
		return filmOf(r)
	}
	k2, kappa := r.rate("k2", false), r.number("kappa", between(1e-6, 1e3, "between 0.000001 and 1000"))
	e, T, ref := quantity[si.MolarEnergy](r, "E", activation), quantity[si.Temp](r, "temperature", shopTemp), quantity[si.Temp](r, "reference", shopTemp)
	gel := r.degree("gel")
	if !r.ok() {
		return Answer{}
	}
	k, err := kinetics.FromReference(k2, ref, e)
	if err != nil {
		r.fail("k2", err.Error(), "")
		return Answer{}
	}
	t, err := kinetics.Kamal{K1: k.Times(kappa), K2: k, M: 1, N: 2}.Time(T, 0, gel)
	if err != nil {
		r.fail("gel", "the law gives no time: "+err.Error()+".", "")
		return Answer{}
	}
	at := k.K(T)
	warn := ""
	if math.Abs(float64(T.Sub(ref))) > 15 {
		warn = fmt.Sprintf("%s °C is %s K from the reference: beyond the temperatures of a sheet a rate is a guess", num(T.Celsius()), num(math.Abs(float64(T.Sub(ref)))))
	}
	return Answer{
		Results: Results{{Key: "k2_per_s", Value: at}, {Key: "gel_s", Value: float64(t)}, {Key: "gel_min", Value: t.Minutes()}, {Key: "gel_h", Value: t.Hours()}},
		Working: []working.Line{
			{Name: "rate constant", Formula: "k2 exp[-E/R (1/T - 1/Tref)]", Numbers: fmt.Sprintf("%s/s, E = %s kJ/mol, %s °C from %s °C", num(k2), num(e.KJPerMol()), num(T.Celsius()), num(ref.Celsius())), Value: at, Unit: "1/s", Source: "Arrhenius' law; parameters as given", Warning: warn},
			{Name: "film gels", Formula: "t = [F(a) - F(0)]/k2, F(x) = ln[(κ+x)/(1-x)]/(1+κ)² + 1/[(1+κ)(1-x)]", Numbers: fmt.Sprintf("κ = %s, a = %s", num(kappa), num(gel)), Value: t.Hours(), Unit: "h", Source: kamalSourour, Holds: "a film that stays at the temperature of the air; below vitrification"},
		},
		Warnings: []string{"Gelled is neither sandable nor through-cured: those come hours and days later, by the data sheet."},
	}
}
