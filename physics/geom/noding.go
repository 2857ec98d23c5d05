package geom

import (
	"cmp"
	"errors"
	"math"
	"math/bits"
	"slices"
)

// The overlay works on whole numbers of Grid, in which the side of a line a
// point lies on is told exactly: coordinates stay below 2^29 (MaxCoordinate
// plus an offset as large), so twice a cross product of differences stays below
// 2^63.

// vertex is a corner of a closed line on the grid, and stands for the edge from
// it to the next one.
type vertex struct {
	x, y int32
	next int32 // where the edge ends
	node bool  // other lines meet here, so what lies left and right may change
	new  bool  // the edge is not yet tested against the others
}

// mesh is a set of closed lines, each of one operand of the operation.
type mesh struct {
	v     []vertex
	loops []loop

	boxes []box // kept from one round to the next, as are the others
	slabs []int32
	fresh []int32
	pairs []pair
}

type loop struct {
	first, n int32 // its vertices stand together in mesh.v
	operand  int8
}

func snap(x float64) int32 { return int32(math.Round(x * perUnit)) }

func unsnap(x int32) float64 { return float64(x) / perUnit }

// add puts in a ring, dropping repeated points.
func (m *mesh) add(r Ring, operand int8) {
	first := int32(len(m.v))
	m.v = slices.Grow(m.v, len(r))
	for _, p := range r {
		v := vertex{x: snap(p.X), y: snap(p.Y), new: true}
		if n := len(m.v); n > int(first) && m.v[n-1].x == v.x && m.v[n-1].y == v.y {
			continue
		}
		v.next = int32(len(m.v)) + 1
		m.v = append(m.v, v)
	}
	for n := len(m.v); n > int(first)+1 && m.v[n-1].x == m.v[first].x && m.v[n-1].y == m.v[first].y; n = len(m.v) {
		m.v = m.v[:n-1]
	}
	n := int32(len(m.v)) - first
	if n < 3 {
		m.v = m.v[:first]
		return
	}
	m.v[len(m.v)-1].next = first
	m.loops = append(m.loops, loop{first, n, operand})
}

// side tells where p lies of the directed line a-b: positive left, 0 on it.
func side(a, b, p *vertex) int64 {
	return int64(b.x-a.x)*int64(p.y-a.y) - int64(b.y-a.y)*int64(p.x-a.x)
}

// split is a point to be put into an edge; at is its way along the edge.
type split struct {
	edge int32
	x, y int32
	at   int64
}

var errUnsettled = errors.New("the outline's edges cross too closely to be told apart")

// maxRounds bounds node. Rounding a crossing to the grid bends two edges by
// half a step and may make them cross a third; a few rounds settle that.
const maxRounds = 40

// node splits edges until they meet in common vertices only, and marks these.
// Crossings move to the nearest grid point, and an edge that passes a vertex
// within half a step is led through it: else two edges that run all but
// together would cross again beside each crossing that is rounded.
func (m *mesh) node() error {
	for range maxRounds {
		splits := m.meet()
		if len(splits) == 0 {
			return nil
		}
		m.insert(splits)
	}
	return errUnsettled
}

// meet finds where edges cross or touch.
func (m *mesh) meet() []split {
	var splits []split
	for _, p := range m.near() {
		splits = m.pair(p.e, p.f, splits)
	}
	return splits
}

type pair struct{ e, f int32 }

// box is the extent of an edge, x counted from the leftmost vertex of all.
type box struct {
	x0, x1, y0, y1 int32
	edge           int32
	new            bool
}

// near returns the pairs of edges, at least one of them new, whose extents
// overlap. The plane is cut into about as many upright slabs as there are
// edges; the edges are put in order of the slab they start in, and each is held
// against those that start no later than in the slab it ends in.
func (m *mesh) near() []pair {
	n := len(m.v)
	if n == 0 {
		return nil
	}
	low, high := m.v[0].x, m.v[0].x
	for i := range m.v {
		low, high = min(low, m.v[i].x), max(high, m.v[i].x)
	}
	shift := max(0, bits.Len32(uint32(high-low)/uint32(n)))
	at := sized(&m.slabs, int((high-low)>>shift)+2) // where the edges of each slab go
	clear(at)
	for i := range m.v {
		a := &m.v[i]
		at[(min(a.x, m.v[a.next].x)-low)>>shift+1]++
	}
	for i := range len(at) - 1 {
		at[i+1] += at[i]
	}
	boxes := sized(&m.boxes, n)
	for i := range m.v {
		a := &m.v[i]
		b := &m.v[a.next]
		e := box{
			x0: min(a.x, b.x) - low, x1: max(a.x, b.x) - low,
			y0: min(a.y, b.y), y1: max(a.y, b.y),
			edge: int32(i), new: a.new,
		}
		to := &at[e.x0>>shift]
		boxes[*to] = e
		*to++
	}
	fresh := m.fresh[:0] // places of new edges
	for i := range boxes {
		if boxes[i].new {
			fresh = append(fresh, int32(i))
		}
	}
	m.fresh = fresh
	out := slices.Grow(m.pairs[:0], 2*n)
	for i := range boxes {
		e := boxes[i]
		last := e.x1 >> shift
		if e.new {
			fresh = fresh[1:]
			for j := i + 1; j < n; j++ {
				f := &boxes[j]
				if f.x0>>shift > last {
					break
				}
				if f.y0 <= e.y1 && e.y0 <= f.y1 && f.x0 <= e.x1 && e.x0 <= f.x1 {
					out = append(out, pair{e.edge, f.edge})
				}
			}
			continue
		}
		for _, j := range fresh {
			f := &boxes[j]
			if f.x0>>shift > last {
				break
			}
			if f.y0 <= e.y1 && e.y0 <= f.y1 && f.x0 <= e.x1 && e.x0 <= f.x1 {
				out = append(out, pair{e.edge, f.edge})
			}
		}
	}
	m.pairs = out
	return out
}

