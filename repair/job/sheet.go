package job

import (
	"fmt"

	"scarfwright/physics/si"
)

// PotLife is one cell of a sheet's pot-life table.
type PotLife struct {
	At   si.Temp  `job:"at,required" min:"-10 °C" max:"60 °C" doc:"temperature"`
	Dose si.Ratio `job:"dose" min:"0 %" max:"10 %" doc:"catalyst, by mass; left out for epoxy"`
	Time si.Time  `job:"time,required" min:"0.5 min" max:"48 h" doc:"working time"`
}

// FilmTime is when a thin film, such as one coat or a ply, comes to a stage at one
// temperature. Its fields are those of PotLife, so that the two convert.
type FilmTime struct {
	At   si.Temp  `job:"at,required" min:"-10 °C" max:"60 °C" doc:"temperature of the film and the air"`
	Dose si.Ratio `job:"dose" min:"0.1 %" max:"10 %" doc:"catalyst, by mass; the middle of the sheet's doses if left out; never given for epoxy"`
	Time si.Time  `job:"time,required" min:"1 min" max:"30 days" doc:"time from mixing"`
}

// Peak is a cup left standing with a thermometer in its middle.
type Peak struct {
	At    si.Temp  `job:"at,required" min:"-10 °C" max:"60 °C" doc:"temperature of the mix and the air at the start"`
	Dose  si.Ratio `job:"dose" min:"0.1 %" max:"10 %" doc:"catalyst, by mass; the middle of the sheet's doses if left out; never given for epoxy"`
	Mass  si.Mass  `job:"mass" min:"5 g" max:"5 kg" doc:"mass of the batch; 100 g if left out"`
	Peak  si.Temp  `job:"peak,required" min:"0 °C" max:"300 °C" doc:"hottest it got"`
	After si.Time  `job:"after" min:"1 min" max:"48 h" doc:"how long after mixing that was, when noted"`
}

// Timed reports whether the sheet times the material's setting at all. Windows for
// the next coat do not count: they are a rule of work.
func (s Sheet) Timed() bool {
	return len(s.PotLife)+len(s.FilmGel)+len(s.Sandable)+len(s.Through)+len(s.Peaks) > 0
}

// Slip returns the row of a table of times that cannot be right and why: a row
// given twice, or a cup or film (the word to be said) that takes longer although
// it is warmer and has no less catalyst. Rows of which one has a dose and the
// other has none are not compared. It returns -1 where nothing is wrong.
func Slip(thing string, rows []PotLife) (row int, why string) {
	for i, c := range rows {
		for _, d := range rows[:i] {
			if d.At == c.At && d.Dose == c.Dose {
				return i, fmt.Sprintf("%s is given twice, %v and %v; delete one", where(c), d.Time, c.Time)
			}
			late, early := c, d // late: the warmer, which should take no longer
			if !warmer(late, early) {
				late, early = d, c
			}
			if warmer(late, early) && late.Time > early.Time {
				return i, fmt.Sprintf("%v at %s is longer than %v at %s; a warmer %s, or more catalyst, takes no longer: correct one of the two",
					late.Time, where(late), early.Time, where(early), thing)
			}
		}
	}
	return -1, ""
}

// warmer reports a at least as warm as b and with no less catalyst.
func warmer(a, b PotLife) bool {
	return a.At >= b.At && a.Dose >= b.Dose && (a.Dose == 0) == (b.Dose == 0)
}

func where(c PotLife) string {
	if c.Dose > 0 {
		return fmt.Sprintf("%v and %v", c.At, c.Dose)
	}
	return fmt.Sprint(c.At)
}

// stage is one of a film's tables; stages are in the order in which it passes them.
type stage struct {
	key, word string
	rows      []FilmTime
}

func (s Sheet) stages() [3]stage {
	return [3]stage{
		{"film_gel", "gelled", s.FilmGel}, {"sandable", "sandable", s.Sandable}, {"through", "cured through", s.Through},
	}
}

