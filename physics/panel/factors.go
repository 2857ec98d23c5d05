package panel

import "scarfwright/physics/si"

// The factors of the small-craft scantling standard, ISO12215-5-2008, for a panel
// l x b, b the shorter side. The formulas are from memory; the standard itself was
// not read. K2 and K3 agree with the clamped plate (ClampedPlate) within 0.3 % and
// 1.3 %, which supports them; nothing supports CurvatureFactor.

// K2 returns the factor for bending strength: 6 times the edge moment of a clamped
// plate over q b^2.
//
//	k2 = (0.271 r^2 + 0.910 r - 0.554)/(r^2 - 0.313 r + 1.351),  r = l/b <= 2, else 0.5
//
// A ratio below 1 is turned over.
func K2(l, b si.Length) float64 {
	r := sideRatio(l, b)
	if r > 2 {
		return 0.5
	}
	return (0.271*r*r + 0.910*r - 0.554) / (r*r - 0.313*r + 1.351)
}

// K3 returns the factor for bending stiffness: 12 (1 - nu^2) times the deflection
// coefficient of a clamped plate.
//
//	k3 = (0.027 r^2 - 0.029 r + 0.011)/(r^2 - 1.463 r + 1.108),  r = l/b <= 2, else 0.028
func K3(l, b si.Length) float64 {
	r := sideRatio(l, b)
	if r > 2 {
		return 0.028
	}
	return (0.027*r*r - 0.029*r + 0.011) / (r*r - 1.463*r + 1.108)
}

// CurvatureFactor returns kC for a panel with a crown c over its shorter side b.
//
//	kC = 1.1 - 3.33 c/b between c/b = 0.03 (1) and 0.18 (0.5)
func CurvatureFactor(crown, b si.Length) float64 {
	c := float64(crown) / float64(b)
	switch {
	case c <= 0.03:
		return 1
	case c > 0.18:
		return 0.5
	}
	return 1.1 - 3.33*c
}

func sideRatio(l, b si.Length) float64 {
	if l < b {
		l, b = b, l
	}
	return float64(l / b)
}
