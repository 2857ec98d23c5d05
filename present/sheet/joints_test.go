package sheet_test

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"scarfwright/present/internal/planned"
	"scarfwright/present/sheet"
	"scarfwright/repair/check"
)

// The card keeps every word of every joint: those that are ok in the table of joints,
// the others among the checks and in the table.
func TestTheCardLosesNoJoint(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop"} {
		r := planned.Demo(t, name)
		var b bytes.Buffer
		if err := sheet.JobCard(&b, r, options("A4", "metric")); err != nil {
			t.Fatal(err)
		}
		got := words(pdftotext(t, b.Bytes(), "-raw")) // in the order it was printed, cell by cell
		if len(r.Joints) < 3 {
			t.Fatalf("%s: got %d joints", name, len(r.Joints))
		}
		for _, j := range r.Joints {
			x := j.Taken()
			want := []string{j.Surface(), x.Preparation, x.Risk, x.Ruling, x.Disagreement, x.Source(), j.Missed()}
			if x.Verdict != check.OK {
				want = append(want, j.Check().Why)
			}
			for _, s := range want {
				if !strings.Contains(got, words(s)) {
					t.Errorf("%s: %s: got a card without %q", name, j.What, s)
				}
			}
		}
	}
}

// words is a text without what a line break may change.
func words(s string) string { return regexp.MustCompile(`[\s-]+`).ReplaceAllString(s, "") }
