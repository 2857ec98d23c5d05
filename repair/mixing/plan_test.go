package mixing_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/mixing"
	"scarfwright/repair/working"
)

func one(name string, resin si.Mass, area si.Area) mixing.Need {
	return mixing.Need{Name: name, Plies: []mixing.PlyNeed{{Label: "P1", Resin: resin, Area: area}}}
}

func ExamplePlan() {
	r, _ := catalog.Default().Resin("polyester-laminating")
	plan, _ := mixing.Plan([]mixing.Need{{Name: "session 1", Plies: []mixing.PlyNeed{
		{Label: "P1", Resin: si.Grams(251), Area: si.M2(0.26)},
		{Label: "P2", Resin: si.Grams(300), Area: si.M2(0.30)},
	}}}, r, mixing.Options{At: si.Celsius(20), People: 2})
	b := plan.Sessions[0].Batches
	fmt.Printf("%d × %.0f g with %.1f g = %.1f ml of %s, %s\n",
		b.Count, b.Mixed.Grams(), b.Second.Grams(), b.SecondVolume.ML(), "catalyst", plan.Sessions[0].Words)
	for _, l := range plan.Losses {
		fmt.Printf("%s %.0f g\n", l.What, l.Mass.Grams())
	}
	// Output:
	// 2 × 344 g with 5.2 g = 4.6 ml of catalyst, at most 27 min at 20 °C
	// brush 10 g
	// roller 20 g
	// cups 8 g
	// squeeze-out and drips 100 g
}

// The amounts of the invented cases, worked by hand there.
func TestInventedCases(t *testing.T) {
	polyester := resin(t, "polyester-laminating")
	warm := mixing.Options{At: si.Celsius(20), People: 2, Largest: si.Grams(400)}

	c1, err := mixing.Plan([]mixing.Need{one("one", si.Grams(551), si.M2(0.56))}, polyester, warm)
	if err != nil {
		t.Fatal(err)
	}
	b := c1.Sessions[0].Batches
	if b.Count != 2 || !near(b.Mixed.Grams(), 344, 0.5) || !near(b.Second.Grams(), 5.2, 0.05) || !near(b.SecondVolume.ML(), 4.6, 0.05) {
		t.Errorf("551 g in the laminate: got %d × %.1f g with %.2f g = %.2f ml; want 2 × 344 g with 5.2 g = 4.6 ml (invented case 1)",
			b.Count, b.Mixed.Grams(), b.Second.Grams(), b.SecondVolume.ML())
	}

	warm.Dose = si.Percent(2)
	c6, err := mixing.Plan([]mixing.Need{one("one", si.Grams(974), si.M2(1.07))}, polyester, warm)
	if err != nil {
		t.Fatal(err)
	}
	b = c6.Sessions[0].Batches
	if b.Count != 4 || !near(b.Mixed.Grams(), 305, 1) || !near(b.Second.Grams(), 6.1, 0.05) || !near(b.SecondVolume.ML(), 5.4, 0.05) {
		t.Errorf("974 g in the laminate: got %d × %.1f g with %.2f g = %.2f ml; want 4 × 305 g with 6.1 g = 5.4 ml (invented case 6)",
			b.Count, b.Mixed.Grams(), b.Second.Grams(), b.SecondVolume.ML())
	}

	// Eleven plies in epoxy: 490 g in the laminate, 100:30 by mass (invented case 2; the split is closed form).
	c2, err := mixing.Plan([]mixing.Need{one("one", si.Grams(490), si.M2(0.89))}, resin(t, "epoxy-fast"), mixing.Options{At: si.Celsius(20), People: 2})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := c2.Total.Resin.Grams(), 490*1.25/1.3; !near(got, want, 1e-9) {
		t.Errorf("epoxy, part A: got %.3f g, want %.3f g", got, want)
	}
	if got, want := c2.Total.Second.Grams(), 490*1.25/1.3*0.3; !near(got, want, 1e-9) {
		t.Errorf("epoxy, part B: got %.3f g, want %.3f g", got, want)
	}
	if !near(c2.PerVolume, 36, 0.1) {
		t.Errorf("epoxy by volume: got 100:%.2f, want 100:36 (invented shelf)", c2.PerVolume)
	}
}

