package ways

import (
	"fmt"
	"math"

	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/caution"
	"scarfwright/repair/check"
	"scarfwright/repair/design"
	"scarfwright/repair/job"
	"scarfwright/repair/survey"
)

// Compare measures every way to repair the damage of a description that has passed
// job.Validate. An error is something that cannot be computed and names the field.
// Damage that is referred is compared too, for whoever decides, and nothing is
// recommended.
//
// It takes a second or two on two cores; change a ply and only the ways with that
// list are new, if the same Memory is given (nil: none is kept).
func Compare(d job.Description, cat catalog.Catalogue, memory *Memory) (Result, error) {
	cat, err := cat.Overlay(d.Shelf.Sheets)
	if err != nil {
		return Result{}, fmt.Errorf("shelf.sheets: %w", err)
	}
	c := &comparison{d: d, s: survey.Classify(d), cat: cat}
	r := Result{Caution: caution.General, Recommended: -1, Referrals: c.s.Referrals, Limits: c.limits()}
	if c.resin, err = cat.Resin(d.Shelf.Resin); err != nil {
		return r, fmt.Errorf("shelf.resin: %w", err)
	}
	var source string
	c.q, source, c.notes = designPressure(d)
	c.loads = loadsFor(c.q, d.Choices.System())
	c.moments = plates(d, c.q)
	low, likely, high := bondOf(c.resin)
	c.bond = likely
	if r.NotCompared = c.notCompared(); r.NotCompared != "" {
		choose(&r, c)
		r.Cautions = caution.For(c.works()...)
		return r, nil
	}
	switch c.s.Class {
	case survey.Cosmetic:
		r.Reason = "The laminate is whole: there is nothing to compare."
		return r, nil
	case survey.Blisters:
		r.Ways, err = c.peels()
	default:
		if c.base, err = design.Plan(d, c.s, cat); err != nil {
			return r, err
		}
		var note string
		if c.on, note = round(d, c.base.CutOut); note != "" {
			c.notes = append(c.notes, note)
		}
		r.Ways, err = c.list()
	}
	if err != nil {
		return r, err
	}
	if err := c.measureAll(&r, memory); err != nil {
		return r, err
	}
	c.spread(&r, low, high, memory)
	choose(&r, c)
	c.picture(&r, memory)
	r.settle()
	if w := r.pictured(); w != nil && w.Computed {
		calc, err := c.calculation(*w)
		if err != nil {
			return r, fmt.Errorf("calculation sheet: %w", err)
		}
		r.Calculation = &calc
	}
	for _, l := range c.loads {
		x := l.Load
		if l.pressure {
			x.Detail += " (level: " + source + ")"
		}
		r.Loads = append(r.Loads, x)
	}
	r.Pressure = c.q
	r.Assumptions = append(c.notes, c.assumed()...)
	r.Outside = append(r.Outside, c.outside(r)...)
	r.Cautions = caution.For(c.works()...)
	return r, nil
}

var limits = []string{
	"It compares a repaired panel with the same panel before the damage, under the same loads. It does not show that either meets a rule.",
	"Static loads, flat panel, straight held edges; no impact, fatigue, ageing, buckling, heat.",
	"The bond's strength is that of laps made with care on sound, dry, clean, ground laminate; nothing can be reckoned for one that was not.",
	"Cover plies and gelcoat are not counted in the strength; a cover ply is counted in cloth, weight, hours and price.",
}

// notCompared says why no way is reckoned: where the figures would be those of another
// laminate or of half a repair.
func (c *comparison) notCompared() string {
	switch {
	case c.d.Laminate.Fibre != "glass" && c.s.Class != survey.Cosmetic:
		return "the figures here are of glass, and the fibre is " + c.d.Laminate.Fibre
	case c.s.Class == survey.FullDepth && c.d.Laminate.Core != nil:
		return "a hole through both skins of a sandwich wants both skins and the core renewed, which this version does not compare"
	}
	return ""
}

// limits are what the survey could not see and what it asks to watch, before the
// limits of the method.
func (c *comparison) limits() (out []string) {
	for _, l := range c.s.Limitations {
		out = append(out, "Not seen: "+l)
	}
	for _, v := range c.s.Verdicts {
		if v.State == check.Watch {
			out = append(out, "Watch: "+v.What+". "+v.Why)
		}
	}
	return append(out, limits...)
}

