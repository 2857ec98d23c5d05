package figure_test

import (
	"math"
	"os"
	"strings"
	"testing"

	"scarfwright/repair/figure"
)

// The example is the overlay panel of the project's benchmark: 5.97999 mm in the
// middle by small deflection, 4.1279 mm by large.
//
// Source: independent computation (spectral elements in scipy; the linear one also by
// two general finite-element programs to 0.03 and 0.15 %).
func TestPatchedPanel(t *testing.T) {
	for _, c := range []struct {
		theory      string
		middle, tol float64
		most        float64
	}{{"linear", 5.97999, 1e-3, 6.620}, {"large", 4.1279, 2e-3, 0}} {
		a, err := compute("patched-panel", in{"panel": strings.Replace(figure.PanelExample, "theory: large", "theory: "+c.theory, 1)})
		if err != nil {
			t.Fatal(err)
		}
		w, _ := a.Results.Get("deflection_mm")
		if math.Abs(w/c.middle-1) > c.tol {
			t.Errorf("%s: %.5f mm in the middle, want %.5f", c.theory, w, c.middle)
		}
		if most, _ := a.Results.Get("max_deflection_mm"); c.most > 0 && math.Abs(most/c.most-1) > 2e-3 {
			t.Errorf("%s: %.4f mm at most, want %.4f", c.theory, most, c.most)
		}
		if e, _ := a.Results.Get("deflection_error_mm"); !(e >= math.Abs(w-c.middle)/3 && e < 0.02*w) {
			t.Errorf("%s: its own error is told as %.2g mm; it is %.2g", c.theory, e, math.Abs(w-c.middle))
		}
	}
}

// The manual shows the example as it is.
func TestManualOfThePanelFile(t *testing.T) {
	text, err := os.ReadFile("../../docs/panel-file.md")
	if err != nil {
		t.Fatal(err)
	}
	shown := strings.ReplaceAll(strings.ReplaceAll("\n"+figure.PanelExample, "\n", "\n    "), "\n    \n", "\n")
	if !strings.Contains(string(text), strings.TrimRight(shown, " \n")) {
		t.Error("docs/panel-file.md does not show figure.PanelExample")
	}
}

func TestPanelFileRefusals(t *testing.T) {
	for name, c := range map[string]struct{ old, change, says string }{
		"a key that is not one":   {"edges: clamped", "edge: clamped", "edge"},
		"no unit":                 {"long: 900 mm", "long: 900", "long"},
		"an unknown ply":          {"base: [mat", "base: [mta", "mta"},
		"edges of another sort":   {"edges: clamped", "edges: glued", "glued"},
		"a patch larger than all": {"[300 mm, 200 mm]", "[300 mm, 600 mm]", "overlay"},
		"one width":               {"[300 mm, 200 mm]", "[300 mm]", "zones[1]"},
		"a ply nobody can be":     {"nu12: 0.15", "nu12: 5", "roving"},
		"an angle of letters":     {"base: [mat", "base: [mat@x", "mat@x"},
		"not a file":              {"long: 900 mm", "{{{", "panel file"},
	} {
		text := strings.Replace(figure.PanelExample, c.old, c.change, 1)
		if text == figure.PanelExample {
			t.Fatalf("%s: nothing changed", name)
		}
		if _, err := compute("patched-panel", in{"panel": text}); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %q in it", name, err, c.says)
		}
	}
}

// A thin isotropic plate by elements is the closed form's.
func TestPlateAgainstTheClosedForm(t *testing.T) {
	// Simply supported edges may twist here, which the closed form does not let them: 0.3 %
	// for a plate of 3 mm, less the thinner it is.
	for edges, tol := range map[string]float64{"clamped": 5e-4, "simple": 1.5e-3} {
		given := in{"a": "900 mm", "b": "600 mm", "thickness": "1 mm", "E": "7 GPa", "pressure": "0.001 Pa", "edges": edges}
		closed, err := compute("plate-closed-form", given)
		if err != nil {
			t.Fatal(err)
		}
		for _, theory := range []string{"linear", "large"} { // so small a load does not know the difference
			a, err := compute("plate", with(given, in{"theory": theory}))
			if err != nil {
				t.Fatal(err)
			}
			got, _ := a.Results.Get("deflection_mm")
			want, _ := closed.Results.Get("deflection_mm")
			if math.Abs(got/want-1) > tol {
				t.Errorf("%s, %s: %.6g mm by elements, %.6g closed", edges, theory, got, want)
			}
		}
	}
}
