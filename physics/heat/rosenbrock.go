package heat

import "math"

// The scheme is a Rosenbrock method of six stages, order 4 with an embedded order
// 3, L-stable and stiffly accurate (G. Steinebach, "Order-reduction of ROW-methods
// for DAEs and method of lines applications", Preprint 1741, TH Darmstadt, 1995;
// constants second-hand, the same in several open codes). It was made for heat
// conduction by lines: with faces that change in time it keeps its order, where
// others drop to 2 or 3. TestTimeOrder measures it.
//
// It solves M y' = f(t, y) by
//
//	(M/(h gamma) - J) u_i = f(t + c_i h, y + sum_j a_ij u_j) + M/h sum_j C_ij u_j + d_i h df/dt
//	y(t+h) = y + sum_j m_j u_j,   error about u_6
//
// so that a step costs one factorisation, six solutions, and no iteration. Linear
// invariants of f are kept to rounding: heat given off is heat stored or passed on.
const gamma = 0.25

const stages = 6

var (
	stageA = [stages][stages - 1]float64{
		{},
		{3},
		{1.831036793486759, 0.4955183967433795},
		{2.304376582692669, -0.05249275245743001, -1.176798761832782},
		{-7.170454962423024, -4.741636671481785, -16.31002631330971, -1.062004044111401},
		{-7.170454962423024, -4.741636671481785, -16.31002631330971, -1.062004044111401, 1},
	}
	stageC = [stages][stages - 1]float64{
		{},
		{-12},
		{-8.791795173947035, -2.207865586973518},
		{10.81793056857153, 6.780270611428266, 19.5348594464241},
		{34.19095006749676, 15.49671153725963, 54.7476087596413, 14.16005392148534},
		{34.62605830930532, 15.30084976114473, 56.99955578662667, 18.40807009793095, -5.714285714285717},
	}
	stageTime  = [stages]float64{0, 0.75, 0.21, 0.63, 1, 1}
	stageSlope = [stages]float64{0.25, -0.5, -0.023504, -0.0362, 0, 0}
)

// Between the ends of a step the scheme has a cubic of its own, to order 3. Unlike
// the cubic through the rates of change at the ends it isn't led astray by the
// stiff part of conduction: those rates hold the error of every thin cell times
// k/dx^2. Its slopes at both ends, over the whole step, are
//
//	d0 = r + sum_j D_j u_j,   d1 = r - sum_j (D_j + E_j) u_j,   r = y(t+h) - y(t)
var (
	denseD = [stages - 1]float64{25.09876703708589, 11.62013104361867, 28.49148307714626, -5.664021568594133, 0}
	denseE = [stages - 1]float64{1.638054557396973, -0.7373619806678748, 8.47791821923899, 15.9925314877952, -1.882352941176471}
)

// state is the unknowns, and the rate of each point with its derivatives there.
type state struct {
	T, a         []float64
	da, byA, byT []float64
}

// rates fills da with the rate of every point at the temperatures T and degrees
// a, held within the part of the law that each point is in.
func (w *Workspace) rates(T, a, da []float64) {
	for i := range w.m.blocks {
		b := &w.m.blocks[i]
		rate := b.Rate
		nodeT := T[b.node:]
		low, high := w.low, w.high
		for p := b.from; p < b.to; p++ {
			da[p] = rate(min(max(a[p], low[p]), high[p]), nodeT[p-b.from])
		}
	}
}

// linearise fills da, byA and byT of the state.
func (w *Workspace) linearise(s *state) {
	for i := range w.m.blocks {
		b := &w.m.blocks[i]
		nodeT := s.T[b.node:]
		for p := b.from; p < b.to; p++ {
			T := nodeT[p-b.from]
			a := min(max(s.a[p], w.low[p]), w.high[p])
			if b.Slopes != nil {
				s.da[p], s.byA[p], s.byT[p] = b.Slopes(a, T)
				continue
			}
			r := b.Rate(a, T)
			da := 1e-6*a + 1e-9 // small beside a: laws like a^m bend sharply near 0
			if a+da > w.high[p] {
				da = -da
			}
			const dT = 1e-4 // K
			s.da[p] = r
			s.byA[p] = (b.Rate(a+da, T) - r) / da
			s.byT[p] = (b.Rate(a, T+dT) - r) / dT
		}
	}
}

