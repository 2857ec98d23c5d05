package si_test

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
)

func TestShow(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{si.Show(si.MM(5.4), si.Metric, 3), "5.4 mm"},
		{si.Show(si.MM(5.4321), si.Metric, 3), "5.43 mm"},
		{si.Show(si.M(6.2), si.Metric, 3), "6200 mm"},
		{si.Show(si.M(12.34), si.Metric, 3), "12.3 m"},
		{si.Show(si.MM(88.9), si.US, 3), "3.5 in"},
		{si.Show(si.M(6), si.US, 3), "19.7 ft"},
		{si.Show(si.M2(0.5), si.Metric, 3), "0.5 m²"},
		{si.Show(si.MM2(2500), si.Metric, 3), "25 cm²"},
		{si.Show(si.M2(0.5), si.US, 3), "5.38 ft²"},
		{si.Show(si.Grams(12.345), si.Metric, 3), "12.3 g"},
		{si.Show(si.Grams(999.4), si.Metric, 3), "999 g"},
		{si.Show(si.Grams(999.7), si.Metric, 3), "1 kg"}, // rounding carries it over
		{si.Show(si.Kg(3.456), si.Metric, 3), "3.46 kg"},
		{si.Show(si.Grams(100), si.US, 3), "3.53 oz (mass)"},
		{si.Show(si.Kg(1), si.US, 3), "2.2 lb"},
		{si.Show(si.ML(330), si.Metric, 3), "330 ml"},
		{si.Show(si.Litres(2.5), si.Metric, 3), "2.5 l"},
		{si.Show(si.ML(100), si.US, 3), "3.38 US fl oz"},
		{si.Show(si.Litres(5), si.US, 3), "1.32 US gal"},
		{si.Show(si.GSM(450), si.Metric, 3), "450 g/m²"},
		{si.Show(si.GSM(4810), si.Metric, 3), "4810 g/m²"},
		{si.Show(si.GSM(610.3), si.US, 3), "18 oz/yd²"},
		{si.Show(si.GramsPerML(1.13), si.Metric, 3), "1.13 g/ml"},
		{si.Show(si.KgPerM3(80), si.Metric, 3), "80 kg/m³"},
		{si.Show(si.KgPerM3(80), si.US, 3), "4.99 lb/ft³"},
		{si.Show(si.Celsius(18), si.Metric, 3), "18 °C"},
		{si.Show(si.Celsius(18), si.US, 3), "64.4 °F"},
		{si.Show(si.Celsius(-0.04), si.Metric, 1), "-0.04 °C"},
		{si.Show(si.Celsius(0), si.US, 3), "32 °F"},
		{si.Show(si.Temp(0), si.Metric, 3), "not given"},
		{si.Show(si.Kelvins(9), si.Metric, 3), "9 °C"},
		{si.Show(si.Kelvins(9), si.US, 3), "16.2 °F"},
		{si.Show(si.Seconds(45), si.Metric, 2), "45 s"},
		{si.Show(si.Minutes(90), si.Metric, 3), "90 min"},
		{si.Show(si.Minutes(150), si.Metric, 3), "2.5 h"},
		{si.Show(si.Hours(36), si.US, 3), "36 h"},
		{si.Show(si.Days(7), si.US, 3), "7 days"},
		{si.Show(si.KPa(24), si.Metric, 3), "24 kPa"},
		{si.Show(si.MPa(85), si.Metric, 3), "85 MPa"},
		{si.Show(si.GPa(7.2), si.Metric, 3), "7.2 GPa"},
		{si.Show(si.KPa(24), si.US, 3), "3.48 psi"},
		{si.Show(si.MPa(200), si.US, 3), "29 ksi"},
		{si.Show(si.GPa(7), si.US, 3), "1.02 Msi"},
		{si.Show(si.NPerMM(12), si.US, 3), "68.5 lbf/in"},
		{si.Show(si.Percent(1.8), si.Metric, 3), "1.8 %"},
		{si.Show(si.Degrees(45), si.Metric, 3), "45°"},
		{si.Show(si.Knots(18), si.US, 3), "18 kn"},
		{si.Show(si.SpecificHeat(1800), si.Metric, 3), "1800 J/(kg K)"},
		{si.Show(si.HeatTransfer(10), si.Metric, 3), "10 W/(m² K)"},
		{si.Show(si.MM(1234567), si.Metric, 2), "1200 m"},
		{si.Show(si.Length(math.Copysign(0, -1)), si.Metric, 3), "0 mm"},
		{si.KindNumber.Show(1.0/3, si.Metric, 2), "0.33"},
		{si.ShowFraction(si.MM(88.9), 16), "3 1/2 in"},
		{si.ShowFraction(si.MM(-88.9), 16), "-3 1/2 in"},
		{si.ShowFraction(si.MM(19.05), 8), "3/4 in"},
		{si.ShowFraction(si.MM(25.3), 16), "1 in"}, // 0.996 in to the nearest sixteenth
		{si.ShowFraction(si.MM(-0.1), 16), "0 in"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

// For every kind, value and system: no negative zero, no bare ounce, and the
// number shown is the value to the digits asked for.
func TestShowProperties(t *testing.T) {
	negativeZero := regexp.MustCompile(`^-0(\.0*)?( |$|°)`)
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.SampledFrom(si.Kinds()).Draw(t, "kind")
		x := rapid.OneOf(rapid.Float64Range(-1e-9, 1e-9), rapid.Float64Range(-1e4, 1e4), rapid.Float64Range(-1e10, 1e10)).Draw(t, "x")
		if k == si.KindTemp {
			x = 200 + math.Mod(math.Abs(x), 300)
		}
		sys := rapid.SampledFrom([]si.System{si.Metric, si.US}).Draw(t, "system")
		digits := rapid.IntRange(1, 9).Draw(t, "digits")
		s := k.Show(x, sys, digits)
		if negativeZero.MatchString(s) {
			t.Fatalf("%q is a negative zero", s)
		}
		if strings.HasSuffix(s, " oz") && !strings.HasSuffix(s, "fl oz") {
			t.Fatalf("%q is a bare ounce", s)
		}
		if k == si.KindTemp {
			return // its rounding is relative to another zero
		}
		back, err := k.Parse(s)
		if k == si.KindNumber || err == nil {
			if math.Abs(back-x) > 0.5000001*math.Pow10(1-digits)*math.Abs(x) {
				t.Fatalf("%s %v at %d digits shows %q", k, x, digits, s)
			}
			return
		}
		t.Fatalf("%q cannot be read back: %v", s, err)
	})
}
