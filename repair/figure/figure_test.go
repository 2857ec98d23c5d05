package figure_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scarfwright/repair/figure"
)

type in = map[string]string

func compute(name string, given in) (figure.Answer, error) {
	c, err := figure.Find(name)
	if err != nil {
		return figure.Answer{}, err
	}
	return c.Compute(given)
}

func Example() {
	c, _ := figure.Find("dose")
	a, _ := c.Compute(in{"resin": "350 g", "percent": "1.8%", "catalyst-density": "1.13g/ml"})
	fmt.Println(a.Working[0])
	ml, _ := a.Results.Get("catalyst_ml")
	fmt.Printf("%.2f ml\n", ml)
	// Output:
	// catalyst, mass: mc = m p = 350.0 g × 1.800 % = 6.300 g [arithmetic]
	// 5.58 ml
}

var (
	elastic = in{"stack": "[0/90]s", "ply": "0.25 mm", "E1": "41 GPa", "E2": "10.4 GPa", "nu12": "0.28", "G12": "4.3 GPa"}
	strong  = in{"Xt": "1140 MPa", "Xc": "620 MPa", "Yt": "39 MPa", "Yc": "128 MPa", "S": "89 MPa"}
)

func with(parts ...in) in {
	out := in{}
	for _, p := range parts {
		for k, v := range p {
			if out[k] = v; v == "" {
				delete(out, k)
			}
		}
	}
	return out
}

// good holds inputs that every figure accepts, by the keys the issue asks for.
var good = map[string]in{
	"ply-thickness":     {"areal": "450 g/m2", "glass": "30 %"},
	"glass-content":     {"areal": "450 g/m2", "thickness": "1.05 mm"},
	"class-properties":  {"kind": "csm", "glass": "33 %"},
	"laminate":          elastic,
	"first-ply-failure": with(elastic, strong, in{"nx": "100 N/mm"}),
	"lamina-failure":    with(elastic, strong, in{"stack": "", "ply": "", "angle": "30 deg", "sx": "100 MPa", "sy": "0 MPa", "txy": "0 MPa"}),
	"taper":             {"radius": "50 mm", "thickness": "6 mm", "ratio": "12"},
	"dose":              {"resin": "350 g", "percent": "1.8%", "catalyst-density": "1.13g/ml"},
	"mass-ratio":        {"volume": "2:1", "resin-density": "1.15 g/ml", "hardener-density": "0.98 g/ml"},
	"smallest-batch":    {"scale": "0.1 g", "percent": "2%", "within": "10%"},
	"gelcoat-mass":      {"area": "0.2 m2", "film": "0.5 mm", "density": "1.2 g/ml", "loss": "15%"},

	"cure-isothermal":    with(glassPolyester, in{"temperature": "100 °C", "to": "0.5"}),
	"cure-adiabatic":     with(glassPolyester, in{"start": "90 °C", "to": "0.5", "H": "77.5 kJ/kg", "c": "1260 J/(kg K)"}),
	"cure-slab":          with(glassPolyester, slab, in{"H": "77.5 kJ/kg", "faces": "25C to 90C at 2.5K/min, hold 60 min, to 130C at 2.5K/min"}),
	"heat-slab":          with(slab, in{"h": "10 W/(m2 K)", "air": "90 °C", "time": "10 min"}),
	"design-pressure":    {"waterline": "8 m", "chine": "2.6 m", "mass": "3500 kg", "speed": "25 kn", "deadrise": "18 deg", "category": "B", "forward": "50 %", "short": "400 mm", "long": "900 mm"},
	"panel-thickness":    {"pressure": "40 kPa", "stress": "80 MPa", "short": "400 mm", "long": "800 mm"},
	"plate-closed-form":  {"a": "400 mm", "b": "600 mm", "thickness": "6 mm", "E": "7 GPa", "pressure": "20 kPa"},
	"sandwich-strip":     {"face-E": "11 GPa", "face": "3 mm", "core": "20 mm", "core-G": "20 MPa", "core-E": "55 MPa", "span": "400 mm", "pressure": "30 kPa"},
	"scarf-bond":         {"ratio": "12", "thickness": "6 mm", "stress": "100 MPa"},
	"scarf-ratio-needed": {"strength": "85 MPa", "bond": "7 MPa", "ratio": "12"},
	"lap-shear":          {"E1": "12 GPa", "t1": "5 mm", "E2": "12 GPa", "t2": "5 mm", "G": "1000 MPa", "bond": "0.5 mm", "overlap": "50 mm", "load": "100 N/mm"},
	"overlay-bending":    {"E1": "7 GPa", "t1": "6 mm", "E2": "14.5 GPa", "t2": "3 mm"},
	"plate":              {"a": "400 mm", "b": "600 mm", "thickness": "6 mm", "E": "7 GPa", "pressure": "2 kPa"},
	"patched-panel":      {"panel": figure.PanelExample},
	"cup":                with(inventedEpoxy, in{"mass": "100 g", "diameter": "75 mm", "ambient": "25 °C", "H": "330 kJ/kg"}),
	"pot-life":           {"material": "epoxy-slow", "mass": "100 g", "temperature": "20 °C"},
	"film-gel":           with(inventedEpoxy, in{"temperature": "25 °C"}),
	"glass-transition":   {"Tg0": "-35 °C", "Tginf": "90 °C", "lambda": "0.40", "cure": "0.80"},
	"gel-conversion":     {"f": "4", "g": "2"},
	"equivalent-age":     {"E": "50 kJ/mol", "reference": "20 °C", "history": "2h@10C, 3h@20C, 2h@15C"},
	"catalyst-gel-time":  {"reference-time": "15 min", "percent": "1.2 %", "temperature": "18 °C"},
}

