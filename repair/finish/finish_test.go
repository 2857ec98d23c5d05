package finish_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/finish"
	"scarfwright/repair/job"
)

func ExampleMarkVolume() {
	v := finish.MarkVolume(job.Mark{Kind: "scratch", Long: si.MM(380), Wide: si.MM(8), Deep: si.MM(0.6)})
	fmt.Printf("%.2f ml\n", v.ML())
	// Output: 0.91 ml
}

func TestMarkVolume(t *testing.T) {
	for _, row := range []struct {
		what string
		mark job.Mark
		want float64 // ml
		from string
	}{
		{"V of 8 × 0.6 mm, 380 mm long", job.Mark{Kind: "scratch", Long: si.MM(380), Wide: si.MM(8), Deep: si.MM(0.6)}, 0.912, "closed form: l w d/2"},
		{"bowl of 25 × 12 mm, 1.5 mm deep", job.Mark{Kind: "ding", Long: si.MM(25), Wide: si.MM(12), Deep: si.MM(1.5)}, 0.176715, "closed form: π l w d/8"},
		{"five alike", job.Mark{Kind: "scratch", Long: si.MM(100), Wide: si.MM(2), Deep: si.MM(1), Count: 5}, 0.5, "closed form"},
		{"round bowl, radius 10 mm, 2 mm deep", job.Mark{Kind: "ding", Long: si.MM(20), Wide: si.MM(20), Deep: si.MM(2)}, math.Pi * 10 * 10 * 2 / 2 / 1000, "paraboloid: half its cylinder"},
	} {
		if got := finish.MarkVolume(row.mark).ML(); math.Abs(got-row.want) > 1e-6 {
			t.Errorf("%s: got %.6f ml, want %.6f (%s)", row.what, got, row.want, row.from)
		}
	}
}

func TestMarkVolumeIsProportionalInEachMeasure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := job.Mark{
			Kind: rapid.SampledFrom([]string{"scratch", "ding"}).Draw(t, "kind"),
			Long: si.MM(rapid.Float64Range(1, 500).Draw(t, "long")), Wide: si.MM(rapid.Float64Range(0.1, 50).Draw(t, "wide")),
			Deep: si.MM(rapid.Float64Range(0.05, 20).Draw(t, "deep")), Count: 1,
		}
		v := finish.MarkVolume(m)
		for _, double := range []func(*job.Mark){
			func(m *job.Mark) { m.Long *= 2 }, func(m *job.Mark) { m.Wide *= 2 },
			func(m *job.Mark) { m.Deep *= 2 }, func(m *job.Mark) { m.Count = 2 },
		} {
			d := m
			double(&d)
			if got := finish.MarkVolume(d); math.Abs(float64(got/v)-2) > 1e-9 {
				t.Fatalf("twice %+v: got %v, want 2 × %v", m, got, v)
			}
		}
	})
}

func TestGelcoatMass(t *testing.T) {
	if got := finish.Gelcoat(si.M2(0.2), si.MM(0.5), si.GramsPerML(1.2), 0.15).Grams(); math.Abs(got-138) > 1e-9 {
		t.Errorf("0.2 m², 0.5 mm, 1.2 g/ml and 15 %%: got %.4f g, want 138 g (closed form)", got)
	}
}

func cosmetic() job.Description {
	return job.Description{
		Damage: job.Damage{Kind: "scratch", Depth: "gelcoat", Marks: []job.Mark{{Kind: "scratch", Long: si.MM(380), Wide: si.MM(8), Deep: si.MM(0.6)}}},
		Shelf:  job.Shelf{Gelcoat: "gelcoat-waxed", Scale: si.Grams(1), Syringe: si.ML(0.01)},
	}
}

