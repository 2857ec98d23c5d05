package kinetics_test

import (
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

func TestInductionFigures(t *testing.T) {
	i := kinetics.Induction{Ref: si.Minutes(15), E: si.KJPerMol(58), Q: 0.88}
	checkFigures(t, []figure{
		{"15 min at 25 C and 2 %, by definition", must(i.Time(si.Celsius(25), si.Percent(2))).Minutes(), 15, 1e-12, "identity"},
		{"18 C and 1.2 %: 41.27 min", must(i.Time(si.Celsius(18), si.Percent(1.2))).Minutes(), 41.27, rel(41.27, 1e-3), rows},
		{"15 C and 3 %: 23.65 min", must(i.Time(si.Celsius(15), si.Percent(3))).Minutes(), 23.65, rel(23.65, 1e-3), rows},
	})
	// Second-hand: 35 min at 21 C and 22.5 min at 27 C, mid-range of a printed pair.
	E := must(kinetics.EnergyFor(35/22.5, si.Celsius(21.1), si.Celsius(26.7)))
	checkFigures(t, []figure{{"energy of a printed pair of gel times, kJ/mol", E.KJPerMol(), 58, 1, "MSG: MEKP section, read; arithmetic by independent computation"}})
	for what, err := range map[string]error{
		"no peroxide":  second(i.Time(si.Celsius(20), 0)),
		"2 typed as 2": second(i.Time(si.Celsius(20), 2)),
		"no time":      second(kinetics.Induction{E: i.E, Q: 1}.Time(si.Celsius(20), 0.02)),
		"no energy":    second(kinetics.Induction{Ref: 60, Q: 1}.Time(si.Celsius(20), 0.02)),
	} {
		if err == nil {
			t.Errorf("%s: no error", what)
		}
	}
}

// Gel (3 % cured) of the invented sheet's resin. The table was computed for a 100 g
// cup, which warms a little before it gels and so is a little sooner than at
// constant temperature, and is printed to two digits: half a digit is 2.6 % of 19.
func TestRadicalGelTable(t *testing.T) {
	for _, r := range []struct{ peroxide, T, min float64 }{
		{1, 10, 88}, {1, 15, 59}, {1, 20, 40}, {1, 25, 28}, {1, 30, 19},
		{1.5, 10, 61}, {1.5, 15, 41}, {1.5, 20, 28}, {1.5, 25, 19}, {1.5, 30, 13.5},
		{2, 10, 48}, {2, 15, 32}, {2, 20, 22}, {2, 25, 15}, {2, 30, 10.5},
		{3, 10, 33}, {3, 15, 22}, {3, 20, 15}, {3, 25, 10.5}, {3, 30, 7.4},
	} {
		got := must(kinetics.Isothermal(polyester(r.peroxide), si.Celsius(r.T), -1, 0.03)).Minutes()
		checkFigures(t, []figure{{"gel in min", got, r.min, rel(r.min, 0.055), rows + "; a cup of 100 g against a film"}})
	}
}

// Induction by itself: the state comes to 0 after the induction time, and over a
// history after parts of induction times that add up to 1.
func TestInhibitorIsUsedInParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law := polyester(rapid.Float64Range(0.8, 4).Draw(t, "peroxide"))
		cold, warm := si.Celsius(rapid.Float64Range(0, 20).Draw(t, "cold")), si.Celsius(rapid.Float64Range(20, 40).Draw(t, "warm"))
		whole := must(law.Induction.Time(cold, law.Peroxide))
		near(t, "isothermal", float64(must(kinetics.Isothermal(law, cold, -1, 0))), float64(whole), 1e-10)
		share := rapid.Float64Range(0.01, 0.99).Draw(t, "share")
		h := must(kinetics.Steps(kinetics.Stage{For: si.Scale(whole, share), Temp: cold}, kinetics.Stage{For: si.Hours(1), Temp: warm}))
		want := si.Scale(whole, share) + si.Scale(must(law.Induction.Time(warm, law.Peroxide)), 1-share)
		got, ok, err := kinetics.Reach(law, h, kinetics.Fresh(law), 0, si.Hours(48))
		if !ok || err != nil {
			t.Fatal(ok, err)
		}
		near(t, "in two stages", float64(got), float64(want), 1e-9)
		// The age at any one temperature says the same.
		age := must(kinetics.EquivalentAge(law.Induction.E, h, 0, got, cold))
		near(t, "by equivalent age", float64(age), float64(whole), 1e-9)
	})
}

// s + seed stands for a start at s = seed: the difference is of the order of the seed.
func TestSeedOfARadical(t *testing.T) {
	law, T := polyester(2), si.Celsius(25)
	k := law.K.K(T)
	auto := kinetics.Autocatalytic{K: kinetics.Arrhenius{A: k, E: 1}, M: law.M, N: law.N}
	auto.K = must(kinetics.FromReference(k, T, law.K.E))
	want := must(auto.Time(T, law.Seed, 0.5))
	got := must(kinetics.Isothermal(law, T, 0, 0.5))
	near(t, "from the end of induction", float64(got), float64(want), 5*law.Seed)
	near(t, "the rate at the break is the one below", law.Rate(0, T), 1/float64(must(law.Induction.Time(T, law.Peroxide))), 1e-12)
	held := kinetics.Braked{Law: law, Brake: kinetics.ConversionBrake{C: 50, Ac0: -0.9}}
	near(t, "no brake on the inhibitor", held.Rate(-0.5, T), law.Rate(-0.5, T), 1e-15)
	if kinetics.Degree(-0.4) != 0 || kinetics.Degree(0.4) != 0.4 || kinetics.Fresh(law) != -1 {
		t.Error("a state below 0 is no degree of cure")
	}
	if f := kinetics.Fresh(kinetics.Braked{Law: law, Brake: glassBrake()}); f != -1 {
		t.Errorf("a brake changes the fresh state to %g", f)
	}
}

// More peroxide is never slower, at any stage.
func TestMorePeroxideIsNeverSlower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(0.5, 3).Draw(t, "c")
		more := c + rapid.Float64Range(0, 1).Draw(t, "more")
		s, T := rapid.Float64Range(-1, 1).Draw(t, "s"), si.Celsius(rapid.Float64Range(0, 60).Draw(t, "T"))
		if a, b := polyester(c).Rate(s, T), polyester(more).Rate(s, T); a > b*(1+1e-12) {
			t.Fatalf("rate %g at %g %%, %g at %g %%", a, c, b, more)
		}
	})
}