// Case 4: a kitchen scale of 1 g and a syringe of 0.01 ml.
func TestSmallestHonestBatch(t *testing.T) {
	s := mixing.SmallestHonest(si.Grams(1), si.ML(0.01), si.GramsPerML(1.12), si.Percent(2), si.Percent(10))
	if !near(s.Exact.Grams(), 15.6, 1e-9) || !near(s.Resin.Grams(), 20, 1e-9) {
		t.Errorf("got %.3f, rounded %.3f g; want 15.6 (closed form), rounded 20 g (invented case 4)", s.Exact.Grams(), s.Resin.Grams())
	}
	if !near(s.Second.Grams(), 0.40, 0.005) || !near(s.SecondVolume.ML(), 0.36, 0.005) || !s.Syringe {
		t.Errorf("got %.3f g = %.3f ml, syringe %v; want 0.40 g = 0.36 ml by syringe (invented case 4)", s.Second.Grams(), s.SecondVolume.ML(), s.Syringe)
	}
	// (0.4 - 0.0112)/21 and (0.4 + 0.0112)/19, closed form
	if !near(s.Low.Percent(), 1.85143, 1e-4) || !near(s.High.Percent(), 2.16421, 1e-4) {
		t.Errorf("got %.5f to %.5f %%, want 1.85143 to 2.16421 %%", s.Low.Percent(), s.High.Percent())
	}
	scaleOnly := mixing.SmallestHonest(si.Grams(0.1), 0, si.GramsPerML(1.12), si.Percent(2), si.Percent(10))
	if !near(scaleOnly.Exact.Grams(), 51, 1e-9) || scaleOnly.Syringe {
		t.Errorf("scale of 0.1 g alone: got %.4f g, want 51 g: 50 g for the catalyst and 1 g for the resin (closed form)", scaleOnly.Exact.Grams())
	}
}

// The rounded batch keeps within the allowed error, which is what "honest" says.
func TestTheSmallestBatchIsHonest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		scale := si.Grams(rapid.Float64Range(0.01, 5).Draw(t, "scale"))
		syringe := si.ML(rapid.Float64Range(0, 1).Draw(t, "syringe"))
		dose := si.Percent(rapid.Float64Range(0.5, 40).Draw(t, "dose"))
		within := si.Percent(rapid.Float64Range(2, 20).Draw(t, "within"))
		rho := si.GramsPerML(rapid.Float64Range(0.9, 1.3).Draw(t, "rho"))
		s := mixing.SmallestHonest(scale, syringe, rho, dose, within)
		if s.Resin < s.Exact-si.Grams(1e-9) || s.Resin > s.Exact+si.Grams(5.000001) {
			t.Fatalf("rounded %v from %v, want the next 5 g up", s.Resin, s.Exact)
		}
		// First-order errors add up to at most `within`; the quotient adds the square of it.
		e := float64(within)
		if float64(s.Low) < float64(dose)*(1-e) || float64(s.High) > float64(dose)*(1+e)/(1-e) {
			t.Fatalf("true dose %v to %v, wanted %v within %v", s.Low, s.High, dose, within)
		}
	})
}

