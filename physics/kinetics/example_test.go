package kinetics_test

import (
	"fmt"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// The rule that a pot life halves per 10 C is an activation energy.
func ExampleEnergyFor() {
	E, _ := kinetics.EnergyFor(2, si.Celsius(15), si.Celsius(25))
	fmt.Printf("%.2f kJ/mol\n", E.KJPerMol())
	fmt.Printf("at 8 C it takes %.1f times as long as at 20 C\n", kinetics.RateRatio(E, si.Celsius(20), si.Celsius(8)))
	// Output:
	// 49.51 kJ/mol
	// at 8 C it takes 2.4 times as long as at 20 C
}

// A glass/polyester composite held at 100 degrees Celsius.
func ExampleAutocatalytic_Time() {
	law := kinetics.GlassPolyester1991()
	t, _ := law.Time(si.Celsius(100), 0, 0.5)
	a, _ := law.Conversion(si.Celsius(100), 0, si.Minutes(30))
	fmt.Printf("half cured after %.3f min; %.6f after 30 min\n", t.Minutes(), a)
	// Output: half cured after 15.377 min; 0.802818 after 30 min
}

// The same composite when no heat gets out.
func ExampleAdiabatic() {
	block := kinetics.Adiabatic{Law: kinetics.GlassPolyester1991(), Heat: si.KJPerKg(77.5), C: 1260, Start: si.Celsius(90)}
	t, _ := block.Time(0.9)
	fmt.Printf("0.9 after %.3f min; ends at %.3f C\n", t.Minutes(), block.Temp(1).Celsius())
	// Output: 0.9 after 23.271 min; ends at 151.508 C
}

// An invented room-temperature epoxy on a hull through a mild day and a cold night.
func ExampleCure() {
	k2, _ := kinetics.FromReference(3e-4, si.Celsius(25), si.KJPerMol(55))
	resin := kinetics.Kamal{K1: k2.Times(0.1), K2: k2, M: 1, N: 2}
	tg := kinetics.DiBenedetto{Tg0: si.Celsius(-35), TgInf: si.Celsius(90), Lambda: 0.4}
	law := kinetics.Braked{Law: resin, Brake: kinetics.GlassBrake{DiBenedetto: tg, Centre: 10, Width: 3}}
	night, _ := kinetics.NewHistory(
		kinetics.Knot{Time: 0, Temp: si.Celsius(18)},
		kinetics.Knot{Time: si.Hours(14), Temp: si.Celsius(6)},
		kinetics.Knot{Time: si.Hours(20), Temp: si.Celsius(14)})
	gel, reached, _ := kinetics.Reach(law, night, 0, 0.58, si.Days(2))
	a, _ := kinetics.Cure(law, night, 0, []si.Time{si.Days(1), si.Days(7)})
	fmt.Printf("gel after %.1f h (%v)\n", gel.Hours(), reached)
	fmt.Printf("a day: %.2f cured, Tg %.0f C; a week: %.2f, Tg %.0f C\n", a[0], tg.Tg(a[0]).Celsius(), a[1], tg.Tg(a[1]).Celsius())
	// Output:
	// gel after 7.1 h (true)
	// a day: 0.73 cured, Tg 30 C; a week: 0.79, Tg 40 C
}

// An invented polyester: the inhibitor must go first, so that nothing shows until it does.
func ExampleRadical() {
	k, _ := kinetics.FromReference(1.2e-3, si.Celsius(25), si.KJPerMol(48))
	law := kinetics.Radical{
		Induction: kinetics.Induction{Ref: si.Minutes(9), E: si.KJPerMol(58), Q: 0.9},
		Peroxide:  si.Percent(1.5), K: k, P: 0.9, M: 0.6, N: 1.4, Seed: 1e-4,
	}
	warm, _ := kinetics.Constant(si.Celsius(18))
	states, _ := kinetics.Cure(law, warm, kinetics.Fresh(law), []si.Time{si.Minutes(10), si.Minutes(40)})
	for _, s := range states {
		fmt.Printf("state %.2f: degree of cure %.2f\n", s, kinetics.Degree(s))
	}
	gel, _ := kinetics.Isothermal(law, si.Celsius(18), kinetics.Fresh(law), 0.03)
	fmt.Printf("gel after %.0f min\n", gel.Minutes())
	// Output:
	// state -0.51: degree of cure 0.00
	// state 0.05: degree of cure 0.05
	// gel after 37 min
}

func ExampleGelConversion() {
	a, _ := kinetics.GelConversion(4, 2, 1)
	fmt.Printf("%.4f\n", a)
	_, err := kinetics.GelConversion(4, 2, 0.3)
	fmt.Println(err)
	// Output:
	// 0.5774
	// f 4, g 2, ratio 0.3: the mix never gels, for it would need a conversion of 1.054
}

func ExampleDiBenedetto() {
	tg := kinetics.DiBenedetto{Tg0: si.Celsius(-35), TgInf: si.Celsius(90), Lambda: 0.4}
	stop, _, _ := tg.Vitrification(si.Celsius(20), 10)
	fmt.Printf("Tg %.2f C at 0.8; at 20 C it vitrifies at %.4f\n", tg.Tg(0.8).Celsius(), stop)
	// Output: Tg 41.92 C at 0.8; at 20 C it vitrifies at 0.7303
}

func ExamplePlateau() {
	k2, _ := kinetics.FromReference(3e-4, si.Celsius(25), si.KJPerMol(55))
	tg := kinetics.DiBenedetto{Tg0: si.Celsius(-35), TgInf: si.Celsius(90), Lambda: 0.4}
	law := kinetics.Braked{Law: kinetics.Kamal{K1: k2.Times(0.1), K2: k2, M: 1, N: 2},
		Brake: kinetics.GlassBrake{DiBenedetto: tg, Centre: 10, Width: 3}}
	for _, T := range []float64{10, 20, 40, 60} {
		a, _ := kinetics.Plateau(law, si.Celsius(T), kinetics.Stalled)
		fmt.Printf("at %.0f C it stops at %.2f\n", T, a)
	}
	// Output:
	// at 10 C it stops at 0.77
	// at 20 C it stops at 0.83
	// at 40 C it stops at 0.92
	// at 60 C it stops at 0.98
}

func ExampleEquivalentAge() {
	h, _ := kinetics.Steps(
		kinetics.Stage{For: si.Hours(2), Temp: si.Celsius(10)},
		kinetics.Stage{For: si.Hours(3), Temp: si.Celsius(20)},
		kinetics.Stage{For: si.Hours(2), Temp: si.Celsius(15)})
	age, _ := kinetics.EquivalentAge(si.KJPerMol(50), h, 0, si.Hours(7), si.Celsius(20))
	fmt.Printf("%.4f h at 20 C\n", age.Hours())
	// Output: 5.3702 h at 20 C
}
