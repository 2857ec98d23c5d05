package figure

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

// Models of cure whose parameters can be given one by one.
const (
	autocatalytic = "autocatalytic"
	nthOrder      = "nth"
	kamal         = "kamal"
	twoRegime     = "two-regime"
)

var models = []string{autocatalytic, nthOrder, kamal, twoRegime}

// lawInputs are the parameters of every model; only those of the one chosen are
// read, and one given beside them is refused.
var lawInputs = []Input{
	{Key: "model", Doc: "rate law: autocatalytic k a^m (1-a)^n, nth k (1-a)^n, kamal (k1 + k2 a^m)(1-a)^n, two-regime (k1 + k2 a)(1-a)(bound-a) then k3 (1-a)", Unit: autocatalytic, Default: autocatalytic, Words: models},
	{Key: "A", Doc: "frequency factor, with its unit of time: printed per minute as often as per second", Unit: "3.7e22/min", Unless: []string{"model=kamal", "model=two-regime"}},
	{Key: "E", Doc: "activation energy", Unit: "167.4 kJ/mol", Unless: []string{"model=kamal", "model=two-regime"}},
	{Key: "m", Doc: "exponent of the degree of cure (kamal: 1 if left out)", Unit: "0.524", Unless: []string{"model=nth", "model=kamal", "model=two-regime"}},
	{Key: "n", Doc: "exponent of what is left to cure (kamal: 2 if left out)", Unit: "1.476", Unless: []string{"model=kamal", "model=two-regime"}},
	{Key: "k2", Doc: "kamal: rate constant k2 at the reference temperature", Unit: "3e-4/s", Optional: true},
	{Key: "kappa", Doc: "kamal: k1/k2", Unit: "0.10", Optional: true},
	{Key: "reference", Doc: "kamal: reference temperature of k2, 25 °C if left out", Unit: "25 °C", Optional: true},
	{Key: "A1", Doc: "kamal and two-regime: frequency factor of k1", Unit: "2.102e9/min", Optional: true},
	{Key: "E1", Doc: "its activation energy", Unit: "80.7 kJ/mol", Optional: true},
	{Key: "A2", Doc: "kamal and two-regime: frequency factor of k2; negative in some two-regime sets", Unit: "-2.014e9/min", Optional: true},
	{Key: "E2", Doc: "its activation energy", Unit: "77.8 kJ/mol", Optional: true},
	{Key: "A3", Doc: "two-regime: frequency factor of k3", Unit: "1.960e5/min", Optional: true},
	{Key: "E3", Doc: "its activation energy", Unit: "56.6 kJ/mol", Optional: true},
	{Key: "bound", Doc: "two-regime: bound, 0.47 if left out", Unit: "0.47", Optional: true},
	{Key: "switch", Doc: "two-regime: degree at which the law changes, 0.3 if left out", Unit: "0.3", Optional: true},
}

// batchLaw are the inputs that say how a batch or a film sets: a material of the
// catalogue, or the parameters of any of the models, kamal's if none is named.
func batchLaw() []Input {
	others := []string{"material", "model=autocatalytic", "model=nth", "model=two-regime", "A1", "A2"}
	change := map[string]func(*Input){
		"model": func(in *Input) { in.Unit, in.Default = kamal, kamal },
		"A":     func(in *Input) { in.Doc, in.Unless, in.Optional = "autocatalytic and nth: "+in.Doc, nil, true },
		"E": func(in *Input) {
			in.Unit, in.Unless = "55 kJ/mol", []string{"material", "model=two-regime", "A1", "A2"}
		},
		"m":     func(in *Input) { in.Unless, in.Optional = nil, true },
		"n":     func(in *Input) { in.Unless, in.Optional = nil, true },
		"k2":    func(in *Input) { in.Unless, in.Optional = others, false },
		"kappa": func(in *Input) { in.Unless, in.Optional = others, false },
		"reference": func(in *Input) {
			in.Doc, in.Default, in.Optional = "kamal: reference temperature of k2", "25 °C", false
		},
	}
	rest := slices.Clone(lawInputs)
	for i := range rest {
		if f, ok := change[rest[i].Key]; ok {
			f(&rest[i])
		}
	}
	rank := func(in Input) int { // what the usual model needs comes first
		if i := slices.Index([]string{"k2", "kappa", "E", "reference", "model"}, in.Key); i >= 0 {
			return i
		}
		return 9
	}
	slices.SortStableFunc(rest, func(a, b Input) int { return rank(a) - rank(b) })
	first := []Input{materialInput(false, true), percentInput}
	seed := Input{Key: "seed", Doc: "degree of cure at the start; left out, 0 or, where the law can't leave 0, 1e-6", Unit: "1e-6", Optional: true}
	return append(append(first, rest...), seed)
}

