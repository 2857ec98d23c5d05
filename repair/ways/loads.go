package ways

import (
	"fmt"

	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/job"
	"scarfwright/repair/scantling"
	"scarfwright/repair/working"
)

// load is one load case on the panel.
type load struct {
	Load
	edge     panel.Edge
	pressure bool
	stretch  [2]float64 // of the held edges, when it is not pressure
}

// strained is the stretch of the in-plane cases: near the first cracks of a
// hand-laid laminate, where the question is decided.
const strained = 0.01

// loadsFor lists the cases under a pressure.
//
// A panel that is pushed in its plane buckles long before its laminate fails, and
// what it bears then goes with its bending stiffness, which is compared by itself.
func loadsFor(q si.Pressure, sys si.System) []load {
	held := panel.Edge{Support: panel.Clamped}
	free := panel.Edge{Support: panel.SimplySupported, Hard: true}
	qs := si.Show(q, sys, 3)
	plane := "The panel's edges are moved by an even stretch of 1 %, as where it is part of a hull that bends; held against turning; large deflections"
	const method = "von Kármán plate, physics/panel"
	return []load{
		{Load: Load{"pressure, edges held", qs + " from outside, edges built in; large deflections", method}, edge: held, pressure: true},
		{Load: Load{"pressure, edges free to turn", qs + " from outside, edges free to turn, not to move; large deflections", method}, edge: free, pressure: true},
		{Load: Load{"pulled along", plane, method}, edge: held, stretch: [2]float64{strained, 0}},
		{Load: Load{"pulled across", plane, method}, edge: held, stretch: [2]float64{0, strained}},
	}
}

// Pressures where the craft does not tell its own (from memory: what small-craft
// rules ask of a deck at least; a bottom's is ours, a middle one).
var (
	deckPressure    = si.KPa(5)
	unknownPressure = si.KPa(20)
)

// categoryAssumed is the design category taken, for the job file has none.
const categoryAssumed = scantling.Category("C")

// designPressure returns the pressure the panel is compared under, and what must be
// said of it. It is a level for a comparison, not a design load: both panels bear
// the same.
func designPressure(d job.Description) (q si.Pressure, source string, notes []string) {
	sys := d.Choices.System()
	if p := d.Panel.Place; p == "deck" || p == "superstructure" {
		return deckPressure, working.FromMemory, []string{fmt.Sprintf("Pressure %s, the least that small-craft rules ask of a deck (from memory): a level to compare at.", si.Show(deckPressure, sys, 3))}
	}
	craft := scantling.Craft{
		Waterline: d.Boat.Waterline, Chine: d.Boat.Beam, Mass: d.Boat.Mass,
		Speed: max(d.Boat.Speed, si.Knots(1)), Deadrise: d.Boat.Deadrise, Category: categoryAssumed,
	}
	if craft.Chine == 0 {
		craft.Chine = si.Scale(craft.Waterline, beamShare)
	}
	where := scantling.Panel{Short: min(d.Panel.Short, d.Panel.Long), Long: max(d.Panel.Short, d.Panel.Long), Forward: 0.5}
	p, err := scantling.Bottom(craft, where)
	if err != nil {
		return unknownPressure, working.Ours, []string{fmt.Sprintf("Pressure %s, a middle one of small craft: the boat's own could not be told (%v).", si.Show(unknownPressure, sys, 3), err)}
	}
	note := fmt.Sprintf("Pressure %s by the small-craft formulas for the bottom of a motor craft, from memory, category %s and the middle of the waterline assumed: a level to compare at, and information only. Both panels bear the same.",
		si.Show(p.Design, sys, 3), categoryAssumed)
	if d.Boat.Beam == 0 {
		note += " The beam is not given: a third of the waterline taken."
	}
	return p.Design, "ISO12215-5-2008: from memory", []string{note}
}

// beamShare of the waterline stands in for a beam that is not given.
const beamShare = 1.0 / 3
