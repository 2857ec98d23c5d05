package proof

import (
	"math"

	"scarfwright/physics/laminate"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
)

// limits are identities that hold whatever the material: what a laminate must come to
// when its plies are alike, mirrored or all one way. Both sides are computed by
// themselves; the expected one is the text-book formula.
func limits() []Check {
	const rel = 1e-9
	const E, nu, t = 7e9, 0.3, 0.6e-3
	ply := func(l laminate.Lamina, mm, deg float64) laminate.Ply {
		return laminate.Ply{Lamina: l, Thickness: si.MM(mm), Angle: si.Degrees(deg)}
	}
	iso := laminate.Isotropic(si.Pressure(E), nu)
	var stack []laminate.Ply
	for _, deg := range []float64{0, 37, -61, 90, 12} {
		stack = append(stack, ply(iso, t*1e3, deg))
	}
	h := 5 * t
	s := laminate.NewStiffness(stack)
	isotropic := group{name: "isotropic plies at any angles", source: "identity: A11 = E h/(1-ν²), D11 = E h³/12(1-ν²)", provenance: AnIdentity, rel: rel}
	isotropic.add("A11 of five plies at 0, 37, -61, 90, 12°", E*h/(1-nu*nu), s.A[0][0], "N/m")
	isotropic.add("A12", nu*E*h/(1-nu*nu), s.A[0][1], "N/m")
	isotropic.add("A66", E*h/2/(1+nu), s.A[2][2], "N/m")
	isotropic.add("D11", E*h*h*h/12/(1-nu*nu), s.D[0][0], "N m")
	isotropic.add("D66", E*h*h*h/24/(1+nu), s.D[2][2], "N m")

	roving := laminate.Lamina{E1: si.GPa(39), E2: si.GPa(8.6), Nu12: 0.28, G12: si.GPa(3.8)}
	mirrored := laminate.NewStiffness([]laminate.Ply{ply(roving, 0.7, 25), ply(iso, 1.1, 0), ply(roving, 0.4, -70), ply(iso, 1.1, 0), ply(roving, 0.7, 25)})
	coupling := 0.0
	for i := range 3 {
		for j := range 3 {
			coupling = math.Max(coupling, math.Abs(mirrored.B[i][j])/math.Sqrt(mirrored.A[0][0]*mirrored.D[0][0]))
		}
	}
	symmetric := group{name: "mirrored stack does not couple", source: "identity: B = 0", provenance: AnIdentity, abs: rel}
	symmetric.add("largest of B over √(A11 D11)", 0, coupling, "")

	var seven []laminate.Ply
	for range 7 {
		seven = append(seven, ply(roving, 0.3, 0))
	}
	many, one := laminate.NewStiffness(seven), laminate.NewStiffness([]laminate.Ply{ply(roving, 2.1, 0)})
	k := many.InPlane()
	oneWay := group{name: "plies all one way are one ply", source: "identity: the laminate is its lamina", provenance: AnIdentity, rel: rel}
	oneWay.add("A11, seven plies and one", one.A[0][0], many.A[0][0], "N/m")
	oneWay.add("D22", one.D[1][1], many.D[1][1], "N m")
	oneWay.add("Ex", 39, k.Ex.GPa(), "GPa")
	oneWay.add("Ey", 8.6, k.Ey.GPa(), "GPa")
	oneWay.add("Gxy", 3.8, k.Gxy.GPa(), "GPa")
	oneWay.add("νxy", 0.28, k.NuXY, "")
	return concat(isotropic, symmetric, oneWay, plates(iso), printedSandwich())
}

// plates is a panel of several isotropic plies at odd angles against one of the whole
// thickness.
func plates(iso laminate.Lamina) group {
	g := group{name: "panel of isotropic plies at any angles is a panel of one", source: "identity: same section", provenance: AnIdentity, rel: 1e-9}
	answer := func(plies ...panel.Ply) (w, e float64) {
		m, err := panel.Prepare(panel.Panel{
			Length: si.MM(600), Width: si.MM(400), Pressure: si.KPa(20), Base: panel.Centred(plies...),
			Edges: panel.AllEdges(panel.Edge{Support: panel.Clamped}),
		}, panel.Options{Degree: 4, Sides: 2, Whole: true})
		if err != nil {
			return math.NaN(), math.NaN()
		}
		r, err := m.LargeDeflection()
		if err != nil {
			return math.NaN(), math.NaN()
		}
		d, err := r.Deformation(panel.Point{Y: si.MM(200 * (1 - 1e-12))}, -1)
		if err != nil {
			return math.NaN(), math.NaN()
		}
		deflection, _ := r.MaxDeflection()
		return deflection.MM(), d.Curvature[1]
	}
	of := func(mm, deg float64) panel.Ply {
		return panel.Ply{Ply: laminate.Ply{Lamina: iso, Thickness: si.MM(mm), Angle: si.Degrees(deg)}, G13: iso.G12, G23: iso.G12}
	}
	w1, k1 := answer(of(6, 0))
	w4, k4 := answer(of(1, 17), of(2.5, -50), of(2, 90), of(0.5, 33))
	g.add("deflection, large, of 600 × 400 × 6 mm", w1, w4, "mm")
	g.add("curvature at the long edge", k1, k4, "1/m")
	return g
}

// printedSandwich puts the sums of a printed sandwich through our section: its EI
// about a base, EA and neutral axis as two thin sheets that have just those sums. The
// print's own parallel-axis line omits the square sign and rounds y to 27.362; the
// product it prints needs 27.360.
func printedSandwich() group {
	const base, EA, y, strip = 1_510_439_396.0, 103_699.0, 27.360, 10.0
	g := group{name: "sandwich strip about its neutral axis", source: "LR2013: Ch 4 s4; EI of the base, EA and y as printed", provenance: Read, rel: 1e-4}
	const thin = 1e-3 // mm
	z := base / strip / (EA * y)
	far := EA * y / z
	s := laminate.NewSection([]laminate.Layer{
		{Thickness: si.MM(thin), Tension: si.MPa((EA - far) / thin)},
		{Thickness: si.MM(z - 1.5*thin), Tension: si.Pa(1)},
		{Thickness: si.MM(thin), Tension: si.MPa(far / thin)},
	})
	g.add("EI of the 10 mm strip", 734.18e6, strip*s.EI*1e3, "N mm²")
	g.add("its neutral axis", y, s.NeutralAxis.MM(), "mm")
	return g
}
