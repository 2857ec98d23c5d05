package cure

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/si"
)

// silent is the share of a prior's spread that is left from which on the sheet is
// said not to tell a parameter. Our own choice.
const silent = 0.8

// plain is each parameter in the words of whoever holds the tin.
var plain = map[string]string{
	"k2": "how fast it sets", "kap": "how it begins to set", "E": "how warmth hastens it", "H": "how much heat it gives",
	"U": "how a cup loses heat", "sandable at": "when it sands",
	"t_ind": "when it begins to set", "E_ind": "how warmth hastens the beginning", "k": "how fast it sets once begun",
	"q": "how catalyst hastens it", "m": "how it gathers speed", "seed": "its first start",
}

// Told says in one sentence what data the sheet gave to the fit, by sort with the
// temperatures they stand at, and what it does not tell: those parameters keep
// 0.8 or more of the spread that is usual for the kind (from memory).
func (m Model) Told() string {
	s := m.problem.sheet
	var given, untold []string
	add := func(n int, one, many string, low, high si.Temp) {
		if n == 0 {
			return
		}
		what := fmt.Sprintf("%d %s", n, many)
		if n == 1 {
			what = "one " + one
		}
		at := fmt.Sprintf("%.3g °C", low.Celsius())
		if high > low {
			at = fmt.Sprintf("%.3g to %.3g °C", low.Celsius(), high.Celsius())
		}
		given = append(given, what+" at "+at)
	}
	low, high := si.Temp(math.Inf(1)), si.Temp(0)
	for _, p := range s.Pots {
		low, high = min(low, p.At), max(high, p.At)
	}
	add(len(s.Pots), "pot life", "pot lives", low, high)
	films := func(list []Film, one, many string) {
		low, high := si.Temp(math.Inf(1)), si.Temp(0)
		for _, f := range list {
			low, high = min(low, f.At), max(high, f.At)
		}
		add(len(list), one, many, low, high)
	}
	films(s.FilmGel, "time of a film to gel", "times of a film to gel")
	films(s.Sandable, "time to sanding", "times to sanding")
	low, high = si.Temp(math.Inf(1)), si.Temp(0)
	for _, p := range s.Peaks {
		low, high = min(low, p.At), max(high, p.At)
	}
	add(len(s.Peaks), "cup's peak", "cups' peaks", low, high)
	for _, p := range m.Report() {
		if !p.Fixed && p.Silent() {
			untold = append(untold, plain[p.Name])
		}
	}
	out := "fitted to " + strings.Join(given, ", ")
	if len(untold) > 0 {
		out += "; not told by them, and taken as usual for its kind (from memory): " + strings.Join(untold, ", ")
	}
	return out + "."
}

// Plain names the parameter in the words of whoever holds the tin: "how fast it sets".
func (p ParameterReport) Plain() string { return plain[p.Name] }

// Silent reports whether the sheet says next to nothing of the parameter, so that it is
// as usual for its kind.
func (p ParameterReport) Silent() bool { return p.PostOverPrior >= silent }
