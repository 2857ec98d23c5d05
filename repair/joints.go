package repair

import (
	"fmt"
	"slices"
	"strings"

	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/overcoat"
)

// joints lists where one material of the job goes on another.
func (r *Result) joints(resin catalog.Resin) ([]overcoat.Joint, error) {
	var m overcoat.Materials
	var err error
	if r.Design != nil {
		if r.Job.Laminate.Resin == string(catalog.Epoxy) {
			m.Old = overcoat.Epoxy // nobody knows the others apart on an old hull
		}
		if m.Repair, err = overcoat.Of(string(resin.Kind)); err != nil {
			return nil, err
		}
	}
	if r.Finish.Fairing > 0 && strings.HasPrefix(r.Job.Shelf.Filler, "epoxy") {
		m.Filler = overcoat.EpoxyFiller
	}
	if r.Finish.Barrier != nil {
		m.Barrier = overcoat.EpoxyBarrier
	}
	switch {
	case r.Finish.Coat != nil:
		m.Finish = overcoat.Gelcoat
	case r.Job.Choices.Finish == "paint":
		m.Finish = overcoat.Paint
	}
	out := overcoat.For(m)
	if r.Design == nil {
		return out, nil
	}
	if r.Design.Plies[len(r.Design.Plies)-1].Session == 1 {
		return slices.Delete(out, 1, 2), nil // one session: the second joint, next session on the last, is not in the job
	}
	out[1].Inside, out[1].When = r.onTheLast(resin)
	return out, nil
}

// OfJoint reports whether a verdict is that of one of the job's joints. Where the
// joints stand in a table of their own, those of them that are ok need not stand
// among the checks as well.
func (r Result) OfJoint(v check.Verdict) bool {
	return slices.ContainsFunc(r.Joints, func(j overcoat.Joint) bool { return j.Check() == v })
}

// onTheLast says whether every session after the first is laid inside the window of
// the one before it, with the gaps and the windows in words.
func (r *Result) onTheLast(resin catalog.Resin) (inside bool, when string) {
	if r.Curing == nil {
		if resin.RecoatTo == 0 {
			return false, ""
		}
		return false, fmt.Sprintf("by the sheet %.3g to %.3g h after mixing at 20 °C", resin.RecoatFrom.Hours(), resin.RecoatTo.Hours())
	}
	return r.Curing.NextOnLast()
}
