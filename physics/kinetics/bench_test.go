package kinetics_test

import (
	"testing"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

func BenchmarkRate(b *testing.B) {
	for _, law := range []struct {
		name string
		law  kinetics.Law
	}{
		{"autocatalytic", kinetics.GlassPolyester1991()},
		{"kamal", cup()},
		{"kamal-braked", kinetics.Braked{Law: cup(), Brake: glassBrake()}},
		{"two-regime", kinetics.GraphiteEpoxy1982()},
		{"radical", polyester(2)},
	} {
		b.Run(law.name, func(b *testing.B) {
			sum, T := 0.0, si.Celsius(25)
			for i := range b.N {
				sum += law.law.Rate(float64(i%1000)/1000, T)
			}
			sink = sum
		})
	}
}

var sink float64

// A week of hourly weather on a hull.
func BenchmarkCureWeek(b *testing.B) {
	var knots []kinetics.Knot
	for i := range 169 {
		knots = append(knots, kinetics.Knot{Time: si.Hours(float64(i)), Temp: si.Celsius(14 + float64(i%24)/3)})
	}
	h := must(kinetics.NewHistory(knots...))
	law := kinetics.Braked{Law: cup(), Brake: glassBrake()}
	for b.Loop() {
		sink = must(kinetics.Cure(law, h, 0, []si.Time{si.Days(7)}))[0]
	}
}

func BenchmarkIsothermal(b *testing.B) {
	law := kinetics.Braked{Law: cup(), Brake: glassBrake()}
	for b.Loop() {
		sink = float64(must(kinetics.Isothermal(law, si.Celsius(20), 0, 0.7)))
	}
}

func BenchmarkAdiabatic(b *testing.B) {
	block := glassPolyesterBlock(90)
	for b.Loop() {
		sink = float64(must(block.Time(0.9)))
	}
}

func BenchmarkEquivalentAgeDay(b *testing.B) {
	var knots []kinetics.Knot
	for i := range 25 {
		knots = append(knots, kinetics.Knot{Time: si.Hours(float64(i)), Temp: si.Celsius(10 + float64(i)/2)})
	}
	h := must(kinetics.NewHistory(knots...))
	for b.Loop() {
		sink = float64(must(kinetics.EquivalentAge(si.KJPerMol(55), h, 0, si.Days(1), si.Celsius(20))))
	}
}
