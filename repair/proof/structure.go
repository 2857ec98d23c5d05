package proof

import (
	"strings"

	"scarfwright/physics/joint"
	"scarfwright/physics/laminate"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/figure"
)

// structures are panels, bonds and the small-craft formulas. Figures are per metre and
// pascal where that makes a result the table's own coefficient.
func structures() []Check {
	plate := func(change in) in {
		return but(in{"a": "1 m", "b": "1 m", "thickness": "10 mm", "E": "7 GPa", "nu": "0.3", "pressure": "1 Pa", "edges": "simple"}, change)
	}
	simple := group{name: "plate simply supported, deflection α", source: "TimoshenkoWK1959: table 8; exact by Navier and Levy series", provenance: Recalled, abs: 1e-6}
	for _, row := range []struct {
		b     string
		alpha float64
	}{{"1 m", 0.0040624}, {"1.5 m", 0.0077240}, {"2 m", 0.0101287}} {
		simple.figures("plate-closed-form", plate(in{"b": row.b}), want{"b/a " + row.b[:len(row.b)-2], "alpha_number", row.alpha, ""})
	}
	moments := group{name: "plate simply supported, moments over q a²", source: "TimoshenkoWK1959: table 8; exact by series", provenance: Recalled, abs: 1e-5}
	moments.figures("plate-closed-form", plate(in{"b": "1.2 m"}), want{"b/a 1.2, across the short span", "moment_x_n", 0.062682, ""}, want{"along", "moment_y_n", 0.050081, ""})
	fixed := group{name: "plate fixed all round, greatest edge moment over q a²", source: "TimoshenkoWK1959: table 35", provenance: Read, rel: 0.005}
	for _, row := range []struct {
		b      string
		moment float64
	}{{"1 m", 0.0513}, {"1.5 m", 0.0757}, {"2 m", 0.0829}} {
		fixed.figures("plate-closed-form", plate(in{"b": row.b, "edges": "clamped"}), want{"b/a " + row.b[:len(row.b)-2], "beta_number", row.moment, ""})
	}
	factors := group{name: "small-craft panel factor k2", source: "ISO 12215-5:2008, formula from memory; within 0.3 % of six times the fixed plate's edge moment", provenance: Recalled, abs: 1e-4}
	for _, row := range []struct {
		long string
		k2   float64
	}{{"400 mm", 0.3077}, {"600 mm", 0.4537}, {"800 mm", 0.4974}} {
		factors.figures("panel-thickness", in{"pressure": "40 kPa", "stress": "80 MPa", "short": "400 mm", "long": row.long}, want{"l = " + row.long + ", b = 400 mm", "k2_ratio", row.k2, ""})
	}
	crossPly := group{name: "orthotropic plate [0/90/90/0], 100 w E2 h³/(q a⁴)", source: "Reddy2004: ch. 5", provenance: Recalled, rel: 1e-4}
	crossPly.figures("plate-closed-form", in{"a": "1 m", "b": "1 m", "stack": "[0/90/90/0]", "ply": "2.5 mm", "E1": "25 GPa", "E2": "1 GPa", "nu12": "0.25", "G12": "0.5 GPa", "pressure": "1 kPa", "edges": "simple"},
		want{"even load, as a deflection of 1 m and 10 mm", "deflection_mm", 6.797, "mm"})
	roving := group{name: "woven roving panel 400 × 600 × 6 mm, 20 kPa", source: "double series", provenance: Computed, rel: 1e-4}
	roving.figures("plate-closed-form", in{"a": "400 mm", "b": "600 mm", "stack": "[0]s", "ply": "3 mm", "E1": "14.5 GPa", "E2": "14.5 GPa", "nu12": "0.14", "G12": "3.3 GPa", "pressure": "20 kPa", "edges": "simple"},
		want{"deflection", "deflection_mm", 18.0743, "mm"}, want{"moment across the short span", "moment_x_n", 300.906, "N"})
	return concat(simple, moments, fixed, factors, crossPly, roving, bonds(), smallCraft(), strip(), patched())
}

