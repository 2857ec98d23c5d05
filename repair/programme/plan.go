package programme

import (
	"fmt"
	"strings"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/caution"
	"scarfwright/repair/curing"
	"scarfwright/repair/design"
	"scarfwright/repair/estimate"
	"scarfwright/repair/finish"
	"scarfwright/repair/job"
	"scarfwright/repair/mixing"
	"scarfwright/repair/survey"
	"scarfwright/repair/working"
)

// Input is what the programme is made from.
type Input struct {
	Job     job.Description
	Resin   catalog.Resin
	Survey  survey.Result
	Design  *design.Result
	Curing  *curing.Result // nil where the cure is not followed
	Mixing  *mixing.Result
	Finish  finish.Result
	Hours   [][24]Hour
	Gelcoat Windows
	Lay     Windows
	Other   []Windows // the same with, or without, the heat that was not chosen
}

// Plan returns the steps in order. A cosmetic job has no laminating steps.
func Plan(in Input) Programme {
	b := builder{in: in, sys: in.Job.Choices.System()}
	b.survey()
	if in.Design != nil {
		b.strip()
		b.grind()
		b.form()
		b.laminate()
		b.watch()
		b.fair()
	}
	if len(in.Finish.Fills) > 0 {
		b.fill()
	}
	b.surface()
	b.handOver()
	p := Programme{Steps: number(b.steps), Hours: in.Hours}
	for _, w := range append([]Windows{in.Lay, in.Gelcoat}, in.Other...) {
		if w.What != "" {
			p.Windows = append(p.Windows, w)
		}
	}
	p.Rates = b.rates
	return p
}

type builder struct {
	in    Input
	sys   si.System
	steps []Step
	rates []estimate.HourLine
}

// book is add with the hours as a range.
func (b *builder) book(s Step, h estimate.Range, works ...caution.Work) {
	b.add(s, h.Low, h.Likely, h.High, works...)
}

// add appends a step and books its hours, low, likely and high.
func (b *builder) add(s Step, low, likely, high float64, works ...caution.Work) {
	s.Hours = likely
	s.Cautions = caution.For(works...)
	b.steps = append(b.steps, s)
	for i := range b.rates {
		if b.rates[i].Step == s.Key {
			h := &b.rates[i].Hours
			h.Low, h.Likely, h.High = h.Low+low, h.Likely+likely, h.High+high
			return
		}
	}
	b.rates = append(b.rates, estimate.HourLine{Step: s.Key, Hours: estimate.Range{Low: low, Likely: likely, High: high}, Source: working.FromMemory})
}

// resinWork is the caution that goes with the laminating resin.
func (b *builder) resinWork() []caution.Work {
	if b.in.Resin.Kind == catalog.Epoxy {
		return []caution.Work{caution.Epoxy, caution.Mixing}
	}
	return []caution.Work{caution.Peroxide, caution.Polyester, caution.Mixing}
}

func (b *builder) survey() {
	d := b.in.Job
	s := Step{Key: "survey", Name: "Survey and photographs", Do: []string{
		"Photograph the damage with a rule in the picture, from outside and inside, before anything is touched.",
		"Tap the whole panel with a light hammer and mark the edge of the dull area; note where it was not possible to tap.",
	}}
	if b.in.Survey.Class != survey.Cosmetic {
		s.Do = append(s.Do, "Look behind: frames, tabbing, floors and the opposite face. Stop and report anything cracked or loose.")
	}
	for _, l := range b.in.Survey.Limitations {
		s.Do = append(s.Do, "Record as a limitation: "+l)
	}
	if d.Shelf.Hardener != "" && b.oldOrUnknown() != "" {
		s.Do = append(s.Do, "Cup test first: "+b.oldOrUnknown()+". Mix a small cup at the planned dose at today's temperature and time it against the sheet; outside it by more than a third, get a new lot.")
	}
	b.add(s, 0.5, 1, 2, caution.Lifting)
}

