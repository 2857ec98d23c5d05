package mixing

import (
	"fmt"

	"scarfwright/physics/si"
	"scarfwright/repair/check"
	"scarfwright/repair/working"
)

// What is left behind, all from memory: a brush holds 10 to 20 g and a roller 20
// to 40 g at the first filling, a cup keeps 4 to 8 g, and 3 to 8 % is squeezed
// out at the edges.
const (
	brushHolds   = si.Mass(0.015)
	rollerHolds  = si.Mass(0.030)
	cupKeeps     = si.Mass(0.006)
	squeezeLeast = si.Ratio(0.03)
	squeezeUsual = si.Ratio(0.05)
)

// Loss is one place where resin is left behind.
type Loss struct {
	What string  `json:"what"`
	Mass si.Mass `json:"mass_kg"`
}

// lose divides the chosen waste among brush, roller, cups and squeeze-out. The
// first three are what they hold, the squeeze-out takes the rest. Where the
// waste is too little for that, all four are cut in proportion, and it is said.
func (s *Session) lose(o Options) {
	laminate := s.Need.Laminate
	allowed := si.Scale(laminate, o.Waste)
	if allowed <= 0 {
		return
	}
	held := []Loss{
		{"brush", brushHolds}, {"roller", rollerHolds},
		{"cups", si.Scale(cupKeeps, s.Batches.Count)},
	}
	fixed := total(held)
	squeeze := allowed - fixed
	if squeeze < si.Scale(laminate, squeezeLeast) {
		usual := fixed + si.Scale(laminate, squeezeUsual)
		s.Verdicts = append(s.Verdicts, check.Verdict{
			What: "waste, " + s.Name, State: check.Watch,
			Value: fmt.Sprintf("%.0f g (%.0f %%)", allowed.Grams(), o.Waste.Percent()),
			Limit: fmt.Sprintf("%.0f g", usual.Grams()),
			Why: fmt.Sprintf("A brush, a roller and the cups alone hold about %.0f g. Leave the roller out, or allow %.0f %%.",
				fixed.Grams(), float64(usual/laminate)*100),
			Source: working.FromMemory,
		})
		squeeze = si.Scale(laminate, squeezeUsual)
		share := float64(allowed / (fixed + squeeze))
		for i := range held {
			held[i].Mass = si.Scale(held[i].Mass, share)
		}
		squeeze = si.Scale(squeeze, share)
	}
	s.Losses = append(held, Loss{"squeeze-out and drips", squeeze})
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
	if sum == nil {
		return append(sum, more...)
	}
	for _, m := range more {
		for i := range sum {
			if sum[i].What == m.What {
				sum[i].Mass += m.Mass
			}
		}
	}
	return sum
}
