package geom_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"scarfwright/physics/geom"
)

func TestNewShapeTakes(t *testing.T) {
	for _, c := range []struct {
		why, ring, want string
	}{
		{"a rectangle, started where +x leaves it", "0,0 100,0 100,50 0,50", "100,50 0,50 0,0 100,0"},
		{"the same walked clockwise", "0,0 0,50 100,50 100,0", "100,50 0,50 0,0 100,0"},
		{"the first point repeated at the end", "0,0 100,0 100,50 0,50 0,0", "100,50 0,50 0,0 100,0"},
		{"points repeated, or apart by less than the grid", "0,0 0,0 100,0 100.00004,0 100,50 0,50", "100,50 0,50 0,0 100,0"},
		{"points in the middle of a side", "0,0 50,0 100,0 100,50 0,50", "100,50 0,50 0,0 50,0 100,0"},
		{"an L, its centroid outside: from the right", "0,0 90,0 90,30 30,30 30,90 0,90", "90,0 90,30 30,30 30,90 0,90 0,0"},
	} {
		r, err := geom.ParseRing(c.ring)
		if err != nil {
			t.Fatal(err)
		}
		got, err := geom.NewShape(r)
		if err != nil {
			t.Errorf("%s: %v", c.why, err)
		} else if len(got) != 1 || got[0].String() != c.want {
			t.Errorf("%s: got %v, want %s", c.why, got, c.want)
		}
	}
}

// Each refusal says what is wrong and where.
func TestNewShapeRefuses(t *testing.T) {
	for _, c := range []struct {
		why, ring string
		want      []string
	}{
		{"a bow tie", "0,0 100,100 100,0 0,100", []string{"meets itself near 50,50", "edge 1 (0,0 to 100,100)", "edge 3 (100,0 to 0,100)"}},
		{"two points", "0,0 100,0", []string{"2 different points", "at least 3"}},
		{"one point three times", "5,5 5,5 5,5", []string{"1 different points"}},
		{"all on one line", "0,0 50,0 100,0", []string{"meets itself", "edge 1"}},
		{"a spike of no width", "0,0 100,0 100,40 130,40 100,40 100,80 0,80", []string{"meets itself near 100,40", "edge 3 (100,40 to 130,40)", "edge 4 (130,40 to 100,40)"}},
		{"a spike one grid step long", "0,0 100,0 100,40 100.0001,40 100,40 100,80 0,80", []string{"meets itself near 100,40"}},
		{"a corner that touches another side", "0,0 100,0 100,80 50,0 0,80", []string{"meets itself near 50,0", "edge 1 (0,0 to 100,0)"}},
		{"two corners that touch", "0,0 50,40 100,0 100,80 50,40 0,80", []string{"meets itself near 50,40"}},
		{"a ring walked twice", "0,0 100,0 100,50 0,50 0,0 100,0 100,50 0,50", []string{"meets itself"}},
		{"a point repeated shifts the numbers only as given", "0,0 0,0 0,0 100,100 100,0 0,100", []string{"edge 3 (0,0 to 100,100)", "edge 5 (100,0 to 0,100)"}},
		{"next to no area", "0,0 0.05,0 0.05,0.05", []string{"next to nothing"}},
	} {
		r, err := geom.ParseRing(c.ring)
		if err != nil {
			t.Fatal(err)
		}
		s, err := geom.NewShape(r)
		if err == nil {
			t.Errorf("%s: taken as %v", c.why, s)
			continue
		}
		for _, w := range c.want {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%s: error %q does not say %q", c.why, err, w)
			}
		}
	}
	bad := geom.Ring{{0, 0}, {100, 0}, {math.NaN(), 50}}
	if _, err := geom.NewShape(bad); err == nil || !strings.Contains(err.Error(), "point 3") {
		t.Errorf("NaN: error %v does not name point 3", err)
	}
	bad[2].X = 1e9
	if _, err := geom.NewShape(bad); err == nil || !strings.Contains(err.Error(), "point 3") {
		t.Errorf("1e9: error %v does not name point 3", err)
	}
	if _, err := geom.NewShape(make(geom.Ring, 20001)); err == nil {
		t.Error("20001 points taken")
	}
}

func TestParseRingRefuses(t *testing.T) {
	for text, want := range map[string]string{
		"":                    "no points",
		"  \n":                "no points",
		"0,0 100 50,50":       `point 2 "100"`,
		"0,0 100,x":           "y is not a number",
		"0,0 ,5":              "x is not a number",
		"1,2,3":               "want x,y",
		"NaN,0":               "x is not a number",
		"0,Inf":               "y is not a number",
		"0,0 1e300,0":         "point 2",
		"0;0":                 "want x,y",
		"0,0 100001,0 50,20":  "between -20000 and 20000",
		"0,0 0x1p-1074,0 5,5": "",
	} {
		_, err := geom.ParseRing(text)
		if want == "" && err == nil {
			continue
		}
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: error %v does not say %q", text, err, want)
		}
	}
}

func TestJSON(t *testing.T) {
	s := mustShape(t, "0,0 100.125,0 100.125,-50.0004 0,-50")
	got, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	if want := "[[[100.125,0],[0,0],[0,-50],[100.125,-50]]]"; string(got) != want {
		t.Errorf("got %s, want %s", got, want)
	}
	var back geom.Shape
	if err := json.Unmarshal(got, &back); err != nil || back[0].String() != "100.125,0 0,0 0,-50 100.125,-50" {
		t.Errorf("read back: got %v, %v", back, err)
	}
	for _, bad := range []string{"[1]", "[1,2,3]", `{"X":1}`, `"1,2"`, "[1e9,0]", "null"} {
		var p geom.Point
		if err := json.Unmarshal([]byte(bad), &p); err == nil {
			t.Errorf("%s taken as the point %v", bad, p)
		}
	}
	if _, err := json.Marshal(geom.Point{X: math.NaN()}); err == nil {
		t.Error("NaN written as JSON")
	}
}

func FuzzParseRing(f *testing.F) {
	for _, s := range []string{"0,0 100,0 100,50 0,50", "-1.5,2e3 0,0", "1,2,3", ",", "0,0 0,0", "é,1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		r, err := geom.ParseRing(text)
		if err != nil {
			return
		}
		back, err := geom.ParseRing(r.String())
		if err != nil {
			t.Fatalf("%q printed as %q, which is refused: %v", text, r, err)
		}
		if back.String() != r.String() {
			t.Errorf("%q: there and back got %q, want %q", text, back, r)
		}
		_, _ = geom.NewShape(r) // no panic
	})
}
