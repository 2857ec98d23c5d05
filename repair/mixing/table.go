package mixing

import (
	"fmt"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
)

// TableTemps and TableSizes are the usual rows and columns of a mix table.
func TableTemps() []si.Temp {
	return []si.Temp{si.Celsius(10), si.Celsius(15), si.Celsius(20), si.Celsius(25), si.Celsius(30)}
}

// TableSizes are the usual sizes: for a polyester grams of resin, for an epoxy of both parts.
func TableSizes() []si.Mass {
	return []si.Mass{si.Grams(50), si.Grams(100), si.Grams(200), si.Grams(300), si.Grams(400)}
}

// MixTable is the table for the wall: how much to put in for each size, and how
// long it may be worked at each temperature.
type MixTable struct {
	Class string     `json:"class"`
	Dose  si.Ratio   `json:"dose"` // catalyst, zero for epoxy
	Sizes []Amount   `json:"sizes"`
	Tools []Measured `json:"tools"` // the same as the scale and the syringe show it
	Rows  []Row      `json:"rows"`
	Note  string     `json:"note"`
}

// Row is one temperature. The amounts are the columns', the same in each row:
// the dose is not raised against the cold.
type Row struct {
	At     si.Temp  `json:"at_k"`
	Time   si.Time  `json:"time_s"` // at most; zero outside the sheet's table
	Words  string   `json:"words"`
	ByDose []AtDose `json:"by_dose,omitempty"` // the same at the sheet's own doses
}

// AtDose is the working time with another dose.
type AtDose struct {
	Dose si.Ratio `json:"dose"`
	Time si.Time  `json:"time_s"` // zero outside the sheet's table
}

// Table returns the mix table for the given temperatures and batch sizes. Only
// Dose, Scale and Syringe of the options are used. A temperature the sheet does
// not cover gets its words and no time.
func Table(p catalog.TwoPart, o Options, temps []si.Temp, sizes []si.Mass) (MixTable, error) {
	o = o.filled(p)
	if err := o.check(); err != nil {
		return MixTable{}, fmt.Errorf("mix table of %s: %w", p.Class, err)
	}
	if err := CheckDose(p, o.Dose); err != nil {
		return MixTable{}, fmt.Errorf("mix table of %s: %w", p.Class, err)
	}
	t := MixTable{Class: p.Class, Dose: o.Dose, Note: CupNote}
	for _, m := range sizes {
		a := Split(p, m, o.Dose)
		t.Sizes = append(t.Sizes, a)
		t.Tools = append(t.Tools, Measure(a, o.Scale, o.Syringe, p.HardenerDensity.Typical, within(p)))
	}
	for _, at := range temps {
		row := Row{At: at}
		w, err := WorkingTime(p, at, o.Dose)
		row.Time, row.Words = w, inWords(w)
		if err != nil {
			row.Words = sentence(err)
		}
		if p.Catalysed() {
			for _, d := range Doses(p) {
				w, _ := WorkingTime(p, at, d) // outside the table: zero, the row's words say why
				row.ByDose = append(row.ByDose, AtDose{d, w})
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t, nil
}
