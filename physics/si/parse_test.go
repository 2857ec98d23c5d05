package si_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"scarfwright/physics/si"
)

// Every row is several ways to write one quantity; the first is the plain one,
// which TestPublishedEquivalents and the constructors hold to its value.
func TestSpellings(t *testing.T) {
	for _, c := range []struct {
		kind   si.Kind
		plain  string
		others []string
	}{
		{si.KindNumber, "12.5", []string{"12,5", "+12.5", " 12.5 ", "1.25e1", "12 1/2", "12½"}},
		{si.KindNumber, "1234.5", []string{"1 234.5", "1 234,5", "1234,5", "1\u2009234,5", "1\u00a0234.5"}},
		{si.KindNumber, "0.125", []string{"0,125", ".125", ",125", "1/8", "⅛"}}, // a number that starts with 0 has no thousands
		{si.KindNumber, "-3", []string{"\u22123"}},
		{si.KindLength, "5.4 mm", []string{"5,4mm", "5.4 MM", "5.4 millimetres", "5.4 millimeter", "0.54 cm", "5400 µm", "5400 μm", "5400 um", "5400 microns"}},
		{si.KindLength, "19.05 mm", []string{"3/4 in", "3/4in", `3/4"`, "0.75 in.", ".75 inch", "¾″", "750 mil", "750 thou", "750 mils"}},
		{si.KindLength, "88.9 mm", []string{"3 1/2 in", "3-1/2 in", `3½"`, "3 ½ inches", "3,5 in"}},
		{si.KindLength, "698.5 mm", []string{"2 ft 3 1/2 in", `2' 3 1/2"`, `2'3.5"`, `2'-3 1/2"`, "2′ 3½″", "2ft3.5in", "2 feet 3 1/2 inches", "27.5 in", "2' 3.5''"}},
		{si.KindLength, "-698.5 mm", []string{"-2 ft 3 1/2 in"}},
		{si.KindLength, "1.25 m", []string{"1 m 25 cm", "1 m 250 mm", "125 cm", "1.25 metres"}},
		{si.KindArea, "0.5 m2", []string{"0.5 m²", "0.5 m^2", "0.5 sq m", "0.5 sqm", "0.5 sq. m", "0.5 square metres", "5000 cm2", "500000 mm²"}},
		{si.KindArea, "2 ft2", []string{"2 ft²", "2 sq ft", "2 sq. ft.", "2 sqft", "2 square feet", "288 in2", "288 sq in"}},
		{si.KindArea, "1 yd2", []string{"1 sq yd", "1 square yard", "9 ft2"}},
		{si.KindVolume, "0.5 l", []string{"0,5 l", "0.5 L", "0.5 litre", "0.5 liters", "1/2 l", "500 ml", "500 mL", "500 cc", "500 cm³", "500 cm3", "50 cl", "0.0005 m3", "0.0005 m^3", "500 cubic centimetres"}},
		{si.KindVolume, "3 US fl oz", []string{"3 fl oz US", "3 fl oz (US)", "3 US fl. oz.", "3 U.S. fluid ounces", "3 us floz", "3 USfloz"}},
		{si.KindVolume, "3 UK fl oz", []string{"3 imp fl oz", "3 imperial fluid ounces", "3 fl oz (UK)", "3 fl oz imp."}},
		{si.KindVolume, "1 US gal", []string{"1 US gallon", "1 gal (US)", "4 US qt", "8 US pints", "4 US quarts"}},
		{si.KindVolume, "1 UK gal", []string{"1 imperial gallon", "1 imp gal", "8 UK pt", "8 imp pints"}},
		{si.KindMass, "250 g", []string{"250g", "0,25 kg", "0.25 KG", "250 grams", "250 gm", "250000 mg", "1/4 kilo", "0.00025 t"}},
		{si.KindMass, "2.5 lb", []string{"2 1/2 lbs", "2 lb 8 oz", "2lb 8oz", "40 oz (mass)", "40 oz mass", "40 oz av", "40 ounces (mass)", "2.5 pounds"}},
		{si.KindAreaDensity, "450 g/m2", []string{"450g/m²", "450 g/m^2", "450 gsm", "450 GSM", "450 g / m2", "450 g per m2", "450 grams per square metre", "450 g/sq m", "0.45 kg/m2"}},
		{si.KindAreaDensity, "18 oz/yd2", []string{"18oz/yd2", "18 oz/yd²", "18 oz/sq yd", "18 oz/sq. yd.", "18 oz per sq yd", "18 ounces per square yard", "18 oz/sqyd", "2 oz/ft2"}},
		{si.KindAreaDensity, "1.5 oz/ft2", []string{"1.5 oz/ft^2", "1½ oz/sq ft", "1 1/2 oz per square foot"}},
		{si.KindDensity, "1.13 g/ml", []string{"1.13g/ml", "1.13 g/cc", "1.13 g/cm3", "1.13 g/cm³", "1.13 kg/l", "1.13 kg/L", "1130 kg/m3", "1130 kg/m³"}},
		{si.KindDensity, "9.2 lb/US gal", []string{"9.2 lb/gal (US)", "9.2 lbs per US gallon"}},
		{si.KindTemp, "23 °C", []string{"23C", "23 c", "23°C", "23 ° C", "23 ºC", "23 deg C", "23 degrees Celsius", "296.15 K", "73.4 °F", "73.4F", "73.4 deg F"}},
		{si.KindTempDiff, "9 K", []string{"9 °C", "9 C", "16.2 °F", "16.2 F"}},
		{si.KindTime, "80 min", []string{"1 h 20 min", "1h20min", "1 hour 20 minutes", "1 h 20 mins", "4800 s", "1 1/3 h", "80 minutes"}},
		{si.KindTime, "7 days", []string{"7 d", "1 week", "168 hrs", "6 days 24 h", "1 wk"}},
		{si.KindPressure, "1 MPa", []string{"1 N/mm2", "1 N/mm²", "1 MN/m2", "1000 kPa", "1000 kN/m2", "1e6 Pa", "1e6 N/m2", "10 bar", "0.001 GPa", "1 mpa", "1 Mpa"}},
		{si.KindPressure, "30000 psi", []string{"30 ksi", "0.03 Msi", "30000 PSI", "30000 lbf/in2", "30 000 psi"}},
		{si.KindForce, "1.5 kN", []string{"1500 N", "1500 newtons", "1.5 KN"}},
		{si.KindLineLoad, "12 N/mm", []string{"12 kN/m", "12000 N/m"}},
		{si.KindRatio, "30 %", []string{"30%", "0.30", "0,3", "30 percent", "30 per cent", "0.3 times"}},
		{si.KindRatio, "0 %", []string{"0"}},
		{si.KindRatio, "370 %", []string{"3.7 times"}},
		{si.KindAngle, "45 deg", []string{"45°", "45 degrees", "45deg", "45 º"}},
		{si.KindSpeed, "18 kn", []string{"18 knots", "18 kt", "18 kts", "33.336 km/h"}},
		{si.KindPower, "2 kW", []string{"2000 W", "2 KW", "2000 watts"}},
		{si.KindEnergy, "1 kWh", []string{"3600 kJ", "3.6 MJ", "1 kW h", "3600000 joules"}},
		{si.KindMolarEnergy, "83.68 kJ/mol", []string{"83680 J/mol", "20 kcal/mol"}},
		{si.KindSpecificEnergy, "400 kJ/kg", []string{"400 J/g", "400000 J/kg"}},
		{si.KindSpecificHeat, "1800 J/(kg K)", []string{"1800 J/kgK", "1800 J/kg K", "1800 J/(kg·K)", "1800 J/kg/K", "1.8 kJ/kgK", "1.8 kJ/(kg K)", "1.8 J/(g K)", "1800 J/(kg °C)"}},
		{si.KindSpecificHeat, "2092 J/(kg K)", []string{"0.5 kcal/(kg K)", "0.5 kcal/kgK", "0.5 cal/(g °C)", "0.5 kcal/kg/K"}},
		{si.KindSpecificHeat, "2093.4 J/(kg K)", []string{"0.5 BTU/(lb °F)", "0.5 Btu/lb/F", "0.5 btu/(lb F)", "0.5 BTU/(lbm °F)"}},
		{si.KindConductivity, "0.2 W/(m K)", []string{"0.2 W/mK", "0.2 W/m K", "0,2 W/(m·K)", "0.2 W/m/K"}},
		{si.KindHeatTransfer, "10 W/(m2 K)", []string{"10 W/m2K", "10 W/m²K", "10 W/(m²·K)", "10 W/m2 K"}},
		{si.KindHeatingRate, "60 K/min", []string{"1 K/s", "60 °C/min", "60 C/min", "108 °F/min", "3600 K/h"}},
	} {
		want, err := c.kind.Parse(c.plain)
		if err != nil {
			t.Errorf("%s %q: %v", c.kind, c.plain, err)
		}
		for _, text := range c.others {
			got, err := c.kind.Parse(text)
			if err != nil || math.Abs(got-want) > 4e-16*math.Abs(want) {
				t.Errorf("%s %q: got %v, %v; want %v as for %q", c.kind, text, got, err, want, c.plain)
			}
		}
	}
}