func TestMeasuredDoses(t *testing.T) {
	r := resin(t, "polyester-laminating").TwoPart
	rho := r.HardenerDensity.Typical
	a := mixing.Split(r, si.Grams(344.375), si.Percent(1.5))
	m := mixing.Measure(a, si.Grams(0.1), si.ML(0.1), rho, mixing.CatalystWithin)
	if !near(m.Resin.Grams(), 344.4, 1e-9) || !near(m.Second.Grams(), 5.2, 1e-9) || !near(m.SecondVolume.ML(), 4.6, 1e-9) || m.Syringe || m.Off {
		t.Errorf("344.375 g at 1.5 %%: got %+v; want 344.4 g, 5.2 g, 4.6 ml, by scale, honest", m)
	}
	// 5.1/344.5 and 5.3/344.3, closed form
	if !near(m.Low.Percent(), 1.48041, 1e-4) || !near(m.High.Percent(), 1.53936, 1e-4) {
		t.Errorf("true dose: got %.5f to %.5f %%, want 1.48041 to 1.53936 %%", m.Low.Percent(), m.High.Percent())
	}
	tiny := mixing.Measure(mixing.Split(r, si.Grams(2.5), si.Percent(2)), si.Grams(1), 0, rho, mixing.CatalystWithin)
	if !tiny.Off || tiny.Second != 0 {
		t.Errorf("0.05 g on a 1 g scale: got %+v, want 0 shown and marked as not honest (invented case 4)", tiny)
	}
}

// A need below what can be measured is answered by mixing more and throwing it away.
func TestTooLittleToMeasure(t *testing.T) {
	plan, err := mixing.Plan([]mixing.Need{one("scratch", si.Grams(2), si.M2(0.003))}, resin(t, "polyester-laminating"),
		mixing.Options{At: si.Celsius(20), Scale: si.Grams(1), Syringe: si.ML(0.01), Dose: si.Percent(2), Waste: si.Percent(25)})
	if err != nil {
		t.Fatal(err)
	}
	s := plan.Sessions[0]
	if !near(s.Batches.Mixed.Grams(), 20, 1e-9) || s.Batches.Count != 1 || !near(s.Spare.Grams(), 17.5, 1e-9) {
		t.Errorf("got %d × %.2f g, spare %.2f g; want 1 × 20 g, 17.5 g thrown away", s.Batches.Count, s.Batches.Mixed.Grams(), s.Spare.Grams())
	}
	if !says(s.Verdicts, "throw the rest away") {
		t.Errorf("no verdict says so: %+v", s.Verdicts)
	}
}

// Without a working time the doses stand, and a verdict stops the work.
func TestTooColdStillGivesTheDoses(t *testing.T) {
	plan, err := mixing.Plan([]mixing.Need{one("cold", si.Grams(551), si.M2(0.56))}, resin(t, "polyester-laminating"),
		mixing.Options{At: si.Celsius(9)})
	if err != nil {
		t.Fatal(err)
	}
	s := plan.Sessions[0]
	if s.WorkingTime != 0 || check.Worst(s.Verdicts) != check.Stop || !strings.Contains(s.Words, "warm the resin and the hull") {
		t.Errorf("got %v, %q, %v", s.WorkingTime, s.Words, s.Verdicts)
	}
	if s.Batches.Count != 2 || !near(s.Batches.Second.Grams(), 5.166, 0.001) {
		t.Errorf("doses: got %d × %.3f g of catalyst, want 2 × 5.166 g", s.Batches.Count, s.Batches.Second.Grams())
	}
}

// One person with a large area and a fast hardener is bound by time, not by the cup.
func TestTheCrewBoundsTheBatch(t *testing.T) {
	plan, err := mixing.Plan([]mixing.Need{one("big", si.Grams(600), si.M2(1.2))}, resin(t, "epoxy-fast"),
		mixing.Options{At: si.Celsius(30), People: 1})
	if err != nil {
		t.Fatal(err)
	}
	s := plan.Sessions[0]
	// 1 × 3 m2/h × 0.6 × 11/60 h = 0.33 m2 of 1.2 m2: 750 g × 0.275 = 206.25 g, so 4 of 187.5 g (closed form)
	if !near(s.CrewLimit.Grams(), 206.25, 1e-6) || s.Batches.Count != 4 || !near(s.Batches.Mixed.Grams(), 187.5, 1e-6) {
		t.Errorf("got limit %.3f g, %d × %.3f g; want 206.25 g, 4 × 187.5 g", s.CrewLimit.Grams(), s.Batches.Count, s.Batches.Mixed.Grams())
	}
}

