package laminate

import (
	"fmt"

	"scarfwright/physics/si"
)

// Phase is one isotropic ingredient of a lamina: the glass, or the cured resin.
type Phase struct {
	E  si.Pressure
	Nu float64
}

// G returns the shear modulus of the phase in pascals, E / 2(1+nu).
func (p Phase) G() si.Pressure { return si.Pressure(float64(p.E) / (2 * (1 + p.Nu))) }

// Check returns an error when no solid has these constants.
func (p Phase) Check() error {
	if !(p.E > 0) {
		return fmt.Errorf("modulus %.4g Pa: must be positive", p.E.Pa())
	}
	if !(p.Nu > -1 && p.Nu < 0.5) {
		return fmt.Errorf("poisson's ratio %.4g: must lie between -1 and 0.5", p.Nu)
	}
	return nil
}

// Halpin-Tsai fitting parameters for round fibres in a square array
// (HalpinTsai1976, by way of Kaw2006 ch. 3; from memory).
const (
	XiTransverse = 2.0 // E2
	XiShear      = 1.0 // G12, good up to about Vf = 0.5
)

// RuleOfMixtures returns the lamina with straight parallel fibres that the two
// simplest averages give, for a fibre volume fraction 0 <= vf <= 1.
//
//	E1   = Ef Vf + Em Vm        fibre and resin stretch alike
//	nu12 = nuf Vf + num Vm
//	E2   = 1 / (Vf/Ef + Vm/Em)  fibre and resin carry alike
//	G12  = 1 / (Vf/Gf + Vm/Gm)
//
// Kaw2006 ch. 3. E1 and nu12 are good. E2 and G12 by this inverse rule are lower
// bounds and for glass come out at about half: see HalpinTsaiLamina.
//
// A perfect lamina: do not set it beside figures from ClassRule.
func RuleOfMixtures(fibre, resin Phase, vf si.Ratio) Lamina {
	return Lamina{
		E1:   parallel(fibre.E, resin.E, vf),
		E2:   series(fibre.E, resin.E, vf),
		G12:  series(fibre.G(), resin.G(), vf),
		Nu12: fibre.Nu*float64(vf) + resin.Nu*(1-float64(vf)),
	}
}

// HalpinTsaiLamina returns the lamina with E1 and nu12 by the rule of mixtures and
// E2 and G12 by HalpinTsai with XiTransverse and XiShear, for 0 <= vf <= 1.
func HalpinTsaiLamina(fibre, resin Phase, vf si.Ratio) Lamina {
	l := RuleOfMixtures(fibre, resin, vf)
	l.E2 = HalpinTsai(fibre.E, resin.E, vf, XiTransverse)
	l.G12 = HalpinTsai(fibre.G(), resin.G(), vf, XiShear)
	return l
}

// HalpinTsai returns a modulus across or in shear to the fibres in pascals, for
// 0 <= vf <= 1 and xi >= 0.
//
//	P = Pm (1 + xi eta Vf) / (1 - eta Vf),  eta = (Pf/Pm - 1) / (Pf/Pm + xi)
//
// It promises: resin at vf = 0, fibre at vf = 1; xi = 0 is the inverse rule, and
// xi without bound tends to the rule of mixtures.
func HalpinTsai(fibre, resin si.Pressure, vf si.Ratio, xi float64) si.Pressure {
	r, Vf := float64(fibre/resin), float64(vf)
	eta := (r - 1) / (r + xi)
	return si.Pressure(float64(resin) * (1 + xi*eta*Vf) / (1 - eta*Vf))
}

// RandomMat returns the lamina, alike in all directions of the plane, of the same
// fibres strewn at random: long fibres, same volume fraction as ud.
//
//	E = 3/8 E1 + 5/8 E2,  G = E1/8 + E2/4,  nu = E/2G - 1
//
// Tsai and Pagano, from memory. Chopped strand mat made by hand falls well below
// it: about 38 % at Vf = 0.175 (independent computation against ClassRule).
func RandomMat(ud Lamina) Lamina {
	E := 3./8*float64(ud.E1) + 5./8*float64(ud.E2)
	G := float64(ud.E1)/8 + float64(ud.E2)/4
	return Lamina{E1: si.Pressure(E), E2: si.Pressure(E), G12: si.Pressure(G), Nu12: E/(2*G) - 1}
}

// parallel averages two moduli that share one strain, series two that share one stress.
func parallel(f, m si.Pressure, vf si.Ratio) si.Pressure {
	Vf := float64(vf)
	return si.Pressure(float64(f)*Vf + float64(m)*(1-Vf))
}

func series(f, m si.Pressure, vf si.Ratio) si.Pressure {
	Vf := float64(vf)
	return si.Pressure(1 / (Vf/float64(f) + (1-Vf)/float64(m)))
}
