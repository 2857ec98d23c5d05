package panel

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// The stiffness of a curved element has exactly six motions that cost nothing.
func TestRigidBodyModes(t *testing.T) {
	p := referencePanel("overlay", Clamped)
	m, err := Prepare(p, Options{Whole: true, Degree: 3})
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range []int{0, 20, 60, 90} {
		sh := m.shapes[e]
		n := dofs * sh.nodes
		rows := make([]int32, n)
		for i := range rows {
			rows[i] = int32(i)
		}
		k := make([]float64, n*n)
		sh.stiffness(&m.sections[m.mesh.elements[e].zone], nil, rows, k, n)
		K := mat.NewSymDense(n, nil)
		for i := range n {
			for j := range i + 1 {
				K.SetSym(i, j, k[i*n+j])
			}
		}
		for mode := range 6 {
			v := mat.NewVecDense(n, nil)
			for a, node := range m.mesh.elements[e].nodes {
				at := m.mesh.at[node]
				set := func(i int, x float64) { v.SetVec(dofs*a+i, x) }
				switch mode {
				case 0, 1, 2:
					set(mode, 1)
				case 3: // turn in the plane
					set(dofU, -at.y)
					set(dofV, at.x)
				case 4: // tilt
					set(dofW, at.x)
					set(dofX, -1)
				case 5:
					set(dofW, at.y)
					set(dofY, -1)
				}
			}
			var f mat.VecDense
			f.MulVec(K, v)
			if got := mat.Norm(&f, 2) / mat.Norm(v, 2); got > 1e-11*mat.Norm(K, 2) {
				t.Errorf("element %d: mode %d costs %g", e, mode, got)
			}
		}
		var eigen mat.EigenSym
		eigen.Factorize(K, false)
		zero := 0
		values := eigen.Values(nil)
		for _, x := range values {
			if x < 1e-11*values[n-1] {
				zero++
			}
		}
		if zero != 6 {
			t.Errorf("element %d: %d motions without stiffness, want 6", e, zero)
		}
	}
}

// Observed order. Halving the elements of degree p of a smooth problem cuts the
// error of w like h^(2p) in theory for the energy; the test asks for p+1 and more.
// Raising the degree cuts it by several times each.
func TestOrder(t *testing.T) {
	iso := isoPly(1e10, 0.3, 0.02)
	p := Panel{Length: 0.5, Width: 0.4, Base: Centred(iso), Pressure: 1000, Edges: AllEdges(Edge{})}
	truth := centreW(t, solveLinear(t, p, Options{Degree: 10}))
	var errs []float64
	for _, sides := range []int{2, 4, 8} {
		r := solveLinear(t, p, Options{Degree: 2, Sides: sides}) // a grid has one degree more
		errs = append(errs, math.Abs(centreW(t, r)/truth-1))
	}
	for i := range 2 {
		if order := math.Log2(errs[i] / errs[i+1]); order < 4 {
			t.Errorf("halving elements of degree 3: errors %.2g, order %.2f, want at least 4", errs, order)
		}
	}
	t.Logf("degree 3, errors of w %.2g", errs)
	q := referencePanel("overlay", Clamped)
	truth = centreW(t, solveLinear(t, q, Options{Degree: 8}))
	errs = nil
	for degree := 2; degree <= 6; degree++ {
		errs = append(errs, math.Abs(centreW(t, solveLinear(t, q, Options{Degree: degree}))/truth-1))
	}
	t.Logf("overlay, degree 2 to 6, errors of w %.2g", errs)
	for i := range len(errs) - 1 {
		if errs[i+1] > errs[i]/2 {
			t.Errorf("overlay: errors of w by degree from 2: %.2g: too slow", errs)
		}
	}
}
