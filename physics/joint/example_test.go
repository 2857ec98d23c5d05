package joint_test

import (
	"fmt"

	"scarfwright/physics/joint"
	"scarfwright/physics/si"
)

// A mat skin of 85 MPa with a secondary bond of 7 MPa: the trade's 12:1 falls out.
func ExampleFullRatio() {
	R, _ := joint.FullRatio(si.MPa(85), si.MPa(7))
	fmt.Printf("%.1f:1; at 8:1 it carries %.0f %%\n", R, joint.Efficiency(si.MPa(85), si.MPa(7), 8).Percent())
	// Output: 12.1:1; at 8:1 it carries 67 %
}

// Mat and roving in turns, six plies of 1 mm tapered 12:1 and pulled to 100 MPa.
// The mean shear is 8.3 MPa, but each roving ply loads its part of the bond more.
func ExampleTaper_Solve() {
	mat := joint.Ply{Thickness: si.MM(1), E: joint.PlaneStrain(si.GPa(7.2), si.GPa(7.2), 0.33), G: si.GPa(2.2)}
	roving := joint.Ply{Thickness: si.MM(1), E: joint.PlaneStrain(si.GPa(14.5), si.GPa(14), 0.15), G: si.GPa(2.2)}
	skin := []joint.Ply{mat, roving, mat, roving, mat, roving}
	resin := joint.Adhesive{Thickness: si.MM(0.2), E: si.GPa(3), Nu: 0.35}

	bond, err := joint.Taper{Ratio: 12, Parent: skin, Patch: skin, Adhesive: resin}.Solve(si.MPa(100))
	if err != nil {
		panic(err)
	}
	for _, p := range bond.AtPatch {
		fmt.Printf("%.1f mm: %4.1f MPa\n", p.Height.MM(), p.Shear.MPa())
	}
	fmt.Printf("mean %.2f, peak %.1f times that at %.1f mm; not resolved within %.1f mm of the edges\n",
		bond.MeanShear.MPa(), bond.Factor(), bond.Peak.Height.MM(), bond.Unresolved.MM())
	// Output:
	// 0.5 mm:  6.1 MPa
	// 1.5 mm: 11.1 MPa
	// 2.5 mm:  5.8 MPa
	// 3.5 mm: 10.7 MPa
	// 4.5 mm:  5.9 MPa
	// 5.5 mm: 11.7 MPa
	// mean 8.28, peak 1.4 times that at 5.5 mm; not resolved within 0.2 mm of the edges
}

// A laminate of four plies stepped 25 mm a ply.
func ExampleStepped() {
	ply := joint.Ply{Thickness: si.MM(1.05), E: si.GPa(6.5), G: si.GPa(2.2)}
	skin := []joint.Ply{ply, ply, ply, ply}
	steps, _ := joint.PlySteps(skin, skin, si.MM(25))
	treads, peak, _ := joint.Stepped(steps, joint.Adhesive{Thickness: si.MM(0.3), E: si.GPa(3), Nu: 0.35}, si.NPerMM(100))
	for _, t := range treads {
		fmt.Printf("%.1f N/mm ", t.Load.NPerMM())
	}
	fmt.Printf("peak %.1f MPa\n", peak.MPa())
	// Output: 36.6 N/mm 26.8 N/mm 36.6 N/mm peak 21.3 MPa
}

// A patch of roving half as thick as the mat skin, laid on one face.
func ExampleNewOverlay() {
	o, _ := joint.NewOverlay([]joint.Ply{{Thickness: si.MM(6), E: si.GPa(7), G: si.GPa(2)}},
		[]joint.Ply{{Thickness: si.MM(3), E: si.GPa(14.5), G: si.GPa(2)}})
	straight, free := o.Stress(si.NPerMM(300), 0)
	held, alone := joint.Bridged(si.MM(6), si.MM(3))
	fmt.Printf("neutral axis %.2f mm, EI %.0f N mm; skin face %.0f to %.0f MPa; over a hole %.0f to %.0f-fold\n",
		o.NeutralAxis.MM(), o.EI*1e3, straight.MPa(), free.MPa(), held, alone)
	// Output: neutral axis 5.29 mm, EI 591336 N mm; skin face 25 to 68 MPa; over a hole 2 to 20-fold
}