// oldOrUnknown names stock whose age is unknown or beyond its shelf life.
func (b *builder) oldOrUnknown() string {
	var out []string
	for _, s := range b.in.Job.Shelf.Stock {
		switch {
		case s.Class == b.in.Job.Shelf.Hardener && s.Age == 0:
			out = append(out, "the catalyst's age is unknown")
		case s.Class == b.in.Job.Shelf.Resin && b.in.Resin.ShelfLife > 0 && s.Age > b.in.Resin.ShelfLife:
			out = append(out, fmt.Sprintf("the resin is %.0f days old, its sheet gives %.0f", s.Age.Days(), b.in.Resin.ShelfLife.Days()))
		}
	}
	return strings.Join(out, " and ")
}

func (b *builder) strip() {
	b.add(Step{Key: "strip", Name: "Open up, clean and dry", Do: []string{
		"Clear both faces as far as they can be reached.",
		fmt.Sprintf("Take off gelcoat, paint and antifouling over at least %s, the whole of what will be covered: nothing is laminated on them.", b.size(b.covered())),
		"Wash, degrease with the solvent its sheet names, then dry. Nothing wet is laminated over.",
	}}, 0.5, 1, 2, caution.Solvent, caution.Lifting)
}

// covered is the outline over which anything is laid.
func (b *builder) covered() geom.Shape {
	if r := b.in.Design; len(r.CoverEdge) > 0 {
		return r.CoverEdge
	}
	return b.in.Design.Edge
}

// dish reports a repair that does not go through.
func (b *builder) dish() bool { return b.in.Survey.Class == survey.PartialDepth }

func (b *builder) grind() {
	r := b.in.Design
	s := Step{Key: "taper", Name: "Cut out and grind the taper", Do: []string{
		"Mark the cut-out from its template; cut back to sound laminate with round corners. Where the edge still looks white, cut further and plan again.",
		fmt.Sprintf("Grind the taper from the %s with P40, straight from the cut-out's edge to nothing at the feather edge; the plies show as even bands.", facesText(r.Sides)),
	}, Targets: []Target{
		{"cut-out, width × height", b.size(r.CutOut)},
		{"thickness at the cut-out's edge", b.long(r.Depth)},
	}}
	if b.dish() {
		s.Name = "Grind the dish"
		s.Do = []string{
			fmt.Sprintf("Do not cut through. Mark the floor of the dish from its template and grind down to %s, no further: %s of the old laminate stays whole below. Where the floor still looks white, stop and plan again with the greater depth.", b.long(r.Depth), b.long(r.Original.Thickness-r.Depth)),
			fmt.Sprintf("Grind the taper from the floor's edge to nothing at the feather edge, from the %s, with P40; the plies show as even bands.", facesText(r.Sides)),
		}
		s.Targets = []Target{{"floor of the dish, width × height", b.size(r.CutOut)}, {"depth of the floor", b.long(r.Depth)}}
	}
	s.Do = append(s.Do, "Vacuum, then wipe clean; do not touch the ground face with bare hands.")
	s.Targets = append(s.Targets,
		Target{"taper length, square to the edge", b.long(r.Taper)},
		Target{"feather edge, width × height", b.size(r.Edge)},
		Target{"hull temperature", ""},
		Target{"hull above dew point", b.dewMargin()})
	s.Hold = &Hold{Letter: "A", What: "substrate, before the first ply", Signs: "lead, and surveyor if there is a claim", Look: []string{
		"sound laminate all round by tap test", "dry", "taper measured at the eight clock points",
		"clean and dull; no gelcoat, paint or wax over " + b.size(b.covered()),
	}}
	area := 0.0
	for _, o := range r.Options {
		if o.Chosen {
			area = o.Ground.M2()
		}
	}
	b.book(s, Grinding(area), caution.Grinding)
}

