package curing

import (
	"fmt"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/cure"
	"scarfwright/repair/design"
	"scarfwright/repair/overcoat"
	"scarfwright/repair/working"
)

// Input is what is laid, of what, and into which weather.
type Input struct {
	Design *design.Result
	Dish   bool         // partial depth: the old laminate stays behind
	Core   catalog.Core // of a sandwich; the zero Core otherwise
	Inner  si.Length    // thickness of the skin behind the core
	Resin  Resin
	Sheet  catalog.TwoPart // its recoat window and sandable time at 20 °C
	// Air returns the air from the start of the session after prev on, of the first one
	// where prev is nil.
	Air    func(prev *Session) (Air, error)
	System si.System
}

// Plan follows every session. Where one would heat itself past its limit, plies
// are moved to further sessions until it does not, and the plies' session numbers
// in the design are changed to match: a foam back, a warm day or a fast resin each
// ask for fewer plies at once. A single ply that is still too hot is a stop.
func Plan(in Input) (Result, error) {
	var out Result
	var w heat.Workspace
	d := in.Design
	layers, names, what, limit := behind(*d, in.Dish, in.Core, in.Inner)
	first := 0
	for k := 1; first < len(d.Plies); k++ {
		var prev *Session
		if k > 1 {
			prev = &out.Sessions[k-2]
		}
		air, err := in.Air(prev)
		if err != nil {
			return Result{}, err
		}
		n := planned(d.Plies[first:])
		s, n, err := fit(&w, d.Plies[first:first+n], layers, names, in.Resin, air, limit)
		if err != nil {
			return Result{}, err
		}
		s.Name, s.What, s.Limit = fmt.Sprintf("session %d", k), what, limit
		if err := s.band(d.Plies[first:first+n], layers, in.Resin, air); err != nil {
			return Result{}, err
		}
		note, err := s.film(in, air, in.Resin.Model.Reaches)
		if err != nil {
			return Result{}, err
		}
		if note != "" && k == 1 {
			out.Notes = append(out.Notes, note)
		}
		for i := first; i < first+n; i++ {
			d.Plies[i].Session = k
		}
		first += n
		out.Sessions = append(out.Sessions, s)
		out.Verdicts = append(out.Verdicts, s.verdict(in))
		layers, names = append([]heat.Layer{set(s.Thickness)}, layers...), append([]Named{{"plies of " + s.Name, s.Thickness, false}}, names...)
	}
	return out, nil
}

// First follows the first session with the plies the design has in it, however hot
// they get: what another air or a lamp would make of the same work.
func First(in Input, air Air) (Session, error) {
	layers, names, what, limit := behind(*in.Design, in.Dish, in.Core, in.Inner)
	s, err := follow(nil, in.Design.Plies[:planned(in.Design.Plies)], layers, names, in.Resin, air)
	if err != nil {
		return Session{}, err
	}
	s.Name, s.What, s.Limit = "session 1", what, limit
	s.OwnLow, s.OwnHigh = s.Own, s.Own
	_, err = s.film(in, air, in.Resin.Model.LikelyReaches)
	return s, err
}

// film is what the session's thin edges come to, which go with the hull; and what
// of it lies outside the sheet.
func (s *Session) film(in Input, air Air, reaches func(kinetics.History, si.Ratio) (cure.Reached, error)) (note string, err error) {
	hull, err := air.Film()
	if err != nil {
		return "", err
	}
	film, err := reaches(hull, in.Resin.Dose)
	if err != nil {
		return "", fmt.Errorf("cure along the hull's temperature: %w", err)
	}
	s.FilmGel, s.AfterDay, s.AfterWeek = film.Gel.Likely, stateOf(film.AfterDay), stateOf(film.AfterWeek)
	if !film.Through.Never {
		s.Through = film.Through.Likely
	}
	return film.Gel.Extrapolated, s.window(in, hull, film.Sandable.Likely)
}

// planned is how many of the plies the design puts into one session.
func planned(plies []design.Ply) int {
	n := 1
	for n < len(plies) && plies[n].Session == plies[0].Session {
		n++
	}
	return n
}

// fit lays as many of the plies as stay under the limit, by halving; at least one.
func fit(w *heat.Workspace, plies []design.Ply, under []heat.Layer, names []Named, r Resin, air Air, limit si.Temp) (Session, int, error) {
	s, err := follow(w, plies, under, names, r, air)
	if err != nil || s.hottest() <= limit || len(plies) == 1 {
		return s, len(plies), err
	}
	low, high := 1, len(plies)
	best, err := follow(w, plies[:1], under, names, r, air)
	if err != nil {
		return Session{}, 0, err
	}
	for high-low > 1 {
		mid := (low + high) / 2
		s, err := follow(w, plies[:mid], under, names, r, air)
		if err != nil {
			return Session{}, 0, err
		}
		if s.hottest() <= limit {
			low, best = mid, s
		} else {
			high = mid
		}
	}
	return best, low, nil
}

