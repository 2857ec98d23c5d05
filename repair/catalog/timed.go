package catalog

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// FilmTable is when a thin film comes to one stage (gelled, sandable, cured
// through), by temperature and, for a catalyst, by dose.
type FilmTable struct {
	Cells []job.FilmTime // by rising temperature, then dose
	Origin
}

// UnmarshalYAML reads {source, date, cells: [{at, dose, time}]}, quantities as text
// like PotTable's.
func (f *FilmTable) UnmarshalYAML(unmarshal func(any) error) error {
	var raw struct {
		Source, Date string
		Cells        []struct{ At, Dose, Time string }
	}
	if err := unmarshal(&raw); err != nil {
		return err
	}
	if raw.Source == "" {
		return errors.New("film times: no source")
	}
	*f = FilmTable{Origin: Origin{raw.Source, raw.Date}}
	for i, c := range raw.Cells {
		var to job.FilmTime
		err := errors.Join(parse(c.At, &to.At), parse(c.Time, &to.Time))
		if c.Dose != "" {
			err = errors.Join(err, parse(c.Dose, &to.Dose))
		}
		if err != nil {
			return fmt.Errorf("film times, cell %d: %w", i+1, err)
		}
		f.Cells = append(f.Cells, to)
	}
	return nil
}

func (f FilmTable) origin() Origin { return f.Origin }

// Given reports whether there is a table.
func (f FilmTable) Given() bool { return len(f.Cells) > 0 }

// String prints the cells in a line, each quantity exactly.
func (f FilmTable) String() string {
	out := make([]string, len(f.Cells))
	for i, c := range f.Cells {
		out[i] = cell(c.At, c.Dose, c.Time)
	}
	return strings.Join(out, ", ")
}

// cell prints a row of a table: "20 °C 1.5 % 27 min".
func cell(at si.Temp, dose si.Ratio, t si.Time) string {
	if dose > 0 {
		return fmt.Sprintf("%v %v %v", at, dose, t)
	}
	return fmt.Sprintf("%v %v", at, t)
}

// pots returns the cells as those of a pot-life table, which are checked alike.
func (f FilmTable) pots() []job.PotLife {
	out := make([]job.PotLife, len(f.Cells))
	for i, c := range f.Cells {
		out[i] = job.PotLife(c)
	}
	return out
}

// PeakTable is cups left standing with a thermometer in them.
type PeakTable struct {
	Cells []job.Peak
	Origin
}

func (p PeakTable) origin() Origin { return p.Origin }

// Given reports whether there is a cup.
func (p PeakTable) Given() bool { return len(p.Cells) > 0 }

// String prints the cups in a line, each quantity exactly.
func (p PeakTable) String() string {
	out := make([]string, len(p.Cells))
	for i, c := range p.Cells {
		out[i] = fmt.Sprintf("%v at %v", cmp.Or(c.Mass, si.Grams(100)), c.At)
		if c.Dose > 0 {
			out[i] += fmt.Sprintf(" %v", c.Dose)
		}
		out[i] += fmt.Sprintf(" to %v", c.Peak)
		if c.After > 0 {
			out[i] += fmt.Sprintf(" after %v", c.After)
		}
	}
	return strings.Join(out, ", ")
}

// criteria words what a sheet's pot life ends with; package cure reads these texts.
var criteria = map[string]string{
	"":                  "100 g in a cup, as your sheet has it",
	"gel":               "100 g in a cup, to gel",
	"warmed by 25 K":    "100 g in a cup, until it has warmed by 25 K",
	"warmed by 30 K":    "100 g in a cup, until it has warmed by 30 K",
	"viscosity doubled": "100 g in a cup, until its viscosity has doubled",
}

// clock lays what the sheet says of setting over the class's, and tells what is odd.
//
// A sheet that times anything is of a product of its own, and the class's times
// are then another product's. They stand aside, restated or not: film times, the
// time of the peak, the time before sanding as something to fit. Three things stay.
// The pot life, where the sheet has none, for without one nothing can be mixed
// (OwnPot is false, and package cure believes it less). The height of the peak,
// where the sheet has none, for it is more the kind's than the product's and its
// spread is the class's. The limits, as rules of work: recoat window and
// the time before sanding, each until the sheet states its own.
func (t *TwoPart) clock(s job.Sheet, o Origin) (odd []string) {
	if len(s.PotLife) > 0 {
		t.PotLife = PotTable{Criterion: criteria[s.Criterion], Cells: inOrder(s.PotLife), Origin: o}
		t.OwnPot = true
	}
	over(&t.Limits.RecoatFrom, s.RecoatFrom, o, "recoat_from", &odd)
	over(&t.Limits.RecoatTo, s.RecoatTo, o, "recoat_to", &odd)
	if s.RecoatFrom > 0 && !t.Limits.RecoatTo.Given() {
		odd = append(odd, "recoat_from is not used without recoat_to: give both")
	}
	if !s.Timed() {
		return odd
	}
	t.OwnTimes = true
	if !t.OwnPot {
		odd = append(odd, "it gives times and no pot_life, so the working time is the class's, of another product: "+
			"time a 100 g cup, and give it as pot_life")
	}
	t.PeakAfter = Value[si.Time]{}
	t.FilmGel, t.FilmSandable, t.Through = t.films(s.FilmGel, o), t.films(s.Sandable, o), t.films(s.Through, o)
	t.Peaks = PeakTable{}
	if len(s.Peaks) > 0 {
		t.Peak = Value[si.Temp]{}
		t.Peaks = PeakTable{Cells: slices.Clone(s.Peaks), Origin: o}
		for i := range t.Peaks.Cells {
			p := &t.Peaks.Cells[i]
			p.Dose, p.Mass = cmp.Or(p.Dose, t.Dose.Typical), cmp.Or(p.Mass, si.Grams(100))
		}
	}
	if t.FilmSandable.Given() {
		t.Limits.Sandable = t.sandableAt20(o)
	}
	for _, d := range t.doses() {
		if !t.Dose.Holds(d) {
			odd = append(odd, fmt.Sprintf("it gives a time at a dose of %v, outside its own %v: no batch is planned there", d, t.Dose))
		}
	}
	return odd
}

