package figure

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

// Shown is one result as people read it: what it is, and its value with the unit.
type Shown struct{ Name, Text string }

// Shown names the results for people. A time given in more than one unit is shown
// once, in the one that fits it.
func (rs Results) Shown(digits int) []Shown {
	var out []Shown
	last := ""
	for _, r := range rs {
		stem, unit := r.unit()
		if r.Text == "" && (unit == "s" || unit == "min" || unit == "h") {
			if stem == last {
				continue // the same time in another unit
			}
			last = stem
		}
		out = append(out, Shown{r.Name(), r.shown(digits)})
	}
	return out
}

// suffixes are the units that a key may end in, longest first, and how they print.
// A fraction, a ratio and words have none.
var suffixes = []struct{ end, unit string }{
	{"_g_per_100g", "g to 100 g"}, {"_m2_per_kg", "m²/kg"}, {"_g_per_cm3", "g/cm³"}, {"_g_per_m2", "g/m²"},
	{"_n_per_m", "N/m"}, {"_per_s", "1/s"},
	{"_fraction", ""}, {"_percent", "%"}, {"_number", ""}, {"_words", ""}, {"_ratio", ""}, {"_count", ""},
	{"_code", ""}, {"_mm2", "mm²"}, {"_cm2", "cm²"}, {"_mpa", "MPa"}, {"_gpa", "GPa"}, {"_kpa", "kPa"}, {"_deg", "°"}, {"_min", "min"},
	{"_mm", "mm"}, {"_ml", "ml"}, {"_nm", "N m"},
	{"_c", "°C"}, {"_k", "K"}, {"_s", "s"}, {"_h", "h"}, {"_g", "g"}, {"_n", "N"},
}

func (r Result) unit() (stem, unit string) {
	for _, s := range suffixes {
		if stem, ok := strings.CutSuffix(r.Key, s.end); ok {
			return stem, s.unit
		}
	}
	return r.Key, ""
}

// named are the results whose key does not read as words: by the whole key, or by what
// stands before the unit.
var named = map[string]string{
	"centre_peak_c": "hottest in the middle", "centre_peak_min": "when the middle is hottest", "peak_c": "hottest",
	"peak_min": "when it is hottest", "peak_low_c": "hottest, low end", "peak_high_c": "hottest, high end",
	"peak_low": "when it is hottest, low end", "peak_high": "when it is hottest, high end",
	"peak_words": "when it is hottest", "peak_depth": "depth of the hottest place",
	"overshoot": "hotter than faces or air ever are, by", "adiabatic_rise": "rise if no heat left",
	"centre_end_cure": "degree of cure in the middle at the end",
	"face_end_cure":   "degree of cure at the face at the end", "energy_error": "heat not accounted for",
	"nodes": "nodes", "steps": "steps in time", "coarse_grid": "grid too coarse",
	"steepest":       "steepest step in cure from node to node",
	"centre_reached": "middle comes to the degree asked for after",
	"face_reached":   "face comes to the degree asked for after", "rise": "rise", "end": "temperature at the end",
	"then": "temperature at that degree", "time": "time to that degree", "conversion": "degree of cure",
	"k": "rate constant k", "k1": "rate constant k1", "k2": "rate constant k2", "k3": "rate constant k3",
	"gel": "gels after", "gel_low": "gels after, low end", "gel_high": "gels after, high end",
	"working": "working time", "working_low": "working time, low end", "working_high": "working time, high end",
	"lay_within": "have it laid within", "criterion": "the entry's time runs",
	"runaway": "share of the possible materials that run away", "sandable": "sandable after",
	"sandable_low": "sandable after, low end", "sandable_high": "sandable after, high end",
	"sandable_rule": "sandable by", "through": "cured through after", "through_low": "cured through after, low end",
	"through_high": "cured through after, high end", "through_rule": "cured through by",
	"dose": "catalyst, by mass of resin", "tg": "glass transition", "cure": "degree of cure",
	"equivalent": "equivalent age", "clock": "time by the clock", "mean_factor": "mean speed, times the reference",
	"against_reference": "times the time of the sheet", "area": "surface of the batch",
	"depth": "depth in the vessel", "adiabatic": "hottest if no heat left", "cooling": "time constant of cooling",
	"rise25": "has warmed by 25 K after", "fourier": "Fourier number", "biot": "Biot number",
	"centre": "in the middle", "face": "at the face", "centre_theta": "left of the step, in the middle",
	"face_theta": "left of the step, at the face", "load_ratio": "times the load", "ply_number": "ply",
	"mode": "fails by", "strength_ratio": "strength ratio", "stack": "stack", "s1": "stress along the fibres",
	"s2": "stress across the fibres", "t12": "shear stress", "nuxy": "Poisson's ratio xy",
	"nuyx": "Poisson's ratio yx", "catalyst_g": "catalyst, mass", "catalyst_ml": "catalyst, volume",
	"glass_fraction": "glass content", "glass_percent": "glass content", "cover": "one kilogram covers",
	"weight": "weight",
}

