package cure_test

import (
	"strings"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/cure"
)

// What repairers do (common practice, no source), as checks of the fitted entries.
func TestCatalogueAgainstPractice(t *testing.T) {
	c := catalog.Default()
	film := func(m cure.Model, celsius float64) si.Time {
		p := must[cure.Prediction[si.Time]](t)(m.Film(si.Celsius(celsius), m.Sheet().DoseRef, cure.ToSandable))
		return p.Likely
	}
	for _, class := range []string{"epoxy-fast", "epoxy-slow"} {
		r := must[catalog.Resin](t)(c.Resin(class))
		for _, celsius := range []float64{20, 22} {
			if got := film(fitted(t, cure.FromCatalogue(r.TwoPart, cure.Epoxy)), celsius); got >= si.Hours(24) {
				t.Errorf("%s at %g °C: sandable after %.1f h; a laminate left for 24 h is sanded (common practice, no source)", class, celsius, got.Hours())
			}
		}
	}
	t.Run("light filler", func(t *testing.T) {
		f := must[catalog.Filler](t)(c.Filler("epoxy-filler-light"))
		if !stated(f.Limits.Sandable.Source) {
			t.Fatal("the catalogue no longer gives its sandable time by common practice")
		}
		for _, celsius := range []float64{20, 21, 22} {
			got := film(fitted(t, cure.FromCatalogue(f.TwoPart, cure.Putty)), celsius).Hours()
			t.Logf("%g °C: %.2f h", celsius, got)
			if got < 0.95*4 || got > 1.05*5 {
				t.Errorf("light filler at %g °C: sandable after %.2f h, want 4 to 5 within 5 %% (common practice, no source)", celsius, got)
			}
		}
	})
	t.Run("gelcoat paste", func(t *testing.T) {
		g := must[catalog.Gelcoat](t)(c.Gelcoat("gelcoat-paste"))
		if !g.PotLife.Given() || !stated(g.Limits.Sandable.Source) {
			t.Fatal("the catalogue no longer gives it a pot life and a time to sanding by common practice")
		}
		m := fitted(t, cure.FromCatalogue(g.TwoPart, cure.Polyester))
		near(t, "workable at 20 °C, 2.5 % [min] (common practice, no source)", must[cure.PotResult](t)(m.Pot(cure.Batch{Mass: si.Grams(100), Vessel: cup, Air: si.Celsius(20), Dose: 0.025})).Working.Likely.Minutes(), 5, 0.15)
		near(t, "ready to sand [min] (common practice, no source)", film(m, 20).Minutes(), 60, 0.15)
		for _, dose := range []si.Ratio{0.02, 0.03} {
			got := must[cure.PotResult](t)(m.Pot(cure.Batch{Mass: si.Grams(50), Vessel: cup, Air: si.Celsius(21), Dose: dose})).Working.Likely.Minutes()
			if got < 3.5 || got > 7 {
				t.Errorf("paste at %g %%: workable for %.1f min, want about 5 (common practice, no source)", dose.Percent(), got)
			}
		}
	})
}

func stated(source string) bool { return strings.HasPrefix(source, "common practice") }

// Every entry with a pot-life table fits it: no cell off by more than twice what a
// sheet is believed to (our own rule; ln t within 0.2).
func TestEveryEntryFits(t *testing.T) {
	c := catalog.Default()
	type entry struct {
		part catalog.TwoPart
		kind cure.Kind
	}
	var all []entry
	for _, r := range c.Resins {
		kind := cure.Polyester
		if r.Kind == catalog.Epoxy {
			kind = cure.Epoxy
		}
		all = append(all, entry{r.TwoPart, kind})
	}
	for _, f := range c.Fillers {
		all = append(all, entry{f.TwoPart, cure.Putty})
	}
	for _, g := range c.Gelcoats {
		all = append(all, entry{g.TwoPart, cure.Polyester})
	}
	for _, b := range c.Barriers {
		all = append(all, entry{b.TwoPart, cure.Epoxy})
	}
	for _, e := range all {
		if !e.part.PotLife.Given() {
			continue
		}
		m := fitted(t, cure.FromCatalogue(e.part, e.kind))
		if n := len(m.Misfit()); n < len(e.part.PotLife.Cells) {
			t.Errorf("%s: %d data of %d cells", e.part.Class, n, len(e.part.PotLife.Cells))
		}
		for _, d := range m.Misfit() {
			if d.Sigmas < -2 || d.Sigmas > 2 {
				t.Errorf("%s, %s: sheet %.4g s, model %.4g s, %.1f sigmas", e.part.Class, d.Name, d.Sheet, d.Model, d.Sigmas)
			}
		}
	}
}

// The words by which a sheet ends its pot life choose the criterion, and the later
// criterion gives the longer time of one cup.
func TestCriterionOfASheet(t *testing.T) {
	e := must[catalog.Resin](t)(catalog.Default().Resin("epoxy-slow")).TwoPart
	for text, want := range map[string]cure.Criterion{
		"100 g in a cup, from the start of mixing to gel": cure.Gel,
		"until the viscosity has doubled":                 cure.ViscosityDoubled,
		"100 g, from 20 to 50 °C":                         cure.PlusKelvin30,
		"rise of 25 K":                                    cure.PlusKelvin25,
	} {
		e.PotLife.Criterion = text
		if got := cure.FromCatalogue(e, cure.Epoxy).Pots[0].Criterion; got != want {
			t.Errorf("%q: got %v, want %v", text, got, want)
		}
	}
	// 100 g at 25 °C in the case of +25 K at 37.3 and gel at 43.5 min (independent
	// computation): the same cup, by what ends it.
	z := make([]float64, cure.Parameters(cure.Epoxy))
	working := func(c cure.Criterion) float64 {
		m := cure.NewTruth(cure.Sheet{Pots: []cure.Pot{{At: si.Celsius(25), Time: 1800, Criterion: c}}}, z)
		return must[cure.PotResult](t)(m.Pot(cure.Batch{Mass: si.Grams(300), Vessel: cup, Air: si.Celsius(25), Dose: 0})).Working.Likely.Minutes()
	}
	doubled, warm, hot, gel := working(cure.ViscosityDoubled), working(cure.PlusKelvin25), working(cure.PlusKelvin30), working(cure.Gel)
	if !(0 < doubled && doubled < warm && warm < hot && hot < gel) {
		t.Errorf("viscosity doubled %.1f, +25 K %.1f, +30 K %.1f, gel %.1f min: want them in this order", doubled, warm, hot, gel)
	}
}
