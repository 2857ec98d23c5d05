package drawing_test

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/present/drawing"
)

var update = flag.Bool("update", false, "write the golden files anew")

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		must(t, os.MkdirAll("testdata", 0o755))
		must(t, os.WriteFile(file, got, 0o644))
	}
	want, err := os.ReadFile(file)
	must(t, err)
	if !bytes.Equal(got, want) {
		t.Errorf("%s differs from the golden file; look at it, then run with -update\n%s", name, got)
	}
}

// small has one of each thing.
func small() *drawing.Scene {
	s := drawing.New(60, 40, "Small & plain")
	s.Desc = "A plate with a hatched corner."
	v := s.View(drawing.P(10, 10), drawing.P(0, 0), 0.1, 0.1)
	v.On("CUT").Ring(drawing.Wide, drawing.P(0, 0), drawing.P(300, 0), drawing.P(300, 200), drawing.P(0, 200))
	v.Fill(drawing.Mid, []drawing.Point{drawing.P(0, 0), drawing.P(100, 0), drawing.P(0, 100)})
	v.Hatch(45, 3, []drawing.Point{drawing.P(200, 0), drawing.P(300, 0), drawing.P(300, 100)})
	v.In(drawing.Vermilion).Line(drawing.ChainNarrow, drawing.P(150, -20), drawing.P(150, 220))
	v.DimH(drawing.P(0, 200), drawing.P(300, 200), 4, "")
	s.On("TEXT").Turned(drawing.P(50, 12), 2.5, 90, drawing.Left, "90° <up>")
	return s
}

func TestGolden(t *testing.T) {
	for range 2 { // the same bytes twice
		var svg, paths, dxf bytes.Buffer
		must(t, small().WriteSVG(&svg))
		must(t, small().WriteSVGWith(&paths, drawing.SVGOptions{TextAsPaths: true}))
		must(t, small().WriteDXF(&dxf))
		golden(t, "small.svg", svg.Bytes())
		golden(t, "small.dxf", dxf.Bytes())
		if strings.Contains(paths.String(), "<text") {
			t.Error("text left in an SVG with text as paths")
		}
	}
}

func TestSVGIsWellFormedAndHasTwoWidths(t *testing.T) {
	width := regexp.MustCompile(`stroke-width="([^"]*)"`)
	for _, s := range []*drawing.Scene{small(), planSample(), sectionSample()} {
		for _, opt := range []drawing.SVGOptions{{}, {TextAsPaths: true}} {
			var buf bytes.Buffer
			must(t, s.WriteSVGWith(&buf, opt))
			wellFormed(t, buf.Bytes())
			seen := map[string]bool{}
			for _, m := range width.FindAllStringSubmatch(buf.String(), -1) {
				seen[m[1]] = true
			}
			if len(seen) != 2 || !seen[".25"] || !seen[".5"] {
				t.Errorf("%s: widths %v", s.Title, seen)
			}
			if strings.Contains(buf.String(), "style") {
				t.Errorf("%s: a style, which a strict page would refuse", s.Title)
			}
		}
	}
}

func wellFormed(t *testing.T, data []byte) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(data))
	for {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		must(t, err)
	}
}

// Any text and any points make a well-formed SVG.
func TestSVGOfAnything(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := drawing.New(100, 100, rapid.String().Draw(r, "title"))
		s.Text(drawing.P(50, 50), 2.5, drawing.Left, strings.Map(func(c rune) rune {
			if c == '\n' || c == '\r' || c == '\t' {
				return ' '
			}
			return c
		}, rapid.String().Draw(r, "text")))
		s.Polyline(drawing.Narrow, points(r, "line", 100)...)
		var buf bytes.Buffer
		must(t, s.WriteSVG(&buf))
		d := xml.NewDecoder(&buf)
		for {
			_, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			if err != nil {
				r.Fatal(err)
			}
		}
	})
}

func points(r *rapid.T, name string, reach float64) []drawing.Point {
	return rapid.SliceOfN(rapid.Custom(func(r *rapid.T) drawing.Point {
		return drawing.P(rapid.Float64Range(0, reach).Draw(r, "x"), rapid.Float64Range(0, reach).Draw(r, "y"))
	}), 2, 30).Draw(r, name)
}

// Cut into sheets, a drawing keeps its length and its areas: what the sheets
// own adds up to the whole, and each sheet shows all that its window holds.
func TestTilesHoldTheWhole(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		s := drawing.New(1000, 1000, "Anything")
		s.Ring(drawing.Wide, points(r, "ring", 900)...)
		s.Polyline(drawing.Narrow, points(r, "line", 900)...)
		s.Fill(drawing.Light, points(r, "area", 900))
		paper := rapid.SampledFrom([]drawing.Sheet{drawing.A4, drawing.Letter}).Draw(r, "paper")
		tl, err := s.Tile(tileOptions(paper))
		must(t, err)
		all := drawing.Box{X0: -1, Y0: -1, X1: 1001, Y1: 1001}
		length, area := 0.0, 0.0
		for _, tile := range tl.Tiles {
			length += s.LengthIn(tile.Owned)
			area += s.FillIn(tile.Owned)
			sheet := drawing.Box{X1: tile.Scene.Width, Y1: tile.Scene.Height}
			shown := tile.Scene.LengthIn(sheet, "SHEET", "CHECK", "MAP")
			if want := s.LengthIn(tile.Window); !near(shown, want, 1e-6*max(1, want)) {
				r.Fatalf("sheet %s shows %.4f mm, its window holds %.4f", tile.Name, shown, want)
			}
		}
		if want := s.LengthIn(all); !near(length, want, 1e-6*want) {
			r.Fatalf("lines: %.6f mm on the sheets, %.6f drawn", length, want)
		}
		if want := s.FillIn(all); !near(area, want, 1e-6*max(1, math.Abs(want))+1e-3) {
			r.Fatalf("areas: %.4f mm2 on the sheets, %.4f drawn", area, want)
		}
	})
}

