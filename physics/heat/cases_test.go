package heat_test

import (
	"math"
	"testing"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
)

const gasR = 8.314462618 // J/(mol K), exact since the SI of 2019

// pow is a^m for 0 < a, quicker than math.Pow; 0 stays 0.
func pow(a, m float64) float64 {
	if a <= 0 {
		return 0
	}
	return math.Exp(m * math.Log(a))
}

// glassPolyester is the hot-cure glass/polyester set of BogettiGillespie1991.
func glassPolyester() *heat.Reaction {
	const A, E, m, n = 3.7e22 / 60, 1.674e5, 0.524, 1.476
	return &heat.Reaction{
		Rate: func(a, T float64) float64 {
			return A * math.Exp(-E/(gasR*T)) * pow(a, m) * pow(1-a, n)
		},
		Heat: 77.5e3,
	}
}

func glassPolyesterLayer(mm, seed float64) heat.Layer {
	return heat.Layer{
		Thickness: si.MM(mm), Conductivity: 0.2163, Density: 1890, SpecificHeat: 1260,
		Reaction: glassPolyester(), Seed: seed,
	}
}

// cycle is a temperature over time given in minutes and degrees Celsius.
func cycle(minuteC ...float64) heat.History {
	var ms []heat.Moment
	for i := 0; i < len(minuteC); i += 2 {
		ms = append(ms, heat.Moment{Time: si.Minutes(minuteC[i]), Temp: si.Celsius(minuteC[i+1])})
	}
	return heat.Series(ms...)
}

func bgA(mm, seed float64, cells int) heat.Slab {
	c := cycle(0, 25, 26, 90, 86, 90, 102, 130)
	return heat.Slab{
		Layers: []heat.Layer{glassPolyesterLayer(mm, seed)},
		First:  heat.Prescribed(c), Last: heat.Prescribed(c),
		Start: si.Celsius(25), For: si.Minutes(150), Cells: cells,
	}
}

func bgB(cells int) heat.Slab {
	c := cycle(0, 25, 38, 120)
	s := bgA(25.4, 1e-6, cells)
	s.First, s.Last, s.For = heat.Prescribed(c), heat.Prescribed(c), si.Minutes(60)
	return s
}

// setA is 20 mm of an invented laminate that cures in the open, laid at once on a
// hull of 10 mm, through a spring day from six in the morning.
func setA(hull, laminate int, slopes bool) heat.Slab {
	const A1, E1, A2, E2, m, n = 5.0e6, 6.6e4, 1.0e7, 6.0e4, 0.9, 1.6
	r := &heat.Reaction{
		Rate: func(a, T float64) float64 {
			x := -1 / (gasR * T)
			return (A1*math.Exp(E1*x) + A2*math.Exp(E2*x)*pow(a, m)) * pow(1-a, n)
		},
		Heat: 2e5,
	}
	if slopes {
		r.Slopes = func(a, T float64) (f, fa, fT float64) {
			x := -1 / (gasR * T)
			k1, k2 := A1*math.Exp(E1*x), A2*math.Exp(E2*x)
			am, bn := pow(a, m), pow(1-a, n)
			f = (k1 + k2*am) * bn
			if a > 0 {
				fa = k2 * m * am / a * bn
			}
			if a < 1 {
				fa -= n * f / (1 - a)
			}
			fT = (k1*E1 + k2*am*E2) * bn / (gasR * T * T)
			return
		}
	}
	day := func(t si.Time) si.Temp {
		return si.Temp(289.15 + 6*math.Sin(2*math.Pi*(float64(t)+6*3600-9*3600)/86400))
	}
	air := heat.Convective(8, heat.Varying(day))
	return heat.Slab{
		Layers: []heat.Layer{
			{Thickness: si.MM(10), Conductivity: 0.25, Density: 1750, SpecificHeat: 1100, Cells: hull},
			{Thickness: si.MM(20), Conductivity: 0.22, Density: 1550, SpecificHeat: 1300, Cells: laminate, Reaction: r},
		},
		First: air, Last: air, Start: day(0), For: si.Hours(24),
	}
}

// run follows a slab, or ends the test.
func run(t testing.TB, s heat.Slab) *heat.Result {
	t.Helper()
	r, err := s.Run(nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}
