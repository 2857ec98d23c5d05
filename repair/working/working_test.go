package working_test

import (
	"fmt"
	"testing"

	"scarfwright/repair/working"
)

func ExampleLine() {
	l := working.Line{
		Name: "taper length", Formula: "L = R t", Numbers: "12 × 5.4 mm",
		Value: 64.8, Unit: "mm", Source: working.Geometry,
	}
	fmt.Println(l)
	// Output: taper length: L = R t = 12 × 5.4 mm = 64.80 mm [geometry]
}

func TestNumKeepsWhatAPersonWouldWrite(t *testing.T) {
	for _, row := range []struct {
		x    float64
		n    int
		want string
	}{
		{1.0508, 4, "1.051"},
		{39040.3, 4, "39040"},
		{0.00036, 3, "0.000360"},
		{-0.0000001, 3, "-1.00e-07"},
		{0, 4, "0"},
		{1.739e9, 4, "1.739e+09"},
		{72.2496, 4, "72.25"},
	} {
		if got := working.Num(row.x, row.n); got != row.want {
			t.Errorf("Num(%g, %d) = %q, want %q", row.x, row.n, got, row.want)
		}
	}
}
