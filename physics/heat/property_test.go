package heat_test

import (
	"math"
	"runtime"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
)

// drawReaction is any law of the autocatalytic family, slow to violent.
func drawReaction(t *rapid.T) *heat.Reaction {
	k1 := math.Exp(rapid.Float64Range(-14, -6).Draw(t, "ln k1 at 25 C"))
	k2 := math.Exp(rapid.Float64Range(-12, -5).Draw(t, "ln k2 at 25 C"))
	E := rapid.Float64Range(30e3, 90e3).Draw(t, "E")
	m := rapid.Float64Range(0.3, 2).Draw(t, "m")
	n := rapid.Float64Range(0.8, 2.2).Draw(t, "n")
	r := &heat.Reaction{Heat: si.SpecificEnergy(rapid.Float64Range(1e3, 400e3).Draw(t, "H"))}
	at, drop := 2.0, 1.0
	if rapid.Bool().Draw(t, "jumps") {
		at = rapid.Float64Range(0.05, 0.9).Draw(t, "at")
		drop = rapid.Float64Range(0.1, 3).Draw(t, "by")
		r.Breaks = []float64{at}
	}
	r.Rate = func(a, T float64) float64 {
		f := math.Exp(-E/gasR*(1/T-1/298.15)) * (k1 + k2*pow(a, m)) * pow(1-a, n)
		if a > at {
			f *= drop
		}
		return f
	}
	return r
}

func drawWeather(t *rapid.T, hours int) heat.History {
	var ms []heat.Moment
	for h := 0; h <= hours; h += rapid.IntRange(1, 4).Draw(t, "h") {
		ms = append(ms, heat.Moment{Time: si.Hours(float64(h)), Temp: si.Celsius(rapid.Float64Range(-5, 45).Draw(t, "C"))})
	}
	return heat.Series(ms...)
}

func drawFace(t *rapid.T, hours int) heat.Face {
	switch rapid.IntRange(0, 3).Draw(t, "face") {
	case 0:
		return heat.Insulated()
	case 1:
		return heat.Prescribed(drawWeather(t, hours))
	}
	return heat.Convective(si.HeatTransfer(rapid.Float64Range(1, 40).Draw(t, "h")), drawWeather(t, hours))
}

func drawSlab(t *rapid.T, reactive bool) heat.Slab {
	const hours = 12
	s := heat.Slab{First: drawFace(t, hours), Last: drawFace(t, hours), Start: si.Celsius(rapid.Float64Range(0, 40).Draw(t, "start")), For: si.Hours(hours), Cells: 40}
	for range rapid.IntRange(1, 4).Draw(t, "layers") {
		l := heat.Layer{
			Thickness:    si.MM(rapid.Float64Range(1, 30).Draw(t, "mm")),
			Conductivity: si.Conductivity(rapid.Float64Range(0.03, 1).Draw(t, "k")),
			Density:      si.Density(rapid.Float64Range(60, 2200).Draw(t, "rho")),
			SpecificHeat: si.SpecificHeat(rapid.Float64Range(800, 2000).Draw(t, "c")),
		}
		if reactive && rapid.Bool().Draw(t, "reactive") {
			l.Reaction, l.Seed = drawReaction(t), rapid.Float64Range(0, 0.1).Draw(t, "seed")
		}
		s.Layers = append(s.Layers, l)
	}
	return s
}

func TestAnyStackInAnyWeather(t *testing.T) {
	var w heat.Workspace
	rapid.Check(t, func(t *rapid.T) {
		s := drawSlab(t, true)
		r, err := s.Run(&w)
		if err != nil {
			t.Fatal(err)
		}
		if !(r.Energy.Error <= 1e-3) {
			t.Errorf("energy closes to %.2g only: %+v", r.Energy.Error, r.Energy)
		}
		last := make([]float64, len(r.Depths()))
		for i := range 200 {
			p := r.Profile(r.End * si.Time(i) / 199)
			for j, a := range p.Degree {
				if a < last[j] || a > 1 {
					t.Fatalf("degree %g after %g at %v, %v", a, last[j], p.Depth[j], p.Time)
				}
				if !math.IsNaN(a) {
					last[j] = a
				}
				if !(p.Temp[j] > 0) || float64(p.Temp[j]) > float64(r.Peak.Temp)+0.2 {
					t.Fatalf("temperature %g K at %v, %v; peak %g K", float64(p.Temp[j]), p.Depth[j], p.Time, float64(r.Peak.Temp))
				}
			}
		}
	})
}

// What a run says it lost is h (T - air), integrated along its own faces by a rule
// that knows nothing of the scheme.
func TestLossIsTheFacesOwn(t *testing.T) {
	for i := range 5 {
		s := weatherMember(i)
		r := run(t, s)
		const n = 20000
		lost, dt := 0.0, float64(r.End)/n
		for j := range n {
			at := si.Seconds((float64(j) + 0.5) * dt)
			Ta := float64(weatherOf(i).At(at))
			lost += 8 * dt * (float64(r.TempAt(0, at)) + float64(r.TempAt(si.MM(30), at)) - 2*Ta)
		}
		near(t, "heat lost, J/m2", r.Energy.Lost, lost, 1e-3*lost)
	}
}

