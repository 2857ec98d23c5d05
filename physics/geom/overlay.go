package geom

import (
	"cmp"
	"errors"
	"slices"
)

// An overlay tells which parts of the plane a set of closed lines encloses, by
// winding numbers: how often, counter-clockwise, the lines of an operand go
// round a place.
//
//  1. node splits all edges where they meet (noding.go).
//  2. Between nodes a line is one piece, with one winding number on its left
//     and one on its right, the left greater by one.
//  3. Round a node the numbers follow from each other, so each connected set of
//     pieces needs one number from outside: counted along a line down from its
//     leftmost point.
//  4. Pieces with the wanted region on one side only are its edge; at each node
//     they join so that the region stays to the left.
//
// Steps 2 to 4 work with whole numbers and cannot disagree with each other.

// windings holds the winding number about a place for each of two operands.
type windings [2]int32

// piece is a run of edges from node to node, or a whole line that meets no
// other.
type piece struct {
	first, n int32    // first vertex and number of edges
	from, to int32    // nodes; -1 for a whole line
	turns    windings // left less right: 1 for its operand, sums where lines coincide
	right    windings // winding numbers on the right, from the set's own zero until settled
	set      int32    // connected set, -1 while unknown
	gone     bool     // merged into a coincident piece, or cancelled by one
	used     bool     // traced into a ring
}

// end is one end of a piece at a node, seen as leaving it.
type end struct {
	piece int32
	last  bool   // leaves against the piece's own direction
	to    vertex // next vertex along, gives the direction
}

type overlay struct {
	mesh
	pieces []piece
	nodes  []vertex
	ends   []end   // grouped by node, each group counter-clockwise from just past -x
	group  []int32 // where each node's ends start, and one more
	sets   []windings
}

var errTangled = errors.New("the outline's edges do not close")

// enclosed returns the rings round the region where in holds, outer rings
// counter-clockwise and holes clockwise.
func (m mesh) enclosed(in func(w windings) bool) ([]Ring, error) {
	if err := m.node(); err != nil {
		return nil, err
	}
	o := overlay{mesh: m}
	o.cutPieces()
	if err := o.gatherEnds(); err != nil {
		return nil, err
	}
	o.wind()
	return o.trace(in)
}

// cutPieces cuts the lines at nodes and merges pieces that coincide, which only
// single edges can: any vertex two lines share is a node.
func (o *overlay) cutPieces() {
	nodes := 0
	for i := range o.v {
		if o.v[i].node {
			nodes++
		}
	}
	o.nodes = make([]vertex, 0, nodes)
	o.pieces = make([]piece, 0, nodes+len(o.loops))
	index := make(map[[2]int32]int32, nodes)
	nodeAt := func(i int32) int32 {
		v := o.v[i]
		k, ok := index[[2]int32{v.x, v.y}]
		if !ok {
			k = int32(len(o.nodes))
			index[[2]int32{v.x, v.y}] = k
			o.nodes = append(o.nodes, v)
		}
		return k
	}
	single := make(map[[2]int32]int32, nodes/2) // by lower and higher node
	for _, l := range o.loops {
		var one windings
		one[l.operand] = 1
		start := l.first
		for start < l.first+l.n && !o.v[start].node {
			start++
		}
		if start == l.first+l.n {
			o.pieces = append(o.pieces, piece{first: l.first, n: l.n, from: -1, to: -1, turns: one, set: -1})
			continue
		}
		for i, done := start, false; !done; {
			p := piece{first: i, from: nodeAt(i), turns: one, set: -1}
			for {
				i = o.v[i].next
				p.n++
				done = i == start
				if o.v[i].node {
					break
				}
			}
			p.to = nodeAt(i)
			if p.n > 1 {
				o.pieces = append(o.pieces, p)
				continue
			}
			key := [2]int32{min(p.from, p.to), max(p.from, p.to)}
			k, ok := single[key]
			if !ok {
				single[key] = int32(len(o.pieces))
				o.pieces = append(o.pieces, p)
				continue
			}
			q := &o.pieces[k]
			if q.from == p.from {
				q.turns[l.operand]++
			} else {
				q.turns[l.operand]--
			}
			q.gone = q.turns == windings{}
		}
	}
}

