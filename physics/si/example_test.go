package si_test

import (
	"fmt"

	"scarfwright/physics/si"
)

func ExampleParse() {
	mat, _ := si.Parse[si.AreaDensity]("1.5 oz/ft2")
	cloth, _ := si.Parse[si.AreaDensity]("1.5 oz/yd2")
	fmt.Printf("mat %.0f g/m2, cloth %.0f g/m2\n", mat.GSM(), cloth.GSM())
	_, err := si.Parse[si.Length]("5 psi")
	fmt.Println(err)
	// Output:
	// mat 458 g/m2, cloth 51 g/m2
	// length needs a length unit such as mm or in; "psi" is pressure
}

func ExampleShow() {
	hull := si.MM(88.9)
	fmt.Println(hull)
	fmt.Println(si.Show(hull, si.Metric, 2), "or", si.Show(hull, si.US, 2), "or", si.ShowFraction(hull, 16))
	// Output:
	// 88.9 mm
	// 89 mm or 3.5 in or 3 1/2 in
}

func ExampleKind_Parse() {
	k, _ := si.KindNamed("areal-weight")
	x, err := k.Parse("18oz/yd2")
	fmt.Printf("%.4f %s %v\n", x, k.Base(), err)
	// Output: 0.6103 kg/m2 <nil>
}
