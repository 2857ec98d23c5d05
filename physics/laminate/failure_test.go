package laminate_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

var (
	carbonStrength = laminate.Strength{Xt: si.MPa(1500), Xc: si.MPa(1500), Yt: si.MPa(40), Yc: si.MPa(246), S: si.MPa(68)}
	glassStrength  = laminate.Strength{Xt: si.MPa(1140), Xc: si.MPa(620), Yt: si.MPa(39), Yc: si.MPa(128), S: si.MPa(89)}
)

func TestPublishedFailure(t *testing.T) {
	stack := plies(t, "[0/90bar]s", kawCarbon, si.MM(5))
	x := []laminate.Strength{carbonStrength}
	points := laminate.Points(stack, nx(1))
	ratio := func(c laminate.Criterion, ply int) float64 {
		return laminate.FailureOf(c, kawCarbon, carbonStrength, state(t, points, ply, laminate.Middle).PlyStress).Ratio
	}
	first := laminate.FirstPlyFailure(stack, x, nx(1), laminate.TsaiWu)
	collapse := laminate.LastPlyFailure(stack, x, nx(1), laminate.TsaiWu)
	checkFigures(t, []figure{
		{"first ply failure by Tsai-Wu 7.277e6 N/m", first.Ratio, 7.277e6, 1e-3 * 7.277e6, kawOpen},
		{"last ply failure 1.5e7 N/m", collapse.Last(), 1.5e7, 1e-3 * 1.5e7, kawOpen},
		{"0 ply by Tsai-Wu", ratio(laminate.TsaiWu, 0), 1.339e7, 1e-3 * 1.339e7, kawOpen},
		{"90 ply by Tsai-Wu", ratio(laminate.TsaiWu, 1), 7.277e6, 1e-3 * 7.277e6, kawOpen},
		{"0 ply by max strain", ratio(laminate.MaxStrain, 0), 1.548e7, 1e-3 * 1.548e7, kawOpen},
		{"90 ply by max strain", ratio(laminate.MaxStrain, 1), 7.254e6, 1e-3 * 7.254e6, kawOpen},
	})
	if first.Ply != 1 || first.Mode != laminate.AcrossTension {
		t.Errorf("first failure: got ply %d, %v; want the 90 ply, tension across the fibres", first.Ply, first.Mode)
	}
	if len(collapse) != 2 || len(collapse[1].Failures) != 2 || collapse[1].Failures[0].Mode != laminate.FibreTension {
		t.Errorf("collapse: got %+v; want the 90 ply, then both 0 plies in tension along the fibres", collapse)
	}
	if collapse.First() != first.Ratio {
		t.Errorf("the collapse starts at %v, first ply failure is %v", collapse.First(), first.Ratio)
	}
}

func TestGlassFirstPlyFailure(t *testing.T) {
	meanMPa := func(code string) laminate.PlyFailure {
		stack := plies(t, code, glassUD, si.MM(0.25))
		h := laminate.NewStiffness(stack).H
		return laminate.FirstPlyFailure(stack, []laminate.Strength{glassStrength}, nx(si.LineLoad(1e6*float64(h))), laminate.TsaiWu)
	}
	checkFigures(t, []figure{
		{"[0/90]s first fails at 97.55 MPa", meanMPa("[0/90]s").Ratio, 97.55, 1e-3 * 97.55, glassC},
		{"[+-45]s first fails at 119.3 MPa", meanMPa("[+-45]s").Ratio, 119.3, 1e-3 * 119.3, glassC},
		{"[0/45/-45/90]s first fails at 79.29 MPa", meanMPa("[0/45/-45/90]s").Ratio, 79.29, 1e-3 * 79.29, glassC},
	})
	if got := meanMPa("[0/45/-45/90]s"); got.Ply != 3 && got.Ply != 4 {
		t.Errorf("quasi-isotropic: ply %d fails first, want a 90 ply", got.Ply)
	}
	p0 := laminate.Points(plies(t, "[0/90]s", glassUD, si.MM(0.25)), nx(si.LineLoad(1e3)))[1].PlyStress
	near(t, "the 0 ply alone, MPa ["+glassC+"]",
		laminate.FailureOf(laminate.TsaiWu, glassUD, glassStrength, p0).Ratio, 598.5, 0.6)
}

// Tsai-Hill by hand, in one line: shear equal to the strength across, and half of
// the strength along, in the sign of each.
func TestTsaiHillByHand(t *testing.T) {
	x := laminate.Strength{Xt: 100, Xc: 80, Yt: 10, Yc: 20, S: 5}
	for _, r := range []struct {
		stress laminate.Stress
		index  float64 // the quadratic form, worked by hand
	}{
		{laminate.Stress{50, 0, 0}, 0.25},
		{laminate.Stress{-40, 0, 0}, 0.25},
		{laminate.Stress{50, 5, 0}, 0.25 - 0.025 + 0.25},
		{laminate.Stress{-40, -10, 0}, 0.25 - 0.0625 + 0.25},
		{laminate.Stress{50, -10, 2.5}, 0.25 + 0.05 + 0.25 + 0.25},
	} {
		got := laminate.FailureOf(laminate.TsaiHill, jones, x, r.stress).Ratio
		near(t, "ratio", got, 1/math.Sqrt(r.index), 1e-12)
	}
}

