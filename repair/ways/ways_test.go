package ways

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/job"
)

// The cases' own figures (shared scenarios, invented; computed there) hold here too:
// sizes at 12:1, what fits and what does not.
func TestDemoJobs(t *testing.T) {
	r := compared(t, demoJob(t, "day-launch"))
	w := r.way(t, "taper-outside-12-matches-thickness-and-bending-stiffness")
	near(t, "width", w.Size[0].MM(), 430, 0.002)
	near(t, "height", w.Size[1].MM(), 330, 0.002)
	near(t, "bending stiffness", w.Bending, 1.11, 0.005)
	if !w.Chosen || !w.Fits {
		t.Errorf("12:1 from outside: chosen %v, fits %v; want both", w.Chosen, w.Fits)
	}
	if w := r.way(t, "taper-outside-20-matches-thickness-and-bending-stiffness"); w.Fits || w.Computed || w.Recommended {
		t.Errorf("20:1 does not fit in 380 mm, yet: %+v", w)
	}
	r = compared(t, demoJob(t, "sloop"))
	near(t, "10 plies", r.way(t, "taper-outside-12-matches-bending-stiffness").Bending, 1.05, 0.005)
	near(t, "11 plies", r.way(t, "taper-outside-12-matches-thickness").Bending, 1.39, 0.005)
	for _, w := range r.Ways {
		if w.Sides != "outside" {
			t.Errorf("%s: the tank stands behind it", w.Name)
		}
	}
}

// A filler plug with cloth over it never comes near the panel as it was.
func TestThePlugIsShownForWhatItIs(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop", "work-skiff"} {
		r := compared(t, demoJob(t, name))
		w := r.way(t, "plug-outside")
		if !w.Computed || !(w.Strength.Likely > 0.1 && w.Strength.Likely < 0.5) || w.Recommended || w.Unsuited == "" {
			t.Errorf("%s: a plug with %.2f of the strength (computed %v, recommended %v, %q)", name, w.Strength.Likely, w.Computed, w.Recommended, w.Unsuited)
		}
		if !strings.Contains(r.Reason, "plug") && len(r.Referrals) == 0 {
			t.Errorf("%s: the reason does not tell the plug: %s", name, r.Reason)
		}
	}
}

// Hard stops stay hard: no way is recommended, and the reason names the rule.
func TestReferred(t *testing.T) {
	for _, x := range []struct {
		name, rule string
		change     func(d *job.Description)
	}{
		{"near a keel", "load path", func(d *job.Description) { d.Panel.LoadPaths = []string{"keel"} }},
		{"keel beside the panel", "load path beside the panel", func(d *job.Description) { d.Panel.Edges.Lower = "keel stub" }},
		{"transom under load", "transom", func(d *job.Description) { d.Panel.Place = "transom" }},
		{"hired", "commercial or passenger craft", func(d *job.Description) { d.Boat.Use = "hire" }},
		{"carbon", "laminate other than glass", func(d *job.Description) { d.Laminate.Fibre = "carbon" }},
		{"stiffener cut", "stiffener damaged", func(d *job.Description) { d.Damage.Crosses = []string{"a frame"} }},
	} {
		r := compared(t, demoJob(t, "day-launch", x.change))
		if r.Recommended >= 0 || !strings.Contains(r.Reason, "Referred on") || !strings.Contains(r.Reason, x.rule) {
			t.Errorf("%s: recommended %d, reason %q; want a referral under the rule %q", x.name, r.Recommended, r.Reason, x.rule)
		}
		for _, w := range r.Ways {
			if w.Recommended {
				t.Errorf("%s: %s is recommended", x.name, w.Name)
			}
		}
	}
	if r := compared(t, demoJob(t, "work-skiff")); r.Recommended >= 0 || len(r.Referrals) != 2 || len(r.Ways) < 8 {
		t.Errorf("demo job 6: recommended %d, %d referrals, %d ways; want none, 2, and the ways for whoever decides", r.Recommended, len(r.Referrals), len(r.Ways))
	}
}

