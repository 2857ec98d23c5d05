package heat

import (
	"fmt"
	"math"
	"slices"

	"scarfwright/physics/si"
)

// A Workspace holds the memory of a run, for the next one: an ensemble needs one
// for each goroutine and, after its first members, allocates nothing. The zero
// Workspace is ready.
type Workspace struct {
	m            mesh
	first, last  Face
	firstT       course
	lastT        course
	tolT         float64
	tolA, tolA0  float64
	low, high    []float64 // the part of the rate law each point is in
	give         []float64 // J/m2 for a degree, in that part
	part         []int     // its index among the breaks
	now          state
	T1, a1, rate []float64
	U, V         [stages][]float64
	Q            [2][stages]float64 // J/m2, out of the first and the last face

	diag, lo, up, inv []float64
	sourceSlope       []float64
	kinks             []float64

	track track
	res   Result
}

// The degree's tolerance is taken from the temperature's t, in kelvin, by
//
//	relative 0.005 t, absolute 1e-5 t
//
// tight enough near 0, where a law like a^m is decided, and measured to keep
// temperature the larger error (bench/cure).
const (
	degreeRelative = 0.005
	degreeAbsolute = 1e-5
)

// onBreak is how near to a break of the rate law a step must end, in degree.
const onBreak = 2e-5

// Run follows the slab on its own grid. The result shares the workspace's memory:
// it is good until the next run in it. A nil workspace is a fresh one.
func (s *Slab) Run(w *Workspace) (*Result, error) {
	if err := s.check(); err != nil {
		return nil, fmt.Errorf("heat: %w", err)
	}
	if w == nil {
		w = &Workspace{}
	}
	w.m.rebuild(s, s.cells())
	return w.run(s.First, s.Last, s)
}

// run integrates what stands in the mesh.
func (w *Workspace) run(first, last Face, s *Slab) (*Result, error) {
	w.prepare(first, last, s)
	t, end := 0.0, float64(s.For)
	longest := float64(s.MaxStep)
	if longest == 0 {
		longest = defaultMaxStep
	}
	w.track.begin(w)
	w.turn(0)
	w.linearise(&w.now)
	h := w.firstStep(longest)
	if s.fixed > 0 {
		h = s.fixed
	}

	next := 0 // kink to come
	hOld, errOld := 0.0, 1e-4
	for t < end {
		stop := end
		if next < len(w.kinks) {
			stop = w.kinks[next]
		}
		h = math.Min(h, longest)
		wanted := h
		lands := false
		if left := stop - t; h >= left*(1-1e-9) {
			h, lands = left, true
		} else if h > left/2 && s.fixed == 0 {
			h = left / 2 // two even steps rather than a long and a stump
		}
		if !(h >= 1e-14*math.Max(1, t)) { // written so that NaN stops too
			return nil, fmt.Errorf("heat: the step has shrunk to %g s at %g s: the reaction goes off faster than can be followed, or its rate jumps where no break is listed or is not finite", h, t)
		}
		if !w.factor(h, &w.now) {
			w.res.Rejected++
			h /= 2
			continue
		}
		worst := w.step(t, h, &w.now)
		if math.IsNaN(worst) {
			worst = 1e6
		}
		if worst > 1 && s.fixed == 0 {
			w.res.Rejected++
			h *= math.Max(0.1, 0.9*math.Pow(worst, -0.25))
			continue
		}
		if cut := w.cross(h); cut < 1 {
			w.res.Rejected++
			h *= cut
			continue
		}

		// Accepted. A degree neither falls nor passes 1: what the scheme's error
		// would take back, within the tolerance, is not given.
		for p, a := range w.a1 {
			w.a1[p] = math.Min(1, math.Max(a, w.now.a[p]))
		}
		w.now.T, w.T1 = w.T1, w.now.T
		w.now.a, w.a1 = w.a1, w.now.a
		w.res.Steps++
		if w.res.Steps > mostSteps {
			return nil, fmt.Errorf("heat: %d steps and only at %g s of %g s; loosen the tolerance or shorten the time", mostSteps, t, end)
		}
		t0 := t
		t += h
		if lands {
			t = stop
		}
		w.track.add(w, t0, t)

		turned := w.pass()
		if lands && t < end {
			next++
			turned = true
			w.turn(t)
		}
		w.linearise(&w.now)
		if s.fixed > 0 {
			h = s.fixed
			continue
		}
		// The step to come, by the error of this one and the trend from the last
		// (Gustafsson's predictive rule as in Hairer and Wanner, Solving Ordinary
		// Differential Equations II, IV.8; from memory).
		worst = math.Max(worst, 1e-4)
		grow := 0.9 * math.Pow(worst, -0.25)
		if hOld > 0 && !turned {
			grow = math.Min(grow, 0.9*h/hOld*math.Pow(errOld/(worst*worst), 0.25))
		}
		hOld, errOld = h, math.Max(worst, 1e-2)
		h *= math.Min(5, math.Max(0.2, grow))
		if lands {
			h = math.Max(h, wanted) // it was cut for the landing only
		}
	}
	return w.track.finish(w)
}

