// Package kinetics computes how fast a two-part resin sets: the degree of cure
// after a time, and the time to a degree of cure, at one temperature, along a
// temperature history, or in a mass that keeps all its heat.
//
// The equations, file by file:
//
//	arrhenius.go   K = A exp(-E/RT)                       rate constants, E from a doubling
//	law.go         da/dt = (k1 + k2 a^m)(1-a)^n           and its simpler relatives
//	tworegime.go   (k1 + k2 a)(1-a)(b-a), then k3 (1-a)   graphite/epoxy prepreg
//	radical.go     inhibitor first, then k a^m (1-a)^n    polyester and vinylester
//	brake.go       da/dt falls as the glass closes in; where it stops
//	isothermal.go  t = integral da / rate(a, T)           closed where a closed form exists
//	adiabatic.go   T = T0 + (H/c)(a - a0)                 nothing leaves
//	glass.go       Tg by DiBenedetto, its inverse, vitrification
//	gel.go         a = 1/sqrt(r (f-1)(g-1))               gel from functionality
//	history.go     T(t), piecewise linear; equivalent age
//	cure.go        a(t) under T(t), by an embedded Runge-Kutta method
//	published.go   two parameter sets of the literature
//
// Words used here. The degree of cure, or conversion, a runs from 0 (fresh) to 1
// (nothing left to react). Gel is the degree at which one molecule spans the pot:
// it no longer flows, and it is far from through-cured. A resin vitrifies when its
// glass transition Tg has climbed past the temperature it cures at; from there it
// all but stops, short of 1, until somebody warms it. A state is what an
// integrator carries: it is a itself, except that values below 0 stand for the
// share of inhibitor that a radical resin must use up first (radical.go has the
// reason). Degree turns a state into a degree of cure, Fresh gives the state of a
// resin just mixed.
//
// Traps that this package can't catch. Published tables give A per minute as often
// as per second: A is 1/s here, and a figure per minute must be divided by 60. H
// may be per kg of resin or of composite: use the one that belongs to the c beside
// it. A conversion of 1 is not what a sheet means by "full cure 7 days".
//
// Limits. The mixture is uniform and the ratio right; no diffusion of styrene or
// air, no water, no phase parting. A law holds inside the temperatures it was
// fitted to. Nothing here conducts heat (physics/heat does) and nothing replaces
// the data sheet.
//
// Sources, by key (full entries in docs/sources.md): BogettiGillespie1991,
// LeeLoosSpringer1982, KamalSourour1973, ChernPoehlein1987, DiBenedetto1987,
// Flory1953, DormandPrince1980, TakahasiMori1974. Each figure says beside it whether
// it was read, taken second-hand or recalled.
//
// One call: a rate constant that halves its time from 15 to 25 degrees Celsius has
//
//	kinetics.EnergyFor(2, si.Celsius(15), si.Celsius(25)) // 49.51 kJ/mol
package kinetics
