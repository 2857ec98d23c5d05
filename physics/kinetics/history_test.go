package kinetics_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

func TestEquivalentAgeFigures(t *testing.T) {
	stages := must(kinetics.Steps(
		kinetics.Stage{For: si.Hours(2), Temp: si.Celsius(10)},
		kinetics.Stage{For: si.Hours(3), Temp: si.Celsius(20)},
		kinetics.Stage{For: si.Hours(2), Temp: si.Celsius(15)}))
	E, ref := si.KJPerMol(50), si.Celsius(20)
	age := must(kinetics.EquivalentAge(E, stages, 0, si.Hours(7), ref))
	// A day of 18 C with a swing of 6 K, knot by knot every ten minutes.
	var day []kinetics.Knot
	for i := range 145 {
		day = append(day, kinetics.Knot{Time: si.Minutes(float64(i) * 10), Temp: si.Celsius(18 + 6*math.Sin(2*math.Pi*float64(i)/144))})
	}
	sine := must(kinetics.EquivalentAge(E, must(kinetics.NewHistory(day...)), 0, si.Days(1), ref))
	checkFigures(t, []figure{
		{"2 h at 10, 3 h at 20, 2 h at 15 C are 5.3702 h at 20 C", age.Hours(), 5.3702, rel(5.3702, 1e-5), rows},
		{"a day of 18 C +- 6 K passes at 0.9043 of its pace at 20 C", float64(sine / si.Days(1)), 0.9043, 1e-4, rows},
	})
}

// At Tref age is clock time; ages add up; a warmer history is never younger; a slope
// is the limit of many small steps.
func TestEquivalentAgePromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		E := si.KJPerMol(rapid.Float64Range(20, 170).Draw(t, "E"))
		ref := si.Celsius(rapid.Float64Range(0, 90).Draw(t, "ref"))
		h := anyWeather(t)
		from := si.Hours(rapid.Float64Range(-1, 10).Draw(t, "from"))
		middle := from + si.Hours(rapid.Float64Range(0, 10).Draw(t, "middle"))
		to := middle + si.Hours(rapid.Float64Range(0, 10).Draw(t, "to"))
		age := func(h kinetics.History, from, to si.Time) float64 {
			return float64(must(kinetics.EquivalentAge(E, h, from, to, ref)))
		}
		clock := age(must(kinetics.Constant(ref)), from, to)
		near(t, "at the reference", clock, float64(to-from), 1e-12)
		// Two roundings of Gauss's rule meet here: the parts are cut at other places.
		near(t, "ages add up", age(h, from, middle)+age(h, middle, to), age(h, from, to), 1e-8)

		T0 := si.Celsius(rapid.Float64Range(-10, 80).Draw(t, "T0"))
		slope := func(rise float64) kinetics.History {
			return must(kinetics.NewHistory(kinetics.Knot{Time: 0, Temp: T0}, kinetics.Knot{Time: 3600, Temp: T0.Add(si.TempDiff(rise))}))
		}
		rise := rapid.Float64Range(-40, 40).Draw(t, "rise")
		if age(slope(rise), 0, 7200) > age(slope(rise+5), 0, 7200) {
			t.Fatal("the warmer slope is younger")
		}
		const n = 2000 // the midpoint rule errs by less than 1e-5 of the whole here
		sum := 0.0
		for i := range n {
			sum += kinetics.RateRatio(E, slope(rise).At(si.Time((float64(i)+0.5)*3600/n)), ref) * 3600 / n
		}
		near(t, "a slope in small steps", age(slope(rise), 0, 3600), sum, 1e-5)
	})
}

// Over a slope Gauss's four points err by less than 1e-9: against 64 slopes in its
// place, whose parts are up to 64 times shorter.
func TestSlopeInParts(t *testing.T) {
	for _, r := range []struct{ E, from, to float64 }{{50, 5, 25}, {167, 20, 130}, {90, 60, -10}, {30, 20, 21}, {100, 15, 22}} {
		h := must(kinetics.NewHistory(kinetics.Knot{Time: 0, Temp: si.Celsius(r.from)}, kinetics.Knot{Time: 6400, Temp: si.Celsius(r.to)}))
		age := func(a, b int) float64 {
			return float64(must(kinetics.EquivalentAge(si.KJPerMol(r.E), h, si.Time(100*a), si.Time(100*b), si.Celsius(20))))
		}
		sum := 0.0
		for i := range 64 {
			sum += age(i, i+1)
		}
		near(t, "one slope against 64", age(0, 64), sum, 1e-9)
	}
}

// Below vitrification, for a law of one energy, the age tells the degree of cure.
func TestAgeTellsTheCure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law, h := cup(), anyWeather(t)
		end := si.Hours(rapid.Float64Range(0.1, 5).Draw(t, "end"))
		ref := si.Celsius(20)
		age := must(kinetics.EquivalentAge(law.K2.E, h, 0, end, ref))
		near(t, "cure at that age", must(kinetics.Cure(law, h, 0, []si.Time{end}))[0], must(law.Conversion(ref, 0, age)), 1e-7)
	})
}

func TestHistory(t *testing.T) {
	h := must(kinetics.NewHistory(
		kinetics.Knot{Time: 0, Temp: 280}, kinetics.Knot{Time: 100, Temp: 290},
		kinetics.Knot{Time: 100, Temp: 300}, kinetics.Knot{Time: 200, Temp: 310}))
	for _, r := range []struct{ t, T float64 }{{-50, 280}, {0, 280}, {50, 285}, {99, 289.9}, {100, 300}, {150, 305}, {200, 310}, {1e6, 310}} {
		near(t, "temperature at a time", float64(h.At(si.Time(r.t))), r.T, 1e-14)
	}
	if (kinetics.History{}).At(5).Given() {
		t.Error("the zero History has a temperature")
	}
	knots := []kinetics.Knot{{Time: 0, Temp: 280}}
	kept := must(kinetics.NewHistory(knots...))
	knots[0].Temp = 400
	if kept.At(0) != 280 {
		t.Error("a history changes with the list it was made from")
	}
	for what, err := range map[string]error{
		"no knots":       second(kinetics.NewHistory()),
		"time falls":     second(kinetics.NewHistory(kinetics.Knot{Time: 5, Temp: 280}, kinetics.Knot{Time: 4, Temp: 280})),
		"celsius":        second(kinetics.NewHistory(kinetics.Knot{Time: 5, Temp: -3})),
		"time NaN":       second(kinetics.NewHistory(kinetics.Knot{Time: si.Time(math.NaN()), Temp: 280})),
		"stage backward": second(kinetics.Steps(kinetics.Stage{For: -1, Temp: 280})),
		"no stages":      second(kinetics.Steps()),
		"age backward":   second(kinetics.EquivalentAge(5e4, h, 10, 5, 293)),
		"age of nothing": second(kinetics.EquivalentAge(5e4, kinetics.History{}, 0, 5, 293)),
		"age, E 0":       second(kinetics.EquivalentAge(0, h, 0, 5, 293)),
		"age, no ref":    second(kinetics.EquivalentAge(5e4, h, 0, 5, 0)),
	} {
		if err == nil {
			t.Errorf("%s: no error", what)
		}
	}
}
