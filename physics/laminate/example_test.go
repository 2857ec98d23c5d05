package laminate_test

import (
	"fmt"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// A 450 g/m2 mat wetted out to 30 % glass.
func ExampleClassThickness() {
	w, glass := si.GSM(450), si.Percent(30)
	fmt.Printf("%.2f mm thick, %.0f g/m2 of resin\n",
		laminate.ClassThickness(w, glass).MM(), laminate.ResinWeight(w, glass).GSM())
	// Output: 1.05 mm thick, 1050 g/m2 of resin
}

// A cut-out of four layers of 450 g/m2 mat measures 4.4 mm.
func ExampleGlassContent() {
	g := laminate.GlassContent(4*si.GSM(450), si.MM(4.4), laminate.GlassPolyester)
	fmt.Printf("%.1f %% glass by mass\n", g.Percent())
	// Output: 28.9 % glass by mass
}

func ExampleClassRule() {
	p, err := laminate.ClassRule(laminate.CSM, si.Percent(30))
	fmt.Printf("%.0f MPa, %.1f GPa, %v\n", p.TensileStrength.MPa(), p.TensileModulus.GPa(), err)
	_, err = laminate.ClassRule(laminate.CSM, 30)
	fmt.Println(err)
	// Output:
	// 85 MPa, 6.5 GPa, <nil>
	// glass content 30: the class-rule formulae are used from 0.20 to 0.65 (mass fraction, 0.30 for 30 %)
}

func ExampleParseStack() {
	s, _ := laminate.ParseStack("[0/±45/90bar]s")
	for _, a := range s.Angles() {
		fmt.Printf("%.0f ", a.Degrees())
	}
	fmt.Println(s)
	_, err := laminate.ParseStack("[0/+-45_2]")
	fmt.Println(err)
	// Output:
	// 0 45 -45 90 -45 45 0 [0/+-45/90bar]s
	// lay-up code "[0/+-45_2]", character 8: a count on +-45 can be read two ways (write "(+-45)2" for + - + -, "45_2/-45_2" for + + - -)
}

// A hull of 6 mm with 3 mm of roving laid over its inside.
func ExampleNewSection() {
	s := laminate.NewSection([]laminate.Layer{
		{Thickness: si.MM(6), Tension: si.GPa(7)},
		{Thickness: si.MM(3), Tension: si.GPa(14.5)},
	})
	fmt.Printf("neutral axis %.2f mm from the outside, EI %.0f N mm2/mm\n", s.NeutralAxis.MM(), s.EI*1e3)
	// Output: neutral axis 5.29 mm from the outside, EI 591336 N mm2/mm
}

// An E-glass and epoxy cross-ply, pulled along x.
func ExampleLastPlyFailure() {
	lamina := laminate.Lamina{E1: si.GPa(41), E2: si.GPa(10.4), G12: si.GPa(4.3), Nu12: 0.28}
	strength := laminate.Strength{Xt: si.MPa(1140), Xc: si.MPa(620), Yt: si.MPa(39), Yc: si.MPa(128), S: si.MPa(89)}
	stack, _ := laminate.ParseStack("[0/90]s")
	pull := laminate.Load{N: [3]si.LineLoad{si.NPerMM(1)}}
	plies := stack.Plies(lamina, si.MM(0.25))
	for _, step := range laminate.LastPlyFailure(plies, []laminate.Strength{strength}, pull, laminate.TsaiWu) {
		fmt.Printf("%.1f N/mm:", step.Ratio)
		for _, f := range step.Failures {
			fmt.Printf(" ply %d in %v;", f.Ply+1, f.Mode)
		}
		fmt.Println()
	}
	// Output:
	// 97.6 N/mm: ply 2 in tension across the fibres; ply 3 in tension across the fibres;
	// 570.0 N/mm: ply 1 in tension along the fibres; ply 4 in tension along the fibres;
}

func ExampleStiffness_Bending() {
	carbon := laminate.Lamina{E1: si.GPa(181), E2: si.GPa(10.3), G12: si.GPa(7.17), Nu12: 0.28}
	stack, _ := laminate.ParseStack("[0/90bar]s")
	s := laminate.NewStiffness(stack.Plies(carbon, si.MM(5)))
	fmt.Printf("Ex %.1f GPa in plane, %.1f GPa in bending\n", s.InPlane().Ex.GPa(), s.Bending().Ex.GPa())
	// Output: Ex 124.5 GPa in plane, 175.0 GPa in bending
}
