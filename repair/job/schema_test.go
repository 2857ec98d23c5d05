package job_test

import (
	"encoding/json"
	"flag"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/google/jsonschema-go/jsonschema"

	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

// go test ./repair/job -update writes docs/job-file.md and its schema anew.
var update = flag.Bool("update", false, "write the documents made from the tags")

const (
	schemaFile = "../../docs/job-file.schema.json"
	manualFile = "../../docs/job-file.md"
	begin      = "<!-- made by go test ./repair/job -update: begin -->\n"
	end        = "<!-- made by go test ./repair/job -update: end -->\n"
)

func TestSchemaDocumentIsCurrent(t *testing.T) {
	want, err := job.Schema()
	if err != nil {
		t.Fatal(err)
	}
	current(t, schemaFile, string(want))
}

func TestManualIsCurrent(t *testing.T) {
	b, err := os.ReadFile(manualFile)
	if err != nil {
		t.Fatal(err)
	}
	head, rest, ok := strings.Cut(string(b), begin)
	_, tail, ok2 := strings.Cut(rest, end)
	if !ok || !ok2 {
		t.Fatalf("%s has lost its marks", manualFile)
	}
	current(t, manualFile, head+begin+job.Manual()+"\n"+end+tail)
}

func current(t *testing.T, file, want string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != want {
		t.Errorf("%s is not what the tags say; run go test ./repair/job -update", file)
	}
}

// examples returns the two files in the manual: the small whole one, and that one
// with the shelf that shows a sheet of one's own.
func examples(t *testing.T) (small, withSheet string) {
	t.Helper()
	b, err := os.ReadFile(manualFile)
	if err != nil {
		t.Fatal(err)
	}
	part := strings.Split(string(b), "```yaml\n")
	if len(part) != 3 {
		t.Fatalf("the manual has %d examples, want 2", len(part)-1)
	}
	small, _, _ = strings.Cut(part[1], "```")
	shelf, _, _ := strings.Cut(part[2], "```")
	head, _, _ := strings.Cut(small, "shelf:\n")
	return small, head + shelf
}

// What a reader of the manual copies parses, as an editor reads it too, and comes
// back from its export the same.
func TestManualExamplesParse(t *testing.T) {
	small, withSheet := examples(t)
	for _, example := range []string{small, withSheet} {
		if p := parse(t, example); p != nil {
			t.Errorf("%+v", p)
			continue
		}
		if err := resolved(t).Validate(value(t, example)); err != nil {
			t.Error(err)
		}
		d, err := job.Parse("manual", []byte(example))
		if err != nil {
			t.Fatal(err)
		}
		first, err := job.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		if back, err := job.Parse("export", first); err != nil || !reflect.DeepEqual(back, d) {
			t.Errorf("the export reads as another job: %v\n%s", err, first)
		}
	}
}

// A sheet that cannot be is shown at its line.
func TestSlipsOfASheetHaveLines(t *testing.T) {
	_, withSheet := examples(t)
	for _, c := range []struct{ old, now, want string }{
		{"{at: 25 °C, time: 6.5 h}", "{at: 25 °C, time: 28 h}", "28 h at 25 °C is longer than 20 h at 15 °C"},
		{"{at: 20 °C, time: 5 h}", "{at: 20 °C, time: 21 h}", "gelled only after 21 h"},
		{"peak: 70 °C", "peak: 20 °C", "above the 25 °C"},
		{"recoat_to: 18 h", "recoat_to: 4 h", "not before 4 h"},
		{"warmed by 25 K", "warm", "must be one of gel"},
		{"mass: 50 g", "mass: 50", "mass"},
	} {
		if strings.Count(withSheet, c.old) != 1 {
			t.Fatalf("%q does not stand once in the example", c.old)
		}
		p := parse(t, strings.Replace(withSheet, c.old, c.now, 1))
		if len(p) != 1 || p[0].Line < 20 || !strings.Contains(p[0].Message, c.want) {
			t.Errorf("%s: got %+v, want one problem with %q", c.now, p, c.want)
		}
	}
}

func resolved(t *testing.T) *jsonschema.Resolved {
	t.Helper()
	b, err := job.Schema()
	if err != nil {
		t.Fatal(err)
	}
	var s jsonschema.Schema
	if err := json.Unmarshal(b, &s); err != nil {
		t.Fatal(err)
	}
	r, err := s.Resolve(nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// value reads YAML the way an editor does, types and all.
func value(t *testing.T, text string) any {
	t.Helper()
	var v any
	if err := yaml.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(b, &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// The schema accepts what the reader accepts, as written and as exported.
func TestSchemaAcceptsTheDemoJobs(t *testing.T) {
	r := resolved(t)
	for _, j := range demo.Jobs() {
		if err := r.Validate(value(t, string(j.Data))); err != nil {
			t.Errorf("%s: %v", j.File, err)
		}
		d, err := demo.Parse(j.Name)
		if err != nil {
			t.Fatal(err)
		}
		b, err := job.Marshal(d)
		if err != nil {
			t.Fatal(err)
		}
		if err := r.Validate(value(t, string(b))); err != nil {
			t.Errorf("%s, exported: %v", j.File, err)
		}
	}
}

// What an editor should underline while one types.
func TestSchemaRefuses(t *testing.T) {
	r := resolved(t)
	for _, c := range []struct{ what, old, now string }{
		{"an unknown name", "  short: 400 mm", "  short: 400 mm\n  shrot: 1 mm"},
		{"a required name left out", "  fibre: glass\n", ""},
		{"a word that is not allowed", "  use: private", "  use: racing"},
		{"a number without a unit", "  short: 400 mm", "  short: 400"},
		{"a quantity without a unit", "  short: 400 mm", "  short: '400'"},
		{"a text where a list belongs", "    ellipse: [120 mm, 80 mm]", "    ellipse: 120 mm"},
		{"a date written another way", "  title: A small hole", "  title: A small hole\n  date: 3.4.2026"},
		{"a number out of range", "choices:", "choices:\n  ratio: 3"},
	} {
		if err := r.Validate(value(t, spoil(t, c.old, c.now))); err == nil {
			t.Errorf("%s: accepted", c.what)
		}
	}
}

// Every name of the format has a line of explanation.
func TestEveryNameIsExplained(t *testing.T) {
	keys := job.Reference()
	if len(keys) < 120 {
		t.Errorf("got %d names, want the whole format", len(keys))
	}
	for _, k := range keys {
		if k.Doc == "" || k.Sort == "" {
			t.Errorf("%s is not explained", k.Path)
		}
	}
}
