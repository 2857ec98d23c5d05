package si_test

import (
	"encoding"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
)

// Any finite float64, all exponents alike, with the values people type among them.
func anyFloat() *rapid.Generator[float64] {
	bits := rapid.Custom(func(t *rapid.T) float64 {
		x := math.Float64frombits(rapid.Uint64().Draw(t, "bits"))
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return 0
		}
		return x
	})
	typed := rapid.Custom(func(t *rapid.T) float64 {
		return float64(rapid.IntRange(-100000, 100000).Draw(t, "n")) / math.Pow10(rapid.IntRange(-9, 12).Draw(t, "d"))
	})
	return rapid.OneOf(bits, typed, rapid.Float64Range(-1e6, 1e6))
}

// Parse(x.String()) is x bit for bit, and the same through MarshalText, for
// every finite value of every type; a Temp is never negative.
func TestTextRoundTrip(t *testing.T) {
	for _, k := range si.Kinds() {
		t.Run(k.Name(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				x := anyFloat().Draw(t, "x")
				if k == si.KindTemp && x < 0 {
					x = -x
				}
				exact(t, k, x)
			})
		})
	}
}

func exact(t interface{ Fatalf(string, ...any) }, k si.Kind, x float64) {
	text := k.Text(x)
	got, err := k.Parse(text)
	if err != nil || math.Float64bits(got) != math.Float64bits(x) {
		t.Fatalf("%s: %q reads as %v, %v; want %v", k, text, got, err, x)
	}
}

func TestTextRoundTripAtTheEdges(t *testing.T) {
	for _, k := range si.Kinds() {
		for _, x := range []float64{0, math.Copysign(0, -1), 5e-324, 2.2250738585072014e-308, math.MaxFloat64, 1,
			math.Nextafter(1, 2), math.Nextafter(1, 0), 273.15, 1.0 / 3} {
			exact(t, k, x)
			if k != si.KindTemp {
				exact(t, k, -x)
			}
		}
	}
}

// Each type's own methods, which one wrong line would break.
func TestMethods(t *testing.T) {
	methods[si.Length](t)
	methods[si.Area](t)
	methods[si.Volume](t)
	methods[si.Mass](t)
	methods[si.AreaDensity](t)
	methods[si.Density](t)
	methods[si.Temp](t)
	methods[si.TempDiff](t)
	methods[si.Time](t)
	methods[si.Pressure](t)
	methods[si.Force](t)
	methods[si.LineLoad](t)
	methods[si.Ratio](t)
	methods[si.Angle](t)
	methods[si.Speed](t)
	methods[si.Power](t)
	methods[si.Energy](t)
	methods[si.MolarEnergy](t)
	methods[si.SpecificEnergy](t)
	methods[si.SpecificHeat](t)
	methods[si.Conductivity](t)
	methods[si.HeatTransfer](t)
	methods[si.HeatingRate](t)
}

func methods[Q si.Quantity](t *testing.T) {
	t.Helper()
	k, want := si.KindOf[Q](), Q(312.7)
	text, err := any(want).(encoding.TextMarshaler).MarshalText()
	if s := any(want).(interface{ String() string }).String(); err != nil || s != string(text) || s != k.Text(312.7) {
		t.Errorf("%s: String gives %q, MarshalText %q, %v, Text %q", k, s, text, err, k.Text(312.7))
	}
	var got Q
	if err := any(&got).(encoding.TextUnmarshaler).UnmarshalText(text); err != nil || got != want {
		t.Errorf("%s: %q unmarshals as %v, %v", k, text, float64(got), err)
	}
	if err := any(&got).(encoding.TextUnmarshaler).UnmarshalText([]byte("7 furlongs")); err == nil || got != want {
		t.Errorf("%s: a refused text left %v, %v; want the old value", k, float64(got), err)
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if text, err := any(Q(bad)).(encoding.TextMarshaler).MarshalText(); err == nil {
			t.Errorf("%s: %v marshals as %q", k, bad, text)
		}
	}
}

func TestTempNotGiven(t *testing.T) {
	text, err := si.Temp(0).MarshalText()
	if err != nil || string(text) != "" {
		t.Errorf("got %q, %v, want nothing", text, err)
	}
	x := si.Celsius(20)
	if err := x.UnmarshalText(nil); err != nil || x.Given() {
		t.Errorf("got %v, %v, want not given", x, err)
	}
	if _, err := si.Temp(-1).MarshalText(); err == nil {
		t.Error("a temperature below absolute zero was written")
	}
	if got := si.Temp(0).String(); got != "0 K" {
		t.Errorf("got %q", got)
	}
}

func TestTextIsWhatPeopleWrite(t *testing.T) {
	got := fmt.Sprintf("%q", []any{si.MM(5.4), si.GSM(450), si.Celsius(18), si.Kelvins(9), si.Percent(1.8), si.Litres(2.5),
		si.Hours(3), si.Minutes(12), si.MPa(85), si.Knots(8.5), si.Degrees(-45), si.Ratio(3.7), si.KJPerMol(62.1)})
	want := `["5.4 mm" "450 g/m2" "18 °C" "9 K" "1.8 %" "2.5 l" "3 h" "12 min" "85 MPa" "8.5 kn" "-45 deg" "370 %" "62.1 kJ/mol"]`
	if got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
}

// What is read once is read again from its own text, to the bit; nothing is
// read as infinite, and a refusal always says why.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"5.4 mm", "2'3 1/2\"", "1 h 20 min", "18 oz/yd2", "0,5 l", "1,234", "1 234,5 g", "NaN", "1e400 m",
		"3½ in", "-40 °F", "30", "0.3", "1.5 oz", "5 m)(m", "J/(kg K)", "\xff", "2 lb 3 oz", "1e-320 US fl oz", "100% times"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, k := range si.Kinds() {
			x, err := k.Parse(s)
			if err != nil {
				if err.Error() == "" || x != 0 {
					t.Errorf("%s %q: got %v and %q", k, s, x, err)
				}
				continue
			}
			if math.IsInf(x, 0) || math.IsNaN(x) {
				t.Errorf("%s %q: got %v", k, s, x)
			}
			exact(t, k, x)
			for _, sys := range []si.System{si.Metric, si.US} {
				k.Show(x, sys, 3)
			}
		}
	})
}