// Each refusal with its sentence, word for word.
func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		kind      si.Kind
		text, why string
	}{
		{si.KindMass, "12 oz", `"oz" could be mass or fluid ounces; write "oz (mass)" (28.35 g each) if it was weighed, or weigh in g`},
		{si.KindVolume, "12 ounces", `"ounces" could be mass or fluid ounces; write "US fl oz" (29.57 ml) or "UK fl oz" (28.41 ml) if it was poured, or measure in ml`},
		{si.KindAreaDensity, "1.5 oz", `"oz" is short for two weights nine times apart: mat is sold by oz/ft2 and cloth or roving by oz/yd2 (1.5 oz/ft2 is 458 g/m2, 1.5 oz/yd2 is 51 g/m2); which fabric is it? Write oz/ft2 or oz/yd2`},
		{si.KindAreaDensity, "450 g", `"g" is mass; a fabric's weight is for an area, write g/m2`},
		{si.KindVolume, "3 fl oz", `"fl oz" is not the same in the US and the UK; write "US fl oz" (29.57 ml) or "UK fl oz" (28.41 ml)`},
		{si.KindVolume, "2 gallons", `"gallons" is not the same in the US and the UK; write "US gal" (3.785 l) or "UK gal" (4.546 l)`},
		{si.KindVolume, "1 qt", `"qt" is not the same in the US and the UK; write "US qt" (0.946 l) or "UK qt" (1.137 l)`},
		{si.KindVolume, "1 pint", `"pint" is not the same in the US and the UK; write "US pt" (0.473 l) or "UK pt" (0.568 l)`},
		{si.KindDensity, "9 lb/gal", `"lb/gal" is not the same in the US and the UK; write lb/US gal or lb/UK gal`},
		{si.KindMass, "1 ton", `"ton" is 907 kg in the US and 1016 kg in the UK; write t (1000 kg), kg or lb`},
		{si.KindMass, "3 fl oz", `mass needs a mass unit such as g or lb; "fl oz" is volume`},

		{si.KindLength, "5 psi", `length needs a length unit such as mm or in; "psi" is pressure`},
		{si.KindLength, "5 oz", `length needs a length unit such as mm or in; "oz" is mass or volume`},
		{si.KindArea, "3 ft", `area needs an area unit such as m2 or ft2; "ft" is length`},
		{si.KindSpeed, "8 kN", `speed needs a speed unit such as kn or m/s; "kN" is force`},
		{si.KindTime, "20 m", `time needs a time unit such as min or h; "m" is length, write min for minutes`},
		{si.KindTemp, "20°", `temperature needs °C or °F; "°" alone does not say which`},
		{si.KindPressure, "5 mPa", `"mPa" is a thousandth of a pascal; write MPa for N/mm2`},
		{si.KindPressure, "5 kg/cm2", `"kg/cm2" is mass on an area; write kgf/cm2 for pressure`},
		{si.KindNumber, "5 mm", `a plain number takes no unit; "5 mm" has one`},

		{si.KindLength, "5", `length needs a unit; "5" has none: write mm, cm, m, µm, in, ft, yd or mil`},
		{si.KindTemp, "20", `temperature needs a unit; "20" has none: write °C, °F or K`},
		{si.KindConductivity, "0.2", `conductivity needs a unit; "0.2" has none: write W/(m K)`},
		{si.KindRatio, "30", `ratio needs % unless it is below 1; "30" may be "30 %" or "30 times", write one of these`},
		{si.KindRatio, "1", `ratio needs % unless it is below 1; "1" may be "1 %" or "1 times", write one of these`},
		{si.KindLength, "2 ft 3", `the last number of "2 ft 3" has no unit`},
		{si.KindLength, "3 in 2 ft", `the units of "3 in 2 ft" do not go from large to small`},
		{si.KindTime, "1.5 h 20 min", `only the last number of "1.5 h 20 min" may have a fraction`},

		{si.KindLength, "1,234 mm", `length cannot be read: "1,234" may be 1.234 or 1234; write one of these`},
		{si.KindMass, "12,500 g", `mass cannot be read: "12,500" may be 12.500 or 12500; write one of these`},
		{si.KindMass, "1,234,567 g", `mass cannot be read: "1,234,567" mixes marks for thousands and decimals; write 1234567`},
		{si.KindMass, "1.234,5 g", `mass cannot be read: "1.234,5" mixes marks for thousands and decimals; write 1234.5`},
		{si.KindMass, "1.2.3 g", `mass cannot be read: "1.2.3" is not a number`},
		{si.KindLength, "3/0 in", `length cannot be read: a fraction cannot be over 0`},
		{si.KindLength, "3 5/4 in", `length cannot be read: "5/4" is not a fraction below 1`},

		{si.KindLength, "", `length is empty; write a number and a length unit such as mm or in`},
		{si.KindLength, "  \t", `length is empty; write a number and a length unit such as mm or in`},
		{si.KindLength, "mm", `length cannot be "mm"; write a number and a length unit such as mm or in`},
		{si.KindAreaDensity, "NaN", `areal weight cannot be "NaN"; write a number and a unit such as g/m2 or oz/yd2`},
		{si.KindNumber, "Inf", `number cannot be "Inf"; write a plain number such as 12.5`},
		{si.KindMass, "-inf g", `mass cannot be "-inf g"; write a number and a mass unit such as g or lb`},
		{si.KindMass, "1e400 g", `mass cannot be read: "1e400" is too large`},
		{si.KindPressure, "1e308 GPa", `pressure cannot be read: "1e308 GPa" is too large`},
		{si.KindMass, "1e-400 g", `mass cannot be read: "1e-400" is too small`},
		{si.KindMass, "5e-324 mg", `mass cannot be read: "5e-324 mg" is too small`},
		{si.KindLength, "0x1p3 m", `length has no unit "x": write mm, cm, m, µm, in, ft, yd or mil`},
		{si.KindLength, "1_000 mm", `length has no unit "_": write mm, cm, m, µm, in, ft, yd or mil`},
		{si.KindLength, "5 m m", `length has no unit "m m": write mm, cm, m, µm, in, ft, yd or mil`},
		{si.KindLength, "5 m*m", `length has no unit "m*m": write mm, cm, m, µm, in, ft, yd or mil`},
		{si.KindLength, "2 ft -3 in", `length has no unit "ft -": write mm, cm, m, µm, in, ft, yd or mil`},
		{si.KindMass, "5 Mg", `mass has no unit "Mg": write g, kg, mg, t, lb or oz (mass)`},
		{si.KindLength, "5 (mm", `"(mm" has a bracket too many or too few; write a number and a length unit such as mm or in`},
		{si.KindTemp, "-300 °C", `temperature cannot be "-300 °C": it must be above absolute zero, -273.15 °C`},
		{si.KindTemp, "-273.15 °C", `temperature cannot be "-273.15 °C": it must be above absolute zero, -273.15 °C`},
	} {
		x, err := c.kind.Parse(c.text)
		var e *si.Error
		if !errors.As(err, &e) {
			t.Errorf("%s %q: got %v, %v; want a refusal", c.kind, c.text, x, err)
			continue
		}
		if e.Why != c.why || e.Kind != c.kind.Name() || e.Text != c.text || x != 0 {
			t.Errorf("%s %q:\n got %s\nwant %s", c.kind, c.text, e.Why, c.why)
		}
		if len(e.Allowed) != len(c.kind.Units()) {
			t.Errorf("%s %q: got units %v", c.kind, c.text, e.Allowed)
		}
	}
}