func (c *comparison) assumed() []string {
	out := []string{
		fmt.Sprintf("Bond of new resin on old laminate: %.3g MPa on mat, %.3g MPa on fabric, means over a taper or lap (%s).",
			c.bond.mat.MPa(), c.bond.fabric.MPa(), c.resin.BondMat.Source),
		"Stiffness by the catalogue's moduli; a ply begins to fail at the class rule's strength over the class rule's modulus (from memory): about 1.3 % in tension.",
		fmt.Sprintf("Between the plies of a taper %d steps stand in for the slope; a parallel line to an ellipse is taken for an ellipse.", rings),
		"Hours, days and price are the tool's own rough rates for labour, cloth and resin, so that ways compare: the quote is the estimate's.",
	}
	if c.d.Crew.Rate == 0 {
		out = append(out, "No hourly rate is given (crew.rate): the price is of cloth and resin alone.")
	}
	if p := c.d.Panel; p.Chord > 0 && p.Sagitta > 0 {
		out = append(out, "The panel's curvature is left out: a curved panel bends less, before and after.")
	}
	return append(out, c.base.Assumptions...)
}

// outside lists where a formula is used beyond the range it was made for.
func (c *comparison) outside(r Result) []string {
	var out []string
	if w := float64(r.Original.Deflection); len(r.Ways) > 0 && w > 0 {
		t := r.Original.Thickness.Likely
		if ratio := w * 1000 / t; ratio > 3 {
			out = append(out, fmt.Sprintf("The panel deflects by %.1f of its thickness under this pressure: beyond what is reckoned as moderate, %s.", ratio, "a lower pressure would compare as well"))
		}
	}
	for _, x := range r.Ways {
		if x.Computed && x.Error > 0.05 {
			out = append(out, fmt.Sprintf("%s: not converged, the strain may be %.0f %% off.", x.Name, 100*x.Error))
		}
	}
	return out
}

// measureAll measures the original and every way that fits.
func (c *comparison) measureAll(r *Result, memory *Memory) error {
	if len(r.Ways) == 0 {
		return nil
	}
	first := r.Ways[0].parts
	intact := first.parent
	if first.was != nil {
		intact = first.was
	}
	before, err := c.before(intact, first.core, first.coreT, memory)
	if err != nil {
		return fmt.Errorf("panel: %w", err)
	}
	c.asMeasured = before
	c.original(r, first, before)
	inTwo(len(r.Ways), func(i int) {
		w := &r.Ways[i]
		c.measure(w, before, memory)
	})
	return nil
}

func (c *comparison) original(r *Result, p *parts, before []figures) {
	o := &r.Original
	t := c.base.Original
	o.Assumed = t.Assumed
	if len(t.Layers) > 0 {
		o.Thickness = Span{t.Low.MM(), t.Thickness.MM(), t.High.MM()}
		o.Plies = code(t.Layers)
	} else {
		t := depth(p.was).MM()
		o.Thickness = Span{t, t, t}
	}
	for i, f := range before {
		o.Used = append(o.Used, f.most())
		if c.loads[i].pressure {
			o.Deflection = max(o.Deflection, f.w)
		}
	}
}

func code(ls []design.Layer) string {
	out := make([]string, len(ls))
	for i, l := range ls {
		out[i] = l.Class
	}
	return design.Code(out)
}

// before is the undamaged panel under every load.
func (c *comparison) before(parent []ply, core *catalog.Core, coreT si.Length, memory *Memory) ([]figures, error) {
	ps := &parts{parent: parent, core: core, coreT: coreT}
	p := panel.Panel{Length: c.d.Panel.Long, Width: c.d.Panel.Short, Base: ps.layup(parent, -depth(parent)/2)}
	return memory.recall(p, nil, c.loads, c.q, func() ([]figures, error) {
		f, _, err := measure(p, ps, nil, 0, c.bond, c.loads, c.q, resolution(nil), nil)
		return f, err
	})
}

// measure fills in the strength of one way against the panel before.
func (c *comparison) measure(w *Way, before []figures, memory *Memory) {
	if !w.Fits {
		w.Why = "does not fit: " + w.Left
		return
	}
	f, err := c.after(w, memory)
	if err != nil {
		w.Why = "fits, but could not be reckoned: its edge or its outline is too near the panel's edge or too jagged"
		return
	}
	w.Computed = true
	w.measured = f
	w.Cases = c.cases(w, before, f, 1)
	w.sum()
	w.Stiffness = stiffer(before, f)
}

// stiffer is the deflection before over the deflection after, the least over the
// cases of pressure.
func stiffer(before, after []figures) Span {
	least := math.Inf(1)
	for i := range before {
		if after[i].w != 0 {
			least = min(least, float64(before[i].w/after[i].w))
		}
	}
	return Span{least, least, least}
}

