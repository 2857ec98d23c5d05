package joint

import "math"

// sections is the discrete joint. Heights 0 = y0 < y1 < ... < yn = T pass through
// every end of a ply. The parent has a section (a vertical cut) wherever its
// sloping edge has one of these heights, the patch likewise, so that the edges
// always run from node to node:
//
//	parent:  x_j = R (y_j - T/2) - w/2,  nodes at y_j ... y_n
//	patch:   x_j = R (y_j - T/2) + w/2,  nodes at y_0 ... y_j
//	w = t_a sqrt(1 + R^2)                the adhesive, measured along the load
//
// A block of unknowns is the patch's section, the adhesive's midline, the parent's
// section and the two deflections, for one height. Before and after the slope only
// one adherend is there.
type sections struct {
	R, T, w float64
	film    film
	rows    []row
	far     []float64 // distances from the slope of the sections beyond it, from the slope outwards
	blocks  []block
	size    int
	x       []float64 // the unknowns, once solved
}

// row is a slice of the thickness in which neither adherend changes.
type row struct {
	y, dy         float64
	layer         int // rows between the same two ends of plies share it
	parent, patch layerStiffness
}

type layerStiffness struct{ E, G float64 }

// block says where the unknowns of one section stand; -1 is held at nought.
type block struct {
	start                 int
	patch, parent         []int // displacement along the load at height i
	midU, midV            int   // adhesive's midline
	vPatch, vParent, last int
}

// film is the plane-strain stiffness of the adhesive: [c11 c12; c12 c22] and shear.
type film struct{ c11, c12, c22, g float64 }

func newFilm(a Adhesive) film {
	E, nu := float64(a.E), a.Nu
	c := E / ((1 + nu) * (1 - 2*nu))
	return film{c * (1 - nu), c * nu, c * (1 - nu), float64(a.G())}
}

const (
	farThick    = 10. // straight laminate beyond the slope, in thicknesses
	farSections = 3   // over it, in geometric progression
)

func newSections(t Taper) *sections {
	s := &sections{R: t.Ratio, T: thickness(t.Parent), film: newFilm(t.Adhesive)}
	s.w = float64(t.Adhesive.Thickness) * math.Sqrt(1+s.R*s.R)
	s.cut(t)
	dy := max(s.rows[0].dy, s.rows[len(s.rows)-1].dy)
	s.far = geometric(s.R*dy, farThick*s.T, farSections)
	s.number()
	return s
}

// cut lays the rows: in each layer between ends of plies at least three, and alike.
func (s *sections) cut(t Taper) {
	want := t.Rows
	if want == 0 {
		want = fewestRows
	}
	scale := s.T / thickness(t.Patch) // 1 but for rounding
	i, j, y, layer := 0, 0, 0.0, 0
	yi, yj := float64(t.Parent[0].Thickness), float64(t.Patch[0].Thickness)*scale
	for {
		next := min(yi, yj)
		if h := next - y; h > sameThick*s.T {
			n := max(3, int(math.Ceil(h/s.T*float64(want)-1e-9)))
			for k := range n {
				a, b := y+h*float64(k)/float64(n), y+h*float64(k+1)/float64(n)
				s.rows = append(s.rows, row{a, b - a, layer,
					layerStiffness{float64(t.Parent[i].E), float64(t.Parent[i].G)},
					layerStiffness{float64(t.Patch[j].E), float64(t.Patch[j].G)}})
			}
			y, layer = next, layer+1
		}
		stepI, stepJ := yi <= next+sameThick*s.T, yj <= next+sameThick*s.T
		if stepI {
			i++
		}
		if stepJ {
			j++
		}
		if i == len(t.Parent) || j == len(t.Patch) {
			break
		}
		if stepI {
			yi += float64(t.Parent[i].Thickness)
		}
		if stepJ {
			yj += float64(t.Patch[j].Thickness) * scale
		}
	}
	s.T = s.rows[len(s.rows)-1].y + s.rows[len(s.rows)-1].dy
}

// geometric returns n distances that grow in geometric progression to the whole,
// the first of them about h.
func geometric(h, whole float64, n int) []float64 {
	lo, hi := 1.0, 1e3
	for range 80 {
		q := (lo + hi) / 2
		if h*(math.Pow(q, float64(n))-1)/(q-1) > whole {
			hi = q
		} else {
			lo = q
		}
	}
	q, step, sum := lo, 1.0, 0.0
	list := make([]float64, n)
	for i := range list {
		sum += step
		list[i] = sum
		step *= q
	}
	for i := range list {
		list[i] *= whole / sum
	}
	return list
}

// number gives every unknown its place: within a block from the ground face up,
// so that a row of the matrix reaches back no farther than the same height one
// section earlier; the deflections, which meet all heights, come last.
func (s *sections) number() {
	n, nf := len(s.rows), len(s.far)
	next := 0
	place := func() int { next++; return next - 1 }
	for b := range nf + n + 1 + nf {
		k := block{start: next, midU: -1, midV: -1, vPatch: -1, vParent: -1}
		k.patch, k.parent = held(n+1), held(n+1)
		j := b - nf
		switch {
		case b == 0: // the parent's far end: held along the load, from turning and across
		case b == 2*nf+n: // the patch's far end: pulled along the load, held from turning
			u := place()
			for i := range k.patch {
				k.patch[i] = u
			}
			k.vPatch = place()
		default:
			if j >= 0 {
				for i := 0; i <= min(j, n); i++ {
					k.patch[i] = place()
				}
			}
			if j >= 0 && j <= n {
				k.midU, k.midV = place(), place()
			}
			if j <= n {
				for i := max(j, 0); i <= n; i++ {
					k.parent[i] = place()
				}
				k.vParent = place()
			}
			if j >= 0 {
				k.vPatch = place()
			}
		}
		k.last = next
		s.blocks = append(s.blocks, k)
	}
	s.size = next
}

