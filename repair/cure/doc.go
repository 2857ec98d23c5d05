// Package cure turns what is printed on a tin into a model of how that material
// sets, with its uncertainty, and predicts with it: gel and peak in a cup, gel and
// sandable of a film, what a week of weather reaches.
//
// The model, for an epoxy or its putty, and for a polyester or vinyl ester:
//
//	da/dt = k2 (kap + a)(1-a)^2 brake                      kinetics.Kamal, m 1, n 2
//	ds/dt = inhibitor first, then k (s+seed)^m (1-s)^(2-m) kinetics.Radical
//	c dT/dt = H da/dt - (UA/m)(T - air)                    a cup of one temperature
//
// with k = exp[ln k(25 °C) - E/R (1/T - 1/298.15)]. A tin gives three or four
// numbers and the model has six to ten parameters, so each has a prior (prior.go),
// and the fit is the maximum of
//
//	-1/2 sum over parameters [(p - prior)/sd]^2 - 1/2 sum over data [ln(model/sheet)/sigma]^2
//
// by Levenberg-Marquardt from several fixed starts. What is uncertain afterwards is
// a normal law about it (Laplace), and a prediction is its 10 to 90 % range over
// fixed draws from that law. Report says for each parameter how much of its prior
// is left: 1.0 means the sheet said nothing about it. Told says so in a sentence.
//
// Limits. A sheet fixes speed and sandable well, and hardly E, kap or U unless it
// gives two temperatures; H only from a measured peak. Past its temperatures every
// prediction says so (Extrapolated); outside its band of catalyst there is none.
// A cup has one temperature here: the middle of a deep one is hotter. A polyester
// pot shortens with mass less than a real one, since no heat comes before gel, and
// its film knows neither styrene loss nor air: a sheet's own waiting time before
// sanding stands beside what is computed here, and the later counts. Through-cured is
// 95 % of the degree that the sheet's own time reaches, and as old as that time: at
// room temperature that is a glass at its own temperature, not full conversion.
//
// Sources: KamalSourour1973, DiBenedetto1987 (physics/kinetics). The priors are
// from memory, each beside its number.
//
// One call:
//
//	model, err := cure.Fit(cure.FromCatalogue(filler.TwoPart, cure.Putty))
//	pot, err := model.Pot(cure.Batch{Mass: si.Grams(100), Vessel: heat.StraightCup(si.MM(75)), Air: si.Celsius(22), Dose: 0})
package cure
