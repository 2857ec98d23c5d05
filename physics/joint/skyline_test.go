package joint

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// The solver against a dense one, on random matrices with ragged rows.
func TestSkyline(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200 {
		n := 1 + r.IntN(30)
		first := make([]int, n)
		for i := range first {
			first[i] = r.IntN(i + 1)
		}
		s, dense, f := newSkyline(first), mat.NewSymDense(n, nil), make([]float64, n)
		for i := range n {
			f[i] = r.NormFloat64()
			for j := first[i]; j <= i; j++ {
				v := r.NormFloat64()
				if i == j {
					v = 10 + 3*float64(n)
				}
				s.add(j, i, v)
				dense.SetSym(i, j, v)
			}
		}
		var chol mat.Cholesky
		var want mat.VecDense
		if !chol.Factorize(dense) || chol.SolveVecTo(&want, mat.NewVecDense(n, append([]float64{}, f...))) != nil {
			t.Fatal("dense solver")
		}
		if err := s.solve(f); err != nil {
			t.Fatal(err)
		}
		for i := range f {
			if math.Abs(f[i]-want.AtVec(i)) > 1e-12 {
				t.Fatalf("n = %d, unknown %d: got %g, want %g (dense Cholesky)", n, i, f[i], want.AtVec(i))
			}
		}
	}
	loose := newSkyline([]int{0, 0})
	loose.add(0, 0, 1)
	if loose.solve(make([]float64, 2)) == nil {
		t.Error("a loose part isn't noticed")
	}
}
