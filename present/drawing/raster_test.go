package drawing_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"scarfwright/present/drawing"
)

// needs skips a test whose outside tool is missing, except under CI, which must
// have it.
func needs(t *testing.T, tool string, args ...string) {
	t.Helper()
	if out, err := exec.Command(tool, args...).CombinedOutput(); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatalf("%s is needed under CI: %v %s", tool, err, out)
		}
		t.Skipf("%s does not run here (%v): this check is left out", tool, err)
	}
}

// rasterise returns the first page of a PDF in grey, as pdftoppm shows it at
// dpi, or of it the crop x, y, width, height in dots from the upper left.
func rasterise(t *testing.T, pdf []byte, dpi int, crop ...int) *grey {
	t.Helper()
	needs(t, "pdftoppm", "-v")
	base := filepath.Join(t.TempDir(), "page")
	must(t, os.WriteFile(base+".pdf", pdf, 0o644))
	args := []string{"-r", fmt.Sprint(dpi), "-gray", "-f", "1", "-l", "1", "-singlefile"}
	for i, v := range crop {
		args = append(args, [4]string{"-x", "-y", "-W", "-H"}[i], fmt.Sprint(v))
	}
	cmd := exec.Command("pdftoppm", append(args, base+".pdf", base)...)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("pdftoppm: %v %s", err, out)
	}
	data, err := os.ReadFile(base + ".pgm")
	must(t, err)
	g := &grey{}
	var top int
	if _, err := fmt.Fscanf(bytes.NewReader(data), "P5\n%d %d\n%d\n", &g.w, &g.h, &top); err != nil || top != 255 {
		t.Fatalf("not a grey picture: %v", err)
	}
	g.pix = data[len(data)-g.w*g.h:]
	return g
}

type grey struct {
	w, h int
	pix  []byte
}

// ink returns how dark a dot is, 0 to 1; turned exchanges x and y.
func (g *grey) ink(x, y int, turned bool) float64 {
	if turned {
		x, y = y, x
	}
	return 1 - float64(g.pix[y*g.w+x])/255
}

// blobs returns the centres, weighed by darkness, of the dark runs in a row.
func (g *grey) blobs(y int, turned bool) (at, wide []float64) {
	n := g.w
	if turned {
		n = g.h
	}
	for x := 0; x < n; x++ {
		sum, moment, size := 0.0, 0.0, 0
		for ; x < n && g.ink(x, y, turned) > 0.05; x++ {
			v := g.ink(x, y, turned)
			sum, moment, size = sum+v, moment+v*(float64(x)+0.5), size+1
		}
		if size > 0 {
			at, wide = append(at, moment/sum), append(wide, float64(size))
		}
	}
	return at, wide
}

// bar finds a row with three thin ticks about 50 mm apart and nothing between,
// and returns the distance of the outer ones in mm.
func (g *grey) bar(turned bool, dotsPerMM float64) (float64, bool) {
	n := g.h
	if turned {
		n = g.w
	}
	half, slack, thin := 50*dotsPerMM, 0.5*dotsPerMM, 0.5*dotsPerMM
	for y := range n {
		at, wide := g.blobs(y, turned)
		for i := 0; i+2 < len(at); i++ {
			if math.Abs(at[i+1]-at[i]-half) < slack && math.Abs(at[i+2]-at[i+1]-half) < slack && max(wide[i], wide[i+1], wide[i+2]) <= thin {
				return (at[i+2] - at[i]) / dotsPerMM, true
			}
		}
	}
	return 0, false
}