// Without a source no place becomes hotter than the start and the air have been,
// nor colder, but for the error of a few steps at the default tolerance of 0.05 K.
func TestInertStackStaysWithinItsWeather(t *testing.T) {
	var w heat.Workspace
	rapid.Check(t, func(t *rapid.T) {
		s := drawSlab(t, false)
		r, err := s.Run(&w)
		if err != nil {
			t.Fatal(err)
		}
		for i := range 50 {
			for j, T := range r.Profile(r.End * si.Time(i) / 49).Temp {
				if C := T.Celsius(); C < -5-0.2 || C > 45+0.2 {
					t.Fatalf("%g C at node %d", C, j)
				}
			}
		}
	})
}

func TestSymmetricStackStaysSymmetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSlab(t, true)
		s.Last = s.First
		back := slices.Clone(s.Layers)
		slices.Reverse(back)
		s.Layers = append(s.Layers, back...)
		r, err := s.Run(nil)
		if err != nil {
			t.Fatal(err)
		}
		for i := range 20 {
			p := r.Profile(r.End * si.Time(i) / 19)
			for j := range p.Temp {
				k := len(p.Temp) - 1 - j
				if d := math.Abs(float64(p.Temp[j] - p.Temp[k])); d > 0.02 {
					t.Fatalf("node %d and its mirror differ by %g K at %v", j, d, p.Time)
				}
			}
		}
	})
}

// A workspace has no memory: what ran in it before changes nothing.
func TestWorkspaceForgets(t *testing.T) {
	var w heat.Workspace
	s := setA(34, 66, false)
	first := run(t, s)
	for _, other := range []heat.Slab{bgA(25.4, 1e-3, 40), graphiteSlab(25.4, 30), setA(5, 9, true)} {
		if _, err := other.Run(&w); err != nil {
			t.Fatal(err)
		}
		again, err := s.Run(&w)
		if err != nil {
			t.Fatal(err)
		}
		if again.Peak != first.Peak || again.Energy != first.Energy || again.Steps != first.Steps {
			t.Errorf("after another slab: got %+v, want %+v", again.Peak, first.Peak)
		}
	}
}

func TestNoAllocationPerStep(t *testing.T) {
	var w heat.Workspace
	s := setA(34, 66, false)
	fine := s
	fine.Tolerance = 1e-4
	for _, s := range []heat.Slab{fine, s} {
		if _, err := s.Run(&w); err != nil {
			t.Fatal(err)
		}
	}
	count := func(s heat.Slab) float64 {
		return testing.AllocsPerRun(5, func() { _, _ = s.Run(&w) })
	}
	if rough, many := count(s), count(fine); rough != many || rough > 20 {
		t.Errorf("%g allocations in some 90 steps, %g in some 200; want the same few", rough, many)
	}
}

// weatherOf is a day like the one of set A, shifted and stretched from member to
// member, in hourly readings.
func weatherOf(i int) heat.History {
	var ms []heat.Moment
	for h := range 25 {
		T := 289.15 + 4*math.Sin(float64(i)) + (4+2*math.Cos(3*float64(i)))*math.Sin(2*math.Pi*(float64(h)-3)/24)
		ms = append(ms, heat.Moment{Time: si.Hours(float64(h)), Temp: si.Temp(T)})
	}
	return heat.Series(ms...)
}

func weatherMember(i int) heat.Slab {
	s := setA(34, 66, false)
	weather := weatherOf(i)
	s.First = heat.Convective(8, weather)
	s.Last, s.Start = s.First, weather.At(0)
	return s
}

func TestEnsembleKeepsItsOrder(t *testing.T) {
	peak := func(i int, w *heat.Workspace) (heat.Peak, error) {
		s := weatherMember(i)
		r, err := s.Run(w)
		if err != nil {
			return heat.Peak{}, err
		}
		return r.Peak, nil
	}
	one, err := heat.Ensemble(12, 1, peak)
	if err != nil {
		t.Fatal(err)
	}
	many, err := heat.Ensemble(12, runtime.GOMAXPROCS(0)+2, peak)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(one, many) {
		t.Errorf("got %v on many goroutines, want %v", many, one)
	}
	_, err = heat.Ensemble(3, 2, func(i int, w *heat.Workspace) (int, error) {
		_, err := (&heat.Slab{}).Run(w)
		return 0, err
	})
	if err == nil {
		t.Error("an error of a member was lost")
	}
}

func BenchmarkSetA(b *testing.B) {
	for _, c := range []struct {
		name   string
		slopes bool
	}{{"rate", false}, {"slopes", true}} {
		b.Run(c.name, func(b *testing.B) {
			var w heat.Workspace
			s := setA(34, 66, c.slopes)
			b.ReportAllocs()
			for b.Loop() {
				r, err := s.Run(&w)
				if err != nil {
					b.Fatal(err)
				}
				if math.Abs(r.Peak.Temp.Celsius()-119.18) > 0.05 || math.Abs(float64(r.Peak.Time)-12379) > 5 {
					b.Fatalf("peak %g C at %g s", r.Peak.Temp.Celsius(), float64(r.Peak.Time))
				}
			}
		})
	}
}

func BenchmarkEnsemble200(b *testing.B) {
	for b.Loop() {
		_, err := heat.Ensemble(200, 2, func(i int, w *heat.Workspace) (heat.Peak, error) {
			s := weatherMember(i)
			r, err := s.Run(w)
			if err != nil {
				return heat.Peak{}, err
			}
			return r.Peak, nil
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}
