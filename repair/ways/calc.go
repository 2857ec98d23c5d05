package ways

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/repair/working"
)

// Calculation is what is needed to check the strength of one way by hand.
type Calculation struct {
	Way    Way
	Book   *working.Book
	Method string // the numerical method and its own error, in words
}

// Sources of the closed forms.
const (
	kaw       = "Kaw2006: ch. 4, one direction"
	series    = "TimoshenkoWK1959: arts. 30 and 44, by series (from memory)"
	inclusion = "independent computation: an ellipse of another stiffness in a wide sheet"
	byPanel   = "numerical panel, see the method"
)

// calculation writes the closed forms of a way as a chain of lines, in newtons,
// millimetres and megapascals. The way must have been computed.
func (c *comparison) calculation(w Way) (Calculation, error) {
	b := &working.Book{}
	ps := w.parts
	before := ps.parent
	if ps.was != nil {
		before = ps.was
	}
	after, _ := ps.at(0)
	if ps.was != nil {
		after = ps.parent
	}
	b.Section("The laminate before, plies from outside to inside")
	c.sectionOf(b, before, "")
	b.Section("The section in the middle of the repair")
	c.sectionOf(b, after, "r")
	b.Work("k_D", "bending stiffness, repaired over original", "EI_r/EI", "", "arithmetic")
	b.Work("k_A", "in-plane stiffness, repaired over original", "EA_r/EA", "", "arithmetic")

	b.Section("Pressure, edges held")
	c.pressureOf(b, w)
	if ps.was == nil {
		b.Section("Pulled along, the sheet strained to where it began to fail")
		c.pulledOf(b, w)
	}
	b.Section("Against the numerical panel")
	for i, x := range w.Cases {
		if i == 0 || i == 2 && ps.was == nil {
			id := fmt.Sprint(i + 1)
			b.Given("S_n"+id, "strength by the numerical panel, "+x.Load, x.Strength, "", byPanel)
			hand := map[int]string{0: "S_h", 2: "S_p"}[i]
			b.Work("q_"+id, "numerical over hand, "+x.Load+" (what lies between the two: see the method)", "S_n"+id+"/"+hand, "", "arithmetic")
		}
	}
	method := fmt.Sprintf("First-order shear-deformable laminated plate with full A, B, D and von Kármán's strains, quadrilateral elements of degree %d whose edges follow the outlines (physics/panel of this program). ", resolution(c.on).Degree)
	if w.Error > 0 {
		method += fmt.Sprintf("Its own estimate of its error: %.1f %% of the governing strain, %.1f %% of the deflection. ", 100*w.Error, 100*w.WError)
	}
	method += "By hand the deflections are small and the moments those of the intact plate; the panel stretches as it deflects, and an eccentric section bends it. In the plane the two lie within a quarter, under pressure with held edges within fifteen hundredths (TestTwoMethods)."
	return Calculation{Way: w, Book: b, Method: method}, b.Err()
}

// sectionOf works out a section: thickness, EA, neutral axis, EI, and the strain at
// which its weakest ply begins to fail.
func (c *comparison) sectionOf(b *working.Book, ps []ply, suffix string) {
	us := suffix
	if us != "" {
		us = "_" + us
	}
	var ts, eas, moments, eis []string
	fails := math.Inf(1)
	for i, p := range ps {
		n := fmt.Sprintf("%d%s", i+1, suffix)
		b.Given("E_"+n, fmt.Sprintf("modulus of ply %d, %s", i+1, p.class), p.E1.MPa(), "MPa", "catalogue, from memory")
		b.Given("t_"+n, "its thickness", p.Thickness.MM(), "mm", "LR2013: Ch 3 s1, as a void-free laminate")
		ts = append(ts, "t_"+n)
		eas = append(eas, "E_"+n+"*t_"+n)
		fails = min(fails, p.fails[0])
		if i == 0 {
			b.Work("z_"+n, "height of its middle over the outer face", "t_"+n+"/2", "mm", "geometry")
		} else {
			was := fmt.Sprintf("%d%s", i, suffix)
			b.Work("z_"+n, "height of its middle", "z_"+was+" + t_"+was+"/2 + t_"+n+"/2", "mm", "geometry")
		}
		moments = append(moments, "E_"+n+"*t_"+n+"*z_"+n)
	}
	for i := range ps {
		n := fmt.Sprintf("%d%s", i+1, suffix)
		eis = append(eis, fmt.Sprintf("E_%s*(t_%s^3/12 + t_%s*(z_%s - z_n%s)^2)", n, n, n, n, us))
	}
	b.Work("T"+us, "thickness", strings.Join(ts, " + "), "mm", "arithmetic")
	b.Work("EA"+us, "in-plane stiffness", strings.Join(eas, " + "), "N/mm", kaw)
	b.Work("z_n"+us, "neutral axis over the outer face", "("+strings.Join(moments, " + ")+")/EA"+us, "mm", kaw)
	b.Work("EI"+us, "bending stiffness, per width", strings.Join(eis, " + "), "N mm", kaw)
	b.Given("e_f"+us, "strain at which its weakest ply begins to fail in tension", fails, "", "LR-SSC: strength over modulus of one route, from memory")
}