// hottest is the temperature held against the limit: that of the new laminate by its
// own heat, which is then never cooler than what it lies on. What a later day's air
// does to it, fewer plies at once would not help.
func (s Session) hottest() si.Temp { return s.Own }

// window is the time in which the next session may be laid without sanding, and
// from when it may be sanded: the sheet's times at 20 °C, moved as the hull is
// warmer or colder (package overcoat has the rule).
func (s *Session) window(in Input, hull kinetics.History, sandable si.Time) error {
	// The sheet's time to sanding counts air, wax and shrinkage as well as cure: a
	// warm hull does not shorten it.
	wait, err := waits(hull, in.Sheet.Sandable)
	if err != nil {
		return err
	}
	s.Sand = max(sandable, in.Sheet.Sandable, wait)
	from, to := in.Sheet.RecoatFrom, in.Sheet.RecoatTo
	if to == 0 {
		s.RecoatWords = "the sheet gives no window: lay on while it is tacky, otherwise sand"
		return nil
	}
	early, err := waits(hull, from)
	if err != nil {
		return err
	}
	late, err := waits(hull, to)
	if err != nil {
		return err
	}
	s.RecoatFrom, s.RecoatTo, s.RecoatWords = overcoat.Window(from, to, over(early, from), over(late, to))
	if gelled := s.Gelled(); s.RecoatFrom < gelled { // nothing goes on what still flows
		s.RecoatFrom = gelled
		s.RecoatWords += fmt.Sprintf("; not before it has gelled, %.1f h", gelled.Hours())
	}
	if s.RecoatFrom >= s.RecoatTo {
		s.RecoatFrom, s.RecoatTo, s.RecoatWords = 0, 0, "it gels only when its window is over: sand"
	}
	return nil
}

// over is how many times as long as on the sheet something takes, 1 where the sheet has
// it at once.
func over(here, sheet si.Time) float64 {
	if sheet == 0 {
		return 1
	}
	return float64(here / sheet)
}

// waits is when a hull is as old as a time at 20 °C makes it (kinetics.EquivalentAge),
// the film's last temperature lasting where that is beyond a fortnight.
func waits(hull kinetics.History, sheet si.Time) (si.Time, error) {
	left := sheet
	for h := 0; ; h++ {
		from, to := si.Hours(float64(h)), si.Hours(float64(h+1))
		if h >= 14*24 {
			to = from + si.Days(1000)
		}
		age, err := kinetics.EquivalentAge(windowEnergy, hull, from, to, si.Celsius(20))
		if err != nil {
			return 0, err
		}
		if age >= left || h >= 14*24 {
			return from + si.Scale(to-from, float64(left/age)), nil // straight within the hour
		}
		left -= age
	}
}

// windowEnergy is how strongly the recoat window follows temperature: halved by
// some 10 K (from memory).
const windowEnergy = catalog.WaitEnergy

func (s Session) verdict(in Input) check.Verdict {
	show := func(t si.Temp) string { return Degrees(t, in.System) }
	v := check.Verdict{
		What: "heat of the laminate, " + s.Name, State: check.OK,
		Value:  fmt.Sprintf("%s, %s at the %s", s.Hottest(in.System), show(s.Behind), s.What),
		Limit:  show(s.Limit),
		Why:    fmt.Sprintf("%s at once, %s, laid at %s: an upper estimate, heat lost sideways is not counted.", working.Count(len(s.Plies), "ply", "plies"), si.Show(s.Thickness, in.System, 2), show(s.Start)),
		Source: "physics/heat and the law fitted to the sheet; limit " + working.FromMemory,
	}
	switch {
	case s.hottest() > s.Limit:
		v.State = check.Stop
		v.Why = "Even one ply at a time heats itself past the limit: take a slower hardener, less catalyst within the sheet's band, or a cooler hour."
	case s.OwnHigh > s.Limit:
		v.State = check.Watch
		v.Why += " What the sheet leaves open could bring it past the limit: lay fewer plies at once, or watch the first session with a thermometer."
	case s.Peak > s.Limit:
		v.State = check.Watch
		v.Why += " Later the air alone brings it past the limit: shade it, or lay it on a cooler day."
	case s.Coarse != "":
		v.State = check.Watch
		v.Why += " " + s.Coarse
	}
	return v
}

// set is set laminate of a thickness.
func set(t si.Length) heat.Layer {
	return heat.Layer{Thickness: t, Conductivity: laminateConductivity, Density: laminateDensity, SpecificHeat: laminateSpecificHeat}
}