// sized returns *s with n elements of whatever value, made anew if too short.
func sized[T any](s *[]T, n int) []T {
	if cap(*s) < n {
		*s = make([]T, n+n/4)
	}
	*s = (*s)[:n]
	return *s
}

// pair adds the splits that edges e and f ask of each other.
func (m *mesh) pair(e, f int32, splits []split) []split {
	a, c := &m.v[e], &m.v[f]
	switch {
	case a.next == f:
		return m.corner(e, f, splits)
	case c.next == e:
		return m.corner(f, e, splits)
	}
	b, d := &m.v[a.next], &m.v[c.next]
	le, lf := reach(a, b), reach(c, d)
	sc, sd := 2*side(a, b, c), 2*side(a, b, d)
	if sc > le && sd > le || sc < -le && sd < -le {
		return splits
	}
	sa, sb := 2*side(c, d, a), 2*side(c, d, b)
	if sa > lf && sb > lf || sa < -lf && sb < -lf {
		return splits
	}
	touched := false
	for _, t := range [4]struct {
		side, reach int64
		edge, at    int32
	}{{sc, le, e, f}, {sd, le, e, c.next}, {sa, lf, f, e}, {sb, lf, f, a.next}} {
		if -t.reach <= t.side && t.side <= t.reach {
			var on bool
			splits, on = m.touch(t.edge, t.at, splits)
			touched = touched || on
		}
	}
	if touched || (sc > 0) == (sd > 0) || (sa > 0) == (sb > 0) {
		return splits
	}
	t := float64(sa) / (float64(sa) - float64(sb))
	x := a.x + int32(math.Round(t*float64(b.x-a.x)))
	y := a.y + int32(math.Round(t*float64(b.y-a.y)))
	splits = m.at(e, x, y, splits)
	return m.at(f, x, y, splits)
}

// reach is the greater extent of an edge. A point stands within half a step of
// the edge, measured along the lesser extent, while twice its side is no
// greater.
func reach(a, b *vertex) int64 {
	return max(int64(b.x-a.x), int64(a.x-b.x), int64(b.y-a.y), int64(a.y-b.y))
}

// corner looks at two edges in a row, e ending where f starts: they have more
// in common than that point only where the line doubles back.
func (m *mesh) corner(e, f int32, splits []split) []split {
	a, b, c := &m.v[e], &m.v[f], &m.v[m.v[f].next]
	if side(a, b, c) != 0 || along(b, a, c) <= 0 {
		return splits
	}
	b.node = true
	splits, _ = m.touch(e, b.next, splits)
	splits, _ = m.touch(f, e, splits)
	return splits
}

// along returns the dot product (b-a)·(c-a).
func along(a, b, c *vertex) int64 {
	return int64(b.x-a.x)*int64(c.x-a.x) + int64(b.y-a.y)*int64(c.y-a.y)
}

// touch marks vertex i, known to stand by the line of edge e, if it stands by
// the edge itself, and has e split there.
func (m *mesh) touch(e, i int32, splits []split) (_ []split, on bool) {
	a, b, p := &m.v[e], &m.v[m.v[e].next], &m.v[i]
	if t := along(a, b, p); t < 0 || t > along(a, b, b) {
		return splits, false
	}
	p.node = true
	return m.at(e, p.x, p.y, splits), true
}

// at has edge e split at a grid point on or beside it, or marks the end that it
// is.
func (m *mesh) at(e, x, y int32, splits []split) []split {
	a := &m.v[e]
	b := &m.v[a.next]
	switch {
	case a.x == x && a.y == y:
		a.node = true
	case b.x == x && b.y == y:
		b.node = true
	default:
		return append(splits, split{e, x, y, along(a, b, &vertex{x: x, y: y})})
	}
	return splits
}

// insert rebuilds the lines with the splits as vertices.
func (m *mesh) insert(splits []split) {
	slices.SortFunc(splits, func(s, t split) int {
		if s.edge != t.edge {
			return int(s.edge - t.edge)
		}
		return cmp.Compare(s.at, t.at)
	})
	out := make([]vertex, 0, len(m.v)+len(splits))
	k := 0
	for l := range m.loops {
		lp := &m.loops[l]
		first := int32(len(out))
		push := func(v vertex) {
			if n := len(out); n > int(first) && out[n-1].x == v.x && out[n-1].y == v.y {
				out[n-1].node = true
				out[n-1].new = out[n-1].new || v.new
				return
			}
			v.next = int32(len(out)) + 1
			out = append(out, v)
		}
		for i := lp.first; i < lp.first+lp.n; i++ {
			v := m.v[i]
			v.new = k < len(splits) && splits[k].edge == i
			push(v)
			for ; k < len(splits) && splits[k].edge == i; k++ {
				push(vertex{x: splits[k].x, y: splits[k].y, node: true, new: true})
			}
		}
		out[len(out)-1].next = first
		lp.first, lp.n = first, int32(len(out))-first
	}
	m.v = out
}