// Bounds of what a resin or a boat can mean, to catch a value typed in another unit.
var (
	shopTemp     = bounds{173.1, 773.2, false, "between -100 and 500 °C"}
	activation   = bounds{1e3, 5e5, false, "between 1 and 500 kJ/mol"}
	exponents    = between(0, 10, "between 0 and 10")
	reactionHeat = bounds{1e3, 3e6, false, "between 1 and 3000 kJ/kg, per kg of what the density and specific heat are of"}
	heatCapacity = bounds{100, 2e4, false, "between 100 and 20 000 J/(kg K)"}
	anyDensity   = bounds{5, 2.5e4, false, "between 5 and 25 000 kg/m3"}
	conduction   = bounds{1e-3, 1e3, false, "between 0.001 and 1000 W/(m K)"}
	film         = bounds{0, 1e4, false, "between 0 and 10 000 W/(m2 K)"}
	slabThick    = bounds{1e-4, 0.5, false, "between 0.1 mm and 500 mm"}
	longTime     = bounds{0, 100 * 86400, true, "more than 0 and at most 100 days"}
)

// has reports whether an input was given.
func (r *reader) has(key string) bool { return strings.TrimSpace(r.given[key]) != "" }

// need reads an input that is optional in general and needed here.
func (r *reader) need(key, why string) bool {
	if !r.has(key) {
		i := slices.IndexFunc(r.inputs, func(in Input) bool { return in.Key == key })
		r.fail(key, "is needed "+why+".", fmt.Sprintf("Give %s, such as %s=%q.", r.inputs[i].Doc, key, r.inputs[i].Unit))
	}
	return r.ok()
}

var rateText = regexp.MustCompile(`^([-+]?[0-9.,]+(?:[eE][-+]?[0-9]+)?)\s*(?:(?:1\s*)?/\s*(s|sec|min|h)|(?:per\s+)(s|second|min|minute|h|hour)|(s|min|h)\s*\^?-1)$`)

// rate reads a rate constant or frequency factor and returns it in 1/s. A bare
// number is refused: tables print per minute as often as per second, and a factor
// of 60 in it moves every time by 60.
func (r *reader) rate(key string, negative bool) float64 {
	t := r.text(key)
	if t == "" || !r.ok() {
		return 0
	}
	m := rateText.FindStringSubmatch(t)
	if m == nil {
		r.fail(key, fmt.Sprintf("%q does not say per what time.", t), fmt.Sprintf("Write %s=3.7e22/min or %s=6.17e20/s: published tables use both, and a factor of 60 hides between them.", key, key))
		return 0
	}
	x, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
	if err != nil || math.Abs(x) > 1e80 || !negative && x <= 0 || x == 0 {
		r.fail(key, fmt.Sprintf("%q is not a rate more than 0 and at most 1e80.", t), "")
		return 0
	}
	switch (m[2] + m[3] + m[4])[0] {
	case 'm':
		x /= 60
	case 'h':
		x /= 3600
	}
	return x
}

// arrhenius reads a frequency factor and its activation energy.
func (r *reader) arrhenius(a, e, why string, negative bool) kinetics.Arrhenius {
	if !r.need(a, why) || !r.need(e, why) {
		return kinetics.Arrhenius{}
	}
	return kinetics.Arrhenius{A: r.rate(a, negative), E: quantity[si.MolarEnergy](r, e, activation)}
}

// numberOr reads a plain number, or takes x where it is not given.
func (r *reader) numberOr(key string, b bounds, x float64) float64 {
	if !r.has(key) {
		return x
	}
	return r.number(key, b)
}

// shareOr reads a number from 0 to 1, or takes x where it is not given.
func (r *reader) shareOr(key string, b bounds, x float64) float64 {
	if !r.has(key) {
		return x
	}
	return r.share(key, b)
}

// cureLaw is a rate law as it was given, with the words for its worked lines.
type cureLaw struct {
	kinetics.Law
	formula, numbers, source string
	constants                []rateConstant
	key                      string         // of the input that sets its speed
	energy                   si.MolarEnergy // of the main reaction
}

// rateConstant is one of a law's constants.
type rateConstant struct {
	name string
	kinetics.Arrhenius
}

const kamalSourour = "KamalSourour1973: form from memory"

