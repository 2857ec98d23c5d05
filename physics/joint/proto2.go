package joint

import "math"

type p2in struct {
	R, ta, P    float64
	ys          []float64
	left, right []cell // per row, bottom up
	adh         cell
	far         []float64
	k22         bool
}

func proto2(in p2in) (y, tau, sn []float64, mean float64) {
	n := len(in.ys) - 1
	T := in.ys[n]
	R := in.R
	W := in.ta * math.Sqrt(1+R*R)
	nf := len(in.far) - 1
	m := n + 4
	nb := nf + n + 1 + nf
	// block b: left far 0..nf-1 (far decreasing), bond nf..nf+n, right far
	N := nb * m
	bw := 2 * m
	A := make([][]float64, N)
	for i := range A { A[i] = make([]float64, bw) }
	f := make([]float64, N)
	f1 := make([]float64, N)
	add := func(idx []int, K [][]float64) {
		for a, i := range idx { for b, j := range idx { if j >= i { A[i][j-i] += K[a][b] } } }
	}
	// node index
	uL := func(b, i int) int { // left adherend, section block b, height i
		if b < nf { return b*m + i }
		j := b - nf
		return b*m + (j + 1) + (i - j) // right nodes first 0..j, then left j..n
	}
	uR := func(b, i int) int { return b*m + i }
	vL := func(b int) int { return b*m + n + 2 }
	vR := func(b int) int { return b*m + n + 3 }
	used := make([]bool, N)
	outer := func(idx []int, B []float64, w float64) {
		for _, i := range idx { used[i] = true }
		K := make([][]float64, len(B))
		for a := range B { K[a] = make([]float64, len(B)); for b := range B { K[a][b] = w * B[a] * B[b] } }
		add(idx, K)
	}
	rect := func(c cell, a0, a1, b0, b1, va, vb int, dx, dy float64) { // a: x_j low/high, b: x_{j+1}
		E := c.c11 - c.c12*c.c12/c.c22
		for _, g := range []float64{.5 - .5/math.Sqrt(3), .5 + .5/math.Sqrt(3)} {
			outer([]int{a0, a1, b0, b1}, []float64{-(1 - g) / dx, -g / dx, (1 - g) / dx, g / dx}, E*dx*dy/2)
		}
		outer([]int{a0, a1, b0, b1, va, vb}, []float64{-.5 / dy, .5 / dy, -.5 / dy, .5 / dy, -1 / dx, 1 / dx}, c.g*dx*dy)
	}
	xs := make([]float64, nb)
	for b := 0; b < nf; b++ { xs[b] = -R*T/2 - in.far[nf-b] }
	for j := 0; j <= n; j++ { xs[nf+j] = R * (in.ys[j] - T/2) }
	for b := 0; b < nf; b++ { xs[nf+n+1+b] = R*T/2 + in.far[b+1] }
	for b := 0; b+1 < nb; b++ {
		dx := xs[b+1] - xs[b]
		j := b - nf
		if j < 0 {
			for i := 0; i < n; i++ { rect(in.left[i], uL(b, i), uL(b, i+1), uL(b+1, i), uL(b+1, i+1), vL(b), vL(b+1), dx, in.ys[i+1]-in.ys[i]) }
			continue
		}
		if j >= n {
			for i := 0; i < n; i++ { rect(in.right[i], uR(b, i), uR(b, i+1), uR(b+1, i), uR(b+1, i+1), vR(b), vR(b+1), dx, in.ys[i+1]-in.ys[i]) }
			continue
		}
		for i := j + 1; i < n; i++ { rect(in.left[i], uL(b, i), uL(b, i+1), uL(b+1, i), uL(b+1, i+1), vL(b), vL(b+1), dx, in.ys[i+1]-in.ys[i]) }
		for i := 0; i < j; i++ { rect(in.right[i], uR(b, i), uR(b, i+1), uR(b+1, i), uR(b+1, i+1), vR(b), vR(b+1), dx, in.ys[i+1]-in.ys[i]) }
		dy := in.ys[j+1] - in.ys[j]
		// triangles
		c := in.left[j]
		E := c.c11 - c.c12*c.c12/c.c22
		outer([]int{uL(b, j+1), uL(b+1, j+1)}, []float64{-1 / dx, 1 / dx}, E*dx*dy/2)
		outer([]int{uL(b, j), uL(b, j+1), vL(b), vL(b+1)}, []float64{-1 / dy, 1 / dy, -1 / dx, 1 / dx}, c.g*dx*dy/2)
		c = in.right[j]
		E = c.c11 - c.c12*c.c12/c.c22
		outer([]int{uR(b, j), uR(b+1, j)}, []float64{-1 / dx, 1 / dx}, E*dx*dy/2)
		outer([]int{uR(b+1, j), uR(b+1, j+1), vR(b), vR(b+1)}, []float64{-1 / dy, 1 / dy, -1 / dx, 1 / dx}, c.g*dx*dy/2)
		// adhesive cell skew
		k := in.adh
		x00, x01, x11 := elem(1, W)
		y00, y01, y11 := elem(1, dy)
		ids := [2][2][2]int{{{uL(b, j), uL(b+1, j+1)}, {uR(b, j), uR(b+1, j+1)}}, {{vL(b), vL(b + 1)}, {vR(b), vR(b + 1)}}} // [field][xi][y]
		for a := 0; a < 2; a++ { for cc := 0; cc < 2; cc++ { for p := 0; p < 2; p++ { for q := 0; q < 2; q++ {
			y10 := y01[q][p]
			uu := x11[a][cc]*(k.c11+R*R*k.g)*y00[p][q] + x00[a][cc]*k.g*y11[p][q] - R*k.g*(x01[a][cc]*y10+x01[cc][a]*y01[p][q])
			vv := x11[a][cc]*(k.g+R*R*k.c22)*y00[p][q] + x00[a][cc]*k.c22*y11[p][q] - R*k.c22*(x01[a][cc]*y10+x01[cc][a]*y01[p][q])
			uv := x01[cc][a]*k.c12*y01[p][q] + x01[a][cc]*k.g*y10 - R*x11[a][cc]*(k.c12+k.g)*y00[p][q]
			i, l := ids[0][a][p], ids[0][cc][q]
			if l >= i { A[i][l-i] += uu }
			i, l = ids[1][a][p], ids[1][cc][q]
			if l >= i { A[i][l-i] += vv }
			i, l = ids[0][a][p], ids[1][cc][q]
			if l >= i { A[i][l-i] += uv } else { A[l][i-l] += uv }
			used[ids[0][a][p]], used[ids[1][a][p]] = true, true
		} } } }
	}
	big := 1e9 * A[0][0]
	for i := range A { if !used[i] { A[i][0] = 1 } }
	for i := 0; i <= n; i++ { A[i][0] += big; q := (nb-1)*m + i; A[q][0] += big; f1[q] = big }
	A[vL(0)][0] += big
	A[vR(nb-1)][0] += big
	solveBand(A, f1, f)
	al := math.Atan(1 / R)
	s, c := math.Sincos(al)
	tot := 0.0
	for j := 0; j < n; j++ {
		b := nf + j
		dy := in.ys[j+1] - in.ys[j]
		g := func(i int) float64 { return f1[i] }
		ux := (g(uR(b, j)) + g(uR(b+1, j+1)) - g(uL(b, j)) - g(uL(b+1, j+1))) / 2 / W
		vx := (g(vR(b)) + g(vR(b+1)) - g(vL(b)) - g(vL(b+1))) / 2 / W
		uy := (g(uR(b+1, j+1)) + g(uL(b+1, j+1)) - g(uR(b, j)) - g(uL(b, j))) / 2 / dy
		vy := (g(vR(b+1)) + g(vL(b+1)) - g(vR(b)) - g(vL(b))) / 2 / dy
		ey, gm := vy-R*vx, uy-R*ux+vx
		k := in.adh
		sx, sy, t0 := k.c11*ux+k.c12*ey, k.c12*ux+k.c22*ey, k.g*gm
		tot += (sx - R*t0) * dy
		y = append(y, (in.ys[j]+in.ys[j+1])/2)
		tau = append(tau, (sx-sy)*s*c-t0*(c*c-s*s))
		sn = append(sn, sx*s*s+sy*c*c-2*t0*s*c)
		mean += tau[j] * dy / T
	}
	q := in.P / tot
	for j := range tau { tau[j] *= q; sn[j] *= q }
	return y, tau, sn, mean * q
}
