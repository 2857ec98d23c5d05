package figure

import (
	"fmt"
	"strconv"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

// vesselInput is what a batch stands in.
var vesselInput = Input{Key: "vessel", Doc: "what it stands in", Unit: "cup", Default: "cup", Words: vesselNames()}

func vesselNames() []string {
	var out []string
	for _, v := range heat.Vessels {
		out = append(out, v.Name)
	}
	return out
}

// vessel reads it, with what is measured across it.
func (r *reader) vessel() (heat.VesselKind, si.Length) {
	k, err := heat.VesselNamed(r.word("vessel"))
	if err != nil {
		return heat.Vessels[0], heat.Vessels[0].Usual // word has said so
	}
	if !r.has("diameter") {
		return k, k.Usual
	}
	return k, quantity[si.Length](r, "diameter", bounds{0.01, 1, false, "between 10 mm and 1 m"})
}

func cup(r *reader) Answer {
	mass := quantity[si.Mass](r, "mass", bounds{1e-3, 50, false, "between 1 g and 50 kg"})
	vessel, d := r.vessel()
	air := quantity[si.Temp](r, "ambient", shopTemp)
	start := air
	if r.has("start") {
		start = quantity[si.Temp](r, "start", shopTemp)
	}
	k2, kappa := r.rate("k2", false), r.number("kappa", between(1e-6, 1e3, "between 0.000001 and 1000"))
	e, ref := quantity[si.MolarEnergy](r, "E", activation), quantity[si.Temp](r, "reference", shopTemp)
	h, c, rho := quantity[si.SpecificEnergy](r, "H", reactionHeat), quantity[si.SpecificHeat](r, "c", heatCapacity), quantity[si.Density](r, "rho", liquid)
	var u si.HeatTransfer
	own := !r.has("U")
	if !own {
		u = quantity[si.HeatTransfer](r, "U", film)
	}
	gel := r.degree("gel")
	if !r.ok() {
		return Answer{}
	}
	k, err := kinetics.FromReference(k2, ref, e)
	if err != nil {
		r.fail("k2", err.Error(), "")
		return Answer{}
	}
	law := kinetics.Kamal{K1: k.Times(kappa), K2: k, M: 1, N: 2}
	// A film at the colder of the two temperatures is slower than any cup.
	slowest, err := law.Time(min(air, start), 0, max(gel, 0.9))
	if err != nil || float64(slowest) > longTime.high || slowest < si.Seconds(1) {
		r.fail("k2", "with this E and temperature the resin takes less than a second, or more than 100 days.", "")
		return Answer{}
	}
	l := cureLaw{Law: law}
	re, spent := l.reaction(h)
	v := vessel.Of(d)
	if !own {
		v.Top, v.Side, v.Base = u, u, u
	}
	batch := heat.Cup{Vessel: v, Mass: mass, Density: rho, SpecificHeat: c, Reaction: re, Air: heat.Steady(air), Start: start, For: si.Scale(slowest, 1.02), Tolerance: 0.01}
	got, err := batch.Run(nil)
	if err != nil {
		r.giveUp("k2", *spent, err)
		return Answer{}
	}
	area, adiabatic := batch.Area(), float64(start)+float64(h)/float64(c)
	loss := batch.Loss()
	peak := got.Peak
	a := Answer{
		Results: Results{
			{Key: "peak_c", Value: peak.Temp.Celsius()}, {Key: "peak_min", Value: peak.Time.Minutes()},
			{Key: "area_cm2", Value: area.M2() * 1e4}, {Key: "depth_mm", Value: batch.Depth().MM()},
			{Key: "adiabatic_c", Value: si.Temp(adiabatic).Celsius()}, {Key: "energy_error_percent", Value: 100 * got.Energy.Error},
		},
		Working: []working.Line{
			{Name: "surface of the batch", Formula: "A = 2 π d²/4 + π d V/(π d²/4), V = m/ρ", Numbers: fmt.Sprintf("d = %s mm, V = %s ml", num(d.MM()), num(rho.Fill(mass).ML())), Value: area.M2() * 1e4, Unit: "cm²", Source: working.Geometry},
			{Name: "hottest", Formula: "m c dT/dt = m H da/dt - U A (T - Ta), da/dt = (κ + a)(1-a)² k2 exp[-E/R (1/T - 1/Tref)]", Numbers: fmt.Sprintf("U A = %s W/K, κ = %s, %s steps", num(loss), num(kappa), strconv.Itoa(got.Steps)), Value: peak.Temp.Celsius(), Unit: "°C", Source: lumped + "; " + kamalSourour, Holds: "one temperature throughout: the middle of a deep cup is hotter"},
		},
	}
	if loss > 0 {
		tau := float64(mass) * float64(c) / loss
		a.Results = append(a.Results, Result{Key: "cooling_min", Value: tau / 60})
		a.Working = append(a.Working, working.Line{Name: "time constant of cooling", Formula: "τ = m c/(U A)", Numbers: fmt.Sprintf("%s kg × %s J/(kg K) / %s W/K", num(mass.Kg()), num(float64(c)), num(loss)), Value: tau / 60, Unit: "min", Source: "Newton's law of cooling"})
	}
	if t, ok := got.Reached(gel); ok {
		a.Results = append(Results{{Key: "gel_min", Value: t.Minutes()}}, a.Results...)
		a.Working = append(a.Working, working.Line{Name: "gels", Formula: "first a = agel", Numbers: "a = " + num(gel), Value: t.Minutes(), Unit: "min", Source: lumped + "; " + kamalSourour, Holds: "below vitrification"})
	}
	if t, ok := got.Risen(si.Kelvins(25)); ok {
		a.Results = append(a.Results, Result{Key: "rise25_min", Value: t.Minutes()})
		a.Working = append(a.Working, working.Line{Name: "has warmed by 25 K", Formula: "first T = T0 + 25 K", Value: t.Minutes(), Unit: "min", Source: lumped, Holds: "a criterion that some sheets state a pot life by"})
	} else {
		a.Results = append(a.Results, Result{Key: "rise25_words", Text: "never: it does not warm by 25 K"})
	}
	a.Warnings = cupWarnings(start, peak.Temp, adiabatic, e)
	return a
}

func cupWarnings(start, peak si.Temp, adiabatic float64, e si.MolarEnergy) []string {
	out := []string{"Working time is at most the time to gel, and less: stop while it still wets out. The data sheet of the material in hand decides."}
	rise, full := float64(peak.Sub(start)), adiabatic-float64(start)
	runaway := kinetics.R * float64(start) * float64(start) / float64(e)
	if rise > runaway && rise < 0.6*full {
		out = append(out, "This batch lies near the edge between staying cool and running away: a little more mass, warmth or foam round it changes gel and peak a lot.")
	}
	if peak > si.Celsius(100) {
		out = append(out, fmt.Sprintf("The cup reaches some %.0f °C: it smokes, melts its cup and can start a fire. Mix less, pour it out into a tray at once, and never leave it indoors or in a bin.", peak.Celsius()))
	}
	return out
}
