package cure

import (
	"math"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// How well a sheet's number is believed, as sd of its logarithm. Our own choice:
// sheets are rounded, cups and judgement of gel differ.
const (
	sigmaPot       = 0.10
	sigmaViscosity = 0.25 // the step from viscosity to degree is itself rough
	sigmaFilm      = 0.15
	sigmaPeak      = 0.05 // of ln(rise), for a thermometer in the middle
	sigmaPeakTime  = 0.10
)

const (
	refTemp = 298.15 // K
	refDose = si.Ratio(0.02)
	wall    = 8 // W/(m2 K) of a thin cup, as heat.StraightCup has it: from memory
)

// parameter is one unknown, normal in its logarithm or in itself.
type parameter struct {
	name, unit string
	mean, sd   float64 // of the logarithm where log is set
	log        bool
	low, high  float64 // it is held within, in its own unit
	put        func(*resin, float64)
	films      bool // no cup depends on it
}

// value turns standard deviations from the prior mean into the parameter's unit.
func (p parameter) value(z float64) float64 {
	v := p.mean + p.sd*z
	if p.log {
		v = math.Exp(v)
	}
	return min(max(v, p.low), p.high)
}

func ln(name, unit string, median, sd float64, put func(*resin, float64)) parameter {
	return parameter{name, unit, math.Log(median), sd, true, median * 1e-6, median * 1e6, put, false}
}

func lin(name, unit string, mean, sd, low, high float64, put func(*resin, float64)) parameter {
	return parameter{name, unit, mean, sd, false, low, high, put, false}
}

// usuals are what a kind brings with it.
type usuals struct {
	density      si.Density
	specificHeat si.SpecificHeat
	gel          float64
	glass        kinetics.GlassBrake
	parameters   []parameter
}

func kilo(set func(*resin, float64)) func(*resin, float64) {
	return func(r *resin, x float64) { set(r, 1e3*x) }
}

func setK(r *resin, x float64)    { r.lnK = math.Log(x) }
func setE(r *resin, x float64)    { r.eR = x / kinetics.R }
func setHeat(r *resin, x float64) { r.heat = x }
func setU(r *resin, x float64)    { r.wall = x / wall }
func setSand(r *resin, x float64) { r.sand = x }
func setKap(r *resin, x float64)  { r.kap = x }
func setInd(r *resin, x float64)  { r.lnInd = math.Log(x) }
func setEInd(r *resin, x float64) { r.eIndR = x / kinetics.R }
func setQ(r *resin, x float64)    { r.q = x }
func setM(r *resin, x float64)    { r.m = x }
func setSeed(r *resin, x float64) { r.seed = x }
func marine(heat float64) []parameter {
	return []parameter{
		ln("k2", "1/s", 1.5e-4, 1.5, setK), // at 25 °C; a decade either way holds the fast and the slow
		ln("kap", "1", 0.08, 0.7, setKap),
		lin("E", "kJ/mol", 55, 6, 20, 120, kilo(setE)), // amine and epoxide: 44 to 71 in the literature
		ln("H", "kJ/kg", heat, 0.20, kilo(setHeat)),
		ln("U", "W/(m2 K)", wall, 0.30, setU),
		sandable(),
	}
}

// usual holds the priors of the kinds. All from memory (the ranges of E were read
// in abstracts): means and spreads of materials on sale, not of any of them.
//
// Held fixed, because no sheet of this sort can tell: the orders m and n of an
// epoxy, its glass transition, its brake, gel. Amine and epoxide of several
// functions gel between 0.45 and 0.6, a polyester at a few per cent.
var usual = [...]usuals{
	Epoxy:     {1130, 1900, 0.58, epoxyGlass, marine(320)},
	Putty:     {950, 1500, 0.58, epoxyGlass, marine(170)},
	Polyester: {1100, 1900, 0.03, polyesterGlass, radical},
}

var epoxyGlass = kinetics.GlassBrake{
	DiBenedetto: kinetics.DiBenedetto{Tg0: 273.15 - 35, TgInf: 273.15 + 90, Lambda: 0.40},
	Centre:      10, Width: 3,
}

// A polyester that cures in a shed stops short too, at some 80 to 85 %: its own
// glass, our choice from memory, and no sheet of this sort moves it.
var polyesterGlass = kinetics.GlassBrake{
	DiBenedetto: kinetics.DiBenedetto{Tg0: 273.15 - 70, TgInf: 273.15 + 85, Lambda: 0.40},
	Centre:      10, Width: 3,
}

var radical = []parameter{
	ln("t_ind", "s", 900, 1, setInd), // at 25 °C and 2 %
	lin("E_ind", "kJ/mol", 60, 12, 15, 150, kilo(setEInd)),
	ln("k", "1/s", 2e-3, 1.5, setK), // at 25 °C and 2 %
	lin("E", "kJ/mol", 50, 10, 15, 120, kilo(setE)),
	lin("q", "1", 0.9, 0.25, 0, 2, setQ),
	ln("H", "kJ/kg", 320, 0.15, kilo(setHeat)),
	ln("U", "W/(m2 K)", wall, 0.30, setU),
	lin("m", "1", 0.6, 0.15, 0.05, 0.95, setM),
	seed(),
	sandable(), // as for an epoxy: where it nears its glass
}

func seed() parameter {
	p := ln("seed", "1", 1e-4, 2, setSeed)
	p.low, p.high = 1e-8, 0.01
	return p
}

func sandable() parameter {
	p := lin("sandable at", "1", 0.72, 0.05, 0.50, 0.95, setSand)
	p.films = true
	return p
}
