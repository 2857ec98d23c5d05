package view_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
	"scarfwright/present/drawing"
	"scarfwright/present/view"
)

// The data of these charts are invented: curves with the right look and no
// material behind them.

const chartNote = "Invented data, to look at the drawing."

func cureChart(width float64, us bool) view.CureChart {
	c := view.CureChart{
		Paper: view.Paper{Room: view.Room{Width: width}, US: us, Note: chartNote, Caution: "The makers' sheets rule."},
		Clock: true, Mixed: si.Hours(8.5),
		Limits: []view.TempLimit{{Name: "over foam", Temp: si.Celsius(60)}},
		Windows: []view.ChartWindow{
			{Name: "work", To: si.Minutes(35)},
			{Name: "gelled", From: si.Hours(3.4)},
			{Name: "recoat without sanding", From: si.Hours(4), To: si.Hours(13)},
			{Name: "sandable", From: si.Hours(15.5)},
		},
	}
	var hull, middle, air view.TempCurve
	hull.Name, middle.Name, air.Name = "hull", "laminate, middle", "air"
	var mid, face view.CureCurve
	mid.Name, face.Name = "cure, middle", "cure, face"
	for i := 0; i <= 240; i++ {
		h := float64(i) / 8
		at := si.Hours(h)
		a := 17 + 5*math.Cos(2*math.Pi*(h+8.5-15)/24)
		u := 16.5 + 4*math.Cos(2*math.Pi*(h+8.5-17)/24)
		rise := 34 * math.Exp(-math.Pow((h-3.2)/1.5, 2))
		air.Points = append(air.Points, view.TempAt{At: at, Temp: si.Celsius(a)})
		hull.Points = append(hull.Points, view.TempAt{At: at, Temp: si.Celsius(u + 0.25*rise)})
		middle.Points = append(middle.Points, view.TempAt{At: at, Temp: si.Celsius(u + rise)})
		mid.Points = append(mid.Points, view.CureAt{At: at, Cure: si.Ratio(0.83 / (1 + math.Exp(-(h-3.4)*1.4)))})
		face.Points = append(face.Points, view.CureAt{At: at, Cure: si.Ratio(0.78 * (1 - math.Exp(-math.Pow(h/7, 1.6))))})
	}
	c.Temps = []view.TempCurve{middle, hull, air}
	c.Cures = []view.CureCurve{mid, face}
	c.Mark = view.TempAt{At: si.Hours(3.25), Temp: middle.Points[26].Temp}
	return c
}

func profileChart(width float64, us bool) view.ProfileChart {
	c := view.ProfileChart{
		Paper: view.Paper{Room: view.Room{Width: width}, US: us, Note: chartNote},
		Faces: [2]string{"outside", "inside"},
		Layers: []view.ProfileLayer{
			{Name: "new plies", Thick: si.MM(5), Kind: view.NewLayer},
			{Name: "old laminate", Thick: si.MM(1.5), Kind: view.OldLayer},
			{Name: "old foam core", Thick: si.MM(15), Kind: view.CoreLayer},
			{Name: "old inner skin", Thick: si.MM(2), Kind: view.OldLayer},
			{Name: "topcoat", Thick: si.MM(0.4), Kind: view.OldLayer},
		},
		Limits: []view.LayerLimit{{Name: "over foam", Temp: si.Celsius(60), Layer: 3}, {Name: "plain laminate", Temp: si.Celsius(80), Layer: 1}},
	}
	var peak, later view.ProfileCurve
	peak.Name, later.Name = "at the peak, 52 min", "2 h after mixing"
	for i := 0; i <= 60; i++ {
		x := 23.9 * float64(i) / 60
		t := 20 + 51*math.Exp(-math.Pow((x-3)/4.2, 2))
		peak.Points = append(peak.Points, view.TempDeep{Deep: si.MM(x), Temp: si.Celsius(t)})
		later.Points = append(later.Points, view.TempDeep{Deep: si.MM(x), Temp: si.Celsius(20 + 16*math.Exp(-math.Pow((x-5)/8, 2)))})
	}
	c.Profiles = []view.ProfileCurve{peak, later}
	return c
}

func potChart(width float64, us bool) view.PotChart {
	c := view.PotChart{Paper: view.Paper{Room: view.Room{Width: width}, US: us, Note: chartNote}, Material: "laminating epoxy, slow", Criterion: "gel in a cup"}
	for _, t := range []float64{10, 15, 20, 25, 30} {
		l := view.PotLine{Temp: si.Celsius(t)}
		for _, m := range []float64{50, 70, 100, 140, 200, 300, 500, 700, 1000} {
			mid := 34 * math.Pow(2, (25-t)/10) * (1 + 45*math.Exp((25-t)/14)/m) / 1.45
			b := 1.08 + 0.004*math.Abs(t-25)*(1+40/m)
			l.Points = append(l.Points, view.PotAt{Mass: si.Grams(m), Low: si.Minutes(mid / b), Time: si.Minutes(mid), High: si.Minutes(mid * b), Beyond: t < 15 || m > 500})
		}
		c.Lines = append(c.Lines, l)
	}
	return c
}

