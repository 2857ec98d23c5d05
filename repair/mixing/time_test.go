package mixing_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/job"
	"scarfwright/repair/mixing"
)

// tables are all entries of the catalogue that have a pot-life table.
func tables() []catalog.TwoPart {
	cat := catalog.Default()
	var out []catalog.TwoPart
	for _, r := range cat.Resins {
		out = append(out, r.TwoPart)
	}
	for _, g := range cat.Gelcoats {
		if g.PotLife.Given() {
			out = append(out, g.TwoPart)
		}
	}
	for _, f := range cat.Fillers {
		out = append(out, f.TwoPart)
	}
	for _, b := range cat.Barriers {
		out = append(out, b.TwoPart)
	}
	return out
}

func TestTheTablesOwnCellsComeBack(t *testing.T) {
	cells := 0
	for _, p := range tables() {
		for _, c := range p.PotLife.Cells {
			got, err := mixing.WorkingTime(p, c.At, c.Dose)
			if err != nil || !near(got.Seconds(), c.Time.Seconds(), 1e-6) {
				t.Errorf("%s at %.0f °C, %.1f %%: got %.4f min, %v; want %.4f min", p.Class, c.At.Celsius(), c.Dose.Percent(), got.Minutes(), err, c.Time.Minutes())
			}
			cells++
		}
	}
	if cells < 30 {
		t.Errorf("only %d cells looked at", cells)
	}
}

// Half way between two cells of a table in log time stands their geometric mean
// (closed form).
func TestHalfWayIsTheGeometricMean(t *testing.T) {
	e := resin(t, "epoxy-fast").TwoPart
	got, err := mixing.WorkingTime(e, si.Celsius(17.5), 0)
	if want := 32.2490; err != nil || !near(got.Minutes(), want, 1e-3) { // sqrt(40 × 26)
		t.Errorf("epoxy at 17.5 °C: got %.4f min, %v; want %.4f", got.Minutes(), err, want)
	}
	p := resin(t, "polyester-laminating").TwoPart
	got, err = mixing.WorkingTime(p, si.Celsius(20), si.Ratio(0.01*1.4142135623730951))
	// ln(1.41421/1)/ln(1.5/1) = 0.854756 of the way from 40 to 27 min: 40 (27/40)^0.854756
	if want := 28.5864; err != nil || !near(got.Minutes(), want, 1e-3) {
		t.Errorf("polyester at 1.414 %%: got %.4f min, %v; want %.4f (independent computation, Python)", got.Minutes(), err, want)
	}
}

func TestNothingIsToldBeyondTheTable(t *testing.T) {
	cat := catalog.Default()
	polyester, fast := resin(t, "polyester-laminating").TwoPart, resin(t, "epoxy-fast").TwoPart
	gelcoat, _ := cat.Gelcoat("gelcoat-waxed")
	untimed := gelcoat.TwoPart
	untimed.PotLife = catalog.PotTable{}
	rows := []struct {
		sentence string
		part     catalog.TwoPart
		at       si.Temp
		dose     si.Ratio
		want     string
	}{
		{"too cold for a polyester", polyester, si.Celsius(9), si.Percent(1.5), "gives pot life from 15 to 30 °C; at 9 °C warm the resin and the hull"},
		{"too cold for an epoxy", fast, si.Celsius(12), 0, "or change to a hardener"},
		{"too warm", fast, si.Celsius(33), 0, "cool the resin"},
		{"a dose the band allows and the table does not", polyester, si.Celsius(20), si.Percent(2.3), "pot life for 1 to 2 % of catalyst, not for 2.3 %"},
		{"a dose the band forbids", polyester, si.Celsius(9), si.Percent(4), "does not replace warmth"},
		{"a table of one cell, another temperature", gelcoat.TwoPart, si.Celsius(16), si.Percent(1.8), "at 20 °C only"},
		{"a table of one cell, another dose", gelcoat.TwoPart, si.Celsius(20), si.Percent(2), "for 1.8 % only"},
		{"no table at all", untimed, si.Celsius(20), si.Percent(1.8), "gives no pot life"},
		{"temperature not given", polyester, 0, si.Percent(1.5), "measure the temperature"},
	}
	for _, row := range rows {
		got, err := mixing.WorkingTime(row.part, row.at, row.dose)
		if got != 0 || err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: got %.3g min, %v; want an error with %q", row.sentence, got.Minutes(), err, row.want)
		}
	}
}

func TestAnswersStayWithinTheTable(t *testing.T) {
	all := tables()
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(all).Draw(t, "part")
		at := si.Celsius(rapid.Float64Range(-20, 60).Draw(t, "°C"))
		dose := si.Percent(rapid.Float64Range(0, 5).Draw(t, "%"))
		got, err := mixing.WorkingTime(p, at, dose)
		from, to := p.PotLife.Cells[0], p.PotLife.Cells[0]
		shortest, longest := from.Time, from.Time
		for _, c := range p.PotLife.Cells {
			from.At, to.At = min(from.At, c.At), max(to.At, c.At)
			shortest, longest = min(shortest, c.Time), max(longest, c.Time)
		}
		outside := at < from.At-1e-6 || at > to.At+1e-6
		if outside && err == nil {
			t.Fatalf("%s answered %v at %v, outside its table", p.Class, got, at)
		}
		if err == nil && (got < shortest*(1-1e-9) || got > longest*(1+1e-9)) {
			t.Fatalf("%s at %v: %v lies outside its table's own times", p.Class, at, got)
		}
	})
}

func TestWarmerOrMoreNeverLastsLonger(t *testing.T) {
	all := tables()
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(all).Draw(t, "part")
		at := func(name string) si.Temp { return si.Celsius(rapid.Float64Range(15, 30).Draw(t, name)) }
		dose := func(name string) si.Ratio { return si.Percent(rapid.Float64Range(1, 2).Draw(t, name)) }
		t1, t2, d1, d2 := at("t1"), at("t2"), dose("d1"), dose("d2")
		t1, t2, d1, d2 = min(t1, t2), max(t1, t2), min(d1, d2), max(d1, d2)
		long, err1 := mixing.WorkingTime(p, t1, d1)
		short, err2 := mixing.WorkingTime(p, t2, d2)
		if err1 == nil && err2 == nil && short > long*(1+1e-9) {
			t.Fatalf("%s: %v at %v, %v; but %v at %v, %v", p.Class, long, t1, d1, short, t2, d2)
		}
	})
}

// A sheet typed by a user is followed as the catalogue's own.
func TestAUsersTableIsFollowed(t *testing.T) {
	cat, err := catalog.Default().Overlay([]job.Sheet{{
		Name: "mine", Class: "epoxy-fast",
		PotLife: []job.PotLife{{At: si.Celsius(8), Time: si.Minutes(90)}, {At: si.Celsius(16), Time: si.Minutes(40)}},
	}})
	if err != nil {
		t.Fatal(err)
	}
	mine, _ := cat.Resin("mine")
	got, err := mixing.WorkingTime(mine.TwoPart, si.Celsius(12), 0)
	if err != nil || !near(got.Minutes(), 60, 1e-6) { // sqrt(90 × 40), closed form
		t.Errorf("got %.4f min, %v; want 60 min", got.Minutes(), err)
	}
}
