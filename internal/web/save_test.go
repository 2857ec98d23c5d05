package web_test

import (
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestSave(t *testing.T) {
	dir := t.TempDir()
	s := newSite(t, dir)
	read := func(name string) string {
		b, _ := os.ReadFile(filepath.Join(dir, name))
		return string(b)
	}
	as := func(name string) url.Values { return url.Values{"as": {name}} }

	if w := ask(s, "POST", "/jobs/day-launch/save", as("mine")); w.Code != 303 || w.Header().Get("Location") != "/jobs/mine" {
		t.Fatalf("got status %d, Location %q", w.Code, w.Header().Get("Location"))
	}
	if read("mine.yaml") != dayLaunch(t) {
		t.Error("got another file than the job's own")
	}
	if w := ask(s, "GET", "/jobs/mine", nil); w.Code != 200 || !strings.Contains(w.Body.String(), "In the data folder") {
		t.Errorf("got status %d for the saved job", w.Code)
	}
	if w := ask(s, "GET", "/", nil); !strings.Contains(w.Body.String(), "/jobs/mine") {
		t.Error("got a home page without the saved job")
	}

	// A name that is taken is not overwritten unasked; asked, the former file stays beside it.
	if w := ask(s, "POST", "/jobs/sloop/save", as("mine")); w.Code != 409 || !strings.Contains(w.Body.String(), "There is a job mine already") {
		t.Errorf("got status %d for a name that is taken, want 409", w.Code)
	}
	if read("mine.yaml") != dayLaunch(t) {
		t.Fatal("the file was overwritten unasked")
	}
	if w := ask(s, "POST", "/jobs/sloop/save", url.Values{"as": {"mine"}, "overwrite": {"yes"}}); w.Code != 303 {
		t.Errorf("got status %d for an overwrite that was asked for", w.Code)
	}
	if !strings.Contains(read("mine.yaml"), "D-02") || read("mine.yaml.bak") != dayLaunch(t) {
		t.Error("got another file, or none kept beside it")
	}

	// A plan made otherwise is saved as it was shown.
	if w := ask(s, "POST", "/jobs/day-launch/save?ratio=20", as("wider")); w.Code != 303 {
		t.Errorf("got status %d", w.Code)
	}
	if !strings.Contains(read("wider.yaml"), "ratio: 20") {
		t.Error("got a saved job without its ratio")
	}

	for _, name := range []string{"", "..", "../x", "a/b", `a\b`, "A b", ".hidden", "con", "x.yaml", strings.Repeat("a", 61), "-x"} {
		w := ask(s, "POST", "/jobs/day-launch/save", as(name))
		if w.Code != 422 || !strings.Contains(w.Body.String(), "small letters") {
			t.Errorf("name %q: got status %d, want 422", name, w.Code)
		}
	}
	files, _ := os.ReadDir(dir)
	if len(files) != 3 {
		t.Errorf("got %d files in the folder, want 3", len(files))
	}
}

func TestAFileThatCannotBeReadIsStillListed(t *testing.T) {
	dir := t.TempDir()
	text := strings.Replace(dayLaunch(t), "long: 620 mm", "long: 620", 1)
	if err := os.WriteFile(filepath.Join(dir, "broken.yaml"), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("/etc/passwd", filepath.Join(dir, "out.yaml")); err != nil {
		t.Skip(err)
	}
	s := newSite(t, dir)
	if w := ask(s, "GET", "/", nil); !strings.Contains(w.Body.String(), "Cannot be read: 1 problem") {
		t.Error("got a home page that does not say so")
	}
	if w := ask(s, "GET", "/jobs/broken", nil); w.Code != 422 || !strings.Contains(w.Body.String(), "620") {
		t.Errorf("got status %d for its page, want 422", w.Code)
	}
	if w := ask(s, "GET", "/jobs/out", nil); w.Code == 200 || strings.Contains(w.Body.String(), "root:") {
		t.Errorf("got status %d for a link that leads out of the folder", w.Code)
	}
}
