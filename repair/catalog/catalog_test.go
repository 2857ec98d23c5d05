package catalog_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
)

func ExampleCatalogue_Cloth() {
	cat := catalog.Default()
	mat, _ := cat.Cloth("csm450")
	resin, _ := cat.Resin("polyester-laminating")
	fmt.Printf("%.3f mm, %.0f g/m² of resin\n", mat.Thickness(resin).MM(), mat.Resin().GSM())
	_, err := cat.Cloth("cms450")
	fmt.Println(err)
	// Output:
	// 1.051 mm, 1050 g/m² of resin
	// no reinforcement called "cms450"; did you mean "csm450"? known: csm225, csm300, csm450, csm600, wr600, wr800, cloth200, cloth300, bx300, bx450, bx600, bxm800
}

func TestTheClassesAreTheAgreedOnes(t *testing.T) {
	cat := catalog.Default()
	for _, want := range strings.Fields(`csm225 csm300 csm450 csm600 wr600 wr800 cloth200 cloth300 bx300 bx450 bx600 bxm800
		polyester-laminating vinyl-ester-laminating epoxy-fast epoxy-slow peroxide
		gelcoat-waxed gelcoat-paste epoxy-fairing epoxy-filler-light barrier-epoxy foam80`) {
		found := 0
		for _, class := range cat.Classes() {
			if class == want {
				found++
			}
		}
		if found != 1 {
			t.Errorf("class %s stands %d times, want once", want, found)
		}
	}
}

// Thicknesses and resin of hand-laid plies.
func TestPlies(t *testing.T) {
	cat := catalog.Default()
	rows := []struct {
		stack, resin string
		mm           float64
		tolerance    float64
		origin       string
	}{
		{"csm450", "polyester-laminating", 1.0508, 5e-5, "independent computation, Python: 450 g/m2 at 30 %, 2.56 and 1.20 g/ml"},
		{"wr600", "polyester-laminating", 0.7760, 5e-5, "independent computation, Python: 600 g/m2 at 48 %"},
		{"bx300", "epoxy-fast", 0.3672, 5e-5, "independent computation, Python: 300 g/m2 at 50 %"},
		{"csm300 csm450 wr600 csm450 wr600 csm450", "polyester-laminating", 5.40, 0.01, "invented case: measured hull 5.40 mm"},
		{"csm450 bxm800 csm450 bxm800 csm450", "polyester-laminating", 5.62, 0.01, "invented case: its repair, worked by hand, 5.62 mm"},
		{"csm450 bxm800 csm450 bxm800 csm300", "polyester-laminating", 5.27, 0.01, "invented case: its repair, worked by hand, 5.27 mm"},
		{"bx600 bx600 bx600 bx600 bx600 bx600 bx600 bx600 bx600 bx600", "epoxy-fast", 7.34, 0.01, "invented case: ten plies 7.34 mm"},
		{"csm450 csm450 wr800 csm450 wr800 csm450 wr800 csm450", "epoxy-fast", 8.36, 0.01, "invented case: hull 8.36 mm"},
	}
	for _, row := range rows {
		resin, err := cat.Resin(row.resin)
		if err != nil {
			t.Fatal(err)
		}
		var got float64
		for _, class := range strings.Fields(row.stack) {
			c, err := cat.Cloth(class)
			if err != nil {
				t.Fatal(err)
			}
			got += c.Thickness(resin).MM()
		}
		if math.Abs(got-row.mm) > row.tolerance {
			t.Errorf("%s: got %.4f mm, want %.4f mm (%s)", row.stack, got, row.mm, row.origin)
		}
	}
}

// The strengths and compressive moduli stand in the data as numbers; they must be
// the class-rule set they say they are.
func TestStrengthsAreTheClassRuleTheyClaim(t *testing.T) {
	for _, c := range catalog.Default().Cloths {
		kind := laminate.Roving
		if c.Kind == catalog.Mat {
			kind = laminate.CSM
		}
		for i, glass := range []si.Ratio{c.Glass.Low, c.Glass.Typical, c.Glass.High} {
			rule, err := laminate.ClassRule(kind, glass)
			if err != nil {
				t.Fatal(err)
			}
			tensile := rule.TensileStrength
			if c.Kind == catalog.BiaxialMat {
				combination, err := laminate.CombinationRule(glass)
				if err != nil {
					t.Fatal(err)
				}
				tensile = combination.TensileStrength
			}
			same := func(name string, v catalog.Value[si.Pressure], want si.Pressure) {
				got := []si.Pressure{v.Low, v.Typical, v.High}[i]
				if math.Abs(float64(got/want)-1) > 1e-9 {
					t.Errorf("%s %s at %.0f %% glass: got %.4f MPa, rule %.4f MPa", c.Class, name, glass.Percent(), got.MPa(), want.MPa())
				}
			}
			same("tensile strength", c.TensileStrength, tensile)
			same("compressive strength", c.CompressiveStrength, rule.CompressiveStrength)
			same("flexural strength", c.FlexuralStrength, rule.FlexuralStrength)
			same("compressive modulus", c.CompressionModulus, rule.CompressiveModulus)
		}
	}
}

