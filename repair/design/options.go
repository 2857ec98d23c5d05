package design

import (
	"math"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
)

// optionRatios are the ratios shown side by side. Advice in circulation runs
// from 5:1 to 50:1; the whole line is shown rather than one number.
var optionRatios = []float64{5, 8, 10, 12, 15, 20, 30, 50}

// BondPerEdge returns the sloping length of a taper of the given ratio through
// a thickness: the bond area for each unit of edge.
//
//	slant = t sqrt(1 + R²)
func BondPerEdge(t si.Length, ratio float64) si.Length {
	return si.Scale(t, math.Sqrt(1+ratio*ratio))
}

// Ground is what grinding one taper takes.
type Ground struct {
	Edge   geom.Shape // the feather edge
	Plan   si.Area    // ground area in plan, beyond the cut-out
	Bond   si.Area    // sloping area
	Volume si.Volume  // ground away, without the cut-out itself
}

// Taper returns what grinding a taper round a cut-out takes: one face, through
// a thickness t at ratio:1.
//
// The slope is the same everywhere, so the sloping area is the plan area times
// sqrt(1 + 1/R²), whatever the outline. The volume is the integral of the
// outlines' areas over the depth, less the cut-out's own prism.
func Taper(cut geom.Shape, t si.Length, ratio float64) (Ground, error) {
	edge, err := cut.Offset(ratio * t.MM())
	if err != nil {
		return Ground{}, err
	}
	plan := si.MM2(edge.Area() - cut.Area())
	frustum, err := geom.TaperFrustum(cut, ratio, t.MM())
	if err != nil {
		return Ground{}, err
	}
	return Ground{
		Edge: edge, Plan: plan,
		Bond:   si.Scale(plan, math.Sqrt(1+1/(ratio*ratio))),
		Volume: si.ML((frustum - cut.Area()*t.MM()) / 1000),
	}, nil
}

// options lays the repair out at every ratio. depth is the thickness rebuilt, of
// which each of two faces takes half.
//
// A dish (partial depth) is ground over its floor too: that adds the floor to
// the ground and bonded areas, and the prism above it to the dust, where a hole
// leaves as one piece.
func (m materials) options(r *Result, obs []obstacle, dish bool) ([]Option, error) {
	cut, repair, outer, sides, order, depth, chosen := r.CutOut, r.Repair.Layers, r.outer, r.Sides, r.Order, r.Depth, r.Ratio
	ratios := optionRatios
	for i, r := range ratios {
		if r == chosen {
			break
		}
		if r > chosen || i == len(ratios)-1 {
			ratios = insert(ratios, chosen)
			break
		}
	}
	n, whole := 1.0, depth
	if sides == "both" {
		n, depth = 2, depth/2
	}
	var out []Option
	for _, r := range ratios {
		g, err := Taper(cut, depth, r)
		if err != nil {
			return nil, err
		}
		b := g.Edge.Bounds()
		o := Option{
			Ratio: r, Taper: si.Scale(depth, r), Chosen: r == chosen,
			Width: si.MM(b.Width()), Height: si.MM(b.Height()),
			Ground: si.Scale(g.Plan, n), Bond: si.Scale(g.Bond, n), Dust: si.Scale(g.Volume, n),
			BondPerEdge: si.Scale(BondPerEdge(depth, r), n),
		}
		if dish {
			floor := si.MM2(cut.Area())
			o.Ground, o.Bond, o.Dust = o.Ground+floor, o.Bond+floor, o.Dust+floor.Deep(depth)
		}
		o.Left, o.Nearest = least(clearances(obs, g.Edge, nil, cut.Centroid()))
		o.Fits = o.Left > 0
		for _, f := range faces(repair, outer, sides, r, whole) {
			o.Cloth += cloth(cut, g.Edge, f, order)
		}
		out = append(out, o)
	}
	return out, nil
}

// cloth estimates the area of the plies laid from one face, without a cover: the
// outlines' areas grow as A + P d + k d², fitted to the cut-out and the feather
// edge, which is exact for convex outlines.
func cloth(cut, edge geom.Shape, f face, order string) si.Area {
	a0, p0, l := cut.Area(), cut.Perimeter(), f.taper.MM()
	k := (edge.Area() - a0 - p0*l) / (l * l)
	total := float64(thickness(f.layers))
	var climbed, sum float64
	for _, x := range f.layers {
		grown := climbed + float64(x.Thickness)
		if order == "largest first" {
			grown = total - climbed
		}
		climbed += float64(x.Thickness)
		d := l * grown / total
		sum += a0 + p0*d + k*d*d
	}
	return si.MM2(sum)
}

func insert(rs []float64, x float64) []float64 {
	out := make([]float64, 0, len(rs)+1)
	placed := false
	for _, r := range rs {
		if !placed && x < r {
			out, placed = append(out, x), true
		}
		out = append(out, r)
	}
	if !placed {
		out = append(out, x)
	}
	return out
}
