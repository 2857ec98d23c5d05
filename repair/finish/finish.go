// Package finish is the surface: filling scratches and dings, fairing, the last
// coat and its catalyst, and the sanding grades in order.
//
// This is a first cut: colour, gloss and fairness limits come later.
package finish

import (
	"cmp"
	"fmt"
	"math"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/job"
	"scarfwright/repair/mixing"
	"scarfwright/repair/working"
)

// Fill is one kind of mark to be filled with paste.
type Fill struct {
	What   string    `json:"what"`
	Volume si.Volume `json:"volume_m3"` // of all alike
}

// Grit is one sanding grade, on the P scale (FEPA, ISO 6344).
type Grit struct {
	P   int    `json:"p"`
	Why string `json:"why"`
}

// Coat is the last coat on the repaired area.
type Coat struct {
	Class          string    `json:"class"`
	Name           string    `json:"name"`
	Area           si.Area   `json:"area_m2"`
	Film           si.Length `json:"film_m"` // wet, all coats together
	Coats          int       `json:"coats"`
	Mass           si.Mass   `json:"mass_kg"` // with losses
	Dose           si.Ratio  `json:"dose"`
	Catalyst       si.Mass   `json:"catalyst_kg"`
	CatalystVolume si.Volume `json:"catalyst_m3"`
}

// Barrier is barrier coat over the repair, below the waterline.
type Barrier struct {
	Class  string    `json:"class"`
	Name   string    `json:"name"`
	Area   si.Area   `json:"area_m2"`
	Film   si.Length `json:"film_m"` // of one coat
	Coats  int       `json:"coats"`
	Volume si.Volume `json:"volume_m3"` // with losses
	From   si.Time   `json:"from_s"`    // recoat window at 20 °C by the sheet
	To     si.Time   `json:"to_s"`
}

// Small is a small batch, no smaller than can be dosed honestly.
type Small struct {
	Needed         si.Mass   `json:"needed_kg"` // in the marks, with overfill and losses
	Mixed          si.Mass   `json:"mixed_kg"`  // what is mixed
	Dose           si.Ratio  `json:"dose"`
	Catalyst       si.Mass   `json:"catalyst_kg"`
	CatalystVolume si.Volume `json:"catalyst_m3"`
	LowDose        si.Ratio  `json:"low_dose"` // the true dose lies between these two
	HighDose       si.Ratio  `json:"high_dose"`
	By             string    `json:"by"` // "syringe" or "scale"
}

// Result is the finishing plan.
type Result struct {
	Fills      []Fill          `json:"fills,omitempty"`
	FillVolume si.Volume       `json:"fill_volume_m3"`
	Paste      *Small          `json:"paste,omitempty"`
	Coat       *Coat           `json:"coat,omitempty"`
	Barrier    *Barrier        `json:"barrier,omitempty"`
	FillerMix  string          `json:"filler_mix,omitempty"` // how the filler's two parts are mixed, in words
	Fairing    si.Volume       `json:"fairing_m3"`
	FairArea   si.Area         `json:"fair_area_m2"`
	Grits      []Grit          `json:"grits"`
	Film       []string        `json:"film_budget"`
	Verdicts   []check.Verdict `json:"verdicts"`
	Working    []working.Line  `json:"working"`
}

// Our own allowances, common practice without a source.
const (
	overfill     = 0.5 // paste stands proud by half its volume: it shrinks, and is cut back flat
	fairingSpare = 0.25
	coatLoss     = 0.15 // brush and roller
)

var (
	fairingFilm = si.MM(1)    // mean fairing layer over the repair, beyond what thickness is missing
	blendBand   = si.MM(25)   // coat beyond the repair, to be feathered
	coatFilm    = si.MM(0.75) // as applied: three coats of about 0.25 mm
)

const coats = 3

// MarkVolume returns the volume of marks of one kind [m3]: a scratch opened to
// a V has half the section of its rectangle; a ding is a paraboloid bowl, half
// of its enclosing elliptical cylinder.
//
//	scratch  V = l w d / 2
//	ding     V = pi l w d / 8
func MarkVolume(m job.Mark) si.Volume {
	v := m.Long.M() * m.Wide.M() * m.Deep.M() * float64(max(1, m.Count))
	if m.Kind == "scratch" {
		return si.Volume(v / 2)
	}
	return si.Volume(v * math.Pi / 8)
}