// after is the repaired panel under every load.
func (c *comparison) after(w *Way, memory *Memory) ([]figures, error) {
	p, err := c.panel(w)
	if err != nil {
		return nil, err
	}
	return memory.recall(p, w.parts, c.loads, c.q, func() ([]figures, error) {
		like := memory.like(p)
		f, solved, err := measure(p, w.parts, c.on, w.Taper, c.bond, c.loads, c.q, resolution(c.on), like)
		memory.keep(p, solved)
		if err == nil && w.parts.was != nil {
			c.peeled(w, f)
		}
		return f, err
	})
}

// panel is the repaired panel.
func (c *comparison) panel(w *Way) (panel.Panel, error) {
	if c.on != nil {
		return w.parts.build(c.d.Panel.Long, c.d.Panel.Short, c.on, w.Taper.MM())
	}
	ps := w.parts
	return panel.Panel{Length: c.d.Panel.Long, Width: c.d.Panel.Short, Base: ps.layup(ps.parent, -depth(ps.parent)/2)}, nil
}

// cases compares figures with those before. weaker is the bond's strength taken,
// over the likely one.
func (c *comparison) cases(w *Way, before, after []figures, weaker float64) []Case {
	out := make([]Case, len(c.loads))
	for i, l := range c.loads {
		f := after[i]
		f.bond /= weaker
		if w.parts.stepped {
			f.bond *= w.parts.treads()
			f.edge *= w.parts.riser()
		}
		x := Case{Load: l.Name, Original: before[i].most(), Ply: f.ply, Edge: f.edge, Bond: f.bond, Core: f.core}
		x.Repaired, x.Mode, x.Where = f.worst(c, w)
		if x.Repaired > 0 {
			x.Strength = x.Original / x.Repaired
		}
		x.Hand = c.hand(w, l)
		out[i] = x
	}
	return out
}

// worst names what uses most of its strength.
func (f figures) worst(c *comparison, w *Way) (u float64, mode, where string) {
	u, mode, where = f.ply, "ply", c.words(w, f.plyAt)
	if f.edge > u {
		u, mode, where = f.edge, "patch edge", c.words(w, f.edgeAt)
	}
	if f.bond > u {
		u, mode, where = f.bond, "bond", c.words(w, f.bondAt)
	}
	if f.core > u {
		u, mode, where = f.core, "core", "core shear, wrinkling or crimping of a skin"
	}
	return u, mode, where
}

// sum takes the least over the cases.
func (w *Way) sum() {
	w.Governs = 0
	w.Pressure = math.Inf(1)
	least := math.Inf(1)
	for i, x := range w.Cases {
		if x.Strength < least {
			least, w.Governs = x.Strength, i
		}
		if i < 2 {
			w.Pressure = min(w.Pressure, x.Strength)
		}
	}
	w.Strength = Span{least, least, least}
}

// words says where a place is.
func (c *comparison) words(w *Way, s spot) string {
	long := func(l si.Length) string { return si.Show(l, c.d.Choices.System(), 3) }
	x, y := s.at.X, s.at.Y
	half, high := c.d.Panel.Long/2, c.d.Panel.Short/2
	x, y = flat(x), flat(y)
	place := fmt.Sprintf("%s from the panel's middle along, %s across", long(si.Length(math.Abs(float64(x)))), long(si.Length(math.Abs(float64(y)))))
	switch {
	case half-si.Length(math.Abs(float64(x))) < half/100:
		place = "the panel's short edge"
	case high-si.Length(math.Abs(float64(y))) < high/100:
		place = "the panel's long edge"
	case math.Hypot(float64(x), float64(y)) < float64(high)/50:
		place = "the panel's middle"
	}
	if s.ply < 0 {
		if w.parts.was != nil {
			return "between the old laminate and what was laid back, along the panel's long edge"
		}
		return "at " + place
	}
	list := w.parts.section(s.zone)
	if c.on == nil {
		list = w.parts.parent
	}
	if s.ply >= len(list) {
		return "at " + place
	}
	what := "old laminate"
	if s.zone > 0 {
		what = "repair"
	}
	return fmt.Sprintf("%s in %s, ply %d of %d from outside (%s), at %s", s.sort, list[s.ply].class, s.ply+1, len(list), what, place)
}

// flat makes nothing of what is only rounding.
func flat(l si.Length) si.Length {
	if math.Abs(l.MM()) < 0.1 {
		return 0
	}
	return l
}

// inTwo calls f for 0 to n-1 from two goroutines.
func inTwo(n int, f func(i int)) {
	next := make(chan int, n)
	for i := range n {
		next <- i
	}
	close(next)
	done := make(chan bool)
	for range 2 {
		go func() {
			for i := range next {
				f(i)
			}
			done <- true
		}()
	}
	<-done
	<-done
}
