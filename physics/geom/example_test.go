package geom_test

import (
	"fmt"

	"scarfwright/physics/geom"
)

// The feather edge of a 12:1 taper through 5.4 mm round a 300 × 200 mm hole.
func ExampleShape_Offset() {
	hole := geom.Shape{geom.Ellipse(300, 200)}
	edge, err := hole.Offset(12 * 5.4)
	if err != nil {
		fmt.Println(err)
		return
	}
	b := edge.Bounds()
	fmt.Printf("hole %.0f mm², feather edge %.0f × %.0f mm, ground in plan %.0f mm²\n",
		hole.Area(), b.Width(), b.Height(), edge.Area()-hole.Area())
	// Output: hole 47124 mm², feather edge 430 × 330 mm, ground in plan 64598 mm²
}

// An outline that cannot be one says where.
func ExampleNewShape() {
	r, _ := geom.ParseRing("0,0 100,100 100,0 0,100")
	_, err := geom.NewShape(r)
	fmt.Println(err)
	// Output: outline meets itself near 50,50: edge 1 (0,0 to 100,100) and edge 3 (100,0 to 0,100)
}

// A backing of 380 × 280 mm in three pieces that pass the hole.
func ExampleShape_SplitStrips() {
	backing := geom.Shape{geom.Ellipse(380, 280)}
	across, angle := backing.MinWidth()
	pieces, err := backing.SplitStrips(3, angle)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, p := range pieces {
		w, _ := p.MinWidth()
		fmt.Printf("piece %d: %.0f mm wide, %.0f mm²\n", i+1, w, p.Area())
	}
	fmt.Printf("across %.0f mm\n", across)
	// Output:
	// piece 1: 93 mm wide, 24384 mm²
	// piece 2: 93 mm wide, 34798 mm²
	// piece 3: 93 mm wide, 24384 mm²
	// across 280 mm
}