// What the design stops stops the recommendation too.
func TestStopped(t *testing.T) {
	r := compared(t, demoJob(t, "day-launch", func(d *job.Description) { d.Laminate.Resin = "epoxy" }))
	if r.Recommended >= 0 || !strings.Contains(r.Reason, "new resin on old laminate") {
		t.Errorf("polyester on epoxy: recommended %d, %q", r.Recommended, r.Reason)
	}
}

// Thickness 5.4 +- 0.5 mm, kind unknown: ranges, and which measurement narrows most.
func TestUnknownLaminate(t *testing.T) {
	d := demoJob(t, "day-launch", func(d *job.Description) {
		d.Laminate.Plies, d.Laminate.Known = nil, "guess"
		d.Laminate.Thickness = job.Range{Low: si.MM(4.9), High: si.MM(5.9)}
	})
	r := compared(t, d)
	if !r.Original.Assumed || r.Original.Thickness.Low != 4.9 || r.Original.Thickness.High != 5.9 {
		t.Fatalf("original: %+v", r.Original)
	}
	w := r.way(t, "taper-outside-12-"+strings.ReplaceAll(r.Ways[2].List, " ", "-"))
	if s := w.Strength; !(s.Low < 0.8*s.Likely && s.High > 1.02*s.Likely) {
		t.Errorf("strength %+v: the laminate is unknown, the range is too narrow", s)
	}
	if s := w.Stiffness; !(s.Low < s.Likely && s.Likely < s.High) {
		t.Errorf("stiffness %+v: no range", s)
	}
	if len(r.Measurements) != 3 {
		t.Fatalf("measurements: %+v, want thickness, kind and bond", r.Measurements)
	}
	for i, m := range r.Measurements {
		if i > 0 && m.Narrow > r.Measurements[i-1].Narrow || m.How == "" || !(m.Now.Low <= m.Now.Likely && m.Now.Likely <= m.Now.High) {
			t.Errorf("measurement %d: %+v: out of order or without words", i, m)
		}
	}
	d.Laminate.Thickness = job.Range{}
	if _, err := Compare(d, catalog.Default(), nil); err == nil || !strings.Contains(err.Error(), "thickness") {
		t.Errorf("no laminate at all: %v, want an error that asks for plies or thickness", err)
	}
}

// Demo job 5: the numbers of the case (shared scenarios): 2 675 blisters, 1 940 to
// 3 410 nineteen times in twenty, 257 h against 100 h, break-even at 967; a peel into
// the laminate wants glass back.
func TestPeel(t *testing.T) {
	d := demoJob(t, "trawler-yacht")
	n, low, high := Blisters(d.Damage)
	near(t, "blisters", n, 2675, 0.001)
	near(t, "at least", low, 1940, 0.005)
	near(t, "at most", high, 3410, 0.005)
	r := compared(t, d)
	spots, bare, back := r.way(t, "spots"), r.way(t, "peel-1.5"), r.way(t, "peel-1.5-glass-back")
	near(t, "hours spot by spot", spots.Hours.Likely, 257, 0.005)
	near(t, "hours of a peel", bare.Hours.Likely, 100.5, 0.005)
	if !strings.Contains(strings.Join(spots.Notes, " "), "967 blisters") {
		t.Errorf("no break-even at 967 in %q", spots.Notes)
	}
	// Bending strength goes with the square of the thickness.
	thin := (14 - 1.5) / 14.0
	near(t, "strength after a peel of 1.5 mm", bare.Strength.Likely, thin*thin, 0.06)
	if !back.Recommended || back.Strength.Likely < AsBefore || bare.Strength.Likely >= AsBefore {
		t.Errorf("glass back: recommended %v, %.2f; bare %.2f", back.Recommended, back.Strength.Likely, bare.Strength.Likely)
	}
}

