package si_test

import (
	"math"
	"math/big"
	"testing"

	"scarfwright/physics/si"
)

// The seven-digit table of NIST SP 811 (2008), app. B.8. The digits are from
// memory; TestDefinitions works the same units out from their definitions.
func TestPublishedEquivalents(t *testing.T) {
	for _, c := range []struct {
		kind si.Kind
		text string
		want float64 // in the SI unit
	}{
		{si.KindLength, "1 in", 2.54e-2},
		{si.KindLength, "1 ft", 3.048e-1},
		{si.KindLength, "1 yd", 9.144e-1},
		{si.KindLength, "1 mil", 2.54e-5},
		{si.KindArea, "1 ft2", 9.290304e-2},
		{si.KindArea, "1 in2", 6.4516e-4},
		{si.KindArea, "1 yd2", 8.361274e-1},
		{si.KindVolume, "1 US fl oz", 2.957353e-5},
		{si.KindVolume, "1 UK fl oz", 2.841306e-5},
		{si.KindVolume, "1 US pt", 4.731765e-4},
		{si.KindVolume, "1 US qt", 9.463529e-4},
		{si.KindVolume, "1 US gal", 3.785412e-3},
		{si.KindVolume, "1 UK gal", 4.54609e-3},
		{si.KindVolume, "1 in3", 1.638706e-5},
		{si.KindVolume, "1 ft3", 2.831685e-2},
		{si.KindMass, "1 lb", 4.535924e-1},
		{si.KindMass, "1 oz (mass)", 2.834952e-2},
		{si.KindAreaDensity, "1 oz/yd2", 3.390575e-2},
		{si.KindAreaDensity, "1 oz/ft2", 3.051517e-1},
		{si.KindAreaDensity, "1 lb/ft2", 4.882428},
		{si.KindDensity, "1 lb/ft3", 1.601846e1},
		{si.KindDensity, "1 lb/US gal", 1.198264e2},
		{si.KindDensity, "1 lb/UK gal", 9.977637e1},
		{si.KindPressure, "1 psi", 6.894757e3},
		{si.KindPressure, "1 ksi", 6.894757e6},
		{si.KindPressure, "1 Msi", 6.894757e9},
		{si.KindPressure, "1 kgf/cm2", 9.80665e4},
		{si.KindForce, "1 lbf", 4.448222},
		{si.KindLineLoad, "1 lbf/in", 1.751268e2},
		{si.KindSpeed, "1 kn", 5.144444e-1},
		{si.KindSpeed, "1 mph", 4.4704e-1},
		{si.KindSpeed, "1 km/h", 2.777778e-1},
		{si.KindEnergy, "1 kWh", 3.6e6},
		{si.KindMolarEnergy, "1 kcal/mol", 4.184e3},
		{si.KindTempDiff, "1 °F", 5.555556e-1},
		{si.KindAngle, "1 deg", 1.745329e-2},
	} {
		got, err := c.kind.Parse(c.text)
		if err != nil || math.Abs(got/c.want-1) > 5e-7 {
			t.Errorf("%s: got %.8g %s, %v; want %.7g to seven digits", c.text, got, c.kind.Base(), err, c.want)
		}
	}
}

