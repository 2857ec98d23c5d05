package design

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
)

// face is one ground face: the layers laid from it, deepest first, and the
// taper they climb.
type face struct {
	name   string
	layers []Layer // in order from the bottom of the taper to the old surface
	taper  si.Length
	share  float64 // of the original's thickness that is ground from this face
}

// faces deals the repair layers out to the faces that are ground.
//
// From outside the deepest layer is the innermost; from inside it is the
// outermost. Ground from both faces, each takes its half of the thickness and
// the tapers meet at mid-depth, so each is half as long; outerCount says how
// many layers are the outer face's.
func faces(repair []Layer, outerCount int, sides string, ratio float64, depth si.Length) []face {
	outward := slices.Clone(repair)
	slices.Reverse(outward) // innermost first
	switch sides {
	case "inside":
		return []face{{"inside", slices.Clone(repair), si.Scale(depth, ratio), 1}}
	case "both":
		k := outerCount
		outer := slices.Clone(repair[:k])
		slices.Reverse(outer)
		taper := si.Scale(depth, ratio) / 2
		return []face{{"outside", outer, taper, 0.5}, {"inside", slices.Clone(repair[k:]), taper, 0.5}}
	default:
		return []face{{"outside", outward, si.Scale(depth, ratio), 1}}
	}
}

// outerHalf is how many layers, outermost first, make up the outer half of a
// repair ground from both faces; a layer at mid-depth counts as outer.
func outerHalf(layers []Layer) int {
	half := thickness(layers) / 2
	var top si.Length
	for k, l := range layers {
		if top+l.Thickness/2 > half {
			return k
		}
		top += l.Thickness
	}
	return len(layers)
}

// arrange puts a list of layers, outermost first, into the order in which they
// end up in the hull. Largest first lays each face's pieces the other way round,
// so the order of kinds is turned too; the pieces, and so the amounts, stay.
func arrange(layers []Layer, sides, order string) []Layer {
	out := slices.Clone(layers)
	if order == "largest first" {
		k := len(out)
		if sides == "both" {
			k = outerHalf(out)
		}
		slices.Reverse(out[:k])
		slices.Reverse(out[k:])
	}
	for i := range out {
		out[i].Number = i + 1
	}
	return out
}

// plies returns the pieces of cloth in laying order, without the cover.
//
// The outline of a layer is the cut-out grown by the share of the taper that
// the layer's upper face has climbed:
//
//	reach_i = taper * (t_1 + ... + t_i) / (t_1 + ... + t_n),  1 being the deepest
//
// so the last layer ends on the feather edge whatever the repair's thickness.
// Largest first lays the same pieces the other way round, the largest on the
// whole of the taper,
//
//	reach_i = taper * (t_i + ... + t_n) / (t_1 + ... + t_n),
//
// so the amounts are the same by construction.
func (m materials) plies(cut geom.Shape, fs []face, order string, original []Layer) ([]Ply, error) {
	var out []Ply
	for _, f := range fs {
		total := thickness(f.layers)
		var climbed si.Length
		for _, l := range f.layers {
			climbed += l.Thickness
			grown, step := climbed, l.Thickness
			if order == "largest first" {
				grown = total - (climbed - l.Thickness)
			}
			p, err := m.ply(cut, l, si.Scale(f.taper, float64(grown)/float64(total)))
			if err != nil {
				return nil, err
			}
			p.Face = f.name
			p.Replaces = m.replaces(l, original, f, climbed, total)
			p.Overlap = si.Scale(f.taper, float64(step)/float64(total))
			out = append(out, p)
		}
	}
	for i := range out {
		out[i].Label = fmt.Sprintf("P%d", i+1)
	}
	return out, nil
}

