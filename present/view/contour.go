package view

import (
	"math"

	"scarfwright/present/drawing"
)

// grid is a field on a regular net: value(i, j) stands at at(i, j), i along and j up.
// NaN counts as below everything.
type grid struct {
	nx, ny int
	values []float64
	at     func(x, y float64) drawing.Point // of fractional numbers of the net
}

func (g grid) value(i, j int) float64 {
	if i < 0 || j < 0 || i >= g.nx || j >= g.ny {
		return math.Inf(-1)
	}
	if v := g.values[j*g.nx+i]; !math.IsNaN(v) {
		return v
	}
	return math.Inf(-1)
}

// highest returns the largest value.
func (g grid) highest() float64 {
	most := math.Inf(-1)
	for _, v := range g.values {
		if v > most {
			most = v
		}
	}
	return most
}

// above returns the rings that bound where the field is at least a level, by
// marching squares with straight lines between the net's points. The net's border
// closes them: outside it the field is taken as below everything, and a ring runs
// along the border itself.
func (g grid) above(level float64) [][]drawing.Point {
	// An edge of a cell is named by the cell and its side; each crossed edge is
	// entered once and left once, with the high side to the left.
	type edge struct {
		i, j     int
		vertical bool // from (i, j) to (i, j+1), else to (i+1, j)
	}
	next := map[edge]edge{}
	for j := -1; j < g.ny; j++ {
		for i := -1; i < g.nx; i++ {
			v := [4]float64{g.value(i, j), g.value(i+1, j), g.value(i+1, j+1), g.value(i, j+1)} // round, from below left
			sides := [4]edge{{i, j, false}, {i + 1, j, true}, {i, j + 1, false}, {i, j, true}}  // side k from corner k to k+1
			var in, out []int
			for k := range 4 {
				a, b := v[k] >= level, v[(k+1)%4] >= level
				switch {
				case a && !b:
					in = append(in, k) // going round, high then low: the boundary comes in here
				case !a && b:
					out = append(out, k)
				}
			}
			switch len(in) {
			case 1:
				next[sides[in[0]]] = sides[out[0]]
			case 2: // a saddle: the mean says whether the high corners join
				joined := (v[0]+v[1]+v[2]+v[3])/4 >= level
				for n, k := range in {
					to := out[0]
					// Joined, a boundary cuts off the low corner k+1; else the high one, k.
					want := (k + 1) % 4
					if !joined {
						want = (k + 3) % 4
					}
					if out[1] == want {
						to = out[1]
					} else if out[0] != want {
						to = out[n]
					}
					next[sides[k]] = sides[to]
				}
			}
		}
	}
	cross := func(e edge) drawing.Point {
		a := g.value(e.i, e.j)
		x, y := float64(e.i), float64(e.j)
		dx, dy := 1.0, 0.0
		if e.vertical {
			dx, dy = 0, 1
		}
		b := g.value(e.i+int(dx), e.j+int(dy))
		var t float64
		switch {
		case math.IsInf(a, -1):
			t = 1
		case math.IsInf(b, -1):
			t = 0
		default:
			t = (level - a) / (b - a)
		}
		return g.at(x+t*dx, y+t*dy)
	}
	var rings [][]drawing.Point
	for len(next) > 0 {
		var start edge
		first := true
		for e := range next { // the least, so that the order is always the same
			if first || e.j < start.j || e.j == start.j && (e.i < start.i || e.i == start.i && !e.vertical && start.vertical) {
				start, first = e, false
			}
		}
		var ring []drawing.Point
		for e := start; ; {
			p := cross(e)
			if n := len(ring); n == 0 || math.Hypot(p.X-ring[n-1].X, p.Y-ring[n-1].Y) > 1e-9 {
				ring = append(ring, p)
			}
			to, ok := next[e]
			if !ok {
				break
			}
			delete(next, e)
			e = to
			if e == start {
				break
			}
		}
		if len(ring) > 2 {
			rings = append(rings, ring)
		}
	}
	return rings
}
