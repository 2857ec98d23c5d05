package cure

import (
	"math"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
)

// FromCatalogue returns a catalogue entry, or the user's own sheet over one, as a
// sheet to fit. Its pot-life table is for 100 g cups (repair/mixing says the same).
//
// Its limit "sandable", at 20 °C, is believed to its own spread. For a polyester one
// of more than 6 hours is left out: that is a rule of waiting (air, wax, shrinkage),
// and a fit that took it for kinetics would put sanding next to never.
func FromCatalogue(p catalog.TwoPart, kind Kind) Sheet {
	s := Sheet{Name: p.Class, Kind: kind, Density: density(p)}
	if p.Catalysed() {
		s.DoseLow, s.DoseHigh, s.DoseRef = p.Dose.Low, p.Dose.High, p.Dose.Typical
	}
	criterion := criterionOf(p.PotLife.Criterion)
	for _, c := range p.PotLife.Cells {
		s.Pots = append(s.Pots, Pot{At: c.At, Dose: c.Dose, Time: c.Time, Criterion: criterion})
	}
	if v := p.Peak; v.Given() {
		at, when := si.Celsius(25), p.PeakAfter
		s.Peaks = []PeakSeen{{
			At: at, Dose: s.DoseRef, Peak: v.Typical, When: when.Typical,
			Sigma:     spread(float64(v.Low.Sub(at)), float64(v.High.Sub(at)), sigmaPeak),
			SigmaWhen: spread(float64(when.Low), float64(when.High), sigmaPeakTime),
		}}
	}
	if v := p.Limits.Sandable; v.Given() && v.Low > 0 {
		sigma := spread(float64(v.Low), float64(v.High), sigmaFilm)
		if kind != Polyester || v.Typical <= si.Hours(6) {
			s.Sandable = []Film{{At: si.Celsius(20), Dose: s.DoseRef, Time: v.Typical, Sigma: sigma}}
		}
	}
	return s
}

// spread is the standard deviation of a logarithm whose 10 and 90 % points are low
// and high, and no less than a sheet is believed to at best.
func spread(low, high, least float64) float64 {
	const z90 = 1.2816
	if !(low > 0 && high > low) {
		return least
	}
	return max(least, math.Log(high/low)/(2*z90))
}

// density is that of the mix: the masses over the sum of the volumes.
func density(p catalog.TwoPart) si.Density {
	if !p.PerHundred.Given() || !(p.HardenerDensity.Typical > 0) {
		return p.Density.Typical
	}
	b := p.PerHundred.Typical
	return si.Density((100 + b) / (100/float64(p.Density.Typical) + b/float64(p.HardenerDensity.Typical)))
}

// criterionOf reads what the sheet calls the end of its pot life, as catalogue texts
// word it. Gel where nothing else is said.
func criterionOf(text string) Criterion {
	text = strings.ToLower(text)
	switch {
	case strings.Contains(text, "viscosity"):
		return ViscosityDoubled
	case strings.Contains(text, "25 k"):
		return PlusKelvin25
	case strings.Contains(text, "30 k"), strings.Contains(text, "50 °c"):
		return PlusKelvin30
	}
	return Gel
}
