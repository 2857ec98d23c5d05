package drawing_test

import (
	"bytes"
	"compress/zlib"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"codeberg.org/go-pdf/fpdf"
	"scarfwright/present/drawing"
)

// segment is a straight line on a page, in mm from its lower left corner.
type segment struct{ x0, y0, x1, y1 float64 }

func (s segment) level() bool     { return near(s.y0, s.y1, 1e-6) }
func (s segment) upright() bool   { return near(s.x0, s.x1, 1e-6) }
func (s segment) length() float64 { return math.Hypot(s.x1-s.x0, s.y1-s.y0) }

type page struct {
	width, height float64 // mm
	lines         []segment
	widths        []float64 // of the lines as stroked, mm
}

var (
	streams  = regexp.MustCompile(`(?s)<<([^>]*/Length (\d+)[^>]*)>>\nstream\n`)
	mediaBox = regexp.MustCompile(`/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]`)
)

// readPDF reads the pages of a PDF as a stranger would: it inflates the streams
// and follows the path operators and the matrices, knowing nothing of the scene.
func readPDF(t testing.TB, file []byte) []page {
	t.Helper()
	const mm = 25.4 / 72
	var pages []page
	for _, at := range streams.FindAllSubmatchIndex(file, -1) {
		size, _ := strconv.Atoi(string(file[at[4]:at[5]]))
		data := file[at[1] : at[1]+size]
		if bytes.Contains(file[at[2]:at[3]], []byte("FlateDecode")) {
			z, err := zlib.NewReader(bytes.NewReader(data))
			must(t, err)
			data, err = io.ReadAll(z)
			must(t, err)
		}
		if !bytes.Contains(data, []byte(" RG\n")) {
			continue // a font or a letter map
		}
		pages = append(pages, readPage(t, string(data)))
	}
	var boxes [][]string
	for _, m := range mediaBox.FindAllSubmatch(file, -1) {
		boxes = append(boxes, []string{string(m[1]), string(m[2])})
	}
	for i := range pages {
		// The default box is that of the page tree, which comes last.
		b := boxes[min(i, len(boxes)-1)]
		if len(boxes) <= len(pages) {
			b = boxes[len(boxes)-1]
		}
		w, _ := strconv.ParseFloat(b[0], 64)
		h, _ := strconv.ParseFloat(b[1], 64)
		pages[i].width, pages[i].height = w*mm, h*mm
	}
	return pages
}

func readPage(t testing.TB, data string) page {
	t.Helper()
	const mm = 25.4 / 72
	var (
		pg          page
		args        []float64
		x, y        float64 // current point
		sx, sy      float64 // start of the run
		path        []segment
		width       float64 // in force
		tx, ty, one = 0.0, 0.0, 1.0
		stack       [][3]float64
	)
	num := func(i int) float64 { return args[len(args)-i] }
	for _, line := range strings.Split(data, "\n") {
		if strings.Contains(line, "BT") {
			continue // text
		}
		for _, f := range strings.Fields(line) {
			if v, err := strconv.ParseFloat(f, 64); err == nil {
				args = append(args, v)
				continue
			}
			switch f {
			case "q":
				stack = append(stack, [3]float64{tx, ty, one})
			case "Q":
				s := stack[len(stack)-1]
				stack, tx, ty, one = stack[:len(stack)-1], s[0], s[1], s[2]
			case "cm":
				if num(6) != num(3) || num(5) != 0 {
					break // turned: only text is
				}
				tx, ty, one = tx+one*num(2), ty+one*num(1), one*num(6)
			case "m":
				x, y = num(2), num(1)
				sx, sy = x, y
			case "l":
				path = append(path, segment{(tx + one*x) * mm, (ty + one*y) * mm, (tx + one*num(2)) * mm, (ty + one*num(1)) * mm})
				x, y = num(2), num(1)
			case "h":
				path = append(path, segment{(tx + one*x) * mm, (ty + one*y) * mm, (tx + one*sx) * mm, (ty + one*sy) * mm})
			case "w":
				width = num(1) * one * mm
			case "S":
				pg.widths = append(pg.widths, width)
				pg.lines, path = append(pg.lines, path...), nil
			case "f*", "f":
				path = nil
			}
			args = args[:0]
		}
	}
	return pg
}

