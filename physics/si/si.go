// Package si is the one door for quantities with units.
//
// Each quantity is a float64 in the coherent SI unit named beside its type, so
// that a formula may drop to float64 and use the book's symbols, while a Length
// can never be passed where a Mass is wanted. What a person types is text with
// a unit ("450 g/m2", "18 oz/yd2", "3/4 in", "0,5 l"); Parse reads it and refuses
// what could be read two ways, because a wrong guess is a wrong dose: a bare
// "oz" may be mass or volume, a mat's ounces are per square foot and a cloth's
// per square yard, "1,234" may be 1234 or 1.234.
//
//	l, err := si.Parse[si.Length]("3 1/2 in") // 0.0889 m
//	l.String()                                // "88.9 mm", exact: Parse gives l back bit for bit
//	si.Show(l, si.US, 3)                      // "3.5 in", rounded, for people
//
// A number follows these rules. The decimal sign is a point or a comma. A comma
// with one to three digits before it and exactly three behind is refused unless
// the number starts with 0, for only then can it not part thousands. Thousands
// may be parted by spaces ("1 234,5 mm"). A length, a time or a mass may be
// compound ("2 ft 3 1/2 in", "1 h 20 min", "2 lb 3 oz"). Every quantity needs
// its unit, except that a Ratio below 1 may be a plain decimal: 0.30 is 30 %,
// but a bare 30 may be 30 % or thirty times, and a bare 1 may be 1 % or all.
//
// Conversions are exact by definition; units.go has their sources.
//
// Constructors and accessors carry the same name, so that si.MM(5.4).MM() is
// 5.4. A constant times a quantity is fine; Length*Length and Temp+Temp compile
// but mean nothing, and the analyzer in internal/checks refuses them.
package si

import "math"

// The quantities, each with its SI unit.
type (
	Length         float64 // m
	Area           float64 // m2
	Volume         float64 // m3
	Mass           float64 // kg
	AreaDensity    float64 // kg/m2, the weight of a cloth or a film
	Density        float64 // kg/m3
	Temp           float64 // K, absolute; the zero value means "not given"
	TempDiff       float64 // K, a difference
	Time           float64 // s
	Pressure       float64 // Pa; also modulus, stress, strength
	Force          float64 // N
	LineLoad       float64 // N/m, force per width of a laminate
	Ratio          float64 // 1; percentages, mass fractions
	Angle          float64 // rad
	Speed          float64 // m/s
	Power          float64 // W
	Energy         float64 // J
	MolarEnergy    float64 // J/mol, activation energy
	SpecificEnergy float64 // J/kg, heat of reaction
	SpecificHeat   float64 // J/(kg K)
	Conductivity   float64 // W/(m K)
	HeatTransfer   float64 // W/(m2 K)
	HeatingRate    float64 // K/s
)

// Constructors: the number in the named unit gives the quantity.

func M(x float64) Length               { return Length(x) }
func MM(x float64) Length              { return Length(x / 1000) }
func M2(x float64) Area                { return Area(x) }
func MM2(x float64) Area               { return Area(x / 1e6) }
func ML(x float64) Volume              { return Volume(x / 1e6) }
func Litres(x float64) Volume          { return Volume(x / 1e3) }
func Kg(x float64) Mass                { return Mass(x) }
func Grams(x float64) Mass             { return Mass(x / 1000) }
func GSM(x float64) AreaDensity        { return AreaDensity(x / 1000) }
func KgPerM2(x float64) AreaDensity    { return AreaDensity(x) }
func GramsPerML(x float64) Density     { return Density(x * 1000) }
func KgPerM3(x float64) Density        { return Density(x) }
func Celsius(x float64) Temp           { return Temp(x + zeroCelsius) }
func Kelvins(x float64) TempDiff       { return TempDiff(x) }
func Seconds(x float64) Time           { return Time(x) }
func Minutes(x float64) Time           { return Time(x * 60) }
func Hours(x float64) Time             { return Time(x * 3600) }
func Days(x float64) Time              { return Time(x * 86400) }
func Pa(x float64) Pressure            { return Pressure(x) }
func KPa(x float64) Pressure           { return Pressure(x * 1e3) }
func MPa(x float64) Pressure           { return Pressure(x * 1e6) }
func GPa(x float64) Pressure           { return Pressure(x * 1e9) }
func Newtons(x float64) Force          { return Force(x) }
func NPerMM(x float64) LineLoad        { return LineLoad(x * 1e3) }
func Percent(x float64) Ratio          { return Ratio(x / 100) }
func Degrees(x float64) Angle          { return Angle(x * math.Pi / 180) }
func Knots(x float64) Speed            { return Speed(x * 1852 / 3600) }
func Watts(x float64) Power            { return Power(x) }
func KJPerMol(x float64) MolarEnergy   { return MolarEnergy(x * 1e3) }
func KJPerKg(x float64) SpecificEnergy { return SpecificEnergy(x * 1e3) }

