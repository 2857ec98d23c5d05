package panel

import (
	"math"
	"math/rand/v2"
	"testing"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// randomPanel draws a hull panel with up to three zones and a random patch.
func randomPanel(r *rand.Rand) Panel {
	between := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	ud := Ply{Ply: laminate.Ply{Lamina: laminate.Lamina{E1: si.GPa(30), E2: si.GPa(8), G12: si.GPa(3), Nu12: 0.27},
		Thickness: si.MM(0.6), Angle: si.Degrees(between(-90, 90))}, G13: si.GPa(3), G23: si.GPa(2.4)}
	any := []Ply{csm, roving, repairMat, repairRoving, ud}
	var base []Ply
	for range 3 + r.IntN(8) {
		base = append(base, any[r.IntN(len(any))])
	}
	w := between(0.25, 0.6)
	p := Panel{Length: si.M(w * between(1, 2.5)), Width: si.M(w), Pressure: si.KPa(between(3, 30)), Base: Centred(base...),
		Edges: AllEdges(Edge{Support: Support(r.IntN(2))})}
	a, b := w*between(0.12, 0.3), w*between(0.12, 0.3)
	c := Point{si.M((float64(p.Length) - 2.6*a) * between(-0.3, 0.3)), si.M((w - 2.6*b) * between(-0.3, 0.3))}
	for k := range r.IntN(4) {
		plies := append([]Ply(nil), base...)
		for range k + 1 {
			plies = append(plies, any[r.IntN(len(any))])
		}
		f := 1 - 0.2*float64(k)
		p.Zones = append(p.Zones, Zone{Outline: Ellipse(c, si.M(a*f), si.M(b*f), 0),
			Layup: Layup{Plies: plies, Bottom: p.Base.Bottom}})
	}
	return p
}

// The estimated error holds on random panels: the true one, against degree 7, is
// no larger. Independent computation only in part: the same program, much finer.
func TestEstimate(t *testing.T) {
	n, degree := 60, 7
	if testing.Short() {
		n, degree = 1, 6
	}
	r := rand.New(rand.NewPCG(7, 12))
	missW, missE, worst, worstW, sum := 0, 0, 0.0, 0.0, 0.0
	for i := range n {
		p := randomPanel(r)
		large := i%5 == 4
		a, err := Solve(p, Options{}, large)
		if err != nil {
			t.Fatal(i, err)
		}
		m, err := Prepare(p, Options{Degree: degree})
		if err != nil {
			t.Fatal(i, err)
		}
		truth, err := m.run(large)
		if err != nil {
			t.Fatal(i, err)
		}
		w, _ := truth.MaxDeflection()
		e := math.Abs(governing(truth))
		dw, de := math.Abs(float64(a.W-w)), math.Abs(math.Abs(a.worst())-e)
		if dw > float64(a.WError) {
			missW++
		}
		if de > a.StrainError {
			missE++
		}
		worst = math.Max(worst, de/e)
		if dw > float64(a.WError) || de > a.StrainError {
			t.Logf("%d: zones %d, w %.4f mm, off %.2e, estimated %.2e; strain %.4e, off %.2e, estimated %.2e", i, len(p.Zones),
				a.W.MM(), dw/float64(w), float64(a.WError)/float64(w), a.worst(), de/e, a.StrainError/e)
		}
		worstW = math.Max(worstW, dw/math.Abs(float64(w)))
		sum += a.StrainError / e / float64(n)
	}
	t.Logf("of %d panels, w beyond its estimate %d times, strain %d times;"+
		" worst errors %.2g and %.2g; mean estimate for strain %.2g",
		n, missW, missE, worstW, worst, sum)
	if missW > n/20 || missE > n/20 {
		t.Errorf("of %d panels, w beyond its estimate %d times, strain %d times", n, missW, missE)
	}
}

func governing(r *Result) float64 {
	s, c := r.Governing()
	return s.Strain[c]
}
