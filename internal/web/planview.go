package web

import (
	"cmp"
	"html/template"

	"scarfwright/repair"
	"scarfwright/repair/caution"
	"scarfwright/repair/check"
	"scarfwright/repair/survey"
	"scarfwright/repair/working"
)

// planView is the page of one plan.
type planView struct {
	Title       string
	Name        string // in the address
	Where       string
	Query       string // of the plan shown, "" for the job's own choices
	Block       []field
	Event, Note string
	Mark, State string
	Released    bool
	Referrals   []survey.Referral
	NotPlanned  string
	Stops       []check.Verdict
	Watches     []check.Verdict
	Fine        []check.Verdict
	Joints      []jointView
	Limits      []string
	Assumed     []string
	Headline    []field

	Section, Plan, Options picture
	SectionLink, PlanLink  string
	Otherwise              otherwise
	Sides, Orders          []choice
	Design                 *designView
	Mixing                 *mixingView
	Curing                 *curingView
	Windows                []windowView
	Steps                  []stepView
	Finish                 finishView
	Coats                  *gridView
	Estimate               estimateView
	Papers                 []paperView
	MaySave                bool
	SaveName               string
	Grinding               []caution.Caution
}

// choice is one option of a choice.
type choice struct {
	Value string
	Taken bool
}

// picture is a drawing in the page; Missing says why there is none.
type picture struct {
	SVG     template.HTML
	Missing string
}

// worked is a folded list of worked lines.
type worked struct {
	Title string
	Lines []working.Line
}

func (s *Site) planView(e entry, o otherwise, r repair.Result) planView {
	u := unitsOf(r)
	v := planView{
		Name: e.Name, Where: string(e.Where), Query: o.query(), Otherwise: o,
		Title: r.Job.Job.Number + " " + r.Job.Job.Title,
		Block: titleBlock(r), Event: r.Job.Job.Event, Note: r.Job.Job.Note,
		Released: r.Released(), Referrals: r.Survey.Referrals, NotPlanned: r.Survey.NotPlanned,
		Limits: r.Survey.Limitations, Assumed: r.Assumptions,
		Grinding: caution.For(caution.Grinding),
		MaySave:  s.o.Data != nil, SaveName: slug(cmp.Or(r.Job.Job.Number, e.Name) + "-" + cmp.Or(r.Job.Boat.Name, "job")),
	}
	if len(o.Problems) > 0 {
		v.Query = ""
	}
	v.Mark, v.State = standing(r)
	v.Joints = jointsOf(r)
	for _, x := range r.Verdicts {
		switch x.State {
		case check.Stop:
			v.Stops = append(v.Stops, x)
		case check.Watch:
			v.Watches = append(v.Watches, x)
		case check.OK:
			if !r.OfJoint(x) { // those stand in the table of joints
				v.Fine = append(v.Fine, x)
			}
		}
	}
	v.Sides, v.Orders = choices(taperWords, o.Taper, ""), choices(orderWords, o.Order, "")
	if r.Design != nil {
		v.Section, v.Plan, v.Options = sectionOf(r), planOf(r), optionsOf(r)
		v.Design = designOf(u, o, r)
		v.Sides, v.Orders = choices(taperWords, o.Taper, r.Design.Sides), choices(orderWords, o.Order, r.Design.Order)
		if v.Otherwise.Ratio == "" {
			v.Otherwise.Ratio = trimmed(r.Design.Ratio, 2)
		}
	}
	if r.Mixing != nil {
		v.Mixing = mixingOf(r)
	}
	if r.Curing != nil {
		v.Curing = curingOf(u, r)
	}
	v.Headline = headline(u, r)
	v.Windows, v.Steps = windowsOf(r), stepsOf(r)
	v.Finish = finishOf(u, r)
	if r.Released() {
		v.Coats = coatsOf(r)
	}
	v.Estimate = estimateOf(r)
	v.Papers = s.papers(e, v.Query, r)
	for _, p := range v.Papers {
		switch p.Name {
		case "section.svg":
			v.SectionLink = p.Link
		case "plan.svg":
			v.PlanLink = p.Link
		}
	}
	return v
}

func choices(words []string, typed, planned string) []choice {
	var out []choice
	for _, w := range words {
		out = append(out, choice{w, w == cmp.Or(typed, planned)})
	}
	return out
}

// titleBlock holds the fields of the sheet (after ISO 7200:2004).
func titleBlock(r repair.Result) []field {
	j := r.Job
	return []field{
		{"Job", j.Job.Number, false},
		{"Title", j.Job.Title, true},
		{"Boat", cmp.Or(j.Boat.Name, "not named"), false},
		{"Document", "Repair plan", false},
		{"Date of survey", cmp.Or(j.Job.Date, "not given"), false},
		{"Revision", cmp.Or(j.Job.Revision, "not given"), false},
		{"Yard", cmp.Or(j.Job.Yard, "not given"), false},
		{"Measured by", cmp.Or(j.Job.Author, "not given"), false},
		{"Input hash", r.Hash, false},
		{"Catalogue", r.Catalogue, false},
	}
}

// headline is the four or five figures that matter, each with its direction.
func headline(u units, r repair.Result) []field {
	var out []field
	if d := r.Design; d != nil {
		out = append(out,
			field{Label: "Taper all round", Value: u.length(d.Taper) + " (" + ratioText(d.Ratio) + ")"},
			field{Label: "Plies, with cover", Value: trimmed(float64(len(d.Plies)), 0)},
		)
	}
	if m := r.Mixing; m != nil {
		out = append(out, field{Label: "Resin to mix, with losses", Value: grams(m.Mixed.Resin)})
		word := "Hardener"
		if m.Catalysed {
			word = "Catalyst"
		}
		out = append(out, field{Label: word + ", in all", Value: grams(m.Mixed.Second) + " = " + ml(m.Mixed.SecondVolume)})
	}
	if p := r.Finish.Paste; p != nil {
		out = append(out, field{Label: "Paste to mix", Value: grams(p.Mixed)},
			field{Label: "Catalyst for it", Value: grams(p.Catalyst) + " = " + trimmed(p.CatalystVolume.ML(), 2) + " ml"})
	}
	e := r.Estimate
	return append(out,
		field{Label: "Working hours, likely", Value: trimmed(e.HoursTotal.Likely, 1) + " h"},
		field{Label: "Price, likely, without tax", Value: money(e.Currency, e.Total.Likely)})
}
