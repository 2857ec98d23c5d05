package panel

import (
	"math"
	"math/rand/v2"
	"testing"

	"scarfwright/physics/si"
)

var largeReference = []reference{
	{"intact", Clamped, 6.0639994, 6.0639994, []strainRow{
		{0, 0, 0, [2]float64{5.698690e-05, 1.488565e-04}, [2]float64{-9.661791e-04, 1.682156e-03}, "xy"},
		{0, 225, 0, [2]float64{}, [2]float64{4.204351e-03, -2.953756e-03}, "y"},
		{450, 0, 0, [2]float64{3.030287e-03, -2.436328e-03}, [2]float64{}, "x"},
	}},
	{"overlay", Clamped, 4.1279316, 4.8669244, []strainRow{
		{0, 0, -1, [2]float64{2.964147e-04, -2.519171e-04}, [2]float64{-7.037265e-04, 1.192632e-03}, "xy"},
		{0, 225, 0, [2]float64{}, [2]float64{4.147366e-03, -2.898095e-03}, "y"},
		{450, 0, 0, [2]float64{2.983282e-03, -2.439751e-03}, [2]float64{}, "x"},
		{0, 100, 0, [2]float64{2.765748e-04, -5.417646e-05}, [2]float64{-1.689652e-03, 2.346522e-03}, "y"},
		{0, 100, -1, [2]float64{2.765748e-04, -2.746773e-04}, [2]float64{-2.406716e-04, 7.728179e-04}, "y"},
	}},
	{"scarf", Clamped, 6.1679230, 6.1679230, []strainRow{
		{0, 0, -1, [2]float64{-1.116508e-05, 1.167317e-04}, [2]float64{-9.797207e-04, 1.920053e-03}, "xy"},
		{0, 225, 0, [2]float64{}, [2]float64{4.178050e-03, -2.946804e-03}, "y"},
		{450, 0, 0, [2]float64{3.038483e-03, -2.435561e-03}, [2]float64{}, "x"},
		{0, 100, 1, [2]float64{2.511459e-05, 7.028441e-05}, [2]float64{-2.726502e-04, 1.052191e-03}, "y"},
		{150, 0, 1, [2]float64{-9.072828e-05, 3.699283e-04}, [2]float64{-9.721791e-04, 1.617568e-03}, "xy"},
	}},
	{"intact", SimplySupported, 7.8583013, 7.8583013, []strainRow{
		{0, 0, 0, [2]float64{1.592796e-04, 2.127684e-04}, [2]float64{-3.526307e-04, 1.795945e-03}, "xy"},
	}},
	{"overlay", SimplySupported, 5.9840836, 6.9213254, []strainRow{
		{0, 0, -1, [2]float64{4.108960e-04, -2.377844e-04}, [2]float64{-2.573652e-04, 1.213272e-03}, "xy"},
		{0, 100, 0, [2]float64{3.963463e-04, -1.959801e-05}, [2]float64{-1.779507e-03, 3.194711e-03}, "y"},
	}},
	{"scarf", SimplySupported, 7.9826965, 7.9826965, []strainRow{
		{0, 0, -1, [2]float64{5.762752e-05, 1.642136e-04}, [2]float64{-2.881132e-04, 2.082058e-03}, "xy"},
		{0, 100, 1, [2]float64{9.879843e-05, 1.428381e-04}, [2]float64{-2.259346e-04, 1.662428e-03}, "y"},
		{150, 0, 0, [2]float64{8.775419e-05, 4.270160e-04}, [2]float64{-3.741704e-04, 1.755313e-03}, "xy"},
	}},
}

func TestLargeDeflectionReference(t *testing.T) {
	for _, ref := range largeReference {
		m, err := Prepare(referencePanel(ref.kind, ref.support), Options{})
		if err != nil {
			t.Fatal(err)
		}
		r, err := m.LargeDeflection()
		if err != nil {
			t.Fatal(err)
		}
		w, e := ref.compare(t, r)
		t.Logf("%s %v: w off by %.4f %%, strain by %.3f %%, %d steps", ref.kind, ref.support, 100*w, 100*e, r.Iterations)
		if w > 0.002 || e > 0.01 {
			t.Errorf("%s %v: w off by %.3f %%, strain by %.2f %%", ref.kind, ref.support, 100*w, 100*e)
		}
	}
}

// Newton finds equilibrium for every random panel, also thin ones that small
// deflection would send in by 200 mm, and the energy rule keeps the steps few.
func TestLargeDeflectionRandom(t *testing.T) {
	n := 60
	if testing.Short() {
		n = 2
	}
	r := rand.New(rand.NewPCG(3, 5))
	most := 0
	for i := range n {
		p := randomPanel(r)
		m, err := Prepare(p, Options{Degree: 3})
		if err != nil {
			t.Fatal(i, err)
		}
		small, err := m.Linear()
		if err != nil {
			t.Fatal(i, err)
		}
		large, err := m.LargeDeflection()
		if err != nil {
			t.Fatal(i, err)
		}
		_, reaction, left := large.Equilibrium()
		if left > 1e-5 {
			t.Errorf("%d: %g of the load is left over, reaction %v, after %d steps", i, left, reaction, large.Iterations)
		}
		a, _ := small.MaxDeflection()
		b, _ := large.MaxDeflection()
		if ratio := float64(b / a); ratio > 1.1 {
			t.Errorf("%d: large deflection %v over small %v", i, b, a)
		}
		most = max(most, large.Iterations)
	}
	t.Logf("at most %d steps", most)
}

// closed form: a square plate, simply supported, pressed along x by N buckles at
// N = 4 pi^2 D/b^2 (thin; the shear of this one takes 0.1 % off).
func TestBuckling(t *testing.T) {
	h, b := si.MM(4), 0.5
	lay := Centred(isoPly(si.GPa(10), 0.3, h))
	critical := 4 * math.Pi * math.Pi * IsotropicBending(si.GPa(10), 0.3, h).D11 / (b * b)
	for _, c := range []struct {
		part    float64
		buckles bool
	}{{0.99, false}, {1.01, true}} {
		pressed := Edge{Support: SimplySupported, Hard: true, Slides: true, Pull: si.LineLoad(-c.part * critical)}
		side := Edge{Support: SimplySupported, Hard: true, Slides: true}
		p := Panel{Length: si.M(b), Width: si.M(b), Base: lay, Edges: [4]Edge{pressed, pressed, side, side}}
		m, err := Prepare(p, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if _, err := m.LargeDeflection(); (err != nil) != c.buckles {
			t.Errorf("at %g of the critical load: %v", c.part, err)
		}
	}
}
