package panel

import (
	"math"

	"scarfwright/physics/si"
)

// Strip is a long panel that bends over its short span only: the middle of a panel
// whose other side is more than about three times as long. A, B, D are the stiffness
// along the span about any one plane (N/m, N, N m; with the panel held along its
// length they are A22, B22, D22 of the laminate, not the free ones), S the
// transverse shear stiffness in N/m.
type Strip struct{ A, B, D, S float64 }

// StripOf returns the strip of a lay-up that spans along y.
func StripOf(l Layup) Strip {
	s := newSection(l)
	return Strip{s.A[1][1], s.B[1][1], s.D[1][1], s.S[1][1]}
}

// StripResult holds the deflection at mid-span, split into bending and shear, the
// moments at mid-span and at the supports about the reference plane (N m/m,
// positive when it stretches the face away from the pressure), the in-plane force
// (N/m) and the largest shear force (N/m).
type StripResult struct {
	Bending, Shear si.Length
	Middle, End    float64
	N, V           float64
}

// W returns the deflection at mid-span.
func (r StripResult) W() si.Length { return r.Bending + r.Shear }

// Bend returns the strip of the span under the pressure, small deflection. With
// D* = D - B^2/A, the stiffness about the neutral axis:
//
//	clamped           w = q b^4/384 D* + q b^2/8 S          N = 0
//	simply supported  w = (5 q b^4/384 - (B/A) N b^2/8)/D* + q b^2/8 S
//	                  N = B q b^2/12 D, because the supports do not move
//
// Independent computation from N = A e + B k, M = B e + D k, the second derivative
// of M = -q and the integral of e = 0; with B = 0 they are the beam formulas. Any
// support but Clamped counts as simple.
func (s Strip) Bend(support Support, span si.Length, q si.Pressure) StripResult {
	b, p := float64(span), float64(q)
	Ds := s.D - s.B*s.B/s.A
	r := StripResult{Shear: si.Length(p * b * b / (8 * s.S)), V: p * b / 2}
	if support == Clamped {
		r.Bending = si.Length(p * b * b * b * b / (384 * Ds))
		r.Middle, r.End = p*b*b/24, -p*b*b/12
		return r
	}
	r.N = s.B * p * b * b / (12 * s.D)
	r.Bending = si.Length((5*p*b*b*b*b/384 - s.B/s.A*r.N*b*b/8) / Ds)
	r.Middle = p * b * b / 8
	return r
}

// Sandwich is two equal faces on a core, as a strip. The core's E and G are those
// through its thickness and across the span.
type Sandwich struct {
	Face  si.Pressure // modulus of the faces along the span
	FaceT si.Length   // thickness of one face
	Core  si.Pressure // modulus of the core
	CoreG si.Pressure // shear modulus of the core
	CoreT si.Length
}

// Lever returns the distance between the middles of the faces, d = tc + tf.
func (s Sandwich) Lever() si.Length { return s.CoreT + s.FaceT }

// BendingStiffness returns Ef tf d^2/2 + Ef tf^3/6 + Ec tc^3/12 in N m.
func (s Sandwich) BendingStiffness() float64 {
	d, tf, tc := float64(s.Lever()), float64(s.FaceT), float64(s.CoreT)
	return float64(s.Face)*(tf*d*d/2+tf*tf*tf/6) + float64(s.Core)*tc*tc*tc/12
}

// ShearStiffness returns G d^2/tc in N/m: the faces carry no shear, and the core's
// is constant from mid-face to mid-face.
func (s Sandwich) ShearStiffness() float64 {
	d := float64(s.Lever())
	return float64(s.CoreG) * d * d / float64(s.CoreT)
}

// Bend returns the strip under the pressure.
func (s Sandwich) Bend(support Support, span si.Length, q si.Pressure) StripResult {
	return Strip{A: 1, D: s.BendingStiffness(), S: s.ShearStiffness()}.Bend(support, span, q)
}

// FaceStress returns the mean stress in a face under a moment in N m/m, M/(tf d).
func (s Sandwich) FaceStress(moment float64) si.Pressure {
	return si.Pressure(math.Abs(moment) / (float64(s.FaceT) * float64(s.Lever())))
}

// CoreShear returns the shear stress in the core under a shear force in N/m, V/d.
func (s Sandwich) CoreShear(force float64) si.Pressure {
	return si.Pressure(math.Abs(force) / float64(s.Lever()))
}

// Wrinkling returns the compressive stress at which a face buckles into the core in
// short waves, in the customary form for design,
//
//	sigma = 0.5 (Ef Ec Gc)^(1/3)
//
// Theory gives 0.8 to 0.9 in place of 0.5; the rest is for faces that aren't flat
// (both from memory).
func (s Sandwich) Wrinkling() si.Pressure {
	return si.Pressure(0.5 * math.Cbrt(float64(s.Face)*float64(s.Core)*float64(s.CoreG)))
}

// Crimping returns the stress in the faces at which the core shears off in one
// short wave, Gc d^2/(2 tf tc) (from memory).
func (s Sandwich) Crimping() si.Pressure {
	d := float64(s.Lever())
	return si.Pressure(float64(s.CoreG) * d * d / (2 * float64(s.FaceT) * float64(s.CoreT)))
}
