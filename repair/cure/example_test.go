package cure_test

import (
	"fmt"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
	"scarfwright/repair/cure"
)

// What three numbers of a tin say of another cup on another day.
func ExampleFit() {
	model, err := cure.Fit(cure.Sheet{
		Name: "putty", Kind: cure.Putty,
		Pots:     []cure.Pot{{At: si.Celsius(25), Time: si.Minutes(30)}},
		FilmGel:  []cure.Film{{At: si.Celsius(20), Time: si.Hours(2.2)}},
		Sandable: []cure.Film{{At: si.Celsius(20), Time: si.Hours(5)}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	pot, err := model.Pot(cure.Batch{Mass: si.Grams(200), Vessel: heat.StraightCup(si.MM(75)), Air: si.Celsius(22), Dose: 0})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("working time at least %.0f min (likely %.0f), runs away: %v\n", pot.Working.Low.Minutes(), pot.Working.Likely.Minutes(), pot.Runaway)
	// Output: working time at least 31 min (likely 36), runs away: true
}