// cells returns the rows as those of a pot-life table.
func cells(rows []FilmTime) []PotLife {
	out := make([]PotLife, len(rows))
	for i, r := range rows {
		out[i] = PotLife(r)
	}
	return out
}

// StageSlip returns the key, the row and what is wrong where a film of the sheet
// comes to a later stage before an earlier one that was no colder; row -1 where
// nothing is wrong.
func (s Sheet) StageSlip() (key string, row int, why string) {
	all := s.stages()
	for k, late := range all {
		for i, l := range late.rows {
			for _, early := range all[:k] {
				for _, e := range early.rows {
					if warmer(PotLife(e), PotLife(l)) && e.Time > l.Time {
						const what = "%s after %v at %s, but %s only after %v at %s (%s); " +
							"a film gels, then sands, then is cured through: correct one of the two"
						return late.key, i, fmt.Sprintf(what, late.word, l.Time, where(PotLife(l)), early.word, e.Time, where(PotLife(e)), early.key)
					}
				}
			}
		}
	}
	return "", -1, ""
}

// peakSlip is Slip for the cups that were watched: of one mass, a warmer one peaks
// no later.
func peakSlip(peaks []Peak) (row int, why string) {
	mass := func(p Peak) si.Mass {
		if p.Mass == 0 {
			return si.Grams(100)
		}
		return p.Mass
	}
	for i, c := range peaks {
		for _, d := range peaks[:i] {
			if mass(c) != mass(d) {
				continue
			}
			two := []PotLife{{d.At, d.Dose, d.After}, {c.At, c.Dose, c.After}}
			if d.At == c.At && d.Dose == c.Dose {
				return i, fmt.Sprintf("%v at %s is given twice; delete one", mass(c), where(two[1]))
			}
			if c.After == 0 || d.After == 0 {
				continue
			}
			if row, why := Slip("cup", two); row >= 0 {
				return i, why
			}
		}
	}
	return -1, ""
}

// sheet reports what contradicts itself within one of the user's sheets. It knows
// no class: whether a dose may be given at all is found when the sheet is laid
// over its class.
func (c *checker) sheet(s Sheet, path string) {
	rule := func(key, format string, args ...any) { c.add(path+"."+key, CodeRule, format, args...) }
	switch {
	case s.DoseHigh > 0 && s.DoseLow > s.DoseHigh:
		rule("dose_low", "The least dose is above the most.")
	case s.HullMax.Given() && s.HullMin > s.HullMax:
		rule("hull_min", "The coldest hull is warmer than the warmest.")
	}
	if s.Criterion != "" && len(s.PotLife) == 0 {
		rule("pot_criterion", "It says what ends the pot life, and no pot life is given. Give 'pot_life' too, or leave this out.")
	}
	if s.RecoatTo > 0 && s.RecoatFrom >= s.RecoatTo {
		rule("recoat_from", "The next coat may go on from %v, which is not before %v (recoat_to). Swap or correct them.",
			s.RecoatFrom, s.RecoatTo)
	}
	if i, why := Slip("cup", s.PotLife); i >= 0 {
		rule(fmt.Sprintf("pot_life[%d].time", i), "Pot life: %s.", why)
	}
	for _, x := range s.stages() {
		if i, why := Slip("film", cells(x.rows)); i >= 0 {
			rule(fmt.Sprintf("%s[%d].time", x.key, i), "%s: %s.", spoken(x.key), why)
		}
	}
	if key, i, why := s.StageSlip(); i >= 0 {
		rule(fmt.Sprintf("%s[%d].time", key, i), "%s: %s.", spoken(key), why)
	}
	for i, p := range s.Peaks {
		if p.Peak <= p.At {
			rule(fmt.Sprintf("peak[%d].peak", i),
				"A cup that sets warms itself: its peak of %v must be above the %v it began at (at). Correct one of the two.",
				p.Peak, p.At)
		}
	}
	if i, why := peakSlip(s.Peaks); i >= 0 {
		rule(fmt.Sprintf("peak[%d].after", i), "Peak: %s.", why)
	}
}
