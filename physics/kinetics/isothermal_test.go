package kinetics_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

func TestGlassPolyesterIsothermal(t *testing.T) {
	law := kinetics.GlassPolyester1991()
	time := func(T, to float64) float64 { return must(law.Time(si.Celsius(T), 0, to)).Minutes() }
	at := func(T float64) float64 { return must(law.Conversion(si.Celsius(T), 0, si.Minutes(30))) }
	const tight = 1e-4
	checkFigures(t, []figure{
		{"80 C: half cured after 326.549 min", time(80, 0.5), 326.549, rel(326.549, tight), bg},
		{"80 C: 0.9 after 929.324 min", time(80, 0.9), 929.324, rel(929.324, tight), bg},
		{"80 C: at 30 min", at(80), 0.006591, 5.1e-7, bg},
		{"90 C: half cured after 67.943 min", time(90, 0.5), 67.943, rel(67.943, tight), bg},
		{"90 C: 0.9 after 193.358 min", time(90, 0.9), 193.358, rel(193.358, tight), bg},
		{"90 C: at 30 min", at(90), 0.152211, rel(0.152211, tight), bg},
		{"100 C: half cured after 15.377 min", time(100, 0.5), 15.377, rel(15.377, tight), bg},
		{"100 C: 0.9 after 43.762 min", time(100, 0.9), 43.762, rel(43.762, tight), bg},
		{"100 C: at 30 min", at(100), 0.802818, rel(0.802818, tight), bg},
		{"110 C: half cured after 3.761 min", time(110, 0.5), 3.761, 5.1e-4, bg},
		{"110 C: at 30 min", at(110), 0.987413, rel(0.987413, tight), bg},
	})
}

func TestGraphiteEpoxyIsothermal(t *testing.T) {
	const source = "LeeLoosSpringer1982 constants, second-hand; the figure by independent computation in another language"
	law := kinetics.GraphiteEpoxy1982()
	var figures []figure
	for _, r := range []struct{ T, to, min float64 }{
		{116, 0.3, 79.806}, {116, 0.5, 147.70}, {116, 0.9, 472.45},
		{150, 0.3, 9.939}, {150, 0.5, 26.588}, {150, 0.9, 106.23},
		{177, 0.3, 2.398}, {177, 0.5, 8.741}, {177, 0.9, 39.08},
	} {
		got := must(kinetics.Isothermal(law, si.Celsius(r.T), 0, r.to)).Minutes()
		figures = append(figures, figure{fmt.Sprintf("%g C to %g in min", r.T, r.to), got, r.min, rel(r.min, 2e-4), source})
	}
	checkFigures(t, figures)
	// The rate at the break is the one below it, and just above it the other's.
	T := si.Celsius(177)
	below, above := law.Rate(0.3, T), law.Rate(math.Nextafter(0.3, 1), T)
	near(t, "below the break", below, (law.K1.K(T)+law.K2.K(T)*0.3)*0.7*0.17, 1e-12)
	near(t, "above the break", above, law.K3.K(T)*0.7, 1e-12)
	if below == above {
		t.Error("no jump at the break")
	}
	// k1 + k2 a = 0 at a = 0.3 and 6.6 C, by hand: 2900/R / ln(2.102/2.014/0.3) = 279.8 K.
	if r := law.Rate(0.3, si.Celsius(6.5)); r != 0 {
		t.Errorf("below its range the rate is %g, want 0 and no falling cure", r)
	}
	if r := law.Rate(0.3, si.Celsius(6.7)); !(r > 0) {
		t.Errorf("at 6.7 C the rate before the switch is %g, want more than 0", r)
	}
}

func TestCupFilm(t *testing.T) {
	law, T := cup(), si.Celsius(25)
	checkFigures(t, []figure{
		{"film at 25 C gels after 11855.29 s", float64(must(law.Time(T, 0, 0.58))), 11855.29, rel(11855.29, 1e-6), rows},
		{"film at 25 C at 0.9 after 39959.1 s", float64(must(law.Time(T, 0, 0.9))), 39959.1, rel(39959.1, 2e-6), rows},
		{"the same by quadrature", float64(must(kinetics.Isothermal(law, T, 0, 0.58))), 11855.29, rel(11855.29, 1e-6), rows},
		{"film at 25 C: 3.2931 h", must(law.Time(T, 0, 0.58)).Hours(), 3.2931, rel(3.2931, 1e-4), rows},
		{"film at 15 C: 7.112 h", must(law.Time(si.Celsius(15), 0, 0.58)).Hours(), 7.112, 5.1e-4, rows},
		{"film at 20 C: 4.808 h", must(law.Time(si.Celsius(20), 0, 0.58)).Hours(), 4.808, 5.1e-4, rows},
		{"film at 30 C: 2.284 h", must(law.Time(si.Celsius(30), 0, 0.58)).Hours(), 2.284, 5.1e-4, rows},
	})
}

