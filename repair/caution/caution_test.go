package caution_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"scarfwright/repair/caution"
)

var works = []caution.Work{
	caution.Lifting, caution.Grinding, caution.Peroxide, caution.Polyester, caution.Epoxy, caution.Solvent, caution.Mixing,
	caution.Gelcoat, caution.Sanding, caution.Heating, caution.Lamp, caution.Confined, caution.Launch,
}

func TestEveryWorkHasItsCautions(t *testing.T) {
	for _, w := range works {
		cs := caution.For(w)
		if len(cs) == 0 {
			t.Errorf("%s: no caution", w)
		}
		for _, c := range cs {
			if !slices.Contains([]caution.Signal{caution.Danger, caution.Warning, caution.CautionW, caution.Notice}, c.Signal) {
				t.Errorf("%s: signal word %q", w, c.Signal)
			}
			if c.Text == "" || c.Source == "" || !strings.HasSuffix(c.Text, ".") {
				t.Errorf("%s: a caution is a sentence with a source: %+v", w, c)
			}
		}
	}
}

func TestEachCautionOnceAndInOrder(t *testing.T) {
	got := caution.For(caution.Peroxide, caution.Mixing, caution.Peroxide)
	want := append(caution.For(caution.Peroxide), caution.For(caution.Mixing)...)
	if !slices.Equal(got, want) {
		t.Errorf("got %d cautions, want %d in the order asked for", len(got), len(want))
	}
	if got := caution.For("no such work"); got != nil {
		t.Errorf("unknown work: got %v", got)
	}
}

// What kills carries the word that says so.
func TestThePeroxideIsADanger(t *testing.T) {
	text := ""
	for _, c := range caution.For(caution.Peroxide) {
		if c.Signal != caution.Danger {
			t.Errorf("%s: %s", c.Signal, c.Text)
		}
		text += c.Text
	}
	for _, want := range []string{"blinds", "face shield", "accelerator", "acetone"} {
		if !strings.Contains(text, want) {
			t.Errorf("the peroxide's cautions do not speak of %q", want)
		}
	}
}

// A caution promises nothing.
func TestNoCautionCallsAnythingSafe(t *testing.T) {
	promise := regexp.MustCompile(`(?i)\b(safe|certified|guaranteed|approved)\b`)
	for _, c := range caution.For(works...) {
		if m := promise.FindString(c.Text); m != "" {
			t.Errorf("%q in %q", m, c.Text)
		}
	}
	if promise.MatchString(caution.General) {
		t.Errorf("the general caution promises: %s", caution.General)
	}
}