// Plan returns the finish of a job. edge is the outline over which the laminate
// was renewed, empty for cosmetic damage; missing is the thickness the plies
// leave to be made up.
func Plan(d job.Description, cat catalog.Catalogue, edge geom.Shape, missing si.Length, hull si.Temp) (Result, error) {
	var r Result
	if len(d.Damage.Marks) > 0 {
		if err := r.fill(d, cat); err != nil {
			return Result{}, err
		}
	}
	if len(edge) > 0 {
		if err := r.fair(d, cat, edge, missing); err != nil {
			return Result{}, err
		}
	}
	if len(edge) > 0 && cmp.Or(d.Choices.Finish, "gelcoat") == "gelcoat" && d.Shelf.Gelcoat != "" {
		if err := r.coat(d, cat, edge); err != nil {
			return Result{}, err
		}
	}
	if len(edge) > 0 && d.Shelf.Barrier != "" && d.Panel.Waterline > 0 {
		if err := r.barrier(d, cat, edge); err != nil {
			return Result{}, err
		}
	}
	if r.Coat != nil || r.Paste != nil {
		if err := r.temperature(d, cat, hull); err != nil {
			return Result{}, err
		}
	}
	r.grits(len(edge) > 0, r.Coat != nil || r.Paste != nil)
	return r, nil
}

func (r *Result) fill(d job.Description, cat catalog.Catalogue) error {
	g, err := cat.Gelcoat(PasteClass(d))
	if err != nil {
		return fmt.Errorf("shelf.gelcoat: %w", err)
	}
	for _, m := range d.Damage.Marks {
		v := MarkVolume(m)
		r.Fills = append(r.Fills, Fill{
			What:   fmt.Sprintf("%d × %s %.0f × %.1f × %.2f mm", max(1, m.Count), m.Kind, m.Long.MM(), m.Wide.MM(), m.Deep.MM()),
			Volume: v,
		})
		r.FillVolume += v
		if under := m.Deep - d.Laminate.Gelcoat; d.Laminate.Gelcoat > 0 && under > 0 {
			r.Verdicts = append(r.Verdicts, intoLaminate(m, under))
		}
	}
	waste := float64(d.Choices.Waste)
	if waste == 0 {
		waste = float64(mixing.DefaultWaste)
	}
	need := si.Scale(g.Density.Typical.Of(r.FillVolume), (1+overfill)*(1+waste))
	dose := g.Dose.Typical
	if d.Damage.Depth == "gelcoat" {
		dose = cmp.Or(d.Choices.Dose, dose) // with a laminate to renew, the choice is the laminating resin's
	}
	hardener, err := cat.Catalyst(CatalystClass(d))
	if err != nil {
		return fmt.Errorf("shelf.hardener: %w", err)
	}
	if err := mixing.CheckDose(g.TwoPart, dose); err != nil {
		return fmt.Errorf("choices.catalyst: %w", err)
	}
	scale := cmp.Or(d.Shelf.Scale, mixing.DefaultScale)
	rho := hardener.Density.Typical
	h := mixing.SmallestHonest(scale, d.Shelf.Syringe, rho, dose, mixing.CatalystWithin)
	mixed := max(need, h.Resin)
	a := mixing.Split(g.TwoPart, mixed, dose)
	mass, volume := mixing.Dose(mixed, dose, rho)
	m := mixing.Measure(a, scale, d.Shelf.Syringe, rho, mixing.CatalystWithin)
	r.Paste = &Small{
		Needed: need, Mixed: mixed, Dose: dose, Catalyst: mass, CatalystVolume: volume,
		LowDose: m.Low, HighDose: m.High, By: "scale",
	}
	if m.Syringe {
		r.Paste.By = "syringe"
	}
	if mixed > need {
		tiny, _ := mixing.Dose(need, dose, rho)
		r.Verdicts = append(r.Verdicts, check.Verdict{
			What: "smallest honest batch", State: check.Watch,
			Value: fmt.Sprintf("%.2f g needed, %.0f g mixed", need.Grams(), mixed.Grams()),
			Limit: fmt.Sprintf("dose known to within %.0f %%", mixing.CatalystWithin.Percent()), Source: "common practice, no source",
			Why: fmt.Sprintf("%.2f g of catalyst for %.2f g cannot be measured with this scale and syringe. Mix %.0f g and throw the rest away.", tiny.Grams(), need.Grams(), mixed.Grams()),
		})
	}
	r.Working = append(r.Working,
		working.Line{
			Name: "paste in the marks", Formula: "V = Σ l w d/2 (scratch) + π l w d/8 (ding)", Numbers: working.Count(len(r.Fills), "kind of mark", "kinds of mark"),
			Value: r.FillVolume.ML(), Unit: "ml", Source: working.Geometry,
		},
		working.Line{
			Name: "paste needed", Formula: "m = V ρ (1 + overfill)(1 + waste)", Numbers: fmt.Sprintf("%.2f ml × %.2f g/ml × %.2f × %.2f", r.FillVolume.ML(), g.Density.Typical.GramsPerML(), 1+overfill, 1+waste),
			Value: need.Grams(), Unit: "g", Source: working.CommonPractice,
		},
		working.Line{
			Name: "catalyst for the paste", Formula: "V = m p / ρ", Numbers: fmt.Sprintf("%.0f g × %.2g %% / %.2f g/ml", mixed.Grams(), dose.Percent(), rho.GramsPerML()),
			Value: volume.ML(), Unit: "ml", Source: "arithmetic; dose by the sheet",
		})
	return nil
}

