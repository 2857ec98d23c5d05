package laminate

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Strength holds the five strengths of a lamina in its own axes. All are positive
// numbers, the compressive ones too.
type Strength struct {
	Xt, Xc si.Pressure // along the fibres: tension, compression
	Yt, Yc si.Pressure // across
	S      si.Pressure // shear in the plane
}

// Check returns an error when the strengths can't be used: each must be positive,
// and axis 1 must not be the weak one. Where Y reaches 2X, Tsai-Hill's form opens
// up and would let some stresses grow for ever; a lamina like that is one whose axes
// were swapped.
func (s Strength) Check() error {
	for _, v := range []struct {
		name  string
		value si.Pressure
	}{{"Xt", s.Xt}, {"Xc", s.Xc}, {"Yt", s.Yt}, {"Yc", s.Yc}, {"S", s.S}} {
		if !(v.value > 0) || math.IsInf(float64(v.value), 1) {
			return fmt.Errorf("strength %s = %.4g Pa: must be positive (compressive strengths too)", v.name, v.value.Pa())
		}
	}
	if s.Yt >= 2*s.Xt {
		return fmt.Errorf("strength Yt = %.4g Pa: must be below twice Xt = %.4g Pa; axis 1 is the stronger direction", s.Yt.Pa(), s.Xt.Pa())
	}
	if s.Yc >= 2*s.Xc {
		return fmt.Errorf("strength Yc = %.4g Pa: must be below twice Xc = %.4g Pa; axis 1 is the stronger direction", s.Yc.Pa(), s.Xc.Pa())
	}
	return nil
}

// Criterion is a rule for when a lamina fails under combined stress.
type Criterion int

const (
	MaxStress Criterion = iota // each stress against its own strength
	MaxStrain                  // each strain against strength over modulus
	TsaiHill                   // one quadratic, strengths picked by the sign of the stress
	TsaiWu                     // one quadratic with linear terms, all five strengths at once
)

// Criteria lists them all, in the order they are usually tabled.
var Criteria = [...]Criterion{MaxStress, MaxStrain, TsaiHill, TsaiWu}

// String returns the usual name of the criterion.
func (c Criterion) String() string {
	return [...]string{"max stress", "max strain", "Tsai-Hill", "Tsai-Wu"}[c]
}

// Mode is the way a lamina gives.
type Mode int

const (
	NoMode            Mode = iota // no stress, no failure
	FibreTension                  // along the fibres, pulled
	FibreCompression              // along the fibres, pushed
	AcrossTension                 // across the fibres, pulled: resin cracks
	AcrossCompression             // across the fibres, pushed
	ShearMode                     // shear in the plane
)

// String returns the mode in words.
func (m Mode) String() string {
	return [...]string{"none", "tension along the fibres", "compression along the fibres",
		"tension across the fibres", "compression across the fibres", "shear in the plane"}[m]
}

// Failure says how far a lamina is from failing: it fails when the load, and every
// stress with it, is multiplied by Ratio. Below 1 it has failed already; with no
// stress at all Ratio is +Inf.
//
// MaxStress and MaxStrain know the mode. The two quadratics don't; for them Mode
// names the stress nearest to its own strength, an indication.
type Failure struct {
	Ratio float64
	Mode  Mode
}

// FailureOf returns the strength ratio of a lamina of strengths x under a stress
// in its own axes. Lamina and strengths must pass their Check.
//
// It promises: twice the stress gives half the ratio, by every criterion; one
// stress alone gives strength over stress, by every criterion but MaxStrain, which
// also counts the Poisson strain sideways.
//
// Formulae: Kaw2006 ch. 2 for MaxStress, MaxStrain and TsaiWu (strength ratios
// pinned by its [0/90/0] example); TsaiHill after Jones1999 ch. 2, from memory.
func FailureOf(c Criterion, l Lamina, x Strength, ply Stress) Failure {
	stressed := nearest(ply[0], ply[1], ply[2], x)
	switch c {
	case MaxStress:
		return stressed
	case MaxStrain:
		// A strain over its limit X/E is the stress E eps over X.
		e := l.Strain(ply)
		return nearest(
			si.Scale(l.E1, e[0]),
			si.Scale(l.E2, e[1]),
			si.Scale(l.G12, e[2]), x)
	case TsaiHill:
		return Failure{tsaiHill(x, ply), stressed.Mode}
	case TsaiWu:
		return Failure{tsaiWu(x, ply), stressed.Mode}
	}
	panic(fmt.Sprintf("laminate: unknown criterion %d", int(c)))
}

// nearest returns the ratio and mode of the component nearest to its strength.
func nearest(s1, s2, t12 si.Pressure, x Strength) Failure {
	worst := Failure{Ratio: math.Inf(1)}
	consider := func(stress, strength si.Pressure, mode Mode) {
		if r := float64(strength / stress); stress > 0 && r < worst.Ratio {
			worst = Failure{r, mode}
		}
	}
	consider(s1, x.Xt, FibreTension)
	consider(-s1, x.Xc, FibreCompression)
	consider(s2, x.Yt, AcrossTension)
	consider(-s2, x.Yc, AcrossCompression)
	consider(max(t12, -t12), x.S, ShearMode)
	return worst
}

// tsaiHill solves (s1/X)^2 - s1 s2/X^2 + (s2/Y)^2 + (t/S)^2 = 1/SR^2.
func tsaiHill(x Strength, ply Stress) float64 {
	s1, s2, t := float64(ply[0]), float64(ply[1]), float64(ply[2])
	X, Y, S := float64(x.Xt), float64(x.Yt), float64(x.S)
	if s1 < 0 {
		X = float64(x.Xc)
	}
	if s2 < 0 {
		Y = float64(x.Yc)
	}
	index := s1*s1/(X*X) - s1*s2/(X*X) + s2*s2/(Y*Y) + t*t/(S*S)
	return 1 / math.Sqrt(index) // +Inf without stress; Strength.Check keeps the form positive
}

// tsaiWu solves a SR^2 + b SR - 1 = 0 for its positive root, where
//
//	a = F11 s1^2 + F22 s2^2 + F66 t^2 + 2 F12 s1 s2,   b = F1 s1 + F2 s2
//	F1 = 1/Xt - 1/Xc, F11 = 1/(Xt Xc), F66 = 1/S^2, F12 = -sqrt(F11 F22)/2
//
// F12 can't be had from simple tests; this usual choice (the Mises-Hencky form in
// Kaw2006) keeps the surface closed, so a > 0 for every stress but none.
func tsaiWu(x Strength, ply Stress) float64 {
	s1, s2, t := float64(ply[0]), float64(ply[1]), float64(ply[2])
	Xt, Xc, Yt, Yc, S := float64(x.Xt), float64(x.Xc), float64(x.Yt), float64(x.Yc), float64(x.S)
	F1, F11 := 1/Xt-1/Xc, 1/(Xt*Xc)
	F2, F22 := 1/Yt-1/Yc, 1/(Yt*Yc)
	F12, F66 := -math.Sqrt(F11*F22)/2, 1/(S*S)

	a := F11*s1*s1 + F22*s2*s2 + F66*t*t + 2*F12*s1*s2
	b := F1*s1 + F2*s2
	if a == 0 {
		return math.Inf(1)
	}
	root := math.Sqrt(b*b + 4*a)
	if b > 0 { // the form without the difference of two near numbers
		return 2 / (b + root)
	}
	return (root - b) / (2 * a)
}
