package sheet_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"scarfwright/present/internal/planned"
	"scarfwright/present/sheet"
	"scarfwright/repair/caution"
)

// render prints a document into memory.
func render(t testing.TB, d document) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := d.print(&b); err != nil {
		t.Fatalf("%s: %v", d.name, err)
	}
	return b.Bytes()
}

var texts = map[string]string{}

// textOf is what poppler reads on a document, read once for all tests.
func textOf(t testing.TB, d document) string {
	t.Helper()
	if _, ok := texts[d.name]; !ok {
		texts[d.name] = pdftotext(t, render(t, d))
	}
	return texts[d.name]
}

// pdftotext runs poppler's reader over a PDF; the test is skipped where it is
// not installed.
func pdftotext(t testing.TB, pdf []byte, args ...string) string {
	t.Helper()
	tool, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("pdftotext (poppler-utils) is not installed")
	}
	path := filepath.Join(t.TempDir(), "x.pdf")
	if err := os.WriteFile(path, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(tool, append(args, path, "-")...).Output()
	if err != nil {
		t.Fatalf("pdftotext: %v", err)
	}
	return string(out)
}

// plain joins the words of a text with single spaces.
func plain(s string) string { return strings.Join(strings.Fields(s), " ") }

func TestEveryPageSaysWhatItBelongsTo(t *testing.T) {
	for _, d := range documents(t) {
		text := textOf(t, d)
		pages := strings.Split(strings.TrimSuffix(text, "\f"), "\f")
		for i, page := range pages {
			page = plain(page)
			want := []string{fmt.Sprintf("page %d of %d", i+1, len(pages)), "input hash", "scarfwright test", "Job D-0"}
			// The caution is looked for in pieces: lines may be read in between.
			want = append(want, "makers' data sheets and safety data sheets rule", "estimates for")
			for _, w := range want {
				if !strings.Contains(page, w) {
					t.Errorf("%s, page %d of %d: %q is missing", d.name, i+1, len(pages), w)
				}
			}
		}
	}
	if !strings.HasPrefix(caution.General, "The makers' data sheets") {
		t.Fatal("the general caution has changed: look for its new words here")
	}
}

func TestNothingPrintsAProgrammersMistake(t *testing.T) {
	wrong := regexp.MustCompile(`NaN|[+-]?Inf\b|%!|<nil>|e[+-]\d\d|-0 `)
	for _, d := range documents(t) {
		if m := wrong.FindString(textOf(t, d)); m != "" {
			t.Errorf("%s prints %q", d.name, m)
		}
	}
}

// forbidden are the words this program never uses of a repair, and ounces that
// do not say of what.
var forbidden = regexp.MustCompile(`(?i)\b(safe|certified|guaranteed|approved)\b|\boz\b [^(/]`)

func TestNoForbiddenWordIsPrinted(t *testing.T) {
	for _, d := range documents(t) {
		if m := forbidden.FindString(strings.ReplaceAll(plain(textOf(t, d)), "fl oz", "")); m != "" {
			t.Errorf("%s prints %q", d.name, m)
		}
	}
}

func TestTheSameInputsGiveTheSameBytes(t *testing.T) {
	for _, d := range documents(t) {
		if !bytes.Equal(render(t, d), render(t, d)) {
			t.Errorf("%s differs from one printing to the next", d.name)
		}
	}
}

// TestNoWordLeavesThePage asks poppler where every word stands: all of them at
// least 8 mm inside the paper's edge, the least a common office printer leaves
// white being about 4 to 6 mm (from memory).
func TestNoWordLeavesThePage(t *testing.T) {
	const least = 8.0 * 72 / 25.4
	for _, d := range documents(t) {
		dec := xml.NewDecoder(strings.NewReader(pdftotext(t, render(t, d), "-bbox")))
		dec.Strict = false
		var w, h float64
		page, words := 0, 0
		for {
			tok, err := dec.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				t.Fatalf("%s: %v", d.name, err)
			}
			e, ok := tok.(xml.StartElement)
			if !ok {
				continue
			}
			at := map[string]float64{}
			for _, a := range e.Attr {
				var x float64
				if _, err := fmt.Sscan(a.Value, &x); err == nil {
					at[a.Name.Local] = x
				}
			}
			switch e.Name.Local {
			case "page":
				page++
				w, h = at["width"], at["height"]
			case "word":
				words++
				if at["xMin"] < least || at["yMin"] < least || at["xMax"] > w-least || at["yMax"] > h-least {
					t.Errorf("%s, page %d: a word stands at %.0f..%.0f, %.0f..%.0f of %.0f x %.0f points", d.name, page, at["xMin"], at["xMax"], at["yMin"], at["yMax"], w, h)
				}
			}
		}
		if words < 50 {
			t.Errorf("%s: only %d words were found", d.name, words)
		}
	}
}

