package mixing

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/working"
)

// What is taken where nothing is chosen.
const (
	DefaultWaste   = si.Ratio(0.25)  // of the resin in the laminate (common practice, no source)
	DefaultLargest = si.Mass(0.5)    // largest batch (common practice, no source; docs/decisions/0011)
	DefaultWetOut  = 3.0             // m2 of ply an hour, one person (from memory)
	DefaultScale   = si.Mass(0.0001) // a pocket scale, 0.1 g
	usable         = 0.6             // part of the working time in which the cup is emptied (from memory)
)

// PlyNeed is the resin one ply holds.
type PlyNeed struct {
	Label string
	Resin si.Mass // in the laminate, without losses
	Area  si.Area
}

// Need is one laminating session: its plies in laying order.
type Need struct {
	Name  string
	Plies []PlyNeed
	At    si.Temp // of the air, when it is not Options.At
}

// Options are the choices and the tools. A zero field takes its default.
type Options struct {
	At      si.Temp   // of the air; not given means no working time is told
	Start   si.Temp   // of the mix, where it is kept warmer or cooler than the air
	Dose    si.Ratio  // catalyst; the sheet's typical dose if zero
	Waste   si.Ratio  // resin beyond what stays in the laminate
	Largest si.Mass   // largest batch
	People  int       // at the laminate; 1 if zero
	WetOut  float64   // m2 of ply one person wets out in an hour
	Scale   si.Mass   // its step
	Pot     Pot       // working time by mass; nil means the sheet's 100 g stands for every batch
	wasted  bool      // Waste was chosen, not taken by default
	Syringe si.Volume // its graduation; zero means none at hand
	System  si.System // of the words
}

func (o Options) filled(p catalog.TwoPart) Options {
	o.Dose = cmp.Or(o.Dose, p.Dose.Typical)
	o.wasted = o.Waste > 0
	o.Waste = cmp.Or(o.Waste, DefaultWaste)
	o.Largest = cmp.Or(o.Largest, DefaultLargest)
	o.People = cmp.Or(o.People, 1)
	o.WetOut = cmp.Or(o.WetOut, DefaultWetOut)
	o.Scale = cmp.Or(o.Scale, DefaultScale)
	return o
}

// check refuses what cannot be computed. Whether the sheet allows the dose is a
// verdict, not an error.
func (o Options) check() error {
	switch {
	case !(o.Dose >= 0 && o.Dose < 1):
		return fmt.Errorf("catalyst %.3g %%: must be at least 0 and below 100 %%", o.Dose.Percent())
	case !(o.Waste >= 0 && o.Waste <= 10):
		return fmt.Errorf("waste %.3g %%: must be 0 to 1000 %%", o.Waste.Percent())
	case !(o.Largest > 0) || math.IsInf(float64(o.Largest), 0):
		return fmt.Errorf("largest batch %.3g g: must be above 0", o.Largest.Grams())
	case !(o.Scale > 0) || !(o.Syringe >= 0):
		return fmt.Errorf("scale step %.3g g, syringe graduation %.3g ml: must not be negative", o.Scale.Grams(), o.Syringe.ML())
	case o.People < 0 || !(o.WetOut > 0):
		return fmt.Errorf("%d people at %.3g m2/h: must be above 0", o.People, o.WetOut)
	}
	return nil
}

// Ply is what one ply takes, its share of the losses included.
type Ply struct {
	Label string `json:"label"`
	Amount
}

// Batch is one cup, and how many alike.
type Batch struct {
	Count int `json:"count"`
	Amount
	Measured Measured `json:"measured"`
}

// Session is one laminating session.
type Session struct {
	Name        string          `json:"name"`
	At          si.Temp         `json:"at_k"`
	WorkingTime si.Time         `json:"working_time_s"` // at most; zero when the sheet tells none here
	Words       string          `json:"words"`          // the working time, or why there is none
	Own         *Own            `json:"own,omitempty"`  // of its own batch, by the fitted model
	Plies       []Ply           `json:"plies"`
	Need        Amount          `json:"need"`          // laminate and losses
	Losses      []Loss          `json:"losses"`        // what the difference is made of
	Batches     Batch           `json:"batches"`       // all alike
	Spare       si.Mass         `json:"spare_kg"`      // mixed beyond the need because less cannot be measured
	CrewLimit   si.Mass         `json:"crew_limit_kg"` // the most the crew can lay down in time; zero when not known
	Verdicts    []check.Verdict `json:"verdicts"`
}

// Mixed returns all that is mixed in the session: the need and the spare.
func (s Session) Mixed() si.Mass { return si.Scale(s.Batches.Mixed, s.Batches.Count) }

