package panel

import (
	"math"
	"testing"

	"scarfwright/physics/si"
)

func near(t *testing.T, what string, got, want, relative float64) {
	t.Helper()
	if !(math.Abs(got-want) <= relative*math.Abs(want)) {
		t.Errorf("%s = %.8g, want %.8g within %.2g (off by %.2g)", what, got, want, relative, math.Abs(got/want-1))
	}
}

// The plate 1 m wide with D = 1 N m under 1 Pa.
func unit(nu float64) (E si.Pressure, h si.Length) {
	return si.Pressure(12 * (1 - nu*nu) / 1e-9), si.MM(1)
}

func TestSimplySupportedIsotropic(t *testing.T) {
	E, h := unit(0.3)
	// published (Timoshenko & Woinowsky-Krieger, 2nd ed., table 8) to its print; the
	// further digits are independent computations (Navier, 2000 terms)
	for _, c := range []struct{ ratio, w, mx, my float64 }{
		{1.0, 0.0040624, 0.047886, 0.047886},
		{1.2, 0.0056505, 0.062682, 0.050081},
		{1.5, 0.0077240, 0.081160, 0.049843},
		{2.0, 0.0101287, 0.101683, 0.046350},
		{3.0, 0.0122328, 0.118861, 0.040627},
	} {
		r := SimplySupportedIsotropic(E, 0.3, h, 1, si.M(c.ratio), 1)
		near(t, "w", float64(r.W), c.w, 1.3e-5)
		near(t, "Mx", r.Mx, c.mx, 1e-5)
		near(t, "My", r.My, c.my, 2e-5)
		n := SimplySupportedPlate(IsotropicBending(E, 0.3, h), 1, si.M(c.ratio), 1)
		near(t, "Navier w", float64(n.W), float64(r.W), 1e-9) // identity: two series, one plate
		near(t, "Navier Mx", n.Mx, r.Mx, 2e-6)
		near(t, "Navier My", n.My, r.My, 2e-6)
	}
	// closed form: the long plate is a strip
	r := SimplySupportedIsotropic(E, 0.3, h, 1, 50, 1)
	near(t, "w of a long plate", float64(r.W), 5.0/384, 1e-9)
	near(t, "Mx of a long plate", r.Mx, 1.0/8, 1e-9)
	near(t, "My of a long plate", r.My, 0.3/8, 1e-9)
}

func TestClampedPlate(t *testing.T) {
	E, h := unit(0.3)
	d := IsotropicBending(E, 0.3, h)
	// published (Timoshenko & Woinowsky-Krieger, table 35), whose last digits are off
	// by up to 0.8 %; the digits here are independent computations (Ritz)
	for _, c := range []struct{ ratio, w, edge, short, mx, my float64 }{
		{1.0, 0.0012653, 0.05133, 0.05133, 0.02291, 0.02291},
		{1.2, 0.0017248, 0.06390, 0.05541, 0.02997, 0.02284},
		{1.5, 0.0021965, 0.07566, 0.05702, 0.03677, 0.02027},
		{2.0, 0.0025330, 0.08287, 0.05699, 0.04115, 0.01581},
	} {
		r := ClampedPlate(d, 1, si.M(c.ratio), 1)
		near(t, "w", float64(r.W), c.w, 5e-5)
		near(t, "edge moment, long side", -r.EdgeX, c.edge, 2e-4)
		near(t, "edge moment, short side", -r.EdgeY, c.short, 2e-4)
		near(t, "Mx", r.Mx, c.mx, 5e-4)
		near(t, "My", r.My, c.my, 5e-4)
		fine := ritz(d, 1, c.ratio, 1, 20)
		near(t, "w against more terms", float64(r.W), float64(fine.W), 1e-7)
		near(t, "edge moment against more terms", r.EdgeX, fine.EdgeX, 2e-5)
	}
	// closed form: w = 1.26532e-3 q a^4/D, more digits from Taylor & Govindjee 2004
	// (from memory: 0.00126531908)
	near(t, "square", float64(ClampedPlate(d, 1, 1, 1).W), 0.00126531908, 1e-6)
}

