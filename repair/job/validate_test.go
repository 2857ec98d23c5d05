package job_test

import (
	"strings"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// Each rule between fields, broken on purpose in an otherwise good description.
func TestRules(t *testing.T) {
	mm := si.MM
	for _, c := range []struct {
		rule  string
		spoil func(d *job.Description)
		path  string
		part  string // of the message
	}{
		{"the waterline is within the hull", func(d *job.Description) { d.Boat.Waterline = mm(7000) }, "boat.waterline", "longer than the hull"},
		{"the short span is the shorter", func(d *job.Description) { d.Panel.Short = mm(601) }, "panel.short", "Swap them"},
		{"a sagitta needs its chord", func(d *job.Description) { d.Panel.Sagitta = mm(4) }, "panel.sagitta", "'chord'"},
		{"a sagitta is less than half its chord", func(d *job.Description) { d.Panel.Chord, d.Panel.Sagitta = mm(100), mm(60) }, "panel.sagitta", "half the batten"},
		{"a feature is a line", func(d *job.Description) { d.Panel.Features = []job.Feature{{What: "frame"}} }, "panel.features[0].to", "same point"},
		{"plies or thickness, not both", func(d *job.Description) { d.Laminate.Plies = []job.PlyRef{{Class: "csm450"}} }, "laminate.thickness", "either"},
		{"plies or thickness, one of them", func(d *job.Description) { d.Laminate.Thickness = job.Range{} }, "laminate.plies", "'thickness'"},
		{"an inner skin needs a core", func(d *job.Description) { d.Laminate.Inner = []job.PlyRef{{Class: "csm450"}} }, "laminate.inner", "'core'"},
		{"a partial depth has a depth", func(d *job.Description) { d.Damage.Depth = "partial" }, "damage.deep", "'deep'"},
		{"skin and core needs a core", func(d *job.Description) { d.Damage.Depth = "skin and core" }, "damage.depth", "no core"},
		{"a wet core needs a core", func(d *job.Description) { d.Damage.Kind = "wet core" }, "damage.kind", "no core"},
		{"a hole has an outline", func(d *job.Description) { d.Damage.Dead = nil }, "damage.dead", "outline"},
		{"a scratch has marks", func(d *job.Description) { d.Damage.Dead, d.Damage.Kind = nil, "scratch" }, "damage.marks", "'marks'"},
		{"blisters have counts", func(d *job.Description) { d.Damage.Dead, d.Damage.Kind = nil, "blisters" }, "damage.blister_counts", "'blister_counts'"},
		{"counts have a frame", func(d *job.Description) { d.Damage.Counts, d.Damage.Wetted = []int{3}, si.M2(9) }, "damage.blister_frame", "one frame"},
		{"counts stand for an area", func(d *job.Description) { d.Damage.Counts, d.Damage.Frame = []int{3}, si.M2(1) }, "damage.wetted_area", "stand for"},
		{"an outline has a form", func(d *job.Description) { d.Damage.Dead = &job.Outline{Corner: mm(9)} }, "damage.dead", "exactly one"},
		{"an outline has one form", func(d *job.Description) { d.Damage.Dead.Circle = mm(9) }, "damage.dead", "exactly one"},
		{"an ellipse has two widths", func(d *job.Description) { d.Damage.Dead.Ellipse = []si.Length{mm(9)} }, "damage.dead.ellipse", "two widths"},
		{"a rectangle has two widths", func(d *job.Description) {
			d.Damage.Dead = &job.Outline{Rectangle: []si.Length{mm(9), mm(9), mm(9)}}
		}, "damage.dead.rectangle", "two widths"},
		{"a corner fits its rectangle", func(d *job.Description) {
			d.Damage.Dead = &job.Outline{Rectangle: []si.Length{mm(90), mm(40)}, Corner: mm(21)}
		}, "damage.dead.corner", "half the shorter"},
		{"an outline has three points", func(d *job.Description) { d.Damage.Dead = points(0, 0, 9, 9) }, "damage.dead.points", "three points"},
		{"no point comes twice running", func(d *job.Description) { d.Damage.Dead = points(0, 0, 9, 0, 9, 9, 0, 0) }, "damage.dead.points[0]", "same as the one before"},
		{"an outline does not cross itself", func(d *job.Description) { d.Damage.Dead = points(0, 0, 90, 90, 90, 0, 0, 90) }, "damage.dead.points", "crosses itself"},
		{"an outline does not touch itself", func(d *job.Description) { d.Damage.Dead = points(0, 0, 90, 0, 90, 90, 45, 0, 0, 90) }, "damage.dead.points", "crosses itself"},
		{"an outline encloses something", func(d *job.Description) { d.Damage.Dead = points(0, 0, 9, 0, 18, 0.0001) }, "damage.dead.points", "no area"},
		{"the damage is inside the panel", func(d *job.Description) { d.Damage.At.X = mm(250) }, "damage.dead", "10 mm over the panel's forward edge"},
		{"and so is its margin", func(d *job.Description) { d.Damage.At.Y, d.Damage.Margin = mm(-150), mm(15) }, "damage.dead", "5 mm over the panel's lower edge"},
		{"the night is not warmer than the day", func(d *job.Description) {
			d.Site.Days = []job.Day{{Min: si.Celsius(9), Max: si.Celsius(8), Dew: si.Celsius(1)}}
		}, "site.days[0].min", "above the day's maximum"},
		{"dew is below the day's maximum", func(d *job.Description) {
			d.Site.Days = []job.Day{{Min: si.Celsius(2), Max: si.Celsius(8), Dew: si.Celsius(9)}}
		}, "site.days[0].dew", "dew point"},
		{"stock has an amount", func(d *job.Description) { d.Shelf.Stock = []job.Stock{{Class: "peroxide"}} }, "shelf.stock[0]", "one of"},
		{"a pack has one amount", func(d *job.Description) {
			d.Shelf.Packs = []job.Pack{{Class: "peroxide", Mass: si.Kg(1), Volume: si.ML(9)}}
		}, "shelf.packs[0]", "one of"},
		{"sheets have names of their own", func(d *job.Description) {
			d.Shelf.Sheets = []job.Sheet{{Name: "a", Class: "b"}, {Name: "a", Class: "b"}}
		}, "shelf.sheets[1].name", "Two sheets"},
		{"a dose goes from low to high", func(d *job.Description) {
			d.Shelf.Sheets = []job.Sheet{{Name: "a", Class: "b", DoseLow: 0.02, DoseHigh: 0.01}}
		}, "shelf.sheets[0].dose_low", "above the most"},
		{"a hull's range goes from cold to warm", func(d *job.Description) {
			d.Shelf.Sheets = []job.Sheet{{Name: "a", Class: "b", HullMin: si.Celsius(30), HullMax: si.Celsius(20)}}
		}, "shelf.sheets[0].hull_min", "warmer"},
		{"a criterion ends a pot life", sheet(func(s *job.Sheet) { s.Criterion = "gel" }), "shelf.sheets[0].pot_criterion", "'pot_life' too"},
		{"a window opens before it closes", sheet(func(s *job.Sheet) { s.RecoatFrom, s.RecoatTo = si.Hours(8), si.Hours(8) }), "shelf.sheets[0].recoat_from", "not before 8 h"},
		{"a warmer cup lasts no longer", sheet(func(s *job.Sheet) {
			s.PotLife = []job.PotLife{{At: si.Celsius(20), Time: si.Minutes(30)}, {At: si.Celsius(25), Time: si.Minutes(40)}}
		}), "shelf.sheets[0].pot_life[1].time", "40 min at 25 °C is longer than 30 min at 20 °C"},
		{"in whichever order", sheet(func(s *job.Sheet) {
			s.PotLife = []job.PotLife{{At: si.Celsius(25), Time: si.Minutes(40)}, {At: si.Celsius(20), Time: si.Minutes(30)}}
		}), "shelf.sheets[0].pot_life[1].time", "40 min at 25 °C is longer than 30 min at 20 °C"},
		{"more catalyst lasts no longer", sheet(func(s *job.Sheet) {
			s.FilmGel = []job.FilmTime{{At: si.Celsius(20), Dose: 0.01, Time: si.Hours(1)}, {At: si.Celsius(20), Dose: 0.02, Time: si.Hours(2)}}
		}), "shelf.sheets[0].film_gel[1].time", "2 h at 20 °C and 2 % is longer"},
		{"a warmer film sands no later", sheet(func(s *job.Sheet) { s.Sandable = films(15, 9, 20, 10) }), "shelf.sheets[0].sandable[1].time", "a warmer film"},
		{"a warmer film is through no later", sheet(func(s *job.Sheet) { s.Through = films(15, 90, 20, 100) }), "shelf.sheets[0].through[1].time", "correct one"},
		{"a row stands once", sheet(func(s *job.Sheet) { s.Through = films(15, 90, 15, 100) }), "shelf.sheets[0].through[1].time", "given twice"},
		{"a film gels before it sands", sheet(func(s *job.Sheet) { s.FilmGel, s.Sandable = films(20, 9), films(20, 8) }), "shelf.sheets[0].sandable[0].time", "gelled only after 9 h at 20 °C (film_gel)"},
		{"a film sands before it is through", sheet(func(s *job.Sheet) { s.Sandable, s.Through = films(25, 30), films(20, 29) }), "shelf.sheets[0].through[0].time", "(sandable)"},
		{"a cup peaks above its start", sheet(func(s *job.Sheet) { s.Peaks = []job.Peak{{At: si.Celsius(25), Peak: si.Celsius(25)}} }), "shelf.sheets[0].peak[0].peak", "above the 25 °C"},
		{"a warmer cup peaks no later", sheet(func(s *job.Sheet) {
			s.Peaks = []job.Peak{{At: si.Celsius(20), Peak: si.Celsius(90), After: si.Minutes(40)}, {At: si.Celsius(25), Mass: si.Grams(100), Peak: si.Celsius(99), After: si.Minutes(50)}}
		}), "shelf.sheets[0].peak[1].after", "a warmer cup"},
		{"a cup is watched once", sheet(func(s *job.Sheet) {
			s.Peaks = []job.Peak{{At: si.Celsius(20), Peak: si.Celsius(90)}, {At: si.Celsius(20), Mass: si.Grams(100), Peak: si.Celsius(99)}}
		}), "shelf.sheets[0].peak[1].after", "100 g at 20 °C is given twice"},
		{"a film's time has limits", sheet(func(s *job.Sheet) { s.Through = films(20, 800) }), "shelf.sheets[0].through[0].time", "at most 30 days"},
		{"a criterion is one of four", sheet(func(s *job.Sheet) { s.Criterion = "gelled" }), "shelf.sheets[0].pot_criterion", "one of gel, warmed"},
		// The tags hold for descriptions no file made.
		{"a required word", func(d *job.Description) { d.Boat.Use = "" }, "boat.use", "required"},
		{"a word of the list", func(d *job.Description) { d.Boat.Use = "racing" }, "boat.use", "must be one of"},
		{"a limit", func(d *job.Description) { d.Panel.Long = mm(20000) }, "panel.long", "at most 10 m"},
		{"a number that is none", func(d *job.Description) { d.Crew.Rate = nan() }, "crew.rate", "finite"},
		{"a temperature that was not set", func(d *job.Description) { d.Site.Days = []job.Day{{Max: si.Celsius(8), Dew: si.Celsius(1)}} }, "site.days[0].min", "required"},
		{"an empty item", func(d *job.Description) { d.Shelf.Cloth = []string{""} }, "shelf.cloth[0]", "empty"},
		{"a newer format", func(d *job.Description) { d.Format = 2 }, "format", "up to 1"},
	} {
		t.Run(c.rule, func(t *testing.T) {
			d, err := job.Parse("good", []byte(good))
			if err != nil {
				t.Fatal(err)
			}
			c.spoil(&d)
			for _, p := range job.Validate(d) {
				if p.Path == c.path && strings.Contains(p.Message, c.part) {
					return
				}
			}
			t.Errorf("got %+v, want %q at %s", job.Validate(d), c.part, c.path)
		})
	}
}

// sheet adds one of the user's sheets to a description.
func sheet(with func(*job.Sheet)) func(*job.Description) {
	return func(d *job.Description) {
		s := job.Sheet{Name: "a", Class: "b"}
		with(&s)
		d.Shelf.Sheets = append(d.Shelf.Sheets, s)
	}
}

// films makes rows from °C and hours by turns.
func films(celsiusHours ...float64) []job.FilmTime {
	var out []job.FilmTime
	for i := 0; i < len(celsiusHours); i += 2 {
		out = append(out, job.FilmTime{At: si.Celsius(celsiusHours[i]), Time: si.Hours(celsiusHours[i+1])})
	}
	return out
}

// What looks odd and is no slip: one row with a dose beside one without, cups of
// different mass, a peak never timed, one end of a window.
func TestOddSheetsAreAccepted(t *testing.T) {
	for name, with := range map[string]func(*job.Sheet){
		"doses given and not": func(s *job.Sheet) {
			s.FilmGel = []job.FilmTime{{At: si.Celsius(20), Time: si.Hours(1)}, {At: si.Celsius(25), Dose: 0.01, Time: si.Hours(2)}}
		},
		"warmer but less catalyst": func(s *job.Sheet) {
			s.Sandable = []job.FilmTime{{At: si.Celsius(20), Dose: 0.02, Time: si.Hours(1)}, {At: si.Celsius(25), Dose: 0.01, Time: si.Hours(2)}}
		},
		"a bigger cup, earlier": func(s *job.Sheet) {
			s.Peaks = []job.Peak{{At: si.Celsius(25), Peak: si.Celsius(90), After: si.Minutes(50)}, {At: si.Celsius(20), Mass: si.Grams(500), Peak: si.Celsius(99), After: si.Minutes(40)}}
		},
		"not timed": func(s *job.Sheet) {
			s.Peaks = []job.Peak{{At: si.Celsius(20), Peak: si.Celsius(90), After: si.Minutes(40)}, {At: si.Celsius(25), Peak: si.Celsius(99)}}
		},
		"stages at once":      func(s *job.Sheet) { s.FilmGel, s.Sandable = films(20, 5, 30, 5), films(20, 5) },
		"one end of a window": func(s *job.Sheet) { s.RecoatFrom = si.Hours(3) },
		"nothing":             func(*job.Sheet) {},
	} {
		d, err := job.Parse("good", []byte(good))
		if err != nil {
			t.Fatal(err)
		}
		sheet(with)(&d)
		if p := job.Validate(d); p != nil {
			t.Errorf("%s: got %+v", name, p)
		}
	}
}

func nan() float64 { zero := 0.0; return zero / zero }

// points makes an outline from millimetres x, y, x, y ...
func points(xy ...float64) *job.Outline {
	o := &job.Outline{}
	for i := 0; i < len(xy); i += 2 {
		o.Points = append(o.Points, job.Point{X: si.MM(xy[i]), Y: si.MM(xy[i+1])})
	}
	return o
}

// Damage that runs over a panel's edge is accepted once what it crosses is named.
func TestCrossingIsAccepted(t *testing.T) {
	d, err := job.Parse("good", []byte(good))
	if err != nil {
		t.Fatal(err)
	}
	d.Damage.At.X = si.MM(250)
	d.Damage.Crosses = []string{"the forward frame"}
	if p := job.Validate(d); p != nil {
		t.Errorf("got %+v", p)
	}
}

// A broken rule is shown at its line in the file.
func TestRulesHaveLines(t *testing.T) {
	p := parse(t, spoil(t, "    ellipse: [120 mm, 80 mm]", "    points:\n      - 0 mm, 0 mm\n      - 9 mm, 0 mm\n      - 9 mm, 0 mm"))
	if len(p) != 1 || p[0].Line != 23 || p[0].Column != 9 {
		t.Errorf("got %+v, want line 23, column 9", p)
	}
}

func TestExtent(t *testing.T) {
	for _, o := range []*job.Outline{
		{Ellipse: []si.Length{si.MM(300), si.MM(200)}},
		{Rectangle: []si.Length{si.MM(300), si.MM(200)}},
		points(-150, 0, 0, -100, 150, 0, 0, 100),
	} {
		x0, y0, x1, y1 := o.Extent()
		if x0 != si.MM(-150) || y0 != si.MM(-100) || x1 != si.MM(150) || y1 != si.MM(100) {
			t.Errorf("got %v %v %v %v, want 150 and 100 mm each way", x0, y0, x1, y1)
		}
	}
}
