package drawing_test

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/present/drawing"
)

func Example() {
	s := drawing.New(100, 60, "Plate")
	plate := []drawing.Point{drawing.P(0, 0), drawing.P(640, 0), drawing.P(640, 300), drawing.P(0, 300)}
	v, k := s.Fit(drawing.Box{X0: 10, Y0: 10, X1: 90, Y1: 50}, drawing.Bounds(plate))
	v.Ring(drawing.Wide, plate...)
	v.DimH(plate[0], plate[1], -8, "")
	var buf bytes.Buffer
	if err := s.WriteSVG(&buf); err != nil {
		fmt.Println(err)
	}
	fmt.Println(drawing.ScaleText(k), strings.Contains(buf.String(), ">640</text>"))
	// Output: 1:10 true
}

func TestSamplesPassLint(t *testing.T) {
	for _, s := range []*drawing.Scene{planSample(), sectionSample(), templateSample(300, 200)} {
		for _, f := range s.Lint() {
			t.Errorf("%s: %s", s.Title, f)
		}
	}
}

// On a template's sheets only the shape itself may run through words (the page
// map's numbers have their blanks).
func TestTemplateSheetsPassLint(t *testing.T) {
	for _, paper := range []drawing.Sheet{drawing.A4, drawing.Letter} {
		tl, err := templateSample(480, 330).Tile(tileOptions(paper))
		must(t, err)
		for _, tile := range tl.Tiles {
			for _, f := range tile.Scene.Lint() {
				t.Errorf("%s %s: %s", paper.Name, tile.Name, f)
			}
		}
	}
}

func TestLintFinds(t *testing.T) {
	long := titleBlock()
	long.Title = strings.Repeat("a very long title ", 6)
	bare := titleBlock()
	bare.Owner = ""
	for _, tt := range []struct {
		name, want string
		draw       func(*drawing.Scene)
	}{
		{"text of 2 mm", "2.5 at least", func(s *drawing.Scene) { s.Text(drawing.P(50, 50), 2, drawing.Left, "x") }},
		{"a line through text", "crosses", func(s *drawing.Scene) {
			s.Text(drawing.P(50, 50), 5, drawing.Left, "word")
			s.Line(drawing.Narrow, drawing.P(40, 52), drawing.P(90, 52))
		}},
		{"a line through turned text", "crosses", func(s *drawing.Scene) {
			s.Turned(drawing.P(50, 50), 5, 45, drawing.Left, "words, many")
			s.Line(drawing.Narrow, drawing.P(40, 60), drawing.P(90, 60))
		}},
		{"text on text", "overlap", func(s *drawing.Scene) {
			s.Text(drawing.P(50, 50), 5, drawing.Left, "one")
			s.Text(drawing.P(52, 51), 5, drawing.Left, "two")
		}},
		{"pale text", "too pale", func(s *drawing.Scene) { s.In(drawing.Sky).Text(drawing.P(50, 50), 5, drawing.Left, "x") }},
		{"a line off the sheet", "leaves the sheet", func(s *drawing.Scene) { s.Line(drawing.Wide, drawing.P(0, 0), drawing.P(201, 0)) }},
		{"no owner", "Owner is empty", func(s *drawing.Scene) { s.TitleBlock(bare) }},
		{"a long title", "does not fit", func(s *drawing.Scene) { s.TitleBlock(long) }},
	} {
		s := drawing.New(200, 150, tt.name)
		tt.draw(s)
		if got := strings.Join(s.Lint(), "\n"); !strings.Contains(got, tt.want) {
			t.Errorf("%s: lint says %q, want %q", tt.name, got, tt.want)
		}
	}
	clean := drawing.New(200, 150, "clean")
	clean.Turned(drawing.P(50, 50), 5, 45, drawing.Left, "words, many")
	clean.Line(drawing.Narrow, drawing.P(40, 45), drawing.P(90, 45)) // inside the upright box around it, not across it
	if got := clean.Lint(); len(got) > 0 {
		t.Errorf("clean drawing: %v", got)
	}
}

