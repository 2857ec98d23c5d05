package si

import (
	"math"
	"strconv"
)

// JSON carries a quantity as a plain number in its SI unit: machine output names
// the unit in its key ("taper_m"), and text with a unit is for people and files.

// jsonNumber writes a number; what is not finite, or not given, is null.
func jsonNumber(x float64) ([]byte, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return []byte("null"), nil
	}
	return strconv.AppendFloat(nil, x+0, 'g', -1, 64), nil
}

// MarshalJSON writes kelvin, or null for a temperature that was not given.
func (x Temp) MarshalJSON() ([]byte, error) {
	if !x.Given() {
		return []byte("null"), nil
	}
	return jsonNumber(float64(x))
}

// MarshalJSON writes the number in the SI unit.
func (x Length) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Area) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Volume) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Mass) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x AreaDensity) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Density) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x TempDiff) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Time) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Pressure) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Force) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x LineLoad) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Ratio) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Angle) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Speed) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Power) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Energy) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x MolarEnergy) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x SpecificEnergy) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x SpecificHeat) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x Conductivity) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x HeatTransfer) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }

// MarshalJSON writes the number in the SI unit.
func (x HeatingRate) MarshalJSON() ([]byte, error) { return jsonNumber(float64(x)) }