// A law whose rate is printed as k0 exp(-1000/T) C0 (1-a)^2 is of order 2 with
// E = 1000 R: a/(1-a) = kt, by hand.
func TestSecondOrderByHand(t *testing.T) {
	law := kinetics.NthOrder{K: kinetics.Arrhenius{A: 2 * 0.5, E: si.MolarEnergy(1000 * kinetics.R)}, N: 2}
	T := si.Temp(393.2)
	k := math.Exp(-1000 / 393.2)
	near(t, "time to 0.85", float64(must(law.Time(T, 0, 0.85))), 0.85/0.15/k, 1e-13)
	near(t, "after 60 s", must(law.Conversion(T, 0, 60)), 60*k/(1+60*k), 1e-13)
}

// solved is a law with its own way to a time and back.
type solved interface {
	kinetics.Law
	Time(T si.Temp, a0, to float64) (si.Time, error)
	Conversion(T si.Temp, a0 float64, t si.Time) (float64, error)
}

func drawOrder(t *rapid.T, name string, low, high float64) float64 {
	return rapid.OneOf(rapid.Float64Range(low, high), rapid.SampledFrom([]float64{max(0, low), 1, high})).Draw(t, name)
}

func drawSolved(t *rapid.T) solved {
	k := must(kinetics.FromReference(math.Pow(10, rapid.Float64Range(-6, -2).Draw(t, "lg k")), si.Celsius(25),
		si.KJPerMol(rapid.Float64Range(20, 120).Draw(t, "E"))))
	m := drawOrder(t, "m", 0, 1.8)
	switch rapid.IntRange(0, 4).Draw(t, "law") {
	case 0:
		return kinetics.NthOrder{K: k, N: drawOrder(t, "n", 0, 3)}
	case 1:
		return kinetics.Autocatalytic{K: k, M: m, N: 2 - m}
	case 2:
		return kinetics.Autocatalytic{K: k, M: m, N: drawOrder(t, "n", 0, 3)}
	case 3:
		return kinetics.Kamal{K1: k.Times(rapid.Float64Range(0.001, 2).Draw(t, "kap")), K2: k, M: 1, N: 2}
	}
	return kinetics.Kamal{K1: k.Times(0.05), K2: k, M: m, N: drawOrder(t, "n", 0, 3)}
}

// Closed form = quadrature of the bare rate = what the integrator steps through;
// the conversion at a time inverts the time to a conversion.
func TestThreeWaysToATime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law := drawSolved(t)
		T := si.Celsius(rapid.Float64Range(5, 120).Draw(t, "T"))
		a0 := rapid.SampledFrom([]float64{1e-6, 1e-3, 0.2}).Draw(t, "a0")
		to := a0 + (0.98-a0)*rapid.Float64Range(0.01, 1).Draw(t, "share")
		want := must(law.Time(T, a0, to))
		near(t, "quadrature", float64(must(kinetics.Isothermal(bare{law}, T, a0, to))), float64(want), 1e-9)
		h := must(kinetics.Constant(T))
		ode, ok, err := kinetics.Reach(bare{law}, h, a0, to, si.Scale(want, 2))
		if !ok || err != nil {
			t.Fatal(ok, err)
		}
		// A long wait and a sudden end (m = 1.8 from a seed of 1e-6) turn a late start
		// of a part in 1e8 into much conversion: the problem's doing, not the method's.
		// And slow ends turn an error of conversion into much time.
		steep := float64(want) * law.Rate(to, T) / to
		near(t, "integrator, time", float64(ode), float64(want), 1e-8*(2+1/steep))
		near(t, "integrator, conversion", must(kinetics.Cure(bare{law}, h, a0, []si.Time{want}))[0], to, 1e-8*(1+2*steep))
		near(t, "inverse", must(law.Conversion(T, a0, want)), to, 1e-10*(1+steep))
		near(t, "general inverse", must(kinetics.IsothermalConversion(bare{law}, T, a0, want)), to, 1e-10*(1+steep))
	})
}

