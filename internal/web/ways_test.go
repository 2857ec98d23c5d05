package web_test

import (
	"html"
	"net/http"
	"strings"
	"testing"

	"scarfwright/repair/caution"
)

// The page of the ways: the recommendation and its reason first, every way, cautions;
// other plies; papers; a referral in place of a recommendation.
func TestOptions(t *testing.T) {
	s := newSite(t, "")
	get := func(target string, status int) string {
		t.Helper()
		w := ask(s, http.MethodGet, target, nil)
		if w.Code != status {
			t.Fatalf("%s: status %d, want %d", target, w.Code, status)
		}
		return w.Body.String()
	}
	page := html.UnescapeString(get("/jobs/sloop/options", 200))
	for _, want := range []string{
		"Recommended: taper from outside", "Its least is", "Filler plug, cloth over it outside", "never recommended", "does not fit",
		"By hand", "What to measure next", "Limit:", caution.General, "WARNING", "calculation-sheet.pdf", "<svg",
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the page does not hold %q", want)
		}
	}
	if other := get("/jobs/sloop/options?plies=bx600,+bx600/bx600", 200); !strings.Contains(other, "3 × BX600") || !strings.Contains(other, "calculation-sheet.pdf?plies=") {
		t.Error("three plies asked for are not compared, or their papers forget them")
	}
	if wrong := get("/jobs/sloop/options?plies=bx600,gold", 422); !strings.Contains(wrong, "There is a problem") || !strings.Contains(wrong, "gold") {
		t.Error("an unknown ply is not told")
	}
	get("/jobs/sloop/options?ratio=99", 422)
	get("/jobs/sloop/options/options.pdf?ratio=99", 422)
	get("/jobs/sloop/options/nothing.pdf", 404)
	get("/jobs/nobody/options", 404)
	if pdf := get("/jobs/sloop/options/calculation-sheet.pdf", 200); !strings.HasPrefix(pdf, "%PDF-") {
		t.Error("the calculation sheet is no PDF")
	}
	skiff := get("/jobs/work-skiff/options", 200)
	if !strings.Contains(skiff, "Stop: refer on first") || strings.Contains(skiff, "Recommended:") || !strings.Contains(skiff, "Nothing is recommended") || !strings.Contains(skiff, "/files/referral-sheet.pdf") {
		t.Error("demo job 6 is not referred on, or something is recommended all the same")
	}
	if scratch := get("/jobs/club-dinghy/options", 200); !strings.Contains(scratch, "nothing to compare") {
		t.Error("a scratch does not say that there is nothing to compare")
	}
}
