package repair

import (
	"cmp"
	"fmt"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/curing"
	"scarfwright/repair/job"
	"scarfwright/repair/programme"
)

// heating is what warms the work. A tent and heater warm the air, and with it, as
// it follows the air, the hull; a lamp warms the face under it, before a session
// is laid and for a time after, and leaves the air and the mixing pot as they are.
type heating struct {
	name    string
	air     si.TempDiff
	face    si.TempDiff
	lasts   si.Time // of the lamp, once it is back over what was laid
	assumed bool    // the job does not say how much it warms
}

// The names, as choices.heat has them.
const (
	none = "none"
	tent = "tent"
	lamp = "lamp"
)

// What is assumed where the job does not say (common practice, no source).
var (
	tentWarmer = si.Kelvins(10)
	lampWarmer = si.Kelvins(15)
	lampLasts  = si.Hours(4)
	vapourGone = si.Hours(1) // after laying a resin that gives off styrene: until then the lamp stays away
)

// chosen is the heating of the job.
func chosen(d job.Description) heating {
	h := heating{name: cmp.Or(d.Choices.Heat, none)}
	switch h.name {
	case tent:
		h.air = d.Site.Warmer
	case lamp:
		h.face, h.lasts = d.Site.Lamp, cmp.Or(d.Site.LampFor, lampLasts)
	}
	return h
}

// heatings are all three, with what is assumed where the job does not say.
func heatings(d job.Description) []heating {
	return []heating{
		{name: none},
		{name: tent, air: cmp.Or(d.Site.Warmer, tentWarmer), assumed: d.Site.Warmer == 0},
		{name: lamp, face: cmp.Or(d.Site.Lamp, lampWarmer), lasts: cmp.Or(d.Site.LampFor, lampLasts), assumed: d.Site.Lamp == 0},
	}
}

// given are those of which the job says how much they warm, and no heating.
func given(d job.Description) []heating {
	var out []heating
	for _, h := range heatings(d) {
		if !h.assumed {
			out = append(out, h)
		}
	}
	return out
}

func (h heating) warms() bool { return h.air > 0 || h.face > 0 }

// where says where the work is then done: "without heat".
func (h heating) where() string {
	switch h.name {
	case tent:
		return "in the heated tent"
	case lamp:
		return "under the lamp"
	}
	return "without heat"
}

// does says what it does: "The tent lifts the air 10 K".
func (h heating) does() string {
	switch h.name {
	case tent:
		return fmt.Sprintf("The tent lifts the air %.0f K", h.air.Kelvins())
	case lamp:
		return fmt.Sprintf("The lamp lifts the face under it %.0f K", h.face.Kelvins())
	}
	return "Nothing is heated"
}

// hours lays the site's days out with the air as it is heated.
func hours(d job.Description, h heating) [][24]programme.Hour {
	return programme.Hours(d.Site.Days, d.Site.Lag, h.air)
}

// lit is hours with the face under the lamp for the hull: what can be laid on. The
// lamp is hung so that it warms a cold face to no more than the highest allowed, and
// a warm one not at all.
func lit(d job.Description, h heating, highest si.Temp) [][24]programme.Hour {
	out := hours(d, h)
	for i := range out {
		for j := range out[i] {
			x := &out[i][j]
			x.Hull = x.Hull.Add(h.lift(x.Hull, highest))
		}
	}
	return out
}

// lift is how much the lamp warms a face, a highest that is not given being none.
func (h heating) lift(hull, highest si.Temp) si.TempDiff {
	if !highest.Given() {
		return h.face
	}
	return max(0, min(h.face, highest.Sub(hull)))
}

// firstHour is when a working day begins, where the hull allows it.
const firstHour = 7

// followed is for how many hours a film is followed: the model looks no further.
const followed = 14 * 24

// airFrom is the air and the hull from the k-th session on: each session begins
// with the next open window, the last one serving for all that are left. Without
// days the temperature at hand stays. A lamp comes back over it after a time.
func airFrom(d job.Description, h heating, lay programme.Windows, k int, at si.Temp, back si.Time) (curing.Air, error) {
	site := hours(d, h)
	under := curing.Lamp{Warmer: h.lift(at, lay.High), From: back, Lasts: h.lasts}
	if len(site) == 0 || len(lay.Open) == 0 {
		film, err := kinetics.Constant(at)
		return curing.Air{History: heat.Steady(at), Hull: film, Start: at, Lamp: under}, err
	}
	w := windowOf(lay.Open, k)
	start := site[w.Day-1][w.From].Hull
	under.Warmer = h.lift(start, lay.High)
	var moments []heat.Moment
	var knots []kinetics.Knot
	for i := 0; i <= followed; i++ {
		hour := w.From + i
		day := min(w.Day-1+hour/24, len(site)-1) // beyond the days given the last one repeats
		x := site[day][hour%24]
		moments = append(moments, heat.Moment{Time: si.Hours(float64(i)), Temp: x.Air})
		knots = append(knots, kinetics.Knot{Time: si.Hours(float64(i)), Temp: x.Hull})
	}
	film, err := kinetics.NewHistory(knots...)
	return curing.Air{
		Day: w.Day, Hour: float64(w.From), History: heat.Series(moments...), Hull: film,
		Start: start, Lamp: under,
	}, err
}

// windowOf is the window of the k-th session: the next open one each, the last
// serving for all that are left.
func windowOf(open []programme.Window, k int) programme.Window {
	open = workable(open)
	return open[min(k, len(open))-1]
}

// workable returns the windows from the start of the working day on, one a day:
// nobody laminates at midnight where the morning serves as well. Where only the
// night is open it stays.
func workable(open []programme.Window) []programme.Window {
	var out []programme.Window
	for _, w := range open {
		w.From = max(w.From, firstHour)
		if w.From < w.To && (len(out) == 0 || out[len(out)-1].Day != w.Day) {
			out = append(out, w)
		}
	}
	if len(out) == 0 {
		return open
	}
	return out
}
