package figure_test

import (
	"math"
	"strings"
	"testing"

	"scarfwright/repair/figure"
)

// The glass/polyester set of BogettiGillespie1991, constants second-hand, and an
// invented epoxy of the cup checks.
var (
	glassPolyester = in{"A": "3.7e22/min", "E": "167.4 kJ/mol", "m": "0.524", "n": "1.476"}
	inventedEpoxy  = in{"k2": "3e-4/s", "kappa": "0.10", "E": "55 kJ/mol"}
	slab           = in{"thickness": "25.4 mm", "k": "0.2163 W/(m K)", "rho": "1890 kg/m3", "c": "1260 J/(kg K)", "start": "25 °C"}
)

// also joins changes and, unlike with, keeps what they leave out.
func also(a, b in) in {
	out := in{}
	for _, m := range []in{a, b} {
		for k, v := range m {
			out[k] = v
		}
	}
	return out
}

func TestCureFigures(t *testing.T) {
	none := in{"A": "", "E": "", "m": "", "n": ""}
	for _, row := range []struct {
		what   string
		figure string
		change in
		key    string
		want   float64
		tol    float64
		from   string
	}{
		{"a factor per minute is a sixtieth per second", "cure-isothermal", in{"A": "6.16666666666667e20/s"}, "time_min", 15.377319, 1e-5, "arithmetic: 3.7e22/60; time by closed form"},
		{"per hour", "cure-isothermal", in{"A": "2.22e24 1/h"}, "time_min", 15.377319, 1e-5, "arithmetic: 3.7e22 × 60"},
		{"in words", "cure-isothermal", in{"A": "3.7e22 per minute"}, "time_min", 15.377319, 1e-5, "the same"},
		{"with a power", "cure-isothermal", in{"A": "3.7e22 min^-1"}, "time_min", 15.377319, 1e-5, "the same"},
		{"a decimal comma", "cure-isothermal", in{"A": "3,7e22/min"}, "time_min", 15.377319, 1e-5, "the same"},
		{"energy in J", "cure-isothermal", in{"E": "167400 J/mol"}, "time_min", 15.377319, 1e-5, "the same"},
		{"degree in per cent", "cure-isothermal", in{"to": "50 %"}, "time_min", 15.377319, 1e-5, "the same"},
		{"first order", "cure-isothermal", in{"model": "nth", "m": "", "n": "1", "A": "1/s", "E": "6.4283269 kJ/mol", "temperature": "500 °C"}, "time_s", math.Ln2 * math.E, 1e-6, "closed form: ln 2/k; here E = RT, k = 1/e per second"},
		{"a resin of two constants is its reference form", "cure-isothermal", also(none, in{"model": "kamal", "k2": "3e-4/s", "kappa": "0.1", "E": "55 kJ/mol", "temperature": "25 °C", "to": "0.58"}), "time_s", 11855.29, 0.01, "independent computation: quadrature, scipy"},
		{"seed at 0.5 takes no first half", "cure-isothermal", in{"seed": "0.5", "to": "0.9"}, "time_min", 43.762 - 15.377, 0.001, "closed form: 43.762 to 0.9 less 15.377 to 0.5"},
		{"gel by film is gel by law", "film-gel", nil, "gel_s", 11855.29, 0.01, "closed form"},
		{"the law's own reference", "film-gel", in{"reference": "20 °C", "temperature": "20 °C"}, "gel_s", 11855.29, 0.01, "closed form: only T - Tref counts where they are one"},
		{"a cup that loses nothing is adiabatic", "cup", in{"U": "0 W/(m2 K)"}, "gel_min", 33.901, 0.004, "independent computation: quadrature, scipy"},
		{"a cup that is held is a film", "cup", in{"U": "10000 W/(m2 K)", "mass": "1 g"}, "gel_min", 11855.29 / 60, 0.1, "closed form"},
		{"air held at the faces by a film of air", "cure-slab", in{"faces": "", "h": "10000 W/(m2 K)", "air": "25C to 90C at 2.5K/min, hold 60 min, to 130C at 2.5K/min"}, "centre_peak_c", 135.58, 1, "limit: the face follows the air"},
		{"a ramp by its time", "cure-slab", in{"faces": "25C to 90C in 26 min, hold 1 h, to 130C in 16 min"}, "centre_peak_c", 135.577, 0.01, "independent computation: scipy"},
		{"stages with semicolons and decimal commas", "cure-slab", in{"faces": "25C to 90C at 2,5K/min; hold 60 min then to 130C at 2,5K/min"}, "centre_peak_c", 135.577, 0.01, "independent computation: scipy"},
		{"the grid in the answer", "cure-slab", in{"nodes": "51"}, "nodes_count", 51, 0, "as asked"},
		{"the other way", "glass-transition", in{"cure": "", "Tg": "30 °C"}, "cure_fraction", 0.7303, 1e-4, "independent computation"},
		{"fresh", "glass-transition", in{"cure": "0"}, "tg_c", -35, 1e-9, "identity"},
		{"through", "glass-transition", in{"cure": "100 %"}, "tg_c", 90, 1e-9, "identity"},
		{"clock time at the reference", "equivalent-age", in{"history": "7h@20C"}, "equivalent_h", 7, 1e-9, "identity"},
		{"a slope lies between its ends", "equivalent-age", in{"history": "1h@10C to 30C"}, "mean_factor_ratio", 1.0746539, 1e-6, "independent computation: Simpson's rule on 2000 parts, Python"},
		{"the reference itself", "catalyst-gel-time", in{"percent": "2 %", "temperature": "25 °C"}, "gel_min", 15, 1e-9, "identity"},
		{"another reference", "catalyst-gel-time", in{"reference": "18 °C", "reference-percent": "1.2 %"}, "gel_min", 15, 1e-9, "identity"},
	} {
		a, err := compute(row.figure, with(good[row.figure], row.change))
		if err != nil {
			t.Errorf("%s: %v", row.what, err)
			continue
		}
		if got, ok := a.Results.Get(row.key); !ok || !(math.Abs(got-row.want) <= row.tol) {
			t.Errorf("%s: %s is %.8g (there: %v), want %.8g within %g (%s)", row.what, row.key, got, ok, row.want, row.tol, row.from)
		}
	}
}

