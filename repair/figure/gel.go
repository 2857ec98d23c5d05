package figure

import (
	"fmt"
	"math"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

func gelFigures() []Calculation {
	return []Calculation{
		{
			Name: "glass-transition", Title: "glass transition of a resin at a degree of cure, or the degree at a glass transition", Inputs: []Input{
				{Key: "Tg0", Doc: "glass transition of the fresh mix", Unit: "-35 °C"},
				{Key: "Tginf", Doc: "glass transition cured through", Unit: "90 °C"},
				{Key: "lambda", Doc: "ratio of the heat-capacity steps, cured to fresh", Unit: "0.40", Range: "more than 0, at most 1"},
				{Key: "cure", Doc: "degree of cure", Unit: "0.80", Unless: []string{"Tg"}},
				{Key: "Tg", Doc: "glass transition, when the degree of cure is wanted", Unit: "30 °C", Optional: true},
			}, work: glassTransition,
		},
		{
			Name: "gel-conversion", Title: "degree of cure at which a two-part mix gels, from its functionality", Inputs: []Input{
				{Key: "f", Doc: "functionality of the hardener: 4 for a diamine, its hydrogens", Unit: "4"},
				{Key: "g", Doc: "functionality of the resin: 2 for a diepoxide", Unit: "2"},
				{Key: "r", Doc: "groups that run short over the others", Unit: "1", Range: "more than 0, at most 1", Default: "1"},
			}, work: gelConversion,
		},
		{
			Name: "equivalent-age", Title: "hours at one temperature that do as much as a history of temperatures", Inputs: []Input{
				{Key: "E", Doc: "activation energy", Unit: "50 kJ/mol"},
				{Key: "reference", Doc: "temperature to state it at", Unit: "20 °C"},
				{Key: "history", Doc: "times at temperatures, one after the other", Unit: "2h@10C, 3h@20C, 2h@15C"},
			}, work: equivalentAge,
		},
		{
			Name: "catalyst-gel-time", Title: "gel time of a polyester or vinylester at another dose and temperature", Inputs: []Input{
				{Key: "reference-time", Doc: "gel time on the sheet", Unit: "15 min", Unless: []string{"material"}},
				{Key: "reference-percent", Doc: "catalyst that it is for, by mass of resin", Unit: "2 %", Default: "2 %"},
				{Key: "reference", Doc: "temperature that it is for", Unit: "25 °C", Default: "25 °C"},
				{Key: "percent", Doc: "catalyst, by mass of resin", Unit: "1.5 %"},
				{Key: "temperature", Doc: "temperature of the resin", Unit: "18 °C"},
				{Key: "E", Doc: "activation energy of the gel time", Unit: "58 kJ/mol", Default: "58 kJ/mol"},
				{Key: "exponent", Doc: "order q in the catalyst", Unit: "0.88", Default: "0.88"},
				materialInput(true, true),
			}, work: catalystGelTime,
		},
	}
}

const diBenedetto = "DiBenedetto1987: form from memory"

func glassTransition(r *reader) Answer {
	g := kinetics.DiBenedetto{Tg0: quantity[si.Temp](r, "Tg0", shopTemp), TgInf: quantity[si.Temp](r, "Tginf", shopTemp), Lambda: r.share("lambda", bounds{0, 1, true, "more than 0 and at most 1"})}
	inverse := r.has("Tg")
	var a float64
	var tg si.Temp
	switch {
	case inverse && r.has("cure"):
		r.fail("Tg", "and cure are both given.", "Give the one that is known.")
	case inverse:
		tg = quantity[si.Temp](r, "Tg", shopTemp)
	default:
		a = r.share("cure", between(0, 1, "between 0 and 100 %"))
	}
	if r.ok() && g.TgInf <= g.Tg0 {
		r.fail("Tginf", fmt.Sprintf("is %.4g °C and Tg0 %.4g °C: curing raises the glass transition, so Tginf must be the higher.", g.TgInf.Celsius(), g.Tg0.Celsius()), "")
	}
	if r.ok() && inverse && (tg < g.Tg0 || tg > g.TgInf) {
		r.fail("Tg", fmt.Sprintf("is %.4g °C; this resin's lies between %.4g and %.4g °C.", tg.Celsius(), g.Tg0.Celsius(), g.TgInf.Celsius()), "")
	}
	if r.ok() {
		if err := g.Check(); err != nil {
			r.fail("Tginf", err.Error(), "")
		}
	}
	if r.ok() && inverse {
		x, err := g.Cure(tg)
		if err != nil {
			r.fail("Tg", err.Error(), "")
		}
		a = x
	}
	if !r.ok() {
		return Answer{}
	}
	if !inverse {
		tg = g.Tg(a)
	}
	span, y := float64(g.TgInf.Sub(g.Tg0)), float64(tg.Sub(g.Tg0))/float64(g.TgInf.Sub(g.Tg0))
	line := working.Line{
		Name: "glass transition", Formula: "Tg = Tg0 + (Tginf - Tg0) λ a/[1 - (1-λ) a]", Numbers: fmt.Sprintf("%s °C + %s K × %s × %s/(1 - %s × %s)", num(g.Tg0.Celsius()), num(span), num(g.Lambda), num(a), num(1-g.Lambda), num(a)),
		Value: tg.Celsius(), Unit: "°C", Source: diBenedetto,
	}
	if inverse {
		line = working.Line{
			Name: "degree of cure", Formula: "a = y/[λ + (1-λ) y], y = (Tg - Tg0)/(Tginf - Tg0)", Numbers: fmt.Sprintf("y = %s, λ = %s", num(y), num(g.Lambda)),
			Value: a, Unit: "1", Source: diBenedetto,
		}
	}
	return Answer{
		Results:  Results{{Key: "tg_c", Value: tg.Celsius()}, {Key: "cure_fraction", Value: a}},
		Working:  []working.Line{line},
		Warnings: []string{"A resin stops some 10 to 20 K above the temperature it cures at (from memory), whatever the wait; dark topsides in the sun pass that."},
	}
}

func gelConversion(r *reader) Answer {
	least := bounds{1, 1e6, true, "more than 1"}
	f, g, short := r.number("f", least), r.number("g", least), r.share("r", bounds{0, 1, true, "more than 0 and at most 1"})
	if !r.ok() {
		return Answer{}
	}
	need, err := kinetics.GelConversion(f, g, short)
	if err != nil {
		r.fail("r", err.Error()+".", "Too little hardener, or too few groups on its molecules.")
		return Answer{}
	}
	line := working.Line{
		Name: "degree of cure at gel", Formula: "a = 1/√[r (f-1)(g-1)]", Numbers: fmt.Sprintf("1/√[%s × %s × %s]", num(short), num(f-1), num(g-1)),
		Value: need, Unit: "1", Source: "Flory1953: from memory", Holds: "step growth with equal groups and no rings, which delay real gel; polyester and vinylester gel at a few per cent",
	}
	if need >= 1-1e-12 {
		line.Warning = "it never gels: at full cure it just would, and nothing cures fully"
		return Answer{Results: Results{{Key: "conversion_words", Text: "never: " + chains(f, g)}}, Working: []working.Line{line}}
	}
	return Answer{Results: Results{{Key: "conversion_fraction", Value: need}}, Working: []working.Line{line}}
}

// chains says why a mix that would gel at full cure does not.
func chains(f, g float64) string {
	if f == 2 && g == 2 {
		return "two groups on each molecule make chains only (linear), however far it cures"
	}
	return "it would have to cure fully first"
}

func equivalentAge(r *reader) Answer {
	e, ref := quantity[si.MolarEnergy](r, "E", activation), quantity[si.Temp](r, "reference", shopTemp)
	ks := r.history("history")
	if !r.ok() {
		return Answer{}
	}
	h, err := kinetics.NewHistory(ks...)
	clock := ks[len(ks)-1].Time
	var age si.Time
	if err == nil {
		age, err = kinetics.EquivalentAge(e, h, 0, clock, ref)
	}
	if err != nil {
		r.fail("history", err.Error(), "")
		return Answer{}
	}
	a := Answer{Results: Results{{Key: "equivalent_h", Value: age.Hours()}, {Key: "clock_h", Value: clock.Hours()}, {Key: "mean_factor_ratio", Value: float64(age) / float64(clock)}}}
	for i := 0; i < len(ks) && i < 2*12; i += 2 {
		d, from, to := ks[i+1].Time-ks[i].Time, ks[i].Temp, ks[i+1].Temp
		f := kinetics.RateRatio(e, from, ref)
		numbers := fmt.Sprintf("%s h at %s °C", num(d.Hours()), num(from.Celsius()))
		if to != from {
			numbers += fmt.Sprintf(", falling or rising to %s °C", num(to.Celsius()))
		}
		a.Working = append(a.Working, working.Line{Name: "speed against the reference", Formula: "exp[-E/R (1/T - 1/Tref)]", Numbers: numbers, Value: f, Unit: "×", Source: "Arrhenius' law; E as given"})
	}
	a.Working = append(a.Working, working.Line{
		Name: "equivalent age", Formula: "∫ exp[-E/R (1/T - 1/Tref)] dt", Numbers: fmt.Sprintf("over %s h, Tref %s °C", num(clock.Hours()), num(ref.Celsius())),
		Value: age.Hours(), Unit: "h", Source: "Arrhenius' law, integrated", Holds: "one activation energy, and only until the resin vitrifies: one that has stopped in the cold has stopped",
	})
	return a
}

const peroxideWarning = "The percentage must lie inside the band of the resin's own data sheet; eye and face protection to pour peroxide. Peroxide never meets promoter neat."

func catalystGelTime(r *reader) Answer {
	if r.has("material") {
		return gelOf(r)
	}
	dose := bounds{1e-3, 0.10, false, "between 0.1 and 10 %"}
	t0, p0, T0 := quantity[si.Time](r, "reference-time", longTime), quantity[si.Ratio](r, "reference-percent", dose), quantity[si.Temp](r, "reference", shopTemp)
	p, T := quantity[si.Ratio](r, "percent", dose), quantity[si.Temp](r, "temperature", shopTemp)
	e, q := quantity[si.MolarEnergy](r, "E", activation), r.number("exponent", between(0, 3, "between 0 and 3"))
	if !r.ok() {
		return Answer{}
	}
	// The ratio of two induction times is free of the time they are stated at.
	i := kinetics.Induction{Ref: si.Hours(1), E: e, Q: q}
	here, err := i.Time(T, p)
	there, err2 := i.Time(T0, p0)
	if err != nil || err2 != nil {
		r.fail("percent", fmt.Sprint(err, err2), "")
		return Answer{}
	}
	t := si.Scale(t0, float64(here)/float64(there))
	warn := ""
	switch {
	case p < doseLow || p > doseHigh:
		warn = fmt.Sprintf("%.3g %% is outside any band a peroxide sheet is known to give (about 1 to 3 %%): the formula still gives a time, the resin may never cure. Heat it, wait, or take another resin; never meet cold with more catalyst.", p.Percent())
	case math.Abs(float64(T.Sub(T0))) > 10:
		warn = fmt.Sprintf("%s K from the sheet's temperature: a time this far off is a guess", num(math.Abs(float64(T.Sub(T0)))))
	}
	return Answer{
		Results: Results{{Key: "gel_min", Value: t.Minutes()}, {Key: "gel_h", Value: t.Hours()}, {Key: "against_reference_ratio", Value: float64(t) / float64(t0)}},
		Working: []working.Line{{
			Name: "gel time", Formula: "t = tref (p/pref)^(-q) exp[E/R (1/T - 1/Tref)]", Numbers: fmt.Sprintf("%s min × (%s/%s)^-%s × exp[%s kJ/mol/R (1/%s - 1/%s)]", num(t0.Minutes()), num(p.Percent()), num(p0.Percent()), num(q), num(e.KJPerMol()), num(float64(T)), num(float64(T0))),
			Value: t.Minutes(), Unit: "min", Source: "working form, from memory; E near 58 kJ/mol by MSG, independent computation", Holds: "inside the sheet's own band of catalyst and near its temperature", Warning: warn,
		}},
		Warnings: []string{peroxideWarning},
	}
}
