package cure_test

import (
	"math"
	"testing"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/cure"
)

// A cup with k2 3e-4 1/s at 25 °C, kap 0.10, E 55 kJ/mol, H 330 kJ/kg, U 8 W/(m2 K),
// 75 mm across (independent computation: an initial-value solver in another language,
// without a brake, which such a cup hardly feels before its peak).
func TestKnownCup(t *testing.T) {
	z := []float64{math.Log(2) / 1.5, math.Log(1.25) / 0.7, 0, math.Log(330./320) / 0.2, 0, 0}
	at := func(c cure.Criterion) cure.Truth {
		return cure.NewTruth(cure.Sheet{Pots: []cure.Pot{{At: si.Celsius(25), Time: 1800, Criterion: c}}}, z)
	}
	for _, row := range []struct {
		celsius, grams, gel, peak float64
		ranAway                   bool
	}{
		{25, 100, 43.463, 165.49, true}, {20, 100, 70.02, 144.8, true}, {20, 50, 101.2, 61.4, true},
		{15, 50, 246, 25.4, false}, {30, 500, 26.15, 191.3, true}, {15, 500, 87.96, 160.6, true},
	} {
		p := must[cure.PotResult](t)(at(cure.Gel).Pot(cure.Batch{Mass: si.Grams(row.grams), Vessel: cup, Air: si.Celsius(row.celsius), Dose: 0}))
		near(t, "gel [min]", p.Gel.Likely.Minutes(), row.gel, 0.005)
		if math.Abs(p.Peak.Likely.Celsius()-row.peak) > 0.8 {
			t.Errorf("%g g at %g °C: peak %.2f °C, want %.2f", row.grams, row.celsius, p.Peak.Likely.Celsius(), row.peak)
		}
		if p.Runaway != row.ranAway {
			t.Errorf("%g g at %g °C: runs away %v, want %v", row.grams, row.celsius, p.Runaway, row.ranAway)
		}
	}
	for celsius, want := range map[float64]float64{20: 61.10, 25: 37.3} {
		p := must[cure.PotResult](t)(at(cure.PlusKelvin25).Pot(cure.Batch{Mass: si.Grams(100), Vessel: cup, Air: si.Celsius(celsius), Dose: 0}))
		near(t, "warmer by 25 K [min]", p.Working.Likely.Minutes(), want, 0.005)
	}
	near(t, "film gel at 25 °C [s]", float64(must[cure.Prediction[si.Time]](t)(at(cure.Gel).Film(si.Celsius(25), 0, cure.ToGel)).Likely), 11855.29, 1e-4)
}

// Through-cured is 95 % of the degree of a week at 20 °C, and a week's age: at 20 °C
// exactly the week, in the warm as much sooner as Arrhenius says (identity), in the
// cold later than that, for the glass stands in the way; and weather is no exception.
func TestThroughIsDegreeAndAge(t *testing.T) {
	m := fitted(t, sheetA)
	near(t, "degree for through-cured", m.ThroughAt(), 0.95*0.825, 0.005)
	var E si.MolarEnergy
	for _, p := range m.Report() {
		if p.Name == "E" {
			E = si.KJPerMol(p.Value)
		}
	}
	for _, celsius := range []float64{20, 30, 45} {
		want := float64(si.Days(7)) / kinetics.RateRatio(E, si.Celsius(celsius), si.Celsius(20))
		got := must[cure.Prediction[si.Time]](t)(m.Film(si.Celsius(celsius), 0, cure.ToThrough))
		near(t, "film", float64(got.Likely), want, 1e-6)
		r := must[cure.Reached](t)(m.Reaches(must[kinetics.History](t)(kinetics.Constant(si.Celsius(celsius))), 0))
		near(t, "weather", float64(r.Through.Likely), want, 1e-3)
	}
	cold := must[cure.Prediction[si.Time]](t)(m.Film(si.Celsius(8), 0, cure.ToThrough))
	if age := float64(si.Days(7)) / kinetics.RateRatio(E, si.Celsius(8), si.Celsius(20)); float64(cold.Likely) < 1.2*age {
		t.Errorf("at 8 °C: %.1f days, want well over the %.1f of age alone", cold.Likely.Days(), si.Seconds(age).Days())
	}
	r := must[cure.Reached](t)(m.Reaches(must[kinetics.History](t)(kinetics.Constant(si.Celsius(5))), 0))
	if !r.Through.Never || !r.Sandable.Never {
		t.Errorf("at 5 °C for 14 days: through %v, sandable %v; want never", r.Through, r.Sandable)
	}
}
