package drawing

import (
	"math"
	"slices"
)

// Hatch fills the area between rings (a ring inside another is a hole) with
// narrow parallel lines at deg degrees from x, spacing mm apart on paper.
// Neighbouring parts of a section take different angles or spacings.
func (p Pen) Hatch(deg, spacing float64, rings ...[]Point) {
	if !(spacing > 0) {
		panic("drawing: hatch spacing must be above 0 mm")
	}
	// In a frame turned by -deg the hatch lines are level, y = n * spacing, and
	// the crossings of each with the rings bound the inside in pairs.
	sin, cos := math.Sincos(deg * math.Pi / 180)
	cuts := map[int][]float64{}
	for _, ring := range rings {
		pts := p.toPaper(ring)
		for i := range pts {
			pts[i] = pts[i].turn(-sin, cos)
		}
		for i, a := range pts {
			b := pts[(i+1)%len(pts)]
			if a.Y > b.Y {
				a, b = b, a
			}
			// Half open, a.Y <= y < b.Y, so that a line through a corner is
			// counted once.
			for n := int(math.Ceil(a.Y / spacing)); float64(n)*spacing < b.Y; n++ {
				t := (float64(n)*spacing - a.Y) / (b.Y - a.Y)
				cuts[n] = append(cuts[n], a.X+t*(b.X-a.X))
			}
		}
	}
	var rows []int
	for n := range cuts {
		rows = append(rows, n)
	}
	slices.Sort(rows)
	var paths []path
	for _, n := range rows {
		xs := cuts[n]
		slices.Sort(xs)
		y := float64(n) * spacing
		for i := 0; i+1 < len(xs); i += 2 {
			if xs[i+1]-xs[i] < 0.05 {
				continue // a dot, not a line
			}
			a, b := Point{xs[i], y}, Point{xs[i+1], y}
			paths = append(paths, path{[]Point{a.turn(sin, cos), b.turn(sin, cos)}, false})
		}
	}
	if paths != nil {
		p.stroke(Narrow, paths...)
	}
}
