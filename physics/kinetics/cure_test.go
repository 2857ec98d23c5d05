package kinetics_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// A manufactured problem: first order at a rate that rises straight, whose
// solution is a = 1 - exp(-integral of K dt). Halving the step must divide the error
// by 32.
func TestOrderOfTheIntegrator(t *testing.T) {
	f := func(x, y float64) float64 { return (1 + x) * (1 - y) }
	exact := func(x float64) float64 { return 1 - math.Exp(-x-x*x/2) }
	var before float64
	for i, n := range []int{20, 40, 80, 160} {
		y, h := 0.0, 1/float64(n)
		for k := range n {
			rise, _ := kinetics.DormandPrince(f, float64(k)*h, y, h)
			y += rise
		}
		e := math.Abs(y - exact(1))
		if i > 0 {
			if order := math.Log2(before / e); math.Abs(order-5) > 0.1 {
				t.Errorf("%d steps: observed order %.2f, theory 5", n, order)
			} else {
				t.Logf("%d steps: error %.3g, observed order %.3f", n, e, order)
			}
		}
		before = e
	}
	// The estimate beside it belongs to the fourth order: one step's falls by 32.
	_, e1 := kinetics.DormandPrince(f, 0, 0, 0.02)
	_, e2 := kinetics.DormandPrince(f, 0, 0, 0.01)
	if order := math.Log2(e1 / e2); math.Abs(order-5) > 0.2 {
		t.Errorf("error estimate: a halved step divides it by 2^%.2f, theory 2^5", order)
	}
}

// anyLaw draws a law of this package with parameters about those of real resins.
func anyLaw(t *rapid.T) kinetics.Law {
	E := func() si.MolarEnergy { return si.KJPerMol(rapid.Float64Range(30, 100).Draw(t, "E")) }
	k := func() kinetics.Arrhenius {
		return must(kinetics.FromReference(math.Pow(10, rapid.Float64Range(-6, -2).Draw(t, "lg k")), si.Celsius(25), E()))
	}
	m, n := drawOrder(t, "m", 0, 1.5), drawOrder(t, "n", 0.3, 2.5)
	var law kinetics.Law
	switch rapid.IntRange(0, 4).Draw(t, "law") {
	case 0:
		law = kinetics.NthOrder{K: k(), N: n}
	case 1:
		law = kinetics.Autocatalytic{K: k(), M: m, N: n}
	case 2:
		law = kinetics.Kamal{K1: k().Times(0.1), K2: k(), M: m, N: n}
	case 3:
		law = kinetics.GraphiteEpoxy1982()
	case 4:
		law = kinetics.Radical{
			Induction: kinetics.Induction{Ref: si.Minutes(rapid.Float64Range(1, 60).Draw(t, "t_ind")), E: E(), Q: rapid.Float64Range(0, 1).Draw(t, "q")},
			Peroxide:  si.Percent(rapid.Float64Range(0.5, 4).Draw(t, "peroxide")),
			K:         k(), P: rapid.Float64Range(0, 1).Draw(t, "p"), M: m, N: n, Seed: 1e-4,
		}
	}
	switch rapid.IntRange(0, 2).Draw(t, "brake") {
	case 1:
		return kinetics.Braked{Law: law, Brake: glassBrake()}
	case 2:
		return kinetics.Braked{Law: law, Brake: kinetics.ConversionBrake{C: rapid.Float64Range(5, 60).Draw(t, "C"), Ac0: -1, AcT: 0.006}}
	}
	return law
}

// anyWeather draws a history of jumps and slopes.
func anyWeather(t *rapid.T) kinetics.History {
	knots := make([]kinetics.Knot, rapid.IntRange(1, 8).Draw(t, "knots"))
	at := si.Time(0)
	for i := range knots {
		knots[i] = kinetics.Knot{Time: at, Temp: si.Celsius(rapid.Float64Range(-10, 90).Draw(t, "T"))}
		if rapid.Bool().Draw(t, "later") {
			at += si.Hours(rapid.Float64Range(0.01, 20).Draw(t, "gap"))
		}
	}
	return must(kinetics.NewHistory(knots...))
}