const mostSteps = 100_000

// prepare sizes the memory and sets the state to the start.
func (w *Workspace) prepare(first, last Face, s *Slab) {
	n, np := len(w.m.cap), len(w.m.heat)
	w.first, w.last = first, last
	w.firstT, w.lastT = course{History: first.temp}, course{History: last.temp}
	w.tolT = float64(s.Tolerance)
	if w.tolT == 0 {
		w.tolT = defaultTolerance
		if first.kind == prescribed || last.kind == prescribed {
			w.tolT = prescribedTolerance
		}
	}
	w.tolT = min(w.tolT, max(leastTolerance, shareOfRange*w.inPlay(float64(s.For))))
	w.tolA, w.tolA0 = degreeRelative*w.tolT, degreeAbsolute*w.tolT
	for _, v := range []*[]float64{&w.now.T, &w.T1, &w.diag, &w.lo, &w.up} {
		*v = resize(*v, n)
	}
	for _, v := range []*[]float64{&w.now.a, &w.now.da, &w.now.byA, &w.now.byT, &w.a1, &w.rate, &w.inv, &w.low, &w.high, &w.give} {
		*v = resize(*v, np)
	}
	for i := range stages {
		w.U[i], w.V[i] = resize(w.U[i], n), resize(w.V[i], np)
	}
	w.sourceSlope = resize(w.sourceSlope, len(w.m.sources))
	copy(w.now.T, w.m.start)
	copy(w.now.a, w.m.seed)

	w.part = slices.Grow(w.part[:0], np)[:np]
	for i := range w.m.blocks {
		b := &w.m.blocks[i]
		for p := b.from; p < b.to; p++ {
			k := 0
			for k < len(b.breaks) && w.now.a[p] >= b.breaks[k] {
				k++
			}
			w.enterPart(b, p, k)
		}
	}

	w.kinks = w.kinks[:0]
	for _, f := range []*Face{&w.first, &w.last} {
		if f.kind == insulated {
			continue
		}
		for _, t := range f.temp.times {
			if t > 0 && t < float64(s.For) {
				w.kinks = append(w.kinks, t)
			}
		}
	}
	slices.Sort(w.kinks)
	w.kinks = slices.Compact(w.kinks)
	w.res = Result{w: w, End: s.For}
}

// inPlay returns the range of temperatures that the start, the faces and the heat
// of reaction span. Where that is a degree or two, an error of a twentieth is not
// small.
func (w *Workspace) inPlay(end float64) float64 {
	low, high := slices.Min(w.m.start), slices.Max(w.m.start)
	see := func(T float64) { low, high = min(low, T), max(high, T) }
	for _, f := range []*Face{&w.first, &w.last} {
		switch {
		case f.kind == insulated:
		case f.temp.f != nil:
			for i := range 25 {
				see(float64(f.temp.f(si.Time(end * float64(i) / 24))))
			}
		default:
			for _, T := range f.temp.temps {
				see(T)
			}
		}
	}
	rise := 0.0
	for i := range w.m.blocks {
		b := &w.m.blocks[i]
		for p := b.from; p < b.to; p++ {
			rise = max(rise, w.m.heat[p]*(1-w.m.seed[p])/w.m.cap[b.node+p-b.from])
		}
	}
	return high - low + rise
}

