package joint

import ("testing";"fmt")

func TestProto2(t *testing.T) {
	for _, ply := range []bool{false,true} { for _, nf := range []int{6,12} { for _, sub := range []int{1,3,4,5,7,9,15} {
		l := ref(ply)
		var ys []float64; var ll []cell
		for i := 0; i < 6*sub; i++ { ys = append(ys, float64(i)/float64(sub)); ll = append(ll, l[i/sub]) }
		in := p2in{R:12,ta:.2,P:600,ys:append(ys,6),left:ll,right:ll,adh:cell{4814.81481481,2592.59259259,4814.81481481,1111.11111111},far:grad(nf,12/float64(sub),60)}
		_, tau, sn, mean := proto2(in)
		fmt.Printf("ply %v sub %d nf %d mean %.5f |", ply, sub, nf, mean)
		for k := 0; k < 6; k++ { i := k*sub+sub/2; if sub%2==1 { fmt.Printf(" %.2f", tau[i]) } else { fmt.Printf(" %.2f", (tau[i]+tau[i-1])/2) } }
		fmt.Printf(" peel")
		for k := 0; k < 6; k++ { fmt.Printf(" %.2f", sn[k*sub+sub/2]) }
		fmt.Println()
	} } }
}
