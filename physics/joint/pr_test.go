package joint_test
import ("testing";"fmt")
func TestPr(t *testing.T) {
	for _, ply := range []bool{false,true} { for _, rows := range []int{30,42,54,90,150} {
		j := bench(ply); j.Rows = rows
		b, _ := j.Solve(1e8)
		fmt.Print(rows, " ")
		for _, p := range b.Points { if p.Height.MM() < 2 { fmt.Printf(" %.2f:%.2f", p.Height.MM(), p.Shear.MPa()) } }
		fmt.Println()
	} }
}
