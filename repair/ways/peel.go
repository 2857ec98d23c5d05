package ways

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/design"
	"scarfwright/repair/estimate"
	"scarfwright/repair/job"
)

// A bottom with blisters is peeled as a whole, so a way changes the section of the
// whole panel: so much laminate goes from the outside, so many plies come back.

// Rates of blister work (from memory, rough; a yard's own take their place in the
// estimate).
const (
	spotMinutes  = 5.5                // a blister: open, clean, fill twice, sand
	spotPrep     = 0.35               // h/m2 besides
	peelRate     = 0.55 + 0.90 + 0.80 // h/m2: peel, prepare and fair, coat
	peelFixed    = 24.0               // h
	layRate      = 0.5                // h/m2 of each ply laid overhead
	gelcoatDepth = 0.7                // mm: a peel that takes the gelcoat and no more
	likelyHigh   = 1.3
	likelyLow    = 0.85
)

// peels returns the ways for a crop of blisters.
func (c *comparison) peels() ([]Way, error) {
	layers, assumed, err := c.whole()
	if err != nil {
		return nil, err
	}
	was, err := pliesOf(c.cat, layers, c.resin.Cured.Typical)
	if err != nil {
		return nil, err
	}
	c.base.Original = design.Stack{Layers: layers, Thickness: depth(was), Low: depth(was), High: depth(was), Assumed: assumed}
	if assumed {
		c.base.Original.Low, c.base.Original.High = c.d.Laminate.Thickness.Low, c.d.Laminate.Thickness.High
	}
	deep := c.d.Damage.Deep
	if deep == 0 {
		deep = si.MM(1.5)
	}
	if 2*deep >= depth(was) {
		return nil, fmt.Errorf("damage.deep: a peel of %.3g mm of a laminate of %.3g mm is not compared here: refer on", deep.MM(), depth(was).MM())
	}
	out := []Way{c.spots(was)}
	for _, d := range []si.Length{si.MM(gelcoatDepth), deep, 2 * deep} {
		bare := d
		if d == si.MM(gelcoatDepth) {
			bare = 0 // it takes the gelcoat, which was not counted
		}
		w, err := c.peel(was, d, bare, nil)
		if err != nil {
			return nil, err
		}
		if d < c.d.Damage.Deep {
			w.Unsuited = "it does not reach as deep as the damage was found (damage.deep)"
		}
		out = append(out, w)
		if bare == 0 {
			continue
		}
		list, err := c.glassBack(bare)
		if err != nil {
			return nil, err
		}
		if len(list) > 0 {
			if w, err = c.peel(was, d, bare, list); err != nil {
				return nil, err
			}
			out = append(out, w)
		}
	}
	return out, nil
}

// whole is the panel's laminate.
func (c *comparison) whole() (ls []design.Layer, assumed bool, err error) {
	if len(c.d.Laminate.Plies) > 0 {
		ls, err = design.Layers(c.d.Laminate.Plies, c.resin, c.cat)
		return ls, false, err
	}
	t := c.d.Laminate.Thickness
	if t.High <= 0 {
		return nil, false, fmt.Errorf("laminate: neither plies nor thickness given; a peel cannot be judged")
	}
	ls, err = design.Assumed((t.Low+t.High)/2, 0, c.resin, c.cat)
	return ls, true, err
}

// glassBack lists the plies of the heaviest cloth on the shelf that come nearest to a
// thickness without falling short.
func (c *comparison) glassBack(d si.Length) ([]job.PlyRef, error) {
	var best job.PlyRef
	var t si.Length
	var heavy si.AreaDensity
	for i, class := range c.d.Shelf.Cloth {
		k, err := c.cat.Cloth(class)
		if err != nil {
			return nil, fmt.Errorf("shelf.cloth[%d]: %w", i+1, err)
		}
		if k.Areal > heavy {
			heavy, best, t = k.Areal, job.PlyRef{Class: class}, k.Thickness(c.resin)
		}
	}
	if t == 0 {
		return nil, nil
	}
	n := int(math.Ceil(float64(d/t) - 1e-9))
	out := make([]job.PlyRef, n)
	for i := range out {
		out[i] = best
	}
	return out, nil
}

