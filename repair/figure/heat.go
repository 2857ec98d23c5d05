package figure

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

const (
	oneDimension = "Fourier's law and conservation of energy in one dimension; solved by finite volumes"
	lumped       = "conservation of energy of a body of one temperature"
	mostNodes    = 1601
)

func heatFigures() []Calculation {
	slab := []Input{
		{Key: "thickness", Doc: "thickness of the slab", Unit: "25.4 mm", Range: "0.1 to 500 mm"},
		{Key: "k", Doc: "conductivity through the thickness", Unit: "0.2163 W/(m K)"},
		{Key: "rho", Doc: "density", Unit: "1890 kg/m3"},
		{Key: "c", Doc: "specific heat", Unit: "1260 J/(kg K)"},
		{Key: "h", Doc: "heat transfer of each face to the air; left out, each face has the air's temperature", Unit: "10 W/(m2 K)", Optional: true},
		{Key: "start", Doc: "temperature at the start", Unit: "25 °C"},
		{Key: "nodes", Doc: "nodes through the thickness, an odd number", Unit: "101", Default: "101", Range: fmt.Sprintf("5 to %d", mostNodes)},
	}
	return []Calculation{
		{
			Name: "cup", Title: "a mixed batch in a cup or tray: when it gels and how hot it gets", Inputs: slices.Concat([]Input{
				{Key: "mass", Doc: "mass of the batch", Unit: "100 g"},
				vesselInput,
				diameterInput,
				{Key: "ambient", Doc: "temperature of the air", Unit: "25 °C"},
				{Key: "start", Doc: "temperature of the mix; the air's if left out", Unit: "25 °C", Optional: true},
				{Key: "H", Doc: "heat of reaction, per kg of mix", Unit: "330 kJ/kg", Unless: []string{"material"}},
				{Key: "c", Doc: "specific heat of the mix", Unit: "1900 J/(kg K)", Default: "1900 J/(kg K)"},
				{Key: "rho", Doc: "density of the mix", Unit: "1130 kg/m3", Default: "1130 kg/m3"},
				{Key: "U", Doc: "heat loss through every face, 6 to 10 for thin plastic; the vessel's own if left out", Unit: "8 W/(m2 K)", Optional: true},
				{Key: "gel", Doc: "degree of cure at gel", Unit: "0.58", Default: "0.58"},
			}, batchLaw()), work: cup,
		},
		{
			Name: "cure-slab", Title: "a slab that cures and heats itself: its hottest moment and when each place is cured", Inputs: slices.Concat(slab, []Input{
				{Key: "H", Doc: "heat of reaction, per kg of what rho is of: resin or composite", Unit: "77.5 kJ/kg"},
				{Key: "faces", Doc: "programme of both faces", Unit: "25C to 90C at 2.5K/min, hold 60 min, to 130C at 2.5K/min", Unless: []string{"air"}},
				{Key: "air", Doc: "programme of the air, where h is given", Unit: "20 °C", Optional: true},
				{Key: "to", Doc: "degree of cure whose times are wanted", Unit: "0.5", Default: "0.5"},
				{Key: "seed", Doc: "degree of cure at the start; left out, 0 or, where the law can't leave 0, 1e-6", Unit: "1e-6", Optional: true},
				{Key: "time", Doc: "how long to follow it; left out, the programme and an hour, or a day in steady air", Unit: "150 min", Optional: true},
				{Key: "refine", Doc: "halve the grid until it carries the answer", Unit: "no", Default: "no", Words: []string{"no", "yes"}},
			}, lawInputs), work: cureSlab,
		},
		{
			Name: "heat-slab", Title: "a slab that warms or cools from both faces", Inputs: append(slab[:len(slab):len(slab)],
				Input{Key: "air", Doc: "temperature of the air, or its programme", Unit: "90 °C"},
				Input{Key: "time", Doc: "time at which the temperatures are wanted", Unit: "10 min"}), work: heatSlab,
		},
	}
}

// mostRates bounds the work of one figure: a slab that asks for the rate of its
// law more often than this is given up. It is some seconds of one core.
const mostRates = 20_000_000

