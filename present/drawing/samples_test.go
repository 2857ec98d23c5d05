package drawing_test

import (
	"bytes"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"scarfwright/present/drawing"
)

// issued is the date of issue of every file the tests make.
var issued = time.Date(2026, 3, 4, 10, 0, 0, 0, time.UTC)

func titleBlock() drawing.TitleBlock {
	return drawing.TitleBlock{
		Owner: "Yard at the slip", Number: "D2-04", Title: "Bow panel, port: plan", Date: "2026-03-04",
		Sheet: 1, Sheets: 2, Creator: "M. Okoro", Approval: "not yet approved", Kind: "repair drawing",
		Revision: "b", Scale: "1:5", Projection: "first angle", Hash: "3f9a0c11d2e4",
		Note: "Sample of the drawing package; the boat is invented. Dimensions in mm, seen from outside. Bow to the right.",
	}
}

// planSample is a plan of an invented repair: an elliptical cut-out of 180 x 120
// mm, taper rings, two hatched stiffeners, dimensioned on the boat.
func planSample() *drawing.Scene {
	s := drawing.New(190, 170, "Plan of the repair")
	s.Desc = "An ellipse with three rings around it between two stiffeners."
	area := s.TitleBlock(titleBlock())
	window := drawing.Box{X0: area.X0 + 24, Y0: area.Y0 + 24, X1: area.X1 - 14, Y1: area.Y1 - 12}
	v, _ := s.Fit(window, drawing.Box{X0: -320, Y0: -180, X1: 320, Y1: 180})

	c := drawing.P(0, 0)
	for _, x := range []float64{-300, 260} {
		b := drawing.Box{X0: x, Y0: -180, X1: x + 40, Y1: 180}
		v.Hatch(45, 2, b.Corners())
		v.Rect(drawing.DashedNarrow, b)
	}
	for i := 3; i >= 1; i-- {
		d := float64(i) * 30
		v.Ring(drawing.Narrow, v.EllipseRing(c, 90+d, 60+d, 0)...)
	}
	hole := v.EllipseRing(c, 90, 60, 0)
	v.Fill(drawing.Light, hole)
	v.In(drawing.Blue).Ring(drawing.Wide, hole...)
	v.Line(drawing.ChainNarrow, drawing.P(-200, 0), drawing.P(200, 0))
	v.Line(drawing.ChainNarrow, drawing.P(0, -170), drawing.P(0, 170))
	v.DimH(drawing.P(-90, 0), drawing.P(90, 0), -42, "")
	v.DimH(drawing.P(-180, 0), drawing.P(180, 0), -50, "")
	v.DimH(drawing.P(180, -150), drawing.P(260, -150), 6, "")
	v.DimV(drawing.P(0, -60), drawing.P(0, 60), -68, "")
	v.DimAligned(drawing.P(180, 0), drawing.P(127, 106), -12, "chord 118")
	v.Leader(drawing.P(105, 105), drawing.P(10, 17), "ground edge")
	v.LeaderDot(drawing.P(-30, 20), drawing.P(-12, 32), "cut-out")
	v.DoubleArrow(drawing.P(20, -40), drawing.P(60, -40))
	v.Label(drawing.P(-280, 100), 3.5, drawing.Centre|drawing.Middle, "frame 7")
	return s
}

