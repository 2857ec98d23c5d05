package design

import (
	"cmp"
	"math"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// obstacle is a straight line the repair should stay clear of.
type obstacle struct {
	what string
	a, b geom.Point
}

// obstacles returns the panel's four edges and its features, in mm.
func obstacles(p job.Panel) []obstacle {
	w, h := p.Long.MM()/2, p.Short.MM()/2
	name := func(given, edge string) string {
		return cmp.Or(given, "panel edge") + " (" + edge + ")"
	}
	out := []obstacle{
		{name(p.Edges.Fore, "fore"), geom.Point{X: w, Y: -h}, geom.Point{X: w, Y: h}},
		{name(p.Edges.Aft, "aft"), geom.Point{X: -w, Y: -h}, geom.Point{X: -w, Y: h}},
		{name(p.Edges.Upper, "upper"), geom.Point{X: -w, Y: h}, geom.Point{X: w, Y: h}},
		{name(p.Edges.Lower, "lower"), geom.Point{X: -w, Y: -h}, geom.Point{X: w, Y: -h}},
	}
	for _, f := range p.Features {
		out = append(out, obstacle{f.What, geom.Point{X: f.From.X.MM(), Y: f.From.Y.MM()}, geom.Point{X: f.To.X.MM(), Y: f.To.Y.MM()}})
	}
	return out
}

// clearances measures the feather edge and the cover's edge against every
// obstacle. An edge of the panel is an endless line, as the stiffener runs on;
// any other feature is as long as it is drawn.
func clearances(obs []obstacle, edge, cover geom.Shape, centre geom.Point) []Clearance {
	out := make([]Clearance, len(obs))
	for i, o := range obs {
		left := func(s geom.Shape) si.Length {
			if len(s) == 0 {
				return 0
			}
			if i >= 4 {
				if d := s.DistanceToSegment(o.a, o.b); d > 0 {
					return si.MM(d)
				}
			}
			return si.MM(s.SignedClearance(centre, o.a, o.b))
		}
		out[i] = Clearance{What: o.what, Left: left(edge), Cover: left(cover)}
	}
	return out
}

// least returns the smallest clearance of the feather edge and what it is from.
func least(cs []Clearance) (si.Length, string) {
	best := Clearance{Left: si.Length(math.Inf(1))}
	for _, c := range cs {
		if c.Left < best.Left {
			best = c
		}
	}
	return best.Left, best.What
}

// hours are the eight clock points as seen, as angles from the right-hand side.
var hours = []struct {
	name  string
	angle float64
}{
	{"12:00", 90}, {"1:30", 45}, {"3:00", 0}, {"4:30", -45},
	{"6:00", -90}, {"7:30", -135}, {"9:00", 180}, {"10:30", 135},
}

// Mirrored reports whether forward lies to the left of somebody who stands
// before that face of the panel: so it does outside on the port side and inside
// to starboard. Where no side is given, forward is taken to the right outside.
func Mirrored(side, face string) bool { return (side == "port") != (face == "inside") }

// clocks measures the repair along the eight clock rays from the cut-out's centre.
func clocks(obs []obstacle, cut, edge geom.Shape, mirrored bool) []Clock {
	c := cut.Centroid()
	out := make([]Clock, 0, len(hours))
	for _, h := range hours {
		a := h.angle * math.Pi / 180
		if mirrored {
			a = math.Pi - a
		}
		toCut, okCut := cut.Ray(c, a)
		toEdge, okEdge := edge.Ray(c, a)
		if !okCut || !okEdge {
			continue
		}
		k := Clock{Hour: h.name, Angle: si.Angle(a), ToCut: si.MM(toCut), ToEdge: si.MM(toEdge), Taper: si.MM(toEdge - toCut)}
		nearest := math.Inf(1)
		for _, o := range obs {
			if d, ok := rayToSegment(c, a, o.a, o.b); ok && d < nearest {
				nearest, k.What = d, o.what
			}
		}
		if !math.IsInf(nearest, 1) {
			k.Left = si.MM(nearest - toEdge)
		}
		out = append(out, k)
	}
	return out
}

// rayToSegment returns how far along the ray from p at angle a the segment from
// u to v is met.
func rayToSegment(p geom.Point, a float64, u, v geom.Point) (float64, bool) {
	dx, dy := math.Cos(a), math.Sin(a)
	ex, ey := v.X-u.X, v.Y-u.Y
	det := ex*dy - ey*dx
	if math.Abs(det) < 1e-12 {
		return 0, false
	}
	qx, qy := u.X-p.X, u.Y-p.Y
	along := (ex*qy - ey*qx) / det
	share := (dx*qy - dy*qx) / det
	return along, along >= 0 && share >= -1e-9 && share <= 1+1e-9
}
