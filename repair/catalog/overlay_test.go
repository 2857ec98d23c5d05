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
