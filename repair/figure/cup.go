package figure

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/cure"
	"scarfwright/repair/working"
)

// vesselInput is what a batch stands in.
var vesselInput = Input{Key: "vessel", Doc: "what it stands in", Unit: "cup", Default: "cup", Words: vesselNames()}

var diameterInput = Input{Key: "diameter", Doc: "inside diameter of the cup, or length of the tray; 75 mm and 250 mm if left out", Unit: "75 mm", Optional: true}

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

// charge is what a batch is of.
type charge struct {
	cureLaw
	heat  si.SpecificEnergy
	c     si.SpecificHeat
	rho   si.Density
	gel   float64
	fresh float64 // degree at the start
	wall  float64 // heat transfer of a vessel, times the usual
	fit   *cure.Model
	entry timed
	dose  si.Ratio
}

// charge reads a material of the catalogue, or a law and what goes with it.
func (r *reader) charge() charge {
	if r.has("material") {
		m, t, dose := r.material()
		if !r.ok() {
			return charge{}
		}
		l := cureLaw{Law: m.Law(dose), formula: "da/dt by the law fitted to the entry", numbers: t.Class, source: fitted, key: "material"}
		if dose > 0 {
			l.numbers += fmt.Sprintf(", %s %%", num(dose.Percent()))
		}
		for _, p := range m.Report() {
			if p.Name == "E" {
				l.energy = si.KJPerMol(p.Value)
			}
		}
		share := float64(m.Transfer()) / float64(heat.StraightCup(1).Side)
		return charge{
			cureLaw: l, heat: m.Heat(), c: m.SpecificHeat(), rho: m.Density(), gel: m.GelAt(), fresh: kinetics.Fresh(l.Law),
			wall: share, fit: &m, entry: t, dose: dose,
		}
	}
	l := r.law()
	return charge{
		cureLaw: l, gel: r.degree("gel"), fresh: r.seed(l, max(0, kinetics.Fresh(orNothing(l.Law)))), wall: 1,
		heat: quantity[si.SpecificEnergy](r, "H", reactionHeat), c: quantity[si.SpecificHeat](r, "c", heatCapacity), rho: quantity[si.Density](r, "rho", liquid),
	}
}

// follow is how long a batch is to be followed, so that it gels and comes to its peak.
func (c charge) follow(b cure.Batch) (si.Time, error) {
	if c.fit != nil {
		p, err := c.fit.Pot(b)
		if err == nil && cure.Beyond(p.Gel.Likely) {
			err = errors.New("it does not gel within 60 days")
		}
		return min(si.Days(60), max(si.Scale(p.Gel.Likely, 2), si.Scale(p.PeakAt.Likely, 1.5))), err
	}
	// A film at the colder of the two temperatures is slower than any cup.
	t, err := c.time(min(b.Air, b.Start), c.fresh, max(c.gel, 0.9))
	if err != nil || float64(t) > longTime.high || t < si.Seconds(1) {
		return 0, errors.New("with this E and temperature the resin takes less than a second, or more than 100 days")
	}
	return si.Scale(t, 1.02), nil
}

