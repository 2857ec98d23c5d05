package cure

import (
	"testing"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
)

func BenchmarkFit(b *testing.B) {
	c := catalog.Default()
	for _, s := range []Sheet{FromCatalogue(c.Resins[0].TwoPart, Polyester), FromCatalogue(c.Resins[2].TwoPart, Epoxy), FromCatalogue(c.Fillers[1].TwoPart, Putty)} {
		b.Run(s.Name, func(b *testing.B) {
			for b.Loop() {
				if _, err := Fit(s); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkPredict(b *testing.B) {
	c := catalog.Default()
	h, err := kinetics.NewHistory(kinetics.Knot{Time: 0, Temp: si.Celsius(18)}, kinetics.Knot{Time: si.Hours(12), Temp: si.Celsius(8)}, kinetics.Knot{Time: si.Hours(24), Temp: si.Celsius(18)})
	if err != nil {
		b.Fatal(err)
	}
	for _, s := range []Sheet{FromCatalogue(c.Resins[0].TwoPart, Polyester), FromCatalogue(c.Resins[2].TwoPart, Epoxy)} {
		m, err := Fit(s)
		if err != nil {
			b.Fatal(err)
		}
		dose := s.DoseRef
		for name, f := range map[string]func() error{
			"pot": func() error {
				_, err := m.Pot(Batch{Mass: si.Grams(200), Vessel: heat.StraightCup(si.MM(75)), Air: si.Celsius(20), Dose: dose})
				return err
			},
			"likely": func() error {
				_, err := m.LikelyPot(Batch{Mass: si.Grams(200), Vessel: heat.StraightCup(si.MM(75)), Air: si.Celsius(20), Dose: dose})
				return err
			},
			"film":    func() error { _, err := m.Film(si.Celsius(20), dose, ToSandable); return err },
			"reaches": func() error { _, err := m.Reaches(h, dose); return err },
		} {
			b.Run(s.Name+"/"+name, func(b *testing.B) {
				for b.Loop() {
					if err := f(); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
