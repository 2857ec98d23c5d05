package figure

import (
	"fmt"
	"math"

	"scarfwright/physics/laminate"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

const (
	plateTheory   = "thin plate, small deflection: closed form (double series, or Ritz where the edges are fixed)"
	plateShape    = "rectangle a by b under even pressure"
	sandwichForms = "sandwich strip, from memory; numbers by independent computation (numpy, in Python)"
	panelOnly     = "A panel of its own, under an even load. What is judged in a repair is the same load before and after."
)

func plateFigures() []Calculation {
	plate := []Input{
		{Key: "a", Doc: "one side", Unit: "400 mm"}, {Key: "b", Doc: "the other side", Unit: "600 mm"},
		{Key: "pressure", Doc: "even pressure", Unit: "20 kPa"},
		{Key: "edges", Doc: "how all four edges are held", Unit: "clamped", Default: "clamped", Words: []string{"clamped", "simple"}},
		{Key: "thickness", Doc: "one material: thickness", Unit: "6 mm", Unless: []string{"stack"}},
		{Key: "E", Doc: "one material: modulus", Unit: "7 GPa", Unless: []string{"stack"}},
		{Key: "nu", Doc: "one material: Poisson's ratio", Unit: "0.3", Default: "0.3"},
	}
	for _, in := range stackInputs { // a stack in place of one material
		in.Optional = true
		in.Doc = "stack: " + in.Doc
		plate = append(plate, in)
	}
	return []Calculation{
		{Name: "plate", Title: "a rectangular laminated panel under even pressure, by elements", Inputs: plateInputs(plate), work: plateFigure},
		patchedPanel(),
		{Name: "plate-closed-form", Title: "a rectangular panel under even pressure, thin and moving little", Inputs: plate, work: plateClosedForm},
		{
			Name: "sandwich-strip", Title: "a sandwich panel as a strip over its short span", Inputs: []Input{
				{Key: "face-E", Doc: "modulus of the faces along the span", Unit: "11 GPa"}, {Key: "face", Doc: "thickness of one face", Unit: "3 mm"},
				{Key: "core", Doc: "thickness of the core", Unit: "20 mm"}, {Key: "core-G", Doc: "shear modulus of the core", Unit: "20 MPa"}, {Key: "core-E", Doc: "modulus of the core", Unit: "55 MPa"},
				{Key: "span", Doc: "span of the strip", Unit: "400 mm"}, {Key: "pressure", Doc: "even pressure", Unit: "30 kPa"},
				{Key: "edges", Doc: "how both ends are held", Unit: "simple", Default: "simple", Words: []string{"simple", "clamped"}},
			}, work: sandwichStrip,
		},
	}
}

// plateStiffness reads one material or a stack, and its bending stiffness.
func (r *reader) plateStiffness() (d panel.Bending, t si.Length, words string) {
	if !r.has("stack") {
		E, nu := quantity[si.Pressure](r, "E", positive), r.number("nu", between(0, 0.49, "between 0 and 0.49"))
		t = quantity[si.Length](r, "thickness", positive)
		return panel.IsotropicBending(E, nu, t), t, fmt.Sprintf("D = E h³/(12 (1 - ν²)) = %s × %s³/(12 × (1 - %s²))", num(E.MPa()), num(t.MM()), num(nu))
	}
	for _, key := range []string{"ply", "E1", "E2", "nu12", "G12"} {
		if !r.need(key, "is needed with stack.") {
			return d, 0, ""
		}
	}
	stack, plies := r.plies(r.lamina())
	if !r.ok() {
		return d, 0, ""
	}
	s := laminate.NewStiffness(plies)
	scale := math.Abs(s.D[0][0])
	for _, x := range []float64{s.D[0][2], s.D[1][2]} {
		if math.Abs(x) > 1e-9*scale {
			r.fail("stack", "bends and twists at once (D16, D26): no closed form is here for it.", "Use the figure plate.")
		}
	}
	for i := range 3 {
		for j := range 3 {
			if math.Abs(s.B[i][j])*float64(s.H) > 1e-9*scale {
				r.fail("stack", "is not the same from both faces (B is not 0): no closed form is here for it.", "Use the figure plate.")
			}
		}
	}
	return panel.Bending{D11: s.D[0][0], D12: s.D[0][1], D22: s.D[1][1], D66: s.D[2][2]}, s.H, "D of " + stack.String()
}

func plateClosedForm(r *reader) Answer {
	a, b, q := quantity[si.Length](r, "a", positive), quantity[si.Length](r, "b", positive), quantity[si.Pressure](r, "pressure", positive)
	edges := r.word("edges")
	d, t, words := r.plateStiffness()
	if !r.ok() {
		return Answer{}
	}
	if x := float64(a / b); x > 10 || x < 0.1 {
		r.fail("b", "a panel more than ten times as long as wide is a strip.", "")
		return Answer{}
	}
	var p panel.PlateResult
	if edges == "clamped" {
		p = panel.ClampedPlate(d, a, b, q)
	} else {
		p = panel.SimplySupportedPlate(d, a, b, q)
	}
	stress := func(m float64) float64 { return 6 * m / (float64(t) * float64(t)) / 1e6 }
	worst := max(math.Abs(p.Mx), math.Abs(p.My), math.Abs(p.EdgeX), math.Abs(p.EdgeY))
	short := min(a, b)
	k := float64(q) * float64(short) * float64(short)
	out := Answer{
		Results: Results{
			{Key: "deflection_mm", Value: p.W.MM()}, {Key: "moment_x_n", Value: p.Mx}, {Key: "moment_y_n", Value: p.My},
			{Key: "edge_moment_x_n", Value: p.EdgeX}, {Key: "edge_moment_y_n", Value: p.EdgeY},
			{Key: "deflection_to_thickness_ratio", Value: float64(p.W / t)},
			{Key: "alpha_number", Value: float64(p.W) * d.D11 / (k * float64(short) * float64(short))}, {Key: "beta_number", Value: worst / k},
			{Key: "D11_nm", Value: d.D11}, {Key: "D12_nm", Value: d.D12}, {Key: "D22_nm", Value: d.D22}, {Key: "D66_nm", Value: d.D66},
		},
		Working: []working.Line{
			{Name: "bending stiffness", Formula: "D", Numbers: words, Value: d.D11, Unit: "N m", Source: "thin plate theory"},
			{Name: "deflection in the middle", Formula: "w = α q a⁴/D11, a the short side", Numbers: plateShape + ", " + edges, Value: p.W.MM(), Unit: "mm", Source: plateTheory, Holds: "deflection under half the thickness; no shear through the thickness"},
			{Name: "greatest moment", Formula: "M = β q a²", Value: worst, Unit: "N m/m", Source: plateTheory},
		},
		Warnings: []string{panelOnly},
	}
	if !r.has("stack") {
		out.Results = append(out.Results, Result{Key: "stress_mpa", Value: stress(worst)})
		out.Working = append(out.Working, working.Line{Name: "greatest stress at a face", Formula: "σ = 6 M/h²", Numbers: fmt.Sprintf("6 × %s/%s²", num(worst), num(t.MM())), Value: stress(worst), Unit: "MPa", Source: plateTheory})
	}
	if p.W > t/2 {
		out.Warnings = append(out.Warnings, fmt.Sprintf("It moves %.2g times its thickness: membrane forces then carry part of the load, and this overstates both deflection and stress.", float64(p.W/t)))
	}
	return out
}

func sandwichStrip(r *reader) Answer {
	s := panel.Sandwich{
		Face: quantity[si.Pressure](r, "face-E", positive), FaceT: quantity[si.Length](r, "face", positive),
		Core: quantity[si.Pressure](r, "core-E", positive), CoreG: quantity[si.Pressure](r, "core-G", positive), CoreT: quantity[si.Length](r, "core", positive),
	}
	span, q := quantity[si.Length](r, "span", positive), quantity[si.Pressure](r, "pressure", positive)
	support := panel.SimplySupported
	if r.word("edges") == "clamped" {
		support = panel.Clamped
	}
	if !r.ok() {
		return Answer{}
	}
	b := s.Bend(support, span, q)
	moment := max(math.Abs(b.Middle), math.Abs(b.End))
	face, core := s.FaceStress(moment), s.CoreShear(b.V)
	wrinkle, crimp := s.Wrinkling(), s.Crimping()
	return Answer{
		Results: Results{
			{Key: "deflection_mm", Value: b.W().MM()}, {Key: "bending_mm", Value: b.Bending.MM()}, {Key: "shear_mm", Value: b.Shear.MM()},
			{Key: "face_stress_mpa", Value: face.MPa()}, {Key: "core_shear_mpa", Value: core.MPa()},
			{Key: "wrinkling_mpa", Value: wrinkle.MPa()}, {Key: "crimping_mpa", Value: crimp.MPa()},
			{Key: "D_nm", Value: s.BendingStiffness()}, {Key: "S_n_per_m", Value: s.ShearStiffness()},
		},
		Working: []working.Line{
			{Name: "bending stiffness", Formula: "D = Ef tf d²/2 + Ef tf³/6 + Ec tc³/12, d = tc + tf", Numbers: fmt.Sprintf("Ef = %s MPa, tf = %s mm, tc = %s mm, Ec = %s MPa", num(s.Face.MPa()), num(s.FaceT.MM()), num(s.CoreT.MM()), num(s.Core.MPa())), Value: s.BendingStiffness(), Unit: "N m", Source: sandwichForms},
			{Name: "shear stiffness", Formula: "S = G d²/tc", Numbers: fmt.Sprintf("%s × %s²/%s", num(s.CoreG.MPa()), num(s.Lever().MM()), num(s.CoreT.MM())), Value: s.ShearStiffness() / 1e3, Unit: "N/mm", Source: sandwichForms},
			{Name: "deflection", Formula: map[panel.Support]string{panel.SimplySupported: "w = 5 q b⁴/(384 D) + q b²/(8 S)", panel.Clamped: "w = q b⁴/(384 D) + q b²/(8 S)"}[support], Numbers: fmt.Sprintf("%s + %s mm", num(b.Bending.MM()), num(b.Shear.MM())), Value: b.W().MM(), Unit: "mm", Source: sandwichForms},
			{Name: "stress in a face", Formula: "σ = M/(tf d)", Numbers: fmt.Sprintf("%s/(%s × %s)", num(moment), num(s.FaceT.MM()), num(s.Lever().MM())), Value: face.MPa(), Unit: "MPa", Source: sandwichForms},
			{Name: "shear in the core", Formula: "τ = V/d", Numbers: fmt.Sprintf("%s N/mm/%s mm", num(b.V/1e3), num(s.Lever().MM())), Value: core.MPa(), Unit: "MPa", Source: sandwichForms},
			{Name: "a face wrinkles at", Formula: "σ = 0.5 (Ef Ec Gc)^(1/3)", Value: wrinkle.MPa(), Unit: "MPa", Source: "customary form for design, from memory", Holds: "theory gives 0.8 to 0.9 in place of 0.5"},
			{Name: "the core crimps at", Formula: "σ = Gc d²/(2 tf tc)", Value: crimp.MPa(), Unit: "MPa", Source: working.FromMemory},
		},
		Warnings: []string{panelOnly},
	}
}
