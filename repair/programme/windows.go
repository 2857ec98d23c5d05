package programme

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// DewMargin is how far above the dew point a surface must stay for the whole
// open time of a wet coat.
//
// Source: 3 °C (5 °F), coating practice, named with ISO 8502-4 guidance.
var DewMargin = si.Kelvins(3)

// Hour is one hour of one day.
type Hour struct {
	Air  si.Temp `json:"air_k"`
	Hull si.Temp `json:"hull_k"`
	Dew  si.Temp `json:"dew_k"`
}

// Window is an unbroken run of whole hours of one day, From included, To not.
type Window struct {
	Day  int `json:"day"` // 1 is the first day given
	From int `json:"from_hour"`
	To   int `json:"to_hour"`
}

// String prints "day 1, 12–22 h".
func (w Window) String() string { return fmt.Sprintf("day %d, %02d–%02d h", w.Day, w.From, w.To) }

// Windows is when one material may be laid.
type Windows struct {
	What   string      `json:"what"`
	Low    si.Temp     `json:"low_k"`
	High   si.Temp     `json:"high_k"` // zero: no upper limit given
	Open   []Window    `json:"open"`
	TooHot bool        `json:"too_hot"` // more hours are too hot than too cold
	Reason string      `json:"reason"`  // why there is none, or what narrows it
	Short  si.TempDiff `json:"short_k"` // how far the warmest hour stays under Low; 0 when it reaches it
}

// Band is the allowed surface temperature in words.
func (w Windows) Band(sys si.System) string { return band(w.Low, w.High, sys) }

// Text lists the windows, days alike together, or says that there is none:
// "day 1, 00–10 and 22–24 h; days 2 to 4, 06–10 h".
func (w Windows) Text() string {
	if len(w.Open) == 0 {
		return "none"
	}
	type run struct {
		from, to int
		hours    string
	}
	var days []run
	for _, o := range w.Open {
		hours := fmt.Sprintf("%02d–%02d", o.From, o.To)
		if n := len(days); n > 0 && days[n-1].from == o.Day {
			days[n-1].hours += " and " + hours
		} else {
			days = append(days, run{o.Day, o.Day, hours})
		}
	}
	var runs []run
	for _, d := range days {
		if n := len(runs); n > 0 && runs[n-1].hours == d.hours && runs[n-1].to == d.from-1 {
			runs[n-1].to = d.to
		} else {
			runs = append(runs, d)
		}
	}
	var out []string
	for _, r := range runs {
		day := fmt.Sprintf("day %d", r.from)
		if r.to > r.from {
			day = fmt.Sprintf("days %d to %d", r.from, r.to)
		}
		hours := r.hours + " h"
		if r.hours == "00–24" {
			hours = "every hour"
		}
		out = append(out, day+", "+hours)
	}
	return strings.Join(out, "; ")
}

// Daily says at what time of the day it can never be, on none of the days: "early
// morning and evening only: never from 12 to 21 h, too hot". It is empty where that
// is less than four hours, or nothing is open.
func (w Windows) Daily() string {
	if len(w.Open) == 0 {
		return ""
	}
	var open [24]bool
	for _, o := range w.Open {
		for h := o.From; h < o.To; h++ {
			open[h] = true
		}
	}
	from, long := 0, 0
	for h := range 24 {
		n := 0
		for n < 24 && !open[(h+n)%24] {
			n++
		}
		if n > long {
			from, long = h, n
		}
	}
	if long < 4 {
		return ""
	}
	holds := func(h int) bool { return (h-from+24)%24 < long }
	when, why := "not at every hour", "too cold or too damp"
	if w.TooHot {
		why = "too hot"
	}
	switch {
	case holds(14) && w.TooHot:
		when = "early morning and evening only"
	case holds(14):
		when = "not in the middle of the day"
	case holds(4) && holds(9):
		when = "afternoon and evening only"
	case holds(4):
		when = "not at night"
	}
	return fmt.Sprintf("%s: never from %02d to %02d h, %s", when, from, (from+long)%24, why)
}

// Hours lays the days out hour by hour.
//
// The air swings as T(h) = mean + half-range cos(2 pi (h - 15)/24), warmest at
// 15 h; the hull follows with the time constant tau, Th += (T - Th)/tau each
// hour. The first day runs twice beforehand so that the start does not matter.
// warmer lifts the air (a heated tent). The dew point holds for the day.
//
// Our own simple rule for a shed without a forecast; it knows no sun, sky or
// wind. A lag under one hour means the hull is as the air.
func Hours(days []job.Day, tau si.Time, warmer si.TempDiff) [][24]Hour {
	if len(days) == 0 {
		return nil
	}
	lag := max(1, tau.Hours())
	run := append([]job.Day{days[0], days[0]}, days...)
	out := make([][24]Hour, 0, len(run))
	hull := math.NaN()
	for _, d := range run {
		mean := (d.Max.Celsius() + d.Min.Celsius()) / 2
		half := (d.Max.Celsius() - d.Min.Celsius()) / 2
		var day [24]Hour
		for h := range day {
			air := mean + half*math.Cos(2*math.Pi*float64(h-15)/24) + warmer.Kelvins()
			if math.IsNaN(hull) {
				hull = air
			}
			hull += (air - hull) / lag
			day[h] = Hour{Air: si.Celsius(air), Hull: si.Celsius(hull), Dew: d.Dew}
		}
		out = append(out, day)
	}
	return out[2:]
}

// Find returns the hours in which a surface is between low and high (high zero:
// no limit) and at least DewMargin above the dew point.
func Find(what string, hours [][24]Hour, low, high si.Temp) Windows {
	w := Windows{What: what, Low: low, High: high}
	cold, hot, dewy := 0, 0, 0
	var warmest si.Temp
	for d, day := range hours {
		from := -1
		for h := 0; h <= 24; h++ {
			open := false
			if h < 24 {
				x := day[h]
				warmest = max(warmest, x.Hull)
				warm := x.Hull >= low
				dry := x.Hull >= x.Dew.Add(DewMargin)
				cool := !high.Given() || x.Hull <= high
				open = warm && dry && cool
				switch {
				case !warm:
					cold++
				case !cool:
					hot++
				case !dry:
					dewy++
				}
			}
			if open && from < 0 {
				from = h
			}
			if !open && from >= 0 {
				w.Open = append(w.Open, Window{Day: d + 1, From: from, To: h})
				from = -1
			}
		}
	}
	w.Short = max(0, low.Sub(warmest))
	w.TooHot = hot > cold
	w.Reason = ""
	if daily := w.Daily(); daily != "" {
		w.Reason = daily + "; "
	}
	w.Reason += fmt.Sprintf("of %d hours, %d are too cold, %d too hot and %d more are within %.0f K of the dew point", 24*len(hours), cold, hot, dewy, DewMargin.Kelvins())
	return w
}

// Warmest returns the warmest air within a window: the working time in the pot
// is shortest then.
func Warmest(hours [][24]Hour, w Window) si.Temp {
	var t si.Temp
	for h := w.From; h < w.To; h++ {
		t = max(t, hours[w.Day-1][h].Air)
	}
	return t
}
