package heat

import (
	"fmt"
	"math"
	"slices"

	"scarfwright/physics/si"
)

// hottest bounds the temperatures we take as meant: 2000 K is beyond any resin.
const hottest = 2000. // K

// A Reaction turns a layer from degree 0 to degree 1 and gives off heat.
type Reaction struct {
	// Rate returns da/dt in 1/s at degree a and T kelvin. It must be finite and not
	// negative; it is only asked for 0 <= a <= 1.
	Rate func(a, T float64) float64

	// Slopes, where given, returns Rate and its derivatives by degree and by
	// temperature. Without it they are found by differences, at the price of two
	// more calls of Rate a node and step.
	Slopes func(a, T float64) (rate, byDegree, byTemp float64)

	// Heat is given off per kilogram of the layer (not of its resin) from degree 0
	// (or Quiet) to 1. Mixing the two bases is the commonest error of the trade's cure sums.
	Heat si.SpecificEnergy

	// Quiet is the degree up to which no heat is given off, 0 for most laws: all
	// Heat comes between it and 1. It serves laws that first use up an inhibitor
	// and count that on the same scale. It is a break of the law as well.
	Quiet float64

	// Breaks are the degrees at which the rate law jumps or has a kink, ascending.
	// A node's law changes at the break and not before; steps end there.
	Breaks []float64
}

// A Layer is one thickness of one material, inert unless it has a Reaction.
type Layer struct {
	Thickness    si.Length
	Conductivity si.Conductivity // through the thickness
	Density      si.Density
	SpecificHeat si.SpecificHeat
	Start        si.Temp // not given: the slab's
	Reaction     *Reaction
	Seed         float64 // degree at the start; a law that is zero at 0 needs one
	Cells        int     // 0: shared out by the slab

	// Source, where given, is further heat in W/m3 at a depth from the first face
	// and a time, in metres and seconds.
	Source func(x, t float64) float64
}

// A Face is one side of the slab; the zero Face is insulated.
type Face struct {
	kind faceKind
	h    float64 // W/(m2 K)
	temp History
}

type faceKind int

const (
	insulated faceKind = iota
	convective
	prescribed
)

// Insulated returns the face that no heat passes.
func Insulated() Face { return Face{} }

// Convective returns the face that gives h (T - air) to the air before it.
func Convective(h si.HeatTransfer, air History) Face {
	return Face{convective, float64(h), air}
}

// Prescribed returns the face whose own temperature is given.
func Prescribed(T History) Face { return Face{kind: prescribed, temp: T} }

func (f Face) check(what string) error {
	if f.kind == insulated {
		return nil
	}
	if f.kind == convective && !(f.h >= 0 && f.h <= 1e5) {
		return fmt.Errorf("%s: heat transfer %g W/(m2 K) must lie within 0 and 100000", what, f.h)
	}
	return f.temp.check(what)
}

// A Slab is a stack of layers between two faces, and how long to follow it.
type Slab struct {
	Layers      []Layer
	First, Last Face    // before the first layer and behind the last
	Start       si.Temp // where a layer gives none
	For         si.Time

	// Cells is how many cells the whole stack is cut into; 0 means 60. Layers
	// that name their own number keep it.
	Cells int

	// Tolerance is the error allowed in one step; 0 means 0.05 K, and 0.01 K with a
	// prescribed face. It is never more than a thousandth of the range of
	// temperatures in play. The degree's follows from it (integrate.go). A tenth of
	// it costs some 1.6 times the steps.
	Tolerance si.TempDiff

	// MaxStep bounds a step; 0 means one hour.
	MaxStep si.Time

	fixed float64 // s, steps of this length without error control; for the tests
}

const (
	defaultCells     = 60
	defaultTolerance = 0.05 // K
	// A prescribed face has no air film to soften what its history does: the heat it
	// passes needs shorter steps to be followed as well.
	prescribedTolerance = 0.01 // K
	leastTolerance      = 1e-5 // K
	shareOfRange        = 1e-3
	defaultMaxStep      = 3600 // s
	fewestCells         = 4    // in one layer, where the slab shares them out
	mostCells           = 20000
)

