package ways

import (
	"testing"

	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

// The whole comparison of demo job 2, from nothing.
func BenchmarkSloop(b *testing.B) {
	d, err := demo.Parse("sloop")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := Compare(d, catalog.Default(), nil); err != nil {
			b.Fatal(err)
		}
	}
}

// One ply of the list changed, the comparison before it remembered.
func BenchmarkOnePly(b *testing.B) {
	d, err := demo.Parse("sloop")
	if err != nil {
		b.Fatal(err)
	}
	list := func(last string) []job.PlyRef {
		var out []job.PlyRef
		for range 10 {
			out = append(out, job.PlyRef{Class: "bx600"})
		}
		return append(out, job.PlyRef{Class: last})
	}
	for b.Loop() {
		b.StopTimer()
		var m Memory
		d.Choices.Plies = list("bx600")
		if _, err := Compare(d, catalog.Default(), &m); err != nil {
			b.Fatal(err)
		}
		d.Choices.Plies = list("bx300")
		b.StartTimer()
		if _, err := Compare(d, catalog.Default(), &m); err != nil {
			b.Fatal(err)
		}
	}
}
