package repair

import (
	"math"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/curing"
	"scarfwright/repair/job"
	"scarfwright/repair/programme"
)

// A session is begun in the hours of a working day, where one of them is open
// anywhere (common practice, no source).
const (
	firstHour = 7
	lastHour  = 18
)

// followed is for how many hours a film is followed: the model looks no further.
const followed = 14 * 24

// furthest is how many days ahead a session may be put: beyond the days given the last
// of them is taken again.
const furthest = 28

// starts are the whole hours, from the first day's midnight, at which a session may
// begin. Where only nights are open nights it is.
func starts(open []programme.Window, days int) []int {
	last := 0
	var all []programme.Window
	for _, w := range open {
		all, last = append(all, w), max(last, w.Day)
	}
	if last == days { // the last day comes again
		for day := days + 1; day <= furthest; day++ {
			for _, w := range open {
				if w.Day == days {
					w.Day = day
					all = append(all, w)
				}
			}
		}
	}
	var out, nights []int
	for _, w := range all {
		for h := w.From; h < w.To; h++ {
			at := 24*(w.Day-1) + h
			nights = append(nights, at)
			if h >= firstHour && h <= lastHour {
				out = append(out, at)
			}
		}
	}
	if len(out) == 0 {
		return nights
	}
	return out
}

// startAfter is when the session after prev begins, the first one where prev is nil:
// as soon as prev may be laid on without sanding, or where no hour of that window is
// open, as soon as it may be sanded. Where no hour is left it is prev's own, which
// package curing takes for no date.
func startAfter(at []int, prev *curing.Session) int {
	if prev == nil {
		return at[0]
	}
	before := float64(24*(prev.Day-1)) + prev.Hour
	pick := func(from, to si.Time) (int, bool) {
		for _, h := range at {
			if gap := si.Hours(float64(h) - before); gap >= from && gap <= to {
				return h, true
			}
		}
		return 0, false
	}
	if prev.RecoatTo > 0 {
		if h, ok := pick(prev.RecoatFrom, prev.RecoatTo); ok {
			return h
		}
	}
	if h, ok := pick(max(prev.Sand, si.Hours(1)), si.Time(math.Inf(1))); ok {
		return h
	}
	return int(before)
}

// airFrom is the air and the hull from the start of the session after prev on.
// Without days the temperature at hand stays. A lamp comes back over it after a time.
func airFrom(d job.Description, h heating, lay programme.Windows, prev *curing.Session, at si.Temp, back si.Time) (curing.Air, error) {
	site := hours(d, h)
	under := curing.Lamp{Warmer: h.lift(at, lay.High), From: back, Lasts: h.lasts}
	if len(site) == 0 || len(lay.Open) == 0 {
		film, err := kinetics.Constant(at)
		return curing.Air{History: heat.Steady(at), Hull: film, Start: at, Lamp: under}, err
	}
	from := startAfter(starts(lay.Open, len(site)), prev)
	start := hourOf(site, from).Hull
	under.Warmer = h.lift(start, lay.High)
	var moments []heat.Moment
	var knots []kinetics.Knot
	for i := 0; i <= followed; i++ {
		x, t := hourOf(site, from+i), si.Hours(float64(i))
		moments = append(moments, heat.Moment{Time: t, Temp: x.Air})
		knots = append(knots, kinetics.Knot{Time: t, Temp: x.Hull})
	}
	film, err := kinetics.NewHistory(knots...)
	return curing.Air{
		Day: 1 + from/24, Hour: float64(from % 24), History: heat.Series(moments...), Hull: film,
		Start: start, Lamp: under,
	}, err
}

// hourOf is an hour from the first day's midnight; beyond the days given the last one
// repeats.
func hourOf(site [][24]programme.Hour, h int) programme.Hour {
	return site[min(h/24, len(site)-1)][h%24]
}

// laying is for how long after a session begins its pots are mixed (common practice,
// no source).
const laying = 3

// mixTempOf is the temperature of the air that a session's pots are reckoned at: the
// warmest while it is laid, where working time is shortest. A session without a day
// has the temperature at hand.
func mixTempOf(d job.Description, day int, hour float64, at si.Temp) si.Temp {
	site := hours(d, chosen(d))
	if day == 0 || len(site) == 0 {
		return at
	}
	var t si.Temp
	for i := range laying + 1 {
		t = max(t, hourOf(site, 24*(day-1)+int(hour)+i).Air)
	}
	return t
}