func (b *builder) form() {
	r := b.in.Design
	s := Step{Key: "form", Name: "Cut the plies and fit them dry", Do: []string{
		"Cut every ply from its template; number it, mark its fibre direction and its top.",
		"Lay the plies dry in order and look that each edge lands on its ring.",
	}}
	s.Do = append(s.Do, r.Notes...)
	first := func(words string) { s.Do = append([]string{words}, s.Do...) }
	switch {
	case r.Backing != nil:
		s.Name = "Backing behind the hole; plies cut and dry-fitted"
		first("Backing: " + r.Backing.How)
		s.Targets = append(s.Targets, Target{"backing, " + working.Count(len(r.Backing.Pieces), "piece", "pieces"), b.long(r.Backing.PieceLong) + " × " + b.long(r.Backing.PieceShort)})
	case r.Core != nil:
		s.Name = "New core; plies cut and dry-fitted"
		first(fmt.Sprintf("Cut back the wet core until it is dry all round; fit new core, %s, %s thick, bedded on both faces with %s of paste in all, weighted until hard. Solid plugs where bolts pass.", r.Core.Name, b.long(r.Core.Thickness), b.mass(r.Core.Paste)))
	case b.in.Survey.Class == survey.FullDepth:
		s.Name = "Form over the hole; plies cut and dry-fitted"
		first(fmt.Sprintf("Fix a form over the face away from the taper: a flat sheet bent to the hull's curve (or a splash taken from a like place), waxed or under film, at least %s larger than the hole all round.", b.long(formLap)))
		if r.Sagitta > 0 {
			s.Targets = append(s.Targets, Target{"rise of the curve over the feather edge", b.long(r.Sagitta)})
		}
	}
	n := float64(len(r.Plies))
	b.book(s, Forming(n), caution.Grinding)
}

// formLap is how far a form reaches beyond the hole (common practice, no source).
var formLap = si.MM(50)

func (b *builder) laminate() {
	in, r := b.in, b.in.Design
	last := r.Plies[len(r.Plies)-1].Session
	for k := 1; k <= last; k++ {
		var labels []string
		area := 0.0
		for _, p := range r.Plies {
			if p.Session == k {
				labels = append(labels, p.Label)
				area += p.Area.M2()
			}
		}
		s := Step{Key: "laminate", Name: fmt.Sprintf("Laminate, session %d of %d: %s", k, last, strings.Join(labels, ", "))}
		if k == 1 {
			s.Do = append(s.Do, "Brush resin on the ground face first; then each ply wetted out and rolled until no air shows white.")
		} else {
			s.Do = append(s.Do, b.between(k-1))
		}
		s.Targets = append(s.Targets, Target{"hull temperature", b.band(in.Resin.HullMin, in.Resin.HullMax)}, Target{"hull above dew point", b.dewMargin() + " until it has gelled"})
		if in.Mixing != nil && k <= len(in.Mixing.Sessions) {
			s.Targets = append(s.Targets, b.doses(k)...)
		}
		if len(in.Lay.Open) > 0 {
			s.Targets = append(s.Targets, Target{"hours open on the days given", in.Lay.Text()})
		}
		s.WaitWhy = "until it has gelled and is back to hull temperature"
		if c := b.session(k); c != nil {
			s.Targets = append(s.Targets, Target{"hottest it may get", curing.Degrees(c.Limit, b.sys)})
			s.Do = append(s.Do, fmt.Sprintf("Reckoned for laying from %02.0f h: it gels some %.0f min after mixing; %s. Write down what the thermometer says.", c.Hour, c.Gelled().Minutes(), c.Hottest(b.sys)))
		}
		b.book(s, Laying(area), append(b.resinWork(), b.heat()...)...)
	}
}

// session returns what was followed of session k, nil where nothing was.
func (b *builder) session(k int) *curing.Session {
	if b.in.Curing == nil || k > len(b.in.Curing.Sessions) {
		return nil
	}
	return &b.in.Curing.Sessions[k-1]
}

