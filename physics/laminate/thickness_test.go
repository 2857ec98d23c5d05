package laminate_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// near fails the test unless got lies within tol of want, absolutely.
func near(t rapid.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.10g, want %.10g +- %.2g", what, got, want, tol)
	}
}

// within fails the test unless got lies within a fraction tol of want.
func within(t rapid.TB, what string, got, want, tol float64) {
	t.Helper()
	near(t, what, got, want, tol*math.Abs(want))
}

// A printed or tabulated number, beside what the package gives for it.
type figure struct {
	what      string
	got, want float64
	tol       float64 // absolute
	origin    string
}

func checkFigures(t *testing.T, figures []figure) {
	t.Helper()
	for _, f := range figures {
		t.Run(f.what, func(t *testing.T) { near(t, f.what+" ["+f.origin+"]", f.got, f.want, f.tol) })
	}
}

const (
	computed = "independent computation (Python)"
	lr       = "LR2013, Ch 3 s1 Table 3.1.1, read; reproduced by independent computation"
	bs       = "BS4994-1987 values on a tank design sheet, read there; reproduced by independent computation"
)

func TestPublishedThickness(t *testing.T) {
	gp := laminate.GlassPolyester
	mm := func(w, glass float64) float64 { return laminate.ClassThickness(si.GSM(w), si.Ratio(glass)).MM() }
	resin := func(w, glass float64) float64 { return laminate.ResinWeight(si.GSM(w), si.Ratio(glass)).GSM() }
	vf := func(glass float64) float64 { return float64(laminate.VolumeFraction(si.Ratio(glass), gp)) }
	content := func(mmPerKg float64) float64 {
		return float64(laminate.GlassContent(si.KgPerM2(1), si.MM(mmPerKg), gp))
	}
	checkFigures(t, []figure{
		{"mat 600 g/m2 at 33 % is 1.250 mm thick", mm(600, 0.33), 1.250, 0.001, lr},
		{"mat 450 g/m2 at 30 % is 1.0508 mm thick", mm(450, 0.30), 1.0508, 1e-4, computed},
		{"and holds 1050 g/m2 of resin", resin(450, 0.30), 1050, 1e-4, computed},
		{"and is 0.1673 glass by volume", vf(0.30), 0.1673, 1e-4, computed},
		{"roving 600 g/m2 at 48 % is 0.7760 mm thick", mm(600, 0.48), 0.7760, 1e-4, computed},
		{"and holds 650 g/m2 of resin", resin(600, 0.48), 650, 1e-4, computed},
		{"and is 0.3020 glass by volume", vf(0.48), 0.3020, 1e-4, computed},
		{"33 % glass is 2.03 resin to 1 glass", resin(1, 0.33), 2.03, 0.005, bs},
		{"45 % glass is 1.22 resin to 1 glass", resin(1, 0.45), 1.22, 0.005, bs},
		{"2.24 mm per kg/m2 is 31.06 % glass", content(2.24), 0.3106, 1e-4, computed},
		{"1.25 mm per kg/m2 is 49.23 % glass", content(1.25), 0.4923, 1e-4, computed},
	})
}

// The whole table of thickness, volume fraction, resin, density, and thickness with
// 3 % voids and with an epoxy of 1.15 g/ml.
func TestThicknessTable(t *testing.T) {
	gp := laminate.GlassPolyester
	voids := gp
	voids.Voids = si.Percent(3)
	epoxy := laminate.Constituents{Fibre: si.GramsPerML(2.56), Resin: si.GramsPerML(1.15)}
	for _, r := range []struct{ w, glass, t, vf, resin, density, voids, epoxy float64 }{
		{300, 0.30, 0.7005, 0.1673, 700.0, 1.4275, 0.7222, 0.7259},
		{450, 0.30, 1.0508, 0.1673, 1050.0, 1.4275, 1.0833, 1.0888},
		{450, 0.33, 0.9371, 0.1876, 913.6, 1.4551, 0.9661, 0.9702},
		{600, 0.33, 1.2495, 0.1876, 1218.2, 1.4551, 1.2882, 1.2937},
		{900, 0.30, 2.1016, 0.1673, 2100.0, 1.4275, 2.1666, 2.1776},
		{600, 0.48, 0.7760, 0.3020, 650.0, 1.6107, 0.8000, 0.7996},
		{800, 0.50, 0.9792, 0.3191, 800.0, 1.6340, 1.0095, 1.0082},
		{850, 0.45, 1.1978, 0.2772, 1038.9, 1.5770, 1.2348, 1.2354},
		{600, 0.65, 0.5036, 0.4654, 323.1, 1.8329, 0.5192, 0.5153},
	} {
		w, glass := si.GSM(r.w), si.Ratio(r.glass)
		near(t, "thickness, mm", laminate.Thickness(w, glass, gp).MM(), r.t, 6e-5)
		near(t, "volume fraction", float64(laminate.VolumeFraction(glass, gp)), r.vf, 6e-5)
		near(t, "resin, g/m2", laminate.ResinWeight(w, glass).GSM(), r.resin, 0.06)
		near(t, "density, g/ml", laminate.LaminateDensity(glass, gp).GramsPerML(), r.density, 6e-5)
		near(t, "thickness with voids, mm", laminate.Thickness(w, glass, voids).MM(), r.voids, 6e-5)
		near(t, "thickness with epoxy, mm", laminate.Thickness(w, glass, epoxy).MM(), r.epoxy, 6e-5)
	}
}

