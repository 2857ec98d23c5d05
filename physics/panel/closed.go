package panel

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"scarfwright/physics/si"
)

// Bending is the bending stiffness of a specially orthotropic plate (one whose
// material axes are x and y and whose stack is symmetric), in N m.
type Bending struct{ D11, D12, D22, D66 float64 }

// IsotropicBending returns D = E h^3/12(1-nu^2) and its companions.
func IsotropicBending(E si.Pressure, nu float64, h si.Length) Bending {
	t := float64(h)
	D := float64(E) * t * t * t / 12 / (1 - nu*nu)
	return Bending{D, nu * D, D, (1 - nu) / 2 * D}
}

// PlateResult holds the deflection at the middle of a plate and the moments, per
// unit width in N m/m, at the middle and at the middles of two edges: EdgeX across
// the edges x = +-a/2, EdgeY across y = +-b/2. A moment is positive when it
// stretches the face away from the pressure.
type PlateResult struct {
	W            si.Length
	Mx, My       float64
	EdgeX, EdgeY float64
}

// SimplySupportedIsotropic returns the middle of a rectangular plate a x b, simply
// supported, under uniform pressure, by Levy's series:
//
//	w = (4 q a^4/pi^5 D) sum 1/m^5 [1 - A cosh ky + B ky sinh ky] sin kx,  odd m
//	k = m pi/a, alpha = k b/2, A = (alpha tanh alpha + 2)/(2 cosh alpha), B = 1/(2 cosh alpha)
//
// Thin plate, small deflection. Timoshenko & Woinowsky-Krieger, Theory of Plates and
// Shells, 2nd ed., art. 30 (from memory; their table 8 pins it). Good to 1e-9.
func SimplySupportedIsotropic(E si.Pressure, nu float64, h, a, b si.Length, q si.Pressure) PlateResult {
	D := IsotropicBending(E, nu, h).D11
	la := float64(a)
	var w, wxx, wyy float64
	sign := 1.0
	for m := 1.0; m < 4000; m += 2 {
		k := m * math.Pi / la
		alpha := k * float64(b) / 2
		A, B := 0.0, 0.0
		if alpha < 300 { // beyond, cosh would overflow and the terms are nothing
			B = 1 / (2 * math.Cosh(alpha))
			A = (alpha*math.Tanh(alpha) + 2) * B
		}
		m5 := m * m * m * m * m
		w += sign / m5 * (1 - A)
		wxx -= sign / m5 * (1 - A) * k * k
		wyy += sign / m5 * (2*B - A) * k * k
		sign = -sign
	}
	c := 4 * float64(q) * la * la * la * la / (math.Pow(math.Pi, 5) * D)
	return PlateResult{W: si.Length(c * w), Mx: -c * D * (wxx + nu*wyy), My: -c * D * (wyy + nu*wxx)}
}

// SimplySupportedPlate returns the middle of a specially orthotropic plate a x b under
// uniform pressure by Navier's double series
//
//	w = sum Qmn sin(m pi x/a) sin(n pi y/b) / pi^4 [D11 (m/a)^4 + 2 (D12 + 2 D66)(mn/ab)^2 + D22 (n/b)^4],  Qmn = 16 q/(pi^2 m n)
//
// over odd m, n up to 799: w to 1e-12, moments to about 1e-8. Reddy, Mechanics of
// Laminated Composite Plates and Shells, 2nd ed., ch. 5 (from memory; values of its
// tables pin it).
func SimplySupportedPlate(d Bending, a, b si.Length, q si.Pressure) PlateResult {
	la, lb := float64(a), float64(b)
	var w, wxx, wyy float64
	for m := 1; m < 800; m += 2 {
		x := float64(m) * math.Pi / la
		for n := 1; n < 800; n += 2 {
			y := float64(n) * math.Pi / lb
			sign := float64(1 - (m+n-2)%4) // of the two sines at the middle: + - + -
			t := sign * 16 * float64(q) / (math.Pi * math.Pi * float64(m*n)) /
				(d.D11*x*x*x*x + 2*(d.D12+2*d.D66)*x*x*y*y + d.D22*y*y*y*y)
			w += t
			wxx -= t * x * x
			wyy -= t * y * y
		}
	}
	return PlateResult{W: si.Length(w), Mx: -d.D11*wxx - d.D12*wyy, My: -d.D12*wxx - d.D22*wyy}
}

