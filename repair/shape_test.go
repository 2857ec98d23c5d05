package repair_test

import (
	"fmt"
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/check"
	"scarfwright/repair/job"
)

// The plies' edges lie on the slope: every point of a ply's outline is as far
// from the cut-out as its width says. Grid and arcs allow 0.02 mm.
func TestEveryRingPointLiesAtItsDistance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r := drawn(t)
		d := r.Design
		if d == nil {
			return
		}
		cut := d.CutOut.Bounds()
		at := func(what string, s geom.Shape, reach float64) {
			if len(s) == 0 {
				t.Fatalf("%s has no outline", what)
			}
			for _, ring := range s {
				for _, p := range ring {
					if got := d.CutOut.Distance(p); math.Abs(got-reach) > 0.02 {
						t.Fatalf("%s: point %v is %.4f mm from the cut-out, want %.4f", what, p, got, reach)
					}
				}
			}
		}
		at("feather edge", d.Edge, d.Taper.MM())
		for _, p := range d.Plies {
			if p.Layer > 0 {
				at(p.Label, p.Outline, (p.Width.MM()-cut.Width())/2)
			}
		}
	})
}

// Nested plies step outward by what they say, and the last ends on the feather edge.
func TestTheStepsAddUpToTheTaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r := drawn(t)
		if r.Design == nil {
			return
		}
		sum, laid := map[string]float64{}, map[int]int{}
		for _, p := range r.Design.Plies {
			if p.Layer > 0 {
				sum[p.Face] += p.Overlap.MM()
				laid[p.Layer]++
			}
		}
		for face, got := range sum {
			if math.Abs(got-r.Design.Taper.MM()) > 1e-6 {
				t.Fatalf("%s: the steps add up to %.4f mm, the taper is %.4f", face, got, r.Design.Taper.MM())
			}
		}
		// Whichever faces they are laid from, the plies are the repair's, each once.
		if len(laid) != len(r.Design.Repair.Layers) {
			t.Fatalf("%d layers laid of %d", len(laid), len(r.Design.Repair.Layers))
		}
		for layer, n := range laid {
			if n != 1 {
				t.Fatalf("layer %d is laid %d times", layer, n)
			}
		}
	})
}

func TestMoreTaperTakesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r := drawn(t)
		if r.Design == nil {
			return
		}
		os := r.Design.Options
		for i := 1; i < len(os); i++ {
			a, b := os[i-1], os[i]
			if a.Ratio >= b.Ratio || a.Ground >= b.Ground || a.Bond >= b.Bond || a.Dust >= b.Dust || a.Cloth >= b.Cloth || a.Width >= b.Width || a.Left < b.Left-1e-9 {
				t.Fatalf("%g:1 against %g:1: %+v, %+v", a.Ratio, b.Ratio, a, b)
			}
		}
	})
}

// The options' quick sum of ply areas is the plies' own, for outlines without dents.
func TestTheChosenOptionIsTheDesign(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, r := drawn(t)
		if r.Design == nil {
			return
		}
		var cloth si.Area
		for _, p := range r.Design.Plies {
			if p.Layer > 0 {
				cloth += p.Area
			}
		}
		chosen := 0
		for _, o := range r.Design.Options {
			if !o.Chosen {
				continue
			}
			chosen++
			if o.Taper != r.Design.Taper {
				t.Fatalf("taper %v in the options, %v in the design", o.Taper, r.Design.Taper)
			}
			if len(d.Damage.Dead.Points) == 0 && !near(o.Cloth, cloth, 1e-3) {
				t.Fatalf("cloth %v in the options, %v in the plies (%s, from %s)", o.Cloth, cloth, r.Design.Repair.Layers[0].Class, r.Design.Sides)
			}
		}
		if chosen != 1 {
			t.Fatalf("%d options are the chosen one", chosen)
		}
	})
}

// No way over the taper is shorter than the taper; round a circle all are equal.
func TestTheTaperAtTheClockPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, r := drawn(t)
		if r.Design == nil {
			return
		}
		for _, c := range r.Design.Clocks {
			got, want := c.Taper.MM(), r.Design.Taper.MM()
			if got < want-0.02 || d.Damage.Dead.Circle > 0 && got > want+0.05 {
				t.Fatalf("%s: %.4f mm, nominal %.4f", c.Hour, got, want)
			}
			if math.Abs((c.ToEdge - c.ToCut - c.Taper).MM()) > 1e-9 {
				t.Fatalf("%s: %v to %v is not %v", c.Hour, c.ToCut, c.ToEdge, c.Taper)
			}
		}
	})
}

