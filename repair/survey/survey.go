// Package survey reads the description as a surveyor would: what class of
// damage it is, and whether it may be repaired here at all.
//
// The refer-on rules are hard stops. A referral does not stop the arithmetic
// (the amounts and the record are still wanted by whoever decides), but it
// stops the job card: in its place a referral sheet is printed that says what
// is known, what is not, and who must decide.
package survey

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair/check"
	"scarfwright/repair/job"
	"scarfwright/repair/working"
)

// Class is the sort of repair the damage asks for.
type Class string

// The classes of damage.
const (
	Cosmetic     Class = "cosmetic"      // the laminate is whole
	PartialDepth Class = "partial depth" // some plies are cut
	FullDepth    Class = "full depth"    // the laminate is cut through
	SkinAndCore  Class = "skin and core" // one skin of a sandwich and its core
	Blisters     Class = "blisters"      // a crop of blisters
)

// Referral is one hard stop.
type Referral struct {
	Rule   string `json:"rule"`   // short name of the rule
	Found  string `json:"found"`  // what in the description set it off
	To     string `json:"to"`     // who must decide
	Source string `json:"source"` //
}

// Result is what the survey stage found.
type Result struct {
	Class       Class           `json:"class"`
	Referrals   []Referral      `json:"referrals"`
	Limitations []string        `json:"limitations"` // what was not, or could not be, seen
	Verdicts    []check.Verdict `json:"verdicts"`
	NotPlanned  string          `json:"not_planned,omitempty"`
}

// Referred reports whether any hard stop applies.
func (r Result) Referred() bool { return len(r.Referrals) > 0 }

// The people a referral goes to.
const (
	surveyor  = "a surveyor, before any cutting"
	architect = "a surveyor and a naval architect or the builder's schedule"
	authority = "the authority that inspects the boat, before any work"
)

// Classify returns the class of damage, the hard stops and the limitations of a
// description that has passed job.Validate.
func Classify(d job.Description) Result {
	r := Result{Class: class(d)}
	r.Referrals = referrals(d)
	r.Limitations = limitations(d)
	r.Verdicts = append(placeVerdicts(d), sizeVerdict(d)...)
	switch {
	case r.Class == Blisters:
		r.NotPlanned = "A blister crop is recorded but not planned by this version: it neither sizes the peel nor prices the drying."
	case r.Class == FullDepth && d.Laminate.Core != nil:
		r.NotPlanned = "A hole through both skins of a sandwich is recorded but not planned by this version: the amounts shown are those of the outer skin alone."
	}
	return r
}

func class(d job.Description) Class {
	switch {
	case d.Damage.Kind == "blisters":
		return Blisters
	case d.Damage.Depth == "gelcoat":
		return Cosmetic
	case d.Damage.Depth == "skin and core":
		return SkinAndCore
	case d.Damage.Depth == "partial":
		return PartialDepth
	default:
		return FullDepth
	}
}

