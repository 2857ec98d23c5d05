package repair_test

import (
	"math"
	"strings"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/job"
)

var (
	resins   = []string{"polyester-laminating", "vinyl-ester-laminating", "epoxy-fast", "epoxy-slow"}
	cloths   = []string{"csm225", "csm300", "csm450", "csm600", "wr600", "wr800", "cloth200", "cloth300", "bx300", "bx450", "bx600", "bxm800"}
	gelcoats = []string{"", "gelcoat-waxed", "gelcoat-paste"}
	fillers  = []string{"", "epoxy-fairing", "epoxy-filler-light"}
)

// draws makes random choices, each under its name.
type draws struct{ *rapid.T }

func (d draws) mm(name string, low, high float64) si.Length {
	return si.MM(math.Round(rapid.Float64Range(low, high).Draw(d.T, name)*10) / 10)
}
func (d draws) word(name string, of ...string) string { return rapid.SampledFrom(of).Draw(d.T, name) }
func (d draws) yes(name string) bool                  { return rapid.Bool().Draw(d.T, name) }
func (d draws) plies(name string, most int) []job.PlyRef {
	out := make([]job.PlyRef, rapid.IntRange(1, most).Draw(d.T, name))
	for i := range out {
		out[i] = job.PlyRef{Class: d.word(name, cloths...), Angle: si.Degrees(float64(rapid.IntRange(-8, 8).Draw(d.T, name)) * 15)}
	}
	return out
}

// outline is one of the four kinds, about its own centre and within w × h.
func (d draws) outline(w, h float64) *job.Outline {
	w, h = d.mm("width", 15, w).MM(), d.mm("height", 15, h).MM()
	two := []si.Length{si.MM(w), si.MM(h)}
	switch d.word("outline", "ellipse", "rectangle", "circle", "points") {
	case "ellipse":
		return &job.Outline{Ellipse: two}
	case "rectangle":
		return &job.Outline{Rectangle: two, Corner: d.mm("corner", 1, min(60, w/2, h/2)-0.1)}
	case "circle":
		return &job.Outline{Circle: si.MM(min(w, h))}
	}
	// A star round the centre: concave as it likes, never across itself.
	n := rapid.IntRange(3, 9).Draw(d.T, "corners")
	o := job.Outline{Corner: si.MM(1)}
	for i := range n {
		a := 2 * math.Pi * (float64(i) + rapid.Float64Range(0.1, 0.6).Draw(d.T, "turn")) / float64(n)
		r := rapid.Float64Range(0.3, 1).Draw(d.T, "reach") / 2
		o.Points = append(o.Points, job.Point{X: si.MM(r * w * math.Cos(a)), Y: si.MM(r * h * math.Sin(a))})
	}
	return &o
}

// anyJob draws a description that job.Validate accepts.
func anyJob(t *rapid.T) job.Description {
	d := draws{t}
	long := d.mm("long", 150, 2500).MM()
	short := d.mm("short", 100, long).MM()
	out := job.Description{
		Format: 1, Job: job.Header{Number: "R-1", Title: "drawn"},
		Boat: job.Boat{Use: d.word("use", "private", "hire"), Waterline: si.M(8), Speed: si.Knots(7), InsuredValue: 20000},
		Panel: job.Panel{
			Place: d.word("place", "bottom", "side", "deck"), Long: si.MM(long), Short: si.MM(short),
			Waterline: d.mm("waterline", -500, 500), Chord: si.MM(600), Sagitta: d.mm("sagitta", 0, 60),
			Features: []job.Feature{{What: "stringer", From: job.Point{X: si.MM(-long / 2), Y: si.MM(short / 4)}, To: job.Point{X: si.MM(long / 2), Y: d.mm("rise", -short/2, short/2)}}},
		},
		Laminate: job.Laminate{Fibre: "glass", Known: d.word("known", "", "edge", "guess")},
		Crew: job.Crew{
			People: rapid.IntRange(1, 4).Draw(t, "people"), Rate: 50,
		},
		Shelf: job.Shelf{
			Resin: d.word("resin", resins...), Cloth: rapid.SliceOfNDistinct(rapid.SampledFrom(cloths), 1, 4, rapid.ID).Draw(t, "shelf"),
			Gelcoat: d.word("gelcoat", gelcoats...), Filler: d.word("filler", fillers...), Barrier: d.word("barrier", "", "barrier-epoxy"),
			Scale: si.Grams(rapid.SampledFrom([]float64{0.01, 0.1, 1, 5}).Draw(t, "scale")), Syringe: si.ML(rapid.SampledFrom([]float64{0, 0.01, 0.1}).Draw(t, "syringe")),
		},
		Choices: job.Choices{
			Ratio: math.Round(rapid.Float64Range(5, 50).Draw(t, "ratio")*4) / 4, Order: d.word("order", "", "smallest first", "largest first"),
			Cover: d.word("cover", "", "none", "csm300", "bx300"), Finish: d.word("finish", "", "paint", "none"), Heat: d.word("heat", "", "tent"),
		},
		Damage: job.Damage{Kind: "hole", Access: d.word("access", "both", "outside", "inside"), Margin: 0},
	}
	d.laminate(&out)
	d.damage(&out, long, short)
	for range rapid.IntRange(0, 4).Draw(t, "days") {
		low := rapid.Float64Range(-5, 25).Draw(t, "min")
		out.Site.Days = append(out.Site.Days, job.Day{Min: si.Celsius(low), Max: si.Celsius(low + rapid.Float64Range(0, 14).Draw(t, "range")), Dew: si.Celsius(low - 2)})
	}
	if d.yes("own sheet") {
		for _, class := range []*string{&out.Shelf.Resin, &out.Shelf.Filler, &out.Shelf.Gelcoat} {
			if *class != "" {
				out.Shelf.Sheets = append(out.Shelf.Sheets, d.sheet(*class))
				*class = "my " + *class
			}
		}
	}
	out.Site.Lag, out.Site.Warmer = si.Hours(rapid.Float64Range(0, 8).Draw(t, "lag")), si.Kelvins(rapid.Float64Range(0, 15).Draw(t, "warmer"))
	return out
}