// Every material that is listed is timed, or says that its entry times nothing.
func TestMaterialsOfTheCatalogue(t *testing.T) {
	c, err := figure.Find("pot-life")
	if err != nil {
		t.Fatal(err)
	}
	computed := 0
	for _, material := range c.Inputs[0].Words {
		for _, name := range []string{"pot-life", "film-gel"} {
			given := in{"material": material, "mass": "100 g", "temperature": "20 °C"}
			if name == "film-gel" {
				delete(given, "mass")
			}
			a, err := compute(name, given)
			if err != nil {
				if !strings.Contains(err.Error(), "times nothing") {
					t.Errorf("%s of %s: %v", name, material, err)
				}
				continue
			}
			computed++
			low, _ := a.Results.Get("gel_low_min")
			likely, _ := a.Results.Get("gel_min")
			high, _ := a.Results.Get("gel_high_min")
			if !(0 < low && low <= likely && likely <= high) {
				t.Errorf("%s of %s: gel %g, %g, %g min", name, material, low, likely, high)
			}
		}
	}
	if computed < 10 {
		t.Errorf("only %d could be computed", computed)
	}
}

// A bigger batch and a warmer shed never give more time.
func TestPotLifeFalls(t *testing.T) {
	at := func(mass, temperature string) float64 {
		a, err := compute("pot-life", in{"material": "epoxy-slow", "mass": mass, "temperature": temperature})
		if err != nil {
			t.Fatal(err)
		}
		got, _ := a.Results.Get("working_min")
		return got
	}
	small, big, warm := at("50 g", "22 °C"), at("500 g", "22 °C"), at("50 g", "30 °C")
	if !(small > big && small > warm) {
		t.Errorf("50 g at 22 °C: %g min, 500 g: %g, at 30 °C: %g; want the first to be the longest", small, big, warm)
	}
	// The catalogue's own number for this invented entry is 50 min; the fit may miss it by one spread of 10 %.
	if got := at("100 g", "20 °C"); math.Abs(got-50) > 5 {
		t.Errorf("100 g at 20 °C: %g min, want the entry's 50 within 10 %%", got)
	}
}