// law reads the model and its parameters.
func (r *reader) law() cureLaw {
	var l cureLaw
	switch model := r.word("model"); model {
	case autocatalytic, nthOrder:
		why := "by the model " + model
		k := r.arrhenius("A", "E", why, false)
		l = cureLaw{source: "closed form of the rate law", constants: []rateConstant{{"k", k}}, key: "A", energy: k.E}
		if !r.need("n", why) || model == autocatalytic && !r.need("m", why) {
			return l
		}
		if model == nthOrder {
			n := r.number("n", exponents)
			l.Law, l.formula, l.numbers = kinetics.NthOrder{K: k, N: n}, "da/dt = k (1-a)^n", "n = "+num(n)
			break
		}
		m, n := r.number("m", exponents), r.number("n", exponents)
		l.Law, l.formula, l.numbers = kinetics.Autocatalytic{K: k, M: m, N: n}, "da/dt = k a^m (1-a)^n", fmt.Sprintf("m = %s, n = %s", num(m), num(n))
		l.source = "BogettiGillespie1991: form second-hand"
	case kamal:
		l = r.kamal()
	case twoRegime:
		why := "by the model two-regime"
		t := kinetics.TwoRegime{K1: r.arrhenius("A1", "E1", why, false), K2: r.arrhenius("A2", "E2", why, true), K3: r.arrhenius("A3", "E3", why, false)}
		t.Bound, t.Switch = r.shareOr("bound", between(0.01, 1, "between 0.01 and 1"), 0.47), r.shareOr("switch", between(0.01, 0.99, "between 0.01 and 0.99"), 0.3)
		l = cureLaw{
			Law: t, formula: "da/dt = (k1 + k2 a)(1-a)(b-a) up to the switch, k3 (1-a) after", numbers: fmt.Sprintf("b = %s, switch at %s", num(t.Bound), num(t.Switch)),
			source: "LeeLoosSpringer1982: form from memory", constants: []rateConstant{{"k1", t.K1}, {"k2", t.K2}, {"k3", t.K3}},
			key: "A1", energy: t.K1.E,
		}
	}
	if r.ok() {
		if err := kinetics.Check(l.Law); err != nil {
			r.fail("model", "the law can't be: "+err.Error()+".", "")
		}
	}
	return l
}

// kamal reads the law of Kamal and Sourour, by k2 and kappa at a reference
// temperature with one activation energy, or by two Arrhenius constants.
func (r *reader) kamal() cureLaw {
	var law kinetics.Kamal
	key, kappaWords := "A2", ""
	if r.has("A1") || r.has("A2") {
		why := "beside the other of A1 and A2"
		law.K1, law.K2 = r.arrhenius("A1", "E1", why, false), r.arrhenius("A2", "E2", why, false)
	} else {
		why := "by the model kamal (or A1, E1, A2, E2)"
		if !r.need("k2", why) || !r.need("kappa", why) || !r.need("E", why) {
			return cureLaw{}
		}
		k2, kappa, e := r.rate("k2", false), r.number("kappa", between(0, 1e3, "between 0 and 1000")), quantity[si.MolarEnergy](r, "E", activation)
		ref := r.reference()
		if !r.ok() {
			return cureLaw{}
		}
		k, err := kinetics.FromReference(k2, ref, e)
		if err != nil {
			r.fail("k2", err.Error(), "")
			return cureLaw{}
		}
		law.K2 = k
		key, kappaWords = "k2", fmt.Sprintf("κ = k1/k2 = %s, ", num(kappa))
		if kappa > 0 {
			law.K1 = k.Times(kappa)
		}
	}
	law.M, law.N = r.numberOr("m", exponents, 1), r.numberOr("n", exponents, 2)
	return cureLaw{
		Law: law, formula: "da/dt = (k1 + k2 a^m)(1-a)^n", numbers: kappaWords + fmt.Sprintf("m = %s, n = %s", num(law.M), num(law.N)),
		source: kamalSourour, constants: []rateConstant{{"k1", law.K1}, {"k2", law.K2}}, key: key, energy: law.K2.E,
	}
}

func (r *reader) reference() si.Temp {
	if r.text("reference") == "" {
		return si.Celsius(25)
	}
	return quantity[si.Temp](r, "reference", shopTemp)
}

// at returns the worked lines and results of the rate constants at a temperature.
func (l cureLaw) at(T si.Temp) (Results, []working.Line) {
	var rs Results
	var lines []working.Line
	for _, c := range l.constants {
		if c.A == 0 {
			continue
		}
		k := c.K(T)
		rs = append(rs, Result{Key: c.name + "_per_s", Value: k})
		lines = append(lines, working.Line{
			Name: "rate constant " + c.name, Formula: c.name + " = A exp(-E/RT)",
			Numbers: fmt.Sprintf("%s/s × exp(-%s kJ/mol/(R × %s K))", num(c.A), num(c.E.KJPerMol()), num(float64(T))),
			Value:   k, Unit: "1/s", Source: "Arrhenius' law; A and E as given", Holds: "inside the temperatures the set was fitted to",
		})
	}
	return rs, lines
}

// seed reads the degree at the start, or takes the least that lets the law go.
func (r *reader) seed(l cureLaw, fresh float64) float64 {
	a0 := r.shareOr("seed", between(0, 0.99, "between 0 and 0.99"), fresh)
	if r.ok() && a0 == 0 && kinetics.Fresh(l.Law) > 0 && l.stuck() {
		r.fail("seed", "the law never leaves a degree of 0.", "Give the degree at the start, such as seed=1e-6; it moves the times, so state it.")
	}
	return a0
}

// stuck reports whether the law has no solution that leaves 0 by itself.
func (l cureLaw) stuck() bool {
	switch law := l.Law.(type) {
	case kinetics.Autocatalytic:
		return law.M >= 1
	case kinetics.Kamal:
		return law.K1.A == 0 && law.M >= 1
	}
	return false
}

// warnings say what a degree of cure does not say.
const degreeWarning = "A degree of cure by a fitted law is not hardness: a resin that cures at room temperature stops short of 1 when its glass transition passes its own temperature, which this law leaves out. The data sheet of the material in hand decides."
