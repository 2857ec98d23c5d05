package drawing

// LengthIn returns the length of the scene's strokes inside a box, leaving out
// the named layers.
func (s *Scene) LengthIn(box Box, without ...string) float64 {
	sum := 0.0
items:
	for _, it := range clip(s.items, box) {
		for _, l := range without {
			if it.layer == l {
				continue items
			}
		}
		if it.kind == stroke {
			for _, p := range it.paths {
				for i := 1; i < len(p.pts); i++ {
					sum += p.pts[i-1].dist(p.pts[i])
				}
				if p.closed {
					sum += p.pts[0].dist(p.pts[len(p.pts)-1])
				}
			}
		}
	}
	return sum
}

// FillIn returns the area of the scene's fills inside a box.
func (s *Scene) FillIn(box Box) float64 {
	sum := 0.0
	for _, it := range clip(s.items, box) {
		if it.kind == fill {
			for _, p := range it.paths {
				sum += area(p.pts) / 2
			}
		}
	}
	return sum
}

// Crossed returns the first text that a line crosses, blanked or not.
func (s *Scene) Crossed() string {
	for _, o := range s.over {
		for i := range s.items {
			if o.kind == text && s.items[i].kind == stroke && crossed(o.text.corners(0), o.text.box(), &s.items[i]) {
				return o.text.s
			}
		}
	}
	return ""
}