// ply cuts one layer to the cut-out grown by reach.
func (m materials) ply(cut geom.Shape, l Layer, reach si.Length) (Ply, error) {
	outline, err := cut.Offset(reach.MM())
	if err != nil {
		return Ply{}, fmt.Errorf("ply of %s, %.0f mm beyond the cut-out: %w", l.Class, reach.MM(), err)
	}
	c, err := m.cat.Cloth(l.Class)
	if err != nil {
		return Ply{}, err
	}
	b := outline.Bounds()
	area := si.MM2(outline.Area())
	return Ply{
		Layer: l.Number, Class: l.Class, Name: l.Name, Outline: outline,
		Width: si.MM(b.Width()), Height: si.MM(b.Height()), Area: area,
		Angle: cutAngle(c, l.Angle), Thickness: l.Thickness,
		Glass: l.Areal.Over(area), Resin: c.Resin().Over(area),
		Wet: l.Areal + c.Resin(),
	}, nil
}

// cutAngle is how the roll's length lies to the panel's long span so that the
// cloth's fibres run as the original's did: a stitched ±45 cloth is turned 45°
// to stand for a woven 0/90. The cloths here are alike in both their directions,
// so the angle is told between 0 and 90°, from forward towards up; -10° is 80°.
func cutAngle(c catalog.Cloth, want si.Angle) si.Angle {
	if c.Kind == catalog.Mat {
		return 0
	}
	const quarter = math.Pi / 2
	a := math.Mod(float64(want-c.Bias), quarter)
	if a < -1e-9 {
		a += quarter
	}
	return si.Angle(max(0, a))
}

// replaces names the original ply a repair ply stands for: of those its depth
// reaches, one of its own kind if there is one, else the one at its middle.
func (m materials) replaces(l Layer, original []Layer, f face, climbed, total si.Length) string {
	if len(original) == 0 {
		return ""
	}
	// Depth of the layer's middle below the face it is laid from, as a share.
	share := f.share * (1 - (float64(climbed)-float64(l.Thickness)/2)/float64(total))
	if f.name == "inside" {
		share = 1 - share
	}
	whole := float64(thickness(original))
	depth := share * whole
	reach := f.share * float64(l.Thickness) / float64(total) * whole / 2
	mine, err := m.cat.Cloth(l.Class)
	if err != nil {
		return ""
	}
	best, gap := -1, math.Inf(1)
	var top float64
	for i, o := range original {
		mid := top + float64(o.Thickness)/2
		top += float64(o.Thickness)
		c, err := m.cat.Cloth(o.Class)
		d := math.Abs(mid - depth)
		own := err == nil && (c.Kind == catalog.Mat) == (mine.Kind == catalog.Mat)
		if !own || d > reach+float64(o.Thickness)/2 {
			d += whole // another kind, or one out of reach, only where there is none better
		}
		if d < gap {
			best, gap = i, d
		}
	}
	return fmt.Sprintf("ply %d, %s", original[best].Number, strings.ToUpper(original[best].Class))
}

// cover returns the cover ply: one light cloth lapping beyond the feather edge.
func (m materials) cover(class string, edge geom.Shape, lap si.Length) (Ply, error) {
	c, err := m.cat.Cloth(class)
	if err != nil {
		return Ply{}, fmt.Errorf("choices.cover: %w", err)
	}
	p, err := m.ply(edge, Layer{
		Class: c.Class, Name: c.Name, Areal: c.Areal, Thickness: c.Thickness(m.resin),
	}, lap)
	if err != nil {
		return Ply{}, err
	}
	p.Label, p.Overlap, p.Replaces = "C", lap, "cover ply over the feather edge"
	return p, nil
}

// sessions gives each ply its laminating session: as many plies in laying
// order as stay under the wet weight the material bears at once. The limit is
// met to within 3 %: the wet weight of a hand-laid mat is not known better
// (docs/decisions/0011), and the excess is reported.
func sessions(plies []Ply, limit si.AreaDensity) (n int, heaviest si.AreaDensity) {
	const slack = 1.03
	var wet si.AreaDensity
	n = 1
	for i := range plies {
		turned := i > 0 && plies[i].Face != plies[i-1].Face
		if wet > 0 && (turned || wet+plies[i].Wet > si.Scale(limit, slack)) {
			n, wet = n+1, 0
		}
		wet += plies[i].Wet
		plies[i].Session = n
		heaviest = max(heaviest, wet)
	}
	return n, heaviest
}
