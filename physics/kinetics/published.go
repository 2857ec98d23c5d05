package kinetics

import "scarfwright/physics/si"

// GlassPolyester1991 returns the law of a glass/polyester composite.
//
//	A = 3.7e22 1/min, E = 167.4 kJ/mol, m = 0.524, n = 1.476
//
// BogettiGillespie1991, constants second-hand (two excerpts agree; one prints A as
// 6.167e20 1/s). Its heat of reaction is 77.5 kJ per kg of composite, and belongs
// with c = 1260 J/(kg K). For heated moulds, not for a boat's room-temperature resin.
func GlassPolyester1991() Autocatalytic {
	return Autocatalytic{K: Arrhenius{A: 3.7e22 / 60, E: si.KJPerMol(167.4)}, M: 0.524, N: 1.476}
}

// GraphiteEpoxy1982 returns the law of a graphite/epoxy prepreg of the 177 degree
// Celsius class.
//
// LeeLoosSpringer1982, constants second-hand. A is printed per minute there.
func GraphiteEpoxy1982() TwoRegime {
	return TwoRegime{
		K1:    Arrhenius{A: 2.102e9 / 60, E: si.KJPerMol(80.7)},
		K2:    Arrhenius{A: -2.014e9 / 60, E: si.KJPerMol(77.8)},
		K3:    Arrhenius{A: 1.960e5 / 60, E: si.KJPerMol(56.6)},
		Bound: 0.47, Switch: 0.3,
	}
}
