package si

import "math"

// The units that may be typed, and what each is in SI.
//
// Every factor is exact by definition and written as the quotient of two whole
// numbers that a float64 holds exactly, so that a conversion rounds at most
// twice and agrees with the constructors: MM(5.4) is what "5.4 mm" reads as.
// Sources: SI brochure, 9th ed. (2019), tables 5 to 8 for units beside the SI;
// NIST SP 811 (2008), app. B.8, for inch-pound units. Three definitions carry
// most of the others:
//
//	1 in  = 25.4 mm             (SP 811 app. B.6)
//	1 lb  = 0.453 592 37 kg     (SP 811 app. B.6)
//	1 lbf = 1 lb x 9.806 65 m/s2 = 4.448 221 615 260 5 N

// unit is one unit: base = (x + zero) * mul / div.
type unit struct {
	symbol   string
	mul, div float64
	zero     float64  // K or °F from absolute zero, for temperatures only
	also     []string // other spellings; case, spaces and plurals apart, which spell.go sees to
}

func (u unit) toBase(x float64) float64 {
	if u.zero != 0 { // x + 0 would lose the sign of a negative zero
		x += u.zero
	}
	return x * u.mul / u.div
}

func (u unit) fromBase(base float64) float64 {
	x := base * u.div / u.mul
	if u.zero != 0 {
		x -= u.zero
	}
	return x
}

func also(spellings ...string) []string { return spellings }

// Numerators and denominators of the inch-pound units.
const (
	inch  = 254      // 1/10000 m
	inch2 = 64516    // 1/1e8 m2: 0.0254 squared
	foot2 = 9290304  // 1/1e8 m2: 0.3048 squared
	yard2 = 83612736 // 1/1e8 m2: 0.9144 squared

	inch3  = 16387064       // 1/1e12 m3: 0.0254 cubed
	foot3  = 28316846592    // 1/1e12 m3: 0.3048 cubed
	galUS  = 3785411784     // 1/1e12 m3: 231 in3 (SP 811 app. B.6)
	galUK  = 454609         // 1/1e8 m3: 4.546 09 l (UK Weights and Measures Act 1985, sch. 1)
	pound  = 45359237       // 1/1e8 kg
	poundF = 44482216152605 // 1/1e13 N
)

