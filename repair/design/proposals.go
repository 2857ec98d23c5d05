package design

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/laminate"
	"scarfwright/repair/catalog"
	"scarfwright/repair/job"
)

// target is what a list of repair plies is measured against.
type target struct {
	cut           []Layer // plies to be replaced, outside to inside
	whole         []Layer // plies left whole behind them, for a partial depth
	inside        bool    // the plies replaced are the innermost, not the outermost
	ei, low, high float64 // bending stiffness of the original, and its spread
	sides, order  string  // how the list will be laid
	membrane      bool    // compare EA instead: a thin skin of a sandwich
}

// sort is which stiffness is compared, in words.
func (t target) sort() string {
	if t.membrane {
		return "in-plane"
	}
	return "bending"
}

// stiffness returns the repaired section's stiffness over the original's.
//
// For a single skin it is the bending stiffness EI about the section's own
// neutral axis. A skin of a sandwich bends about the panel's axis, far outside
// itself, so there its in-plane stiffness EA is what counts.
func (t target) stiffness(repair []Layer) (ratio, low, high float64) {
	layers := slices.Concat(repair, t.whole)
	if t.inside {
		layers = slices.Concat(t.whole, repair)
	}
	sec := laminate.NewSection(sectionLayers(layers))
	got := sec.EI
	if t.membrane {
		got = sec.EA
	}
	return got / t.ei, got / t.high, got / t.low
}

// propose lists the repair plies the shelf allows: one list that matches the
// thickness, one that matches the bending stiffness with the fewest plies (they
// differ, and both are shown), and the repairer's own list where one is given.
func (m materials) propose(t target, shelf []string, chosen []job.PlyRef) ([]Proposal, [][]job.PlyRef, error) {
	cloths, err := m.cloths(shelf)
	if err != nil {
		return nil, nil, err
	}
	var lists [][]job.PlyRef
	var names []string
	if len(chosen) > 0 {
		lists, names = append(lists, chosen), append(names, "as chosen")
	}
	if len(cloths) > 0 {
		byThickness, byStiffness, err := m.match(t, cloths)
		if err != nil {
			return nil, nil, err
		}
		lists, names = append(lists, byThickness), append(names, "matches thickness")
		if !slices.Equal(byThickness, byStiffness) {
			lists, names = append(lists, byStiffness), append(names, "matches "+t.sort()+" stiffness")
		} else {
			names[len(names)-1] = "matches thickness and " + t.sort() + " stiffness"
		}
	}
	if len(lists) == 0 {
		return nil, nil, fmt.Errorf("shelf.cloth: no reinforcement on the shelf and no plies chosen; list at least one class")
	}
	var out []Proposal
	for i, refs := range lists {
		p, err := m.compare(names[i], refs, t)
		if err != nil {
			return nil, nil, err
		}
		p.Chosen = i == 0
		out = append(out, p)
	}
	return out, lists, nil
}

func (m materials) compare(name string, refs []job.PlyRef, t target) (Proposal, error) {
	s, err := m.stack(refs)
	if err != nil {
		return Proposal{}, err
	}
	s.Layers = arrange(s.Layers, t.sides, t.order)
	p := Proposal{Name: name, list: refs, Thickness: s.Thickness, ThicknessRatio: float64(s.Thickness / thickness(t.cut))}
	p.StiffnessRatio, p.Low, p.High = t.stiffness(s.Layers)
	for _, l := range s.Layers {
		p.Classes = append(p.Classes, l.Class)
	}
	p.Code = Code(p.Classes)
	return p, nil
}

// Code writes a ply list as text, runs of one class gathered: "11 × BX600".
func Code(classes []string) string {
	var parts []string
	for i := 0; i < len(classes); {
		n := 1
		for i+n < len(classes) && classes[i+n] == classes[i] {
			n++
		}
		name := strings.ToUpper(classes[i])
		if n > 2 {
			parts = append(parts, fmt.Sprintf("%d × %s", n, name))
		} else {
			parts = append(parts, slices.Repeat([]string{name}, n)...)
		}
		i += n
	}
	return strings.Join(parts, " / ")
}

func (m materials) cloths(shelf []string) ([]catalog.Cloth, error) {
	var out []catalog.Cloth
	for i, class := range shelf {
		c, err := m.cat.Cloth(class)
		if err != nil {
			return nil, fmt.Errorf("shelf.cloth[%d]: %w", i+1, err)
		}
		out = append(out, c)
	}
	return out, nil
}

// match finds the two lists. Where the shelf holds both mat and fabric and the
// original both too, each original ply is replaced by the nearest weight of its
// own kind and the list is then thinned or filled; otherwise one class, the
// heaviest fabric, is repeated.
func (m materials) match(t target, cloths []catalog.Cloth) (byThickness, byStiffness []job.PlyRef, err error) {
	mats, fabrics := kinds(cloths)
	var start []job.PlyRef
	if len(mats) > 0 && len(fabrics) > 0 {
		for _, l := range t.cut {
			family := fabrics
			if c, err := m.cat.Cloth(l.Class); err == nil && c.Kind == catalog.Mat {
				family = mats
			}
			start = append(start, job.PlyRef{Class: nearest(family, l).Class, Angle: l.Angle})
		}
		byThickness, err = m.thin(t, start)
		if err == nil {
			byThickness, err = m.fill(t, byThickness, heaviest(mats))
		}
		if err != nil {
			return nil, nil, err
		}
		if byStiffness, err = m.fewest(t, byThickness); err != nil {
			return nil, nil, err
		}
		// Filling up may overshoot what thinning out then finds.
		thick, errA := m.gap(t, byThickness)
		stiff, errB := m.gap(t, byStiffness)
		if stiff < thick {
			byThickness = byStiffness
		}
		return byThickness, byStiffness, errors.Join(errA, errB)
	}
	class := heaviest(append(slices.Clone(fabrics), mats...)).Class
	if len(fabrics) > 0 {
		class = heaviest(fabrics).Class
	}
	l, err := m.layer(1, job.PlyRef{Class: class})
	if err != nil {
		return nil, nil, err
	}
	n := max(1, int(math.Round(float64(thickness(t.cut)/l.Thickness))))
	byThickness = m.repeat(t, class, n)
	for n = 1; n <= mostPlies; n++ {
		byStiffness = m.repeat(t, class, n)
		s, err := m.stack(byStiffness)
		if err != nil {
			return nil, nil, err
		}
		if r, _, _ := t.stiffness(s.Layers); r >= 1 {
			break
		}
	}
	return byThickness, byStiffness, nil
}

