package joint_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/joint"
	"scarfwright/physics/si"
)

// glue has the shear modulus 1000 MPa.
func glue(mm float64) joint.Adhesive {
	return joint.Adhesive{Thickness: si.MM(mm), E: si.MPa(2700), Nu: 0.35}
}

func TestVolkersen(t *testing.T) {
	for _, r := range []struct{ Et, eta, L, omega, mean, peak, factor float64 }{ // handbook; N/mm, mm, 1/mm, MPa
		{60e3, 0.5, 25, 0.258199, 4, 12.9506, 3.2377},
		{60e3, 0.5, 50, 0.258199, 2, 12.9100, 6.4550},
		{60e3, 0.5, 100, 0.258199, 1, 12.9099, 12.9099},
		{112e3, 0.2, 12.5, 0.298807, 8, 15.6711, 1.9589},
	} {
		l := joint.Lap{Stiff1: si.NPerMM(r.Et), Stiff2: si.NPerMM(r.Et), Adhesive: glue(r.eta), Length: si.MM(r.L)}
		peak, _ := l.Peak(si.NPerMM(100))
		near(t, "omega, 1/mm ["+handbook+"]", l.Omega()/1e3, r.omega, 1e-6)
		near(t, "peak, MPa ["+handbook+"]", peak.MPa(), r.peak, 1e-4)
		near(t, "peak over mean ["+handbook+"]", peak.MPa()/r.mean, r.factor, 1e-4)
		wL := l.Omega() * float64(l.Length) / 2
		near(t, "peak over mean ["+closedForm+"]", peak.MPa()/r.mean, wL/math.Tanh(wL), 1e-9)
	}
	l := joint.Lap{Stiff1: si.NPerMM(60e3), Stiff2: si.NPerMM(60e3), Adhesive: glue(0.5)}
	enough, err := l.Enough(0.00067) // coth 4 - 1
	if err != nil {
		t.Fatal(err)
	}
	near(t, "enough: omega L = 8 for coth 4 [closed form]", enough.MM()*0.258199, 8, 0.01)
	_, err = l.Enough(0)
	refused(t, "no fraction", err)
}

func drawLap(t *rapid.T) joint.Lap {
	return joint.Lap{
		Stiff1:   si.NPerMM(rapid.Float64Range(1e3, 3e5).Draw(t, "E1t1")),
		Stiff2:   si.NPerMM(rapid.Float64Range(1e3, 3e5).Draw(t, "E2t2")),
		Adhesive: glue(rapid.Float64Range(0.05, 3).Draw(t, "eta")),
		Length:   si.MM(rapid.Float64Range(1, 300).Draw(t, "L")),
	}
}

// The integral over the lap is P; swapping the sheets mirrors it; no longer lap has a
// greater peak, and beyond Enough nothing is gained.
func TestLapPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLap(t)
		const P = 1e5
		// Gauss's rule on as many pieces as resolve the ends.
		n := int(math.Ceil(l.Omega()*float64(l.Length))) + 1
		h, sum := float64(l.Length)/float64(n), 0.0
		for i := range n {
			for _, q := range gauss5 {
				sum += q[1] * h * float64(l.Shear(P, si.Length(-float64(l.Length)/2+h*(float64(i)+q[0]))))
			}
		}
		near(t, "integral over P", sum/P, 1, 1e-9)
		m := joint.Lap{Stiff1: l.Stiff2, Stiff2: l.Stiff1, Adhesive: l.Adhesive, Length: l.Length}
		x := si.Length(rapid.Float64Range(-0.5, 0.5).Draw(t, "x") * float64(l.Length))
		peak, _ := l.Peak(P)
		near(t, "mirrored", float64((m.Shear(P, -x)-l.Shear(P, x))/peak), 0, 1e-12)
		fraction := rapid.Float64Range(1e-3, 0.5).Draw(t, "fraction")
		enough, err := l.Enough(si.Ratio(fraction))
		if err != nil {
			t.Fatal(err)
		}
		long := l
		long.Length = si.Length(100 / l.Omega())
		least, _ := long.Peak(P)
		l.Length = enough
		there, _ := l.Peak(P)
		near(t, "peak at the length that is enough", float64(there/least), 1+fraction, 1e-9)
		if peak < least*(1-1e-12) {
			t.Fatalf("peak %v below that of an endless lap, %v", peak, least)
		}
	})
}

