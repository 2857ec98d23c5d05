package figure

import (
	"fmt"
	"math"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/cure"
	"scarfwright/repair/working"
)

// usable is the part of the working time in which the cup is emptied (from memory): the
// plan's rule for a crew, which package mixing has.
const usable = 0.6

// Depths from which on the vessel is asked after: ours. Resin hardly passes heat, and a
// cup or tray so deep in it is mostly a slip.
const (
	deepCup  = si.Length(0.150)
	deepTray = si.Length(0.060)
)

// Hot batches are warned of from here on: near 100 °C styrene boils and thin plastic
// gives way, and what stands at 120 °C smokes (from memory).
var hotBatch, hotHighEnd = si.Celsius(100), si.Celsius(120)

func potLifeFigure() Calculation {
	return Calculation{
		Name: "pot-life", Title: "working time of a batch of a catalogue material in a cup or tray", Inputs: []Input{
			materialInput(false, false),
			{Key: "mass", Doc: "mass of the batch", Unit: "100 g"},
			{Key: "temperature", Doc: "temperature of the air", Unit: "20 °C"},
			percentInput,
			{Key: "start", Doc: "temperature of the mix; the air's if left out", Unit: "20 °C", Optional: true},
			vesselInput,
			diameterInput,
		}, work: potLife,
	}
}

func potLife(r *reader) Answer {
	m, t, dose := r.material()
	mass := quantity[si.Mass](r, "mass", bounds{1e-3, 50, false, "between 1 g and 50 kg"})
	T := quantity[si.Temp](r, "temperature", roomTemp)
	start := T
	if r.has("start") {
		start = quantity[si.Temp](r, "start", roomTemp)
	}
	v, across := r.vessel()
	if !r.ok() {
		return Answer{}
	}
	p, err := m.Pot(cure.Batch{Mass: mass, Vessel: v.Of(across), Air: T, Start: start, Dose: dose})
	if err != nil {
		r.fail("material", err.Error(), "")
		return Answer{}
	}
	a := Answer{Results: Results{{Key: "criterion_words", Text: m.Criterion().Words()}}}
	within := si.Scale(p.Working.Low, usable)
	if !cure.Beyond(p.Working.Low) {
		a.Results = append(Results{{Key: "lay_within_min", Value: within.Minutes()}}, a.Results...)
	}
	a.band("working", p.Working, false)
	a.band("gel", p.Gel, false)
	a.Results = append(a.Results,
		Result{Key: "peak_c", Value: p.Peak.Likely.Celsius()},
		Result{Key: "peak_low_c", Value: p.Peak.Low.Celsius()}, Result{Key: "peak_high_c", Value: p.Peak.High.Celsius()})
	if cure.Beyond(p.PeakAt.Likely) {
		a.Results = append(a.Results, Result{Key: "peak_words", Text: never})
	} else {
		a.Results = append(a.Results, Result{Key: "peak_min", Value: p.PeakAt.Likely.Minutes()})
	}
	a.Results = append(a.Results, Result{Key: "runaway_fraction", Value: p.RunawayShare})
	numbers := fmt.Sprintf("%s g in a %s of %s mm, air at %s °C, mixed at %s °C",
		num(mass.Grams()), v.Name, num(across.MM()), num(T.Celsius()), num(start.Celsius()))
	if dose > 0 {
		numbers += fmt.Sprintf(", %s %%", num(dose.Percent()))
		a.Results = append(a.Results, Result{Key: "dose_percent", Value: dose.Percent()})
	}
	model := "m c dT/dt = m H da/dt - U A (T - Ta) with the fitted law"
	a.timed("working time of "+t.Class+", "+m.Criterion().Words(), model, numbers, p.Working, "")
	if !cure.Beyond(p.Working.Low) {
		a.Working = append(a.Working, working.Line{
			Name: "have it laid within", Formula: "0.6 × the low end of the working time",
			Numbers: fmt.Sprintf("0.6 × %s min", num(p.Working.Low.Minutes())),
			Value:   within.Minutes(), Unit: "min", Source: "from memory: the plan's rule for a crew, so that the cup is empty before the mix drags",
		})
	}
	a.timed("gel", model, "", p.Gel, "")
	a.Working = append(a.Working, working.Line{
		Name: "hottest, left standing", Formula: model, Value: p.Peak.Likely.Celsius(), Unit: "°C", Source: fitted,
		Numbers: eight(num(p.Peak.Low.Celsius()), num(p.Peak.High.Celsius())+" °C"),
	})
	if !cure.Beyond(p.Working.Low) {
		drags := "past it the mix drags and does not wet out"
		if m.Criterion() == cure.Gel {
			drags = "it drags and does not wet out well before it gels"
		}
		a.warn(fmt.Sprintf("Have it laid within %s, 60 %% of the low end. The entry's time runs %s: %s. "+
			"The data sheet of the material in hand decides.", floor(within), m.Criterion().Words(), drags))
	}
	a.batch(v, across, mass, m.Density())
	a.hot(p.Peak.Likely, p.Peak.High)
	switch {
	case p.RunawayShare > 0.1 && p.RunawayShare < 0.9:
		a.warn("This batch lies near the edge between staying cool and running away: its times are a gamble. Spread it in a tray or mix less.")
	case p.Runaway:
		a.warn("Left in its cup it runs away: use it or spread it, and put what is left outdoors on something that can't burn.")
	}
	a.hull(t, T)
	if dose > 0 {
		a.warn(peroxideWarning)
	}
	a.fitLines(m)
	return a
}

