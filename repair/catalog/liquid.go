package catalog

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// TwoPart is whatever is mixed from two parts before use: a resin, a gelcoat, a
// filler, a barrier coat.
//
// Two styles exist, and their words are kept apart. A polyester or vinyl ester
// takes a little catalyst, dosed in per cent of the resin's mass within a band;
// an epoxy takes hardener, which is part of the cured plastic, in one fixed ratio.
type TwoPart struct {
	Class           string            `yaml:"class"` // or the name of the user's sheet
	Over            string            `yaml:"-"`     // the class a user's sheet lies over; empty for a class itself
	Name            string            `yaml:"name"`
	Density         Value[si.Density] `yaml:"density"` // of the liquid, part A
	Hardener        string            `yaml:"hardener"`
	HardenerDensity Value[si.Density] `yaml:"hardener_density"` // of catalyst or hardener
	Dose            Value[si.Ratio]   `yaml:"dose"`             // catalyst by mass of resin; not given for epoxy
	PerHundred      Value[float64]    `yaml:"per_100"`          // hardener to 100 of part A, by mass; not given for polyester
	PerHundredVol   Value[float64]    `yaml:"per_100_volume"`   // the same by volume; one of the two is computed from the other
	PotLife         PotTable          `yaml:"pot_life"`
	Peak            Value[si.Temp]    `yaml:"peak"`       // hottest a 100 g cup gets at 25 °C and the typical dose
	PeakAfter       Value[si.Time]    `yaml:"peak_after"` // and how long after mixing
	Peaks           PeakTable         `yaml:"-"`          // cups of a user's sheet
	FilmGel         FilmTable         `yaml:"film_gel"`
	FilmSandable    FilmTable         `yaml:"film_sandable"` // as measured; what to wait for is Limits.Sandable
	Through         FilmTable         `yaml:"through"`       // cured through
	Limits          Limits            `yaml:"limits"`
	Packs           Packs             `yaml:"packs"`

	// The typical limits, at hand. Zero where none is given.
	HullMin, HullMax     si.Temp        `yaml:"-"`
	WetLimit             si.AreaDensity `yaml:"-"` // most wet laminate in one session
	RecoatFrom, RecoatTo si.Time        `yaml:"-"` // at 20 °C, without sanding
	Sandable             si.Time        `yaml:"-"` // at 20 °C, no sooner than
	ShelfLife            si.Time        `yaml:"-"`

	OwnTimes bool `yaml:"-"` // a user's sheet times it: the limits of the class are rules of work here, nothing to fit
	OwnPot   bool `yaml:"-"` // that sheet has the pot life too
}

// Limits are what a sheet allows, each with its source.
type Limits struct {
	HullMin    Value[si.Temp]        `yaml:"hull_min"`
	HullMax    Value[si.Temp]        `yaml:"hull_max"`
	WetLimit   Value[si.AreaDensity] `yaml:"wet_limit"`
	RecoatFrom Value[si.Time]        `yaml:"recoat_from"`
	RecoatTo   Value[si.Time]        `yaml:"recoat_to"`
	Sandable   Value[si.Time]        `yaml:"sandable"`
	ShelfLife  Value[si.Time]        `yaml:"shelf_life"`
}

// settle computes the ratio that was not stated from the one that was, and puts
// the typical limits at hand.
func (t *TwoPart) settle() {
	const how = "independent computation: the other ratio and the typical densities"
	ratio := float64(t.HardenerDensity.Typical / t.Density.Typical)
	switch {
	case t.PerHundred.Given() && !t.PerHundred.derived:
		t.PerHundredVol = t.PerHundred.scaled(1/ratio, how)
	case t.PerHundredVol.Given():
		t.PerHundred = t.PerHundredVol.scaled(ratio, how)
	}
	l := t.Limits
	t.HullMin, t.HullMax = l.HullMin.Typical, l.HullMax.Typical
	t.WetLimit = l.WetLimit.Typical
	t.RecoatFrom, t.RecoatTo = l.RecoatFrom.Typical, l.RecoatTo.Typical
	t.Sandable, t.ShelfLife = l.Sandable.Typical, l.ShelfLife.Typical
	for i := range t.Packs {
		t.Packs[i].Class = t.Class
	}
}

