package cure

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
)

// sigmaClassPot is how well a class's pot life is believed for a product whose own
// sheet gives other times and no pot life: as sd of its logarithm, our own choice,
// about a factor of 1.5 either way at 90 %.
const sigmaClassPot = 0.30

// FromCatalogue returns a catalogue entry, or the user's own sheet over one, as a
// sheet to fit. Its pot-life table is for 100 g cups (repair/mixing says the same).
//
// Film times and watched cups go in as they stand. Of several times to cured through
// the one nearest 20 °C says what is meant by it (Sheet.Through is not fitted). An
// entry without film times has a limit "sandable", at 20 °C, which is believed to
// its own spread, unless it is a class's under a sheet with times of its own.
//
// For a polyester a time before sanding of more than 6 hours is left out: that is a
// rule of waiting (air, wax, shrinkage), and a fit that took it for kinetics would
// put sanding next to never. It still counts as a limit (catalog.Limits.Sandable).
func FromCatalogue(p catalog.TwoPart, kind Kind) Sheet {
	s := Sheet{Name: p.Class, Kind: kind, Density: density(p)}
	if p.Catalysed() {
		s.DoseLow, s.DoseHigh, s.DoseRef = p.Dose.Low, p.Dose.High, p.Dose.Typical
	}
	criterion, sigma := criterionOf(p.PotLife.Criterion), 0.0
	if p.OwnTimes && !p.OwnPot {
		sigma = sigmaClassPot
	}
	for _, c := range p.PotLife.Cells {
		s.Pots = append(s.Pots, Pot{At: c.At, Dose: c.Dose, Time: c.Time, Criterion: criterion, Sigma: sigma})
	}
	if v := p.Peak; v.Given() {
		at, when := si.Celsius(25), p.PeakAfter
		s.Peaks = []PeakSeen{{
			At: at, Dose: s.DoseRef, Peak: v.Typical, When: when.Typical,
			Sigma:     spread(float64(v.Low.Sub(at)), float64(v.High.Sub(at)), sigmaPeak),
			SigmaWhen: spread(float64(when.Low), float64(when.High), sigmaPeakTime),
		}}
	}
	for _, c := range p.Peaks.Cells {
		s.Peaks = append(s.Peaks, PeakSeen{Mass: c.Mass, At: c.At, Dose: c.Dose, Peak: c.Peak, When: c.After})
	}
	s.FilmGel, s.Through = films(p.FilmGel), films(p.Through)
	slices.SortStableFunc(s.Through, func(a, b Film) int {
		return cmp.Compare(math.Abs(a.At.Celsius()-20), math.Abs(b.At.Celsius()-20))
	})
	rule := func(t si.Time) bool { return kind == Polyester && t > si.Hours(6) }
	switch v := p.Limits.Sandable; {
	case p.FilmSandable.Given():
		s.Sandable = slices.DeleteFunc(films(p.FilmSandable), func(f Film) bool { return rule(f.Time) })
	case v.Given() && v.Low > 0 && !p.OwnTimes && !rule(v.Typical):
		sigma := spread(float64(v.Low), float64(v.High), sigmaFilm)
		s.Sandable = []Film{{At: si.Celsius(20), Dose: s.DoseRef, Time: v.Typical, Sigma: sigma}}
	}
	return s
}

func films(t catalog.FilmTable) []Film {
	var out []Film
	for _, c := range t.Cells {
		out = append(out, Film{At: c.At, Dose: c.Dose, Time: c.Time})
	}
	return out
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
