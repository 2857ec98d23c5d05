package design

import (
	"cmp"
	"fmt"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// cornerDefault is the corner radius of a cut where none is given. Round
// corners keep the peak strain at a patch's corner down; 25 mm is common
// practice, no source.
var cornerDefault = si.MM(25)

// cutLine returns a described outline, grown by a margin and with its corners
// rounded, as a shape about its own centre, in mm.
//
// A margin rounds the corners by itself, to its own radius. Where that is less
// than the corner radius asked for, a rectangle without a margin is taken as the
// cut line somebody has drawn, and its corners are rounded within it; anything
// else is rounded outward, so that nothing dead stays outside the cut.
func cutLine(o job.Outline, margin si.Length) (geom.Shape, error) {
	corner := cmp.Or(o.Corner, cornerDefault)
	s, err := plainOutline(o)
	switch {
	case err != nil:
		return nil, err
	case len(o.Rectangle) == 2 && margin == 0:
		w, h := o.Rectangle[0].MM(), o.Rectangle[1].MM()
		return geom.Shape{geom.Rectangle(w, h, min(corner.MM(), w/2, h/2))}, nil
	}
	if margin > 0 {
		if s, err = s.Offset(margin.MM()); err != nil {
			return nil, err
		}
	}
	if cornered := len(o.Rectangle) == 2 || len(o.Points) > 0; cornered && margin < corner {
		return s.RoundOut(corner.MM())
	}
	return s, nil
}

// plainOutline returns an outline as it was drawn, about its own centre.
func plainOutline(o job.Outline) (geom.Shape, error) {
	switch {
	case len(o.Ellipse) == 2:
		return geom.Shape{geom.Ellipse(o.Ellipse[0].MM(), o.Ellipse[1].MM())}, nil
	case o.Circle > 0:
		return geom.Shape{geom.Circle(o.Circle.MM())}, nil
	case len(o.Rectangle) == 2:
		return geom.Shape{geom.Rectangle(o.Rectangle[0].MM(), o.Rectangle[1].MM(), 0)}, nil
	case len(o.Points) > 0:
		ring := make(geom.Ring, len(o.Points))
		for i, p := range o.Points {
			ring[i] = geom.Point{X: p.X.MM(), Y: p.Y.MM()}
		}
		return geom.NewShape(ring)
	}
	return nil, fmt.Errorf("an outline needs an ellipse, a circle, a rectangle or points")
}

// hole is the hole as it will be cut, and what must be said of it.
type hole struct {
	shape geom.Shape
	notes []string
}

// grownTooMuch is how far rounding may grow a cut-out before it is remarked on.
const grownTooMuch = 1.05

// cutOut returns the hole as it will be cut: the dead area by tap test grown by
// the margin, and whatever is visibly broken beyond it, at its place on the
// panel.
func cutOut(d job.Damage) (hole, error) {
	dead, seen := d.Dead, d.Seen
	field := "damage.dead"
	if dead == nil {
		dead, seen, field = d.Seen, nil, "damage.seen"
	}
	if dead == nil {
		return hole{}, fmt.Errorf("damage: no outline given; a cut-out cannot be drawn")
	}
	s, err := cutLine(*dead, d.Margin)
	if err != nil {
		return hole{}, fmt.Errorf("%s: %w", field, err)
	}
	h := hole{shape: s}
	if err := h.remark(*dead, d.Margin); err != nil {
		return hole{}, fmt.Errorf("%s: %w", field, err)
	}
	if seen != nil {
		if err := h.include(*seen); err != nil {
			return hole{}, fmt.Errorf("damage.seen: %w", err)
		}
	}
	h.shape = h.shape.Translate(d.At.X.MM(), d.At.Y.MM())
	return h, nil
}

// remark says what rounding did to the outline.
func (h *hole) remark(o job.Outline, margin si.Length) error {
	drawn, err := plainOutline(o)
	if err != nil {
		return err
	}
	if len(o.Rectangle) == 2 && margin == 0 {
		h.notes = append(h.notes, fmt.Sprintf("The rectangle is taken as the cut line, its corners rounded within it: %.0f mm² in the corners stay. If the dead area reaches into them, give a margin.", drawn.Area()-h.shape.Area()))
		return nil
	}
	if drawn, err = drawn.Offset(margin.MM()); err != nil {
		return err
	}
	if grown := h.shape.Area() / drawn.Area(); grown > grownTooMuch {
		h.notes = append(h.notes, fmt.Sprintf("Rounding the outline's corners outward makes the cut-out %.0f %% larger. A smaller damage.dead.corner, or more points round the corner, makes less of it.", 100*(grown-1)))
	}
	return nil
}

// include takes in what is visibly broken outside the cut.
func (h *hole) include(seen job.Outline) error {
	s, err := plainOutline(seen)
	if err != nil {
		return err
	}
	out, err := geom.Subtract(s, h.shape)
	if err != nil {
		return err
	}
	if out.Area() < 1 { // mm2; less is the polygons' own error
		return nil
	}
	if h.shape, err = geom.Union(h.shape, s); err != nil {
		return err
	}
	h.notes = append(h.notes, fmt.Sprintf("What is seen reaches outside the dead area by %.0f mm²: the cut-out takes in both. Tap again round it.", out.Area()))
	return nil
}

// curvature returns the panel's radius and the rise under the feather edge's
// width, both zero when the panel is flat or no gap was measured.
func curvature(p job.Panel, edge geom.Shape) (radius, rise si.Length) {
	if p.Chord <= 0 || p.Sagitta <= 0 {
		return 0, 0
	}
	r := geom.RadiusFromSagitta(p.Chord.MM(), p.Sagitta.MM())
	b := edge.Bounds()
	width := min(max(b.Width(), b.Height()), 2*r)
	return si.MM(r), si.MM(geom.Sagitta(r, width))
}
