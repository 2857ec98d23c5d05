package kinetics_test

import (
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

const (
	rows = "independent computation: double precision in another language, inputs invented"
	bg   = "BogettiGillespie1991 constants, second-hand; the figure by independent computation in another language"
)

func TestArrheniusFigures(t *testing.T) {
	k := kinetics.GlassPolyester1991().K
	var figures []figure
	for _, r := range []struct{ T, k float64 }{{80, 1.072245e-4}, {90, 5.153463e-4}, {100, 2.276990e-3}, {110, 9.309819e-3}} {
		figures = append(figures, figure{"glass/polyester: rate constant in 1/s", k.K(si.Celsius(r.T)), r.k, rel(r.k, 1e-5), bg})
	}
	for _, r := range []struct{ cold, E float64 }{{10, 47.8}, {15, 49.5}, {20, 51.2}, {25, 52.9}} {
		E := must(kinetics.EnergyFor(2, si.Celsius(r.cold), si.Celsius(r.cold+10)))
		figures = append(figures, figure{"doubling over 10 K: E in kJ/mol", E.KJPerMol(), r.E, 0.05, rows})
	}
	for _, r := range []struct{ E, T, times float64 }{
		{50, 5, 4.26}, {50, 10, 2.91}, {50, 15, 2.01}, {50, 20, 1.41}, {50, 30, 0.717}, {50, 35, 0.520},
		{60, 5, 5.70}, {60, 10, 3.60}, {60, 15, 2.32}, {60, 20, 1.51}, {60, 30, 0.671}, {60, 35, 0.456},
	} {
		got := 1 / kinetics.RateRatio(si.KJPerMol(r.E), si.Celsius(r.T), si.Celsius(25))
		figures = append(figures, figure{"time at T over time at 25 C", got, r.times, 0.005, rows})
	}
	figures = append(figures,
		figure{"doubling from 15 to 25 C: 49.51 kJ/mol", must(kinetics.EnergyFor(2, si.Celsius(15), si.Celsius(25))).KJPerMol(), 49.51, rel(49.51, 1e-3), rows},
		figure{"halved over 10 F from 20 C: about 91 kJ/mol, a lost unit", must(kinetics.EnergyFor(2, si.Celsius(18), si.Celsius(18+10/1.8))).KJPerMol(), 91, 3, rows},
		figure{"E = 60 kJ/mol: 15 C takes 2.316 times as long as 25 C", kinetics.RateRatio(si.KJPerMol(60), si.Celsius(25), si.Celsius(15)), 2.316, rel(2.316, 1e-3), rows},
	)
	checkFigures(t, figures)
}

func TestGasConstant(t *testing.T) {
	near(t, "R = N_A k, both exact in the SI (from memory)", kinetics.R, 6.02214076e23*1.380649e-23, 1e-10)
}

func TestFromReferenceIsItsInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(1e-8, 1).Draw(t, "k")
		ref := si.Celsius(rapid.Float64Range(-10, 200).Draw(t, "ref"))
		E := si.KJPerMol(rapid.Float64Range(10, 180).Draw(t, "E"))
		T := si.Celsius(rapid.Float64Range(-10, 200).Draw(t, "T"))
		c := must(kinetics.FromReference(k, ref, E))
		near(t, "K at the reference", c.K(ref), k, 1e-12)
		near(t, "K elsewhere", c.K(T), k*kinetics.RateRatio(E, T, ref), 1e-11)
		if T > ref+1 {
			near(t, "energy back from two rates", float64(must(kinetics.EnergyFor(c.K(T)/k, ref, T))), float64(E), 1e-9)
		}
	})
}

func TestArrheniusRefuses(t *testing.T) {
	for what, err := range map[string]error{
		"rate 0":            second(kinetics.FromReference(0, si.Celsius(25), si.KJPerMol(50))),
		"no reference":      second(kinetics.FromReference(1e-4, 0, si.KJPerMol(50))),
		"E 0":               second(kinetics.FromReference(1e-4, si.Celsius(25), 0)),
		"E beyond reason":   second(kinetics.FromReference(1e-4, si.Celsius(25), si.KJPerMol(55e3))),
		"factor 1":          second(kinetics.EnergyFor(1, si.Celsius(15), si.Celsius(25))),
		"cold above hot":    second(kinetics.EnergyFor(2, si.Celsius(25), si.Celsius(15))),
		"negative absolute": second(kinetics.EnergyFor(2, -1, si.Celsius(15))),
	} {
		if err == nil {
			t.Errorf("%s: no error", what)
		}
	}
}

func second[T any](_ T, err error) error { return err }
