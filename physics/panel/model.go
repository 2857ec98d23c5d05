package panel

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Options set the resolution. The zero value is what the tests hold to the
// reference: deflection within 0.1 %, governing strains within 0.5 %.
type Options struct {
	Degree int  // of the polynomials in an element, 2 to 12; 0 means 4
	Sides  int  // sectors on each of the four sides, an even number; 0 means 4
	Inner  int  // rings of elements inside the innermost outline; 0 means 2
	Outer  int  // rings outside the outermost outline; 0 means 4
	Whole  bool // compute all of a panel that a quarter would do for
}

func (o Options) grading() (grading, error) {
	g := grading{o.Degree, o.Sides, o.Inner, o.Outer}
	for _, d := range []struct {
		v       *int
		normal  int
		highest int
		name    string
	}{{&g.degree, 4, highest, "Degree"}, {&g.sides, 4, 16, "Sides"}, {&g.inner, 2, 16, "Inner"}, {&g.outer, 4, 16, "Outer"}} {
		if *d.v == 0 {
			*d.v = d.normal
		}
		if *d.v < 1 || *d.v > d.highest {
			return g, fmt.Errorf("panel option %s = %d: must lie in 1 to %d", d.name, *d.v, d.highest)
		}
	}
	if g.degree < 2 || g.sides%2 != 0 {
		return g, fmt.Errorf("panel options Degree = %d, Sides = %d: degree at least 2, sides even", g.degree, g.sides)
	}
	return g, nil
}

// Model is a panel made ready: its mesh, the integrals over its elements, and the
// order of elimination. Solving the same panel with other laminates or another
// pressure starts from here. A Model is not for two goroutines at once.
type Model struct {
	panel    Panel
	options  Options
	mesh     *mesh
	shapes   []*shape
	sections []section
	tree     *tree
	edges    [][]edgeTerm // of each element
	start    []float64    // displacements before anything moves: the stretch
	factored bool         // the tree holds the linear stiffness, but for dirty leaves
}

// edgeTerm is a spring or a force on one unknown of an element, from its edge.
type edgeTerm struct {
	unknown      int // dofs*a + i
	spring, load float64
}

// Prepare returns the model of a panel. A panel that is its own mirror image about
// both axes, in shape, laminate and support, is computed as a quarter.
func Prepare(p Panel, o Options) (*Model, error) {
	if err := p.Check(); err != nil {
		return nil, err
	}
	g, err := o.grading()
	if err != nil {
		return nil, err
	}
	m := &Model{panel: p, options: o}
	for z := range len(p.Zones) + 1 {
		m.sections = append(m.sections, newSection(p.Layup(z)))
	}
	quarter := !o.Whole && p.mirrored()
	if m.mesh, err = newMesh(p, g, quarter); err != nil {
		return nil, err
	}
	m.shapes = make([]*shape, len(m.mesh.elements))
	inParallel(len(m.shapes), func(i int) {
		e := m.mesh.elements[i]
		at := make([]vec, len(e.nodes))
		for k, n := range e.nodes {
			at[k] = m.mesh.at[n]
		}
		m.shapes[i] = newShape(lineOf(e.pr), lineOf(e.ps), at)
	})
	for _, e := range m.mesh.elements {
		m.edges = append(m.edges, m.edgeTerms(e))
	}
	m.tree = newTree(m.mesh, m.held())
	m.start = make([]float64, dofs*len(m.mesh.at))
	m.SetStretch(p.Stretch[0], p.Stretch[1])
	return m, nil
}

// mirrored reports whether a quarter of the panel tells the whole.
func (p Panel) mirrored() bool {
	if p.Edges[Left] != p.Edges[Right] || p.Edges[Bottom] != p.Edges[Top] {
		return false
	}
	for z := range len(p.Zones) + 1 {
		if s := newSection(p.Layup(z)); !s.uncoupled() {
			return false
		}
	}
	for _, z := range p.Zones {
		if !z.Outline.mirrored() {
			return false
		}
	}
	return true
}

