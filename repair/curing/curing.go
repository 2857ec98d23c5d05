// Package curing follows what has been laid: how hot each laminating session
// makes itself, and when it gels, may be recoated, may be sanded and is through.
//
// The stack is looked at in the middle of the repair, where it is thickest: the
// session's wet plies on those of the sessions before, on whatever stands behind
// them (form, backing, old laminate, core). Heat runs through it in one
// dimension (physics/heat), the resin reacts by the law fitted to its sheet
// (repair/cure), and the air on both faces follows the hours given.
//
//	rho c dT/dt = d/dx(k dT/dx) + rho H (1-G) da/dt
//
// # Words
//
// Gelled: it no longer flows. Sandable: hard enough not to clog paper. Through:
// it has come as far as it will at this temperature; a resin that sets at room
// temperature never comes to the end there, and its glass transition stays a
// few kelvin above the warmest it has been.
//
// # Limits
//
// One dimension: a small patch loses more heat sideways, so peaks are an upper
// estimate. Properties of wet laminate are typical values. The warnings of the
// fitted model travel with every answer.
package curing

import (
	"fmt"
	"math"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/check"
	"scarfwright/repair/cure"
)

// Resin is what the stage needs to know of a fitted material.
type Resin struct {
	Model cure.Model
	Dose  si.Ratio // of catalyst; ignored for a fixed ratio
	law   kinetics.Law
}

// NewResin returns a fitted material at a dose.
func NewResin(m cure.Model, dose si.Ratio) Resin { return Resin{m, dose, m.Law(dose)} }

// Curve is a temperature against time since laying.
type Curve struct {
	Name string    `json:"name"`
	Time []si.Time `json:"time_s"`
	Temp []si.Temp `json:"temp_k"`
}

// Degree is the degree of cure against time since laying, 0 to 1.
type Degree struct {
	Time   []si.Time  `json:"time_s"`
	Degree []si.Ratio `json:"degree"`
}

// Session is one laminating session followed.
type Session struct {
	Name        string    `json:"name"`
	Day         int       `json:"day"`   // of the days given; 0 where none were
	Hour        float64   `json:"hour"`  // clock time of laying
	Plies       []string  `json:"plies"` // labels
	Thickness   si.Length `json:"thickness_m"`
	Start       si.Temp   `json:"start_k"` // of everything when it is laid
	Peak        si.Temp   `json:"peak_k"`
	PeakAfter   si.Time   `json:"peak_after_s"`
	Own         si.Temp   `json:"own_k"` // hottest of the first six hours: its own heat, not tomorrow's sun
	OwnAfter    si.Time   `json:"own_after_s"`
	OwnLow      si.Temp   `json:"own_low_k"` // of the possible materials eight in ten lie between
	OwnHigh     si.Temp   `json:"own_high_k"`
	Behind      si.Temp   `json:"behind_k"` // highest where the new laminate meets what is behind
	What        string    `json:"what"`     // what is behind
	Limit       si.Temp   `json:"limit_k"`
	Gel         si.Time   `json:"gel_s"`      // in the thick of it, last place, since laying; 0 not within the run
	FilmGel     si.Time   `json:"film_gel_s"` // of its thin edges, at the hull's temperature
	Through     si.Time   `json:"through_s"`  // as cured as it gets at this temperature; 0 not within 14 days
	AfterDay    State     `json:"after_day"`  // what the thin edges have come to
	AfterWeek   State     `json:"after_week"`
	RecoatFrom  si.Time   `json:"recoat_from_s"`
	RecoatTo    si.Time   `json:"recoat_to_s"`
	RecoatWords string    `json:"recoat_words"`
	Sand        si.Time   `json:"sand_s"` // from when it may be sanded: the later of model and sheet
	Curves      []Curve   `json:"curves,omitempty"`
	Degree      Degree    `json:"degree,omitzero"`   // in the middle of the new laminate
	Profile     []Through `json:"profile,omitempty"` // through the stack when it is hottest by its own heat
	Layers      []Named   `json:"layers"`
	Coarse      string    `json:"coarse,omitempty"`
}

// CoreName is what the core of a sandwich is called among the layers.
const CoreName = "core"

// Through is one depth of a profile, from the new face.
type Through struct {
	Depth si.Length `json:"depth_m"`
	Temp  si.Temp   `json:"temp_k"`
}

// State is how far the resin has come: the likely degree of cure, and its glass
// transition with the range that holds eight times in ten.
type State struct {
	Degree si.Ratio `json:"degree"`
	TgLow  si.Temp  `json:"tg_low_k"`
	Tg     si.Temp  `json:"tg_k"`
	TgHigh si.Temp  `json:"tg_high_k"`
}