// A longer taper never loads its bond more, and the bond goes with the ratio.
func TestLongerTapers(t *testing.T) {
	r := compared(t, demoJob(t, "sloop"))
	var was *Way
	for i := range r.Ways {
		w := &r.Ways[i]
		if w.Kind != Tapered || w.List != "matches thickness" || !w.Computed {
			continue
		}
		if was != nil {
			for k, c := range w.Cases[2:] {
				want := was.Cases[k+2].Bond * was.Ratio / w.Ratio
				near(t, c.Load+" at "+w.Name, c.Bond, want, 0.06)
			}
		}
		was = w
	}
	if was == nil {
		t.Fatal("no tapers")
	}
}

// The memory changes nothing but the time.
func TestMemory(t *testing.T) {
	var m Memory
	d := demoJob(t, "sloop")
	if _, err := Compare(d, catalog.Default(), &m); err != nil {
		t.Fatal(err)
	}
	d.Choices.Plies = []job.PlyRef{{Class: "bx600"}, {Class: "bx600"}, {Class: "bx600"}, {Class: "bx600"}, {Class: "bx600"}, {Class: "bx600"}, {Class: "bx600"}, {Class: "bx600"}, {Class: "bx600"}, {Class: "bx300"}}
	plain, err := Compare(d, catalog.Default(), nil)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Compare(d, catalog.Default(), &m)
	if err != nil {
		t.Fatal(err)
	}
	for i, w := range plain.Ways {
		for k, c := range w.Cases {
			near(t, w.Name+", "+c.Load, again.Ways[i].Cases[k].Repaired, c.Repaired, 1e-4)
		}
	}
}

// Finer panels move the strengths of tapers by 2.5 % at the most, that of a plug by up to
// 13 % at the edge of its hole; three times the steps in a taper by 8 %.
func TestResolution(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop"} {
		d := demoJob(t, name)
		r := compared(t, d)
		c := &comparison{}
		_, c.bond, _ = bondOf(mustResin(t, d))
		c.q, _, _ = designPressure(d)
		c.loads = loadsFor(c.q, d.Choices.System())
		for i := range r.Ways {
			w := r.Ways[i]
			if !w.Computed || w.Kind == Stepped { // stepped laps are reckoned from the taper
				continue
			}
			c.on = newPlace(w.Outlines[0].Shape, true)
			for _, x := range []struct {
				what      string
				rings     int
				o         panel.Options
				tolerance float64
			}{
				{"finer", w.parts.rings, panel.Options{Degree: 6, Sides: 4, Inner: 2, Outer: 3}, 0.025},
				{"more steps", 12, resolution(c.on), 0.08},
			} {
				if testing.Short() && (w.Ratio != 12 || x.rings == 12) {
					continue
				}
				ps := *w.parts
				ps.rings = x.rings
				p, err := ps.build(d.Panel.Long, d.Panel.Short, c.on, w.Taper.MM())
				if err != nil {
					t.Fatal(err)
				}
				f, _, err := measure(p, &ps, c.on, w.Taper, c.bond, c.loads, c.q, x.o, nil)
				if err != nil {
					t.Fatal(err)
				}
				for k := range f {
					tolerance := x.tolerance
					if w.parts.over { // the edge of a hole that carries nothing
						tolerance = 0.13
					}
					near(t, name+", "+w.Name+", "+c.loads[k].Name+", "+x.what, f[k].most(), w.Cases[k].Repaired, tolerance)
				}
			}
		}
	}
}

