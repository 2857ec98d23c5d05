package design

import (
	"fmt"
	"math"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// cornerDefault is the corner radius of a cut where none is given. Round
// corners keep the peak strain at a patch's corner down; 25 mm is common
// practice, no source.
var cornerDefault = si.MM(25)

// shapeOf returns a described outline as a shape about its own centre, in mm.
// A rectangle is rounded to its corner radius; points are rounded outward, so
// that nothing dead stays outside the cut.
func shapeOf(o job.Outline) (geom.Shape, error) {
	corner := o.Corner
	if corner == 0 {
		corner = cornerDefault
	}
	switch {
	case len(o.Ellipse) == 2:
		return geom.Shape{geom.Ellipse(o.Ellipse[0].MM(), o.Ellipse[1].MM())}, nil
	case o.Circle > 0:
		return geom.Shape{geom.Circle(o.Circle.MM())}, nil
	case len(o.Rectangle) == 2:
		w, h := o.Rectangle[0].MM(), o.Rectangle[1].MM()
		return geom.Shape{geom.Rectangle(w, h, min(corner.MM(), w/2, h/2))}, nil
	case len(o.Points) > 0:
		ring := make(geom.Ring, len(o.Points))
		for i, p := range o.Points {
			ring[i] = geom.Point{X: p.X.MM(), Y: p.Y.MM()}
		}
		s, err := geom.NewShape(ring)
		if err != nil {
			return nil, err
		}
		return s.RoundOut(corner.MM())
	}
	return nil, fmt.Errorf("an outline needs an ellipse, a circle, a rectangle or points")
}

// cutOut returns the hole as it will be cut: the dead area by tap test (or,
// without one, what is seen) grown by the margin, at its place on the panel.
func cutOut(d job.Damage) (geom.Shape, error) {
	o, field := d.Dead, "damage.dead"
	if o == nil {
		o, field = d.Seen, "damage.seen"
	}
	if o == nil {
		return nil, fmt.Errorf("damage: no outline given; a cut-out cannot be drawn")
	}
	s, err := shapeOf(*o)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", field, err)
	}
	if d.Margin > 0 {
		if s, err = s.Offset(d.Margin.MM()); err != nil {
			return nil, fmt.Errorf("damage.margin: %w", err)
		}
	}
	return s.Translate(d.At.X.MM(), d.At.Y.MM()), nil
}

// curvature returns the panel's radius and the rise under the feather edge's
// width, both zero when the panel is flat or no gap was measured.
//
//	R = c²/(8 h) + h/2,   rise = R - sqrt(R² - (w/2)²)
func curvature(p job.Panel, edge geom.Shape) (radius, rise si.Length) {
	if p.Chord <= 0 || p.Sagitta <= 0 {
		return 0, 0
	}
	c, h := p.Chord.M(), p.Sagitta.M()
	r := c*c/(8*h) + h/2
	b := edge.Bounds()
	half := max(b.Width(), b.Height()) / 2000
	if half > r {
		half = r
	}
	return si.M(r), si.M(r - math.Sqrt(r*r-half*half))
}
