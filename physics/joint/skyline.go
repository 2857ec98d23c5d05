package joint

import "fmt"

// skyline is a symmetric matrix that keeps, of every row, what lies between its
// first entry and the diagonal. Elimination fills nothing outside that. Here
// all rows but two of a section reach back one section, so that factoring costs
// about half of what full blocks would.
type skyline struct {
	first []int       // column of the first entry kept
	row   [][]float64 // row[i][k] is column first[i]+k; the last is the diagonal
}

func newSkyline(first []int) *skyline {
	size := 0
	for i, f := range first {
		size += i - f + 1
	}
	store := make([]float64, size)
	s := &skyline{first, make([][]float64, len(first))}
	for i, f := range first {
		n := i - f + 1
		s.row[i], store = store[:n:n], store[n:]
	}
	return s
}

// add adds to the entry i, j and with it to j, i. A negative index is a point held
// at nought, and its row and column are dropped.
func (s *skyline) add(i, j int, k float64) {
	if j > i {
		i, j = j, i
	}
	if j >= 0 {
		s.row[i][j-s.first[i]] += k
	}
}

// solve overwrites f with the solution of s x = f, and s with its factors L D L^T.
// It returns an error when a pivot isn't positive: a part of the joint hangs loose.
func (s *skyline) solve(f []float64) error {
	for i, g := range s.row {
		fi := s.first[i]
		n := i - fi // entries left of the diagonal
		for k := range n {
			j := fi + k
			l := s.row[j]
			fj := s.first[j]
			if lo := max(fi, fj); lo < j {
				g[k] -= dot(g[lo-fi:k], l[lo-fj:j-fj])
			}
		}
		d := g[n]
		for k, gk := range g[:n] {
			j := fi + k
			l := gk / s.row[j][j-s.first[j]]
			d -= gk * l
			g[k] = l
		}
		if !(d > 0) {
			return fmt.Errorf("point %d of %d of the joint isn't held (pivot %.3g)", i, len(s.row), d)
		}
		g[n] = d
		f[i] -= dot(g[:n], f[fi:i])
	}
	for i, l := range s.row {
		f[i] /= l[i-s.first[i]]
	}
	for i := len(s.row) - 1; i >= 0; i-- {
		l, x := s.row[i], f[i]
		below := f[s.first[i]:i]
		for k := range below {
			below[k] -= l[k] * x
		}
	}
	return nil
}

// dot keeps four sums running, because one would wait for itself at every step.
func dot(a, b []float64) float64 {
	b = b[:len(a)]
	var s0, s1, s2, s3 float64
	for len(a) >= 4 && len(b) >= 4 {
		s0 += a[0] * b[0]
		s1 += a[1] * b[1]
		s2 += a[2] * b[2]
		s3 += a[3] * b[3]
		a, b = a[4:], b[4:]
	}
	for i := range a {
		s0 += a[i] * b[i]
	}
	return s0 + s1 + s2 + s3
}
