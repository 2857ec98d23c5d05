package heat

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/si"
)

// A Vessel is what a batch stands in: upright walls on a flat bottom, with what
// each face passes to the air (the bottom: to what it stands on) for each square
// metre and kelvin, wall included.
type Vessel struct {
	Bottom          si.Area
	Around          si.Length // perimeter
	Top, Side, Base si.HeatTransfer

	// Capacity of the vessel itself, in J/K. It warms and cools with the batch:
	// near 0 for paper and foam, some 450 J/K a kilogram for a steel tray.
	Capacity float64
}

// Heat transfer of the usual vessels, W/(m2 K). All from memory: free convection
// and radiation give 6 to 10 through a thin wall, a foam wall lets through 3 to 4,
// a metal tray on a solid bench 12 to 20. A cup measured with a thermometer is
// better than any of these.
const (
	thinWall   = 8
	foamWall   = 3.5
	benchMetal = 15
)

// StraightCup returns a thin plastic or paper cup.
func StraightCup(diameter si.Length) Vessel { return round(diameter, thinWall) }

// FoamCup returns a cup with a foam wall; its top is as open as any.
func FoamCup(diameter si.Length) Vessel { return round(diameter, foamWall) }

func round(diameter si.Length, wall si.HeatTransfer) Vessel {
	d := float64(diameter)
	return Vessel{
		Bottom: si.Area(math.Pi * d * d / 4), Around: si.Length(math.Pi * d),
		Top: thinWall, Side: wall, Base: wall,
	}
}

// Tray returns a thin plastic roller tray that stands on an insulating or airy base.
func Tray(length, width si.Length) Vessel {
	return Vessel{Bottom: length.Times(width), Around: 2 * (length + width), Top: thinWall, Side: thinWall, Base: thinWall}
}

// MetalTray returns a metal tray standing flat on a solid bench, which carries off
// heat from below.
func MetalTray(length, width si.Length) Vessel {
	v := Tray(length, width)
	v.Base = benchMetal
	return v
}

// Vessels are the kinds of vessel by name, what is measured across each, and what it
// is where nobody says.
var Vessels = []VesselKind{
	{"cup", "inside diameter", 0.075, StraightCup},
	{"foam cup", "inside diameter", 0.075, FoamCup},
	{"tray", "length, its width being four fifths of it", 0.25, func(l si.Length) Vessel { return Tray(l, l*4/5) }},
	{"metal tray", "length, its width being four fifths of it", 0.25, func(l si.Length) Vessel { return MetalTray(l, l*4/5) }},
}

// VesselKind is one kind of vessel.
type VesselKind struct {
	Name   string
	Across string
	Usual  si.Length
	Of     func(across si.Length) Vessel
}

// VesselNamed returns the kind of that name, the first where it is empty.
func VesselNamed(name string) (VesselKind, error) {
	names := make([]string, len(Vessels))
	for i, v := range Vessels {
		if v.Name == name || name == "" {
			return v, nil
		}
		names[i] = v.Name
	}
	return VesselKind{}, fmt.Errorf("no vessel %q; known: %s", name, strings.Join(names, ", "))
}

// A Cup is a mixed batch in its vessel, of one temperature throughout:
//
//	(m c + C) dT/dt = m H da/dt - (U A)(T - air) - (U A)base (T - bench)
//
// One temperature is a good picture while the batch is shallow or is stirred, and
// a poor one for a deep cup in a runaway: its middle is then hotter than this says.
// Resin passes heat as k = 0.2 W/(m K), so that across a depth L the inside can
// differ from the mean once U L/k nears 1, from 25 mm on with U = 8.
type Cup struct {
	Vessel
	Mass         si.Mass
	Density      si.Density
	SpecificHeat si.SpecificHeat
	Reaction     *Reaction // its Heat is per kilogram of the batch
	Seed         float64

	Air       History
	Bench     History // the zero History: as the air
	Start     si.Temp // not given: the air's at time 0
	For       si.Time
	Tolerance si.TempDiff // 0 means 0.05 K
}

// Depth returns how high the batch stands.
func (c *Cup) Depth() si.Length {
	return si.Length(float64(c.Density.Fill(c.Mass)) / float64(c.Bottom))
}

// Area returns the whole surface of the batch, top, bottom and sides.
func (c *Cup) Area() si.Area { return 2*c.Bottom + c.Around.Times(c.Depth()) }