// round returns the ends at a node, counter-clockwise.
func (o *overlay) round(node int32) []end { return o.ends[o.group[node]:o.group[node+1]] }

// gatherEnds puts the ends of pieces in order round their nodes.
func (o *overlay) gatherEnds() error {
	o.group = make([]int32, len(o.nodes)+2)
	for i := range o.pieces {
		if p := &o.pieces[i]; !p.gone && p.from >= 0 {
			o.group[p.from+2]++
			o.group[p.to+2]++
		}
	}
	for k := range o.nodes {
		o.group[k+2] += o.group[k+1]
	}
	o.ends = make([]end, o.group[len(o.nodes)+1])
	put := func(node int32, e end) {
		o.ends[o.group[node+1]] = e
		o.group[node+1]++
	}
	for i := range o.pieces {
		p := &o.pieces[i]
		if p.gone || p.from < 0 {
			continue
		}
		last := p.first
		for range p.n - 1 {
			last = o.v[last].next
		}
		put(p.from, end{int32(i), false, o.v[o.v[p.first].next]})
		put(p.to, end{int32(i), true, o.v[last]})
	}
	for k := range o.nodes {
		at, es := &o.nodes[k], o.round(int32(k))
		slices.SortFunc(es, func(e, f end) int {
			if a, b := sector(at, &e.to), sector(at, &f.to); a != b {
				return a - b
			}
			return cmp.Compare(0, side(at, &e.to, &f.to))
		})
		for i := 1; i < len(es); i++ {
			if sector(at, &es[i-1].to) == sector(at, &es[i].to) && side(at, &es[i-1].to, &es[i].to) == 0 {
				return errTangled
			}
		}
	}
	return nil
}

// sector orders directions coarsely by angle in (-pi, pi]: below, from +x up,
// and -x itself.
func sector(at, to *vertex) int {
	switch x, y := to.x-at.x, to.y-at.y; {
	case y < 0:
		return 0
	case y == 0 && x < 0:
		return 2
	}
	return 1
}

// wind finds the winding numbers right of each piece.
func (o *overlay) wind() {
	seen := make([]bool, len(o.nodes))
	var queue []int32
	for i := range o.pieces {
		first := &o.pieces[i]
		if first.gone || first.set >= 0 {
			continue
		}
		first.set = int32(len(o.sets))
		west := o.westOf(int32(i))
		if first.from >= 0 {
			queue = append(queue[:0], first.from, first.to)
		}
		for len(queue) > 0 {
			k := queue[len(queue)-1]
			queue = queue[:len(queue)-1]
			if seen[k] {
				continue
			}
			seen[k] = true
			es := o.round(k)
			known := slices.IndexFunc(es, func(e end) bool { return o.pieces[e.piece].set >= 0 })
			w := o.left(es[known])
			for j := range es {
				e := es[(known+1+j)%len(es)]
				if p := &o.pieces[e.piece]; p.set < 0 {
					p.set = first.set
					p.right = w // what lies right of the end, walking away
					if e.last {
						p.right = w.plus(p.turns, -1)
					}
					queue = append(queue, p.from, p.to)
					if c := o.westOf(e.piece); before(&o.v[c.at], &o.v[west.at]) {
						west = c
					}
				}
				w = o.left(e)
			}
		}
		o.sets = append(o.sets, o.count(&o.v[west.at]).plus(o.given(west), -1))
	}
	for i := range o.pieces {
		if p := &o.pieces[i]; !p.gone {
			p.right = p.right.plus(o.sets[p.set], 1)
		}
	}
}

// left returns the winding numbers on the left of an end, walking away from
// its node.
func (o *overlay) left(e end) windings {
	p := &o.pieces[e.piece]
	if e.last {
		return p.right
	}
	return p.right.plus(p.turns, 1)
}

func (w windings) plus(t windings, k int32) windings {
	return windings{w[0] + k*t[0], w[1] + k*t[1]}
}

func before(a, b *vertex) bool { return a.x < b.x || a.x == b.x && a.y < b.y }

// westmost is the leftmost vertex of a piece, the lower of two.
type westmost struct {
	piece    int32
	at, prev int32 // the vertex and the one before it
	node     int32 // -1 inside the piece
}

