package proof

import (
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/finish"
)

func tapers() []Check {
	g := group{name: "taper round a round hole, r 50, t 6 mm, 12:1", source: "frustum of a cone", provenance: ClosedForm, rel: 1e-5}
	g.figures("taper", in{"radius": "50 mm", "thickness": "6 mm", "ratio": "12"},
		want{"outer radius", "outer_radius_mm", 122, "mm"},
		want{"bond area", "bond_mm2", 39040.3, "mm²"},
		want{"ground out with the hole", "ground_with_hole_ml", 147.554, "ml"})
	return concat(g)
}

func mixings() []Check {
	catalyst := group{name: "catalyst by volume", source: "arithmetic", provenance: Arithmetic, abs: 0.01}
	catalyst.figures("dose", in{"resin": "350 g", "percent": "1.8%", "catalyst-density": "1.13g/ml"},
		want{"350 g of gelcoat at 1.8 %, by mass", "catalyst_g", 6.30, "g"}, want{"by volume", "catalyst_ml", 5.575, "ml"})
	ratio := group{name: "mix ratio by mass", source: "arithmetic", provenance: Arithmetic, abs: 0.01}
	ratio.figures("mass-ratio", in{"volume": "2:1", "resin-density": "1.15 g/ml", "hardener-density": "0.98 g/ml"}, want{"2:1 by volume, 1.15 and 0.98 g/ml", "hardener_g_per_100g", 42.61, "g"})
	ply := group{name: "resin of a mat", source: "first principles, 2.54 and 1.20 g/cm³", provenance: Computed, rel: 1e-3}
	ply.figures("ply-thickness", in{"areal": "450 g/m2", "glass": "30 %", "fibre-density": "2.54 g/cm3"},
		want{"mat 450 g/m² at glass 0.30", "resin_g_per_m2", 1050, "g/m²"}, want{"its thickness", "thickness_mm", 1.052, "mm"})
	scale := group{name: "smallest batch for a scale", source: "arithmetic", provenance: Arithmetic, abs: 1e-9}
	scale.figures("smallest-batch", in{"scale": "0.1 g", "percent": "2 %", "within": "10 %"}, want{"scale of 0.1 g, 2 %, within 10 %", "resin_g", 50, "g"})
	quart := group{name: "catalyst for a US quart", source: "a table of cc a quart, quoted in a builders' forum; recomputed", provenance: Table, rel: 0.03}
	// 1 US qt is 946.353 ml (NIST SP 811); at 1.10 g/ml it weighs 1040.99 g.
	quart.figures("dose", in{"resin": "1040.99 g", "percent": "1 %", "catalyst-density": "1.13 g/ml"}, want{"1 qt at 1.10 g/ml, 1 %: printed 9 cc", "catalyst_ml", 9, "ml"})
	computed := group{name: "catalyst for a US quart", source: "arithmetic", provenance: Arithmetic, abs: 0.01}
	computed.figures("dose", in{"resin": "1040.99 g", "percent": "1 %", "catalyst-density": "1.13 g/ml"}, want{"1 qt at 1.10 g/ml, 1 %", "catalyst_ml", 9.21, "ml"})
	film := group{name: "gelcoat film", source: "a supplier's hand lay-up page: 1 kg covers 1.6 m²; at 1.2 kg/l", provenance: Table, rel: 0.005}
	film.add("film of 1 kg over 1.6 m²", 0.521, finish.Film(si.Kg(1), si.M2(1.6), si.GramsPerML(1.2)).MM(), "mm")
	return concat(catalyst, ratio, ply, scale, quart, computed, film)
}

// practice checks the catalogue's entries against what the trade does and no
// document states: it proves that the entry says so, not that the trade is right.
func practice() []Check {
	cat := catalog.Default()
	paste := group{name: "gelcoat repair paste, catalyst for 100 g", source: "common practice, no source", provenance: Practice, abs: 1e-9}
	g, err := cat.Gelcoat("gelcoat-paste")
	paste.add("least", 2, 100*float64(g.Dose.Low), "g").add("most", 3, 100*float64(g.Dose.High), "g")
	if err != nil {
		paste.rows[0].Err = err.Error()
	}
	filler := group{name: "light two-part epoxy filler", source: "common practice, no source", provenance: Practice, abs: 1e-9}
	f, err := cat.Filler("epoxy-filler-light")
	filler.add("parts of hardener to 100 of resin, by volume", 100, f.PerHundredVol.Typical, "")
	if err != nil {
		filler.rows[0].Err = err.Error()
	}
	return concat(paste, filler)
}
