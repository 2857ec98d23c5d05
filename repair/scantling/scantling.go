// Package scantling gives the pressure a panel of a small craft is designed for and
// the thickness that goes with it, by the formulas of the small-craft standard
// ISO 12215-5:2008.
//
// It is for information only: nothing is passed or refused on it. A repair is judged
// by the same load on the panel as it was and as it will be (the ratio does not
// depend on the load's size where theory is linear); the absolute pressure tells a
// naval architect which world the panel lives in.
//
//	motor bottom, displacement   P = (2.4 m^0.33 + 20) kAR kDC kL
//	motor bottom, planing        P = 0.1 m/(LWL BC) (1 + kDC^0.5 nCG) kAR kL
//	least                        P = 0.45 m^0.33 + 0.9 LWL kDC
//	single skin                  t = b kC sqrt(P k2/(1000 sd))
//
// with m in kg, lengths in m (b in mm), P in kN/m2, speeds in knots, as the standard
// writes them.
//
// Source: every digit from memory; the shape and several constants also read in class
// guidance that reproduces the standard. k2 and k3 agree with the exact clamped plate
// within 0.3 and 1.3 % (package panel has that plate), which supports them; nothing
// supports the rest. Motor craft only, 2.5 to 24 m, to 50 knots.
package scantling

import (
	"errors"
	"fmt"
	"math"

	"scarfwright/physics/panel"
	"scarfwright/physics/si"
)

// Category is the design category of the craft, A (ocean) to D (sheltered).
type Category string

// Categories in their order.
var Categories = []Category{"A", "B", "C", "D"}

var categoryFactor = map[Category]float64{"A": 1, "B": 0.8, "C": 0.6, "D": 0.4}

// Craft is what the pressure depends on.
type Craft struct {
	Waterline si.Length // LWL, 2.5 to 24 m
	Chine     si.Length // BC, beam between the chines
	Mass      si.Mass   // mLDC, loaded
	Speed     si.Speed  // up to 50 knots
	Deadrise  si.Angle  // at 0.4 of LWL from the stern, 10 to 30 degrees
	Category  Category
}

// Panel is where the panel lies and how large it is between its stiffeners.
type Panel struct {
	Short, Long si.Length // b and l
	Crown       si.Length // rise of a curved panel over its short span
	Forward     si.Ratio  // x/LWL, 0 at the stern, 1 at the bow
}

// Pressure is the design pressure with what it was made of.
type Pressure struct {
	Design                        si.Pressure // the greatest of the three
	Displacement, Planing, Least  si.Pressure
	Governs                       string  // "displacement", "planing" or "least"
	Acceleration                  float64 // nCG, in g; 0 for a craft that does not plane
	AreaPlaning, AreaDisplacement float64 // kAR
	Along                         float64 // kL
	Category                      float64 // kDC
	Planes                        bool    // V/sqrt(LWL) of 5 or more
}

const knot = 1852.0 / 3600

func (c Craft) check() error {
	var errs []error
	wrong := func(ok bool, format string, args ...any) {
		if !ok {
			errs = append(errs, fmt.Errorf(format, args...))
		}
	}
	wrong(c.Waterline >= 2.5 && c.Waterline <= 24, "waterline of %.3g m: the formulas are for 2.5 to 24 m", c.Waterline.M())
	wrong(c.Chine > 0 && c.Chine <= c.Waterline, "beam between the chines of %.3g m: must be more than 0 and no more than the waterline", c.Chine.M())
	wrong(c.Mass > 50 && c.Mass < 200e3, "mass of %.4g kg: must be more than 50 kg and less than 200 t", c.Mass.Kg())
	wrong(c.Speed > 0 && float64(c.Speed) <= 50*knot*(1+1e-9), "speed of %.3g kn: the formulas are for up to 50 kn", float64(c.Speed)/knot)
	wrong(c.Deadrise >= 0 && c.Deadrise.Degrees() <= 45, "deadrise of %.3g degrees: must lie within 0 and 45", c.Deadrise.Degrees())
	wrong(categoryFactor[c.Category] > 0, "design category %q: A, B, C or D", c.Category)
	return errors.Join(errs...)
}