// floor prints minutes rounded down, as one plans with them.
func floor(t si.Time) string {
	if t < si.Minutes(5) {
		return fmt.Sprintf("%.1f min", math.Floor(10*t.Minutes())/10)
	}
	if t > si.Hours(3) {
		return fmt.Sprintf("%.0f h", math.Floor(t.Hours()))
	}
	return fmt.Sprintf("%.0f min", math.Floor(t.Minutes()))
}

// batch questions a batch that stands deeper than its vessel is likely to be.
func (a *Answer) batch(v heat.VesselKind, across si.Length, mass si.Mass, rho si.Density) {
	depth, limit := si.Length(float64(rho.Fill(mass))/float64(v.Of(across).Bottom)), deepCup
	if v.Name == "tray" || v.Name == "metal tray" {
		limit = deepTray
	}
	if depth > limit {
		a.warn(fmt.Sprintf("%s g would stand %.0f mm deep in a %s of %.0f mm: is that what it stands in? "+
			"Give vessel and diameter as they are. The middle of anything so deep is far hotter than is reckoned here, gels sooner and can burn: split the batch.",
			num(mass.Grams()), depth.MM(), v.Name, across.MM()))
	}
}

// hot warns of smoke and fire.
func (a *Answer) hot(peak, high si.Temp) {
	const what = "it smokes, melts its cup and can start a fire. Mix less, pour it out into a tray at once, and never leave it indoors or in a bin."
	switch {
	case peak > hotBatch:
		a.warn(fmt.Sprintf("The batch reaches some %.0f °C: %s", peak.Celsius(), what))
	case high > hotHighEnd:
		a.warn(fmt.Sprintf("The batch may reach %.0f °C: then %s", high.Celsius(), what))
	}
}

// filmOf is film-gel for a material of the catalogue.
func filmOf(r *reader) Answer {
	m, t, dose := r.material()
	T := quantity[si.Temp](r, "temperature", roomTemp)
	if !r.ok() {
		return Answer{}
	}
	var a Answer
	numbers := num(T.Celsius()) + " °C"
	if dose > 0 {
		numbers += fmt.Sprintf(", %s %%", num(dose.Percent()))
		a.Results = Results{{Key: "dose_percent", Value: dose.Percent()}}
	}
	const formula, thin = "t = ∫ da/rate, fitted law", "a film that stays at the temperature of the air"
	for _, s := range []struct {
		key, words string
		stage      cure.Stage
	}{{"gel", "gels", cure.ToGel}, {"sandable", "is sandable", cure.ToSandable}, {"through", "is cured through", cure.ToThrough}} {
		p, err := m.Film(T, dose, s.stage)
		if err != nil {
			r.fail("temperature", err.Error(), "")
			return Answer{}
		}
		name := "film of " + t.Class + " " + s.words
		rule := ""
		switch s.stage {
		case cure.ToSandable:
			a.timed(name+", by the fitted cure", formula, numbers, p, thin)
			p, rule = a.sandable(t, T, p)
		case cure.ToThrough:
			rule = a.through(m, T, name, numbers, p)
		default:
			a.timed(name, formula, numbers, p, thin)
		}
		a.band(s.key, p, true)
		if rule != "" {
			a.Results = append(a.Results, Result{Key: s.key + "_rule_words", Text: rule})
		}
	}
	a.hull(t, T)
	if t.kind == cure.Polyester {
		a.warn("A film in air gels later than this: it loses styrene, which the model leaves out. " +
			"Unwaxed resin stays tacky in air however long it waits: cover it with film, or end with a waxed coat.")
		a.warn(peroxideWarning)
	}
	a.warn("Gelled is neither sandable nor through-cured. The data sheet of the material in hand decides.")
	a.fitLines(m)
	return a
}