func TestAWasteTooSmallForTheToolsIsTold(t *testing.T) {
	plan, err := mixing.Plan([]mixing.Need{one("patch", si.Grams(71), si.M2(0.1))}, resin(t, "epoxy-slow"), mixing.Options{At: si.Celsius(25), Waste: si.Percent(10)})
	if err != nil {
		t.Fatal(err)
	}
	if !says(plan.Verdicts(), "the resin runs short") {
		t.Errorf("7 g of waste for a brush and a cup: got %+v", plan.Verdicts())
	}
	// Left to the tool, a small session gets what its brush and cup hold: 10 + 4 g and 3 % of 20 g.
	plan, err = mixing.Plan([]mixing.Need{one("patch", si.Grams(20), si.M2(0.03))}, resin(t, "epoxy-slow"), mixing.Options{At: si.Celsius(25)})
	if err != nil {
		t.Fatal(err)
	}
	if got := plan.Total.Mixed.Grams(); !near(got, 34.6, 1e-9) {
		t.Errorf("20 g in the laminate: %.3f g are wanted, want 34.6", got)
	}
}

// A scale too coarse for the job is answered with better tools, not with waste.
func TestAScaleTooCoarseStops(t *testing.T) {
	plan, err := mixing.Plan([]mixing.Need{one("patch", si.Grams(100), si.M2(0.1))}, resin(t, "polyester-laminating"),
		mixing.Options{At: si.Celsius(20), Scale: si.Grams(1)})
	if err != nil {
		t.Fatal(err)
	}
	if !says(plan.Verdicts(), "Get a scale of 0.1 g or finer") || plan.Sessions[0].Spare != 0 {
		t.Errorf("got %+v, spare %v; want a stop and nothing mixed to be thrown away", plan.Verdicts(), plan.Sessions[0].Spare)
	}
}

func TestADoseOutsideTheBandStopsThePlan(t *testing.T) {
	plan, err := mixing.Plan([]mixing.Need{one("s", si.Grams(500), si.M2(0.5))}, resin(t, "polyester-laminating"),
		mixing.Options{At: si.Celsius(20), Dose: si.Percent(4)})
	if err != nil {
		t.Fatal(err)
	}
	if check.Worst(plan.Verdicts()) != check.Stop || !says(plan.Verdicts(), "does not replace warmth") {
		t.Errorf("got %+v, want a stop", plan.Verdicts())
	}
}

func TestInputThatCannotBeMixedIsAnError(t *testing.T) {
	r := resin(t, "polyester-laminating")
	nan := math.NaN()
	rows := []struct {
		need mixing.Need
		o    mixing.Options
		want string
	}{
		{one("s", si.Mass(nan), si.M2(1)), mixing.Options{}, "cannot be mixed"},
		{one("s", si.Grams(-1), si.M2(1)), mixing.Options{}, "cannot be mixed"},
		{one("s", si.Grams(1), si.M2(1)), mixing.Options{Waste: -0.1}, "waste"},
		{one("s", si.Grams(1), si.M2(1)), mixing.Options{Scale: si.Mass(nan)}, "scale"},
		{one("s", si.Grams(1), si.M2(1)), mixing.Options{Largest: si.Grams(-3)}, "largest batch"},
		{one("s", si.Grams(1), si.M2(1)), mixing.Options{Dose: si.Percent(150)}, "catalyst"},
		{one("s", si.Grams(1), si.M2(1)), mixing.Options{WetOut: -1}, "m2/h"},
	}
	for _, row := range rows {
		if _, err := mixing.Plan([]mixing.Need{row.need}, r, row.o); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%+v, %+v: got %v, want an error with %q", row.need, row.o, err, row.want)
		}
	}
}

func says(vs []check.Verdict, words string) bool {
	return slices.ContainsFunc(vs, func(v check.Verdict) bool { return strings.Contains(v.Why, words) })
}

