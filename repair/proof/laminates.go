package proof

import (
	"fmt"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

type in = map[string]string

func thickness() []Check {
	identity := group{name: "class form and first principles agree", source: "identity: 3072 = 1000 × 2.56 × 1.20 and 1.36 = 2.56 - 1.20", provenance: AnIdentity, rel: 1e-12}
	for _, w := range []float64{225, 600, 1200} {
		for _, g := range []float64{0.25, 0.33, 0.5, 0.7} {
			identity.add(fmt.Sprintf("ply of %.0f g/m² at glass %.2f", w, g),
				laminate.ClassThickness(si.GSM(w), si.Ratio(g)).MM(),
				laminate.Thickness(si.GSM(w), si.Ratio(g), laminate.GlassPolyester).MM(), "mm")
		}
	}
	printed := group{name: "ply thickness", source: "LR2013: Ch 3 s1, Table 3.1.1", provenance: Read, abs: 0.001}
	printed.figures("ply-thickness", in{"areal": "600 g/m2", "glass": "33 %"}, want{"mat 600 g/m² at glass 0.33", "thickness_mm", 1.250, "mm"})
	own := group{name: "ply thickness", source: "first principles, 2.56 and 1.20 g/cm³", provenance: Computed, rel: 1e-4, abs: 1e-4}
	own.figures("ply-thickness", in{"areal": "450 g/m2", "glass": "30 %"},
		want{"mat 450 g/m² at glass 0.30", "thickness_mm", 1.0508, "mm"},
		want{"its resin", "resin_g_per_m2", 1050, "g/m²"},
		want{"its fibre volume fraction", "fibre_volume_fraction", 0.1673, ""})
	own.figures("ply-thickness", in{"areal": "600 g/m2", "glass": "48 %"},
		want{"woven roving 600 g/m² at glass 0.48", "thickness_mm", 0.7760, "mm"},
		want{"its resin", "resin_g_per_m2", 650, "g/m²"},
		want{"its fibre volume fraction", "fibre_volume_fraction", 0.3020, ""})
	ratio := group{name: "resin to glass", source: "BS4994-1987: as quoted on a tank design sheet", provenance: SecondHand, abs: 0.005}
	ratio.figures("ply-thickness", in{"areal": "450 g/m2", "glass": "33 %"}, want{"at glass 0.33", "resin_to_glass_ratio", 2.03, ""})
	ratio.figures("ply-thickness", in{"areal": "600 g/m2", "glass": "45 %"}, want{"at glass 0.45", "resin_to_glass_ratio", 1.22, ""})
	inverse := group{name: "glass content from thickness", source: "inverse of the ply thickness", provenance: Computed, abs: 1e-4}
	inverse.figures("glass-content", in{"areal": "1000 g/m2", "thickness": "2.24 mm"}, want{"2.24 mm for each kg/m² of mat", "glass_fraction", 0.3106, ""})
	inverse.figures("glass-content", in{"areal": "1000 g/m2", "thickness": "1.25 mm"}, want{"1.25 mm for each kg/m² of roving", "glass_fraction", 0.4923, ""})
	return concat(identity, printed, own, ratio, inverse)
}

func classRule() []Check {
	read := group{name: "class-rule moduli", source: "LR2013: Ch 3 s1", provenance: Read, abs: 1e-9}
	read.figures("class-properties", in{"kind": "csm", "glass": "33 %"},
		want{"mat at 0.33, tensile modulus", "tensile_modulus_gpa", 6.950, "GPa"},
		want{"mat at 0.33, compressive modulus", "compressive_modulus_gpa", 7.200, "GPa"})
	mat := group{name: "class-rule strengths", source: "class-rule formulas, special service craft", provenance: FromMemory, abs: 0.01}
	mat.figures("class-properties", in{"kind": "csm", "glass": "30 %"},
		want{"mat at 0.30, tensile", "tensile_strength_mpa", 85, "MPa"},
		want{"compressive", "compressive_strength_mpa", 117, "MPa"},
		want{"flexural", "flexural_strength_mpa", 151.98, "MPa"},
		want{"interlaminar shear", "interlaminar_shear_mpa", 17.25, "MPa"})
	roving := group{name: "class-rule strengths", source: "class-rule formulas, special service craft", provenance: FromMemory, abs: 1e-9}
	roving.figures("class-properties", in{"kind": "roving", "glass": "50 %"},
		want{"roving at 0.50, tensile", "tensile_strength_mpa", 190, "MPa"},
		want{"tensile modulus", "tensile_modulus_gpa", 14.5, "GPa"})
	return concat(read, mat, roving)
}

func section() []Check {
	lr := group{name: "ply stiffness about a base, 10 mm strip", source: "LR2013: Ch 3 s1, rows 1 to 4", provenance: Read, abs: 1}
	for _, row := range []struct{ lever, ei float64 }{{10.149, 9281917}, {8.899, 7139017}, {7.649, 5277367}, {6.399, 3696967}} {
		lr.add(fmt.Sprintf("ply 1.250 mm, E 7200 MPa, lever %.3f mm", row.lever), row.ei,
			10*1000*laminate.LayerEI(si.MPa(7200), si.MM(1.250), si.MM(row.lever)), "N mm²")
	}
	six := group{name: "six-ply marine laminate", source: "mat 300/450 and roving 600 by turns, class-rule tensile moduli", provenance: Computed, rel: 1e-5}
	var layers []laminate.Layer
	for _, p := range []struct {
		w, g float64
		kind laminate.Reinforcement
	}{{300, .30, laminate.CSM}, {450, .30, laminate.CSM}, {600, .48, laminate.Roving}, {450, .30, laminate.CSM}, {600, .48, laminate.Roving}, {450, .30, laminate.CSM}} {
		props, err := laminate.ClassRule(p.kind, si.Ratio(p.g))
		if err != nil {
			panic(err)
		}
		layers = append(layers, laminate.Layer{Thickness: laminate.ClassThickness(si.GSM(p.w), si.Ratio(p.g)), Tension: props.TensileModulus})
	}
	s := laminate.NewSection(layers)
	six.add("thickness", 5.40495, s.Thickness.MM(), "mm").add("neutral axis from the first face", 2.78877, s.NeutralAxis.MM(), "mm").
		add("EI per mm", 96748.5, s.EI*1000, "N mm").add("EA per mm", 46617.6, s.EA/1000, "N/mm")
	over := group{name: "hull with an overlay on one side", source: "parallel-axis section, hull 6 mm (7 GPa) and overlay 3 mm (14.5 GPa)", provenance: Computed, rel: 1e-5}
	o := laminate.NewSection([]laminate.Layer{{Thickness: si.MM(6), Tension: si.GPa(7)}, {Thickness: si.MM(3), Tension: si.GPa(14.5)}})
	over.add("neutral axis", 5.28947, o.NeutralAxis.MM(), "mm").add("EI per mm", 591335.5, o.EI*1000, "N mm")
	return concat(lr, six, over)
}

// kawGraphite is the graphite/epoxy lamina of Kaw's examples.
var kawGraphite = laminate.Lamina{E1: si.GPa(181), E2: si.GPa(10.3), Nu12: 0.28, G12: si.GPa(7.17)}

var kawInputs = in{
	"ply": "5 mm", "E1": "181 GPa", "E2": "10.3 GPa", "nu12": "0.28", "G12": "7.17 GPa",
	"Xt": "1500 MPa", "Xc": "1500 MPa", "Yt": "40 MPa", "Yc": "246 MPa", "S": "68 MPa",
}

// with copies inputs, keeping the elastic ones, and adds more.
func with(base in, keep []string, more in) in {
	out := in{}
	for _, k := range keep {
		out[k] = base[k]
	}
	for k, v := range more {
		out[k] = v
	}
	return out
}

var elastic = []string{"ply", "E1", "E2", "nu12", "G12"}
var strong = append([]string{"Xt", "Xc", "Yt", "Yc", "S"}, elastic...)

func lamina() []Check {
	g := group{name: "reduced stiffness of a lamina", source: "Kaw2006: ex. 2.6", provenance: SecondHand, rel: 5e-4}
	q := kawGraphite.Q()
	g.add("Q11", 181.8, q[0][0]/1e9, "GPa").add("Q12", 2.897, q[0][1]/1e9, "GPa").add("Q22", 10.35, q[1][1]/1e9, "GPa").add("Q66", 7.17, q[2][2]/1e9, "GPa")
	return concat(g)
}

func laminates() []Check {
	abd := func(m string, unit string, values ...float64) []want {
		words := map[string]string{"n_per_m": "N/m", "n": "N", "nm": "N m"}[unit]
		out := make([]want, 0, 6)
		for i, ij := range []string{"11", "12", "22", "16", "26", "66"} {
			out = append(out, want{m + ij, m + ij + "_" + unit, values[i], words})
		}
		return out
	}
	kaw := group{name: "[0/30/-45], plies of 5 mm", source: "Kaw2006: ex. 4.2", provenance: Recalled, rel: 5e-4}
	kaw.figures("laminate", with(kawInputs, elastic, in{"stack": "[0/30/-45]"}), append(append(
		abd("A", "n_per_m", 1.739e9, 3.884e8, 4.533e8, 5.663e7, -1.141e8, 4.525e8),
		abd("B", "n", -3.129e6, 9.855e5, 1.158e6, -1.072e6, -1.072e6, 9.855e5)...),
		abd("D", "nm", 3.343e4, 6.461e3, 9.320e3, -5.240e3, -5.596e3, 7.663e3)...)...)
	cross := group{name: "[0/90/0], plies of 5 mm", source: "Kaw2006: ch. 4", provenance: SecondHand, rel: 1e-3}
	cross.figures("laminate", with(kawInputs, elastic, in{"stack": "[0/90/0]"}),
		want{"A11", "A11_n_per_m", 1.870e9, "N/m"}, want{"A22", "A22_n_per_m", 1.013e9, "N/m"},
		want{"D11", "D11_nm", 4.935e4, "N m"}, want{"D22", "D22_nm", 4.696e3, "N m"},
		want{"Ex", "Ex_gpa", 124.5, "GPa"}, want{"Ey", "Ey_gpa", 67.43, "GPa"},
		want{"flexural Ex", "flex_Ex_gpa", 175.0, "GPa"}, want{"flexural Ey", "flex_Ey_gpa", 16.65, "GPa"})
	hyer := group{name: "[0/90]s graphite, plies of 0.150 mm", source: "Hyer1998: laminate examples", provenance: Recalled, rel: 1e-3}
	hyer.figures("laminate", in{"stack": "[0/90]s", "ply": "0.150 mm", "E1": "155 GPa", "E2": "12.10 GPa", "nu12": "0.248", "G12": "4.40 GPa"},
		want{"A11", "A11_n_per_m", 50.4e6, "N/m"}, want{"A12", "A12_n_per_m", 1.809e6, "N/m"}, want{"D11", "D11_nm", 2.48, "N m"})
	two := group{name: "[0/90], two plies of 1 mm", source: "B11 = (Q22 - Q11) t²/2, by the reduced stiffnesses", provenance: AnIdentity, rel: 1e-6}
	l := laminate.Lamina{E1: si.GPa(39), E2: si.GPa(8.6), Nu12: 0.28, G12: si.GPa(3.8)}
	minor := l.Nu12 * 8.6 / 39 // Q = E/(1 - nu12 nu21), worked here and not by the package
	identity := (8.6e9 - 39e9) / (1 - l.Nu12*minor) * 1e-6 / 2
	two.figures("laminate", in{"stack": "[0/90]", "ply": "1 mm", "E1": "39 GPa", "E2": "8.6 GPa", "nu12": "0.28", "G12": "3.8 GPa"},
		want{"B11, the 0 ply lowest", "B11_n", identity, "N"})
	printed := group{name: "[0/90], two plies of 1 mm", source: "the same, printed to six digits", provenance: Computed, rel: 1e-5}
	printed.figures("laminate", in{"stack": "[0/90]", "ply": "1 mm", "E1": "39 GPa", "E2": "8.6 GPa", "nu12": "0.28", "G12": "3.8 GPa"},
		want{"B11, the 0 ply lowest", "B11_n", -15467.4, "N"})
	return concat(kaw, cross, hyer, two, printed)
}

func failure() []Check {
	kaw := group{name: "[0/90/0], plies of 5 mm, pulled along x", source: "Kaw2006: ch. 5", provenance: SecondHand, rel: 1e-3}
	kaw.figures("first-ply-failure", with(kawInputs, strong, in{"stack": "[0/90/0]", "nx": "1 N/m"}),
		want{"first ply failure, Tsai-Wu", "tsai_wu_first_nx_n_per_m", 7.277e6, "N/m"},
		want{"ply that fails first", "tsai_wu_first_ply_number", 2, ""},
		want{"first ply failure, max strain", "max_strain_first_nx_n_per_m", 7.254e6, "N/m"},
		want{"last ply failure", "max_stress_last_nx_n_per_m", 1.5e7, "N/m"})
	jones := group{name: "cross-ply glass-epoxy, thickness 1/10/1, unit mean stress", source: "Jones1999: ch. 4", provenance: Recalled, abs: 0.005}
	glass := laminate.Lamina{E1: si.GPa(54), E2: si.GPa(18), Nu12: 0.25, G12: si.GPa(8.8)}
	plies := []laminate.Ply{{Lamina: glass, Thickness: si.MM(1)}, {Lamina: glass, Thickness: si.MM(10), Angle: si.Degrees(90)}, {Lamina: glass, Thickness: si.MM(1)}}
	points := laminate.Points(plies, laminate.Load{N: [3]si.LineLoad{12e-3}}) // 1 Pa mean over 12 mm
	outer, inner := points[1], points[4]
	jones.add("outer ply along its fibres", 2.27, float64(outer.PlyStress[0]), "").add("outer ply across", 0.12, float64(outer.PlyStress[1]), "").
		add("inner ply along x", 0.746, float64(inner.Stress[0]), "").add("inner ply along its fibres", -0.024, float64(inner.PlyStress[0]), "")
	ud := in{"stack": "[0/90]s", "ply": "0.25 mm", "E1": "41 GPa", "E2": "10.4 GPa", "nu12": "0.28", "G12": "4.3 GPa"}
	eglass := group{name: "[0/90]s E-glass/epoxy, plies of 0.25 mm", source: "typical unidirectional E-glass/epoxy, values from memory", provenance: Computed, rel: 1e-3}
	eglass.figures("laminate", ud, want{"Ex", "Ex_gpa", 25.885, "GPa"})
	eglass.figures("first-ply-failure", with(ud, append([]string{"stack"}, elastic...), in{"Xt": "1140 MPa", "Xc": "620 MPa", "Yt": "39 MPa", "Yc": "128 MPa", "S": "89 MPa", "nx": "1 N/mm"}),
		want{"first ply failure, Tsai-Wu, mean stress", "tsai_wu_first_mean_stress_x_mpa", 97.55, "MPa"})
	return concat(kaw, jones, eglass)
}

func micromechanics() []Check {
	fibre, resin := laminate.Phase{E: si.GPa(85), Nu: 0.20}, laminate.Phase{E: si.GPa(3.4), Nu: 0.30}
	ht := group{name: "glass/epoxy, fibre volume 0.70", source: "Kaw2006: ch. 3", provenance: Recalled, rel: 1e-4}
	ht.add("E2 by Halpin-Tsai, ξ = 2", 20.20, laminate.HalpinTsai(fibre.E, resin.E, 0.7, 2).GPa(), "GPa")
	rom := group{name: "glass/epoxy, fibre volume 0.70", source: "Kaw2006: ch. 3", provenance: Recalled, rel: 1e-3}
	l := laminate.RuleOfMixtures(fibre, resin, 0.7)
	rom.add("E1 by the rule of mixtures", 60.52, l.E1.GPa(), "GPa").add("E2 by the inverse rule", 10.37, l.E2.GPa(), "GPa")
	return concat(ht, rom)
}

func concat(gs ...group) []Check {
	var out []Check
	for _, g := range gs {
		out = append(out, g.rows...)
	}
	return out
}
