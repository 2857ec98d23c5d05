// Package joint computes the stress in a glued joint of two laminates: a taper
// (scarf), a lap, a stepped lap, or a patch on one face.
//
// The equations, file by file:
//
//	scarf.go    tau = sigma R/(1+R^2)                mean shear of a taper; ratio for full strength
//	bond.go     Taper.Solve                          shear and peel along a taper, ply by ply
//	sections.go, film.go, skyline.go                 its discrete form, adhesive, and solver
//	lap.go      omega^2 = (G/eta)(1/E1t1 + 1/E2t2)   shear in a lap; a double lap that yields
//	stepped.go  N'' = w^2 (N - P a/(a+b))            a lap of many steps
//	overlay.go  zn = sum(E t z)/sum(E t)             a patch on one face bends under load
//
// Words used here. The parent is the laminate repaired, the patch what is laid in.
// A taper of R:1 is R long for each unit of thickness. The ground face is the one
// the taper is widest on, where the patch runs out to its feather edge. The film
// is the adhesive, or the resin that stands in for it. Shear is along the slope, peel
// across it, both means through the film's thickness; x runs along the load, y from
// the ground face, u and v are the displacements. Tension is positive.
//
// # Why ply by ply
//
// The mean shear of a taper follows from equilibrium alone. Its distribution does
// not: both laminates stretch nearly alike at every height, so each ply brings its
// stress E' eps to the slope and hands it to its counterpart across the film. To
// first order
//
//	tau_ply = tau_mean E'_ply / mean(E'),   E' the modulus in plane strain
//
// which is why roving in a mat skin loads its part of the bond half as much again as the
// mean. Three things move the figures by up to a tenth from there: the film lets plies
// slip; shear through the plies hands load from one to the next where stacks differ or
// plies end; and the film, softer than what it replaces, shifts the middle of stiffness
// from above to below along the slope, so that the joint bends a little and the feather
// edges take more. The last needs deflection, which pure one-dimensional shear
// lag doesn't have: left out, mid-bond comes out 3 % high and the edges 2 % low for
// a homogeneous laminate at 12:1 (independent computation), and up to 7 % off in plies.
//
// # The model
//
// Sections, a one-dimensional chain: vertical cuts through each adherend, in which
// every height has its own u (so plies stretch and shear past each other) and all
// heights share one v (so a section keeps its height). Along the load a ply has E', the
// modulus in plane strain with no stress through the thickness; through the
// thickness it has G. Cuts are spaced so that the slope runs from node to node. Between the
// two slopes the film is a row of slanting cells with its full elasticity, whose
// midline moves freely (film.go says why). With n rows that gives n+6 unknowns a section and
// about n sections; eliminated in order, n^4/2 operations. No constant is
// fitted; the section model converges to the two-dimensional answer within 0.5 % at
// ply mid-heights of the benchmark.
//
// Limits. Linear; no cure stress, no failure. Both laminates of one thickness, no cover
// ply beyond the feather edge, straight slope with no blunted ends: feather edges are
// sharp, and within Bond.Unresolved of them no figure is to be quoted. Long straight
// laminate on either side that doesn't turn, as in a panel that goes on. A strip:
// round patches have load from the sides as well. Real bonds fail by what was not
// sanded, wetted or dried; none of that is here.
//
// Sources, by key (full entries in docs/sources.md): Volkersen1938, HartSmith1973,
// BS4994-1987, RothbarthPinto2019. That the mean-stress formula fails for laminates and
// strain decides is the finding of Wang and Gunnion, DSTO-RR-0317, 2006 (abstract). The
// section model is our own rule, held to two independent computations.
package joint