// reaction is a law as the heat solver takes it, with a count of its calls.
func (l cureLaw) reaction(h si.SpecificEnergy) (re *heat.Reaction, spent *int) {
	spent = new(int)
	scale := 1.0
	re = &heat.Reaction{Heat: h}
	if l.inhibited() {
		scale, re.Quiet = 0.5, 0.5
	}
	for _, b := range kinetics.Breaks(l.Law) {
		re.Breaks = append(re.Breaks, l.solved(b))
	}
	re.Rate = func(u, T float64) float64 {
		if *spent++; *spent > mostRates {
			return math.NaN() // the solver gives up where a rate is no number
		}
		if scale < 1 {
			u = 2*u - 1
		}
		return scale * l.Rate(u, si.Temp(T))
	}
	return re, spent
}

// inhibited reports a law whose state runs from -1: an inhibitor is used up first.
func (l cureLaw) inhibited() bool { return kinetics.Fresh(l.Law) < 0 }

// solved is a state of the law as the heat solver counts it, from 0 to 1.
func (l cureLaw) solved(state float64) float64 {
	if l.inhibited() {
		return (state + 1) / 2
	}
	return state
}

// giveUp turns a solver's error into one of the inputs.
func (r *reader) giveUp(key string, spent int, err error) {
	if spent > mostRates {
		r.fail(key, "the reaction is so fast against the rest that this takes more work than one figure may.", "Check A and E, fewer nodes, or a shorter time.")
		return
	}
	r.fail(key, strings.TrimPrefix(err.Error(), "heat: ")+".", "Check the sizes and units of the inputs together.")
}

// slabGiven is a slab as it was typed, of one layer with two like faces.
type slabGiven struct {
	layer heat.Layer // half of it: the middle plane passes no heat
	start si.Temp
	nodes int
	h     si.HeatTransfer
	film  bool
}

func (r *reader) slab() slabGiven {
	var g slabGiven
	g.layer = heat.Layer{
		Thickness:    quantity[si.Length](r, "thickness", slabThick) / 2,
		Conductivity: quantity[si.Conductivity](r, "k", conduction),
		Density:      quantity[si.Density](r, "rho", anyDensity),
		SpecificHeat: quantity[si.SpecificHeat](r, "c", heatCapacity),
	}
	if g.film = r.has("h"); g.film {
		g.h = quantity[si.HeatTransfer](r, "h", film)
	}
	g.start = quantity[si.Temp](r, "start", shopTemp)
	n := r.number("nodes", between(5, mostNodes, fmt.Sprintf("an odd number from 5 to %d", mostNodes)))
	if g.nodes = int(n); r.ok() && (float64(g.nodes) != n || g.nodes%2 == 0) {
		r.fail("nodes", fmt.Sprintf("must be an odd number from 5 to %d: one node lies in the middle.", mostNodes), "")
	}
	return g
}

// model is the half slab from one face to the middle.
func (g slabGiven) model(ks []kinetics.Knot, end si.Time) heat.Slab {
	var ms []heat.Moment
	for _, k := range ks {
		ms = append(ms, heat.Moment{Time: k.Time, Temp: k.Temp})
	}
	face := heat.Prescribed(heat.Series(ms...))
	if g.film {
		face = heat.Convective(g.h, heat.Series(ms...))
	}
	return heat.Slab{Layers: []heat.Layer{g.layer}, First: face, Last: heat.Insulated(), Start: g.start, For: end, Cells: (g.nodes - 1) / 2}
}

func (g slabGiven) diffusivity() float64 {
	return float64(g.layer.Conductivity) / (float64(g.layer.Density) * float64(g.layer.SpecificHeat))
}

func cureSlab(r *reader) Answer {
	g := r.slab()
	l := r.law()
	g.layer.Seed = r.seed(l, max(0, kinetics.Fresh(orNothing(l.Law))))
	hr := quantity[si.SpecificEnergy](r, "H", reactionHeat)
	to := r.degree("to")
	key := "faces"
	if g.film {
		key = "air"
		r.need("air", "where h is given: the faces follow the air through it")
	}
	ks := r.programme(key)
	if !r.ok() {
		return Answer{}
	}
	last := ks[len(ks)-1].Time
	t := last + si.Hours(1)
	if last == 0 {
		t = si.Hours(24)
	}
	if r.has("time") {
		t = quantity[si.Time](r, "time", longTime)
	}
	refine := r.word("refine") == "yes"
	if !r.ok() {
		return Answer{}
	}
	re, spent := l.reaction(hr)
	g.layer.Reaction = re
	s := g.model(ks, t)
	got, err := s.Run(nil)
	if err != nil {
		r.giveUp(l.key, *spent, err)
		return Answer{}
	}
	before := got
	for refine && got.Coarse && 4*got.Cells+1 <= mostNodes {
		s.Cells = 2 * got.Cells
		finer, err := s.Run(nil)
		if err != nil {
			if *spent > mostRates {
				break // what was found so far is the answer, and says so
			}
			r.giveUp(l.key, *spent, err)
			return Answer{}
		}
		before, got = got, finer
	}
	a := g.cured(got, l, float64(hr), to, ks)
	if got.Coarse {
		a.warn(coarseWords(refine, before, got))
	}
	return a
}

