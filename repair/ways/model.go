package ways

import (
	"math"
	"sync"

	"scarfwright/physics/geom"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
)

// rings is how many steps stand in for the slope of a taper, narrow ones at its two
// ends, where the bond is loaded most. Twelve change the strengths of the demo jobs
// by 8 % at the most, where a ply ends on the slope's last millimetres (TestResolution).
const rings = 4

// ends returns where on the slope a ring begins and ends, the outermost first: f is
// 1 at the feather edge, 0 at the cut-out.
func (p *parts) ends(k int) (from, to float64) {
	at := func(k int) float64 { return (1 + math.Cos(math.Pi*float64(k)/float64(p.rings))) / 2 }
	return at(k), at(k + 1)
}

// middle is the place of a ring whose section stands for all of it.
func (p *parts) middle(k int) float64 {
	from, to := p.ends(k)
	return (from + to) / 2
}

// place is the outline that everything grows from, on the panel.
type place struct {
	shape  geom.Shape // of the cut-out, mm
	centre geom.Point
	a, b   float64    // semi-axes of an ellipse, mm; 0 for another shape
	most   [2]float64 // how far such an ellipse may reach from the panel's middle, mm; 0: as it is
	mu     sync.Mutex
	grown  map[float64]geom.Shape
}

// newPlace takes an ellipse for what it is: a parallel curve of an ellipse is an
// ellipse to within 1 % of its taper's length, and both halves of the panel agree.
func newPlace(cut geom.Shape, ellipse bool) *place {
	b := cut.Bounds()
	p := &place{shape: cut, centre: b.Centre(), grown: map[float64]geom.Shape{}}
	if ellipse {
		p.a, p.b = b.Width()/2, b.Height()/2
	}
	return p
}

// outline returns the outline at a distance outside the cut-out, in mm.
func (p *place) outline(off float64) (panel.Outline, error) {
	at := panel.Point{X: si.MM(p.centre.X), Y: si.MM(p.centre.Y)}
	if p.a > 0 {
		a, b := p.axes(off)
		return panel.Ellipse(at, si.MM(a), si.MM(b), 0), nil
	}
	s, err := p.grow(off)
	if err != nil {
		return panel.Outline{}, err
	}
	ring := s[0]
	pts := make([]panel.Point, len(ring))
	for i, q := range ring {
		pts[i] = panel.Point{X: si.MM(q.X), Y: si.MM(q.Y)}
	}
	return panel.Polygon(pts), nil
}

// axes are the semi-axes of the ellipse at a distance outside the cut-out. Drawn in,
// the rings keep their order: each comes nearer the limit than the one before.
func (p *place) axes(off float64) (a, b float64) {
	in := func(x, centre, most float64) float64 {
		room := most - math.Abs(centre)
		if most == 0 || x <= softly*room {
			return x
		}
		// From there on it comes nearer to the room without reaching it.
		rest := (1 - softly) * room
		over := x - softly*room
		return softly*room + rest*over/(over+rest)
	}
	return in(p.a+off, p.centre.X, p.most[0]), in(p.b+off, p.centre.Y, p.most[1])
}

// softly is the share of the room that an ellipse takes as it is.
const softly = 0.9

func (p *place) grow(off float64) (geom.Shape, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if s, ok := p.grown[off]; ok {
		return s, nil
	}
	s, err := p.shape.Offset(off)
	if err == nil {
		p.grown[off] = s
	}
	return s, err
}

// point returns a place on the line at that distance outside the cut-out, in a
// direction from its centre, and the line's outward normal there.
func (p *place) point(off, angle float64) (at panel.Point, nx, ny float64, ok bool) {
	var x, y float64
	if p.a > 0 {
		s, c := math.Sincos(angle)
		a, b := p.axes(off)
		x, y = a*c, b*s
		nx, ny = c/a, s/b
	} else {
		s, err := p.grow(off)
		if err != nil {
			return at, 0, 0, false
		}
		ends := [3]geom.Point{}
		for i, d := range []float64{-0.02, 0, 0.02} {
			r, hit := s.Ray(p.centre, angle+d)
			if !hit {
				return at, 0, 0, false
			}
			ends[i] = geom.Point{X: r * math.Cos(angle+d), Y: r * math.Sin(angle+d)}
		}
		x, y = ends[1].X, ends[1].Y
		nx, ny = ends[2].Y-ends[0].Y, ends[0].X-ends[2].X
	}
	n := math.Hypot(nx, ny)
	return panel.Point{X: si.MM(p.centre.X + x), Y: si.MM(p.centre.Y + y)}, nx / n, ny / n, n > 0
}

// build returns the panel with the way's zones, outermost first. reach is the
// taper's length, or the lap of an overlay, in mm.
func (p *parts) build(long, short si.Length, on *place, reach float64) (panel.Panel, error) {
	out := panel.Panel{Length: long, Width: short, Base: p.layup(p.parent, -depth(p.parent)/2)}
	add := func(name string, off, f float64) error {
		o, err := on.outline(off)
		if err != nil {
			return err
		}
		out.Zones = append(out.Zones, panel.Zone{Name: name, Outline: o, Layup: p.layup(p.at(f))})
		return nil
	}
	if p.over {
		if err := add("overlay", reach, 1); err != nil {
			return out, err
		}
	} else {
		for k := range p.rings {
			from, _ := p.ends(k)
			if err := add("taper", reach*from, p.middle(k)); err != nil {
				return out, err
			}
		}
	}
	return out, add("cut-out", 0, 0)
}

// ring returns the zone that holds the place f of the slope.
func (p *parts) ring(f float64) int {
	for k := range p.rings {
		if _, to := p.ends(k); f >= to {
			return k + 1
		}
	}
	return p.rings
}

// zones is how many zones a way has, besides the base.
func (p *parts) zones() int {
	switch {
	case p.patch == nil || p.was != nil:
		return 0
	case p.over:
		return 2
	}
	return p.rings + 1
}

// section returns the plies of a zone as they were put into the panel.
func (p *parts) section(zone int) []ply {
	var ps []ply
	switch {
	case zone == 0:
		return p.parent
	case p.over:
		ps, _ = p.covered(zone == 2)
	case zone == p.rings+1:
		ps, _ = p.at(0)
	default:
		ps, _ = p.at(p.middle(zone - 1))
	}
	return ps
}
