package ways

import (
	"fmt"
	"slices"

	"scarfwright/physics/si"
	"scarfwright/repair/design"
)

// guess is one possible truth about what is not known.
type guess struct {
	kind int       // of an assumed laminate: -1 all mat, 0 mat and roving, +1 all roving
	t    si.Length // its thickness; 0: as it is taken
	bond float64   // the bond's strength over the likely one
}

// nothing is a range that is not worth a measurement.
const nothing = 0.005

// spread gives every way its low and high: the bond at the ends of its range, and
// where only a thickness is known, the laminate at its ends too. A strong original
// makes a repair look weak: the thickest, all of roving, is the low end.
func (c *comparison) spread(r *Result, low, high bond, memory *Memory) {
	weak, strong := float64(low.mat/c.bond.mat), float64(high.mat/c.bond.mat)
	worst, best := guess{bond: weak}, guess{bond: strong}
	o := c.base.Original
	if o.Assumed {
		worst.kind, worst.t = +1, o.High
		best.kind, best.t = -1, o.Low
	}
	inTwo(len(r.Ways), func(i int) {
		w := &r.Ways[i]
		if !w.Computed {
			return
		}
		if x, ok := c.suppose(w, worst, memory); ok {
			w.Strength.Low = min(w.Strength.Low, x.Strength.Likely)
			w.Stiffness.Low = min(w.Stiffness.Low, x.Stiffness.Likely)
		}
		if x, ok := c.suppose(w, best, memory); ok {
			w.Strength.High = max(w.Strength.High, x.Strength.Likely)
			w.Stiffness.High = max(w.Stiffness.High, x.Stiffness.Likely)
		}
	})
	r.narrow = func(w *Way) []Measurement { return c.narrow(w, weak, strong, memory) }
}

// suppose measures a way again under a guess.
func (c *comparison) suppose(w *Way, g guess, memory *Memory) (Way, bool) {
	x := *w
	before, after := c.asMeasured, w.measured
	if g.t > 0 {
		layers, err := design.Assumed(g.t, g.kind, c.resin, c.cat)
		if err != nil {
			return x, false
		}
		parent, skin, err := c.parent(layers, w.Sides)
		if err != nil {
			return x, false
		}
		ps := *w.parts
		intact := parent
		switch {
		case ps.was != nil:
			ps.was = parent
			parent = slices.Concat(ps.patch, bottom(parent, skin-ps.depth))
		case ps.depth == ps.skin || ps.over:
			ps.depth = skin // it went through, and goes through
		}
		ps.parent, ps.skin = parent, skin
		x.parts = &ps
		if before, err = c.before(intact, ps.core, ps.coreT, memory); err != nil {
			return x, false
		}
		if after, err = c.after(&x, memory); err != nil {
			return x, false
		}
	}
	x.Cases = c.cases(&x, before, after, g.bond)
	x.sum()
	x.Stiffness = stiffer(before, after)
	return x, true
}

// narrow asks which measurement would narrow the strength of a way most: each thing
// that is not known is moved by itself, the others at their likely values.
func (c *comparison) narrow(w *Way, weak, strong float64, memory *Memory) []Measurement {
	var out []Measurement
	add := func(what, how string, ends ...guess) {
		s := Span{w.Strength.Likely, w.Strength.Likely, w.Strength.Likely}
		for _, g := range ends {
			if x, ok := c.suppose(w, g, memory); ok {
				s.Low, s.High = min(s.Low, x.Strength.Likely), max(s.High, x.Strength.Likely)
			}
		}
		if s.High-s.Low > nothing {
			out = append(out, Measurement{What: what, How: how, Now: s, Narrow: s.High - s.Low})
		}
	}
	if o := c.base.Original; o.Assumed {
		if o.High > o.Low {
			add("thickness of the laminate", "Measure it with a caliper at four places round the cut edge, gelcoat taken off.",
				guess{t: o.Low, bond: 1}, guess{t: o.High, bond: 1})
		}
		add("kind and order of the plies", "Cut a plug, or grind and wet the edge of the hole, and count: mat is confused, roving is in bands.",
			guess{kind: -1, t: o.Thickness, bond: 1}, guess{kind: 1, t: o.Thickness, bond: 1})
	}
	add("strength of the bond", fmt.Sprintf("Pull three lap pieces made with this resin on ground pieces of the old laminate; %.3g to %.3g MPa is what is known without.",
		c.bond.mat.MPa()*weak, c.bond.mat.MPa()*strong), guess{bond: weak}, guess{bond: strong})
	slices.SortStableFunc(out, func(a, b Measurement) int {
		switch {
		case a.Narrow > b.Narrow:
			return -1
		case a.Narrow < b.Narrow:
			return 1
		}
		return 0
	})
	return out
}
