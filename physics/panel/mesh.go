package panel

import (
	"fmt"
	"math"
)

// mesh is the panel cut into quadrilaterals whose edges follow the outlines.
//
// Without zones it is a grid of rectangles. With zones it is a block of
// n x n quadrilaterals in the middle (the core), then rings: from the core to the
// innermost outline, from outline to outline, and out to the rectangle. All rings
// are cut at the same places round the middle, given by a parameter t that runs
// from 0 on the x axis through 1 on the y axis to 4; the corners of the rectangle
// lie at t = 0.5, 1.5, 2.5, 3.5. A quarter is the part with 0 <= t <= 1.
//
// In an element the first local index goes outwards (or along x), the second
// round (or along y); node (i, j) has the number i*(ps+1)+j.
type mesh struct {
	elements []element
	at       []vec // the nodes
	quarter  bool
}

// element is one quadrilateral: degree pr outwards and ps round, its zone, its
// nodes and where it lies in the pattern (ring -1 is the core).
type element struct {
	pr, ps       int
	zone         int
	nodes        []int
	ring, sector float64
}

// grading says how fine the mesh is. See Options.
type grading struct {
	degree int
	sides  int // sectors on each of the four sides, even
	inner  int // rings from the core to the innermost outline
	outer  int // rings from the outermost outline to the edge
}

// level is a closed curve of the pattern, as a function of t.
type level func(t float64) vec

func newMesh(p Panel, g grading, quarter bool) (*mesh, error) {
	lx, ly := float64(p.Length), float64(p.Width)
	m := &mesh{quarter: quarter}
	if len(p.Zones) == 0 {
		// The grid is small: it can afford one degree more.
		m.block(min(g.degree+1, highest), 0, gridCuts(p, g, lx, quarter), gridCuts(p, g, ly, quarter),
			func(x, y float64) vec { return vec{x, y} })
		return m, m.check(p)
	}
	curves, err := levels(p)
	if err != nil {
		return nil, err
	}
	if g.sides, err = sidesFor(p, curves, g); err != nil {
		return nil, err
	}
	ends := 4.0
	if quarter {
		ends = 1
	}
	m.core(curves[0], g, ends, len(p.Zones))
	inside := m.rim(g, quarter) // the nodes of the last curve, round
	number := 0.0
	for k := range len(curves) {
		r := ring{from: coreEdge(curves[0]), to: curves[k], zone: len(p.Zones) - k, degree: g.degree}
		switch {
		case k == 0:
			r.cuts = cuts(g.inner, towardsEnd)
		case k == len(p.Zones):
			r.from, r.zone, r.cuts = curves[k-1], 0, cuts(g.outer, towardsBoth)
		case k > len(p.Zones): // the layer along the edge
			r.from, r.zone, r.cuts = curves[k-1], 0, []float64{0, 1}
		default:
			r.from = curves[k-1]
			r.size(g)
		}
		for i := range len(r.cuts) - 1 {
			a, b := r.cuts[i], r.cuts[i+1]
			inside = m.ring(r.degree, g.degree, int(ends)*g.sides, ends, inside, r.zone, number, func(f, t float64) vec {
				return mix(r.from(t), r.to(t), a+f*(b-a))
			})
			number++
		}
	}
	return m, m.check(p)
}

// ring is the region between two curves, to be cut into rings of elements.
type ring struct {
	from, to level
	zone     int
	degree   int       // outwards
	cuts     []float64 // from 0 to 1
}

// cuts returns the ends of n pieces of [0, 1] under a spacing.
func cuts(n int, spacing func(x float64) float64) (c []float64) {
	for i := range n + 1 {
		c = append(c, spacing(float64(i)/float64(n)))
	}
	return c
}

// The strains change fastest at an outline, within a thickness or so, and at the
// edge of the panel. The spacings put smaller elements there. They were found by
// trial on the reference panels: without them the strain at the edge of the overlay
// is 5 % off with the same number of elements, with them 0.3 %.
func towardsEnd(x float64) float64   { return 1 - math.Pow(1-x, 1.74) }
func towardsBoth(x float64) float64  { return math.Pow(math.Sin(math.Pow(x, 1.15)*math.Pi/2), 2) }
func towardsEdges(x float64) float64 { return x - 0.07*math.Sin(2*math.Pi*x) }

