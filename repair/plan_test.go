package repair_test

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
	"scarfwright/repair/programme"
)

var catalogue = catalog.Default()

func Example() {
	d, _ := demo.Parse("day-launch")
	r, _ := repair.Plan(d, catalog.Default(), repair.Conditions{})
	fmt.Printf("taper %.0f mm, %d plies, %.0f g of resin in the laminate\n", r.Design.Taper.MM(), len(r.Design.Plies), r.Design.Resin.Grams())
	// Output: taper 65 mm, 6 plies, 550 g of resin in the laminate
}

// field is how an error begins: with the path of what cannot be computed.
var field = regexp.MustCompile(`^[a-z_]+(\.[a-z_]+(\[\d+\])?)*: `)

// drawn plans a drawn job; jobs that are refused with a named field are passed over.
func drawn(t *rapid.T) (job.Description, repair.Result) {
	d := anyJob(t)
	if ps := job.Validate(d); len(ps) > 0 {
		t.Fatalf("the generator drew a description that is not valid: %+v", ps)
	}
	r, err := repair.Plan(d, catalogue, repair.Conditions{})
	if err != nil {
		if !field.MatchString(err.Error()) {
			t.Fatalf("the error names no field: %v", err)
		}
		t.Skip(err)
	}
	return d, r
}

// signed are the fields that may be below zero.
var signed = map[string]bool{"Left": true, "Cover": true, "X": true, "Y": true, "Angle": true}

// sound walks every number of a value and reports what no plan may hold.
func sound(v reflect.Value, path string, report func(string)) {
	switch v.Kind() {
	case reflect.Float64:
		x, name := v.Float(), path[strings.LastIndexByte(path, '.')+1:]
		if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 && !signed[strings.TrimRight(name, "[0123456789]")] {
			report(fmt.Sprintf("%s = %g", path, x))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			sound(v.Field(i), path+"."+v.Type().Field(i).Name, report)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			sound(v.Index(i), fmt.Sprintf("%s[%d]", path, i), report)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			sound(v.Elem(), path, report)
		}
	}
}

func TestNoPlanHoldsNonsense(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r := drawn(t)
		ours := r
		ours.Job = job.Description{} // what was put in is not the plan's doing
		sound(reflect.ValueOf(ours), "Result", func(s string) { t.Fatal(s) })
		text, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		for _, bad := range []string{"NaN", "Inf", "%!"} {
			if strings.Contains(string(text), bad) {
				t.Fatalf("%s in the plan's text: …%s…", bad, text[max(0, strings.Index(string(text), bad)-80):][:160])
			}
		}
	})
}

func TestTheSameDescriptionGivesTheSamePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, r := drawn(t)
		again, err := repair.Plan(d, catalog.Default(), repair.Conditions{})
		if err != nil {
			t.Fatal(err)
		}
		a, _ := json.Marshal(r)
		b, _ := json.Marshal(again)
		if string(a) != string(b) {
			t.Fatal("two plans of one description differ")
		}
	})
}

// Plans must not write into the description they were given, nor share the catalogue.
func TestPlanningLeavesTheDescriptionAlone(t *testing.T) {
	for _, j := range demo.Jobs() {
		d := describe(t, j.Name)
		before := job.Hash(d)
		planned(t, d)
		if job.Hash(d) != before {
			t.Errorf("%s: the description was changed by planning it", j.Name)
		}
	}
}

func TestTheOrderOfLayingChangesNoAmount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, r := drawn(t)
		if r.Design == nil {
			return
		}
		d.Choices.Order = map[string]string{"smallest first": "largest first", "largest first": "smallest first"}[r.Design.Order]
		o, err := repair.Plan(d, catalogue, repair.Conditions{})
		if err != nil {
			t.Fatal(err)
		}
		a, b := r.Design, o.Design
		if !near(a.Cloth, b.Cloth, 1e-9) || !near(a.Glass, b.Glass, 1e-9) || !near(a.Resin, b.Resin, 1e-9) {
			t.Fatalf("%s: %v %v %v; %s: %v %v %v", a.Order, a.Cloth, a.Glass, a.Resin, b.Order, b.Cloth, b.Glass, b.Resin)
		}
		if !near(r.Mixing.Total.Mixed, o.Mixing.Total.Mixed, 1e-9) {
			t.Fatalf("mixed %v and %v", r.Mixing.Total.Mixed, o.Mixing.Total.Mixed)
		}
	})
}

func near[Q ~float64](a, b Q, rel float64) bool {
	return math.Abs(float64(a-b)) <= rel*max(math.Abs(float64(a)), math.Abs(float64(b)))
}

