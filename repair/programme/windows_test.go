package programme_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
	"scarfwright/repair/job"
	"scarfwright/repair/programme"
)

func ExampleFind() {
	days := []job.Day{{Min: si.Celsius(9), Max: si.Celsius(19), Dew: si.Celsius(8)}}
	hours := programme.Hours(days, si.Hours(3), 0)
	fmt.Println(programme.Find("polyester", hours, si.Celsius(15), si.Temp(0)).Text())
	fmt.Println(programme.Find("gelcoat", hours, si.Celsius(18), si.Temp(0)).Text())
	// Output:
	// day 1, 12–22 h
	// day 1, 16–18 h
}

func week(d job.Day, n int) []job.Day {
	out := make([]job.Day, n)
	for i := range out {
		out[i] = d
	}
	return out
}

func TestTheAirSwingsBetweenItsMinimumAndMaximum(t *testing.T) {
	h := programme.Hours([]job.Day{{Min: si.Celsius(4), Max: si.Celsius(16), Dew: si.Celsius(2)}}, si.Hours(3), 0)[0]
	for _, row := range []struct {
		hour int
		want float64 // closed form: 10 + 6 cos(2π(h - 15)/24)
	}{{15, 16}, {3, 4}, {9, 10}, {21, 10}, {11, 13}} {
		if got := h[row.hour].Air.Celsius(); math.Abs(got-row.want) > 1e-9 {
			t.Errorf("air at %d h: got %.6f °C, want %g", row.hour, got, row.want)
		}
	}
}

// A linear lag keeps the mean and shrinks the swing. For Th += (T - Th)/τ each
// hour the gain at one cycle a day is |k/(1 - (1-k)e^-iw)|, k = 1/τ, w = 2π/24.
func TestTheHullHasTheAirsMeanAndASmallerSwing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(-20, 25).Draw(t, "min")
		half := rapid.Float64Range(0, 10).Draw(t, "half range")
		tau := rapid.Float64Range(1, 8).Draw(t, "tau")
		day := job.Day{Min: si.Celsius(low), Max: si.Celsius(low + 2*half), Dew: si.Celsius(low - 5)}
		days := programme.Hours(week(day, 14), si.Hours(tau), 0)
		var air, hull float64
		least, most := math.Inf(1), math.Inf(-1)
		for _, h := range days[13] {
			air, hull = air+h.Air.Celsius()/24, hull+h.Hull.Celsius()/24
			least, most = min(least, h.Hull.Celsius()), max(most, h.Hull.Celsius())
		}
		if math.Abs(air-hull) > 1e-6 {
			t.Fatalf("mean of the air %.8f, of the hull %.8f", air, hull)
		}
		k, w := 1/tau, 2*math.Pi/24
		gain := k / math.Hypot(1-(1-k)*math.Cos(w), (1-k)*math.Sin(w))
		// The peak falls between two whole hours, so up to 1 - cos(w/2) of it is not seen.
		if got := (most - least) / 2; got > half*gain*(1+1e-9)+1e-9 || got < half*gain*math.Cos(w/2)-1e-6 {
			t.Fatalf("swing of the hull %.6f, want %.6f", got, half*gain)
		}
	})
}

func TestWithoutALagTheHullIsTheAir(t *testing.T) {
	for _, lag := range []si.Time{0, si.Hours(0.5), si.Hours(1)} {
		for _, h := range programme.Hours(week(job.Day{Min: si.Celsius(5), Max: si.Celsius(15), Dew: si.Celsius(0)}, 1), lag, 0)[0] {
			if math.Abs(h.Air.Sub(h.Hull).Kelvins()) > 1e-9 {
				t.Fatalf("lag %v: air %v, hull %v", lag, h.Air, h.Hull)
			}
		}
	}
}

func TestNoDaysNoHours(t *testing.T) {
	if got := programme.Hours(nil, si.Hours(3), 0); got != nil {
		t.Errorf("got %v", got)
	}
}

func someDays(t *rapid.T) []job.Day {
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) job.Day {
		low := rapid.Float64Range(-15, 25).Draw(t, "min")
		return job.Day{Min: si.Celsius(low), Max: si.Celsius(low + rapid.Float64Range(0, 15).Draw(t, "range")), Dew: si.Celsius(low + rapid.Float64Range(-10, 0).Draw(t, "dew"))}
	}), 1, 7).Draw(t, "days")
}

func marked(w programme.Windows) map[[2]int]bool {
	out := map[[2]int]bool{}
	for _, o := range w.Open {
		for h := o.From; h < o.To; h++ {
			out[[2]int{o.Day, h}] = true
		}
	}
	return out
}

// Warmer weather at the same dew point never closes an hour that only cold or dew could close.
func TestWarmthNeverClosesAnHour(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		days, tau := someDays(t), si.Hours(rapid.Float64Range(0, 8).Draw(t, "tau"))
		low := si.Celsius(rapid.Float64Range(5, 25).Draw(t, "low"))
		before := marked(programme.Find("x", programme.Hours(days, tau, 0), low, 0))
		after := marked(programme.Find("x", programme.Hours(days, tau, si.Kelvins(rapid.Float64Range(0, 20).Draw(t, "warmer"))), low, 0))
		for at := range before {
			if !after[at] {
				t.Fatalf("day %d, %d h is closed by warmth", at[0], at[1])
			}
		}
	})
}

