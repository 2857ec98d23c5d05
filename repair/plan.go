package repair

import (
	"fmt"
	"strings"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/caution"
	"scarfwright/repair/check"
	"scarfwright/repair/design"
	"scarfwright/repair/estimate"
	"scarfwright/repair/finish"
	"scarfwright/repair/job"
	"scarfwright/repair/programme"
	"scarfwright/repair/survey"
)

// Plan plans the repair a description asks for. The description must have come
// through job.Read or passed job.Validate. An error is something that cannot be
// computed, and names the field; what can be computed but should not be done is
// a verdict or a referral in the result.
func Plan(d job.Description, cat catalog.Catalogue) (Result, error) {
	cat, err := cat.Overlay(d.Shelf.Sheets)
	if err != nil {
		return Result{}, fmt.Errorf("shelf.sheets: %w", err)
	}
	r := Result{Job: d, Hash: Hash(d), Catalogue: cat.Version, Caution: caution.General, Survey: survey.Classify(d)}
	resin, err := cat.Resin(d.Shelf.Resin)
	if err != nil {
		return Result{}, fmt.Errorf("shelf.resin: %w", err)
	}
	if r.Survey.Class != survey.Cosmetic && r.Survey.Class != survey.Blisters {
		ds, err := design.Plan(d, r.Survey, cat)
		if err != nil {
			return Result{}, err
		}
		r.Design = &ds
	}

	site := lit(d, chosen(d), resin.HullMax)
	if r.Finish, err = finish.Plan(d, cat, coatedEdge(r.Design), missing(r.Design), d.Site.HullNow); err != nil {
		return Result{}, err
	}
	lay, gel, other, err := windows(r, resin, cat)
	if err != nil {
		return Result{}, err
	}
	at := mixTemp(d, site, lay)
	if r.Design != nil {
		own, err := r.follow(resin, cat, lay, at)
		if err != nil {
			return Result{}, err
		}
		m, table, err := mix(d, *r.Design, resin, r.mixTemps(at), own)
		if err != nil {
			return Result{}, err
		}
		r.Mixing, r.MixTable = &m, &table
	}
	if err := r.coats(cat, at); err != nil {
		return Result{}, err
	}
	if r.Joints, err = r.joints(resin); err != nil {
		return Result{}, err
	}
	r.Programme = programme.Plan(programme.Input{
		Job: d, Resin: resin, Survey: r.Survey, Design: r.Design, Curing: r.Curing, Mixing: r.Mixing, Finish: r.Finish,
		Hours: site, Lay: lay, Gelcoat: gel, Other: other,
	})
	needs, err := needs(d, r, cat)
	if err != nil {
		return Result{}, err
	}
	r.Estimate = estimate.Plan(d, needs, r.Programme.Rates)
	r.Programme.Book(r.Estimate.Hours)
	r.gather(cat, other, lay, gel)
	return r, nil
}

// Hash is the hash of what is planned: units and paper do not change it.
func Hash(d job.Description) string {
	d.Choices.Units, d.Choices.Paper = "", ""
	return job.Hash(d)
}

// gather collects what every stage found into one list of each sort.
func (r *Result) gather(cat catalog.Catalogue, other []programme.Windows, windows ...programme.Windows) {
	r.Verdicts = append(r.Verdicts, r.Survey.Verdicts...)
	if d := r.Design; d != nil {
		r.Verdicts = append(r.Verdicts, d.Verdicts...)
		r.Assumptions = append(r.Assumptions, d.Assumptions...)
		r.Working = append(r.Working, d.Working...)
	}
	if m := r.Mixing; m != nil {
		r.Verdicts = append(r.Verdicts, m.Verdicts()...)
		r.Working = append(r.Working, m.Working...)
	}
	if c := r.Curing; c != nil {
		r.Verdicts = append(r.Verdicts, c.Verdicts...)
		r.Assumptions = append(r.Assumptions, c.Notes...)
	}
	for _, w := range windows {
		if w.What != "" && len(r.Programme.Hours) > 0 {
			r.Verdicts = append(r.Verdicts, windowVerdict(w, other, r.Job))
		}
	}
	for _, j := range r.Joints {
		r.Verdicts = append(r.Verdicts, j.Check())
	}
	r.Verdicts = append(r.Verdicts, r.Finish.Verdicts...)
	r.Working = append(r.Working, r.Finish.Working...)
	r.Working = append(r.Working, r.Estimate.Working...)
	r.Assumptions = append(r.Assumptions, r.Estimate.Assumptions...)
	r.Assumptions = append(r.Assumptions, unheard(r.Job)...)
	for _, w := range cat.Warnings {
		r.Assumptions = append(r.Assumptions, "Your own sheet: "+w)
	}
	seen := map[string]bool{}
	for _, s := range r.Programme.Steps {
		for _, c := range s.Cautions {
			if !seen[c.Text] {
				seen[c.Text] = true
				r.Cautions = append(r.Cautions, c)
			}
		}
	}
}

// unheard says which answers had no effect, and what stood in for one not given.
func unheard(d job.Description) []string {
	var out []string
	if len(d.Site.Days) == 0 && !d.Site.HullNow.Given() {
		out = append(out, fmt.Sprintf("Neither days nor the hull's temperature are given (site): pots are reckoned at %.0f °C. Measure, and plan again.", mixTempDefault.Celsius()))
	}
	switch {
	case d.Choices.Heat == tent && d.Site.Warmer == 0:
		out = append(out, "choices.heat is tent, but site.warmer does not say how much it lifts the air: it changes nothing.")
	case d.Choices.Heat == lamp && d.Site.Lamp == 0:
		out = append(out, "choices.heat is lamp, but site.lamp does not say how much it warms the face: it changes nothing.")
	}
	if strings.HasPrefix(d.Shelf.Resin, "epoxy") && d.Choices.Dose > 0 && d.Damage.Depth != "gelcoat" {
		out = append(out, "choices.catalyst changes nothing for an epoxy, whose hardener is in a fixed ratio.")
	}
	if d.Shelf.Gelcoat == "" && d.Choices.Finish != "none" && d.Choices.Finish != "paint" {
		out = append(out, "No gelcoat on the shelf (shelf.gelcoat): no last coat is planned or priced.")
	}
	return out
}