// From nothing: the quadrature in a itself, whose integrand has no bound at 0,
// agrees with the closed form and with the one in x = a^(1-m).
func TestFromNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.Float64Range(0, 0.9).Draw(t, "m")
		n := rapid.SampledFrom([]float64{2 - m, 2.05 - m, 0.5, 1, 2.4}).Draw(t, "n")
		to := rapid.Float64Range(1e-4, 0.99).Draw(t, "to")
		law := kinetics.Autocatalytic{K: kinetics.Arrhenius{A: 1e5, E: si.KJPerMol(50)}, M: m, N: n}
		T := si.Celsius(25)
		want := must(law.Time(T, 0, to))
		near(t, "quadrature in a", float64(must(kinetics.Isothermal(bare{law}, T, 0, to))), float64(want), 1e-8)
		near(t, "inverse", must(law.Conversion(T, 0, want)), to, 1e-9)
	})
}

// m = 0 leaves the n-th order; k1 = 0 leaves the autocatalytic law; k2 = 0 the n-th
// order again.
func TestLawsContainEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := kinetics.Arrhenius{A: 1e5, E: si.KJPerMol(rapid.Float64Range(20, 90).Draw(t, "E"))}
		m, n := drawOrder(t, "m", 0, 2), drawOrder(t, "n", 0, 3)
		// Below 1e-300 numbers lose digits, and no conversion means anything.
		a := rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1e-300, 1)).Draw(t, "a")
		T := si.Celsius(rapid.Float64Range(-10, 150).Draw(t, "T"))
		nth := kinetics.NthOrder{K: k, N: n}
		auto := kinetics.Autocatalytic{K: k, M: m, N: n}
		near(t, "m = 0", kinetics.Autocatalytic{K: k, N: n}.Rate(a, T), nth.Rate(a, T), 1e-12)
		near(t, "k1 = 0", kinetics.Kamal{K2: k, M: m, N: n}.Rate(a, T), auto.Rate(a, T), 1e-12)
		near(t, "k2 = 0", kinetics.Kamal{K1: k, M: m, N: n}.Rate(a, T), nth.Rate(a, T), 1e-14)
		// One energy for both constants takes a shorter road; two that differ by a hair take the long one.
		one := kinetics.Kamal{K1: k.Times(0.1), K2: k, M: m, N: n}
		two := one
		two.K1.E *= 1 + 1e-13
		near(t, "one energy or two", one.Rate(a, T), two.Rate(a, T), 1e-10)
	})
}

// A state below 0 counts as 0 for a law without inhibitor, and 1 and beyond are the end.
func TestRateAtTheEnds(t *testing.T) {
	T := si.Celsius(60)
	k := cup().K2
	for _, law := range []kinetics.Law{kinetics.NthOrder{K: k, N: 1.5}, kinetics.NthOrder{K: k}, cup(), kinetics.Autocatalytic{K: k, N: 2},
		kinetics.GlassPolyester1991(), kinetics.GraphiteEpoxy1982(), polyester(2), kinetics.Braked{Law: cup(), Brake: glassBrake()}} {
		if _, inhibited := law.(kinetics.Radical); !inhibited {
			if below, at := law.Rate(-0.2, T), law.Rate(0, T); math.Abs(below-at) > 1e-12*at { // a brake lets go below 0
				t.Errorf("%#v: rate %g below 0, %g at 0", law, below, at)
			}
		}
		for _, a := range []float64{1, 1.5} {
			if r := law.Rate(a, T); r != 0 {
				t.Errorf("%#v: rate %g at %g", law, r, a)
			}
		}
	}
	if f := kinetics.Fresh(kinetics.Kamal{K2: k, M: 1, N: 2}); f != kinetics.Seed {
		t.Errorf("Kamal without k1 starts from %g, want the seed", f)
	}
	for _, law := range []kinetics.Law{cup(), kinetics.GraphiteEpoxy1982(), kinetics.Autocatalytic{K: k, N: 2}, bare{cup()}} {
		if f := kinetics.Fresh(law); f != 0 {
			t.Errorf("%#v starts from %g, want 0", law, f)
		}
	}
}