func TestResults(t *testing.T) {
	for _, row := range []struct {
		figure string
		change in // on top of good
		key    string
		want   float64
		tol    float64
		from   string
	}{
		{"ply-thickness", nil, "thickness_mm", 1.05078, 1e-5, "closed form: 0.45 (1/2.56 + 0.7/(0.3 × 1.20))"},
		{"ply-thickness", nil, "resin_g_per_m2", 1050, 1e-9, "closed form: 450 × 0.7/0.3"},
		{"ply-thickness", in{"voids": "5 %"}, "thickness_mm", 1.05078 / 0.95, 1e-5, "closed form: void-free over 0.95"},
		{"glass-content", in{"thickness": "1.05078125 mm"}, "glass_percent", 30, 1e-6, "inverse of the ply thickness"},
		{"class-properties", nil, "tensile_modulus_gpa", 6.95, 1e-9, "LR2013: Ch 3 s1"},
		{"laminate", nil, "plies_count", 4, 0, "[0/90]s is four plies"},
		{"laminate", nil, "thickness_mm", 1, 1e-12, "4 × 0.25 mm"},
		{"laminate", nil, "Ex_gpa", 25.885, 0.001, "independent computation (numpy)"},
		{"laminate", nil, "B11_n", 0, 1e-6, "identity: a symmetric stack"},
		{"laminate", in{"stack": "[0]"}, "Ex_gpa", 41, 1e-9, "identity: one ply at 0° has its own E1"},
		{"laminate", in{"stack": "[90]"}, "Ex_gpa", 10.4, 1e-9, "identity: at 90° its E2"},
		{"laminate", in{"stack": "[0/90]", "ply": "0.25 mm; 0.75 mm"}, "thickness_mm", 1, 1e-12, "a thickness for each ply"},
		{"first-ply-failure", in{"nx": "1 N/mm"}, "tsai_wu_first_mean_stress_x_mpa", 97.55, 0.1, "independent computation (numpy)"},
		{"lamina-failure", in{"angle": "0 deg", "sx": "570 MPa"}, "max_stress_strength_ratio", 2, 1e-9, "closed form: 1140/570"},
		{"lamina-failure", in{"angle": "90 deg", "sx": "19.5 MPa"}, "max_stress_strength_ratio", 2, 1e-9, "closed form: 39/19.5"},
		{"lamina-failure", in{"angle": "45 deg"}, "s1_mpa", 50, 1e-9, "closed form: σ cos²"},
		{"lamina-failure", in{"angle": "0 deg", "sx": "0 MPa", "txy": "44.5 MPa"}, "tsai_hill_strength_ratio", 2, 1e-9, "closed form: 89/44.5"},
		{"taper", nil, "outer_radius_mm", 122, 1e-9, "closed form: 50 + 12 × 6"},
		{"taper", nil, "bond_mm2", 39040.3, 0.1, "closed form: cone"},
		{"taper", in{"ratio": "12:1"}, "outer_radius_mm", 122, 1e-9, "the ratio may be written 12:1"},
		{"taper", nil, "taper_mm", 72, 1e-9, "closed form: 12 × 6"},
		{"taper", nil, "slope_mm", 72.2496, 1e-4, "closed form: 6 √145"},
		{"smallest-batch", nil, "catalyst_g", 1, 1e-9, "arithmetic: 2 % of 50 g"},
		{"dose", nil, "catalyst_g", 6.3, 1e-9, "arithmetic"},
		{"dose", nil, "catalyst_ml", 6.3 / 1.13, 1e-9, "arithmetic"},
		{"dose", in{"catalyst-density": ""}, "catalyst_ml", 6.3 / 1.13, 1e-9, "the default is 1.13 g/ml"},
		{"mass-ratio", nil, "hardener_g_per_100g", 42.6087, 1e-4, "arithmetic: 98/(2 × 1.15)"},
		{"smallest-batch", nil, "resin_g", 50, 1e-9, "arithmetic: 0.1/(0.02 × 0.1)"},
		{"gelcoat-mass", nil, "gelcoat_g", 138, 1e-9, "closed form: 0.2 × 0.5 × 1.2 × 1.15"},
		// US customary units; 1 oz/yd2 is 33.9057 g/m2, 1 in 25.4 mm, 1 psi 6.894757 kPa (NIST SP 811).
		{"ply-thickness", in{"areal": "18oz/yd2"}, "resin_g_per_m2", 18 * 33.9057 * 7 / 3, 0.01, "NIST SP 811"},
		{"ply-thickness", in{"areal": "1.5 oz/ft2"}, "resin_g_per_m2", 1.5 * 9 * 33.9057 * 7 / 3, 0.01, "NIST SP 811: nine square feet to the square yard"},
		{"taper", in{"radius": "2 in", "thickness": "1/4 in"}, "outer_radius_mm", 127, 1e-9, "2 in + 12 × 1/4 in = 5 in"},
		{"laminate", in{"stack": "[0]", "E1": "6 Msi"}, "Ex_gpa", 41.3685, 1e-3, "NIST SP 811"},
		{"dose", in{"resin": "1 lb"}, "catalyst_g", 453.59237 * 0.018, 1e-6, "NIST SP 811"},
		{"gelcoat-mass", in{"film": "20 mil"}, "weight_g_per_m2", 0.508 * 1200 * 1.15, 1e-6, "20 mil are 0.508 mm"},
	} {
		a, err := compute(row.figure, with(good[row.figure], row.change))
		if err != nil {
			t.Errorf("%s %v: %v", row.figure, row.change, err)
			continue
		}
		if got, ok := a.Results.Get(row.key); !ok || !(math.Abs(got-row.want) <= row.tol) {
			t.Errorf("%s %v: %s is %.8g (there: %v), want %.8g within %g (%s)", row.figure, row.change, row.key, got, ok, row.want, row.tol, row.from)
		}
	}
}

