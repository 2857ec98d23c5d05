package design

import (
	"fmt"
	"math"
	"slices"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/job"
)

// layer makes one ply of a section from a catalogue class. The thickness is the
// hand-laid one of the class in this resin.
func (m materials) layer(n int, ref job.PlyRef) (Layer, error) {
	c, err := m.cat.Cloth(ref.Class)
	if err != nil {
		return Layer{}, err
	}
	return Layer{
		Number: n, Class: c.Class, Name: c.Name, Angle: ref.Angle,
		Areal: c.Areal, Glass: c.GlassShare(),
		Thickness: c.Thickness(m.resin), Modulus: c.Stiffness(),
	}, nil
}

// stack makes a section of plies, outside to inside.
func (m materials) stack(refs []job.PlyRef) (Stack, error) {
	var s Stack
	for i, ref := range refs {
		l, err := m.layer(i+1, ref)
		if err != nil {
			return Stack{}, err
		}
		s.Layers = append(s.Layers, l)
	}
	s.settle()
	return s, nil
}

// Layers returns a list of plies, outside to inside, as hand-laid layers in a resin.
func Layers(refs []job.PlyRef, resin catalog.Resin, cat catalog.Catalogue) ([]Layer, error) {
	s, err := materials{cat: cat, resin: resin}.stack(refs)
	return s.Layers, err
}

// Assumed returns the layers that stand in for a laminate of which only the
// thickness is known, with their share of mat changed: 0 as they are, -1 all mat, +1 all
// roving. The thickness is the one given.
func Assumed(t si.Length, kind int, resin catalog.Resin, cat catalog.Catalogue) ([]Layer, error) {
	m := materials{cat: cat, resin: resin}
	s, err := m.assumed(job.Range{Low: t, High: t})
	if err != nil || kind == 0 {
		return s.Layers, err
	}
	class := assumedMat
	if kind > 0 {
		class = assumedRoving
	}
	for i, old := range s.Layers {
		l, err := m.layer(old.Number, job.PlyRef{Class: class})
		if err != nil {
			return nil, err
		}
		l.Thickness = old.Thickness
		s.Layers[i] = l
	}
	return s.Layers, nil
}

// settle computes the section from its layers.
func (s *Stack) settle() {
	sec := laminate.NewSection(sectionLayers(s.Layers))
	s.Thickness, s.EI = sec.Thickness, sec.EI
	s.Low, s.High = s.Thickness, s.Thickness
}

func sectionLayers(ls []Layer) []laminate.Layer {
	out := make([]laminate.Layer, len(ls))
	for i, l := range ls {
		out[i] = laminate.Layer{Thickness: l.Thickness, Tension: l.Modulus}
	}
	return out
}

// The hypothesis for a laminate of which only the thickness is known: mat and
// woven roving by turns, the habit of hand-laid hulls (common practice, no
// source). Its spread runs from mat alone to roving alone.
const (
	assumedMat    = "csm450"
	assumedRoving = "wr600"
)

// assumed returns the hypothesis for a thickness: mat and roving by turns,
// beginning and ending with mat, scaled so that the thicknesses add up.
func (m materials) assumed(t job.Range) (Stack, error) {
	mat, err := m.layer(0, job.PlyRef{Class: assumedMat})
	if err != nil {
		return Stack{}, err
	}
	roving, err := m.layer(0, job.PlyRef{Class: assumedRoving})
	if err != nil {
		return Stack{}, err
	}
	likely := (t.Low + t.High) / 2
	pairs := max(0, math.Round(float64((likely-mat.Thickness)/(mat.Thickness+roving.Thickness))))
	scale := float64(likely) / (float64(mat.Thickness) + pairs*float64(mat.Thickness+roving.Thickness))
	var s Stack
	for i := range int(2*pairs) + 1 {
		l := mat
		if i%2 == 1 {
			l = roving
		}
		l.Number = i + 1
		l.Thickness = si.Scale(l.Thickness, scale)
		l.Areal = si.Scale(l.Areal, scale)
		s.Layers = append(s.Layers, l)
	}
	s.settle()
	s.Assumed, s.Low, s.High = true, t.Low, t.High
	return s, nil
}

// spread returns the moduli between which a laminate of unknown plies lies: all
// mat, all roving. Both classes are in the catalogue, or assumed had failed.
func (m materials) spread() (mat, roving si.Pressure) {
	a, errA := m.cat.Cloth(assumedMat)
	b, errB := m.cat.Cloth(assumedRoving)
	if errA != nil || errB != nil {
		panic("design: the assumed classes are not in the catalogue")
	}
	return a.Stiffness(), b.Stiffness()
}

// original returns the laminate that was there: of the whole skin, and the
// spread of its bending stiffness where the plies are only a hypothesis.
func (m materials) original(l job.Laminate) (s Stack, lowEI, highEI float64, err error) {
	if len(l.Plies) > 0 {
		s, err = m.stack(l.Plies)
		return s, s.EI, s.EI, err
	}
	if l.Thickness.High <= 0 {
		return Stack{}, 0, 0, fmt.Errorf("laminate: neither plies nor thickness given; a repair cannot be sized")
	}
	if s, err = m.assumed(l.Thickness); err != nil {
		return Stack{}, 0, 0, err
	}
	mat, roving := m.spread()
	cube := func(t si.Length) float64 { return math.Pow(t.M(), 3) / 12 }
	lowEI = mat.Pa() * cube(l.Thickness.Low)
	highEI = roving.Pa() * cube(l.Thickness.High)
	return s, lowEI, highEI, nil
}

// split returns the layers within depth of the face that is ground, and the
// others, both outside to inside. A layer that is cut more than a tenth of its
// thickness counts as cut: that much of a mat is lost to the grinder in any case
// (our rule).
func split(layers []Layer, sides string, depth si.Length) (cut, whole []Layer) {
	const spared = 0.1
	inward := slices.Clone(layers)
	if sides == "inside" {
		slices.Reverse(inward)
	}
	var top si.Length
	for _, l := range inward {
		if depth > top+spared*l.Thickness {
			cut = append(cut, l)
		} else {
			whole = append(whole, l)
		}
		top += l.Thickness
	}
	if sides == "inside" {
		slices.Reverse(cut)
		slices.Reverse(whole)
	}
	return cut, whole
}

func thickness(ls []Layer) si.Length {
	var t si.Length
	for _, l := range ls {
		t += l.Thickness
	}
	return t
}
