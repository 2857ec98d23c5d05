package heat

import (
	"math"
	"sort"

	"scarfwright/physics/si"
)

// A Result is what came of a run. It reads from the run's workspace and is good
// until the next run there.
type Result struct {
	w *Workspace

	End             si.Time
	Peak            Peak // the hottest place and moment of all
	Energy          Energy
	Steps, Rejected int
	Cells           int // of the grid it was found on

	// Coarse says that the grid can't carry the answer, and Warning why.
	Coarse  bool
	Warning string

	Change si.TempDiff // of the peak by the last refinement, where Resolve made one

	// Steepest is the largest difference in degree between two neighbouring nodes
	// of a layer at any step: the share of a reaction front that fits in one cell.
	Steepest float64
}

// A Peak is the highest temperature of a place or a range of it.
type Peak struct {
	Temp  si.Temp
	Depth si.Length
	Time  si.Time
}

// Energy is the balance of a run in J per m2 of slab (in J for a cup), from its
// start to its end:
//
//	stored + lost = released + added
type Energy struct {
	Stored, Lost, Released, Added float64

	// Error is what is missing, over the largest of the amounts that moved. The
	// scheme keeps heat to rounding, so it shows what was not kept: a degree held
	// at 1 or from falling, a source that jumps within a step. How well Lost follows
	// the face temperatures is for TestLossIsTheFacesOwn.
	Error float64
}

func (k *track) finish(w *Workspace) (*Result, error) {
	r := &w.res
	m := &w.m
	n := len(m.cap)
	e := &r.Energy
	rounding := 0.0 // a billionth of the heat above absolute zero
	for i, c := range m.cap {
		rounding += 1e-9 * c * m.start[i]
		e.Stored += c * (w.now.T[i] - m.start[i])
	}
	for i := range m.blocks {
		b := &m.blocks[i]
		for p := b.from; p < b.to; p++ {
			e.Released += m.heat[p] * (max(w.now.a[p], b.Quiet) - max(m.seed[p], b.Quiet)) / (1 - b.Quiet)
		}
	}
	e.Added = k.sourced
	e.Lost = k.lost
	// A prescribed face passes on what its own half cell doesn't keep.
	for _, f := range []struct {
		kind faceKind
		node int
	}{{w.first.kind, 0}, {w.last.kind, n - 1}} {
		if f.kind != prescribed {
			continue
		}
		own := -m.cap[f.node] * (w.now.T[f.node] - m.start[f.node])
		for i := range m.blocks {
			b := &m.blocks[i]
			if p := b.from + f.node - b.node; p >= b.from && p < b.to {
				own += m.heat[p] * (max(w.now.a[p], b.Quiet) - max(m.seed[p], b.Quiet)) / (1 - b.Quiet)
			}
		}
		e.Lost += own
		k.through += math.Abs(own)
	}
	if scale := max(math.Abs(e.Stored), e.Released, math.Abs(e.Added), k.through, rounding); scale > 0 {
		e.Error = math.Abs(e.Stored+e.Lost-e.Released-e.Added) / scale
	}
	r.Cells = n - 1
	r.Peak = r.peakBetween(0, n-1)
	r.Steepest = k.steepest
	r.judge()
	return r, nil
}

// Depths returns the depths of the nodes.
func (r *Result) Depths() []si.Length {
	d := make([]si.Length, len(r.w.m.x))
	for i, x := range r.w.m.x {
		d[i] = si.Length(x)
	}
	return d
}

// PeakIn returns the highest temperature of a layer, its faces included.
func (r *Result) PeakIn(layer int) Peak {
	return r.peakBetween(r.w.m.firstNode(layer), r.w.m.layerEnd[layer])
}

// PeakAt returns the highest temperature at a depth.
func (r *Result) PeakAt(depth si.Length) Peak {
	k := &r.w.track
	i, z := r.w.m.place(depth)
	if z == 0 {
		return Peak{si.Temp(k.peak[i]), si.Length(r.w.m.x[i]), si.Time(k.peakT[i])}
	}
	return Peak{
		si.Temp(k.peak[i] + z*(k.peak[i+1]-k.peak[i])), depth,
		si.Time(k.peakT[i] + z*(k.peakT[i+1]-k.peakT[i])),
	}
}