func (s *Slab) check() error {
	positive := func(i int, what string, x float64) error {
		if !(x > 0 && !math.IsInf(x, 1)) {
			return fmt.Errorf("layer %d: %s %g must be positive", i+1, what, x)
		}
		return nil
	}
	if len(s.Layers) == 0 {
		return fmt.Errorf("the slab has no layer")
	}
	for i, l := range s.Layers {
		for _, err := range []error{
			positive(i, "thickness in m", float64(l.Thickness)),
			positive(i, "conductivity in W/(m K)", float64(l.Conductivity)),
			positive(i, "density in kg/m3", float64(l.Density)),
			positive(i, "specific heat in J/(kg K)", float64(l.SpecificHeat)),
		} {
			if err != nil {
				return err
			}
		}
		T := l.Start
		if !T.Given() {
			T = s.Start
		}
		if !(T > 0 && T < hottest) {
			return fmt.Errorf("layer %d: start %g K is outside 0 to %g K; give the slab or the layer one", i+1, float64(T), hottest)
		}
		if l.Cells < 0 || l.Cells > mostCells {
			return fmt.Errorf("layer %d: %d cells must lie within 0 and %d", i+1, l.Cells, mostCells)
		}
		if err := l.Reaction.check(fmt.Sprintf("layer %d", i+1), l.Seed); err != nil {
			return err
		}
	}
	if s.Cells < 0 || s.Cells > mostCells {
		return fmt.Errorf("%d cells must lie within 0 and %d", s.Cells, mostCells)
	}
	if !(s.For > 0 && s.For < 1e9) {
		return fmt.Errorf("duration %g s must be positive and below 1e9", float64(s.For))
	}
	if !(s.Tolerance >= 0 && s.Tolerance <= 10) {
		return fmt.Errorf("tolerance %g K must lie within 0 and 10", float64(s.Tolerance))
	}
	if !(s.MaxStep >= 0) {
		return fmt.Errorf("longest step %g s must not be negative", float64(s.MaxStep))
	}
	if err := s.First.check("first face"); err != nil {
		return err
	}
	return s.Last.check("last face")
}

func (r *Reaction) check(what string, seed float64) error {
	if r == nil {
		return nil
	}
	if r.Rate == nil {
		return fmt.Errorf("%s: the reaction has no rate", what)
	}
	if !(r.Heat >= 0 && !math.IsInf(float64(r.Heat), 1)) {
		return fmt.Errorf("%s: heat %g J/kg must not be negative", what, float64(r.Heat))
	}
	if !(seed >= 0 && seed <= 1) {
		return fmt.Errorf("%s: degree %g at the start must lie within 0 and 1", what, seed)
	}
	if !(r.Quiet >= 0 && r.Quiet < 1) {
		return fmt.Errorf("%s: quiet up to degree %g; it must lie within 0 and below 1", what, r.Quiet)
	}
	last := 0.0
	for _, b := range r.Breaks {
		if !(b > last && b < 1) {
			return fmt.Errorf("%s: breaks must ascend within 0 and 1, got %g after %g", what, b, last)
		}
		last = b
	}
	return nil
}

// breaks returns the degrees at which the law or its heat changes.
func (r *Reaction) breaks() []float64 {
	i, found := slices.BinarySearch(r.Breaks, r.Quiet)
	if r.Quiet == 0 || found {
		return r.Breaks
	}
	return slices.Insert(slices.Clone(r.Breaks), i, r.Quiet)
}

// cells returns how many cells each layer is cut into. They are shared out by the
// time heat takes to cross a layer, t/sqrt(k/(rho c)), so that a slow layer is
// not cut coarser than a quick one.
func (s *Slab) cells() []int {
	total := s.Cells
	if total == 0 {
		total = defaultCells
	}
	way := func(l Layer) float64 {
		return float64(l.Thickness) * math.Sqrt(float64(l.Density)*float64(l.SpecificHeat)/float64(l.Conductivity))
	}
	sum := 0.0
	for _, l := range s.Layers {
		if l.Cells > 0 {
			total -= l.Cells
		} else {
			sum += way(l)
		}
	}
	n := make([]int, len(s.Layers))
	for i, l := range s.Layers {
		n[i] = l.Cells
		if l.Cells == 0 {
			n[i] = max(fewestCells, int(math.Round(float64(total)*way(l)/sum)))
		}
	}
	if len(s.Layers) == 1 && s.Layers[0].Cells == 0 {
		n[0] = max(1, total)
	}
	return n
}