// coarseWords is what to make of a grid that was too coarse, and of the one before it.
func coarseWords(refine bool, before, got *heat.Result) string {
	words := fmt.Sprintf("The grid of %d nodes is too coarse: the degree of cure differs by %.2f from one node to the next, so a reaction front fits between two of them and the peak may be off by tens of kelvin.", 2*got.Cells+1, got.Steepest)
	switch {
	case !refine:
		return words + " Take refine=yes, which halves the grid until it carries the front, or many times the nodes."
	case before == got:
		return words + " No finer one fits into one figure: how far the peak is off is not known. Lay less at once, or warm it more slowly."
	}
	from, to := before.Peak.Temp, got.Peak.Temp
	return words + fmt.Sprintf(" It is the finest that fits into one figure, and did not settle it: by the last halving the peak moved by %.2g K, from %.0f to %.0f °C, and may move as far again. Lay less at once, or warm it more slowly.",
		math.Abs(float64(to.Sub(from))), from.Celsius(), to.Celsius())
}

// orNothing lets a law that could not be read pass to where its error is seen.
func orNothing(l kinetics.Law) kinetics.Law {
	if l == nil {
		return kinetics.NthOrder{}
	}
	return l
}

// cured writes what came of a slab.
func (g slabGiven) cured(got *heat.Result, l cureLaw, hr, to float64, ks []kinetics.Knot) Answer {
	middle := g.layer.Thickness
	centre, nodes := got.PeakAt(middle), 2*got.Cells+1
	rise := hr / float64(g.layer.SpecificHeat)
	hottest := g.start
	for _, k := range ks {
		hottest = max(hottest, k.Temp)
	}
	coarse := 0.0
	a := Answer{Warnings: []string{degreeWarning}}
	if got.Coarse {
		coarse = 1
	}
	if jump := float64(g.start.Sub(ks[0].Temp)); !g.film && math.Abs(jump) > 0.5 {
		a.warn(fmt.Sprintf("The faces begin at %s °C and the slab at %s °C: the faces jump there at once. Give the slab the temperature its programme begins at, or a ramp from the slab's own.", num(ks[0].Temp.Celsius()), num(g.start.Celsius())))
	}
	if top := got.Peak.Temp; top > hotHighEnd {
		a.warn(fmt.Sprintf("It reaches %.0f °C: resin smokes and scorches, styrene boils, foam and old gelcoat give way long before (60 to 80 °C in a repair, from memory). Right only for a part made for an oven; lay less at once.", top.Celsius()))
	}
	a.Results = Results{
		{Key: "centre_peak_c", Value: centre.Temp.Celsius()}, {Key: "centre_peak_min", Value: centre.Time.Minutes()},
		{Key: "peak_c", Value: got.Peak.Temp.Celsius()}, {Key: "peak_min", Value: got.Peak.Time.Minutes()}, {Key: "peak_depth_mm", Value: got.Peak.Depth.MM()},
		{Key: "overshoot_k", Value: float64(got.Peak.Temp.Sub(hottest))}, {Key: "adiabatic_rise_k", Value: rise},
		{Key: "centre_end_cure_fraction", Value: got.DegreeAt(middle, got.End)}, {Key: "face_end_cure_fraction", Value: got.DegreeAt(0, got.End)},
		{Key: "energy_error_percent", Value: 100 * got.Energy.Error}, {Key: "nodes_count", Value: float64(nodes)}, {Key: "steps_count", Value: float64(got.Steps)},
		{Key: "coarse_grid_count", Value: coarse}, {Key: "steepest_fraction", Value: got.Steepest},
	}
	_, a.Working = l.at(hottest)
	a.Working = append(a.Working,
		working.Line{Name: "adiabatic rise", Formula: "H/c", Numbers: fmt.Sprintf("%s kJ/kg / %s J/(kg K)", num(hr/1000), num(float64(g.layer.SpecificHeat))), Value: rise, Unit: "K", Source: lostHeat},
		working.Line{
			Name: "hottest in the middle", Formula: "ρ c ∂T/∂t = k ∂²T/∂x² + ρ H ∂a/∂t, " + l.formula, Numbers: fmt.Sprintf("%s, a0 = %s, k/(ρ c) = %s m²/s, %d nodes, at %s min", l.numbers, num(g.layer.Seed), num(g.diffusivity()), nodes, num(centre.Time.Minutes())),
			Value: centre.Temp.Celsius(), Unit: "°C", Source: oneDimension + "; " + l.source, Holds: "a wide slab with two like faces; a peak moves with the degree at the start, so that is stated",
		},
		working.Line{Name: "energy that is missing", Formula: "|stored + lost - released|/largest", Value: 100 * got.Energy.Error, Unit: "%", Source: working.Identity, Holds: "no heat got lost on the way; it does not say that the grid was fine enough"})
	for _, place := range []struct {
		key, words string
		depth      si.Length
	}{{"centre", "the middle", middle}, {"face", "the face", 0}} {
		if t, ok := got.Reached(place.depth, to); ok {
			a.Results = append(a.Results, Result{Key: place.key + "_reached_min", Value: t.Minutes()})
			a.Working = append(a.Working, working.Line{Name: place.words + " comes to a = " + num(to), Formula: "the same, first a = " + num(to), Value: t.Minutes(), Unit: "min", Source: oneDimension})
		} else {
			a.Results = append(a.Results, Result{Key: place.key + "_reached_words", Text: "not within the time followed"})
		}
	}
	return a
}

