package laminate

import (
	"fmt"

	"scarfwright/physics/si"
)

// Reinforcement is the kind of glass that the class rules tell apart.
type Reinforcement int

const (
	CSM    Reinforcement = iota // chopped strand mat, sprayed chop: no direction
	Roving                      // woven roving, cloth, balanced cross-ply, along a fibre direction
)

// String returns the short name used in tables.
func (r Reinforcement) String() string {
	switch r {
	case CSM:
		return "CSM"
	case Roving:
		return "roving"
	}
	return fmt.Sprintf("Reinforcement(%d)", int(r))
}

// ClassProperties are the strengths and moduli that a rule allows for an E-glass
// and polyester laminate that has not been tested. They are ultimate values: the
// rule's safety factor comes on top, and a zero field means "not in this rule".
type ClassProperties struct {
	TensileModulus, TensileStrength         si.Pressure
	CompressiveModulus, CompressiveStrength si.Pressure
	FlexuralStrength, FlexuralModulus       si.Pressure
	ShearStrength, ShearModulus             si.Pressure // in the plane of the laminate
	InterlaminarShear                       si.Pressure // strength between plies
}

// The glass contents for which ClassRule and the quadratic rules answer. The rule
// texts' own limits were not read, so these are ours: below 0.20 the line for the
// compressive modulus (zero at 0.15) leaves the tensile one; above 0.65 no
// hand-laid or bagged panel is found (common practice, no source).
const (
	MinClassGlass = si.Ratio(0.20)
	MaxClassGlass = si.Ratio(0.65)
)

func checkClassGlass(glass si.Ratio) error {
	if glass >= MinClassGlass && glass <= MaxClassGlass { // false for NaN
		return nil
	}
	return fmt.Errorf("glass content %.4g: the class-rule formulae are used from %.2f to %.2f (mass fraction, 0.30 for 30 %%)",
		float64(glass), float64(MinClassGlass), float64(MaxClassGlass))
}

// ClassRule returns the properties of E-glass laminates in pascals by the linear
// set of class rules, for a glass content from MinClassGlass to MaxClassGlass; an
// error outside.
//
//	                        mat            roving, cross-ply
//	tensile modulus       15 G + 2           30 G - 0.5      GPa
//	tensile strength     200 G + 25         400 G - 10       MPa
//	compressive modulus   40 G - 6           the same        GPa
//	compressive strength 150 G + 72          the same        MPa
//	flexural strength    502 G^2 + 106.8     the same        MPa
//	flexural modulus     33.4 G^2 + 2.2      the same        GPa
//	shear strength        80 G + 38          the same        MPa
//	shear modulus         1.7 G + 2.24       the same        GPa
//	interlaminar shear    22.5 - 17.5 G      the same        MPa
//
// LR-SSC Pt 8 Ch 3, from memory; the mat moduli at G = 0.33 are read in LR2013
// (6950 and 7200 MPa) and agree. Roving values hold along a fibre direction of a
// balanced cloth: at 45 degrees to it the laminate is weaker and softer.
func ClassRule(kind Reinforcement, glass si.Ratio) (ClassProperties, error) {
	if err := checkClassGlass(glass); err != nil {
		return ClassProperties{}, err
	}
	G := float64(glass)
	p := ClassProperties{
		CompressiveModulus:  si.GPa(40*G - 6),
		CompressiveStrength: si.MPa(150*G + 72),
		FlexuralStrength:    si.MPa(502*G*G + 106.8),
		FlexuralModulus:     si.GPa(33.4*G*G + 2.2),
		ShearStrength:       si.MPa(80*G + 38),
		ShearModulus:        si.GPa(1.7*G + 2.24),
		InterlaminarShear:   si.MPa(22.5 - 17.5*G),
	}
	switch kind {
	case CSM:
		p.TensileModulus, p.TensileStrength = si.GPa(15*G+2), si.MPa(200*G+25)
	case Roving:
		p.TensileModulus, p.TensileStrength = si.GPa(30*G-0.5), si.MPa(400*G-10)
	default:
		return ClassProperties{}, fmt.Errorf("reinforcement %v: the class rules know CSM and roving", kind)
	}
	return p, nil
}

// SmallCraftRule returns the properties of mat, and of mat with roving, by the
// quadratic family in the manner of ISO 12215-5:2008 Annex C, in pascals, for the
// same glass contents as ClassRule.
//
//	tensile strength = 800 G^2 - 80 G + 37 MPa    tensile modulus = 38 G - 5 GPa
//	flexural strength = 502 G^2 + 107 MPa         the rest as ClassRule
//
// All from memory, of medium confidence: the standard itself was not read. The
// two moduli that were not recalled (compressive, flexural) are left zero. It is
// a second opinion beside ClassRule, not a mixture with it: at G = 0.30 the two
// agree on mat to 0.1 MPa and 0.1 GPa.
func SmallCraftRule(glass si.Ratio) (ClassProperties, error) {
	p, err := ClassRule(CSM, glass)
	if err != nil {
		return ClassProperties{}, err
	}
	G := float64(glass)
	p.TensileStrength = si.MPa(800*G*G - 80*G + 37)
	p.TensileModulus = si.GPa(38*G - 5)
	p.FlexuralStrength = si.MPa(502*G*G + 107)
	p.CompressiveModulus, p.FlexuralModulus = 0, 0
	return p, nil
}

// CombinationRule returns the tensile strength and modulus of mat-and-roving
// combinations by the older yacht-rule quadratic, in pascals, for the same glass
// contents as ClassRule; every other field is zero.
//
//	tensile strength = 1278 G^2 - 510 G + 123 MPa    tensile modulus = 37 G - 4.75 GPa
//
// From memory; G is the glass content of the whole combination.
func CombinationRule(glass si.Ratio) (ClassProperties, error) {
	if err := checkClassGlass(glass); err != nil {
		return ClassProperties{}, err
	}
	G := float64(glass)
	return ClassProperties{
		TensileStrength: si.MPa(1278*G*G - 510*G + 123),
		TensileModulus:  si.GPa(37*G - 4.75),
	}, nil
}
