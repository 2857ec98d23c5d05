package joint

import "math"

type cell struct{ c11, c12, c22, g float64 }

type protoIn struct {
	R, T, ta float64
	ys       []float64
	left, right []cell // per y element
	adh      cell
	py, px   int
	xs       []float64 // breaks left of bond: distances from bond edge, positive, increasing from 0
	nb       int       // bond elements
	vproj    func(y float64) []float64 // nil nodal
	P        float64
}

// lagrange nodes uniform
func gaussN(n int) (x, w []float64) {
	x = make([]float64, n); w = make([]float64, n)
	for i := 0; i < n; i++ {
		z := math.Cos(math.Pi * (float64(i) + 0.75) / (float64(n) + 0.5))
		var pp float64
		for k := 0; k < 50; k++ {
			p1, p2 := 1.0, 0.0
			for j := 0; j < n; j++ { p1, p2 = ((2*float64(j)+1)*z*p1-float64(j)*p2)/float64(j+1), p1 }
			pp = float64(n) * (z*p1 - p2) / (z*z - 1)
			z -= p1 / pp
		}
		x[i] = z; w[i] = 2 / ((1 - z*z) * pp * pp)
	}
	return
}
func lag(p int, s float64) (N, D []float64) { // s in [0,1]
	N = make([]float64, p+1); D = make([]float64, p+1)
	for a := 0; a <= p; a++ {
		n := 1.0
		d := 0.0
		xa := float64(a) / float64(p)
		for b := 0; b <= p; b++ {
			if b == a { continue }
			xb := float64(b) / float64(p)
			d = d*(s-xb)/(xa-xb) + n/(xa-xb)
			n *= (s - xb) / (xa - xb)
		}
		N[a], D[a] = n, d
	}
	return
}
func elem(p int, h float64) (m00, m01, m11 [][]float64) {
	mk := func() [][]float64 { r := make([][]float64, p+1); for i := range r { r[i] = make([]float64, p+1) }; return r }
	m00, m01, m11 = mk(), mk(), mk()
	gx, gw := gaussN(p + 1)
	for k := range gx {
		N, D := lag(p, (1+gx[k])/2)
		w := gw[k] / 2
		for a := range N { for c := range N {
			m00[a][c] += w * h * N[a] * N[c]
			m01[a][c] += w * N[a] * D[c]
			m11[a][c] += w / h * D[a] * D[c]
		} }
	}
	return
}

type protoOut struct{ y, tau, sn []float64; mean float64 }