// flow adds to f, in W/m2, what conduction, the faces and the sources bring each
// node at time t. The row of a prescribed face holds its error instead.
func (w *Workspace) flow(t float64, T, f []float64) {
	m := &w.m
	last := len(T) - 1
	for i, g := range m.g {
		q := g * (T[i] - T[i+1])
		f[i] -= q
		f[i+1] += q
	}
	for _, s := range m.sources {
		f[s.node] += s.volume * s.f(m.x[s.node], t)
	}
	switch w.first.kind {
	case insulated:
	case convective:
		f[0] += w.first.h * (w.firstT.at(t) - T[0])
	case prescribed:
		f[0] = w.firstT.at(t) - T[0]
	}
	switch w.last.kind {
	case insulated:
	case convective:
		f[last] += w.last.h * (w.lastT.at(t) - T[last])
	case prescribed:
		f[last] = w.lastT.at(t) - T[last]
	}
}

// factor prepares the solution for a step h from the state. It reports false
// where the step is too long for the reaction to be followed: a degree or a
// temperature would grow by more than the scheme's implicit half can take.
//
// The degree of each point is eliminated first, from
//
//	(1/(h gamma) - r_a) ua - r_T uT = Fa
//
// which leaves one tridiagonal system in the temperatures.
func (w *Workspace) factor(h float64, s *state) bool {
	m := &w.m
	n := len(m.cap)
	q := 1 / (gamma * h)
	for i := range n {
		w.diag[i] = q * m.cap[i]
	}
	for i, g := range m.g {
		w.diag[i] += g
		w.diag[i+1] += g
	}
	if w.first.kind == convective {
		w.diag[0] += w.first.h
	}
	if w.last.kind == convective {
		w.diag[n-1] += w.last.h
	}
	for i := range m.blocks {
		b := &m.blocks[i]
		diag := w.diag[b.node:]
		for p := b.from; p < b.to; p++ {
			D := q - s.byA[p]
			if !(D > 0.75*q) {
				return false
			}
			w.inv[p] = 1 / D
			diag[p-b.from] -= w.give[p] * s.byT[p] * q * w.inv[p]
		}
	}
	for i, g := range m.g {
		w.up[i], w.lo[i] = g, g
	}
	if w.first.kind == prescribed {
		w.diag[0] = 1
		if n > 1 {
			w.up[0] = 0
		}
	}
	if w.last.kind == prescribed {
		w.diag[n-1] = 1
		if n > 1 {
			w.lo[n-2] = 0
		}
	}
	// Gauss without pivoting; the pivots stay positive while the step is short
	// enough for the heat to be carried off faster than it feeds itself.
	if !(w.diag[0] > 0) {
		return false
	}
	w.diag[0] = 1 / w.diag[0]
	for i := range m.g {
		w.lo[i] *= w.diag[i]
		d := w.diag[i+1] - w.lo[i]*w.up[i]
		if !(d > 0.1*q*m.cap[i+1]) && !(i+1 == n-1 && w.last.kind == prescribed) {
			return false
		}
		w.diag[i+1] = 1 / d
	}
	return true
}

