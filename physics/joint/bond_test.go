package joint_test

import (
	"fmt"
	"testing"

	"scarfwright/physics/joint"
	"scarfwright/physics/si"
)

func TestTry(t *testing.T) {
	for _, rows := range []int{0, 30, 90, 18} {
		for _, ply := range []bool{false, true} {
			j := bench(ply)
			j.Rows = rows
			b, err := j.Solve(si.MPa(100))
			fmt.Println(err, len(b.Points), b.MeanShear.MPa(), b.MeanPeel.MPa(), b.Unresolved.MM(), b.Peak.Shear.MPa(), b.Peak.Height.MM())
			for _, p := range b.AtPatch {
				fmt.Printf(" %.3f/%.2f", p.Shear.MPa(), p.Peel.MPa())
			}
			fmt.Println()
		}
	}
}

func bench(plies bool) joint.Taper {
	var l []joint.Ply
	for i := range 6 {
		E := joint.PlaneStrain(si.GPa(11), si.GPa(11), 0.2)
		if plies && i%2 == 0 {
			E = joint.PlaneStrain(si.GPa(7.2), si.GPa(7.2), 0.33)
		} else if plies {
			E = joint.PlaneStrain(si.GPa(14.5), si.GPa(14), 0.15)
		}
		l = append(l, joint.Ply{Thickness: si.MM(1), E: E, G: si.GPa(2.2)})
	}
	return joint.Taper{Ratio: 12, Parent: l, Patch: l, Adhesive: joint.Adhesive{Thickness: si.MM(0.2), E: si.GPa(3), Nu: 0.35}}
}

func BenchmarkTaper(b *testing.B) {
	j := bench(true)
	for b.Loop() {
		j.Solve(1e8)
	}
}