func bonds() group {
	scarf := group{name: "taper 12:1, and what a bond takes", source: "equilibrium of the joint", provenance: ClosedForm, abs: 1e-5}
	scarf.figures("scarf-bond", in{"ratio": "12", "thickness": "6 mm", "stress": "100 MPa"},
		want{"shear over stress", "shear_ratio", 0.08276, ""}, want{"peel over stress", "peel_ratio", 0.006897, ""})
	scarf.abs = 1e-3
	scarf.figures("scarf-bond", in{"ratio": "12", "thickness": "6 mm", "stress": "100 MPa"}, want{"angle", "angle_deg", 4.764, "°"})
	scarf.figures("scarf-ratio-needed", in{"strength": "85 MPa", "bond": "7 MPa", "ratio": "6"}, want{"share of the strength at 6:1, 85 and 7 MPa", "efficiency_ratio", 0.508, ""})
	scarf.figures("scarf-ratio-needed", in{"strength": "85 MPa", "bond": "7 MPa", "ratio": "12"}, want{"at 12:1", "efficiency_ratio", 0.995, ""})
	scarf.abs = 0.01
	scarf.figures("scarf-ratio-needed", in{"strength": "85 MPa", "bond": "7 MPa"}, want{"ratio needed, 85 and 7 MPa (lap shear of mat: BS4994-1987)", "needed_ratio", 12.06, "to 1"})
	scarf.figures("scarf-ratio-needed", in{"strength": "190 MPa", "bond": "6 MPa"}, want{"ratio needed, 190 and 6 MPa (lap shear of roving: BS4994-1987)", "needed_ratio", 31.64, "to 1"})
	lap := in{"E1": "12 GPa", "t1": "5 mm", "E2": "12 GPa", "t2": "5 mm", "G": "1000 MPa", "bond": "0.5 mm", "overlap": "50 mm", "load": "100 N/mm"}
	scarf.abs, scarf.rel, scarf.source, scarf.provenance = 0, 1e-4, "Volkersen1938, form from memory", Computed
	scarf.figures("lap-shear", lap, want{"lap of 50 mm, greatest shear", "peak_shear_mpa", 12.9100, "MPa"}, want{"over the mean", "peak_to_mean_ratio", 6.4550, ""})
	double := joint.DoubleLap{
		InnerE: si.GPa(12), OuterE: si.GPa(12), InnerThick: si.MM(6), OuterThick: si.MM(3), Film: si.MM(0.5),
		Yield: si.MPa(20), ElasticStrain: 0.02, PlasticStrain: 0.05,
	}
	P, _, err := double.Strength()
	scarf.rel, scarf.source = 1e-5, "HartSmith1973, form from memory and derived again"
	if scarf.add("double lap with a resin that yields, balanced", 587.878, float64(P)/1000, "N/mm"); err != nil {
		scarf.rows[len(scarf.rows)-1].Err = err.Error()
	}
	scarf.source = "strip of unit width"
	scarf.figures("overlay-bending", in{"E1": "7 GPa", "t1": "6 mm", "E2": "14.5 GPa", "t2": "3 mm"},
		want{"overlay 3 mm on 6 mm, neutral axis", "neutral_axis_mm", 5.28947, "mm"}, want{"its EI", "EI_nm", 591.3355, "N m"})
	scarf.rel, scarf.abs, scarf.provenance = 0, 1e-12, AnIdentity
	scarf.figures("overlay-bending", in{"E1": "7 GPa", "t1": "6 mm", "E2": "7 GPa", "t2": "6 mm"}, want{"patch as thick as the hull over a hole", "bridged_free_ratio", 7, ""})
	return scarf
}

func smallCraft() group {
	g := group{name: "small-craft design pressure and thickness", source: "ISO 12215-5:2008, formulas from memory", provenance: FromMemory, rel: 1e-3}
	g.figures("design-pressure", in{"waterline": "8 m", "chine": "2.6 m", "mass": "3500 kg", "speed": "25 kn", "deadrise": "18 deg", "category": "B", "forward": "50 %", "short": "400 mm", "long": "900 mm"},
		want{"craft of 8 m and 25 kn, pressure", "pressure_kpa", 27.135, "kPa"})
	g.figures("panel-thickness", in{"pressure": "27.135 kPa", "stress": "76 MPa", "short": "400 mm", "long": "900 mm"}, want{"its panel", "thickness_mm", 5.344, "mm"})
	g.rel = 1e-4
	g.figures("panel-thickness", in{"pressure": "40 kPa", "stress": "80 MPa", "short": "400 mm", "long": "400 mm", "crown": "40 mm"},
		want{"crowned panel, kC", "kc_ratio", 0.767, ""}, want{"its thickness", "thickness_mm", 3.8052, "mm"})
	g.rel, g.source, g.provenance = 1e-5, "sandwich strip, forms from memory", Computed
	g.figures("sandwich-strip", in{"face-E": "11 GPa", "face": "3 mm", "core": "20 mm", "core-G": "20 MPa", "core-E": "55 MPa", "span": "400 mm", "pressure": "30 kPa"},
		want{"sandwich 3/20/3 mm, deflection", "deflection_mm", 2.26869, "mm"}, want{"wrinkling", "wrinkling_mpa", 114.789, "MPa"})
	return g
}

