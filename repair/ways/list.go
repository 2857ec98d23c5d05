package ways

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/geom"
	"scarfwright/physics/joint"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/design"
	"scarfwright/repair/job"
	"scarfwright/repair/survey"
)

// comparison is what all ways of one damage share.
type comparison struct {
	d     job.Description
	s     survey.Result
	cat   catalog.Catalogue
	resin catalog.Resin
	base  design.Result // as chosen
	loads []load
	q     si.Pressure
	bond  bond
	on    *place
	notes []string

	moments    map[bool]panel.PlateResult // of the intact plate, by whether its edges are held
	asMeasured []figures                  // the panel before the damage, as it is taken
}

// usual are the ratios that are always compared; the one chosen and the one that
// brings full strength join them.
var usual = []float64{8, 12, 20}

// list returns the ways that can be done with the access there is.
func (c *comparison) list() ([]Way, error) {
	var out []Way
	add := func(w Way, err error) error {
		if err == nil {
			out = append(out, w)
		}
		return err
	}
	kind := Tapered
	if c.s.Class == survey.PartialDepth {
		kind = Dish
	}
	if c.s.Class == survey.SkinAndCore {
		kind = Skin
	}
	face := cmp.Or(c.base.Sides, "outside")
	if face == "both" {
		face = "outside"
	}
	if kind != Skin {
		if err := add(c.plug(face)); err != nil {
			return nil, err
		}
	}
	if kind == Tapered {
		if err := add(c.overlay(face)); err != nil {
			return nil, err
		}
	}
	for _, sides := range c.faces() {
		for _, ratio := range c.ratios() {
			for i := range c.base.Proposals {
				if i > 0 && ratio != c.base.Ratio && ratio != c.full() && ratio != c.longest() {
					continue
				}
				if sides != c.base.Sides && (i > 0 || ratio == usual[0]) {
					continue
				}
				if err := add(c.taper(kind, sides, ratio, i)); err != nil {
					return nil, err
				}
			}
		}
	}
	if kind == Tapered && len(c.base.Original.Layers) > 1 { // steps need plies to step down
		if err := add(c.steps(face)); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// faces lists the faces a taper can be ground from, the chosen one first.
func (c *comparison) faces() []string {
	out := []string{c.base.Sides}
	if c.d.Damage.Access != "both" || c.s.Class != survey.FullDepth {
		return out // a dish is ground from the face that is hurt, a skin from its own
	}
	for _, f := range []string{"outside", "inside", "both"} {
		if f != c.base.Sides {
			out = append(out, f)
		}
	}
	return out
}

// full is the ratio at which the mean shear of the bond reaches its strength just
// when the original laminate reaches its own, rounded up; 0 where none is sensible.
func (c *comparison) full() float64 {
	sigma, tau := c.parity()
	r, err := joint.FullRatio(si.Pressure(sigma), si.Pressure(tau))
	if r = math.Ceil(r - 1e-9); err != nil || r < design.RatioLeast || r > design.RatioMost {
		return 0
	}
	return r
}

// parity is the mean stress at which the original begins to fail when it is pulled
// or pushed, and the strength of the bond through it.
func (c *comparison) parity() (sigma, tau float64) {
	p, err := pliesOf(c.cat, c.base.Original.Layers, c.resin.Cured.Typical)
	if err != nil || len(p) == 0 {
		return 0, 0
	}
	EA, _ := stiffness(p)
	e := math.Inf(1)
	for _, x := range p {
		e = min(e, x.fails[0])
	}
	return EA / float64(depth(p)) * e, c.bond.strength(p)
}

// clear is what a grinder needs between the feather edge and a stiffener (our own
// rule).
const clear = si.Length(0.010)

// longest is the longest taper that fits the panel from one face, a whole ratio; 0
// where that is none of the ratios a taper is ground at.
func (c *comparison) longest() float64 {
	for _, o := range c.base.Options {
		if !o.Chosen || c.base.Sides == "both" {
			continue
		}
		r := math.Floor(float64((o.Taper + o.Left - clear) / c.base.Depth))
		if r >= design.RatioLeast && r < usual[2] {
			return r
		}
	}
	return 0
}

func (c *comparison) ratios() []float64 {
	rs := append(slices.Clone(usual), c.base.Ratio)
	for _, r := range []float64{c.full(), c.longest()} {
		if r > 0 {
			rs = append(rs, r)
		}
	}
	slices.Sort(rs)
	return slices.Compact(rs)
}

// designed plans the repair with other choices.
func (c *comparison) designed(sides string, ratio float64, list []job.PlyRef) (design.Result, error) {
	d := c.d
	d.Choices.Taper, d.Choices.Ratio, d.Choices.Plies = sides, ratio, list
	return design.Plan(d, c.s, c.cat)
}

// taper is a tapered repair, a dish or a skin.
func (c *comparison) taper(kind Kind, sides string, ratio float64, i int) (Way, error) {
	p := c.base.Proposals[i]
	r, err := c.designed(sides, ratio, p.List())
	if err != nil {
		return Way{}, fmt.Errorf("%s from %s at %g:1: %w", kind, sides, ratio, err)
	}
	from := "from " + sides
	if sides == "both" {
		from = "from both faces"
	}
	w := Way{
		Key:  slug(string(kind), sides, fmt.Sprintf("%g", ratio), p.Name),
		Kind: kind, Sides: sides, Ratio: ratio, List: p.Name, Plies: p.Code,
		Name:   fmt.Sprintf("%s %s, %g:1", kind, from, ratio),
		Chosen: sides == c.base.Sides && ratio == c.base.Ratio && i == 0,
	}
	if kind == Skin {
		w.Name = fmt.Sprintf("skin %s at %g:1, new core", from, ratio)
	}
	err = c.fill(&w, r)
	if err == nil && kind == Stepped {
		w.parts.stepped = true
	}
	return w, err
}

// steps is the taper cut in steps, ply by ply, at the chosen ratio.
func (c *comparison) steps(face string) (Way, error) {
	w, err := c.taper(Stepped, face, c.base.Ratio, 0)
	w.Name = fmt.Sprintf("stepped laps from %s, %g:1 on average", face, c.base.Ratio)
	w.Chosen = false
	w.Notes = append(w.Notes,
		"Cut in steps, ply by ply, at the same mean slope: the bond is a row of laps, and at each riser one ply butts. It takes three to four times as long to cut as a taper (TM-1-1500: stepping unidirectional plies), and is for woven plies that can be peeled one by one.",
		"At the deepest riser a ply of the old laminate ends with nothing beside it: the section is short by that ply, unless a cover ply bridges it.")
	return w, err
}

// fill takes a design's sizes and amounts over into a way.
func (c *comparison) fill(w *Way, r design.Result) error {
	box := r.Edge.Bounds()
	w.Size = [2]si.Length{si.MM(box.Width()), si.MM(box.Height())}
	w.Taper, w.Thickness = r.Taper, r.Repair.Thickness
	w.Bending = r.Proposals[0].StiffnessRatio
	for _, o := range r.Options {
		if o.Chosen {
			w.Ground, w.Bond, w.Dust, w.Fits = o.Ground, o.Bond, o.Dust, o.Fits
			w.Left = c.left(o.Left, o.Nearest)
		}
	}
	w.Cloth, w.Resin = r.Cloth, r.Resin
	w.Outlines = []Outline{{"cut-out", r.CutOut}, {"feather edge", r.Edge}}
	for _, p := range r.Plies {
		w.Sessions = max(w.Sessions, p.Session)
	}
	parent, skin, err := c.parent(r.Original.Layers, w.Sides)
	if err != nil {
		return err
	}
	patch, err := pliesOf(c.cat, r.Repair.Layers, c.resin.Cured.Typical)
	if err != nil {
		return err
	}
	w.parts = &parts{
		parent: parent, skin: skin, patch: patch, outer: r.Outer(), sides: w.Sides,
		depth: r.Depth, last: r.Order == "largest first", rings: rings,
	}
	if err := c.cored(w.parts); err != nil {
		return err
	}
	gone := w.Dust.ML() / 1000
	if c.s.Class != survey.PartialDepth {
		gone += si.MM2(r.CutOut.Area()).Deep(r.Depth).ML() / 1000
	}
	density := meanDensity(w.parts.ground())
	w.DustMass = si.Grams(w.Dust.ML() * density.GramsPerML())
	w.Added = r.Glass + r.Resin - si.Kg(gone*density.GramsPerML())
	if r.Core != nil {
		w.Added += r.Core.Paste
	}
	if r.Filler > 0 {
		w.Notes = append(w.Notes, fmt.Sprintf("These plies end %.1f mm below the old face: filler makes it up and carries nothing.", r.Filler.MM()))
	}
	return c.effort(w, len(r.Plies), r.Cloth.M2())
}

func (c *comparison) left(l si.Length, what string) string {
	long := func(x si.Length) string { return si.Show(x, c.d.Choices.System(), 3) }
	switch {
	case math.IsInf(float64(l), 1):
		return ""
	case l <= 0:
		return "passes the " + what + " by " + long(-l)
	}
	return long(l) + " to the " + what
}

// parent is the whole section before the damage, and the thickness of the skin that
// is repaired.
func (c *comparison) parent(skin []design.Layer, sides string) ([]ply, si.Length, error) {
	near, err := pliesOf(c.cat, skin, c.resin.Cured.Typical)
	if err != nil || c.d.Laminate.Core == nil {
		return near, depth(near), err
	}
	k, err := c.cat.Core(c.d.Laminate.Core.Class)
	if err != nil {
		return nil, 0, fmt.Errorf("laminate.core.class: %w", err)
	}
	other := c.d.Laminate.Inner
	if sides == "inside" {
		other = c.d.Laminate.Plies
	}
	ls, err := design.Layers(other, c.resin, c.cat)
	if err != nil {
		return nil, 0, err
	}
	far, err := pliesOf(c.cat, ls, c.resin.Cured.Typical)
	core := []ply{corePly(k, c.d.Laminate.Core.Thickness)}
	if sides == "inside" {
		return slices.Concat(far, core, near), depth(near), err
	}
	return slices.Concat(near, core, far), depth(near), err
}

// cored notes the core, where there is one.
func (c *comparison) cored(p *parts) error {
	k := c.d.Laminate.Core
	if k == nil {
		return nil
	}
	x, err := c.cat.Core(k.Class)
	if err != nil {
		return fmt.Errorf("laminate.core.class: %w", err)
	}
	p.core, p.coreT = &x, k.Thickness
	return nil
}

func meanDensity(ps []ply) si.Density {
	var m, t float64
	for _, p := range ps {
		m += float64(p.density) * float64(p.Thickness)
		t += float64(p.Thickness)
	}
	return si.Density(m / t)
}

// slug makes a key of words.
func slug(words ...string) string {
	return strings.ReplaceAll(strings.Join(words, "-"), " ", "-")
}

// slender is how many times longer than wide an outline is that is taken as an
// ellipse of its widths: star-shaped elements follow a long rectangle badly.
const slender = 3

// round is the outline of the cut-out as the panels take it, and what must be said.
func round(d job.Description, cut geom.Shape) (*place, string) {
	o := d.Damage.Dead
	if o == nil {
		o = d.Damage.Seen
	}
	b := cut.Bounds()
	plain := o != nil && (len(o.Ellipse) == 2 || o.Circle > 0)
	if plain { // and nothing seen reaches outside it
		e := geom.Shape{geom.Ellipse(b.Width(), b.Height())}
		plain = math.Abs(e.Area()/cut.Area()-1) < 0.02
	}
	if !plain && max(b.Width()/b.Height(), b.Height()/b.Width()) > slender {
		p := newPlace(cut, true)
		p.most = [2]float64{nearest * d.Panel.Long.MM() / 2, nearest * d.Panel.Short.MM() / 2}
		return p, "The cut-out is long and narrow: for the strength it is taken as an ellipse of the same length and width, drawn in where it comes nearer the panel's edge than a twenty-fifth of the span."
	}
	return newPlace(cut, plain), ""
}

// nearest is how near a slender outline may come to the edge of the panel, as a
// share of the way there.
const nearest = 0.96