func (t TwoPart) class() string { return t.Class }

// Catalysed reports whether it takes catalyst by per cent (polyester, vinyl
// ester, gelcoat) and not hardener in a fixed ratio (epoxy).
func (t TwoPart) Catalysed() bool { return t.Dose.Given() }

// With returns the entry as mixed with that catalyst: its density goes over.
func (t TwoPart) With(k Catalyst) TwoPart {
	t.Hardener, t.HardenerDensity = k.Class, k.Density
	return t
}

// SecondPart returns the word for what is mixed in: "catalyst" or "hardener".
func (t TwoPart) SecondPart() string {
	if t.Catalysed() {
		return "catalyst"
	}
	return "hardener"
}

// check returns an error for an entry nobody could mix from.
func (t TwoPart) check() error {
	if t.Dose.Given() == t.PerHundred.Given() {
		return fmt.Errorf("%s: give either a catalyst dose or hardener per 100, not both", t.Class)
	}
	if !(t.Density.Low > 0 && t.HardenerDensity.Low > 0) {
		return fmt.Errorf("%s: both parts need a density above zero", t.Class)
	}
	if err := t.PotLife.check(t.Catalysed()); err != nil {
		return fmt.Errorf("%s: %w", t.Class, err)
	}
	if err := t.checkTimes(); err != nil {
		return fmt.Errorf("%s: %w", t.Class, err)
	}
	return nil
}

// PotTable is a sheet's pot life by temperature and, for a catalyst, by dose.
type PotTable struct {
	Criterion string        // what the sheet calls the end, and in which cup
	Cells     []job.PotLife // by rising temperature, then dose
	Origin
}

// UnmarshalYAML reads {criterion, source, date, cells: [{at, dose, time}]}. The
// quantities are read as text first, which about halves the time to read the
// catalogue: the YAML library formats and parses a document anew for each value
// that reads itself.
func (p *PotTable) UnmarshalYAML(unmarshal func(any) error) error {
	var raw struct {
		Criterion, Source, Date string
		Cells                   []struct{ At, Dose, Time string }
	}
	if err := unmarshal(&raw); err != nil {
		return err
	}
	*p = PotTable{Criterion: raw.Criterion, Origin: Origin{raw.Source, raw.Date}, Cells: make([]job.PotLife, len(raw.Cells))}
	for i, c := range raw.Cells {
		to := &p.Cells[i]
		err := errors.Join(parse(c.At, &to.At), parse(c.Time, &to.Time))
		if c.Dose != "" {
			err = errors.Join(err, parse(c.Dose, &to.Dose))
		}
		if err != nil {
			return fmt.Errorf("pot life, cell %d: %w", i+1, err)
		}
	}
	return nil
}

// Packs are the sizes on sale, smallest first.
type Packs []job.Pack

// UnmarshalYAML reads [{mass or volume, price}], quantities as text like PotTable's.
func (p *Packs) UnmarshalYAML(unmarshal func(any) error) error {
	var raw []struct {
		Mass, Volume string
		Price        float64
	}
	if err := unmarshal(&raw); err != nil {
		return err
	}
	*p = make(Packs, len(raw))
	for i, r := range raw {
		to := &(*p)[i]
		to.Price = r.Price
		var err error
		switch {
		case (r.Mass == "") == (r.Volume == ""):
			err = errors.New("give its mass or its volume")
		case r.Mass != "":
			err = parse(r.Mass, &to.Mass)
		default:
			err = parse(r.Volume, &to.Volume)
		}
		if err != nil {
			return fmt.Errorf("pack %d: %w", i+1, err)
		}
	}
	return nil
}

