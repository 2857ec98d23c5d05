package geom_test

import (
	"fmt"
	"math"
	"testing"

	"scarfwright/physics/geom"
)

// blob is the outline that bench/offsets/timing.py times in shapely too: 200
// vertices, three capes and many small waves.
func blob() geom.Shape {
	r := make(geom.Ring, 200)
	for i := range r {
		a := 2 * math.Pi * float64(i) / 200
		d := 150 + 35*math.Sin(3*a+0.4) + 14*math.Sin(7*a+1.1) + 5*math.Sin(19*a)
		r[i] = geom.Point{X: 1.35 * d * math.Cos(a), Y: d * math.Sin(a)}
	}
	s, err := geom.NewShape(r)
	if err != nil {
		panic(err)
	}
	return s
}

func BenchmarkTwelveOffsets(b *testing.B) {
	for _, c := range []struct {
		name  string
		shape geom.Shape
		step  float64
	}{
		{"blob_out", blob(), 12},
		{"blob_in", blob(), -4},
		{"ellipse_out", geom.Shape{geom.Ellipse(300, 200)}, 12},
		{"ellipse_in", geom.Shape{geom.Ellipse(300, 200)}, -4},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				for k := 1; k <= 12; k++ {
					if _, err := c.shape.Offset(c.step * float64(k)); err != nil {
						b.Fatal(err)
					}
				}
			}
		})
	}
}

// A traced outline of twelve points, as a job file has it.
func BenchmarkRoundOutTraced(b *testing.B) {
	s := mustShape(b, "-140,-20 -110,-75 -40,-95 10,-60 70,-90 130,-50 150,10 95,30 80,85 0,70 -60,100 -120,50")
	for b.Loop() {
		if _, err := s.RoundOut(25); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRoundOut(b *testing.B) {
	for _, r := range []float64{10, 25} {
		b.Run(fmt.Sprintf("blob_r%g", r), func(b *testing.B) {
			s := blob()
			for b.Loop() {
				if _, err := s.RoundOut(r); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkNewShape(b *testing.B) {
	r := blob()[0]
	for b.Loop() {
		if _, err := geom.NewShape(r); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkIntersect(b *testing.B) {
	s, t := blob(), geom.Shape{geom.Ellipse(300, 200)}
	for b.Loop() {
		if _, err := geom.Intersect(s, t); err != nil {
			b.Fatal(err)
		}
	}
}