func charts() map[string]*drawing.Scene {
	out := map[string]*drawing.Scene{}
	for _, w := range []float64{180, 120, 80} {
		for _, us := range []bool{false, true} {
			name := fmt.Sprintf("%.0f", w)
			if us {
				name += "-us"
			}
			out["cure-"+name] = cureChart(w, us).Scene()
			out["profile-"+name] = profileChart(w, us).Scene()
			out["pot-"+name] = potChart(w, us).Scene()
		}
	}
	since := cureChart(180, false)
	since.Clock = false
	out["cure-since-180"] = since.Scene()
	return out
}

// TestLookAtCharts writes the charts to the folder in VIEW_LOOK, to be looked at.
func TestLookAtCharts(t *testing.T) {
	dir := os.Getenv("VIEW_LOOK")
	if dir == "" {
		t.Skip("set VIEW_LOOK to a folder to write the charts there")
	}
	for name, s := range charts() {
		var b bytes.Buffer
		if err := s.WritePNG(&b, 200); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name+".png"), b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// TestChartsPassTheDrawingOffice: no text on text, no line through text, nothing
// off the sheet, on any width, in either system.
func TestChartsPassTheDrawingOffice(t *testing.T) {
	for name, s := range charts() {
		for _, fault := range s.Lint() {
			t.Errorf("%s: %s", name, fault)
		}
	}
}

func svg(t testing.TB, s *drawing.Scene) string {
	t.Helper()
	var b bytes.Buffer
	if err := s.WriteSVG(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestChartsAreTheSameEveryTime(t *testing.T) {
	again := charts()
	for name, s := range charts() {
		if svg(t, s) != svg(t, again[name]) {
			t.Errorf("%s differs from one drawing to the next", name)
		}
	}
}

// TestEveryNameStandsOnTheChart: curves, limits, windows and layers are named
// in words on every width, whole words of a broken line counted one by one.
func TestEveryNameStandsOnTheChart(t *testing.T) {
	for name, s := range charts() {
		want := "hull middle air cure, face limit foam work gelled recoat sandable day"
		switch {
		case strings.HasPrefix(name, "profile"):
			want = "new plies foam core inner skin topcoat limit peak mixing outside inside depth"
		case strings.HasPrefix(name, "pot"):
			want = "Minutes gel cup slow Dashed brackets mass"
		}
		if strings.HasPrefix(name, "cure-since") {
			want = "time since mixing"
		}
		text := svg(t, s)
		for _, w := range strings.Fields(want) {
			if !strings.Contains(text[strings.Index(text, "</desc>"):], w) {
				t.Errorf("%s: %q is nowhere on it", name, w)
			}
		}
	}
}

func TestChartsInUSUnits(t *testing.T) {
	for name, s := range charts() {
		text, us := svg(t, s), strings.HasSuffix(name, "-us")
		if strings.Contains(text, "°F") != us || strings.Contains(text, "°C") == us {
			t.Errorf("%s: degrees of the wrong system", name)
		}
		if us && strings.HasPrefix(name, "pot") && !strings.Contains(text, "oz (mass)") {
			t.Errorf("%s: ounces that do not say of what", name)
		}
	}
	// 60 °C is 140 °F exactly.
	if text := cureChart(180, true).Scene().Desc; !strings.Contains(text, "limit 140 °F over foam") {
		t.Errorf("got %q", text)
	}
}

// TestTheTablesFiguresAreThePoints: at a mass that is a point of the line the
// table says the point, rounded down; between two points on log axes their
// geometric mean (100 g and 400 g with 40 and 20 min: 200 g, 28.28 min; 500 g
// is ln 1.25/ln 2.5 of the way from 20 to 15 min, 18.65 min); and it stars what is beyond the sheet.
func TestTheTablesFiguresAreThePoints(t *testing.T) {
	m := func(g, lo, mid, hi float64, beyond bool) view.PotAt {
		return view.PotAt{Mass: si.Grams(g), Low: si.Minutes(lo), Time: si.Minutes(mid), High: si.Minutes(hi), Beyond: beyond}
	}
	c := view.PotChart{Lines: []view.PotLine{{Temp: si.Celsius(20), Points: []view.PotAt{m(100, 35.9, 40, 45, false), m(400, 18, 20, 22, false), m(1000, 14, 15, 16, true)}}}}
	got := c.Scene().Desc
	for _, want := range []string{"100 g 40 (35–45)", "200 g 28 (", "500 g 18*", "1000 g 15* (14–16)", "beyond the sheet"} {
		if !strings.Contains(got, want) {
			t.Errorf("got %q, want %q in it", got, want)
		}
	}
}

func TestChartsOfNothing(t *testing.T) {
	one := view.TempCurve{Name: "hull", Points: []view.TempAt{{Temp: si.Celsius(20)}}}
	if (view.CureChart{}).Scene() != nil || (view.CureChart{Temps: []view.TempCurve{one}}).Scene() != nil ||
		(view.ProfileChart{}).Scene() != nil || (view.PotChart{}).Scene() != nil {
		t.Error("a chart of nothing was drawn")
	}
}

// TestAHeldJobsChartSaysSo: what holds the job stands on top.
func TestAHeldJobsChartSaysSo(t *testing.T) {
	c := potChart(80, false)
	c.Held = []string{view.StopWords + " until these are settled: hull temperature, 8 °C."}
	s := c.Scene()
	if text := svg(t, s); !strings.Contains(text, view.StopWords[:5]) {
		t.Error("the stop is not on the chart")
	}
	for _, fault := range s.Lint() {
		t.Error(fault)
	}
}

// TestAnyCureChartPassesTheDrawingOffice: whatever the curves, the windows, the
// width and the span of time, no word stands on another or on a line.
func TestAnyCureChartPassesTheDrawingOffice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		end := rapid.Float64Range(0.4, 200).Draw(t, "hours")
		c := view.CureChart{
			Paper: view.Paper{Room: view.Room{Width: rapid.Float64Range(80, 200).Draw(t, "width")}, US: rapid.Bool().Draw(t, "us")},
			Clock: rapid.Bool().Draw(t, "clock"), Mixed: si.Hours(rapid.Float64Range(0, 24).Draw(t, "mixed")),
		}
		for k := range rapid.IntRange(1, 4).Draw(t, "curves") {
			a := view.TempCurve{Name: fmt.Sprintf("place number %d", k+1)}
			b := view.CureCurve{Name: fmt.Sprintf("cure %d", k+1)}
			base, rise, when := rapid.Float64Range(-5, 40).Draw(t, "base"), rapid.Float64Range(0, 120).Draw(t, "rise"), rapid.Float64Range(0, 1).Draw(t, "when")
			for i := range 60 {
				x := float64(i) / 59
				a.Points = append(a.Points, view.TempAt{At: si.Hours(x * end), Temp: si.Celsius(base + rise*math.Exp(-50*(x-when)*(x-when)))})
				b.Points = append(b.Points, view.CureAt{At: si.Hours(x * end), Cure: si.Ratio(1 / (1 + math.Exp(-20*(x-when))))})
			}
			c.Temps, c.Cures = append(c.Temps, a), append(c.Cures, b)
		}
		for range rapid.IntRange(0, 4).Draw(t, "windows") {
			v := view.ChartWindow{Name: "recoat without sanding", From: si.Hours(rapid.Float64Range(0, 1.2*end).Draw(t, "from"))}
			if rapid.Bool().Draw(t, "closed") {
				v.To = v.From + si.Hours(rapid.Float64Range(0.01, end).Draw(t, "long"))
			}
			c.Windows = append(c.Windows, v)
		}
		for range rapid.IntRange(0, 3).Draw(t, "limits") {
			c.Limits = append(c.Limits, view.TempLimit{Name: "over foam", Temp: si.Celsius(rapid.Float64Range(40, 120).Draw(t, "limit"))})
		}
		if faults := c.Scene().Lint(); len(faults) > 0 {
			t.Fatal(strings.Join(faults, "\n"))
		}
	})
}

