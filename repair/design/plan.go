package design

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/job"
	"scarfwright/repair/survey"
	"scarfwright/repair/working"
)

// Ratio limits of the taper this package designs.
const (
	RatioDefault = 12 // the usual smallest ratio for a hand-laid mat and roving hull
	RatioLeast   = 5
	RatioMost    = 50
)

// coverLapDefault is how far the cover ply laps (common practice, no source).
var coverLapDefault = si.MM(25)

// Plan designs the repair of a laminate. It must not be asked for cosmetic
// damage or blisters; survey.Classify tells those apart.
func Plan(d job.Description, s survey.Result, cat catalog.Catalogue) (Result, error) {
	resin, err := cat.Resin(d.Shelf.Resin)
	if err != nil {
		return Result{}, fmt.Errorf("shelf.resin: %w", err)
	}
	m := materials{cat: cat, resin: resin}
	r := Result{
		Ratio: cmp.Or(d.Choices.Ratio, RatioDefault),
		Sides: cmp.Or(d.Choices.Taper, defaultSides(d.Damage.Access)),
		Order: cmp.Or(d.Choices.Order, "smallest first"),
	}
	if r.Sides != "outside" && d.Damage.Access == "outside" || r.Sides != "inside" && d.Damage.Access == "inside" {
		return Result{}, fmt.Errorf("choices.taper: %s cannot be ground with access from %s only", r.Sides, d.Damage.Access)
	}
	if r.Sides == "both" && s.Class != survey.FullDepth {
		return Result{}, fmt.Errorf("choices.taper: both faces are ground only where the hole goes through; this damage is %s", s.Class)
	}
	h, err := cutOut(d.Damage)
	if err != nil {
		return Result{}, err
	}
	r.CutOut, r.Assumptions = h.shape, h.notes
	if err := m.laminates(d, s, &r); err != nil {
		return Result{}, err
	}
	if err := m.shape(d, s, &r); err != nil {
		return Result{}, err
	}
	if err := m.cloth(d, &r); err != nil {
		return Result{}, err
	}
	if err := m.behind(d, s, &r); err != nil {
		return Result{}, err
	}
	r.Verdicts = append(r.Verdicts, m.bonding(d)...)
	r.Verdicts = append(r.Verdicts, verdicts(d, r)...)
	r.Working = append(r.Working, lines(r)...)
	return r, nil
}

func defaultSides(access string) string {
	if access == "inside" {
		return "inside"
	}
	return "outside"
}

// laminates settles the original, the depth to be rebuilt, and the ply list.
func (m materials) laminates(d job.Description, s survey.Result, r *Result) error {
	lam := d.Laminate
	if s.Class == survey.SkinAndCore && r.Sides == "inside" {
		if lam.Plies = lam.Inner; len(lam.Plies) == 0 {
			return fmt.Errorf("laminate.inner: the inner skin is to be repaired, so its plies are needed")
		}
	}
	orig, lowEI, highEI, err := m.original(lam)
	if err != nil {
		return err
	}
	r.Original = orig
	r.skin = s.Class == survey.SkinAndCore
	t := target{sides: r.Sides, order: r.Order, cut: orig.Layers, ei: orig.EI, low: lowEI, high: highEI, membrane: s.Class == survey.SkinAndCore}
	r.Depth = orig.Thickness
	if s.Class == survey.PartialDepth {
		if d.Damage.Deep >= orig.Thickness {
			return fmt.Errorf("damage.deep: %.1f mm is as deep as the laminate, %.1f mm: give depth as \"through\"", d.Damage.Deep.MM(), orig.Thickness.MM())
		}
		t.cut, t.whole = split(orig.Layers, r.Sides, d.Damage.Deep)
		t.inside = r.Sides == "inside"
		if r.Depth = max(d.Damage.Deep, thickness(t.cut)); len(t.cut) == 0 {
			return fmt.Errorf("damage.deep: %.2f mm hardly scratches the first ply: treat it as surface damage (depth: gelcoat)", d.Damage.Deep.MM())
		}
	}
	if t.membrane {
		ea := 0.0
		for _, l := range t.cut {
			ea += float64(l.Modulus) * float64(l.Thickness)
		}
		t.ei, t.low, t.high = ea, ea, ea
		if orig.Assumed {
			mat, roving := m.spread()
			t.low, t.high = float64(mat)*float64(orig.Low), float64(roving)*float64(orig.High)
		}
	}
	if r.Proposals, err = m.decide(d, t, r); err != nil {
		return err
	}
	if orig.Assumed {
		r.Assumptions = append(r.Assumptions, fmt.Sprintf("Laminate known by thickness only, %.1f to %.1f mm: taken as mat and woven roving by turns, %d plies. The stiffness ratio's spread runs from all mat at the thinnest to all roving at the thickest. A plug or a ground, wetted edge would narrow it most.",
			orig.Low.MM(), orig.High.MM(), len(orig.Layers)))
	}
	return nil
}

