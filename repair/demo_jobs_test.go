package repair_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
	"scarfwright/repair/programme"
)

// The expected numbers of this file come from invented cases; each was computed
// independently by the case's author, before and without this program. Where ours
// differ for a reason, the reason stands in docs/decisions.

// describe reads a demo job, to be changed and planned.
func describe(t testing.TB, name string) job.Description {
	t.Helper()
	d, err := demo.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func planned(t testing.TB, d job.Description) repair.Result {
	t.Helper()
	if ps := job.Validate(d); len(ps) > 0 {
		t.Fatalf("the description is not valid: %+v", ps)
	}
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// row is one number of a case.
type row struct {
	what      string
	got, want float64
	tol       float64
}

func compare(t *testing.T, rows []row) {
	t.Helper()
	for _, r := range rows {
		if !(math.Abs(r.got-r.want) <= r.tol) {
			t.Errorf("%s: got %.4f, want %g within %g (invented case, computed independently by its author)", r.what, r.got, r.want, r.tol)
		}
	}
}

// option returns the repair laid out at one ratio.
func option(t testing.TB, r repair.Result, ratio float64) (width, height, left float64, fits bool) {
	t.Helper()
	for _, o := range r.Design.Options {
		if o.Ratio == ratio {
			return o.Width.MM(), o.Height.MM(), o.Left.MM(), o.Fits
		}
	}
	t.Fatalf("no option at %g:1", ratio)
	return
}

// sizes are the plies' widths and heights as rows.
func sizes(r repair.Result, want ...[2]float64) []row {
	var out []row
	for i, w := range want {
		var got [2]float64
		if i < len(r.Design.Plies) {
			p := r.Design.Plies[i]
			got = [2]float64{p.Width.MM(), p.Height.MM()}
		}
		out = append(out, row{fmt.Sprintf("ply %d is %g mm wide", i+1, w[0]), got[0], w[0], 1},
			row{fmt.Sprintf("ply %d is %g mm high", i+1, w[1]), got[1], w[1], 1})
	}
	return out
}

// open lists the windows of a material as "d1 12-22 d2 11-23", for the days up to last.
func open(t testing.TB, ws []programme.Windows, what string, last int) string {
	t.Helper()
	for _, w := range ws {
		if strings.Contains(w.What, what) && (strings.Contains(what, "heat") || !strings.Contains(w.What, "heat")) {
			return list(w, last)
		}
	}
	t.Fatalf("no windows for %q", what)
	return ""
}

func list(w programme.Windows, last int) string {
	var parts []string
	for _, o := range w.Open {
		if o.Day <= last {
			parts = append(parts, fmt.Sprintf("d%d %02d-%02d", o.Day, o.From, o.To))
		}
	}
	return strings.Join(parts, " ")
}

// verdict finds a verdict by the beginning of its What.
func verdict(t testing.TB, r repair.Result, what string) check.Verdict {
	t.Helper()
	for _, v := range r.Verdicts {
		if strings.HasPrefix(v.What, what) {
			return v
		}
	}
	t.Fatalf("no verdict %q", what)
	return check.Verdict{}
}

// steps is everything the programme tells a person to do, in one text.
func steps(r repair.Result) string {
	var b strings.Builder
	for _, s := range r.Programme.Steps {
		fmt.Fprintln(&b, s.Name, s.Do, s.Targets)
	}
	return b.String()
}

func TestDayLaunch(t *testing.T) {
	r := planned(t, describe(t, "day-launch"))
	d := r.Design
	if !r.Released() {
		t.Fatalf("not released: %+v", r.Survey)
	}
	w15, h15, left15, fits15 := option(t, r, 15)
	_, h20, left20, fits20 := option(t, r, 20)
	edge := d.Edge.Bounds()
	lay, m := d.Proposals[0], r.Mixing
	compare(t, append([]row{
		{"the laminate is 5.40 mm thick", d.Original.Thickness.MM(), 5.40, 0.01},
		{"12:1 asks for a taper of 65 mm", d.Taper.MM(), 65, 0.5},
		{"the feather edge is 430 mm wide", edge.Width(), 430, 1},
		{"the feather edge is 330 mm high", edge.Height(), 330, 1},
		{"25 mm are left above it", d.Clearances[2].Left.MM(), 25, 0.5},
		{"25 mm are left below it", d.Clearances[3].Left.MM(), 25, 0.5},
		{"15:1 is 362 mm high", h15, 362, 1},
		{"15:1 is as much wider as higher", w15 - h15, 100, 0.02},
		{"15:1 leaves 9 mm", left15, 9, 0.5},
		{"20:1 is 416 mm high", h20, 416, 1},
		{"20:1 misses by half of 416 - 380", left20, -18, 0.5},
		{"at twelve o'clock 25 mm are left", d.Clocks[0].Left.MM(), 25, 0.5},
		{"at three o'clock (620 - 430)/2 = 95 mm are left", d.Clocks[2].Left.MM(), 95, 0.5},
		{"the patch is 5.62 mm thick", lay.Thickness.MM(), 5.62, 0.005},
		{"the patch is 1.11 times as stiff", lay.StiffnessRatio, 1.11, 0.005},
		{"cover 480 mm wide", d.CoverEdge.Bounds().Width(), 480, 1},
		{"cover 380 mm high", d.CoverEdge.Bounds().Height(), 380, 1},
		{"cloth 0.56 m2", d.Cloth.M2(), 0.56, 0.005},
		{"glass 291 g", d.Glass.Grams(), 291, 1},
		{"resin in the laminate 551 g", d.Resin.Grams(), 551, 1.5},
		{"resin mixed 688 g", m.Total.Mixed.Grams(), 688, 1.5},
		{"catalyst 2 x 5.2 g, in all 10.3 g", m.Total.Second.Grams(), 10.3, 0.05},
		{"catalyst 2 x 4.6 ml", m.Total.SecondVolume.ML(), 9.2, 0.05},
		{"two sessions", float64(len(m.Sessions)), 2, 0},
		{"price 1895", r.Estimate.Total.Likely, 1895, 0.5},
		{"hours 26.5", r.Estimate.HoursTotal.Likely, 26.5, 1e-9},
	}, sizes(r, [2]float64{324, 224}, [2]float64{353, 253}, [2]float64{377, 277}, [2]float64{406, 306}, [2]float64{430, 330}, [2]float64{480, 380})...))
	if !fits15 || fits20 {
		t.Errorf("15:1 fits: %v, 20:1 fits: %v; want yes and no", fits15, fits20)
	}
	if want := "CSM450 / BXM800 / CSM450 / BXM800 / CSM450"; lay.Code != want {
		t.Errorf("patch: got %s, want %s", lay.Code, want)
	}
	wet := 0.0
	for _, p := range d.Plies {
		wet += p.Wet.KgPerM2()
	}
	compare(t, []row{{"9.3 kg/m2 of wet laminate at the centre", wet, 9.3, 0.05}})

	// The two sessions divide after whole plies, not in halves (docs/decisions/0011).
	if a, b := m.Sessions[0].Batches, m.Sessions[1].Batches; a.Count != 1 || b.Count != 1 {
		t.Errorf("batches: got %d and %d, want one a session", a.Count, b.Count)
	}
	if got, want := open(t, r.Programme.Windows, "laminating", 5), "d1 12-22 d2 11-23 d3 10-24 d4 14-20 d5 13-21"; got != want {
		t.Errorf("laminating hours: got %s, want %s", got, want)
	}
	if got, want := open(t, r.Programme.Windows, "gelcoat", 7), "d1 16-18 d2 14-20 d3 13-21 d6 17-18 d7 15-20"; got != want {
		t.Errorf("gelcoat hours: got %s, want %s", got, want)
	}
}

func TestSloop(t *testing.T) {
	d := describe(t, "sloop")
	r := planned(t, d)
	ds := r.Design
	edge := ds.Edge.Bounds()
	compare(t, []row{
		{"the laminate is 8.36 mm thick", ds.Original.Thickness.MM(), 8.36, 0.005},
		{"12:1 asks for a taper of 100 mm", ds.Taper.MM(), 100, 0.5},
		{"the feather edge is 420 mm wide", edge.Width(), 420, 1},
		{"the feather edge is 340 mm high", edge.Height(), 340, 1},
		{"11 plies: cloth 0.89 m2", ds.Cloth.M2(), 0.89, 0.005},
		{"11 plies: glass 490 g", ds.Glass.Grams(), 490, 1.5},
		{"11 plies: resin 490 g", ds.Resin.Grams(), 490, 1.5},
		{"price 3480", r.Estimate.Total.Likely, 3480, 0.5},
		{"13 % of the insured value", 100 * r.Estimate.ShareOfInsured, 13, 0.5},
	})
	if len(ds.Proposals) != 2 {
		t.Fatalf("got %d proposals, want the one that matches thickness and the one that matches stiffness", len(ds.Proposals))
	}
	eleven, ten := ds.Proposals[0], ds.Proposals[1]
	compare(t, []row{
		{"11 plies are 8.08 mm", eleven.Thickness.MM(), 8.08, 0.005},
		{"11 plies are 1.39 times as stiff", eleven.StiffnessRatio, 1.39, 0.005},
		{"10 plies are 7.34 mm", ten.Thickness.MM(), 7.34, 0.005},
		{"10 plies are 1.05 times as stiff", ten.StiffnessRatio, 1.05, 0.005},
		{"10 plies leave 1.0 mm to filler", ten.Filler.MM(), 1.0, 0.05},
	})
	if eleven.Code != "11 × BX600" || ten.Code != "10 × BX600" {
		t.Errorf("proposals: got %s and %s, want 11 and 10 plies of BX600", eleven.Code, ten.Code)
	}
	b := ds.Backing
	if b == nil || len(b.Pieces) != 2 {
		t.Fatalf("backing: got %+v, want two pieces", b)
	}
	compare(t, []row{
		{"a piece of backing is 300 mm long", b.PieceLong.MM(), 300, 0.5},
		{"a piece of backing is 110 mm across", b.PieceShort.MM(), 110, 0.5},
	})
	if !strings.Contains(strings.Join(r.Survey.Limitations, "\n"), "Inner face not sighted") {
		t.Errorf("limitations: got %q, want the inner face not sighted", r.Survey.Limitations)
	}
	if r.Programme.Windows[0].Text() != "days 1 to 7, every hour" {
		t.Errorf("in the heated tent: got %s, want all hours", r.Programme.Windows[0].Text())
	}

	// Chosen outright, the ten plies leave the filler the case names.
	for range 10 {
		d.Choices.Plies = append(d.Choices.Plies, job.PlyRef{Class: "bx600"})
	}
	compare(t, []row{{"10 plies as chosen leave 1.0 mm to filler", planned(t, d).Design.Filler.MM(), 1.0, 0.05}})
}

// The case reckons its unheated hours at 12 °C, its shelf says 10 °C: see
// docs/decisions/0015. At 12 °C ours are the case's.
func TestSloopWithoutHeat(t *testing.T) {
	d := describe(t, "sloop")
	hours := programme.Hours(d.Site.Days, d.Site.Lag, 0)
	if got, want := list(programme.Find("epoxy", hours, si.Celsius(12), 0), 7), "d3 15-21 d6 14-22 d7 12-23"; got != want {
		t.Errorf("hull 12 °C or more: got %s, want %s (invented case 2, computed independently by its author)", got, want)
	}
	got := open(t, planned(t, d).Programme.Windows, "without heat", 7)
	if want := "d1 17-19 d2 13-23 d3 12-24 d5 15-21 d6 11-24 d7 00-01 d7 10-24"; got != want {
		t.Errorf("hull 10 °C or more: got %s, want %s (recorded from this program)", got, want)
	}
}

func TestRIBConsole(t *testing.T) {
	d := describe(t, "rib-console")
	r := planned(t, d)
	ds := r.Design
	edge := ds.Edge.Bounds()
	compare(t, []row{
		{"the outer skin is 1.60 mm", ds.Original.Thickness.MM(), 1.60, 0.005},
		{"12:1 asks for a taper of 19 mm", ds.Taper.MM(), 19, 0.5},
		{"the feather edge is 298 mm wide", edge.Width(), 298, 1},
		{"the feather edge is 218 mm high", edge.Height(), 218, 1},
		{"core 0.037 m2", ds.Core.Area.M2(), 0.037, 0.0005},
		{"core 0.44 l", ds.Core.Volume.ML() / 1000, 0.44, 0.005},
		{"paste 2 x 0.4 kg/m2", ds.Core.Paste.Kg() / ds.Core.Area.M2(), 0.8, 1e-9},
		{"price 1014", r.Estimate.Total.Likely, 1014, 0.5},
	})
	got := open(t, r.Programme.Windows, "laminating", 7)
	for _, want := range []string{"d1 00-10 d1 22-24", "d3 00-11", "d4 09-11 d4 22-24", "d5 00-12"} {
		if !strings.Contains(got, want) {
			t.Errorf("hours up to 28 °C: got %s, want among them %s (invented case 3, computed independently by its author)", got, want)
		}
	}
	compare(t, []row{
		{"cloth 0.10 m2", ds.Cloth.M2(), 0.10, 0.01},
		{"resin 71 g, the mat being outermost", ds.Resin.Grams(), 71, 2},
	})
	// To the gram when the ply named first is laid first (docs/decisions/0016).
	d.Choices.Plies = []job.PlyRef{{Class: "bx450"}, {Class: "csm450"}}
	own := planned(t, d).Design
	compare(t, []row{
		{"the skin's own two plies: cloth 0.10 m2", own.Cloth.M2(), 0.10, 0.005},
		{"the skin's own two plies: resin 71 g", own.Resin.Grams(), 71, 0.5},
	})
}

func TestClubDinghy(t *testing.T) {
	r := planned(t, describe(t, "club-dinghy"))
	if r.Design != nil || !r.Released() {
		t.Fatalf("got design %v, released %v; want surface work and nothing else", r.Design, r.Released())
	}
	f, p := r.Finish, r.Finish.Paste
	compare(t, []row{
		{"the scratch takes 0.91 ml", f.Fills[0].Volume.ML(), 0.91, 0.005},
		{"the ding takes 0.18 ml", f.Fills[1].Volume.ML(), 0.18, 0.005},
		{"2.5 g are needed with overfill and pot loss", p.Needed.Grams(), 2.5, 0.06},
		{"20 g are mixed", p.Mixed.Grams(), 20, 1e-9},
		{"catalyst 0.40 g", p.Catalyst.Grams(), 0.40, 0.0005},
		{"catalyst 0.36 ml", p.CatalystVolume.ML(), 0.36, 0.005},
	})
	if p.By != "syringe" {
		t.Errorf("catalyst by %s, want by syringe", p.By)
	}
	if v := verdict(t, r, "hull temperature"); v.State != check.Stop || !strings.Contains(v.Why, "warm the hull by 2 to 3 K") {
		t.Errorf("16 °C for 18 °C: got %s, %q; want stop, 2 to 3 K short", v.State, v.Why)
	}
	if v := verdict(t, r, "smallest honest batch"); !strings.Contains(v.Why, "throw the rest away") {
		t.Errorf("smallest batch: got %q", v.Why)
	}
	text := steps(r)
	for _, want := range []string{"Cup test first", "cover with film", "P320, P400, P600, P800, P1000, P1200, P1500"} {
		if !strings.Contains(text, want) {
			t.Errorf("the steps do not say %q:\n%s", want, text)
		}
	}
}

func TestWorkSkiff(t *testing.T) {
	d := describe(t, "work-skiff")
	r := planned(t, d)
	if r.Released() {
		t.Error("released; want a referral: let for hire, a frame crossed")
	}
	var rules []string
	for _, ref := range r.Survey.Referrals {
		rules = append(rules, ref.Rule)
	}
	for _, want := range []string{"commercial or passenger craft", "stiffener damaged"} {
		if !strings.Contains(strings.Join(rules, "; "), want) {
			t.Errorf("referrals: got %q, want %s among them", rules, want)
		}
	}
	ds := r.Design
	edge, lay := ds.Edge.Bounds(), ds.Proposals[0]
	compare(t, []row{
		{"the laminate is 5.05 mm", ds.Original.Thickness.MM(), 5.05, 0.01},
		{"12:1 asks for a taper of 61 mm", ds.Taper.MM(), 61, 0.5},
		{"the feather edge is 1062 mm long", edge.Width(), 1062, 1},
		{"the feather edge is 232 mm high", edge.Height(), 232, 1},
		{"it is 12 mm longer than the bay of 1050", -2 * ds.Clearances[0].Left.MM(), 12, 1},
		{"the patch is 5.27 mm", lay.Thickness.MM(), 5.27, 0.005},
		{"the patch is 1.10 times as stiff", lay.StiffnessRatio, 1.10, 0.005},
		{"price 1717", r.Estimate.Total.Likely, 1717, 0.5},
	})
	if want := "CSM450 / BXM800 / CSM450 / BXM800 / CSM300"; lay.Code != want {
		t.Errorf("patch: got %s, want %s", lay.Code, want)
	}
	if v := verdict(t, r, "taper to frame (fore)"); v.State != check.Stop || !strings.Contains(v.Why, "tabbing") {
		t.Errorf("past the frame: got %s, %q; want a stop that speaks of the tabbing", v.State, v.Why)
	}
	if got := open(t, r.Programme.Windows, "without heat", 7); got != "" {
		t.Errorf("unheated: got %s, want never 15 °C", got)
	}
}

// The case's amounts come out when its cut-out is an ellipse and the ply named
// first is laid first; ours is a rectangle, and a ply list runs from the outside
// in (docs/decisions/0016).
func TestWorkSkiffAmountsAsTheCaseReadsThem(t *testing.T) {
	d := describe(t, "work-skiff")
	ours := planned(t, d).Design
	compare(t, []row{ // closed form: a rectangle with round corners and its offsets, by hand in 0016
		{"rectangle, first ply outermost: cloth", ours.Cloth.M2(), 1.1986, 0.0005},
		{"rectangle, first ply outermost: resin", ours.Resin.Grams(), 1130.7, 0.5},
	})
	d.Damage.Dead = &job.Outline{Ellipse: []si.Length{si.MM(940), si.MM(110)}}
	d.Damage.Seen = nil // the tool would take in the ends of the gash that the ellipse leaves out
	for _, class := range []string{"csm300", "bxm800", "csm450", "bxm800", "csm450"} {
		d.Choices.Plies = append(d.Choices.Plies, job.PlyRef{Class: class})
	}
	theirs := planned(t, d).Design
	compare(t, []row{
		{"ellipse, first ply innermost: cloth 1.07 m2", theirs.Cloth.M2(), 1.07, 0.005},
		{"ellipse, first ply innermost: resin 974 g", theirs.Resin.Grams(), 974, 4},
	})
	seen := geom.Shape{geom.Rectangle(900, 60, 0)}
	for _, p := range seen[0] {
		if inside := (geom.Shape{geom.Ellipse(940, 110)}).Contains(p); inside {
			t.Errorf("corner %v of the gash lies inside the ellipse; 0016 says that it does not", p)
		}
	}
}