// mostPlies bounds the search: 60 plies of 600 g/m2 are 44 mm, beyond any skin this tool plans.
const mostPlies = 60

// repeat lists n plies of a class, each with the angle of the original fabric at its depth.
func (m materials) repeat(t target, class string, n int) []job.PlyRef {
	refs := make([]job.PlyRef, n)
	for i := range refs {
		depth := (float64(i) + 0.5) / float64(n) * float64(thickness(t.cut))
		refs[i] = job.PlyRef{Class: class}
		if l, ok := m.fabricAt(t.cut, depth); ok {
			refs[i].Angle = l.Angle
		}
	}
	return refs
}

// fabricAt returns the original ply with a fibre direction nearest to a depth [m].
func (m materials) fabricAt(layers []Layer, depth float64) (Layer, bool) {
	best, found, gap := Layer{}, false, math.Inf(1)
	var top float64
	for _, l := range layers {
		mid := top + float64(l.Thickness)/2
		top += float64(l.Thickness)
		c, err := m.cat.Cloth(l.Class)
		if err != nil || c.Kind == catalog.Mat {
			continue
		}
		if d := math.Abs(mid - depth); d < gap {
			best, found, gap = l, true, d
		}
	}
	return best, found
}

// thin drops plies one at a time, each time the one whose loss brings the
// thickness nearest to the original's, as long as it comes nearer and the
// bending stiffness stays at or above the original's. On a tie the outermost
// goes.
func (m materials) thin(t target, refs []job.PlyRef) ([]job.PlyRef, error) {
	for {
		gap, err := m.gap(t, refs)
		if err != nil {
			return nil, err
		}
		best, bestGap := -1, gap
		for i := range refs {
			fewer := slices.Delete(slices.Clone(refs), i, i+1)
			if len(fewer) == 0 {
				continue
			}
			s, err := m.stack(fewer)
			if err != nil {
				return nil, err
			}
			r, _, _ := t.stiffness(s.Layers)
			if g := math.Abs(float64(s.Thickness - thickness(t.cut))); r >= 1 && g < bestGap-1e-9 {
				best, bestGap = i, g
			}
		}
		if best < 0 {
			return refs, nil
		}
		refs = slices.Delete(slices.Clone(refs), best, best+1)
	}
}

// fill adds plies of one class at the inner face until the bending stiffness
// reaches the original's.
func (m materials) fill(t target, refs []job.PlyRef, c catalog.Cloth) ([]job.PlyRef, error) {
	for range mostPlies {
		s, err := m.stack(refs)
		if err != nil {
			return nil, err
		}
		if r, _, _ := t.stiffness(s.Layers); r >= 1 {
			break
		}
		refs = append(slices.Clone(refs), job.PlyRef{Class: c.Class})
	}
	return refs, nil
}

// fewest drops plies, thickest saving first, as long as the stiffness stays up.
func (m materials) fewest(t target, refs []job.PlyRef) ([]job.PlyRef, error) {
	for {
		best, least := -1, math.Inf(1)
		for i := range refs {
			fewer := slices.Delete(slices.Clone(refs), i, i+1)
			if len(fewer) == 0 {
				continue
			}
			s, err := m.stack(fewer)
			if err != nil {
				return nil, err
			}
			if r, _, _ := t.stiffness(s.Layers); r >= 1 && float64(s.Thickness) < least-1e-12 {
				best, least = i, float64(s.Thickness)
			}
		}
		if best < 0 {
			return refs, nil
		}
		refs = slices.Delete(slices.Clone(refs), best, best+1)
	}
}

func (m materials) gap(t target, refs []job.PlyRef) (float64, error) {
	s, err := m.stack(refs)
	return math.Abs(float64(s.Thickness - thickness(t.cut))), err
}

func kinds(cloths []catalog.Cloth) (mats, fabrics []catalog.Cloth) {
	for _, c := range cloths {
		if c.Kind == catalog.Mat {
			mats = append(mats, c)
		} else {
			fabrics = append(fabrics, c)
		}
	}
	return mats, fabrics
}

func heaviest(cs []catalog.Cloth) catalog.Cloth {
	return slices.MaxFunc(cs, func(a, b catalog.Cloth) int { return cmp.Compare(float64(a.Areal), float64(b.Areal)) })
}

func lightest(cs []catalog.Cloth) catalog.Cloth {
	return slices.MinFunc(cs, func(a, b catalog.Cloth) int { return cmp.Compare(float64(a.Areal), float64(b.Areal)) })
}

func nearest(cs []catalog.Cloth, l Layer) catalog.Cloth {
	gap := func(c catalog.Cloth) float64 { return math.Abs(float64(c.Areal - l.Areal)) }
	return slices.MinFunc(cs, func(a, b catalog.Cloth) int { return cmp.Compare(gap(a), gap(b)) })
}
