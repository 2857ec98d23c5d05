package kinetics

import (
	"errors"
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// DiBenedetto gives the glass transition of a resin as it cures.
//
//	Tg = Tg0 + (Tginf - Tg0) lambda a / [1 - (1-lambda) a]
//
// DiBenedetto1987, form from memory; lambda is the ratio of heat-capacity steps at
// Tg of the through-cured to the fresh resin, 0.35 to 0.45 for room-temperature amine
// systems (from memory). Tg climbs slowly at first and steeply at the end.
type DiBenedetto struct {
	Tg0, TgInf si.Temp
	Lambda     float64 // above 0, at most 1
}

// Tg returns the glass transition at a degree of cure from 0 to 1.
func (g DiBenedetto) Tg(a float64) si.Temp {
	a = min(max(a, 0), 1)
	Tg := g.Tg0.Add(si.Scale(g.TgInf.Sub(g.Tg0), g.Lambda*a/(1-(1-g.Lambda)*a)))
	return min(Tg, g.TgInf) // rounding must not carry it past what Cure takes back
}

// Cure returns the degree of cure at which the glass transition is Tg; an error
// outside Tg0 to TgInf.
//
//	y = (Tg-Tg0)/(Tginf-Tg0),   a = y / [lambda + (1-lambda) y]
func (g DiBenedetto) Cure(Tg si.Temp) (float64, error) {
	if err := g.Check(); err != nil {
		return 0, err
	}
	if !(Tg >= g.Tg0 && Tg <= g.TgInf) {
		return 0, fmt.Errorf("glass transition %.4g C: this resin's lies from %.4g to %.4g C", Tg.Celsius(), g.Tg0.Celsius(), g.TgInf.Celsius())
	}
	y := float64(Tg.Sub(g.Tg0) / g.TgInf.Sub(g.Tg0))
	return y / (g.Lambda + (1-g.Lambda)*y), nil
}

// Vitrification returns the degree of cure at which Tg has climbed to the offset
// above the temperature of cure, where a room-temperature epoxy all but stops (10 to
// 20 K is common; "about 17 K" was read second-hand in a builder's forum). It is 0
// if the fresh resin is glassy already, and false if it never vitrifies at T.
func (g DiBenedetto) Vitrification(T si.Temp, offset si.TempDiff) (a float64, vitrifies bool, err error) {
	if err := errors.Join(g.Check(), checkTemp(T)); err != nil {
		return 0, false, err
	}
	Tg := T.Add(offset)
	if math.IsNaN(float64(Tg)) || Tg > g.TgInf {
		return 1, false, nil
	}
	a, err = g.Cure(max(Tg, g.Tg0))
	return a, err == nil, err
}

// Check names the parameter that is out of range.
func (g DiBenedetto) Check() error {
	var temps, lambda error
	if !(g.Tg0 > 0 && g.TgInf > g.Tg0 && finite(float64(g.TgInf))) {
		temps = fmt.Errorf("glass transition from %g to %g K: must rise, from above 0 K", float64(g.Tg0), float64(g.TgInf))
	}
	if !(g.Lambda > 0 && g.Lambda <= 1) {
		lambda = fmt.Errorf("lambda is %g: must be more than 0 and at most 1", g.Lambda)
	}
	return errors.Join(temps, lambda)
}
