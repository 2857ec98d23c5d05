package figure

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/cure"
	"scarfwright/repair/working"
)

// fitted is what stands behind a time of a material of the catalogue.
const fitted = "the entry's own numbers and usual values of its kind (from memory), weighed by their spreads"

// liquid of the catalogue, with the family that sets its law.
type timed struct {
	catalog.TwoPart
	kind cure.Kind
}

// timedMaterials lists what is mixed from two parts, epoxies as well as what
// peroxide sets; only the latter where catalysed is asked for.
func timedMaterials(catalysed bool) (all []timed, classes []string) {
	c := catalog.Default()
	add := func(t catalog.TwoPart, kind cure.Kind) {
		if t.Catalysed() {
			kind = cure.Polyester
		}
		if !catalysed || kind == cure.Polyester {
			all, classes = append(all, timed{t, kind}), append(classes, t.Class)
		}
	}
	for _, x := range c.Resins {
		add(x.TwoPart, cure.Epoxy)
	}
	for _, x := range c.Gelcoats {
		add(x.TwoPart, cure.Polyester)
	}
	for _, x := range c.Fillers {
		add(x.TwoPart, cure.Putty)
	}
	for _, x := range c.Barriers {
		add(x.TwoPart, cure.Epoxy)
	}
	return all, classes
}

func materialInput(catalysed, optional bool) Input {
	_, classes := timedMaterials(catalysed)
	unit := classes[0]
	if !catalysed {
		unit = "epoxy-slow"
	}
	return Input{Key: "material", Doc: "material of the catalogue, in place of parameters", Unit: unit, Words: classes, Optional: optional}
}

var percentInput = Input{Key: "percent", Doc: "catalyst by mass of resin, for what peroxide sets; the entry's usual dose if left out", Unit: "2 %", Optional: true}

// material fits the entry that is named and reads the dose that goes with it.
func (r *reader) material() (cure.Model, timed, si.Ratio) {
	name := r.word("material")
	all, _ := timedMaterials(false)
	i := slices.IndexFunc(all, func(t timed) bool { return t.Class == name })
	if !r.ok() || i < 0 {
		return cure.Model{}, timed{}, 0
	}
	t := all[i]
	dose := si.Ratio(0)
	if t.kind == cure.Polyester {
		if dose = t.Dose.Typical; r.has("percent") {
			dose = quantity[si.Ratio](r, "percent", bounds{0, 0.10, true, "more than 0 and at most 10 %"})
		}
	}
	m, err := cure.Fit(cure.FromCatalogue(t.TwoPart, t.kind))
	if err != nil {
		r.fail("material", err.Error(), "")
	}
	if r.ok() {
		if err := m.CheckDose(dose); err != nil {
			r.fail("percent", err.Error()+".", "")
		}
	}
	return m, t, dose
}

// roomTemp is where a catalogue entry may be asked for at all.
var roomTemp = bounds{253.1, 353.2, false, "between -20 and 80 °C"}

// band adds a prediction's likely value and its range, in minutes.
func (a *Answer) band(key string, p cure.Prediction[si.Time]) {
	a.Results = append(a.Results, Result{Key: key + "_min", Value: p.Likely.Minutes()}, Result{Key: key + "_low_min", Value: p.Low.Minutes()}, Result{Key: key + "_high_min", Value: p.High.Minutes()})
	if p.Never {
		a.Warnings = append(a.Warnings, "The likely material does not get there within 60 days: read the time as more than that.")
	}
	a.extrapolated(p.Extrapolated)
}

func (a *Answer) extrapolated(words string) {
	if words != "" && !slices.Contains(a.Warnings, words) {
		a.Warnings = append(a.Warnings, words)
	}
}

// fit adds what the model makes of the entry's own numbers, and how much of each
// parameter is what is usual for the kind and not of the entry.
func (a *Answer) fit(m cure.Model) {
	for _, x := range m.Misfit() {
		unit, per := "min", 60.
		if strings.HasPrefix(x.Name, "rise") {
			unit, per = "K", 1
		}
		a.Working = append(a.Working, working.Line{Name: "fit: " + x.Name, Formula: "model beside sheet", Numbers: "the sheet says " + num(x.Sheet/per), Value: x.Model / per, Unit: unit, Source: fitted, Holds: fmt.Sprintf("%.1f spreads off", math.Abs(x.Sigmas))})
	}
	for _, p := range m.Report() {
		if p.Fixed {
			continue
		}
		a.Working = append(a.Working, working.Line{
			Name: "fitted: " + p.Name, Formula: "most likely, prior " + num(p.Prior), Value: p.Value, Unit: p.Unit, Source: fitted,
			Holds: fmt.Sprintf("spread left %.2f of the prior's; 1 says that the entry is silent on it", p.PostOverPrior),
		})
	}
}