// mirrored reports whether the outline is symmetric about both axes of the panel.
func (o Outline) mirrored() bool {
	if o.err != nil || o.star(vec{}) != nil {
		return false
	}
	w, h := o.size(vec{})
	tiny := 1e-9 * math.Max(w, h)
	for k := range 65 {
		s, c := direction(float64(k) / 64)
		p := o.ray(vec{}, vec{c, s})
		for _, f := range [][2]float64{{-1, 1}, {1, -1}, {-1, -1}} {
			if !o.ray(vec{}, vec{f[0] * c, f[1] * s}).near(vec{f[0] * p.x, f[1] * p.y}, tiny) {
				return false
			}
		}
	}
	return true
}

// side returns the sides of the panel that a point lies on.
func (m *Model) onSide(v vec) (on [4]bool) {
	lx, ly := float64(m.panel.Length)/2, float64(m.panel.Width)/2
	tiny := 1e-9 * (lx + ly)
	return [4]bool{v.x < -lx+tiny, v.x > lx-tiny, v.y < -ly+tiny, v.y > ly-tiny}
}

// held lists the unknowns that the edges, or the symmetry of a quarter, hold.
func (m *Model) held() []bool {
	h := make([]bool, dofs*len(m.mesh.at))
	tiny := 1e-9 * float64(m.panel.Length+m.panel.Width)
	free := true // to move in the plane as a whole
	for n, v := range m.mesh.at {
		d := h[dofs*n : dofs*n+dofs]
		for s, on := range m.onSide(v) {
			if !on {
				continue
			}
			e := m.panel.Edges[s]
			if e.Support == Free {
				continue
			}
			d[dofW] = true
			if !e.Slides {
				d[dofU], d[dofV], free = true, true, false
			}
			if e.Support == Clamped {
				d[dofX], d[dofY] = true, true
			}
			if e.Hard && s < Bottom { // x = const: the edge runs along y
				d[dofY] = true
			} else if e.Hard {
				d[dofX] = true
			}
		}
		if m.mesh.quarter && math.Abs(v.x) < tiny {
			d[dofU], d[dofX] = true, true
		}
		if m.mesh.quarter && math.Abs(v.y) < tiny {
			d[dofV], d[dofY] = true, true
		}
	}
	if free && !m.mesh.quarter {
		// Two corners pinned stop it; the loads are in balance, so the pins carry nothing.
		for n, v := range m.mesh.at {
			if on := m.onSide(v); on[Bottom] && (on[Left] || on[Right]) {
				h[dofs*n+dofV] = true
				h[dofs*n+dofU] = h[dofs*n+dofU] || on[Left]
			}
		}
	}
	return h
}

// edgeTerms returns the springs and pulls on the edges of an element, spread over
// their nodes by the Lobatto weights 2/(p (p+1) P_p(x)^2).
func (m *Model) edgeTerms(e element) (terms []edgeTerm) {
	k := e.ps + 1
	locals := [4]struct {
		p    int
		node func(i int) int
	}{
		{e.ps, func(i int) int { return i }},
		{e.ps, func(i int) int { return e.pr*k + i }},
		{e.pr, func(i int) int { return i * k }},
		{e.pr, func(i int) int { return i*k + e.ps }},
	}
	for _, l := range locals {
		local := l.node
		a, b := m.mesh.at[e.nodes[local(0)]], m.mesh.at[e.nodes[local(l.p)]]
		onA, onB := m.onSide(a), m.onSide(b)
		for s := range 4 {
			edge := m.panel.Edges[s]
			if !onA[s] || !onB[s] || (edge.Spring == 0 && edge.Pull == 0) {
				continue
			}
			for i := range l.p + 1 {
				P, _ := legendre(l.p, lineOf(l.p).x[i])
				length := a.sub(b).norm() / float64(l.p*(l.p+1)) / (P * P)
				u := dofs * local(i)
				if edge.Support != Clamped {
					terms = append(terms, edgeTerm{u + dofX, length * edge.Spring, 0},
						edgeTerm{u + dofY, length * edge.Spring, 0})
				}
				out := [4]float64{-1, 1, -1, 1}[s] * length * float64(edge.Pull)
				terms = append(terms, edgeTerm{u + s/2, 0, out})
			}
		}
	}
	return terms
}

