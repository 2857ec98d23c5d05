package heat_test

import (
	"fmt"
	"math"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
)

// Ten millimetres of an invented laminate laid at once on a hull of six.
func ExampleSlab_Run() {
	resin := &heat.Reaction{
		Rate: func(a, T float64) float64 {
			return 2e-4 * math.Exp(-56e3/8.314462618*(1/T-1/298.15)) * (0.1 + a) * (1 - a) * (1 - a)
		},
		Heat: 170e3, // J per kg of laminate
	}
	air := heat.Convective(8, heat.Steady(si.Celsius(25)))
	slab := heat.Slab{
		Layers: []heat.Layer{
			{Thickness: si.MM(6), Conductivity: 0.25, Density: 1700, SpecificHeat: 1100},
			{Thickness: si.MM(10), Conductivity: 0.22, Density: 1600, SpecificHeat: 1250, Reaction: resin},
		},
		First: air, Last: air, Start: si.Celsius(25), For: si.Hours(12),
	}
	r, err := slab.Run(nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	gelled, _ := r.Reached(si.MM(11), 0.58)
	fmt.Printf("peak %.0f C after %.0f min, %.0f C in the old hull\n",
		r.Peak.Temp.Celsius(), r.Peak.Time.Minutes(), r.PeakIn(0).Temp.Celsius())
	fmt.Printf("gelled in the middle after %.0f min\n", gelled.Minutes())
	// Output:
	// peak 44 C after 137 min, 42 C in the old hull
	// gelled in the middle after 140 min
}
