package geom

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ParseRing reads a ring written on one line, the points apart by spaces:
//
//	0,0 100,0 100,50 0,50
//
// Coordinates are Go numbers with a decimal point, in the package's unit.
// Whether the ring is a fit outline is for NewShape to say.
func ParseRing(text string) (Ring, error) {
	fields := strings.Fields(text)
	r := make(Ring, 0, len(fields))
	for i, f := range fields {
		xs, ys, ok := strings.Cut(f, ",")
		if !ok || strings.Contains(ys, ",") {
			return nil, fmt.Errorf("point %d %q: want x,y with a decimal point and no space inside, for example 12.5,40", i+1, f)
		}
		var p Point
		for _, c := range []struct {
			name, text string
			to         *float64
		}{{"x", xs, &p.X}, {"y", ys, &p.Y}} {
			v, err := strconv.ParseFloat(c.text, 64)
			if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
				return nil, fmt.Errorf("point %d %q: %s is not a number", i+1, f, c.name)
			}
			*c.to = v
		}
		if err := p.check(); err != nil {
			return nil, fmt.Errorf("point %d: %w", i+1, err)
		}
		r = append(r, p)
	}
	if len(r) == 0 {
		return nil, fmt.Errorf("no points: want x,y pairs apart by spaces, for example 0,0 100,0 100,50")
	}
	return r, nil
}

// String writes the ring as ParseRing reads it, without loss.
func (r Ring) String() string {
	parts := make([]string, len(r))
	for i, p := range r {
		parts[i] = p.String()
	}
	return strings.Join(parts, " ")
}

func number(v float64) string {
	if v == 0 {
		v = 0 // not "-0"
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}

// MarshalJSON writes [x, y], rounded to a tenth of Tolerance: an outline of two
// hundred points stays readable and half the size.
func (p Point) MarshalJSON() ([]byte, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	b := []byte{'['}
	for i, v := range [2]float64{p.X, p.Y} {
		if i > 0 {
			b = append(b, ',')
		}
		v = math.Round(v*(10/Tolerance)) / (10 / Tolerance)
		if v == 0 {
			v = 0 // not "-0"
		}
		b = strconv.AppendFloat(b, v, 'f', -1, 64)
	}
	return append(b, ']'), nil
}

// UnmarshalJSON reads [x, y].
func (p *Point) UnmarshalJSON(b []byte) error {
	var xy []float64
	if err := json.Unmarshal(b, &xy); err != nil || len(xy) != 2 {
		return fmt.Errorf("a point is [x, y], not %s", b)
	}
	q := Point{xy[0], xy[1]}
	if err := q.check(); err != nil {
		return err
	}
	*p = q
	return nil
}