func (p Panel) check() error {
	switch {
	case !(p.Short > 0.02 && p.Long >= p.Short && p.Long < 10):
		return fmt.Errorf("panel of %.4g by %.4g mm: the short span must be more than 20 mm, the long one no shorter and less than 10 m", p.Short.MM(), p.Long.MM())
	case !(p.Crown >= 0 && p.Crown < p.Short):
		return fmt.Errorf("crown of %.4g mm: must be less than the short span", p.Crown.MM())
	case !(p.Forward >= 0 && p.Forward <= 1):
		return fmt.Errorf("place along the waterline %.3g: from 0 at the stern to 1 at the bow", float64(p.Forward))
	}
	return nil
}

// Bottom returns the design pressure of a bottom panel of a motor craft.
func Bottom(c Craft, p Panel) (Pressure, error) {
	if err := errors.Join(c.check(), p.check()); err != nil {
		return Pressure{}, err
	}
	L, B, m, V := c.Waterline.M(), c.Chine.M(), c.Mass.Kg(), float64(c.Speed)/knot
	beta := min(30, max(10, c.Deadrise.Degrees()))
	kDC := categoryFactor[c.Category]
	n := 0.32 * (L/(10*B) + 0.084) * (50 - beta) * V * V * B * B / m
	if n > 3 {
		n = min(7, 0.5*V/math.Pow(m, 0.17))
	}
	kL := 1.0
	if x := float64(p.Forward); x <= 0.6 {
		held := min(6, max(3, n))
		kL = (1-0.167*held)/0.6*x + 0.167*held
	}
	out := Pressure{Acceleration: n, Along: kL, Category: kDC, Planes: V/math.Sqrt(L) >= 5}
	out.AreaPlaning, out.AreaDisplacement = areaFactor(c, p, 1), areaFactor(c, p, 1.5-3e-4*p.Short.MM())
	displacement := (2.4*math.Pow(m, 0.33) + 20) * out.AreaDisplacement * kDC * kL
	planing := 0.1 * m / (L * B) * (1 + math.Sqrt(kDC)*n) * out.AreaPlaning * kL
	least := 0.45*math.Pow(m, 0.33) + 0.9*L*kDC
	out.Displacement, out.Planing, out.Least = si.Pressure(1e3*displacement), si.Pressure(1e3*planing), si.Pressure(1e3*least)
	out.Design, out.Governs = out.Displacement, "displacement"
	if out.Planing > out.Design {
		out.Design, out.Governs = out.Planing, "planing"
	}
	if out.Least > out.Design {
		out.Design, out.Governs = out.Least, "least"
	}
	return out, nil
}

// areaFactor is kAR: a large panel sees less of a slamming peak.
func areaFactor(c Craft, p Panel, kR float64) float64 {
	b, l := p.Short.M(), p.Long.M()
	area := min(l*b, 2.5*b*b)
	return min(1, max(0.25, kR*0.1*math.Pow(c.Mass.Kg(), 0.15)/math.Pow(area, 0.3)))
}

// Thickness returns what a single skin must have under a pressure at a design stress,
// half the ultimate flexural strength by the standard.
func Thickness(p Panel, design, stress si.Pressure) (si.Length, error) {
	if err := p.check(); err != nil {
		return 0, err
	}
	if !(design > 0 && stress > 0) {
		return 0, fmt.Errorf("pressure of %.4g kPa and design stress of %.4g MPa: both must be more than 0", float64(design)/1e3, float64(stress)/1e6)
	}
	k2 := panel.K2(p.Long, p.Short)
	kPa, MPa := float64(design)/1e3, float64(stress)/1e6
	return si.MM(p.Short.MM() * panel.CurvatureFactor(p.Crown, p.Short) * math.Sqrt(kPa*k2/(1000*MPa))), nil
}