func TestWhatIsMixedIsWhatThePliesHoldAndWhatIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r := drawn(t)
		if r.Mixing == nil {
			return
		}
		m := r.Mixing
		var laminate, batches, spare si.Mass
		for _, s := range m.Sessions {
			batches += si.Scale(s.Batches.Mixed, float64(s.Batches.Count))
			spare += s.Spare
			for _, p := range s.Plies {
				laminate += p.Laminate
			}
		}
		if !near(laminate, r.Design.Resin, 1e-9) {
			t.Fatalf("the plies hold %v, the sessions %v", r.Design.Resin, laminate)
		}
		need := si.Scale(laminate, 1+float64(m.Waste))
		if !near(batches, need+spare, 1e-9) || !near(m.Mixed.Mixed, batches, 1e-9) {
			t.Fatalf("mixed %v in batches of %v; needed %v and %v to spare", m.Mixed.Mixed, batches, need, spare)
		}
	})
}

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
		d.Choices.Plies = d.Laminate.Plies
		r, err := repair.Plan(d, catalogue, repair.Conditions{})
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
}

func TestRefusals(t *testing.T) {
	for _, row := range []struct {
		what   string
		change func(*job.Description)
		want   string
	}{
		{"taper from the face that is out of reach", func(d *job.Description) { d.Damage.Access, d.Choices.Taper = "outside", "inside" }, "choices.taper: "},
		{"both faces with one in reach", func(d *job.Description) { d.Damage.Access, d.Choices.Taper = "outside", "both" }, "choices.taper: "},
		{"both faces of a gouge", func(d *job.Description) {
			d.Damage.Kind, d.Damage.Depth, d.Damage.Deep, d.Choices.Taper = "gouge", "partial", si.MM(2), "both"
		}, "choices.taper: "},
		{"a gouge as deep as the laminate", func(d *job.Description) { d.Damage.Kind, d.Damage.Depth, d.Damage.Deep = "gouge", "partial", si.MM(6) }, "damage.deep: "},
		{"a gouge within the first ply", func(d *job.Description) {
			d.Damage.Kind, d.Damage.Depth, d.Damage.Deep = "gouge", "partial", si.MM(0.05)
		}, "damage.deep: "},
		{"a resin nobody knows", func(d *job.Description) { d.Shelf.Resin = "polyster" }, "shelf.resin: "},
		{"a cloth nobody knows", func(d *job.Description) { d.Shelf.Cloth = []string{"csm451"} }, "shelf.cloth"},
		{"a ply nobody knows", func(d *job.Description) { d.Choices.Plies = []job.PlyRef{{Class: "csm451"}} }, "csm451"},
		{"no cloth and no plies chosen", func(d *job.Description) { d.Shelf.Cloth = nil }, "shelf.cloth: "},
		{"a hole too small for any backing", func(d *job.Description) {
			d.Damage.Access, d.Damage.Dead = "outside", &job.Outline{Circle: si.MM(20)}
		}, "backing: "},
	} {
		d := describe(t, "day-launch")
		row.change(&d)
		_, err := repair.Plan(d, catalogue, repair.Conditions{})
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: got %v, want it refused with %q", row.what, err, row.want)
		}
	}
}

// Marks beside a hole are filled too, and the programme has the step.
func TestMarksBesideAHoleAreFilled(t *testing.T) {
	d := describe(t, "day-launch")
	d.Damage.Marks = []job.Mark{{Kind: "scratch", Long: si.MM(300), Wide: si.MM(8), Deep: si.MM(0.5)}}
	if text := steps(planned(t, d)); !strings.Contains(text, "Open and fill the marks") {
		t.Errorf("no step fills the marks:\n%s", text)
	}
}

func TestHeatIsAnsweredByShadeAndColdByWarmth(t *testing.T) {
	d := describe(t, "rib-console")
	d.Site.Days = []job.Day{{Min: si.Celsius(32), Max: si.Celsius(40), Dew: si.Celsius(15)}}
	if v := verdict(t, planned(t, d), "hours for laminating"); v.State != check.Stop || !strings.Contains(v.Why, "Shade") || strings.Contains(v.Why, "Heat the hull") {
		t.Errorf("32 °C and more for at most 28: got %s, %q", v.State, v.Why)
	}
	d = describe(t, "work-skiff")
	d.Choices.Heat = "none"
	if v := verdict(t, planned(t, d), "hours for laminating"); v.State != check.Stop || !strings.Contains(v.Why, "set choices.heat to tent") {
		t.Errorf("frost: got %s, %q", v.State, v.Why)
	}
}

// The pots are reckoned at the warmest air of the first window, for a range of
// days the warmest there is.
func TestThePotsAreReckonedAtTheWarmestAir(t *testing.T) {
	d := describe(t, "day-launch")
	if got := planned(t, d).Mixing.Sessions[0].At.Celsius(); math.Abs(got-19) > 1e-9 {
		t.Errorf("first window of day 1: got %.3f °C, want its maximum, 19 °C", got)
	}
	d = describe(t, "work-skiff") // no window without heat
	d.Choices.Heat = "none"
	if got := planned(t, d).Mixing.Sessions[0].At.Celsius(); math.Abs(got-7) > 1e-9 {
		t.Errorf("no window: got %.3f °C, want the week's maximum, 7 °C", got)
	}
}

