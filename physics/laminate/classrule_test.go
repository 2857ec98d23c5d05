package laminate_test

import (
	"strings"
	"testing"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

const (
	lrRead   = "LR2013, read; reproduced by independent computation"
	lrMemory = "LR-SSC Pt 8 Ch 3 formulae from memory; arithmetic by independent computation"
)

func classRule(t *testing.T, kind laminate.Reinforcement, glass float64) laminate.ClassProperties {
	t.Helper()
	p, err := laminate.ClassRule(kind, si.Ratio(glass))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestPublishedClassRule(t *testing.T) {
	mat33, mat30, wr50 := classRule(t, laminate.CSM, 0.33), classRule(t, laminate.CSM, 0.30), classRule(t, laminate.Roving, 0.50)
	const exact = 1e-9 // rounding of a product in float64, in MPa
	checkFigures(t, []figure{
		{"mat at 33 %: tensile modulus 6950 MPa", mat33.TensileModulus.MPa(), 6950, exact, lrRead},
		{"mat at 33 %: compressive modulus 7200 MPa", mat33.CompressiveModulus.MPa(), 7200, exact, lrRead},
		{"mat at 30 %: tensile strength 85 MPa", mat30.TensileStrength.MPa(), 85, 0.01, lrMemory},
		{"mat at 30 %: compressive strength 117 MPa", mat30.CompressiveStrength.MPa(), 117, 0.01, lrMemory},
		{"mat at 30 %: flexural strength 151.98 MPa", mat30.FlexuralStrength.MPa(), 151.98, 0.01, lrMemory},
		{"mat at 30 %: interlaminar shear 17.25 MPa", mat30.InterlaminarShear.MPa(), 17.25, 0.01, lrMemory},
		{"roving at 50 %: tensile strength 190 MPa", wr50.TensileStrength.MPa(), 190, exact, lrMemory},
		{"roving at 50 %: tensile modulus 14.5 GPa", wr50.TensileModulus.GPa(), 14.5, exact, lrMemory},
	})
}

func TestClassRuleTable(t *testing.T) {
	for _, r := range []struct {
		glass, matUTS, matE, wrUTS, wrE, ucs, ec, ufs, ef, shear, g, ilss float64
	}{
		{0.25, 75, 5.75, 90, 7.0, 109.5, 4.0, 138.18, 4.288, 58.0, 2.665, 18.125},
		{0.35, 95, 7.25, 130, 10.0, 124.5, 8.0, 168.30, 6.292, 66.0, 2.835, 16.375},
		{0.48, 121, 9.20, 182, 13.9, 144.0, 13.2, 222.46, 9.895, 76.4, 3.056, 14.1},
		{0.55, 135, 10.25, 210, 16.0, 154.5, 16.0, 258.66, 12.304, 82.0, 3.175, 12.875},
	} {
		mat, wr := classRule(t, laminate.CSM, r.glass), classRule(t, laminate.Roving, r.glass)
		near(t, "mat UTS", mat.TensileStrength.MPa(), r.matUTS, 1e-9)
		near(t, "mat E", mat.TensileModulus.GPa(), r.matE, 1e-9)
		near(t, "roving UTS", wr.TensileStrength.MPa(), r.wrUTS, 1e-9)
		near(t, "roving E", wr.TensileModulus.GPa(), r.wrE, 1e-9)
		for _, p := range []laminate.ClassProperties{mat, wr} {
			near(t, "UCS", p.CompressiveStrength.MPa(), r.ucs, 1e-9)
			near(t, "E compression", p.CompressiveModulus.GPa(), r.ec, 1e-9)
			near(t, "UFS", p.FlexuralStrength.MPa(), r.ufs, 0.006)
			near(t, "E flexure", p.FlexuralModulus.GPa(), r.ef, 6e-4)
			near(t, "shear strength", p.ShearStrength.MPa(), r.shear, 1e-9)
			near(t, "shear modulus", p.ShearModulus.GPa(), r.g, 1e-9)
			near(t, "interlaminar shear", p.InterlaminarShear.MPa(), r.ilss, 1e-9)
		}
	}
}

func TestQuadraticRules(t *testing.T) {
	const memory = "quadratic family from memory; arithmetic by independent computation"
	at := func(rule func(si.Ratio) (laminate.ClassProperties, error), glass float64) laminate.ClassProperties {
		p, err := rule(si.Ratio(glass))
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	checkFigures(t, []figure{
		{"small-craft rule at 30 %: UTS", at(laminate.SmallCraftRule, 0.30).TensileStrength.MPa(), 85, 1e-9, memory},
		{"small-craft rule at 40 %: UTS", at(laminate.SmallCraftRule, 0.40).TensileStrength.MPa(), 133, 1e-9, memory},
		{"small-craft rule at 50 %: E", at(laminate.SmallCraftRule, 0.50).TensileModulus.GPa(), 14, 1e-9, memory},
		{"combination rule at 30 %: UTS", at(laminate.CombinationRule, 0.30).TensileStrength.MPa(), 85.02, 0.005, memory},
		{"combination rule at 40 %: UTS", at(laminate.CombinationRule, 0.40).TensileStrength.MPa(), 123.5, 0.05, memory},
		{"combination rule at 50 %: E", at(laminate.CombinationRule, 0.50).TensileModulus.GPa(), 13.75, 1e-9, memory},
	})
	// The three families were drawn through like panels: at 30 % they meet.
	line := classRule(t, laminate.CSM, 0.30)
	for _, rule := range []func(si.Ratio) (laminate.ClassProperties, error){laminate.SmallCraftRule, laminate.CombinationRule} {
		p := at(rule, 0.30)
		near(t, "UTS beside the linear set, MPa", p.TensileStrength.MPa(), line.TensileStrength.MPa(), 0.03)
		near(t, "E beside the linear set, GPa", p.TensileModulus.GPa(), line.TensileModulus.GPa(), 0.1501)
	}
}

// BS 4994 tabulates strength and modulus per kg/m2 of glass; its own thickness
// constants turn them into stresses, at glass contents of 0.311 and 0.492.
func TestClassRuleBesideBS4994(t *testing.T) {
	mat, wr := classRule(t, laminate.CSM, 0.3106), classRule(t, laminate.Roving, 0.4923)
	within(t, "mat strength ["+bs+"]", mat.TensileStrength.MPa(), 89.29, 0.03)
	within(t, "mat modulus", mat.TensileModulus.MPa(), 6250, 0.07)
	within(t, "roving strength", wr.TensileStrength.MPa(), 200, 0.07)
	within(t, "roving modulus", wr.TensileModulus.MPa(), 12800, 0.12)
}

func TestClassRuleRefuses(t *testing.T) {
	for _, glass := range []si.Ratio{0.19, 0.66, 30, -0.3} {
		for _, rule := range []func(si.Ratio) (laminate.ClassProperties, error){
			func(g si.Ratio) (laminate.ClassProperties, error) { return laminate.ClassRule(laminate.CSM, g) },
			laminate.SmallCraftRule, laminate.CombinationRule,
		} {
			if _, err := rule(glass); err == nil || !strings.Contains(err.Error(), "from 0.20 to 0.65") {
				t.Errorf("glass %v: got error %v, want one that names the range", glass, err)
			}
		}
	}
	if _, err := laminate.ClassRule(laminate.Reinforcement(7), 0.3); err == nil {
		t.Error("an unknown reinforcement was accepted")
	}
}
