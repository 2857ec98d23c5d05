package laminate_test

import (
	"testing"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

func BenchmarkStiffnessAndFirstPlyFailure12(b *testing.B) {
	stack := plies(b, "[0/+-45/90/+-30]s", glassUD, si.MM(0.5))
	if len(stack) != 12 {
		b.Fatalf("%d plies", len(stack))
	}
	x, load := []laminate.Strength{glassStrength}, nx(si.NPerMM(1))
	b.ReportAllocs()
	for b.Loop() {
		if f := laminate.FirstPlyFailure(stack, x, load, laminate.TsaiWu); f.Ply < 0 {
			b.Fatal("nothing failed")
		}
	}
}

func BenchmarkStiffness12(b *testing.B) {
	stack := plies(b, "[0/+-45/90/+-30]s", glassUD, si.MM(0.5))
	b.ReportAllocs()
	for b.Loop() {
		laminate.NewStiffness(stack)
	}
}

func BenchmarkParseStack(b *testing.B) {
	for b.Loop() {
		if _, err := laminate.ParseStack("[0/+-45/90/+-30]s"); err != nil {
			b.Fatal(err)
		}
	}
}