// The middle of a large ring is empty: those sheets are not printed, and no
// sheet names a neighbour that is not there.
func TestEmptySheetsAreLeftOut(t *testing.T) {
	s := drawing.New(1400, 1400, "Ring")
	s.Circle(drawing.Wide, drawing.P(700, 700), 600)
	tl, err := s.Tile(tileOptions(drawing.A4))
	must(t, err)
	if grid := tl.Rows * tl.Columns; len(tl.Tiles) >= grid || len(tl.Tiles) < grid/3 {
		t.Errorf("%d sheets of %d", len(tl.Tiles), grid)
	}
	printed := map[string]bool{}
	for _, tile := range tl.Tiles {
		printed[tile.Name] = true
	}
	named := regexp.MustCompile(`(?:edge of|lay on) ([A-Z]+\d+)`)
	names := 0
	for _, tile := range tl.Tiles {
		var buf bytes.Buffer
		must(t, tile.Scene.WriteSVG(&buf))
		for _, m := range named.FindAllStringSubmatch(buf.String(), -1) {
			names++
			if !printed[m[1]] {
				t.Errorf("sheet %s names %s, which is not printed", tile.Name, m[1])
			}
		}
	}
	if names < len(tl.Tiles) {
		t.Errorf("only %d neighbours named on %d sheets", names, len(tl.Tiles))
	}
	if _, err := drawing.New(10, 10, "Nothing").Tile(drawing.TileOptions{}); err == nil {
		t.Error("an empty drawing was cut into sheets")
	}
	if _, err := s.Tile(drawing.TileOptions{Paper: drawing.Sheet{Name: "A6", Width: 105, Height: 148}}); err == nil {
		t.Error("A6 has no room for the bars but was taken")
	}
}

const readDXF = `
import sys, json, ezdxf
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
def area(e):
    p = [v.dxf.location for v in e.vertices]
    return abs(sum(a.x*b.y - b.x*a.y for a, b in zip(p, p[1:]+p[:1]))) / 2
msp = doc.modelspace()
lines = [(e.dxf.start - e.dxf.end).magnitude for e in msp.query('LINE[layer=="CHECK"]')]
print(json.dumps({
    "version": doc.dxfversion, "units": doc.header.get("$INSUNITS"), "metric": doc.header.get("$MEASUREMENT"),
    "errors": len(audit.errors), "fixes": len(audit.fixes),
    "layers": sorted(l.dxf.name for l in doc.layers),
    "areas": {e.dxf.layer: area(e) for e in msp.query('POLYLINE') if e.is_closed},
    "texts": [e.dxf.text for e in msp.query('TEXT')], "check": lines}))
`

// Another program reads the DXF without a fault, with the same layers, areas
// and texts and with check lines of 100 mm (independent reader: ezdxf).
func TestDXFReadBack(t *testing.T) {
	const python = "/usr/bin/python3"
	needs(t, python, "-c", "import ezdxf")
	file := filepath.Join(t.TempDir(), "template.dxf")
	s := templateSample(300, 200)
	s.On("CUT").In(drawing.Blue).Text(drawing.P(20, 20), 3.5, drawing.Right, "Größe ±5 % ½ ☺")
	var buf bytes.Buffer
	must(t, s.WriteDXF(&buf))
	for i, line := range bytes.SplitAfter(buf.Bytes(), []byte("\n")) {
		if len(line) > 0 && !bytes.HasSuffix(line, []byte("\r\n")) {
			t.Fatalf("line %d does not end in CR LF: %q", i+1, line)
		}
	}
	must(t, os.WriteFile(file, buf.Bytes(), 0o644))
	cmd := exec.Command(python, "-c", readDXF, file)
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	must(t, err)
	var got struct {
		Version       string
		Units, Metric int
		Errors, Fixes int
		Layers, Texts []string
		Areas         map[string]float64
		Check         []float64
	}
	must(t, json.Unmarshal(out, &got))
	if got.Version != "AC1009" || got.Units != 4 || got.Metric != 1 || got.Errors != 0 || got.Fixes != 0 {
		t.Errorf("version %s, units %d, metric %d, %d errors, %d fixes", got.Version, got.Units, got.Metric, got.Errors, got.Fixes)
	}
	for _, l := range []string{"PLY_03", "CUT", "TEXT", "CHECK"} {
		if !strings.Contains(strings.Join(got.Layers, " "), l) {
			t.Errorf("layer %s missing in %v", l, got.Layers)
		}
	}
	// Closed form: pi a b; the chords take away 0.01 % at most here.
	for layer, want := range map[string]float64{"PLY_03": math.Pi * 300 * 200, "CUT": math.Pi * 150 * 100} {
		if a := got.Areas[layer]; !near(a, want, 1e-4*want) {
			t.Errorf("area on %s: %.1f mm2, want %.1f", layer, a, want)
		}
	}
	if len(got.Check) != 2 || !near(got.Check[0], 100, 1e-9) || !near(got.Check[1], 100, 1e-9) {
		t.Errorf("check lines %v, want 100 and 100", got.Check)
	}
	if all := strings.Join(got.Texts, "|"); !strings.Contains(all, "PLY 3  0%%d fore and aft") || !strings.Contains(all, "Grosse %%p5 %%% 1/2 ?") {
		t.Errorf("texts %q", got.Texts)
	}
}