// TestAWindowBeyondTheAxis: one that ends beyond the axis is left open, one that
// begins there has an arrow for a bar, and the days are those of the plan: mixed on
// day 2, 30 h shown, midnight begins day 3.
func TestAWindowBeyondTheAxis(t *testing.T) {
	c := cureChart(180, false)
	c.Mixed = si.Hours(24 + 8.5)
	c.Windows = []view.ChartWindow{{Name: "lay on", From: si.Hours(4), To: si.Hours(40)}, {Name: "sand", From: si.Hours(41)}}
	text := svg(t, c.Scene())
	for _, want := range []string{"lay on: 12:30 to day 4, 00:30<", "sand: from day 4, 01:30 →", "mixed on day 2 at 08:30", ">day 3<"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is nowhere on it", want)
		}
	}
	closed := c
	closed.Windows = []view.ChartWindow{{Name: "lay on", From: si.Hours(4), To: si.Hours(30)}, {Name: "sand", From: si.Hours(41)}}
	if strings.Count(svg(t, closed.Scene()), "z\"") == strings.Count(text, "z\"") {
		t.Error("a window that ends beyond the axis is drawn closed")
	}
}

// TestTheMarkHasItsWords: the dot says the temperature and when.
func TestTheMarkHasItsWords(t *testing.T) {
	for _, w := range []float64{180, 120, 80} {
		if text := svg(t, cureChart(w, false).Scene()); !strings.Contains(text, " °C, 11:45<") {
			t.Errorf("%.0f mm wide: the mark has no words", w)
		}
	}
}