// Every figure has a source of an allowed form and a date, and lies within its spread.
func TestEveryFigureSaysWhereItComesFrom(t *testing.T) {
	source := regexp.MustCompile(`^(from memory|common practice, no source|invented|independent computation|our own rule, see docs/decisions|[A-Z][A-Za-z0-9-]*: .+)([;:,].*)?$`)
	date := regexp.MustCompile(`^20\d\d-\d\d-\d\d$`)
	cat := catalog.Default()
	var entries []any
	for _, x := range cat.Cloths {
		entries = append(entries, x)
	}
	for _, x := range cat.Resins {
		entries = append(entries, x)
	}
	for _, x := range cat.Catalysts {
		entries = append(entries, x)
	}
	for _, x := range cat.Gelcoats {
		entries = append(entries, x)
	}
	for _, x := range cat.Fillers {
		entries = append(entries, x)
	}
	for _, x := range cat.Barriers {
		entries = append(entries, x)
	}
	for _, x := range cat.Cores {
		entries = append(entries, x)
	}
	for _, x := range cat.Consumables {
		entries = append(entries, x)
	}
	figures := 0
	for _, e := range entries {
		facts := catalog.Facts(e)
		if len(facts) < 2 {
			t.Errorf("%v: only %d facts", e, len(facts))
		}
		figures += len(facts)
		for _, f := range facts {
			if !source.MatchString(f.Source) || !date.MatchString(f.Date) || f.Text == "" {
				t.Errorf("%+v: source, date or text is not of the agreed form", f)
			}
		}
	}
	if figures < 200 {
		t.Errorf("walked %d figures; the walk misses some", figures)
	}
}

func TestTheShelfLimitsAreAtHand(t *testing.T) {
	r, err := catalog.Default().Resin("polyester-laminating")
	if err != nil {
		t.Fatal(err)
	}
	if got := r.HullMin.Celsius(); math.Abs(got-15) > 1e-9 {
		t.Errorf("hull minimum: got %g °C, want 15 °C (invented shelf)", got)
	}
	if got := r.WetLimit.KgPerM2(); math.Abs(got-4.8) > 1e-9 {
		t.Errorf("wet limit: got %g kg/m2, want 4.8 kg/m2 (invented shelf)", got)
	}
	if len(r.Packs) != 3 || r.Packs[1].Price != 52 || r.Packs[1].Class != r.Class {
		t.Errorf("packs: got %+v", r.Packs)
	}
	e, _ := catalog.Default().Resin("epoxy-slow")
	if got := e.PerHundredVol.Typical; math.Abs(got-36) > 0.1 {
		t.Errorf("epoxy by volume: got 100:%.2f, want 100:36 (invented shelf)", got)
	}
}

// A caller that changes what it was given must not change the next caller's.
func TestDefaultHandsOutItsOwnEntries(t *testing.T) {
	a := catalog.Default()
	a.Cloths[0].Class = "spoilt"
	if got := catalog.Default().Cloths[0].Class; got != "csm225" {
		t.Errorf("the catalogue was changed through a copy: %q", got)
	}
	if v := catalog.Default().Version; !regexp.MustCompile(`^[0-9a-f]{8}$`).MatchString(v) {
		t.Errorf("version %q is not a short hash", v)
	}
}