// Every criterion's first ply fails no later than its last.
func TestTheFirstPlyFailsFirst(t *testing.T) {
	a, err := compute("first-ply-failure", good["first-ply-failure"])
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []string{"max_stress", "max_strain", "tsai_hill", "tsai_wu"} {
		first, ok1 := a.Results.Get(c + "_first_load_ratio")
		last, ok2 := a.Results.Get(c + "_last_load_ratio")
		if !ok1 || !ok2 || first <= 0 || first > last {
			t.Errorf("%s: first %g, last %g", c, first, last)
		}
	}
}

func TestBadInputsNameTheirKey(t *testing.T) {
	for _, row := range []struct {
		what   string
		figure string
		change in
		key    string
		says   string
	}{
		{"no unit", "ply-thickness", in{"areal": "450"}, "areal", ""},
		{"the unit of something else", "ply-thickness", in{"areal": "450 mm"}, "areal", ""},
		{"ounces of nothing", "ply-thickness", in{"areal": "18 oz"}, "areal", "oz"},
		{"bare ounces of resin", "dose", in{"resin": "12 oz"}, "resin", "oz"},
		{"missing", "ply-thickness", in{"glass": ""}, "glass", "is needed"},
		{"misspelt", "ply-thickness", in{"gla": "30 %"}, "gla", "Did you mean glass?"},
		{"misspelt with a hyphen", "dose", in{"catalyst_density": "1.13 g/ml"}, "catalyst_density", "Did you mean catalyst-density?"},
		{"an input of another figure", "taper", in{"areal": "450 g/m2"}, "areal", "Its inputs are: radius, thickness, ratio"},
		{"all glass", "ply-thickness", in{"glass": "100 %"}, "glass", "more than 0 and less than 100 %"},
		{"no glass", "ply-thickness", in{"glass": "0 %"}, "glass", "more than 0 and less than 100 %"},
		{"less than nothing", "ply-thickness", in{"areal": "-450 g/m2"}, "areal", "more than 0"},
		{"not a number", "ply-thickness", in{"areal": "NaN g/m2"}, "areal", ""},
		{"without end", "ply-thickness", in{"areal": "Inf g/m2"}, "areal", ""},
		{"a thousand or one and a bit", "ply-thickness", in{"areal": "1,234 g/m2"}, "areal", "1,234"},
		{"thinner than its glass", "glass-content", in{"thickness": "0.1 mm"}, "thickness", "less than the glass alone"},
		{"a kind nobody knows", "class-properties", in{"kind": "csn"}, "kind", "csm"},
		{"glass beyond the formulas", "class-properties", in{"glass": "95 %"}, "glass", ""},
		{"ratio below the limit", "taper", in{"ratio": "4.9"}, "ratio", "between 5 and 50"},
		{"ratio above the limit", "taper", in{"ratio": "51"}, "ratio", "between 5 and 50"},
		{"ratio in words", "taper", in{"ratio": "twelve"}, "ratio", "not a number"},
		{"ratio without end", "taper", in{"ratio": "Inf"}, "ratio", "not a number"},
		{"an unfinished stack", "laminate", in{"stack": "[0/90"}, "stack", ""},
		{"a stack of millions", "laminate", in{"stack": "[0_2001]"}, "stack", ""},
		{"thicknesses that do not count up", "laminate", in{"ply": "1 mm; 2 mm"}, "ply", "2 thicknesses for 4 plies"},
		{"a ply of nothing", "laminate", in{"ply": "0 mm"}, "ply", "more than 0"},
		{"Poisson's ratio against nature", "laminate", in{"nu12": "0.99", "E2": "45 GPa"}, "nu12", ""},
		{"no load", "first-ply-failure", in{"nx": "0 N/mm"}, "nx", "every load is zero"},
		{"no stress", "lamina-failure", in{"sx": "0 MPa"}, "sx", "every stress is zero"},
		{"a strength of nothing", "lamina-failure", in{"Xt": "0 MPa"}, "Xt", "more than 0"},
		{"a density in the wrong unit's size", "dose", in{"catalyst-density": "1130 g/ml"}, "catalyst-density", "between 0.2 and 4 g/ml"},
		{"half a mix ratio", "mass-ratio", in{"volume": "2"}, "volume", "not a mix ratio"},
		{"a mix ratio of nothing", "mass-ratio", in{"volume": "2:0"}, "volume", "not a mix ratio"},
		{"any error is allowed", "smallest-batch", in{"within": "100 %"}, "within", "less than 100 %"},
		{"the loss eats it all", "gelcoat-mass", in{"loss": "-5 %"}, "loss", "between 0 and 200 %"},
	} {
		_, err := compute(row.figure, with(good[row.figure], row.change))
		var e *figure.InputError
		if !errors.As(err, &e) {
			t.Errorf("%s: got %v, want an input error", row.what, err)
			continue
		}
		if e.Key != row.key || !strings.Contains(err.Error(), row.says) || strings.Contains(err.Error(), "%!") {
			t.Errorf("%s: got key %q, %q; want key %q and %q", row.what, e.Key, err, row.key, row.says)
		}
	}
	if _, err := figure.Find("ply-thicknes"); err == nil || !strings.Contains(err.Error(), "Did you mean ply-thickness?") {
		t.Errorf("misspelt figure: got %v", err)
	}
}

