package panel

import (
	"math"
	"testing"

	"scarfwright/physics/si"
)

// A model that is given another stretch or pressure, or begun at the shape of a like
// panel, comes to what a new one comes to.
func TestAgain(t *testing.T) {
	p := referencePanel("overlay", Clamped)
	p.Stretch = [2]float64{2e-3, -1e-3}
	fresh, err := Prepare(p, Options{Degree: 3, Sides: 2, Inner: 1, Outer: 2})
	if err != nil {
		t.Fatal(err)
	}
	want, err := fresh.LargeDeflection()
	if err != nil {
		t.Fatal(err)
	}
	p.Stretch, p.Pressure = [2]float64{}, si.KPa(1)
	m, err := Prepare(p, Options{Degree: 3, Sides: 2, Inner: 1, Outer: 2})
	if err != nil {
		t.Fatal(err)
	}
	other, err := m.Linear()
	if err != nil {
		t.Fatal(err)
	}
	m.SetStretch(2e-3, -1e-3)
	m.SetPressure(si.KPa(20))
	again, err := m.LargeDeflection()
	if err != nil {
		t.Fatal(err)
	}
	like, err := m.LargeDeflectionFrom(want)
	if err != nil {
		t.Fatal(err)
	}
	foreign, err := m.LargeDeflectionFrom(&Result{u: make([]float64, 3)})
	if err != nil {
		t.Fatal(err)
	}
	w, _ := want.MaxDeflection()
	if o, _ := other.MaxDeflection(); math.Abs(float64(o/w)-1) < 0.1 {
		t.Fatalf("the other load comes to the same deflection %v: the test shows nothing", o)
	}
	for name, r := range map[string]*Result{"set anew": again, "begun at the answer": like, "begun at another mesh": foreign} {
		for _, at := range []Point{{}, {X: si.MM(200), Y: si.MM(50)}, {X: si.MM(-100), Y: si.MM(120)}} {
			a, _ := want.Deformation(at, -1)
			b, _ := r.Deformation(at, -1)
			if math.Abs(float64(a.W-b.W)) > 1e-9*math.Abs(float64(w)) || math.Abs(a.Plane[0]-b.Plane[0]) > 1e-9 {
				t.Errorf("%s at %v: w %v and %v, ex %g and %g", name, at, a.W, b.W, a.Plane[0], b.Plane[0])
			}
		}
	}
}

// A symmetric panel that is only stretched has no deflection, and is solved all the
// same.
func TestStretchedFlat(t *testing.T) {
	p := referencePanel("intact", Clamped)
	p.Base = Centred(csm)
	p.Pressure, p.Stretch = 0, [2]float64{1e-2, 0}
	m, err := Prepare(p, Options{Degree: 3})
	if err != nil {
		t.Fatal(err)
	}
	r, err := m.LargeDeflection()
	if err != nil {
		t.Fatal(err)
	}
	d, err := r.Deformation(Point{}, 0)
	if err != nil || math.Abs(d.Plane[0]-1e-2) > 1e-9 || math.Abs(d.Plane[1]) > 1e-9 {
		t.Errorf("stretch %v, %v; want 0.01 and 0", d.Plane, err)
	}
}
