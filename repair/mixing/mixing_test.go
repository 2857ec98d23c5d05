package mixing_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/mixing"
)

func resin(t testing.TB, class string) catalog.Resin {
	t.Helper()
	r, err := catalog.Default().Resin(class)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func near(got, want, tolerance float64) bool { return math.Abs(got-want) <= tolerance }

func ExampleDose() {
	m, v := mixing.Dose(si.Grams(350), si.Percent(1.8), si.GramsPerML(1.13))
	fmt.Printf("%.2f g = %.3f ml\n", m.Grams(), v.ML())
	// Output: 6.30 g = 5.575 ml
}

func ExampleWorkingTime() {
	r, _ := catalog.Default().Resin("polyester-laminating")
	t, _ := mixing.WorkingTime(r.TwoPart, si.Celsius(18), si.Percent(1.5))
	fmt.Printf("at most %.1f min\n", t.Minutes())
	_, err := mixing.WorkingTime(r.TwoPart, si.Celsius(9), si.Percent(1.5))
	fmt.Println(err)
	// Output:
	// at most 32.5 min
	// the sheet of polyester-laminating gives pot life from 15 to 30 °C; at 9 °C warm the resin and the hull, or change to a resin whose sheet covers it
}

// The reference rows of doses and ratios.
func TestReferenceRows(t *testing.T) {
	usQuart := si.Litres(0.946352946) // exact by definition: 57.75 cubic inches
	rows := []struct {
		sentence  string
		got, want float64
		tolerance float64
		origin    string
	}{
		{"350 g of gelcoat with 1.8 % peroxide of 1.13 g/ml takes 6.30 g",
			grams(mixing.Dose(si.Grams(350), si.Percent(1.8), si.GramsPerML(1.13))), 6.30, 0.005, "closed form"},
		{"which is 5.575 ml",
			ml(mixing.Dose(si.Grams(350), si.Percent(1.8), si.GramsPerML(1.13))), 5.575, 0.01, "independent computation, Python"},
		{"2:1 by volume at 1.15 and 0.98 g/ml is 100:42.61 by mass",
			mixing.MassRatio(2, 1, si.GramsPerML(1.15), si.GramsPerML(0.98)), 42.61, 0.01, "independent computation, Python"},
		{"3:1 by volume at 1.15 and 1.00 g/ml is 100:28.99",
			mixing.MassRatio(3, 1, si.GramsPerML(1.15), si.GramsPerML(1)), 28.99, 0.01, "independent computation, Python"},
		{"5:1 by volume at 1.16 and 1.00 g/ml is 100:17.24",
			mixing.MassRatio(5, 1, si.GramsPerML(1.16), si.GramsPerML(1)), 17.24, 0.01, "independent computation, Python"},
		{"equal volumes of a putty at 0.95 and 0.90 g/ml are 100:94.74",
			mixing.MassRatio(1, 1, si.GramsPerML(0.95), si.GramsPerML(0.90)), 94.74, 0.01, "independent computation, Python"},
		{"450 g/m2 of mat at 30 % takes 1050 g/m2 of resin",
			laminate.ResinWeight(si.GSM(450), si.Percent(30)).GSM(), 1050, 1.05, "closed form"},
		{"and is 1.052 mm thick with glass of 2540 and resin of 1200 kg/m3",
			laminate.Thickness(si.GSM(450), si.Percent(30), laminate.Constituents{Fibre: si.KgPerM3(2540), Resin: si.KgPerM3(1200)}).MM(), 1.052, 0.001, "independent computation, Python"},
		{"a scale of 0.1 g, 2 % within 10 %, needs 50 g of resin",
			mixing.SmallestBatch(si.Grams(0.1), si.Percent(2), si.Percent(10)).Grams(), 50, 1e-9, "closed form"},
		{"1 US quart of resin of 1.10 g/ml at 1 % takes 9 cc of peroxide of 1.13 g/ml, says the printed table",
			ml(mixing.Dose(si.GramsPerML(1.10).Of(usQuart), si.Percent(1), si.GramsPerML(1.13))), 9, 0.27, "SWAY22225: table of cc per US quart, 1 %; its rounding to whole cc allows 3 %"},
		{"or 9.21 ml to the last digit",
			ml(mixing.Dose(si.GramsPerML(1.10).Of(usQuart), si.Percent(1), si.GramsPerML(1.13))), 9.21, 0.005, "independent computation, Python"},
		{"2 % takes 18 cc by the same table",
			ml(mixing.Dose(si.GramsPerML(1.10).Of(usQuart), si.Percent(2), si.GramsPerML(1.13))), 18, 0.54, "SWAY22225: 2 %"},
		{"1 kg of gelcoat of 1.2 kg/l over 1.6 m2 lies 0.521 mm thick",
			si.KgPerM3(1200).Fill(si.Kg(1)).Litres() / 1.6, 0.521, 0.0026, "GCGUIDE: coverage of 1 kg over 1.6 m2"},
		{"100 g of gelcoat paste take at least 2 g",
			pasteDose(t, func(v catalog.Value[si.Ratio]) si.Ratio { return v.Low }), 2, 1e-9, "common practice, no source"},
		{"and at most 3 g",
			pasteDose(t, func(v catalog.Value[si.Ratio]) si.Ratio { return v.High }), 3, 1e-9, "common practice, no source"},
	}
	for _, row := range rows {
		if !near(row.got, row.want, row.tolerance) {
			t.Errorf("%s: got %.5g, want %.5g ± %.2g (%s)", row.sentence, row.got, row.want, row.tolerance, row.origin)
		}
	}
}

func grams(m si.Mass, _ si.Volume) float64 { return m.Grams() }
func ml(_ si.Mass, v si.Volume) float64    { return v.ML() }

func pasteDose(t *testing.T, which func(catalog.Value[si.Ratio]) si.Ratio) float64 {
	g, err := catalog.Default().Gelcoat("gelcoat-paste")
	if err != nil {
		t.Fatal(err)
	}
	dose := which(g.Dose)
	if err := mixing.CheckDose(g.TwoPart, dose); err != nil {
		t.Error(err)
	}
	return grams(mixing.Dose(si.Grams(100), dose, g.HardenerDensity.Typical))
}

// Light epoxy filler is mixed in equal parts (common practice, no source): by
// volume. By weight the two parts then differ as their densities do.
func TestLightFillerIsMixedInEqualParts(t *testing.T) {
	f, err := catalog.Default().Filler("epoxy-filler-light")
	if err != nil {
		t.Fatal(err)
	}
	a := mixing.Split(f.TwoPart, si.Grams(200), 0)
	if !near(a.ResinVolume.ML(), a.SecondVolume.ML(), 1e-9) {
		t.Errorf("got %.3f and %.3f ml, want equal", a.ResinVolume.ML(), a.SecondVolume.ML())
	}
	if !near(a.Resin.Grams()+a.Second.Grams(), 200, 1e-9) {
		t.Errorf("got %.3f + %.3f g, want 200 g in all", a.Resin.Grams(), a.Second.Grams())
	}
}

func TestRatiosUndoEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rhoA := si.GramsPerML(rapid.Float64Range(0.3, 2).Draw(t, "rhoA"))
		rhoB := si.GramsPerML(rapid.Float64Range(0.3, 2).Draw(t, "rhoB"))
		volB := rapid.Float64Range(0.05, 2).Draw(t, "volB")
		mass := mixing.MassRatio(1, volB, rhoA, rhoB)
		if got := mixing.VolumeRatio(mass, rhoA, rhoB); !near(got, 100*volB, 1e-9*100*volB) {
			t.Fatalf("100:%g by volume came back as 100:%g", 100*volB, got)
		}
	})
}