func potLifeFigure() Calculation {
	return Calculation{
		Name: "pot-life", Title: "working time of a batch of a catalogue material in a cup", Inputs: []Input{
			materialInput(false, false),
			{Key: "mass", Doc: "mass of the batch", Unit: "100 g"},
			{Key: "temperature", Doc: "temperature of the air", Unit: "20 °C"},
			percentInput,
			{Key: "start", Doc: "temperature of the mix; the air's if left out", Unit: "20 °C", Optional: true},
			vesselInput,
			{Key: "diameter", Doc: "inside diameter of the cup, or length of the tray; 75 mm and 250 mm if left out", Unit: "75 mm", Optional: true},
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
	var a Answer
	a.band("working", p.Working)
	a.band("gel", p.Gel)
	a.Results = append(a.Results,
		Result{Key: "peak_c", Value: p.Peak.Likely.Celsius()}, Result{Key: "peak_low_c", Value: p.Peak.Low.Celsius()}, Result{Key: "peak_high_c", Value: p.Peak.High.Celsius()},
		Result{Key: "peak_min", Value: p.PeakAt.Likely.Minutes()}, Result{Key: "runaway_fraction", Value: p.RunawayShare})
	numbers := fmt.Sprintf("%s g in a %s of %s mm, air at %s °C, mixed at %s °C", num(mass.Grams()), v.Name, num(across.MM()), num(T.Celsius()), num(start.Celsius()))
	if dose > 0 {
		numbers += fmt.Sprintf(", %s %%", num(dose.Percent()))
		a.Results = append(a.Results, Result{Key: "dose_percent", Value: dose.Percent()})
	}
	model := "m c dT/dt = m H da/dt - U A (T - Ta) with the fitted law"
	a.Working = append(a.Working,
		working.Line{Name: "working time of " + t.Class, Formula: model, Numbers: numbers, Value: p.Working.Likely.Minutes(), Unit: "min", Source: fitted, Holds: fmt.Sprintf("10 to 90 %%: %s to %s min; by the entry's own criterion", num(p.Working.Low.Minutes()), num(p.Working.High.Minutes()))},
		working.Line{Name: "gel", Formula: model, Value: p.Gel.Likely.Minutes(), Unit: "min", Source: fitted, Holds: fmt.Sprintf("10 to 90 %%: %s to %s min", num(p.Gel.Low.Minutes()), num(p.Gel.High.Minutes()))},
		working.Line{Name: "hottest, left standing", Formula: model, Value: p.Peak.Likely.Celsius(), Unit: "°C", Source: fitted, Holds: fmt.Sprintf("10 to 90 %%: %s to %s °C", num(p.Peak.Low.Celsius()), num(p.Peak.High.Celsius()))})
	a.fit(m)
	a.Warnings = append(a.Warnings, fmt.Sprintf("Plan with the low end, working time at least %.0f min: past it the mix drags and does not wet out. The data sheet of the material in hand decides.", math.Floor(p.Working.Low.Minutes())))
	if dose > 0 {
		a.Warnings = append(a.Warnings, peroxideWarning)
	}
	switch {
	case p.RunawayShare > 0.1 && p.RunawayShare < 0.9:
		a.Warnings = append(a.Warnings, "This batch lies near the edge between staying cool and running away: its times are a gamble. Spread it in a tray or mix less.")
	case p.Runaway:
		a.Warnings = append(a.Warnings, "Left in its cup it runs away: use it or spread it, and put what is left outdoors on something that can't burn.")
	}
	return a
}

// filmOf is film-gel for a material of the catalogue.
func filmOf(r *reader) Answer {
	m, t, dose := r.material()
	T := quantity[si.Temp](r, "temperature", roomTemp)
	if !r.ok() {
		return Answer{}
	}
	var a Answer
	for _, s := range []struct {
		key, words string
		stage      cure.Stage
	}{{"gel", "gels", cure.ToGel}, {"sandable", "is sandable", cure.ToSandable}, {"through", "is cured through", cure.ToThrough}} {
		p, err := m.Film(T, dose, s.stage)
		if err != nil {
			r.fail("temperature", err.Error(), "")
			return Answer{}
		}
		a.band(s.key, p)
		a.Results = append(a.Results, Result{Key: s.key + "_h", Value: p.Likely.Hours()})
		a.Working = append(a.Working, working.Line{
			Name: "film of " + t.Class + " " + s.words, Formula: "t = ∫ da/rate, fitted law", Numbers: num(T.Celsius()) + " °C", Value: p.Likely.Hours(), Unit: "h", Source: fitted,
			Holds: fmt.Sprintf("10 to 90 %%: %s to %s h; a film that stays at the temperature of the air", num(p.Low.Hours()), num(p.High.Hours())),
		})
	}
	if t.kind == cure.Polyester {
		a.Warnings = append(a.Warnings, "A film in air gels later than this and may stay tacky: it loses styrene and air stops its surface, which the model leaves out.")
	}
	a.fit(m)
	a.Warnings = append(a.Warnings, "Gelled is neither sandable nor through-cured. The data sheet of the material in hand decides.")
	return a
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
	a.band("gel", p.Gel)
	a.Results = append(a.Results, Result{Key: "gel_h", Value: p.Gel.Likely.Hours()}, Result{Key: "peak_c", Value: p.Peak.Likely.Celsius()}, Result{Key: "dose_percent", Value: dose.Percent()})
	a.Working = append(a.Working, working.Line{
		Name: "100 g of " + t.Class + " gels", Formula: "inhibitor used up first, then k a^m (1-a)^n, fitted", Numbers: fmt.Sprintf("%s °C, %s %%", num(T.Celsius()), num(dose.Percent())),
		Value: p.Gel.Likely.Minutes(), Unit: "min", Source: fitted, Holds: fmt.Sprintf("10 to 90 %%: %s to %s min", num(p.Gel.Low.Minutes()), num(p.Gel.High.Minutes())),
	})
	a.fit(m)
	a.Warnings = append(a.Warnings, peroxideWarning)
	return a
}