// SetLayup changes the laminate of a zone (0 is the base). Only what depends on it
// is computed again by the next Linear.
func (m *Model) SetLayup(zone int, l Layup) error {
	if zone < 0 || zone > len(m.panel.Zones) {
		return fmt.Errorf("panel: zone %d: there are %d and the base", zone, len(m.panel.Zones))
	}
	if err := l.check(); err != nil {
		return fmt.Errorf("panel %s: %w", m.panel.zoneName(zone), err)
	}
	p := m.panel
	p.Zones = append([]Zone(nil), p.Zones...)
	if zone == 0 {
		p.Base = l
	} else {
		p.Zones[zone-1].Layup = l
	}
	s := newSection(l)
	if m.mesh.quarter && !s.uncoupled() {
		whole, err := Prepare(p, m.options)
		if err != nil {
			return err
		}
		*m = *whole
		return nil
	}
	m.panel, m.sections[zone] = p, s
	for i, e := range m.mesh.elements {
		if e.zone == zone {
			m.tree.fronts[m.tree.leaf[i]].dirty = true
		}
	}
	return nil
}

// SetPressure changes the pressure.
func (m *Model) SetPressure(q si.Pressure) { m.panel.Pressure, m.factored = q, false }

// SetStretch changes the mean strains along x and y by which the held sides are moved.
func (m *Model) SetStretch(along, across float64) {
	m.panel.Stretch, m.factored = [2]float64{along, across}, false
	for n, v := range m.mesh.at {
		m.start[dofs*n+dofU] = along * v.x
		m.start[dofs*n+dofV] = across * v.y
	}
}

// fill writes the stiffness and the residual of an element at the displacements u
// into its front.
func (m *Model) fill(f *front, s *scratch, u []float64, large bool) {
	e := f.element
	sh, c, st := m.shapes[e], &m.sections[m.mesh.elements[e].zone], &s.state
	st.fit(sh)
	m.local(e, u, st.u)
	st.deform(sh, large)
	st.resist(sh, c)
	st.residue(sh, float64(m.panel.Pressure), large)
	n := len(f.rows)
	var tangent []float64
	if large {
		st.stiffen(sh, c)
		tangent = st.tangent
	}
	sh.stiffness(c, tangent, f.local, f.a, n)
	for _, t := range m.edges[e] {
		st.r[t.unknown] += t.load - t.spring*st.u[t.unknown]
		if r := int(f.local[t.unknown]); r >= 0 {
			f.a[r*n+r] += t.spring
		}
	}
	for i, r := range f.local {
		if r >= 0 {
			f.a[n*n+int(r)] += st.r[i]
		}
	}
}

// local copies the unknowns of element e out of u.
func (m *Model) local(e int, u, to []float64) {
	for a, n := range m.mesh.elements[e].nodes {
		copy(to[dofs*a:dofs*a+dofs], u[dofs*n:])
	}
}

// step returns the change of the displacements that removes the residual at u, as
// far as the tangent there tells.
func (m *Model) step(u []float64, large bool) (du []float64, negative int, err error) {
	t := m.tree
	negative, err = t.factor(m.factored && !large, func(f *front, s *scratch) { m.fill(f, s, u, large) })
	m.factored = err == nil && !large
	if err != nil {
		return nil, negative, err
	}
	x := make([]float64, t.free)
	t.solve(x)
	du = make([]float64, len(u))
	for i, k := range t.unknown {
		if k >= 0 {
			du[i] = x[k]
		}
	}
	return du, negative, nil
}

// Linear solves for small deflections. Beyond a deflection of about half the
// thickness it overstates them (see LargeDeflection).
func (m *Model) Linear() (*Result, error) {
	du, _, err := m.step(m.start, false)
	if err != nil {
		return nil, err
	}
	u := make([]float64, len(du))
	for i := range u {
		u[i] = m.start[i] + du[i]
	}
	return m.result(u, false, 1), nil
}

// inParallel calls f for 0 to n-1 from two goroutines.
func inParallel(n int, f func(i int)) {
	done := make(chan bool)
	go func() {
		for i := 0; i < n/2; i++ {
			f(i)
		}
		done <- true
	}()
	for i := n / 2; i < n; i++ {
		f(i)
	}
	<-done
}