// layer returns the width of the layer of elements along the edge of a panel whose
// edge can twist: 0 if none can. Where the rotation along an edge is free, first-order
// theory has a boundary layer that dies out as exp(-sqrt(10) s/h), which no
// larger element can follow.
func (p Panel) layer() float64 {
	for _, e := range p.Edges {
		if e.Support != Clamped && !e.Hard {
			return 2 * float64(p.Base.Thickness())
		}
	}
	return 0
}

// withLayer adds a piece of the width given at the end, 0.3 at most.
func withLayer(c []float64, width float64) []float64 {
	if width == 0 {
		return c
	}
	width = math.Min(width, 0.3)
	for i := range c {
		c[i] *= 1 - width
	}
	return append(c, 1)
}

// gridCuts returns the places along a side, in metres, that cut a panel without
// zones.
func gridCuts(p Panel, g grading, side float64, quarter bool) []float64 {
	half := withLayer(cuts(g.sides, func(x float64) float64 { return 2*towardsEdges((1+x)/2) - 1 }), p.layer()/(side/2))
	for i := range half {
		half[i] *= side / 2
	}
	if quarter {
		return half
	}
	all := make([]float64, 0, 2*len(half))
	for i := len(half) - 1; i > 0; i-- {
		all = append(all, -half[i])
	}
	return append(all, half...)
}

// size chooses rings and degree for a region between outlines by its width compared
// with the elements' length round: a step of a scarf needs one degree less.
func (r *ring) size(g grading) {
	widest := 0.0
	for t := 0.0; t < 4; t += 1.0 / 16 {
		step := 1 / float64(g.sides)
		length := r.to(math.Mod(t+step, 4)).sub(r.to(t)).norm()
		widest = math.Max(widest, r.to(t).sub(r.from(t)).norm()/length)
	}
	r.cuts = cuts(1+int(widest/1.5), func(x float64) float64 { return x })
	if widest < 0.6 && r.degree > 3 {
		r.degree--
	}
}

// levels returns the outlines from the innermost out, and the rectangle last, with
// another just within it if there is to be a layer of elements along the edge. A
// direction t means the ray along (a cos, b sin)(t pi/2) from the common centre,
// with the half-axes of the outermost outline, so that nested ellipses of one
// shape are met at equal eccentric angles.
func levels(p Panel) (curves []level, err error) {
	n := len(p.Zones)
	inner := p.Zones[n-1].Outline
	if inner.err != nil {
		return nil, fmt.Errorf("panel %s: %w", p.zoneName(n), inner.err)
	}
	c := inner.centre
	a, b := p.Zones[0].Outline.size(c)
	var previous level
	for k := n; k >= 1; k-- {
		o := p.Zones[k-1].Outline
		if err := o.star(c); err != nil {
			return nil, fmt.Errorf("panel %s: %w", p.zoneName(k), err)
		}
		here := func(t float64) vec {
			s, cs := direction(t)
			return o.ray(c, vec{a * cs, b * s})
		}
		for t := 0.0; t < 4 && previous != nil; t += 1.0 / 64 {
			in, out := previous(t).sub(c).norm(), here(t).sub(c).norm()
			if out < in*1.0001 {
				at := here(t)
				return nil, fmt.Errorf("panel %s: its outline does not enclose that of %s near (%.4g, %.4g) m:"+
					" list the zones from the outermost in, none touching", p.zoneName(k), p.zoneName(k+1), at.x, at.y)
			}
		}
		curves = append(curves, here)
		previous = here
	}
	lx, ly := float64(p.Length)/2, float64(p.Width)/2
	gap := math.Inf(1) // to the edge
	for t := 0.0; t < 4; t += 1.0 / 64 {
		v := previous(t)
		gap = math.Min(gap, math.Min(lx-math.Abs(v.x), ly-math.Abs(v.y)))
		if math.Abs(v.x) > 0.999*lx || math.Abs(v.y) > 0.999*ly {
			return nil, fmt.Errorf("panel %s: its outline reaches the edge of the panel at (%.4g, %.4g) m",
				p.zoneName(1), v.x, v.y)
		}
	}
	if layer := math.Min(p.layer(), 0.3*gap); layer > 0 {
		curves = append(curves, rectangle(lx-layer, ly-layer))
	}
	return append(curves, rectangle(lx, ly)), nil
}