func TestDoubleLap(t *testing.T) {
	d := joint.DoubleLap{InnerE: si.MPa(12000), OuterE: si.MPa(12000), InnerThick: si.MM(6), OuterThick: si.MM(3),
		Film: si.MM(0.5), Yield: si.MPa(20), ElasticStrain: 0.02, PlasticStrain: 0.05}
	P, _, err := d.Strength()
	near(t, "balanced double lap, N/mm ["+handbook+"]", P.NPerMM(), 587.878, 587.878e-5)
	d.OuterThick = si.MM(2)
	P, inner, err2 := d.Strength()
	near(t, "thin outer sheets, N/mm ["+handbook+"]", P.NPerMM(), 438.178, 438.178e-5)
	if err != nil || err2 != nil || !inner {
		t.Errorf("%v %v, fails at the inner end: %v", err, err2, inner)
	}
	d.Film = 0
	_, _, err = d.Strength()
	refused(t, "no film", err)
}

// One step is Volkersen's lap; cutting a step in two changes nothing; the loads add up to P.
func TestSteppedPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := drawLap(t)
		const P = 1e5
		one := []joint.Step{{Length: l.Length, Parent: l.Stiff2, Patch: l.Stiff1}}
		treads, peak, err := joint.Stepped(one, l.Adhesive, P)
		if err != nil {
			t.Fatal(err)
		}
		want, _ := l.Peak(P)
		near(t, "start", float64(treads[0].Start/l.Shear(P, -l.Length/2)), 1, 1e-9)
		near(t, "end", float64(treads[0].End/l.Shear(P, l.Length/2)), 1, 1e-9)
		near(t, "peak", float64(peak/want), 1, 1e-9)

		steps := one
		for range rapid.IntRange(0, 6).Draw(t, "more") {
			s := drawLap(t)
			steps = append(steps, joint.Step{Length: s.Length, Parent: s.Stiff2, Patch: s.Stiff1})
		}
		treads, peak, err = joint.Stepped(steps, l.Adhesive, P)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for i, r := range treads {
			sum += float64(r.Load)
			if i > 0 {
				near(t, "shear runs through at the riser", float64(r.Start-treads[i-1].End)/float64(peak), 0, 1e-9)
			}
		}
		near(t, "loads add up to P", sum/P, 1, 1e-12)
		cut := rapid.IntRange(0, len(steps)-1).Draw(t, "cut")
		halves := append([]joint.Step{}, steps[:cut+1]...)
		halves[cut].Length /= 2
		halves = append(halves, halves[cut])
		halves = append(halves, steps[cut+1:]...)
		_, same, err := joint.Stepped(halves, l.Adhesive, P)
		// The new joint may be where |shear| is greatest only if it was already.
		near(t, "a step cut in two", float64(same/peak), 1, 1e-9)
		if err != nil {
			t.Fatal(err)
		}
	})
}

func TestPlySteps(t *testing.T) {
	l := stack("mwmwmw", 1)
	steps, err := joint.PlySteps(l, l, si.MM(25))
	if err != nil || len(steps) != 5 {
		t.Fatal(steps, err)
	}
	for i, s := range steps { // identity: alike plies, so what one has laid the other has lost
		near(t, "stiffness on each tread, identity", s.Parent.NPerMM()+s.Patch.NPerMM(), 3*(8080.01+14822.2), 1)
		treads, _, err := joint.Stepped(steps, glue(0.2), si.NPerMM(600))
		if err != nil {
			t.Fatal(err)
		}
		if i == 0 {
			first, last := treads[0], treads[4]
			if !(first.Start > first.Mean && last.End > last.Mean) {
				t.Errorf("no peaks at the free edges: %v %v", first, last)
			}
		}
	}
	for _, bad := range []func() error{
		func() error { _, err := joint.PlySteps(l[:1], l[:1], 1); return err },
		func() error { _, err := joint.PlySteps(l, l[:5], 1); return err },
		func() error { _, err := joint.PlySteps(l, l, 1, 2); return err },
		func() error { _, _, err := joint.Stepped(nil, glue(1), 1); return err },
		func() error { _, _, err := joint.Stepped(make([]joint.Step, 2), glue(1), 1); return err },
	} {
		refused(t, "steps", bad())
	}
}
