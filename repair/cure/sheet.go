package cure

import (
	"errors"
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Kind is which family of materials a sheet belongs to: it sets the law and the
// priors.
type Kind int

// The kinds. A vinyl ester, a gelcoat and its paste are Polyester here.
const (
	Epoxy Kind = iota
	Putty
	Polyester
)

// String names the kind.
func (k Kind) String() string {
	return [...]string{"laminating epoxy", "epoxy putty", "polyester or vinyl ester"}[k]
}

// Criterion is what a sheet calls the end of its pot life.
type Criterion int

// The criteria. They differ by some 15 % on one cup, so they are never mixed.
const (
	Gel              Criterion = iota // it no longer flows
	PlusKelvin25                      // the batch has warmed by 25 K
	PlusKelvin30                      // from 20 to 50 °C
	ViscosityDoubled                  // it brushes noticeably worse
)

// Words says until when a pot life by it lasts: "until it gels in the cup".
func (c Criterion) Words() string {
	return [...]string{
		Gel: "until it gels in the cup", PlusKelvin25: "until the batch has warmed by 25 K",
		PlusKelvin30: "until the batch has warmed by 30 K", ViscosityDoubled: "until its viscosity has doubled",
	}[c]
}

// Pot is one pot life.
type Pot struct {
	Mass      si.Mass // 0: 100 g
	At        si.Temp // of air and mix
	Dose      si.Ratio
	Time      si.Time
	Criterion Criterion
	Diameter  si.Length // of the cup; 0: 75 mm
	Sigma     float64   // of ln(time); 0: 0.10
}

// Film is the time of a thin film at one temperature.
type Film struct {
	At    si.Temp
	Dose  si.Ratio
	Time  si.Time
	Sigma float64 // of ln(time); 0: 0.15
}

// PeakSeen is a cup watched with a thermometer.
type PeakSeen struct {
	Mass     si.Mass // 0: 100 g
	At       si.Temp
	Dose     si.Ratio
	Peak     si.Temp
	When     si.Time // 0: not noted
	Diameter si.Length

	Sigma, SigmaWhen float64 // of ln(rise), 0: 0.05, and of ln(When), 0: 0.10
}

// Sheet is what a tin, a data sheet or an owner's own cup gives. Every field may be
// missing except that something must be timed.
type Sheet struct {
	Name         string
	Kind         Kind
	Density      si.Density      // of the mix; 0: usual for the kind
	SpecificHeat si.SpecificHeat // 0: usual for the kind

	Pots              []Pot
	FilmGel, Sandable []Film
	Through           []Film // not fitted: it only says which degree is meant by through-cured
	Peaks             []PeakSeen

	// The band of catalyst by mass of resin; both 0 for a fixed ratio.
	DoseLow, DoseHigh si.Ratio
	DoseRef           si.Ratio // meant where a film gives no dose; 0: 2 %

	// The temperatures the sheet covers; not given: those of its data.
	Low, High si.Temp
}

// settled fills what is usual and checks the rest.
func (s Sheet) settled() (Sheet, error) {
	if s.Kind < Epoxy || s.Kind > Polyester {
		return s, fmt.Errorf("sheet %q: kind %d is none of epoxy, putty, polyester", s.Name, s.Kind)
	}
	u := usual[s.Kind]
	if s.Density == 0 {
		s.Density = u.density
	}
	if s.SpecificHeat == 0 {
		s.SpecificHeat = u.specificHeat
	}
	if s.Kind == Polyester && s.DoseRef == 0 {
		s.DoseRef = refDose
	}
	var errs []error
	if !(s.Density > 100 && s.Density < 5000) || !(s.SpecificHeat > 300 && s.SpecificHeat < 5000) {
		errs = append(errs, fmt.Errorf("density %g kg/m3 and specific heat %g J/(kg K) must lie within 100 to 5000 and 300 to 5000", float64(s.Density), float64(s.SpecificHeat)))
	}
	low, high, n := math.Inf(1), math.Inf(-1), 0
	check := func(what string, at si.Temp, dose *si.Ratio, t si.Time) {
		n++
		if !(at.Celsius() > -20 && at.Celsius() < 80) {
			errs = append(errs, fmt.Errorf("%s: %.4g °C must lie within -20 to 80 °C", what, at.Celsius()))
		}
		if !(t > 0 && t < si.Hours(24*60)) {
			errs = append(errs, fmt.Errorf("%s: %.4g min must be more than 0 and less than 60 days", what, t.Minutes()))
		}
		low, high = min(low, float64(at)), max(high, float64(at))
		if s.Kind != Polyester {
			*dose = 0
			return
		}
		if *dose == 0 {
			*dose = s.DoseRef
		}
		if !(*dose > 0 && *dose <= 0.1) {
			errs = append(errs, fmt.Errorf("%s: a dose of %.3g %% must be more than 0 and at most 10 %%", what, dose.Percent()))
		}
	}
	s.Pots, s.Peaks = append([]Pot(nil), s.Pots...), append([]PeakSeen(nil), s.Peaks...)
	for i := range s.Pots {
		p := &s.Pots[i]
		check("pot life", p.At, &p.Dose, p.Time)
		if p.Criterion < Gel || p.Criterion > ViscosityDoubled {
			errs = append(errs, fmt.Errorf("pot life: criterion %d is unknown", p.Criterion))
		}
		cup(&p.Mass, &p.Diameter)
		if p.Sigma == 0 {
			p.Sigma = sigmaPot
			if p.Criterion == ViscosityDoubled {
				p.Sigma = sigmaViscosity
			}
		}
	}
	for i := range s.Peaks {
		p := &s.Peaks[i]
		when := p.When
		if when == 0 {
			when = si.Minutes(1) // not noted: nothing to check
		}
		check("peak", p.At, &p.Dose, when)
		if !(p.Peak > p.At && p.Peak.Celsius() < 350) {
			errs = append(errs, fmt.Errorf("peak: %.4g °C must be above the cup's %.4g °C and below 350 °C", p.Peak.Celsius(), p.At.Celsius()))
		}
		cup(&p.Mass, &p.Diameter)
		if p.Sigma == 0 {
			p.Sigma = sigmaPeak
		}
		if p.SigmaWhen == 0 {
			p.SigmaWhen = sigmaPeakTime
		}
	}
	films := func(what string, list []Film) []Film {
		list = append([]Film(nil), list...)
		for i := range list {
			check(what, list[i].At, &list[i].Dose, list[i].Time)
			if list[i].Sigma == 0 {
				list[i].Sigma = sigmaFilm
			}
		}
		return list
	}
	s.FilmGel, s.Sandable = films("film gel", s.FilmGel), films("sandable", s.Sandable)
	if n == 0 {
		errs = append(errs, errors.New("it times nothing: put 100 g in a cup at the temperature of the work, and note when it gels"))
	}
	if !s.Low.Given() {
		s.Low = si.Temp(low)
	}
	if !s.High.Given() {
		s.High = si.Temp(high)
	}
	s.Through = films("through-cured", s.Through)
	if err := errors.Join(errs...); err != nil {
		return s, fmt.Errorf("sheet %q: %w", s.Name, err)
	}
	return s, nil
}

// cup fills the usual cup in: 100 g, 75 mm across.
func cup(m *si.Mass, d *si.Length) {
	if *m == 0 {
		*m = 0.100
	}
	if *d == 0 {
		*d = 0.075
	}
}