// Damaged data are refused, with the place.
func TestDamagedDataAreRefused(t *testing.T) {
	rows := []struct{ why, file, from, to, want string }{
		{"an unknown key", "resin.yaml", "    cured:", "    curde:", "curde"},
		{"a value without a source", "core.yaml", `density: {low: 72 kg/m3, typical: 80 kg/m3, high: 92 kg/m3, source: "from memory"}`, "density: {typical: 80 kg/m3}", "no source"},
		{"low above typical", "core.yaml", "low: 72 kg/m3", "low: 82 kg/m3", "must rise"},
		{"low without high", "core.yaml", "low: 72 kg/m3, typical: 80 kg/m3, high: 92 kg/m3", "low: 72 kg/m3, typical: 80 kg/m3", "low and high go together"},
		{"a bare number", "core.yaml", "thickness: 12 mm", "thickness: 12", "12"},
		{"the wrong kind of unit", "core.yaml", "typical: 80 kg/m3", "typical: 80 mm", "mm"},
		{"a date that is none", "core.yaml", "date: 2026-11-25", "date: November", "November"},
		{"a class twice", "reinforcement.yaml", "class: csm300", "class: csm225", "csm225"},
		{"a family that is missing", "reinforcement.yaml", "kind: weave\n", "kind: wave\n", "weave"},
		{"a pot life that rises with temperature", "resin.yaml", "{at: 30 °C, dose: 2.0 %, time: 8 min}", "{at: 30 °C, dose: 2.0 %, time: 80 min}", "takes no longer"},
		{"a pot life out of order", "resin.yaml", "- {at: 15 °C, time: 40 min}\n        - {at: 20 °C, time: 26 min}", "- {at: 20 °C, time: 26 min}\n        - {at: 15 °C, time: 40 min}", "list the cells"},
		{"film times without a source", "resin.yaml", "    peak: {", "    film_gel: {cells: [{at: 20 °C, dose: 1 %, time: 2 h}]}\n    peak: {", "no source"},
		{"film times without a dose", "resin.yaml", "    peak: {", "    film_gel: {source: invented, cells: [{at: 20 °C, time: 2 h}]}\n    peak: {", "film_gel at 20 °C: which dose"},
		{"film times out of order", "resin.yaml", "    peak: {", "    through: {source: invented, cells: [{at: 20 °C, dose: 1 %, time: 2 h}, {at: 15 °C, dose: 1 %, time: 3 h}]}\n    peak: {", "list the cells"},
		{"film times that rise", "resin.yaml", "    peak: {", "    through: {source: invented, cells: [{at: 20 °C, dose: 1 %, time: 2 h}, {at: 25 °C, dose: 1 %, time: 3 h}]}\n    peak: {", "a warmer film"},
		{"a film time without a unit", "resin.yaml", "    peak: {", "    film_sandable: {source: invented, cells: [{at: 20 °C, dose: 1 %, time: 2}]}\n    peak: {", "cell 1"},
		{"both styles of ratio", "gelcoat.yaml", "    dose: {low: 1.5 %", "    per_100: {typical: 30, source: invented}\n    dose: {low: 1.5 %", "not both"},
	}
	for _, row := range rows {
		changed := false
		_, err := catalog.Read(func(name string) ([]byte, error) {
			text, err := catalog.Data(name)
			if strings.HasSuffix(name, row.file) {
				before := string(text)
				text = []byte(strings.Replace(before, row.from, row.to, 1))
				changed = string(text) != before
			}
			return text, err
		})
		if !changed {
			t.Errorf("%s: the test's text %q is not in %s", row.why, row.from, row.file)
			continue
		}
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: got error %v, want one with %q", row.why, err, row.want)
		}
	}
}

// A class may give film times too, with their source and the file's date.
func TestAClassMayGiveFilmTimes(t *testing.T) {
	c, err := catalog.Read(func(name string) ([]byte, error) {
		text, err := catalog.Data(name)
		return []byte(strings.Replace(string(text), "    peak: {", "    film_gel: {source: invented, cells: [{at: 20 °C, dose: 1.5 %, time: 50 min}]}\n    peak: {", 1)), err
	})
	if err != nil {
		t.Fatal(err)
	}
	r, err := c.Resin("polyester-laminating")
	if err != nil {
		t.Fatal(err)
	}
	if f := r.FilmGel; len(f.Cells) != 1 || f.Cells[0].Time != si.Minutes(50) || f.Source != "invented" || f.Date == "" {
		t.Errorf("got %+v", f)
	}
}

// The embedded data are read once in a process; this is that once.
func BenchmarkRead(b *testing.B) {
	for b.Loop() {
		if _, err := catalog.Read(catalog.Data); err != nil {
			b.Fatal(err)
		}
	}
}