// peakBetween returns the peak over the nodes from..to, placed between them by
// the parabola through the hottest and its neighbours in the same layer.
func (r *Result) peakBetween(from, to int) Peak {
	k, x := &r.w.track, r.w.m.x
	i := from
	for j := from; j <= to; j++ {
		if k.peak[j] > k.peak[i] {
			i = j
		}
	}
	p := Peak{si.Temp(k.peak[i]), si.Length(x[i]), si.Time(k.peakT[i])}
	if i == from || i == to {
		return p
	}
	for _, e := range r.w.m.layerEnd {
		if i == e {
			return p // the profile has a kink on an interface
		}
	}
	y0, y1, y2 := k.peak[i-1], k.peak[i], k.peak[i+1]
	bend := y0 - 2*y1 + y2
	if bend >= 0 {
		return p
	}
	z := 0.5 * (y0 - y2) / bend // -1/2 to 1/2, in cells
	p.Temp = si.Temp(y1 - 0.25*(y0-y2)*z)
	p.Depth = si.Length(x[i] + z*(x[i+1]-x[i]))
	t0, t1, t2 := k.peakT[i-1], k.peakT[i], k.peakT[i+1]
	p.Time = si.Time(t1 + z*((t2-t0)/2+z*(t0-2*t1+t2)/2))
	return p
}

// row returns the step that holds a time and how far on in it the time lies.
func (r *Result) row(t si.Time) (i int, z float64) {
	ts := r.w.track.t
	i = sort.Search(len(ts), func(i int) bool { return ts[i] > float64(t) }) - 1
	if i < 0 {
		return 0, 0
	}
	if i >= len(ts)-1 {
		return len(ts) - 2, 1
	}
	return i, (float64(t) - ts[i]) / (ts[i+1] - ts[i])
}

func (r *Result) nodeTemp(node, row int, z float64) float64 {
	k, n := &r.w.track, len(r.w.m.x)
	i, j := row*n+node, (row+1)*n+node
	return hermite(k.T[i], k.T0[j], k.T[j], k.T1[j], z)
}

func (r *Result) pointDegree(p, row int, z float64) float64 {
	k, n := &r.w.track, len(r.w.m.heat)
	i, j := row*n+p, (row+1)*n+p
	a := hermite(k.a[i], k.a0[j], k.a[j], k.a1[j], z)
	return math.Min(k.a[j], math.Max(k.a[i], a)) // the cubic may swing, a degree doesn't
}

// TempAt returns the temperature at a depth and a time.
func (r *Result) TempAt(depth si.Length, t si.Time) si.Temp {
	row, z := r.row(t)
	i, on := r.w.m.place(depth)
	T := r.nodeTemp(i, row, z)
	if on > 0 {
		T += on * (r.nodeTemp(i+1, row, z) - T)
	}
	return si.Temp(T)
}

// DegreeAt returns the degree at a depth and a time, NaN in an inert layer. On an
// interface it is that of the layer behind, or before where the one behind is inert.
func (r *Result) DegreeAt(depth si.Length, t si.Time) float64 {
	row, z := r.row(t)
	p, on, ok := r.placePoint(depth)
	if !ok {
		return math.NaN()
	}
	a := r.pointDegree(p, row, z)
	if on > 0 {
		a += on * (r.pointDegree(p+1, row, z) - a)
	}
	return a
}

// placePoint returns the point at or before a depth and how far on the depth lies.
func (r *Result) placePoint(depth si.Length) (p int, on float64, ok bool) {
	i, on := r.w.m.place(depth)
	if on == 1 { // the last face
		i, on = i+1, 0
	}
	if p, ok = r.w.m.point(i); ok {
		return p, on, true
	}
	if on == 0 && i > 0 { // the end of a layer
		if p, ok = r.w.m.point(i - 1); ok {
			return p + 1, 0, true
		}
	}
	return 0, 0, false
}