// drawn is a random set of sessions, options and a resin.
func drawn(t *rapid.T) ([]mixing.Need, catalog.Resin, mixing.Options) {
	cat := catalog.Default()
	r := rapid.SampledFrom(cat.Resins).Draw(t, "resin")
	var needs []mixing.Need
	for i := range rapid.IntRange(1, 3).Draw(t, "sessions") {
		n := mixing.Need{Name: fmt.Sprintf("session %d", i+1)}
		for j := range rapid.IntRange(1, 8).Draw(t, "plies") {
			n.Plies = append(n.Plies, mixing.PlyNeed{
				Label: fmt.Sprintf("P%d", j+1),
				Resin: si.Grams(rapid.Float64Range(0.5, 900).Draw(t, "resin g")),
				Area:  si.M2(rapid.Float64Range(0.001, 1).Draw(t, "area m2")),
			})
		}
		needs = append(needs, n)
	}
	return needs, r, mixing.Options{
		At:      si.Celsius(rapid.Float64Range(0, 40).Draw(t, "°C")),
		Waste:   si.Percent(rapid.Float64Range(1, 100).Draw(t, "waste")),
		Largest: si.Grams(rapid.Float64Range(20, 1000).Draw(t, "largest")),
		People:  rapid.IntRange(1, 4).Draw(t, "people"),
		Scale:   si.Grams(rapid.SampledFrom([]float64{0.01, 0.1, 1}).Draw(t, "scale")),
		Syringe: si.ML(rapid.SampledFrom([]float64{0, 0.01, 0.1}).Draw(t, "syringe")),
	}
}

// Mass in = mass out: what is mixed is what the plies hold, the losses and the spare.
func TestNoMassIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		needs, r, o := drawn(t)
		plan, err := mixing.Plan(needs, r, o)
		if err != nil {
			t.Fatal(err)
		}
		var total float64
		for i, s := range plan.Sessions {
			var laminate, losses float64
			for _, p := range needs[i].Plies {
				laminate += float64(p.Resin)
			}
			for _, l := range s.Losses {
				if l.Mass < 0 {
					t.Fatalf("%s: loss %v is negative", s.Name, l)
				}
				losses += float64(l.Mass)
			}
			mixed := float64(s.Batches.Mixed) * float64(s.Batches.Count)
			if !near(mixed, laminate+losses+float64(s.Spare), 1e-9*mixed) {
				t.Fatalf("%s: mixed %g, laminate %g, losses %g, spare %g", s.Name, mixed, laminate, losses, float64(s.Spare))
			}
			if !near(losses, laminate*float64(o.Waste), 1e-9*mixed) {
				t.Fatalf("%s: losses %g are not %v of %g", s.Name, losses, o.Waste, laminate)
			}
			parts := float64(s.Batches.Resin)
			if r.Kind == catalog.Epoxy {
				parts += float64(s.Batches.Second)
			}
			if !near(parts, float64(s.Batches.Mixed), 1e-12) {
				t.Fatalf("%s: parts %g do not make %g", s.Name, parts, float64(s.Batches.Mixed))
			}
			total += mixed
		}
		if !near(total, float64(plan.Mixed.Mixed), 1e-9*total) {
			t.Fatalf("total %g, want %g", float64(plan.Mixed.Mixed), total)
		}
	})
}

// The order in which plies are listed changes no amount.
func TestOrderOfPliesChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		needs, r, o := drawn(t)
		a, err := mixing.Plan(needs, r, o)
		if err != nil {
			t.Fatal(err)
		}
		var turned []mixing.Need
		for _, n := range needs {
			n.Plies = rapid.Permutation(n.Plies).Draw(t, "order")
			turned = append(turned, n)
		}
		b, err := mixing.Plan(turned, r, o)
		if err != nil {
			t.Fatal(err)
		}
		for i := range a.Sessions {
			x, y := a.Sessions[i].Batches, b.Sessions[i].Batches
			if x.Count != y.Count || !near(float64(x.Mixed), float64(y.Mixed), 1e-9) || !near(float64(x.Second), float64(y.Second), 1e-9) {
				t.Fatalf("session %d: %+v against %+v", i+1, x, y)
			}
		}
	})
}

