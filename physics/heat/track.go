package heat

import (
	"math"
	"slices"
)

// track keeps what a run must remember: the state at every step, for questions
// asked later, and the peaks and the energy, found on the way. Between two states
// every quantity runs along the scheme's own cubic.
type track struct {
	t      []float64
	T, a   []float64 // row by row, one row for each t
	T0, T1 []float64 // slopes over the step that ends in the row, at its two ends
	a0, a1 []float64

	peak, peakT   []float64 // K and s, by node
	lost          float64   // J/m2
	through       float64   // J/m2, all that passed the faces either way
	sourced       float64
	steepest      float64 // largest difference of degree between neighbours
	steepestAfter float64 // s
}

func (k *track) begin(w *Workspace) {
	k.t = k.t[:0]
	for _, v := range []*[]float64{&k.T, &k.a, &k.T0, &k.T1, &k.a0, &k.a1} {
		*v = (*v)[:0]
	}
	n := len(w.m.cap)
	k.peak, k.peakT = resize(k.peak, n), resize(k.peakT, n)
	copy(k.peak, w.m.start)
	k.lost, k.through, k.sourced, k.steepest, k.steepestAfter = 0, 0, 0, 0, 0
	k.mark(w, 0)
}

// mark records the state at t; after a jump it is the second at that time.
func (k *track) mark(w *Workspace, t float64) {
	k.t = append(k.t, t)
	k.T, k.a = append(k.T, w.now.T...), append(k.a, w.now.a...)
	_, _ = k.slopes(&k.T0, &k.T1, len(w.now.T))
	_, _ = k.slopes(&k.a0, &k.a1, len(w.now.a))
	for i, T := range w.now.T {
		if T > k.peak[i] {
			k.peak[i], k.peakT[i] = T, t
		}
	}
}

// slopes adds a row of zeros to both and returns the rows.
func (k *track) slopes(v0, v1 *[]float64, n int) (d0, d1 []float64) {
	add := func(v *[]float64) []float64 {
		m := len(*v)
		*v = slices.Grow(*v, n)[:m+n]
		row := (*v)[m:]
		clear(row)
		return row
	}
	return add(v0), add(v1)
}

// add records the state that a step from t0 has reached and looks at what lies
// between.
func (k *track) add(w *Workspace, t0, t1 float64) {
	n, np := len(w.m.cap), len(w.m.heat)
	old := len(k.t) - 1
	k.mark(w, t1)
	T0, T1 := k.T[old*n:(old+1)*n], k.T[(old+1)*n:]
	d0, d1 := k.T0[(old+1)*n:], k.T1[(old+1)*n:]
	bend(T0, T1, d0, d1, &w.U)
	a0, a1 := k.a0[(old+1)*np:], k.a1[(old+1)*np:]
	bend(k.a[old*np:(old+1)*np], k.a[(old+1)*np:], a0, a1, &w.V)
	for p := range a0 {
		// A degree doesn't fall within a step either: a cubic with slopes of 0 to 3
		// times the mean one is monotone (Fritsch and Carlson 1980; from memory).
		most := 3 * (k.a[(old+1)*np+p] - k.a[old*np+p])
		a0[p], a1[p] = min(max(a0[p], 0), most), min(max(a1[p], 0), most)
	}
	for i := range T1 {
		// A maximum lies within where the slope turns from up to down.
		if d0[i] > 0 && d1[i] < 0 && math.Max(T0[i]+d0[i], T1[i]-d1[i]) > k.peak[i] {
			z := top(T0[i], d0[i], T1[i], d1[i])
			if T := hermite(T0[i], d0[i], T1[i], d1[i], z); T > k.peak[i] {
				k.peak[i], k.peakT[i] = T, t0+z*(t1-t0)
			}
		}
	}
	for i := range w.m.blocks {
		b := &w.m.blocks[i]
		for p := b.from + 1; p < b.to; p++ {
			if d := math.Abs(w.now.a[p] - w.now.a[p-1]); d > k.steepest {
				k.steepest, k.steepestAfter = d, t1
			}
		}
	}
	k.account(w, t0, t1)
}

// bend sets the slopes of the scheme's cubic from its stages.
func bend(y0, y1, d0, d1 []float64, u *[stages][]float64) {
	u0, u1, u2, u3, u4 := u[0], u[1], u[2], u[3], u[4]
	for i := range d0 {
		r := y1[i] - y0[i]
		D := denseD[0]*u0[i] + denseD[1]*u1[i] + denseD[2]*u2[i] + denseD[3]*u3[i]
		E := denseE[0]*u0[i] + denseE[1]*u1[i] + denseE[2]*u2[i] + denseE[3]*u3[i] + denseE[4]*u4[i]
		d0[i] = r + D
		d1[i] = r - D - E
	}
}

// gauss3 is Gauss-Legendre's rule of three points on [0, 1].
var gauss3 = [3]struct{ z, w float64 }{
	{0.5 - math.Sqrt(0.15), 5. / 18}, {0.5, 8. / 18}, {0.5 + math.Sqrt(0.15), 5. / 18},
}

// account adds up what the faces and the sources pass in a step: the faces by the
// scheme, the sources, which are known, by a rule of their own.
func (k *track) account(w *Workspace, t0, t1 float64) {
	for i, f := range []*Face{&w.first, &w.last} {
		if f.kind == insulated {
			continue
		}
		out := w.Q[i][stages-1]
		for j, c := range stageA[stages-1] {
			out += c * w.Q[i][j]
		}
		k.lost += out
		k.through += math.Abs(out)
	}
	h := t1 - t0
	for _, s := range w.m.sources {
		for _, q := range gauss3 {
			k.sourced += q.w * h * s.volume * s.f(w.m.x[s.node], t0+q.z*h)
		}
	}
}

// hermite returns the cubic through y0 and y1 with slopes d0 and d1, over a unit
// interval, at z.
func hermite(y0, d0, y1, d1, z float64) float64 {
	r := y1 - y0
	return y0 + z*(d0+z*((3*r-2*d0-d1)+z*(d0+d1-2*r)))
}

// top returns where that cubic has its maximum, for d0 > 0 > d1.
func top(y0, d0, y1, d1 float64) float64 {
	r := y1 - y0
	// slope d0 + 2 b z + 3 c z^2
	b, c := 3*r-2*d0-d1, d0+d1-2*r
	root := math.Sqrt(math.Max(0, b*b-3*c*d0))
	// The root at which the slope falls, written so that c = 0 needs no case.
	if z := d0 / (root - b); z > 0 && z < 1 {
		return z
	}
	return d0 / (d0 - d1)
}
