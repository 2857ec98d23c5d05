package si

import (
	"math"
	"slices"
	"strings"
)

// Quantity is any of the typed quantities.
type Quantity interface {
	Length | Area | Volume | Mass | AreaDensity | Density | Temp | TempDiff | Time |
		Pressure | Force | LineLoad | Ratio | Angle | Speed | Power | Energy |
		MolarEnergy | SpecificEnergy | SpecificHeat | Conductivity | HeatTransfer | HeatingRate
}

// Kind is what sort of quantity a number is, for code that learns it only when
// it runs, such as a command line of key=value inputs. KindNumber is a plain
// number, which has no type of its own.
type Kind int

// The kinds, one for each type and one for a plain number.
const (
	KindNumber Kind = iota
	KindLength
	KindArea
	KindVolume
	KindMass
	KindAreaDensity
	KindDensity
	KindTemp
	KindTempDiff
	KindTime
	KindPressure
	KindForce
	KindLineLoad
	KindRatio
	KindAngle
	KindSpeed
	KindPower
	KindEnergy
	KindMolarEnergy
	KindSpecificEnergy
	KindSpecificHeat
	KindConductivity
	KindHeatTransfer
	KindHeatingRate
	kinds // how many there are
)

// names has for each kind its name in a message, its Go type, its SI unit as
// Parse reads it, and two units to name as examples.
var names = [kinds]struct{ name, typ, base, such string }{
	KindNumber:         {"number", "float64", "", ""},
	KindLength:         {"length", "Length", "m", "mm or in"},
	KindArea:           {"area", "Area", "m2", "m2 or ft2"},
	KindVolume:         {"volume", "Volume", "m3", "ml or US fl oz"},
	KindMass:           {"mass", "Mass", "kg", "g or lb"},
	KindAreaDensity:    {"areal weight", "AreaDensity", "kg/m2", "g/m2 or oz/yd2"},
	KindDensity:        {"density", "Density", "kg/m3", "g/ml or lb/ft3"},
	KindTemp:           {"temperature", "Temp", "K", "°C or °F"},
	KindTempDiff:       {"temperature difference", "TempDiff", "K", "K or °F"},
	KindTime:           {"time", "Time", "s", "min or h"},
	KindPressure:       {"pressure", "Pressure", "Pa", "MPa or psi"},
	KindForce:          {"force", "Force", "N", "N or lbf"},
	KindLineLoad:       {"line load", "LineLoad", "N/m", "N/mm or lbf/in"},
	KindRatio:          {"ratio", "Ratio", "times", "%"},
	KindAngle:          {"angle", "Angle", "rad", "deg or rad"},
	KindSpeed:          {"speed", "Speed", "m/s", "kn or m/s"},
	KindPower:          {"power", "Power", "W", "W or kW"},
	KindEnergy:         {"energy", "Energy", "J", "J or kWh"},
	KindMolarEnergy:    {"molar energy", "MolarEnergy", "J/mol", "kJ/mol or kcal/mol"},
	KindSpecificEnergy: {"specific energy", "SpecificEnergy", "J/kg", "kJ/kg or J/g"},
	KindSpecificHeat:   {"specific heat", "SpecificHeat", "J/(kg K)", "J/(kg K) or kJ/(kg K)"},
	KindConductivity:   {"conductivity", "Conductivity", "W/(m K)", "W/(m K)"},
	KindHeatTransfer:   {"heat transfer", "HeatTransfer", "W/(m2 K)", "W/(m2 K)"},
	KindHeatingRate:    {"heating rate", "HeatingRate", "K/s", "K/min or °F/min"},
}

// Kinds returns all kinds in a fixed order, the plain number first.
func Kinds() []Kind {
	all := make([]Kind, kinds)
	for i := range all {
		all[i] = Kind(i)
	}
	return all
}

// KindOf returns the kind of a type.
func KindOf[Q Quantity]() Kind {
	switch any(Q(0)).(type) {
	case Length:
		return KindLength
	case Area:
		return KindArea
	case Volume:
		return KindVolume
	case Mass:
		return KindMass
	case AreaDensity:
		return KindAreaDensity
	case Density:
		return KindDensity
	case Temp:
		return KindTemp
	case TempDiff:
		return KindTempDiff
	case Time:
		return KindTime
	case Pressure:
		return KindPressure
	case Force:
		return KindForce
	case LineLoad:
		return KindLineLoad
	case Ratio:
		return KindRatio
	case Angle:
		return KindAngle
	case Speed:
		return KindSpeed
	case Power:
		return KindPower
	case Energy:
		return KindEnergy
	case MolarEnergy:
		return KindMolarEnergy
	case SpecificEnergy:
		return KindSpecificEnergy
	case SpecificHeat:
		return KindSpecificHeat
	case Conductivity:
		return KindConductivity
	case HeatTransfer:
		return KindHeatTransfer
	case HeatingRate:
		return KindHeatingRate
	}
	panic("si: a quantity without a kind") // a type was added to Quantity only
}

// KindNamed finds a kind by its name ("areal weight", "areal-weight") or by its
// type ("AreaDensity"), in any case.
func KindNamed(name string) (Kind, bool) {
	name = strings.NewReplacer("-", " ", "_", " ").Replace(strings.TrimSpace(name))
	for k, n := range names {
		if strings.EqualFold(name, n.name) || strings.EqualFold(name, n.typ) {
			return Kind(k), true
		}
	}
	return 0, false
}

// Name returns the kind's name in plain words, such as "areal weight".
func (k Kind) Name() string { return names[k].name }

// String is Name.
func (k Kind) String() string { return k.Name() }

// Type returns the name of the Go type, such as "AreaDensity".
func (k Kind) Type() string { return names[k].typ }

// Base returns the SI unit that Parse's number is in, such as "kg/m2"; "" for a
// number, "times" for a ratio.
func (k Kind) Base() string { return names[k].base }

// Units returns the units that may be typed, one spelling each; none for a number.
func (k Kind) Units() []string {
	var list []string
	for _, u := range units[k] {
		list = append(list, u.symbol)
	}
	return list
}

// valid reports whether a value can be: finite, and no temperature below
// absolute zero.
func (k Kind) valid(base float64) bool {
	return !math.IsNaN(base) && !math.IsInf(base, 0) && (k != KindTemp || base >= 0)
}

// unit finds a unit by its printed symbol; the tables' own words only.
func (k Kind) unit(symbol string) unit {
	i := slices.IndexFunc(units[k], func(u unit) bool { return u.symbol == symbol })
	if i < 0 {
		panic("si: no unit " + symbol + " for " + k.Name())
	}
	return units[k][i]
}
