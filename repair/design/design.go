// Package design turns a survey into a repair: where to cut, how far to taper,
// which plies in which order and size, what stands behind them, and what all
// that weighs.
//
// # Words
//
// The cut-out is the hole with sound laminate all round it. The taper (scarf)
// is the ground slope from the cut-out to the feather edge: its length along
// the skin is ratio times the thickness ground away. A ply's outline is the
// cut-out grown by that part of the taper which the ply's upper face has
// reached, so that its edge lies on the slope. The cover ply laps beyond the
// feather edge.
//
// Lengths inside outlines are millimetres on the panel, seen from outside,
// origin at the panel's centre (package geom is unit-free).
//
// # Limits
//
// Flat outlines: over a curved panel the plan area falls short of the surface
// by about (chord/R)^2/24, which is stated, not corrected. Strength is not
// judged here beyond the bending stiffness of the section.
package design

import (
	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/job"
	"scarfwright/repair/working"
)

// Layer is one ply of the original or of the repair as the section sees it,
// outside to inside.
type Layer struct {
	Number    int            `json:"number"` // 1 is the outermost
	Class     string         `json:"class"`
	Name      string         `json:"name"`
	Angle     si.Angle       `json:"angle_rad"`
	Areal     si.AreaDensity `json:"areal_kg_per_m2"`
	Glass     si.Ratio       `json:"glass"`
	Thickness si.Length      `json:"thickness_m"`
	Modulus   si.Pressure    `json:"modulus_pa"`
}

// Stack is a laminate with its section properties.
type Stack struct {
	Layers    []Layer   `json:"layers"`
	Thickness si.Length `json:"thickness_m"`
	Low       si.Length `json:"low_m"`   // spread of the thickness, equal to it when not given
	High      si.Length `json:"high_m"`  //
	EI        float64   `json:"ei_nm"`   // bending stiffness per width, N m
	Assumed   bool      `json:"assumed"` // the plies are a hypothesis from a thickness alone
}

// Ply is one piece of cloth of the repair.
type Ply struct {
	Label     string         `json:"label"` // "P1" is laid first; "C" is the cover ply
	Layer     int            `json:"layer"` // layer of the repair stack, 1 is the outermost; 0 for a cover ply
	Class     string         `json:"class"`
	Name      string         `json:"name"`
	Face      string         `json:"face"` // "outside" or "inside": the ground face it is laid from
	Outline   geom.Shape     `json:"outline_mm"`
	Width     si.Length      `json:"width_m"`
	Height    si.Length      `json:"height_m"`
	Area      si.Area        `json:"area_m2"`
	Angle     si.Angle       `json:"angle_rad"` // warp to the panel's long span
	Replaces  string         `json:"replaces"`  // the original ply it stands for, in words
	Overlap   si.Length      `json:"overlap_m"` // how far it reaches past the ply beneath, all round
	Thickness si.Length      `json:"thickness_m"`
	Glass     si.Mass        `json:"glass_kg"`
	Resin     si.Mass        `json:"resin_kg"` // in the laminate, without losses
	Wet       si.AreaDensity `json:"wet_kg_per_m2"`
	Session   int            `json:"session"`
}

// Backing is the form behind a hole that is reached from one side.
type Backing struct {
	Outline    geom.Shape   `json:"outline_mm"`
	Pieces     []geom.Shape `json:"pieces_mm"`
	Width      si.Length    `json:"width_m"`  // of the whole backing
	Height     si.Length    `json:"height_m"` //
	PieceLong  si.Length    `json:"piece_long_m"`
	PieceShort si.Length    `json:"piece_short_m"`
	Lap        si.Length    `json:"lap_m"` // bond beyond the cut-out
	How        string       `json:"how"`   // how it is passed through and held
}

// CorePiece is the core to be replaced.
type CorePiece struct {
	Class     string     `json:"class"`
	Name      string     `json:"name"`
	Outline   geom.Shape `json:"outline_mm"`
	Thickness si.Length  `json:"thickness_m"`
	Area      si.Area    `json:"area_m2"`
	Volume    si.Volume  `json:"volume_m3"`
	Paste     si.Mass    `json:"paste_kg"` // bedding paste, both faces
}

// Clock is one of eight places round the repair as somebody sees it who stands
// before the ground face: twelve o'clock is up, three o'clock to the right.
type Clock struct {
	Hour   string    `json:"hour"`      // "12:00", "1:30" ...
	Angle  si.Angle  `json:"angle_rad"` // the same direction on the panel, from forward towards up
	ToCut  si.Length `json:"to_cut_m"`  // from the centre of the cut-out to its edge
	ToEdge si.Length `json:"to_edge_m"` // from the centre to the feather edge
	Taper  si.Length `json:"taper_m"`   // ground length there
	Left   si.Length `json:"left_m"`    // from the feather edge on to the nearest obstacle; negative when past it
	What   string    `json:"what"`      // that obstacle
}

