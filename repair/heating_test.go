package repair_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/curing"
	"scarfwright/repair/job"
)

// warmth returns the rows of the comparison by name.
func warmth(t *testing.T, d job.Description) (repair.Result, map[string]curing.Warmth) {
	t.Helper()
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]curing.Warmth{}
	for _, w := range r.Curing.Warmth {
		out[w.Name] = w
	}
	if len(out) != 3 {
		t.Fatalf("%d ways of heating compared", len(out))
	}
	return r, out
}

// A cold skiff has no open hour; a tent or a lamp opens some, and only what is chosen
// is planned with.
func TestColdJobWithoutAndWithHeat(t *testing.T) {
	d := describe(t, "work-skiff")
	d.Choices.Heat = "none"
	r, rows := warmth(t, d)
	if w := rows["none"]; !w.Chosen || w.Session != nil || w.Open != "none" {
		t.Errorf("without heat: chosen %v, open %q", w.Chosen, w.Open)
	}
	if w := rows["tent"]; w.Session == nil || w.Assumed || w.Chosen {
		t.Errorf("the tent given opens %q, assumed %v, chosen %v", w.Open, w.Assumed, w.Chosen)
	}
	if w := rows["lamp"]; w.Session == nil || !w.Assumed {
		t.Errorf("an assumed lamp opens %q, assumed %v", w.Open, w.Assumed)
	}
	if !r.Stopped() {
		t.Error("a plan without an open hour is not stopped")
	}
	d.Choices.Heat, d.Site.Lamp = "lamp", si.Kelvins(20)
	r, rows = warmth(t, d)
	if w := rows["lamp"]; !w.Chosen || w.Assumed || w.Session == nil {
		t.Errorf("the lamp chosen: %+v", w)
	}
	said := false
	for _, c := range r.Cautions {
		said = said || strings.Contains(c.Text, "A lamp is hot enough to light")
	}
	if !said {
		t.Error("the plan under a lamp has no caution about it")
	}
}

// More heat never opens fewer hours to a lamp, which is turned down where it is warm.
func TestLampOpensNoFewerHours(t *testing.T) {
	for _, name := range []string{"day-launch", "rib-console"} {
		d := describe(t, name)
		_, rows := warmth(t, d)
		hours := func(w curing.Warmth) int { return openHours(t, w.Open) }
		if with, without := hours(rows["lamp"]), hours(rows["none"]); without == 0 || with < without {
			t.Errorf("%s: open under a lamp %q, without %q", name, rows["lamp"].Open, rows["none"].Open)
		}
	}
}

// Resin kept warm in a cold shed: the sheet's table covers it, and it sets sooner.
func TestResinKeptWarm(t *testing.T) {
	d := describe(t, "day-launch")
	cold, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	d.Site.Mix = si.Celsius(26)
	warm, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	a, b := cold.Mixing.Sessions[0], warm.Mixing.Sessions[0]
	if a.Own == nil || b.Own == nil || b.Own.Likely >= a.Own.Likely {
		t.Errorf("kept at 26 °C: %v, as the air: %v", b.Own, a.Own)
	}
	if !strings.Contains(b.Words, "mixed at 26 °C") {
		t.Errorf("it says %q", b.Words)
	}
}

// Peroxide and a metal tray do not go together.
func TestMetalTrayStopsACatalysedResin(t *testing.T) {
	d := describe(t, "day-launch")
	d.Shelf.Vessel = "metal tray"
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range r.Verdicts {
		if v.What == "what is mixed in" && v.State == check.Stop {
			return
		}
	}
	t.Error("a metal tray passed")
}

// Each coat over the laminate has its times, in order, on its own sheet.
func TestCoatsHaveTheirTimes(t *testing.T) {
	r, err := repair.Plan(describe(t, "day-launch"), catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Coats) != 2 || r.Coats[0].What != "fairing compound" || r.Coats[1].What != "gelcoat" {
		t.Fatalf("coats: %+v", r.Coats)
	}
	for _, c := range r.Coats {
		if c.Own == nil || !(0 < c.Own.Low && c.Own.Low <= c.Own.High && c.Own.Likely < c.Gel*10 && c.Gel < c.Sand) {
			t.Errorf("%s: own %+v, gel %v, sand %v", c.What, c.Own, c.Gel, c.Sand)
		}
	}
}

// openHours adds up "day 1, 00–10 and 22–24 h; day 2, 06–10 h".
func openHours(t *testing.T, text string) int {
	t.Helper()
	sum := 0
	for _, part := range strings.Split(strings.ReplaceAll(text, "every hour", "00–24"), ";") {
		days := 1
		if m := regexp.MustCompile(`days (\d+) to (\d+)`).FindStringSubmatch(part); m != nil {
			from, _ := strconv.Atoi(m[1])
			to, _ := strconv.Atoi(m[2])
			days = to - from + 1
		}
		for _, m := range regexp.MustCompile(`(\d\d)–(\d\d)`).FindAllStringSubmatch(part, -1) {
			from, err1 := strconv.Atoi(m[1])
			to, err2 := strconv.Atoi(m[2])
			if err1 != nil || err2 != nil || to <= from {
				t.Fatalf("hours %q", text)
			}
			sum += days * (to - from)
		}
	}
	return sum
}

// A dose outside the sheet's band is a stop, and no amount of it is told anywhere.
func TestNoAmountOfAForbiddenDose(t *testing.T) {
	d := describe(t, "day-launch")
	d.Choices.Dose = si.Percent(3)
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	if !r.Stopped() || r.Mixing.Mixable() {
		t.Error("3 % of catalyst may be mixed")
	}
	for _, s := range r.Mixing.Sessions {
		if s.Batches.Second != 0 || s.Need.Second != 0 || s.Batches.Count != 0 {
			t.Errorf("%s tells %v of catalyst in %d batches", s.Name, s.Need.Second, s.Batches.Count)
		}
	}
	if r.Mixing.Mixed.Second != 0 {
		t.Errorf("in all %v of catalyst", r.Mixing.Mixed.Second)
	}
	if r.Mixing.Mixed.Resin == 0 {
		t.Error("no resin is needed")
	}
}

// Polyester on an old hull of epoxy is judged as that, not as polyester on polyester.
func TestPolyesterOnAnEpoxyHull(t *testing.T) {
	d := describe(t, "day-launch")
	d.Laminate.Resin = "epoxy"
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	if j := r.Joints[0]; j.Check().State != check.Stop || !strings.Contains(j.Check().Value, "on epoxy") {
		t.Errorf("%s: %s, %s", j.What, j.Check().State, j.Check().Value)
	}
}
