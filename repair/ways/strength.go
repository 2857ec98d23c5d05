package ways

import (
	"fmt"
	"math"

	"scarfwright/physics/laminate"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
)

// figures is what one panel under one load uses of its strengths.
type figures struct {
	ply, edge, bond, core float64
	plyAt, edgeAt         spot
	bondAt                spot
	w                     si.Length // deflection, of the cases of pressure
}

// spot is a place for words.
type spot struct {
	at        panel.Point
	zone, ply int
	sort      string // "tension", "compression", "shear"
}

func (f figures) most() float64 { return max(f.ply, f.edge, f.bond, f.core) }

// resolution is how finely the panels are cut. The page asks for a dozen panels
// under six loads within two seconds. An ellipse converges fast; another outline
// has corners, needs more elements for them, and gets a lower degree in exchange.
// The error that is left is told with the recommended way (TestResolution).
func resolution(on *place) panel.Options {
	switch {
	case on == nil:
	case on.a == 0:
		return panel.Options{Degree: 4, Sides: 2, Inner: 1, Outer: 1}
	case max(on.a/on.b, on.b/on.a) > slender:
		return panel.Options{Degree: 4, Sides: 4, Inner: 1, Outer: 1}
	}
	return panel.Options{Degree: 5, Sides: 2, Inner: 1, Outer: 1}
}

// measure solves one panel under every load. The cases of one support share a model.
// like are solutions of a panel with the same outlines to begin from, or nil.
func measure(p panel.Panel, ps *parts, on *place, taper si.Length, b bond, loads []load, q si.Pressure, o panel.Options, like []*panel.Result) ([]figures, []*panel.Result, error) {
	out := make([]figures, len(loads))
	results := make([]*panel.Result, len(loads))
	models := map[panel.Edge]*panel.Model{}
	for i, l := range loads {
		m := models[l.edge]
		if m == nil {
			var err error
			p.Edges = panel.AllEdges(l.edge)
			if m, err = panel.Prepare(p, o); err != nil {
				return nil, nil, err
			}
			models[l.edge] = m
		}
		var near *panel.Result
		if len(like) == len(loads) {
			near = like[i]
		}
		r, err := solve(m, l, q, near)
		if err != nil {
			return nil, nil, fmt.Errorf("%s: %w", l.Name, err)
		}
		results[i] = r
		out[i] = use(r, p, ps, on, taper, b, l)
		if math.IsNaN(out[i].bond) {
			return nil, nil, fmt.Errorf("%s: the bond could not be looked at", l.Name)
		}
	}
	return out, results, nil
}

func solve(m *panel.Model, l load, q si.Pressure, like *panel.Result) (*panel.Result, error) {
	m.SetStretch(l.stretch[0], l.stretch[1])
	if !l.pressure {
		q = 0
	}
	m.SetPressure(q)
	return m.LargeDeflectionFrom(like)
}

// use reads off how much of every strength a solved panel uses.
func use(r *panel.Result, p panel.Panel, ps *parts, on *place, taper si.Length, b bond, l load) figures {
	var f figures
	if l.pressure {
		f.w, _ = r.MaxDeflection()
	}
	lists := make([][]ply, ps.zones()+1)
	for z := range lists {
		lists[z] = ps.section(z)
	}
	near := nearEdge(ps)
	for _, x := range r.StrainExtremes() {
		fails := lists[x.Zone][x.Ply].fails
		for _, s := range []panel.PlyState{x.Max, x.Min} {
			u, sort := used(s.Strain[x.Component], x.Component, fails)
			here := spot{s.At, x.Zone, x.Ply, sort}
			if on != nil && on.within(s.At, taper, near) {
				if u > f.edge {
					f.edge, f.edgeAt = u, here
				}
			} else if u > f.ply {
				f.ply, f.plyAt = u, here
			}
		}
	}
	if ps.core != nil {
		f.core = coreUsed(r, p, ps, lists)
	}
	if on != nil {
		f.bond, f.bondAt = b.used(r, ps, on, taper)
	}
	return f
}

// treads is by how much the steps of a lap are loaded more than an even taper: n
// plies make n-1 treads, and the risers carry nothing (joint.PlySteps).
func (p *parts) treads() float64 {
	n := float64(len(p.ground()))
	if n < 2 {
		return 1
	}
	return n / (n - 1)
}