// windows finds the hours for laminating and for gelcoat, with the heat that
// was chosen, and (other) with each that was not, so that they compare.
func windows(r Result, resin catalog.Resin, cat catalog.Catalogue) (lay, gel programme.Windows, other []programme.Windows, err error) {
	warmed := chosen(r.Job)
	find := func(what string, h heating, low, high si.Temp) programme.Windows {
		return programme.Find(what, lit(r.Job, h, high), low, high)
	}
	if len(r.Job.Site.Days) == 0 {
		return lay, gel, nil, nil
	}
	if r.Design != nil {
		lay = find("laminating with "+resin.Name, warmed, resin.HullMin, resin.HullMax)
	}
	if r.Finish.Coat != nil || r.Finish.Paste != nil {
		g, err := cat.Gelcoat(finish.PasteClass(r.Job))
		if err != nil {
			return lay, gel, nil, fmt.Errorf("shelf.gelcoat: %w", err)
		}
		gel = find("gelcoat", warmed, g.HullMin, g.HullMax)
	}
	for _, h := range given(r.Job) {
		if h.name == warmed.name {
			continue
		}
		for _, w := range []programme.Windows{lay, gel} {
			if w.What != "" {
				other = append(other, find(w.What+", "+h.where(), h, w.Low, w.High))
			}
		}
	}
	return lay, gel, other, nil
}

// windowVerdict judges the hours open for a material; other are those with the heat
// that was not chosen.
func windowVerdict(w programme.Windows, other []programme.Windows, d job.Description) check.Verdict {
	v := check.Verdict{
		What: "hours for " + w.What, Value: w.Text(), State: check.OK, Source: "the material's sheet; 3 K over the dew point, coating practice (ISO 8502-4 guidance)",
		Limit: fmt.Sprintf("hull %s and %.0f K over the dew point", w.Band(d.Choices.System()), programme.DewMargin.Kelvins()),
		Why:   "From the days given, by a simple rule for the hull's temperature: measure the hull before mixing.",
	}
	if daily := w.Daily(); daily != "" {
		v.Why = strings.ToUpper(daily[:1]) + daily[1:] + ". " + v.Why
	}
	for _, x := range other {
		if x.What == w.What+", "+(heating{name: none}).where() && len(x.Open) == 0 && len(w.Open) > 0 {
			v.State = check.Watch
			v.Why = fmt.Sprintf("Never without heat: %s. If the heat fails, stop. ", x.Reason) + v.Why
		}
	}
	if len(w.Open) == 0 {
		v.State = check.Stop
		if w.Short > 0 {
			v.Value = fmt.Sprintf("none: the warmest hour is %.1f K short", w.Short.Kelvins())
		}
		v.Why = fmt.Sprintf("No hour of the days given is open: %s. Heat the hull (tent, indirect heater, lamp) and plan again, wait, or change material. More catalyst does not stand in for warmth.", w.Reason)
		if w.TooHot {
			v.Why = fmt.Sprintf("No hour of the days given is open: %s. Shade and cool the hull, work at night, wait, or change to a slower material.", w.Reason)
		} else {
			for _, h := range given(d) {
				if h.warms() && h.name != chosen(d).name {
					v.Why += fmt.Sprintf(" %s: set choices.heat to %s.", h.does(d.Choices.System()), h.name)
				}
			}
		}
	}
	return v
}

// mixTempDefault stands in where neither days nor a hull temperature are given.
var mixTempDefault = si.Celsius(20)

// mixTemps is the temperature of the air each session's pots are reckoned at.
func (r *Result) mixTemps(at si.Temp) func(session int) si.Temp {
	return func(k int) si.Temp {
		if r.Curing == nil || k > len(r.Curing.Sessions) {
			return at
		}
		s := r.Curing.Sessions[k-1]
		return mixTempOf(r.Job, s.Day, s.Hour, at)
	}
}

// mixTemp is the temperature of the air that the first pots are reckoned at: the
// warmest while the first session is laid; else the hull as measured; else the
// warmest hour there is, so that the verdict speaks of the right cold.
func mixTemp(d job.Description, site [][24]programme.Hour, lay programme.Windows) si.Temp {
	switch {
	case len(lay.Open) > 0:
		first := starts(lay.Open, len(site))[0]
		return mixTempOf(d, 1+first/24, float64(first%24), 0)
	case d.Site.HullNow.Given():
		return d.Site.HullNow
	case len(site) > 0:
		var t si.Temp
		for i := range site {
			t = max(t, programme.Warmest(site, programme.Window{Day: i + 1, From: 0, To: 24}))
		}
		return t
	}
	return mixTempDefault
}

// coatedEdge is the outline over which the surface is renewed.
func coatedEdge(d *design.Result) geom.Shape {
	switch {
	case d == nil:
		return nil
	case d.Sides == "inside" && d.FarSide != nil:
		return d.FarSide.Outline // the outer face, away from the taper
	case d.Sides == "inside":
		return d.CutOut
	case len(d.CoverEdge) > 0:
		return d.CoverEdge
	}
	return d.Edge
}

func missing(d *design.Result) si.Length {
	if d == nil {
		return 0
	}
	return d.Filler
}