func heatSlab(r *reader) Answer {
	g := r.slab()
	ks := r.programme("air")
	t := quantity[si.Time](r, "time", longTime)
	if !r.ok() {
		return Answer{}
	}
	s := g.model(ks, t)
	s.Tolerance = 1e-3
	got, err := s.Run(nil)
	if err != nil {
		r.giveUp("time", 0, err)
		return Answer{}
	}
	middle, half := g.layer.Thickness, float64(g.layer.Thickness)
	centre, face := got.TempAt(middle, t), got.TempAt(0, t)
	fo := g.diffusivity() * float64(t) / (half * half)
	a := Answer{
		Results: Results{{Key: "centre_c", Value: centre.Celsius()}, {Key: "face_c", Value: face.Celsius()}, {Key: "fourier_ratio", Value: fo}},
		Working: []working.Line{
			{Name: "Fourier number", Formula: "Fo = k t/(ρ c (L/2)²)", Numbers: fmt.Sprintf("%s m²/s × %s s/(%s m)²", num(g.diffusivity()), num(float64(t)), num(half)), Value: fo, Unit: "1", Source: "CarslawJaeger1959: from memory", Holds: "past 1 the slab has nearly followed its faces"},
			{Name: "middle", Formula: "ρ c ∂T/∂t = k ∂²T/∂x²", Numbers: fmt.Sprintf("%d nodes, %d steps", g.nodes, got.Steps), Value: centre.Celsius(), Unit: "°C", Source: oneDimension},
			{Name: "face", Formula: map[bool]string{true: "k ∂T/∂x = h (T - Ta)", false: "T = Ta"}[g.film], Value: face.Celsius(), Unit: "°C", Source: oneDimension},
		},
	}
	if g.film {
		bi := float64(g.h) * half / float64(g.layer.Conductivity)
		a.Results = append(a.Results, Result{Key: "biot_ratio", Value: bi})
		a.Working = append(a.Working, working.Line{Name: "Biot number", Formula: "Bi = h (L/2)/k", Numbers: fmt.Sprintf("%s × %s/%s", num(float64(g.h)), num(half), num(float64(g.layer.Conductivity))), Value: bi, Unit: "1", Source: "CarslawJaeger1959: from memory", Holds: "below 0.1 the slab has one temperature throughout"})
	}
	if span := float64(g.start.Sub(ks[0].Temp)); len(ks) == 1 && span != 0 {
		theta := float64(centre.Sub(ks[0].Temp)) / span
		a.Results = append(a.Results, Result{Key: "centre_theta_ratio", Value: theta}, Result{Key: "face_theta_ratio", Value: float64(face.Sub(ks[0].Temp)) / span})
		a.Working = append(a.Working, working.Line{Name: "left of the step, in the middle", Formula: "θ = (T - Ta)/(T0 - Ta)", Numbers: fmt.Sprintf("(%s - %s)/(%s - %s)", num(centre.Celsius()), num(ks[0].Temp.Celsius()), num(g.start.Celsius()), num(ks[0].Temp.Celsius())), Value: theta, Unit: "1", Source: "definition"})
	}
	return a
}
