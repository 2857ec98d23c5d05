// Package panel computes how far a rectangular fibreglass panel goes in under
// pressure and how much its plies are strained, with a repair in it.
//
// A panel between stiffeners is a thin plate. A repair changes the laminate
// inside an outline: a hole cut out and laid up again, tapered ply by ply, or an
// overlay on one face. The patch is stiffer than what surrounds it, or lies to one
// side of it, and so the worst strain may move to its edge: a patch checked only in
// its middle may well break the sound laminate beside it.
//
// The equations, file by file:
//
//	panel.go     N = A e + B k, M = B e + D k, Q = S g       what a panel is made of
//	outline.go   ellipses and star-shaped polygons           where its zones end
//	mesh.go      core, rings, rectangle                      elements along the outlines
//	spectral.go  polynomials on Gauss-Lobatto points         within an element
//	element.go   integral of B^T C B                         stiffness
//	state.go     ex = u,x + w,x^2/2                          strains, forces, tangent
//	tree.go      nested dissection                           order of elimination
//	factor.go    L D L^T                                     elimination
//	model.go     Prepare, Linear                             small deflection
//	karman.go    LargeDeflection                             large deflection, Newton
//	result.go    Deformation, Deflection, Equilibrium        what came out, at a point
//	extremes.go  Plies, StrainExtremes, Governing, Rim       and where it is worst
//	estimate.go  Solve                                       with its own error
//	closed.go    Levy, Navier, Ritz                          plates with a formula
//	strip.go     5 q b^4/384 D + q b^2/8 S                   strips and sandwich
//	factors.go   k2, k3, kC                                  small-craft rule factors
//
// Words and signs. A panel lies in |x| <= Length/2, |y| <= Width/2. z runs from the
// outer face to the inner one, from a reference plane that the caller chooses: a
// Layup says where its first ply lies. Pressure acts on the outer face and pushes
// towards +z, as does a positive deflection w. A rotation thetaX moves a point at z
// by z thetaX along x. Positive curvature stretches the inner face. A zone is the
// region inside an outline and outside the next; zone 0 is the base around them all.
//
// The plate is first-order shear-deformable (Mindlin, Reissner; five unknowns u, v,
// w, thetaX, thetaY at a node), with the full A, B, D of each zone about the common
// plane. Its elements are quadrilaterals of high degree whose edges lie on the
// outlines, because a stiffness that jumps inside an element costs an order of
// accuracy. LargeDeflection adds von Karman's strains; a panel at its design
// load needs them, and without them the deflection may come out several times too
// large (and the repair, compared with the intact panel, too good).
//
// What it promises: a deflection within 0.1 % and governing strains within 0.5 % of
// finer solutions of the same equations, for panels like the reference ones in the
// tests (small components beside an outline may be 3 % off, and on random panels the
// governing strain was up to 4.5 % off, announced by its estimate); the same result
// for a panel and its quarter to 1e-9; equilibrium; exact rigid motions and uniform
// strain on any mesh; an estimate of its own error (Solve) that on random panels was
// seldom too small.
//
// Limits. Flat panels, straight edges, one centre: outlines are nested and
// star-shaped about the middle of the innermost. No curvature of the panel, no
// stiffeners within the panel, no contact, no failure progressing, no peel or shear
// in the bond between patch and panel (first-order theory has none to give; see
// physics/joint). At the outline itself shear strains jump within a few tenths of a
// thickness, which is a feature of the theory more than of the plate. Sharp corners
// of an outline are refused or rounded by one per cent of its size. Buckling under
// in-plane compression is detected, not followed.
//
// Sources: Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed.;
// Reddy, Mechanics of Laminated Composite Plates and Shells, 2nd ed. (both from
// memory, pinned by their tables); NAFEMS R0031 tests 1 and 3 (as quoted in a
// general library); reference panels computed with an independent program. The
// nested elimination is George's dissection of 1973 (from memory) in multifrontal
// form. Each test names the origin of its figures.
//
// One call:
//
//	answer, err := panel.Solve(p, panel.Options{}, true)
//	answer.W.MM(), answer.Worst.Strain[answer.Component], answer.StrainError
package panel