func TestWarnings(t *testing.T) {
	for _, row := range []struct {
		figure string
		change in
		says   string
	}{
		{"ply-thickness", in{"glass": "80 %"}, "glass content 80 % is outside"},
		{"glass-content", in{"thickness": "3 mm"}, "is outside"},
		{"dose", in{"percent": "0.2 %"}, "outside any band"},
		{"dose", in{"percent": "8 %"}, "outside any band"},
		{"first-ply-failure", in{"stack": "[0/90]"}, "not symmetric"},
		{"gelcoat-mass", in{"film": "2 mm"}, "cracks"},
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
		if all := strings.Join(plain.Warnings, "\n"); strings.Contains(all, row.says) {
			t.Errorf("%s warns of %q without a reason", row.figure, row.says)
		}
	}
}

// endings are the units a result's key may end in.
var endings = regexp.MustCompile(`_(mm|mm2|ml|g|m2_per_kg|g_per_m2|g_per_100g|g_per_cm3|per_s|cm2|c|k|s|min|h|deg|kpa|mpa|gpa|n|nm|n_per_m|percent|fraction|ratio|count|number|words|code)$`)

func TestTheJSONHasItsSixKeys(t *testing.T) {
	for _, c := range figure.All() {
		a, err := c.Compute(good[c.Name])
		if err != nil {
			t.Errorf("%s: %v", c.Name, err)
			continue
		}
		text, err := json.Marshal(a)
		if err != nil {
			t.Errorf("%s: %v", c.Name, err)
			continue
		}
		var top map[string]json.RawMessage
		if err := json.Unmarshal(text, &top); err != nil {
			t.Fatal(err)
		}
		var keys []string
		for k := range top {
			keys = append(keys, k)
		}
		slices.Sort(keys)
		if want := []string{"figure", "inputs", "results", "sources", "warnings", "working"}; !slices.Equal(keys, want) {
			t.Errorf("%s: keys %v, want %v", c.Name, keys, want)
		}
		for k, v := range top {
			if string(v) == "null" {
				t.Errorf("%s: %s is null", c.Name, k)
			}
		}
		for _, r := range a.Results {
			if !endings.MatchString(r.Key) {
				t.Errorf("%s: result key %s does not end in a unit", c.Name, r.Key)
			}
		}
		if len(a.Sources) == 0 || len(a.Working) == 0 || len(a.Inputs) < len(good[c.Name]) {
			t.Errorf("%s: %d sources, %d worked lines, %d inputs", c.Name, len(a.Sources), len(a.Working), len(a.Inputs))
		}
		for _, l := range a.Working {
			if l.Source == "" || l.Formula == "" || l.Name == "" {
				t.Errorf("%s: a worked line without name, formula or source: %+v", c.Name, l)
			}
		}
	}
	if len(figure.All()) < len(good) {
		t.Errorf("%d figures, the issue asks for %d", len(figure.All()), len(good))
	}
}