func TestCureFiguresRefuse(t *testing.T) {
	for _, row := range []struct {
		what   string
		figure string
		change in
		says   string
	}{
		{"a bare frequency factor", "cure-isothermal", in{"A": "3.7e22"}, "A: \"3.7e22\" does not say per what time"},
		{"a frequency factor per metre", "cure-isothermal", in{"A": "3.7e22/m"}, "does not say per what time"},
		{"a rate of nothing", "film-gel", in{"k2": "0/s"}, "more than 0"},
		{"an energy for ten moles", "cure-isothermal", in{"E": "1674 kJ/mol"}, "E: must be between 1 and 500 kJ/mol"},
		{"a model's own parameter with another model", "cure-isothermal", in{"kappa": "0.1"}, "kappa: has no part in this"},
		{"an exponent that a model doesn't have", "cure-isothermal", in{"model": "nth"}, "m: has no part in this"},
		{"two constants of three", "cure-isothermal", also(in{"A": "", "E": "", "m": "", "n": ""}, in{"model": "two-regime", "A1": "2e9/min", "E1": "80 kJ/mol"}), "A2: is needed by the model two-regime"},
		{"a degree of all", "cure-isothermal", in{"to": "100 %"}, "less than 100 %"},
		{"a degree behind the start", "cure-isothermal", in{"seed": "0.6"}, "to: must be more than the degree at the start"},
		{"a law that never starts", "cure-isothermal", in{"m": "1"}, "seed: the law never leaves a degree of 0"},
		{"both ways at once", "glass-transition", in{"Tg": "30 °C"}, "Tg: and cure are both given"},
		{"a glass transition beyond the last", "glass-transition", in{"cure": "", "Tg": "95 °C"}, "Tg: "},
		{"neither way", "glass-transition", in{"cure": ""}, "cure: is needed"},
		{"a mix that never gels", "gel-conversion", in{"r": "0.2"}, "r: "},
		{"an even grid", "cure-slab", in{"nodes": "100"}, "nodes: must be an odd number"},
		{"a heat in another unit's size", "cure-slab", in{"H": "77.5 J/kg"}, "between 1 and 3000 kJ/kg"},
		{"faces and air", "cure-slab", in{"air": "20 °C"}, "air: has no part in this"},
		{"a film and no air", "cure-slab", in{"h": "8 W/(m2 K)"}, "air: is needed where h is given"},
		{"a programme of words", "cure-slab", in{"faces": "warm it up"}, "faces: "},
		{"a hold before a start", "cure-slab", in{"faces": "hold 60 min"}, "faces: "},
		{"a ramp that starts elsewhere", "cure-slab", in{"faces": "25C to 90C in 20 min, 80C to 120C in 20 min"}, "can't be read"},
		{"a ramp without end", "cure-slab", in{"faces": "25C to 90C at 0K/min"}, "more than 0"},
		{"a year", "heat-slab", in{"time": "365 days"}, "at most 100 days"},
		{"a history without times", "equivalent-age", in{"history": "10C, 20C"}, "history: \"10C\""},
		{"a dose of half", "catalyst-gel-time", in{"percent": "50 %"}, "between 0.1 and 10 %"},
		{"a dose outside the entry's band", "catalyst-gel-time", in{"reference-time": "", "material": "gelcoat-waxed", "percent": "5 %"}, "cold is met with heat"},
		{"catalyst for an epoxy", "pot-life", in{"percent": "2 %"}, "percent: has no part in this"},
		{"an epoxy where peroxide is meant", "catalyst-gel-time", in{"material": "epoxy-slow"}, "is not one of"},
		{"a material and its parameters", "film-gel", in{"material": "epoxy-slow"}, "has no part in this"},
		{"a resin that never sets", "cup", in{"k2": "1e-30/s"}, "k2: with this E"},
	} {
		_, err := compute(row.figure, with(good[row.figure], row.change))
		if err == nil || !strings.Contains(err.Error(), row.says) || strings.Contains(err.Error(), "%!") {
			t.Errorf("%s: got %v, want %q", row.what, err, row.says)
		}
	}
}

func TestCureFiguresWarn(t *testing.T) {
	for _, row := range []struct {
		figure      string
		change      in
		says        string
		alsoWithout bool
	}{
		{"cure-slab", in{"faces": "25C to 120C in 38 min", "nodes": "21"}, "grid of 21 nodes is too coarse", false},
		{"catalyst-gel-time", in{"percent": "0.5 %"}, "may never cure", false},
		{"catalyst-gel-time", in{"temperature": "5 °C"}, "is a guess", false},
		{"film-gel", in{"temperature": "5 °C"}, "is a guess", false},
		{"cup", nil, "can start a fire", true},
		{"pot-life", in{"temperature": "5 °C"}, "colder than the sheet's data", false},
		{"pot-life", nil, "Have it laid within", true},
		{"cup", in{"ambient": "15 °C", "mass": "70 g"}, "near the edge", false},
	} {
		a, err := compute(row.figure, with(good[row.figure], row.change))
		if err != nil {
			t.Errorf("%s %v: %v", row.figure, row.change, err)
			continue
		}
		if all := strings.Join(a.Warnings, "\n"); !strings.Contains(all, row.says) {
			t.Errorf("%s %v: got warnings %q, want %q", row.figure, row.change, all, row.says)
		}
		plain, _ := compute(row.figure, good[row.figure])
		if all := strings.Join(plain.Warnings, "\n"); !row.alsoWithout && strings.Contains(all, row.says) {
			t.Errorf("%s warns of %q without a reason", row.figure, row.says)
		}
	}
}

// A grid that is halved until it carries a colliding front says so.
func TestRefineCarriesTheFront(t *testing.T) {
	a, err := compute("cure-slab", with(good["cure-slab"], in{"faces": "25C to 120C in 38 min", "nodes": "21", "refine": "yes", "time": "60 min"}))
	if err != nil {
		t.Fatal(err)
	}
	coarse, _ := a.Results.Get("coarse_grid_count")
	nodes, _ := a.Results.Get("nodes_count")
	peak, _ := a.Results.Get("centre_peak_c")
	if coarse != 0 || nodes < 601 || math.Abs(peak-238.7) > 1 {
		t.Errorf("refined: coarse %g on %g nodes, peak %g; want 238.7 within 1 (independent computation: scipy on 801 nodes and more)", coarse, nodes, peak)
	}
}
