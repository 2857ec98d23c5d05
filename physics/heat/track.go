package heat

import "math"

// track keeps what a run must remember: the state at every step, for questions
// asked later, and the peaks and the energy, found on the way.
//
// Between two steps a quantity runs along the cubic that has its values and its
// rates of change at both (Hermite). Its error is h^4/384 of the fourth
// derivative: of the scheme's own order.
type track struct {
	t            []float64
	T, dT, a, da []float64 // row by row, one row for each t

	peak, peakT   []float64 // K and s, by node
	lost          float64   // J/m2
	through       float64   // J/m2, all that passed the faces either way
	sourced       float64
	steepest      float64 // largest difference of degree between neighbours
	steepestAfter float64 // s
}

func (k *track) begin(w *Workspace) {
	k.t, k.T, k.dT, k.a, k.da = k.t[:0], k.T[:0], k.dT[:0], k.a[:0], k.da[:0]
	n := len(w.m.cap)
	k.peak, k.peakT = resize(k.peak, n), resize(k.peakT, n)
	copy(k.peak, w.m.start)
	k.lost, k.through, k.sourced, k.steepest, k.steepestAfter = 0, 0, 0, 0, 0
}

// mark records the state as it goes on from t.
func (k *track) mark(w *Workspace, t float64) {
	k.t = append(k.t, t)
	k.T = append(k.T, w.now.T...)
	k.dT = append(k.dT, w.now.dT...)
	k.a = append(k.a, w.now.a...)
	k.da = append(k.da, w.now.da...)
	for i, T := range w.now.T {
		if T > k.peak[i] {
			k.peak[i], k.peakT[i] = T, t
		}
	}
}

// add records the state a step has reached and looks at what lies between.
func (k *track) add(w *Workspace, t0, t1 float64) {
	n := len(w.m.cap)
	old := len(k.t) - 1
	T0, d0 := k.T[old*n:(old+1)*n], k.dT[old*n:(old+1)*n]
	h := t1 - t0
	for i, T := range w.now.T {
		// A maximum lies within where the slope turns from up to down.
		if d0[i] > 0 && w.now.dT[i] < 0 && math.Max(T, T0[i])+h*math.Min(d0[i], -w.now.dT[i]) > k.peak[i] {
			z := top(T0[i], h*d0[i], T, h*w.now.dT[i])
			if top := hermite(T0[i], h*d0[i], T, h*w.now.dT[i], z); top > k.peak[i] {
				k.peak[i], k.peakT[i] = top, t0+z*h
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
	k.account(w, t0, t1, T0, d0)
	k.mark(w, t1)
}

// gauss3 is Gauss-Legendre's rule of three points on [0, 1].
var gauss3 = [3]struct{ z, w float64 }{
	{0.5 - math.Sqrt(0.15), 5. / 18}, {0.5, 8. / 18}, {0.5 + math.Sqrt(0.15), 5. / 18},
}

// account integrates what the faces and the sources pass in a step, along the
// cubics. It is deliberately not the scheme's own sum, which closes by
// construction: this one closes only as well as the steps follow the heat.
func (k *track) account(w *Workspace, t0, t1 float64, T0, d0 []float64) {
	n, h := len(T0), t1-t0
	at := func(i int, z float64) float64 {
		return hermite(T0[i], h*d0[i], w.now.T[i], h*w.now.dT[i], z)
	}
	for _, q := range gauss3 {
		t := t0 + q.z*h
		out := 0.0
		pass := func(flux float64) {
			out += flux
			k.through += q.w * h * math.Abs(flux)
		}
		switch w.first.kind {
		case convective:
			pass(w.first.h * (at(0, q.z) - w.firstT.at(t)))
		case prescribed:
			pass(w.m.g[0] * (at(1, q.z) - at(0, q.z)))
		}
		switch w.last.kind {
		case convective:
			pass(w.last.h * (at(n-1, q.z) - w.lastT.at(t)))
		case prescribed:
			pass(w.m.g[n-2] * (at(n-2, q.z) - at(n-1, q.z)))
		}
		k.lost += q.w * h * out
		for _, s := range w.m.sources {
			k.sourced += q.w * h * s.volume * s.f(w.m.x[s.node], t)
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