// Every hour is open exactly when it keeps the three rules, and windows do not touch.
func TestWindowsHoldTheHoursThatKeepTheRules(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hours := programme.Hours(someDays(t), si.Hours(rapid.Float64Range(0, 8).Draw(t, "tau")), 0)
		low, high := si.Celsius(rapid.Float64Range(0, 20).Draw(t, "low")), si.Temp(0)
		if rapid.Bool().Draw(t, "limited") {
			high = low.Add(si.Kelvins(rapid.Float64Range(0, 12).Draw(t, "band")))
		}
		w := programme.Find("x", hours, low, high)
		got := marked(w)
		for d, day := range hours {
			for h, x := range day {
				want := x.Hull >= low && x.Hull.Sub(x.Dew) >= programme.DewMargin-1e-9 && (high == 0 || x.Hull <= high)
				if got[[2]int{d + 1, h}] != want && math.Abs(x.Hull.Sub(x.Dew).Kelvins()-programme.DewMargin.Kelvins()) > 1e-9 {
					t.Fatalf("day %d, %d h: open %v, want %v (hull %v, dew %v, %v to %v)", d+1, h, got[[2]int{d + 1, h}], want, x.Hull, x.Dew, low, high)
				}
			}
		}
		for i, o := range w.Open {
			if o.From >= o.To || i > 0 && w.Open[i-1].Day == o.Day && w.Open[i-1].To >= o.From {
				t.Fatalf("windows %v", w.Open)
			}
		}
	})
}

func TestWhyThereIsNoHour(t *testing.T) {
	cold := programme.Find("x", programme.Hours(week(job.Day{Min: si.Celsius(0), Max: si.Celsius(4), Dew: si.Celsius(-5)}, 2), 0, 0), si.Celsius(15), 0)
	if cold.Text() != "none" || cold.TooHot || math.Abs(cold.Short.Kelvins()-11) > 1e-9 || !strings.HasPrefix(cold.Reason, "of 48 hours, 48 are too cold") {
		t.Errorf("4 °C for 15: got %s, %+v; want none, 11 K short", cold.Text(), cold)
	}
	hot := programme.Find("x", programme.Hours(week(job.Day{Min: si.Celsius(29), Max: si.Celsius(35), Dew: si.Celsius(10)}, 1), 0, 0), si.Celsius(15), si.Celsius(28))
	if hot.Text() != "none" || !hot.TooHot || hot.Short != 0 || !strings.Contains(hot.Reason, "24 too hot") {
		t.Errorf("29 °C for at most 28: got %s, %+v; want none, too hot", hot.Text(), hot)
	}
	dewy := programme.Find("x", programme.Hours(week(job.Day{Min: si.Celsius(20), Max: si.Celsius(20), Dew: si.Celsius(18)}, 1), 0, 0), si.Celsius(15), 0)
	if dewy.Text() != "none" || dewy.TooHot || !strings.Contains(dewy.Reason, "24 more are within 3 K") {
		t.Errorf("2 K over the dew point: got %s, %+v; want none, dew", dewy.Text(), dewy)
	}
}

func TestWarmestOfAWindow(t *testing.T) {
	hours := programme.Hours(week(job.Day{Min: si.Celsius(0), Max: si.Celsius(20), Dew: si.Celsius(-5)}, 1), 0, 0)
	if got := programme.Warmest(hours, programme.Window{Day: 1, From: 9, To: 22}).Celsius(); math.Abs(got-20) > 1e-9 {
		t.Errorf("9 to 22 h: got %g, want 20 °C, at 15 h", got)
	}
	if got := programme.Warmest(hours, programme.Window{Day: 1, From: 3, To: 4}).Celsius(); math.Abs(got) > 1e-9 {
		t.Errorf("3 to 4 h: got %g, want 0 °C", got)
	}
}

// The hours of a day that are closed on every day are said in a sentence.
func TestDaily(t *testing.T) {
	day := func(d, from, to int) programme.Window { return programme.Window{Day: d, From: from, To: to} }
	for _, c := range []struct {
		open []programme.Window
		hot  bool
		want string
	}{
		{[]programme.Window{day(1, 0, 10), day(1, 22, 24), day(2, 6, 11)}, true, "early morning and evening only: never from 11 to 22 h, too hot"},
		{[]programme.Window{day(1, 12, 22), day(2, 11, 20)}, false, "afternoon and evening only: never from 22 to 11 h, too cold or too damp"},
		{[]programme.Window{day(1, 7, 24)}, false, "not at night: never from 00 to 07 h, too cold or too damp"},
		{[]programme.Window{day(1, 0, 10), day(2, 9, 24)}, true, ""},
		{nil, true, ""},
	} {
		if got := (programme.Windows{Open: c.open, TooHot: c.hot}).Daily(); got != c.want {
			t.Errorf("%v: %q, want %q", c.open, got, c.want)
		}
	}
}

// Days alike are told together.
func TestWindowsInWords(t *testing.T) {
	w := programme.Windows{Open: []programme.Window{{1, 0, 24}, {2, 0, 24}, {3, 6, 10}, {3, 20, 24}, {5, 6, 10}, {6, 6, 10}}}
	if got, want := w.Text(), "days 1 to 2, every hour; day 3, 06–10 and 20–24 h; days 5 to 6, 06–10 h"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}