func TestAReferredJobGetsNoCardAndNoOperations(t *testing.T) {
	skiff := planned.Demo(t, "work-skiff")
	for name, f := range map[string]func() error{
		"job card":  func() error { return sheet.JobCard(io.Discard, skiff, options("A4", "metric")) },
		"templates": func() error { return sheet.Templates(io.Discard, skiff, options("A4", "metric")) },
	} {
		if err := f(); !errors.Is(err, sheet.ErrNotReleased) {
			t.Errorf("%s of a referred job: got error %v, want ErrNotReleased", name, err)
		}
	}
	var b bytes.Buffer
	if err := sheet.ReferralSheet(&b, skiff, options("A4", "metric")); err != nil {
		t.Fatal(err)
	}
	text := plain(pdftotext(t, b.Bytes()))
	if strings.Contains(text, "Operations") || strings.Contains(text, "At the pot") {
		t.Error("the referral sheet holds operations")
	}
	for _, ref := range skiff.Survey.Referrals {
		if first := strings.Fields(ref.Rule)[0]; !strings.Contains(text, first) {
			t.Errorf("the referral sheet does not name the rule %q", ref.Rule)
		}
	}
	if err := sheet.ReferralSheet(io.Discard, planned.Demo(t, "day-launch"), options("A4", "metric")); err == nil {
		t.Error("a released job got a referral sheet")
	}
}

func TestTheCardHoldsWhatTheWorkNeeds(t *testing.T) {
	launch := planned.Demo(t, "day-launch")
	var b bytes.Buffer
	if err := sheet.JobCard(&b, launch, options("A4", "metric")); err != nil {
		t.Fatal(err)
	}
	text := plain(pdftotext(t, b.Bytes(), "-layout"))
	for _, s := range launch.Programme.Steps {
		if !strings.Contains(text, s.Name) {
			t.Errorf("the card does not name step %d, %q", s.Number, s.Name)
		}
		if s.Hold != nil && !strings.Contains(text, "HOLD "+s.Hold.Letter+": "+s.Hold.What) {
			t.Errorf("hold point %s is not on the card", s.Hold.Letter)
		}
	}
	for _, c := range launch.Cautions {
		if words := strings.Join(strings.Fields(c.Text)[:6], " "); !strings.Contains(text, words) {
			t.Errorf("a caution is not on the card: %q", c.Text)
		}
	}
	for _, v := range launch.Verdicts {
		if first := strings.Fields(v.What)[0]; !strings.Contains(text, first) {
			t.Errorf("a verdict is not on the card: %q", v.What)
		}
	}
	for _, s := range launch.Mixing.Sessions {
		if dose := fmt.Sprintf("%.0f g", s.Batches.Measured.Resin.Grams()); !strings.Contains(text, dose) {
			t.Errorf("%s: the dose of %s is not on the card", s.Name, dose)
		}
	}
}

func TestUSUnitsArePrinted(t *testing.T) {
	for _, d := range documents(t) {
		text := plain(textOf(t, d))
		us := strings.HasSuffix(d.name, "-us")
		if strings.Contains(d.name, "card") && strings.Contains(d.name, "launch") {
			if got := strings.Contains(text, "Dimensions in inches"); got != us {
				t.Errorf("%s: dimensions in inches: got %v, want %v", d.name, got, us)
			}
			if got := strings.Contains(text, "oz (mass)"); got != us {
				t.Errorf("%s: oz (mass): got %v, want %v", d.name, got, us)
			}
		}
	}
}
