package figure

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/cure"
	"scarfwright/repair/working"
)

// fitted is what stands behind a time of a material of the catalogue.
const fitted = "the entry's own numbers and what is usual for its kind (from memory), each counted by how well it is believed"

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

// never stands in place of a time that lies beyond what is followed.
const never = "more than 60 days"

// eight words a range that holds eight times in ten.
func eight(low, high string) string { return "eight times in ten " + low + " to " + high }

// band adds a prediction's likely value and its range in minutes, and where wanted the
// likely one in hours; words in place of a time that lies beyond what is followed.
func (a *Answer) band(key string, p cure.Prediction[si.Time], hours bool) {
	put := func(key string, t si.Time) bool {
		if cure.Beyond(t) {
			a.Results = append(a.Results, Result{Key: key + "_words", Text: never})
			return false
		}
		a.Results = append(a.Results, Result{Key: key + "_min", Value: t.Minutes()})
		return true
	}
	if put(key, p.Likely) && hours {
		a.Results = append(a.Results, Result{Key: key + "_h", Value: p.Likely.Hours()})
	}
	put(key+"_low", p.Low)
	put(key+"_high", p.High)
	a.warn(p.Extrapolated)
}

// timed adds the worked line of a predicted time.
func (a *Answer) timed(name, formula, numbers string, p cure.Prediction[si.Time], holds string) {
	unit, in := "min", si.Time.Minutes
	if p.Likely > si.Hours(3) {
		unit, in = "h", si.Time.Hours
	}
	l := working.Line{Name: name, Formula: formula, Numbers: numbers, Value: in(p.Likely), Unit: unit, Source: fitted, Holds: holds}
	if cure.Beyond(p.Likely) {
		l.Name, l.Value, l.Unit = name+": later than is followed", p.Likely.Days(), "days"
	}
	if l.Numbers != "" {
		l.Numbers += "; "
	}
	switch {
	case cure.Beyond(p.Low):
		l.Numbers += "nine times in ten " + never
	case cure.Beyond(p.High):
		l.Numbers += eight(num(in(p.Low))+" "+unit, never)
	default:
		l.Numbers += eight(num(in(p.Low)), num(in(p.High))+" "+unit)
	}
	a.Working = append(a.Working, l)
}

// warn adds a warning, once.
func (a *Answer) warn(words string) {
	if words != "" && !slices.Contains(a.Warnings, words) {
		a.Warnings = append(a.Warnings, words)
	}
}

// hull warns where a temperature lies outside what the entry allows for the hull.
func (a *Answer) hull(t timed, T si.Temp) {
	low, high := t.Limits.HullMin, t.Limits.HullMax
	says := func(than string, limit catalog.Value[si.Temp]) {
		a.warn(fmt.Sprintf("%.4g °C is %s than the entry allows a hull to be, %.4g °C (%s): a time outside that is no leave to lay it.",
			T.Celsius(), than, limit.Typical.Celsius(), limit.Source))
	}
	const slack = 1e-6
	if low.Given() && T < low.Typical-slack {
		says("colder", low)
	}
	if high.Given() && T > high.Typical+slack {
		says("warmer", high)
	}
}

// fitLines adds, last of all, what the model makes of the entry's own numbers, and how
// much of each parameter is what is usual for the kind and not of the entry.
func (a *Answer) fitLines(m cure.Model) {
	before := len(a.Working)
	for _, x := range m.Misfit() {
		unit, per := "min", 60.
		if strings.HasPrefix(x.Name, "rise") {
			unit, per = "K", 1
		}
		how := "well within what such a number is believed to"
		switch off := math.Abs(x.Sigmas); {
		case off > 2:
			how = "far more than such a number is believed to: its numbers do not go together"
		case off > 1:
			how = "somewhat more than such a number is believed to"
		}
		by := 100 * (x.Model/x.Sheet - 1)
		a.Working = append(a.Working, working.Line{
			Name: "fit: " + x.Name, Formula: "the fitted model beside the entry", Value: x.Model / per, Unit: unit, Source: fitted,
			Numbers: fmt.Sprintf("the entry says %s %s; the model is off by %.1f %%, %s", num(x.Sheet/per), unit, math.Abs(by), how),
		})
	}
	for _, p := range m.Report() {
		if p.Fixed {
			continue
		}
		told := fmt.Sprintf("the entry narrows it to %.0f %% of what is usual", 100*p.PostOverPrior)
		if p.Silent() {
			told = "the entry says next to nothing of it"
		}
		a.Working = append(a.Working, working.Line{
			Name: fmt.Sprintf("fitted: %s (%s)", p.Plain(), p.Name), Formula: "most likely value", Value: p.Value, Unit: p.Unit, Source: fitted,
			Numbers: strings.TrimSpace(fmt.Sprintf("usual for its kind %s %s", num(p.Prior), strings.TrimPrefix(p.Unit, "1"))) + "; " + told,
		})
	}
	a.fit = len(a.Working) - before
}
