package panel

import (
	"fmt"
	"math"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// Result is a solved panel. It does not change when its Model does.
type Result struct {
	panel    Panel
	mesh     *mesh
	sections []section
	shapes   []*shape
	edges    [][]edgeTerm
	u        []float64

	Large      bool // computed for large deflection
	Quarter    bool // computed as a quarter, for it is symmetric
	Unknowns   int
	Iterations int // linear systems solved
}

func (m *Model) result(u []float64, large bool, iterations int) *Result {
	return &Result{
		panel: m.panel, mesh: m.mesh, u: u, shapes: m.shapes, edges: m.edges,
		sections: append([]section(nil), m.sections...),
		Large:    large, Iterations: iterations,
	}
}

// Deformation is the state of the plate at a point: the displacements of the
// reference plane, its strains x, y, xy (engineering shear), its curvatures in 1/m
// and the transverse shear strains xz, yz.
type Deformation struct {
	U, V, W   si.Length
	Plane     laminate.Strain
	Curvature [3]float64
	Shear     [2]float64
}

// At returns the strain at a height z over the reference plane.
func (d Deformation) At(z si.Length) (e laminate.Strain) {
	for i := range e {
		e[i] = d.Plane[i] + float64(z)*d.Curvature[i]
	}
	return e
}

// place is a point of an element in its own coordinates, -1 to 1.
type place struct {
	element int
	r, s    float64
}

// eval returns an element's state at a place, and where that is.
func (r *Result) eval(p place) (v vec, d Deformation) {
	e := &r.mesh.elements[p.element]
	N, D := lineOf(e.pr).at(p.r)
	M, E := lineOf(e.ps).at(p.s)
	return r.evalWith(p.element, N, D, M, E)
}

// evalWith is eval with the values and slopes of the polynomials of both directions.
func (r *Result) evalWith(element int, N, D, M, E []float64) (v vec, d Deformation) {
	k := len(M)
	var dr, ds vec
	var q, qr, qs [dofs]float64
	e := &r.mesh.elements[element]
	for i := range N {
		for j := range M {
			n := e.nodes[i*k+j]
			f, fr, fs := N[i]*M[j], D[i]*M[j], N[i]*E[j]
			x := r.mesh.at[n]
			v, dr, ds = v.add(x.scale(f)), dr.add(x.scale(fr)), ds.add(x.scale(fs))
			for c := range dofs {
				u := r.u[dofs*n+c]
				q[c] += f * u
				qr[c] += fr * u
				qs[c] += fs * u
			}
		}
	}
	det := dr.cross(ds)
	var gx, gy [dofs]float64
	for c := range dofs {
		gx[c] = (ds.y*qr[c] - dr.y*qs[c]) / det
		gy[c] = (dr.x*qs[c] - ds.x*qr[c]) / det
	}
	d.U, d.V, d.W = si.Length(q[0]), si.Length(q[1]), si.Length(q[2])
	d.Plane = laminate.Strain{gx[0], gy[1], gy[0] + gx[1]}
	if r.Large {
		d.Plane[0] += gx[2] * gx[2] / 2
		d.Plane[1] += gy[2] * gy[2] / 2
		d.Plane[2] += gx[2] * gy[2]
	}
	d.Curvature = [3]float64{gx[3], gy[4], gy[3] + gx[4]}
	d.Shear = [2]float64{gx[2] + q[3], gy[2] + q[4]}
	return v, d
}

// locate returns the places that show a point, more than one on an element's edge.
// The slack is how far outside an element, over half its size, still counts.
func (r *Result) locate(v vec, slack float64) (places []place) {
	for e := range r.mesh.elements {
		if p, ok := r.invert(e, v, slack); ok {
			places = append(places, p)
		}
	}
	return places
}

// A point on an outline may lie off the elements' edges, which follow it closely but
// not exactly: whoever asks for one side of it gets the nearest of that side.
const onEdge, nearEdge = 1e-7, 0.1

// invert finds the local coordinates of a point in an element by Newton's method.
func (r *Result) invert(element int, v vec, slack float64) (p place, ok bool) {
	e := &r.mesh.elements[element]
	nodes := e.nodes
	lo, hi := vec{math.Inf(1), math.Inf(1)}, vec{math.Inf(-1), math.Inf(-1)}
	for _, n := range nodes {
		a := r.mesh.at[n]
		lo, hi = vec{min(lo.x, a.x), min(lo.y, a.y)}, vec{max(hi.x, a.x), max(hi.y, a.y)}
	}
	size := hi.sub(lo).norm()
	if tiny := 0.01 * size; v.x < lo.x-tiny || v.y < lo.y-tiny || v.x > hi.x+tiny || v.y > hi.y+tiny {
		return p, false
	}
	p.element = element
	k := e.ps + 1
	for range 30 {
		N, D := lineOf(e.pr).at(p.r)
		M, E := lineOf(e.ps).at(p.s)
		var x, dr, ds vec
		for i := range N {
			for j := range M {
				a := r.mesh.at[nodes[i*k+j]]
				x, dr, ds = x.add(a.scale(N[i]*M[j])), dr.add(a.scale(D[i]*M[j])), ds.add(a.scale(N[i]*E[j]))
			}
		}
		miss := v.sub(x)
		det := dr.cross(ds)
		p.r += miss.cross(ds) / det
		p.s += dr.cross(miss) / det
		if miss.norm() < 1e-12*size {
			break
		}
		p.r, p.s = clamp(p.r, 1.5), clamp(p.s, 1.5)
	}
	if !(math.Abs(p.r) <= 1+slack && math.Abs(p.s) <= 1+slack) {
		return p, false
	}
	p.r, p.s = clamp(p.r, 1), clamp(p.s, 1)
	return p, true
}

func clamp(x, most float64) float64 { return math.Max(-most, math.Min(most, x)) }

// Deformation returns the state at a point as seen from within a zone (0 is the
// base), which matters on an outline, where strains jump. Zone -1 takes whatever
// zone the point lies in. Between elements of a zone the mean is returned.
func (r *Result) Deformation(at Point, zone int) (Deformation, error) {
	_, d, err := r.at(at, zone)
	return d, err
}

// At returns the zone that a point lies in and the state there.
func (r *Result) At(at Point) (zone int, d Deformation, err error) { return r.at(at, -1) }

func (r *Result) at(at Point, zone int) (int, Deformation, error) {
	v := vecOf(at)
	flip := vec{1, 1}
	if r.mesh.quarter {
		flip = vec{sign(v.x), sign(v.y)}
		v = vec{math.Abs(v.x), math.Abs(v.y)}
	}
	var sum Deformation
	n := 0.0
	for _, slack := range []float64{onEdge, nearEdge} {
		for _, p := range r.locate(v, slack) {
			z := r.mesh.elements[p.element].zone
			if zone < 0 {
				zone = z
			}
			if z == zone {
				_, d := r.eval(p)
				n++
				sum.average(&d, n)
			}
		}
		if n > 0 {
			break
		}
	}
	if n == 0 {
		return zone, sum, fmt.Errorf("panel: no point of zone %d at (%.4g, %.4g) m", zone, float64(at.X), float64(at.Y))
	}
	sum.U, sum.V = si.Scale(sum.U, flip.x), si.Scale(sum.V, flip.y)
	sum.Plane[2] *= flip.x * flip.y
	sum.Curvature[2] *= flip.x * flip.y
	sum.Shear[0] *= flip.x
	sum.Shear[1] *= flip.y
	return zone, sum, nil
}

func sign(x float64) float64 {
	if x < 0 {
		return -1
	}
	return 1
}

// Deflection returns w at a point, positive away from the pressure.
func (r *Result) Deflection(at Point) (si.Length, error) {
	d, err := r.Deformation(at, -1)
	return d.W, err
}

// Equilibrium returns the force of the pressure on the panel, the sum of the
// supports' reactions against it, and the largest force left over at an unknown that is
// free to move, over the whole load: what the solution leaves unbalanced.
func (r *Result) Equilibrium() (load, reaction si.Force, leftOver float64) {
	m := &Model{panel: r.panel, mesh: r.mesh}
	held := m.held()
	left := make([]float64, len(held))
	var st state
	q, total := float64(r.panel.Pressure), 0.0
	for e, s := range r.shapes {
		st.fit(s)
		m.local(e, r.u, st.u)
		st.deform(s, r.Large)
		st.resist(s, &r.sections[r.mesh.elements[e].zone])
		st.residue(s, q, r.Large)
		for _, t := range r.edges[e] {
			st.r[t.unknown] += t.load - t.spring*st.u[t.unknown]
		}
		for a, n := range r.mesh.elements[e].nodes {
			total += q * s.mass[a]
			for i := range dofs {
				left[dofs*n+i] += st.r[dofs*a+i]
			}
		}
	}
	supports := 0.0
	for i, h := range held {
		switch {
		case h && i%dofs == dofW:
			supports += left[i]
		case !h && i%dofs <= dofW:
			leftOver = math.Max(leftOver, math.Abs(left[i]))
		}
	}
	if total != 0 {
		leftOver /= math.Abs(total)
	}
	if r.mesh.quarter {
		total, supports = 4*total, 4*supports
	}
	return si.Force(total), si.Force(supports), leftOver
}
