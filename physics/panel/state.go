package panel

// state is an element's deformation at its Gauss points, and what follows from it.
type state struct {
	u       []float64    // the element's unknowns, dofs*a + i
	e       [8][]float64 // strain of the plane z = 0 (x, y, xy), curvature, shear (xz, yz)
	wx, wy  []float64    // slopes of the deflection
	force   [8][]float64 // N, M, Q times the area of the point
	r       []float64    // residual: load less internal force
	right   []float64    // for tangent
	left    []float64
	tangent []float64
}

func (st *state) fit(s *shape) {
	if len(st.u) == dofs*s.nodes && len(st.wx) == s.points {
		return
	}
	st.u, st.r = make([]float64, dofs*s.nodes), make([]float64, dofs*s.nodes)
	st.wx, st.wy = make([]float64, s.points), make([]float64, s.points)
	for i := range 8 {
		st.e[i], st.force[i] = make([]float64, s.points), make([]float64, s.points)
	}
	st.left = make([]float64, 2*s.nodes*s.points)
	st.right = make([]float64, 2*dofs*s.nodes*s.points)
	st.tangent = make([]float64, dofs*s.nodes*s.nodes)
}

// deform sets the strains from the unknowns st.u:
//
//	ex = u,x + w,x^2/2   ey = v,y + w,y^2/2   exy = u,y + v,x + w,x w,y
//	kx = tx,x            ky = ty,y            kxy = tx,y + ty,x
//	gx = w,x + tx        gy = w,y + ty
//
// without the squares when the deflection is taken for small (von Karman 1910, for
// shear-deformable plates as in Reddy 2004 ch. 3; from memory).
func (st *state) deform(s *shape, large bool) {
	for i := range st.e {
		clear(st.e[i])
	}
	clear(st.wx)
	clear(st.wy)
	ng := s.points
	for a := range s.nodes {
		q := st.u[dofs*a : dofs*a+dofs]
		u, v, w, tx, ty := q[0], q[1], q[2], q[3], q[4]
		dx, dy, n := s.dx[a*ng:][:ng], s.dy[a*ng:][:ng], s.n[a*ng:][:ng]
		for g := range ng {
			st.e[0][g] += dx[g] * u
			st.e[1][g] += dy[g] * v
			st.e[2][g] += dy[g]*u + dx[g]*v
			st.e[3][g] += dx[g] * tx
			st.e[4][g] += dy[g] * ty
			st.e[5][g] += dy[g]*tx + dx[g]*ty
			st.e[6][g] += n[g] * tx
			st.e[7][g] += n[g] * ty
			st.wx[g] += dx[g] * w
			st.wy[g] += dy[g] * w
		}
	}
	for g := range ng {
		x, y := st.wx[g], st.wy[g]
		st.e[6][g] += x
		st.e[7][g] += y
		if large {
			st.e[0][g] += x * x / 2
			st.e[1][g] += y * y / 2
			st.e[2][g] += x * y
		}
	}
}

// resist sets the forces from the strains, times the area that belongs to each point.
func (st *state) resist(s *shape, c *section) {
	for g, dw := range s.dw {
		var e [8]float64
		for i := range e {
			e[i] = st.e[i][g] * dw
		}
		f := c.times(e)
		for i := range f {
			st.force[i][g] = f[i]
		}
	}
}

// times returns the forces N, M, Q of a section under the strains e, k, g.
func (s *section) times(e [8]float64) (f [8]float64) {
	for i := range 3 {
		A, B, D := &s.A[i], &s.B[i], &s.D[i]
		f[i] = A[0]*e[0] + A[1]*e[1] + A[2]*e[2] + B[0]*e[3] + B[1]*e[4] + B[2]*e[5]
		f[3+i] = B[0]*e[0] + B[1]*e[1] + B[2]*e[2] + D[0]*e[3] + D[1]*e[4] + D[2]*e[5]
	}
	f[6] = s.S[0][0]*e[6] + s.S[0][1]*e[7]
	f[7] = s.S[1][0]*e[6] + s.S[1][1]*e[7]
	return f
}