// The degree of cure never falls and never passes 1, and a rate is never negative.
func TestCureOnlyRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law, h := anyLaw(t), anyWeather(t)
		times := make([]si.Time, 40)
		for i := range times {
			times[i] = si.Hours(float64(i) * rapid.SampledFrom([]float64{0.1, 1, 5}).Draw(t, "every"))
			if i > 0 {
				times[i] = max(times[i], times[i-1])
			}
		}
		a0 := kinetics.Fresh(law)
		states, err := kinetics.Cure(law, h, a0, times)
		if err != nil {
			t.Fatal(err)
		}
		last := a0
		for i, a := range states {
			if !(a >= last && a <= 1) {
				t.Fatalf("state %g at %v after %g", a, times[i], last)
			}
			if r := law.Rate(a, h.At(times[i])); !(r >= 0) {
				t.Fatalf("rate %g at %g", r, a)
			}
			last = a
		}
	})
}

// One march through many times ends where one march to the last time ends, and
// Reach is the inverse of Cure.
func TestCureDoesNotDependOnWhereItStops(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law, h := anyLaw(t), anyWeather(t)
		end := si.Hours(rapid.Float64Range(0.5, 60).Draw(t, "end"))
		a0 := kinetics.Fresh(law)
		var times []si.Time
		for i := range 8 {
			times = append(times, si.Scale(end, float64(i)/7))
		}
		many := must(kinetics.Cure(law, h, a0, times))
		once := must(kinetics.Cure(law, h, a0, []si.Time{end}))[0]
		if d := math.Abs(many[7] - once); d > 3e-6 {
			t.Fatalf("in eight marches %g, in one %g", many[7], once)
		}
		goal := many[3]
		if goal <= a0 || goal >= 1-1e-9 {
			return
		}
		at, ok, err := kinetics.Reach(law, h, a0, goal, end)
		if err != nil || !ok && math.Abs(once-goal) > 3e-6 { // stalled at the goal: a hair decides
			t.Fatal(at, ok, err)
		}
		if back := must(kinetics.Cure(law, h, a0, []si.Time{at}))[0]; math.Abs(back-goal) > 3e-6 {
			t.Fatalf("reaches %g at %v, where cure is %g", goal, at, back)
		}
	})
}

// Warmer is never slower below the brake: at every hour the warmer history leads.
func TestWarmerIsNeverSlower(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		law := rapid.SampledFrom([]kinetics.Law{cup(), polyester(2), kinetics.GlassPolyester1991(),
			kinetics.Braked{Law: cup(), Brake: glassBrake()}}).Draw(t, "law")
		var cold, warm []kinetics.Knot
		for i := range 5 {
			T := si.Celsius(rapid.Float64Range(0, 60).Draw(t, "T"))
			at := si.Hours(float64(i) * 3)
			cold = append(cold, kinetics.Knot{Time: at, Temp: T})
			warm = append(warm, kinetics.Knot{Time: at, Temp: T.Add(si.TempDiff(rapid.Float64Range(0, 20).Draw(t, "warmer")))})
		}
		times := []si.Time{si.Hours(1), si.Hours(4), si.Hours(9), si.Hours(20)}
		a := must(kinetics.Cure(law, must(kinetics.NewHistory(cold...)), kinetics.Fresh(law), times))
		b := must(kinetics.Cure(law, must(kinetics.NewHistory(warm...)), kinetics.Fresh(law), times))
		for i := range times {
			if a[i] > b[i]+1e-7 {
				t.Fatalf("at %v: %g cold, %g warm", times[i], a[i], b[i])
			}
		}
	})
}