func drawStrength(t *rapid.T) laminate.Strength {
	mpa := func(name string, low, high float64) si.Pressure {
		return si.MPa(rapid.Float64Range(low, high).Draw(t, name))
	}
	x := laminate.Strength{Xt: mpa("Xt", 300, 2000), Xc: mpa("Xc", 300, 2000),
		Yt: mpa("Yt", 20, 590), Yc: mpa("Yc", 20, 590), S: mpa("S", 20, 150)}
	if err := x.Check(); err != nil {
		t.Fatal(err)
	}
	return x
}

func TestFailurePromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, x := drawLamina(t), drawStrength(t)
		draw := func(name string) si.Pressure {
			s := si.MPa(rapid.Float64Range(-300, 300).Draw(t, name))
			if s > -1e-3 && s < 1e-3 {
				return 0 // stresses whose squares float64 can't hold are no stresses
			}
			return s
		}
		s := laminate.Stress{draw("s1"), draw("s2"), draw("t12")}
		k := rapid.Float64Range(0.01, 100).Draw(t, "k")
		for _, c := range laminate.Criteria {
			f := laminate.FailureOf(c, l, x, s)
			times := func(k float64) laminate.Stress {
				return laminate.Stress{s[0] * si.Pressure(k), s[1] * si.Pressure(k), s[2] * si.Pressure(k)}
			}
			if s == (laminate.Stress{}) {
				if !math.IsInf(f.Ratio, 1) || f.Mode != laminate.NoMode {
					t.Errorf("%v, no stress: got %+v", c, f)
				}
				continue
			}
			within(t, c.String()+" at k times the stress", laminate.FailureOf(c, l, x, times(k)).Ratio, f.Ratio/k, 1e-9)
			within(t, c.String()+" at the stress of failure", laminate.FailureOf(c, l, x, times(f.Ratio)).Ratio, 1, 1e-9)
			// Shear has no sign.
			turned := laminate.FailureOf(c, l, x, laminate.Stress{s[0], s[1], -s[2]})
			within(t, c.String()+" with the shear turned", turned.Ratio, f.Ratio, 1e-12)
		}
	})
}

func TestOneStressAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, x := drawLamina(t), drawStrength(t)
		s := si.MPa(rapid.Float64Range(1, 100).Draw(t, "stress"))
		for _, c := range []laminate.Criterion{laminate.MaxStress, laminate.TsaiHill, laminate.TsaiWu} {
			for _, r := range []struct {
				stress laminate.Stress
				X      si.Pressure
				mode   laminate.Mode
			}{
				{laminate.Stress{s, 0, 0}, x.Xt, laminate.FibreTension},
				{laminate.Stress{-s, 0, 0}, x.Xc, laminate.FibreCompression},
				{laminate.Stress{0, s, 0}, x.Yt, laminate.AcrossTension},
				{laminate.Stress{0, -s, 0}, x.Yc, laminate.AcrossCompression},
				{laminate.Stress{0, 0, s}, x.S, laminate.ShearMode},
				{laminate.Stress{0, 0, -s}, x.S, laminate.ShearMode},
			} {
				f := laminate.FailureOf(c, l, x, r.stress)
				within(t, c.String()+" "+r.mode.String(), f.Ratio, float64(r.X/s), 1e-10)
				if f.Mode != r.mode {
					t.Errorf("%v: got mode %v, want %v", c, f.Mode, r.mode)
				}
			}
		}
	})
}

func TestCollapsePromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stack := drawPlies(t)
		x := make([]laminate.Strength, len(stack))
		for i := range x {
			x[i] = drawStrength(t)
		}
		load := laminate.Load{N: [3]si.LineLoad{
			si.NPerMM(rapid.Float64Range(-500, 500).Draw(t, "Nx")),
			si.NPerMM(rapid.Float64Range(-500, 500).Draw(t, "Ny")),
			si.NPerMM(rapid.Float64Range(1, 500).Draw(t, "Nxy")),
		}}
		twice := load
		for i := range twice.N {
			twice.N[i] *= 2
		}
		for _, c := range laminate.Criteria {
			first := laminate.FirstPlyFailure(stack, x, load, c)
			within(t, "first ply at twice the load", laminate.FirstPlyFailure(stack, x, twice, c).Ratio, first.Ratio/2, 1e-9)

			// The worst of the whole field is at the ply and face that was named.
			worst := math.Inf(1)
			for _, p := range laminate.Points(stack, load) {
				worst = min(worst, laminate.FailureOf(c, stack[p.Ply].Lamina, x[p.Ply], p.PlyStress).Ratio)
			}
			within(t, "first ply against every point", first.Ratio, worst, 1e-12)

			collapse := laminate.LastPlyFailure(stack, x, load, c)
			if collapse.First() != first.Ratio {
				t.Errorf("%v: collapse starts at %v, first ply is %v", c, collapse.First(), first.Ratio)
			}
			if collapse.First() > collapse.Last() {
				t.Errorf("%v: first %v above last %v", c, collapse.First(), collapse.Last())
			}
			failed := map[int]bool{}
			for i, step := range collapse {
				if i > 0 && step.Ratio < collapse[i-1].Ratio {
					t.Errorf("%v: step %d falls", c, i)
				}
				for _, f := range step.Failures {
					if failed[f.Ply] {
						t.Errorf("%v: ply %d fails twice", c, f.Ply)
					}
					failed[f.Ply] = true
				}
			}
			if len(failed) != len(stack) {
				t.Errorf("%v: %d of %d plies failed under a load in every direction", c, len(failed), len(stack))
			}
		}
	})
}

