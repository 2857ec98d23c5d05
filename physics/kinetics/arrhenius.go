package kinetics

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// R is the molar gas constant in J/(mol K), 8.314462618: exact since 2019 up to
// digits cut here (SI brochure, 9th ed.: the product of N_A and k; from memory).
const R = 8.314462618

// Arrhenius is a rate constant that grows with temperature.
//
//	K = A exp(-E/RT)
//
// A is in 1/s. A figure printed per minute must be divided by 60 by whoever types
// it in; no helper does it, so that the division stands where it can be seen. The
// zero value is a reaction that doesn't happen.
type Arrhenius struct {
	A float64 // 1/s
	E si.MolarEnergy
}

// K returns the rate constant in 1/s at an absolute temperature above 0 K.
func (k Arrhenius) K(T si.Temp) float64 {
	return k.A * math.Exp(-float64(k.E)/(R*float64(T)))
}

// Times returns the rate constant multiplied at every temperature.
func (k Arrhenius) Times(factor float64) Arrhenius { return Arrhenius{k.A * factor, k.E} }

// FromReference returns the Arrhenius constant that has the value k in 1/s at the
// reference temperature. Tables of room-temperature resins are best kept this way:
// A and E of one fit are so correlated that A alone says nothing.
//
//	A = k exp(E/R Tref)
func FromReference(k float64, ref si.Temp, E si.MolarEnergy) (Arrhenius, error) {
	switch {
	case !(k > 0 && finite(k)):
		return Arrhenius{}, fmt.Errorf("rate constant %g 1/s: must be more than 0", k)
	case !(ref > 0 && finite(float64(ref))):
		return Arrhenius{}, tempError("reference temperature", ref)
	}
	c := Arrhenius{k * math.Exp(float64(E)/(R*float64(ref))), E}
	return c, c.check("rate constant")
}

// EnergyFor returns the activation energy in J/mol of a rate that grows by the
// factor from the cold to the hot temperature.
//
//	E = R ln(factor) / (1/Tcold - 1/Thot)
//
// "Pot life halves per 10 C" is a factor of 2, and 48 to 53 kJ/mol at the
// temperatures of a shed. "Halves per 10 F" gives some 91 kJ/mol, which no
// room-temperature resin has: there a unit was lost.
func EnergyFor(factor float64, cold, hot si.Temp) (si.MolarEnergy, error) {
	if !(factor > 1 && finite(factor)) {
		return 0, fmt.Errorf("growth of rate %g: must be more than 1", factor)
	}
	if !(cold > 0 && hot > cold && finite(float64(hot))) {
		return 0, fmt.Errorf("temperatures %.4g K and %.4g K: the second must be the hotter, both above 0 K", float64(cold), float64(hot))
	}
	return si.MolarEnergy(R * math.Log(factor) / (1/float64(cold) - 1/float64(hot))), nil
}

// RateRatio returns how many times faster a reaction goes at T than at the
// reference. Times go the other way: a pot life at T is that at ref over it.
//
//	exp[-E/R (1/T - 1/Tref)]
func RateRatio(E si.MolarEnergy, T, ref si.Temp) float64 {
	return math.Exp(-float64(E) / R * (1/float64(T) - 1/float64(ref)))
}

func (k Arrhenius) check(name string) error {
	if !(k.A > 0 && finite(k.A)) {
		return fmt.Errorf("%s: A is %g 1/s, must be more than 0 and finite", name, k.A)
	}
	return checkEnergy(name, k.E)
}

// Above 1 MJ/mol no bond is left to name: such a figure was typed in J and read
// in kJ.
const maxEnergy = si.MolarEnergy(1e6)

func checkEnergy(name string, E si.MolarEnergy) error {
	if E > 0 && E <= maxEnergy {
		return nil
	}
	return fmt.Errorf("%s: E is %g J/mol, must be more than 0 and at most %g", name, float64(E), float64(maxEnergy))
}

func tempError(name string, T si.Temp) error {
	return fmt.Errorf("%s %g K: must be above 0 K", name, float64(T))
}

func checkTemp(T si.Temp) error {
	if T > 0 && finite(float64(T)) {
		return nil
	}
	return tempError("temperature", T)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
