package cure

import (
	"math"

	"scarfwright/physics/si"
)

// bath is a batch in its vessel, as the energy balance sees it:
//
//	dT/da = rise - (T - air)/tau dt/da
type bath struct {
	air, start, tau, rise float64 // temperatures in K, tau in s
}

func (r *resin) bath(b Batch) bath {
	v, m := b.Vessel, float64(b.Mass)
	depth := m / r.density / float64(v.Bottom)
	loss := r.wall * (float64(v.Top+v.Base)*float64(v.Bottom) + float64(v.Side)*float64(v.Around)*depth)
	capacity := m*r.c + v.Capacity
	return bath{float64(b.Air), float64(b.start()), capacity / loss, m * r.heat / capacity}
}

// batch is what came of it: seconds from mixing, and kelvin.
type batch struct {
	gel, doubled, plus25, plus30 float64 // plus: +Inf where it never warms so far
	peak, peakAt                 float64
}

// How many steps to gel and from there on. The tests compare with physics/heat:
// gel within 0.4 %, the peak within 1.5 K.
const (
	stepsToGel, stepsAfter               = 64, 48
	stepsToGelRadical, stepsAfterRadical = 8, 80
	mostCured                            = 0.999 // a peak comes before that, or is one of no account
)

// Viscosity against degree by (ag/(ag-a))^1.5 (a form of Castro and Macosko, from
// memory) doubles at this share of the degree of gel; that warming thins the mix
// meanwhile is left out.
var doubledAt = 1 - math.Pow(2, -2/3.0)

// run follows a batch. It steps along the
// coordinate x of resin, not along time: a runaway then costs no more steps than a
// film. Over a step the pace is that of its middle, and with it the balance of
// heat is solved exactly, so that the slowest cup can't make it unstable:
//
//	T1 = air + (T0-air) e^-d + rise da (1-e^-d)/d,   d = dt/tau
//
// Second order. The steps depend smoothly on the parameters, as the fit's
// differences need. Past gel it goes on to the peak where wanted.
func (r *resin) run(b bath, dose si.Ratio, toPeak bool) batch {
	boost := r.boost(dose)
	toGel, after := stepsToGel, stepsAfter
	if r.kind == Polyester {
		toGel, after = stepsToGelRadical, stepsAfterRadical
	}
	x0, xGel, xEnd := r.coordinate(0), r.coordinate(r.gel), r.coordinate(mostCured)
	t, T, a := r.woken(b, dose)
	out := batch{plus25: math.Inf(1), plus30: math.Inf(1), peak: T, peakAt: t}
	doubled := doubledAt * r.gel
	x, h := x0, (xGel-x0)/float64(toGel)
	var before [3]float64 // T of the last two nodes, t of the last
	for i := range toGel + after {
		if i == toGel {
			out.gel = t
			if !toPeak {
				return out
			}
		}
		if i >= toGel { // ever shorter steps: a fast one peaks close to the end
			left, one := float64(toGel+after-i)/float64(after), 1/float64(after)
			h = (xEnd - xGel) * (left*left - (left-one)*(left-one))
		}
		am, a1 := r.ahead(a, x, h)
		half := h / 2 * r.pace(a, T, r.arrhenius(T, boost))
		Tm := b.step(T, am-a, half)
		dt := h * r.pace(am, Tm, r.arrhenius(Tm, boost))
		T1 := b.step(T, a1-a, dt)
		if a < doubled && a1 >= doubled {
			out.doubled = t + dt*(doubled-a)/(a1-a)
		}
		cross := func(rise float64, at *float64) {
			if d := b.start + rise; T < d && T1 >= d && math.IsInf(*at, 1) {
				*at = t + dt*(d-T)/(T1-T)
			}
		}
		cross(25, &out.plus25)
		cross(30, &out.plus30)
		if i > 1 && T > before[1] && T >= T1 && T >= out.peak {
			out.peak, out.peakAt = vertex(before[1], T, T1, before[2], t, t+dt)
		}
		if i >= toGel && T1 < out.peak-0.5 {
			break
		}
		before = [3]float64{before[1], T, t}
		t, T, a, x = t+dt, T1, a1, x+h
		if i == toGel+after-1 && T > out.peak {
			out.peak, out.peakAt = T, t
		}
	}
	return out
}

// woken is when the inhibitor is used up, the temperature then, and the degree. Of a
// batch that begins warmer or colder than the air the warmer of the two counts all
// that while: too soon rather than too late.
func (r *resin) woken(b bath, dose si.Ratio) (t, T, a float64) {
	t = r.induction(max(b.air, b.start), dose)
	return t, b.air + (b.start-b.air)*math.Exp(-t/b.tau), 0
}

// step is the temperature after a gain in degree that took dt.
func (b bath) step(T, gain, dt float64) float64 {
	d := dt / b.tau
	kept := 1 - d/2*(1-d/3*(1-d/4*(1-d/5))) // (1-e^-d)/d, to 1e-8
	if d > 0.05 {
		kept = -math.Expm1(-d) / d
	}
	return b.air + (T-b.air)*(1-d*kept) + b.rise*gain*kept
}

// vertex is the top of the parabola through three nodes one step apart, and the
// time there.
func vertex(y0, y1, y2, t0, t1, t2 float64) (y, t float64) {
	bend := y0 - 2*y1 + y2
	if bend >= 0 {
		return y1, t1
	}
	u := (y0 - y2) / (2 * bend) // steps from the middle
	return y1 - (y0-y2)*u/4, t1 + u*(t2-t0)/2 + u*u*(t0-2*t1+t2)/2
}

// pot is the end of pot life by a criterion, never later than gel.
func (o batch) pot(c Criterion) float64 {
	return min(o.gel, [...]float64{Gel: o.gel, PlusKelvin25: o.plus25, PlusKelvin30: o.plus30, ViscosityDoubled: o.doubled}[c])
}

// ranAway reports whether a batch fed its own fire: that it warmed by more than
// R T^2/E, about 13 K, over which its rate grows e-fold (Frank-Kamenetskii, from
// memory).
func (r *resin) ranAway(b bath, o batch) bool {
	return o.peak-max(b.start, b.air) > b.air*b.air/r.eR
}

// film is the time in seconds from mixing to a degree at one temperature. The
// epoxy's unbraked part is closed (kinetics.Kamal.Time has the form); what brake
// and polyester add is smooth in x and goes by Gauss's rule.
func (r *resin) film(T float64, dose si.Ratio, to float64) float64 {
	lnk := r.arrhenius(T, r.boost(dose))
	x0, x1 := r.coordinate(0), r.coordinate(to)
	t := r.induction(T, dose)
	// The brake doubles every few hundredths of degree near the glass: short panels last.
	lo := x0
	for i := range panels {
		hi := x1 - (x1-x0)*math.Pow(0.4, float64(i+1))
		if i == panels-1 {
			hi = x1
		}
		for j, u := range gaussAt {
			w := gaussWeight[j] * (hi - lo) / 2
			mid, arm := (lo+hi)/2, (hi-lo)/2*u
			t += w * (r.pace(r.degree(mid-arm), T, lnk) + r.pace(r.degree(mid+arm), T, lnk))
		}
		lo = hi
	}
	return t
}

const panels = 4

// Gauss-Legendre, 8 points, the positive half (Abramowitz and Stegun, table 25.4,
// from memory; the tests integrate with it).
var (
	gaussAt     = [4]float64{0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363}
	gaussWeight = [4]float64{0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763}
)
