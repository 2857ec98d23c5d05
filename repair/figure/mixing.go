package figure

import (
	"fmt"

	"scarfwright/physics/si"
	"scarfwright/repair/finish"
	"scarfwright/repair/mixing"
	"scarfwright/repair/working"
)

// Bounds of a plausible liquid or paste, to catch a density typed in another unit.
var liquid = between(200, 4000, "between 0.2 and 4 g/ml")

// Band a peroxide dose lies in whatever the sheet; the sheet's own is narrower.
const doseLow, doseHigh = 0.01, 0.03

func mixingFigures() []Calculation {
	return []Calculation{
		{
			Name: "dose", Title: "catalyst by mass and volume for an amount of resin", Inputs: []Input{
				{Key: "resin", Doc: "mass of resin", Unit: "350 g"},
				{Key: "percent", Doc: "catalyst by mass of resin", Unit: "1.8%", Range: "inside the sheet's band"},
				{Key: "catalyst-density", Doc: "density of the catalyst as sold", Unit: "1.13g/ml", Default: "1.13 g/ml"},
			}, work: dose,
		},
		{
			Name: "mass-ratio", Title: "mix ratio by mass from a ratio by volume", Inputs: []Input{
				{Key: "volume", Doc: "parts of resin to hardener by volume", Unit: "2:1"},
				{Key: "resin-density", Doc: "density of the resin", Unit: "1.15 g/ml"},
				{Key: "hardener-density", Doc: "density of the hardener", Unit: "0.98 g/ml"},
			}, work: massRatio,
		},
		{
			Name: "smallest-batch", Title: "least resin for which a scale can weigh the catalyst well enough", Inputs: []Input{
				{Key: "scale", Doc: "smallest step of the scale", Unit: "0.1 g"},
				{Key: "percent", Doc: "catalyst (or hardener) by mass of resin", Unit: "2%"},
				{Key: "within", Doc: "error allowed in the catalyst, relative", Unit: "10%", Default: "10%"},
			}, work: smallestBatch,
		},
		{
			Name: "gelcoat-mass", Title: "gelcoat for an area and a film", Inputs: []Input{
				{Key: "area", Doc: "area to be coated", Unit: "0.2 m2"},
				{Key: "film", Doc: "wet film, all coats together", Unit: "0.5 mm"},
				{Key: "density", Doc: "density of the gelcoat", Unit: "1.20 g/ml", Default: "1.20 g/ml"},
				{Key: "loss", Doc: "loss on brush, roller or gun, on top", Unit: "15%", Default: "0%"},
			}, work: gelcoatMass,
		},
	}
}

func dose(r *reader) Answer {
	m := quantity[si.Mass](r, "resin", positive)
	p := quantity[si.Ratio](r, "percent", bounds{0, 0.10, true, "more than 0 and at most 10 %: no peroxide is dosed higher"})
	rho := quantity[si.Density](r, "catalyst-density", liquid)
	if !r.ok() {
		return Answer{}
	}
	mass, volume := mixing.Dose(m, p, rho)
	warn := ""
	if p < doseLow || p > doseHigh {
		warn = fmt.Sprintf("%.3g %% is outside any band a peroxide sheet is known to give (about 1 to 3 %%): too little never sets through, too much leaves it weak. Cold is met with heat, never with more catalyst.", p.Percent())
	}
	return Answer{
		Results: Results{{Key: "catalyst_g", Value: mass.Grams()}, {Key: "catalyst_ml", Value: volume.ML()}},
		Working: []working.Line{
			{Name: "catalyst, mass", Formula: "mc = m p", Numbers: fmt.Sprintf("%s g × %s %%", num(m.Grams()), num(p.Percent())), Value: mass.Grams(), Unit: "g", Source: "arithmetic", Warning: warn},
			{Name: "catalyst, volume", Formula: "V = mc/ρ", Numbers: fmt.Sprintf("%s g / %s g/ml", num(mass.Grams()), num(rho.GramsPerML())), Value: volume.ML(), Unit: "ml", Source: "arithmetic; density by the sheet of the catalyst in hand"},
		},
		Warnings: []string{"The percentage must lie inside the band of the resin's own data sheet; eye and face protection to pour peroxide."},
	}
}

func massRatio(r *reader) Answer {
	va, vb := r.parts("volume")
	ra, rb := quantity[si.Density](r, "resin-density", liquid), quantity[si.Density](r, "hardener-density", liquid)
	if !r.ok() {
		return Answer{}
	}
	per := mixing.MassRatio(va, vb, ra, rb)
	return Answer{
		Results: Results{{Key: "hardener_g_per_100g", Value: per}, {Key: "hardener_share_percent", Value: 100 * per / (100 + per)}},
		Working: []working.Line{{
			Name: "hardener to 100 of resin, by mass", Formula: "100 vB ρB/(vA ρA)", Numbers: fmt.Sprintf("100 × %s × %s/(%s × %s)", num(vb), num(rb.GramsPerML()), num(va), num(ra.GramsPerML())),
			Value: per, Unit: "g", Source: "arithmetic; densities by the sheets",
		}},
		Warnings: []string{"Where the sheet gives a ratio by mass, use that one."},
	}
}

func smallestBatch(r *reader) Answer {
	d, p, within := quantity[si.Mass](r, "scale", positive), quantity[si.Ratio](r, "percent", positive), quantity[si.Ratio](r, "within", positive)
	if r.ok() && within >= 1 {
		r.fail("within", "must be more than 0 and less than 100 %.", "")
	}
	if !r.ok() {
		return Answer{}
	}
	m := mixing.SmallestBatch(d, p, within)
	return Answer{
		Results: Results{{Key: "resin_g", Value: m.Grams()}, {Key: "catalyst_g", Value: m.Grams() * float64(p)}},
		Working: []working.Line{{
			Name: "smallest batch", Formula: "m = d/(p e)", Numbers: fmt.Sprintf("%s g/(%s × %s)", num(d.Grams()), num(float64(p)), num(float64(within))),
			Value: m.Grams(), Unit: "g", Source: "arithmetic: the weighing error is taken as one step of the scale", Holds: "the resin's own weighing error is not counted",
		}},
	}
}

func gelcoatMass(r *reader) Answer {
	a, film, rho := quantity[si.Area](r, "area", positive), quantity[si.Length](r, "film", positive), quantity[si.Density](r, "density", liquid)
	loss := quantity[si.Ratio](r, "loss", between(0, 2, "between 0 and 200 %"))
	if !r.ok() {
		return Answer{}
	}
	m := finish.Gelcoat(a, film, rho, loss)
	warn := ""
	if film < si.MM(0.3) || film > si.MM(0.76) {
		warn = "a film under 0.3 mm under-cures and one over about 0.6 to 0.75 mm cracks, by gelcoat guides (from memory)"
	}
	return Answer{
		Results: Results{{Key: "gelcoat_g", Value: m.Grams()}, {Key: "cover_m2_per_kg", Value: a.M2() / m.Kg()}, {Key: "weight_g_per_m2", Value: m.Grams() / a.M2()}},
		Working: []working.Line{{
			Name: "gelcoat", Formula: "m = A d ρ (1 + loss)", Numbers: fmt.Sprintf("%s m² × %s mm × %s g/ml × %s", num(a.M2()), num(film.MM()), num(rho.GramsPerML()), num(1+float64(loss))),
			Value: m.Grams(), Unit: "g", Source: working.Geometry, Warning: warn,
		}},
	}
}
