package cure

import (
	"math"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// resin is one set of parameter values: the most likely one, or one of the draws.
// It repeats the laws of physics/kinetics in a form made for speed, since a plan
// asks some hundred thousand times; the tests hold the two together.
type resin struct {
	kind             Kind
	lnK, eR          float64 // ln k at 25 °C [1/s], E/R [K]
	heat, wall, sand float64 // J/kg; share of the usual heat transfer; degree

	kap float64 // epoxy

	lnInd, eIndR, q, m, seed float64 // polyester

	gel, density, c float64
	tg0, span, lam  float64 // glass
	centre, width   float64
}

func newResin(s Sheet, z []float64) resin {
	u := usual[s.Kind]
	r := resin{
		kind: s.Kind, gel: u.gel, density: float64(s.Density), c: float64(s.SpecificHeat),
		tg0: float64(u.glass.Tg0), span: float64(u.glass.TgInf.Sub(u.glass.Tg0)), lam: u.glass.Lambda,
		centre: float64(u.glass.Centre), width: float64(u.glass.Width),
	}
	for i, p := range u.parameters {
		p.put(&r, p.value(z[i]))
	}
	return r
}

// law is the same in the words of physics/kinetics.
func (r *resin) law(dose si.Ratio) kinetics.Law {
	E := si.MolarEnergy(r.eR * kinetics.R)
	k := kinetics.Arrhenius{A: math.Exp(r.lnK + r.eR/refTemp), E: E}
	var law kinetics.Law = kinetics.Kamal{K1: k.Times(r.kap), K2: k, M: 1, N: 2}
	if r.kind == Polyester {
		law = kinetics.Radical{
			Induction: kinetics.Induction{Ref: si.Time(math.Exp(r.lnInd)), E: si.MolarEnergy(r.eIndR * kinetics.R), Q: r.q},
			Peroxide:  dose, K: k, P: r.q, M: r.m, N: 2 - r.m, Seed: r.seed,
		}
	}
	return kinetics.Braked{Law: law, Brake: usual[r.kind].glass}
}

// boost is what the dose adds to ln k.
func (r *resin) boost(dose si.Ratio) float64 {
	if r.kind != Polyester {
		return 0
	}
	return r.q * math.Log(float64(dose/refDose))
}

// induction is the time in seconds before anything sets, 0 for an epoxy.
func (r *resin) induction(T float64, dose si.Ratio) float64 {
	if r.kind != Polyester {
		return 0
	}
	return math.Exp(r.lnInd + r.eIndR*(1/T-1/refTemp) - r.boost(dose))
}

// arrhenius is ln k at T.
func (r *resin) arrhenius(T, boost float64) float64 { return r.lnK + boost - r.eR*(1/T-1/refTemp) }

func (r *resin) tg(a float64) float64 { return r.tg0 + r.span*r.lam*a/(1-(1-r.lam)*a) }

// A step along the degree is best taken where the rate's own growth is taken out:
//
//	epoxy       x = ln(kap + a)          dt/dx = brake / [k (1-a)^2]
//	polyester   x = (a + seed)^(1-m)     dt/dx = brake / [(1-m) k (1-a)^(2-m)]
//
// Both are smooth from the first moment on.
func (r *resin) coordinate(a float64) float64 {
	if r.kind == Polyester {
		return math.Pow(a+r.seed, 1-r.m)
	}
	return math.Log(r.kap + a)
}

func (r *resin) degree(x float64) float64 {
	if r.kind == Polyester {
		return max(math.Pow(x, 1/(1-r.m))-r.seed, 0)
	}
	return max(math.Exp(x)-r.kap, 0)
}

// ahead returns the degrees half a step and a whole step along the coordinate.
func (r *resin) ahead(a, x, h float64) (middle, end float64) {
	if r.kind == Polyester {
		return r.degree(x + h/2), r.degree(x + h)
	}
	g := math.Exp(h / 2) // kap + a grows by the same factor twice
	middle = (r.kap+a)*g - r.kap
	return middle, (r.kap+middle)*g - r.kap
}

// pace is dt/dx in s, given ln k.
func (r *resin) pace(a, T, lnk float64) float64 {
	p := math.Exp(-lnk) * r.held(a, T)
	if r.kind == Polyester {
		return p * math.Exp((r.m-2)*math.Log(1-a)) / (1 - r.m)
	}
	return p / ((1 - a) * (1 - a))
}

// held is what the brake divides a rate by, from 1 up.
func (r *resin) held(a, T float64) float64 {
	g := (r.tg(a) - T - r.centre) / r.width
	if g < -18 {
		return 1 // to 2e-8: most of a hot cup, and an exponential saved
	}
	return 1 + math.Exp(min(g, 300))
}

// rate is da/dt in 1/s.
func (r *resin) rate(a, T, boost float64) float64 {
	k := math.Exp(r.arrhenius(T, boost)) / r.held(a, T)
	if r.kind == Polyester {
		return k * math.Exp(r.m*math.Log(a+r.seed)+(2-r.m)*math.Log(1-a))
	}
	return k * (r.kap + a) * (1 - a) * (1 - a)
}
