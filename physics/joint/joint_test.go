package joint_test

import (
	"math"
	"testing"

	"scarfwright/physics/joint"
	"scarfwright/physics/si"
)

// Where expected numbers come from.
const (
	closedForm = "closed form"
	handbook   = "independent computation, recorded in the project's handbook of reference values"
	benchmark  = "independent computation: 2-D finite elements, 299 922 unknowns, recorded in the project's benchmark"
)

// tb is what *testing.T and *rapid.T have in common here.
type tb interface {
	Helper()
	Errorf(format string, args ...any)
	Fatal(args ...any)
}

func near(t tb, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", what, got, want, tol)
	}
}

func refused(t *testing.T, what string, err error) {
	t.Helper()
	if err == nil {
		t.Errorf("%s: not refused", what)
	}
}

func TestUniform(t *testing.T) {
	for _, r := range []struct{ ratio, theta, tau, peel float64 }{ // closedForm, table of the handbook
		{4, 14.036, 0.23529, 0.058824}, {6, 9.462, 0.16216, 0.027027}, {8, 7.125, 0.12308, 0.015385},
		{12, 4.764, 0.08276, 0.006897}, {20, 2.862, 0.04988, 0.002494},
		{30, 1.909, 0.03330, 0.001110}, {50, 1.146, 0.01999, 0.000400},
	} {
		tau, peel := joint.Uniform(1, r.ratio)
		angle, slant := joint.Slope(si.MM(6), r.ratio)
		near(t, "angle ["+closedForm+"]", angle.Degrees(), r.theta, 5e-4)
		near(t, "tau/s ["+closedForm+"]", float64(tau), r.tau, 1e-5)
		near(t, "peel/s ["+closedForm+"]", float64(peel), r.peel, 1e-6)
		near(t, "slant, identity", slant.MM()*math.Sin(angle.Radians()), 6, 1e-12)
	}
	_, slant := joint.Slope(si.MM(6), 12)
	near(t, "slant of 6 mm at 12:1, mm ["+closedForm+"]", slant.MM(), 72.2496, 1e-4)
}

func TestFullRatio(t *testing.T) {
	for _, r := range []struct{ sigma, tau, want, tol float64 }{ // closedForm; strengths: BS4994-1987 second-hand
		{85, 7, 12.06, 0.005}, {85, 17.25, 4.71, 0.01}, {100, 7, 14.2, 0.05}, {125, 7, 17.8, 0.05}, {150, 7, 21.4, 0.05},
		{190, 6, 31.64, 0.01}, {190, 10, 18.9, 0.05}, {20, 10, 1, 1e-12},
	} {
		got, err := joint.FullRatio(si.MPa(r.sigma), si.MPa(r.tau))
		if err != nil {
			t.Errorf("%v: %v", r, err)
		}
		near(t, "ratio needed ["+closedForm+"]", got, r.want, r.tol)
		tau, _ := joint.Uniform(si.MPa(r.sigma), got)
		near(t, "identity: shear at that ratio is the bond's strength", tau.MPa(), r.tau, 1e-9)
	}
	for _, r := range [][2]si.Pressure{{19, 10}, {0, 1}, {1, 0}, {-4, -1},
		{si.Pressure(math.NaN()), 1}, {si.Pressure(math.Inf(1)), 1}} {
		_, err := joint.FullRatio(r[0], r[1])
		refused(t, "strengths", err)
	}
}

func TestEfficiency(t *testing.T) {
	for _, r := range []struct{ ratio, want float64 }{{6, 0.508}, {8, 0.669}, {10, 0.832}, {12, 0.995}, {12.07, 1}, {50, 1}} {
		near(t, "efficiency of 85/7 MPa ["+handbook+"]", float64(joint.Efficiency(si.MPa(85), si.MPa(7), r.ratio)), r.want, 0.001)
	}
	if !math.IsNaN(float64(joint.Efficiency(0, 1, 12))) {
		t.Error("no strength: not NaN")
	}
}

func TestOverlay(t *testing.T) {
	strip := func(E1, t1, E2, t2 float64) joint.Overlay {
		o, err := joint.NewOverlay([]joint.Ply{{Thickness: si.MM(t1), E: si.GPa(E1), G: si.GPa(2)}},
			[]joint.Ply{{Thickness: si.MM(t2), E: si.GPa(E2), G: si.GPa(2)}})
		if err != nil {
			t.Fatal(err)
		}
		return o
	}
	for _, r := range []struct{ E1, t1, E2, t2, zn, EA, EI float64 }{ // handbook; N/mm, N mm
		{7, 6, 14.5, 3, 5.28947, 85500, 591335.5}, {9, 6, 7, 4, 4.70732, 82000, 660308.9}, {7, 6, 7, 6, 6, 84000, 1008000},
	} {
		o := strip(r.E1, r.t1, r.E2, r.t2)
		near(t, "neutral axis, mm ["+handbook+"]", o.NeutralAxis.MM(), r.zn, 1e-5*r.zn)
		near(t, "EA ["+handbook+"]", o.EA/1e3, r.EA, 1e-9*r.EA)
		near(t, "EI ["+handbook+"]", o.EI*1e3, r.EI, 1e-7*r.EI)
		e := r.zn - r.t1/2
		near(t, "eccentricity, mm, identity", o.Eccentricity.MM(), e, 1e-5)
		near(t, "B11 = sum E t (z - z0), N, identity", o.B11, 1e3*r.E2*r.t2*(r.t1+r.t2)/2, 1e-6*o.B11)
		// Equilibrium: the stresses add up to N and their moment about the skin's mid-plane is nought.
		for _, free := range []bool{true, false} {
			N, M, dz := 0.0, 0.0, 1e-6
			for z := dz / 2; z < float64(o.Thickness); z += dz {
				a, b := o.Stress(si.NPerMM(100), si.Length(z))
				if free {
					a = b
				}
				N += float64(a) * dz
				M += float64(a) * dz * (z - float64(o.Skin)/2)
			}
			near(t, "force in balance, N/mm", N/1e3, 100, 1e-6)
			want := 0.0
			if !free { // the frames hold the moment N e
				want = 100e3 * float64(o.Eccentricity)
			}
			near(t, "moment in balance, N", M, want, 1e-3)
		}
	}
	for _, r := range []struct{ tp, want float64 }{{6, 7}, {3, 20}, {9, 4}} { // closedForm
		bound, got := joint.Bridged(si.MM(6), si.MM(r.tp))
		near(t, "hole bridged by the overlay alone ["+closedForm+"]", got, r.want, 1e-12)
		near(t, "the same, held straight ["+closedForm+"]", bound, 6/r.tp, 1e-12)
	}
	_, err := joint.NewOverlay(nil, nil)
	refused(t, "no plies", err)
}
