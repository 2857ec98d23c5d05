package view_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"scarfwright/present/drawing"
	"scarfwright/present/view"
	"scarfwright/repair/catalog"
	"scarfwright/repair/caution"
	"scarfwright/repair/demo"
	"scarfwright/repair/ways"
)

// The drawings of the ways hold what they must, and nothing in them overlaps.
func TestWaysDrawings(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop", "trawler-yacht", "work-skiff", "rib-console"} {
		if testing.Short() && name != "sloop" && name != "work-skiff" {
			continue
		}
		d, err := demo.Parse(name)
		if err != nil {
			t.Fatal(err)
		}
		r, err := ways.Compare(d, catalog.Default(), nil)
		if err != nil {
			t.Fatal(err)
		}
		for what, s := range map[string]*drawing.Scene{"bars": view.WaysBars(d, r), "field": view.WaysField(d, r), "slope": view.WaysSlope(d, r)} {
			if s == nil {
				if what == "bars" || name == "sloop" {
					t.Errorf("%s: no %s", name, what)
				}
				continue
			}
			for _, fault := range s.Lint() {
				t.Errorf("%s, %s: %s", name, what, fault)
			}
			var b bytes.Buffer
			if err := s.WriteSVG(&b); err != nil {
				t.Fatal(err)
			}
			text := b.String()
			if !strings.Contains(text, caution.General[12:30]) {
				t.Errorf("%s, %s: the caution is lost", name, what)
			}
			if len(r.Referrals) > 0 && !strings.Contains(text, "refer on first") {
				t.Errorf("%s, %s: the referral is lost", name, what)
			}
			if dir := os.Getenv("WAYS_PNG"); dir != "" {
				f, err := os.Create(dir + "/" + name + "-" + what + ".png")
				if err != nil {
					t.Fatal(err)
				}
				if err := s.WritePNG(f, 110); err != nil {
					t.Fatal(err)
				}
				f.Close()
			}
		}
	}
}