func cup(r *reader) Answer {
	mass := quantity[si.Mass](r, "mass", bounds{1e-3, 50, false, "between 1 g and 50 kg"})
	vessel, d := r.vessel()
	limits := shopTemp
	if r.has("material") {
		limits = roomTemp
	}
	air := quantity[si.Temp](r, "ambient", limits)
	start := air
	if r.has("start") {
		start = quantity[si.Temp](r, "start", limits)
	}
	l := r.charge()
	v := vessel.Of(d)
	v.Top, v.Side, v.Base = si.Scale(v.Top, l.wall), si.Scale(v.Side, l.wall), si.Scale(v.Base, l.wall)
	if r.has("U") {
		u := quantity[si.HeatTransfer](r, "U", film)
		v.Top, v.Side, v.Base = u, u, u
	}
	if !r.ok() {
		return Answer{}
	}
	if l.gel <= l.fresh {
		r.fail("gel", fmt.Sprintf("must be more than the degree at the start, %s.", num(l.fresh)), "")
		return Answer{}
	}
	end, err := l.follow(cure.Batch{Mass: mass, Vessel: v, Air: air, Start: start, Dose: l.dose})
	if err != nil {
		r.fail(l.key, err.Error()+".", "")
		return Answer{}
	}
	re, spent := l.reaction(l.heat)
	batch := heat.Cup{
		Vessel: v, Mass: mass, Density: l.rho, SpecificHeat: l.c, Reaction: re, Seed: l.solved(l.fresh),
		Air: heat.Steady(air), Start: start, For: end, Tolerance: 0.01,
	}
	got, err := batch.Run(nil)
	if err != nil {
		r.giveUp(l.key, *spent, err)
		return Answer{}
	}
	area, loss, peak := batch.Area(), batch.Loss(), got.Peak
	adiabatic := float64(start) + float64(l.heat)/float64(l.c)*(1-max(0, l.fresh))
	a := Answer{
		Results: Results{
			{Key: "peak_c", Value: peak.Temp.Celsius()}, {Key: "peak_min", Value: peak.Time.Minutes()},
			{Key: "area_cm2", Value: area.M2() * 1e4}, {Key: "depth_mm", Value: batch.Depth().MM()},
			{Key: "adiabatic_c", Value: si.Temp(adiabatic).Celsius()}, {Key: "energy_error_percent", Value: 100 * got.Energy.Error},
		},
		Working: []working.Line{
			{Name: "surface of the batch", Formula: surface(vessel.Name), Numbers: fmt.Sprintf("d = %s mm, V = %s ml", num(d.MM()), num(l.rho.Fill(mass).ML())), Value: area.M2() * 1e4, Unit: "cm²", Source: working.Geometry},
			{Name: "hottest", Formula: "m c dT/dt = m H da/dt - U A (T - Ta), " + l.formula, Numbers: fmt.Sprintf("U A = %s W/K, %s, %s steps", num(loss), l.numbers, strconv.Itoa(got.Steps)), Value: peak.Temp.Celsius(), Unit: "°C", Source: lumped + "; " + l.source, Holds: "one temperature throughout: the middle of a deep cup is hotter"},
		},
	}
	if l.dose > 0 {
		a.Results = append(a.Results, Result{Key: "dose_percent", Value: l.dose.Percent()})
	}
	if loss > 0 {
		tau := float64(mass) * float64(l.c) / loss
		a.Results = append(a.Results, Result{Key: "cooling_min", Value: tau / 60})
		a.Working = append(a.Working, working.Line{Name: "time constant of cooling", Formula: "τ = m c/(U A)", Numbers: fmt.Sprintf("%s kg × %s J/(kg K) / %s W/K", num(mass.Kg()), num(float64(l.c)), num(loss)), Value: tau / 60, Unit: "min", Source: "Newton's law of cooling"})
	}
	if t, ok := got.Reached(l.solved(l.gel)); ok {
		a.Results = append(Results{{Key: "gel_min", Value: t.Minutes()}}, a.Results...)
		a.Working = append(a.Working, working.Line{Name: "gels", Formula: "first a = agel", Numbers: "a = " + num(l.gel), Value: t.Minutes(), Unit: "min", Source: lumped + "; " + l.source, Holds: "below vitrification"})
	} else {
		a.Results = append(Results{{Key: "gel_words", Text: fmt.Sprintf("not within the %s h followed", num(end.Hours()))}}, a.Results...)
	}
	if t, ok := got.Risen(si.Kelvins(25)); ok {
		a.Results = append(a.Results, Result{Key: "rise25_min", Value: t.Minutes()})
		a.Working = append(a.Working, working.Line{Name: "has warmed by 25 K", Formula: "first T = T0 + 25 K", Value: t.Minutes(), Unit: "min", Source: lumped, Holds: "a criterion that some sheets state a pot life by"})
	} else {
		a.Results = append(a.Results, Result{Key: "rise25_words", Text: "never: it does not warm by 25 K"})
	}
	a.warn("Working time is at most the time to gel, and less: stop while it still wets out. The data sheet of the material in hand decides.")
	a.edge(start, peak.Temp, adiabatic, l.energy)
	a.hot(peak.Temp, peak.Temp)
	a.batch(vessel, d, mass, l.rho)
	if l.fit != nil {
		a.hull(l.entry, air)
		if l.dose > 0 {
			a.warn(peroxideWarning)
		}
		a.fitLines(*l.fit)
	}
	return a
}

// surface is the formula of a batch's surface in a vessel.
func surface(vessel string) string {
	if vessel == "tray" || vessel == "metal tray" {
		return "A = 2 d (4/5 d) + 2 (d + 4/5 d) V/(d 4/5 d), V = m/ρ"
	}
	return "A = 2 π d²/4 + π d V/(π d²/4), V = m/ρ"
}

// edge warns of a batch that lies between staying cool and running away.
func (a *Answer) edge(start, peak si.Temp, adiabatic float64, e si.MolarEnergy) {
	rise, full := float64(peak.Sub(start)), adiabatic-float64(start)
	runaway := kinetics.R * float64(start) * float64(start) / math.Max(1, float64(e))
	if rise > runaway && rise < 0.6*full {
		a.warn("This batch lies near the edge between staying cool and running away: a little more mass, warmth or foam round it changes gel and peak a lot.")
	}
}