// turn passes a kink: the histories move on to their next piece, and a prescribed
// face jumps where its history does.
func (w *Workspace) turn(t float64) {
	if w.first.kind != insulated {
		w.firstT.enter(t)
	}
	if w.last.kind != insulated {
		w.lastT.enter(t)
	}
	jumped := false
	jump := func(f *Face, c *course, node int) {
		if f.kind != prescribed {
			return
		}
		if T := c.at(t); T != w.now.T[node] {
			w.now.T[node], jumped = T, true
		}
	}
	jump(&w.first, &w.firstT, 0)
	jump(&w.last, &w.lastT, len(w.now.T)-1)
	if jumped {
		w.track.mark(w, t)
	}
}

// firstStep returns a step in which nothing moves by more than a tenth of the
// tolerance; from there they grow fivefold each.
func (w *Workspace) firstStep(longest float64) float64 {
	fastest := 0.0
	f := w.U[0]
	clear(f)
	w.flow(0, w.now.T, f)
	for i := range w.m.blocks {
		b := &w.m.blocks[i]
		for p := b.from; p < b.to; p++ {
			f[b.node+p-b.from] += w.give[p] * w.now.da[p]
			fastest = math.Max(fastest, w.now.da[p]*w.tolT/(w.tolA*w.now.a[p]+w.tolA0))
		}
	}
	for i, q := range f {
		fastest = math.Max(fastest, math.Abs(q)/w.m.cap[i])
	}
	return math.Min(math.Min(longest, 10), 0.1*w.tolT/math.Max(fastest, 1e-12))
}

// enterPart puts a point into part k of its rate law.
func (w *Workspace) enterPart(b *block, p, k int) {
	const off = 1e-12 // to this side of the break, whichever way the law writes it
	w.part[p] = k
	w.low[p], w.high[p] = 0, 1
	if k > 0 {
		w.low[p] = b.breaks[k-1] + off
	}
	if k < len(b.breaks) {
		w.high[p] = b.breaks[k] - off
	}
	w.give[p] = 0
	if w.low[p] >= b.Quiet {
		w.give[p] = w.m.heat[p] / (1 - b.Quiet)
	}
}

// cross returns 1 where no point ran past the break of its law in the step h just
// tried, else the share of it after which the first of them reaches it.
func (w *Workspace) cross(h float64) float64 {
	cut := 1.0
	for i := range w.m.blocks {
		b := &w.m.blocks[i]
		if len(b.breaks) == 0 {
			continue
		}
		for p := b.from; p < b.to; p++ {
			k := w.part[p]
			if k == len(b.breaks) || w.a1[p] <= b.breaks[k]+onBreak {
				continue
			}
			// a(z) = a0 + v z + (a1 - a0 - v) z^2, v the step's own start
			a0, v := w.now.a[p], w.now.da[p]*h
			rise, bend := b.breaks[k]-a0, w.a1[p]-a0-v
			z := 2 * rise / (v + math.Sqrt(math.Max(0, v*v+4*bend*rise)))
			if !(z > 0 && z < 1) {
				z = rise / (w.a1[p] - a0)
			}
			cut = math.Min(cut, math.Max(z, 1e-3))
		}
	}
	return cut
}

// pass moves the points that have reached the break of their law into its next
// part, and reports whether there were any.
func (w *Workspace) pass() bool {
	any := false
	for i := range w.m.blocks {
		b := &w.m.blocks[i]
		if len(b.breaks) == 0 {
			continue
		}
		for p := b.from; p < b.to; p++ {
			for k := w.part[p]; k < len(b.breaks) && w.now.a[p] >= b.breaks[k]-onBreak; k++ {
				w.enterPart(b, p, k+1)
				any = true
			}
		}
	}
	return any
}