// Accessors: the quantity as a number in the named unit.

func (x Length) M() float64               { return float64(x) }
func (x Length) MM() float64              { return float64(x) * 1000 }
func (x Area) M2() float64                { return float64(x) }
func (x Area) MM2() float64               { return float64(x) * 1e6 }
func (x Volume) ML() float64              { return float64(x) * 1e6 }
func (x Volume) Litres() float64          { return float64(x) * 1e3 }
func (x Mass) Kg() float64                { return float64(x) }
func (x Mass) Grams() float64             { return float64(x) * 1000 }
func (x AreaDensity) GSM() float64        { return float64(x) * 1000 }
func (x AreaDensity) KgPerM2() float64    { return float64(x) }
func (x Density) GramsPerML() float64     { return float64(x) / 1000 }
func (x Density) KgPerM3() float64        { return float64(x) }
func (x Temp) Celsius() float64           { return float64(x) - zeroCelsius }
func (x TempDiff) Kelvins() float64       { return float64(x) }
func (x Time) Seconds() float64           { return float64(x) }
func (x Time) Minutes() float64           { return float64(x) / 60 }
func (x Time) Hours() float64             { return float64(x) / 3600 }
func (x Time) Days() float64              { return float64(x) / 86400 }
func (x Pressure) Pa() float64            { return float64(x) }
func (x Pressure) KPa() float64           { return float64(x) / 1e3 }
func (x Pressure) MPa() float64           { return float64(x) / 1e6 }
func (x Pressure) GPa() float64           { return float64(x) / 1e9 }
func (x Force) Newtons() float64          { return float64(x) }
func (x LineLoad) NPerMM() float64        { return float64(x) / 1e3 }
func (x Ratio) Percent() float64          { return float64(x) * 100 }
func (x Angle) Degrees() float64          { return float64(x) * 180 / math.Pi }
func (x Angle) Radians() float64          { return float64(x) }
func (x Speed) Knots() float64            { return float64(x) * 3600 / 1852 }
func (x Power) Watts() float64            { return float64(x) }
func (x MolarEnergy) KJPerMol() float64   { return float64(x) / 1e3 }
func (x SpecificEnergy) KJPerKg() float64 { return float64(x) / 1e3 }

const zeroCelsius = 273.15 // K, exact by definition (SI brochure, 9th ed., 2.3.1)

// Add returns the temperature d above t.
func (x Temp) Add(d TempDiff) Temp { return x + Temp(d) }

// Sub returns the difference x - y.
func (x Temp) Sub(y Temp) TempDiff { return TempDiff(x - y) }

// Given reports whether the temperature was set: absolute zero stands for "not given".
func (x Temp) Given() bool { return x > 0 }

// Times returns the area of a rectangle.
func (x Length) Times(y Length) Area { return Area(float64(x) * float64(y)) }

// Deep returns the volume of an area of the given depth.
func (x Area) Deep(t Length) Volume { return Volume(float64(x) * float64(t)) }

// Over returns the mass lying on an area.
func (x AreaDensity) Over(a Area) Mass { return Mass(float64(x) * float64(a)) }

// Of returns the mass of a volume.
func (x Density) Of(v Volume) Mass { return Mass(float64(x) * float64(v)) }

// Fill returns the volume a mass takes up at this density, which must be positive.
func (x Density) Fill(m Mass) Volume { return Volume(float64(m) / float64(x)) }

// Scale returns q times a number without a unit. It stands in for q*Mass(by),
// which would call the number a mass, and which internal/checks refuses.
func Scale[Q Quantity, F float64 | ~int | Ratio](q Q, by F) Q { return Q(float64(q) * float64(by)) }