// The examples that people are shown work as they stand.
func TestTheExamplesOfEveryInputCompute(t *testing.T) {
	for _, c := range figure.All() {
		given := in{}
		for _, i := range c.Inputs {
			if i.Needed(nil) {
				given[i.Key] = i.Unit
			}
			if i.Doc == "" || i.Unit == "" {
				t.Errorf("%s: input %s has no words or no example", c.Name, i.Key)
			}
		}
		if c.Name == "lamina-failure" {
			given["sx"] = "100 MPa" // each stress may be left out, not all
		}
		if _, err := c.Compute(given); err != nil {
			t.Errorf("%s %v: %v", c.Name, given, err)
		}
	}
}

func FuzzCompute(f *testing.F) {
	for name, given := range good {
		for k, v := range given {
			f.Add(name, k, v)
		}
	}
	f.Add("laminate", "stack", "[0_1000/(90/45)_30]s")
	f.Add("taper", "radius", "1e300 m")
	f.Add("dose", "resin", "1e-320 g")
	f.Fuzz(func(t *testing.T, name, key, text string) {
		c, err := figure.Find(name)
		if err != nil {
			return
		}
		a, err := c.Compute(with(good[name], in{key: text}))
		if err != nil {
			var e *figure.InputError
			if !errors.As(err, &e) || e.Key == "" && key != "" {
				t.Fatalf("%s %s=%q: %v is not an input error with a key", name, key, text, err)
			}
			return
		}
		if _, err := json.Marshal(a); err != nil {
			t.Fatalf("%s %s=%q: %v", name, key, text, err)
		}
	})
}