// The ends of closed forms: an endless wait, and a Kamal law without its second part.
func TestClosedFormsAtTheirEnds(t *testing.T) {
	T, k := si.Celsius(25), cup().K2
	for m := 0.5; m <= 1.5; m += 0.5 {
		law := kinetics.Autocatalytic{K: k, M: m, N: 2 - m}
		if a := must(law.Conversion(T, 0.01, 1e9)); !(a > 0.999 && a <= 1) {
			t.Errorf("m = %g, after 30 years: %g, want 1 or nearly", m, a)
		}
	}
	near(t, "k2 = 0", float64(must(kinetics.Kamal{K1: k, M: 1, N: 2}.Time(T, 0, 0.5))), float64(must(kinetics.NthOrder{K: k, N: 2}.Time(T, 0, 0.5))), 1e-10)
}

// Every parameter out of range is named; a foreign law isn't judged.
func TestCheck(t *testing.T) {
	k, two, rad := cup().K2, kinetics.GraphiteEpoxy1982(), polyester(2)
	change := func(f func(*kinetics.Radical)) kinetics.Law { l := rad; f(&l); return l }
	for _, r := range []struct {
		law  kinetics.Law
		want string
	}{
		{kinetics.NthOrder{K: k, N: 11}, "order n is 11"},
		{kinetics.NthOrder{N: 1}, "k: A is 0"},
		{kinetics.Autocatalytic{K: k, M: -0.1, N: 1}, "order m is -0.1"},
		{kinetics.Autocatalytic{K: kinetics.Arrhenius{A: 1}, N: 1}, "k: E is 0"},
		{kinetics.Kamal{K1: k, K2: kinetics.Arrhenius{A: -1, E: 5e4}}, "k2: A is -1"},
		{kinetics.Kamal{K1: k, K2: k, N: math.NaN()}, "order n is NaN"},
		{kinetics.TwoRegime{K1: two.K1, K2: two.K2, K3: two.K3, Bound: 0.2, Switch: 0.3}, "switch 0.3 and bound 0.2"},
		{kinetics.TwoRegime{K1: two.K1, K2: kinetics.Arrhenius{A: math.Inf(-1), E: 1e4}, K3: two.K3, Bound: 0.4, Switch: 0.3}, "k2: A is -Inf"},
		{kinetics.TwoRegime{K1: two.K1, K2: kinetics.Arrhenius{A: -5}, K3: two.K3, Bound: 0.4, Switch: 0.3}, "k2: E is 0"},
		{change(func(l *kinetics.Radical) { l.Seed = 0.5 }), "seed 0.5"},
		{change(func(l *kinetics.Radical) { l.Seed = 0 }), "seed 0"},
		{change(func(l *kinetics.Radical) { l.P = -1 }), "order p is -1"},
		{change(func(l *kinetics.Radical) { l.Induction.Q = -1 }), "order q is -1"},
		{change(func(l *kinetics.Radical) { l.Peroxide = 2 }), "0.02 for 2 %"},
		{kinetics.Braked{Law: rad, Brake: kinetics.ConversionBrake{}}, "diffusion brake"},
		{nil, "none given"},
	} {
		if err := kinetics.Check(r.law); err == nil || !strings.Contains(err.Error(), r.want) {
			t.Errorf("%#v: error %v, want one with %q", r.law, err, r.want)
		}
	}
	for _, law := range []kinetics.Law{cup(), two, rad, kinetics.GlassPolyester1991(), bare{cup()}} {
		if err := kinetics.Check(law); err != nil {
			t.Errorf("%#v: %v", law, err)
		}
	}
}

// Only k t counts: twice the constant takes half the time.
func TestOnlyTheProductCounts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law := cup()
		f := rapid.Float64Range(0.01, 100).Draw(t, "factor")
		fast := kinetics.Kamal{K1: law.K1.Times(f), K2: law.K2.Times(f), M: 1, N: 2}
		T := si.Celsius(20)
		near(t, "time", f*float64(must(fast.Time(T, 0.01, 0.7))), float64(must(law.Time(T, 0.01, 0.7))), 1e-12)
	})
}

