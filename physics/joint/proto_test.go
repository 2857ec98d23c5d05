package joint

import ("testing";"fmt";"math")

func ref(ply bool) (l []cell) {
	for i := 0; i < 6; i++ {
		switch { case !ply: l = append(l, cell{12410.0783425,2547.42158579,6818.37747869,2200})
		case i%2==0: l = append(l, cell{10242.8988373,4294.6683466,8527.13672828,2200})
		default: l = append(l, cell{15694.9660686,2497.09491494,7142.82947538,2200}) }
	}
	return
}
func grad(n int, h0, L float64) []float64 {
	// geometric n elements first h0 total L
	lo, hi := 1.0001, 50.0
	for k := 0; k < 200; k++ { r := (lo+hi)/2; s := h0*(math.Pow(r,float64(n))-1)/(r-1); if s > L { hi = r } else { lo = r } }
	x := []float64{0}; h := h0
	for i := 0; i < n; i++ { x = append(x, x[i]+h); h *= lo }
	return x
}
var cond bool
func run(name string, ply bool, sub, py, px, nx, nb int, h0 float64, vp func(float64)[]float64) {
	l := ref(ply)
	in := protoIn{R:12,T:6,ta:.2,adh:cell{4814.81481481,2592.59259259,4814.81481481,1111.11111111},py:py,px:px,nb:nb,xs:grad(nx,h0,96),vproj:vp,P:600}
	if cond { for i, c := range l { l[i] = cell{c.c11-c.c12*c.c12/c.c22, 0, c.c22, c.g} } }
	var ys []float64; var ll []cell
	for i := 0; i < 6*sub; i++ { ys = append(ys, float64(i)/float64(sub)); ll = append(ll, l[i/sub]) }
	in.ys = append(ys, 6); in.left, in.right = ll, ll
	o := proto(in, []float64{.5,1.5,2.5,3.5,4.5,5.5,.1,.2,.3,.8,1.05,1.2,1.3,1.4})
	fmt.Printf("%-28s mean %.5f |", name, o.mean)
	for i := range o.tau { fmt.Printf(" %.2f", o.tau[i]) }
	fmt.Printf("  peel %.2f %.2f\n", o.sn[0], o.sn[1])
}
func TestProto(t *testing.T) {
	poly := func(k int) func(float64)[]float64 { return func(y float64) (r []float64) { for i := 0; i <= k; i++ { r = append(r, math.Pow((y-3)/3, float64(i))) }; return } }
	_ = poly
	for _, ply := range []bool{false,true} {
	for _, cond = range []bool{false,true} {
		fmt.Println("cond", cond)
		run("sub4 px4", ply, 4,2,4,6,1,6,nil)
		run("sub4 v0", ply, 4,2,4,6,1,6,poly(0))
		run("sub4 v1", ply, 4,2,4,6,1,6,poly(1))
		run("sub4 v2", ply, 4,2,4,6,1,6,poly(2))
		run("sub4 v3", ply, 4,2,4,6,1,6,poly(3))
		run("sub4 v5", ply, 4,2,4,6,1,6,poly(5))
		run("sub1 q2 v3", ply, 1,2,4,6,1,6,poly(3))
		run("sub1 q4 v3", ply, 1,4,4,6,1,6,poly(3))
	} }
}
