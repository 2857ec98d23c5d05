package panel_test

import (
	"fmt"

	"scarfwright/physics/laminate"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
)

// A hull bottom of mat and roving, 900 x 450 mm under 20 kPa, with an overlay of
// four plies on its inner face.
func Example() {
	mat := panel.Ply{
		Ply: laminate.Ply{Lamina: laminate.Isotropic(si.GPa(7.2), 0.33), Thickness: si.MM(1.1)},
		G13: si.GPa(2.2), G23: si.GPa(2.2),
	}
	roving := panel.Ply{
		Ply: laminate.Ply{
			Lamina:    laminate.Lamina{E1: si.GPa(14.5), E2: si.GPa(14), G12: si.GPa(3), Nu12: 0.15},
			Thickness: si.MM(0.95),
		},
		G13: si.GPa(2.2), G23: si.GPa(2.2),
	}
	hull := panel.Centred(mat, roving, mat, roving, mat, roving)
	patched := panel.Layup{Bottom: hull.Bottom, Plies: append(hull.Plies[:6:6], roving, mat, roving, mat)}
	p := panel.Panel{
		Length: si.MM(900), Width: si.MM(450), Base: hull, Pressure: si.KPa(20),
		Zones: []panel.Zone{{
			Name: "overlay", Outline: panel.Ellipse(panel.Point{}, si.MM(150), si.MM(100), 0), Layup: patched,
		}},
		Edges: panel.AllEdges(panel.Edge{Support: panel.Clamped}),
	}
	for _, large := range []bool{false, true} {
		a, err := panel.Solve(p, panel.Options{}, large)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("w %.2f mm, worst strain %.1f %% in ply %d of zone %d\n",
			a.W.MM(), 100*a.Worst.Strain[a.Component], a.Worst.Ply+1, a.Worst.Zone)
	}
	// Output:
	// w 6.62 mm, worst strain 0.5 % in ply 1 of zone 0
	// w 4.87 mm, worst strain 0.4 % in ply 1 of zone 0
}