// surfaceDepth is how deep surface damage may go without meaning for strength by
// itself: 1/16 in, 2 mm.
var surfaceDepth = si.MM(2)

// intoLaminate judges a mark that goes through the gelcoat.
func intoLaminate(m job.Mark, under si.Length) check.Verdict {
	v := check.Verdict{
		What: fmt.Sprintf("%s %.1f mm deep", m.Kind, m.Deep.MM()), State: check.Watch,
		Value: fmt.Sprintf("%.1f mm into the laminate", under.MM()), Limit: fmt.Sprintf("%.0f mm", surfaceDepth.MM()), Source: "MarineComposites1999: Repair, p. 285",
		Why: "By itself of no meaning for strength, but it lets water in: dry it out, look for white glass under it, and seal the glass before the paste.",
	}
	if under > surfaceDepth {
		v.State = check.Stop
		v.Why = "Too deep to be filled: plies are cut. Describe it as a gouge of partial depth and plan again."
	}
	return v
}

func (r *Result) fair(d job.Description, cat catalog.Catalogue, edge geom.Shape, missing si.Length) error {
	r.FairArea = si.MM2(edge.Area())
	r.Fairing = r.FairArea.Deep(missing+fairingFilm) * (1 + fairingSpare)
	r.Working = append(r.Working, working.Line{
		Name: "fairing compound", Formula: "V = A (missing + film)(1 + spare)", Numbers: fmt.Sprintf("%.3f m² × (%.2f + %.1f) mm × %.2f", r.FairArea.M2(), missing.MM(), fairingFilm.MM(), 1+fairingSpare),
		Value: r.Fairing.ML(), Unit: "ml", Source: working.CommonPractice,
	})
	if d.Shelf.Filler == "" {
		return nil
	}
	f, err := cat.Filler(d.Shelf.Filler)
	if err != nil {
		return fmt.Errorf("shelf.filler: %w", err)
	}
	switch {
	case f.PerHundredVol.Given():
		r.FillerMix = fmt.Sprintf("100 to %.4g by volume", f.PerHundredVol.Typical)
	case f.PerHundred.Given():
		r.FillerMix = fmt.Sprintf("100 to %.4g by mass", f.PerHundred.Typical)
	}
	return nil
}

func (r *Result) coat(d job.Description, cat catalog.Catalogue, edge geom.Shape) error {
	g, err := cat.Gelcoat(d.Shelf.Gelcoat)
	if err != nil {
		return fmt.Errorf("shelf.gelcoat: %w", err)
	}
	hardener, err := cat.Catalyst(CatalystClass(d))
	if err != nil {
		return fmt.Errorf("shelf.hardener: %w", err)
	}
	wide, err := edge.Offset(blendBand.MM())
	if err != nil {
		return err
	}
	c := Coat{Class: g.Class, Name: g.Name, Area: si.MM2(wide.Area()), Film: coatFilm, Coats: coats, Dose: g.Dose.Typical}
	c.Mass = Gelcoat(c.Area, c.Film, g.Density.Typical, coatLoss)
	c.Catalyst, c.CatalystVolume = mixing.Dose(c.Mass, c.Dose, hardener.Density.Typical)
	r.Coat = &c
	r.Film = []string{
		fmt.Sprintf("applied %.2f mm wet in %d coats", c.Film.MM(), c.Coats),
		"levelling and polishing take 0.13 to 0.25 mm (5 to 10 mil; a forum post on repairs, read)",
		fmt.Sprintf("the sheet's film, %s, is what should be left; stop where less than 0.3 mm would stay, and watch the edges first", g.Film.String()),
	}
	r.Working = append(r.Working, working.Line{
		Name: "gelcoat", Formula: "m = A d ρ (1 + loss)", Numbers: fmt.Sprintf("%.3f m² × %.2f mm × %.2f g/ml × %.2f", c.Area.M2(), c.Film.MM(), g.Density.Typical.GramsPerML(), 1+coatLoss),
		Value: c.Mass.Grams(), Unit: "g", Source: working.Geometry + "; loss from memory; applied film by repair practice, 30 mil before sanding (a forum post, read)",
	})
	return nil
}

// CatalystClass is the peroxide a gelcoat is set off with: the shelf's, or the
// common class where the shelf only names an epoxy's hardener or none.
func CatalystClass(d job.Description) string { return cmp.Or(d.Shelf.Hardener, "peroxide") }

