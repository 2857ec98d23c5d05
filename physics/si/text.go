package si

import (
	"fmt"
	"math"
	"strconv"
)

// The exact text of a quantity, for files and for the wire. Show is for people.

// Text returns a value given in base units as text that Parse gives back bit
// for bit, for every finite value: in the unit people would use if that is
// exact within 17 digits, otherwise in the base unit. A temperature difference
// is in K, which cannot be taken for a temperature in °C. No temperature is
// below absolute zero; such a value, and one that is not finite, gives text
// that Parse refuses.
func (k Kind) Text(base float64) string {
	if k == KindNumber {
		return strconv.FormatFloat(base, 'g', -1, 64)
	}
	if k.valid(base) && k != KindTempDiff && (k != KindTemp || base > 0) {
		u := k.unit(k.rung(base, Metric).symbol)
		x := u.fromBase(base)
		for digits := 15; digits <= 17; digits++ {
			s := strconv.FormatFloat(x, 'g', digits, 64)
			if back, err := strconv.ParseFloat(s, 64); err == nil && same(u.toBase(back), base) {
				return s + " " + u.symbol
			}
		}
	}
	return strconv.FormatFloat(base, 'g', -1, 64) + " " + k.Base()
}

func same(a, b float64) bool { return math.Float64bits(a) == math.Float64bits(b) }

// marshal is Text, refusing what Parse would not read back.
func (k Kind) marshal(base float64) ([]byte, error) {
	if !k.valid(base) {
		return nil, fmt.Errorf("si: no text for the %s %v %s", k.Name(), base, k.Base())
	}
	return []byte(k.Text(base)), nil
}

func unmarshal[Q Quantity](x *Q, text []byte) error {
	y, err := Parse[Q](string(text))
	if err == nil {
		*x = y
	}
	return err
}

// String returns the exact text, such as "5.4 mm"; see Kind.Text.

func (x Length) String() string         { return KindLength.Text(float64(x)) }
func (x Area) String() string           { return KindArea.Text(float64(x)) }
func (x Volume) String() string         { return KindVolume.Text(float64(x)) }
func (x Mass) String() string           { return KindMass.Text(float64(x)) }
func (x AreaDensity) String() string    { return KindAreaDensity.Text(float64(x)) }
func (x Density) String() string        { return KindDensity.Text(float64(x)) }
func (x Temp) String() string           { return KindTemp.Text(float64(x)) }
func (x TempDiff) String() string       { return KindTempDiff.Text(float64(x)) }
func (x Time) String() string           { return KindTime.Text(float64(x)) }
func (x Pressure) String() string       { return KindPressure.Text(float64(x)) }
func (x Force) String() string          { return KindForce.Text(float64(x)) }
func (x LineLoad) String() string       { return KindLineLoad.Text(float64(x)) }
func (x Ratio) String() string          { return KindRatio.Text(float64(x)) }
func (x Angle) String() string          { return KindAngle.Text(float64(x)) }
func (x Speed) String() string          { return KindSpeed.Text(float64(x)) }
func (x Power) String() string          { return KindPower.Text(float64(x)) }
func (x Energy) String() string         { return KindEnergy.Text(float64(x)) }
func (x MolarEnergy) String() string    { return KindMolarEnergy.Text(float64(x)) }
func (x SpecificEnergy) String() string { return KindSpecificEnergy.Text(float64(x)) }
func (x SpecificHeat) String() string   { return KindSpecificHeat.Text(float64(x)) }
func (x Conductivity) String() string   { return KindConductivity.Text(float64(x)) }
func (x HeatTransfer) String() string   { return KindHeatTransfer.Text(float64(x)) }
func (x HeatingRate) String() string    { return KindHeatingRate.Text(float64(x)) }

// MarshalText returns the exact text, such as "5.4 mm". The zero Temp, which
// stands for "not given", is "".

