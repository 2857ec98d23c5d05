package figure

import (
	"fmt"
	"math"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/design"
	"scarfwright/repair/working"
)

func repairFigures() []Calculation {
	return []Calculation{{
		Name: "taper", Title: "what grinding a taper round a round hole takes", Inputs: []Input{
			{Key: "radius", Doc: "radius of the cut-out", Unit: "50 mm"},
			{Key: "thickness", Doc: "thickness ground through", Unit: "6 mm"},
			{Key: "ratio", Doc: "taper ratio to one", Unit: "12", Range: fmt.Sprintf("%d to %d", design.RatioLeast, design.RatioMost)},
		}, work: taper,
	}}
}

func taper(r *reader) Answer {
	radius, t := quantity[si.Length](r, "radius", positive), quantity[si.Length](r, "thickness", positive)
	ratio := r.number("ratio", between(design.RatioLeast, design.RatioMost, fmt.Sprintf("between %d and %d", design.RatioLeast, design.RatioMost)))
	if !r.ok() {
		return Answer{}
	}
	a := radius.MM()
	outer, bond, volume := geom.ConeFrustum(a, ratio, t.MM())
	plan := math.Pi * (outer*outer - a*a)
	dust := volume - math.Pi*a*a*t.MM()
	slant := design.BondPerEdge(t, ratio)
	return Answer{
		Results: Results{
			{Key: "taper_mm", Value: ratio * t.MM()},
			{Key: "outer_radius_mm", Value: outer},
			{Key: "outer_diameter_mm", Value: 2 * outer},
			{Key: "slope_mm", Value: slant.MM()},
			{Key: "bond_mm2", Value: bond},
			{Key: "ground_plan_mm2", Value: plan},
			{Key: "ground_with_hole_ml", Value: volume / 1000},
			{Key: "ground_dust_ml", Value: dust / 1000},
		},
		Working: []working.Line{
			{Name: "outer radius", Formula: "ro = r + R t", Numbers: fmt.Sprintf("%s + %s × %s mm", num(radius.MM()), num(ratio), num(t.MM())), Value: outer, Unit: "mm", Source: working.Geometry},
			{Name: "slope", Formula: "s = t √(1 + R²)", Numbers: fmt.Sprintf("%s × √(1 + %s²) mm", num(t.MM()), num(ratio)), Value: slant.MM(), Unit: "mm", Source: working.Geometry},
			{Name: "bond area", Formula: "A = π (ro + r) s", Numbers: fmt.Sprintf("π × (%s + %s) × %s mm²", num(outer), num(radius.MM()), num(slant.MM())), Value: bond, Unit: "mm²", Source: working.Geometry},
			{Name: "ground out, with the hole", Formula: "V = π t/3 (ro² + ro r + r²)", Numbers: fmt.Sprintf("π × %s/3 × (%s² + %s × %s + %s²) mm³", num(t.MM()), num(outer), num(outer), num(radius.MM()), num(radius.MM())), Value: volume / 1000, Unit: "ml", Source: working.Geometry, Holds: "flat panel, straight taper"},
			{Name: "ground to dust", Formula: "V - π r² t", Numbers: fmt.Sprintf("the cut-out itself leaves in one piece: π × %s² × %s mm³", num(radius.MM()), num(t.MM())), Value: dust / 1000, Unit: "ml", Source: working.Geometry},
		},
	}
}
