package design

import (
	"cmp"
	"fmt"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/job"
	"scarfwright/repair/working"
)

// leastStiffness is the stiffness, as a share of the original's, below which a
// ply list is stopped and not only watched (our own rule: hand lay-up scatters
// by about a tenth).
const leastStiffness = 0.9

// bonding judges the new resin on the old.
func (m materials) bonding(d job.Description) []check.Verdict {
	v := check.Verdict{What: "new resin on old laminate", Value: string(m.resin.Kind) + " on " + cmp.Or(d.Laminate.Resin, "unknown"), Limit: "epoxy bonds to either; polyester and vinyl ester to their own kind"}
	switch {
	case m.resin.Kind == catalog.Epoxy:
		return nil
	case d.Laminate.Resin == "epoxy":
		v.State = check.Stop
		v.Source = "a resin maker's adhesion page, read; address withheld by the naming rule"
		v.Why = "Polyester and vinyl ester do not bond structurally to epoxy. Repair it with epoxy."
	case d.Laminate.Resin == "unknown" || d.Laminate.Resin == "":
		v.State = check.Watch
		v.Source = working.CommonPractice
		v.Why = "The old resin is not known. If it may be epoxy, repair it with epoxy, which bonds to either."
	default:
		return nil
	}
	return []check.Verdict{v}
}

func verdicts(d job.Description, r Result) []check.Verdict {
	var out []check.Verdict
	long := func(l si.Length) string { return si.Show(l, d.Choices.System(), 3) }
	for _, c := range r.Clearances {
		v := check.Verdict{
			What: "taper to " + c.What, Value: long(c.Left) + " left", Limit: "more than " + long(0),
			State: check.OK, Source: working.Geometry, Why: "The feather edge stays on this panel.",
		}
		if c.Left <= 0 {
			v.State = check.Stop
			v.Value = "crosses by " + long(-c.Left)
			v.Why = "The taper runs past it. Take a steeper ratio that still fits, " + otherFaces(d, r) + "or plan to take off the tabbing and run the taper beneath it."
		} else if c.Cover < 0 {
			v.State = check.Watch
			v.Why = "The taper stays clear, the cover ply would pass it by " + long(-c.Cover) + ": trim the cover ply there."
		}
		out = append(out, v)
	}
	chosen := r.Proposals[0]
	kind, of := "bending", "EI"
	if r.skin {
		kind, of = "in-plane", "EA"
	}
	stiff := check.Verdict{
		What: kind + " stiffness of the repair", Value: fmt.Sprintf("%.2f × the original", chosen.StiffnessRatio),
		Limit: "1.00 or more", State: check.OK, Source: "from memory",
		Why: "Section stiffness " + of + " by typical moduli of hand-laid plies; strength, along the bond too, is compared among the ways of repair (options).",
	}
	if chosen.StiffnessRatio < leastStiffness {
		stiff.State = check.Stop
		stiff.Why = "Too weak a list of plies: it does not bring the panel back. Choose more or heavier plies. " + stiff.Why
	} else if chosen.StiffnessRatio < 1 {
		stiff.State = check.Watch
		stiff.Why = "The repaired skin bends more than the original did: add a ply or choose a heavier one. " + stiff.Why
	}
	if chosen.Low != chosen.High {
		stiff.Value += fmt.Sprintf(" (%.2f to %.2f as the original is uncertain)", chosen.Low, chosen.High)
		if chosen.Low < 1 && stiff.State == check.OK {
			stiff.State = check.Watch
		}
	}
	return append(out, stiff)
}

// otherFaces is the advice to grind elsewhere, where there is an elsewhere.
func otherFaces(d job.Description, r Result) string {
	if r.Sides == "both" || d.Damage.Access != "both" {
		return ""
	}
	return "grind from both faces, "
}
