package panel

import (
	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
)

// The five unknowns of a node.
const (
	dofU = iota // displacement along x, m
	dofV        // along y
	dofW        // along z
	dofX        // rotation: u(z) = u + z thetaX
	dofY        // v(z) = v + z thetaY
	dofs
)

// shape is what an element's geometry alone decides, kept between changes of
// laminate: at each Gauss point g and for each node a the slopes dx, dy and the
// value n of its shape function (at [a*points+g]), the weight times the area dw,
// and the integrals of all their products.
type shape struct {
	nodes, points int
	dx, dy, n, dw []float64
	// products is the (3 nodes)^2 matrix of integrals of f_a g_b with f, g running
	// over dx, dy, n; its lower blocks only.
	products []float64
	mass     []float64 // integral of n_a
}

func newShape(lr, ls *line, at []vec) *shape {
	kr, k := lr.p+1, ls.p+1
	s := &shape{nodes: kr * k, points: kr * k}
	nn, ng := s.nodes, s.points
	store := make([]float64, 3*nn*ng)
	s.dx, s.dy, s.n = store[:nn*ng], store[nn*ng:2*nn*ng], store[2*nn*ng:]
	s.dw, s.mass = make([]float64, ng), make([]float64, nn)
	weighted := make([]float64, 3*nn*ng)
	for gi := range kr {
		for gj := range k {
			g := gi*k + gj
			var r, t vec // slopes of the map
			for i := range kr {
				for j := range k {
					r = r.add(at[i*k+j].scale(lr.D[gi][i] * ls.N[gj][j]))
					t = t.add(at[i*k+j].scale(lr.N[gi][i] * ls.D[gj][j]))
				}
			}
			det := r.cross(t)
			s.dw[g] = lr.w[gi] * ls.w[gj] * det
			for i := range kr {
				for j := range k {
					a := (i*k+j)*ng + g
					dr, dt := lr.D[gi][i]*ls.N[gj][j], lr.N[gi][i]*ls.D[gj][j]
					s.dx[a] = (t.y*dr - r.y*dt) / det
					s.dy[a] = (r.x*dt - t.x*dr) / det
					s.n[a] = lr.N[gi][i] * ls.N[gj][j]
					s.mass[i*k+j] += s.n[a] * s.dw[g]
				}
			}
		}
	}
	for i := range weighted {
		weighted[i] = store[i] * s.dw[i%ng]
	}
	s.products = make([]float64, 9*nn*nn)
	for f := range 3 { // rows of block f, columns of blocks 0..f
		gemm(3*nn, nn, (f+1)*nn, ng, 1, weighted[f*nn*ng:], ng, store, ng, 0, s.products[f*nn*3*nn:])
	}
	return s
}

// gemm sets c = alpha a b^T + beta c for row-major a (m x k), b (n x k) and c
// (m x n) whose rows lie lda, ldb and ldc apart. It hands the work over in pieces
// small enough that the library does not start goroutines of its own: ours already
// keep the processors busy.
func gemm(ldc, m, n, k int, alpha float64, a []float64, lda int, b []float64, ldb int, beta float64, c []float64) {
	const rows, cols = 128, 64
	for i := 0; i < m; i += rows {
		for j := 0; j < n; j += cols {
			blas64.Implementation().Dgemm(blas.NoTrans, blas.Trans, min(rows, m-i), min(cols, n-j), k,
				alpha, a[i*lda:], lda, b[j*ldb:], ldb, beta, c[i*ldc+j:], ldc)
		}
	}
}