func (o *overlay) westOf(i int32) westmost {
	p := &o.pieces[i]
	w := westmost{piece: i, at: -1, node: -1}
	if p.from >= 0 {
		w.at, w.node = p.first, p.from
	}
	v := p.first
	for k := range p.n {
		prev := v
		v = o.v[v].next
		if w.at < 0 || before(&o.v[v], &o.v[w.at]) {
			w.at, w.prev, w.node = v, prev, -1
			if k == p.n-1 {
				w.node = p.to // -1 for a whole line, whose first vertex is like any
			}
		}
	}
	return w
}

// count returns the winding numbers just left of v, by the edges met going
// down from there. v is the leftmost vertex of its set: its own set's edges
// start no further left, and no other edge touches it.
func (o *overlay) count(v *vertex) windings {
	var out windings
	for _, l := range o.loops {
		for i := l.first; i < l.first+l.n; i++ {
			a, b := &o.v[i], &o.v[o.v[i].next]
			switch {
			case a.x < v.x && v.x <= b.x && side(a, b, v) > 0:
				out[l.operand]++
			case b.x < v.x && v.x <= a.x && side(b, a, v) > 0:
				out[l.operand]--
			}
		}
	}
	return out
}

// given returns the winding numbers the set has been given so far for the place
// just left of its leftmost vertex.
func (o *overlay) given(w westmost) windings {
	if w.node >= 0 {
		// The last end counter-clockwise, or the only one, has that place on its
		// left: no end of this node points towards -x.
		es := o.round(w.node)
		return o.left(es[len(es)-1])
	}
	p := &o.pieces[w.piece]
	v := &o.v[w.at]
	if side(&o.v[w.prev], v, &o.v[v.next]) > 0 {
		return p.right
	}
	return p.right.plus(p.turns, 1)
}

// trace joins the pieces with the region on one side only into rings.
func (o *overlay) trace(in func(w windings) bool) ([]Ring, error) {
	// Which way a piece is walked so that the region lies left: 1 as it runs,
	// -1 against, 0 not at all.
	way := make([]int8, len(o.pieces))
	for i := range o.pieces {
		p := &o.pieces[i]
		if p.gone {
			continue
		}
		left, right := in(p.right.plus(p.turns, 1)), in(p.right)
		switch {
		case left && !right:
			way[i] = 1
		case right && !left:
			way[i] = -1
		}
	}
	var rings []Ring
	line := make([]vertex, 0, len(o.v)+1)
	for i := range o.pieces {
		if way[i] == 0 || o.pieces[i].used {
			continue
		}
		line = line[:0]
		for k := int32(i); ; {
			p, forward := &o.pieces[k], way[k] > 0
			p.used = true
			line = o.walk(line, p, forward)
			if p.from < 0 {
				break
			}
			at := p.to
			if !forward {
				at = p.from
			}
			var ok bool
			if k, ok = o.follow(at, end{piece: k, last: forward}, way); !ok {
				return nil, errTangled
			}
			if k == int32(i) {
				break
			}
			if o.pieces[k].used {
				return nil, errTangled
			}
		}
		if r := tidy(line); r != nil {
			rings = append(rings, r)
		}
	}
	return rings, nil
}

// walk appends the vertices of a piece but its last.
func (o *overlay) walk(line []vertex, p *piece, forward bool) []vertex {
	n := len(line)
	v := p.first
	for range p.n {
		line = append(line, o.v[v])
		v = o.v[v].next
	}
	if !forward {
		line = append(line, o.v[v])
		slices.Reverse(line[n:])
		line = line[:len(line)-1]
	}
	return line
}

// follow returns the piece by which the ring that came to a node goes on: the
// next edge of the region clockwise, so that the region fills the angle between
// and parts that only touch there stay apart. That edge has to lead away.
func (o *overlay) follow(node int32, came end, way []int8) (next int32, ok bool) {
	es := o.round(node)
	k := slices.IndexFunc(es, func(e end) bool { return e.piece == came.piece && e.last == came.last })
	for j := range es {
		e := es[(k-1-j+2*len(es))%len(es)]
		if w := way[e.piece]; w != 0 {
			return e.piece, (w > 0) == !e.last
		}
	}
	return 0, false
}