// The four edges of a panel are lines, so a clearance is a difference of bounds.
func TestClearancesToThePanelsEdges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, r := drawn(t)
		if r.Design == nil {
			return
		}
		w, h, b := d.Panel.Long.MM()/2, d.Panel.Short.MM()/2, r.Design.Edge.Bounds()
		for i, want := range []float64{w - b.Max.X, w + b.Min.X, h - b.Max.Y, h + b.Min.Y} {
			c := r.Design.Clearances[i]
			if math.Abs(c.Left.MM()-want) > 1e-6 {
				t.Fatalf("%s: got %.4f mm, want %.4f", c.What, c.Left.MM(), want)
			}
			v := verdict(nopTB{}, r, "taper to "+c.What)
			if (v.State == check.Stop) != (c.Left <= 0) {
				t.Fatalf("%s: %.4f mm left is %s", c.What, c.Left.MM(), v.State)
			}
		}
		// The stringer is a line across the panel: what is left is never more than the edge's distance to it.
		s := r.Design.Clearances[4]
		f := d.Panel.Features[0]
		from, to := geom.Point{X: f.From.X.MM(), Y: f.From.Y.MM()}, geom.Point{X: f.To.X.MM(), Y: f.To.Y.MM()}
		if gap := r.Design.Edge.DistanceToSegment(from, to); (gap == 0) != (s.Left <= 0) || gap > 0 && math.Abs(gap-s.Left.MM()) > 1e-6 {
			t.Fatalf("stringer: got %.4f mm, the edge is %.4f from it", s.Left.MM(), gap)
		}
	})
}

// nopTB lets helpers for tests be used within a property.
type nopTB struct{ testing.TB }

func (nopTB) Helper()                   {}
func (nopTB) Fatalf(f string, a ...any) { panic(fmt.Sprintf(f, a...)) }

// The plies that were there, put back, are as stiff and as thick as they were.
func TestTheSamePliesAreAsStiff(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := anyJob(t)
		d.Laminate.Plies, d.Laminate.Thickness, d.Laminate.Core, d.Laminate.Inner = draws{t}.plies("original", 12), job.Range{}, nil, nil
		d.Damage.Depth, d.Damage.Kind = "through", "hole"
		d.Choices.Plies, d.Choices.Order = d.Laminate.Plies, "" // largest first would turn the kinds
		r, err := repair.Plan(d, catalogue)
		if err != nil {
			t.Skip(err)
		}
		p := r.Design.Proposals[0]
		if math.Abs(p.StiffnessRatio-1) > 1e-9 || math.Abs(p.ThicknessRatio-1) > 1e-9 || p.Filler > 1e-12 || !p.Chosen {
			t.Fatalf("got %+v, want ratio 1", p)
		}
	})
}

// Partial depth put back with what was cut is the whole laminate again, from either face.
func TestAPartialDepthPutBackIsTheWhole(t *testing.T) {
	for _, side := range []string{"outside", "inside"} {
		d := describe(t, "day-launch")
		d.Damage.Kind, d.Damage.Depth, d.Damage.Access, d.Choices.Taper = "gouge", "partial", side, ""
		d.Damage.Deep = si.MM(1.6) // csm300 and csm450 from outside; csm450 and wr600 from inside
		d.Choices.Plies = []job.PlyRef{{Class: "csm300"}, {Class: "csm450"}}
		if side == "inside" {
			d.Choices.Plies = []job.PlyRef{{Class: "wr600"}, {Class: "csm450"}}
		}
		r := planned(t, d)
		if p := r.Design.Proposals[0]; math.Abs(p.StiffnessRatio-1) > 1e-9 || math.Abs(p.ThicknessRatio-1) > 1e-9 {
			t.Errorf("from %s: got %+v, want 1 and 1", side, p)
		}
		first := r.Design.Plies[0]
		if want := map[string]string{"outside": "csm450", "inside": "wr600"}[side]; first.Class != want || first.Face != side {
			t.Errorf("from %s: the deepest ply is %s from %s, want %s", side, first.Class, first.Face, want)
		}
	}
}

func TestFromBothFacesEachTaperIsHalf(t *testing.T) {
	d := describe(t, "day-launch")
	one := planned(t, d).Design
	d.Choices.Taper = "both"
	two := planned(t, d).Design
	if math.Abs(two.Taper.MM()-one.Taper.MM()/2) > 1e-9 {
		t.Errorf("taper: got %v, want half of %v", two.Taper, one.Taper)
	}
	// Five plies, the middle one halfway: from outside the outer three, deepest (layer 3) first; then 4 and 5.
	var got []int
	for _, p := range two.Plies {
		got = append(got, p.Layer)
	}
	if want := []int{3, 2, 1, 0, 4, 5, 0}; !reflect.DeepEqual(got, want) {
		t.Errorf("layers in laying order, 0 a cover: got %v, want %v", got, want)
	}
	face := map[int]string{} // nobody laminates both faces at once
	for _, p := range two.Plies {
		if f, ok := face[p.Session]; ok && f != p.Face {
			t.Errorf("session %d is laid from both faces", p.Session)
		}
		face[p.Session] = p.Face
	}
}
