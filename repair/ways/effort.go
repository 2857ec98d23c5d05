package ways

import (
	"math"

	"scarfwright/repair/catalog"
	"scarfwright/repair/caution"
	"scarfwright/repair/estimate"
	"scarfwright/repair/programme"
)

// Hours beside those that follow from areas: survey, opening up, waiting and
// looking, refit, record; and gelcoat with its polish for each outer face (from
// memory, as in the programme).
const (
	fixedHours  = 1 + 1 + 1 + 2 + 1.0
	coatHours   = 2 + 2.5
	steppedWork = 3.5 // times the hours of grinding a taper (TM-1-1500: three to four)
	dayHours    = 8.0
	resinWaste  = 1.25
)

// effort books hours, days and a rough price, by the tool's own rates so that ways
// compare like with like; the quote takes the yard's own.
func (c *comparison) effort(w *Way, plies int, cloth float64) error {
	var h estimate.Range
	add := func(r estimate.Range) { h.Low, h.Likely, h.High = h.Low+r.Low, h.Likely+r.Likely, h.High+r.High }
	faces := 1.0
	if w.Sides == "both" {
		faces = 2
	}
	if w.Kind == Stepped {
		g := programme.Grinding(w.Ground.M2())
		add(estimate.Range{Low: steppedWork * g.Low, Likely: steppedWork * g.Likely, High: steppedWork * g.High})
	} else {
		for range int(faces) {
			add(programme.Grinding(w.Ground.M2() / faces))
		}
	}
	add(programme.Forming(float64(plies)))
	sessions := max(w.Sessions, 1)
	for range sessions {
		add(programme.Laying(cloth / float64(sessions)))
	}
	fair := w.Size[0].Times(w.Size[1]).M2()
	for range int(faces) {
		add(programme.Fairing(fair))
	}
	rest := fixedHours
	nights := 1.0 + faces // the laminate of each face, and the fairing
	if c.d.Choices.Finish != "none" && c.d.Choices.Finish != "paint" {
		rest += coatHours
		nights++
	}
	add(estimate.Range{Low: 0.7 * rest, Likely: rest, High: 1.5 * rest})
	w.Hours = h
	people := float64(max(c.d.Crew.People, 1))
	w.Days = int(math.Max(nights, math.Ceil(h.Likely/(dayHours*people))))
	w.Price = h.Likely*c.d.Crew.Rate + (1+float64(c.d.Shelf.Markup))*c.materials(w)
	return nil
}

// materials prices the cloth and the resin of a way by what a unit costs in the
// cheapest pack on sale.
func (c *comparison) materials(w *Way) float64 {
	sum := 0.0
	if w.parts == nil {
		return 0
	}
	each := w.Cloth.M2() / float64(max(1, len(w.parts.patch)))
	for _, p := range w.parts.patch {
		sum += each * unitPrice(estimate.OnSale(c.d, c.cat, p.class, "m²"))
	}
	grams := w.Resin.Grams() * resinWaste
	return sum + grams*unitPrice(estimate.OnSale(c.d, c.cat, c.d.Shelf.Resin, "g"))
}

func unitPrice(packs []estimate.Pack) float64 {
	best := math.Inf(1)
	for _, p := range packs {
		best = min(best, p.Price/p.Size)
	}
	if math.IsInf(best, 1) {
		return 0
	}
	return best
}

// works are the sorts of work any of the ways asks for, for their cautions.
func (c *comparison) works() []caution.Work {
	out := []caution.Work{caution.Lifting, caution.Grinding}
	if c.resin.Kind == catalog.Epoxy {
		out = append(out, caution.Epoxy, caution.Mixing)
	} else {
		out = append(out, caution.Peroxide, caution.Polyester, caution.Mixing)
	}
	if c.d.Damage.Access != "outside" {
		out = append(out, caution.Confined)
	}
	return out
}
