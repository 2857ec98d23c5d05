package ways

import (
	"math"

	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// The second method: closed forms that share nothing with the plate elements but
// the plies. They are what the calculation sheet works out line by line.
//
// Pressure. The moments of the intact plate, by series (panel.ClampedPlate,
// panel.SimplySupportedPlate: small deflection), on the section at the panel's edge
// (the old laminate), at its middle (the repair's own, about its own neutral axis)
// and on the slope.
//
// In the plane. The repair is an ellipse of another stiffness in a wide sheet. The
// hole alone would open by (1 + 2 beta) of the sheet's strain, beta = across/along
// (Inglis' hole, from memory); filled with something k times as stiff,
//
//	A = (1 + 2 beta)/(1 + 2 beta k)          strain in the repair / in the sheet
//	kA                                       stress at its end, in the sheet / far off
//	1 + 2 beta (1 - kA)                      stress beside it
//
// by superposition, Poisson's effect across left out. k = 1 gives 1, 1, 1. A disc of
// another bending stiffness in a plate bent alike all round takes, by the same steps,
//
//	A_b = 2/(1 - nu + k (1 + nu))            curvature in the repair / in the plate
//
// What they leave out, and so where they differ from the panel: stretch by large
// deflection, the edges of the panel near the repair, and the bending that an
// eccentric section brings with it: the surroundings are taken to hold it straight.
// For an overlay that is the lower of two bounds (joint.Bridged has both).

// hand returns the strength of a way under one load by closed forms.
func (c *comparison) hand(w *Way, l load) float64 {
	if l.pressure {
		return c.handPressure(w, l)
	}
	return c.handPlane(w, l)
}

// plates returns the moments of the intact plate, edges held and free. In a plate
// alike both ways they do not depend on its stiffness.
func plates(d job.Description, q si.Pressure) map[bool]panel.PlateResult {
	const nu, D = clothPoisson, 1e3
	b := panel.Bending{D11: D, D12: nu * D, D22: D, D66: (1 - nu) / 2 * D}
	return map[bool]panel.PlateResult{
		true:  panel.ClampedPlate(b, d.Panel.Long, d.Panel.Short, q),
		false: panel.SimplySupportedPlate(b, d.Panel.Long, d.Panel.Short, q),
	}
}

// bent is a section's use under curvatures along and across, the outer face
// compressed by positive ones, about an axis at the height zn.
func bent(ps []ply, low, zn si.Length, kx, ky float64) (most float64) {
	z := low
	for _, p := range ps {
		for _, h := range []si.Length{z, z + p.Thickness} {
			for _, k := range []float64{kx, ky} {
				u, _ := used(k*float64(h-zn), 0, p.fails)
				most = max(most, u)
			}
		}
		z += p.Thickness
	}
	return most
}

// neutral is the height of the neutral axis.
func neutral(ps []ply, low si.Length) si.Length {
	var EA, EAz float64
	z := low
	for _, p := range ps {
		e := float64(p.E1) * float64(p.Thickness)
		EA += e
		EAz += e * float64(z+p.Thickness/2)
		z += p.Thickness
	}
	return si.Length(EAz / EA)
}

func (c *comparison) handPressure(w *Way, l load) float64 {
	ps := w.parts
	before := ps.parent
	if ps.was != nil {
		before = ps.was
	}
	_, EI := stiffness(before)
	const nu = clothPoisson
	m := c.moments[l.edge.Support == panel.Clamped]
	low := -depth(before) / 2
	// Curvatures of the section from the moments along and across.
	turn := func(EI, Mx, My float64) (kx, ky float64) { return (Mx - nu*My) / EI, (My - nu*Mx) / EI }
	edge := func(ps []ply, low si.Length) float64 { // there the plate cannot bend along its edge
		_, EI := stiffness(ps)
		zn := neutral(ps, low)
		return max(bent(ps, low, zn, (1-nu*nu)*m.EdgeX/EI, 0), bent(ps, low, zn, 0, (1-nu*nu)*m.EdgeY/EI))
	}
	middle := func(ps []ply, low si.Length) float64 {
		_, EI := stiffness(ps)
		kx, ky := turn(EI, m.Mx, m.My)
		return bent(ps, low, neutral(ps, low), kx, ky)
	}
	was := max(edge(before, low), middle(before, low))
	if ps.was != nil {
		now := ps.parent
		low := -depth(now) / 2
		return was / max(edge(now, low), middle(now, low))
	}
	fresh, at := ps.at(0)
	_, after := stiffness(fresh)
	kx, ky := turn(EI, m.Mx, m.My)
	A := disc(after/EI, nu)
	kx, ky = A*kx, A*ky
	axis := neutral(fresh, at)
	if ps.over {
		axis = 0 // the plate around turns about its own middle and takes the overlay along
	}
	is := max(edge(before, low), bent(fresh, at, axis, kx, ky))
	if !ps.over {
		R := float64(w.Taper) / float64(ps.perFace())
		EA, _ := stiffness(ps.ground())
		E := EA / float64(depth(ps.ground())) / (1 - nu*nu)
		for _, z := range []si.Length{-depth(before) / 2, -depth(before)/2 + ps.depth} {
			s := E * math.Abs(float64(z-axis)) * max(math.Abs(kx+nu*ky), math.Abs(ky+nu*kx))
			is = max(is, c.slope(ps, s, R))
		}
	}
	return was / is
}

// slope is how much of the bond's strength a mean stress across it uses.
func (c *comparison) slope(ps *parts, s, R float64) float64 {
	u := s * R / (1 + R*R) / c.bond.strength(ps.ground())
	if ps.stepped {
		u *= ps.treads()
	}
	return u
}

// disc is A_b.
func disc(k, nu float64) float64 { return 2 / (1 - nu + k*(1+nu)) }

// plane are the three factors of an ellipse k times as stiff as the sheet.
func plane(beta, k float64) (inside, end, beside float64) {
	inside = (1 + 2*beta) / (1 + 2*beta*k)
	return inside, k * inside, 1 + 2*beta*(1-k*inside)
}

func (c *comparison) handPlane(w *Way, l load) float64 {
	ps := w.parts
	fails := func(list []ply) float64 {
		e := math.Inf(1)
		for _, p := range list {
			e = min(e, p.fails[0])
		}
		return e
	}
	if ps.was != nil {
		return fails(ps.parent) / fails(ps.was)
	}
	before, _ := stiffness(ps.parent)
	fresh, _ := ps.at(0)
	after, _ := stiffness(fresh)
	k := after / before
	b := c.on.shape.Bounds()
	reach := w.Taper.MM() / 2
	if ps.over {
		reach = 0
	}
	along, across := b.Width()/2+reach, b.Height()/2+reach
	if l.stretch[1] != 0 {
		along, across = across, along
	}
	inside, end, beside := plane(across/along, k)
	// All per unit strain of the sheet.
	was := 1 / fails(ps.parent)
	is := max(inside/fails(fresh), max(end, beside)/fails(ps.parent))
	if ps.over {
		N := inside * after
		is = max(is, N/c.bond.lapLength(ps, w.Taper)/c.bond.strength(ps.facing()))
	} else {
		R := float64(w.Taper) / float64(ps.perFace())
		EA, _ := stiffness(ps.ground())
		E := EA / float64(depth(ps.ground()))
		is = max(is, c.slope(ps, E*(1+end)/2, R))
		if ps.stepped {
			is = max(is, max(end, beside)/fails(ps.parent)*ps.riser())
		}
	}
	return was / is
}
