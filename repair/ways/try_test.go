package ways

import (
	"fmt"
	"testing"
	"time"

	"scarfwright/repair/catalog"
	"scarfwright/repair/demo"
)

func TestTry(t *testing.T) {
	for _, j := range demo.Jobs() {
		name := j.Name
		d, err := demo.Parse(name)
		if err != nil {
			t.Fatal(err)
		}
		start := time.Now()
		r, err := Compare(d, catalog.Default(), nil)
		fmt.Println("   ", r.Recommended, r.Reason)
		for _, m := range r.Measurements {
			fmt.Printf("    M %+v\n", m)
		}
		fmt.Println("==", name, time.Since(start), err, r.Pressure.KPa(), r.Original.Deflection.MM(), r.Original.Used)
		for _, w := range r.Ways {
			fmt.Printf("%-44s %-28s fits %v %s  S %.2f P %.3f EI %.2f gr %.3f m2 h %.1f d %d ¤%.0f add %.0f g  %s\n", w.Name, w.List, w.Fits, w.Left, w.Strength, w.Pressure, w.Bending, w.Ground.M2(), w.Hours.Likely, w.Days, w.Price, w.Added.Grams(), w.Why)
			for _, x := range w.Cases {
				fmt.Printf("      %-30s S %.3f hand %.3f  o %.3f r %.3f ply %.3f edge %.3f bond %.3f core %.3f %s %s\n", x.Load, x.Strength, x.Hand, x.Original, x.Repaired, x.Ply, x.Edge, x.Bond, x.Core, x.Mode, x.Where)
			}
		}
	}
}