// step tries the step h from (t, s) and leaves the result in w.T1 and w.a1. It
// returns the error in units of the tolerance.
func (w *Workspace) step(t, h float64, s *state) float64 {
	m := &w.m
	n := len(m.cap)
	over := 1 / h
	// df/dt: the faces and the sources move on their own
	var slope0, slopeN float64
	if w.first.kind != insulated {
		slope0 = w.firstT.slope(t, h)
		if w.first.kind == convective {
			slope0 *= w.first.h
		}
	}
	if w.last.kind != insulated {
		slopeN = w.lastT.slope(t, h)
		if w.last.kind == convective {
			slopeN *= w.last.h
		}
	}
	for k, src := range m.sources {
		x := m.x[src.node]
		w.sourceSlope[k] = src.volume * forward(func(t float64) float64 { return src.f(x, t) }, t, h)
	}

	for i := range stages {
		U, V := w.U[i], w.V[i]
		T, ra := s.T, s.da
		if i > 0 {
			T, ra = w.T1, w.rate
			combine(T, s.T, &stageA[i], w.U[:i])
			combine(w.a1, s.a, &stageA[i], w.V[:i])
			w.rates(T, w.a1, ra)
		}
		// The right side; V holds that of the degrees, U that of the temperatures.
		mix(V, &stageC[i], w.V[:i], over)
		mix(U, &stageC[i], w.U[:i], over)
		for k := range U {
			U[k] *= m.cap[k]
		}
		for j := range m.blocks {
			b := &m.blocks[j]
			node := U[b.node:]
			for p := b.from; p < b.to; p++ {
				V[p] += ra[p]
				node[p-b.from] += w.give[p] * (ra[p] + s.byA[p]*V[p]*w.inv[p])
			}
		}
		w.flow(t+stageTime[i]*h, T, U)
		if d := stageSlope[i] * h; d != 0 {
			U[0] += d * slope0
			U[n-1] += d * slopeN
			for k, src := range m.sources {
				if (src.node == 0 && w.first.kind == prescribed) || (src.node == n-1 && w.last.kind == prescribed) {
					continue
				}
				U[src.node] += d * w.sourceSlope[k]
			}
		}
		for k := range m.g {
			U[k+1] += w.lo[k] * U[k]
		}
		U[n-1] *= w.diag[n-1]
		for k := n - 2; k >= 0; k-- {
			U[k] = (U[k] + w.up[k]*U[k+1]) * w.diag[k]
		}
		at, d := t+stageTime[i]*h, stageSlope[i]*h
		switch w.first.kind {
		case insulated:
		case convective:
			w.passes(0, i, h, w.first.h*(T[0]+U[0]-w.firstT.at(at))-d*slope0)
		case prescribed:
			w.passes(0, i, h, m.g[0]*(T[1]-T[0]+U[1]-U[0]))
		}
		switch w.last.kind {
		case insulated:
		case convective:
			w.passes(1, i, h, w.last.h*(T[n-1]+U[n-1]-w.lastT.at(at))-d*slopeN)
		case prescribed:
			w.passes(1, i, h, m.g[n-2]*(T[n-2]-T[n-1]+U[n-2]-U[n-1]))
		}
		for j := range m.blocks {
			b := &m.blocks[j]
			node := U[b.node:]
			for p := b.from; p < b.to; p++ {
				V[p] = (V[p] + s.byT[p]*node[p-b.from]) * w.inv[p]
			}
		}
	}
	// The last stage's argument plus its own u is the new state.
	worst := 0.0
	for k, u := range w.U[stages-1] {
		w.T1[k] += u
		worst = max(worst, math.Abs(u)/w.tolT)
	}
	for i := range m.blocks {
		b := &m.blocks[i]
		for p := b.from; p < b.to; p++ {
			u := w.V[stages-1][p]
			a := w.a1[p] + u
			// The start of the part that gives heat counts as the start of all: it
			// is where a law like a^m is decided.
			worst = max(worst, math.Abs(u)/(w.tolA*math.Abs(a-b.Quiet)+w.tolA0))
			w.a1[p] = a
		}
	}
	return worst
}

// passes sets stage i of the heat that leaves by a face, carried as one more
// unknown whose rate is the flow: so it is the heat the nodes themselves lost.
func (w *Workspace) passes(face, i int, h, flow float64) {
	Q := &w.Q[face]
	for j, c := range stageC[i][:i] {
		flow += c * Q[j] / h
	}
	Q[i] = gamma * h * flow
}

// combine sets y to y0 plus the weighted sum of u.
func combine(y, y0 []float64, c *[stages - 1]float64, u [][]float64) {
	copy(y, y0)
	for j, v := range u {
		cj := c[j]
		if cj == 0 {
			continue
		}
		for k, x := range v {
			y[k] += cj * x
		}
	}
}

// mix sets y to the weighted sum of u, times by.
func mix(y []float64, c *[stages - 1]float64, u [][]float64, by float64) {
	clear(y)
	for j, v := range u {
		cj := c[j] * by
		if cj == 0 {
			continue
		}
		for k, x := range v {
			y[k] += cj * x
		}
	}
}