func held(n int) []int {
	list := make([]int, n)
	for i := range list {
		list[i] = -1
	}
	return list
}

// envelope returns, for every unknown, the first unknown it is coupled to.
func (s *sections) envelope() []int {
	first := make([]int, s.size)
	nf, n := len(s.far), len(s.rows)
	for b, k := range s.blocks {
		if b == 0 {
			continue
		}
		prev := s.blocks[b-1]
		for i := k.start; i < k.last; i++ {
			first[i] = prev.start // deflections, and whatever isn't told below
		}
		if b == len(s.blocks)-1 {
			continue
		}
		j := b - nf
		for i, u := range k.patch {
			if u < 0 || j < 1 {
				continue
			}
			first[u] = prev.patch[max(i-1, 0)]
		}
		for i, u := range k.parent {
			if u < 0 || b == 1 || i == j {
				continue
			}
			first[u] = prev.parent[max(i-1, 0, min(j-1, n))]
		}
		if j >= 1 && j <= n {
			edge := prev.patch[j-1]
			first[k.midU], first[k.midV], first[k.parent[j]] = edge, edge, edge
		}
	}
	return first
}

// x places the sections: the parent's, and the patch's w further on.
func (s *sections) place(b int) float64 {
	nf, n := len(s.far), len(s.rows)
	half := s.R * s.T / 2
	switch j := b - nf; {
	case j < 0:
		return -half - s.far[-j-1]
	case j < n:
		return s.R*s.rows[j].y - half
	case j == n:
		return half
	default:
		return half + s.far[j-n-1]
	}
}

// solve finds the displacements under the force P per width at the patch's far end.
func (s *sections) solve(P float64) error {
	k := newSkyline(s.envelope())
	nf, n := len(s.far), len(s.rows)
	for b := range len(s.blocks) - 1 {
		p, q := &s.blocks[b], &s.blocks[b+1]
		dx := s.place(b+1) - s.place(b)
		j := b - nf
		if j < n { // parent, above the slope
			for i := max(j+1, 0); i < n; i++ {
				r := s.rows[i]
				cell(k, r.parent, dx, r.dy, [6]int{p.parent[i], p.parent[i+1], q.parent[i], q.parent[i+1], p.vParent, q.vParent})
			}
		}
		if j >= 0 { // patch, below it
			for i := range min(j, n) {
				r := s.rows[i]
				cell(k, r.patch, dx, r.dy, [6]int{p.patch[i], p.patch[i+1], q.patch[i], q.patch[i+1], p.vPatch, q.vPatch})
			}
		}
		if j >= 0 && j < n {
			r := s.rows[j]
			wedge(k, r.parent, dx, r.dy, p.parent[j+1], q.parent[j+1], p.parent[j], p.parent[j+1], p.vParent, q.vParent)
			wedge(k, r.patch, dx, r.dy, p.patch[j], q.patch[j], q.patch[j], q.patch[j+1], p.vPatch, q.vPatch)
			s.glue(k, j)
		}
	}
	s.x = make([]float64, s.size)
	s.x[s.blocks[len(s.blocks)-1].patch[0]] = P
	return k.solve(s.x)
}

// cell adds a rectangle dx by dy of an adherend: stretch E u,x^2, even along x and
// linear in y, and shear G (u,y + v,x)^2 at its middle (one point, because a
// straight v can't follow the rest and the cell would lock). Nodes: lower and
// upper left, lower and upper right, then the deflections left and right.
func cell(k *skyline, m layerStiffness, dx, dy float64, at [6]int) {
	a := m.E * dy / (6 * dx)
	for l := range 2 {
		for r := range 2 {
			sign := a
			if l != r {
				sign = -a
			}
			lo, lo2, hi, hi2 := at[2*l], at[2*r], at[2*l+1], at[2*r+1]
			if l <= r {
				k.add(lo, lo2, 2*sign)
				k.add(hi, hi2, 2*sign)
			}
			if lo == hi2 { // the far end, where all heights are one
				sign *= 2
			}
			k.add(lo, hi2, sign)
		}
	}
	h, d := 0.5/dy, 1/dx
	square(k, m.G*dx*dy, at[:], []float64{-h, h, -h, h, -d, d})
}

// wedge adds the triangle beside the slope: stretch between the nodes a0, a1 of its
// level side, shear between b0, b1 of its upright side.
func wedge(k *skyline, m layerStiffness, dx, dy float64, a0, a1, b0, b1, v0, v1 int) {
	area := dx * dy / 2
	square(k, m.E*area, []int{a0, a1}, []float64{-1 / dx, 1 / dx})
	square(k, m.G*area, []int{b0, b1, v0, v1}, []float64{-1 / dy, 1 / dy, -1 / dx, 1 / dx})
}

// square adds the energy c (B x)^2 / 2.
func square(k *skyline, c float64, at []int, B []float64) {
	for i := range at {
		for j := i; j < len(at); j++ {
			if at[i] == at[j] && i != j {
				k.add(at[i], at[j], 2*c*B[i]*B[j])
				continue
			}
			k.add(at[i], at[j], c*B[i]*B[j])
		}
	}
}
