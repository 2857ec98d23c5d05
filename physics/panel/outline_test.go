package panel

import (
	"math"
	"strings"
	"testing"

	"scarfwright/physics/si"
)

// blob is a star-shaped outline with n points and a few lobes.
func blob(c Point, r, lobes float64, n int) []Point {
	var pts []Point
	for i := range n {
		th := 2 * math.Pi * float64(i) / float64(n)
		f := r * (1 + lobes*math.Cos(2*th) + 0.6*lobes*math.Sin(3*th))
		pts = append(pts, Point{c.X + si.Length(1.3*f*math.Cos(th)), c.Y + si.Length(f*math.Sin(th))})
	}
	return pts
}

func roundedRectangle(a, b, r float64, n int) []Point {
	var pts []Point
	for k := range 4 {
		cx, cy := [4]float64{1, -1, -1, 1}[k]*(a-r), [4]float64{1, 1, -1, -1}[k]*(b-r)
		for i := range n + 1 {
			th := math.Pi / 2 * (float64(k) + float64(i)/float64(n))
			pts = append(pts, Point{si.M(cx + r*math.Cos(th)), si.M(cy + r*math.Sin(th))})
		}
	}
	return pts
}

func solveLinear(t *testing.T, p Panel, o Options) *Result {
	t.Helper()
	m, err := Prepare(p, o)
	if err != nil {
		t.Fatal(err)
	}
	r, err := m.Linear()
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestPolygonOutlines(t *testing.T) {
	// limit: a polygon of many points on an ellipse is the ellipse
	p := referencePanel("overlay", Clamped)
	want := solveLinear(t, p, Options{})
	var pts []Point
	for i := range 720 {
		th := 2 * math.Pi * float64(i) / 720
		pts = append(pts, Point{si.MM(150 * math.Cos(th)), si.MM(100 * math.Sin(th))})
	}
	p.Zones[0].Outline = Polygon(pts)
	got := solveLinear(t, p, Options{})
	if !got.mesh.quarter {
		t.Error("the symmetry of the polygon was not seen")
	}
	w0, _ := want.Deflection(Point{})
	w1, _ := got.Deflection(Point{})
	near(t, "w", float64(w1), float64(w0), 1e-5)
	// Of a polygon in the other sense too.
	for i, j := 0, len(pts)-1; i < j; i, j = i+1, j-1 {
		pts[i], pts[j] = pts[j], pts[i]
	}
	p.Zones[0].Outline = Polygon(pts)
	w2, _ := solveLinear(t, p, Options{}).Deflection(Point{})
	near(t, "w turned round", float64(w2), float64(w1), 1e-9)

	// identity: a finer mesh of the same shape gives the same, free shape and rounded
	// rectangle, the first off the middle
	for name, pts := range map[string][]Point{
		"blob":              blob(Point{si.MM(60), si.MM(-20)}, 0.09, 0.12, 90),
		"rounded rectangle": roundedRectangle(0.15, 0.1, 0.05, 12),
	} {
		p := referencePanel("overlay", Clamped)
		p.Zones[0].Outline = Polygon(pts)
		w0, _ := solveLinear(t, p, Options{}).MaxDeflection()
		w1, _ := solveLinear(t, p, Options{Degree: 6}).MaxDeflection()
		near(t, name, float64(w0), float64(w1), 1e-3)
	}
}

func TestRefusedPanels(t *testing.T) {
	csm := referencePanel("overlay", Clamped).Zones[0].Layup
	zones := func(outlines ...Outline) func(*Panel) {
		return func(p *Panel) {
			p.Zones = nil
			for _, o := range outlines {
				p.Zones = append(p.Zones, Zone{Outline: o, Layup: csm})
			}
		}
	}
	round := func(x, r float64) Outline { return Ellipse(Point{si.MM(x), 0}, si.MM(r), si.MM(r), 0) }
	for _, c := range []struct {
		name string
		make func(*Panel)
		want string
	}{
		{"inner first", zones(round(0, 50), round(0, 100)), "from the outermost in"},
		{"crossing", zones(round(0, 100), round(70, 50)), "does not enclose"},
		{"apart", zones(round(-100, 50), round(100, 50)), "enclose the centre"},
		{"over the edge", zones(round(0, 230)), "reaches the edge"},
		{"not a star", zones(Polygon([]Point{{0, 0}, {0.2, -0.1}, {0.05, 0}, {0.2, 0.1}, {-0.05, 0.1}, {-0.05, -0.12}})),
			"seen from the centre"},
		{"two points", zones(Polygon([]Point{{0, 0}, {0.1, 0}})), "no area"},
		{"no outline", zones(Outline{}), "no outline"},
		{"flat ellipse", zones(Ellipse(Point{}, 0.1, 0, 0)), "must be positive"},
		{"no plies", func(p *Panel) { p.Base.Plies = nil }, "no plies"},
		{"no G13", func(p *Panel) { p.Base.Plies = []Ply{{Ply: hull[0].Ply}} }, "G13"},
		{"no width", func(p *Panel) { p.Width = 0 }, "Width"},
		{"pull on a held side", func(p *Panel) { p.Edges[0].Pull = 1 }, "Slides"},
		{"spring", func(p *Panel) { p.Edges[0].Spring = -1 }, "spring"},
		{"swinging", func(p *Panel) {
			p.Edges = [4]Edge{{Support: SimplySupported}, {Support: Free}, {Support: Free}, {Support: Free}}
		},
			"swing"},
		{"pressure", func(p *Panel) { p.Pressure = si.Pressure(math.NaN()) }, "pressure"},
	} {
		p := referencePanel("overlay", Clamped)
		c.make(&p)
		_, err := Prepare(p, Options{})
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v, want one with %q", c.name, err, c.want)
		}
	}
	if _, err := Solve(referencePanel("intact", Clamped), Options{Degree: 2}, false); err == nil {
		t.Error("an error estimate was given at degree 2")
	}
	for _, o := range []Options{{Degree: 1}, {Degree: 13}, {Sides: 3}, {Outer: 40}} {
		if _, err := Prepare(referencePanel("intact", Clamped), o); err == nil {
			t.Errorf("%+v was taken", o)
		}
	}
}

// A point anywhere on an outline can be asked for from both sides, though the
// elements' edges follow the curve only closely.
func TestPointsOnAnOutline(t *testing.T) {
	r := solveLinear(t, referencePanel("overlay", Clamped), Options{})
	for i := range 24 {
		s, c := math.Sincos(0.1 + float64(i)*math.Pi/12)
		at := Point{si.MM(150 * c), si.MM(100 * s)}
		in, err := r.Deformation(at, 1)
		if err != nil {
			t.Fatal(err)
		}
		out, err := r.Deformation(at, 0)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "w", float64(in.W), float64(out.W), 1e-5)
		// identity: what runs along the outline is the same on both sides
		tx, ty := -150*s/math.Hypot(150*s, 100*c), 100*c/math.Hypot(150*s, 100*c)
		along := func(d Deformation) float64 {
			return tx*tx*d.Curvature[0] + ty*ty*d.Curvature[1] + tx*ty*d.Curvature[2]
		}
		if a, b := along(in), along(out); math.Abs(a-b) > 0.01 {
			t.Errorf("at %v: curvature along the outline %.4g 1/m inside, %.4g outside", at, a, b)
		}
	}
	if _, err := r.Deformation(Point{si.MM(400), 0}, 1); err == nil {
		t.Error("a point far from the overlay was found in it")
	}
	if _, err := r.Deflection(Point{si.MM(500), 0}); err == nil {
		t.Error("a point off the panel was found on it")
	}
}
