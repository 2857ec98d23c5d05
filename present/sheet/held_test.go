package sheet_test

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/present/internal/planned"
	"scarfwright/present/sheet"
	"scarfwright/repair"
	"scarfwright/repair/job"
)

// cold is a job below every temperature its resin's sheet knows, with a taper
// that runs over both stringers.
func cold(d *job.Description) {
	d.Choices.Ratio = 20
	for i := range d.Site.Days {
		d.Site.Days[i].Min, d.Site.Days[i].Max, d.Site.Days[i].Dew = si.Celsius(1), si.Celsius(4), si.Celsius(-3)
	}
}

// pagesOf prints a paper and returns the words of each page.
func pagesOf(t testing.TB, r repair.Result, print func(io.Writer, repair.Result, sheet.Options) error) []string {
	t.Helper()
	var b bytes.Buffer
	if err := print(&b, r, options("A4", "metric")); err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(strings.TrimSuffix(pdftotext(t, b.Bytes(), "-layout"), "\f"), "\f")
	for i := range pages {
		pages[i] = plain(pages[i])
	}
	return pages
}

// TestAStopStops: the first thing on a stopped card, after what job it is, is
// what must be settled; each page says so; nothing is dosed at the pot.
func TestAStopStops(t *testing.T) {
	r := planned.Demo(t, "day-launch", cold)
	if !r.Stopped() {
		t.Fatal("this job is not stopped any more: find another")
	}
	for name, print := range map[string]func(io.Writer, repair.Result, sheet.Options) error{"card": sheet.JobCard, "templates": sheet.Templates, "estimate": sheet.Estimate, "working": sheet.Working} {
		pages := pagesOf(t, r, print)
		for i, p := range pages {
			if !strings.Contains(p, "STOP: not to be started, see page 1") {
				t.Errorf("%s, page %d does not say that the job is stopped", name, i+1)
			}
		}
		if !strings.Contains(pages[0], "STOP: settle these first") {
			t.Errorf("%s: page 1 does not list what stops the job", name)
		}
	}
	pages := pagesOf(t, r, sheet.JobCard)
	stop, caution := strings.Index(pages[0], "STOP: settle these first"), strings.Index(pages[0], "Cautions: read")
	if caution >= 0 && caution < stop {
		t.Error("the cautions stand above the stop")
	}
	for _, v := range r.Stops() {
		if words := strings.Fields(v.What)[0]; !strings.Contains(pages[0], words) {
			t.Errorf("page 1 does not name the stop %q", v.What)
		}
	}
	all := strings.Join(pages, " ")
	if n := strings.Count(all, "No batch may be mixed until this is settled."); n < len(r.Mixing.Sessions) {
		t.Errorf("the card forbids mixing %d times, want once for each of %d sessions at least", n, len(r.Mixing.Sessions))
	}
	for _, words := range []string{"Batch 1 of", "mixed at", "Mix table for the wall"} {
		if strings.Contains(all, words) {
			t.Errorf("a card whose resin has no working time prints %q", words)
		}
	}
	for _, s := range r.Mixing.Sessions {
		if dose := s.Batches.Second; dose > 0 && strings.Contains(all, fmt.Sprintf("%.1f g (", dose.Grams())) {
			t.Errorf("a card whose resin has no working time prints the dose %.1f g", dose.Grams())
		}
	}
	for _, p := range pagesOf(t, planned.Demo(t, "day-launch"), sheet.JobCard) {
		if strings.Contains(p, "STOP") {
			t.Errorf("a card that is not stopped says STOP: %.80s", p)
		}
	}
}

// TestEveryDoseNamesItsTool on the mixing table and at the pot.
func TestEveryDoseNamesItsTool(t *testing.T) {
	for name, want := range map[string]string{"day-launch": "by syringe: true share 1.", "sloop": "by scale: true ratio "} {
		r := planned.Demo(t, name, planned.Painted)
		n := len(r.Mixing.Sessions)
		for _, s := range r.Mixing.Sessions {
			n += s.Batches.Count
		}
		if got := strings.Count(strings.Join(pagesOf(t, r, sheet.JobCard), " "), want); got != n {
			t.Errorf("%s: %q stands %d times, want %d: once for each session in the table and once for each batch", name, want, got, n)
		}
	}
}

// TestAnEstimateWithoutARateIsNoPrice: its headline says what is missing.
func TestAnEstimateWithoutARateIsNoPrice(t *testing.T) {
	const words = "Materials and extras only; labour is not priced (crew.rate)"
	without := pagesOf(t, planned.Demo(t, "day-launch", func(d *job.Description) { d.Crew.Rate = 0 }), sheet.Estimate)
	if !strings.Contains(without[0], words) {
		t.Errorf("page 1 does not say %q", words)
	}
	if with := pagesOf(t, planned.Demo(t, "day-launch"), sheet.Estimate); strings.Contains(with[0], words) {
		t.Error("an estimate with a rate says that labour is not priced")
	}
}

// TestADishIsNotCutThrough on paper either.
func TestADishIsNotCutThrough(t *testing.T) {
	r := planned.Demo(t, "day-launch", func(d *job.Description) { d.Damage.Depth, d.Damage.Deep = "partial", 0.0028 })
	for name, print := range map[string]func(io.Writer, repair.Result, sheet.Options) error{"card": sheet.JobCard, "templates": sheet.Templates} {
		pages := pagesOf(t, r, print)
		if !strings.Contains(pages[0], "do not cut through") {
			t.Errorf("%s: page 1 does not say that some of the laminate stays", name)
		}
		for i, p := range pages {
			if strings.Contains(strings.ToLower(p), "cut-out") {
				t.Errorf("%s, page %d speaks of a cut-out", name, i+1)
			}
		}
	}
}