// A unit of one quantity is never read as another's, unless both have it.
func TestUnitsStayApart(t *testing.T) {
	shared := map[string]bool{"K": true, "°C": true, "°F": true} // temperature and difference
	for _, k := range si.Kinds() {
		for _, other := range si.Kinds() {
			for _, u := range other.Units() {
				_, err := k.Parse("2 " + u)
				if want := k == other || shared[u] && (k == si.KindTemp || k == si.KindTempDiff); (err == nil) != want {
					t.Errorf("2 %s as %s: %v", u, k, err)
				}
			}
		}
	}
}

func TestLongTextIsRefusedShortly(t *testing.T) {
	_, err := si.Parse[si.Length](strings.Repeat("9", 5000) + " mm")
	if err == nil || len(err.Error()) > 200 {
		t.Errorf("got %v", err)
	}
}

func TestKinds(t *testing.T) {
	if got := si.KindOf[si.AreaDensity](); got != si.KindAreaDensity {
		t.Errorf("got %v", got)
	}
	for _, k := range si.Kinds() {
		for _, name := range []string{k.Name(), k.Type(), strings.ToUpper(strings.ReplaceAll(k.Name(), " ", "-"))} {
			if got, ok := si.KindNamed(name); !ok || got != k {
				t.Errorf("%q: got %v, %v, want %v", name, got, ok, k)
			}
		}
		if k != si.KindNumber {
			if got, err := k.Parse("2 " + k.Base()); err != nil || got != 2 {
				t.Errorf("2 %s: got %v, %v, want 2", k.Base(), got, err)
			}
		}
	}
	if k, ok := si.KindNamed("colour"); ok {
		t.Errorf("colour: got %v", k)
	}
}