// Clearance is how far the repair stays from one feature.
type Clearance struct {
	What  string    `json:"what"`
	Left  si.Length `json:"left_m"`  // from the feather edge; negative: the taper crosses it by that much
	Cover si.Length `json:"cover_m"` // the same from the edge of the cover ply
}

// Option is the repair at one taper ratio: what it takes and whether it fits.
type Option struct {
	Ratio       float64   `json:"ratio"`
	Taper       si.Length `json:"taper_m"`
	Width       si.Length `json:"width_m"` // of the feather edge
	Height      si.Length `json:"height_m"`
	Ground      si.Area   `json:"ground_m2"`       // ground area beyond the cut-out, one face
	Bond        si.Area   `json:"bond_m2"`         // sloping area
	BondPerEdge si.Length `json:"bond_per_edge_m"` // sloping length: bond area for each mm of edge
	Dust        si.Volume `json:"dust_m3"`         // laminate ground away
	Cloth       si.Area   `json:"cloth_m2"`        // of all plies, without a cover
	Left        si.Length `json:"left_m"`          // least clearance of the feather edge
	Nearest     string    `json:"nearest"`
	Fits        bool      `json:"fits"`
	Chosen      bool      `json:"chosen"`
}

// Proposal is one list of repair plies and how its section compares.
type Proposal struct {
	Name           string    `json:"name"`    // "matches thickness", "matches bending stiffness", "as chosen"
	Classes        []string  `json:"classes"` // outside to inside
	Code           string    `json:"code"`    // the same as text
	Thickness      si.Length `json:"thickness_m"`
	ThicknessRatio float64   `json:"thickness_ratio"`
	StiffnessRatio float64   `json:"stiffness_ratio"`     // bending stiffness EI, repair / original
	Low            float64   `json:"stiffness_ratio_low"` // spread with the original's uncertain thickness and kind
	High           float64   `json:"stiffness_ratio_high"`
	Filler         si.Length `json:"filler_m"` // what these plies leave to be made up to the old face
	Chosen         bool      `json:"chosen"`

	list []job.PlyRef // the classes with their angles
}

// List returns the plies with their angles, outside to inside.
func (p Proposal) List() []job.PlyRef { return p.list }

// Result is the designed repair.
type Result struct {
	Original    Stack           `json:"original"`
	Repair      Stack           `json:"repair"`
	Depth       si.Length       `json:"depth_m"` // laminate thickness that is rebuilt
	Ratio       float64         `json:"ratio"`
	Sides       string          `json:"sides"` // outside, inside, both
	Order       string          `json:"order"`
	Taper       si.Length       `json:"taper_m"` // on each ground face
	CutOut      geom.Shape      `json:"cut_out_mm"`
	Edge        geom.Shape      `json:"edge_mm"`            // feather edge
	FarSide     *Ply            `json:"far_side,omitempty"` // light ply to close the far face, not in the amounts
	CoverEdge   geom.Shape      `json:"cover_edge_mm,omitempty"`
	Plies       []Ply           `json:"plies"` // in laying order, face by face, each with its cover last
	Backing     *Backing        `json:"backing,omitempty"`
	Core        *CorePiece      `json:"core,omitempty"`
	Clocks      []Clock         `json:"clocks"`
	Clearances  []Clearance     `json:"clearances"`
	Options     []Option        `json:"options"`
	Proposals   []Proposal      `json:"proposals"`
	Sagitta     si.Length       `json:"sagitta_m"` // rise of the panel over the feather edge, 0 when flat or unknown
	Radius      si.Length       `json:"radius_m"`  // of the panel's curvature, 0 when flat or unknown
	Cloth       si.Area         `json:"cloth_m2"`
	Glass       si.Mass         `json:"glass_kg"`
	Resin       si.Mass         `json:"resin_kg"` // in the laminate
	Filler      si.Length       `json:"filler_m"` // thickness to be made up by filler where the plies end short of the old face
	outer       int             // layers of a repair from both faces that are the outer face's
	skin        bool            // one skin of a sandwich: stiffness in plane counts
	Verdicts    []check.Verdict `json:"verdicts"`
	Working     []working.Line  `json:"working"`
	Assumptions []string        `json:"assumptions"`
	Notes       []string        `json:"notes"` // what the cloths chosen ask of whoever lays them
}

// materials is what the design needs of the catalogue, looked up once.
type materials struct {
	cat   catalog.Catalogue
	resin catalog.Resin
}

// Outer is how many layers of a repair laid from both faces are the outer face's.
func (r Result) Outer() int { return r.outer }
