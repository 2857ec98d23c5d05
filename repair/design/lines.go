package design

import (
	"fmt"
	"slices"
	"strings"

	"scarfwright/physics/laminate"
	"scarfwright/repair/working"
)

// lines are the worked lines of the design's headline numbers.
func lines(r Result) []working.Line {
	per := r.Depth
	if r.Sides == "both" {
		per /= 2
	}
	b, c := r.Edge.Bounds(), r.CutOut.Bounds()
	chosen := r.Proposals[0]
	orig := r.Original
	sort, formula := "bending", "EI = Σ E (t³/12 + t z²) about the neutral axis"
	if r.skin {
		sort, formula = "in-plane", "EA = Σ E t, the skin bending about the panel's axis and not its own"
	}
	thick := working.Line{
		Name: "original thickness", Formula: "T = Σ w (1/ρf + (1-G)/(G ρr))", Numbers: sumOf(orig.Layers),
		Value: orig.Thickness.MM(), Unit: "mm", Source: "LR2013: Ch 3 s1, as a void-free laminate", Holds: "glass content 0.25 to 0.65",
	}
	if orig.Assumed {
		thick.Formula, thick.Numbers, thick.Source, thick.Holds = "T, measured: middle of the range", fmt.Sprintf("(%.1f + %.1f)/2 mm", orig.Low.MM(), orig.High.MM()), "measured", ""
	}
	out := []working.Line{
		thick,
		{
			Name: "taper length", Formula: "L = R t", Numbers: fmt.Sprintf("%g × %.2f mm", r.Ratio, per.MM()),
			Value: r.Taper.MM(), Unit: "mm", Source: working.Geometry, Holds: "ratio 5 to 50",
		},
		{
			Name: "feather edge, width", Formula: "W = w + 2 L", Numbers: fmt.Sprintf("%.0f + 2 × %.1f mm", c.Width(), r.Taper.MM()),
			Value: b.Width(), Unit: "mm", Source: working.Geometry,
		},
		{
			Name: "feather edge, height", Formula: "H = h + 2 L", Numbers: fmt.Sprintf("%.0f + 2 × %.1f mm", c.Height(), r.Taper.MM()),
			Value: b.Height(), Unit: "mm", Source: working.Geometry,
		},
		{
			Name: "bond for each mm of edge", Formula: "s = t √(1+R²)", Numbers: fmt.Sprintf("%.2f × √(1 + %g²) mm", per.MM(), r.Ratio),
			Value: BondPerEdge(per, r.Ratio).MM(), Unit: "mm²/mm", Source: working.Geometry,
		},
	}
	was := orig.EI
	unit := "N m"
	if r.skin {
		was, unit = laminate.NewSection(sectionLayers(orig.Layers)).EA, "N/m"
	}
	const source, holds = "Kaw2006: ch. 4, one direction; moduli from memory", "plane sections, equal moduli in tension and compression"
	out = append(out,
		working.Line{Name: sort + " stiffness of the original, per width", Formula: formula, Numbers: byLayer(orig.Layers), Value: was, Unit: unit, Source: source, Holds: holds},
		working.Line{Name: sort + " stiffness of the repair, per width", Formula: "the same", Numbers: byLayer(r.Repair.Layers) + r.kept(), Value: chosen.StiffnessRatio * was, Unit: unit, Source: source, Holds: holds},
		working.Line{Name: sort + " stiffness, repair to original", Formula: "repair / original", Numbers: fmt.Sprintf("%s / %s", working.Num(chosen.StiffnessRatio*was, 4), working.Num(was, 4)), Value: chosen.StiffnessRatio, Source: "arithmetic"})
	out = append(out, working.Line{
		Name: "resin in the laminate", Formula: "m = Σ A w (1-G)/G", Numbers: fmt.Sprintf("%d pieces of cloth, %.0f g of glass", len(r.Plies), r.Glass.Grams()),
		Value: r.Resin.Grams(), Unit: "g", Source: "LR2013: Ch 3 s1, as a void-free laminate", Holds: "hand lay-up at the classes' glass contents",
	})
	return out
}

// byLayer writes a section's layers so that its stiffness can be worked by hand.
func byLayer(ls []Layer) string {
	parts := make([]string, len(ls))
	for i, l := range ls {
		parts[i] = fmt.Sprintf("%.3g × %.3f", l.Modulus.GPa(), l.Thickness.MM())
	}
	return "E × t, outside to inside, GPa × mm: " + strings.Join(parts, ", ")
}

// kept is the old laminate behind a dish, which works with the repair.
func (r Result) kept() string {
	cut, whole := split(r.Original.Layers, r.Sides, r.Depth)
	if len(cut) == len(r.Original.Layers) {
		return ""
	}
	return "; with the old plies left: " + byLayer(whole)
}

func sumOf(ls []Layer) string {
	parts := make([]string, len(ls))
	for i, l := range ls {
		parts[i] = fmt.Sprintf("%.3f", l.Thickness.MM())
	}
	return strings.Join(slices.Clip(parts), " + ") + " mm"
}
