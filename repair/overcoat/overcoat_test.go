package overcoat_test

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
	"scarfwright/repair/check"
	"scarfwright/repair/overcoat"
)

func ExampleFind() {
	p, _ := overcoat.Find(overcoat.Epoxy, overcoat.Gelcoat, overcoat.Sanded)
	fmt.Println(p.Name(), p.Verdict)
	for _, s := range p.Statements {
		fmt.Println(s.Verdict, s.Says)
	}
	// Output:
	// gelcoat on epoxy (sanded) watch
	// watch possible for looks: full cure till dust is powder, ratio exact so that no amine is free, water wash, P80, waxed gelcoat
	// stop gelcoat should not be applied over epoxy
}

func ExampleWindow() {
	// A sheet says 2 to 8 h; in this cold the cure takes 2.5 times as long.
	from, to, words := overcoat.Window(si.Hours(2), si.Hours(8), 2.5, 2.5)
	fmt.Println(from.Hours(), to.Hours())
	fmt.Println(words)
	// Output:
	// 5 16
	// from 5 h, until 16 h at most after mixing: the cure takes 2.5 times as long as on the sheet, but the end is held to twice the sheet's 8 h; later, wash, let it go hard, and sand before the next coat
}

// TestEveryPairSaysWhoSaysSo: each statement has a source that docs/sources.md
// knows, and a provenance that fits it.
func TestEveryPairSaysWhoSaysSo(t *testing.T) {
	text, err := os.ReadFile("../../docs/sources.md")
	if err != nil {
		t.Fatal(err)
	}
	if len(overcoat.Pairs()) < 80 {
		t.Errorf("%d pairs: some are lost", len(overcoat.Pairs()))
	}
	for _, p := range overcoat.Pairs() {
		for _, s := range p.Statements {
			key, place, cited := strings.Cut(s.Source, ":")
			switch {
			case s.Source == string(overcoat.Practice) || s.Source == string(overcoat.Memory):
				if string(s.Provenance) != s.Source {
					t.Errorf("%s: %q is given as %q", p.Name(), s.Source, s.Provenance)
				}
			case !cited || place == "":
				t.Errorf("%s: source %q has no place", p.Name(), s.Source)
			case !strings.Contains(string(text), "**"+key+"**"):
				t.Errorf("%s: docs/sources.md does not list %s", p.Name(), key)
			case s.Provenance == overcoat.Memory || s.Provenance == overcoat.Practice:
				t.Errorf("%s: %s is a document, given as %q", p.Name(), key, s.Provenance)
			}
		}
	}
}

// TestDisagreementIsShown: where one statement alone would give another verdict
// than its neighbour, words say so, and the check carries them; and no verdict
// is milder than the mildest source.
func TestDisagreementIsShown(t *testing.T) {
	weight := map[check.State]int{check.OK: 0, check.Watch: 1, check.Stop: 2}
	disputed := 0
	for _, p := range overcoat.Pairs() {
		mildest, differ := 2, false
		for _, s := range p.Statements {
			mildest = min(mildest, weight[s.Verdict])
			differ = differ || s.Verdict != p.Statements[0].Verdict
		}
		if weight[p.Verdict] < mildest {
			t.Errorf("%s: %s, milder than every source", p.Name(), p.Verdict)
		}
		if differ {
			disputed++
			if p.Disagreement == "" || !strings.Contains(p.Check().Why, p.Disagreement) {
				t.Errorf("%s: the disagreement is not told", p.Name())
			}
		}
	}
	if disputed == 0 {
		t.Error("no pair is disputed: gelcoat on epoxy is")
	}
}

