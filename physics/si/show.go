package si

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// System is the set of units a person wants to read.
type System int

const (
	Metric System = iota
	US            // inch-pound units with US gallons and fluid ounces, and °F
)

// Show returns q for people: in a unit fit for its magnitude, rounded to at
// most the given number of significant digits, zeros at the end of a decimal
// fraction left off: "5.4 mm", "12 m", "458 g/m²", "1.5 h". A zero has no sign.
// It panics if digits is below 1. Ounces always say of what: oz (mass),
// US fl oz, oz/yd². A Temp that is not given shows as "not given".
func Show[Q Quantity](q Q, sys System, digits int) string {
	return KindOf[Q]().Show(float64(q), sys, digits)
}

// Show is the function Show for a value in base units.
func (k Kind) Show(base float64, sys System, digits int) string {
	if digits < 1 {
		panic("si: Show needs at least 1 digit")
	}
	if k == KindNumber {
		return rounded(base, digits)
	}
	if k == KindTemp && base == 0 {
		return "not given"
	}
	r := k.rung(base, sys)
	u := k.unit(r.symbol)
	// 999.7 g at three digits is not 1000 g but 1 kg: round first, then choose.
	if v, err := strconv.ParseFloat(rounded(u.fromBase(base), digits), 64); err == nil && u.zero == 0 {
		if up := k.rung(u.toBase(v), sys); up != r {
			u = k.unit(up.symbol)
		}
	}
	x := u.fromBase(base)
	if u.zero != 0 {
		// Taking off 273.15 leaves the noise of its last bit, about 6e-14 K.
		x = math.Round(x*1e9) / 1e9
	}
	return rounded(x, digits) + pretty(u.symbol)
}

// ShowFraction returns a length in inches as a whole number and a fraction in
// lowest terms, rounded to the nearest 1/denominator: "3 1/2 in". It panics if
// the denominator is below 1.
func ShowFraction(l Length, denominator int) string {
	if denominator < 1 {
		panic("si: ShowFraction needs a denominator of at least 1")
	}
	x := math.Round(math.Abs(KindLength.unit("in").fromBase(float64(l))) * float64(denominator))
	if !(x < 1e15) { // beyond whole numbers, or not a number: no fraction to show
		return Show(l, US, 6)
	}
	n, d := int64(x), int64(denominator)
	whole, n := n/d, n%d
	for g := gcd(n, d); g > 1; g = gcd(n, d) {
		n, d = n/g, d/g
	}
	sign := ""
	if l < 0 && x > 0 {
		sign = "-"
	}
	switch {
	case n == 0:
		return fmt.Sprintf("%s%d in", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d in", sign, n, d)
	}
	return fmt.Sprintf("%s%d %d/%d in", sign, whole, n, d)
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// rounded writes x with at most the given significant digits and no exponent,
// unless that would take a string of zeros nobody counts.
func rounded(x float64, digits int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return strconv.FormatFloat(x, 'g', -1, 64)
	}
	e := strconv.FormatFloat(x, 'e', digits-1, 64)
	v, _ := strconv.ParseFloat(e, 64)
	if v == 0 {
		return "0" // whatever the sign was
	}
	if a := math.Abs(v); a < 1e-6 || a >= 1e12 {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

var raised = strings.NewReplacer("m2", "m²", "m3", "m³", "t2", "t²", "t3", "t³", "n2", "n²", "n3", "n³", "d2", "d²")

// pretty is a unit as it stands behind a number on a page.
func pretty(symbol string) string {
	if symbol == "deg" {
		return "°"
	}
	return " " + raised.Replace(symbol)
}

// rung is a unit that is used below a magnitude, in base units.
type rung struct {
	symbol string
	below  float64
}

var top = math.Inf(1)

// ladders has for each kind the units that people read, small to large. US nil:
// as Metric. Time turns to the larger unit at two of it: 90 min, but 2 h.
var ladders = [kinds]struct{ metric, us []rung }{
	KindLength: {
		[]rung{{"mm", 10}, {"m", top}},
		[]rung{{"in", 3.048}, {"ft", top}}},
	KindArea: {
		[]rung{{"mm2", 1e-4}, {"cm2", 1e-2}, {"m2", top}},
		[]rung{{"in2", 0.09290304}, {"ft2", top}}},
	KindVolume: {
		[]rung{{"ml", 1e-3}, {"l", 1}, {"m3", top}},
		[]rung{{"US fl oz", 3.785411784e-3}, {"US gal", top}}},
	KindMass: {
		[]rung{{"g", 1}, {"kg", top}},
		[]rung{{"oz (mass)", 0.45359237}, {"lb", top}}},
	KindAreaDensity: {
		[]rung{{"g/m2", 10}, {"kg/m2", top}},
		[]rung{{"oz/yd2", top}}},
	KindDensity: {
		[]rung{{"kg/m3", 400}, {"g/ml", top}}, // cores in kg/m3, as sold; liquids in g/ml, as dosed
		[]rung{{"lb/ft3", top}}},
	KindTemp:     {[]rung{{"°C", top}}, []rung{{"°F", top}}},
	KindTempDiff: {[]rung{{"°C", top}}, []rung{{"°F", top}}},
	KindTime:     {[]rung{{"s", 120}, {"min", 7200}, {"h", 172800}, {"days", top}}, nil},
	KindPressure: {
		[]rung{{"Pa", 1e3}, {"kPa", 1e6}, {"MPa", 1e9}, {"GPa", top}},
		[]rung{{"psi", 6894757.2931}, {"ksi", 6894757293.1}, {"Msi", top}}},
	KindForce:          {[]rung{{"N", 1e3}, {"kN", top}}, []rung{{"lbf", top}}},
	KindLineLoad:       {[]rung{{"N/mm", top}}, []rung{{"lbf/in", top}}},
	KindRatio:          {[]rung{{"%", top}}, nil},
	KindAngle:          {[]rung{{"deg", top}}, nil},
	KindSpeed:          {[]rung{{"kn", top}}, nil},
	KindPower:          {[]rung{{"W", 1e3}, {"kW", top}}, nil},
	KindEnergy:         {[]rung{{"J", 1e3}, {"kJ", 3.6e6}, {"kWh", top}}, nil},
	KindMolarEnergy:    {[]rung{{"kJ/mol", top}}, nil},
	KindSpecificEnergy: {[]rung{{"kJ/kg", top}}, nil},
	KindSpecificHeat:   {[]rung{{"J/(kg K)", 1e4}, {"kJ/(kg K)", top}}, nil},
	KindConductivity:   {[]rung{{"W/(m K)", top}}, nil},
	KindHeatTransfer:   {[]rung{{"W/(m2 K)", top}}, nil},
	KindHeatingRate:    {[]rung{{"K/min", top}}, []rung{{"°F/min", top}}},
}

// rung returns the unit for a magnitude.
func (k Kind) rung(base float64, sys System) rung {
	ladder := ladders[k].metric
	if sys == US && ladders[k].us != nil {
		ladder = ladders[k].us
	}
	for _, r := range ladder {
		if math.Abs(base) < r.below {
			return r
		}
	}
	return ladder[len(ladder)-1]
}