func referrals(d job.Description) []Referral {
	var out []Referral
	add := func(rule, found, to string) {
		out = append(out, Referral{Rule: rule, Found: found, To: to, Source: working.CommonPractice})
	}
	if d.Boat.Use != "private" {
		add("commercial or passenger craft", "use: "+d.Boat.Use, authority)
	}
	for _, p := range d.Panel.LoadPaths {
		add("load path", "the damage touches: "+p, architect)
	}
	for _, what := range neighbours(d.Panel) {
		add("load path beside the panel", what, architect)
	}
	if d.Panel.Place == "transom" && d.Panel.Structural != "no" {
		add("transom", "place: transom, and not said to be out of the motor's load path (panel.structural: no)", architect)
	}
	switch d.Laminate.Fibre {
	case "glass":
	case "unknown":
		add("unknown laminate", "the fibre has not been identified", surveyor)
	default:
		add("laminate other than glass", "fibre: "+d.Laminate.Fibre, architect)
	}
	if len(d.Laminate.Plies) == 0 && d.Laminate.Thickness.High == 0 && class(d) != Cosmetic && class(d) != Blisters {
		add("unknown laminate", "neither plies nor thickness are known", surveyor)
	}
	if hung := d.Boat.Keel == "bolted fin" || d.Boat.Keel == "bulb"; hung && d.Boat.Grounded != "no" && d.Boat.Grounded != "denied" {
		add("grounding with a "+d.Boat.Keel+" keel", "grounded: "+cmp.Or(d.Boat.Grounded, "not answered"), architect)
	}
	if d.Damage.Kind == "fire" {
		add("heat damage", "damage: fire", architect)
	}
	if d.Damage.Repeat == "failed" {
		add("failed earlier repair", "previous_repair: failed", surveyor)
	}
	if len(d.Damage.Crosses) > 0 {
		add("stiffener damaged", "the damage crosses: "+strings.Join(d.Damage.Crosses, ", "), surveyor)
	}
	unsure := d.Boat.Waterline == 0 || d.Boat.Speed == 0 // a hard stop errs on its own side
	planing := unsure || d.Boat.Waterline > 0 && d.Boat.Speed.Knots()/math.Sqrt(d.Boat.Waterline.M()) >= 5
	if d.Laminate.Core != nil && d.Panel.Place == "bottom" && planing {
		add("cored bottom of a planing craft", fmt.Sprintf("speed %.0f kn on a waterline of %.1f m", d.Boat.Speed.Knots(), d.Boat.Waterline.M()), architect)
	}
	out = append(out, sizeReferral(d)...)
	return out
}

// loadPathWords are what an edge or a feature of the panel may be called that
// carries more than the skin's own load. They are looked for inside the text, so
// that "engine bed, port" is found.
var loadPathWords = []string{
	"keel", "rudder", "skeg", "chainplate", "chain plate", "mast", "engine", "motor", "shaft", "strut",
	"sterndrive", "stern drive", "water jet", "waterjet", "foil", "hull-deck",
}

// neighbours lists the panel's edges and features that are load paths.
func neighbours(p job.Panel) []string {
	var out []string
	look := func(where, what string) {
		for _, w := range loadPathWords {
			if strings.Contains(strings.ToLower(what), w) {
				out = append(out, where+": "+what)
				return
			}
		}
	}
	look("fore edge", p.Edges.Fore)
	look("aft edge", p.Edges.Aft)
	look("upper edge", p.Edges.Upper)
	look("lower edge", p.Edges.Lower)
	for _, f := range p.Features {
		look("feature", f.What)
	}
	return out
}

// placeVerdicts are what the boat's place and story ask for before work begins.
func placeVerdicts(d job.Description) []check.Verdict {
	var out []check.Verdict
	if afloat := d.Site.Place == "afloat" || d.Site.Place == "pontoon"; afloat && d.Panel.Waterline > 0 && d.Panel.Place != "superstructure" && d.Panel.Place != "deck" {
		out = append(out, check.Verdict{
			What: "boat afloat, damage below the waterline", State: check.Stop, Value: "site: " + d.Site.Place, Limit: "ashore", Source: working.CommonPractice,
			Why: "Nothing below the waterline is opened afloat. Haul the boat out, let her drain and dry, and plan again with the place ashore.",
		})
	}
	if d.Boat.Grounded == "denied" && (d.Boat.Keel == "bolted fin" || d.Boat.Keel == "bulb") {
		out = append(out, check.Verdict{
			What: "grounding denied, " + d.Boat.Keel + " keel", State: check.Watch, Value: "grounded: denied", Limit: "no", Source: working.CommonPractice,
			Why: "Look at the keel's root, its bolts and the floors all the same, outside and inside, before the first cut. Any crack, weep or movement there: stop and refer on.",
		})
	}
	return out
}

// largestShare is the part of either span a hole may take before a second pair
// of eyes is asked for: one third, common practice, no source. It is a watch and
// not a stop inside one bay (docs/decisions/0010).
const largestShare = 1.0 / 3