// strip is the laminated strip of NAFEMS R0031, test 1: seven plies 0/90/0/90/0/90/0,
// 30 mm between its supports, 10 N/mm in the middle.
func strip() group {
	g := group{name: "laminated strip under a load in the middle", source: "NAFEMS-R0031: test 1, targets read second-hand", provenance: SecondHand, rel: 0.005}
	const (
		span = 0.030
		P    = 10e3 // N/m
	)
	var layers []laminate.Layer
	var plies []panel.Ply
	for i, mm := range []float64{0.1, 0.1, 0.1, 0.4, 0.1, 0.1, 0.1} {
		ply := panel.Ply{G13: si.GPa(3), G23: si.GPa(2)} // from memory
		ply.Lamina, ply.Thickness = laminate.Lamina{E1: si.GPa(100), E2: si.GPa(5), Nu12: 0, G12: si.GPa(3)}, si.MM(mm)
		E := si.GPa(5)
		if i%2 == 0 { // along the strip, which spans along y
			E, ply.Angle = si.GPa(100), si.Degrees(90)
		}
		layers, plies = append(layers, laminate.Layer{Thickness: si.MM(mm), Tension: E}), append(plies, ply)
	}
	s, plate := laminate.NewSection(layers), panel.StripOf(panel.Centred(plies...))
	g.add("stress in the outer ply", 684, 100e9*0.0005*(P*span/4)/s.EI/1e6, "MPa")
	g.add("shear between the two outer plies", 4.1, laminate.InterlaminarShear(layers, P/2, si.MM(0.1)).MPa(), "MPa")
	g.rel = 0.01
	g.add("deflection, shear through the plies included (its moduli from memory)", 1.06, 1e3*(P*span*span*span/48/plate.D+P*span/4/plate.S), "mm")
	return g
}

// patched are the benchmark panels of the project, 900 x 450 mm with an ellipse of 300
// x 200 mm in it, under 20 kPa.
func patched() group {
	g := group{name: "laminated panel with a patch, by elements", source: "spectral elements of degree 10 and 8; the linear ones also by two general finite-element programs within 0.15 %", provenance: ComputedScipy}
	with := func(text string, edges, theory string) in {
		return in{"panel": strings.NewReplacer("edges: clamped", "edges: "+edges, "theory: large", "theory: "+theory).Replace(text)}
	}
	intact, _, _ := strings.Cut(figure.PanelExample, "zones:")
	for _, row := range []struct {
		what, text, edges, theory string
		w                         float64
	}{
		{"intact, clamped, small deflection", intact, "clamped", "linear", 10.1253},
		{"overlay, clamped, small deflection", figure.PanelExample, "clamped", "linear", 5.97999},
		{"intact, simply supported, small deflection", intact, "simple", "linear", 42.759},
		{"overlay, simply supported, small deflection", figure.PanelExample, "simple", "linear", 24.234},
		{"intact, clamped, large deflection", intact, "clamped", "large", 6.0640},
		{"overlay, clamped, large deflection", figure.PanelExample, "clamped", "large", 4.1279},
		{"intact, simply supported, large deflection", intact, "simple", "large", 7.858},
		{"overlay, simply supported, large deflection", figure.PanelExample, "simple", "large", 5.984},
	} {
		g.rel = 0.001
		if row.theory == "large" {
			g.rel = 0.002
		}
		g.figures("patched-panel", with(row.text, row.edges, row.theory), want{row.what + ": middle", "deflection_mm", row.w, "mm"})
	}
	return g
}