func plan(t *testing.T, d job.Description, edge geom.Shape, missing si.Length, hull si.Temp) finish.Result {
	t.Helper()
	r, err := finish.Plan(d, catalog.Default(), edge, missing, hull)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// The limit of the gelcoat's sheet is 18 °C (invented shelf).
func TestColdStopsTheGelcoat(t *testing.T) {
	for _, row := range []struct {
		hull  si.Temp
		state check.State
		says  string
	}{
		{si.Celsius(18), check.OK, "Warm enough"},
		{si.Celsius(17.9), check.Stop, "Too cold"},
		{si.Celsius(10), check.Stop, "by 8 to 9 K"},
	} {
		for _, v := range plan(t, cosmetic(), nil, 0, row.hull).Verdicts {
			if v.What == "hull temperature for gelcoat" && (v.State != row.state || !strings.Contains(v.Why, row.says)) {
				t.Errorf("%v: got %s, %q; want %s, %q", row.hull, v.State, v.Why, row.state, row.says)
			}
		}
	}
	if vs := plan(t, cosmetic(), nil, 0, 0).Verdicts; len(vs) != 1 || vs[0].What != "smallest honest batch" {
		t.Errorf("without a thermometer: got %+v, want no word on the temperature", vs)
	}
}

// Enough to weigh is mixed as needed, without a word about small batches.
func TestALargeFillIsMixedAsNeeded(t *testing.T) {
	d := cosmetic()
	d.Damage.Marks[0].Count = 100 // 91.2 ml × 1.2 g/ml × 1.5 × 1.25 = 205.2 g (closed form)
	p := plan(t, d, nil, 0, 0).Paste
	if math.Abs(p.Needed.Grams()-205.2) > 1e-6 || p.Mixed != p.Needed {
		t.Errorf("got %.4f g needed, %.4f g mixed; want 205.2 g twice", p.Needed.Grams(), p.Mixed.Grams())
	}
}

func TestWithoutGelcoatOnTheShelfThePasteIsTheCommonOne(t *testing.T) {
	d := cosmetic()
	d.Shelf.Gelcoat = ""
	if got := finish.PasteClass(d); got != "gelcoat-paste" {
		t.Errorf("got %s", got)
	}
	if p := plan(t, d, nil, 0, 0).Paste; p == nil || p.Dose.Percent() < 2 || p.Dose.Percent() > 3 {
		t.Errorf("got %+v, want 2 to 3 %% of catalyst (common practice, no source)", p)
	}
}

// The chosen catalyst belongs to the laminating resin where there is a laminate;
// 1 % would be refused for the gelcoat, whose sheet starts at 1.5 %.
func TestTheChosenDoseIsTheLaminatingResins(t *testing.T) {
	d := cosmetic()
	d.Choices.Dose = si.Percent(1)
	if _, err := finish.Plan(d, catalog.Default(), nil, 0, 0); err == nil || !strings.Contains(err.Error(), "choices.catalyst") {
		t.Errorf("1 %% for gelcoat alone: got %v, want choices.catalyst refused", err)
	}
	d.Damage.Depth = "through"
	if p := plan(t, d, geom.Shape{geom.Circle(300)}, 0, 0).Paste; p.Dose.Percent() < 1.5 {
		t.Errorf("beside a laminate: got %v, want the gelcoat's own dose", p.Dose)
	}
}

func TestFairingTakesTheFilmAndWhatIsMissing(t *testing.T) {
	edge := geom.Shape{geom.Rectangle(400, 250, 0)} // 0.1 m2
	d := job.Description{Damage: job.Damage{Depth: "through"}}
	if got := plan(t, d, edge, 0, 0).Fairing.ML(); math.Abs(got-125) > 0.01 {
		t.Errorf("1 mm over 0.1 m² and a quarter: got %.3f ml, want 125 (closed form)", got)
	}
	if got := plan(t, d, edge, si.MM(1), 0).Fairing.ML(); math.Abs(got-250) > 0.01 {
		t.Errorf("with 1 mm missing: got %.3f ml, want 250 (closed form)", got)
	}
}

// The coat covers the edge and 25 mm more: A + P d + π d² for a convex outline.
func TestCoatAndBarrierCoverTheEdgeAndABand(t *testing.T) {
	edge := geom.Shape{geom.Rectangle(400, 250, 0)}
	area := (400*250 + 1300*25 + math.Pi*25*25) / 1e6
	d := job.Description{
		Damage: job.Damage{Depth: "through"}, Panel: job.Panel{Waterline: si.MM(100)},
		Shelf: job.Shelf{Gelcoat: "gelcoat-waxed", Barrier: "barrier-epoxy"},
	}
	r := plan(t, d, edge, 0, 0)
	if math.Abs(r.Coat.Area.M2()-area) > area*1e-3 || math.Abs(r.Barrier.Area.M2()-area) > area*1e-3 {
		t.Errorf("area: got %.5f and %.5f m², want %.5f (closed form)", r.Coat.Area.M2(), r.Barrier.Area.M2(), area)
	}
	if got, want := r.Coat.Mass.Grams(), r.Coat.Area.M2()*0.75*1.2*1000*1.15; math.Abs(got-want) > 1e-6 {
		t.Errorf("gelcoat: got %.3f g, want %.3f (closed form)", got, want)
	}
	if got, want := r.Barrier.Volume.ML(), r.Barrier.Area.M2()*5*0.12*1000*1.15; math.Abs(got-want) > 1e-6 {
		t.Errorf("barrier: got %.3f ml, want %.3f (closed form)", got, want)
	}
	d.Panel.Waterline = si.MM(-100)
	if plan(t, d, edge, 0, 0).Barrier != nil {
		t.Error("barrier coat above the waterline")
	}
	d.Choices.Finish = "paint"
	if plan(t, d, edge, 0, 0).Coat != nil {
		t.Error("gelcoat under paint")
	}
}

func TestGritsRunFromCoarseToFine(t *testing.T) {
	d := job.Description{Damage: job.Damage{Depth: "through"}, Shelf: job.Shelf{Gelcoat: "gelcoat-waxed"}}
	grits := plan(t, d, geom.Shape{geom.Circle(300)}, 0, 0).Grits
	if len(grits) == 0 || grits[0].P != 40 || grits[len(grits)-1].P != 1500 {
		t.Fatalf("got %v, want P40 to P1500", grits)
	}
	for i := 1; i < len(grits); i++ {
		if grits[i].P <= grits[i-1].P {
			t.Errorf("P%d after P%d", grits[i].P, grits[i-1].P)
		}
	}
}