// A dose outside the sheet's band is refused, and never answered by "more".
func TestDosesOutsideTheBandAreRefused(t *testing.T) {
	cat := catalog.Default()
	polyester := resin(t, "polyester-laminating").TwoPart
	gelcoat, _ := cat.Gelcoat("gelcoat-waxed")
	paste, _ := cat.Gelcoat("gelcoat-paste")
	epoxy := resin(t, "epoxy-fast").TwoPart
	rows := []struct {
		sentence string
		part     catalog.TwoPart
		dose     si.Ratio
		want     string // "" for allowed
	}{
		{"the band's ends are allowed", polyester, si.Percent(2.5), ""},
		{"the band's low end too", polyester, si.Percent(1), ""},
		{"more is refused", polyester, si.Percent(2.6), "warm it"},
		{"less is refused", polyester, si.Percent(0.9), "never cure through"},
		{"a waxed gelcoat takes 2 %", gelcoat.TwoPart, si.Percent(2), ""},
		{"but not 2.1 %", gelcoat.TwoPart, si.Percent(2.1), "above the sheet's 1.5 to 2 %"},
		{"a paste takes 2.5 %", paste.TwoPart, si.Percent(2.5), ""},
		{"but not 3.5 %", paste.TwoPart, si.Percent(3.5), "above"},
		{"an epoxy has no dose to choose", epoxy, si.Percent(7), ""},
		{"no number is no dose", polyester, si.Ratio(math.NaN()), "below"},
	}
	for _, row := range rows {
		err := mixing.CheckDose(row.part, row.dose)
		switch {
		case row.want == "" && err != nil:
			t.Errorf("%s: got %v", row.sentence, err)
		case row.want != "" && (err == nil || !strings.Contains(err.Error(), row.want)):
			t.Errorf("%s: got %v, want an error with %q", row.sentence, err, row.want)
		}
	}
}

// The dose is proportional to the resin, and so is everything in an amount.
func TestDosesScale(t *testing.T) {
	r := resin(t, "polyester-laminating").TwoPart
	e := resin(t, "epoxy-slow").TwoPart
	rapid.Check(t, func(t *rapid.T) {
		m := si.Grams(rapid.Float64Range(0.1, 5000).Draw(t, "m"))
		k := rapid.Float64Range(0.1, 50).Draw(t, "k")
		p := si.Percent(rapid.Float64Range(1, 2.5).Draw(t, "p"))
		for _, part := range []catalog.TwoPart{r, e} {
			one, many := mixing.Split(part, m, p), mixing.Split(part, m*si.Mass(k), p)
			if !near(float64(many.Second), k*float64(one.Second), 1e-12*float64(many.Second)+1e-15) ||
				!near(float64(many.SecondVolume), k*float64(one.SecondVolume), 1e-12*float64(many.SecondVolume)+1e-15) {
				t.Fatalf("%s: %v times %v gave %+v from %+v", part.Class, k, m, many, one)
			}
		}
	})
}
