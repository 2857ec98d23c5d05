package joint

import "fmt"

// skyline is a symmetric matrix that keeps, of every row, what lies between its
// first entry and the diagonal. Elimination fills nothing outside that. Here
// all rows but two of a section reach back one section, so that factoring costs
// about half of what full blocks would.
type skyline struct {
	first []int       // column of the first entry kept
	row   [][]float64 // row[i][k] is column first[i]+k; the last is the diagonal
	inv   []float64   // 1/d of the rows already eliminated
}

func newSkyline(first []int) *skyline {
	size := 0
	for i, f := range first {
		size += i - f + 1
	}
	store := make([]float64, size)
	s := &skyline{first, make([][]float64, len(first)), make([]float64, len(first))}
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
//
// Rows are taken by twos and columns by twos, which halves the reading; it is the
// plain row-by-row elimination
//
//	g_ij = a_ij - sum over k < j of g_ik l_jk,   l_ij = g_ij / d_j,   d_i = a_ii - sum g_ij l_ij
func (s *skyline) solve(f []float64) error {
	n := len(s.row)
	for i := 0; i < n; i += 2 {
		from := s.first[i]
		if i+1 < n {
			from = min(max(from, s.first[i+1]), i)
			s.eliminate(i+1, s.first[i+1], from)
		}
		s.eliminate(i, s.first[i], from)
		if i+1 < n {
			s.eliminatePair(i, from)
		} else {
			s.eliminate(i, from, i)
		}
		for r := i; r < min(i+2, n); r++ {
			if r > i {
				s.eliminate(r, i, r)
			}
			if err := s.pivot(r, f); err != nil {
				return err
			}
		}
	}
	for i := range f {
		f[i] *= s.inv[i]
	}
	for i := n - 1; i >= 0; i-- {
		l, x := s.row[i], f[i]
		below := f[s.first[i]:i]
		for k := range below {
			below[k] -= l[k] * x
		}
	}
	return nil
}

// eliminate brings the columns from ... to-1 of row i from a to g.
func (s *skyline) eliminate(i, from, to int) {
	g, fi := s.row[i], s.first[i]
	for j := from; j < to; j++ {
		l, fj := s.row[j], s.first[j]
		if lo := max(fi, fj); lo < j {
			g[j-fi] -= dot(g[lo-fi:j-fi], l[lo-fj:j-fj])
		}
	}
}

// eliminatePair brings the columns from ... i-1 of rows i and i+1 from a to g.
func (s *skyline) eliminatePair(i, from int) {
	g, h, fg, fh := s.row[i], s.row[i+1], s.first[i], s.first[i+1]
	j := from
	for ; j+1 < i; j += 2 {
		l, m, fl, fm := s.row[j], s.row[j+1], s.first[j], s.first[j+1]
		if fm > j { // nothing of the second column to take along
			s.eliminate(i, j, j+2)
			s.eliminate(i+1, j, j+2)
			continue
		}
		lo := min(max(fg, fh, fl, fm), j)
		gl, gm, hl, hm := dots(g[lo-fg:j-fg], h[lo-fh:j-fh], l[lo-fl:j-fl], m[lo-fm:j-fm])
		if a := max(fg, fl); a < lo { // the ends that not all four have
			gl += dot(g[a-fg:lo-fg], l[a-fl:lo-fl])
		}
		if a := max(fg, fm); a < lo {
			gm += dot(g[a-fg:lo-fg], m[a-fm:lo-fm])
		}
		if a := max(fh, fl); a < lo {
			hl += dot(h[a-fh:lo-fh], l[a-fl:lo-fl])
		}
		if a := max(fh, fm); a < lo {
			hm += dot(h[a-fh:lo-fh], m[a-fm:lo-fm])
		}
		mj := m[j-fm]
		g[j-fg] -= gl
		h[j-fh] -= hl
		g[j+1-fg] -= gm + g[j-fg]*mj
		h[j+1-fh] -= hm + h[j-fh]*mj
	}
	s.eliminate(i, j, i)
	s.eliminate(i+1, j, i)
}

// pivot turns row i from g to l and its diagonal to d, and takes f along.
func (s *skyline) pivot(i int, f []float64) error {
	g, fi := s.row[i], s.first[i]
	d := g[i-fi]
	inv := s.inv[fi:i]
	for k, gk := range g[:i-fi] {
		l := gk * inv[k]
		d -= gk * l
		g[k] = l
	}
	if !(d > 0) {
		return fmt.Errorf("point %d of %d of the joint isn't held (pivot %.3g)", i, len(s.row), d)
	}
	s.inv[i] = 1 / d
	f[i] -= dot(g[:i-fi], f[fi:i])
	return nil
}

// dots returns the four products of the vectors a, b with l, m, alike long.
func dots(a, b, l, m []float64) (al, am, bl, bm float64) {
	b, l, m = b[:len(a)], l[:len(a)], m[:len(a)]
	for k, x := range a {
		y, p, q := b[k], l[k], m[k]
		al += x * p
		am += x * q
		bl += y * p
		bm += y * q
	}
	return al, am, bl, bm
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
