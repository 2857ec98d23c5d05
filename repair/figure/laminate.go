package figure

import (
	"fmt"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

const (
	lr                  = "LR2013: Ch 3 s1"
	kaw                 = "Kaw2006: ch. 4"
	kaw5                = "Kaw2006: ch. 5"
	kaw2                = "Kaw2006: ch. 2"
	num4                = 4
	glassLow, glassHigh = 0.20, 0.75
)

// glassWarning marks a glass content outside what hand lay-up to infusion gives.
func glassWarning(g si.Ratio) string {
	if g < glassLow || g > glassHigh {
		return fmt.Sprintf("glass content %.3g %% is outside %.0f to %.0f %%: no hand-laid or infused laminate is known to reach it", g.Percent(), 100*glassLow, 100*glassHigh)
	}
	return ""
}

// constituents are the optional densities and voids of a ply.
func (r *reader) constituents() laminate.Constituents {
	return laminate.Constituents{
		Fibre: quantity[si.Density](r, "fibre-density", positive),
		Resin: quantity[si.Density](r, "resin-density", positive),
		Voids: quantity[si.Ratio](r, "voids", between(0, 0.5, "between 0 and 50 %")),
	}
}

var densityInputs = []Input{
	{Key: "fibre-density", Doc: "density of the glass", Unit: "2.56 g/cm3", Default: "2.56 g/cm3"},
	{Key: "resin-density", Doc: "density of the cured resin", Unit: "1.20 g/cm3", Default: "1.20 g/cm3"},
	{Key: "voids", Doc: "void content by volume", Unit: "3 %", Default: "0 %", Range: "0 to 50 %"},
}

func laminateFigures() []Calculation {
	return []Calculation{
		{
			Name: "ply-thickness", Title: "thickness, resin and density of one ply from its glass", Inputs: append([]Input{
				{Key: "areal", Doc: "weight of the dry cloth", Unit: "450 g/m2"},
				{Key: "glass", Doc: "glass content by mass", Unit: "30 %", Range: "more than 0, less than 100 %"},
			}, densityInputs...),
			work: plyThickness,
		},
		{
			Name: "glass-content", Title: "glass content from a measured ply thickness", Inputs: append([]Input{
				{Key: "areal", Doc: "weight of the dry cloth", Unit: "450 g/m2"},
				{Key: "thickness", Doc: "measured thickness of the ply", Unit: "1.05 mm"},
			}, densityInputs...),
			work: glassContent,
		},
		{
			Name: "class-properties", Title: "strength and stiffness of E-glass laminate by class-rule formulas", Inputs: []Input{
				{Key: "kind", Doc: "csm (mat) or roving (woven or cross-ply)", Unit: "csm", Words: []string{"csm", "roving"}},
				{Key: "glass", Doc: "glass content by mass", Unit: "30 %", Range: "as the formulas hold"},
			},
			work: classProperties,
		},
		{
			Name: "laminate", Title: "A, B, D and engineering constants of a stack", Inputs: stackInputs,
			work: laminateFigure,
		},
	}
}

var stackInputs = []Input{
	{Key: "stack", Doc: "stack, first ply laid first", Unit: "[0/90]s"},
	{Key: "ply", Doc: "thickness of every ply, or one a ply with semicolons between", Unit: "0.25 mm"},
	{Key: "E1", Doc: "modulus along the fibres", Unit: "41 GPa"},
	{Key: "E2", Doc: "modulus across the fibres", Unit: "10.4 GPa"},
	{Key: "nu12", Doc: "Poisson's ratio", Unit: "0.28", Range: "nu12² < E1/E2"},
	{Key: "G12", Doc: "shear modulus", Unit: "4.3 GPa"},
}

func plyThickness(r *reader) Answer {
	w, g := quantity[si.AreaDensity](r, "areal", positive), quantity[si.Ratio](r, "glass", fraction)
	c := r.constituents()
	if !r.ok() {
		return Answer{}
	}
	if err := c.Check(g); err != nil {
		r.fail("glass", err.Error(), "")
		return Answer{}
	}
	t := laminate.Thickness(w, g, c)
	resin := laminate.ResinWeight(w, g)
	vf := laminate.VolumeFraction(g, c)
	rho := laminate.LaminateDensity(g, c)
	numbers := fmt.Sprintf("%s g/m² × (1/%s + %s/(%s × %s)) cm³/g / (1 - %s)", num(w.GSM()), num(c.Fibre.GramsPerML()), num(1-float64(g)), num(float64(g)), num(c.Resin.GramsPerML()), num(float64(c.Voids)))
	return Answer{
		Results: Results{
			{Key: "thickness_mm", Value: t.MM()},
			{Key: "resin_g_per_m2", Value: resin.GSM()},
			{Key: "resin_to_glass_ratio", Value: float64(resin / w)},
			{Key: "fibre_volume_fraction", Value: float64(vf)},
			{Key: "density_g_per_cm3", Value: rho.GramsPerML()},
		},
		Working: []working.Line{
			{Name: "ply thickness", Formula: "t = w (1/ρf + (1-G)/(G ρr)) / (1 - v)", Numbers: numbers, Value: t.MM(), Unit: "mm", Source: lr, Holds: "any glass content; exact for a void-free ply", Warning: glassWarning(g)},
			{Name: "resin in the ply", Formula: "m = w (1-G)/G", Numbers: fmt.Sprintf("%s g/m² × %s/%s", num(w.GSM()), num(1-float64(g)), num(float64(g))), Value: resin.GSM(), Unit: "g/m²", Source: working.Identity},
			{Name: "fibre volume fraction", Formula: "Vf = (G/ρf)/(G/ρf + (1-G)/ρr)", Numbers: fmt.Sprintf("(%s/%s)/(%s/%s + %s/%s)", num(float64(g)), num(c.Fibre.GramsPerML()), num(float64(g)), num(c.Fibre.GramsPerML()), num(1-float64(g)), num(c.Resin.GramsPerML())), Value: float64(vf), Unit: "1", Source: working.Identity},
			{Name: "density of the laminate", Formula: "ρ = (1 - v)/(G/ρf + (1-G)/ρr)", Value: rho.GramsPerML(), Unit: "g/cm³", Source: working.Identity},
		},
	}
}

func glassContent(r *reader) Answer {
	w, t := quantity[si.AreaDensity](r, "areal", positive), quantity[si.Length](r, "thickness", positive)
	c := r.constituents()
	if !r.ok() {
		return Answer{}
	}
	solid := laminate.Thickness(w, 1-1e-12, c)
	if t <= solid {
		r.fail("thickness", fmt.Sprintf("%.3f mm is less than the glass alone, %.3f mm.", t.MM(), solid.MM()), "Check the weight's unit: mat ounces are per square foot, cloth ounces per square yard.")
		return Answer{}
	}
	g := laminate.GlassContent(w, t, c)
	return Answer{
		Results: Results{{Key: "glass_fraction", Value: float64(g)}, {Key: "glass_percent", Value: g.Percent()}},
		Working: []working.Line{{
			Name: "glass content", Formula: "G = 1/(1 + ρr (t (1-v)/w - 1/ρf))",
			Numbers: fmt.Sprintf("t = %s mm, w = %s g/m²", num(t.MM()), num(w.GSM())), Value: float64(g), Unit: "1", Source: lr, Warning: glassWarning(g),
		}},
	}
}

func classProperties(r *reader) Answer {
	kind, g := r.word("kind"), quantity[si.Ratio](r, "glass", fraction)
	if !r.ok() {
		return Answer{}
	}
	k := laminate.CSM
	if kind == "roving" {
		k = laminate.Roving
	}
	p, err := laminate.ClassRule(k, g)
	if err != nil {
		r.fail("glass", err.Error(), "")
		return Answer{}
	}
	x := num(float64(g))
	e, u := "E = 15 G + 2", "σ = 200 G + 25"
	if k == laminate.Roving {
		e, u = "E = 30 G - 0.5", "σ = 400 G - 10"
	}
	type row struct {
		key, name, formula string
		value              si.Pressure
		giga               bool
		source             string
	}
	memory := "from memory: class-rule formulas (special service craft)"
	rows := []row{
		{"tensile_modulus_gpa", "tensile modulus", e, p.TensileModulus, true, lr + " (mat); roving from memory"},
		{"tensile_strength_mpa", "ultimate tensile strength", u, p.TensileStrength, false, memory},
		{"compressive_modulus_gpa", "compressive modulus", "E = 40 G - 6", p.CompressiveModulus, true, lr + " (mat); roving from memory"},
		{"compressive_strength_mpa", "ultimate compressive strength", "σ = 150 G + 72", p.CompressiveStrength, false, memory},
		{"flexural_strength_mpa", "ultimate flexural strength", "σ = 502 G² + 106.8", p.FlexuralStrength, false, memory},
		{"flexural_modulus_gpa", "flexural modulus", "E = 33.4 G² + 2.2", p.FlexuralModulus, true, memory},
		{"shear_strength_mpa", "in-plane shear strength", "τ = 80 G + 38", p.ShearStrength, false, memory},
		{"shear_modulus_gpa", "in-plane shear modulus", "G₁₂ = 1.7 G + 2.24", p.ShearModulus, true, memory},
		{"interlaminar_shear_mpa", "interlaminar shear strength", "τ = 22.5 - 17.5 G", p.InterlaminarShear, false, memory},
	}
	var a Answer
	for _, row := range rows {
		v, unit := row.value.MPa(), "MPa"
		if row.giga {
			v, unit = row.value.GPa(), "GPa"
		}
		a.Results = append(a.Results, Result{Key: row.key, Value: v})
		a.Working = append(a.Working, working.Line{Name: row.name, Formula: row.formula, Numbers: "G = " + x, Value: v, Unit: unit, Source: row.source, Holds: "hand-laid E-glass; never mixed with micromechanics"})
	}
	return a
}

func laminateFigure(r *reader) Answer {
	l := r.lamina()
	stack, plies := r.plies(l)
	if !r.ok() {
		return Answer{}
	}
	s := laminate.NewStiffness(plies)
	a := Answer{Results: Results{{Key: "plies_count", Value: float64(len(plies))}, {Key: "thickness_mm", Value: s.H.MM()}, {Key: "stack_code", Text: stack.String()}}}
	for _, m := range []struct {
		name, unit string
		m          [3][3]float64
	}{{"A", "n_per_m", s.A}, {"B", "n", s.B}, {"D", "nm", s.D}} {
		for _, ij := range [][2]int{{0, 0}, {0, 1}, {1, 1}, {0, 2}, {1, 2}, {2, 2}} {
			a.Results = append(a.Results, Result{Key: fmt.Sprintf("%s%s%s_%s", m.name, index(ij[0]), index(ij[1]), m.unit), Value: m.m[ij[0]][ij[1]]})
		}
	}
	for _, set := range []struct {
		name, words string
		c           laminate.Constants
	}{{"", "in plane", s.InPlane()}, {"flex_", "in bending", s.Bending()}} {
		a.Results = append(a.Results,
			Result{Key: set.name + "Ex_gpa", Value: set.c.Ex.GPa()}, Result{Key: set.name + "Ey_gpa", Value: set.c.Ey.GPa()},
			Result{Key: set.name + "Gxy_gpa", Value: set.c.Gxy.GPa()}, Result{Key: set.name + "nuxy_ratio", Value: set.c.NuXY}, Result{Key: set.name + "nuyx_ratio", Value: set.c.NuYX})
		a.Working = append(a.Working, working.Line{Name: "modulus along x, " + set.words, Formula: map[bool]string{true: "Ex = 1/(h a11)", false: "Ex = 12/(h³ d11)"}[set.name == ""], Numbers: fmt.Sprintf("h = %s mm, compliance of the whole A, B, D matrix", num(s.H.MM())), Value: set.c.Ex.GPa(), Unit: "GPa", Source: kaw, Holds: "thin laminate, small strains"})
	}
	q := l.Q()
	a.Working = append([]working.Line{
		{Name: "reduced stiffness Q11", Formula: "Q11 = E1/(1 - ν12 ν21)", Numbers: fmt.Sprintf("%s GPa/(1 - %s × %s)", num(l.E1.GPa()), num(l.Nu12), num(l.Nu21())), Value: q[0][0] / 1e9, Unit: "GPa", Source: kaw2},
		{Name: "A11", Formula: "A = Σ Q̄ t", Numbers: plyCount(len(plies)) + " " + stack.String(), Value: s.A[0][0], Unit: "N/m", Source: kaw},
		{Name: "B11", Formula: "B = Σ Q̄ t z", Numbers: "z from the mid-plane, first ply lowest", Value: s.B[0][0], Unit: "N", Source: kaw},
		{Name: "D11", Formula: "D = Σ Q̄ (t z² + t³/12)", Value: s.D[0][0], Unit: "N m", Source: kaw},
	}, a.Working...)
	return a
}

func plyCount(n int) string { return working.Count(n, "ply", "plies") }

func index(i int) string { return []string{"1", "2", "6"}[i] }

func num(x float64) string { return working.Num(x, num4) }