// TestWhatHoldsOnWhat: the rows that a yard must not get wrong.
func TestWhatHoldsOnWhat(t *testing.T) {
	for _, row := range []struct {
		below, above overcoat.Sort
		state        overcoat.State
		want         check.State
		says         string // in preparation or ruling
	}{
		// ADHESION-nd: the usual choice for repairs.
		{overcoat.OldLaminate, overcoat.Epoxy, overcoat.Sanded, check.OK, "P60 to P80"},
		// ADHESION-nd: polyester on an epoxy primer is not structural.
		{overcoat.Epoxy, overcoat.Polyester, overcoat.Sanded, check.Stop, "structural"},
		// Disputed between ADHESION-nd and GELSHEET-nd.
		{overcoat.EpoxyFiller, overcoat.Gelcoat, overcoat.Sanded, check.Watch, "Disputed"},
		{overcoat.Epoxy, overcoat.Gelcoat, overcoat.Tacky, check.Stop, "powder"},
		// FORUM-nd, and memory for the hours.
		{overcoat.Polyester, overcoat.Polyester, overcoat.Tacky, check.OK, "without wax"},
		{overcoat.Polyester, overcoat.Polyester, overcoat.Hard, check.OK, "grind"},
		// WAXPAGE-nd: nothing sticks, whatever it is.
		{overcoat.Gelcoat, overcoat.Gelcoat, overcoat.Waxed, check.Stop, "wax"},
		{overcoat.Epoxy, overcoat.Paint, overcoat.Waxed, check.Stop, "wax"},
		{overcoat.Epoxy, overcoat.Epoxy, overcoat.Contaminated, check.Stop, "find out"},
		// BLUSH-nd: water first, then paper.
		{overcoat.Epoxy, overcoat.Epoxy, overcoat.Hard, check.OK, "wash with water"},
		// Common practice: a repair bonds to laminate.
		{overcoat.Gelcoat, overcoat.Epoxy, overcoat.Sanded, check.Stop, "grind the gelcoat off"},
	} {
		p, ok := overcoat.Find(row.below, row.above, row.state)
		if !ok || p.Verdict != row.want || !strings.Contains(p.Preparation+p.Ruling, row.says) {
			t.Errorf("%s on %s (%s): got %v %s %q, want %s with %q", row.above, row.below, row.state, ok, p.Verdict, p.Preparation, row.want, row.says)
		}
		if p.Below != row.below || p.Above != row.above || p.State != row.state {
			t.Errorf("asked for %s on %s (%s), got %s", row.above, row.below, row.state, p.Name())
		}
	}
}

// TestASwappedLookupIsNotTheMirrorImage: what is found the wrong way round is
// the other pair's own row, or a stop, or nothing; a name that is no material panics.
func TestASwappedLookupIsNotTheMirrorImage(t *testing.T) {
	up, _ := overcoat.Find(overcoat.Polyester, overcoat.Epoxy, overcoat.Sanded)
	down, _ := overcoat.Find(overcoat.Epoxy, overcoat.Polyester, overcoat.Sanded)
	if up.Verdict != check.OK || down.Verdict != check.Stop {
		t.Errorf("epoxy on polyester %s, polyester on epoxy %s; want ok and stop", up.Verdict, down.Verdict)
	}
	if p, ok := overcoat.Find(overcoat.Polyester, overcoat.OldLaminate, overcoat.Sanded); ok {
		t.Errorf("an old laminate laid on something: got %s", p.Name())
	}
	for _, call := range []func(){
		func() { overcoat.Find("epoxi", overcoat.Epoxy, overcoat.Sanded) },
		func() { overcoat.Find(overcoat.Epoxy, "", overcoat.Sanded) },
		func() { overcoat.Find(overcoat.Anything, overcoat.Epoxy, overcoat.Waxed) },
		func() { overcoat.Find(overcoat.Epoxy, overcoat.Epoxy, "dry") },
		func() { overcoat.Window(si.Hours(2), si.Hours(8), 0, 0) },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Error("a name or a factor that does not exist went through")
				}
			}()
			call()
		}()
	}
}

