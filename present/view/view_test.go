package view_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"scarfwright/present/drawing"
	"scarfwright/present/internal/planned"
	"scarfwright/present/view"
	"scarfwright/repair"
	"scarfwright/repair/job"
)

// variants are repairs of every sort the pictures must show.
func variants(t testing.TB) map[string]repair.Result {
	t.Helper()
	return map[string]repair.Result{
		"both-faces-in-reach": planned.Demo(t, "day-launch"),
		"one-side":            planned.Demo(t, "sloop", planned.Painted),
		"sandwich":            planned.Demo(t, "rib-console", planned.Painted),
		"longer-than-the-bay": planned.Demo(t, "work-skiff"),
		"from-inside":         planned.Demo(t, "day-launch", func(d *job.Description) { d.Choices.Taper = "inside" }),
		"from-both":           planned.Demo(t, "day-launch", func(d *job.Description) { d.Choices.Taper = "both" }),
		"largest-first":       planned.Demo(t, "day-launch", func(d *job.Description) { d.Choices.Order = "largest first" }),
		"partial": planned.Demo(t, "day-launch", func(d *job.Description) {
			d.Damage.Depth, d.Damage.Deep = "partial", 0.0028
		}),
		"crossing-us": planned.Demo(t, "day-launch", func(d *job.Description) {
			d.Choices.Ratio, d.Choices.Units = 20, "us"
		}),
	}
}