// checkBars finds the two 100 mm bars of a page by their three ticks of 4 mm,
// and returns what lies between the centres of the outer ones.
func checkBars(t testing.TB, p page) (x, y float64) {
	t.Helper()
	measure := func(turn bool) float64 {
		for _, l := range p.lines {
			flat, ticks := l.level(), 0
			if turn {
				flat = l.upright()
			}
			if !flat || l.length() < 90 || l.length() > 110 {
				continue
			}
			var at []float64
			for _, k := range p.lines {
				if !near(k.length(), 4, 0.01) {
					continue
				}
				if !turn && k.upright() && near((k.y0+k.y1)/2, l.y0, 0.01) {
					at, ticks = append(at, k.x0), ticks+1
				}
				if turn && k.level() && near((k.x0+k.x1)/2, l.x0, 0.01) {
					at, ticks = append(at, k.y0), ticks+1
				}
			}
			if ticks == 3 {
				return slices.Max(at) - slices.Min(at)
			}
		}
		t.Fatalf("no check bar found (turned: %v)", turn)
		return 0
	}
	return measure(false), measure(true)
}

// A template's bars and the shape itself are true in the file as parsed, on A4
// and Letter, compressed and not; tolerance of 0.05 mm from the issue, of 0.01
// mm from our own rule for vectors.
func TestPDFIsTrueToScale(t *testing.T) {
	for _, paper := range []drawing.Sheet{drawing.A4, drawing.Letter} {
		for _, open := range []bool{true, false} {
			// A plate of 120 x 60 mm: the bars alone could be right on a wrong drawing.
			s := drawing.New(300, 300, "Plate")
			s.Rect(drawing.Wide, drawing.Box{X0: 13, Y0: 17, X1: 133, Y1: 77})
			tl, err := s.Tile(tileOptions(paper))
			must(t, err)
			var buf bytes.Buffer
			must(t, tl.WritePDF(&buf, drawing.Meta{Created: issued, Uncompressed: open}))
			pages := readPDF(t, buf.Bytes())
			if len(pages) != 1 {
				t.Fatalf("%s: %d pages, want 1", paper.Name, len(pages))
			}
			p := pages[0]
			if !near(p.width, paper.Width, 0.01) || !near(p.height, paper.Height, 0.01) {
				t.Errorf("%s: page %.3f x %.3f mm", paper.Name, p.width, p.height)
			}
			x, y := checkBars(t, p)
			if !near(x, 100, 0.01) || !near(y, 100, 0.01) {
				t.Errorf("%s: bars %.4f and %.4f mm, want 100", paper.Name, x, y)
			}
			found := map[string]int{}
			for _, l := range p.lines {
				switch {
				case l.level() && near(l.length(), 120, 0.01):
					found["120"]++
				case l.upright() && near(l.length(), 60, 0.01):
					found["60"]++
				}
			}
			if found["120"] != 2 || found["60"] != 2 {
				t.Errorf("%s: sides of the plate found: %v, want two of each", paper.Name, found)
			}
			if !bytes.Contains(buf.Bytes(), []byte("/ViewerPreferences <</PrintScaling /None>>")) {
				t.Errorf("%s: no PrintScaling", paper.Name)
			}
		}
	}
}

