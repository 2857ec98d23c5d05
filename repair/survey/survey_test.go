package survey_test

import (
	"math"
	"strings"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/check"
	"scarfwright/repair/job"
	"scarfwright/repair/survey"
)

// sound is a description that no rule refers on: a hole in a private boat's
// single skin, both faces sighted, in the middle of its bay.
func sound() job.Description {
	return job.Description{
		Format: 1, Job: job.Header{Number: "T", Title: "t"},
		Boat:     job.Boat{Use: "private", Waterline: si.M(9), Speed: si.Knots(6), Keel: "bolted fin", Grounded: "no"},
		Panel:    job.Panel{Place: "bottom", Long: si.MM(900), Short: si.MM(600)},
		Laminate: job.Laminate{Fibre: "glass", Known: "edge", Plies: []job.PlyRef{{Class: "csm450"}}},
		Damage: job.Damage{Kind: "hole", Depth: "through", Access: "both",
			Dead: &job.Outline{Ellipse: []si.Length{si.MM(200), si.MM(150)}}},
		Shelf: job.Shelf{Resin: "polyester-laminating"},
	}
}

func released(s survey.Result) bool { return repair.Result{Survey: s}.Released() }

func TestTheSoundJobIsNotReferred(t *testing.T) {
	r := survey.Classify(sound())
	if r.Referred() || !released(r) || len(r.Limitations) > 0 || check.Worst(r.Verdicts) != check.OK {
		t.Errorf("got %+v, want nothing against it", r)
	}
}

// Every rule is switched on by itself; what differs by a hair is not referred.
func TestReferOnRules(t *testing.T) {
	planing := func(d *job.Description) { d.Boat.Waterline, d.Boat.Speed = si.M(9), si.Knots(15) } // 15/√9 = 5
	cored := func(d *job.Description) { d.Laminate.Core = &job.Core{Class: "foam80", Thickness: si.MM(12)} }
	for _, row := range []struct {
		what   string
		change func(*job.Description)
		rule   string // empty: not referred
	}{
		{"let for hire", func(d *job.Description) { d.Boat.Use = "hire" }, "commercial or passenger craft"},
		{"carries passengers", func(d *job.Description) { d.Boat.Use = "passenger" }, "commercial or passenger craft"},
		{"works for money", func(d *job.Description) { d.Boat.Use = "commercial" }, "commercial or passenger craft"},
		{"the damage touches a chainplate", func(d *job.Description) { d.Panel.LoadPaths = []string{"chainplate"} }, "load path"},
		{"fibre not identified", func(d *job.Description) { d.Laminate.Fibre = "unknown" }, "unknown laminate"},
		{"carbon", func(d *job.Description) { d.Laminate.Fibre = "carbon" }, "laminate other than glass"},
		{"glass with aramid", func(d *job.Description) { d.Laminate.Fibre = "mixed" }, "laminate other than glass"},
		{"neither plies nor thickness", func(d *job.Description) { d.Laminate.Plies = nil }, "unknown laminate"},
		{"thickness alone is enough (docs/decisions/0012)", func(d *job.Description) {
			d.Laminate.Plies, d.Laminate.Thickness = nil, job.Range{Low: si.MM(5), High: si.MM(6)}
		}, ""},
		{"a bolted keel touched the ground", func(d *job.Description) { d.Boat.Grounded = "yes" }, "grounding with a bolted fin keel"},
		{"a bulb keel touched the ground", func(d *job.Description) { d.Boat.Grounded, d.Boat.Keel = "yes", "bulb" }, "grounding with a bulb keel"},
		{"a long keel touched the ground", func(d *job.Description) { d.Boat.Grounded, d.Boat.Keel = "yes", "long" }, ""},
		{"a bolted keel, grounding denied", func(d *job.Description) { d.Boat.Grounded = "denied" }, ""},
		{"fire", func(d *job.Description) { d.Damage.Kind = "fire" }, "heat damage"},
		{"an earlier repair failed", func(d *job.Description) { d.Damage.Repeat = "failed" }, "failed earlier repair"},
		{"an earlier repair held", func(d *job.Description) { d.Damage.Repeat = "yes" }, ""},
		{"a stringer is cut", func(d *job.Description) { d.Damage.Crosses = []string{"stringer"} }, "stiffener damaged"},
		{"cored bottom, planing", func(d *job.Description) { planing(d); cored(d); d.Damage.Depth = "skin and core" }, "cored bottom of a planing craft"},
		{"cored bottom, displacement", func(d *job.Description) { cored(d); d.Damage.Depth = "skin and core" }, ""},
		{"cored deck, planing", func(d *job.Description) {
			planing(d)
			cored(d)
			d.Damage.Depth = "skin and core"
			d.Panel.Place = "deck"
		}, ""},
		{"solid bottom, planing", planing, ""},
		{"longer than the bay", func(d *job.Description) { d.Damage.Dead.Ellipse[0] = si.MM(901) }, "more than one bay"},
		{"higher than the bay", func(d *job.Description) { d.Damage.Dead.Ellipse[1] = si.MM(601) }, "more than one bay"},
		{"longer than the bay with its margin", func(d *job.Description) { d.Damage.Dead.Ellipse[0], d.Damage.Margin = si.MM(880), si.MM(11) }, "more than one bay"},
		{"as long as the bay", func(d *job.Description) { d.Damage.Dead.Ellipse[0] = si.MM(900) }, ""},
	} {
		d := sound()
		row.change(&d)
		r := survey.Classify(d)
		var rules []string
		for _, ref := range r.Referrals {
			rules = append(rules, ref.Rule)
			if ref.To == "" || ref.Found == "" || ref.Source == "" {
				t.Errorf("%s: referral without who, what or source: %+v", row.what, ref)
			}
		}
		if got := strings.Join(rules, "; "); got != row.rule {
			t.Errorf("%s: got referrals %q, want %q", row.what, got, row.rule)
		}
		if want := row.rule == ""; r.Referred() == want || released(r) != want {
			t.Errorf("%s: referred %v, released %v; want %v, %v", row.what, r.Referred(), released(r), !want, want)
		}
	}
}

