package repair_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/cure"
	"scarfwright/repair/job"
)

// manualSheet is the worked example of a user's own sheet in docs/job-file.md, on
// the shelf of the small job there (invented figures).
func manualSheet(t *testing.T) job.Description {
	t.Helper()
	b, err := os.ReadFile("../docs/job-file.md")
	if err != nil {
		t.Fatal(err)
	}
	part := strings.Split(string(b), "```yaml\n")
	if len(part) != 3 {
		t.Fatalf("%d examples", len(part)-1)
	}
	head, _, _ := strings.Cut(part[1], "shelf:\n")
	shelf, _, _ := strings.Cut(part[2], "```")
	d, err := job.Parse("manual", []byte(head+shelf))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// The manual's sheet is planned with: every figure on it comes back from the fit,
// its own recoat window stands, and the plan says what was fitted.
func TestTheManualsSheetIsPlannedWith(t *testing.T) {
	d := manualSheet(t)
	cat, err := catalogue.Overlay(d.Shelf.Sheets)
	if err != nil {
		t.Fatal(err)
	}
	resin, err := cat.Resin(d.Shelf.Resin)
	if err != nil {
		t.Fatal(err)
	}
	m, err := cure.Fit(cure.FromCatalogue(resin.TwoPart, cure.Epoxy))
	if err != nil {
		t.Fatal(err)
	}
	if n := len(m.Misfit()); n != 9 { // 2 pot lives, a gel, 2 to sanding, 2 cups with rise and time
		t.Errorf("%d figures fitted, want 9", n)
	}
	for _, x := range m.Misfit() {
		t.Logf("%s: %.4g, model %.4g, %.1f sigmas", x.Name, x.Sheet, x.Model, x.Sigmas)
		if math.Abs(x.Sigmas) > 2 {
			t.Errorf("%s: the sheet's %.4g is %.4g in the model, %.1f sigmas off", x.Name, x.Sheet, x.Model, x.Sigmas)
		}
	}
	r, err := repair.Plan(d, catalogue)
	if err != nil {
		t.Fatal(err)
	}
	said := strings.Join(r.Assumptions, "\n")
	for _, want := range []string{"my slow epoxy is fitted to 2 pot lives at 15 to 25 °C", "2 times to sanding at 15 to 25 °C", "2 cups' peaks at 25 °C"} {
		if !strings.Contains(said, want) {
			t.Errorf("the assumptions do not say %q:\n%s", want, said)
		}
	}
	s := r.Curing.Sessions[0]
	if math.Abs(s.RecoatFrom.Hours()-5) > 0.1 || math.Abs(s.RecoatTo.Hours()-18) > 0.1 { // at 20 °C, no days given
		t.Errorf("next session without sanding %v to %v, want the sheet's 5 to 18 h", s.RecoatFrom, s.RecoatTo)
	}
}

// A sheet that says less leaves the range of what is predicted wider, and two
// sheets of one name that differ in one figure never share a fit.
func TestEachFigureOfASheetCounts(t *testing.T) {
	own := func(change func(*job.Sheet)) repair.Result {
		d := manualSheet(t)
		change(&d.Shelf.Sheets[0])
		r, err := repair.Plan(d, catalogue)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	// every figure of the sheet moves the gel of a thin edge
	gel := func(r repair.Result) si.Time { return r.Curing.Sessions[0].FilmGel }
	whole := own(func(*job.Sheet) {})
	for name, change := range map[string]func(*job.Sheet){
		"criterion":    func(s *job.Sheet) { s.Criterion = "viscosity doubled" },
		"film gel":     func(s *job.Sheet) { s.FilmGel[0].Time = si.Hours(4) },
		"a hair of it": func(s *job.Sheet) { s.FilmGel[0].Time += si.Seconds(1) },
		"peak":         func(s *job.Sheet) { s.Peaks[0].Peak = si.Celsius(150) },
		"its time":     func(s *job.Sheet) { s.Peaks[0].After = si.Minutes(55) },
		"cup's mass":   func(s *job.Sheet) { s.Peaks[1].Mass = si.Grams(60) },
	} {
		if gel(own(change)) == gel(whole) {
			t.Errorf("%s: the session gels at the same moment, %v", name, gel(whole))
		}
	}
	bare := own(func(s *job.Sheet) {
		s.PotLife, s.FilmGel, s.Sandable, s.Peaks = s.PotLife[1:], nil, nil, nil
	})
	if said := strings.Join(bare.Assumptions, "\n"); !strings.Contains(said, "one pot life at 25 °C; not told by them") || !strings.Contains(said, "when it sands") {
		t.Errorf("a sheet of one pot life is said to tell more:\n%s", said)
	}
}
