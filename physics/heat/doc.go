// Package heat computes the temperature and the degree of cure through a stack of
// layers (old hull, core, fresh plies) over hours of weather, and in a mixed
// batch in its cup.
//
// The equations, through the thickness x of each layer:
//
//	rho c dT/dt = d/dx(k dT/dx) + rho H da/dt + S(x, t)
//	da/dt = r(a, T)
//
// with temperature and heat flow k dT/dx continuous from layer to layer and, on
// each face, one of
//
//	k dT/dn = h (air(t) - T)      convective
//	T = T(t)                      prescribed
//	dT/dn = 0                     insulated
//
// It knows no resin. A Reaction is a function for the rate of one progress
// variable, the degree, from 0 to 1, and a heat per kilogram of the LAYER, glass
// included. Rate laws are in physics/kinetics.
//
// How it is solved, file by file:
//
//	mesh.go        finite volumes about nodes on faces and interfaces; order 2 in space
//	rosenbrock.go  six-stage Rosenbrock scheme, order 4, the degree eliminated node
//	               by node, so that a step is one tridiagonal factorisation
//	integrate.go   steps by an error estimate; ends on every kink of the weather
//	               and on every break of a rate law
//	track.go       what is remembered; cubics between the steps
//	refine.go      whether the grid carried the answer
//	cup.go         a batch of one temperature
//
// It promises: a degree never falls and never passes 1; what is given off is what
// is stored and what leaves (Energy); a stack with two like halves stays so; a
// workspace used again gives the same figures to the last digit.
//
// Limits. One dimension: a patch must be wide against its thickness, and the edge
// of a patch, a stiffener or a thick fillet is not followed. Properties don't
// change with temperature or cure; no flow, no evaporating styrene, no radiation
// but what a heat transfer coefficient stands for. A lamp is entered as warmer
// air: by its absorbed W/m2 over h. Where two reaction fronts meet, the peak needs
// hundreds of cells; a grid too coarse for it is found and said (Result.Coarse),
// and Slab.Resolve refines.
//
// A computed temperature is as good as the rate law. Near the edge of a runaway a
// few per cent in a property decide between warm and smoking: give ranges, keep to
// the data sheet's mass and thickness, and watch the first batch with a thermometer.
//
// Sources: BogettiGillespie1991 and LeeLoosSpringer1982 for the sets that the
// tests run; G. Steinebach, Preprint 1741, TH Darmstadt, 1995, for the scheme,
// its constants second-hand. The series of the tests are in every textbook on conduction.
//
// One call:
//
//	slab := heat.Slab{
//		Layers: []heat.Layer{hull, laminate},
//		First:  heat.Convective(8, weather), Last: heat.Convective(8, weather),
//		Start:  si.Celsius(16), For: si.Hours(24),
//	}
//	r, err := slab.Run(nil)
//	r.Peak.Temp.Celsius() // the hottest place and moment
package heat
