package mixing

import (
	"fmt"
	"math"
	"slices"

	"scarfwright/physics/si"
	"scarfwright/repair/check"
	"scarfwright/repair/working"
)

// What is left behind, at the least, all from memory: a brush holds 10 to 20 g
// and a roller 20 to 40 g at the first filling, a cup keeps 4 to 8 g, and 3 to
// 8 % is squeezed out at the edges. A small session is laid with a brush alone.
const (
	brushHolds   = si.Mass(0.010)
	rollerHolds  = si.Mass(0.020)
	cupKeeps     = si.Mass(0.004)
	squeezeLeast = si.Ratio(0.03)
	rollerFrom   = si.Area(0.25) // ply area of a session from which a roller is taken
)

// Loss is one place where resin is left behind.
type Loss struct {
	What string  `json:"what"`
	Mass si.Mass `json:"mass_kg"`
}

// held is what tools and cups keep.
func held(area si.Area, cups int) []Loss {
	out := []Loss{{"brush", brushHolds}}
	if area >= rollerFrom {
		out = append(out, Loss{"roller", rollerHolds})
	}
	return append(out, Loss{"cups", si.Scale(cupKeeps, cups)})
}

// waste is the waste of a session: what was chosen, or the default, raised where
// a small session would not even fill the brush and the cup.
func waste(n Need, o Options) si.Ratio {
	var laminate si.Mass
	var area si.Area
	for _, p := range n.Plies {
		laminate += p.Resin
		area += p.Area
	}
	if o.wasted || !(laminate > 0) {
		return o.Waste
	}
	cups := int(max(1, math.Ceil(float64(si.Scale(laminate, 1+o.Waste)/o.Largest))))
	return max(o.Waste, si.Ratio(total(held(area, cups))/laminate)+squeezeLeast)
}

// lose divides the waste among brush, roller, cups and squeeze-out. The first
// three are what they hold at the least, the squeeze-out takes the rest. Where
// the waste chosen is too little for that, it is said, and all are cut in
// proportion.
func (s *Session) lose(o Options, area si.Area) {
	laminate := s.Need.Laminate
	allowed := s.Need.Mixed - laminate
	if allowed <= 0 {
		return
	}
	kept := held(area, s.Batches.Count)
	fixed := total(kept)
	squeeze := allowed - fixed
	if least := si.Scale(laminate, squeezeLeast); squeeze < least*(1-1e-9) {
		s.Verdicts = append(s.Verdicts, check.Verdict{
			What: "waste, " + s.Name, State: check.Watch,
			Value: fmt.Sprintf("%.0f g (%.0f %%)", allowed.Grams(), o.Waste.Percent()),
			Limit: fmt.Sprintf("%.0f g or more", (fixed + least).Grams()),
			Why: fmt.Sprintf("The tools and cups alone hold about %.0f g: with the waste chosen the resin runs short. Allow %.0f %%, or leave choices.waste out.",
				fixed.Grams(), math.Ceil(float64((fixed+least)/laminate)*100)),
			Source: working.FromMemory,
		})
		share := float64(allowed / (fixed + least))
		for i := range kept {
			kept[i].Mass = si.Scale(kept[i].Mass, share)
		}
		squeeze = si.Scale(least, share)
	}
	s.Losses = append(kept, Loss{"squeeze-out and drips", squeeze})
}

func total(ls []Loss) si.Mass {
	var sum si.Mass
	for _, l := range ls {
		sum += l.Mass
	}
	return sum
}

// gather adds losses of the same kind.
func gather(sum, more []Loss) []Loss {
	for _, m := range more {
		i := slices.IndexFunc(sum, func(l Loss) bool { return l.What == m.What })
		if i < 0 {
			sum = append(sum, m)
			continue
		}
		sum[i].Mass += m.Mass
	}
	return sum
}
