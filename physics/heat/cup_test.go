package heat_test

import (
	"fmt"
	"math"
	"testing"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
)

const cupCase = "independent computation: the cup of an invented epoxy, scipy 1.10.1"

// inventedEpoxy is da/dt = (0.10 + a)(1 - a)^2 k2 exp[-E/R (1/T - 1/298.15)], an
// invented resin for checks of method.
func inventedEpoxy() *heat.Reaction {
	return &heat.Reaction{
		Rate: func(a, T float64) float64 {
			return 3e-4 * math.Exp(-55e3/gasR*(1/T-1/298.15)) * (0.10 + a) * (1 - a) * (1 - a)
		},
		Heat: 330e3,
	}
}

func epoxyCup(grams, airC float64) heat.Cup {
	return heat.Cup{
		Vessel: heat.StraightCup(si.MM(75)),
		Mass:   si.Grams(grams), Density: 1130, SpecificHeat: 1900,
		Reaction: inventedEpoxy(), Air: heat.Steady(si.Celsius(airC)), For: si.Hours(8),
	}
}

func TestCupTable(t *testing.T) {
	for _, r := range []struct {
		grams, airC, gelMin, peakC float64
	}{
		{50, 15, 246.0, 25.4}, {100, 15, 126.3, 100.1}, {200, 15, 99.16, 145.2}, {500, 15, 87.96, 160.6},
		{50, 20, 101.2, 61.4}, {100, 20, 70.02, 144.8}, {200, 20, 60.90, 164.2}, {500, 20, 56.50, 173.3},
		{50, 25, 53.42, 131.7}, {100, 25, 43.463, 165.49}, {200, 25, 39.79, 177.0}, {500, 25, 37.87, 183.1},
		{50, 30, 32.66, 160.3}, {100, 30, 28.68, 179.2}, {500, 30, 26.15, 191.3},
	} {
		c := epoxyCup(r.grams, r.airC)
		got, err := c.Run(nil)
		if err != nil {
			t.Fatal(err)
		}
		name := fmt.Sprintf("%g g at %g C [%s]", r.grams, r.airC, cupCase)
		gel, ok := got.Reached(0.58)
		if !ok {
			t.Errorf("%s: no gel within 8 h", name)
		}
		near(t, name+": gel, min", gel.Minutes(), r.gelMin, 0.001*r.gelMin)
		near(t, name+": peak, C", got.Peak.Temp.Celsius(), r.peakC, 0.06)
		if got.Energy.Error > 1e-3 {
			t.Errorf("%s: the energy closes to %.2g only", name, got.Energy.Error)
		}
	}
}

func TestCupRows(t *testing.T) {
	c := epoxyCup(100, 25)
	near(t, "100 g in a cup of 75 mm: surface, cm2 ["+cupCase+"]", c.Area().M2()*1e4, 135.55, 0.01)
	r, err := c.Run(nil)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "100 g at 25 C: time of the peak, min ["+cupCase+"]", r.Peak.Time.Minutes(), 45.40, 0.01)
	rise, _ := r.Risen(si.Kelvins(25))
	near(t, "100 g at 25 C: +25 K, min ["+cupCase+"]", rise.Minutes(), 37.3, 0.05)
	c = epoxyCup(100, 20)
	r, _ = c.Run(nil)
	rise, _ = r.Risen(si.Kelvins(25))
	near(t, "100 g at 20 C: +25 K, min ["+cupCase+"]", rise.Minutes(), 61.10, 0.02)

	c = epoxyCup(100, 25)
	c.Top, c.Side, c.Base = 0, 0, 0
	r, _ = c.Run(nil)
	gel, _ := r.Reached(0.58)
	near(t, "adiabatic from 25 C: gel, min [quadrature]", gel.Minutes(), 33.901, 0.0034)
	near(t, "adiabatic from 25 C: end, C [T0 + H/c]", r.Peak.Temp.Celsius(), 25+330e3/1900*r.DegreeAt(c.For), 0.01)

	c = epoxyCup(100, 25)
	c.Top, c.Side, c.Base = 1e6, 1e6, 1e6
	r, _ = c.Run(nil)
	gel, _ = r.Reached(0.58)
	near(t, "held at 25 C: gel, s [closed form]", float64(gel), 11855.29, 1.2)
}

// A cup gels no sooner than the same batch kept to itself, and no later than a film.
func TestCupLiesBetweenFilmAndAdiabatic(t *testing.T) {
	shallow := epoxyCup(400, 22)
	shallow.Vessel = heat.Tray(si.MM(300), si.MM(200))
	metal := shallow
	metal.Vessel = heat.MetalTray(si.MM(300), si.MM(200))
	deep := epoxyCup(400, 22)
	foam := epoxyCup(400, 22)
	foam.Vessel = heat.FoamCup(si.MM(75))
	kept := epoxyCup(400, 22)
	kept.Top, kept.Side, kept.Base = 0, 0, 0
	film := epoxyCup(400, 22)
	film.Top, film.Side, film.Base = 1e6, 1e6, 1e6
	last := 0.0
	for _, c := range []struct {
		name string
		heat.Cup
	}{{"kept to itself", kept}, {"foam cup", foam}, {"cup", deep}, {"tray", shallow}, {"metal tray", metal}, {"film", film}} {
		r, err := c.Run(nil)
		if err != nil {
			t.Fatal(err)
		}
		gel, ok := r.Reached(0.58)
		if !ok || !(float64(gel) > last) {
			t.Errorf("%s gels at %g s, want later than the one before at %g s", c.name, float64(gel), last)
		}
		last = float64(gel)
	}
}

func TestCupCoolsByNewtonsLaw(t *testing.T) {
	c := epoxyCup(200, 10)
	c.Reaction, c.Start, c.Capacity = nil, si.Celsius(40), 50
	c.Bench = heat.Steady(si.Celsius(10))
	r, err := c.Run(nil)
	if err != nil {
		t.Fatal(err)
	}
	tau := (0.2*1900 + 50) / (8 * c.Area().M2())
	for _, s := range []float64{60, 600, 3600} {
		near(t, "Newton's law of cooling, closed form", r.TempAt(si.Seconds(s)).Celsius(), 10+30*math.Exp(-s/tau), 0.01)
	}
}

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.7g, want %.7g within %.2g", what, got, want, tol)
	}
}
