package joint_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"scarfwright/physics/joint"
	"scarfwright/physics/si"
)

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", what, got, want, tol)
	}
}

type mat3 struct {
	s        solid
	E        si.Pressure
}

func TestFE(t *testing.T) {
	mats := map[byte]solid{'h': planeStrain(11000, 6000, 11000, .3, .2, .16, 2200), 'm': planeStrain(7200, 6000, 7200, .33, .33, .3, 2200), 'w': planeStrain(14500, 6500, 14000, .3, .15, .13, 2200)}
	film := planeStrain(3000, 3000, 3000, .35, .35, .35, 3000/2.7)
	for _, c := range []struct {
		R, ta, h float64
		a, b     string
		rows     int
	}{
		{12, .2, 1, "mmmm", "wwww", 5}, {12, .2, 1, "mmmm", "wwww", 7},
		{12, .2, 1.5, "mw", "mw", 5},{12, .2, 1.5, "mw", "mw", 9},
		{20, .2, 1, "mwm", "mwm", 3}, {20, .2, 1, "mwm", "mwm", 5}, {20, .2, 1, "mwm", "mwm", 9},
		{6, .2, 1, "mwm", "mwm", 5},
		{12, .1, 1, "mwm", "mwm", 5},
		{12, .4, 1, "mwm", "mwm", 5},
		{12, .2, 1, "mwmw", "mmww", 7},
	} {
		ft := feTaper{R: c.R, ta: c.ta, film: film, rows: c.rows}
		jt := joint.Taper{Ratio: c.R, Adhesive: joint.Adhesive{Thickness: si.MM(c.ta), E: si.GPa(3), Nu: .35}}
		for i := range c.a {
			a, b := mats[c.a[i]], mats[c.b[i]]
			ft.layers = append(ft.layers, feLayer{c.h, a, b})
			p := func(s solid) joint.Ply {
				return joint.Ply{Thickness: si.MM(c.h), E: si.MPa(s.c11 - s.c12*s.c12/s.c22), G: si.MPa(s.g)}
			}
			jt.Parent, jt.Patch = append(jt.Parent, p(a)), append(jt.Patch, p(b))
		}
		t0 := time.Now()
		fe := ft.solve(t)
		d := time.Since(t0)
		b, err := jt.Solve(1e8)
		jt.Rows = 90
		b2, _ := jt.Solve(1e8)
		fmt.Println(c, err, d, len(b.Points))
		for i := range fe {
			g, g2 := b.AtPatch[i].Shear.MPa(), b2.AtPatch[i].Shear.MPa()
			fmt.Printf("  %.2f %.2f (%+.1f%%) %.2f (%+.1f%%)\n", fe[i], g, (g/fe[i]-1)*100, g2, (g2/fe[i]-1)*100)
		}
	}
}
