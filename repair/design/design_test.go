package design_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/design"
	"scarfwright/repair/job"
	"scarfwright/repair/survey"
)

func ExampleTaper() {
	g, _ := design.Taper(geom.Shape{geom.Circle(100)}, si.MM(6), 12)
	fmt.Printf("edge %.0f mm across, %.0f ml of dust\n", g.Edge.Bounds().Width(), g.Volume.ML())
	// Output: edge 244 mm across, 100 ml of dust
}

// Round a circle the taper is the frustum of a cone (closed form).
func TestTaperRoundACircle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		radius := rapid.Float64Range(10, 400).Draw(t, "radius")
		thick := rapid.Float64Range(0.5, 25).Draw(t, "thickness")
		ratio := rapid.Float64Range(design.RatioLeast, design.RatioMost).Draw(t, "ratio")
		g, err := design.Taper(geom.Shape{geom.Circle(2 * radius)}, si.MM(thick), ratio)
		if err != nil {
			t.Fatal(err)
		}
		outer, bond, volume := geom.ConeFrustum(radius, ratio, thick)
		dust := volume/1000 - math.Pi*radius*radius*thick/1000
		for what, pair := range map[string][2]float64{
			"outer radius":  {g.Edge.Bounds().Width() / 2, outer},
			"bond area":     {g.Bond.MM2(), bond},
			"plan area":     {g.Plan.MM2(), math.Pi * (outer*outer - radius*radius)},
			"volume":        {g.Volume.ML(), dust},
			"bond per edge": {design.BondPerEdge(si.MM(thick), ratio).MM(), math.Hypot(thick, outer-radius)},
		} {
			// A circle is drawn as a polygon within 0.01 mm.
			if tol := 1e-3*pair[1] + 0.02; math.Abs(pair[0]-pair[1]) > tol {
				t.Fatalf("%s of r %.2f, t %.2f, %.2f:1: got %.4f, want %.4f", what, radius, thick, ratio, pair[0], pair[1])
			}
		}
	})
}

// Round a convex outline: A(d) = A + P d + π d², so V = P R t²/2 + π R² t³/3 (Steiner; closed form).
func TestTaperRoundARectangle(t *testing.T) {
	g, err := design.Taper(geom.Shape{geom.Rectangle(200, 100, 0)}, si.MM(5), 12)
	if err != nil {
		t.Fatal(err)
	}
	plan := 600*60 + math.Pi*60*60
	volume := (600*12*25/2.0 + math.Pi*144*125/3) / 1000
	if math.Abs(g.Plan.MM2()-plan) > plan*1e-4 || math.Abs(g.Volume.ML()-volume) > volume*1e-4 {
		t.Errorf("got %.1f mm² and %.3f ml, want %.1f and %.3f", g.Plan.MM2(), g.Volume.ML(), plan, volume)
	}
	// Ground from both faces at half the depth, the reach halves and the dust less than halves each.
	half, err := design.Taper(geom.Shape{geom.Rectangle(200, 100, 0)}, si.MM(2.5), 12)
	if err != nil {
		t.Fatal(err)
	}
	if want := (600*12*6.25/2.0 + math.Pi*144*15.625/3) / 1000; math.Abs(half.Volume.ML()-want) > want*1e-4 {
		t.Errorf("half the depth: got %.4f ml, want %.4f", half.Volume.ML(), want)
	}
}

func TestCode(t *testing.T) {
	for _, row := range []struct{ classes, want string }{
		{"csm450", "CSM450"},
		{"csm450 bxm800 csm450", "CSM450 / BXM800 / CSM450"},
		{"bx600 bx600", "BX600 / BX600"},
		{"bx600 bx600 bx600 csm300", "3 × BX600 / CSM300"},
		{"", ""},
	} {
		if got := design.Code(strings.Fields(row.classes)); got != row.want {
			t.Errorf("%s: got %s, want %s", row.classes, got, row.want)
		}
	}
}

// base is a round hole of 200 mm through a mat-and-roving skin, in the middle of its panel.
func base() job.Description {
	return job.Description{
		Panel:    job.Panel{Place: "side", Long: si.MM(900), Short: si.MM(600)},
		Laminate: job.Laminate{Fibre: "glass", Known: "edge", Plies: refs("csm300 csm450 wr600 csm450")},
		Damage:   job.Damage{Kind: "hole", Depth: "through", Access: "both", Dead: &job.Outline{Circle: si.MM(200)}},
		Shelf:    job.Shelf{Resin: "polyester-laminating", Cloth: []string{"csm300", "csm450", "bxm800"}},
	}
}

