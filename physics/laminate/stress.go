package laminate

import "scarfwright/physics/si"

// Load is what acts on the edges of a piece of laminate, per unit width, at its
// mid-plane: forces N (x, y, xy) and moments M (x, y, xy) in N m per m of width.
// A positive Mx stretches the last ply along x.
type Load struct {
	N [3]si.LineLoad
	M [3]float64
}

// Deformation is the strain of the mid-plane and its curvature in 1/m. The third
// curvature is the twist, -2 d2w/dx dy.
type Deformation struct {
	Strain    Strain
	Curvature [3]float64
}

// At returns the strain in global axes at height z above the mid-plane.
//
//	eps(z) = eps0 + z kappa
func (d Deformation) At(z si.Length) Strain {
	e := d.Strain
	for i := range 3 {
		e[i] += float64(z) * d.Curvature[i]
	}
	return e
}

// Under returns how the mid-plane strains and curves under the load.
func (s Stiffness) Under(l Load) Deformation { return s.Compliance().Under(l) }

// Under returns how the mid-plane strains and curves under the load.
func (c Compliance) Under(l Load) Deformation {
	N := [3]float64{float64(l.N[0]), float64(l.N[1]), float64(l.N[2])}
	aN, bM := apply(c.A, N), apply(c.B, l.M)
	bN, dM := apply(transpose(c.B), N), apply(c.D, l.M)
	var d Deformation
	for i := range 3 {
		d.Strain[i] = aN[i] + bM[i]
		d.Curvature[i] = bN[i] + dM[i]
	}
	return d
}

// Place is a height within a ply.
type Place int

const (
	Bottom Place = iota // the face towards the first ply
	Middle
	Top // the face towards the last ply
)

// String returns the word for the place.
func (p Place) String() string { return [...]string{"bottom", "middle", "top"}[p] }

// Point is the state at one place in one ply.
type Point struct {
	Ply    int // index in the list of plies, from 0
	Place  Place
	Z      si.Length // above the mid-plane
	Strain Strain    // global axes: x, y, xy
	Stress Stress
	// The same in the axes of the ply: along the fibres, across, shear.
	PlyStrain Strain
	PlyStress Stress
}

// Points returns the strains and stresses at the bottom, middle and top of every
// ply under the load, in that order from the first ply to the last.
//
// Strain runs straight through the thickness; stress jumps at each interface, so
// the top of one ply and the bottom of the next are two entries.
func Points(plies []Ply, l Load) []Point {
	if len(plies) == 0 {
		return nil
	}
	s := NewStiffness(plies)
	return points(plies, s.H, s.Under(l))
}

func points(plies []Ply, h si.Length, d Deformation) []Point {
	out := make([]Point, 0, 3*len(plies))
	z := -h / 2
	for i, p := range plies {
		for _, place := range []Place{Bottom, Middle, Top} {
			at := z + si.Scale(p.Thickness, place)/2
			out = append(out, pointAt(i, p, place, at, d))
		}
		z += p.Thickness
	}
	return out
}

func pointAt(i int, p Ply, place Place, z si.Length, d Deformation) Point {
	strain := d.At(z)
	plyStrain := strain.InPlyAxes(p.Angle)
	plyStress := p.Lamina.Stress(plyStrain)
	return Point{
		Ply: i, Place: place, Z: z,
		Strain: strain, Stress: plyStress.InPlyAxes(-p.Angle),
		PlyStrain: plyStrain, PlyStress: plyStress,
	}
}
