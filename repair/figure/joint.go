package figure

import (
	"fmt"
	"strings"

	"scarfwright/physics/joint"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

const (
	byEquilibrium = "closed form: equilibrium of the joint"
	volkersen     = "Volkersen1938, form from memory"
	bondOnly      = "A bond carries this only where the face was ground bright and clean, and the resin wetted it. Nothing here knows workmanship; who designs the repair decides."
)

var adhesiveInputs = []Input{
	{Key: "bond-thickness", Doc: "thickness of the bond's resin", Unit: "0.2 mm", Default: "0.2 mm"},
	{Key: "bond-E", Doc: "modulus of the bond's resin", Unit: "3 GPa", Default: "3 GPa"},
	{Key: "bond-nu", Doc: "Poisson's ratio of the bond's resin", Unit: "0.35", Default: "0.35"},
}

func jointFigures() []Calculation {
	layers := []Input{
		{Key: "E1", Doc: "modulus of the first sheet", Unit: "12 GPa"}, {Key: "t1", Doc: "its thickness", Unit: "5 mm"},
		{Key: "E2", Doc: "modulus of the second sheet", Unit: "12 GPa"}, {Key: "t2", Doc: "its thickness", Unit: "5 mm"},
	}
	return []Calculation{
		{
			Name: "scarf-bond", Title: "shear and peel along the bond of a taper, even or ply by ply", Inputs: append([]Input{
				{Key: "ratio", Doc: "taper ratio to one", Unit: "12", Range: "2 to 200"},
				{Key: "thickness", Doc: "thickness of the laminate", Unit: "6 mm", Unless: []string{"moduli"}},
				{Key: "stress", Doc: "mean tension in the laminate", Unit: "100 MPa"},
				{Key: "moduli", Doc: "ply by ply: modulus of each ply along the load, held from narrowing, from the ground face, semicolons between", Unit: "8.08 GPa; 14.82 GPa", Optional: true},
				{Key: "ply", Doc: "thickness of every ply, or one a ply with semicolons between", Unit: "1 mm", Optional: true},
				{Key: "G13", Doc: "shear modulus of the plies through the thickness", Unit: "2.2 GPa", Default: "2.2 GPa"},
			}, adhesiveInputs...), work: scarfBond,
		},
		{
			Name: "scarf-ratio-needed", Title: "taper ratio at which the bond is as strong as the laminate", Inputs: []Input{
				{Key: "strength", Doc: "tensile strength of the laminate", Unit: "85 MPa"},
				{Key: "bond", Doc: "shear strength of the bond", Unit: "7 MPa"},
				{Key: "ratio", Doc: "a ratio whose share of the strength is wanted", Unit: "12", Optional: true},
			}, work: scarfRatio,
		},
		{
			Name: "lap-shear", Title: "shear in the bond of a lap", Inputs: append(layers,
				Input{Key: "G", Doc: "shear modulus of the bond's resin", Unit: "1000 MPa"},
				Input{Key: "bond", Doc: "thickness of the bond's resin", Unit: "0.5 mm"},
				Input{Key: "overlap", Doc: "length of the lap", Unit: "50 mm"},
				Input{Key: "load", Doc: "load for each millimetre of width", Unit: "100 N/mm"},
			), work: lapShear,
		},
		{
			Name: "overlay-bending", Title: "a patch laid on one face: its lever, stiffness, and what it bears over a hole", Inputs: append(layers,
				Input{Key: "load", Doc: "load in the hull's plane, for each millimetre of width", Unit: "100 N/mm", Default: "100 N/mm"},
			), work: overlayBending,
		},
	}
}

func scarfBond(r *reader) Answer {
	ratio := r.number("ratio", between(2, 200, "between 2 and 200"))
	sigma := quantity[si.Pressure](r, "stress", bounds{-1e10, 1e10, false, "a stress"})
	a := joint.Adhesive{
		Thickness: quantity[si.Length](r, "bond-thickness", positive), E: quantity[si.Pressure](r, "bond-E", positive),
		Nu: r.number("bond-nu", between(0, 0.49, "between 0 and 0.49")),
	}
	G := quantity[si.Pressure](r, "G13", positive)
	var plies []joint.Ply
	var t si.Length
	if r.has("moduli") {
		plies = r.bondPlies(G)
		for _, p := range plies {
			t += p.Thickness
		}
	} else {
		t = quantity[si.Length](r, "thickness", positive)
	}
	if !r.ok() {
		return Answer{}
	}
	tau, peel := joint.Uniform(sigma, ratio)
	angle, slant := joint.Slope(t, ratio)
	out := Answer{
		Results: Results{
			{Key: "angle_deg", Value: angle.Degrees()}, {Key: "slope_mm", Value: slant.MM()},
			{Key: "shear_mpa", Value: tau.MPa()}, {Key: "peel_mpa", Value: peel.MPa()},
			{Key: "shear_ratio", Value: float64(tau / sigma)}, {Key: "peel_ratio", Value: float64(peel / sigma)},
		},
		Working: []working.Line{
			{Name: "slope", Formula: "s = t √(1 + R²)", Numbers: fmt.Sprintf("%s × √(1 + %s²) mm", num(t.MM()), num(ratio)), Value: slant.MM(), Unit: "mm", Source: working.Geometry},
			{Name: "mean shear along the bond", Formula: "τ = σ R/(1 + R²)", Numbers: fmt.Sprintf("%s MPa × %s/(1 + %s²)", num(sigma.MPa()), num(ratio), num(ratio)), Value: tau.MPa(), Unit: "MPa", Source: byEquilibrium, Holds: "as a mean for any laminate; everywhere for one homogeneous laminate"},
			{Name: "mean stress across the bond", Formula: "σn = σ/(1 + R²)", Numbers: fmt.Sprintf("%s MPa/(1 + %s²)", num(sigma.MPa()), num(ratio)), Value: peel.MPa(), Unit: "MPa", Source: byEquilibrium},
		},
		Warnings: []string{bondOnly},
	}
	if plies == nil {
		return out
	}
	b, err := joint.Taper{Ratio: ratio, Parent: plies, Patch: plies, Adhesive: a}.Solve(sigma)
	if err != nil {
		r.fail("moduli", err.Error(), "")
		return Answer{}
	}
	const how = "our own section model, physics/joint; within 1.5 % of two-dimensional elements at every ply (independent computation)"
	for i, p := range b.AtParent {
		out.Results = append(out.Results, Result{Key: fmt.Sprintf("shear_ply%d_mpa", i+1), Value: p.Shear.MPa()})
		out.Working = append(out.Working, working.Line{
			Name: fmt.Sprintf("shear at ply %d", i+1), Formula: "layer by layer, each ply stretched and sheared", Numbers: fmt.Sprintf("%s mm from the ground face", num(p.Height.MM())),
			Value: p.Shear.MPa(), Unit: "MPa", Source: how,
		})
	}
	out.Results = append(out.Results, Result{Key: "peak_shear_mpa", Value: b.Peak.Shear.MPa()}, Result{Key: "peak_height_mm", Value: b.Peak.Height.MM()}, Result{Key: "peak_to_mean_ratio", Value: b.Factor()})
	out.Working = append(out.Working, working.Line{Name: "greatest shear", Formula: "over the bond, its last " + num(b.Unresolved.MM()) + " mm at either tip left out", Numbers: fmt.Sprintf("%s mm from the ground face", num(b.Peak.Height.MM())), Value: b.Peak.Shear.MPa(), Unit: "MPa", Source: how})
	out.Warnings = append(out.Warnings, fmt.Sprintf("The tips are sharp corners: within %.2g mm of either the stress is not told by any such model.", b.Unresolved.MM()))
	return out
}

// bondPlies reads the moduli and thicknesses of a taper's plies.
func (r *reader) bondPlies(G si.Pressure) []joint.Ply {
	es := strings.Split(r.text("moduli"), ";")
	ts := strings.Split(r.text("ply"), ";")
	if !r.has("ply") {
		r.fail("ply", "is needed with moduli.", `Give ply="1 mm", or one a ply with semicolons between.`)
		return nil
	}
	if len(ts) != 1 && len(ts) != len(es) {
		r.fail("ply", fmt.Sprintf("%s for %s.", working.Count(len(ts), "thickness", "thicknesses"), plyCount(len(es))), "Give one, or one a ply, with semicolons between.")
		return nil
	}
	if len(es) > 100 {
		r.fail("moduli", fmt.Sprintf("%d plies are more than 100.", len(es)), "")
		return nil
	}
	var out []joint.Ply
	for i, text := range es {
		E, errE := si.Parse[si.Pressure](strings.TrimSpace(text))
		t, errT := si.Parse[si.Length](strings.TrimSpace(ts[min(i, len(ts)-1)]))
		switch {
		case errE != nil:
			r.fail("moduli", errE.Error(), "")
		case errT != nil:
			r.fail("ply", errT.Error(), "")
		case !(E > 0) || !(t > 0):
			r.fail("moduli", "moduli and thicknesses must be more than 0.", "")
		}
		out = append(out, joint.Ply{Thickness: t, E: E, G: G})
	}
	return out
}

func scarfRatio(r *reader) Answer {
	sigma, tau := quantity[si.Pressure](r, "strength", positive), quantity[si.Pressure](r, "bond", positive)
	if !r.ok() {
		return Answer{}
	}
	R, err := joint.FullRatio(sigma, tau)
	if err != nil {
		r.fail("bond", err.Error(), "")
		return Answer{}
	}
	k := float64(sigma / tau)
	a := Answer{
		Results: Results{{Key: "needed_ratio", Value: R}},
		Working: []working.Line{{
			Name: "ratio at which bond and laminate give way together", Formula: "R = (k + √(k² - 4))/2, k = σu/τ", Numbers: fmt.Sprintf("k = %s/%s = %s", num(sigma.MPa()), num(tau.MPa()), num(k)),
			Value: R, Unit: "to 1", Source: byEquilibrium, Holds: "mean shear; plies of unlike stiffness and the tips want more",
		}},
		Warnings: []string{bondOnly},
	}
	if r.has("ratio") {
		x := r.number("ratio", between(1, 200, "between 1 and 200"))
		if !r.ok() {
			return Answer{}
		}
		e := joint.Efficiency(sigma, tau, x)
		a.Results = append(a.Results, Result{Key: "efficiency_ratio", Value: float64(e)})
		a.Working = append(a.Working, working.Line{
			Name: fmt.Sprintf("share of the strength at %s:1", num(x)), Formula: "min(1, τ (1 + R²)/(R σu))", Numbers: fmt.Sprintf("%s × (1 + %s²)/(%s × %s)", num(tau.MPa()), num(x), num(x), num(sigma.MPa())),
			Value: float64(e), Unit: "1", Source: byEquilibrium, Holds: "no share is taken off for workmanship",
		})
	}
	return a
}

func lapShear(r *reader) Answer {
	E1, t1 := quantity[si.Pressure](r, "E1", positive), quantity[si.Length](r, "t1", positive)
	E2, t2 := quantity[si.Pressure](r, "E2", positive), quantity[si.Length](r, "t2", positive)
	G, eta := quantity[si.Pressure](r, "G", positive), quantity[si.Length](r, "bond", positive)
	L, P := quantity[si.Length](r, "overlap", positive), quantity[si.LineLoad](r, "load", positive)
	if !r.ok() {
		return Answer{}
	}
	const nu = 0.35 // G is what counts; E is made to give it
	l := joint.Lap{
		Stiff1: si.LineLoad(float64(E1) * float64(t1)), Stiff2: si.LineLoad(float64(E2) * float64(t2)), Length: L,
		Adhesive: joint.Adhesive{Thickness: eta, E: si.Scale(G, 2*(1+nu)), Nu: nu},
	}
	if err := l.Check(); err != nil {
		r.fail("overlap", err.Error(), "")
		return Answer{}
	}
	peak, at := l.Peak(P)
	mean := si.Pressure(float64(P) / float64(L))
	enough, err := l.Enough(0.01)
	if err != nil {
		r.fail("overlap", err.Error(), "")
		return Answer{}
	}
	w := l.Omega()
	return Answer{
		Results: Results{
			{Key: "peak_shear_mpa", Value: peak.MPa()}, {Key: "mean_shear_mpa", Value: mean.MPa()}, {Key: "peak_to_mean_ratio", Value: float64(peak / mean)},
			{Key: "peak_place_mm", Value: at.MM()}, {Key: "omega_number", Value: w / 1000}, {Key: "long_enough_mm", Value: enough.MM()},
		},
		Working: []working.Line{
			{Name: "how fast shear dies away", Formula: "ω² = (G/η)(1/E1t1 + 1/E2t2)", Numbers: fmt.Sprintf("%s/%s × (1/(%s × %s) + 1/(%s × %s)) /mm²", num(G.MPa()), num(eta.MM()), num(E1.MPa()), num(t1.MM()), num(E2.MPa()), num(t2.MM())), Value: w / 1000, Unit: "1/mm", Source: volkersen},
			{Name: "greatest shear", Formula: "τ = (P ω/2)(coth(ωL/2) + |ψ| tanh(ωL/2)), ψ = (E2t2 - E1t1)/(E1t1 + E2t2)", Numbers: fmt.Sprintf("P = %s N/mm, ωL/2 = %s", num(float64(P)/1000), num(w*float64(L)/2)), Value: peak.MPa(), Unit: "MPa", Source: volkersen, Holds: "sheets that stretch and don't bend; elastic resin"},
			{Name: "mean shear", Formula: "P/L", Numbers: fmt.Sprintf("%s/%s", num(float64(P)/1000), num(L.MM())), Value: mean.MPa(), Unit: "MPa", Source: working.Identity},
			{Name: "length beyond which the peak falls by less than 1 %", Formula: "from the same law", Value: enough.MM(), Unit: "mm", Source: volkersen, Holds: "longer laps buy tolerance of flaws, not a lower peak"},
		},
		Warnings: []string{bondOnly},
	}
}

func overlayBending(r *reader) Answer {
	E1, t1 := quantity[si.Pressure](r, "E1", positive), quantity[si.Length](r, "t1", positive)
	E2, t2 := quantity[si.Pressure](r, "E2", positive), quantity[si.Length](r, "t2", positive)
	N := quantity[si.LineLoad](r, "load", bounds{-1e9, 1e9, false, "a load"})
	if !r.ok() {
		return Answer{}
	}
	const G = si.Pressure(2e9) // not felt here
	o, err := joint.NewOverlay([]joint.Ply{{Thickness: t1, E: E1, G: G}}, []joint.Ply{{Thickness: t2, E: E2, G: G}})
	if err != nil {
		r.fail("t1", err.Error(), "")
		return Answer{}
	}
	restrained, free := joint.Bridged(t1, t2)
	held, bent := o.Stress(N, t1+t2)
	e := float64(o.Eccentricity) * 1e3
	strip := "strip of unit width, closed form"
	return Answer{
		Results: Results{
			{Key: "neutral_axis_mm", Value: o.NeutralAxis.MM()}, {Key: "EA_n_per_m", Value: o.EA}, {Key: "EI_nm", Value: o.EI},
			{Key: "lever_mm", Value: e}, {Key: "B11_n", Value: o.B11},
			{Key: "bridged_held_ratio", Value: restrained}, {Key: "bridged_free_ratio", Value: free},
			{Key: "top_stress_held_mpa", Value: held.MPa()}, {Key: "top_stress_free_mpa", Value: bent.MPa()},
		},
		Working: []working.Line{
			{Name: "neutral axis, from the hull's free face", Formula: "z = Σ E t z/Σ E t", Numbers: fmt.Sprintf("(%s × %s × %s + %s × %s × %s)/(%s × %s + %s × %s)", num(E1.GPa()), num(t1.MM()), num(t1.MM()/2), num(E2.GPa()), num(t2.MM()), num(t1.MM()+t2.MM()/2), num(E1.GPa()), num(t1.MM()), num(E2.GPa()), num(t2.MM())), Value: o.NeutralAxis.MM(), Unit: "mm", Source: strip},
			{Name: "bending stiffness", Formula: "EI = Σ E (t³/12 + t (z - zn)²)", Value: o.EI * 1e3, Unit: "N mm²/mm", Source: strip},
			{Name: "lever of a load in the hull's plane", Formula: "e = zn - t1/2", Numbers: fmt.Sprintf("%s - %s mm", num(o.NeutralAxis.MM()), num(t1.MM()/2)), Value: e, Unit: "mm", Source: strip},
			{Name: "stress in a patch that alone bridges a hole, times the hull's", Formula: "(t1/t2)(1 + 6 e'/t2), e' = (t1 + t2)/2", Numbers: fmt.Sprintf("%s/%s × (1 + 3 × (%s + %s)/%s)", num(t1.MM()), num(t2.MM()), num(t1.MM()), num(t2.MM()), num(t2.MM())), Value: free, Unit: "1", Source: strip, Holds: "ends free to bend: an upper bound; held by frames it is " + num(restrained)},
		},
		Warnings: []string{"A patch on one face bends whatever is pulled through it. It is not counted as equal to the laminate it covers without frames, a second face or an inset taper.", bondOnly},
	}
}
