// Package ways compares the ways in which one damage can be repaired: a plug of
// filler with cloth over it, an overlay on one face, tapers from outside, inside
// and both at several ratios and with two lists of plies, stepped laps, a dish, a
// skin with its core, a peel. Each is measured against the panel as it was, under
// the same loads, and says what it costs in ground area, hours and days.
//
// The files, in the order in which data flows:
//
//	list.go      description -> the ways that can be done with the access there is
//	laid.go      the two that are laid on the face, without a taper
//	section.go   plies of a way, from the cut-out to the feather edge
//	model.go     those plies on a panel between its stiffeners
//	loads.go     what the panel is loaded with
//	strength.go  strains -> how much of each ply's strength is used, and where
//	bond.go      strains -> how much of the bond's strength is used
//	hand.go      the same by closed forms: the second method
//	spread.go    low and high, and which measurement would narrow them
//	effort.go    hours, days, weight, price
//	choose.go    one recommendation, with its reason
//	peel.go      a bottom peeled for blisters
//	calc.go      the closed forms, line by line, for the calculation sheet
//	picture.go   strain over the panel, bond along the slope, own error
//	memory.go    panels solved before
//
// # Strength, as the word is used here
//
// Used is the strain in a ply over the strain at which that ply begins to fail, the
// shear of a bond over its strength, and so on: 1 is the beginning of damage. The
// strength of a way under one load is what the undamaged panel used over what the
// repaired one uses, both by the same model under the same load:
//
//	strength = used(original) / used(repaired)
//
// so that errors in load, modulus and edge largely cancel. 1 is as strong as
// before; 0.5 would begin to fail at half the load. The strength of a way is the
// least over its loads.
//
// # Limits
//
// Static loads, sound workmanship (the bond's strength is that of laps made with
// care), no fatigue, no impact, no ageing, a flat panel held along four straight
// edges. A cover ply is not counted. The ratio compares; it does not certify the
// panel against any rule, and nothing here replaces a surveyor or a naval architect
// where the refer-on rules ask for one.
package ways

import (
	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/caution"
	"scarfwright/repair/estimate"
	"scarfwright/repair/survey"
)

// Kind is the sort of repair.
type Kind string

// The kinds.
const (
	Plug    Kind = "filler plug with cloth over it"
	Overlay Kind = "overlay on one face"
	Tapered Kind = "taper"
	Stepped Kind = "stepped laps"
	Dish    Kind = "dish" // partial depth, tapered
	Skin    Kind = "skin and core"
	Peel    Kind = "peel"
)

// Span is a figure with its range.
type Span struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// Case is one load with what came of it.
type Case struct {
	Load     string  `json:"load"`     // "pressure, edges held"
	Original float64 `json:"original"` // used, as it was before the damage
	Repaired float64 `json:"repaired"` // used, repaired: the greatest of the four below
	Ply      float64 `json:"ply"`      // used in plies away from the repair's edges
	Edge     float64 `json:"edge"`     // used in plies at an edge of the repair
	Bond     float64 `json:"bond"`     // used of the bond
	Core     float64 `json:"core"`     // used of the core and the faces' stability; 0 without a core
	Strength float64 `json:"strength"` // original / repaired
	Mode     string  `json:"mode"`     // "ply", "patch edge", "bond", "core"
	Where    string  `json:"where"`    // of the greatest, in words
	Hand     float64 `json:"hand"`     // the strength by closed forms, see hand.go
}