// residue sets r to the work of the pressure q less that of the forces, for a unit
// of each unknown.
func (st *state) residue(s *shape, q float64, large bool) {
	ng := s.points
	F := &st.force
	for a := range s.nodes {
		dx, dy, n := s.dx[a*ng:][:ng], s.dy[a*ng:][:ng], s.n[a*ng:][:ng]
		var r [dofs]float64
		for g := range ng {
			x, y := dx[g], dy[g]
			r[0] += x*F[0][g] + y*F[2][g]
			r[1] += x*F[2][g] + y*F[1][g]
			r[2] += x*F[6][g] + y*F[7][g]
			r[3] += x*F[3][g] + y*F[5][g] + n[g]*F[6][g]
			r[4] += x*F[5][g] + y*F[4][g] + n[g]*F[7][g]
			if large {
				wx, wy := st.wx[g], st.wy[g]
				r[2] += x*(wx*F[0][g]+wy*F[2][g]) + y*(wx*F[2][g]+wy*F[1][g])
			}
		}
		r[2] -= q * s.mass[a]
		for i := range r {
			st.r[dofs*a+i] = -r[i]
		}
	}
}

// stiffen sets st.tangent, what a large deflection adds to the stiffness. All of it
// couples an unknown f of node a with w of node b and has the form
//
//	integral of grad_a . P_f grad_b
//
// where P_f is a 2 x 2 matrix at each point: the laminate's A or B seen through the
// slopes G = (wx 0; 0 wy; wy wx), and for w itself G^T A G and the forces N. So all
// of them are one product of matrices.
func (st *state) stiffen(s *shape, c *section) {
	ng, nn := s.points, s.nodes
	var P [dofs][]float64 // four entries a point, times the area
	for f := range P {
		P[f] = make([]float64, 4*ng)
	}
	for g := range ng {
		wx, wy, dw := st.wx[g], st.wy[g], s.dw[g]
		var AG, BG [3][2]float64
		for i := range 3 {
			AG[i] = [2]float64{(c.A[i][0]*wx + c.A[i][2]*wy) * dw, (c.A[i][1]*wy + c.A[i][2]*wx) * dw}
			BG[i] = [2]float64{(c.B[i][0]*wx + c.B[i][2]*wy) * dw, (c.B[i][1]*wy + c.B[i][2]*wx) * dw}
		}
		N := [3]float64{st.force[0][g], st.force[1][g], st.force[2][g]}
		for j := range 2 {
			P[dofU][4*g+j], P[dofU][4*g+2+j] = AG[0][j], AG[2][j]
			P[dofV][4*g+j], P[dofV][4*g+2+j] = AG[2][j], AG[1][j]
			P[dofX][4*g+j], P[dofX][4*g+2+j] = BG[0][j], BG[2][j]
			P[dofY][4*g+j], P[dofY][4*g+2+j] = BG[2][j], BG[1][j]
			P[dofW][4*g+j] = wx*AG[0][j] + wy*AG[2][j] + [2]float64{N[0], N[2]}[j]
			P[dofW][4*g+2+j] = wy*AG[1][j] + wx*AG[2][j] + [2]float64{N[2], N[1]}[j]
		}
	}
	for a := range nn {
		dx, dy := s.dx[a*ng:][:ng], s.dy[a*ng:][:ng]
		copy(st.left[2*a*ng:], dx)
		copy(st.left[(2*a+1)*ng:], dy)
		for f := range dofs {
			right, p := st.right[(f*nn+a)*2*ng:][:2*ng], P[f]
			for g := range ng {
				right[g] = p[4*g]*dx[g] + p[4*g+1]*dy[g]
				right[ng+g] = p[4*g+2]*dx[g] + p[4*g+3]*dy[g]
			}
		}
	}
	gemm(dofs*nn, nn, dofs*nn, 2*ng, 1, st.left, 2*ng, st.right, 2*ng, 0, st.tangent)
}
