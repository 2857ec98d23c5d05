package laminate

import "scarfwright/physics/si"

// InterlaminarShear returns the shear stress between the layers of a strip that
// bends under a shear force V for each metre of width, at a depth from the outer face
// of the first layer:
//
//	tau(z) = V/EI integral from 0 to z of E (zn - s) ds
//
// It vanishes at both faces and is greatest at the neutral axis. Beam theory: plane
// sections, no force along the strip, every layer with its tensile modulus.
func InterlaminarShear(layers []Layer, V si.LineLoad, depth si.Length) si.Pressure {
	s := NewSection(layers)
	zn, z, first := float64(s.NeutralAxis), 0.0, 0.0
	for _, l := range layers {
		end := min(z+float64(l.Thickness), float64(depth))
		if end <= z {
			break
		}
		first += float64(l.Tension) * ((zn*end - end*end/2) - (zn*z - z*z/2))
		z = end
	}
	return si.Pressure(float64(V) / s.EI * first)
}
