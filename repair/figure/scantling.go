package figure

import (
	"fmt"

	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/scantling"
	"scarfwright/repair/working"
)

const (
	smallCraft    = "formulas of ISO 12215-5:2008, from memory"
	forKnowledge  = "For information only: every digit of these formulas is from memory. A repair is judged by the same load before and after, not by this; whoever designs a boat needs the standard itself."
	knotsPerMetre = 3600.0 / 1852
)

func scantlingFigures() []Calculation {
	size := []Input{
		{Key: "short", Doc: "short span of the panel between stiffeners", Unit: "400 mm"},
		{Key: "long", Doc: "long span", Unit: "900 mm"},
		{Key: "crown", Doc: "rise of a curved panel over its short span", Unit: "0 mm", Default: "0 mm"},
	}
	return []Calculation{
		{
			Name: "design-pressure", Title: "pressure a bottom panel of a motor craft is designed for, for information", Inputs: append([]Input{
				{Key: "waterline", Doc: "length of the waterline, loaded", Unit: "8 m"},
				{Key: "chine", Doc: "beam between the chines", Unit: "2.6 m"},
				{Key: "mass", Doc: "mass, loaded", Unit: "3500 kg"},
				{Key: "speed", Doc: "greatest speed, loaded", Unit: "25 kn"},
				{Key: "deadrise", Doc: "deadrise at 0.4 of the waterline from the stern", Unit: "18 deg"},
				{Key: "category", Doc: "design category", Unit: "B", Words: []string{"A", "B", "C", "D"}},
				{Key: "forward", Doc: "place of the panel along the waterline, from the stern", Unit: "50 %"},
			}, size...), work: designPressure,
		},
		{
			Name: "panel-thickness", Title: "thickness of a single skin under a pressure, for information", Inputs: append([]Input{
				{Key: "pressure", Doc: "design pressure", Unit: "27.1 kPa"},
				{Key: "stress", Doc: "design stress, half the flexural strength", Unit: "76 MPa"},
			}, size...), work: panelThickness,
		},
	}
}

func (r *reader) span() scantling.Panel {
	return scantling.Panel{
		Short: quantity[si.Length](r, "short", positive), Long: quantity[si.Length](r, "long", positive),
		Crown: quantity[si.Length](r, "crown", bounds{0, 10, false, "0 or more, and less than the short span"}),
	}
}