// sectionSample is a section with the thickness drawn five times as large.
func sectionSample() *drawing.Scene {
	s := drawing.New(180, 80, "Section through the repair")
	s.Desc = "Three plies step down a taper."
	v := s.View(drawing.P(90, 40), drawing.P(0, 0), 0.25, 1.25)
	skin := func(side float64) []drawing.Point {
		return []drawing.Point{drawing.P(side*300, 0), drawing.P(side*170, 0), drawing.P(side*90, -8), drawing.P(side*300, -8)}
	}
	for _, side := range []float64{-1, 1} {
		v.Hatch(45*side, 2, skin(side))
		v.Ring(drawing.Wide, skin(side)...)
	}
	for i := range 4 {
		half := 90 + 20*float64(i)
		top, bottom := -8+2*float64(i+1), -8+2*float64(i)
		ply := []drawing.Point{drawing.P(-half, bottom), drawing.P(half, bottom), drawing.P(half+20, top), drawing.P(-half-20, top)}
		v.Fill(drawing.Shade(1+i%2), ply)
		v.In(drawing.Blue).Ring(drawing.Narrow, ply...)
	}
	v.DimV(drawing.P(-300, -8), drawing.P(-300, 0), -6, "")
	v.DimH(drawing.P(90, -8), drawing.P(170, 0), 10, "")
	v.DimH(drawing.P(-170, 0), drawing.P(170, 0), 18, "")
	s.Text(drawing.P(90, 8), drawing.TextNormal, drawing.Centre, "thickness drawn 5 times as large as length")
	return s
}

// templateSample is a template at 1:1, wider than a sheet: the outline of one
// ply, its cut-out, an arrow along the fibres.
func templateSample(a, b float64) *drawing.Scene {
	s := drawing.New(2*a+40, 2*b+40, "Ply 3 of 5")
	s.Desc = "The outline of one ply, to be cut out."
	c := drawing.P(a+20, b+20)
	s.On("PLY_03").Ring(drawing.Wide, s.EllipseRing(c, a, b, 10)...)
	s.On("CUT").In(drawing.Blue).Ring(drawing.DashedNarrow, s.EllipseRing(c, a/2, b/2, 10)...)
	s.On("TEXT").DoubleArrow(drawing.P(c.X-60, c.Y-20), drawing.P(c.X+60, c.Y-20))
	s.On("TEXT").Text(c, drawing.TextHuge, drawing.Centre, "PLY 3  0° fore and aft")
	return s
}

func tileOptions(p drawing.Sheet) drawing.TileOptions {
	return drawing.TileOptions{
		Paper: p, Job: "demo-2", Revision: "b", Hash: "3f9a0c11d2e4", Date: "2026-03-04",
		View:     "Seen from outside, not mirrored. Bow to the right.",
		Cautions: []string{"Dust and resin harm: read the safety data sheet first. These figures are estimates; the maker's data sheet and local rules decide."},
	}
}

// TestLook writes the samples to the folder in DRAWING_LOOK, to be looked at.
func TestLook(t *testing.T) {
	dir := os.Getenv("DRAWING_LOOK")
	if dir == "" {
		t.Skip("set DRAWING_LOOK to a folder to write the samples there")
	}
	for name, s := range map[string]*drawing.Scene{"plan": planSample(), "section": sectionSample(), "template": templateSample(300, 200)} {
		var svg, pdf, pic, dxf bytes.Buffer
		must(t, s.WriteSVG(&svg))
		must(t, s.WritePDF(&pdf, drawing.Meta{Created: issued}))
		img, err := s.Image(150)
		must(t, err)
		must(t, png.Encode(&pic, img))
		must(t, s.WriteDXF(&dxf))
		for ext, b := range map[string]*bytes.Buffer{".svg": &svg, ".pdf": &pdf, ".png": &pic, ".dxf": &dxf} {
			must(t, os.WriteFile(filepath.Join(dir, name+ext), b.Bytes(), 0o644))
		}
	}
	for _, p := range []drawing.Sheet{drawing.A4, drawing.Letter} {
		tl, err := templateSample(300, 200).Tile(tileOptions(p))
		must(t, err)
		var pdf bytes.Buffer
		must(t, tl.WritePDF(&pdf, drawing.Meta{Created: issued}))
		must(t, os.WriteFile(filepath.Join(dir, "tiles-"+p.Name+".pdf"), pdf.Bytes(), 0o644))
	}
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func near(a, b, tol float64) bool { return math.Abs(a-b) <= tol }
