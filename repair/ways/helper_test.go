package ways

import (
	"math"
	"testing"

	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

// demoJob reads a demo job and lets it be changed.
func demoJob(t testing.TB, name string, change ...func(d *job.Description)) job.Description {
	t.Helper()
	d, err := demo.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range change {
		f(&d)
	}
	if err := job.Validate(d); err != nil {
		t.Fatalf("%s, changed: %v", name, err)
	}
	return d
}

// solved keeps the panels of all tests: TestMemory shows that it changes nothing.
var solved Memory

func compared(t testing.TB, d job.Description) Result {
	t.Helper()
	r, err := Compare(d, catalog.Default(), &solved)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// way finds a way by its key.
func (r Result) way(t testing.TB, key string) Way {
	t.Helper()
	var keys []string
	for _, w := range r.Ways {
		if w.Key == key {
			return w
		}
		keys = append(keys, w.Key)
	}
	t.Fatalf("no way %q among %v", key, keys)
	return Way{}
}

func near(t testing.TB, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance*math.Abs(want)) {
		t.Errorf("%s: %.5g, want %.5g within %.2g %%", what, got, want, 100*tolerance)
	}
}
