package geom

import (
	"fmt"
	"math"

	"github.com/tdewolff/canvas"
)

// Offset returns the shape grown by d, or shrunk for d < 0, with round joins.
func (s Shape) Offset(d float64) (out Shape, err error) {
	defer func() {
		if x := recover(); x != nil {
			out, err = nil, fmt.Errorf("offset by %g: %v", d, x)
		}
	}()
	if math.IsNaN(d) || math.Abs(d) > MaxCoordinate {
		return nil, fmt.Errorf("offset by %g: want a number between %g and %g", d, -MaxCoordinate, MaxCoordinate)
	}
	if err := s.finite(); err != nil {
		return nil, err
	}
	if d == 0 || len(s) == 0 {
		return s, nil
	}
	grown := &canvas.Path{}
	for _, part := range s.Parts() {
		p := part[0].path().Settle(canvas.NonZero).Offset(d, Tolerance)
		for _, h := range part[1:] {
			p = p.Not(h.Reverse().path().Settle(canvas.NonZero).Offset(-d, Tolerance))
		}
		grown = grown.Or(p)
	}
	return fromPath(grown), nil
}