// Between line centres the bars measure 100.0 mm on the page as another program
// rasterises it; tolerance from the issue. That program moves narrow lines to
// whole dots, so the whole page at 10 dots a millimetre tells no more than
// 0.1 mm; the corner with the bars is measured again at 40.
func TestBarsOnTheRasterisedPage(t *testing.T) {
	for _, paper := range []drawing.Sheet{drawing.A4, drawing.Letter} {
		t.Run(paper.Name, func(t *testing.T) {
			tl, err := templateSample(300, 200).Tile(tileOptions(paper))
			must(t, err)
			var buf bytes.Buffer
			must(t, tl.WritePDF(&buf, drawing.Meta{Created: issued}))
			high := int(tl.Tiles[0].Scene.Height)
			for _, g := range []struct {
				*grey
				dots float64
			}{
				{rasterise(t, buf.Bytes(), 254), 10},
				{rasterise(t, buf.Bytes(), 1016, 0, (high-170)*40, 130*40, 170*40), 40},
			} {
				for _, turned := range []bool{false, true} {
					mm, ok := g.bar(turned, g.dots)
					if !ok {
						t.Fatalf("no bar found at %g dots a mm (turned: %v)", g.dots, turned)
					}
					t.Logf("bar at %g dots a mm (turned: %v): %.3f mm", g.dots, turned, mm)
					if !near(mm, 100, 0.05) {
						t.Errorf("bar at %g dots a mm (turned: %v) is %.3f mm, want 100.0", g.dots, turned, mm)
					}
				}
			}
		})
	}
}

// Our picture of a scene and another program's picture of its PDF show the same
// thing: they differ by little, and only at the edges of lines and letters.
func TestPictureAgreesWithPDF(t *testing.T) {
	for _, s := range []*drawing.Scene{planSample(), sectionSample()} {
		var buf bytes.Buffer
		must(t, s.WritePDF(&buf, drawing.Meta{Created: issued}))
		g := rasterise(t, buf.Bytes(), 127)
		img, err := s.Image(127)
		must(t, err)
		// A part of a dot at the edge is a whole one there and none here.
		if b := img.Bounds(); g.w-b.Dx() > 1 || g.h-b.Dy() > 1 || g.w < b.Dx() || g.h < b.Dy() {
			t.Fatalf("picture %v, page %d x %d", b, g.w, g.h)
		}
		ours, theirs, off := 0.0, 0.0, 0
		for y := range img.Bounds().Dy() {
			for x := range img.Bounds().Dx() {
				c := img.RGBAAt(x, y)
				a := 1 - (0.299*float64(c.R)+0.587*float64(c.G)+0.114*float64(c.B))/255
				b := g.ink(x, y, false)
				ours, theirs = ours+a, theirs+b
				if math.Abs(a-b) > 0.6 {
					off++
				}
			}
		}
		if r := ours / theirs; r < 0.93 || r > 1.07 {
			t.Errorf("%s: %.0f dots of ink, the PDF has %.0f", s.Title, ours, theirs)
		}
		if share := float64(off) / float64(g.w*g.h); share > 0.005 {
			t.Errorf("%s: %.2f %% of the dots differ", s.Title, 100*share)
		} else {
			t.Logf("%s: ink %.3f of the PDF's, %.3f %% of the dots differ", s.Title, ours/theirs, 100*share)
		}
	}
}

// A ring in a ring is a hole, whichever way the rings run.
func TestPictureOfAHole(t *testing.T) {
	for _, turned := range []bool{false, true} {
		s := drawing.New(40, 40, "Washer")
		hole := drawing.Box{X0: 15, Y0: 15, X1: 25, Y1: 25}.Corners()
		if turned {
			hole[1], hole[3] = hole[3], hole[1]
		}
		s.Fill(drawing.Solid, drawing.Box{X0: 5, Y0: 5, X1: 35, Y1: 35}.Corners(), hole)
		img, err := s.Image(254)
		must(t, err)
		if in, out, rim := img.RGBAAt(200, 200).R, img.RGBAAt(20, 20).R, img.RGBAAt(100, 200).R; in != 255 || out != 255 || rim != 0 {
			t.Errorf("turned %v: hole %d, outside %d, rim %d", turned, in, out, rim)
		}
	}
	if _, err := drawing.New(1000, 1000, "").Image(2540); err == nil {
		t.Error("a picture of 10,000 million dots was begun")
	}
}
