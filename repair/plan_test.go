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
	r, _ := repair.Plan(d, catalog.Default())
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
	r, err := repair.Plan(d, catalogue)
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
		again, err := repair.Plan(d, catalog.Default())
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
		o, err := repair.Plan(d, catalogue)
		if err != nil {
			t.Fatal(err)
		}
		a, b := r.Design, o.Design
		// The polygons of an arc are as fine as 0.01 mm asks, so a rounded reach may take one vertex more.
		if !near(a.Cloth, b.Cloth, 1e-6) || !near(a.Glass, b.Glass, 1e-6) || !near(a.Resin, b.Resin, 1e-6) {
			t.Fatalf("%s: %v %v %v; %s: %v %v %v", a.Order, a.Cloth, a.Glass, a.Resin, b.Order, b.Cloth, b.Glass, b.Resin)
		}
		// What is mixed may differ by what the tools keep: the sessions fall otherwise.
		if !near(r.Mixing.Total.Laminate, o.Mixing.Total.Laminate, 1e-6) {
			t.Fatalf("resin in the laminate %v and %v", r.Mixing.Total.Laminate, o.Mixing.Total.Laminate)
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
	} {
		d := describe(t, "day-launch")
		row.change(&d)
		_, err := repair.Plan(d, catalogue)
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: got %v, want it refused with %q", row.what, err, row.want)
		}
	}
}

// A hole that no backing passes is closed by a plug, and said to be.
func TestAHoleTooSmallForABacking(t *testing.T) {
	d := describe(t, "day-launch")
	d.Damage.Access, d.Damage.Dead, d.Damage.Seen = "outside", &job.Outline{Circle: si.MM(20)}, nil
	r, err := repair.Plan(d, catalogue)
	if err != nil {
		t.Fatal(err)
	}
	if r.Design.Backing != nil || !strings.Contains(strings.Join(r.Design.Notes, " "), "plug") {
		t.Errorf("got backing %v and notes %q, want a plug", r.Design.Backing, r.Design.Notes)
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

// What is bought is what is mixed, spare included, and the cloth as the rectangles round its pieces with 5 % more.
func TestWhatIsNeeded(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop", "rib-console", "work-skiff"} {
		r := planned(t, describe(t, name))
		need := map[string]float64{}
		for _, p := range r.Estimate.Purchases {
			need[p.Class] = p.Amount
		}
		m, cloth := r.Mixing, map[string]float64{}
		for _, p := range r.Design.Plies {
			cloth[p.Class] += 1.05 * p.Width.M() * p.Height.M()
		}
		for class, want := range cloth {
			if !near(need[class], want, 1e-9) {
				t.Errorf("%s: %s: got %.4f m², want %.4f", name, class, need[class], want)
			}
		}
		want := m.Mixed.Mixed.Grams() // an epoxy's pack holds both parts; a polyester's batch is its resin
		if !near(need[m.Class], want, 1e-9) {
			t.Errorf("%s: %s: got %.2f g, want %.2f g", name, m.Class, need[m.Class], want)
		}
		catalyst := 0.0
		if m.Catalysed {
			catalyst = m.Mixed.SecondVolume.ML()
		}
		if c := r.Finish.Coat; c != nil {
			catalyst += c.CatalystVolume.ML()
		}
		if !near(need["peroxide"], catalyst, 1e-9) {
			t.Errorf("%s: peroxide: got %.3f ml, want %.3f ml", name, need["peroxide"], catalyst)
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
		if _, err := repair.Plan(d, cat); err != nil {
			b.Fatal(err)
		}
	}
}
