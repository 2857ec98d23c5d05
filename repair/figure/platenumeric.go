package figure

import (
	"fmt"

	"scarfwright/physics/laminate"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

const (
	plateNumeric = "our own spectral elements, physics/panel: laminated plate with shear through the thickness; held to an independent computation (scipy) in its tests"
)

// plateInputs are those of the numerical plate: as the closed form's, with the shear
// moduli through the thickness and large deflection.
func plateInputs(closed []Input) []Input {
	return append(append([]Input(nil), closed...),
		Input{Key: "G13", Doc: "shear modulus of the plies through the thickness; that in the plane if left out", Unit: "2.2 GPa", Optional: true},
		Input{Key: "theory", Doc: "linear, or large deflection (von Kármán)", Unit: "large", Default: "large", Words: []string{"linear", "large"}})
}

func plateFigure(r *reader) Answer {
	a, b, q := quantity[si.Length](r, "a", positive), quantity[si.Length](r, "b", positive), quantity[si.Pressure](r, "pressure", bounds{-1e9, 1e9, false, "a pressure"})
	edges, theory := r.word("edges"), r.word("theory")
	var plies []laminate.Ply
	if r.has("stack") {
		for _, key := range []string{"ply", "E1", "E2", "nu12", "G12"} {
			if !r.need(key, "is needed with stack.") {
				return Answer{}
			}
		}
		_, plies = r.plies(r.lamina())
	} else {
		l := laminate.Isotropic(quantity[si.Pressure](r, "E", positive), r.number("nu", between(0, 0.49, "between 0 and 0.49")))
		plies = []laminate.Ply{{Lamina: l, Thickness: quantity[si.Length](r, "thickness", positive)}}
	}
	if !r.ok() {
		return Answer{}
	}
	if x := float64(a / b); x > 10 || x < 0.1 {
		r.fail("b", "a panel more than ten times as long as wide is a strip.", "")
		return Answer{}
	}
	lay := make([]panel.Ply, len(plies))
	for i, p := range plies {
		G := p.Lamina.G12
		if r.has("G13") {
			G = quantity[si.Pressure](r, "G13", positive)
		}
		lay[i] = panel.Ply{Ply: p, G13: G, G23: G}
	}
	support := panel.Clamped
	if edges == "simple" {
		support = panel.SimplySupported
	}
	p := panel.Panel{Length: a, Width: b, Base: panel.Centred(lay...), Edges: panel.AllEdges(panel.Edge{Support: support}), Pressure: q}
	return r.solved(p, theory == "large", nil)
}

// solved solves a panel and tells the answer; names are of its zones, from the base on.
func (r *reader) solved(p panel.Panel, large bool, names []string) Answer {
	if !r.ok() {
		return Answer{}
	}
	got, err := panel.Solve(p, panel.Options{}, large)
	if err != nil {
		r.fail(r.inputs[0].Key, err.Error(), "")
		return Answer{}
	}
	centre, err := got.Deflection(panel.Point{})
	if err != nil {
		r.fail(r.inputs[0].Key, err.Error(), "")
		return Answer{}
	}
	load, reaction, leftOver := got.Equilibrium()
	worst := got.Worst.Strain[got.Component]
	name := "base"
	if z := got.Worst.Zone; z < len(names) {
		name = names[z]
	}
	axis := [...]string{"along", "across"}[got.Component]
	theory := map[bool]string{true: "large deflection", false: "small deflection"}[large]
	thick := p.Base.Thickness()
	a := Answer{
		Results: Results{
			{Key: "deflection_mm", Value: centre.MM()}, {Key: "max_deflection_mm", Value: got.W.MM()},
			{Key: "max_deflection_x_mm", Value: got.WAt.X.MM()}, {Key: "max_deflection_y_mm", Value: got.WAt.Y.MM()}, {Key: "deflection_error_mm", Value: got.WError.MM()},
			{Key: "worst_strain_fraction", Value: worst}, {Key: "worst_strain_error_fraction", Value: got.StrainError}, {Key: "worst_direction_words", Text: axis + " the fibres"},
			{Key: "worst_zone_words", Text: name}, {Key: "worst_ply_number", Value: float64(got.Worst.Ply + 1)},
			{Key: "worst_x_mm", Value: got.Worst.At.X.MM()}, {Key: "worst_y_mm", Value: got.Worst.At.Y.MM()},
			{Key: "worst_stress_mpa", Value: got.Worst.Stress[got.Component].MPa()},
			{Key: "deflection_to_thickness_ratio", Value: float64(got.W / thick)}, {Key: "equilibrium_error_percent", Value: 100 * leftOver},
		},
		Working: []working.Line{
			{Name: "greatest deflection", Formula: "A, B, D of every zone; elements on the zones' outlines", Numbers: theory + fmt.Sprintf(", at %s, %s mm from the middle", num(got.WAt.X.MM()), num(got.WAt.Y.MM())), Value: got.W.MM(), Unit: "mm", Source: plateNumeric, Holds: fmt.Sprintf("off by about %s mm through the mesh; the laminate and the edges are known less well", num(got.WError.MM()))},
			{Name: "greatest strain of a ply", Formula: "along or across its fibres, over all plies, zones and places", Numbers: fmt.Sprintf("ply %d of %s, %s the fibres, at %s, %s mm", got.Worst.Ply+1, name, axis, num(got.Worst.At.X.MM()), num(got.Worst.At.Y.MM())), Value: 1e6 * worst, Unit: "µm/m", Source: plateNumeric, Holds: fmt.Sprintf("off by about %s µm/m through the mesh", num(1e6*got.StrainError))},
			{Name: "load and what the edges bear", Formula: "q A against the sum of the reactions", Numbers: fmt.Sprintf("%s N and %s N", num(float64(load)), num(float64(reaction))), Value: 100 * leftOver, Unit: "%", Source: working.Identity},
		},
		Warnings: []string{panelOnly},
	}
	if !large && got.W > thick/2 {
		a.Warnings = append(a.Warnings, fmt.Sprintf("It moves %.2g times its thickness: small-deflection theory overstates this. Take theory=large.", float64(got.W/thick)))
	}
	return a
}