// Stock counts when it is listed in the measure the plan needs, and is told when it is not.
func TestStock(t *testing.T) {
	for _, row := range []struct {
		stock []job.Stock
		left  float64
		note  string
	}{
		{nil, 0, "none given"},
		{[]job.Stock{{Class: "polyester-laminating", Mass: si.Grams(500), Age: si.Days(30)}}, 500, "30 days old"},
		{[]job.Stock{{Class: "polyester-laminating", Mass: si.Grams(500)}, {Class: "polyester-laminating", Mass: si.Grams(250)}}, 750, "age unknown"},
		{[]job.Stock{{Class: "polyester-laminating", Volume: si.ML(500)}}, 0, "listed by another measure than g"},
	} {
		d := describe(t, "day-launch")
		d.Shelf.Stock = row.stock
		for _, p := range planned(t, d).Estimate.Purchases {
			if p.Class == "polyester-laminating" && (p.Stock != row.left || !strings.Contains(p.StockNote, row.note)) {
				t.Errorf("%+v: got %g g, %q; want %g g, %q", row.stock, p.Stock, p.StockNote, row.left, row.note)
			}
		}
	}
}

// Steps are numbered in order, holds follow the alphabet, and the hours are the steps' own.
func TestTheProgrammeAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r := drawn(t)
		hours, hold := 0.0, ""
		for i, s := range r.Programme.Steps {
			if s.Number != i+1 || s.Name == "" || len(s.Do) == 0 {
				t.Fatalf("step %d: %+v", i+1, s)
			}
			if h := s.Hold; h != nil {
				if h.Letter <= hold || len(h.Look) == 0 || h.Signs == "" {
					t.Fatalf("hold %s after %q: %+v", h.Letter, hold, h)
				}
				hold = h.Letter
			}
			hours += s.Hours
		}
		if got := r.Estimate.HoursTotal.Likely; math.Abs(got-hours) > 1e-9 {
			t.Fatalf("the steps take %.4f h, the estimate has %.4f", hours, got)
		}
	})
}

// Every number of a plan's data has its unit in its key.
func TestKeysOfThePlansDataNameTheirUnit(t *testing.T) {
	suffix := map[reflect.Type]string{
		reflect.TypeFor[si.Length](): "_m", reflect.TypeFor[si.Area](): "_m2", reflect.TypeFor[si.Volume](): "_m3",
		reflect.TypeFor[si.Mass](): "_kg", reflect.TypeFor[si.Time](): "_s", reflect.TypeFor[si.Temp](): "_k", reflect.TypeFor[si.TempDiff](): "_k",
		reflect.TypeFor[si.Angle](): "_rad", reflect.TypeFor[si.AreaDensity](): "_kg_per_m2", reflect.TypeFor[si.Density](): "_kg_per_m3",
		reflect.TypeFor[si.Pressure](): "_pa", reflect.TypeFor[geom.Shape](): "_mm",
	}
	seen := map[reflect.Type]bool{reflect.TypeFor[job.Description](): true} // text with units, the job file's own keys
	var walk func(reflect.Type)
	walk = func(typ reflect.Type) {
		for typ.Kind() == reflect.Pointer || typ.Kind() == reflect.Slice || typ.Kind() == reflect.Array {
			typ = typ.Elem()
		}
		if typ.Kind() != reflect.Struct || seen[typ] {
			return
		}
		seen[typ] = true
		for i := range typ.NumField() {
			f := typ.Field(i)
			if !f.IsExported() {
				continue
			}
			key, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			inner := f.Type
			for inner.Kind() == reflect.Slice && suffix[inner] == "" {
				inner = inner.Elem()
			}
			if key == "-" {
				t.Errorf("%s.%s is left out of the data", typ, f.Name)
			}
			if want := suffix[inner]; want != "" {
				if !strings.HasSuffix(key, want) {
					t.Errorf("%s.%s: key %q, want it to end in %s", typ, f.Name, key, want)
				}
				continue
			}
			walk(f.Type)
		}
	}
	walk(reflect.TypeFor[repair.Result]())
	walk(reflect.TypeFor[programme.Windows]())
}

func BenchmarkPlanDemo1(b *testing.B) {
	d, err := demo.Parse("day-launch")
	if err != nil {
		b.Fatal(err)
	}
	cat := catalog.Default()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := repair.Plan(d, cat, repair.Conditions{}); err != nil {
			b.Fatal(err)
		}
	}
}