// cut returns the widths of the hole as it will be cut.
func cut(d job.Description) (w, h si.Length, ok bool) {
	o := d.Damage.Dead
	if o == nil {
		o = d.Damage.Seen
	}
	if o == nil || class(d) == Cosmetic || class(d) == Blisters {
		return 0, 0, false
	}
	w, h = Widths(*o)
	return w + 2*d.Damage.Margin, h + 2*d.Damage.Margin, true
}

// sizeReferral stops a hole that is longer than the bay it is in.
func sizeReferral(d job.Description) []Referral {
	w, h, ok := cut(d)
	if !ok || w <= d.Panel.Long && h <= d.Panel.Short {
		return nil
	}
	return []Referral{{
		Rule: "more than one bay", To: architect, Source: working.CommonPractice,
		Found: fmt.Sprintf("cut-out %.0f × %.0f mm in a panel of %.0f × %.0f mm", w.MM(), h.MM(), d.Panel.Long.MM(), d.Panel.Short.MM()),
	}}
}

func sizeVerdict(d job.Description) []check.Verdict {
	w, h, ok := cut(d)
	if !ok {
		return nil
	}
	share := max(float64(w)/float64(d.Panel.Long), float64(h)/float64(d.Panel.Short))
	v := check.Verdict{
		What: "share of the panel's span that is cut", Source: working.CommonPractice,
		Value: fmt.Sprintf("%.0f %%", 100*share), Limit: fmt.Sprintf("%.0f %%", 100*largestShare),
		State: check.OK, Why: "The panel keeps most of its span beside the hole while the repair is made.",
	}
	const hair = 1e-9 // 200 of 600 mm are a third
	if share > largestShare+hair {
		v.State = check.Watch
		v.Why = "Much of the span is gone while the hole is open: support the shape from inside or outside, and have the lead or the surveyor sign hold point A."
	}
	return []check.Verdict{v}
}

// Widths returns the full widths of an outline along x and y.
func Widths(o job.Outline) (w, h si.Length) {
	switch {
	case len(o.Ellipse) == 2:
		return o.Ellipse[0], o.Ellipse[1]
	case len(o.Rectangle) == 2:
		return o.Rectangle[0], o.Rectangle[1]
	case o.Circle > 0:
		return o.Circle, o.Circle
	case len(o.Points) > 0:
		lo, hi := o.Points[0], o.Points[0]
		for _, p := range o.Points {
			lo.X, lo.Y = min(lo.X, p.X), min(lo.Y, p.Y)
			hi.X, hi.Y = max(hi.X, p.X), max(hi.Y, p.Y)
		}
		return hi.X - lo.X, hi.Y - lo.Y
	}
	return 0, 0
}

func limitations(d job.Description) []string {
	var out []string
	if d.Damage.Access != "both" && class(d) != Cosmetic {
		face := "Inner"
		if d.Damage.Access == "inside" {
			face = "Outer"
		}
		out = append(out, face+" face not sighted: damage, tabbing and bonding behind the panel have not been inspected.")
	}
	switch known := d.Laminate.Known; {
	case class(d) == Cosmetic:
	case known == "" || known == "guess":
		out = append(out, "The lay-up is assumed, not found: a plug or a ground edge would settle it.")
	case known == "sister hull" || known == "drawing":
		out = append(out, "The lay-up is taken from a "+d.Laminate.Known+", not from this panel.")
	}
	if d.Boat.Grounded == "denied" || d.Boat.Grounded == "unknown" {
		out = append(out, "Grounding: "+d.Boat.Grounded+". Keel and floors have not been inspected by this survey.")
	}
	if d.Damage.Dead == nil && class(d) != Cosmetic && class(d) != Blisters {
		out = append(out, "No tapped-out outline: the visible outline stands in for it, and hidden damage is to be expected beyond it.")
	}
	return out
}
