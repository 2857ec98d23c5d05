package catalog

import (
	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// Kind is the kind of a reinforcement.
type Kind string

// The kinds.
const (
	Mat        Kind = "mat"              // chopped strand mat: no direction
	Roving     Kind = "roving"           // woven roving, 0/90 to the roll
	Weave      Kind = "weave"            // fine woven cloth, 0/90
	Biaxial    Kind = "biaxial"          // stitched, ±45
	BiaxialMat Kind = "biaxial with mat" // the same with a mat stitched on
)

// Family is what the weights of one kind share.
type Family struct {
	Kind                Kind               `yaml:"kind"`
	Bias                si.Angle           `yaml:"bias"`                 // fibre axes to the roll: 0 for 0/90, 45 degrees for ±45
	Glass               Value[si.Ratio]    `yaml:"glass"`                // by mass, hand laid
	Fibre               Value[si.Density]  `yaml:"fibre"`                // density
	Modulus             Value[si.Pressure] `yaml:"modulus"`              // tensile, of the hand-laid ply, along its fibres
	CompressionModulus  Value[si.Pressure] `yaml:"compression_modulus"`  // class-rule route
	TensileStrength     Value[si.Pressure] `yaml:"tensile_strength"`     // class-rule route
	CompressiveStrength Value[si.Pressure] `yaml:"compressive_strength"` // class-rule route
	FlexuralStrength    Value[si.Pressure] `yaml:"flexural_strength"`    // class-rule route
	Note                string             `yaml:"note"`                 // what its user must know
}

// Cloth is one weight of reinforcement.
type Cloth struct {
	Class  string
	Name   string
	Areal  si.AreaDensity // dry
	Roll   Value[si.Length]
	Cost   Value[float64] // a square metre
	Width  si.Length      // of the roll, typical
	Price  float64        // a square metre, typical; invented for the demo
	Family                // what it shares with its kind
}

func (c Cloth) class() string { return c.Class }

// GlassShare returns the typical hand-laid glass content by mass.
func (c Cloth) GlassShare() si.Ratio { return c.Glass.Typical }

// Stiffness returns the typical tensile modulus of the hand-laid ply, for the
// comparison of two sections; it is of another route than the strengths.
func (c Cloth) Stiffness() si.Pressure { return c.Modulus.Typical }

// Thickness returns the thickness of one hand-laid ply without voids, in metres,
// with the cured density of the resin.
func (c Cloth) Thickness(r Resin) si.Length {
	return laminate.Thickness(c.Areal, c.Glass.Typical,
		laminate.Constituents{Fibre: c.Fibre.Typical, Resin: r.Cured.Typical})
}

// Resin returns the resin that stays in a square metre of ply, in kg/m2, without losses.
func (c Cloth) Resin() si.AreaDensity {
	return laminate.ResinWeight(c.Areal, c.Glass.Typical)
}

// Core is the middle of a sandwich. Its price is for its listed thickness.
type Core struct {
	Class               string             `yaml:"class"`
	Name                string             `yaml:"name"`
	Density             Value[si.Density]  `yaml:"density"`
	ShearStrength       Value[si.Pressure] `yaml:"shear_strength"`
	ShearModulus        Value[si.Pressure] `yaml:"shear_modulus"`
	CompressiveStrength Value[si.Pressure] `yaml:"compressive_strength"`
	Softens             Value[si.Temp]     `yaml:"softens"` // exotherm and dark skins must stay below
	Thickness           si.Length          `yaml:"thickness"`
	Cost                Value[float64]     `yaml:"price"` // a square metre of that thickness
	Price               float64            `yaml:"-"`     // its typical value
}

func (c Core) class() string { return c.Class }

// Consumable is something used up and not built in.
type Consumable struct {
	Class string         `yaml:"class"`
	Name  string         `yaml:"name"`
	Unit  string         `yaml:"unit"`  // what is counted: disc, pair, litre
	Per   string         `yaml:"per"`   // m2 ground, m2 finished, session, batch, person hour or job
	Count Value[float64] `yaml:"count"` // units for each of those
	Cost  Value[float64] `yaml:"price"` // of one unit
	Price float64        `yaml:"-"`     // its typical value
}

func (c Consumable) class() string { return c.Class }

// perWhat lists what consumables are counted by.
var perWhat = []string{"m2 ground", "m2 finished", "session", "batch", "person hour", "job"}
