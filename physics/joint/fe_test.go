package joint_test

// A second method: the taper as a body, by two-dimensional finite elements in
// plane strain. It shares no line with the package. Both displacements are free at
// every node and the materials are fully orthotropic, with Poisson's ratios; in the
// package a section keeps its height and a ply has only E' and G.
//
// With xi = x - R (y - T/2) the joint is a straight strip: parent for xi < -w/2,
// adhesive, patch for xi > w/2. In it d/dy at fixed x is d/dy - R d/dxi, and every
// element matrix is a sum of products of one-dimensional integrals:
//
//	K = X00 P + X01 Q + (X01 Q)^T + X11 S
//
// with P, Q, S integrals over the height. Shape functions are quadratic in y and
// quartic in xi; low orders in xi would lock in this slanting frame.

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// solid is the plane-strain stiffness of a ply, MPa: 11, 12, 22 and shear.
type solid struct{ c11, c12, c22, g float64 }

// planeStrain condenses the width w out of the compliance of an orthotropic solid.
func planeStrain(Ex, Ey, Ew, nuxy, nuxw, nuyw, G float64) solid {
	var c mat.Dense
	if err := c.Inverse(mat.NewDense(3, 3, []float64{
		1 / Ex, -nuxy / Ex, -nuxw / Ex,
		-nuxy / Ex, 1 / Ey, -nuyw / Ey,
		-nuxw / Ex, -nuyw / Ey, 1 / Ew})); err != nil {
		panic(err)
	}
	return solid{c.At(0, 0), c.At(0, 1), c.At(1, 1), G}
}

type feLayer struct {
	h             float64 // mm
	parent, patch solid
}

type feTaper struct {
	R, ta  float64
	layers []feLayer
	film   solid
	rows   int // elements per layer
}

// lagrange returns the shape functions of order p on [0, 1] and their slopes.
func lagrange(p int, s float64) (N, D []float64) {
	N, D = make([]float64, p+1), make([]float64, p+1)
	for a := range N {
		n, d, xa := 1.0, 0.0, float64(a)/float64(p)
		for b := range N {
			if b != a {
				xb := float64(b) / float64(p)
				d = (d*(s-xb) + n) / (xa - xb)
				n *= (s - xb) / (xa - xb)
			}
		}
		N[a], D[a] = n, d
	}
	return N, D
}

var gauss5 = [5][2]float64{ // Gauss-Legendre on [0, 1]; from memory, exact to degree 9 in a test below
	{0.5, 64. / 225},
	{0.5 - 0.26923465505284155, 0.23931433524968324}, {0.5 + 0.26923465505284155, 0.23931433524968324},
	{0.5 - 0.45308992296933200, 0.11846344252809454}, {0.5 + 0.45308992296933200, 0.11846344252809454},
}

// integrals of N N, N N', N' N' over an element of size h.
func integrals(p int, h float64) (m [3][][]float64) {
	for i := range m {
		m[i] = make([][]float64, p+1)
		for a := range m[i] {
			m[i][a] = make([]float64, p+1)
		}
	}
	for _, q := range gauss5 {
		N, D := lagrange(p, q[0])
		for a := range N {
			for c := range N {
				m[0][a][c] += q[1] * h * N[a] * N[c]
				m[1][a][c] += q[1] * N[a] * D[c]
				m[2][a][c] += q[1] / h * D[a] * D[c]
			}
		}
	}
	return m
}

func TestQuadrature(t *testing.T) {
	for k := range 10 {
		sum := 0.0
		for _, q := range gauss5 {
			sum += q[1] * math.Pow(q[0], float64(k))
		}
		near(t, "integral of s^k", sum, 1/float64(k+1), 1e-14)
	}
}

const px, py = 4, 2