// between is what is done on the face of session k. It says what the joint among
// the checks says, for both ask the same sessions.
func (b *builder) between(k int) string {
	r := b.in.Resin
	sand := "grind with P40 to P80 to a dull face, dust off, wipe, let it flash off"
	tacky := "is tacky, without wax, and cool to the hand"
	if r.Kind == catalog.Epoxy {
		sand = "wash with water and an abrasive pad, dry, and sand with P80"
		tacky = "can still be dented by a nail"
	}
	if r.RecoatTo == 0 {
		return fmt.Sprintf("If the last session %s, lay straight on. Otherwise %s.", tacky, sand)
	}
	if b.session(k) == nil || b.session(k+1) == nil {
		return fmt.Sprintf("If the last session %s (from %.3g to %.3g h after it was mixed at 20 °C, by the sheet), lay straight on. Otherwise %s.",
			tacky, r.RecoatFrom.Hours(), r.RecoatTo.Hours(), sand)
	}
	f := b.in.Curing.Follows(k + 1)
	switch f.Fit {
	case curing.Inside:
		return fmt.Sprintf("As planned (%s): lay straight on, if the last session %s. Otherwise %s.", f.Words, tacky, sand)
	case curing.Early:
		return fmt.Sprintf("As planned (%s): wait until the window opens, and lay straight on if the last session %s. Otherwise let it go hard, then %s.", f.Words, tacky, sand)
	case curing.Late:
		return fmt.Sprintf("As planned (%s): let it go hard, then %s.", f.Words, sand)
	case curing.NoWindow:
		return fmt.Sprintf("Let the last session go hard, then %s: %s.", sand, f.Words)
	case curing.NotDated:
	}
	return fmt.Sprintf("If the last session %s, lay straight on (%s). Otherwise %s.", tacky, f.Words, sand)
}

func (b *builder) watch() {
	r := b.in.Design
	s := Step{Key: "other side", Name: "Wait for the laminate", Do: []string{
		"Keep the hull inside its band and out of dew, rain and sun until the laminate can be sanded; write down hull temperatures.",
	}, Wait: b.in.Resin.Sandable, WaitWhy: "to sandable, at 20 °C by the sheet; longer when colder"}
	if n := len(r.Plies); n > 0 {
		if c := b.session(r.Plies[n-1].Session); c != nil {
			s.Wait, s.WaitWhy = c.Sand, "to sandable at this hull's temperatures, the later of the fitted cure and the sheet"
			s.Do = append(s.Do, c.Reached(b.sys))
		}
	}
	if b.in.Survey.Class == survey.FullDepth && b.in.Job.Damage.Access == "both" && r.Sides != "both" {
		s.Name = "Wait for the laminate; close the far face"
		s.Do = append(s.Do, "Take off the form; grind the far face dull round the cut-out's edge.")
		if f := r.FarSide; f != nil {
			s.Do = append(s.Do, fmt.Sprintf("Close it with one ply of %s, %s × %s (%s of glass, %s of resin; not in the amounts of this card), or fill and coat it as it was.",
				strings.ToUpper(f.Class), b.long(f.Width), b.long(f.Height), b.mass(f.Glass), b.mass(f.Resin)))
		}
	}
	s.Hold = &Hold{Letter: "B", What: "laminate, before it is hidden", Signs: "lead, and surveyor if there is a claim", Look: []string{
		"hard to the nail all over", "no dull sound by tap test, no white spots", b.builtUp(),
	}}
	b.add(s, 0.5, 1, 2, caution.Grinding)
}

// builtUp is the thickness to be found at the middle, the covers counted.
func (b *builder) builtUp() string {
	r := b.in.Design
	var laid si.Length
	for _, p := range r.Plies {
		laid += p.Thickness
	}
	if b.in.Survey.Class == survey.FullDepth {
		return "thickness at the middle " + b.long(laid) + ", cover included"
	}
	return fmt.Sprintf("stands %s over the old laminate at the middle, cover included", b.long(max(0, laid-r.Depth)))
}