// films puts the rows in order; one without a dose was at the middle of the
// sheet's (of the class's where the sheet states none; zero for an epoxy).
func (t TwoPart) films(rows []job.FilmTime, o Origin) FilmTable {
	if len(rows) == 0 {
		return FilmTable{}
	}
	out := FilmTable{Cells: slices.Clone(rows), Origin: o}
	for i := range out.Cells {
		out.Cells[i].Dose = cmp.Or(out.Cells[i].Dose, t.Dose.Typical)
	}
	slices.SortStableFunc(out.Cells, func(a, b job.FilmTime) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.Dose, b.Dose))
	})
	return out
}

// doses lists the doses for which a film or a cup is timed, each once; none for an
// epoxy.
func (t TwoPart) doses() []si.Ratio {
	var out []si.Ratio
	if !t.Catalysed() {
		return nil
	}
	for _, f := range []FilmTable{t.FilmGel, t.FilmSandable, t.Through} {
		for _, c := range f.Cells {
			out = append(out, c.Dose)
		}
	}
	for _, p := range t.Peaks.Cells {
		out = append(out, p.Dose)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// WaitEnergy is how strongly a sheet's waits (before sanding, between coats) follow
// temperature: halved by some 10 K (from memory). Here they are moved to 20 °C by it,
// in repair/curing and repair/figure to the hull's temperature.
const WaitEnergy = si.MolarEnergy(50e3)

// sandableAt20 is the limit "no sooner than, at 20 °C" that follows from the film's
// own times: of the row nearest 20 °C (and of those, the usual dose).
func (t TwoPart) sandableAt20(o Origin) Value[si.Time] {
	const warm = 293.15 // K
	near := slices.MinFunc(t.FilmSandable.Cells, func(a, b job.FilmTime) int {
		off := func(c job.FilmTime) float64 { return math.Abs(float64(c.At) - warm) }
		dose := func(c job.FilmTime) float64 { return math.Abs(float64(c.Dose - t.Dose.Typical)) }
		return cmp.Or(cmp.Compare(off(a), off(b)), cmp.Compare(dose(a), dose(b)))
	})
	x := math.Exp(float64(WaitEnergy) / kinetics.R * (1/warm - 1/float64(near.At)))
	if math.Abs(x-1) < 1e-9 {
		return exactly(near.Time, o)
	}
	o.Source += fmt.Sprintf("; moved from %v to 20 °C by 50 kJ/mol (from memory)", near.At)
	return exactly(si.Minutes(math.Round(si.Scale(near.Time, x).Minutes())), o)
}

// checkTimes refuses film times and watched cups that no material has, as
// PotTable.check does; the place is named.
func (t TwoPart) checkTimes() error {
	dose := func(place string, at si.Temp, d si.Ratio) error {
		switch {
		case t.Catalysed() && !(d > 0):
			return fmt.Errorf("%s at %v: which dose of catalyst?", place, at)
		case !t.Catalysed() && d != 0:
			return fmt.Errorf("%s at %v: a dose of %v is given, but the hardener of an epoxy is a fixed ratio; leave 'dose' out",
				place, at, d)
		}
		return nil
	}
	for _, f := range []struct {
		key   string
		table FilmTable
	}{{"film_gel", t.FilmGel}, {"sandable", t.FilmSandable}, {"through", t.Through}} {
		for _, c := range f.table.Cells {
			if err := dose(f.key, c.At, c.Dose); err != nil {
				return err
			}
			if !(c.Time > 0) || !c.At.Given() {
				return fmt.Errorf("%s: %v at %v is no time of a film", f.key, c.Time, c.At)
			}
		}
		if i, why := job.Slip("film", f.table.pots()); i >= 0 {
			return fmt.Errorf("%s: %s", f.key, why)
		}
	}
	s := job.Sheet{FilmGel: t.FilmGel.Cells, Sandable: t.FilmSandable.Cells, Through: t.Through.Cells}
	if key, i, why := s.StageSlip(); i >= 0 {
		return fmt.Errorf("%s: %s", key, why)
	}
	for _, p := range t.Peaks.Cells {
		if err := dose("peak", p.At, p.Dose); err != nil {
			return err
		}
		if !(p.Peak > p.At) || !p.At.Given() {
			return fmt.Errorf("peak: %v must be above the %v the cup began at", p.Peak, p.At)
		}
	}
	if l := t.Limits; l.RecoatFrom.Given() && l.RecoatTo.Given() && t.RecoatFrom >= t.RecoatTo {
		return fmt.Errorf("recoat_from %v is not before recoat_to %v; give both, of one product", t.RecoatFrom, t.RecoatTo)
	}
	return nil
}