func (m materials) decide(d job.Description, t target, r *Result) ([]Proposal, error) {
	ps, lists, err := m.propose(t, d.Shelf.Cloth, d.Choices.Plies)
	if err != nil {
		return nil, err
	}
	for i := range ps {
		ps[i].Filler = max(0, r.Depth-ps[i].Thickness)
	}
	if r.Repair, err = m.stack(lists[0]); err != nil {
		return nil, err
	}
	r.outer = outerHalf(r.Repair.Layers)
	r.Repair.Layers = arrange(r.Repair.Layers, r.Sides, r.Order)
	r.Repair.settle()
	return ps, nil
}

// shape draws the taper and measures what it comes near.
func (m materials) shape(d job.Description, s survey.Result, r *Result) error {
	perFace := r.Depth
	if r.Sides == "both" {
		perFace /= 2
	}
	r.Taper = si.Scale(perFace, r.Ratio)
	g, err := Taper(r.CutOut, perFace, r.Ratio)
	if err != nil {
		return err
	}
	r.Edge = g.Edge
	obs := obstacles(d.Panel)
	r.Clocks = clocks(obs, r.CutOut, r.Edge, Mirrored(d.Panel.Side, r.Sides))
	r.Radius, r.Sagitta = curvature(d.Panel, r.Edge)
	r.Options, err = m.options(r, obs, s.Class == survey.PartialDepth)
	return err
}

// cloth cuts the plies and adds up what they weigh.
func (m materials) cloth(d job.Description, r *Result) error {
	fs := faces(r.Repair.Layers, r.outer, r.Sides, r.Ratio, r.Depth)
	replaced, _ := split(r.Original.Layers, r.Sides, r.Depth)
	plies, err := m.plies(r.CutOut, fs, r.Order, replaced)
	if err != nil {
		return err
	}
	class := m.coverClass(d)
	for _, f := range fs {
		for _, p := range plies {
			if p.Face == f.name {
				r.Plies = append(r.Plies, p)
			}
		}
		if class == "none" {
			continue
		}
		c, err := m.cover(class, r.Edge, cmp.Or(d.Choices.CoverLap, coverLapDefault))
		if err != nil {
			return err
		}
		if c.Face = f.name; len(fs) > 1 {
			c.Label += " " + f.name
		}
		r.Plies = append(r.Plies, c)
		r.CoverEdge = c.Outline
	}
	limit := m.resin.WetLimit
	n, heaviest := sessions(r.Plies, limit)
	if heaviest > limit {
		r.Verdicts = append(r.Verdicts, check.Verdict{
			What: "wet laminate in one session", State: check.Watch,
			Value: fmt.Sprintf("%.2f kg/m²", heaviest.KgPerM2()), Limit: fmt.Sprintf("%.2f kg/m²", limit.KgPerM2()),
			Why:    "Whole plies do not divide evenly: lay the last ply of the fullest session only when the plies under it have begun to gel and are no warmer than the hand can bear, or make it one session more.",
			Source: working.FromMemory,
		})
	}
	r.Clearances = clearances(obstacles(d.Panel), r.Edge, r.CoverEdge, r.CutOut.Centroid())
	for _, p := range r.Plies {
		r.Cloth += p.Area
		r.Glass += p.Glass
		r.Resin += p.Resin
	}
	r.Assumptions = append(r.Assumptions, fmt.Sprintf("Wet laminate per session at most %.1f kg/m² with this resin, so %s.", limit.KgPerM2(), working.Count(n, "laminating session", "laminating sessions")))
	r.Notes = m.notes(r.Plies)
	r.Filler = max(0, r.Depth-r.Repair.Thickness)
	return nil
}