// The compound units from their definitions in exact arithmetic (math/big), to
// the last bit but one.
func TestDefinitions(t *testing.T) {
	r := func(s string) *big.Rat {
		x, ok := new(big.Rat).SetString(s)
		if !ok {
			t.Fatal(s)
		}
		return x
	}
	mul := func(x ...*big.Rat) *big.Rat {
		p := r("1")
		for _, f := range x {
			p.Mul(p, f)
		}
		return p
	}
	inv := func(x *big.Rat) *big.Rat { return new(big.Rat).Inv(x) }
	in, lb, g := r("0.0254"), r("0.45359237"), r("9.80665")
	ft, yd := mul(in, r("12")), mul(in, r("36"))
	oz := mul(lb, r("1/16"))
	galUS, galUK := mul(r("231"), in, in, in), r("0.00454609")
	for _, c := range []struct {
		kind si.Kind
		text string
		want *big.Rat
	}{
		{si.KindLength, "1 mil", mul(in, r("1/1000"))},
		{si.KindArea, "1 yd2", mul(yd, yd)},
		{si.KindVolume, "1 US fl oz", mul(galUS, r("1/128"))},
		{si.KindVolume, "1 UK fl oz", mul(galUK, r("1/160"))},
		{si.KindVolume, "1 UK qt", mul(galUK, r("1/4"))},
		{si.KindAreaDensity, "1 oz/yd2", mul(oz, inv(yd), inv(yd))},
		{si.KindAreaDensity, "1 oz/ft2", mul(oz, inv(ft), inv(ft))},
		{si.KindDensity, "1 lb/ft3", mul(lb, inv(ft), inv(ft), inv(ft))},
		{si.KindDensity, "1 lb/US gal", mul(lb, inv(galUS))},
		{si.KindDensity, "1 lb/UK gal", mul(lb, inv(galUK))},
		{si.KindForce, "1 lbf", mul(lb, g)},
		{si.KindPressure, "1 psi", mul(lb, g, inv(in), inv(in))},
		{si.KindPressure, "1 Msi", mul(r("1000000"), lb, g, inv(in), inv(in))},
		{si.KindPressure, "1 kgf/cm2", mul(g, r("10000"))},
		{si.KindLineLoad, "1 lbf/in", mul(lb, g, inv(in))},
		{si.KindSpeed, "1 mph", mul(r("5280/3600"), ft)},
		{si.KindHeatingRate, "1 °F/min", r("5/540")},
	} {
		got, err := c.kind.Parse(c.text)
		want, _ := c.want.Float64()
		if err != nil || math.Abs(got-want) > math.Nextafter(want, math.Inf(1))-want {
			t.Errorf("%s: got %.17g, %v; want %.17g", c.text, got, err, want)
		}
	}
}

// Fixed points of the scales: by definition.
func TestTemperatures(t *testing.T) {
	for _, c := range []struct {
		text string
		want si.Temp
	}{
		{"0 °C", 273.15}, {"32 °F", 273.15}, {"212 °F", 373.15}, {"-40 °C", 233.15}, {"-40 °F", 233.15}, {"300 K", 300},
	} {
		got, err := si.Parse[si.Temp](c.text)
		if err != nil || math.Abs(float64(got-c.want)) > 1e-12 {
			t.Errorf("%s: got %v, %v, want %v", c.text, got, err, c.want)
		}
	}
}

// What is typed and what is written in code are the same number, to the bit.
func TestTypedAgreesWithConstructors(t *testing.T) {
	for _, s := range []struct{ text, code string }{
		{"5.4 mm", si.MM(5.4).String()}, {"1.8 %", si.Percent(1.8).String()}, {"1.13 g/ml", si.GramsPerML(1.13).String()},
	} {
		if s.text != s.code {
			t.Errorf("got %q, want %q", s.code, s.text)
		}
	}
	same(t, "5.4 mm", si.MM(5.4))
	same(t, "1.8 %", si.Percent(1.8))
	same(t, "450 g/m2", si.GSM(450))
	same(t, "1.13 g/ml", si.GramsPerML(1.13))
	same(t, "23.4 °C", si.Celsius(23.4))
	same(t, "0,7 l", si.Litres(0.7))
	same(t, "8.5 kn", si.Knots(8.5))
	same(t, "12.7 deg", si.Degrees(12.7))
	same(t, "7.3 GPa", si.GPa(7.3))
	same(t, "2.1 h", si.Hours(2.1))
}

func same[Q si.Quantity](t *testing.T, text string, want Q) {
	t.Helper()
	if got, err := si.Parse[Q](text); err != nil || got != want {
		t.Errorf("%s: got %v, %v, want %v", text, float64(got), err, float64(want))
	}
}

func TestScale(t *testing.T) {
	if got := si.Scale(si.Grams(500), si.Percent(2)); got != si.Mass(0.5*0.02) {
		t.Errorf("2 %% of 500 g: got %v, want 10 g", got)
	}
	if got := si.Scale(si.MM(5), 12) + si.Scale(si.MM(5), 0.5); math.Abs(got.MM()-62.5) > 1e-12 {
		t.Errorf("12.5 times 5 mm: got %v, want 62.5 mm", got)
	}
}
