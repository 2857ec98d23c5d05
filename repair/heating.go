package repair

import (
	"cmp"

	"scarfwright/physics/si"
	"scarfwright/repair/cure"
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

// lampBack is when a lamp may come back over what was laid.
func lampBack(kind cure.Kind) si.Time {
	if kind == cure.Polyester { // vinyl ester and gelcoat too
		return vapourGone
	}
	return 0
}

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

// does says what it does: "The tent lifts the air by 10 °C".
func (h heating) does(sys si.System) string {
	switch h.name {
	case tent:
		return "The tent lifts the air by " + si.Show(h.air, sys, 2)
	case lamp:
		return "The lamp lifts the face under it by " + si.Show(h.face, sys, 2)
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