// Reached returns when the degree at a depth first comes to a, and false where it
// doesn't within the run or the layer is inert.
func (r *Result) Reached(depth si.Length, a float64) (si.Time, bool) {
	p, on, ok := r.placePoint(depth)
	if !ok {
		return 0, false
	}
	t, ok := r.pointReached(p, a)
	if ok && on > 0 {
		// Between nodes the time is interpolated, not the degree: a front passes
		// them one after the other.
		t2, ok := r.pointReached(p+1, a)
		return si.Time(t + on*(t2-t)), ok
	}
	return si.Time(t), ok
}

// Throughout returns when the first and when the last place of a layer come to
// the degree a, and false where some place doesn't within the run.
func (r *Result) Throughout(layer int, a float64) (first, last si.Time, ok bool) {
	for _, b := range r.w.m.blocks {
		if b.layer != layer {
			continue
		}
		low, high, all := math.Inf(1), 0.0, true
		for p := b.from; p < b.to; p++ {
			t, reached := r.pointReached(p, a)
			if !reached {
				all = false
				continue
			}
			low, high = math.Min(low, t), math.Max(high, t)
		}
		return si.Time(low), si.Time(high), all
	}
	return 0, 0, false
}

// pointReached returns when a point first comes to a.
func (r *Result) pointReached(p int, a float64) (float64, bool) {
	k, n := &r.w.track, len(r.w.m.heat)
	rows := len(k.t)
	row := sort.Search(rows, func(i int) bool { return k.a[i*n+p] >= a })
	switch row {
	case rows:
		return 0, false
	case 0:
		return k.t[0], true
	}
	row--
	low, high := 0.0, 1.0
	for range 50 {
		mid := (low + high) / 2
		if r.pointDegree(p, row, mid) < a {
			low = mid
		} else {
			high = mid
		}
	}
	return k.t[row] + high*(k.t[row+1]-k.t[row]), true
}

// Warmed returns when the temperature at a depth first comes up to T, and false
// where it doesn't within the run.
func (r *Result) Warmed(depth si.Length, T si.Temp) (si.Time, bool) {
	k, n := &r.w.track, len(r.w.m.x)
	i, on := r.w.m.place(depth)
	j := min(i+1, n-1)
	at := func(row int, z float64) float64 {
		a := r.nodeTemp(i, row, z)
		return a + on*(r.nodeTemp(j, row, z)-a)
	}
	if k.T[i]+on*(k.T[j]-k.T[i]) >= float64(T) {
		return 0, true
	}
	for row := range len(k.t) - 1 {
		if at(row, 1) < float64(T) {
			continue // a crest between two steps may be missed; steps follow crests closely
		}
		low, high := 0.0, 1.0
		for range 50 {
			mid := (low + high) / 2
			if at(row, mid) < float64(T) {
				low = mid
			} else {
				high = mid
			}
		}
		return si.Time(k.t[row] + high*(k.t[row+1]-k.t[row])), true
	}
	return 0, false
}

// A Profile is the state through the thickness at one time.
type Profile struct {
	Time   si.Time
	Depth  []si.Length
	Temp   []si.Temp
	Degree []float64 // NaN in inert layers
}

// Profile returns the state through the thickness at a time.
func (r *Result) Profile(t si.Time) Profile {
	p := Profile{Time: t, Depth: r.Depths()}
	for _, d := range p.Depth {
		p.Temp = append(p.Temp, r.TempAt(d, t))
		p.Degree = append(p.Degree, r.DegreeAt(d, t))
	}
	return p
}

// Times returns the ends of the steps, at which a trace is exact; a kink is there twice.
func (r *Result) Times() []si.Time {
	ts := make([]si.Time, len(r.w.track.t))
	for i, t := range r.w.track.t {
		ts[i] = si.Time(t)
	}
	return ts
}