// PasteClass is the gelcoat or paste that marks are filled with: the shelf's, or
// the common class where the shelf names none.
func PasteClass(d job.Description) string { return cmp.Or(d.Shelf.Gelcoat, "gelcoat-paste") }

// Gelcoat returns the mass of a film over an area, with a loss on top.
func Gelcoat(a si.Area, film si.Length, rho si.Density, loss si.Ratio) si.Mass {
	return si.Scale(rho.Of(a.Deep(film)), 1+loss)
}

// Barrier coats over a repair below the waterline: five of 0.12 mm, a common
// build (about 0.25 mm dry or more; common practice, no source).
var barrierFilm = si.MM(0.12)

const barrierCoats = 5

func (r *Result) barrier(d job.Description, cat catalog.Catalogue, edge geom.Shape) error {
	b, err := cat.Barrier(d.Shelf.Barrier)
	if err != nil {
		return fmt.Errorf("shelf.barrier: %w", err)
	}
	wide, err := edge.Offset(blendBand.MM())
	if err != nil {
		return err
	}
	area := si.MM2(wide.Area())
	r.Barrier = &Barrier{
		Class: b.Class, Name: b.Name, Area: area, Film: barrierFilm, Coats: barrierCoats,
		Volume: area.Deep(barrierFilm) * barrierCoats * (1 + coatLoss), From: b.RecoatFrom, To: b.RecoatTo,
	}
	r.Working = append(r.Working, working.Line{
		Name: "barrier coat", Formula: "V = A n d (1 + loss)", Numbers: fmt.Sprintf("%.3f m² × %d × %.2f mm × %.2f", area.M2(), barrierCoats, barrierFilm.MM(), 1+coatLoss),
		Value: r.Barrier.Volume.ML(), Unit: "ml", Source: working.CommonPractice,
	})
	return nil
}

// Film returns the thickness of a mass spread over an area: the inverse of Gelcoat without a loss.
func Film(m si.Mass, a si.Area, rho si.Density) si.Length {
	return si.Length(float64(rho.Fill(m)) / float64(a))
}

func (r *Result) temperature(d job.Description, cat catalog.Catalogue, hull si.Temp) error {
	g, err := cat.Gelcoat(PasteClass(d))
	if err != nil {
		return err
	}
	if !hull.Given() {
		return nil
	}
	v := check.Verdict{
		What: "hull temperature for gelcoat", Value: fmt.Sprintf("%.0f °C", hull.Celsius()), Limit: fmt.Sprintf("%.0f °C or more", g.HullMin.Celsius()),
		State: check.OK, Source: "the sheet of the gelcoat in hand", Why: "Warm enough to set.",
	}
	if g.HullMax.Given() {
		v.Limit = fmt.Sprintf("%.0f to %.0f °C", g.HullMin.Celsius(), g.HullMax.Celsius())
	}
	if g.HullMax.Given() && hull > g.HullMax {
		v.State = check.Stop
		v.Why = "Too hot: it gels before it has flowed out. Shade and cool the hull, or work in the cool of the night."
	}
	if hull < g.HullMin {
		v.State = check.Stop
		v.Why = fmt.Sprintf("Too cold: warm the hull by %.0f to %.0f K with a lamp and check it by thermometer, or wait. More catalyst does not stand in for warmth.",
			g.HullMin.Sub(hull).Kelvins(), g.HullMin.Sub(hull).Kelvins()+1)
	}
	r.Verdicts = append(r.Verdicts, v)
	return nil
}

// grits lists the sanding grades. From P80 on each step is at most 1.85 times
// finer in mean grain size (P scale), our own limit; P40 to P80 is coarser, its
// scratches lying under resin or filler.
func (r *Result) grits(laminate, coated bool) {
	if laminate {
		r.Grits = append(r.Grits, Grit{40, "grind the taper; key for the first ply"}, Grit{80, "key for fairing; first cut of the filler, long board"},
			Grit{120, "fair"}, Grit{180, "fair; key for gelcoat"})
	}
	if coated {
		r.Grits = append(r.Grits,
			Grit{320, "level the gelcoat, dry or wet, on a block"}, Grit{400, "wet"}, Grit{600, "wet"}, Grit{800, "wet"},
			Grit{1000, "wet"}, Grit{1200, "wet"}, Grit{1500, "wet, then compound and polish"})
	}
	if len(r.Fills) > 0 && len(r.Film) == 0 {
		r.Film = []string{
			"the fill stands proud; the old gelcoat round it is what is lost first",
			"cover the fill with film (or use waxed paste): air keeps it tacky",
			"block only the fill until it is level, then widen; stop where less than 0.3 mm of old gelcoat would stay",
		}
	}
}
