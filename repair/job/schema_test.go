package job_test

import (
	"encoding/json"
	"flag"
	"os"
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

// The file that a reader of the manual copies parses.
func TestManualExampleParses(t *testing.T) {
	b, err := os.ReadFile(manualFile)
	if err != nil {
		t.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(b), "```yaml\n")
	example, _, ok := strings.Cut(rest, "```")
	if !ok {
		t.Fatal("the manual has no example")
	}
	if p := parse(t, example); p != nil {
		t.Errorf("%+v", p)
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