func (b *builder) fair() {
	f, d := b.in.Finish, b.in.Job
	s := Step{Key: "fair", Name: "Fair", Do: []string{
		"Grind the cover ply's edge level; fill low places in thin passes; long board with a guide coat until a batten lies without rocking.",
		"The repair stands a little above the old surface at its middle: run the filler out as far as it takes for the eye and the batten not to find it.",
	}, Targets: []Target{{"fairing compound, about", fmt.Sprintf("%.0f ml", f.Fairing.ML())}}}
	works := []caution.Work{caution.Sanding}
	if f.FillerMix != "" {
		s.Do = append(s.Do, "Mix the filler "+f.FillerMix+".")
		works = append(works, caution.Epoxy)
	}
	if f.Coat != nil && f.FillerMix != "" {
		works = append(works, caution.Gelcoat)
	}
	a := f.FairArea.M2()
	s.Hold = &Hold{Letter: "C", What: "before the last coat", Signs: "lead", Look: []string{
		"no wax, blush or dust", "fair by batten", "hull " + b.dewMargin() + " above the dew point for the whole open time", "hull warm enough by its sheet",
	}}
	if d.Choices.Finish == "paint" {
		s.Do = append(s.Do, "Paint is not planned here: prime and paint by the paint's own sheet, on a face sanded as it asks.")
	}
	b.book(s, Fairing(a), works...)
}

func (b *builder) fill() {
	f := b.in.Finish
	s := Step{Key: "gelcoat", Name: "Open and fill the marks", Do: []string{
		"Open each crack or scratch to a clean V down to its root; look for white glass under it. If there is any, stop: the laminate is hurt and this is not a surface repair.",
		"Fill proud by about half, without bubbles; cover with film so that the face sets.",
	}}
	if p := f.Paste; p != nil {
		s.Targets = append(s.Targets,
			Target{"paste mixed", fmt.Sprintf("%.0f g (%.2f g needed)", p.Mixed.Grams(), p.Needed.Grams())},
			Target{fmt.Sprintf("catalyst, %.2g %%", p.Dose.Percent()), fmt.Sprintf("%.2f g = %.2f ml by %s", p.Catalyst.Grams(), p.CatalystVolume.ML(), p.By)})
	}
	n := 0
	for _, m := range b.in.Job.Damage.Marks {
		n += max(1, m.Count)
	}
	x := float64(n)
	works := []caution.Work{caution.Grinding, caution.Peroxide, caution.Polyester, caution.Mixing}
	b.add(s, 0.3*x, 0.5*x, x, append(works, b.heat()...)...)
}

func (b *builder) surface() {
	f := b.in.Finish
	if x := f.Barrier; x != nil {
		s := Step{Key: "gelcoat", Name: "Barrier coat", Do: []string{
			fmt.Sprintf("%d coats of %.2f mm over the repair and a band round it, each inside the window after the last (%.0f to %.0f h at 20 °C by the sheet); later than that, wash and sand first.", x.Coats, x.Film.MM(), x.From.Hours(), x.To.Hours()),
		}, Targets: []Target{{"barrier coat, all coats", fmt.Sprintf("%.0f ml", x.Volume.ML())}}}
		b.add(s, 1, 1.5, 2.5, append([]caution.Work{caution.Epoxy, caution.Mixing}, b.heat()...)...)
	}
	if c := f.Coat; c != nil {
		s := Step{Key: "gelcoat", Name: "Gelcoat", Do: []string{
			fmt.Sprintf("%d coats, about %s in all as applied; wax or film on the last one only, or it stays tacky.", c.Coats, b.long(c.Film)),
		}, Targets: []Target{
			{"gelcoat", fmt.Sprintf("%.0f g", c.Mass.Grams())},
			{fmt.Sprintf("catalyst, %.2g %%", c.Dose.Percent()), fmt.Sprintf("%.1f g = %.1f ml in all", c.Catalyst.Grams(), c.CatalystVolume.ML())},
		}}
		if len(b.in.Gelcoat.Open) > 0 {
			s.Targets = append(s.Targets, Target{"hours open on the days given", b.in.Gelcoat.Text()})
		}
		works := []caution.Work{caution.Peroxide, caution.Polyester}
		if b.in.Resin.Kind == catalog.Epoxy || f.FillerMix != "" {
			works = append(works, caution.Gelcoat)
		}
		b.add(s, 1+c.Area.M2(), 2+2*c.Area.M2(), 3+3*c.Area.M2(), append(works, b.heat()...)...)
	}
	if len(f.Grits) > 0 && (f.Coat != nil || f.Paste != nil) {
		var grades []string
		for _, g := range f.Grits {
			if g.P >= 320 {
				grades = append(grades, fmt.Sprintf("P%d", g.P))
			}
		}
		b.add(Step{Key: "polish", Name: "Level, wet-sand and polish", Do: append([]string{
			"On a block, in order: " + strings.Join(grades, ", ") + "; then compound and polish. Wash between grades.",
		}, f.Film...)}, 1.5, 2.5, 4, caution.Sanding)
	}
}

