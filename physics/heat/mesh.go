package heat

import (
	"math"

	"scarfwright/physics/si"
)

// A mesh is the stack cut into nodes. Nodes lie on both faces and on every
// interface, and each holds half a cell to either side: face and interface
// temperatures are unknowns of their own, not read off by extrapolation, and heat
// that leaves one node enters the next.
//
// A node on an interface carries one degree for each of its two sides, for the
// materials on them cure each at its own rate.
type mesh struct {
	x   []float64 // m, depth of the node
	cap []float64 // J/(m2 K)
	g   []float64 // W/(m2 K), from node i to i+1

	blocks  []block   // the reactive layers
	heat    []float64 // J/m2 of each point from its quiet degree to 1
	sources []sourced

	start, seed []float64 // K by node, degree by point
	layerEnd    []int     // last node of each layer; it is the first of the next
}

// A block is a reactive layer: its points from..to sit on the nodes node.. .
type block struct {
	*Reaction
	from, to, node, layer int
	breaks                []float64
}

// A sourced node takes in f over its volume.
type sourced struct {
	node   int
	volume float64 // m3/m2
	f      func(x, t float64) float64
}

// rebuild fills the mesh for a slab, reusing its memory.
func (m *mesh) rebuild(s *Slab, cells []int) {
	n := 1
	for _, c := range cells {
		n += c
	}
	m.x, m.cap, m.start = resize(m.x, n), resize(m.cap, n), resize(m.start, n)
	m.g = resize(m.g, n-1)
	m.blocks, m.sources = m.blocks[:0], m.sources[:0]
	m.heat, m.seed, m.layerEnd = m.heat[:0], m.seed[:0], m.layerEnd[:0]

	first, depth := 0, 0.0
	held := 0.0 // heat capacity so far on the shared node, to weigh its start
	for i := range s.Layers {
		l := &s.Layers[i]
		c := cells[i]
		dx := float64(l.Thickness) / float64(c)
		half := float64(l.Density) * float64(l.SpecificHeat) * dx / 2
		T := l.Start
		if !T.Given() {
			T = s.Start
		}
		for j := 0; j <= c; j++ {
			k := first + j
			m.x[k] = depth + dx*float64(j)
			if j < c {
				m.g[k] = float64(l.Conductivity) / dx
				m.cap[k] += half
				m.cap[k+1] += half
			}
			if j == 0 && i > 0 {
				// Two bodies brought together: the node on the seam starts at the mean
				// that keeps their heat.
				m.start[k] = (held*m.start[k] + half*float64(T)) / (held + half)
			} else {
				m.start[k] = float64(T)
			}
			if l.Source != nil {
				m.sources = append(m.sources, sourced{k, dx * ends(j, c), l.Source})
			}
		}
		held = half
		if l.Reaction != nil {
			from := len(m.heat)
			m.blocks = append(m.blocks, block{l.Reaction, from, from + c + 1, first, i, l.Reaction.breaks()})
			for j := 0; j <= c; j++ {
				m.heat = append(m.heat, float64(l.Density)*dx*ends(j, c)*float64(l.Reaction.Heat))
				m.seed = append(m.seed, l.Seed)
			}
		}
		first += c
		depth += float64(l.Thickness)
		m.layerEnd = append(m.layerEnd, first)
	}
	m.x[n-1] = depth
}

// rebuildBody fills the mesh for a body of one temperature, such as a cup: its
// values are totals, in J/K and J, not per square metre.
func (m *mesh) rebuildBody(capacity, heat, start, seed float64, r *Reaction) {
	*m = mesh{
		x: []float64{0}, cap: []float64{capacity}, g: []float64{},
		start: []float64{start}, layerEnd: []int{0},
	}
	if r != nil {
		m.blocks = []block{{r, 0, 1, 0, 0, r.breaks()}}
		m.heat, m.seed = []float64{heat}, []float64{seed}
	}
}

// ends returns the share of a cell's thickness that node j of c cells holds.
func ends(j, c int) float64 {
	if j == 0 || j == c {
		return 0.5
	}
	return 1
}

// resize returns s with n elements, all zero.
func resize(s []float64, n int) []float64 {
	if cap(s) < n {
		return make([]float64, n)
	}
	s = s[:n]
	clear(s)
	return s
}

// firstNode returns the first node of a layer.
func (m *mesh) firstNode(layer int) int {
	if layer == 0 {
		return 0
	}
	return m.layerEnd[layer-1]
}

// place returns the node at or before a depth and how far on to the next one the
// depth lies, 0 to 1. Depths beyond a face count as the face.
func (m *mesh) place(depth si.Length) (node int, on float64) {
	d, n := float64(depth), len(m.x)
	if n == 1 || d <= 0 {
		return 0, 0
	}
	low, high := 0, n-1
	for high-low > 1 {
		if mid := (low + high) / 2; m.x[mid] <= d {
			low = mid
		} else {
			high = mid
		}
	}
	return low, math.Min(1, (d-m.x[low])/(m.x[high]-m.x[low]))
}

// point returns the block and the point that carry the degree on the cell behind
// a node, or false where that cell is inert.
func (m *mesh) point(node int) (p int, ok bool) {
	for _, b := range m.blocks {
		if last := b.node + b.to - b.from - 1; node >= b.node && (node < last || last == b.node) {
			return b.from + node - b.node, true
		}
	}
	return 0, false
}