// outlineTolerance is how far the elements' edges may lie off an outline, over half
// its size. The tip of a corner is cut off by as much.
const outlineTolerance = 0.01

// sidesFor returns the number of sectors a side at which the elements' edges, which
// are polynomials, follow all outlines: at least g.sides, doubled up to twice. It
// asks for what degree 4 needs whatever the degree, so that two runs of different
// degree have the same elements.
func sidesFor(p Panel, curves []level, g grading) (sides int, err error) {
	l := lineOf(4)
	for sides = g.sides; ; sides *= 2 {
		worst, zone, at := 0.0, 0, vec{}
		for k := range p.Zones {
			curve := curves[len(p.Zones)-1-k]
			a, b := p.Zones[k].Outline.size(p.Zones[len(p.Zones)-1].Outline.centre)
			for s := range 4 * sides {
				t := func(z float64) float64 { return (float64(s) + (z+1)/2) / float64(sides) }
				for z := -0.95; z < 1; z += 0.1 {
					N, _ := l.at(z)
					var v vec
					for i, x := range l.x {
						v = v.add(curve(math.Mod(t(x), 4)).scale(N[i]))
					}
					want := curve(t(z))
					if d := v.sub(want).norm() / math.Max(a, b); d > worst {
						worst, zone, at = d, k+1, want
					}
				}
			}
		}
		if worst <= outlineTolerance {
			return sides, nil
		}
		if sides >= 4*g.sides || 2*sides > 16 {
			return 0, fmt.Errorf("panel %s: its outline bends too sharply near (%.4g, %.4g) m:"+
				" round the corner there, or take more Sides", p.zoneName(zone), at.x, at.y)
		}
	}
}

// rectangle is the outline |x| = lx, |y| = ly.
func rectangle(lx, ly float64) level {
	return func(t float64) vec {
		side := math.Floor(t + 0.5)
		s := 2 * (t - side)
		switch int(side) % 4 {
		case 0:
			return vec{lx, s * ly}
		case 1:
			return vec{-s * lx, ly}
		case 2:
			return vec{-lx, -s * ly}
		}
		return vec{s * lx, -ly}
	}
}

// direction returns sin and cos of t quarter turns, exact on the axes.
func direction(t float64) (s, c float64) {
	switch t {
	case 0, 4:
		return 0, 1
	case 1:
		return 1, 0
	case 2:
		return 0, -1
	case 3:
		return -1, 0
	}
	return math.Sincos(t * math.Pi / 2)
}

// corePart is the size of the core's corners over the innermost outline. With 0.65
// the core's elements and those of the first ring are about equally wide.
const corePart = 0.65

// coreCorners returns the corners at t = 3.5, 0.5, 1.5, 2.5.
func coreCorners(inner level) (q [4]vec) {
	c := inner(0).add(inner(2)).add(inner(1)).add(inner(3)).scale(0.25)
	for i := range q {
		q[i] = mix(c, inner(math.Mod(3.5+float64(i), 4)), corePart)
	}
	return q
}

// coreMap is the bilinear map of [-1, 1]^2 to the core.
func coreMap(inner level) func(x, y float64) vec {
	q := coreCorners(inner)
	return func(x, y float64) vec {
		return mix(mix(q[3], q[0], (1+x)/2), mix(q[2], q[1], (1+x)/2), (1+y)/2)
	}
}

// coreEdge is the rim of the core as a function of t.
func coreEdge(inner level) level {
	f := coreMap(inner)
	return func(t float64) vec {
		side := math.Floor(t + 0.5)
		s := 2 * (t - side)
		switch int(side) % 4 {
		case 0:
			return f(1, s)
		case 1:
			return f(-s, 1)
		case 2:
			return f(-1, -s)
		}
		return f(s, -1)
	}
}

func (m *mesh) core(inner level, g grading, ends float64, zone int) {
	n, lo := g.sides, -1.0
	if ends == 1 {
		n, lo = n/2, 0
	}
	c := cuts(n, func(x float64) float64 { return lo + (1-lo)*x })
	m.block(g.degree, zone, c, c, coreMap(inner))
}

