package laminate

// The 3 x 3 algebra of plane stress. A library would do it too; at this size the
// formulae are shorter than the calls.

type matrix = [3][3]float64

func multiply(a, b matrix) (p matrix) {
	for i := range 3 {
		for j := range 3 {
			p[i][j] = a[i][0]*b[0][j] + a[i][1]*b[1][j] + a[i][2]*b[2][j]
		}
	}
	return p
}

func transpose(a matrix) (t matrix) {
	for i := range 3 {
		for j := range 3 {
			t[i][j] = a[j][i]
		}
	}
	return t
}

func apply(a matrix, v [3]float64) (p [3]float64) {
	for i := range 3 {
		p[i] = a[i][0]*v[0] + a[i][1]*v[1] + a[i][2]*v[2]
	}
	return p
}

// sum returns a + f b.
func sum(a matrix, f float64, b matrix) matrix {
	for i := range 3 {
		for j := range 3 {
			a[i][j] += f * b[i][j]
		}
	}
	return a
}

// inverse returns a^-1 by cofactors. The matrices here are the stiffnesses of
// laminates, positive definite, so the determinant is not zero.
func inverse(a matrix) (inv matrix) {
	cofactor := func(i, j int) float64 {
		p, q := (i+1)%3, (i+2)%3
		r, s := (j+1)%3, (j+2)%3
		return a[p][r]*a[q][s] - a[p][s]*a[q][r]
	}
	det := a[0][0]*cofactor(0, 0) + a[0][1]*cofactor(0, 1) + a[0][2]*cofactor(0, 2)
	for i := range 3 {
		for j := range 3 {
			inv[i][j] = cofactor(j, i) / det
		}
	}
	return inv
}
