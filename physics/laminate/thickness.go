package laminate

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Constituents are the densities of fibre and cured resin, and the share of the
// ply's volume that is voids.
//
// Voids take room and weigh nothing: they thicken the ply, and lower its density
// and fibre volume fraction. Hand-laid work has 1 to 5 %, 2 to 3 % when good
// (common practice, no source).
type Constituents struct {
	Fibre, Resin si.Density
	Voids        si.Ratio
}

// GlassPolyester is what the class-rule thickness formula contains without saying
// so: E-glass of 2.56 g/ml, cured resin of 1.20 g/ml, no voids. (Multiply the
// formula out: 3072 = 1000 x 2.56 x 1.20 and 1.36 = 2.56 - 1.20.)
var GlassPolyester = Constituents{Fibre: si.GramsPerML(2.56), Resin: si.GramsPerML(1.20)}

// Check returns an error when no ply could be made with this glass content and
// these constituents. Call it on anything a person typed: the functions below
// take checked values, and panic on the rest.
func (c Constituents) Check(glass si.Ratio) error {
	// Every comparison is written so that NaN fails it.
	switch {
	case !(glass > 0 && glass <= 1):
		return fmt.Errorf("glass content %.4g: must be above 0 and at most 1 (a mass fraction, 0.30 for 30 %%)", float64(glass))
	case !(c.Fibre > 0) || math.IsInf(float64(c.Fibre), 1):
		return fmt.Errorf("fibre density %.4g kg/m3: must be positive", c.Fibre.KgPerM3())
	case !(c.Resin > 0) || math.IsInf(float64(c.Resin), 1):
		return fmt.Errorf("resin density %.4g kg/m3: must be positive", c.Resin.KgPerM3())
	case !(c.Voids >= 0 && c.Voids < 1):
		return fmt.Errorf("void content %.4g: must be at least 0 and below 1", float64(c.Voids))
	}
	return nil
}

func (c Constituents) mustCheck(glass si.Ratio) {
	if err := c.Check(glass); err != nil {
		panic("laminate: unchecked input: " + err.Error())
	}
}

// Thickness returns the thickness of a ply in metres, from the weight of dry
// glass in it and its glass content by mass, for 0 < glass <= 1.
//
//	t = w [1/rf + (1-G)/(G rr)] / (1-V)
//
// that is: the glass melted into a solid sheet, plus the resin beside it, swollen
// by the voids. It promises: t is proportional to w; t falls as G rises;
// GlassContent of the result gives G back.
func Thickness(w si.AreaDensity, glass si.Ratio, c Constituents) si.Length {
	c.mustCheck(glass)
	G, rf, rr, V := float64(glass), float64(c.Fibre), float64(c.Resin), float64(c.Voids)
	solid := 1/rf + (1-G)/(G*rr) // m3 of void-free ply per kg of glass
	return si.Length(float64(w) * solid / (1 - V))
}

// ClassThickness returns the thickness of a ply in metres by the formula as class
// rules and ISO 12215-5 print it (from memory; the printed 1.250 mm for 600 g/m2
// of mat at G = 0.33, LR2013 Table 3.1.1, pins it), for 0 < glass <= 1.
//
//	t = w (2.56/G - 1.36) / 3072     t in mm, w in g/m2
//
// It promises to equal Thickness with GlassPolyester; both are kept because the
// reader of a rule looks for this one.
func ClassThickness(w si.AreaDensity, glass si.Ratio) si.Length {
	GlassPolyester.mustCheck(glass)
	return si.MM(w.GSM() * (2.56/float64(glass) - 1.36) / 3072)
}

// GlassContent returns the glass content by mass of a ply of measured thickness,
// the inverse of Thickness, for t >= 0 and w >= 0 (not both zero).
//
//	1/G = 1 + rr [t(1-V)/w - 1/rf]
//
// A result above 1 means that the glass alone would be thicker than what was
// measured: the weight or the thickness is wrong. No glass gives 0.
func GlassContent(w si.AreaDensity, t si.Length, c Constituents) si.Ratio {
	c.mustCheck(1)
	rf, rr, V := float64(c.Fibre), float64(c.Resin), float64(c.Voids)
	solid := float64(t) * (1 - V) / float64(w)
	return si.Ratio(1 / (1 + rr*(solid-1/rf)))
}

// ResinWeight returns the weight of cured resin in a square metre of ply, in
// kg/m2, for 0 < glass <= 1. It is what stays in the laminate: the resin left in
// brush, roller and cup comes on top.
//
//	wr = w (1-G)/G
func ResinWeight(w si.AreaDensity, glass si.Ratio) si.AreaDensity {
	GlassPolyester.mustCheck(glass)
	G := float64(glass)
	return si.AreaDensity(float64(w) * (1 - G) / G)
}

// VolumeFraction returns the share of the ply's volume that is fibre, voids
// counted in that volume, for 0 < glass <= 1.
//
//	Vf = (1-V) (G/rf) / (G/rf + (1-G)/rr)
//
// It promises that Vf rf t is the weight of glass w.
func VolumeFraction(glass si.Ratio, c Constituents) si.Ratio {
	c.mustCheck(glass)
	G, rf, rr, V := float64(glass), float64(c.Fibre), float64(c.Resin), float64(c.Voids)
	return si.Ratio((1 - V) * (G / rf) / (G/rf + (1-G)/rr))
}

// LaminateDensity returns the density of the finished ply in kg/m3, voids
// included, for 0 < glass <= 1.
//
//	r = (1-V) / (G/rf + (1-G)/rr)
//
// It promises that r t is the weight of glass plus resin.
func LaminateDensity(glass si.Ratio, c Constituents) si.Density {
	c.mustCheck(glass)
	G, rf, rr, V := float64(glass), float64(c.Fibre), float64(c.Resin), float64(c.Voids)
	return si.Density((1 - V) / (G/rf + (1-G)/rr))
}