func proto(in protoIn, sample []float64) protoOut {
	ne := len(in.ys) - 1
	ny := ne*in.py + 1
	ynode := make([]float64, ny)
	for e := 0; e < ne; e++ { for k := 0; k <= in.py; k++ { ynode[e*in.py+k] = in.ys[e] + (in.ys[e+1]-in.ys[e])*float64(k)/float64(in.py) } }
	nv := ny
	var Tv [][]float64
	if in.vproj != nil {
		for _, y := range ynode { Tv = append(Tv, in.vproj(y)) }
		nv = len(Tv[0])
	} else {
		for i := range ynode { r := make([]float64, ny); r[i] = 1; Tv = append(Tv, r) }
	}
	m := ny + nv
	R := in.R
	mk := func() [][]float64 { r := make([][]float64, m); for i := range r { r[i] = make([]float64, m) }; return r }
	type reg struct{ P, Q, S [][]float64 }
	build := func(c []cell) reg {
		r := reg{mk(), mk(), mk()}
		n2 := 2 * ny
		full := func() [][]float64 { r := make([][]float64, n2); for i := range r { r[i] = make([]float64, n2) }; return r }
		P, Q, S := full(), full(), full()
		for e := 0; e < ne; e++ {
			y00, y01, y11 := elem(in.py, in.ys[e+1]-in.ys[e])
			k := c[e]
			for a := 0; a <= in.py; a++ { for b := 0; b <= in.py; b++ {
				i, j := e*in.py+a, e*in.py+b
				iv, jv := ny+i, ny+j
				y10 := y01[b][a]
				P[i][j] += k.g * y11[a][b]
				P[iv][jv] += k.c22 * y11[a][b]
				S[i][j] += (k.c11 + R*R*k.g) * y00[a][b]
				S[i][jv] += -R * (k.c12 + k.g) * y00[a][b]
				S[iv][j] += -R * (k.c12 + k.g) * y00[a][b]
				S[iv][jv] += (R*R*k.c22 + k.g) * y00[a][b]
				Q[i][j] += -R * k.g * y10
				Q[i][jv] += k.g * y10
				Q[iv][j] += k.c12 * y10
				Q[iv][jv] += -R * k.c22 * y10
			} }
		}
		red := func(F [][]float64, o [][]float64) {
			for i := 0; i < n2; i++ { for j := 0; j < n2; j++ {
				f := F[i][j]
				if f == 0 { continue }
				switch {
				case i < ny && j < ny: o[i][j] += f
				case i < ny: for q := 0; q < nv; q++ { o[i][ny+q] += f * Tv[j-ny][q] }
				case j < ny: for q := 0; q < nv; q++ { o[ny+q][j] += f * Tv[i-ny][q] }
				default: for q := 0; q < nv; q++ { for s := 0; s < nv; s++ { o[ny+q][ny+s] += f * Tv[i-ny][q] * Tv[j-ny][s] } }
				}
			} }
		}
		red(P, r.P); red(Q, r.Q); red(S, r.S)
		return r
	}
	adh := make([]cell, ne)
	for i := range adh { adh[i] = in.adh }
	regs := []reg{build(in.left), build(adh), build(in.right)}
	W := in.ta * math.Sqrt(1+R*R)
	type xe struct{ h float64; r int }
	var xel []xe
	for i := len(in.xs) - 1; i > 0; i-- { xel = append(xel, xe{in.xs[i] - in.xs[i-1], 0}) }
	bond0 := len(xel)
	for i := 0; i < in.nb; i++ { xel = append(xel, xe{W / float64(in.nb), 1}) }
	for i := 1; i < len(in.xs); i++ { xel = append(xel, xe{in.xs[i] - in.xs[i-1], 2}) }
	nl := len(xel)*in.px + 1
	N := nl * m
	bw := (in.px+1)*m
	A := make([][]float64, N) // A[i][j-i], upper
	for i := range A { A[i] = make([]float64, bw) }
	for e, x := range xel {
		x00, x01, x11 := elem(in.px, x.h)
		r := regs[x.r]
		for a := 0; a <= in.px; a++ { for c := 0; c <= in.px; c++ {
			for i := 0; i < m; i++ { for j := 0; j < m; j++ {
				gi, gj := (e*in.px+a)*m+i, (e*in.px+c)*m+j
				if gj < gi { continue }
				A[gi][gj-gi] += x00[a][c]*r.P[i][j] + x01[a][c]*r.Q[i][j] + x01[c][a]*r.Q[j][i] + x11[a][c]*r.S[i][j]
			} }
		} }
	}
	// moduli
	EA := func(c []cell) float64 { s := 0.0; for e := range c { s += (c[e].c11 - c[e].c12*c[e].c12/c[e].c22) * (in.ys[e+1] - in.ys[e]) }; return s }
	eL, eR := in.P/EA(in.left), in.P/EA(in.right)
	big := 1e12 * A[0][0]
	f := make([]float64, N)
	fix := func(i int, v float64) { A[i][0] += big; f[i] += big * v }
	// two solves: unit delta and skew; do P solve by superposition
	F0 := make([]float64, N); F1 := make([]float64, N)
	for b, y := range ynode {
		fix(b, eL*R*(y-in.T/2)); 
		i := (nl-1)*m + b
		f[i] += big * eR * R * (y - in.T/2); A[i][0] += big
		F1[i] = big
	}
	if in.vproj == nil { fix(ny+ny/2, 0); fix((nl-1)*m+ny+ny/2, 0) } else { fix(ny, 0); fix((nl-1)*m+ny, 0) }
	copy(F0, f)
	solveBand(A, F0, F1)
	// mean tau for each -> combine
	samp := func(U []float64, y float64) (ux, ey, gm float64) {
		e := 0
		for e < ne-1 && y > in.ys[e+1] { e++ }
		h := in.ys[e+1] - in.ys[e]
		Ny, Dy := lag(in.py, (y-in.ys[e])/h)
		// simpson-like averages over xi using exact integral of lagrange
		var mu, mv = make([]float64, in.py+1), make([]float64, in.py+1)
		gx, gw := gaussN(in.px + 1)
		for xe := bond0; xe < bond0+in.nb; xe++ {
			for k := range gx {
				Nx, _ := lag(in.px, (1+gx[k])/2)
				for a := range Nx { l := xe*in.px + a
					for q := 0; q <= in.py; q++ {
						w := gw[k] / 2 / float64(in.nb) * Nx[a]
						mu[q] += w * U[l*m+e*in.py+q]
						for s := 0; s < nv; s++ { mv[q] += w * U[l*m+ny+s] * Tv[e*in.py+q][s] }
					}
				}
			}
		}
		l0, l1 := bond0*in.px, (bond0+in.nb)*in.px
		for q := 0; q <= in.py; q++ {
			n := e*in.py + q
			du := (U[l1*m+n] - U[l0*m+n]) / W
			dv := 0.0
			for s := 0; s < nv; s++ { dv += (U[l1*m+ny+s] - U[l0*m+ny+s]) / W * Tv[n][s] }
			ux += Ny[q] * du
			ey += Dy[q]/h*mv[q] - R*Ny[q]*dv
			gm += Dy[q]/h*mu[q] - R*Ny[q]*du + Ny[q]*dv
		}
		return
	}
	al := math.Atan(1 / R)
	sn, cs := math.Sincos(al)
	st := func(U []float64, y float64) (t, n, px float64) {
		ux, ey, gm := samp(U, y)
		k := in.adh
		sx, sy, t0 := k.c11*ux+k.c12*ey, k.c12*ux+k.c22*ey, k.g*gm
		return (sx-sy)*sn*cs - t0*(cs*cs-sn*sn), sx*sn*sn + sy*cs*cs - 2*t0*sn*cs, sx - R*t0
	}
	mean := func(U []float64) (float64, float64) {
		s, p := 0.0, 0.0
		gx, gw := gaussN(in.py + 2)
		for e := 0; e < ne; e++ { for k := range gx {
			h := in.ys[e+1] - in.ys[e]
			t, _, px := st(U, in.ys[e]+h*(1+gx[k])/2)
			s += gw[k] / 2 * h * t; p += gw[k] / 2 * h * px
		} }
		return s / in.T, p
	}
	m0, p0 := mean(F0); m1, p1 := mean(F1)
	q := (in.P - p0) / p1
	o := protoOut{mean: m0 + q*m1}
	for i := range F0 { F0[i] += q * F1[i] }
	for _, y := range sample {
		t, n, _ := st(F0, y)
		o.y = append(o.y, y); o.tau = append(o.tau, t); o.sn = append(o.sn, n)
	}
	return o
}

func solveBand(A [][]float64, fs ...[]float64) {
	N := len(A)
	bw := len(A[0])
	for i := 0; i < N; i++ {
		d := A[i][0]
		for k := 1; k < bw && i+k < N; k++ {
			l := A[i][k] / d
			if l == 0 { continue }
			row := A[i+k]
			src := A[i][k:]
			for j := range src { if i+k+j >= N { break }; row[j] -= l * src[j] }
			for _, f := range fs { f[i+k] -= l * f[i] }
		}
	}
	for i := N - 1; i >= 0; i-- {
		for _, f := range fs {
			s := f[i]
			for k := 1; k < bw && i+k < N; k++ { s -= A[i][k] * f[i+k] }
			f[i] = s / A[i][0]
		}
	}
}
