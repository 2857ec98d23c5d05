package kinetics_test

import (
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

func glassPolyesterBlock(T0 float64) kinetics.Adiabatic {
	return kinetics.Adiabatic{Law: kinetics.GlassPolyester1991(), Heat: si.KJPerKg(77.5), C: 1260, Start: si.Celsius(T0)}
}

func TestAdiabaticFigures(t *testing.T) {
	var figures []figure
	for _, r := range []struct{ T0, to, min float64 }{
		{80, 0.1, 85.879}, {80, 0.9, 108.030}, {80, 0.99, 108.570},
		{90, 0.1, 18.115}, {90, 0.5, 22.949}, {90, 0.9, 23.271}, {90, 0.99, 23.441},
		{100, 0.1, 4.1529}, {100, 0.5, 5.3554}, {100, 0.9, 5.4518}, {100, 0.99, 5.5082},
	} {
		got := must(glassPolyesterBlock(r.T0).Time(r.to)).Minutes()
		figures = append(figures, figure{"glass/polyester, adiabatic from 0, min", got, r.min, rel(r.min, 4e-5), bg})
	}
	seeded := glassPolyesterBlock(90)
	seeded.From = 1e-6
	cup25 := kinetics.Adiabatic{Law: cup(), Heat: si.KJPerKg(330), C: 1900, Start: si.Celsius(25)}
	cup20 := cup25
	cup20.Start = si.Celsius(20)
	checkFigures(t, append(figures,
		figure{"rise H/c = 61.508 K", glassPolyesterBlock(90).Rise().Kelvins(), 61.508, 0.001, bg},
		figure{"from 90 C it ends at 151.508 C", glassPolyesterBlock(90).Temp(1).Celsius(), 151.508, 0.001, bg},
		figure{"from 90 C and a seed of 1e-6: half after 22.85447 min", must(seeded.Time(0.5)).Minutes(), 22.85447, 1e-5, bg},
		figure{"cup resin from 25 C gels after 33.901 min", must(cup25.Time(0.58)).Minutes(), 33.901, rel(33.901, 1e-4), rows},
		figure{"cup resin from 20 C gels after 48.065 min", must(cup20.Time(0.58)).Minutes(), 48.065, rel(48.065, 1e-4), rows},
	))
}

// The second way: stepping energy and cure in time, which knows nothing of the
// quadrature. A mass that heats itself is a law of one state, whose temperature
// goes with it; the integrator's own temperature is then idle.
type selfHeated struct{ kinetics.Adiabatic }

func (s selfHeated) Rate(a float64, _ si.Temp) float64 { return s.Law.Rate(a, s.Temp(a)) }
func (s selfHeated) Breaks() []float64                 { return kinetics.Breaks(s.Law) }
func (s selfHeated) Fresh() float64                    { return kinetics.Fresh(s.Law) }

func TestAdiabaticTwoWays(t *testing.T) {
	idle := must(kinetics.Constant(si.Celsius(0)))
	rapid.Check(t, func(t *rapid.T) {
		laws := []kinetics.Law{kinetics.GlassPolyester1991(), kinetics.GraphiteEpoxy1982(), cup(), polyester(2),
			kinetics.Braked{Law: cup(), Brake: glassBrake()}}
		b := kinetics.Adiabatic{
			Law:   rapid.SampledFrom(laws).Draw(t, "law"),
			Heat:  si.KJPerKg(rapid.Float64Range(0, 350).Draw(t, "H")),
			C:     si.SpecificHeat(rapid.Float64Range(900, 2000).Draw(t, "c")),
			Start: si.Celsius(rapid.Float64Range(15, 120).Draw(t, "T0")),
		}
		b.From = kinetics.Fresh(b.Law)
		to := rapid.Float64Range(0.02, 0.6).Draw(t, "to")
		want := must(b.Time(to))
		got, ok, err := kinetics.Reach(selfHeated{b}, idle, b.From, to, si.Scale(want, 2))
		if !ok || err != nil {
			t.Fatal(ok, err)
		}
		near(t, "by stepping", float64(got), float64(want), 1e-7)
		if b.Heat > 0 {
			if cold := must(kinetics.Isothermal(b.Law, b.Start, b.From, to)); want > si.Scale(cold, 1+1e-9) {
				t.Fatalf("%v in a mass that heats itself, %v in one that doesn't", want, cold)
			}
		}
	})
	// No heat: the isothermal time.
	b := glassPolyesterBlock(90)
	b.Heat = 0
	near(t, "H = 0", float64(must(b.Time(0.5))), float64(must(kinetics.GlassPolyester1991().Time(si.Celsius(90), 0, 0.5))), 1e-10)
}

// Using up inhibitor gives no heat.
func TestNoHeatBeforeTheCure(t *testing.T) {
	b := kinetics.Adiabatic{Law: polyester(2), Heat: si.KJPerKg(256), C: 1900, Start: si.Celsius(20), From: -1}
	for _, s := range []float64{-1, -0.3, 0} {
		near(t, "temperature while inhibitor is left", float64(b.Temp(s)), float64(b.Start), 1e-15)
	}
	near(t, "rise", b.Rise().Kelvins(), 256e3/1900, 1e-12)
	b.From = 0.4
	near(t, "rise still to come from 0.4", b.Rise().Kelvins(), 0.6*256e3/1900, 1e-12)
}

func TestAdiabaticRefuses(t *testing.T) {
	for what, b := range map[string]kinetics.Adiabatic{
		"no capacity":    {Law: cup(), Heat: 3e5, Start: si.Celsius(25)},
		"negative heat":  {Law: cup(), Heat: -3e5, C: 1900, Start: si.Celsius(25)},
		"no temperature": {Law: cup(), Heat: 3e5, C: 1900},
		"no law":         {Heat: 3e5, C: 1900, Start: si.Celsius(25)},
		"past the goal":  {Law: cup(), Heat: 3e5, C: 1900, Start: si.Celsius(25), From: 0.7},
	} {
		if got, err := b.Time(0.58); err == nil {
			t.Errorf("%s: %v, want an error", what, got)
		}
	}
}