// notes gathers what the catalogue says of the cloths used, each once. The
// binder of a mat only matters under epoxy.
func (m materials) notes(plies []Ply) []string {
	var out []string
	for _, p := range plies {
		c, err := m.cat.Cloth(p.Class)
		if err != nil || c.Note == "" || c.Kind == catalog.Mat && m.resin.Kind != catalog.Epoxy {
			continue
		}
		if note := strings.ToUpper(p.Class) + ": " + c.Note; !slices.Contains(out, note) {
			out = append(out, note)
		}
	}
	return out
}

// coverClass is the cover ply's class: the lightest mat for a polyester or
// vinyl ester repair, the lightest cloth for epoxy.
func (m materials) coverClass(d job.Description) string {
	if d.Choices.Cover != "" {
		return d.Choices.Cover
	}
	cloths, err := m.cloths(d.Shelf.Cloth)
	if err != nil || len(cloths) == 0 {
		return "none"
	}
	mats, _ := kinds(cloths)
	if m.resin.Kind != catalog.Epoxy && len(mats) > 0 {
		return lightest(mats).Class
	}
	return lightest(cloths).Class
}

// farSide adds the light ply that closes the face away from the taper. It is
// drawn and weighed by itself and is not in the amounts: whether it is wanted
// depends on what that face carries.
func (m materials) farSide(d job.Description, r *Result) error {
	class := m.coverClass(d)
	if class == "none" {
		return nil
	}
	p, err := m.cover(class, r.CutOut, cmp.Or(d.Choices.CoverLap, coverLapDefault))
	if err != nil {
		return err
	}
	p.Label, p.Replaces = "F", "closes the far face; not in the amounts"
	if p.Face = "inside"; r.Sides == "inside" {
		p.Face = "outside"
	}
	r.FarSide = &p
	return nil
}

// behind adds what stands behind the hole: a backing, a core.
func (m materials) behind(d job.Description, s survey.Result, r *Result) error {
	if s.Class == survey.SkinAndCore && d.Laminate.Core != nil {
		core, err := m.core(*d.Laminate.Core, r)
		if err != nil {
			return err
		}
		r.Core = &core
		return nil
	}
	if s.Class == survey.FullDepth && d.Damage.Access == "inside" {
		r.Verdicts = append(r.Verdicts, check.Verdict{
			What: "outer face out of reach", State: check.Stop, Value: "access: inside", Limit: "access: both", Source: working.CommonPractice,
			Why: "Nothing can hold the first ply to the hull's outer shape, and the outer face can be neither seen nor finished. Make the outside reachable and plan again with access: both, or refer on.",
		})
		return nil
	}
	if s.Class == survey.FullDepth && d.Damage.Access == "both" && r.Sides != "both" {
		if err := m.farSide(d, r); err != nil {
			return err
		}
	}
	if s.Class == survey.FullDepth && d.Damage.Access != "both" {
		b, passes, err := backing(r.CutOut, cmp.Or(d.Choices.Backing, backingLapDefault), d.Damage.Reach, d.Choices.System())
		if err != nil {
			return err
		}
		if passes {
			r.Backing = &b
			return nil
		}
		r.Notes = append(r.Notes, plug)
		r.Verdicts = append(r.Verdicts, check.Verdict{
			What: "backing behind a hole reached from one face", State: check.Watch, Value: "none passes the hole",
			Limit: working.Count(mostPieces, "piece", "pieces") + " at most", Why: plug, Source: working.CommonPractice,
		})
	}
	return nil
}

func (m materials) core(c job.Core, r *Result) (CorePiece, error) {
	k, err := m.cat.Core(c.Class)
	if err != nil {
		return CorePiece{}, fmt.Errorf("laminate.core.class: %w", err)
	}
	area := si.MM2(r.CutOut.Area())
	return CorePiece{
		Class: k.Class, Name: k.Name, Outline: r.CutOut, Thickness: c.Thickness,
		Area: area, Volume: area.Deep(c.Thickness), Paste: 2 * corePaste.Over(area),
	}, nil
}

// corePaste is bedding paste on one face of a core (common practice, no source).
var corePaste = si.KgPerM2(0.4)