// The text of a dimension is what is measured on the boat, whatever the scale,
// and never lies on its own lines.
func TestDimensions(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := drawing.New(4000, 4000, "Dimensions")
		k := rapid.SampledFrom([]float64{0.02, 0.1, 0.5, 1}).Draw(r, "scale")
		v := s.View(drawing.P(2000, 2000), drawing.P(0, 0), k, k)
		coord := rapid.Float64Range(-900, 900)
		a := drawing.P(coord.Draw(r, "ax"), coord.Draw(r, "ay"))
		b := drawing.P(coord.Draw(r, "bx"), coord.Draw(r, "by"))
		off := rapid.SampledFrom([]float64{-18, -10, 10, 18}).Draw(r, "off")
		var want float64
		switch rapid.IntRange(0, 2).Draw(r, "kind") {
		case 0:
			v.DimH(a, b, off, "")
			want = math.Abs(b.X - a.X)
		case 1:
			v.DimV(a, b, off, "")
			want = math.Abs(b.Y - a.Y)
		case 2:
			v.DimAligned(a, b, off, "")
			want = math.Hypot(b.X-a.X, b.Y-a.Y)
		}
		if want*k < 0.01 {
			return // nothing to see
		}
		var buf bytes.Buffer
		must(t, s.WriteSVG(&buf))
		if text := ">" + drawing.Millimetres(want) + "</text>"; !strings.Contains(buf.String(), text) {
			r.Fatalf("no text %q", text)
		}
		if c := s.Crossed(); c != "" {
			r.Fatalf("a line crosses %q", c)
		}
	})
}

// Hatching covers an area evenly: length of lines times spacing is the area
// (identity of the quadrature), holes left out.
func TestHatchCoversTheArea(t *testing.T) {
	for _, deg := range []float64{0, 30, 45, 90, 135} {
		s := drawing.New(300, 300, "Hatch")
		s.Hatch(deg, 0.5, drawing.Box{X0: 50, Y0: 50, X1: 250, Y1: 210}.Corners(), s.EllipseRing(drawing.P(150, 130), 60, 40, 0))
		got := 0.5 * s.LengthIn(drawing.Box{X1: 300, Y1: 300})
		want := 200*160 - math.Pi*60*40
		if !near(got, want, 0.005*want) {
			t.Errorf("at %g degrees: %.0f mm2 hatched, want %.0f", deg, got, want)
		}
	}
}

func TestFitTakesTheStandardScales(t *testing.T) {
	for _, tt := range []struct{ model, k float64 }{
		{9, 0.1}, {15, 0.2}, {45, 0.5}, {99.9, 1}, {100, 1}, {101, 2}, {450, 5}, {999, 10}, {1001, 20}, {4000, 50}, {9999, 100},
	} {
		s := drawing.New(100, 100, "Fit")
		_, k := s.Fit(drawing.Box{X1: 100, Y1: 100}, drawing.Box{X1: tt.model, Y1: tt.model / 2})
		want := tt.k
		if tt.model <= 10 {
			want = 0.1
		}
		if !near(k, want, 1e-12) {
			t.Errorf("%g mm into 100 mm: 1:%g, want 1:%g", tt.model, k, want)
		}
	}
}

func TestWrap(t *testing.T) {
	lines := drawing.Wrap("one two\nthree Donaudampfschiffahrtsgesellschaft 5\u00a0mm", 30, 2.5, false)
	for _, l := range lines {
		if w := drawing.TextWidth(2.5, false, l); w > 30 {
			t.Errorf("%q is %.1f mm wide", l, w)
		}
		if strings.HasSuffix(l, "5") {
			t.Errorf("%q was cut at a no-break space", l)
		}
	}
	if got := strings.Join(lines, ""); strings.ReplaceAll(got, " ", "") != "onetwothreeDonaudampfschiffahrtsgesellschaft5\u00a0mm" {
		t.Errorf("letters lost: %q", lines)
	}
}

func TestMistakesPanic(t *testing.T) {
	for name, f := range map[string]func(s *drawing.Scene){
		"a layer with a space":    func(s *drawing.Scene) { s.On("my layer") },
		"a point that is nowhere": func(s *drawing.Scene) { s.Line(drawing.Wide, drawing.P(math.NaN(), 0), drawing.P(1, 1)) },
		"a third width":           func(s *drawing.Scene) { s.Line(drawing.Line(9), drawing.P(0, 0), drawing.P(1, 1)) },
		"two lines of text":       func(s *drawing.Scene) { s.Text(drawing.P(0, 0), 3, drawing.Left, "a\nb") },
	} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%s was taken", name)
				}
			}()
			f(drawing.New(100, 100, name))
		}()
	}
}

func BenchmarkSVG(b *testing.B) {
	s := planSample()
	for b.Loop() {
		must(b, s.WriteSVG(io.Discard))
	}
}

func BenchmarkDrawAndSVG(b *testing.B) {
	for b.Loop() {
		must(b, planSample().WriteSVG(io.Discard))
	}
}

func BenchmarkPNG150(b *testing.B) {
	s := planSample()
	for b.Loop() {
		must(b, s.WritePNG(io.Discard, 150))
	}
}

func BenchmarkTemplatePDF(b *testing.B) {
	s := templateSample(480, 330)
	var pages int
	for b.Loop() {
		tl, err := s.Tile(tileOptions(drawing.A4))
		must(b, err)
		must(b, tl.WritePDF(io.Discard, drawing.Meta{Created: issued}))
		pages = len(tl.Tiles)
	}
	b.ReportMetric(float64(pages), "pages")
}