var units = [kinds][]unit{
	KindLength: {
		{symbol: "mm", mul: 1, div: 1e3},
		{symbol: "cm", mul: 1, div: 1e2},
		{symbol: "m", mul: 1, div: 1},
		{symbol: "µm", mul: 1, div: 1e6},
		{symbol: "in", mul: inch, div: 1e4, also: also(`"`)},
		{symbol: "ft", mul: 12 * inch, div: 1e4, also: also(`'`)},
		{symbol: "yd", mul: 36 * inch, div: 1e4},
		{symbol: "mil", mul: inch, div: 1e7}, // a thousandth of an inch, of paint films
	},
	KindArea: {
		{symbol: "m2", mul: 1, div: 1, also: also("sqm")},
		{symbol: "cm2", mul: 1, div: 1e4, also: also("sqcm")},
		{symbol: "mm2", mul: 1, div: 1e6, also: also("sqmm")},
		{symbol: "ft2", mul: foot2, div: 1e8, also: also("sqft")},
		{symbol: "in2", mul: inch2, div: 1e8, also: also("sqin")},
		{symbol: "yd2", mul: yard2, div: 1e8, also: also("sqyd")},
	},
	KindVolume: {
		{symbol: "ml", mul: 1, div: 1e6, also: also("cc", "ccm")}, // cc: a cubic centimetre, 1 ml by the litre of 1964
		{symbol: "cl", mul: 1, div: 1e5},
		{symbol: "l", mul: 1, div: 1e3, also: also("dm3")},
		{symbol: "cm3", mul: 1, div: 1e6},
		{symbol: "m3", mul: 1, div: 1},
		{symbol: "mm3", mul: 1, div: 1e9},
		{symbol: "US fl oz", mul: galUS, div: 128e12, also: also("fl oz US")},
		{symbol: "UK fl oz", mul: galUK, div: 160e8, also: also("fl oz UK")},
		{symbol: "US pt", mul: galUS, div: 8e12, also: also("pt US")},
		{symbol: "UK pt", mul: galUK, div: 8e8, also: also("pt UK")},
		{symbol: "US qt", mul: galUS, div: 4e12, also: also("qt US")},
		{symbol: "UK qt", mul: galUK, div: 4e8, also: also("qt UK")},
		{symbol: "US gal", mul: galUS, div: 1e12, also: also("gal US")},
		{symbol: "UK gal", mul: galUK, div: 1e8, also: also("gal UK")},
		{symbol: "in3", mul: inch3, div: 1e12},
		{symbol: "ft3", mul: foot3, div: 1e12},
	},
	KindMass: {
		{symbol: "g", mul: 1, div: 1e3},
		{symbol: "kg", mul: 1, div: 1},
		{symbol: "mg", mul: 1, div: 1e6},
		{symbol: "t", mul: 1e3, div: 1},
		{symbol: "lb", mul: pound, div: 1e8},
		{symbol: "oz (mass)", mul: pound, div: 16e8, also: also("oz av", "oz avdp", "mass oz", "oz wt")},
	},
	KindAreaDensity: {
		{symbol: "g/m2", mul: 1, div: 1e3, also: also("gsm", "g/sqm")},
		{symbol: "kg/m2", mul: 1, div: 1},
		{symbol: "oz/yd2", mul: pound, div: 16 * yard2, also: also("oz/sqyd", "oz mass/yd2")},
		{symbol: "oz/ft2", mul: pound, div: 16 * foot2, also: also("oz/sqft", "oz mass/ft2")},
		{symbol: "lb/ft2", mul: pound, div: foot2},
	},
	KindDensity: {
		{symbol: "g/ml", mul: 1e3, div: 1, also: also("g/cc")},
		{symbol: "g/cm3", mul: 1e3, div: 1},
		{symbol: "kg/l", mul: 1e3, div: 1, also: also("kg/dm3")},
		{symbol: "kg/m3", mul: 1, div: 1},
		{symbol: "g/l", mul: 1, div: 1},
		{symbol: "lb/ft3", mul: pound * 1e4, div: foot3, also: also("pcf")},
		{symbol: "lb/US gal", mul: pound * 1e4, div: galUS, also: also("lb/gal US")},
		{symbol: "lb/UK gal", mul: pound, div: galUK, also: also("lb/gal UK")},
	},
	KindTemp: {
		{symbol: "°C", mul: 1, div: 1, zero: zeroCelsius, also: also("C", "deg C", "° C")},
		{symbol: "°F", mul: 5, div: 9, zero: 459.67, also: also("F", "deg F", "° F")}, // SP 811 app. B.8
		{symbol: "K", mul: 1, div: 1},
	},
	KindTempDiff: {
		{symbol: "K", mul: 1, div: 1},
		{symbol: "°C", mul: 1, div: 1, also: also("C", "deg C", "° C")},
		{symbol: "°F", mul: 5, div: 9, also: also("F", "deg F", "° F")},
	},
	KindTime: {
		{symbol: "s", mul: 1, div: 1},
		{symbol: "min", mul: 60, div: 1},
		{symbol: "h", mul: 3600, div: 1},
		{symbol: "days", mul: 86400, div: 1},
		{symbol: "weeks", mul: 604800, div: 1},
	},
	KindPressure: {
		{symbol: "MPa", mul: 1e6, div: 1, also: also("N/mm2")},
		{symbol: "GPa", mul: 1e9, div: 1, also: also("kN/mm2")},
		{symbol: "kPa", mul: 1e3, div: 1},
		{symbol: "Pa", mul: 1, div: 1, also: also("N/m2")},
		{symbol: "kN/m2", mul: 1e3, div: 1},
		{symbol: "MN/m2", mul: 1e6, div: 1},
		{symbol: "bar", mul: 1e5, div: 1},
		{symbol: "mbar", mul: 1e2, div: 1, also: also("hPa")},
		{symbol: "psi", mul: poundF, div: 1e5 * inch2, also: also("lbf/in2", "lb/in2")},
		{symbol: "ksi", mul: poundF, div: 1e2 * inch2},
		{symbol: "Msi", mul: poundF * 10, div: inch2},
		{symbol: "kgf/cm2", mul: 980665, div: 10},
	},
	KindForce: {
		{symbol: "N", mul: 1, div: 1},
		{symbol: "kN", mul: 1e3, div: 1},
		{symbol: "lbf", mul: poundF, div: 1e13},
		{symbol: "kgf", mul: 980665, div: 1e5},
	},
	KindLineLoad: {
		{symbol: "N/mm", mul: 1e3, div: 1},
		{symbol: "N/m", mul: 1, div: 1},
		{symbol: "kN/m", mul: 1e3, div: 1},
		{symbol: "lbf/in", mul: poundF, div: 1e9 * inch, also: also("lb/in")},
	},
	KindRatio: {
		{symbol: "%", mul: 1, div: 100},
		// Not every float64 is a whole number of hundredths of another, so the
		// exact text of a ratio needs a unit worth 1; a bare "3.7" is refused.
		{symbol: "times", mul: 1, div: 1},
	},
	KindAngle: {
		{symbol: "deg", mul: math.Pi, div: 180, also: also("°")},
		{symbol: "rad", mul: 1, div: 1},
	},
	KindSpeed: {
		{symbol: "kn", mul: 1852, div: 3600}, // international nautical mile an hour
		{symbol: "m/s", mul: 1, div: 1},
		{symbol: "km/h", mul: 1e3, div: 3600, also: also("kmh", "kph")},
		{symbol: "mph", mul: 44704, div: 1e5}, // mile of 5280 ft
	},
	KindPower: {
		{symbol: "W", mul: 1, div: 1},
		{symbol: "kW", mul: 1e3, div: 1},
	},
	KindEnergy: {
		{symbol: "J", mul: 1, div: 1},
		{symbol: "kJ", mul: 1e3, div: 1},
		{symbol: "MJ", mul: 1e6, div: 1},
		{symbol: "kWh", mul: 36e5, div: 1, also: also("kW h")},
	},
	KindMolarEnergy: {
		{symbol: "kJ/mol", mul: 1e3, div: 1},
		{symbol: "J/mol", mul: 1, div: 1},
		{symbol: "kcal/mol", mul: 4184, div: 1}, // the thermochemical calorie, SP 811 app. B.8
	},
	KindSpecificEnergy: {
		{symbol: "kJ/kg", mul: 1e3, div: 1},
		{symbol: "J/g", mul: 1e3, div: 1},
		{symbol: "J/kg", mul: 1, div: 1},
	},
	KindSpecificHeat: {
		{symbol: "J/(kg K)", mul: 1, div: 1, also: also("J/kg/K", "J/kg °C")},
		{symbol: "kJ/(kg K)", mul: 1e3, div: 1, also: also("kJ/kg/K", "kJ/kg °C")},
		{symbol: "J/(g K)", mul: 1e3, div: 1, also: also("J/g/K", "J/g °C")},
		{symbol: "kcal/(kg K)", mul: 4184, div: 1, also: also("kcal/kg/K", "kcal/kg °C", "kcal/kg C")}, // thermochemical, as above
		{symbol: "cal/(g K)", mul: 4184, div: 1, also: also("cal/g/K", "cal/g °C", "cal/g C")},
		// The International Table Btu: 1 Btu/(lb °F) is 4186.8 J/(kg K), SP 811 app. B.8.
		{symbol: "Btu/(lb °F)", mul: 41868, div: 10, also: also("Btu/lb/°F", "Btu/lb/F", "Btu/lb F", "Btu/lbm °F", "Btu/lbm/F", "Btu/lbm F")},
	},
	KindConductivity: {
		{symbol: "W/(m K)", mul: 1, div: 1, also: also("W/m/K", "W/m °C")},
	},
	KindHeatTransfer: {
		{symbol: "W/(m2 K)", mul: 1, div: 1, also: also("W/m2/K", "W/m2 °C")},
	},
	KindHeatingRate: {
		{symbol: "K/min", mul: 1, div: 60},
		{symbol: "°C/min", mul: 1, div: 60, also: also("C/min")},
		{symbol: "°F/min", mul: 5, div: 540, also: also("F/min")},
		{symbol: "K/s", mul: 1, div: 1, also: also("°C/s", "C/s")},
		{symbol: "K/h", mul: 1, div: 3600, also: also("°C/h", "C/h")},
	},
}