func TestTheFalseStart(t *testing.T) {
	slow := kinetics.Autocatalytic{K: cup().K2, M: 1, N: 1}
	T, h := si.Celsius(25), must(kinetics.Constant(si.Celsius(25)))
	for what, err := range map[string]error{
		"m = 1 from 0":                 second(slow.Time(T, 0, 0.5)),
		"m = 1 from 0, conversion":     second(slow.Conversion(T, 0, 3600)),
		"m = 1 from 0, bare":           second(kinetics.Isothermal(bare{slow}, T, 0, 0.5)),
		"m = 1 from 0, bare inverse":   second(kinetics.IsothermalConversion(bare{slow}, T, 0, 3600)),
		"m = 1.3 from 0, bare":         second(kinetics.Isothermal(bare{kinetics.Autocatalytic{K: slow.K, M: 1.3, N: 1}}, T, 0, 0.5)),
		"integrator, m = 0.5 from 0":   second(kinetics.Cure(kinetics.Autocatalytic{K: slow.K, M: 0.5, N: 1}, h, 0, nil)),
		"Kamal without k1":             second(kinetics.Kamal{K2: slow.K, M: 1, N: 2}.Time(T, 0, 0.5)),
		"Kamal without k1, conversion": second(kinetics.Kamal{K2: slow.K, M: 1, N: 2}.Conversion(T, 0, 60)),
		"adiabatic, m = 1":             second(kinetics.Adiabatic{Law: slow, Heat: 3e5, C: 1900, Start: T}.Time(0.5)),
	} {
		if err == nil {
			t.Errorf("%s: no error, want one that asks for a seed", what)
		}
	}
	if s := kinetics.Fresh(slow); s != kinetics.Seed {
		t.Errorf("Fresh is %g, want the seed", s)
	}
	if got, err := slow.Time(T, kinetics.Seed, 0.5); err != nil || !(got > 0) {
		t.Errorf("from the seed: %v, %v", got, err)
	}
	// m = 1, n = 1 is logistic growth: k t = ln[u/u0].
	near(t, "logistic", float64(must(slow.Time(T, 0.01, 0.5))), math.Log(99)/slow.K.K(T), 1e-12)
}

func TestIsothermalRefuses(t *testing.T) {
	T := si.Celsius(25)
	bad := cup()
	bad.N = -1
	for what, err := range map[string]error{
		"to 1":             second(cup().Time(T, 0, 1)),
		"backwards":        second(cup().Time(T, 0.5, 0.4)),
		"below fresh":      second(kinetics.Isothermal(cup(), T, -0.1, 0.4)),
		"not a number":     second(kinetics.Isothermal(cup(), T, math.NaN(), 0.4)),
		"no temperature":   second(cup().Time(0, 0, 0.4)),
		"negative order":   second(bad.Time(T, 0, 0.4)),
		"negative time":    second(cup().Conversion(T, 0, -1)),
		"no law":           second(kinetics.Isothermal(nil, T, 0, 0.4)),
		"no constants":     second(kinetics.Isothermal(kinetics.Kamal{M: 1, N: 2}, T, 0, 0.4)),
		"no brake":         second(kinetics.Isothermal(kinetics.Braked{Law: cup()}, T, 0, 0.4)),
		"peroxide 2":       second(kinetics.Isothermal(polyester(200), T, -1, 0.4)),
		"switch and bound": second(kinetics.Isothermal(kinetics.TwoRegime{K1: cup().K1, K3: cup().K2, Bound: 0.2, Switch: 0.3}, T, 0, 0.4)),
	} {
		if err == nil {
			t.Errorf("%s: no error", what)
		}
	}
	// No time passes on the spot, and none passes nothing.
	if got := must(kinetics.Isothermal(cup(), T, 0.3, 0.3)); got != 0 {
		t.Errorf("on the spot: %v", got)
	}
	near(t, "no time", must(cup().Conversion(T, 0.3, 0)), 0.3, 1e-12)
	near(t, "no time, autocatalytic", must(kinetics.GlassPolyester1991().Conversion(T, 0.3, 0)), 0.3, 1e-12)
}

// Powers x^-m have the integral 1/(1-m); and a bump that no low-order rule sees.
func TestQuadrature(t *testing.T) {
	for _, m := range []float64{-3, -0.5, 0, 0.3, 0.524, 0.9} {
		near(t, fmt.Sprintf("x^-%g", m), must(kinetics.Integrate(func(x float64) float64 { return math.Pow(x, -m) }, 0, 1)), 1/(1-m), 1e-11)
	}
	bump := must(kinetics.Integrate(func(x float64) float64 { return 1 / (1 + 1e4*(x-0.3)*(x-0.3)) }, 0, 1))
	near(t, "narrow bump", bump, (math.Atan(70)+math.Atan(30))/100, 1e-9)
	if _, err := kinetics.Integrate(func(x float64) float64 { return 1 / x }, 0, 1); err == nil {
		t.Error("1/x has an integral from 0")
	}
}
