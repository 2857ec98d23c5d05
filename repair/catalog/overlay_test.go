package catalog_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/job"
)

func TestASheetIsANewEntryAndLeavesItsClassAlone(t *testing.T) {
	before := catalog.Default()
	after, err := before.Overlay([]job.Sheet{{
		Name: "blue tin", Class: "polyester-laminating", Read: "2026-05-04",
		Density: si.GramsPerML(1.12), DoseLow: si.Percent(1.2), DoseHigh: si.Percent(2.0),
		HullMin: si.Celsius(12),
		PotLife: []job.PotLife{
			{At: si.Celsius(25), Dose: si.Percent(2), Time: si.Minutes(12)},
			{At: si.Celsius(15), Dose: si.Percent(2), Time: si.Minutes(30)},
		},
	}})
	if err != nil {
		t.Fatal(err)
	}
	mine, err := after.Resin("blue tin")
	if err != nil {
		t.Fatal(err)
	}
	class, _ := before.Resin("polyester-laminating")
	if mine.Density.Typical != si.GramsPerML(1.12) || mine.HullMin != si.Celsius(12) || mine.Limits.HullMin.Typical != si.Celsius(12) {
		t.Errorf("the sheet's values did not arrive: %v, %v", mine.Density, mine.HullMin)
	}
	if got := mine.Dose; math.Abs(got.Typical.Percent()-1.6) > 1e-9 || got.Low != si.Percent(1.2) {
		t.Errorf("dose: got %v, want 1.6 %% between 1.2 and 2.0 %%", got)
	}
	if got, want := mine.Density.Source, "your sheet blue tin, read 2026-05-04"; got != want {
		t.Errorf("source: got %q, want %q", got, want)
	}
	if mine.Over != class.Class || mine.Sandable != class.Sandable || mine.Cured != class.Cured {
		t.Errorf("what the sheet does not state must stay the class's: %+v", mine)
	}
	if len(mine.PotLife.Cells) != 2 || mine.PotLife.Cells[0].At != si.Celsius(15) {
		t.Errorf("pot life: got %v, want the sheet's two cells in order", mine.PotLife)
	}
	again, _ := after.Resin("polyester-laminating")
	if !reflect.DeepEqual(again, class) {
		t.Error("the class itself was changed")
	}
	if _, err := before.Resin("blue tin"); err == nil {
		t.Error("the catalogue that was overlaid has the sheet in it")
	}
	if len(after.Warnings) != 0 {
		t.Errorf("unexpected warnings %q", after.Warnings)
	}
}

