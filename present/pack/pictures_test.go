package pack_test

import (
	"bytes"
	"flag"
	"os"
	"testing"

	"scarfwright/present/view"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
)

var update = flag.Bool("update", false, "rewrite the pictures in docs/pictures")

// TestPicturesOfTheReadmeAreCurrent keeps the README's pictures what the program draws.
func TestPicturesOfTheReadmeAreCurrent(t *testing.T) {
	d, err := demo.Parse("day-launch")
	if err != nil {
		t.Fatal(err)
	}
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	for name, write := range map[string]func(*bytes.Buffer) error{
		"section.svg": func(b *bytes.Buffer) error { return view.Section(r).WriteSVG(b) },
		"plan.svg":    func(b *bytes.Buffer) error { return view.Plan(r).WriteSVG(b) },
	} {
		path := "../../docs/pictures/" + name
		var b bytes.Buffer
		if err := write(&b); err != nil {
			t.Fatal(err)
		}
		if *update {
			if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		got, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, b.Bytes()) {
			t.Errorf("%s is not what demo job 1 draws now: run make golden and look at it", path)
		}
	}
}