// stiffness writes the linear stiffness of an element into the lower triangle of
// the front f: row[dofs*a+i] is the row of unknown i of node a, negative if it is
// held. The front must be zero there.
//
// Each 5 x 5 block is a sum of laminate stiffnesses times integrals xx, xy ... of
// the products of slopes, e.g. for u with u: A11 xx + A16 (xy + yx) + A66 yy.
// The part of a large deflection, if any, is added from the blocks of tangent.
func (s *shape) stiffness(c *section, large []float64, row []int32, f []float64, ld int) {
	nn := s.nodes
	w := 3 * nn
	P := s.products
	S := &c.S
	var k [dofs][dofs]float64
	for a := range nn {
		for b := 0; b <= a; b++ {
			xx, yx, yy := P[a*w+b], P[(nn+a)*w+b], P[(nn+a)*w+nn+b]
			xy := P[(nn+b)*w+a] // = integral of dx_a dy_b
			nx, ny, ab := P[(2*nn+a)*w+b], P[(2*nn+a)*w+nn+b], P[(2*nn+a)*w+2*nn+b]
			xn, yn := P[(2*nn+b)*w+a], P[(2*nn+b)*w+nn+a]
			plane(&c.A, xx, xy, yx, yy, &k, dofU, dofU)
			plane(&c.B, xx, xy, yx, yy, &k, dofU, dofX)
			plane(&c.D, xx, xy, yx, yy, &k, dofX, dofX)
			k[3][0], k[3][1], k[4][0], k[4][1] = k[0][3], k[0][4], k[1][3], k[1][4] // B is symmetric
			k[2][2] = S[0][0]*xx + S[0][1]*(xy+yx) + S[1][1]*yy
			k[2][3] = S[0][0]*xn + S[0][1]*yn
			k[2][4] = S[0][1]*xn + S[1][1]*yn
			k[3][2] = S[0][0]*nx + S[0][1]*ny
			k[4][2] = S[0][1]*nx + S[1][1]*ny
			k[3][3] += S[0][0] * ab
			k[3][4] += S[0][1] * ab
			k[4][3] += S[0][1] * ab
			k[4][4] += S[1][1] * ab
			if large != nil {
				ta, tb := large[a*dofs*nn+b:], large[b*dofs*nn+a:]
				k[0][2], k[2][0] = ta[dofU*nn], tb[dofU*nn]
				k[1][2], k[2][1] = ta[dofV*nn], tb[dofV*nn]
				k[2][2] += ta[dofW*nn]
				k[3][2], k[2][3] = k[3][2]+ta[dofX*nn], k[2][3]+tb[dofX*nn]
				k[4][2], k[2][4] = k[4][2]+ta[dofY*nn], k[2][4]+tb[dofY*nn]
			}
			put(&k, row[dofs*a:dofs*a+dofs], row[dofs*b:dofs*b+dofs], a == b, f, ld)
		}
	}
}

// plane fills the 2 x 2 block at (i, j) of the bilinear form of one 3 x 3 laminate
// matrix between two in-plane fields.
func plane(m *[3][3]float64, xx, xy, yx, yy float64, k *[dofs][dofs]float64, i, j int) {
	k[i][j] = m[0][0]*xx + m[0][2]*(xy+yx) + m[2][2]*yy
	k[i][j+1] = m[0][1]*xy + m[0][2]*xx + m[1][2]*yy + m[2][2]*yx
	k[i+1][j] = m[0][1]*yx + m[0][2]*xx + m[1][2]*yy + m[2][2]*xy
	k[i+1][j+1] = m[1][1]*yy + m[1][2]*(xy+yx) + m[2][2]*xx
}

// put adds the block of nodes a and b to the lower triangle; of a diagonal block
// only its own lower half, or the entries would count twice.
func put(k *[dofs][dofs]float64, ra, rb []int32, diagonal bool, f []float64, ld int) {
	for i := range dofs {
		r := ra[i]
		if r < 0 {
			continue
		}
		for j := range dofs {
			c := rb[j]
			switch {
			case c < 0 || diagonal && c > r:
			case r >= c:
				f[int(r)*ld+int(c)] += k[i][j]
			default:
				f[int(c)*ld+int(r)] += k[i][j]
			}
		}
	}
}
