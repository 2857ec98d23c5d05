package mixing

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
	"scarfwright/repair/check"
	"scarfwright/repair/working"
)

// Own is the working time of one batch in its own cup, by a model fitted to the
// sheet: nine times in ten not below Low, as often not above High.
type Own struct {
	Low    si.Time `json:"low_s"`
	Likely si.Time `json:"likely_s"`
	High   si.Time `json:"high_s"`
	Cup    string  `json:"cup"`            // the vessel it holds for
	Tray   si.Time `json:"tray_s"`         // likely, poured out into a tray; zero where not worked out
	Note   string  `json:"note,omitempty"` // set where the model goes beyond the sheet
}

// Pot tells the working time of a mixed mass at a temperature of the air and a dose.
type Pot func(mixed si.Mass, at si.Temp, dose si.Ratio) (Own, error)

// trayHelps is how much longer a tray must give before it is advised.
const trayHelps = 1.3

// crewLimit returns the most that the crew can lay down before 60 % of its own
// working time has gone. That time falls with the mass, so the answer is where
//
//	m = rate 0.6 t(m),   rate = people × area an hour × mass per area
//
// found by halving: the left side rises with m and the right side falls.
func (s *Session) crewLimit(o Options, area si.Area) (si.Mass, error) {
	perHour := si.Scale(s.Need.Mixed, float64(o.People)*o.WetOut/area.M2())
	lays := func(m si.Mass) (bool, error) {
		own, err := o.Pot(m, s.At, o.Dose)
		return si.Scale(perHour, usable*own.Low.Hours()) >= m, err
	}
	low, high := si.Grams(1), o.Largest
	if ok, err := lays(high); ok || err != nil {
		return high, err
	}
	for range 20 { // to a millionth of the largest batch; each is one cup followed
		mid := (low + high) / 2
		ok, err := lays(mid)
		if err != nil {
			return 0, err
		}
		if ok {
			low = mid
		} else {
			high = mid
		}
		if high-low < si.Grams(2) {
			break
		}
	}
	return low, nil
}

// Told is the working time in words that stand alone.
func (s Session) Told() string {
	if s.Own == nil && s.WorkingTime > 0 {
		return "working time of 100 g " + s.Words
	}
	return s.Words
}

// tellOwn replaces the sheet's 100 g by the batch's own working time, where a
// model is at hand.
func (s *Session) tellOwn(o Options, material string) {
	if o.Pot == nil || s.Batches.Count == 0 || s.WorkingTime == 0 {
		return
	}
	own, err := o.Pot(s.Batches.Mixed, s.At, o.Dose)
	if err != nil {
		s.Verdicts = append(s.Verdicts, check.Verdict{
			What: "working time of its own batch, " + s.Name, State: check.Watch, Value: s.Words, Why: sentence(err), Source: working.Ours,
		})
		return
	}
	s.Own = &own
	s.Words = fmt.Sprintf("lay it down within %.0f min: %.0f g in %s, %s, is at its end after %.0f min at least (likely %.0f)",
		math.Floor(usable*own.Low.Minutes()), s.Batches.Mixed.Grams(), own.Cup, s.warmth(o), WholeMinutes(own.Low), WholeMinutes(own.Likely))
	if float64(own.Tray) > trayHelps*float64(own.Likely) {
		s.Words += fmt.Sprintf("; poured into a tray at once, likely %.0f min", WholeMinutes(own.Tray))
	}
	for i := range s.Verdicts {
		if v := &s.Verdicts[i]; v.What == "working time, "+s.Name {
			v.Value, v.Limit = s.Words, "laid down before 60 % of it has gone"
			v.Why = "By a model fitted to the sheet of " + material + ": nine times in ten the cup lasts longer than the smaller figure. It falls with mass and warmth."
			if own.Note != "" {
				v.State = check.Watch
				v.Why = own.Note + " " + v.Why
			}
		}
	}
}
