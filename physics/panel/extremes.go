package panel

import (
	"fmt"
	"math"
	"slices"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// PlyState is the strain and stress in a ply, in its own axes, at a point of the
// panel and a height in the ply.
type PlyState struct {
	At        Point
	Zone, Ply int // zone 0 is the base; ply 0 the first
	Place     laminate.Place
	Z         si.Length
	Strain    laminate.Strain
	Stress    laminate.Stress
}

// states returns bottom, middle and top of every ply of a lay-up under a deformation.
func states(l Layup, zone int, at Point, d *Deformation) []PlyState {
	list := make([]PlyState, 0, 3*len(l.Plies))
	z := l.Bottom
	for i, p := range l.Plies {
		for _, place := range []laminate.Place{laminate.Bottom, laminate.Middle, laminate.Top} {
			h := z + si.Scale(p.Thickness, float64(place)/2)
			e := d.At(h).InPlyAxes(p.Angle)
			list = append(list, PlyState{at, zone, i, place, h, e, p.Lamina.Stress(e)})
		}
		z += p.Thickness
	}
	return list
}

// Plies returns the state of every ply at a point, bottom, middle and top, as seen
// from within a zone (-1: whatever zone the point lies in).
func (r *Result) Plies(at Point, zone int) ([]PlyState, error) {
	if zone < 0 {
		z, err := r.zoneAt(at)
		if err != nil {
			return nil, err
		}
		zone = z
	}
	d, err := r.Deformation(at, zone)
	if err != nil {
		return nil, err
	}
	return states(r.panel.Layup(zone), zone, at, &d), nil
}

func (r *Result) zoneAt(at Point) (int, error) {
	v := vecOf(at)
	if r.mesh.quarter {
		v = vec{math.Abs(v.x), math.Abs(v.y)}
	}
	for _, p := range r.locate(v, onEdge) {
		return r.mesh.elements[p.element].zone, nil
	}
	return 0, fmt.Errorf("panel: no point at (%.4g, %.4g) m", float64(at.X), float64(at.Y))
}

// samples calls f for the state at a net of points in every element, twice as dense
// as its nodes, seen from within the element. A quarter is also seen in the mirror,
// where shear turns its sign: a ply at an angle is strained otherwise there.
func (r *Result) samples(f func(zone int, at Point, d *Deformation)) {
	for i, e := range r.mesh.elements {
		lr, ls := lineOf(e.pr), lineOf(e.ps)
		for a, N := range lr.dense[0] {
			for b, M := range ls.dense[0] {
				v, d := r.evalWith(i, N, lr.dense[1][a], M, ls.dense[1][b])
				f(e.zone, v.point(), &d)
				if r.mesh.quarter {
					d.Plane[2], d.Curvature[2] = -d.Plane[2], -d.Curvature[2]
					d.U, d.Shear[0] = -d.U, -d.Shear[0]
					f(e.zone, vec{-v.x, v.y}.point(), &d)
				}
			}
		}
	}
}

// Extreme is the largest and the smallest of one component (0, 1: along and across
// the fibres; 2: shear) over all of a ply in a zone.
type Extreme struct {
	Zone, Ply, Component int
	Max, Min             PlyState
}

// StrainExtremes returns, for every zone, ply and component, where its strain is
// most and least, on a net of points twice as dense as the nodes.
func (r *Result) StrainExtremes() []Extreme {
	return r.extremes(func(_ *Ply, e *laminate.Strain) (v [3]float64) { return *e })
}

// StressExtremes is the same for the stress.
func (r *Result) StressExtremes() []Extreme {
	return r.extremes(func(p *Ply, e *laminate.Strain) (v [3]float64) {
		for c, s := range p.Lamina.Stress(*e) {
			v[c] = float64(s)
		}
		return v
	})
}

// face is one side of a ply in its zone: strain and stress are straight lines
// through a ply, so that its extremes lie on its faces.
type face struct {
	ply      int
	place    laminate.Place
	z        si.Length
	sin, cos float64
}

func facesOf(l Layup) (list []face) {
	z := l.Bottom
	for i, p := range l.Plies {
		sn, cs := math.Sincos(float64(p.Angle))
		list = append(list, face{i, laminate.Bottom, z, sn, cs}, face{i, laminate.Top, z + p.Thickness, sn, cs})
		z += p.Thickness
	}
	return list
}

// inAxes turns a strain to axes at the angle of the face's fibres.
func (f *face) inAxes(e laminate.Strain) laminate.Strain {
	c, s := f.cos, f.sin
	return laminate.Strain{
		c*c*e[0] + s*s*e[1] + c*s*e[2],
		s*s*e[0] + c*c*e[1] - c*s*e[2],
		2*c*s*(e[1]-e[0]) + (c*c-s*s)*e[2],
	}
}

func (r *Result) extremes(value func(p *Ply, e *laminate.Strain) [3]float64) (list []Extreme) {
	first := make([]int, len(r.panel.Zones)+1) // of each zone in the list
	faces := make([][]face, len(first))
	for z := range first {
		first[z] = len(list)
		l := r.panel.Layup(z)
		faces[z] = facesOf(l)
		for p := range l.Plies {
			for c := range 3 {
				list = append(list, Extreme{Zone: z, Ply: p, Component: c})
			}
		}
	}
	type pair struct{ most, least float64 }
	found := make([]pair, len(list))
	for i := range found {
		found[i] = pair{math.Inf(-1), math.Inf(1)}
	}
	r.samples(func(zone int, at Point, d *Deformation) {
		l := r.panel.Layup(zone)
		for i := range faces[zone] {
			f := &faces[zone][i]
			p := &l.Plies[f.ply]
			e := f.inAxes(d.At(f.z))
			for c, v := range value(p, &e) {
				k := first[zone] + 3*f.ply + c
				if v > found[k].most {
					found[k].most = v
					list[k].Max = PlyState{at, zone, f.ply, f.place, f.z, e, p.Lamina.Stress(e)}
				}
				if v < found[k].least {
					found[k].least = v
					list[k].Min = PlyState{at, zone, f.ply, f.place, f.z, e, p.Lamina.Stress(e)}
				}
			}
		}
	})
	return list
}

// Governing returns the ply state with the largest strain along or across the
// fibres, in size, of the whole panel, and which of the two it is (0 or 1).
func (r *Result) Governing() (s PlyState, component int) {
	worst := -1.0
	for _, x := range r.StrainExtremes() {
		if x.Component == 2 {
			continue
		}
		for _, p := range []PlyState{x.Max, x.Min} {
			if e := math.Abs(p.Strain[x.Component]); e > worst {
				worst, s, component = e, p, x.Component
			}
		}
	}
	return s, component
}

// MaxDeflection returns the largest deflection, in size, and where it is.
func (r *Result) MaxDeflection() (w si.Length, at Point) {
	best := -1.0
	for e := range r.mesh.elements {
		for _, n := range r.mesh.elements[e].nodes {
			if x := math.Abs(r.u[dofs*n+dofW]); x > best {
				best, at, w = x, r.mesh.at[n].point(), si.Length(r.u[dofs*n+dofW])
			}
		}
	}
	// The top lies in one of the elements that meet there: halve a net over each.
	start := vecOf(at)
	for _, p := range r.locate(start, onEdge) {
		for step := 0.25; step > 1e-6; step /= 2 {
			centre := p
			for i := -2; i <= 2; i++ {
				for j := -2; j <= 2; j++ {
					q := place{p.element, clamp(centre.r+float64(i)*step, 1), clamp(centre.s+float64(j)*step, 1)}
					if v, d := r.eval(q); math.Abs(float64(d.W)) > best {
						best, w, at, p = math.Abs(float64(d.W)), d.W, v.point(), q
					}
				}
			}
		}
	}
	return w, at
}

// RimPoint is a point on the outline of a zone with the state on both its sides,
// where the strain jumps with the laminate.
type RimPoint struct {
	At              Point
	Inside, Outside Deformation
}

// Rim returns points round the outline of a zone (1 is the outermost), sorted by
// their angle about the middle of the panel. Of a quarter, only that quarter.
func (r *Result) Rim(zone int) []RimPoint {
	type sums struct {
		in, out   Deformation
		nIn, nOut float64
	}
	found := map[int]*sums{}
	for i, e := range r.mesh.elements {
		if e.zone != zone && e.zone != zone-1 {
			continue
		}
		for a := range e.pr + 1 {
			for b := range e.ps + 1 {
				n := e.nodes[a*(e.ps+1)+b]
				s := found[n]
				if s == nil {
					s = &sums{}
					found[n] = s
				}
				_, d := r.eval(place{i, lineOf(e.pr).x[a], lineOf(e.ps).x[b]})
				if e.zone == zone {
					s.nIn++
					s.in.average(&d, s.nIn)
				} else {
					s.nOut++
					s.out.average(&d, s.nOut)
				}
			}
		}
	}
	var rim []RimPoint
	for n, s := range found {
		if s.nIn > 0 && s.nOut > 0 {
			rim = append(rim, RimPoint{r.mesh.at[n].point(), s.in, s.out})
		}
	}
	slices.SortFunc(rim, func(a, b RimPoint) int {
		return int(math.Copysign(1, math.Atan2(float64(a.At.Y), float64(a.At.X))-math.Atan2(float64(b.At.Y), float64(b.At.X))))
	})
	return rim
}

// average takes in the n-th sample of a state.
func (d *Deformation) average(x *Deformation, n float64) {
	for i := range 3 {
		d.Plane[i] += (x.Plane[i] - d.Plane[i]) / n
		d.Curvature[i] += (x.Curvature[i] - d.Curvature[i]) / n
	}
	for i := range 2 {
		d.Shear[i] += (x.Shear[i] - d.Shear[i]) / n
	}
	d.U, d.V, d.W = x.U, x.V, x.W
}