// block adds the elements over the image of a grid with lines at xs and ys. It is
// the first thing in a mesh: node (I, J) of its grid has the number I*rows+J.
func (m *mesh) block(p, zone int, xs, ys []float64, f func(x, y float64) vec) {
	g := lineOf(p).x
	places := func(cuts []float64) (at []float64) {
		for i := range len(cuts) - 1 {
			for _, z := range g[:p] {
				at = append(at, cuts[i]+(cuts[i+1]-cuts[i])*(z+1)/2)
			}
		}
		return append(at, cuts[len(cuts)-1])
	}
	rows := places(ys)
	for _, x := range places(xs) {
		for _, y := range rows {
			m.at = append(m.at, f(x, y))
		}
	}
	for i := range len(xs) - 1 {
		for j := range len(ys) - 1 {
			e := element{pr: p, ps: p, zone: zone, ring: -1}
			for a := range p + 1 {
				for b := range p + 1 {
					e.nodes = append(e.nodes, (i*p+a)*len(rows)+j*p+b)
				}
			}
			m.elements = append(m.elements, e)
		}
	}
}

// rim returns the nodes round the core from t = 0.
func (m *mesh) rim(g grading, quarter bool) (nodes []int) {
	n := g.sides * g.degree
	node := func(i, j int) int { return i*(n+1) + j }
	if quarter {
		n /= 2
		for j := range n {
			nodes = append(nodes, node(n, j))
		}
		for i := n; i >= 0; i-- {
			nodes = append(nodes, node(i, n))
		}
		return nodes
	}
	for j := n / 2; j < n; j++ {
		nodes = append(nodes, node(n, j))
	}
	for i := n; i > 0; i-- {
		nodes = append(nodes, node(i, n))
	}
	for j := n; j > 0; j-- {
		nodes = append(nodes, node(0, j))
	}
	for i := range n {
		nodes = append(nodes, node(i, 0))
	}
	for j := range n / 2 {
		nodes = append(nodes, node(n, j))
	}
	return nodes
}

// ring adds one ring of elements outside the nodes given, and returns its outer
// nodes. The place of a point is f(fraction outwards, t).
func (m *mesh) ring(pr, p, sectors int, ends float64, inside []int, zone int, number float64,
	f func(r, t float64) vec) []int {
	g, out := lineOf(p).x, lineOf(pr).x
	round := len(inside) // a closed ring has as many nodes as steps, a quarter one more
	rows := [][]int{inside}
	for i := 1; i <= pr; i++ {
		row := make([]int, round)
		for k := range row {
			row[k] = len(m.at)
			t := ends * (float64(k/p) + (g[k%p]+1)/2) / float64(sectors)
			m.at = append(m.at, f((out[i]+1)/2, t))
		}
		rows = append(rows, row)
	}
	for s := range sectors {
		e := element{pr: pr, ps: p, zone: zone, ring: number, sector: float64(s)}
		for i := range pr + 1 {
			for j := range p + 1 {
				e.nodes = append(e.nodes, rows[i][(s*p+j)%round])
			}
		}
		m.elements = append(m.elements, e)
	}
	return rows[pr]
}

// check refuses elements that are folded over.
func (m *mesh) check(p Panel) error {
	for _, e := range m.elements {
		lr, ls := lineOf(e.pr), lineOf(e.ps)
		for i := range e.pr + 1 {
			for j := range e.ps + 1 {
				var dr, ds vec
				for k := range e.pr + 1 {
					dr = dr.add(m.at[e.nodes[k*(e.ps+1)+j]].scale(lr.slope[i][k]))
				}
				for k := range e.ps + 1 {
					ds = ds.add(m.at[e.nodes[i*(e.ps+1)+k]].scale(ls.slope[j][k]))
				}
				if at := m.at[e.nodes[i*(e.ps+1)+j]]; !(dr.cross(ds) > 1e-4*dr.norm()*ds.norm()) {
					return fmt.Errorf("panel %s: the outline is too jagged or too near another to mesh at (%.4g, %.4g) m",
						p.zoneName(e.zone), at.x, at.y)
				}
			}
		}
	}
	return nil
}