// sandable takes, for what peroxide sets, the later of the fit and the wait that the
// entry asks for: at 20 °C, longer in the cold, never shorter in the warmth. It counts
// air, wax and shrinkage, which no fit knows; the plan does the same.
func (a *Answer) sandable(t timed, T si.Temp, p cure.Prediction[si.Time]) (cure.Prediction[si.Time], string) {
	if t.Sandable <= 0 {
		return p, ""
	}
	slower := max(1, 1/kinetics.RateRatio(catalog.WaitEnergy, T, si.Celsius(20)))
	wait := si.Scale(t.Sandable, slower)
	if t.kind != cure.Polyester {
		if wait > p.Likely {
			a.warn(fmt.Sprintf("The entry's own wait before sanding is %s h at 20 °C, here %s h; a plan waits that long.",
				num(t.Sandable.Hours()), num(wait.Hours())))
		}
		return p, ""
	}
	a.Working = append(a.Working, working.Line{
		Name: "wait before sanding by the entry's own limit", Formula: "t20 exp[E/R (1/T - 1/293.15 K)], no less than t20",
		Numbers: fmt.Sprintf("t20 = %s h, E = %s kJ/mol, %s °C", num(t.Sandable.Hours()), num(catalog.WaitEnergy.KJPerMol()), num(T.Celsius())),
		Value:   wait.Hours(), Unit: "h", Source: "limit: " + t.Limits.Sandable.Source + "; E from memory, as halved by 10 K",
		Holds: "it counts air, wax and shrinkage, so that warmth does not shorten it; the later of this and the fitted cure counts",
	})
	if wait <= p.Likely {
		return p, "the fitted cure, which is later than the entry's own limit"
	}
	p.Low, p.Likely, p.High = max(p.Low, wait), wait, max(p.High, wait)
	return p, "the entry's own limit, which is later than the fitted cure"
}

// through adds the line of cured through, and says which of its two rules governs.
func (a *Answer) through(m cure.Model, T si.Temp, name, numbers string, p cure.Prediction[si.Time]) string {
	age, from, at := m.Ripe(T)
	rule := fmt.Sprintf("%.4g h at %.4g °C", from.Hours(), at.Celsius())
	if from >= si.Days(2) {
		rule = fmt.Sprintf("%.4g days at %.4g °C", from.Days(), at.Celsius())
	}
	governs := fmt.Sprintf("the age rule, %s moved to this temperature, which is later than the fitted cure", rule)
	if float64(p.Likely) > float64(age)*(1+1e-9) {
		governs = fmt.Sprintf("the fitted cure, which is later than the age rule (%s moved to this temperature)", rule)
	}
	a.timed(name, "the later of the fitted cure, to 95 % of the degree at "+rule+", and an age of "+rule,
		numbers+"; here by "+governs, p,
		"at room temperature it stops short of full cure; the age rule is the sheet's own, or 7 days at 20 °C where it gives none (common practice, no source)")
	return governs
}

// gelOf is catalyst-gel-time for a material of the catalogue: 100 g in a cup, as
// sheets state it.
func gelOf(r *reader) Answer {
	m, t, dose := r.material()
	T := quantity[si.Temp](r, "temperature", roomTemp)
	if !r.ok() {
		return Answer{}
	}
	p, err := m.Pot(cure.Batch{Mass: si.Grams(100), Vessel: heat.StraightCup(si.MM(75)), Air: T, Dose: dose})
	if err != nil {
		r.fail("temperature", err.Error(), "")
		return Answer{}
	}
	var a Answer
	a.band("gel", p.Gel, true)
	a.Results = append(a.Results, Result{Key: "peak_c", Value: p.Peak.Likely.Celsius()}, Result{Key: "dose_percent", Value: dose.Percent()})
	a.timed("100 g of "+t.Class+" gels", "inhibitor used up first, then k a^m (1-a)^n, fitted",
		fmt.Sprintf("%s °C, %s %%", num(T.Celsius()), num(dose.Percent())), p.Gel, "")
	a.warn("Gelled is the end of all work: have it laid well before. The data sheet of the material in hand decides.")
	a.hot(p.Peak.Likely, p.Peak.High)
	a.hull(t, T)
	a.warn(peroxideWarning)
	a.fitLines(m)
	return a
}