// Loss returns what the batch loses to its surroundings for each kelvin, in W/K.
func (c *Cup) Loss() float64 {
	return float64(c.Top+c.Base)*float64(c.Bottom) + float64(c.Side)*float64(c.Around.Times(c.Depth()))
}

// A CupResult is what came of a cup, good until the next run in its workspace.
type CupResult struct {
	r     *Result
	start si.Temp

	Peak            Peak   // its depth is 0
	Energy          Energy // J, for the whole batch
	Steps, Rejected int
}

// Run follows the batch.
func (c *Cup) Run(w *Workspace) (*CupResult, error) {
	start := c.Start
	if err := c.check(); err != nil {
		return nil, fmt.Errorf("heat: cup: %w", err)
	}
	if !start.Given() {
		start = c.Air.At(0)
	}
	bench := c.Bench
	if bench.f == nil && len(bench.times) == 0 {
		bench = c.Air
	}
	if w == nil {
		w = &Workspace{}
	}
	heat := 0.0
	if c.Reaction != nil {
		heat = float64(c.Mass) * float64(c.Reaction.Heat)
	}
	w.m.rebuildBody(float64(c.Mass)*float64(c.SpecificHeat)+c.Capacity, heat, float64(start), c.Seed, c.Reaction)
	sides := float64(c.Top)*float64(c.Bottom) + float64(c.Side)*float64(c.Around.Times(c.Depth()))
	r, err := w.run(
		Face{convective, sides, c.Air},
		Face{convective, float64(c.Base) * float64(c.Bottom), bench},
		&Slab{For: c.For, Tolerance: c.Tolerance},
	)
	if err != nil {
		return nil, err
	}
	return &CupResult{r: r, start: start, Peak: r.Peak, Energy: r.Energy, Steps: r.Steps, Rejected: r.Rejected}, nil
}

func (c *Cup) check() error {
	for _, v := range []struct {
		what string
		x    float64
	}{
		{"mass in kg", float64(c.Mass)}, {"density in kg/m3", float64(c.Density)},
		{"specific heat in J/(kg K)", float64(c.SpecificHeat)},
		{"bottom in m2", float64(c.Bottom)}, {"perimeter in m", float64(c.Around)},
	} {
		if !(v.x > 0 && !math.IsInf(v.x, 1)) {
			return fmt.Errorf("%s %g must be positive", v.what, v.x)
		}
	}
	if !(c.Top >= 0 && c.Side >= 0 && c.Base >= 0 && c.Capacity >= 0) {
		return fmt.Errorf("heat transfer and the vessel's capacity must not be negative")
	}
	if c.Start.Given() && !(c.Start > 0 && c.Start < hottest) {
		return fmt.Errorf("start %g K is outside 0 to %g K", float64(c.Start), hottest)
	}
	if !(c.For > 0 && c.For < 1e9) {
		return fmt.Errorf("duration %g s must be positive and below 1e9", float64(c.For))
	}
	if !(c.Tolerance >= 0 && c.Tolerance <= 10) {
		return fmt.Errorf("tolerance %g K must lie within 0 and 10", float64(c.Tolerance))
	}
	if err := c.Air.check("air"); err != nil {
		return err
	}
	if c.Bench.f != nil || len(c.Bench.times) > 0 {
		if err := c.Bench.check("bench"); err != nil {
			return err
		}
	}
	return c.Reaction.check("the batch", c.Seed)
}

// TempAt returns the temperature at a time.
func (c *CupResult) TempAt(t si.Time) si.Temp { return c.r.TempAt(0, t) }

// DegreeAt returns the degree at a time, NaN for an inert batch.
func (c *CupResult) DegreeAt(t si.Time) float64 { return c.r.DegreeAt(0, t) }

// Reached returns when the degree comes to a: gel, if a is that of gelling.
func (c *CupResult) Reached(a float64) (si.Time, bool) { return c.r.Reached(0, a) }

// Risen returns when the batch has warmed by d above its start, the criterion by
// which some sheets state a pot life.
func (c *CupResult) Risen(d si.TempDiff) (si.Time, bool) { return c.r.Warmed(0, c.start.Add(d)) }

// Times returns the ends of the steps.
func (c *CupResult) Times() []si.Time { return c.r.Times() }
