// Package laminate computes how thick, how stiff and how strong a fibreglass
// laminate is, from its plies or from the little that can be measured in a shed.
//
// The equations, file by file:
//
//	thickness.go  t = w [1/rf + (1-G)/(G rr)] / (1-V)      ply thickness, and back
//	classrule.go  tensile strength of mat = 200 G + 25 MPa  class-rule straight lines
//	micro.go      E1 = Ef Vf + Em Vm                        fibre and resin -> lamina
//	lamina.go     sigma = Q eps; Qbar = T^-1 Q T^-T         one ply, any direction
//	stiffness.go  N = A eps0 + B kappa; M = B eps0 + D kappa
//	stress.go     eps(z) = eps0 + z kappa                   ply by ply
//	failure.go    a SR^2 + b SR = 1                         strength ratios, first and last ply
//	section.go    EI = sum E (t^3/12 + t z^2)               a bent strip, two moduli
//	stack.go      [0/+-45/90]2s                             the code of a lay-up
//
// Words used here. G is the glass content, always by mass; Vf the fibre fraction
// by volume. A lamina is the material of a ply; a ply is a lamina with a
// thickness and a direction; a laminate is a list of plies. The first ply listed
// is the first one laid, against the mould: for most hulls the outside. The axis
// z runs from the middle of the laminate towards the last ply, and a positive
// angle turns counter-clockwise for somebody who looks at the mould with the
// laminate between (from inside the hull). Shear strain is engineering shear,
// gamma = 2 eps12. Stresses are positive in tension.
//
// Two routes lead to a modulus and they must not be mixed in one calculation.
// The class rules (classrule.go) are lines drawn through tests of real hand-laid
// panels. Micromechanics (micro.go) builds a perfect lamina out of fibre and
// resin. For mat at G = 0.31 the second lies about 38 % above the first
// (independent computation), so a repair figured by one route and an
// original by the other would show a difference that isn't there. Use the class
// rules for boats; micromechanics is here to compare fibres and resins.
//
// Limits. Classical lamination theory: thin, flat, perfectly bonded, linear, no
// shear through the thickness, no edge effects, no cure stress, no moisture.
// Glass and polyester crack in the resin well before they break: a first-ply
// figure is the start of damage, not the end. Nothing here knows fatigue, impact
// or workmanship, and none of it replaces a test piece or a licensed surveyor.
//
// Sources, by key (full entries in docs/sources.md): LR2013, LR-SSC, BS4994-1987,
// ISO12215-5-2008, Kaw2006, Jones1999, Hyer1998, HalpinTsai1976, TsaiWu1971,
// TM-1-1500. Each figure names its own, and says "from memory" where the page
// itself was not read.
//
// One call: a 450 g/m2 mat at 30 % glass is
//
//	laminate.ClassThickness(si.GSM(450), si.Percent(30)).MM() // 1.05 mm
package laminate