// TestLook writes the pictures to the folder in VIEW_LOOK, to be looked at.
func TestLook(t *testing.T) {
	dir := os.Getenv("VIEW_LOOK")
	if dir == "" {
		t.Skip("set VIEW_LOOK to a folder to write the pictures there")
	}
	for name, r := range variants(t) {
		for kind, s := range map[string]*drawing.Scene{"section": view.Section(r), "plan": view.Plan(r), "options": view.Options(r)} {
			var b bytes.Buffer
			if err := s.WritePDF(&b, drawing.Meta{Created: time.Date(2026, 4, 6, 0, 0, 0, 0, time.UTC)}); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join(dir, name+"-"+kind+".pdf"), b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// TestThePicturesPassTheDrawingOffice runs the lint of package drawing over
// every picture: text on text, lines through text, things off the sheet.
func TestThePicturesPassTheDrawingOffice(t *testing.T) {
	for name, r := range variants(t) {
		for kind, s := range map[string]*drawing.Scene{"section": view.Section(r), "plan": view.Plan(r), "options": view.Options(r)} {
			for _, fault := range s.Lint() {
				t.Errorf("%s of %s: %s", kind, name, fault)
			}
		}
	}
}

func TestOnlyALaminateIsDrawn(t *testing.T) {
	r := planned.Demo(t, "club-dinghy")
	if view.Section(r) != nil || view.Plan(r) != nil || view.Options(r) != nil || view.Templates(r) != nil {
		t.Error("a scratch in the gelcoat got a drawing of a laminate")
	}
}

// TestAPortPanelHasItsBowOnTheLeft: looking at the outside of a boat's port side,
// the bow is to the left; from inside it is to the right, and on starboard all
// is the other way round.
func TestAPortPanelHasItsBowOnTheLeft(t *testing.T) {
	for _, row := range []struct {
		side, taper, want string
	}{
		{"port", "outside", "Seen from the outside, forward to the left"},
		{"port", "inside", "Seen from the inside, forward to the right"},
		{"starboard", "outside", "Seen from the outside, forward to the right"},
		{"starboard", "inside", "Seen from the inside, forward to the left"},
	} {
		r := planned.Demo(t, "day-launch", func(d *job.Description) {
			d.Panel.Side, d.Choices.Taper = row.side, row.taper
			// An outline whose tip points forward, so that a mirror shows.
			d.Damage.Dead = &job.Outline{Points: []job.Point{{X: -0.1, Y: -0.06}, {X: 0.15, Y: 0}, {X: -0.1, Y: 0.06}}}
		})
		if got := view.Plan(r).Desc; !strings.Contains(got, row.want) {
			t.Errorf("%s, %s: got %q, want %q in it", row.side, row.taper, got, row.want)
		}
		left := strings.HasSuffix(row.want, "left")
		if got := tipIsLeft(t, view.Templates(r)[0]); got != left {
			t.Errorf("%s from %s: the cut-out's forward tip on the left: got %v, want %v", row.side, row.taper, got, left)
		}
	}
}

// tipIsLeft reports whether the cut-out's outline, read from the DXF, reaches
// farther left from the middle of its height than right: a triangle's tip is at
// half its height, its base at the ends.
func tipIsLeft(t *testing.T, p view.Piece) bool {
	t.Helper()
	ring := outlines(t, p.Scene())[0]
	low, lowX := ring[0][1], ring[0][0]
	x0, x1 := ring[0][0], ring[0][0]
	for _, q := range ring {
		x0, x1 = min(x0, q[0]), max(x1, q[0])
		if q[1] < low {
			low, lowX = q[1], q[0]
		}
	}
	return lowX > (x0+x1)/2 // the lowest point is a corner of the base
}

// outlines reads the closed lines back from a scene's DXF.
func outlines(t *testing.T, s *drawing.Scene) [][][2]float64 {
	t.Helper()
	var b bytes.Buffer
	if err := s.WriteDXF(&b); err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.ReplaceAll(b.String(), "\r\n", "\n"), "\n")
	var out [][][2]float64
	vertex, line, closed := false, false, false
	var x float64
	for i := 0; i+1 < len(lines); i += 2 {
		code, value := strings.TrimSpace(lines[i]), lines[i+1]
		switch {
		case code == "0":
			vertex, line = value == "VERTEX", value == "POLYLINE"
			closed = closed && (vertex || value == "SEQEND")
		case code == "70" && line && strings.TrimSpace(value) == "1":
			closed = true
			out = append(out, nil)
		case vertex && closed && code == "10":
			x, _ = strconv.ParseFloat(value, 64)
		case vertex && closed && code == "20":
			y, _ := strconv.ParseFloat(value, 64)
			out[len(out)-1] = append(out[len(out)-1], [2]float64{x, y})
		}
	}
	if len(out) == 0 {
		t.Fatal("no closed line in the DXF")
	}
	return out
}

func ringArea(r [][2]float64) float64 {
	a := 0.0
	for i, p := range r {
		q := r[(i+1)%len(r)]
		a += p[0]*q[1] - q[0]*p[1]
	}
	return math.Abs(a / 2)
}

// TestTemplatesHaveTheAreasOfTheResult reads every piece back from its DXF: the
// first closed line is the piece, and its area is what the cutting list says.
func TestTemplatesHaveTheAreasOfTheResult(t *testing.T) {
	for _, name := range []string{"both-faces-in-reach", "one-side", "sandwich", "from-inside", "from-both"} {
		r := variants(t)[name]
		pieces := view.Templates(r)
		byLabel, layers := map[string]view.Piece{}, map[string]bool{}
		for _, p := range pieces {
			if layers[p.Layer] {
				t.Errorf("%s: two pieces on layer %s", name, p.Layer)
			}
			layers[p.Layer] = true
			byLabel[p.Label] = p
		}
		for _, ply := range r.Design.Plies {
			p, ok := byLabel[ply.Label]
			if !ok {
				t.Errorf("%s: ply %s has no template", name, ply.Label)
				continue
			}
			got, want := ringArea(outlines(t, p.Scene())[0]), ply.Area.MM2()
			if math.Abs(got-want) > 1e-4*want {
				t.Errorf("%s: template of %s has %.1f mm², want %.1f", name, ply.Label, got, want)
			}
		}
		var b bytes.Buffer
		if err := view.Layout(r, pieces).WriteDXF(&b); err != nil {
			t.Fatal(err)
		}
		for _, p := range pieces {
			if !strings.Contains(b.String(), "\r\n"+p.Layer+"\r\n") {
				t.Errorf("%s: layer %s is not in the DXF of all pieces", name, p.Layer)
			}
		}
	}
}

// TestACrossingIsHatchedAndSaid looks into the plan's SVG: for each clearance
// that is used up there are words, and a bold zone with its hatch.
func TestACrossingIsHatchedAndSaid(t *testing.T) {
	tank := func(d *job.Description) {
		// A slanted tank's edge that the feather edge runs over, and a frame it does not.
		d.Panel.Features = []job.Feature{
			{What: "tank", From: job.Point{X: 0.15, Y: -0.15}, To: job.Point{X: 0.2, Y: 0.15}},
			{What: "hose", From: job.Point{X: -0.29, Y: -0.1}, To: job.Point{X: -0.29, Y: 0.1}},
		}
	}
	for name, row := range map[string]struct {
		r    repair.Result
		want int
	}{
		"20:1 over both stringers": {variants(t)["crossing-us"], 2},
		"longer than the bay":      {variants(t)["longer-than-the-bay"], 2},
		"over a tank":              {planned.Demo(t, "day-launch", tank), 1},
		"clear":                    {variants(t)["both-faces-in-reach"], 0},
	} {
		var b bytes.Buffer
		if err := view.Plan(row.r).WriteSVG(&b); err != nil {
			t.Fatal(err)
		}
		if got := strings.Count(b.String(), ">CROSSES"); got != row.want {
			t.Errorf("%s: %d crossings said, want %d", name, got, row.want)
		}
		// One path of a zone's outline and one of its hatch, both vermilion.
		if got := strings.Count(b.String(), `class="vermilion"`); got != 2*row.want {
			t.Errorf("%s: %d vermilion paths, want %d", name, got, 2*row.want)
		}
	}
}

// svgOf is a picture as text.
func svgOf(t testing.TB, s *drawing.Scene) string {
	t.Helper()
	var b bytes.Buffer
	if err := s.WriteSVG(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestADishIsNeverACutOut: where some of the laminate stays, no drawing and no
// template speaks of cutting out, each says how much stays, and the layer of
// the inner outline is called the floor's.
func TestADishIsNeverACutOut(t *testing.T) {
	dish, hole := variants(t)["partial"], variants(t)["both-faces-in-reach"]
	for name, r := range map[string]repair.Result{"dish": dish, "hole": hole} {
		pieces := view.Templates(r)
		scenes := map[string]*drawing.Scene{"section": view.Section(r), "plan": view.Plan(r), "options": view.Options(r), "templates": view.Layout(r, pieces)}
		for _, p := range pieces {
			scenes[p.Label] = p.Scene()
		}
		for kind, s := range scenes {
			got := strings.Contains(strings.ToLower(svgOf(t, s)), "cut-out")
			if got && name == "dish" {
				t.Errorf("%s of a dish speaks of a cut-out", kind)
			}
			if name == "hole" && kind == "plan" && !got {
				t.Errorf("%s of a hole does not name the cut-out: this test looks for the wrong word", kind)
			}
		}
		if got, want := pieces[0].Layer, map[string]string{"dish": "FLOOR", "hole": "CUTOUT"}[name]; got != want {
			t.Errorf("inner outline of a %s: layer %s, want %s", name, got, want)
		}
	}
	// 2.8 mm deep reaches into ply 4 of 5.4 mm; whole plies are ground: see Depth.
	left := dish.Design.Original.Thickness.MM() - dish.Design.Depth.MM()
	for kind, s := range map[string]*drawing.Scene{"section": view.Section(dish), "plan": view.Plan(dish), "floor": view.Templates(dish)[0].Scene()} {
		svg := svgOf(t, s)
		for _, want := range []string{fmt.Sprintf("%.1f mm stay", left), "do not cut through"} {
			if !strings.Contains(svg, want) {
				t.Errorf("%s of a dish does not say %q", kind, want)
			}
		}
	}
}

// TestALayerCarriesItsPlysNumber, also where a cover lies between the plies.
func TestALayerCarriesItsPlysNumber(t *testing.T) {
	for name, r := range variants(t) {
		for _, p := range view.Templates(r) {
			if n, err := strconv.Atoi(strings.TrimPrefix(p.Label, "P")); err == nil {
				if want := fmt.Sprintf("PLY_%02d", n); p.Layer != want {
					t.Errorf("%s: %s is on layer %s, want %s", name, p.Label, p.Layer, want)
				}
			}
		}
	}
}

// TestNothingIsDrawnOnAFaceNobodyReaches: with access from the inside only there
// is no form on the outside.
func TestNothingIsDrawnOnAFaceNobodyReaches(t *testing.T) {
	r := planned.Demo(t, "day-launch", func(d *job.Description) { d.Damage.Access = "inside" })
	if r.Design.Backing != nil || r.Design.FarSide != nil {
		t.Fatal("the design puts something on the outer face: look at the section again")
	}
	if svg := svgOf(t, view.Section(r)); strings.Contains(svg, "form, taken off") {
		t.Error("a form is drawn on the outer face, which nobody reaches")
	}
}
