package sheet_test

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"scarfwright/present/internal/planned"
	"scarfwright/present/sheet"
	"scarfwright/repair"
)

// printed is the date on every sheet the tests print.
var printed = time.Date(2026, 4, 7, 8, 30, 0, 0, time.UTC)

func options(paper, units string) sheet.Options {
	return sheet.Options{Paper: paper, Units: units, Now: printed, Program: "scarfwright test"}
}

// document is one paper of one job.
type document struct {
	name  string
	print func(io.Writer) error
}

var (
	printedOnce sync.Once
	printedAll  []document
)

// documents are papers of every sort, on both papers, in both units, planned
// once for all tests.
func documents(t testing.TB) []document {
	t.Helper()
	printedOnce.Do(func() { printedAll = plan(t) })
	return printedAll
}

func plan(t testing.TB) []document {
	var out []document
	add := func(name string, r repair.Result, o sheet.Options, f func(io.Writer, repair.Result, sheet.Options) error) {
		out = append(out, document{name, func(w io.Writer) error { return f(w, r, o) }})
	}
	launch := planned.Demo(t, "day-launch")
	sloop := planned.Demo(t, "sloop", planned.Painted)
	add("launch-card-A4", launch, options("A4", "metric"), sheet.JobCard)
	add("launch-card-Letter-us", launch, options("Letter", "us"), sheet.JobCard)
	add("sloop-card-A4", sloop, options("A4", "metric"), sheet.JobCard)
	add("rib-card-Letter", planned.Demo(t, "rib-console", planned.Painted), options("Letter", "metric"), sheet.JobCard)
	add("dinghy-card-A4", planned.Demo(t, "club-dinghy"), options("A4", "metric"), sheet.JobCard)
	add("skiff-referral-A4", planned.Demo(t, "work-skiff"), options("A4", "metric"), sheet.ReferralSheet)
	add("launch-estimate-A4", launch, options("A4", "metric"), sheet.Estimate)
	add("sloop-estimate-Letter-us", sloop, options("Letter", "us"), sheet.Estimate)
	add("rib-working-A4", planned.Demo(t, "rib-console", planned.Painted), options("A4", "metric"), sheet.Working)
	add("launch-working-A4", launch, options("A4", "metric"), sheet.Working)
	add("sloop-working-Letter", sloop, options("Letter", "metric"), sheet.Working)
	add("launch-templates-A4", launch, options("A4", "metric"), sheet.Templates)
	add("sloop-templates-Letter-us", sloop, options("Letter", "us"), sheet.Templates)
	return out
}

// TestLook writes the papers to the folder in SHEET_LOOK, to be looked at.
func TestLook(t *testing.T) {
	dir := os.Getenv("SHEET_LOOK")
	if dir == "" {
		t.Skip("set SHEET_LOOK to a folder to write the papers there")
	}
	for _, d := range documents(t) {
		var b bytes.Buffer
		start := time.Now()
		if err := d.print(&b); err != nil {
			t.Errorf("%s: %v", d.name, err)
			continue
		}
		t.Logf("%s: %v, %d bytes", d.name, time.Since(start).Round(time.Millisecond), b.Len())
		if err := os.WriteFile(filepath.Join(dir, d.name+".pdf"), b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