// Result is the mixing of all sessions.
type Result struct {
	Class     string         `json:"class"`
	Name      string         `json:"name"`
	Catalysed bool           `json:"catalysed"`
	Dose      si.Ratio       `json:"dose,omitempty"`    // catalyst by mass of resin
	PerMass   float64        `json:"per_100,omitempty"` // hardener to 100 of resin by mass
	PerVolume float64        `json:"per_100_volume,omitempty"`
	Density   si.Density     `json:"density_kg_per_m3"`        // of the resin
	Second    si.Density     `json:"second_density_kg_per_m3"` // of the catalyst or hardener
	Waste     si.Ratio       `json:"waste"`
	Largest   si.Mass        `json:"largest_kg"`
	Smallest  Smallest       `json:"smallest"`
	Sessions  []Session      `json:"sessions"`
	Total     Amount         `json:"total"` // need over all sessions
	Mixed     Amount         `json:"mixed"` // what is truly mixed: Total and the spares
	Losses    []Loss         `json:"losses"`
	Working   []working.Line `json:"working"`
}

// Mixable reports whether every session may be mixed: a dose the sheet allows, and a
// working time at its temperature.
func (r Result) Mixable() bool {
	return !slices.ContainsFunc(r.Sessions, func(s Session) bool { return s.WorkingTime == 0 })
}

// Verdicts returns those of all sessions.
func (r Result) Verdicts() []check.Verdict {
	var out []check.Verdict
	for _, s := range r.Sessions {
		out = append(out, s.Verdicts...)
	}
	return out
}

// Plan returns the doses and batches of each laminating session. Sessions do not
// share a batch: they are hours or days apart.
//
// It promises: what is mixed equals what the plies hold, the losses and the
// spare; the order of plies changes no amount; no batch is above the largest,
// unless less cannot be measured; where the sheet tells no working time at this
// temperature, a verdict says so and the doses still stand, for whoever changes the
// temperature; a dose outside the sheet's band is a stop, and no amount is told of it.
func Plan(sessions []Need, r catalog.Resin, o Options) (Result, error) {
	return PlanTwoPart(sessions, r.TwoPart, o)
}

// PlanTwoPart is Plan for any two-part material: a filler, a barrier coat.
func PlanTwoPart(sessions []Need, p catalog.TwoPart, o Options) (Result, error) {
	o = o.filled(p)
	if err := o.check(); err != nil {
		return Result{}, fmt.Errorf("mixing %s: %w", p.Class, err)
	}
	q := ratio(p, o.Dose)
	if !(q > 0) {
		return Result{}, fmt.Errorf("mixing %s: no ratio of the two parts is known", p.Class)
	}
	out := Result{
		Class: p.Class, Name: p.Name, Catalysed: p.Catalysed(),
		Density: p.Density.Typical, Second: p.HardenerDensity.Typical,
		Waste: o.Waste, Largest: o.Largest,
		Smallest: SmallestHonest(o.Scale, o.Syringe, p.HardenerDensity.Typical, q, within(p)),
	}
	if p.Catalysed() {
		out.Dose = o.Dose
	} else {
		out.PerMass = p.PerHundred.Typical
		out.PerVolume = VolumeRatio(out.PerMass, out.Density, out.Second)
	}
	for _, n := range sessions {
		s, err := session(n, p, o, out.Smallest)
		if err != nil {
			return Result{}, fmt.Errorf("mixing %s, %s: %w", p.Class, n.Name, err)
		}
		out.Sessions = append(out.Sessions, s)
		out.Total = out.Total.plus(s.Need)
		if s.Batches.Count == 0 {
			out.Mixed = out.Mixed.plus(s.Need) // nothing may be mixed; the resin is needed all the same
		} else {
			out.Mixed = out.Mixed.plus(Split(p, s.Mixed(), o.Dose))
		}
		out.Losses = gather(out.Losses, s.Losses)
	}
	out.Mixed.Laminate = out.Total.Laminate
	if out.Total.Laminate > 0 {
		out.Waste = si.Ratio(out.Total.Mixed/out.Total.Laminate) - 1
	}
	out.Working = lines(out)
	return out, nil
}

// within is the relative error of the second part that is still honest.
func within(p catalog.TwoPart) si.Ratio {
	if p.Catalysed() {
		return CatalystWithin
	}
	return HardenerWithin
}

func session(n Need, p catalog.TwoPart, o Options, least Smallest) (Session, error) {
	s := Session{Name: n.Name, At: cmp.Or(n.At, o.At)}
	var area si.Area
	o.Waste = waste(n, o)
	asked, forbidden := o.Dose, CheckDose(p, o.Dose)
	if forbidden != nil {
		o.Dose = 0 // no amount is told of a dose the sheet does not allow
	}
	for _, ply := range n.Plies {
		if !(ply.Resin >= 0) || !(ply.Area >= 0) || math.IsInf(float64(ply.Resin), 0) {
			return Session{}, fmt.Errorf("ply %s: resin %.4g g over %.4g m2 cannot be mixed", ply.Label, ply.Resin.Grams(), ply.Area.M2())
		}
		a := Split(p, si.Scale(ply.Resin, 1+o.Waste), o.Dose)
		a.Laminate = ply.Resin
		s.Plies = append(s.Plies, Ply{ply.Label, a})
		s.Need = s.Need.plus(a)
		area += ply.Area
	}
	if forbidden != nil {
		s.Words = sentence(forbidden)
		s.Verdicts = append(s.Verdicts, check.Verdict{
			What: "catalyst, " + n.Name, State: check.Stop, Why: s.Words, Source: p.Dose.Source,
			Value: fmt.Sprintf("%.3g %%", asked.Percent()), Limit: p.Dose.String(),
		})
		return s, nil
	}
	s.tell(p, o)
	s.batch(p, o, least, area)
	s.tellOwn(o, p.Name)
	s.lose(o, area)
	return s, nil
}