// Name says what the result is, in words.
func (r Result) Name() string {
	key, before := r.Key, ""
	for _, c := range laminate.Criteria {
		rest, ok := strings.CutPrefix(key, criterionKey(c)+"_")
		if !ok {
			continue
		}
		key, before = rest, c.String()+": "
		for _, ply := range []string{"first", "last"} {
			if rest, ok := strings.CutPrefix(key, ply+"_"); ok {
				key, before = rest, c.String()+", "+ply+" ply: "
			}
		}
	}
	if s, ok := named[key]; ok {
		return before + s
	}
	stem, _ := Result{Key: key}.unit()
	if s, ok := named[stem]; ok {
		return before + s
	}
	if rest, ok := strings.CutPrefix(stem, "flex_"); ok {
		stem = rest + " in bending"
	}
	return before + strings.ReplaceAll(stem, "_", " ")
}

func (r Result) shown(digits int) string {
	_, unit := r.unit()
	switch {
	case r.Text != "":
		return r.Text
	case r.Key == "coarse_grid_count":
		return map[bool]string{true: "yes", false: "no"}[r.Value != 0]
	case strings.HasSuffix(r.Key, "_count"), strings.HasSuffix(r.Key, "_number") && r.Value == math.Trunc(r.Value):
		return fmt.Sprintf("%.0f", r.Value)
	case unit == "min":
		return duration(si.Minutes(r.Value), digits)
	case unit == "h":
		return duration(si.Hours(r.Value), digits)
	case unit == "s":
		return duration(si.Seconds(r.Value), digits)
	}
	return strings.TrimSpace(working.Num(r.Value, digits) + " " + unit)
}

// duration prints a time in the unit that fits it.
func duration(t si.Time, digits int) string {
	switch x := math.Abs(float64(t)); {
	case x < 120:
		return working.Num(float64(t), digits) + " s"
	case x < 3*3600:
		return working.Num(t.Minutes(), digits) + " min"
	case x < 4*86400:
		return working.Num(t.Hours(), digits) + " h"
	}
	return working.Num(t.Days(), digits) + " days"
}

// compact is an example that needs no quotes in a shell once its spaces are gone.
func compact(text string) (string, bool) {
	tight := strings.ReplaceAll(text, " ", "")
	words := len(strings.Fields(text))
	plain := strings.IndexFunc(tight, func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune("%°.,:/+-@", r))
	}) < 0
	return tight, plain && words <= 2 && !strings.Contains(text, ", ") && tight != "foamcup"
}

// Typed returns an input as it is typed after the name of the figure, in quotes where a
// shell needs them: areal=450g/m2, k="0.2163 W/(m K)".
func Typed(key, value string) string {
	if tight, ok := compact(value); ok {
		return key + "=" + tight
	}
	return key + `="` + value + `"`
}

// Example returns inputs that compute, by key: what must be given, and the defaults that
// would have no meaning together.
func (c Calculation) Example() map[string]string {
	out := map[string]string{}
	for _, in := range c.Inputs {
		if !in.Optional && in.Default != in.Unit {
			out[in.Key] = in.Unit
		}
	}
	return out
}

// Usage returns what to type: every input with an example, those that may be left out
// in brackets.
func (c Calculation) Usage() string {
	parts := []string{"Usage: scarfwright figure " + c.Name}
	for _, in := range c.Inputs {
		word := Typed(in.Key, in.Unit)
		if in.File {
			word = FileName
		}
		if in.Default != "" || in.Optional {
			word = "[" + word + "]"
		}
		parts = append(parts, word)
	}
	return strings.Join(parts, " ")
}

// FileName stands for a file in a usage line.
const FileName = "FILE.yaml"

// ExampleLine is the example as a line to paste into a shell.
func (c Calculation) ExampleLine() string {
	parts := []string{"scarfwright figure " + c.Name}
	given := c.Example()
	for _, in := range c.Inputs {
		if v, ok := given[in.Key]; ok && in.File {
			parts = append(parts, FileName)
		} else if ok {
			parts = append(parts, Typed(in.Key, v))
		}
	}
	return strings.Join(parts, " ")
}