// The two halves of a symmetric laminate pulled in its plane fail together, rounding
// or no: one alone would leave a remainder that curls.
func TestSymmetricLaminateFailsInPairs(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := drawPlies(t)
		mirror := slices.Clone(half)
		slices.Reverse(mirror)
		stack := append(half, mirror...)
		load := laminate.Load{N: [3]si.LineLoad{si.NPerMM(rapid.Float64Range(-300, 300).Draw(t, "Nx")), si.NPerMM(70), si.NPerMM(-20)}}
		for _, step := range laminate.LastPlyFailure(stack, []laminate.Strength{drawStrength(t)}, load, laminate.TsaiWu) {
			var gone []int
			for _, f := range step.Failures {
				gone = append(gone, f.Ply)
			}
			for _, i := range gone {
				if !slices.Contains(gone, len(stack)-1-i) {
					t.Errorf("plies %v of %d go together: ply %d without its mirror image", gone, len(stack), i)
				}
			}
		}
	})
}

// A last ply that can carry more than the first takes the load up; one that can't
// goes with it. Two isotropic layers of one modulus share by thickness, so both
// sums can be done by hand: at strengths of 100 and 300 MPa and equal thickness
// (1 mm in the middle, 2 x 0.5 mm outside), the middle fails at 2 x 100 N/mm, the
// rest at 300; at 100 and 150, the rest could carry 150 only and goes at 200.
func TestCollapseByHand(t *testing.T) {
	l := laminate.Isotropic(si.GPa(10), 0)
	strong := func(mpa float64) laminate.Strength {
		s := si.MPa(mpa)
		return laminate.Strength{Xt: s, Xc: s, Yt: s, Yc: s, S: s}
	}
	stack := []laminate.Ply{{Lamina: l, Thickness: si.MM(0.5)}, {Lamina: l, Thickness: si.MM(1)}, {Lamina: l, Thickness: si.MM(0.5)}}
	for _, r := range []struct{ outer, first, last float64 }{{300, 200, 300}, {150, 200, 200}} {
		x := []laminate.Strength{strong(r.outer), strong(100), strong(r.outer)}
		c := laminate.LastPlyFailure(stack, x, nx(si.NPerMM(1)), laminate.MaxStress)
		near(t, "first, N/mm", c.First(), r.first, 1e-9)
		near(t, "last, N/mm", c.Last(), r.last, 1e-9)
	}
}

func TestNoLoadNoFailure(t *testing.T) {
	stack, x := plies(t, "[0/90]s", glassUD, si.MM(0.25)), []laminate.Strength{glassStrength}
	if f := laminate.FirstPlyFailure(stack, x, laminate.Load{}, laminate.TsaiWu); f.Ply != -1 || !math.IsInf(f.Ratio, 1) {
		t.Errorf("no load: got %+v", f)
	}
	if c := laminate.LastPlyFailure(stack, x, laminate.Load{}, laminate.TsaiWu); c != nil || !math.IsInf(c.Last(), 1) || !math.IsInf(c.First(), 1) {
		t.Errorf("no load: got %+v", c)
	}
}

func TestStrengthCheck(t *testing.T) {
	if err := glassStrength.Check(); err != nil {
		t.Error(err)
	}
	for _, r := range []struct {
		spoil func(*laminate.Strength)
		want  string // part of the message
	}{
		{func(x *laminate.Strength) { x.Xc = -x.Xc }, "strength Xc"},
		{func(x *laminate.Strength) { x.S = si.Pressure(math.NaN()) }, "strength S"},
		{func(x *laminate.Strength) { x.Xt, x.Yt = x.Yt, x.Xt }, "strength Yt = 1.14e+09 Pa: must be below twice Xt"},
		{func(x *laminate.Strength) { x.Xc, x.Yc = x.Yc, x.Xc }, "strength Yc"},
	} {
		bad := glassStrength
		r.spoil(&bad)
		if err := bad.Check(); err == nil || !strings.Contains(err.Error(), r.want) {
			t.Errorf("got %v, want %q", err, r.want)
		}
	}
}
