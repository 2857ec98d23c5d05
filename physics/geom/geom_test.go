package geom_test

import (
	"math"
	"testing"

	"scarfwright/physics/geom"
)

func TestFirst(t *testing.T) {
	e := geom.Ellipse(300, 200)
	t.Log(len(e), e.Area()-math.Pi*150*100, e.Bounds())
	s := geom.Shape{e}
	for _, d := range []float64{-50, -120, 12, 72} {
		o, err := s.Offset(d)
		t.Log(d, err, len(o), o.Area()-(s.Area()+s.Perimeter()*d+math.Pi*d*d))
	}
	v, err := geom.TaperFrustum(geom.Shape{geom.Circle(100)}, 12, 6)
	t.Log(v, err)
	l, _ := geom.ParseRing("0,0 200,0 200,80 80,80 80,200 0,200")
	ls, err := geom.NewShape(l)
	t.Log(ls, err)
	ro, err := ls.RoundOut(25)
	t.Log(len(ro[0]), err, ro.Area())
	ps, err := ro.SplitStrips(3, 0.3)
	t.Log(err)
	for _, p := range ps {
		t.Log(p.Area())
	}
}
func BenchmarkX(b *testing.B) {
	s := geom.Shape{geom.Ellipse(300, 200)}
	for b.Loop() {
		s.Offset(60)
	}
}
