// Package geom computes with plane outlines: how large a hole is, what it grows
// to when a taper is ground round it, what is left between it and a stiffener.
//
// Coordinates are plain float64 in one unit. This program uses millimetres on
// the panel, seen from outside, x to the right and y up; only the two
// tolerances below (Grid, Tolerance) are lengths, and they suit millimetres.
// Areas come in that unit squared, volumes in it cubed, angles in radians
// counter-clockwise from +x.
//
// A Ring is one closed line, a Shape a region bounded by rings. The offset of a
// shape by d is the set of points within d of it (d > 0), or the points of it
// at least -d from its edge (d < 0); corners become arcs of radius |d|. For a
// convex shape Steiner's formula gives the area exactly,
//
//	A(d) = A + P d + pi d²
//
// with A the area and P the perimeter, and for every simple outline it is an
// upper bound.
//
// # Limits
//
// Curves are polygons whose vertices stand within Tolerance of the true curve,
// set a little outside it so that the polygon has the curve's area. Results are
// snapped to Grid. Coordinates reach to ±MaxCoordinate. Everything is flat: over
// a curved panel a plan length falls short of the skin's own by about
// (chord/R)²/24.
//
// # Sources
//
// Shoelace area and centroid, Steiner's formula, winding numbers and rotating
// calipers are textbook geometry, from memory, each checked here against closed
// forms. Offsets are checked against areas computed independently with GEOS
// through python3-shapely 1.8.5 (testdata, made by bench/offsets), offsets and
// booleans against the path operations of github.com/tdewolff/canvas as well.
//
//	s := geom.Shape{geom.Ellipse(300, 200)}
//	ground, err := s.Offset(12 * 5.4) // the feather edge of a 12:1 taper through 5.4 mm
package geom

import (
	"fmt"
	"math"
)

const (
	// Grid is the step results are rounded to: 0.0001 mm. Whole numbers of it
	// make the tests for crossings exact. It is a hundredth of Tolerance, so that
	// rounding hardly turns the short edges of an arc: an arc drawn in to its
	// centre then ends in a point, not in a tangle.
	Grid = 1.0 / perUnit
	// Tolerance is how far a polygon's vertex may stand from the curve it
	// stands for, 0.01 mm: a tenth of a fine pencil line.
	Tolerance = 0.01
	// MaxCoordinate bounds coordinates and offsets, 20 m in millimetres: beyond
	// any panel, and small enough that cross products of grid coordinates fit in
	// 64 bits.
	MaxCoordinate = 2e4

	perUnit = 10000
)

// Point is a place in the plane; as JSON it is [x, y].
type Point struct{ X, Y float64 }

// Ring is a closed line through its points; the first is not repeated at the
// end. Counter-clockwise rings bound a region, clockwise rings a hole in one.
type Ring []Point

// Shape is a region: the points inside an odd number of its rings. Outer rings
// run counter-clockwise and holes clockwise, the largest first; each starts
// where a line from its centroid towards +x leaves it, so that the start moves
// little when the outline does and labels stay put. The empty shape is nil.
//
// Functions that return a Shape keep those rules and the rings do not cross. A
// Shape put together by hand has to keep them too: NewShape checks a ring.
type Shape []Ring

// Box is an upright rectangle.
type Box struct{ Min, Max Point }

func (b Box) Width() float64  { return b.Max.X - b.Min.X }
func (b Box) Height() float64 { return b.Max.Y - b.Min.Y }

// Centre returns the middle of the box.
func (b Box) Centre() Point { return Point{(b.Min.X + b.Max.X) / 2, (b.Min.Y + b.Max.Y) / 2} }

func (p Point) sub(q Point) Point     { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) add(q Point) Point     { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) dot(q Point) float64   { return p.X*q.X + p.Y*q.Y }
func (p Point) cross(q Point) float64 { return p.X*q.Y - p.Y*q.X }
func (p Point) length() float64       { return math.Sqrt(p.X*p.X + p.Y*p.Y) }

func (p Point) rotate(c, s float64) Point { return Point{c*p.X - s*p.Y, s*p.X + c*p.Y} }

// String writes "12.5,40", as ParseRing reads it.
func (p Point) String() string { return number(p.X) + "," + number(p.Y) }

// check refuses what no outline can hold.
func (p Point) check() error {
	for _, v := range [2]float64{p.X, p.Y} {
		if math.IsNaN(v) || math.Abs(v) > MaxCoordinate {
			return fmt.Errorf("%v,%v is not a usable place: each coordinate must be a number between %g and %g", p.X, p.Y, -MaxCoordinate, MaxCoordinate)
		}
	}
	return nil
}
