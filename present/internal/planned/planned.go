// Package planned plans demo jobs for the tests of the papers and the drawings.
package planned

import (
	"testing"

	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

// Demo returns the plan of a demo job after changes to it.
func Demo(t testing.TB, name string, changes ...func(*job.Description)) repair.Result {
	t.Helper()
	d, err := demo.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	for _, change := range changes {
		change(&d)
	}
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Painted makes a job's finish paint.
func Painted(d *job.Description) { d.Choices.Finish = "paint" }
