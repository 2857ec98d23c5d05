package ways

import (
	"math"
	"slices"

	"scarfwright/physics/laminate"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/design"
)

// ply is a layer as it is reckoned with: its stiffness by the catalogue's moduli,
// and the strains at which it begins to fail.
type ply struct {
	panel.Ply
	class   string
	mat     bool       // bonds as mat does
	density si.Density // of the cured ply
	fails   [3]float64 // strain in tension, in compression, in shear; +Inf: not judged
}

// Poisson's ratios and the shear modulus through the thickness of hand-laid glass
// (from memory): of mat, and of balanced cloth along its fibres.
const (
	matPoisson   = 0.3
	clothPoisson = 0.14
)

var shearThrough = si.GPa(2.2)

// plyOf returns a layer of the design as a ply. The modulus is the catalogue's. The
// strains at failure are the class rule's strengths over the class rule's own
// moduli at the layer's glass content: strength and modulus of one route.
func plyOf(cat catalog.Catalogue, l design.Layer, resin si.Density) (ply, error) {
	c, err := cat.Cloth(l.Class)
	if err != nil {
		return ply{}, err
	}
	kind := laminate.Roving
	p := ply{class: l.Class, mat: c.Kind == catalog.Mat}
	p.Lamina = laminate.Lamina{E1: l.Modulus, E2: l.Modulus, Nu12: clothPoisson}
	if p.mat {
		kind = laminate.CSM
		p.Lamina.Nu12 = matPoisson
	}
	rule, err := laminate.ClassRule(kind, l.Glass)
	if err != nil {
		return ply{}, err
	}
	p.Lamina.G12 = rule.ShearModulus
	if p.mat {
		p.Lamina.G12 = si.Pressure(float64(l.Modulus) / (2 * (1 + matPoisson)))
	}
	p.G13, p.G23 = shearThrough, shearThrough
	p.Thickness, p.Angle = l.Thickness, l.Angle
	p.fails = [3]float64{
		float64(rule.TensileStrength / rule.TensileModulus),
		float64(rule.CompressiveStrength / rule.CompressiveModulus),
		float64(rule.ShearStrength / rule.ShearModulus),
	}
	p.density = laminate.LaminateDensity(l.Glass, laminate.Constituents{Fibre: c.Fibre.Typical, Resin: resin})
	return p, nil
}

