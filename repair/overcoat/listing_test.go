package overcoat_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"scarfwright/repair/overcoat"
)

func ExampleNarrow() {
	for _, p := range overcoat.Narrow(overcoat.Ask{On: overcoat.Epoxy, Lay: overcoat.Gelcoat, State: overcoat.Sanded}) {
		fmt.Println(p.Verdict, p.Name(), len(p.Statements))
	}
	fmt.Println(len(overcoat.Narrow(overcoat.Ask{})) == len(overcoat.Pairs()))
	// Output:
	// watch gelcoat on epoxy (sanded) 2
	// true
}

// TestNarrowingAgreesWithFind: whatever is asked for by both materials, the rows are
// those that Find finds, one a state, and Unknown has the rest of the states.
func TestNarrowingAgreesWithFind(t *testing.T) {
	for _, on := range overcoat.Sorts() {
		for _, lay := range overcoat.Laid() {
			a := overcoat.Ask{On: on, Lay: lay}
			got := overcoat.Narrow(a)
			missing := overcoat.Unknown(a)
			for _, s := range overcoat.States() {
				want, ok := overcoat.Find(on, lay, s)
				i := slices.IndexFunc(got, func(p overcoat.Pair) bool { return p.State == s })
				switch {
				case ok && (i < 0 || got[i].Ruling != want.Ruling || got[i].Verdict != want.Verdict):
					t.Errorf("%s: the row is not there, or is another", want.Name())
				case !ok && (i >= 0 || !slices.Contains(missing, s)):
					t.Errorf("%s on %s, %s: not known, and not said so", lay, on, s)
				}
			}
			if len(got)+len(missing) != len(overcoat.States()) {
				t.Errorf("%s on %s: %d rows and %d states not known", lay, on, len(got), len(missing))
			}
		}
	}
}

// TestWhatIsNarrowedAway: a row for anything goes where the pair has its own, and
// stays where it still holds for another.
func TestWhatIsNarrowedAway(t *testing.T) {
	for _, c := range []struct {
		ask  overcoat.Ask
		want []string
	}{
		{overcoat.Ask{On: overcoat.Paint, Lay: overcoat.Paint, State: overcoat.Sanded}, []string{"paint on paint (sanded)"}},
		{overcoat.Ask{On: overcoat.Paint, State: overcoat.Sanded}, []string{"anything on paint (sanded)", "paint on paint (sanded)"}},
		{overcoat.Ask{On: overcoat.Epoxy, Lay: overcoat.Paint, State: overcoat.Waxed}, []string{"anything on anything (waxed)"}},
		{overcoat.Ask{On: overcoat.OldLaminate, State: overcoat.Wet}, nil},
	} {
		var got []string
		for _, p := range overcoat.Narrow(c.ask) {
			got = append(got, p.Name())
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: got %q, want %q", c.ask.Words(), got, c.want)
		}
	}
}

// TestGroupingLosesNothing: every pair of the table is in the group of its material
// below, once, with its own words.
func TestGroupingLosesNothing(t *testing.T) {
	n := 0
	for _, g := range overcoat.Grouped(overcoat.Pairs()) {
		for _, e := range g.Entries {
			for _, lay := range e.Lay {
				n++
				i := slices.IndexFunc(overcoat.Pairs(), func(p overcoat.Pair) bool { return p.Below == g.Below && p.Above == lay && p.State == e.State })
				if i < 0 {
					t.Errorf("%s on %s (%s) is not in the table", lay, g.Below, e.State)
					continue
				}
				if p := overcoat.Pairs()[i]; p.Check().Why != e.Check().Why || p.Source() != e.Source() {
					t.Errorf("%s: its words are not its own", p.Name())
				}
			}
		}
	}
	if n != len(overcoat.Pairs()) {
		t.Errorf("%d pairs are grouped, of %d", n, len(overcoat.Pairs()))
	}
}

func TestParse(t *testing.T) {
	for _, c := range []struct {
		on, lay, state string
		want           overcoat.Ask
		err            string
	}{
		{"", "", "", overcoat.Ask{}, ""},
		{"Old-Laminate", "epoxy_filler", "HARD", overcoat.Ask{On: overcoat.OldLaminate, Lay: overcoat.EpoxyFiller, State: overcoat.Hard}, ""},
		{"vinyl ester", "gelcoat", "hard, unsanded", overcoat.Ask{On: overcoat.VinylEster, Lay: overcoat.Gelcoat, State: overcoat.Hard}, ""},
		{"epoxi", "", "", overcoat.Ask{}, `no material to lay on "epoxi"; one of "old laminate", "polyester"`},
		{"anything", "", "", overcoat.Ask{}, "no material to lay on"},
		{"", "old laminate", "", overcoat.Ask{}, `no material to lay "old laminate"; one of "polyester"`},
		{"", "", "dry", overcoat.Ask{}, `no state of a surface "dry"; one of "wet", "tacky", "hard, unsanded"`},
	} {
		got, err := overcoat.Parse(c.on, c.lay, c.state)
		if got != c.want || (err == nil) != (c.err == "") || err != nil && !strings.Contains(err.Error(), c.err) {
			t.Errorf("%q %q %q: got %v, %v; want %v, %q", c.on, c.lay, c.state, got, err, c.want, c.err)
		}
	}
}
