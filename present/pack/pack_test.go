package pack_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"path"
	"slices"
	"strings"
	"testing"
	"time"

	"scarfwright/present/internal/planned"
	"scarfwright/present/pack"
	"scarfwright/present/sheet"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

var options = sheet.Options{Now: time.Date(2026, 5, 4, 8, 0, 0, 0, time.UTC), Program: "scarfwright test"}

func written(t testing.TB, f pack.File) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := f.Write(&b); err != nil {
		t.Fatalf("%s: %v", f.Name, err)
	}
	return b.Bytes()
}

func ExampleFiles() {
	d, _ := demo.Parse("club-dinghy")
	r, _ := repair.Plan(d, catalog.Default())
	for _, f := range pack.Files(r, options) {
		fmt.Println(f.Name)
	}
	// Output:
	// job-card.pdf
	// estimate.pdf
	// working.pdf
	// plan.json
	// job.yaml
}

// begins is how a file of each kind begins.
var begins = map[string]string{
	".pdf": "%PDF-", ".svg": "<", ".png": "\x89PNG\r\n\x1a\n", ".dxf": "", ".json": "{", ".yaml": "format: 1",
}

// Every file of every demo job's pack can be written, is what its name says, and
// comes out the same a second time.
func TestEveryPackCanBeWritten(t *testing.T) {
	for _, j := range demo.Jobs() {
		names := map[string]bool{}
		for _, f := range pack.Files(planned.Demo(t, j.Name), options) {
			if names[f.Name] {
				t.Errorf("%s: two files are called %s", j.Name, f.Name)
			}
			names[f.Name] = true
			b := written(t, f)
			head, known := begins[path.Ext(f.Name)]
			if !known || !strings.HasPrefix(string(b), head) || len(b) < 200 || f.Title == "" || f.Type == "" {
				t.Errorf("%s: %s (%s, %q) has %d bytes and begins %q", j.Name, f.Name, f.Type, f.Title, len(b), b[:min(20, len(b))])
			}
			if !bytes.Equal(b, written(t, f)) {
				t.Errorf("%s: %s differs when written again", j.Name, f.Name)
			}
		}
	}
}

// A plan that is referred on, or not planned, has nothing to cut or mix from.
func TestWhatIsNotReleasedHasNoCardAndNoTemplates(t *testing.T) {
	for _, j := range demo.Jobs() {
		r := planned.Demo(t, j.Name)
		var names []string
		for _, f := range pack.Files(r, options) {
			names = append(names, f.Name)
		}
		has := func(prefix string) bool {
			return slices.ContainsFunc(names, func(n string) bool { return strings.HasPrefix(n, prefix) })
		}
		if has("job-card") != r.Released() || has("templates") && !r.Released() || has("referral-sheet") != r.Survey.Referred() {
			t.Errorf("%s: released %v, referred %v, files %v", j.Name, r.Released(), r.Survey.Referred(), names)
		}
	}
}

func TestThePackHoldsThePlanAndTheJob(t *testing.T) {
	r := planned.Demo(t, "day-launch")
	for _, f := range pack.Files(r, options) {
		switch f.Name {
		case "plan.json":
			var got struct {
				Hash   string `json:"hash"`
				Design struct {
					Taper float64 `json:"taper_m"`
				} `json:"design"`
			}
			if err := json.Unmarshal(written(t, f), &got); err != nil || got.Hash != r.Hash || got.Design.Taper != r.Design.Taper.M() {
				t.Errorf("plan.json: got %+v, %v; want hash %s and taper %v", got, err, r.Hash, r.Design.Taper)
			}
		case "job.yaml":
			d, err := job.Read("job.yaml", bytes.NewReader(written(t, f)))
			if err != nil || repair.Hash(d) != r.Hash {
				t.Errorf("job.yaml: %v; want a job with hash %s", err, r.Hash)
			}
		}
	}
}

// The whole pack: planned, and every file written. The goal is under 1 s.
func BenchmarkPackDemo1(b *testing.B) {
	d, err := demo.Parse("day-launch")
	if err != nil {
		b.Fatal(err)
	}
	cat := catalog.Default()
	b.ReportAllocs()
	for b.Loop() {
		r, err := repair.Plan(d, cat)
		if err != nil {
			b.Fatal(err)
		}
		for _, f := range pack.Files(r, options) {
			if err := f.Write(io.Discard); err != nil {
				b.Fatal(err)
			}
		}
	}
}
