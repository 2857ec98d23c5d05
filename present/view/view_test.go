package view_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
	"time"

	"scarfwright/present/drawing"
	"scarfwright/present/view"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

// planned plans a demo job after a change to it.
func planned(t testing.TB, name string, change func(*job.Description)) repair.Result {
	t.Helper()
	d, err := demo.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(&d)
	}
	r, err := repair.Plan(d, catalog.Default(), repair.Conditions{})
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// variants are repairs of every sort the pictures must show.
func variants(t testing.TB) map[string]repair.Result {
	t.Helper()
	return map[string]repair.Result{
		"both-faces-in-reach": planned(t, "day-launch", nil),
		"one-side":            planned(t, "sloop", paint),
		"sandwich":            planned(t, "rib-console", paint),
		"longer-than-the-bay": planned(t, "work-skiff", nil),
		"from-inside":         planned(t, "day-launch", func(d *job.Description) { d.Choices.Taper = "inside" }),
		"from-both":           planned(t, "day-launch", func(d *job.Description) { d.Choices.Taper = "both" }),
		"largest-first":       planned(t, "day-launch", func(d *job.Description) { d.Choices.Order = "largest first" }),
		"partial": planned(t, "day-launch", func(d *job.Description) {
			d.Damage.Depth, d.Damage.Deep = "partial", 0.0028
		}),
		"crossing-us": planned(t, "day-launch", func(d *job.Description) {
			d.Choices.Ratio, d.Choices.Units = 20, "us"
		}),
	}
}

// TestLook writes the pictures to the folder in VIEW_LOOK, to be looked at.
func TestLook(t *testing.T) {
	dir := os.Getenv("VIEW_LOOK")
	if dir == "" {
		t.Skip("set VIEW_LOOK to a folder to write the pictures there")
	}
	for name, r := range variants(t) {
		for kind, s := range map[string]*drawing.Scene{"section": view.Section(r), "plan": view.Plan(r), "options": view.Options(r)} {
			var b bytes.Buffer
			if err := s.WritePDF(&b, drawing.Meta{Created: time.Date(2026, 4, 6, 0, 0, 0, 0, time.UTC)}); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, name+"-"+kind+".pdf"), b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// TestThePicturesPassTheDrawingOffice runs the lint of package drawing over
// every picture: text on text, lines through text, things off the sheet.
func TestThePicturesPassTheDrawingOffice(t *testing.T) {
	for name, r := range variants(t) {
		for kind, s := range map[string]*drawing.Scene{"section": view.Section(r), "plan": view.Plan(r), "options": view.Options(r)} {
			for _, fault := range s.Lint() {
				t.Errorf("%s of %s: %s", kind, name, fault)
			}
		}
	}
}

func paint(d *job.Description) { d.Choices.Finish = "paint" }