func pliesOf(cat catalog.Catalogue, ls []design.Layer, resin si.Density) ([]ply, error) {
	out := make([]ply, len(ls))
	for i, l := range ls {
		var err error
		if out[i], err = plyOf(cat, l, resin); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// corePly is a core as a layer: soft in its plane, never judged by its strain.
func corePly(k catalog.Core, t si.Length) ply {
	E := si.Scale(k.ShearModulus.Typical, coreModulus)
	p := ply{class: k.Class, density: k.Density.Typical, fails: [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}}
	p.Lamina = laminate.Lamina{E1: E, E2: E, G12: k.ShearModulus.Typical, Nu12: matPoisson}
	p.G13, p.G23, p.Thickness = k.ShearModulus.Typical, k.ShearModulus.Typical, t
	return p
}

// coreModulus is a foam's E over its G, 2 (1 + 0.3).
const coreModulus = 2.6

// void stands in for what carries nothing: a filler that has cracked, an empty hole.
func void(t si.Length) ply {
	p := ply{class: "filler", fails: [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}, density: si.GramsPerML(0.9)}
	p.Lamina = laminate.Lamina{E1: si.MPa(2), E2: si.MPa(2), G12: si.MPa(0.8), Nu12: 0.25}
	p.G13, p.G23, p.Thickness = si.MPa(0.8), si.MPa(0.8), t
	return p
}

func depth(ps []ply) (t si.Length) {
	for _, p := range ps {
		t += p.Thickness
	}
	return t
}

// top returns the outermost part of a list, t thick; a ply may be cut.
func top(ps []ply, t si.Length) (out []ply) {
	for _, p := range ps {
		if t <= sliver {
			break
		}
		p.Thickness = min(p.Thickness, t)
		t -= p.Thickness
		out = append(out, p)
	}
	return out
}

// bottom returns the innermost part of a list, t thick.
func bottom(ps []ply, t si.Length) []ply {
	in := slices.Clone(ps)
	slices.Reverse(in)
	out := top(in, t)
	slices.Reverse(out)
	return out
}

// sliver is the thickness below which a layer is nothing.
const sliver = si.Length(1e-7)

// parts is what a way is made of: the parent as it was, and the patch.
type parts struct {
	parent []ply     // the whole section, outside to inside, core and far skin with it
	skin   si.Length // of that, the laminate the repair belongs to, from its face
	patch  []ply     // outside to inside
	outer  int       // plies of the patch laid from the outer face, where both are ground
	sides  string    // "outside", "inside", "both"
	depth  si.Length // ground away at the cut-out
	last   bool      // the largest ply is laid first
	over   bool      // the patch lies on the face and nothing is ground
	hole   bool      // an overlay bridges a hole that carries nothing
	was    []ply     // the section before, where the whole panel is another one after (a peel)

	stepped bool // cut in steps, ply by ply
	rings   int  // how many steps stand in for the slope in the panel
	core    *catalog.Core
	coreT   si.Length
}

// at returns the section at a place on the slope: f is 0 at the cut-out's edge and
// 1 at the feather edge. Smallest first, the upper plies of the patch reach
// farthest; largest first, the plies on the slope do.
func (p *parts) at(f float64) (plies []ply, low si.Length) {
	low = -depth(p.parent) / 2
	if p.over {
		return p.covered(f <= 0)
	}
	g := si.Scale(p.depth, 1-f)
	keep := func(ps []ply, t si.Length, outward bool) []ply {
		if outward != p.last {
			return top(ps, t)
		}
		return bottom(ps, t)
	}
	switch p.sides {
	case "inside":
		t := si.Scale(depth(p.patch), 1-f)
		return slices.Concat(top(p.parent, depth(p.parent)-g), keep(p.patch, t, false)), low
	case "both":
		out, in := p.patch[:p.outer], p.patch[p.outer:]
		to, ti := si.Scale(depth(out), 1-f), si.Scale(depth(in), 1-f)
		middle := bottom(top(p.parent, depth(p.parent)-g/2), depth(p.parent)-g)
		return slices.Concat(keep(out, to, true), middle, keep(in, ti, false)), low + g/2 - to
	}
	t := si.Scale(depth(p.patch), 1-f)
	return slices.Concat(keep(p.patch, t, true), bottom(p.parent, depth(p.parent)-g)), low + g - t
}

// covered is the section of an overlay: on the parent, or over the hole.
func (p *parts) covered(hole bool) (plies []ply, low si.Length) {
	low = -depth(p.parent) / 2
	under := p.parent
	if hole && p.hole { // filled to the depth of the damage; what lies below stays
		if p.sides == "inside" {
			under = slices.Concat(top(p.parent, depth(p.parent)-p.depth), []ply{void(p.depth)})
		} else {
			under = slices.Concat([]ply{void(p.depth)}, bottom(p.parent, depth(p.parent)-p.depth))
		}
	}
	if p.sides == "inside" {
		return slices.Concat(under, p.patch), low
	}
	return slices.Concat(p.patch, under), low - depth(p.patch)
}

// slopes returns the heights of the bond over the middle of the parent at f.
func (p *parts) slopes(f float64) []si.Length {
	half, g := depth(p.parent)/2, si.Scale(p.depth, 1-f)
	switch p.sides {
	case "inside":
		return []si.Length{half - g}
	case "both":
		return []si.Length{-half + g/2, half - g/2}
	}
	return []si.Length{-half + g}
}

// layup returns plies for the panel, with the shear stiffness of a sandwich where
// there is a core.
func (p *parts) layup(ps []ply, low si.Length) panel.Layup {
	l := panel.Layup{Bottom: low}
	for _, x := range ps {
		l.Plies = append(l.Plies, x.Ply)
	}
	if p.core != nil {
		// d is between the middles of the faces, G d^2/tc; faces of unlike thickness too.
		d := float64(p.coreT) + (float64(l.Thickness())-float64(p.coreT))/2
		s := float64(p.core.ShearModulus.Typical) * d * d / float64(p.coreT)
		l.Shear = [2]float64{s, s}
	}
	return l
}

// stiffness is E t over the list along x, N/m, and EI about its own axis, N m.
func stiffness(ps []ply) (EA, EI float64) {
	ls := make([]laminate.Layer, len(ps))
	for i, p := range ps {
		ls[i] = laminate.Layer{Thickness: p.Thickness, Tension: p.E1}
	}
	s := laminate.NewSection(ls)
	return s.EA, s.EI
}
