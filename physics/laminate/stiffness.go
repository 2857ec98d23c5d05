package laminate

import "scarfwright/physics/si"

// Ply is one layer of a laminate: a lamina, its thickness, and the direction of
// its fibres counter-clockwise from the x axis of the laminate.
type Ply struct {
	Lamina
	Thickness si.Length
	Angle     si.Angle
}

// Stiffness ties the loads on a strip of laminate to its strains:
//
//	N = A eps0 + B kappa     A in N/m   membrane
//	M = B eps0 + D kappa     B in N     coupling; zero when the stack is symmetric
//	                         D in N m   bending
//
// per unit width, about the mid-plane of a laminate of thickness H.
type Stiffness struct {
	A, B, D [3][3]float64
	H       si.Length
}

// NewStiffness returns A, B and D of a laminate about its mid-plane; the first ply
// listed lies lowest (z = -H/2). No plies give the zero Stiffness.
//
//	A = sum Qbar t,  B = sum Qbar t z,  D = sum Qbar (t z^2 + t^3/12)
//
// with z the height of the middle of each ply. Kaw2006 ch. 4 draws z downwards
// and lists the top ply first, which gives the same sums.
//
// It promises: B = 0 for a symmetric stack; the plate formulae for isotropic
// plies at any angles; the tensor rotation when all plies turn together.
func NewStiffness(plies []Ply) Stiffness {
	var s Stiffness
	for _, p := range plies {
		s.H += p.Thickness
	}
	z := -float64(s.H) / 2
	for _, p := range plies {
		t := float64(p.Thickness)
		mid := z + t/2
		z += t
		if p.Lamina == (Lamina{}) {
			continue // a failed or an empty ply keeps its place and carries nothing
		}
		Q := p.QBar(p.Angle)
		s.A = sum(s.A, t, Q)
		s.B = sum(s.B, t*mid, Q)
		s.D = sum(s.D, t*mid*mid+t*t*t/12, Q)
	}
	return s
}

// Turned returns the stiffness of the same laminate turned by the angle.
func (s Stiffness) Turned(angle si.Angle) Stiffness {
	return Stiffness{turned(s.A, angle), turned(s.B, angle), turned(s.D, angle), s.H}
}

// Compliance is the inverse of a Stiffness:
//
//	eps0 = a N + b M,  kappa = b^T N + d M
type Compliance struct{ A, B, D [3][3]float64 }

// Compliance returns the inverse of the whole 6 x 6 matrix, block by block, for a
// laminate of at least one ply of positive thickness.
//
//	d = (D - B A^-1 B)^-1,  b = -A^-1 B d,  a = A^-1 - b B A^-1
//
// Block elimination keeps N/m away from N m, whose sizes differ by the thickness
// squared.
func (s Stiffness) Compliance() Compliance {
	Ai := inverse(s.A)
	AiB := multiply(Ai, s.B)
	d := inverse(sum(s.D, -1, multiply(s.B, AiB)))
	b := sum(matrix{}, -1, multiply(AiB, d))
	a := sum(Ai, -1, multiply(b, transpose(AiB)))
	return Compliance{a, b, d}
}

// Constants are the engineering constants of a laminate taken for one solid sheet.
type Constants struct {
	Ex, Ey, Gxy  si.Pressure
	NuXY, NuYX   float64 // NuXY: contraction along y under stress along x
	EtaXS, EtaYS float64 // shear strain per normal strain, under stress along x, along y; zero when balanced
}

// InPlane returns the constants for a laminate pulled in its plane and left free
// to curl, which is what a strip in a testing machine does: 1/(H a11) and so on,
// from the inverse of the whole of A, B, D. For a symmetric laminate it is the
// same as HeldFlat; otherwise it is softer.
func (s Stiffness) InPlane() Constants { return constants(s.Compliance().A, float64(s.H)) }

// HeldFlat returns the constants for a laminate pulled in its plane and kept from
// curling, from the inverse of A alone. A skin on stiffeners is nearer to this.
func (s Stiffness) HeldFlat() Constants { return constants(inverse(s.A), float64(s.H)) }

// Bending returns the constants of the solid sheet of the same thickness that
// bends alike under a moment, the mid-plane left free to stretch: 12/(H^3 d11)
// and so on. They differ from InPlane because the outer plies count most.
func (s Stiffness) Bending() Constants {
	h := float64(s.H)
	return constants(s.Compliance().D, h*h*h/12)
}

// constants reads them off a compliance matrix whose entries are 1/(E size).
func constants(c matrix, size float64) Constants {
	return Constants{
		Ex:    si.Pressure(1 / (size * c[0][0])),
		Ey:    si.Pressure(1 / (size * c[1][1])),
		Gxy:   si.Pressure(1 / (size * c[2][2])),
		NuXY:  -c[0][1] / c[0][0],
		NuYX:  -c[0][1] / c[1][1],
		EtaXS: c[0][2] / c[0][0],
		EtaYS: c[1][2] / c[1][1],
	}
}
