package panel

import (
	"errors"
	"fmt"
	"math"
)

// errDiverged means that Newton's method found no equilibrium.
var errDiverged = errors.New("panel: no equilibrium found for the large deflection")

// newtonTolerance is the last change of the deflection over the largest one. Newton
// squares the error each time, so that what is returned is off by some 1e-8 of it.
const newtonTolerance = 1e-4

// planeShare of the movement in the plane is the least deflection that is told from
// none.
const planeShare = 1e-3

// LargeDeflection solves with the stretching that a deflection brings with it (von
// Karman's strains). Use it whenever the deflection exceeds about half the
// thickness, which is almost always when a panel is loaded to its limit.
//
// Newton's method with the exact tangent. Each step is as long as makes the energy
// along it least: the energy is a quartic in the length, so that is a root of a
// cubic. A first step from the flat plate overshoots several times; the rule cuts
// it back, and no load steps are needed.
func (m *Model) LargeDeflection() (*Result, error) {
	return m.large(append([]float64(nil), m.start...))
}

// LargeDeflectionFrom is LargeDeflection begun at the shape of a like panel: the same
// edges, outlines and stretch, another laminate or pressure. It takes fewer steps and
// comes to the same shape. A result of another mesh, or nil, is passed over.
func (m *Model) LargeDeflectionFrom(like *Result) (*Result, error) {
	if like == nil || len(like.u) != len(m.start) {
		return m.LargeDeflection()
	}
	r, err := m.large(append([]float64(nil), like.u...))
	if err != nil { // too unlike after all
		return m.LargeDeflection()
	}
	return r, nil
}

// run solves one way or the other.
func (m *Model) run(large bool) (*Result, error) {
	if large {
		return m.LargeDeflection()
	}
	return m.Linear()
}

func (m *Model) large(u []float64) (*Result, error) {
	for k := 1; k <= 60; k++ {
		du, negative, err := m.step(u, true)
		if err != nil {
			return nil, err
		}
		length := m.lineSearch(u, du)
		size, change, plane := 0.0, 0.0, 0.0
		for i := range u {
			u[i] += length * du[i]
			switch i % dofs {
			case dofW:
				size, change = math.Max(size, math.Abs(u[i])), math.Max(change, math.Abs(length*du[i]))
			case dofU, dofV:
				plane = math.Max(plane, math.Abs(u[i]))
			}
		}
		if !finite(size) {
			return nil, errDiverged
		}
		// A panel that is only stretched may have no deflection but rounding.
		if k > 1 && change <= newtonTolerance*math.Max(size, planeShare*plane) {
			if negative > 0 {
				return nil, fmt.Errorf("panel: the panel has buckled (%d unstable modes): "+
					"the flat shape found is not the one it would take", negative)
			}
			return m.result(u, true, k), nil
		}
	}
	return nil, errDiverged
}

// lineSearch returns the length a of the step that makes the energy at u + a du
// least, between 0 and 2. With strains e0 + a e1 + a^2 e2 its slope is
//
//	e1.C e0 - load + a (e1.C e1 + 2 e2.C e0) + 3 a^2 e1.C e2 + 2 a^3 e2.C e2
func (m *Model) lineSearch(u, du []float64) float64 {
	parts := make([][4]float64, len(m.shapes))
	inParallel(len(m.shapes), func(e int) { parts[e] = m.energySlope(e, u, du) })
	var c [4]float64
	for _, p := range parts {
		for i := range c {
			c[i] += p[i]
		}
	}
	slope := func(a float64) float64 { return c[0] + a*(c[1]+a*(c[2]+a*c[3])) }
	if !(slope(0) < 0) {
		return 1 // not downhill: the tangent is indefinite, let Newton have its way
	}
	low, high := 0.0, 2.0
	if slope(high) < 0 {
		return high
	}
	for high-low > 1e-9 {
		if mid := (low + high) / 2; slope(mid) < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}

// energySlope returns the four coefficients of one element's share.
func (m *Model) energySlope(e int, u, du []float64) (c [4]float64) {
	s := scratches.Get().(*scratch)
	defer scratches.Put(s)
	sh, sec, st := m.shapes[e], &m.sections[m.mesh.elements[e].zone], &s.state
	st.fit(sh)
	m.local(e, u, st.u)
	st.deform(sh, true)
	q := float64(m.panel.Pressure)
	was := append([]float64(nil), st.u...)
	var e0 [8][]float64
	for i := range e0 {
		e0[i] = append([]float64(nil), st.e[i]...)
	}
	wx, wy := append([]float64(nil), st.wx...), append([]float64(nil), st.wy...)
	m.local(e, du, st.u)
	st.deform(sh, false)
	for g, dw := range sh.dw {
		var E0, E1, E2 [8]float64
		for i := range 8 {
			E0[i], E1[i] = e0[i][g], st.e[i][g]
		}
		x, y := st.wx[g], st.wy[g]
		E1[0] += wx[g] * x
		E1[1] += wy[g] * y
		E1[2] += wx[g]*y + wy[g]*x
		E2[0], E2[1], E2[2] = x*x/2, y*y/2, x*y
		F0, F2 := sec.times(E0), sec.times(E2)
		F1 := sec.times(E1)
		c[0] += dw * dot8(E1, F0)
		c[1] += dw * (dot8(E1, F1) + 2*dot8(E2, F0))
		c[2] += dw * 3 * dot8(E1, F2)
		c[3] += dw * 2 * dot8(E2, F2)
	}
	for a := range sh.nodes {
		c[0] -= q * sh.mass[a] * st.u[dofs*a+dofW]
	}
	for _, t := range m.edges[e] {
		d := st.u[t.unknown]
		c[0] += d * (t.spring*was[t.unknown] - t.load)
		c[1] += t.spring * d * d
	}
	return c
}

func dot8(a, b [8]float64) (s float64) {
	for i := range a {
		s += a[i] * b[i]
	}
	return s
}