func TestASheetOutsideTheUsualRangeIsWarnedOf(t *testing.T) {
	cat, err := catalog.Default().Overlay([]job.Sheet{
		{Name: "odd resin", Class: "epoxy-fast", Density: si.GramsPerML(1.6)},
		{Name: "hot gelcoat", Class: "gelcoat-waxed", DoseHigh: si.Percent(3)},
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(cat.Warnings) != 2 || !strings.Contains(cat.Warnings[0], "density") || !strings.Contains(cat.Warnings[1], "dose") {
		t.Errorf("got warnings %q, want one on density and one on dose", cat.Warnings)
	}
	odd, _ := cat.Resin("odd resin")
	if odd.Density.Typical != si.GramsPerML(1.6) {
		t.Error("the stated value is kept, warned of or not")
	}
}

// A ratio by mass and one by volume belong together: when a sheet changes a
// density or the one, the other follows (closed form).
func TestRatiosFollowTheSheet(t *testing.T) {
	cat, err := catalog.Default().Overlay([]job.Sheet{
		{Name: "a", Class: "epoxy-fast", PerHundred: 40},
		{Name: "b", Class: "epoxy-filler-light", PartB: si.GramsPerML(0.76)},
	})
	if err != nil {
		t.Fatal(err)
	}
	a, _ := cat.Resin("a")
	if got, want := a.PerHundredVol.Typical, 40*1.15/0.96; math.Abs(got-want) > 1e-9 {
		t.Errorf("by volume: got 100:%.4f, want 100:%.4f", got, want)
	}
	b, _ := cat.Filler("b")
	if got, want := b.PerHundred.Typical, 100*0.76/0.95; math.Abs(got-want) > 1e-9 {
		t.Errorf("equal volumes by mass: got 100:%.4f, want 100:%.4f", got, want)
	}
}

func TestSheetsThatCannotBeUsedAreRefused(t *testing.T) {
	cell := job.PotLife{At: si.Celsius(20), Time: si.Minutes(20)}
	rows := []struct {
		sheet job.Sheet
		want  string
	}{
		{job.Sheet{Class: "epoxy-fast"}, "no name"},
		{job.Sheet{Name: "epoxy-slow", Class: "epoxy-fast"}, "taken"},
		{job.Sheet{Name: "x", Class: "epoxy-fats"}, `did you mean "epoxy-fast"`},
		{job.Sheet{Name: "x", Class: "csm450"}, "liquid"},
		{job.Sheet{Name: "x", Class: "polyester-laminating", PerHundred: 30}, "dose_low"},
		{job.Sheet{Name: "x", Class: "epoxy-fast", DoseLow: si.Percent(1)}, "hardener_per_100"},
		{job.Sheet{Name: "x", Class: "polyester-laminating", DoseLow: si.Percent(3)}, "above dose_high"},
		{job.Sheet{Name: "x", Class: "polyester-laminating", PotLife: []job.PotLife{cell}}, "which dose"},
		{job.Sheet{Name: "x", Class: "epoxy-fast", PotLife: []job.PotLife{cell, cell}}, "given twice"},
		{job.Sheet{Name: "x", Class: "epoxy-fast", HullMin: si.Celsius(35)}, "not below"},
	}
	for _, row := range rows {
		_, err := catalog.Default().Overlay([]job.Sheet{row.sheet})
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%+v: got error %v, want one with %q", row.sheet, err, row.want)
		}
	}
}

// film makes rows from °C and hours by turns.
func film(celsiusHours ...float64) []job.FilmTime {
	var out []job.FilmTime
	for i := 0; i < len(celsiusHours); i += 2 {
		out = append(out, job.FilmTime{At: si.Celsius(celsiusHours[i]), Time: si.Hours(celsiusHours[i+1])})
	}
	return out
}

func overlaid(t *testing.T, s job.Sheet) (catalog.TwoPart, []string) {
	t.Helper()
	s.Name = "mine"
	cat, err := catalog.Default().Overlay([]job.Sheet{s})
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range cat.Liquids() {
		if l.Class == "mine" {
			return l, cat.Warnings
		}
	}
	t.Fatal("the sheet is not in the catalogue")
	return catalog.TwoPart{}, nil
}

// What a sheet says of setting arrives whole, in order, with the sheet as source,
// and is listed.
func TestTheTimesOfASheet(t *testing.T) {
	x, warnings := overlaid(t, job.Sheet{
		Class: "polyester-laminating", Read: "2026-05-04", DoseLow: 0.01, DoseHigh: 0.02,
		PotLife: []job.PotLife{{At: si.Celsius(20), Dose: 0.015, Time: si.Minutes(25)}}, Criterion: "warmed by 25 K",
		FilmGel: film(25, 0.6, 20, 1), Sandable: film(20, 5), Through: film(20, 96),
		Peaks:      []job.Peak{{At: si.Celsius(25), Peak: si.Celsius(140), After: si.Minutes(30)}},
		RecoatFrom: si.Hours(1.5), RecoatTo: si.Hours(30),
	})
	if len(warnings) > 0 {
		t.Errorf("unexpected warnings %q", warnings)
	}
	if !x.OwnTimes || !x.OwnPot || x.Peak.Given() || x.PeakAfter.Given() {
		t.Errorf("own times %v, own pot life %v, peaks of the class %v, %v", x.OwnTimes, x.OwnPot, x.Peak, x.PeakAfter)
	}
	if x.RecoatFrom != si.Hours(1.5) || x.RecoatTo != si.Hours(30) || x.Sandable != si.Hours(5) {
		t.Errorf("recoat from %v to %v, sandable %v", x.RecoatFrom, x.RecoatTo, x.Sandable)
	}
	listed := map[string]string{}
	for _, f := range catalog.Facts(x) {
		listed[f.Name] = f.Text + " <- " + f.Source
	}
	const mine = " <- your sheet mine, read 2026-05-04"
	for name, want := range map[string]string{
		"pot life":      "20 °C 1.5 % 25 min (100 g in a cup, until it has warmed by 25 K)" + mine,
		"film gel":      "20 °C 1.5 % 60 min, 25 °C 1.5 % 36 min" + mine,
		"film sandable": "20 °C 1.5 % 5 h" + mine,
		"through":       "20 °C 1.5 % 4 days" + mine,
		"peaks":         "100 g at 25 °C 1.5 % to 140 °C after 30 min" + mine,
		"recoat from":   "90 min" + mine,
		"sandable":      "5 h" + mine,
	} {
		if listed[name] != want {
			t.Errorf("%s: listed as %q, want %q", name, listed[name], want)
		}
	}
}

// A sheet with a time of its own sets the class's times aside: those of another
// product. What stays: the pot life where it has none (said), the height of the
// peak where it has none, the limits.
func TestTheClassGivesWayToTheSheet(t *testing.T) {
	class, err := catalog.Default().Resin("polyester-laminating")
	if err != nil {
		t.Fatal(err)
	}
	x, _ := overlaid(t, job.Sheet{Class: class.Class, PotLife: []job.PotLife{{At: si.Celsius(25), Dose: 0.015, Time: si.Minutes(60)}}})
	if x.PeakAfter.Given() || x.Peak != class.Peak || x.Limits.Sandable != class.Limits.Sandable || x.RecoatTo != class.RecoatTo {
		t.Errorf("a pot life of its own: peak %v after %v, sandable %v, recoat to %v", x.Peak, x.PeakAfter, x.Sandable, x.RecoatTo)
	}
	x, warnings := overlaid(t, job.Sheet{Class: class.Class, Sandable: film(15, 5)})
	if !x.OwnTimes || x.OwnPot || !reflect.DeepEqual(x.PotLife, class.PotLife) || len(warnings) != 1 || !strings.Contains(warnings[0], "pot_life") {
		t.Errorf("only a time to sanding: own %v, %v, warned %q", x.OwnTimes, x.OwnPot, warnings)
	}
	// 5 h at 15 °C at 20 °C: exp(50e3/R (1/293.15 - 1/288.15)) = 0.7006 (independent computation, by hand).
	if got := x.Sandable.Hours(); math.Abs(got-3.503) > 0.01 || !strings.Contains(x.Limits.Sandable.Source, "50 kJ/mol") {
		t.Errorf("limit at 20 °C: got %.3f h from %q, want 3.50 h", got, x.Limits.Sandable.Source)
	}
	x, _ = overlaid(t, job.Sheet{Class: class.Class, RecoatTo: si.Hours(30)}) // a window times nothing
	if x.OwnTimes || x.PeakAfter != class.PeakAfter || x.RecoatFrom != class.RecoatFrom {
		t.Error("a recoat window alone must leave the class's times alone")
	}
	_, warnings = overlaid(t, job.Sheet{Class: class.Class, DoseLow: 0.01, DoseHigh: 0.02, PotLife: []job.PotLife{{At: si.Celsius(20), Dose: 0.01, Time: 3600}},
		FilmGel: []job.FilmTime{{At: si.Celsius(20), Dose: 0.03, Time: si.Hours(2)}}})
	if len(warnings) != 1 || !strings.Contains(warnings[0], "3 %, outside its own") {
		t.Errorf("a film at a dose outside the band: warned %q", warnings)
	}
	_, warnings = overlaid(t, job.Sheet{Class: "gelcoat-waxed", RecoatFrom: si.Hours(2)})
	if len(warnings) != 1 || !strings.Contains(warnings[0], "without recoat_to") {
		t.Errorf("half a window: warned %q", warnings)
	}
}

func TestTimesThatCannotBeAreRefused(t *testing.T) {
	dosed := []job.FilmTime{{At: si.Celsius(20), Dose: 0.02, Time: si.Hours(3)}}
	for _, row := range []struct {
		sheet job.Sheet
		want  string
	}{
		{job.Sheet{Class: "epoxy-fast", FilmGel: dosed}, "film_gel at 20 °C: a dose of 2 % is given"},
		{job.Sheet{Class: "epoxy-fast", Through: dosed}, "leave 'dose' out"},
		{job.Sheet{Class: "epoxy-fast", Peaks: []job.Peak{{At: si.Celsius(20), Dose: 0.01, Peak: si.Celsius(80)}}}, "peak at 20 °C: a dose"},
		{job.Sheet{Class: "epoxy-fast", Peaks: []job.Peak{{At: si.Celsius(20), Peak: si.Celsius(20)}}}, "above the 20 °C"},
		{job.Sheet{Class: "epoxy-fast", Sandable: film(20, 9, 25, 10)}, "sandable: 10 h at 25 °C is longer than 9 h at 20 °C"},
		{job.Sheet{Class: "epoxy-fast", FilmGel: film(20, 9), Sandable: film(20, 8)}, "sandable: sandable after 8 h"},
		{job.Sheet{Class: "epoxy-fast", RecoatFrom: si.Hours(9)}, "recoat_from 9 h is not before recoat_to 8 h; give both"},
		// With the dose left out filled in, a slip shows that the file alone did not.
		{job.Sheet{Class: "polyester-laminating", FilmGel: append(film(25, 4), dosed...)}, ""},
		{job.Sheet{Class: "polyester-laminating", FilmGel: append(film(15, 2), dosed...)}, "film_gel: 3 h at 20 °C and 2 % is longer than 2 h at 15 °C and 1.5 %"},
	} {
		row.sheet.Name = "x"
		_, err := catalog.Default().Overlay([]job.Sheet{row.sheet})
		if (err == nil) != (row.want == "") || err != nil && !strings.Contains(err.Error(), row.want) {
			t.Errorf("%+v: got error %v, want one with %q", row.sheet, err, row.want)
		}
	}
}