// ClampedPlate returns the middle and the edges of a specially orthotropic plate
// a x b, clamped all round, under uniform pressure, by the method of Ritz.
//
// The trial functions along each axis are f_n whose curvature is P_n, the Legendre
// polynomial of even n >= 2: they and their slopes vanish at the ends, and their
// curvatures are orthogonal, so that the equations stay well conditioned. With 14
// of them a side w is good to 1e-10 and the edge moments to 5e-5 up to a side ratio
// of 3 (measured against 24).
func ClampedPlate(d Bending, a, b si.Length, q si.Pressure) PlateResult {
	return ritz(d, float64(a), float64(b), float64(q), 14)
}

func ritz(d Bending, a, b, q float64, terms int) PlateResult {
	// Integrals over [-1, 1] of products of f, f', f'', and of f itself.
	var f, slope, bend [][]float64
	x, weight := gauss(2*terms + 4)
	for i := range terms {
		n := 2*i + 2
		fi, si, bi := make([]float64, len(x)), make([]float64, len(x)), make([]float64, len(x))
		for g, z := range x {
			fi[g], si[g], bi[g] = trial(n, z)
		}
		f, slope, bend = append(f, fi), append(slope, si), append(bend, bi)
	}
	integral := func(u, v []float64) (s float64) {
		for g, w := range weight {
			s += w * u[g] * v[g]
		}
		return s
	}
	one := make([]float64, len(x))
	for g := range one {
		one[g] = 1
	}
	N := terms * terms
	K, load := mat.NewSymDense(N, nil), mat.NewVecDense(N, nil)
	sx, sy := 2/a, 2/b // d/dx of the panel over d/dx of [-1, 1]
	ff, ss := table(integral, f, f), table(integral, slope, slope)
	bb, fb := table(integral, bend, bend), table(integral, f, bend)
	for r := range N {
		i, j := r/terms, r%terms
		load.SetVec(r, q*integral(f[i], one)*integral(f[j], one))
		for c := range r + 1 {
			k, l := c/terms, c%terms
			K.SetSym(r, c, d.D11*sx*sx*sx*sx*bb[i][k]*ff[j][l]+d.D22*sy*sy*sy*sy*ff[i][k]*bb[j][l]+
				sx*sx*sy*sy*(d.D12*(fb[k][i]*fb[j][l]+fb[i][k]*fb[l][j])+4*d.D66*ss[i][k]*ss[j][l]))
		}
	}
	var cholesky mat.Cholesky
	var sol mat.VecDense
	if !cholesky.Factorize(K) || cholesky.SolveVecTo(&sol, load) != nil {
		return PlateResult{W: si.Length(math.NaN())} // the stiffness was not that of a plate
	}
	at := func(x, y float64) (w, wxx, wyy float64) {
		for r := range N {
			fx, _, bx := trial(2*(r/terms)+2, x)
			fy, _, by := trial(2*(r%terms)+2, y)
			w += sol.AtVec(r) * fx * fy
			wxx += sol.AtVec(r) * bx * fy * sx * sx
			wyy += sol.AtVec(r) * fx * by * sy * sy
		}
		return w, wxx, wyy
	}
	w, wxx, wyy := at(0, 0)
	_, exx, _ := at(1, 0)
	_, _, eyy := at(0, 1)
	return PlateResult{W: si.Length(w), Mx: -d.D11*wxx - d.D12*wyy, My: -d.D12*wxx - d.D22*wyy,
		EdgeX: -d.D11 * exx, EdgeY: -d.D22 * eyy}
}

func table(integral func(u, v []float64) float64, a, b [][]float64) [][]float64 {
	t := make([][]float64, len(a))
	for i := range a {
		for j := range b {
			t[i] = append(t[i], integral(a[i], b[j]))
		}
	}
	return t
}

// trial returns f_n, its slope and its curvature P_n at z, from
//
//	f_n' = (P_{n+1} - P_{n-1})/(2n+1)
func trial(n int, z float64) (f, slope, bend float64) {
	P := func(k int) float64 { p, _ := legendre(k, z); return p }
	x := float64(n)
	pn := P(n)
	slope = (P(n+1) - P(n-1)) / (2*x + 1)
	f = ((P(n+2)-pn)/(2*x+3) - (pn-P(n-2))/(2*x-1)) / (2*x + 1)
	return f, slope, pn
}