// riser is by how much the section is strained more where its stiffest ply butts.
func (p *parts) riser() float64 {
	all, _ := stiffness(p.parent)
	most := 0.0
	for _, x := range p.parent {
		most = max(most, float64(x.E1)*float64(x.Thickness))
	}
	return all / (all - most)
}

// used is a strain over the strain at which the ply fails, component 0 and 1 along
// and across the fibres, 2 in shear.
func used(e float64, component int, fails [3]float64) (u float64, sort string) {
	switch {
	case component == 2:
		return math.Abs(e) / fails[2], "shear"
	case e < 0:
		return -e / fails[1], "compression"
	}
	return e / fails[0], "tension"
}

// nearEdge is how near the outline of the repair a place counts as its edge: the
// section's thickness, the reach of a step in it.
func nearEdge(ps *parts) si.Length { return depth(ps.parent) }

// within reports whether a place lies at the feather edge (the overlay's edge), to
// that distance.
func (p *place) within(at panel.Point, taper, near si.Length) bool {
	dx, dy := at.X.MM()-p.centre.X, at.Y.MM()-p.centre.Y
	r := math.Hypot(dx, dy)
	if r == 0 {
		return false
	}
	angle := math.Atan2(dy, dx)
	if p.a > 0 { // the ray's own direction is not the ellipse's parameter
		a, b := p.axes(taper.MM())
		edge := 1 / math.Hypot(dx/r/a, dy/r/b)
		return math.Abs(r-edge) < near.MM()
	}
	s, err := p.grow(taper.MM())
	if err != nil {
		return false
	}
	edge, ok := s.Ray(p.centre, angle)
	return ok && math.Abs(r-edge) < near.MM()
}

// coreUsed is the greatest of: shear of the core over its strength; pressure in a
// face over what wrinkles it, or crimps it.
func coreUsed(r *panel.Result, p panel.Panel, ps *parts, lists [][]ply) float64 {
	strength := float64(ps.core.ShearStrength.Typical)
	worst := 0.0
	x, y := p.Length/2, p.Width/2
	const inside = 1 - 1e-6
	for _, at := range []panel.Point{{X: si.Scale(x, inside)}, {Y: si.Scale(y, inside)}, {X: si.Scale(x, 0.5)}, {Y: si.Scale(y, 0.5)}, {}} {
		d, err := r.Deformation(at, -1)
		if err != nil {
			continue
		}
		stiff := p.Base.Shear[0]
		lever := float64(ps.coreT) + (float64(depth(ps.parent))-float64(ps.coreT))/2
		worst = max(worst, math.Hypot(d.Shear[0], d.Shear[1])*stiff/lever/strength)
	}
	for _, x := range r.StressExtremes() {
		q := lists[x.Zone][x.Ply]
		if math.IsInf(q.fails[0], 1) || x.Component == 2 {
			continue
		}
		for _, s := range []panel.PlyState{x.Max, x.Min} {
			if c := -float64(s.Stress[x.Component]); c > 0 {
				worst = max(worst, c/wrinkling(ps, q))
			}
		}
	}
	return worst
}

// wrinkling is the least of the stresses at which a face of that ply's modulus
// wrinkles into the core, or crimps.
func wrinkling(ps *parts, q ply) float64 {
	G := ps.core.ShearModulus.Typical
	face := (depth(ps.parent) - ps.coreT) / 2
	s := panel.Sandwich{Face: q.E1, FaceT: face, Core: si.Scale(G, coreModulus), CoreG: G, CoreT: ps.coreT}
	return math.Min(float64(s.Wrinkling()), float64(s.Crimping()))
}

// meanStiffness is the laminate's stress for strain, of all its plies that bond,
// with their directions: A over the thickness.
func meanStiffness(ps []ply) (Q [3][3]float64) {
	t := 0.0
	for _, p := range ps {
		if math.IsInf(p.fails[0], 1) {
			continue
		}
		q := p.QBar(p.Angle)
		for i := range 3 {
			for j := range 3 {
				Q[i][j] += q[i][j] * float64(p.Thickness)
			}
		}
		t += float64(p.Thickness)
	}
	for i := range 3 {
		for j := range 3 {
			Q[i][j] /= t
		}
	}
	return Q
}

// across returns the stress across a line with the normal n, for a strain.
func across(Q [3][3]float64, e laminate.Strain, nx, ny float64) float64 {
	var s [3]float64
	for i := range 3 {
		for j := range 3 {
			s[i] += Q[i][j] * e[j]
		}
	}
	return nx*nx*s[0] + ny*ny*s[1] + 2*nx*ny*s[2]
}
