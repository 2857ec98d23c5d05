package joint

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Lap is two sheets glued one over the other along a length L and pulled in their
// own planes: the first at x = +L/2, the second at x = -L/2.
type Lap struct {
	Stiff1, Stiff2 si.LineLoad // E t, N/m: force per width for unit strain
	Adhesive       Adhesive
	Length         si.Length
}

// Check returns an error that names what is wrong.
func (l Lap) Check() error {
	for _, q := range []struct {
		name  string
		value float64
	}{{"E t of the first sheet", float64(l.Stiff1)}, {"E t of the second sheet", float64(l.Stiff2)},
		{"length", float64(l.Length)}, {"adhesive thickness", float64(l.Adhesive.Thickness)}, {"adhesive E", float64(l.Adhesive.E)}} {
		if !(q.value > 0) || math.IsInf(q.value, 1) {
			return fmt.Errorf("lap: %s = %.4g: must be positive", q.name, q.value)
		}
	}
	if !(l.Adhesive.Nu >= 0 && l.Adhesive.Nu <= 0.5) {
		return fmt.Errorf("lap: adhesive nu = %.4g: must lie from 0 to 0.5", l.Adhesive.Nu)
	}
	return nil
}

// Omega returns how fast shear dies away from an end of a lap, in 1/m:
//
//	omega^2 = (G/eta) (1/E1t1 + 1/E2t2)
//
// Volkersen1938, from memory.
func (l Lap) Omega() float64 {
	return math.Sqrt(float64(l.Adhesive.G()) / float64(l.Adhesive.Thickness) * (1/float64(l.Stiff1) + 1/float64(l.Stiff2)))
}

// psi is how unlike the sheets are, from -1 to 1, 0 for a balanced lap.
func (l Lap) psi() float64 { return float64((l.Stiff2 - l.Stiff1) / (l.Stiff1 + l.Stiff2)) }

// Shear returns the adhesive's shear stress at x from the middle of the lap,
// -L/2 <= x <= L/2, under the load P per width:
//
//	tau(x) = (P omega/2) [cosh(omega x)/sinh(omega L/2) + psi sinh(omega x)/cosh(omega L/2)]
//	psi    = (E2t2 - E1t1)/(E1t1 + E2t2)
//
// Volkersen1938, from memory, and derived again in stepped.go as its one-step case.
// Limits: sheets stretch and don't bend (a lap on a shell with frames, or one half of
// a double lap; a free single lap bends, peels and fails earlier), elastic adhesive,
// no shear in the sheets, and the free end of the film is ignored within about its
// own thickness. It promises: the integral over the lap is P; the mean is P/L; a
// balanced lap is symmetric; swapping the sheets mirrors it.
func (l Lap) Shear(P si.LineLoad, x si.Length) si.Pressure {
	w, h := l.Omega(), float64(l.Length)/2
	// exp(-wh) is taken out of above and below, so that long laps don't overflow.
	u := w * float64(x)
	H := w * h
	up, down, end := math.Exp(u-H), math.Exp(-u-H), math.Exp(-2*H)
	cosh := (up + down) / -math.Expm1(-2*H)
	sinh := (up - down) / (1 + end)
	return si.Pressure(float64(P) * w / 2 * (cosh + l.psi()*sinh))
}

// Peak returns the greatest shear and its place: the end where the softer sheet is
// pulled, for there the two stretch most unlike.
//
//	tau_max = (P omega/2) [coth(omega L/2) + |psi| tanh(omega L/2)]
func (l Lap) Peak(P si.LineLoad) (tau si.Pressure, at si.Length) {
	at = l.Length / 2
	if l.psi() < 0 {
		at = -at
	}
	return l.Shear(P, at), at
}

// Enough returns the length at which the peak shear under a given load lies no more
// than the fraction above what it would be in an endless lap: beyond it nothing is
// gained but room for damage. For a balanced lap
//
//	L = (2/omega) artanh(1/(1+fraction))
//
// and 4 parts in 10 000 correspond to the handbook's 8/omega (closed form). The
// Length of the lap itself plays no part. Fractions above 0; others give an error.
func (l Lap) Enough(fraction si.Ratio) (si.Length, error) {
	if l.Length == 0 {
		l.Length = 1
	}
	if err := l.Check(); err != nil {
		return 0, err
	}
	if !(fraction > 0) || math.IsInf(float64(fraction), 1) {
		return 0, fmt.Errorf("fraction %.4g above the least peak: must be positive", float64(fraction))
	}
	// 1/T + psi T = q for T = tanh(omega L/2); the left side falls as T grows to 1.
	psi := math.Abs(l.psi())
	q := (1 + float64(fraction)) * (1 + psi)
	T := 2 / (q + math.Sqrt(q*q-4*psi))
	return si.Length(2 / l.Omega() * math.Atanh(T)), nil
}

// DoubleLap is an inner sheet between two outer ones, glued on both sides with an
// adhesive that yields.
type DoubleLap struct {
	InnerE, OuterE         si.Pressure // moduli
	InnerThick, OuterThick si.Length   // OuterThick is one of the two
	Film                   si.Length   // thickness of each adhesive layer, eta
	Yield                  si.Pressure // shear stress at which it flows, tau_p
	ElasticStrain          float64     // shear strain up to there, gamma_e
	PlasticStrain          float64     // and from there to failure, gamma_p; may be 0
}

// Strength returns the greatest load per width that the adhesive of a long double
// lap takes, and whether it fails at the end of the outer sheets (where the inner one is
// left alone, P1) or at the end of the inner one (P2):
//
//	U  = tau_p (gamma_e/2 + gamma_p)                  energy to failure per volume
//	P1 = sqrt(4 eta U Ei ti [1 + Ei ti/(2 Eo to)])
//	P2 = sqrt(8 eta U Eo to [1 + 2 Eo to/(Ei ti)])
//
// the lesser counts. HartSmith1973, form from memory and derived again for the
// handbook: only the energy under the curve counts, not its shape. Limits: long
// enough that the middle is idle, no peel, the sheets don't fail first, no stress from cure.
func (d DoubleLap) Strength() (P si.LineLoad, atInnerEnd bool, err error) {
	for _, q := range []struct {
		name  string
		value float64
	}{{"inner E", float64(d.InnerE)}, {"outer E", float64(d.OuterE)}, {"inner thickness", float64(d.InnerThick)},
		{"outer thickness", float64(d.OuterThick)}, {"adhesive thickness", float64(d.Film)}, {"yield stress", float64(d.Yield)},
		{"elastic strain", d.ElasticStrain}} {
		if !(q.value > 0) || math.IsInf(q.value, 1) {
			return 0, false, fmt.Errorf("double lap: %s = %.4g: must be positive", q.name, q.value)
		}
	}
	if !(d.PlasticStrain >= 0) || math.IsInf(d.PlasticStrain, 1) {
		return 0, false, fmt.Errorf("double lap: plastic strain %.4g: must be 0 or more", d.PlasticStrain)
	}
	U := float64(d.Yield) * (d.ElasticStrain/2 + d.PlasticStrain)
	eta := float64(d.Film)
	inner, outer := float64(d.InnerE)*float64(d.InnerThick), float64(d.OuterE)*float64(d.OuterThick)
	P1 := math.Sqrt(4 * eta * U * inner * (1 + inner/(2*outer)))
	P2 := math.Sqrt(8 * eta * U * outer * (1 + 2*outer/inner))
	return si.LineLoad(min(P1, P2)), P2 < P1, nil
}