// Every figure is a number, every row has its words, and it all goes into JSON.
func TestWordsAndNumbers(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop", "rib-console", "trawler-yacht", "work-skiff"} {
		r := compared(t, demoJob(t, name))
		seen := map[string]bool{}
		for _, w := range r.Ways {
			if seen[w.Key] || w.Name == "" || w.Left == "" {
				t.Errorf("%s: way %q (%q): its key comes twice, or words are missing", name, w.Key, w.Name)
			}
			seen[w.Key] = true
			if w.Computed != (w.Why == "") || w.Computed && len(w.Cases) != 4 {
				t.Errorf("%s, %s: computed %v, why not %q, %d cases", name, w.Name, w.Computed, w.Why, len(w.Cases))
			}
			for _, c := range w.Cases {
				for _, x := range []float64{c.Strength, c.Hand, c.Repaired, c.Original} {
					if !(x > 0) || math.IsInf(x, 0) {
						t.Errorf("%s, %s, %s: %+v", name, w.Name, c.Load, c)
					}
				}
				if c.Where == "" || c.Mode == "" || strings.Contains(c.Where, "e-") {
					t.Errorf("%s, %s, %s: words %q %q", name, w.Name, c.Load, c.Mode, c.Where)
				}
			}
			if s := w.Strength; w.Computed && !(s.Low <= s.Likely && s.Likely <= s.High) {
				t.Errorf("%s, %s: strength %+v", name, w.Name, s)
			}
		}
		if r.Reason == "" || len(r.Cautions) == 0 || len(r.Assumptions) == 0 || len(r.Limits) == 0 {
			t.Errorf("%s: no reason, cautions, assumptions or limits", name)
		}
		if _, err := json.Marshal(r); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Cosmetic damage has no ways.
func TestNothingToCompare(t *testing.T) {
	if r := compared(t, demoJob(t, "club-dinghy")); len(r.Ways) != 0 || r.Recommended != -1 || r.Reason == "" {
		t.Errorf("a scratch: %+v", r)
	}
}

// No figures where they would be another laminate's or half a repair's: a hole through
// a sandwich, a fibre that is not glass.
func TestNotCompared(t *testing.T) {
	for name, change := range map[string]func(d *job.Description){
		"both skins": func(d *job.Description) {
			d.Laminate.Core = &job.Core{Class: "foam80", Thickness: si.MM(12)}
			d.Laminate.Inner = []job.PlyRef{{Class: "csm450"}}
		},
		"carbon":  func(d *job.Description) { d.Laminate.Fibre = "carbon" },
		"unknown": func(d *job.Description) { d.Laminate.Fibre = "unknown" },
	} {
		r := compared(t, demoJob(t, "day-launch", change))
		if len(r.Ways) != 0 || r.Recommended != -1 || r.NotCompared == "" || !strings.Contains(r.Reason, r.NotCompared) || len(r.Cautions) == 0 {
			t.Errorf("%s: %d ways, recommended %d, %q", name, len(r.Ways), r.Recommended, r.Reason)
		}
	}
}

// A recommendation whose arithmetic is not settled is taken back.
func TestUnsettled(t *testing.T) {
	for e, want := range map[float64]int{0.01: 0, 0.2: -1} {
		r := Result{Recommended: 0, Ways: []Way{{Name: "taper", Recommended: true, Error: e}}}
		r.settle()
		if r.Recommended != want || r.Ways[0].Recommended != (want == 0) {
			t.Errorf("error %g: recommended %d", e, r.Recommended)
		}
	}
}

// A way that fits and could not be reckoned does not leave the choice to the others.
func TestUnreckonedWayWithholds(t *testing.T) {
	d := demoJob(t, "day-launch", func(d *job.Description) {
		d.Damage.Seen, d.Damage.Dead = nil, &job.Outline{Circle: si.MM(100)}
		d.Damage.At, d.Damage.Access = job.Point{X: si.MM(192), Y: si.MM(60)}, "outside" // 12:1 ends 3 mm from the frame
	})
	r := compared(t, d)
	if r.unreckoned() == "" || r.Recommended != -1 || !strings.Contains(r.Reason, "12:1") {
		t.Errorf("unreckoned %q, recommended %d, %q; want 12:1 unreckoned and nothing recommended", r.unreckoned(), r.Recommended, r.Reason)
	}
}
