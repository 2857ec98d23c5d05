package panel

import (
	"math"
	"slices"
)

// front is one step of the elimination. The unknowns of the panel are removed in
// the order of a tree: a leaf is an element, whose inner unknowns touch nothing
// else; a branch joins two neighbouring parts of the panel and removes what only
// those two share (nested dissection). What is left at each step is the exact
// stiffness of that part as felt on its rim, a superelement.
//
// a is the dense matrix of the front, row-major, lower triangle, with the right-hand
// side as one more row. The first cut rows are eliminated here. The part beyond
// them, once reduced, is what the parent adds in; it stays, so that a change in one
// zone touches only the fronts above that zone.
type front struct {
	element  int      // of a leaf, else -1
	kids     [2]int   // of a branch
	into     [2][]int // place of each row left by a kid in this front
	rows     []int    // the unknowns, first the eliminated ones
	local    []int32  // of a leaf: row of each unknown of the element, -1 if held
	cut      int
	a        []float64
	pieces   int  // leaves below
	dirty    bool // of a leaf: its laminate has changed
	negative int  // pivots
}

// tree is the elimination order, children before parents; the root is the last.
type tree struct {
	mesh    *mesh
	fronts  []front
	leaf    []int // of each element
	unknown []int // number of each degree of freedom (5 node + i), -1 if held
	free    int
}

// newTree plans the elimination for a mesh with some unknowns held.
func newTree(m *mesh, held []bool) *tree {
	t := &tree{mesh: m, unknown: make([]int, len(held)), leaf: make([]int, len(m.elements))}
	for i, h := range held {
		t.unknown[i] = -1
		if !h {
			t.unknown[i] = t.free
			t.free++
		}
	}
	nodes := make([]int, 3*len(m.at))
	p := &planner{mesh: m, tree: t, total: nodes[:len(m.at)],
		part: nodes[len(m.at) : 2*len(m.at)], taken: nodes[2*len(m.at):]}
	all := make([]int, len(m.elements))
	for i, e := range m.elements {
		all[i] = i
		for _, n := range e.nodes {
			p.total[n]++
		}
	}
	p.plan(all)
	t.order()
	return t
}

// order sorts what each front leaves by the time of its elimination, so that rows
// keep their order from kid to parent, and notes where they go.
func (t *tree) order() {
	rank := make([]int, t.free)
	n := 0
	for i := range t.fronts {
		f := &t.fronts[i]
		for _, r := range f.rows[:f.cut] {
			rank[r] = n
			n++
		}
	}
	place := make([]int, t.free) // of each unknown in the front at hand
	for i := range t.fronts {
		f := &t.fronts[i]
		slices.SortFunc(f.rows[f.cut:], func(a, b int) int { return rank[a] - rank[b] })
		for i, r := range f.rows {
			place[r] = i
		}
		if f.element >= 0 {
			nodes := t.mesh.elements[f.element].nodes
			f.local = make([]int32, 0, dofs*len(nodes))
			for _, n := range nodes {
				for i := range dofs {
					row := int32(-1)
					if u := t.unknown[dofs*n+i]; u >= 0 {
						row = int32(place[u])
					}
					f.local = append(f.local, row)
				}
			}
			continue
		}
		for k, kid := range f.kids {
			c := &t.fronts[kid]
			f.into[k] = make([]int, 0, len(c.rows)-c.cut)
			for _, r := range c.rows[c.cut:] {
				f.into[k] = append(f.into[k], place[r])
			}
		}
	}
}

// planner keeps, by node, the number of elements there: in all, in the part being
// split, and in the half being filled.
type planner struct {
	mesh               *mesh
	tree               *tree
	total, part, taken []int
}

// plan adds the fronts of a part of the panel and returns the last one's number
// and the nodes on its rim.
func (p *planner) plan(part []int) (number int, rim []int) {
	t := p.tree
	if len(part) == 1 {
		return p.leaf(part[0])
	}
	one, two := p.split(part)
	k0, rim0 := p.plan(one)
	k1, rim1 := p.plan(two)
	p.count(part)
	var inner, outer []int
	for _, n := range slices.Concat(rim0, rim1) {
		switch {
		case p.part[n] == 0: // seen
		case p.part[n] == p.total[n]:
			inner = append(inner, n)
		default:
			outer = append(outer, n)
		}
		p.part[n] = 0
	}
	f := front{element: -1, kids: [2]int{k0, k1}, pieces: t.fronts[k0].pieces + t.fronts[k1].pieces}
	f.rows, f.cut = t.number(inner, outer)
	t.fronts = append(t.fronts, f)
	return len(t.fronts) - 1, outer
}

func (p *planner) leaf(e int) (number int, rim []int) {
	t := p.tree
	var inner []int
	nodes := p.mesh.elements[e].nodes
	for _, n := range nodes {
		if p.total[n] == 1 {
			inner = append(inner, n)
		} else {
			rim = append(rim, n)
		}
	}
	f := front{element: e, pieces: 1}
	f.rows, f.cut = t.number(inner, rim)
	t.leaf[e] = len(t.fronts)
	t.fronts = append(t.fronts, f)
	return len(t.fronts) - 1, rim
}

// count sets p.part for a part of the panel.
func (p *planner) count(part []int) {
	clear(p.part)
	for _, e := range part {
		for _, n := range p.mesh.elements[e].nodes {
			p.part[n]++
		}
	}
}

// number lists the free unknowns of the nodes, and how many belong to the inner.
func (t *tree) number(inner, outer []int) (rows []int, cut int) {
	for k, nodes := range [][]int{inner, outer} {
		for _, n := range nodes {
			for i := range dofs {
				if u := t.unknown[dofs*n+i]; u >= 0 {
					rows = append(rows, u)
				}
			}
		}
		if k == 0 {
			cut = len(rows)
		}
	}
	return rows, cut
}

// split halves a part along the pattern of the mesh or along x or y, where the
// fewest nodes are shared between the halves.
func (p *planner) split(part []int) (one, two []int) {
	centre := func(e int) vec {
		n := p.mesh.elements[e].nodes
		return p.mesh.at[n[0]].add(p.mesh.at[n[len(n)-1]]).scale(0.5)
	}
	keys := []func(e int) float64{
		func(e int) float64 { return p.mesh.elements[e].ring*1e3 + p.mesh.elements[e].sector },
		func(e int) float64 { return p.mesh.elements[e].sector*1e3 + p.mesh.elements[e].ring },
		func(e int) float64 { return centre(e).x },
		func(e int) float64 { return centre(e).y },
	}
	p.count(part)
	best := math.Inf(1)
	n := len(part)
	for _, key := range keys {
		order := slices.Clone(part)
		slices.SortStableFunc(order, func(a, b int) int {
			if d := key(a) - key(b); math.Abs(d) > 1e-9 {
				return int(math.Copysign(1, d))
			}
			return 0
		})
		clear(p.taken)
		shared := 0
		for k, e := range order[:n-1] {
			for _, v := range p.mesh.elements[e].nodes {
				if p.taken[v] == 0 && p.part[v] > 1 {
					shared++ // it has elements on both sides now
				}
				if p.taken[v]++; p.taken[v] == p.part[v] && p.part[v] > 1 {
					shared--
				}
			}
			if k++; 10*min(k, n-k) < 3*n {
				continue
			}
			uneven := math.Abs(float64(2*k-n)) / float64(n)
			if cost := float64(shared) * (1 + uneven); cost < best-1e-9 {
				best = cost
				one, two = slices.Clone(order[:k]), slices.Clone(order[k:])
			}
		}
	}
	return one, two
}
