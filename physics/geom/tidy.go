package geom

import "math"

// minArea is the least area a ring of a result may enclose, 0.01 mm²: smaller
// ones are what rounding leaves where edges all but coincide.
const minArea = 0.01

// tidy turns a closed line on the grid into a ring and drops vertices that say
// nothing: those within a tenth of Tolerance of the line between their
// neighbours. The vertices dropped in a row move the line by four times that
// at most. It returns nil for a ring of less than minArea.
//
// Without it, an arc that is drawn in to its centre would leave a cluster of
// vertices, and the next offset would draw an arc about each.
func tidy(line []vertex) Ring {
	const (
		near = Tolerance / 10 * perUnit
		most = 4 * near
	)
	kept := make([]vertex, 0, len(line))
	moved := 0.0
	for i := range line {
		v, next := &line[i], &line[(i+1)%len(line)]
		if len(kept) > 0 {
			prev := &kept[len(kept)-1]
			x, y := float64(next.x-prev.x), float64(next.y-prev.y)
			l := math.Sqrt(x*x + y*y)
			off := l
			if l > 0 {
				off = math.Abs(float64(side(prev, next, v))) / l
			}
			// The vertex has to stand between the two, or its tip would go.
			between := along(v, prev, next) <= 0 || float64(along(v, prev, prev)) <= near*near
			if between && off <= near && moved+off <= most {
				moved += off
				continue
			}
		}
		kept = append(kept, *v)
		moved = 0
	}
	if len(kept) < 3 {
		return nil
	}
	r := make(Ring, len(kept))
	for i, v := range kept {
		r[i] = Point{unsnap(v.x), unsnap(v.y)}
	}
	if math.Abs(r.Area()) < minArea {
		return nil
	}
	return r
}
