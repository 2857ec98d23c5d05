// Package mixing computes what to put in the cup: how much of each part, in how
// many batches, and how long each may be worked.
//
//	hardener per 100 by mass   100 (vB rB)/(vA rA)    from a ratio by volume
//	catalyst                   mc = p m,  V = mc/rc
//	smallest batch             d/(p e)                d: step of the scale, e: error allowed
//	batches in a session       smallest n with  m/n <= largest batch
//	                           and  area/n <= people rate 0.6 t
//
// p is the catalyst by mass of resin, m the resin, t the working time at this
// temperature, rate the area of ply one person wets out in an hour; 0.6 leaves
// time to mix and to roll out (from memory).
//
// # Words
//
// Catalyst (peroxide, by per cent) sets off a polyester or vinyl ester; hardener
// (amine, in a fixed ratio) is part of an epoxy. For a polyester "mixed" is the
// mass of resin, with the catalyst on top; for an epoxy it is both parts
// together. Working time is the sheet's pot life: 100 g in a cup, at most.
//
// # Limits
//
// The sheet's table is interpolated, never extended: outside it the answer is
// words, not minutes. A bigger cup goes off sooner than the sheet's 100 g, a
// thin film later; that is not modelled here. Cold is met with warmth or time,
// never with catalyst beyond the sheet's band.
//
//	t, err := mixing.WorkingTime(resin.TwoPart, si.Celsius(18), si.Percent(1.5))
package mixing

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
)

// CupNote stands beside every working time that is shown.
const CupNote = "Working time is at most the sheet's pot life of 100 g in a cup. A bigger batch goes off sooner: pour it into a tray at once."

// OwnNote stands in for it where the batch's own working time is told.
const OwnNote = "Working time is of this batch left in its own cup, by the cure fitted to the sheet: go by the lower figure, and by the feel of it. Pour it into a tray at once."

// PolyesterNote goes with it: the model's induction hardly feels the pot's own
// warmth, so its gel time does not shorten with mass as real pots do.
const PolyesterNote = "For polyester and vinyl ester the model hardly shortens the time as a pot grows; a real pot of more than 100 g goes off sooner than it says."

// Note is what stands beside the working times of a result.
func (r Result) Note() string {
	for _, s := range r.Sessions {
		switch {
		case s.Own != nil && r.Catalysed:
			return OwnNote + " " + PolyesterNote
		case s.Own != nil:
			return OwnNote
		}
	}
	return CupNote
}

// WholeMinutes are a working time's, rounded down: 27 min less a rounding error are 27.
func WholeMinutes(t si.Time) float64 { return math.Floor(t.Minutes() + 1e-6) }

// MassRatio returns the hardener by mass to 100 of resin for parts measured by
// volume, for positive volumes and densities.
//
//	100 (vB rB)/(vA rA)
func MassRatio(volA, volB float64, rhoA, rhoB si.Density) float64 {
	return 100 * (volB * float64(rhoB)) / (volA * float64(rhoA))
}

// VolumeRatio returns the hardener by volume to 100 of resin for a ratio by
// mass (hardener to 100 of resin), for positive densities. It undoes MassRatio.
func VolumeRatio(per100 float64, rhoA, rhoB si.Density) float64 {
	return per100 * float64(rhoA) / float64(rhoB)
}

// Dose returns the catalyst for an amount of resin, by mass and by volume, from
// the per cent by mass of resin and the catalyst's density (positive). Whether
// the sheet allows that per cent is asked of CheckDose.
//
//	mc = p m    V = mc/rc
func Dose(resin si.Mass, percent si.Ratio, rho si.Density) (si.Mass, si.Volume) {
	m := si.Mass(float64(percent) * float64(resin))
	return m, rho.Fill(m)
}

// CheckDose returns an error when the sheet does not allow that much catalyst,
// or so little. The answer to cold is never a bigger dose. For an epoxy, whose
// ratio is fixed, there is nothing to check.
func CheckDose(p catalog.TwoPart, dose si.Ratio) error {
	if !p.Catalysed() {
		return nil
	}
	const slack = 1e-9 // 2 % as typed and 2 % as computed are the same dose
	band := fmt.Sprintf("%.3g to %.3g %%", p.Dose.Low.Percent(), p.Dose.High.Percent())
	switch {
	case dose > p.Dose.High*(1+slack):
		return fmt.Errorf("%.3g %% of catalyst is above the sheet's %s for %s: more catalyst weakens the resin and does not replace warmth; warm it, wait for a warmer day, or change the resin",
			dose.Percent(), band, p.Class)
	case !(dose >= p.Dose.Low*(1-slack)): // also refuses NaN
		return fmt.Errorf("%.3g %% of catalyst is below the sheet's %s for %s: it would never cure through; for more time cool the resin, mix less at once, or change the resin",
			dose.Percent(), band, p.Class)
	}
	return nil
}

// ratio is the second part to the first by mass: the dose, or hardener per 100 over 100.
func ratio(p catalog.TwoPart, dose si.Ratio) si.Ratio {
	if p.Catalysed() {
		return dose
	}
	return si.Percent(p.PerHundred.Typical)
}

// Amount is one amount of a two-part material.
type Amount struct {
	Laminate     si.Mass   `json:"laminate_kg,omitempty"` // what stays in the laminate, of Mixed
	Mixed        si.Mass   `json:"mixed_kg"`              // polyester: the resin; epoxy: both parts
	Resin        si.Mass   `json:"resin_kg"`              // part A
	ResinVolume  si.Volume `json:"resin_m3"`
	Second       si.Mass   `json:"second_kg"` // catalyst or hardener
	SecondVolume si.Volume `json:"second_m3"`
}

// Split returns the two parts of an amount to be mixed, by mass and by volume.
// It promises that, for an epoxy, the two masses add up to the mixed mass, and
// that everything is proportional to it.
func Split(p catalog.TwoPart, mixed si.Mass, dose si.Ratio) Amount {
	a := Amount{Mixed: mixed, Resin: mixed}
	q := ratio(p, dose)
	if !p.Catalysed() {
		a.Resin = si.Scale(mixed, 1/float64(1+q))
	}
	a.Second, a.SecondVolume = Dose(a.Resin, q, p.HardenerDensity.Typical)
	a.ResinVolume = p.Density.Typical.Fill(a.Resin)
	return a
}

// plus adds two amounts.
func (a Amount) plus(b Amount) Amount {
	return Amount{
		Laminate: a.Laminate + b.Laminate, Mixed: a.Mixed + b.Mixed,
		Resin: a.Resin + b.Resin, ResinVolume: a.ResinVolume + b.ResinVolume,
		Second: a.Second + b.Second, SecondVolume: a.SecondVolume + b.SecondVolume,
	}
}