// pressureOf works out the held panel under the pressure.
func (c *comparison) pressureOf(b *working.Book, w Way) {
	ps := w.parts
	m := c.moments[true]
	q, short := float64(c.q)/1e6, min(c.d.Panel.Short, c.d.Panel.Long).MM()
	edge, Mx, My := m.EdgeY, m.Mx, m.My
	if c.d.Panel.Short > c.d.Panel.Long {
		edge, Mx, My = m.EdgeX, m.My, m.Mx
	}
	unit := float64(c.q) * short * short / 1e6 // of a moment over q b^2
	b.Given("q", "pressure both panels bear", q, "MPa", "the comparison's level, see assumptions")
	b.Given("b", "short span", short, "mm", "measured")
	b.Given("c_e", "edge moment over q b^2, middle of the long edge", math.Abs(edge)/unit, "", series)
	b.Given("c_y", "moment across over q b^2, middle of the panel", My/unit, "", series)
	b.Given("c_x", "moment along over q b^2, middle of the panel", Mx/unit, "", series)
	b.Given("nu", "Poisson's ratio", clothPoisson, "", working.FromMemory)
	b.Work("M_e", "moment at the edge, per width", "c_e*q*b^2", "N", series)
	b.Work("e_e", "strain of the outermost fibre there", "(1 - nu^2)*M_e/EI*max(z_n, T - z_n)", "", kaw)
	b.Work("U_e", "used of the old laminate at the edge, about (its weakest ply)", "e_e/e_f", "", "definition: strain over strain at failure")
	b.Work("kappa", "curvature of the intact plate in the middle", "(c_y - nu*c_x)*q*b^2/EI", "1/mm", kaw)
	if ps.was != nil {
		b.Work("e_er", "strain of the outermost fibre at the edge, after", "(1 - nu^2)*M_e/EI_r*max(z_n_r, T_r - z_n_r)", "", kaw)
		b.Work("U_er", "used at the edge, after", "e_er/e_f_r", "", "definition: strain over strain at failure")
		b.Work("S_h", "strength, edges held, by hand", "U_e/U_er", "", "used before over used after")
		return
	}
	b.Work("A_b", "curvature in the repair over that of the plate", "2/(1 - nu + k_D*(1 + nu))", "", inclusion)
	lever := "max(z_n_r, T_r - z_n_r)"
	if ps.over {
		lever = "max(T/2, T_r - T/2)"
	}
	b.Work("e_m", "strain of the outermost fibre in the middle", "A_b*kappa*"+lever, "", kaw)
	b.Work("U_m", "used of the repair in the middle", "e_m/e_f_r", "", "definition: strain over strain at failure")
	worst := "max(U_e, U_m)"
	if !ps.over {
		c.bondGiven(b, w)
		b.Work("s_m", "mean stress at the face of the slope", "E_m/(1 - nu^2)*A_b*kappa*"+lever, "MPa", kaw)
		b.Work("tau_m", "shear of the bond there", "s_m*R/(1 + R^2)", "MPa", "closed form: equilibrium of a scarf")
		b.Work("U_b", "used of the bond there", "tau_m/tau_a", "", "definition: stress over strength")
		worst = "max(U_e, U_m, U_b)"
	}
	b.Work("S_h", "strength, edges held, by hand", "U_e/"+worst, "", "used before over used after")
}

