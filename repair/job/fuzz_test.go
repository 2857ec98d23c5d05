package job_test

import (
	"bytes"
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

// FuzzParse: no input makes the reader panic or take long; what is refused is
// not half-read, and each problem has a place inside the file; what is accepted
// comes back from its export the same.
func FuzzParse(f *testing.F) {
	f.Add([]byte(good))
	f.Add([]byte(strings.Replace(good, "shelf:\n", `shelf:
  sheets:
    - name: mine
      class: polyester-laminating
      pot_criterion: viscosity doubled
      pot_life: [{at: 20 °C, dose: 1 %, time: 30 min}]
      film_gel: [{at: 20 °C, time: 1 h}, {at: 68 °F, dose: 2 %, time: 50 min}]
      sandable: [{at: 15 °C, time: 5 h}]
      through: [{at: 20 °C, time: 7 days}]
      peak: [{at: 25 °C, mass: 50 g, peak: 140 °C, after: 30 min}]
      recoat_from: 2 h
      recoat_to: 24 h
`, 1)))
	for _, j := range demo.Jobs() {
		f.Add(j.Data)
	}
	for _, s := range []string{"", "\n", "a: &x [*x]", "? a\n: b", "- - -", "a: |\n b\n  c", "{a: {b: [", "a: 'x\n\n y'", "\ufeff", "format: 99", "a: \"\\x00\"", "<<: 1", "- a\n- b: c\n  d", "\t", "a:\n b:\n c:"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		start := time.Now()
		d, err := job.Parse("fuzz", data)
		if took := time.Since(start); took > 2*time.Second {
			t.Errorf("took %v", took)
		}
		if err != nil {
			if !reflect.ValueOf(d).IsZero() {
				t.Error("half-read")
			}
			var all *job.Errors
			if !errors.As(err, &all) {
				t.Fatalf("got %T", err)
			}
			lines := bytes.Count(data, []byte("\n")) + 1
			for _, p := range all.Problems {
				if p.Line < 1 || p.Line > lines || p.Column < 1 {
					t.Errorf("%d:%d is outside a file of %d lines: %s", p.Line, p.Column, lines, p.Message)
				}
			}
			_ = err.Error()
			return
		}
		first, err := job.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		again, err := job.Parse("again", first)
		if err != nil || !reflect.DeepEqual(d, again) {
			t.Fatalf("the export reads as another job: %v\n%s", err, first)
		}
	})
}
