package laminate

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Lamina is the material of a ply: four elastic constants of an orthotropic sheet
// under plane stress, axis 1 along the fibres (or along the warp of a cloth).
type Lamina struct {
	E1, E2, G12 si.Pressure
	Nu12        float64 // strain along 2 per strain along 1 under stress along 1, sign turned
}

// Isotropic returns the lamina of a sheet alike in all directions: mat, resin, metal.
func Isotropic(E si.Pressure, nu float64) Lamina {
	return Lamina{E1: E, E2: E, G12: Phase{E, nu}.G(), Nu12: nu}
}

// Check returns an error when no material has these constants: moduli must be
// positive, and nu12^2 below E1/E2, or stretching the sheet would give energy back.
func (l Lamina) Check() error {
	for _, m := range []struct {
		name  string
		value si.Pressure
	}{{"E1", l.E1}, {"E2", l.E2}, {"G12", l.G12}} {
		if !(m.value > 0) || math.IsInf(float64(m.value), 1) {
			return fmt.Errorf("%s = %.4g Pa: must be positive", m.name, m.value.Pa())
		}
	}
	if limit := math.Sqrt(float64(l.E1 / l.E2)); !(math.Abs(l.Nu12) < limit) {
		return fmt.Errorf("nu12 = %.4g: must lie within +-sqrt(E1/E2) = +-%.4g", l.Nu12, limit)
	}
	return nil
}

// Nu21 returns the minor Poisson's ratio, nu12 E2/E1.
func (l Lamina) Nu21() float64 { return l.Nu12 * float64(l.E2/l.E1) }

// Stress is a state of plane stress in pascals: normal, normal, shear. In global
// axes that is x, y, xy; in the axes of a ply 1, 2, 12.
type Stress [3]si.Pressure

// Strain is the strain that goes with a Stress; the third is engineering shear.
type Strain [3]float64

// Q returns the reduced stiffness of the lamina in its own axes, in pascals.
//
//	Q11 = E1/d, Q22 = E2/d, Q12 = nu12 E2/d, Q66 = G12,  d = 1 - nu12 nu21
//
// Kaw2006 ch. 2 (eq. from memory; example 2.6 pins it).
func (l Lamina) Q() [3][3]float64 {
	E1, E2, G12 := float64(l.E1), float64(l.E2), float64(l.G12)
	d := 1 - l.Nu12*l.Nu21()
	return [3][3]float64{
		{E1 / d, l.Nu12 * E2 / d, 0},
		{l.Nu12 * E2 / d, E2 / d, 0},
		{0, 0, G12},
	}
}

// QBar returns the reduced stiffness in pascals in the axes of the laminate, when
// the fibres lie at the angle to its x axis.
func (l Lamina) QBar(angle si.Angle) [3][3]float64 { return turned(l.Q(), angle) }

// InPlyAxes returns the stress seen along and across fibres that lie at the angle.
func (s Stress) InPlyAxes(angle si.Angle) Stress {
	v := apply(toGlobal(-angle), [3]float64{float64(s[0]), float64(s[1]), float64(s[2])})
	return Stress{si.Pressure(v[0]), si.Pressure(v[1]), si.Pressure(v[2])}
}

// InPlyAxes returns the strain seen along and across fibres that lie at the angle.
func (e Strain) InPlyAxes(angle si.Angle) Strain {
	return Strain(apply(transpose(toGlobal(angle)), e))
}

// Stress returns the stress in the lamina's own axes under a strain in those axes.
func (l Lamina) Stress(local Strain) Stress {
	v := apply(l.Q(), local)
	return Stress{si.Pressure(v[0]), si.Pressure(v[1]), si.Pressure(v[2])}
}

// Strain returns the strain in the lamina's own axes under a stress in those axes.
func (l Lamina) Strain(local Stress) Strain {
	s1, s2, t12 := float64(local[0]), float64(local[1]), float64(local[2])
	E1, E2, G12 := float64(l.E1), float64(l.E2), float64(l.G12)
	return Strain{
		s1/E1 - l.Nu12*s2/E1,
		s2/E2 - l.Nu12*s1/E1,
		t12 / G12,
	}
}

// toGlobal is the matrix T^-1 that takes a stress from ply axes at the angle to
// global axes. Its transpose takes a strain (engineering shear) the other way,
// because the energy sigma . eps doesn't depend on the axes.
func toGlobal(angle si.Angle) [3][3]float64 {
	s, c := math.Sincos(float64(angle))
	return [3][3]float64{
		{c * c, s * s, -2 * s * c},
		{s * s, c * c, 2 * s * c},
		{s * c, -s * c, c*c - s*s},
	}
}

// turned returns the stiffness k of something turned by the angle, T^-1 k T^-T.
func turned(k [3][3]float64, angle si.Angle) [3][3]float64 {
	T := toGlobal(angle)
	return multiply(multiply(T, k), transpose(T))
}