func stateOf(s cure.State) State {
	return State{si.Ratio(s.Degree.Likely), s.Tg.Low, s.Tg.Likely, s.Tg.High}
}

// Named is one layer of the stack, for the picture.
type Named struct {
	Name      string    `json:"name"`
	Thickness si.Length `json:"thickness_m"`
	New       bool      `json:"new"`
}

// PotLine is working time against mass at one temperature.
type PotLine struct {
	At     si.Temp    `json:"at_k"`
	Points []PotPoint `json:"points"`
}

// PotPoint is one batch left in its cup.
type PotPoint struct {
	Mass   si.Mass `json:"mass_kg"`
	Low    si.Time `json:"low_s"`
	Likely si.Time `json:"likely_s"`
	High   si.Time `json:"high_s"`
	Beyond bool    `json:"beyond"` // outside what the sheet covers
}

// Result is every session followed.
type Result struct {
	Sessions []Session       `json:"sessions"`
	Pots     []PotLine       `json:"pots"`
	Vessel   string          `json:"vessel"` // they are reckoned in
	Warmth   []Warmth        `json:"warmth"` // what a tent or a lamp changes
	Verdicts []check.Verdict `json:"verdicts"`
	Notes    []string        `json:"notes"`
}

// Air is the air from the hour of laying on: straight between whole hours.
type Air struct {
	Day     int     // 0 where no days are given
	Hour    float64 // clock time of laying
	History heat.History
	Hull    kinetics.History // the hull's surface, for thin films
	Start   si.Temp          // of the hull when it is laid
	Lamp    Lamp             // over the new face
}

// Degrees prints a temperature to the whole degree of its unit.
func Degrees(t si.Temp, sys si.System) string {
	if sys != si.US {
		return si.Show(t, sys, 2)
	}
	whole, digits := math.Round(1.8*t.Celsius()+32), 2
	if whole >= 100 {
		digits = 3
	}
	return si.Show(si.Celsius((whole-32)/1.8), sys, digits)
}

// Reached says in words what a day and a week really come to.
func (s Session) Reached(sys si.System) string {
	d, w := s.AfterDay, s.AfterWeek
	text := fmt.Sprintf("Left as it is, it is %.0f %% cured after a day and softens from %s on (%s to %s eight times in ten); after a week %.0f %% and %s. ",
		100*float64(d.Degree), Degrees(d.Tg, sys), Degrees(d.TgLow, sys), Degrees(d.TgHigh, sys), 100*float64(w.Degree), Degrees(w.Tg, sys))
	if s.Through == 0 {
		return text + "It is not through-cured within 14 days at these temperatures: warm it."
	}
	days := math.Ceil(s.Through.Hours() / 24)
	if s.AfterWeek.Degree > 0.97 {
		return text + fmt.Sprintf("It is as good as fully cured after %.0f days.", days)
	}
	return text + fmt.Sprintf("It is as cured as it gets here after %.0f days, which is not full cure: only warmth brings it further. ", days) + s.sun()
}

// sun is what to say of a laminate that softens below what sun makes of a dark hull, up
// to 80 °C (from memory).
func (s Session) sun() string {
	if s.AfterWeek.Tg >= si.Celsius(80) {
		return ""
	}
	return "Sun on a dark hull gets hotter than it softens at: shade it, or warm it through first, or the weave prints through."
}

// Hottest says in words how hot it gets and when. A thin cool session makes little
// heat of its own and is hottest when the air is.
func (s Session) Hottest(sys si.System) string {
	own := fmt.Sprintf("%s after %.0f min", Degrees(s.Own, sys), s.OwnAfter.Minutes())
	if s.OwnAfter >= ownHours-si.Minutes(5) { // still rising with the air when we stop looking
		return "no peak of its own, with the air " + Degrees(s.Peak, sys)
	}
	if s.PeakAfter > ownHours {
		return own + ", later with the air " + Degrees(s.Peak, sys)
	}
	if s.OwnLow == s.OwnHigh { // its range was not asked for
		return "peak " + own
	}
	return fmt.Sprintf("peak %s (%s to %s eight times in ten)", own, Degrees(s.OwnLow, sys), Degrees(s.OwnHigh, sys))
}

// Gelled is when a session is gelled throughout, since it was laid. Where that is
// beyond the run, the time of its thin edges stands in.
func (s Session) Gelled() si.Time {
	if s.Gel > 0 {
		return s.Gel
	}
	return s.FilmGel
}

// Next is when the next session may be laid without sanding, since mixing: "2.9 to
// 35.1 h", or "never".
func (s Session) Next() string {
	if s.RecoatTo == 0 {
		return "never: sand"
	}
	return fmt.Sprintf("%.1f to %.1f h", s.RecoatFrom.Hours(), s.RecoatTo.Hours())
}