func drawConstituents(t *rapid.T) laminate.Constituents {
	return laminate.Constituents{
		Fibre: si.GramsPerML(rapid.Float64Range(1.4, 2.7).Draw(t, "fibre")),
		Resin: si.GramsPerML(rapid.Float64Range(1.0, 1.35).Draw(t, "resin")),
		Voids: si.Ratio(rapid.Float64Range(0, 0.2).Draw(t, "voids")),
	}
}

func TestThicknessPromises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawConstituents(t)
		w := si.GSM(rapid.Float64Range(1, 5000).Draw(t, "w"))
		glass := si.Ratio(rapid.Float64Range(0.05, 1).Draw(t, "glass"))
		thick := laminate.Thickness(w, glass, c)

		// The rule's formula is first principles with GlassPolyester (identity).
		within(t, "class formula", float64(laminate.ClassThickness(w, glass)),
			float64(laminate.Thickness(w, glass, laminate.GlassPolyester)), 1e-12)
		within(t, "glass content of the thickness", float64(laminate.GlassContent(w, thick, c)), float64(glass), 1e-10)
		within(t, "thickness of twice the glass", float64(laminate.Thickness(2*w, glass, c)), float64(2*thick), 1e-12)
		within(t, "glass in the ply",
			float64(laminate.VolumeFraction(glass, c))*float64(c.Fibre)*float64(thick), float64(w), 1e-12)
		within(t, "mass of the ply",
			float64(laminate.LaminateDensity(glass, c))*float64(thick), float64(w+laminate.ResinWeight(w, glass)), 1e-12)
		if more := laminate.Thickness(w, glass*0.99, c); more <= thick {
			t.Errorf("less glass content, same glass: %v is not thicker than %v", more, thick)
		}
	})
}

func TestGlassContentOfSomethingTooThin(t *testing.T) {
	// 1 kg/m2 of glass melted solid is 0.3906 mm; less can't be.
	if got := laminate.GlassContent(si.KgPerM2(1), si.MM(0.39), laminate.GlassPolyester); got <= 1 {
		t.Errorf("got %v, want above 1", got)
	}
	if got := laminate.GlassContent(0, si.MM(1), laminate.GlassPolyester); got != 0 {
		t.Errorf("no glass: got %v, want 0", got)
	}
}

func TestConstituentsCheck(t *testing.T) {
	gp := laminate.GlassPolyester
	for _, r := range []struct {
		c     laminate.Constituents
		glass si.Ratio
		want  string // part of the message; empty for none
	}{
		{gp, 0.3, ""},
		{gp, 1, ""},
		{gp, 0, "glass content 0"},
		{gp, 30, "glass content 30"},
		{gp, si.Ratio(math.NaN()), "glass content NaN"},
		{laminate.Constituents{Resin: gp.Resin}, 0.3, "fibre density"},
		{laminate.Constituents{Fibre: gp.Fibre}, 0.3, "resin density"},
		{laminate.Constituents{Fibre: gp.Fibre, Resin: gp.Resin, Voids: 1}, 0.3, "void content 1"},
	} {
		err := r.c.Check(r.glass)
		if (err == nil) != (r.want == "") || err != nil && !strings.Contains(err.Error(), r.want) {
			t.Errorf("Check(%v): got %v, want %q", r.glass, err, r.want)
		}
	}
}

func TestThicknessPanicsOnUncheckedInput(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("no panic for a glass content of 0")
		}
	}()
	laminate.Thickness(si.GSM(450), 0, laminate.GlassPolyester)
}