// The jump of a rate is no error: a ramp through the break against the sum of its
// two sides, each smooth, stepped by a plain method of fourth order with 20 000 steps.
func TestBreaksAreTaken(t *testing.T) {
	law := kinetics.GraphiteEpoxy1982()
	h := must(kinetics.NewHistory(kinetics.Knot{Time: 0, Temp: si.Celsius(25)}, kinetics.Knot{Time: si.Minutes(60), Temp: si.Celsius(177)}))
	at, ok, err := kinetics.Reach(law, h, 0, 0.3, si.Hours(3))
	if err != nil || !ok {
		t.Fatal(at, ok, err)
	}
	side := func(from, to, a float64, rate func(a float64, T si.Temp) float64) float64 {
		const n = 20000
		dt := (to - from) / n
		f := func(t, a float64) float64 { return rate(a, h.At(si.Time(t))) }
		for i := range n {
			t := from + float64(i)*dt
			k1 := f(t, a)
			k2 := f(t+dt/2, a+dt/2*k1)
			k3 := f(t+dt/2, a+dt/2*k2)
			k4 := f(t+dt, a+dt*k3)
			a += dt / 6 * (k1 + 2*k2 + 2*k3 + k4)
		}
		return a
	}
	below := func(a float64, T si.Temp) float64 { return (law.K1.K(T) + law.K2.K(T)*a) * (1 - a) * (0.47 - a) }
	above := func(a float64, T si.Temp) float64 { return law.K3.K(T) * (1 - a) }
	near(t, "at the time found, from below", side(0, float64(at), 0, below), 0.3, 1e-8)
	end := si.Minutes(61) // past the end of the ramp, where h.At has a kink between steps
	want := side(3600, float64(end), side(float64(at), 3600, 0.3, above), above)
	near(t, "a minute after the ramp", must(kinetics.Cure(law, h, 0, []si.Time{end}))[0], want, 1e-8)
}

func TestCureRefuses(t *testing.T) {
	h := must(kinetics.Constant(si.Celsius(25)))
	third := func(_ si.Time, _ bool, err error) error { return err }
	for what, err := range map[string]error{
		"no history":    second(kinetics.Cure(cup(), kinetics.History{}, 0, nil)),
		"times fall":    second(kinetics.Cure(cup(), h, 0, []si.Time{60, 30})),
		"time negative": second(kinetics.Cure(cup(), h, 0, []si.Time{-1})),
		"state 1":       second(kinetics.Cure(cup(), h, 1, nil)),
		"below fresh":   second(kinetics.Cure(cup(), h, -0.1, nil)),
		"no law":        second(kinetics.Cure(nil, h, 0, nil)),
		"rate NaN":      second(kinetics.Cure(broken{}, h, 0, []si.Time{60})),
		"goal passed":   third(kinetics.Reach(cup(), h, 0.5, 0.4, 60)),
		"goal 1":        third(kinetics.Reach(cup(), h, 0, 1, 60)),
		"no limit":      third(kinetics.Reach(cup(), h, 0, 0.5, si.Time(math.Inf(1)))),
	} {
		if err == nil {
			t.Errorf("%s: no error", what)
		}
	}
	if at, ok, err := kinetics.Reach(cup(), h, 0, 0.58, si.Hours(1)); ok || err != nil || at != si.Hours(1) {
		t.Errorf("a goal beyond the limit: %v %v %v, want false at the limit", at, ok, err)
	}
	if at, ok, err := kinetics.Reach(cup(), h, 0.58, 0.58, si.Hours(1)); !ok || err != nil || at != 0 {
		t.Errorf("a goal already reached: %v %v %v, want true at once", at, ok, err)
	}
}

// An order below 1 ends in finite time, 1/(k (1-n)) from fresh, and stays.
func TestAnOrderThatEnds(t *testing.T) {
	law := kinetics.NthOrder{K: cup().K2, N: 0.5}
	T := si.Celsius(25)
	end := si.Time(2 / law.K.K(T))
	h := must(kinetics.Constant(T))
	at, ok, err := kinetics.Reach(law, h, 0, 1-1e-15, si.Scale(end, 3))
	if !ok || err != nil {
		t.Fatal(at, ok, err)
	}
	// The last 1e-13 of conversion, to which the steps are held, take the root of it in time.
	near(t, "all used up", float64(at), float64(end), 1e-5)
	a := must(kinetics.Cure(law, h, 0, []si.Time{si.Scale(end, 2), si.Scale(end, 4)}))
	near(t, "and stays", a[1], 1, 1e-13)
	near(t, "in closed form", must(law.Conversion(T, 0, si.Scale(end, 2))), 1, 1e-15)
	near(t, "half way in time", must(law.Conversion(T, 0, si.Scale(end, 0.5))), 0.75, 1e-12)
}

type broken struct{}

func (broken) Rate(float64, si.Temp) float64 { return math.NaN() }
