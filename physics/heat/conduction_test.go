package heat_test

import (
	"fmt"
	"math"
	"testing"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
)

// inert is the glass/polyester of BogettiGillespie1991 with its reaction left out.
func inert(mm float64) heat.Layer {
	l := glassPolyesterLayer(mm, 0)
	l.Reaction = nil
	return l
}

const half, diffusivity = 0.0127, 0.2163 / (1890 * 1260)

// stepTheta is the classic series for a slab whose faces jump at time 0, at its
// middle: sum (4/pi) (-1)^i/(2i+1) exp(-((2i+1) pi/2)^2 Fo).
func stepTheta(t float64) float64 {
	Fo, sum := diffusivity*t/(half*half), 0.0
	for i := range 60 {
		n := float64(2*i + 1)
		sum += 4 / math.Pi * math.Pow(-1, float64(i)) / n * math.Exp(-n*n*math.Pi*math.Pi/4*Fo)
	}
	return sum
}

// convectiveTheta is the series for faces that convect, at a share z of the half
// thickness from the middle: zeta tan zeta = Bi.
func convectiveTheta(h, t, z float64) float64 {
	Bi, Fo, sum := h*half/0.2163, diffusivity*t/(half*half), 0.0
	for i := range 60 {
		low, high := float64(i)*math.Pi, (float64(i)+0.5)*math.Pi
		for range 80 {
			mid := (low + high) / 2
			if mid*math.Sin(mid) < Bi*math.Cos(mid) == (math.Cos(mid) > 0) {
				low = mid
			} else {
				high = mid
			}
		}
		r := low
		sum += 4 * math.Sin(r) / (2*r + math.Sin(2*r)) * math.Cos(r*z) * math.Exp(-r*r*Fo)
	}
	return sum
}

func TestSeriesAreTheTable(t *testing.T) {
	// The two series of this file against values summed elsewhere.
	const origin = "series; independent computation, scipy 1.10.1"
	for _, r := range []struct{ t, theta float64 }{
		{60, 0.999761}, {300, 0.829262}, {600, 0.552913}, {1200, 0.240309}, {1800, 0.104400},
	} {
		near(t, fmt.Sprintf("faces jump, %g s [%s]", r.t, origin), stepTheta(r.t), r.theta, 6e-7)
	}
	for _, r := range []struct{ h, t, theta float64 }{
		{5, 600, 0.95252}, {5, 1800, 0.79661}, {5, 3600, 0.60774},
		{10, 600, 0.91328}, {10, 3600, 0.40131},
		{25, 600, 0.82892}, {25, 1800, 0.43384}, {25, 3600, 0.16342},
	} {
		near(t, fmt.Sprintf("h = %g, %g s [%s]", r.h, r.t, origin), convectiveTheta(r.h, r.t, 0), r.theta, 6e-6)
	}
}

func TestStepSlab(t *testing.T) {
	s := heat.Slab{
		Layers: []heat.Layer{inert(25.4)}, Cells: 400, Tolerance: 1e-5,
		First: heat.Prescribed(heat.Steady(si.Celsius(90))), Last: heat.Prescribed(heat.Steady(si.Celsius(90))),
		Start: si.Celsius(25), For: si.Minutes(31),
	}
	r := run(t, s)
	for _, sec := range []float64{60, 300, 600, 1200, 1800} {
		got := (90 - r.TempAt(si.MM(12.7), si.Seconds(sec)).Celsius()) / 65
		near(t, fmt.Sprintf("faces jump 25 to 90 C, middle at %g s [series]", sec), got, stepTheta(sec), 1e-5)
	}
	near(t, "the same at 600 s, C [series]", r.TempAt(si.MM(12.7), 600).Celsius(), 54.061, 1e-3)
}

