// Package view draws a planned repair: the section, the plan, the taper ratios
// side by side, and the pieces at 1:1. Every function takes a repair.Result
// and returns a drawing.Scene in millimetres on paper, which package drawing
// writes as SVG, PDF, PNG or DXF; none of them computes anything of its own.
//
//	s := view.Plan(r)
//	err := s.WriteSVG(w)
//
// # Which way round
//
// A panel's x runs forward and y up (package job), so a port panel has the bow
// on the left when it is looked at from outside, and a starboard panel on the
// right. Every drawing here is turned the way the worker sees it, standing
// before the ground face, and says so in words. The clock points are the
// worker's too: 12 is up, 3 to the right.
//
// # Limits
//
// A section is drawn with its thickness many times as large as its length, by
// a factor it states; slopes in it are not the real ones. Backings and forms
// have no thickness of their own in a result and are drawn thin, not to scale;
// so are a core and the skin behind it. The picture is flat where the hull is
// not.
package view

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/present/drawing"
	"scarfwright/repair"
	"scarfwright/repair/design"
)

// wide is the width of the drawings, in mm: what is left on A4 and on Letter
// inside a margin of 15 mm.
const wide = 180.0

// units prints lengths given in mm.
type units struct{ us bool }

func unitsOf(r repair.Result) units { return units{r.Job.Choices.Units == "us"} }

// len prints a length without its unit, as a drawing does.
func (u units) len(mm float64) string {
	if u.us {
		return fmt.Sprintf("%.2f", mm/25.4+0)
	}
	if math.Abs(mm) >= 100 {
		return fmt.Sprintf("%.0f", mm)
	}
	return drawing.Millimetres(mm)
}

// full prints a length with its unit.
func (u units) full(mm float64) string { return u.len(mm) + " " + u.name() }

func (u units) name() string {
	if u.us {
		return "in"
	}
	return "mm"
}

// area prints an area given in m2.
func (u units) area(m2 float64) string {
	if u.us {
		return fmt.Sprintf("%.2f ft²", m2/0.09290304)
	}
	return fmt.Sprintf("%.3f m²", m2)
}

// note says what the plain numbers of a drawing are.
func (u units) note() string {
	if u.us {
		return "Dimensions in inches."
	}
	return "Dimensions in mm."
}

// look is the way a face is seen: from which side, and whether forward is to
// the left.
type look struct {
	face string // "outside" or "inside"
	flip bool
}

// seen returns how a face looks to whoever stands before it. Forward is to the
// right on the outside of a starboard panel and on the inside of a port one.
// Where the side is not known, x is taken to the right as seen from outside.
func seen(r repair.Result, face string) look {
	l := look{face: face}
	l.flip = design.Mirrored(r.Job.Panel.Side, face)
	return l
}

// groundFace is the face a plan is drawn from.
func groundFace(d *design.Result) string {
	if d.Sides == "inside" {
		return "inside"
	}
	return "outside"
}

// words says from where a drawing is seen and where forward is.
func (l look) words(r repair.Result) string {
	side := "right"
	if l.flip {
		side = "left"
	}
	if r.Job.Panel.Side != "port" && r.Job.Panel.Side != "starboard" {
		return fmt.Sprintf("Seen from the %s; x runs to the %s", l.face, side)
	}
	return fmt.Sprintf("Seen from the %s, forward to the %s", l.face, side)
}

func (l look) point(p geom.Point) drawing.Point {
	if l.flip {
		p.X = -p.X
	}
	return drawing.Point(p)
}

func (l look) ring(r geom.Ring) []drawing.Point {
	out := make([]drawing.Point, len(r))
	for i, p := range r {
		out[i] = l.point(p)
	}
	return out
}

func (l look) rings(s geom.Shape) [][]drawing.Point {
	out := make([][]drawing.Point, len(s))
	for i, r := range s {
		out[i] = l.ring(r)
	}
	return out
}

// draw strokes every ring of a shape.
func (l look) draw(p drawing.Pen, line drawing.Line, s geom.Shape) {
	for _, r := range l.rings(s) {
		p.Ring(line, r...)
	}
}

// box returns the bounds of a shape as it is seen.
func (l look) box(s geom.Shape) drawing.Box { return drawing.Bounds(l.rings(s)...) }

// ray returns the unit vector of a direction on the panel as it is seen.
func (l look) ray(angle si.Angle) drawing.Point {
	s, c := math.Sincos(angle.Radians())
	if l.flip {
		c = -c
	}
	return drawing.P(c, s)
}

// niceScale returns the smallest k of 1:k, from a workshop rule's scales, that
// brings size millimetres into room millimetres of paper.
func niceScale(size, room float64) float64 {
	for _, k := range []float64{1, 2, 2.5, 5, 10, 20, 25, 50} {
		if size/k <= room {
			return k
		}
	}
	return 100
}

// IsMat reports whether a layer is chopped mat: its class says so, or its
// glass content is what only mat has.
func IsMat(class string, glass float64) bool {
	return strings.HasPrefix(class, "csm") || glass > 0 && glass < 0.38
}

// Faces names the ground faces: "the outside", "both faces".
func Faces(sides string) string {
	if sides == "both" {
		return "both faces"
	}
	return "the " + sides
}

func upper(class string) string { return strings.ToUpper(class) }

// isCover reports whether a ply is the cover ply.
func isCover(p design.Ply) bool { return p.Layer == 0 }