// peel is the panel with d gone from the outside (bare of it laminate), and a list of
// plies laid back.
func (c *comparison) peel(was []ply, d, bare si.Length, list []job.PlyRef) (Way, error) {
	area := c.d.Damage.Wetted
	w := Way{
		Kind: Peel, Sides: "outside", Fits: true, Left: "the whole bottom",
		Key: slug("peel", fmt.Sprintf("%.1f", d.MM())), Name: fmt.Sprintf("peel %.2g mm, barrier coat", d.MM()),
		List: "none", Ground: area, Dust: area.Deep(d), Taper: d,
	}
	layers, err := design.Layers(list, c.resin, c.cat)
	if err != nil {
		return w, err
	}
	patch, err := pliesOf(c.cat, layers, c.resin.Cured.Typical)
	if err != nil {
		return w, err
	}
	now := append(append([]ply(nil), patch...), bottom(was, depth(was)-bare)...)
	w.parts = &parts{parent: now, was: was, patch: patch, skin: depth(now), sides: "outside", depth: bare}
	_, before := stiffness(was)
	_, after := stiffness(now)
	w.Bending = after / before
	w.Thickness = depth(patch)
	density := meanDensity(top(was, max(bare, si.MM(0.1))))
	w.DustMass = si.Grams(w.Dust.ML() * density.GramsPerML())
	w.Added = -w.DustMass
	hours := peelRate*area.M2() + peelFixed
	w.Days = 2
	if len(list) > 0 {
		w.Key += "-glass-back"
		w.Name = fmt.Sprintf("peel %.2g mm, glass back, barrier coat", d.MM())
		w.List, w.Plies = "matches thickness", classes(list)
		w.Bond = area
		w.Sessions = int(max(1, math.Ceil(float64(wet(c.cat, layers)/c.resin.WetLimit))))
		for _, l := range layers {
			k, err := c.cat.Cloth(l.Class)
			if err != nil {
				return w, err
			}
			w.Cloth += area
			w.Resin += k.Resin().Over(area)
			w.Added += (l.Areal + k.Resin()).Over(area)
		}
		hours += layRate * w.Cloth.M2()
	} else if bare > 0 {
		w.Notes = append(w.Notes, fmt.Sprintf("%.2g mm of the laminate goes and does not come back.", bare.MM()))
	}
	c.price(&w, hours)
	return w, nil
}

// spots is each blister opened and filled, the laminate left as it is.
func (c *comparison) spots(was []ply) Way {
	w := Way{Kind: Peel, Key: "spots", Name: "each blister opened and filled", List: "none", Sides: "outside", Fits: true, Left: "the whole bottom", Bending: 1}
	w.parts = &parts{parent: was, was: was, skin: depth(was), sides: "outside"}
	if c.d.Damage.Deep > 0 {
		w.Unsuited = "blisters were found in the laminate (damage.deep): what has not risen yet stays in it"
	}
	n, low, high := Blisters(c.d.Damage)
	w.Notes = append(w.Notes,
		fmt.Sprintf("%.0f blisters are to be expected over %s, from %d frames; %.0f to %.0f nineteen times in twenty (Student's t).", n, si.Show(c.d.Damage.Wetted, c.d.Choices.System(), 3), len(c.d.Damage.Counts), low, high),
		"The blisters that have not risen yet stay; the strength is that of the laminate around them.")
	h := func(n float64) float64 { return n*spotMinutes/60 + spotPrep*c.d.Damage.Wetted.M2() }
	c.price(&w, h(n))
	w.Hours = estimate.Range{Low: h(low), Likely: h(n), High: h(high)}
	if peel := peelRate*c.d.Damage.Wetted.M2() + peelFixed; peel > 0 {
		even := max(0, (peel-spotPrep*c.d.Damage.Wetted.M2())*60/spotMinutes)
		w.Notes = append(w.Notes, fmt.Sprintf("It takes as many hours as a peel at %.0f blisters.", even))
	}
	return w
}

// Blisters returns how many blisters a sample of frames stands for, and the ends of
// the interval that holds the true number nineteen times in twenty, by Student's t;
// frames are taken for a random sample. Zeros where there is no sample.
func Blisters(d job.Damage) (n, low, high float64) {
	if len(d.Counts) < 2 || d.Frame <= 0 {
		return 0, 0, 0
	}
	xs := make([]float64, len(d.Counts))
	for i, k := range d.Counts {
		xs[i] = float64(k)
	}
	mean, sd := stat.MeanStdDev(xs, nil)
	k := float64(len(xs))
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: k - 1}.Quantile(0.975)
	frames := float64(d.Wetted / d.Frame)
	half := t * sd / math.Sqrt(k)
	return mean * frames, max(0, mean-half) * frames, (mean + half) * frames
}

func (c *comparison) price(w *Way, hours float64) {
	w.Hours = estimate.Range{Low: likelyLow * hours, Likely: hours, High: likelyHigh * hours}
	people := float64(max(c.d.Crew.People, 1))
	w.Days = int(math.Ceil(hours / (dayHours * people)))
	w.Price = hours*c.d.Crew.Rate + (1+float64(c.d.Shelf.Markup))*c.materials(w)
}

// peeled adds to the figures of a peel the bond of what was laid back: the shear
// between the layers where the panel is held, by beam theory over the short span.
func (c *comparison) peeled(w *Way, f []figures) {
	if len(w.parts.patch) == 0 {
		return
	}
	var ls []laminate.Layer
	for _, p := range w.parts.parent {
		ls = append(ls, laminate.Layer{Thickness: p.Thickness, Tension: p.E1})
	}
	V := si.LineLoad(float64(c.q) * float64(min(c.d.Panel.Short, c.d.Panel.Long)) / 2)
	tau := float64(laminate.InterlaminarShear(ls, V, depth(w.parts.patch)))
	for i, l := range c.loads {
		if l.pressure {
			f[i].bond = tau / c.bond.strength(w.parts.parent)
			f[i].bondAt = spot{ply: -1}
		}
	}
}
