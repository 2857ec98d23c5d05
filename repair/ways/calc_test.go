package ways

import (
	"testing"

	"scarfwright/physics/panel"
	"scarfwright/repair/catalog"
	"scarfwright/repair/design"
	"scarfwright/repair/job"
)

// The book of every demo job comes out, wastes no given number, and its strengths are
// near those of hand.go: it judges a section by its weakest ply at its outermost
// fibre, and so never lies more than a little on the weak side.
func TestCalculation(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop", "trawler-yacht", "work-skiff", "rib-console"} {
		r := compared(t, demoJob(t, name))
		if r.Calculation == nil {
			t.Errorf("%s: no calculation", name)
			continue
		}
		b := r.Calculation.Book
		if b.Err() != nil {
			t.Errorf("%s: %v", name, b.Err())
		}
		for _, s := range b.Orphans() {
			t.Errorf("%s: %s is given and never used", name, s)
		}
		found := 0
		for _, e := range b.Entries {
			switch e.Symbol {
			case "S_h":
				near(t, name+", edges held", e.Value, r.Calculation.Way.Cases[0].Hand, 0.15)
				found++
			case "S_p":
				near(t, name+", pulled along", e.Value, r.Calculation.Way.Cases[2].Hand, 0.02)
				found++
			}
		}
		if found == 0 {
			t.Errorf("%s: the book ends without a strength", name)
		}
	}
}

// The strain at the held edge, worked by hand, is that of the plate elements by small
// deflection: up to 7 % on the weak side, for by hand the roving's Poisson's ratio is
// taken for the mat's too.
func TestEdgeByHandAndByElements(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop"} {
		d := demoJob(t, name)
		r := compared(t, d)
		ps := &parts{parent: r.Calculation.Way.parts.parent}
		m, err := panel.Prepare(panel.Panel{
			Length: d.Panel.Long, Width: d.Panel.Short, Base: ps.layup(ps.parent, -depth(ps.parent)/2), Pressure: r.Pressure,
			Edges: panel.AllEdges(panel.Edge{Support: panel.Clamped}),
		}, panel.Options{})
		if err != nil {
			t.Fatal(err)
		}
		res, err := m.Linear()
		if err != nil {
			t.Fatal(err)
		}
		f := use(res, panel.Panel{}, ps, nil, 0, bond{}, load{pressure: true})
		for _, e := range r.Calculation.Book.Entries {
			if e.Symbol == "U_e" {
				near(t, name+", used at the held edge", e.Value, f.ply, 0.07)
				if e.Value < f.ply {
					t.Errorf("%s: %.4f by hand is less than %.4f by elements", name, e.Value, f.ply)
				}
			}
		}
	}
}

// Strains at failure are the class rule's strength over its own modulus (LR-SSC, from
// memory; values of the handbook's table 2.1): mat at 0.30, roving at 0.48.
func TestStrainsAtFailure(t *testing.T) {
	resin := mustResin(t, demoJob(t, "day-launch"))
	ls, err := design.Layers([]job.PlyRef{{Class: "csm450"}, {Class: "wr600"}}, resin, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	ps, err := pliesOf(catalog.Default(), ls, resin.Cured.Typical)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [][3]float64{{85.0 / 6500, 117.0 / 6000, 62.0 / 2750}, {182.0 / 13900, 144.0 / 13200, 76.4 / 3056}} {
		for k, w := range want {
			near(t, ls[i].Class+", strain at failure", ps[i].fails[k], w, 1e-9)
		}
	}
}