func TestClasses(t *testing.T) {
	for _, row := range []struct {
		kind, depth string
		want        survey.Class
	}{
		{"scratch", "gelcoat", survey.Cosmetic},
		{"crack", "gelcoat", survey.Cosmetic},
		{"scratch", "through", survey.FullDepth}, // called a scratch, it still lets the water in
		{"scratch", "partial", survey.PartialDepth},
		{"gouge", "partial", survey.PartialDepth},
		{"hole", "through", survey.FullDepth},
		{"wet core", "skin and core", survey.SkinAndCore},
		{"blisters", "partial", survey.Blisters},
		{"blisters", "gelcoat", survey.Blisters},
	} {
		d := sound()
		d.Damage.Kind, d.Damage.Depth = row.kind, row.depth
		if got := survey.Classify(d).Class; got != row.want {
			t.Errorf("%s, %s: got %q, want %q", row.kind, row.depth, got, row.want)
		}
	}
}

// What this version cannot plan gets no job card, though nobody is to be asked.
func TestWhatIsNotPlannedIsNotReleased(t *testing.T) {
	for what, change := range map[string]func(*job.Description){
		"blisters":                  func(d *job.Description) { d.Damage.Kind = "blisters" },
		"a hole through a sandwich": func(d *job.Description) { d.Laminate.Core = &job.Core{Class: "foam80", Thickness: si.MM(12)} },
	} {
		d := sound()
		change(&d)
		if r := survey.Classify(d); r.NotPlanned == "" || released(r) {
			t.Errorf("%s: got %q, released %v; want a reason and no release", what, r.NotPlanned, released(r))
		}
	}
}

func TestLimitations(t *testing.T) {
	for _, row := range []struct {
		what   string
		change func(*job.Description)
		want   string // a part of the only limitation
	}{
		{"reached from outside", func(d *job.Description) { d.Damage.Access = "outside" }, "Inner face not sighted"},
		{"reached from inside", func(d *job.Description) { d.Damage.Access = "inside" }, "Outer face not sighted"},
		{"lay-up guessed", func(d *job.Description) { d.Laminate.Known = "guess" }, "lay-up is assumed"},
		{"lay-up not said to be known", func(d *job.Description) { d.Laminate.Known = "" }, "lay-up is assumed"},
		{"lay-up of a sister hull", func(d *job.Description) { d.Laminate.Known = "sister hull" }, "from a sister hull"},
		{"lay-up from a drawing", func(d *job.Description) { d.Laminate.Known = "drawing" }, "from a drawing"},
		{"grounding denied", func(d *job.Description) { d.Boat.Grounded = "denied" }, "Grounding: denied"},
		{"grounding unknown", func(d *job.Description) { d.Boat.Grounded = "unknown" }, "Grounding: unknown"},
		{"not tapped out", func(d *job.Description) { d.Damage.Seen, d.Damage.Dead = d.Damage.Dead, nil }, "No tapped-out outline"},
	} {
		d := sound()
		row.change(&d)
		got := survey.Classify(d).Limitations
		if len(got) != 1 || !strings.Contains(got[0], row.want) {
			t.Errorf("%s: got %q, want one limitation with %q", row.what, got, row.want)
		}
	}
	d := sound()
	d.Damage.Kind, d.Damage.Depth, d.Damage.Access, d.Damage.Dead, d.Laminate.Known = "scratch", "gelcoat", "outside", nil, ""
	if got := survey.Classify(d).Limitations; len(got) != 0 {
		t.Errorf("a scratch: got %q, want none: the laminate is not in question", got)
	}
}

// One third of a span is where the watch begins (common practice, no source).
func TestAThirdOfTheSpanIsAWatch(t *testing.T) {
	for _, row := range []struct {
		high si.Length
		want check.State
	}{{si.MM(199), check.OK}, {si.MM(200), check.OK}, {si.MM(201), check.Watch}} {
		d := sound()
		d.Damage.Dead.Ellipse[1] = row.high
		if got := check.Worst(survey.Classify(d).Verdicts); got != row.want {
			t.Errorf("%v of 600 mm: got %s, want %s", row.high, got, row.want)
		}
	}
}

func TestWidthsOfTheFourOutlines(t *testing.T) {
	for what, o := range map[string]job.Outline{
		"ellipse":   {Ellipse: []si.Length{si.MM(300), si.MM(200)}},
		"rectangle": {Rectangle: []si.Length{si.MM(300), si.MM(200)}},
		"points":    {Points: []job.Point{{X: si.MM(-100)}, {X: si.MM(200), Y: si.MM(50)}, {Y: si.MM(200)}}},
	} {
		if w, h := survey.Widths(o); math.Abs(w.MM()-300)+math.Abs(h.MM()-200) > 1e-9 {
			t.Errorf("%s: got %v by %v, want 300 by 200 mm", what, w, h)
		}
	}
	if w, h := survey.Widths(job.Outline{Circle: si.MM(80)}); w != si.MM(80) || h != w {
		t.Errorf("circle: got %v by %v, want 80 mm", w, h)
	}
	if w, h := survey.Widths(job.Outline{}); w != 0 || h != 0 {
		t.Errorf("nothing: got %v by %v", w, h)
	}
}