func refs(classes string) []job.PlyRef {
	var out []job.PlyRef
	for _, c := range strings.Fields(classes) {
		out = append(out, job.PlyRef{Class: c})
	}
	return out
}

func plan(t testing.TB, change func(*job.Description)) design.Result {
	t.Helper()
	d := base()
	change(&d)
	r, err := design.Plan(d, survey.Classify(d), catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestDefaults(t *testing.T) {
	r := plan(t, func(*job.Description) {})
	if r.Ratio != 12 || r.Sides != "outside" || r.Order != "smallest first" {
		t.Errorf("got %g:1 from %s, %s", r.Ratio, r.Sides, r.Order)
	}
	if inside := plan(t, func(d *job.Description) { d.Damage.Access = "inside" }); inside.Sides != "inside" {
		t.Errorf("reached from inside: ground from %s", inside.Sides)
	}
	if cover := r.Plies[len(r.Plies)-1]; cover.Class != "csm300" || cover.Overlap != si.MM(25) || cover.Layer != 0 {
		t.Errorf("cover: got %+v, want the lightest mat, 25 mm beyond", cover)
	}
	none := plan(t, func(d *job.Description) { d.Choices.Cover = "none" })
	if len(none.CoverEdge) != 0 || none.Plies[len(none.Plies)-1].Layer == 0 {
		t.Error("a cover although none was wanted")
	}
}

// From inside the outermost ply lies at the bottom of the taper.
func TestTheDeepestPlyIsTheSmallest(t *testing.T) {
	for _, row := range []struct {
		access string
		layer  int // of the repair laid first
	}{{"outside", 5}, {"inside", 1}} {
		r := plan(t, func(d *job.Description) {
			d.Damage.Access, d.Choices.Plies = row.access, refs("csm300 csm450 wr600 csm450 csm450")
		})
		if p := r.Plies[0]; p.Layer != row.layer || p.Face != row.access {
			t.Errorf("from %s: layer %d is laid first, from %s; want %d", row.access, p.Layer, p.Face, row.layer)
		}
		for i := 1; i < 5; i++ {
			if r.Plies[i].Area <= r.Plies[i-1].Area {
				t.Errorf("from %s: ply %d is no larger than the one before", row.access, i+1)
			}
		}
		large := plan(t, func(d *job.Description) {
			d.Damage.Access, d.Choices.Plies, d.Choices.Order = row.access, refs("csm300 csm450 wr600 csm450 csm450"), "largest first"
		})
		// The pieces are laid the other way round: the kinds are turned with them.
		if p := large.Plies[0]; p.Layer != row.layer || p.Class != r.Plies[4].Class || p.Area != r.Plies[4].Area {
			t.Errorf("from %s, largest first: %s, layer %d is laid first; want the piece laid last before, now at layer %d", row.access, p.Class, p.Layer, row.layer)
		}
	}
}

// A ply on a slope reaches as far as its upper face has climbed: 12 × that height
// (closed form; the polygons of both circles are within 0.01 mm on each side).
func TestEachPlyEndsOnTheSlope(t *testing.T) {
	r := plan(t, func(d *job.Description) { d.Choices.Plies = d.Laminate.Plies })
	var climbed si.Length
	for _, p := range r.Plies[:4] {
		climbed += p.Thickness
		if want := 200 + 2*12*climbed.MM(); math.Abs(p.Width.MM()-want) > 0.05 {
			t.Errorf("%s: got %.3f mm across, want %.3f", p.Label, p.Width.MM(), want)
		}
	}
}

func TestStitchedClothIsTurnedToTheRovingItReplaces(t *testing.T) {
	for _, row := range []struct{ roving, want float64 }{{0, 45}, {45, 0}, {90, 45}, {-45, 0}, {30, 75}, {-30, 15}} {
		r := plan(t, func(d *job.Description) { d.Laminate.Plies[2].Angle = si.Degrees(row.roving) })
		for _, p := range r.Plies {
			if p.Class == "bxm800" && math.Abs(p.Angle.Degrees()-row.want) > 1e-9 {
				t.Errorf("roving at %g°: bxm800 is cut at %.1f°, want %g° (its ±45° fibres along the roving's)", row.roving, p.Angle.Degrees(), row.want)
			}
			if p.Class != "bxm800" && p.Angle != 0 {
				t.Errorf("mat cut at %.1f°", p.Angle.Degrees())
			}
		}
	}
}

// A piece passes the hole's narrow way less 10 mm each side: 160 × 110 mm with a
// lap of 40 mm is 240 × 190 mm, and 190 over 90 mm makes three strips (closed form).
func TestBackingPassesTheHole(t *testing.T) {
	r := plan(t, func(d *job.Description) {
		d.Damage.Access = "outside"
		d.Damage.Dead = &job.Outline{Rectangle: []si.Length{si.MM(160), si.MM(110)}, Corner: si.MM(10)}
	})
	b := r.Backing
	if len(b.Pieces) != 3 || math.Abs(b.Width.MM()-240) > 0.02 || math.Abs(b.Height.MM()-190) > 0.02 {
		t.Fatalf("got %d pieces of a backing %.1f × %.1f mm, want 3 of 240 × 190", len(b.Pieces), b.Width.MM(), b.Height.MM())
	}
	sum := 0.0
	for _, p := range b.Pieces {
		sum += p.Area()
		if w, _ := p.MinWidth(); w > 90.01 {
			t.Errorf("a piece %.1f mm wide does not pass 90 mm", w)
		}
	}
	if math.Abs(sum-b.Outline.Area()) > 1e-3*sum {
		t.Errorf("the pieces are %.0f mm², the backing %.0f", sum, b.Outline.Area())
	}
	// With room behind for the whole length it goes in on edge: 190 over 174 mm, two pieces.
	deep := plan(t, func(d *job.Description) {
		d.Damage.Access, d.Damage.Reach = "outside", si.MM(320)
		d.Damage.Dead = &job.Outline{Rectangle: []si.Length{si.MM(160), si.MM(110)}, Corner: si.MM(10)}
	}).Backing
	if len(deep.Pieces) != 2 || !strings.Contains(deep.How, "on edge") {
		t.Errorf("with 320 mm behind: got %d pieces, %s", len(deep.Pieces), deep.How)
	}
	if plan(t, func(*job.Description) {}).Backing != nil {
		t.Error("a backing where both faces are in reach")
	}
}

// R = c²/(8h) + h/2 and rise = R - √(R² - (w/2)²) (closed form).
func TestCurvature(t *testing.T) {
	r := plan(t, func(d *job.Description) { d.Panel.Chord, d.Panel.Sagitta = si.MM(600), si.MM(15) })
	radius := 600.0*600/(8*15) + 7.5
	half := r.Edge.Bounds().Width() / 2
	if math.Abs(r.Radius.MM()-radius) > 1e-6 || math.Abs(r.Sagitta.MM()-(radius-math.Sqrt(radius*radius-half*half))) > 1e-6 {
		t.Errorf("got radius %.3f, rise %.4f mm", r.Radius.MM(), r.Sagitta.MM())
	}
	if flat := plan(t, func(*job.Description) {}); flat.Radius != 0 || flat.Sagitta != 0 {
		t.Errorf("no batten: got radius %v, rise %v", flat.Radius, flat.Sagitta)
	}
}

// A thickness alone is planned, with a spread that holds the likely value (docs/decisions/0012).
func TestThicknessAlone(t *testing.T) {
	r := plan(t, func(d *job.Description) {
		d.Laminate.Plies, d.Laminate.Thickness = nil, job.Range{Low: si.MM(5), High: si.MM(6)}
	})
	if !r.Original.Assumed || math.Abs(r.Original.Thickness.MM()-5.5) > 1e-9 || r.Original.Low != si.MM(5) || r.Original.High != si.MM(6) {
		t.Errorf("got %+v, want 5.5 mm assumed, 5 to 6", r.Original)
	}
	p := r.Proposals[0]
	if !(p.Low < p.StiffnessRatio && p.StiffnessRatio < p.High) {
		t.Errorf("stiffness ratio %.3f outside %.3f to %.3f", p.StiffnessRatio, p.Low, p.High)
	}
	if !strings.Contains(strings.Join(r.Assumptions, "\n"), "known by thickness only") {
		t.Errorf("assumptions: %q", r.Assumptions)
	}
}

// A feature is as long as it is drawn: a skin fitting beside the repair is as far
// as its near end, though the line through it would cross the middle.
func TestAFeatureIsAsLongAsItIsDrawn(t *testing.T) {
	r := plan(t, func(d *job.Description) {
		d.Panel.Features = []job.Feature{{What: "through-hull", From: job.Point{X: si.MM(300)}, To: job.Point{X: si.MM(400)}}}
	})
	c := r.Clearances[4]
	if want := 300 - 100 - r.Taper.MM(); c.What != "through-hull" || math.Abs(c.Left.MM()-want) > 0.05 || math.Abs((c.Left-c.Cover).MM()-25) > 0.05 {
		t.Errorf("got %+v, want %.2f mm left, 25 less from the cover (closed form)", c, want)
	}
	across := plan(t, func(d *job.Description) {
		d.Panel.Features = []job.Feature{{What: "stringer", From: job.Point{X: si.MM(-400), Y: si.MM(50)}, To: job.Point{X: si.MM(400), Y: si.MM(50)}}}
	})
	if got, want := across.Clearances[4].Left.MM(), -(100 + across.Taper.MM() - 50); math.Abs(got-want) > 0.05 {
		t.Errorf("a stringer 50 mm from the middle: got %.2f mm, want %.2f (closed form)", got, want)
	}
}

// From both faces the options count both: twice one face at half the depth.
func TestTheOptionsCountBothFaces(t *testing.T) {
	r := plan(t, func(d *job.Description) { d.Choices.Taper = "both" })
	for _, o := range r.Options {
		g, err := design.Taper(r.CutOut, r.Depth/2, o.Ratio)
		if err != nil {
			t.Fatal(err)
		}
		for what, pair := range map[string][2]float64{
			"ground": {float64(o.Ground), 2 * float64(g.Plan)}, "bond": {float64(o.Bond), 2 * float64(g.Bond)}, "dust": {float64(o.Dust), 2 * float64(g.Volume)},
		} {
			if math.Abs(pair[0]-pair[1]) > 1e-9*pair[1] {
				t.Errorf("%g:1: %s: got %g, want %g", o.Ratio, what, pair[0], pair[1])
			}
		}
	}
}

// The proposals never fall short of what they claim.
func TestProposals(t *testing.T) {
	for _, cloth := range [][]string{{"csm450"}, {"bx300"}, {"csm300", "bxm800"}, {"wr600", "csm450", "csm225"}} {
		r := plan(t, func(d *job.Description) { d.Shelf.Cloth = cloth })
		for _, p := range r.Proposals {
			if strings.Contains(p.Name, "stiffness") && p.StiffnessRatio < 1 {
				t.Errorf("%v: %s: %s has ratio %.3f", cloth, p.Name, p.Code, p.StiffnessRatio)
			}
			for _, c := range p.Classes {
				if !strings.Contains(strings.Join(cloth, " "), c) {
					t.Errorf("%v: %s proposes %s, which is not on the shelf", cloth, p.Name, c)
				}
			}
			if p.Filler > 0 && math.Abs((p.Thickness+p.Filler-r.Depth).MM()) > 1e-9 {
				t.Errorf("%v: %s: %v and %v of filler for %v", cloth, p.Name, p.Thickness, p.Filler, r.Depth)
			}
		}
	}
}

// The sandwich's inner skin, reached from inside, is the one that is renewed.
func TestTheSkinInReachIsRenewed(t *testing.T) {
	for access, want := range map[string]string{"outside": "csm300 csm450 wr600 csm450", "inside": "bx450 csm225"} {
		r := plan(t, func(d *job.Description) {
			d.Laminate.Core, d.Laminate.Inner = &job.Core{Class: "foam80", Thickness: si.MM(12)}, refs("bx450 csm225")
			d.Damage.Kind, d.Damage.Depth, d.Damage.Access = "wet core", "skin and core", access
		})
		var got []string
		for _, l := range r.Original.Layers {
			got = append(got, l.Class)
		}
		if strings.Join(got, " ") != want || r.Core == nil {
			t.Errorf("from %s: got %v, core %v; want %s", access, got, r.Core, want)
		}
		if r.Core.Thickness != si.MM(12) || math.Abs(float64(r.Core.Volume)-float64(r.Core.Area)*0.012) > 1e-15 {
			t.Errorf("core: %+v", r.Core)
		}
	}
}