// tell puts the working time, or why there is none.
func (s *Session) tell(p catalog.TwoPart, o Options) {
	t, err := WorkingTime(p, max(s.At, o.Start), o.Dose) // of the two the sooner
	v := check.Verdict{What: "working time, " + s.Name, State: check.OK, Why: CupNote, Source: p.PotLife.Source}
	if err != nil {
		v.State, v.Why = check.Stop, sentence(err)
		v.Source = cmp.Or(v.Source, working.Ours)
	} else {
		v.Value = inWords(t) + " " + s.warmth(o)
	}
	s.WorkingTime, s.Words = t, cmp.Or(v.Value, v.Why)
	s.Verdicts = append(s.Verdicts, v)
}

// warmth says how warm it is: "at 19 °C", "mixed at 20 °C, the air at 8 °C".
func (s *Session) warmth(o Options) string {
	if o.Start.Given() {
		return fmt.Sprintf("mixed at %s, the air at %s", si.Show(o.Start, o.System, 3), si.Show(s.At, o.System, 3))
	}
	return "at " + si.Show(s.At, o.System, 3)
}

// mostInflated is how many times the need may be mixed to reach a batch that can
// be measured; beyond it (and the largest batch) better tools are the answer.
const mostInflated = 3

// batch divides the need into the fewest equal batches that are no larger than
// the largest allowed and than the crew can lay down in the working time, and no
// smaller than can be measured.
func (s *Session) batch(p catalog.TwoPart, o Options, least Smallest, area si.Area) {
	if s.Need.Mixed <= 0 {
		return
	}
	limit := o.Largest
	if s.WorkingTime > 0 && area > 0 {
		laid := float64(o.People) * o.WetOut * usable * s.WorkingTime.Hours() // m2 of ply
		s.CrewLimit = si.Scale(s.Need.Mixed, laid/float64(area))
		if o.Pot != nil {
			if m, err := s.crewLimit(o, area); err == nil {
				s.CrewLimit = m
			}
		}
		limit = min(limit, s.CrewLimit)
	}
	const slack = 1e-9 // 400 g as computed are the 400 g allowed
	count := max(1, math.Ceil(float64(s.Need.Mixed/limit)*(1-slack)))
	each := si.Scale(s.Need.Mixed, 1/float64(count))
	smallest := least.Resin
	if !p.Catalysed() {
		smallest = si.Scale(smallest, 1+ratio(p, o.Dose))
	}
	if each < smallest && smallest > max(limit, si.Scale(each, mostInflated)) {
		s.Verdicts = append(s.Verdicts, check.Verdict{
			What: "measuring the " + p.SecondPart() + ", " + s.Name, State: check.Stop,
			Value: fmt.Sprintf("%.0f g batches", each.Grams()), Limit: fmt.Sprintf("%.0f g or more with these tools", smallest.Grams()),
			Why:    fmt.Sprintf("The scale's step of %.3g g is too coarse: the %s could not be told to within %.0f %%. Get a scale of 0.1 g or finer, or a syringe, put it in the job file, and plan again.", o.Scale.Grams(), p.SecondPart(), within(p).Percent()),
			Source: working.Ours,
		})
	} else if each < smallest {
		s.Verdicts = append(s.Verdicts, check.Verdict{
			What: "smallest batch, " + s.Name, State: check.Watch,
			Value: fmt.Sprintf("%.3g g needed", each.Grams()), Limit: fmt.Sprintf("%.3g g", smallest.Grams()),
			Why:    fmt.Sprintf("Less cannot be measured honestly with these tools: mix %.3g g and throw the rest away once it has set and cooled.", smallest.Grams()),
			Source: working.FromMemory,
		})
		each = smallest
	}
	if each > limit*(1+slack) {
		s.Verdicts = append(s.Verdicts, check.Verdict{
			What: "batch, " + s.Name, State: check.Watch,
			Value: fmt.Sprintf("%.3g g", each.Grams()), Limit: fmt.Sprintf("%.3g g", limit.Grams()),
			Why:    "The smallest batch that can be measured is more than should be mixed at once: pour it into a tray at once, use what is needed, and let the rest set outdoors.",
			Source: working.FromMemory,
		})
	}
	s.Batches = Batch{Count: int(count), Amount: Split(p, each, o.Dose)}
	s.Batches.Measured = Measure(s.Batches.Amount, o.Scale, o.Syringe, p.HardenerDensity.Typical, within(p))
	s.Spare = max(0, s.Mixed()-s.Need.Mixed)
	if s.Spare < s.Need.Mixed*slack {
		s.Spare = 0 // the division's rounding, not a spare
	}
}