func (p PotTable) origin() Origin { return p.Origin }

// Given reports whether the sheet has a table.
func (p PotTable) Given() bool { return len(p.Cells) > 0 }

// String prints the cells in a line, each quantity exactly, and what ends them.
func (p PotTable) String() string {
	cells := make([]string, len(p.Cells))
	for i, c := range p.Cells {
		cells[i] = cell(c.At, c.Dose, c.Time)
	}
	return strings.Join(cells, ", ") + " (" + p.Criterion + ")"
}

// inOrder returns the cells by rising temperature and dose, as a new slice.
func inOrder(cells []job.PotLife) []job.PotLife {
	return slices.SortedFunc(slices.Values(cells), func(a, b job.PotLife) int {
		return cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.Dose, b.Dose))
	})
}

// check refuses a table that no material has: a cell twice, a cup that lasts
// longer when warmer or with more catalyst (a slip of typing), a dose where there
// is none to choose, none where there is. The cells are in order.
func (p PotTable) check(catalysed bool) error {
	for _, c := range p.Cells {
		place := fmt.Sprintf("pot life at %.4g °C", c.At.Celsius())
		switch {
		case catalysed && c.Dose <= 0:
			return fmt.Errorf("%s: which dose of catalyst?", place)
		case !catalysed && c.Dose != 0:
			return fmt.Errorf("%s: a dose of %.3g %% is given, but the hardener of an epoxy is a fixed ratio", place, c.Dose.Percent())
		case !(c.Time > 0) || !c.At.Given():
			return fmt.Errorf("%s: %.4g min is no pot life", place, c.Time.Minutes())
		}
	}
	if _, why := job.Slip("cup", p.Cells); why != "" {
		return fmt.Errorf("pot_life: %s", why)
	}
	return nil
}

// ResinKind is the chemistry of a laminating resin.
type ResinKind string

// The chemistries.
const (
	Polyester  ResinKind = "polyester"
	VinylEster ResinKind = "vinyl ester"
	Epoxy      ResinKind = "epoxy"
)

// Resin is a laminating resin.
type Resin struct {
	Kind  ResinKind         `yaml:"kind"`
	Cured Value[si.Density] `yaml:"cured"` // density in the laminate
	// The shear strength of its bond to old, ground laminate, as a mean over a lap or
	// a taper: to mat, and to woven or stitched fabric.
	BondMat    Value[si.Pressure] `yaml:"bond_to_mat"`
	BondFabric Value[si.Pressure] `yaml:"bond_to_fabric"`
	TwoPart    `yaml:",inline"`
}

// Gelcoat is a pigmented face coat or a repair paste of it.
type Gelcoat struct {
	Waxed   bool             `yaml:"waxed"` // dries tack-free in air; else film over it
	Film    Value[si.Length] `yaml:"film"`  // thickness applied in all
	TwoPart `yaml:",inline"`
}

// Filler is a two-part epoxy filler or fairing compound.
type Filler struct {
	Pass    Value[si.Length] `yaml:"pass"` // thickness laid in one pass
	TwoPart `yaml:",inline"`
}

// Barrier is a coat against water.
type Barrier struct {
	Film    Value[si.Length] `yaml:"film"` // wet, of one coat
	Coats   Value[float64]   `yaml:"coats"`
	Solids  Value[si.Ratio]  `yaml:"solids"` // by volume
	TwoPart `yaml:",inline"`
}

// Catalyst is the peroxide that polyesters take.
type Catalyst struct {
	Class   string            `yaml:"class"`
	Name    string            `yaml:"name"`
	Density Value[si.Density] `yaml:"density"`
	Keeps   Value[si.Time]    `yaml:"shelf_life"`
	Packs   Packs             `yaml:"packs"`
}

func (c Catalyst) class() string { return c.Class }
