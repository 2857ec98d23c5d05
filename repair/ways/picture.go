package ways

import (
	"math"

	"scarfwright/physics/joint"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
)

// Field is the strain ratio over the panel: of every place the most that any ply
// uses, over and under, on a regular grid from the lower aft corner, row by row.
type Field struct {
	NX, NY  int
	Values  []float64
	Load    string
	Worst   panel.Point
	Used    float64
	Words   string
	Mesh    string
	Error   float64 // own estimate, of the greatest value, as a fraction of it
	Outside []Outline
}

// SlopePoint is the bond on the slope, ply by ply (joint.Taper).
type SlopePoint struct {
	Along    si.Length // from the patch's feather edge
	Shear    si.Pressure
	Resolved bool
}

// Slope is the bond along a taper, at the pull at which the original laminate
// begins to fail.
type Slope struct {
	Points            []SlopePoint
	Sigma             si.Pressure // mean stress in the laminate
	Mean              si.Pressure // shear
	Low, Likely, High si.Pressure // strength of the bond
	Plies             []SlopePly
}

// SlopePly is the stretch of the slope that cuts one ply of the old laminate.
type SlopePly struct {
	Name     string
	From, To si.Length
}

// gridAcross is how many places along the long span are looked at.
const gridAcross = 61

// picture draws the recommended way, or the chosen one, and estimates its error.
func (c *comparison) picture(r *Result, memory *Memory) {
	w := r.pictured()
	if w == nil || !w.Computed {
		return
	}
	p, err := c.panel(w)
	if err != nil {
		return
	}
	i := w.Governs
	if !c.loads[i].pressure { // contours tell more of a panel under pressure
		i = 0
		if w.Cases[1].Strength < w.Cases[0].Strength {
			i = 1
		}
	}
	l := c.loads[i]
	p.Edges = panel.AllEdges(l.edge)
	o := resolution(c.on)
	m, err := panel.Prepare(p, o)
	if err != nil {
		return
	}
	var like *panel.Result
	if known := memory.like(p); i < len(known) {
		like = known[i]
	}
	res, err := solve(m, l, c.q, like)
	if err != nil {
		return
	}
	f := Field{NX: gridAcross, Load: l.Name}
	f.NY = max(9, int(math.Round(gridAcross*float64(p.Width/p.Length)))|1)
	lists := make([][]ply, w.parts.zones()+1)
	lows := make([]si.Length, len(lists))
	for z := range lists {
		lists[z], lows[z] = w.parts.section(z), p.Layup(z).Bottom
	}
	f.Values = make([]float64, f.NX*f.NY)
	inTwo(f.NY, func(y int) {
		for x := range f.NX {
			at := panel.Point{
				X: si.Scale(p.Length, (float64(x)/float64(f.NX-1)-0.5)*(1-1e-9)),
				Y: si.Scale(p.Width, (float64(y)/float64(f.NY-1)-0.5)*(1-1e-9)),
			}
			f.Values[y*f.NX+x] = usedAt(res, lists, lows, at)
		}
	})
	g := use(res, p, w.parts, c.on, w.Taper, c.bond, l)
	f.Used, f.Worst, f.Words = g.ply, g.plyAt.at, c.words(w, g.plyAt)
	if g.edge > g.ply {
		f.Used, f.Worst, f.Words = g.edge, g.edgeAt.at, c.words(w, g.edgeAt)
	}
	w.Error, w.WError = c.errorOf(w, p, l, o, g)
	f.Error = w.Error
	w.Field = &f
	w.Slope = c.alongSlope(w)
}

// errorOf estimates how far the mesh may have the most used, and the deflection, off,
// as fractions: from a second solution. Of an ellipse that is one degree lower, and
// the difference, doubled as in panel.Solve, falls by a factor of three or more with a
// degree; of another outline it is one degree higher, and the difference is the error
// but for a quarter. The net of places adds 0.2 %.
func (c *comparison) errorOf(w *Way, p panel.Panel, l load, o panel.Options, g figures) (strain, deflection float64) {
	share := 2.0 / 3
	if c.on == nil || c.on.a > 0 && max(c.on.a/c.on.b, c.on.b/c.on.a) <= slender {
		o.Degree--
	} else {
		o.Degree, share = o.Degree+1, 1.25
	}
	m, err := panel.Prepare(p, o)
	if err != nil {
		return 0, 0
	}
	r, err := solve(m, l, c.q, nil)
	if err != nil {
		return 0, 0
	}
	k := use(r, p, w.parts, c.on, w.Taper, c.bond, l)
	return share*math.Abs(k.most()/g.most()-1) + 0.002, math.Abs(float64(k.w/g.w) - 1)
}

// usedAt is the most that any ply uses at a place.
func usedAt(r *panel.Result, lists [][]ply, lows []si.Length, at panel.Point) float64 {
	zone, d, err := r.At(at)
	if err != nil {
		return math.NaN()
	}
	most := 0.0
	z := lows[zone]
	for _, p := range lists[zone] {
		for _, h := range []si.Length{z, z + p.Thickness} {
			e := d.At(h).InPlyAxes(p.Angle)
			for k := range 3 {
				u, _ := used(e[k], k, p.fails)
				most = max(most, u)
			}
		}
		z += p.Thickness
	}
	return most
}

// alongSlope solves the taper ply by ply. The patch is drawn to the thickness of
// what it replaces, its plies in proportion.
func (c *comparison) alongSlope(w *Way) *Slope {
	ps := w.parts
	if ps.over || ps.was != nil {
		return nil
	}
	old, fresh := ps.ground(), ps.patch
	switch ps.sides {
	case "inside": // from the ground face
		old, fresh = turned(old), turned(fresh)
	case "both":
		old, fresh = top(old, ps.depth/2), fresh[:ps.outer]
	}
	if len(fresh) == 0 {
		return nil
	}
	scale := float64(depth(old) / depth(fresh))
	joined := func(list []ply, k float64) (out []joint.Ply) {
		for _, p := range list {
			q := p.QBar(p.Angle)
			out = append(out, joint.Ply{Thickness: si.Scale(p.Thickness, k), E: si.Pressure(q[0][0]), G: p.G13})
		}
		return out
	}
	R := float64(w.Taper) / float64(depth(old))
	t := joint.Taper{Ratio: R, Parent: joined(old, 1), Patch: joined(fresh, scale), Adhesive: c.bond.layer}
	sigma, tau := c.parity()
	b, err := t.Solve(si.Pressure(sigma))
	if err != nil {
		return nil
	}
	low, _, high := bondOf(c.resin)
	out := &Slope{
		Sigma: si.Pressure(sigma), Mean: b.MeanShear,
		Low: si.Pressure(low.strength(old)), Likely: si.Pressure(tau), High: si.Pressure(high.strength(old)),
	}
	for _, p := range b.Points {
		out.Points = append(out.Points, SlopePoint{p.Along, p.Shear, p.Resolved})
	}
	slant := math.Sqrt(1 + R*R)
	var z si.Length
	for _, p := range old {
		out.Plies = append(out.Plies, SlopePly{p.class, si.Scale(z, slant), si.Scale(z+p.Thickness, slant)})
		z += p.Thickness
	}
	return out
}

func turned(ps []ply) []ply {
	out := make([]ply, len(ps))
	for i, p := range ps {
		out[len(ps)-1-i] = p
	}
	return out
}