// solve returns the shear in MPa at each layer's mid-height, the mean through the
// film, for 100 MPa of mean tension; far ends straight and not turning.
func (j feTaper) solve(t testing.TB) []float64 {
	t.Helper()
	var ys []float64
	y, of := 0.0, []int{}
	for i, l := range j.layers {
		for range j.rows {
			ys, of = append(ys, y), append(of, i)
			y += l.h / float64(j.rows)
		}
	}
	T, ne := y, len(ys)
	ys = append(ys, T)
	ny := ne*py + 1
	m := 2 * ny
	R, w := j.R, j.ta*math.Sqrt(1+j.R*j.R)
	type strip struct{ P, Q, S *mat.Dense }
	over := func(pick func(feLayer) solid) strip {
		s := strip{mat.NewDense(m, m, nil), mat.NewDense(m, m, nil), mat.NewDense(m, m, nil)}
		add := func(M *mat.Dense, i, l int, v float64) { M.Set(i, l, M.At(i, l)+v) }
		for e := range ne {
			Y, k := integrals(py, ys[e+1]-ys[e]), pick(j.layers[of[e]])
			for a := range py + 1 {
				for b := range py + 1 {
					i, l := e*py+a, e*py+b
					yy, dy, dd := Y[0][a][b], Y[1][b][a], Y[2][a][b]
					add(s.P, i, l, k.g*dd)
					add(s.P, ny+i, ny+l, k.c22*dd)
					add(s.Q, i, l, -R*k.g*dy)
					add(s.Q, i, ny+l, k.g*dy)
					add(s.Q, ny+i, l, k.c12*dy)
					add(s.Q, ny+i, ny+l, -R*k.c22*dy)
					add(s.S, i, l, (k.c11+R*R*k.g)*yy)
					add(s.S, i, ny+l, -R*(k.c12+k.g)*yy)
					add(s.S, ny+i, l, -R*(k.c12+k.g)*yy)
					add(s.S, ny+i, ny+l, (k.g+R*R*k.c22)*yy)
				}
			}
		}
		return s
	}
	parent, patch := over(func(l feLayer) solid { return l.parent }), over(func(l feLayer) solid { return l.patch })
	film := over(func(feLayer) solid { return j.film })

	// Elements along xi: fine at the film, no longer than the slope asks for.
	far := R*T/2 + 10*T
	var side []float64
	for h, x := R*T/14, 0.0; x < far; h *= 1.15 {
		h = min(h, far-x)
		side, x = append(side, h), x+h
	}
	var h []float64
	var of2 []strip
	for i := range side {
		h, of2 = append(h, side[len(side)-1-i]), append(of2, parent)
	}
	film0 := len(h)
	h, of2 = append(h, w), append(of2, film)
	for _, s := range side {
		h, of2 = append(h, s), append(of2, patch)
	}
	lines := len(h)*px + 1
	// Ends: the straining of the far laminate is even, u = strain x on the slanting
	// line, and the patch's end moves as a whole by the unknown Delta.
	strain := func(pick func(feLayer) solid) float64 {
		EA := 0.0
		for _, l := range j.layers {
			k := pick(l)
			EA += (k.c11 - k.c12*k.c12/k.c22) * l.h
		}
		return 100 * T / EA
	}
	eps := [2]float64{strain(func(l feLayer) solid { return l.parent }), strain(func(l feLayer) solid { return l.patch })}
	size := (lines-1)*m + 1 + ny
	index := func(line, i int) (int, float64) { // unknown (-1 none) and known part
		n := i % ny
		at := R * (ys[n/py] + float64(n%py)/py*(ys[min(n/py+1, ne)]-ys[n/py]) - T/2)
		switch {
		case line == 0 && i < ny:
			return -1, eps[0] * at
		case line == 0 && i == ny+ny/2:
			return -1, 0
		case line == lines-1 && i < ny:
			return size - 1 - ny, eps[1] * at
		case line == lines-1:
			return size - ny + i - ny, 0
		}
		return line*m + i, 0
	}
	band := (px+1)*m - 1
	K, f := mat.NewSymBandDense(size, min(band, size-1), nil), mat.NewVecDense(size, nil)
	for i := range ny + ny { // the unknowns of the first line that are held
		if k, _ := index(0, i); k < 0 {
			K.SetSymBand(i, i, 1)
		}
	}
	for e := range h {
		X := integrals(px, h[e])
		for a := range px + 1 {
			for c := range px + 1 {
				for i := range m {
					gi, _ := index(e*px+a, i)
					if gi < 0 {
						continue
					}
					for l := range m {
						s := of2[e]
						v := X[0][a][c]*s.P.At(i, l) + X[1][a][c]*s.Q.At(i, l) + X[1][c][a]*s.Q.At(l, i) + X[2][a][c]*s.S.At(i, l)
						if v == 0 {
							continue
						}
						gl, known := index(e*px+c, l)
						f.SetVec(gi, f.AtVec(gi)-v*known)
						if gl >= gi {
							K.SetSymBand(gi, gl, K.At(gi, gl)+v)
						}
					}
				}
			}
		}
	}
	pull := size - 1 - ny
	f.SetVec(pull, f.AtVec(pull)+100*T)
	var chol mat.BandCholesky
	if !chol.Factorize(K) {
		t.Fatal("second method: not positive definite")
	}
	var u mat.VecDense
	if err := chol.SolveVecTo(&u, f); err != nil {
		t.Fatal(err)
	}
	// Means through the film at the layers' mid-heights.
	sin, cos := math.Sincos(math.Atan(1 / R))
	var list []float64
	for i := range j.layers {
		e := i*j.rows + j.rows/2
		N, D := lagrange(py, 0.5)
		var mean, jump, rise [2]float64
		for q := range py + 1 {
			for d := range 2 {
				n := d*ny + e*py + q
				at := func(line int) float64 { return u.AtVec((film0*px+line)*m + n) }
				weights := [px + 1]float64{7. / 90, 32. / 90, 12. / 90, 32. / 90, 7. / 90} // Boole's rule
				mean[d] = 0
				for l, wt := range weights {
					mean[d] += wt * at(l)
				}
				jump[d] += N[q] * (at(px) - at(0)) / w
				rise[d] += D[q] / (ys[e+1] - ys[e]) * mean[d]
			}
		}
		k := j.film
		ex, ey, gamma := jump[0], rise[1]-R*jump[1], rise[0]-R*jump[0]+jump[1]
		sx, sy, txy := k.c11*ex+k.c12*ey, k.c12*ex+k.c22*ey, k.g*gamma
		list = append(list, (sx-sy)*sin*cos-txy*(cos*cos-sin*sin))
	}
	return list
}