// TestAJobsJoints follows a job from the old laminate to its finish.
func TestAJobsJoints(t *testing.T) {
	joints := overcoat.For(overcoat.Materials{Repair: overcoat.Epoxy, Filler: overcoat.EpoxyFiller, Finish: overcoat.Gelcoat})
	var got []string
	for _, j := range joints {
		got = append(got, fmt.Sprintf("%s: %s, window %v", j.What, j.Check().State, j.Window != nil && j.Window.Verdict == check.OK))
	}
	want := []string{
		"repair resin on the old laminate: ok, window false",
		"next session on the last session: ok, window true",
		"filler on the new laminate: ok, window true",
		"gelcoat on the filler: watch, window false",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	// A boat built in epoxy, repaired in polyester: nothing above it is laid.
	j := overcoat.For(overcoat.Materials{Old: overcoat.Epoxy, Repair: overcoat.Polyester})[0]
	if j.Check().State != check.Stop {
		t.Errorf("polyester on an epoxy boat: got %s, want stop", j.Check().State)
	}
	// Nobody lays an old laminate on gelcoat: not known is stop.
	j = overcoat.For(overcoat.Materials{Old: overcoat.Gelcoat, Repair: overcoat.OldLaminate})[0]
	if j.Check().State != check.Stop || !strings.Contains(j.Check().Why, "knows nothing") {
		t.Errorf("a pair out of the table: got %v, want a stop that says so", j.Check())
	}
}

// TestOf: the kinds are those of the catalogue.
func TestOf(t *testing.T) {
	for _, k := range []string{"epoxy", "polyester", "vinyl ester"} {
		if s, err := overcoat.Of(k); err != nil || string(s) != k {
			t.Errorf("%s: got %q, %v", k, s, err)
		}
	}
	if _, err := overcoat.Of("phenolic"); err == nil {
		t.Error("phenolic went through")
	}
}

// TestWindowRule: the end is never past twice the sheet's, never past what is
// modelled, grows with the factor until then; and a window ends after it begins
// or is none.
func TestWindowRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := rapid.Float64Range(0, 10).Draw(t, "from, h")
		to := rapid.Float64Range(0, 50).Draw(t, "to, h")
		k := rapid.Float64Range(0.05, 20).Draw(t, "factor")
		a, b, words := overcoat.Window(si.Hours(from), si.Hours(to), k, k)
		if b.Hours() > 2*to*(1+1e-12) || b.Hours() > k*to*(1+1e-12) {
			t.Fatalf("end %g h, sheet %g h, factor %g", b.Hours(), to, k)
		}
		none := a == 0 && b == 0
		if !none && b <= a {
			t.Fatalf("window from %g to %g h", a.Hours(), b.Hours())
		}
		if none != (to <= from || min(k, 2)*to <= k*from) {
			t.Fatalf("none is %v for %g to %g h, factor %g", none, from, to, k)
		}
		if words == "" {
			t.Fatal("no words")
		}
	})
}

func TestWindowRows(t *testing.T) {
	for _, row := range []struct {
		what                   string
		from, to, factor, a, b float64
		says                   string
	}{
		{"as on the sheet", 2, 8, 1, 2, 8, "at the sheet's temperature"},
		{"warm: shorter both ways (0.5 x)", 2, 8, 0.5, 1, 4, "times 0.5"},
		{"cold, below the cap (1.5 x)", 2, 8, 1.5, 3, 12, "times 1.5"},
		{"cold, at the cap: 2 x 8 h", 2, 8, 3, 6, 16, "held to twice"},
		{"so cold that it is ready after the cap: 5 x 4 h > 2 x 8 h", 4, 8, 5, 0, 0, "no window"},
		{"a sheet without an end", 4, 0, 1, 0, 0, "gives no window"},
	} {
		a, b, words := overcoat.Window(si.Hours(row.from), si.Hours(row.to), row.factor, row.factor)
		if a.Hours() != row.a || b.Hours() != row.b || !strings.Contains(words, row.says) {
			t.Errorf("%s: got %g to %g h, %q; want %g to %g h with %q", row.what, a.Hours(), b.Hours(), words, row.a, row.b, row.says)
		}
	}
}

// TestATableWithoutItsSourcesIsRefused spoils a good row, one thing at a time.
func TestATableWithoutItsSourcesIsRefused(t *testing.T) {
	const good = `- {below: [epoxy], above: [epoxy], state: wet, verdict: ok, prepare: p, risk: r, why: w, said: [{says: s, verdict: ok, source: from memory, how: from memory}]}
`
	if _, err := overcoat.ReadTable([]byte(good)); err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct{ from, to, says string }{
		{"said: [{says: s, verdict: ok, source: from memory, how: from memory}]", "said: []", "nobody is named"},
		{"source: from memory, ", "", "its source"},
		{"how: from memory", "how: heard", "provenance"},
		{"state: wet", "state: damp", "no such state"},
		{"above: [epoxy]", "above: [epoxi]", "no such material"},
		{"verdict: ok, prepare", "verdict: fine, prepare", "verdict"},
		{"how: from memory}", "how: from memory}, {says: no, verdict: stop, source: from memory, how: from memory}", "contradict"},
		{"below: [epoxy]", "below: [epoxy, epoxy]", "twice"},
		{"below: [epoxy]", "below: []", "name a material"},
	} {
		_, err := overcoat.ReadTable([]byte(strings.Replace(good, row.from, row.to, 1)))
		if err == nil || !strings.Contains(err.Error(), row.says) {
			t.Errorf("%s: got %v, want an error with %q", row.to, err, row.says)
		}
	}
}