// bondGiven takes in the bond and the slope.
func (c *comparison) bondGiven(b *working.Book, w Way) {
	ps := w.parts
	b.Given("R", "taper, to one", float64(w.Taper)/float64(ps.perFace()), "", "chosen")
	b.Given("h", "depth that one taper climbs", ps.perFace().MM(), "mm", "design")
	b.Work("L", "length of the taper", "R*h", "mm", "geometry")
	b.Given("tau_a", "strength of the bond as a mean over the slope, mat and fabric by their thickness", c.bond.strength(ps.ground())/1e6, "MPa", c.resin.BondMat.Source)
	if ps.core == nil && ps.depth == depth(ps.parent) {
		b.Work("E_m", "mean modulus of the laminate", "EA/T", "MPa", "arithmetic")
		return
	}
	EA, _ := stiffness(ps.ground())
	b.Given("E_m", "mean modulus of what is ground away", EA/float64(depth(ps.ground()))/1e6, "MPa", "the sum of E t over its plies, by its thickness")
}

// pulledOf works out the stretched sheet.
func (c *comparison) pulledOf(b *working.Book, w Way) {
	ps := w.parts
	box := c.on.shape.Bounds()
	along, across := box.Width()/2, box.Height()/2
	if ps.over {
		b.Given("l_c", "half length of the hole", along, "mm", "measured")
		b.Given("w_c", "half width of the hole", across, "mm", "measured")
		b.Work("beta", "across over along", "w_c/l_c", "", "geometry")
	} else {
		b.Given("l_c", "half length of the cut-out", along, "mm", "measured")
		b.Given("w_c", "half width of the cut-out", across, "mm", "measured")
		b.Work("beta", "across over along, at half the taper", "(w_c + L/2)/(l_c + L/2)", "", "geometry")
	}
	b.Work("A", "strain in the repair over that of the sheet", "(1 + 2*beta)/(1 + 2*beta*k_A)", "", inclusion)
	b.Work("N_e", "stress in the sheet at the repair's end, over that far off", "k_A*A", "", inclusion)
	b.Work("N_s", "stress in the sheet beside the repair, over that far off", "1 + 2*beta*(1 - N_e)", "", inclusion)
	b.Work("U_r", "used of the repair, the sheet at its own limit", "A*e_f/e_f_r", "", "definition: strain over strain at failure")
	worst := "max(U_r, N_e, N_s, U_bp)"
	if ps.over {
		b.Given("lap", "length of the lap that counts", c.bond.lapLength(ps, w.Taper)*1e3, "mm", "Volkersen1938: no more than 8/omega, from memory")
		b.Given("tau_a", "strength of the bond as a mean over the lap", c.bond.strength(ps.facing())/1e6, "MPa", c.resin.BondMat.Source)
		b.Work("U_bp", "used of the lap", "A*EA_r*e_f/lap/tau_a", "", "definition: stress over strength")
	} else {
		b.Work("sigma_u", "mean stress at which the laminate begins to fail", "E_m*e_f", "MPa", kaw)
		b.Work("tau_u", "mean shear of the bond then", "sigma_u*(1 + N_e)/2*R/(1 + R^2)", "MPa", "closed form: equilibrium of a scarf")
		b.Work("U_bp", "used of the bond", "tau_u/tau_a", "", "definition: stress over strength")
		if ps.stepped {
			b.Given("n", "plies that are stepped", float64(len(ps.ground())), "", "counted")
			b.Work("U_st", "used of the treads: n plies make n - 1", "U_bp*n/(n - 1)", "", "our own rule, see docs/decisions")
			worst = "max(U_r, N_e, N_s, U_st)"
		}
		if sigma, tau := c.parity(); sigma > 2*tau {
			b.Work("k_s", "strength of the laminate over that of the bond", "sigma_u/tau_a", "", "arithmetic")
			b.Work("R_f", "ratio at which bond and laminate fail together", "(k_s + sqrt(k_s^2 - 4))/2", "", "closed form: equilibrium of a scarf")
		}
	}
	b.Work("S_p", "strength, pulled along, by hand", "1/"+worst, "", "used before (1) over used after")
}
