package repair

import (
	"slices"
	"strings"

	"scarfwright/repair/catalog"
	"scarfwright/repair/overcoat"
)

// joints lists where one material of the job goes on another.
func (r *Result) joints(resin catalog.Resin) ([]overcoat.Joint, error) {
	var m overcoat.Materials
	var err error
	if r.Design != nil {
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
	if r.Design != nil && r.Design.Plies[len(r.Design.Plies)-1].Session == 1 {
		out = slices.Delete(out, 1, 2) // one session: the second joint, next session on the last, is not in the job
	}
	return out, nil
}
