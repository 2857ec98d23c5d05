package curing_test

import (
	"fmt"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/repair/curing"
)

func ExampleResult_Follows() {
	r := curing.Result{Sessions: []curing.Session{
		{Day: 1, Hour: 12, RecoatFrom: si.Hours(2.926), RecoatTo: si.Hours(35.11)},
		{Day: 2, Hour: 11},
	}}
	b := r.Follows(2)
	fmt.Println(b.Fit, b.Gap.Hours())
	fmt.Println(b.Words)
	// Output:
	// inside 23
	// laid 23 h after, window 2.9 to 35.1 h
}

// A session is laid so long after the one before; the window is what it is held to.
func TestASessionAgainstTheWindowOfTheLast(t *testing.T) {
	for _, c := range []struct {
		about    string
		day      [2]int
		hour     [2]float64
		from, to float64
		fit      curing.Fit
		words    string
	}{
		{"the next morning", [2]int{1, 2}, [2]float64{7, 7}, 2.5, 30, curing.Inside, "laid 24 h after, window 2.5 to 30.0 h"},
		{"on the hour it opens", [2]int{1, 1}, [2]float64{7, 11}, 4, 30, curing.Inside, "laid 4 h after, window 4.0 to 30.0 h"},
		{"on the hour it shuts", [2]int{1, 3}, [2]float64{12, 7}, 4, 43, curing.Inside, "laid 43 h after, window 4.0 to 43.0 h"},
		{"over midnight, too early", [2]int{1, 2}, [2]float64{22, 0}, 2.5, 10, curing.Early, "laid 2 h after, too early for the window of 2.5 to 10.0 h"},
		{"the next morning, too late", [2]int{2, 3}, [2]float64{7, 7}, 2.5, 10, curing.Late, "laid 24 h after, too late for the window of 2.5 to 10.0 h"},
		{"no days", [2]int{0, 0}, [2]float64{0, 0}, 2, 8, curing.NotDated, "no hour of laying known, window 2.0 to 8.0 h after mixing"},
		{"the days have run out", [2]int{1, 1}, [2]float64{7, 7}, 2, 8, curing.NotDated, "no open day is left for it, window 2.0 to 8.0 h after mixing"},
		{"a sheet without a window", [2]int{1, 2}, [2]float64{7, 7}, 0, 0, curing.NoWindow, "none"},
	} {
		r := curing.Result{Sessions: []curing.Session{
			{Day: c.day[0], Hour: c.hour[0], RecoatFrom: si.Hours(c.from), RecoatTo: si.Hours(c.to), RecoatWords: "none"},
			{Day: c.day[1], Hour: c.hour[1]},
		}}
		if got := r.Follows(2); got.Fit != c.fit || got.Words != c.words {
			t.Errorf("%s: got %s, %q; want %s, %q", c.about, got.Fit, got.Words, c.fit, c.words)
		}
	}
}

// One session outside its window is enough for all to be sanded.
func TestOneMissedWindowIsEnough(t *testing.T) {
	for _, c := range []struct {
		hours  []float64 // of laying, all on one day
		inside bool
		words  string
	}{
		{[]float64{7}, true, ""},
		{[]float64{7, 11}, true, "laid 4 h after, window 3.0 to 6.0 h"},
		{[]float64{7, 11, 16}, true, "session 2: laid 4 h after, window 3.0 to 6.0 h; session 3: laid 5 h after, window 3.0 to 6.0 h"},
		{[]float64{7, 11, 13}, false, "session 2: laid 4 h after, window 3.0 to 6.0 h; session 3: laid 2 h after, too early for the window of 3.0 to 6.0 h"},
	} {
		var r curing.Result
		for _, h := range c.hours {
			r.Sessions = append(r.Sessions, curing.Session{Day: 1, Hour: h, RecoatFrom: si.Hours(3), RecoatTo: si.Hours(6)})
		}
		if inside, words := r.NextOnLast(); inside != c.inside || words != c.words {
			t.Errorf("%v: got %v, %q; want %v, %q", c.hours, inside, words, c.inside, c.words)
		}
	}
}
