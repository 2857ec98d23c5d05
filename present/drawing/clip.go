package drawing

// clip returns the parts of the items inside the box.
func clip(items []item, box Box) []item { return clipInto(items, box, box, box) }

// clipInto returns the parts of the items inside the box. Lines and areas are
// cut at its edge. Text cannot be cut: it is kept where its middle lies in keep,
// and there moved to lie within room; elsewhere it is dropped.
func clipInto(items []item, box, room, keep Box) []item {
	var out []item
	for _, it := range items {
		switch it.kind {
		case text:
			if b := it.text.box(); keep.holds(b.centre()) {
				it.text.at = it.text.at.add(Point{inside(b.X0, b.X1, room.X0, room.X1), inside(b.Y0, b.Y1, room.Y0, room.Y1)})
				out = append(out, it)
			}
			continue
		case stroke:
			it.paths = clipLines(it.paths, box)
		case fill:
			it.paths = clipAreas(it.paths, box)
		}
		if len(it.paths) > 0 {
			out = append(out, it)
		}
	}
	return out
}

// inside returns how far the stretch a..b must move to lie within lo..hi.
func inside(a, b, lo, hi float64) float64 {
	switch {
	case a < lo:
		return lo - a
	case b > hi:
		return max(hi-b, lo-a)
	}
	return 0
}

// clipLines cuts runs at the box (Liang and Barsky's parametric clipping). A
// closed run that lies wholly inside stays closed; else the parts are open.
func clipLines(paths []path, box Box) []path {
	var out []path
	for _, p := range paths {
		if whole(p.pts, box) {
			out = append(out, p)
			continue
		}
		n := len(p.pts) - 1
		if p.closed {
			n++
		}
		var run []Point
		runs := len(out)
		flush := func() {
			if len(run) > 1 {
				out = append(out, path{run, false})
			}
			run = nil
		}
		for i := range n {
			a, b := p.pts[i], p.pts[(i+1)%len(p.pts)]
			c, d, ok := clipSegment(a, b, box)
			if !ok {
				flush()
				continue
			}
			if len(run) == 0 || run[len(run)-1] != c {
				flush()
				run = []Point{c}
			}
			run = append(run, d)
		}
		flush()
		// A closed run that starts inside comes out in two parts that meet at
		// its first point: join them.
		if last := len(out) - 1; p.closed && last > runs && box.holds(p.pts[0]) {
			a, b := out[runs].pts, out[last].pts
			if b[len(b)-1] == a[0] {
				out[runs].pts = append(b, a[1:]...)
				out = out[:last]
			}
		}
	}
	return out
}

func whole(pts []Point, box Box) bool {
	for _, p := range pts {
		if !box.holds(p) {
			return false
		}
	}
	return true
}

// clipSegment returns the part of the segment a-b inside the box, and whether
// there is one longer than nothing.
func clipSegment(a, b Point, box Box) (c, d Point, ok bool) {
	t0, t1 := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, e := range [4][2]float64{
		{-dx, a.X - box.X0}, {dx, box.X1 - a.X}, {-dy, a.Y - box.Y0}, {dy, box.Y1 - a.Y},
	} {
		p, q := e[0], e[1]
		switch {
		case p == 0 && q < 0:
			return a, b, false
		case p < 0:
			t0 = max(t0, q/p)
		case p > 0:
			t1 = min(t1, q/p)
		}
	}
	if t0 >= t1 {
		return a, b, false
	}
	c, d = a, b
	if t0 > 0 {
		c = Point{a.X + t0*dx, a.Y + t0*dy}
	}
	if t1 < 1 {
		d = Point{a.X + t1*dx, a.Y + t1*dy}
	}
	return c, d, true
}

// clipAreas cuts rings at the box one side after another (Sutherland and
// Hodgman). A ring that falls into parts stays one ring, joined along the edge
// of the box, which a fill does not show.
func clipAreas(paths []path, box Box) []path {
	var out []path
	for _, p := range paths {
		ring := p.pts
		if !whole(ring, box) {
			for side := range 4 {
				ring = clipSide(ring, box, side)
			}
		}
		if len(ring) > 2 {
			out = append(out, path{ring, true})
		}
	}
	return out
}

func clipSide(ring []Point, box Box, side int) []Point {
	depth := func(p Point) float64 { // inside if not negative
		return [4]float64{p.X - box.X0, box.X1 - p.X, p.Y - box.Y0, box.Y1 - p.Y}[side]
	}
	var out []Point
	for i, b := range ring {
		a := ring[(i+len(ring)-1)%len(ring)]
		da, db := depth(a), depth(b)
		if (da < 0) != (db < 0) {
			t := da / (da - db)
			out = append(out, a.add(b.sub(a).mul(t)))
		}
		if db >= 0 {
			out = append(out, b)
		}
	}
	return out
}