func TestConvectiveSlab(t *testing.T) {
	for _, h := range []float64{5, 10, 25} {
		air := heat.Convective(si.HeatTransfer(h), heat.Steady(si.Celsius(90)))
		r := run(t, heat.Slab{
			Layers: []heat.Layer{inert(25.4)}, Cells: 400, Tolerance: 1e-5,
			First: air, Last: air, Start: si.Celsius(25), For: si.Hours(1),
		})
		for _, sec := range []float64{60, 600, 1800, 3600} {
			for _, z := range []float64{0, 0.5, 1} {
				got := (90 - r.TempAt(si.Length(half*(1-z)), si.Seconds(sec)).Celsius()) / 65
				near(t, fmt.Sprintf("h = %g, %g s, %g of the way out [series]", h, sec, z), got, convectiveTheta(h, sec, z), 1e-5)
			}
		}
	}
}

// An insulated middle is a line of symmetry.
func TestHalfASlabIsTheWhole(t *testing.T) {
	whole := bgA(25.4, 1e-6, 80)
	part := bgA(12.7, 1e-6, 40)
	part.Last = heat.Insulated()
	w, p := run(t, whole), run(t, part)
	near(t, "peak, K", float64(p.Peak.Temp), float64(w.Peak.Temp), 1e-3)
	near(t, "time of the peak, s", float64(p.Peak.Time), float64(w.Peak.Time), 0.05)
}

func TestSteadyWallIsResistancesInARow(t *testing.T) {
	// Long after: q = (T1 - T2)/(1/h1 + sum t/k + 1/h2), closed form.
	r := run(t, heat.Slab{
		Layers: []heat.Layer{
			{Thickness: si.MM(6), Conductivity: 0.25, Density: 1700, SpecificHeat: 1100},
			{Thickness: si.MM(20), Conductivity: 0.035, Density: 80, SpecificHeat: 1400},
			{Thickness: si.MM(3), Conductivity: 0.22, Density: 1600, SpecificHeat: 1200},
		},
		First: heat.Convective(8, heat.Steady(si.Celsius(10))),
		Last:  heat.Convective(12, heat.Steady(si.Celsius(60))),
		Start: si.Celsius(20), For: si.Days(3),
	})
	q := 50 / (1./8 + 0.006/0.25 + 0.020/0.035 + 0.003/0.22 + 1./12)
	T := 10 + q/8
	for _, x := range []struct{ mm, drop float64 }{{0, 0}, {6, 0.006 / 0.25}, {16, 0.010 / 0.035}, {26, 0.010 / 0.035}, {29, 0.003 / 0.22}} {
		T += q * x.drop
		near(t, fmt.Sprintf("steady wall at %g mm, C", x.mm), r.TempAt(si.MM(x.mm), r.End).Celsius(), T, 1e-3)
	}
}

// With nothing between and all insulated, two bodies come to the mean of their heat.
func TestTwoBodiesMix(t *testing.T) {
	warm, cold := inert(10), inert(20)
	warm.Start, cold.Start, cold.Density = si.Celsius(60), si.Celsius(10), 900
	r := run(t, heat.Slab{Layers: []heat.Layer{warm, cold}, For: si.Days(2)})
	want := (60*10*1890 + 10*20*900.) / (10*1890 + 20*900)
	near(t, "mean, C", r.TempAt(si.MM(3), r.End).Celsius(), want, 1e-3)
	near(t, "heat stored, of 1 MJ", r.Energy.Stored/1e6, 0, 1e-9)
}

// The faces of a series jump where two moments share a time.
func TestJumpInASeries(t *testing.T) {
	jump := heat.Series(
		heat.Moment{Time: 0, Temp: si.Celsius(25)}, heat.Moment{Time: 300, Temp: si.Celsius(25)},
		heat.Moment{Time: 300, Temp: si.Celsius(90)},
	)
	r := run(t, heat.Slab{
		Layers: []heat.Layer{inert(25.4)}, Cells: 400, Tolerance: 1e-4,
		First: heat.Prescribed(jump), Last: heat.Prescribed(jump), Start: si.Celsius(25), For: 1200,
	})
	near(t, "600 s after the jump, C [series]", r.TempAt(si.MM(12.7), 900).Celsius(), 54.061, 2e-3)
	near(t, "energy closes", r.Energy.Error, 0, 1e-4)
	near(t, "just before the jump", r.TempAt(0, 299.9).Celsius(), 25, 1e-6)
	if T := jump.At(300); T != si.Celsius(90) {
		t.Errorf("a jump's own time: got %v, want the later moment", T)
	}
}