// Every page of a template over several sheets has both bars, and nothing of
// the shape reaches beyond the frame: it is cut, not covered.
func TestEverySheetHasBarsAndIsCut(t *testing.T) {
	for _, paper := range []drawing.Sheet{drawing.A4, drawing.Letter} {
		tl, err := templateSample(300, 200).Tile(tileOptions(paper))
		must(t, err)
		var buf bytes.Buffer
		must(t, tl.WritePDF(&buf, drawing.Meta{Created: issued}))
		pages := readPDF(t, buf.Bytes())
		if len(pages) != len(tl.Tiles) || len(pages) < 8 {
			t.Fatalf("%s: %d pages for %d sheets", paper.Name, len(pages), len(tl.Tiles))
		}
		for i, p := range pages {
			x, y := checkBars(t, p)
			if !near(x, 100, 0.05) || !near(y, 100, 0.05) {
				t.Errorf("%s %s: bars %.4f and %.4f mm", paper.Name, tl.Tiles[i].Name, x, y)
			}
			for _, l := range p.lines {
				for _, v := range []float64{l.x0, l.x1} {
					if v < 10-0.01 || v > tl.Tiles[i].Scene.Width-10+0.01 {
						t.Fatalf("%s %s: a line reaches x = %.2f mm", paper.Name, tl.Tiles[i].Name, v)
					}
				}
				for _, v := range []float64{l.y0, l.y1} {
					if v < 10-0.01 || v > tl.Tiles[i].Scene.Height-10+0.01 {
						t.Fatalf("%s %s: a line reaches y = %.2f mm", paper.Name, tl.Tiles[i].Name, v)
					}
				}
			}
		}
	}
}

func TestPDFHasTwoWidths(t *testing.T) {
	for _, s := range []*drawing.Scene{planSample(), sectionSample()} {
		var buf bytes.Buffer
		must(t, s.WritePDF(&buf, drawing.Meta{Created: issued}))
		seen := map[float64]bool{}
		for _, w := range readPDF(t, buf.Bytes())[0].widths {
			seen[math.Round(w*1000)/1000] = true
		}
		if len(seen) != 2 || !seen[0.25] || !seen[0.5] {
			t.Errorf("%s: widths %v, want 0.25 and 0.5 mm", s.Title, seen)
		}
	}
}

func TestPDFIsTheSameTwice(t *testing.T) {
	write := func() []byte {
		tl, err := templateSample(300, 200).Tile(tileOptions(drawing.A4))
		must(t, err)
		var buf bytes.Buffer
		must(t, tl.WritePDF(&buf, drawing.Meta{Created: issued}))
		return buf.Bytes()
	}
	if !bytes.Equal(write(), write()) {
		t.Error("two writings of one template differ")
	}
	if err := planSample().WritePDF(io.Discard, drawing.Meta{}); err == nil {
		t.Error("a PDF without a date of issue was written")
	}
}

// A scene placed in another document at half size keeps its proportions, and
// the document keeps its font.
func TestPlaceInPDF(t *testing.T) {
	s := drawing.New(100, 50, "Plate")
	s.Rect(drawing.Wide, drawing.Box{X0: 10, Y0: 10, X1: 90, Y1: 40})
	s.Text(drawing.P(50, 25), drawing.TextNormal, drawing.Centre, "plate")
	pdf := fpdf.New("P", "mm", "A4", "")
	pdf.AddPage()
	drawing.AddFonts(pdf)
	pdf.SetFont(drawing.FontFamily, "B", 17)
	drawing.PlaceInPDF(pdf, s, 30, 40, 0.5)
	if size, _ := pdf.GetFontSize(); size != 17 || pdf.GetFontStyle() != "B" {
		t.Errorf("font after placing: %g %q", size, pdf.GetFontStyle())
	}
	var buf bytes.Buffer
	must(t, drawing.Output(pdf, &buf, drawing.Meta{Created: issued}))
	p := readPDF(t, buf.Bytes())[0]
	// Lower left corner at 30 + 5 from the left, 40 + 20 down from the top.
	want := segment{35, 297 - 60, 75, 297 - 60}
	got := p.lines[0]
	if !near(got.x0, want.x0, 0.01) || !near(got.y0, want.y0, 0.01) || !near(got.x1, want.x1, 0.01) {
		t.Errorf("lower side %v, want %v", got, want)
	}
	if !near(p.widths[0], 0.25, 1e-3) {
		t.Errorf("width %g, want 0.25 at half size", p.widths[0])
	}
}
