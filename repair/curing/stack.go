package curing

import (
	"scarfwright/physics/heat"
	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/design"
)

// Typical thermal properties, from memory, as the cure literature and the trade's
// tables give them for hand-laid glass, wood and light foam.
var (
	laminateConductivity = si.Conductivity(0.25) // through the thickness, W/(m K)
	laminateSpecificHeat = si.SpecificHeat(1100) // set laminate, J/(kg K)
	laminateDensity      = si.KgPerM3(1550)
	wetConductivity      = si.Conductivity(0.22)
	glassSpecificHeat    = si.SpecificHeat(800)
	formThickness        = si.MM(6) // a plywood form
	formConductivity     = si.Conductivity(0.13)
	formDensity          = si.KgPerM3(550)
	formSpecificHeat     = si.SpecificHeat(1600)
	backingThickness     = si.MM(1.5)
	foamConductivity     = si.Conductivity(0.035)
	foamSpecificHeat     = si.SpecificHeat(1400)
	faceHeatTransfer     = si.HeatTransfer(8) // still air and radiation, W/(m2 K)
)

// Highest temperatures a session may reach, from memory: foam softens and the
// old gelcoat behind a patch prints through above 60 °C; a plain laminate is
// kept under 80 °C.
var (
	limitOverFoam    = si.Celsius(60)
	limitOverGelcoat = si.Celsius(60)
	limitPlain       = si.Celsius(80)
)

// leastSkin is taken where a dish is said to go through the whole laminate.
var leastSkin = si.MM(0.5)

// behind returns the layers behind the repair's middle, nearest first, what they
// are called, and the limit they set.
func behind(d design.Result, dish bool, core catalog.Core, inner si.Length) (layers []heat.Layer, names []Named, what string, limit si.Temp) {
	switch {
	case d.Core != nil:
		foam := heat.Layer{Thickness: d.Core.Thickness, Conductivity: foamConductivity, Density: core.Density.Typical, SpecificHeat: foamSpecificHeat}
		return []heat.Layer{foam, set(inner)}, []Named{{CoreName, d.Core.Thickness, false}, {"other skin", inner, false}}, "core", limitOverFoam
	case dish:
		t := max(leastSkin, d.Original.Thickness-d.Depth)
		return []heat.Layer{set(t)}, []Named{{"old laminate", t, false}}, "old laminate, its gelcoat on the far face", limitOverGelcoat
	case d.Backing != nil:
		return []heat.Layer{set(backingThickness)}, []Named{{"backing", backingThickness, false}}, "backing", limitPlain
	}
	form := heat.Layer{Thickness: formThickness, Conductivity: formConductivity, Density: formDensity, SpecificHeat: formSpecificHeat}
	return []heat.Layer{form}, []Named{{"form", formThickness, false}}, "form", limitPlain
}

// wet returns the session's plies as one reacting layer. Its heat is per kilogram
// of laminate: that of the resin times the resin's share.
func wet(plies []design.Ply, r Resin) heat.Layer {
	var t si.Length
	var glass, resin float64 // kg/m2
	for _, p := range plies {
		t += p.Thickness
		w := float64(p.Glass) / float64(p.Area)
		glass += w
		resin += float64(p.Wet) - w
	}
	share := si.Ratio(glass / (glass + resin))
	rho := laminate.LaminateDensity(share, laminate.Constituents{Fibre: laminate.GlassPolyester.Fibre, Resin: r.Model.Density()})
	return heat.Layer{
		Thickness: t, Conductivity: wetConductivity, Density: rho,
		SpecificHeat: si.Scale(r.Model.SpecificHeat(), 1-share) + si.Scale(glassSpecificHeat, share),
		Reaction:     r.reaction(si.Scale(r.Model.Heat(), 1-share)),
		Seed:         r.seed(),
	}
}
