package panel

import (
	"errors"
	"math"
	"sync"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
)

// errSingular means that some motion of the panel meets no resistance.
var errSingular = errors.New("panel: the stiffness is singular: the panel can move as a whole, or has buckled")

// block is the number of columns eliminated at once: enough that the update of the
// rest is a matrix product, few enough that the rest of the work is small.
const block = 32

// scratch holds the working copies of one goroutine.
type scratch struct {
	w     []float64
	state state
}

var scratches = sync.Pool{New: func() any { return new(scratch) }}

// eliminate reduces the first cut rows of a front: a = L D L^T over them, with unit
// lower L and D on its diagonal, and the rest less L D L^T. There is no pivoting:
// the matrix is positive definite while the panel is stable, and D tells when it is
// not. It returns the number of negative pivots.
func (f *front) eliminate(s *scratch) (negative int, err error) {
	n, cut := len(f.rows), f.cut
	a := f.a
	if need := (n + 1) * cut; len(s.w) < need {
		s.w = make([]float64, need)
	}
	w := s.w // L D, row i at i*cut
	for k0 := 0; k0 < cut; k0 += block {
		k1 := min(k0+block, cut)
		nb := k1 - k0
		for k := k0; k < k1; k++ {
			d := a[k*n+k]
			if d < 0 {
				negative++
			}
			if !(math.Abs(d) > 0) || math.IsInf(d, 0) {
				return negative, errSingular
			}
			for i := k + 1; i < k1; i++ {
				l := a[i*n+k] / d
				for j := k + 1; j <= i; j++ {
					a[i*n+j] -= l * a[j*n+k]
				}
			}
			for i := k + 1; i < k1; i++ {
				a[i*n+k] /= d
			}
		}
		var inverse [block]float64
		for j := range nb {
			inverse[j] = 1 / a[(k0+j)*n+k0+j]
		}
		// The rows below, with the right-hand side.
		blas64.Implementation().Dtrsm(blas.Right, blas.Lower, blas.Trans, blas.Unit, n+1-k1, nb, 1,
			a[k0*n+k0:], n, a[k1*n+k0:], n)
		for i := k1; i <= n; i++ {
			row := a[i*n+k0:][:nb]
			copy(w[i*cut+k0:], row)
			for j := range row {
				row[j] *= inverse[j]
			}
		}
		for j0 := k1; j0 < cut; j0 += block {
			j1 := min(j0+block, cut)
			gemm(n, n+1-j0, j1-j0, nb, -1, a[j0*n+k0:], n, w[j0*cut+k0:], cut, 1, a[j0*n+j0:])
		}
	}
	for j0 := cut; j0 < n && cut > 0; j0 += 2 * block {
		j1 := min(j0+2*block, n)
		gemm(n, n+1-j0, j1-j0, cut, -1, a[j0*n:], n, w[j0*cut:], cut, 1, a[j0*n+j0:])
	}
	return negative, nil
}

// reset clears the lower triangle and the right-hand side of a front.
func (f *front) reset() {
	n := len(f.rows)
	if f.a == nil {
		f.a = make([]float64, n*(n+1))
		return
	}
	for i := range n {
		clear(f.a[i*n : i*n+i+1])
	}
	clear(f.a[n*n:])
}

// gather adds what the children left into a branch.
func (t *tree) gather(f *front) {
	f.reset()
	n := len(f.rows)
	for k, kid := range f.kids {
		c, into := &t.fronts[kid], f.into[k]
		m := len(c.rows)
		for i, r := range into {
			from := c.a[(c.cut+i)*m+c.cut:][:i+1]
			to := f.a[r*n : r*n+r+1]
			for j, x := range from {
				to[into[j]] += x
			}
		}
		from, to := c.a[m*m+c.cut:], f.a[n*n:]
		for j, q := range into {
			to[q] += from[j]
		}
	}
}

// factor eliminates everything, filling the leaves by the function given, and
// returns the number of negative pivots. Two children of enough size are done at
// the same time. With reuse, only leaves marked dirty and what stands above them
// are done; the rest is as it was.
func (t *tree) factor(reuse bool, fill func(f *front, s *scratch)) (negative int, err error) {
	s := scratches.Get().(*scratch)
	defer scratches.Put(s)
	if _, err := t.factorFrom(len(t.fronts)-1, s, reuse, fill); err != nil {
		return 0, err
	}
	for i := range t.fronts {
		negative += t.fronts[i].negative
	}
	return negative, nil
}

func (t *tree) factorFrom(number int, s *scratch, reuse bool, fill func(f *front, s *scratch)) (changed bool, err error) {
	f := &t.fronts[number]
	if f.element >= 0 {
		if reuse && !f.dirty {
			return false, nil
		}
		f.reset()
		fill(f, s)
		f.dirty = false
		f.negative, err = f.eliminate(s)
		return true, err
	}
	type outcome struct {
		changed bool
		err     error
	}
	var one, two outcome
	if f.pieces >= 4 {
		done := make(chan outcome)
		go func() {
			s := scratches.Get().(*scratch)
			c, err := t.factorFrom(f.kids[0], s, reuse, fill)
			scratches.Put(s)
			done <- outcome{c, err}
		}()
		two.changed, two.err = t.factorFrom(f.kids[1], s, reuse, fill)
		one = <-done
	} else {
		one.changed, one.err = t.factorFrom(f.kids[0], s, reuse, fill)
		two.changed, two.err = t.factorFrom(f.kids[1], s, reuse, fill)
	}
	if err := errors.Join(one.err, two.err); err != nil || !one.changed && !two.changed {
		return false, err
	}
	t.gather(f)
	f.negative, err = f.eliminate(s)
	return true, err
}

// solve returns the unknowns after factor, from the root down: the right-hand side
// was carried along as a row, so what is left is x = L^-T (z - L_below^T x_below).
func (t *tree) solve(x []float64) {
	t.solveFrom(len(t.fronts)-1, x)
}

func (t *tree) solveFrom(number int, x []float64) {
	f := &t.fronts[number]
	n := len(f.rows)
	z := make([]float64, f.cut)
	copy(z, f.a[n*n:])
	for i := n - 1; i >= 0; i-- {
		row := f.a[i*n:]
		var xi float64
		if i >= f.cut {
			xi = x[f.rows[i]]
			row = row[:f.cut]
		} else {
			xi = z[i]
			x[f.rows[i]] = xi
			row = row[:i]
		}
		blas64.Implementation().Daxpy(len(row), -xi, row, 1, z, 1)
	}
	if f.element >= 0 {
		return
	}
	if f.pieces >= 8 {
		done := make(chan bool)
		go func() { t.solveFrom(f.kids[0], x); done <- true }()
		t.solveFrom(f.kids[1], x)
		<-done
		return
	}
	t.solveFrom(f.kids[0], x)
	t.solveFrom(f.kids[1], x)
}