func designPressure(r *reader) Answer {
	c := scantling.Craft{
		Waterline: quantity[si.Length](r, "waterline", positive), Chine: quantity[si.Length](r, "chine", positive),
		Mass: quantity[si.Mass](r, "mass", positive), Speed: quantity[si.Speed](r, "speed", positive),
		Deadrise: quantity[si.Angle](r, "deadrise", bounds{0, 0.8, false, "between 0 and 45 degrees"}),
		Category: scantling.Category(r.word("category")),
	}
	p := r.span()
	p.Forward = quantity[si.Ratio](r, "forward", bounds{0, 1, false, "between 0 and 100 %"})
	if !r.ok() {
		return Answer{}
	}
	got, err := scantling.Bottom(c, p)
	if err != nil {
		r.fail("waterline", err.Error(), "")
		return Answer{}
	}
	kPa := func(x si.Pressure) float64 { return float64(x) / 1e3 }
	m, L, B := c.Mass.Kg(), c.Waterline.M(), c.Chine.M()
	a := Answer{
		Results: Results{
			{Key: "pressure_kpa", Value: kPa(got.Design)}, {Key: "governs_words", Text: got.Governs},
			{Key: "displacement_kpa", Value: kPa(got.Displacement)}, {Key: "planing_kpa", Value: kPa(got.Planing)}, {Key: "least_kpa", Value: kPa(got.Least)},
			{Key: "acceleration_g_ratio", Value: got.Acceleration}, {Key: "along_ratio", Value: got.Along}, {Key: "category_ratio", Value: got.Category},
			{Key: "area_displacement_ratio", Value: got.AreaDisplacement}, {Key: "area_planing_ratio", Value: got.AreaPlaning},
		},
		Working: []working.Line{
			{Name: "displacing", Formula: "P = (2.4 m^0.33 + 20) kAR kDC kL", Numbers: fmt.Sprintf("(2.4 × %s^0.33 + 20) × %s × %s × %s", num(m), num(got.AreaDisplacement), num(got.Category), num(got.Along)), Value: kPa(got.Displacement), Unit: "kPa", Source: smallCraft},
			{Name: "planing", Formula: "P = 0.1 m/(LWL BC) (1 + √kDC nCG) kAR kL", Numbers: fmt.Sprintf("0.1 × %s/(%s × %s) × (1 + √%s × %s) × %s × %s", num(m), num(L), num(B), num(got.Category), num(got.Acceleration), num(got.AreaPlaning), num(got.Along)), Value: kPa(got.Planing), Unit: "kPa", Source: smallCraft, Holds: "V/√LWL of 5 or more; up to 50 kn"},
			{Name: "least", Formula: "P = 0.45 m^0.33 + 0.9 LWL kDC", Numbers: fmt.Sprintf("0.45 × %s^0.33 + 0.9 × %s × %s", num(m), num(L), num(got.Category)), Value: kPa(got.Least), Unit: "kPa", Source: smallCraft},
			{Name: "design pressure", Formula: "the greatest of the three", Value: kPa(got.Design), Unit: "kPa", Source: smallCraft, Holds: "motor craft of 2.5 to 24 m"},
		},
		Warnings: []string{forKnowledge},
	}
	if !got.Planes && got.Governs == "planing" {
		a.Warnings = append(a.Warnings, fmt.Sprintf("At %s kn on this waterline she hardly planes (V/√LWL under 5): the displacement pressure is nearer the truth.", num(float64(c.Speed)*knotsPerMetre)))
	}
	return a
}

func panelThickness(r *reader) Answer {
	p := r.span()
	pressure, stress := quantity[si.Pressure](r, "pressure", positive), quantity[si.Pressure](r, "stress", positive)
	if !r.ok() {
		return Answer{}
	}
	t, err := scantling.Thickness(p, pressure, stress)
	if err != nil {
		r.fail("short", err.Error(), "")
		return Answer{}
	}
	aspect := float64(p.Long / p.Short)
	k2, kC := panel.K2(p.Long, p.Short), panel.CurvatureFactor(p.Crown, p.Short)
	return Answer{
		Results: Results{
			{Key: "thickness_mm", Value: t.MM()}, {Key: "k2_ratio", Value: k2}, {Key: "k3_ratio", Value: panel.K3(p.Long, p.Short)}, {Key: "kc_ratio", Value: kC},
		},
		Working: []working.Line{
			{Name: "moment of a panel fixed all round", Formula: "k2 = (0.271 r² + 0.910 r - 0.554)/(r² - 0.313 r + 1.351), r = l/b; 0.5 beyond 2", Numbers: "r = " + num(aspect), Value: k2, Unit: "1", Source: smallCraft + "; within 0.3 % of six times the exact plate's edge moment"},
			{Name: "crown", Formula: "kC = 1.1 - 3.33 c/b, 1 up to c/b = 0.03, 0.5 beyond 0.18", Numbers: fmt.Sprintf("c/b = %s", num(float64(p.Crown/p.Short))), Value: kC, Unit: "1", Source: smallCraft},
			{Name: "thickness", Formula: "t = b kC √(P k2/(1000 σd))", Numbers: fmt.Sprintf("%s mm × %s × √(%s × %s/(1000 × %s))", num(p.Short.MM()), num(kC), num(float64(pressure)/1e3), num(k2), num(float64(stress)/1e6)), Value: t.MM(), Unit: "mm", Source: smallCraft, Holds: "single skin"},
		},
		Warnings: []string{forKnowledge},
	}
}