// Way is one way to repair it, measured.
type Way struct {
	Key      string  `json:"key"` // stable name, "taper-outside-12-stiffness"
	Kind     Kind    `json:"kind"`
	Name     string  `json:"name"`
	List     string  `json:"list"` // what its plies match: "matches thickness"
	Plies    string  `json:"plies"`
	Sides    string  `json:"sides"`           // face or faces worked on
	Ratio    float64 `json:"ratio,omitempty"` // of the taper
	Fits     bool    `json:"fits"`
	Left     string  `json:"left"` // clearance in words
	Chosen   bool    `json:"chosen"`
	Computed bool    `json:"computed"` // false where it does not fit, or the panel could not be computed
	Why      string  `json:"why_not,omitempty"`
	Unsuited string  `json:"unsuited,omitempty"` // why it is never recommended, though it can be computed

	Strength  Span    `json:"strength"`  // least over the cases
	Pressure  float64 `json:"pressure"`  // least over the cases of pressure
	Stiffness Span    `json:"stiffness"` // deflection of the original / of the repaired, least over the cases of pressure
	Bending   float64 `json:"bending"`   // EI (of a skin: EA) of the repair's own section over the original's
	Cases     []Case  `json:"cases"`
	Governs   int     `json:"governs"` // index of the least strength among the cases
	WError    float64 `json:"deflection_error_fraction"`
	Error     float64 `json:"strain_error_fraction"` // own estimate of the arithmetic's error, of the governing strain; 0: not estimated

	Width, Height si.Length      `json:"-"`           // of what is ground or covered
	Size          [2]si.Length   `json:"size_m"`      //
	Taper         si.Length      `json:"taper_m"`     // or the lap of an overlay
	Ground        si.Area        `json:"ground_m2"`   // ground, all faces
	Bond          si.Area        `json:"bond_m2"`     //
	Dust          si.Volume      `json:"dust_m3"`     // of solid laminate ground away
	DustMass      si.Mass        `json:"dust_kg"`     //
	Added         si.Mass        `json:"added_kg"`    // weight of the panel, after less before
	Cloth         si.Area        `json:"cloth_m2"`    //
	Resin         si.Mass        `json:"resin_kg"`    // in the laminate
	Thickness     si.Length      `json:"thickness_m"` // of the new plies
	Sessions      int            `json:"sessions"`    //
	Hours         estimate.Range `json:"hours"`       // by the tool's own rates, so that ways compare
	Days          int            `json:"days"`        // working days, rough
	Price         float64        `json:"price_rough"` // labour, cloth and resin only
	Notes         []string       `json:"notes"`       // what this way is, plainly
	Outlines      []Outline      `json:"-"`           // for the drawing
	Field         *Field         `json:"-"`           // strain ratio over the panel, of the recommended or chosen way
	Slope         *Slope         `json:"-"`           // bond shear along the slope, likewise
	Recommended   bool           `json:"recommended"` //
	parts         *parts         // what it is made of
	measured      []figures      // of each case, unspread
}

// Outline is a closed line of a way with its name.
type Outline struct {
	Name  string     `json:"name"`
	Shape geom.Shape `json:"shape_mm"`
}

// Load is one load case.
type Load struct {
	Name   string `json:"name"`
	Detail string `json:"detail"`
	Source string `json:"source"`
}

// Measurement is one that would narrow the range.
type Measurement struct {
	What   string  `json:"what"`   // to measure
	How    string  `json:"how"`    //
	Now    Span    `json:"now"`    // strength as it stands, with this alone uncertain
	Narrow float64 `json:"narrow"` // width of the range it alone brings
}

// Result is the comparison.
type Result struct {
	Caution      string            `json:"caution"` // stands on every export
	Loads        []Load            `json:"loads"`
	Pressure     si.Pressure       `json:"pressure_pa"`
	Ways         []Way             `json:"ways"`                   // in the order of their kinds, steep tapers first
	Recommended  int               `json:"recommended"`            // index, -1 for none
	Reason       string            `json:"reason"`                 // of the recommendation, or why there is none
	NotCompared  string            `json:"not_compared,omitempty"` // why no way was reckoned, where a figure would mislead
	Referrals    []survey.Referral `json:"referrals"`
	Measurements []Measurement     `json:"measurements"` // most useful first
	Assumptions  []string          `json:"assumptions"`
	Outside      []string          `json:"outside_range"` // where a formula is used beyond its range
	Limits       []string          `json:"limits"`
	Cautions     []caution.Caution `json:"cautions"`
	Original     Original          `json:"original"`
	Calculation  *Calculation      `json:"-"` // of the recommended way, else of the chosen one; nil where neither was computed
	narrow       func(w *Way) []Measurement
}

// Original is the panel as it was.
type Original struct {
	Plies      string    `json:"plies"`
	Thickness  Span      `json:"thickness_mm"`
	Assumed    bool      `json:"assumed"` // only its thickness is known
	Deflection si.Length `json:"deflection_m"`
	Used       []float64 `json:"used"` // of each load
}