func (b *builder) handOver() {
	if b.in.Design != nil {
		s := Step{Key: "refit", Name: "Refit and check", Do: []string{"Refit what was taken off."}}
		if b.in.Job.Panel.Waterline > 0 {
			s.Name = "Refit, antifoul, check"
			s.Do = append(s.Do, "Antifouling inside its window, by its sheet.")
		}
		b.add(s, 1, 2, 3, caution.Lifting)
	}
	s := Step{Key: "record", Name: "Record and hand over", Do: []string{
		"Complete the actuals on this card; note lots, temperatures, times and whoever signed.",
		"Tell the owner what was done, where, and what must wait before launch, wax and pressure washing.",
	}}
	if b.in.Design != nil && (b.in.Job.Panel.Place == "bottom" || b.in.Job.Panel.Waterline > 0) {
		s.Hold = &Hold{Letter: "D", What: "release, before launch", Signs: "lead and owner, and surveyor if there is a claim", Look: []string{
			"through-cured by time and temperature", "thickness, tap test and photographs on file", "no open non-conformance",
		}}
		b.add(s, 0.5, 1, 1.5, caution.Launch)
		return
	}
	b.add(s, 0.25, 0.5, 1)
}

// doses are the batches of a session as targets.
func (b *builder) doses(session int) []Target {
	m := b.in.Mixing
	s := m.Sessions[session-1]
	x := s.Batches
	if s.WorkingTime == 0 {
		return []Target{{"doses", "none may be mixed yet: " + s.Words}}
	}
	second := fmt.Sprintf("%.1f g = %.1f ml", x.Second.Grams(), x.SecondVolume.ML())
	word := "hardener"
	if m.Catalysed {
		word = fmt.Sprintf("catalyst, %.2g %%", m.Dose.Percent())
	}
	return []Target{
		{"resin, " + working.Count(x.Count, "batch", "batches") + " of", fmt.Sprintf("%.0f g", x.Resin.Grams())},
		{word + ", each", second},
		{b.whose(s), s.Words},
	}
}

// whose says of what the working time is told.
func (b *builder) whose(s mixing.Session) string {
	if s.Own != nil {
		return "time for the batch"
	}
	return "working time of 100 g"
}

// heat is the caution that goes with whatever warms the work.
func (b *builder) heat() []caution.Work {
	switch b.in.Job.Choices.Heat {
	case "tent":
		return []caution.Work{caution.Heating, caution.Confined}
	case "lamp":
		return []caution.Work{caution.Heating, caution.Lamp}
	}
	return nil
}

func facesText(sides string) string {
	if sides == "both" {
		return "outside and the inside, half the depth each"
	}
	return sides
}

func (b *builder) long(l si.Length) string { return si.Show(l, b.sys, 3) }

func (b *builder) mass(m si.Mass) string { return si.Show(m, b.sys, 2) }

func (b *builder) size(s geom.Shape) string {
	box := s.Bounds()
	return si.Show(si.MM(box.Width()), b.sys, 3) + " × " + si.Show(si.MM(box.Height()), b.sys, 3)
}

func (b *builder) dewMargin() string { return si.Show(DewMargin, b.sys, 2) + " or more" }

func (b *builder) band(low, high si.Temp) string { return band(low, high, b.sys) }

func band(low, high si.Temp, sys si.System) string {
	if high.Given() {
		return si.Show(low, sys, 3) + " to " + si.Show(high, sys, 3)
	}
	return si.Show(low, sys, 3) + " or more"
}