func TestOrthotropicNavier(t *testing.T) {
	// published (Reddy, 2nd ed., ch. 5, from memory) to four digits; independent
	// computation beyond. E1 = 25 E2, G12 = 0.5 E2, nu12 = 0.25; 100 w E2 h^3/q a^4.
	l := ply(25, 1, 0.25, 0.5, 0.5, 0.25, 0)
	across := l
	across.Angle = si.Degrees(90)
	for _, c := range []struct {
		name  string
		plies []Ply
		ratio float64
		want  float64
	}{
		{"[0]", []Ply{l, l, l, l}, 1, 0.64973},
		{"[0/90/90/0]", []Ply{l, across, across, l}, 1, 0.67967},
		{"[0] 2", []Ply{l, l, l, l}, 2, 0.62652 * 1},
		{"[0/90/90/0] 2", []Ply{l, across, across, l}, 2, 0.74660},
		{"[0/90/90/0] 3", []Ply{l, across, across, l}, 3, 0.70904},
	} {
		s := newSection(Centred(c.plies...))
		d := Bending{s.D[0][0], s.D[0][1], s.D[1][1], s.D[2][2]}
		r := SimplySupportedPlate(d, 1, si.M(c.ratio), 1)
		near(t, c.name, 100*float64(r.W)*1e9*1e-9, c.want, 2e-5)
	}
	// independent computation: woven roving, 400 x 600 x 6 mm, 20 kPa
	w := ply(14.5, 14.5, 0.14, 3.3, 3, 6, 0)
	s := newSection(Centred(w))
	r := SimplySupportedPlate(Bending{s.D[0][0], s.D[0][1], s.D[1][1], s.D[2][2]}, si.MM(400), si.MM(600), si.KPa(20))
	near(t, "w mm", r.W.MM(), 18.0743, 1e-5)
	near(t, "Mx N", r.Mx, 300.906, 1e-5)
	near(t, "My N", r.My, 149.848, 1e-5)
}

func TestPanelFactors(t *testing.T) {
	E, h := unit(0.3)
	for _, c := range []struct{ r, k2, k3 float64 }{ // independent computation from the formulas
		{1, 0.3077, 0.01395}, {1.2, 0.3843, 0.01903}, {1.5, 0.4537, 0.02428}, {2, 0.4974, 0.02796}, {2.5, 0.5, 0.028},
	} {
		l := si.M(c.r)
		near(t, "k2", K2(l, 1), c.k2, 2e-4)
		near(t, "k3", K3(1, l), c.k3, 4e-4)
		if c.r > 2 {
			continue
		}
		// identity: what the factors stand for
		p := ClampedPlate(IsotropicBending(E, 0.3, h), 1, l, 1)
		near(t, "6 M", K2(l, 1), -6*p.EdgeX, 0.003)
		near(t, "12 (1-nu^2) w", K3(l, 1), 12*0.91*float64(p.W), 0.013)
	}
	near(t, "kC", CurvatureFactor(si.MM(40), si.MM(400)), 0.767, 1e-9) // closed form
	near(t, "kC flat", CurvatureFactor(0, 1), 1, 0)
	near(t, "kC deep", CurvatureFactor(si.MM(200), 1), 0.5, 0)
}

func TestSandwichStrip(t *testing.T) {
	// independent computation (handbook): 11 GPa faces of 3 mm on 20 mm of foam
	s := Sandwich{Face: si.GPa(11), FaceT: si.MM(3), Core: si.MPa(55), CoreG: si.MPa(20), CoreT: si.MM(20)}
	near(t, "D", s.BendingStiffness(), 8814.6667, 1e-7)
	near(t, "S", s.ShearStiffness(), 529e3, 1e-9)
	r := s.Bend(SimplySupported, si.MM(400), si.KPa(30))
	near(t, "w bending", r.Bending.MM(), 1.13447, 1e-5)
	near(t, "w shear", r.Shear.MM(), 1.13422, 1e-5)
	near(t, "w", r.W().MM(), 2.26869, 1e-5)
	near(t, "face stress", s.FaceStress(r.Middle).MPa(), 8.6957, 1e-5)
	near(t, "core shear", s.CoreShear(r.V).MPa(), 0.26087, 2e-5)
	c := s.Bend(Clamped, si.MM(400), si.KPa(30))
	near(t, "w clamped", c.Bending.MM(), 0.22689, 3e-5)
	near(t, "face stress clamped", s.FaceStress(c.End).MPa(), 5.7971, 1e-5)
	near(t, "wrinkling", s.Wrinkling().MPa(), 114.789, 1e-5)
	near(t, "crimping", s.Crimping().MPa(), 20*23*23/120.0, 1e-9) // closed form
	b := Sandwich{Face: si.GPa(15), Core: si.MPa(75), CoreG: si.MPa(27)}
	near(t, "wrinkling", b.Wrinkling().MPa(), 156.006, 1e-5) // independent computation
}