// Batches are as few as the bounds allow, and none is above them unless less
// cannot be measured.
func TestBatchesAreTheFewest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		needs, r, o := drawn(t)
		plan, err := mixing.Plan(needs, r, o)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range plan.Sessions {
			limit := float64(o.Largest)
			if s.CrewLimit > 0 {
				limit = min(limit, float64(s.CrewLimit))
			}
			n := float64(s.Batches.Count)
			if float64(s.Need.Mixed)/n > limit*(1+1e-6) {
				t.Fatalf("%s: %g batches leave %g kg each, above %g", s.Name, n, float64(s.Need.Mixed)/n, limit)
			}
			if n > 1 && float64(s.Need.Mixed)/(n-1) < limit*(1-1e-6) {
				t.Fatalf("%s: %g batches would have done", s.Name, n-1)
			}
			if float64(s.Batches.Mixed) > limit*(1+1e-6) && s.Spare == 0 {
				t.Fatalf("%s: batch %g above %g without need", s.Name, float64(s.Batches.Mixed), limit)
			}
		}
	})
}

func TestMixTable(t *testing.T) {
	r := resin(t, "polyester-laminating").TwoPart
	table, err := mixing.Table(r, mixing.Options{Dose: si.Percent(1.5)}, mixing.TableTemps(), mixing.TableSizes())
	if err != nil {
		t.Fatal(err)
	}
	if len(table.Rows) != 5 || len(table.Sizes) != 5 {
		t.Fatalf("got %d rows and %d sizes, want 5 and 5", len(table.Rows), len(table.Sizes))
	}
	if cold := table.Rows[0]; cold.Time != 0 || !strings.Contains(cold.Words, "at 10 °C warm the resin") {
		t.Errorf("10 °C: got %v, %q; want words and no time", cold.Time, cold.Words)
	}
	if row := table.Rows[2]; row.Words != "at most 27 min" || len(row.ByDose) != 3 || !near(row.ByDose[2].Time.Minutes(), 20, 1e-6) {
		t.Errorf("20 °C: got %+v; want at most 27 min, and 20 min at 2 %% (invented shelf)", row)
	}
	if got := table.Sizes[1].Second.Grams(); !near(got, 1.5, 1e-9) {
		t.Errorf("100 g at 1.5 %%: got %.4f g, want 1.5 g", got)
	}
	if !table.Tools[0].Off || table.Tools[4].Off {
		t.Errorf("a 0.1 g scale: 50 g at 1.5 %% is not honest, 400 g is; got %v and %v", table.Tools[0].Off, table.Tools[4].Off)
	}
	if _, err := mixing.Table(r, mixing.Options{Dose: si.Percent(9)}, mixing.TableTemps(), mixing.TableSizes()); err == nil {
		t.Error("a table for 9 % of catalyst was made")
	}
}

// The worked lines carry the same numbers as the result.
func TestLinesSayWhatTheResultSays(t *testing.T) {
	plan, err := mixing.Plan([]mixing.Need{one("s1", si.Grams(551), si.M2(0.56))}, resin(t, "polyester-laminating"), mixing.Options{At: si.Celsius(20)})
	if err != nil {
		t.Fatal(err)
	}
	find := func(name string) working.Line {
		for _, l := range plan.Working {
			if strings.HasPrefix(l.Name, name) {
				return l
			}
		}
		t.Fatalf("no line %q", name)
		return working.Line{}
	}
	if l := find("resin to mix"); !near(l.Value, 688.75, 1e-9) {
		t.Errorf("got %v, want 688.75 g", l)
	}
	if l := find("catalyst for one batch by volume"); !near(l.Value, plan.Sessions[0].Batches.SecondVolume.ML(), 1e-12) {
		t.Errorf("got %v", l)
	}
}

func BenchmarkPlan(b *testing.B) {
	r := resin(b, "polyester-laminating")
	needs := []mixing.Need{one("s1", si.Grams(300), si.M2(0.3)), one("s2", si.Grams(251), si.M2(0.3))}
	for b.Loop() {
		if _, err := mixing.Plan(needs, r, mixing.Options{At: si.Celsius(20)}); err != nil {
			b.Fatal(err)
		}
	}
}