// sheet is one of the user's own over a class. Of each part there are two
// variants at most, for each new sheet is fitted anew.
func (d draws) sheet(class string) job.Sheet {
	s := job.Sheet{Name: "my " + class, Class: class}
	dose := si.Ratio(0)
	if !strings.HasPrefix(class, "epoxy") {
		dose = si.Percent(1.25)
	}
	if d.yes("own pot life") {
		s.PotLife = []job.PotLife{{At: si.Celsius(15), Dose: dose, Time: si.Minutes(50)}, {At: si.Celsius(25), Dose: dose, Time: si.Minutes(24)}}
		s.Criterion = d.word("criterion", "", "viscosity doubled")
	}
	if d.yes("own films") {
		s.FilmGel = []job.FilmTime{{At: si.Celsius(20), Time: si.Hours(2)}}
		s.Sandable = []job.FilmTime{{At: si.Celsius(15), Time: si.Hours(12)}, {At: si.Celsius(25), Dose: dose, Time: si.Hours(5)}}
		s.Through = []job.FilmTime{{At: si.Celsius(20), Time: si.Days(5)}}
	}
	if d.yes("own peak") {
		s.Peaks = []job.Peak{{At: si.Celsius(25), Peak: si.Celsius(120)}, {At: si.Celsius(25), Mass: si.Grams(50), Peak: si.Celsius(80), After: si.Minutes(60)}}
	}
	if d.yes("own window") {
		s.RecoatFrom, s.RecoatTo = si.Hours(3), si.Hours(12)
	}
	return s
}

func (d draws) laminate(out *job.Description) {
	l := &out.Laminate
	if d.yes("plies known") {
		l.Plies = d.plies("plies", 12)
	} else {
		l.Thickness.Low = d.mm("thickness", 2, 20)
		l.Thickness.High = l.Thickness.Low + d.mm("spread", 0, 3)
	}
	if d.yes("sandwich") {
		l.Core = &job.Core{Class: "foam80", Thickness: d.mm("core", 5, 40)}
		l.Inner = d.plies("inner", 4)
	}
	if d.yes("plies chosen") {
		out.Choices.Plies = d.plies("chosen", 14)
	}
}

func (d draws) damage(out *job.Description, long, short float64) {
	x := &out.Damage
	x.Dead = d.outline(0.8*long, 0.8*short)
	x0, y0, x1, y1 := x.Dead.Extent()
	half := func(span float64, low, high si.Length) si.Length { // centre the outline, then move it by up to a half of what is left
		free := span - (high - low).MM()
		return si.MM(free/2*0.99*rapid.Float64Range(-1, 1).Draw(d.T, "at")) - (low+high)/2
	}
	x.At = job.Point{X: half(long, x0, x1), Y: half(short, y0, y1)}
	depths := []string{"gelcoat", "through", "through", "partial"}
	if out.Laminate.Core != nil {
		depths = append(depths, "skin and core", "skin and core")
	}
	x.Depth = d.word("depth", depths...)
	if x.Depth == "partial" {
		x.Deep = si.Scale(thickness(out.Laminate, out.Shelf.Resin), rapid.Float64Range(0.2, 0.95).Draw(d.T, "deep"))
	}
	if x.Depth == "gelcoat" {
		x.Kind = "scratch"
	}
	if x.Depth == "gelcoat" || d.yes("marks") {
		x.Marks = []job.Mark{{Kind: d.word("mark", "scratch", "ding"), Long: d.mm("mark", 5, 500), Wide: si.MM(8), Deep: si.MM(0.6)}}
	}
	if x.Access == "both" && x.Depth == "through" {
		out.Choices.Taper = d.word("taper", "", "outside", "inside", "both")
	} else if x.Access == "both" {
		out.Choices.Taper = d.word("taper", "", "outside", "inside")
	}
	if x.Access != "both" {
		x.Reach = d.mm("reach", 10, 800)
	}
}

// thickness of the outer skin by the catalogue.
func thickness(l job.Laminate, resin string) si.Length {
	cat := catalog.Default()
	r, err := cat.Resin(resin)
	if err != nil {
		panic(err)
	}
	if len(l.Plies) == 0 {
		return (l.Thickness.Low + l.Thickness.High) / 2
	}
	var t si.Length
	for _, p := range l.Plies {
		c, err := cat.Cloth(p.Class)
		if err != nil {
			panic(err)
		}
		t += c.Thickness(r)
	}
	return t
}