func (x Length) MarshalText() ([]byte, error)         { return KindLength.marshal(float64(x)) }
func (x Area) MarshalText() ([]byte, error)           { return KindArea.marshal(float64(x)) }
func (x Volume) MarshalText() ([]byte, error)         { return KindVolume.marshal(float64(x)) }
func (x Mass) MarshalText() ([]byte, error)           { return KindMass.marshal(float64(x)) }
func (x AreaDensity) MarshalText() ([]byte, error)    { return KindAreaDensity.marshal(float64(x)) }
func (x Density) MarshalText() ([]byte, error)        { return KindDensity.marshal(float64(x)) }
func (x TempDiff) MarshalText() ([]byte, error)       { return KindTempDiff.marshal(float64(x)) }
func (x Time) MarshalText() ([]byte, error)           { return KindTime.marshal(float64(x)) }
func (x Pressure) MarshalText() ([]byte, error)       { return KindPressure.marshal(float64(x)) }
func (x Force) MarshalText() ([]byte, error)          { return KindForce.marshal(float64(x)) }
func (x LineLoad) MarshalText() ([]byte, error)       { return KindLineLoad.marshal(float64(x)) }
func (x Ratio) MarshalText() ([]byte, error)          { return KindRatio.marshal(float64(x)) }
func (x Angle) MarshalText() ([]byte, error)          { return KindAngle.marshal(float64(x)) }
func (x Speed) MarshalText() ([]byte, error)          { return KindSpeed.marshal(float64(x)) }
func (x Power) MarshalText() ([]byte, error)          { return KindPower.marshal(float64(x)) }
func (x Energy) MarshalText() ([]byte, error)         { return KindEnergy.marshal(float64(x)) }
func (x MolarEnergy) MarshalText() ([]byte, error)    { return KindMolarEnergy.marshal(float64(x)) }
func (x SpecificEnergy) MarshalText() ([]byte, error) { return KindSpecificEnergy.marshal(float64(x)) }
func (x SpecificHeat) MarshalText() ([]byte, error)   { return KindSpecificHeat.marshal(float64(x)) }
func (x Conductivity) MarshalText() ([]byte, error)   { return KindConductivity.marshal(float64(x)) }
func (x HeatTransfer) MarshalText() ([]byte, error)   { return KindHeatTransfer.marshal(float64(x)) }
func (x HeatingRate) MarshalText() ([]byte, error)    { return KindHeatingRate.marshal(float64(x)) }

func (x Temp) MarshalText() ([]byte, error) {
	if x == 0 {
		return nil, nil
	}
	return KindTemp.marshal(float64(x))
}

// UnmarshalText reads what Parse reads. Into a Temp, "" reads as "not given".

func (x *Length) UnmarshalText(text []byte) error         { return unmarshal(x, text) }
func (x *Area) UnmarshalText(text []byte) error           { return unmarshal(x, text) }
func (x *Volume) UnmarshalText(text []byte) error         { return unmarshal(x, text) }
func (x *Mass) UnmarshalText(text []byte) error           { return unmarshal(x, text) }
func (x *AreaDensity) UnmarshalText(text []byte) error    { return unmarshal(x, text) }
func (x *Density) UnmarshalText(text []byte) error        { return unmarshal(x, text) }
func (x *TempDiff) UnmarshalText(text []byte) error       { return unmarshal(x, text) }
func (x *Time) UnmarshalText(text []byte) error           { return unmarshal(x, text) }
func (x *Pressure) UnmarshalText(text []byte) error       { return unmarshal(x, text) }
func (x *Force) UnmarshalText(text []byte) error          { return unmarshal(x, text) }
func (x *LineLoad) UnmarshalText(text []byte) error       { return unmarshal(x, text) }
func (x *Ratio) UnmarshalText(text []byte) error          { return unmarshal(x, text) }
func (x *Angle) UnmarshalText(text []byte) error          { return unmarshal(x, text) }
func (x *Speed) UnmarshalText(text []byte) error          { return unmarshal(x, text) }
func (x *Power) UnmarshalText(text []byte) error          { return unmarshal(x, text) }
func (x *Energy) UnmarshalText(text []byte) error         { return unmarshal(x, text) }
func (x *MolarEnergy) UnmarshalText(text []byte) error    { return unmarshal(x, text) }
func (x *SpecificEnergy) UnmarshalText(text []byte) error { return unmarshal(x, text) }
func (x *SpecificHeat) UnmarshalText(text []byte) error   { return unmarshal(x, text) }
func (x *Conductivity) UnmarshalText(text []byte) error   { return unmarshal(x, text) }
func (x *HeatTransfer) UnmarshalText(text []byte) error   { return unmarshal(x, text) }
func (x *HeatingRate) UnmarshalText(text []byte) error    { return unmarshal(x, text) }

func (x *Temp) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*x = 0
		return nil
	}
	return unmarshal(x, text)
}
