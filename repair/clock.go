package repair

import (
	"cmp"
	"fmt"
	"math"
	"sync"

	"scarfwright/physics/heat"
	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/cure"
	"scarfwright/repair/curing"
	"scarfwright/repair/job"
	"scarfwright/repair/mixing"
	"scarfwright/repair/programme"
	"scarfwright/repair/survey"
)

// kindOf is which law a laminating resin follows.
func kindOf(r catalog.Resin) cure.Kind {
	if r.Catalysed() {
		return cure.Polyester
	}
	return cure.Epoxy
}

// models keeps the sheets that were fitted: a fit takes longer than a plan, and
// the same sheet always gives the same model, so nothing is seen of it but time.
var models struct {
	sync.Mutex
	of map[string]fitted
}

type fitted struct {
	model cure.Model
	err   error
}

const mostModels = 64 // kept; a server that has seen more begins anew

// modelOf returns the model fitted to a material's sheet.
func modelOf(p catalog.TwoPart, kind cure.Kind) (cure.Model, error) {
	s := cure.FromCatalogue(p, kind)
	key := fmt.Sprintf("%+v", s)
	models.Lock()
	f, ok := models.of[key]
	models.Unlock()
	if ok {
		return f.model, f.err
	}
	f.model, f.err = cure.Fit(s)
	models.Lock()
	defer models.Unlock()
	if models.of == nil || len(models.of) >= mostModels {
		models.of = map[string]fitted{}
	}
	models.of[key] = f
	return f.model, f.err
}

// tray is what a batch is poured out into, where that helps.
var tray = heat.Tray(si.MM(250), si.MM(200))

// vessel is what the job mixes in, and what it is called.
func vessel(d job.Description) (heat.Vessel, string, error) {
	k, err := heat.VesselNamed(d.Shelf.Vessel)
	if err != nil {
		return heat.Vessel{}, "", fmt.Errorf("shelf.vessel: %w", err)
	}
	across := cmp.Or(d.Shelf.Across, k.Usual)
	return k.Of(across), fmt.Sprintf("a %s of %s", k.Name, si.Show(across, d.Choices.System(), 2)), nil
}

// pot tells a batch's working time from the fitted model, in the job's vessel and
// from the temperature the job keeps its resin at.
func pot(m cure.Model, d job.Description) (mixing.Pot, error) {
	v, name, err := vessel(d)
	if err != nil {
		return nil, err
	}
	return func(mixed si.Mass, at si.Temp, dose si.Ratio) (mixing.Own, error) {
		b := cure.Batch{Mass: mixed, Vessel: v, Air: at, Start: d.Site.Mix, Dose: dose}
		p, err := m.Working(b)
		if err != nil {
			return mixing.Own{}, err
		}
		b.Vessel = tray
		flat, err := m.LikelyPot(b)
		if err != nil {
			return mixing.Own{}, err
		}
		return mixing.Own{Low: p.Low, Likely: p.Likely, High: p.High, Cup: name, Tray: flat, Note: p.Extrapolated}, nil
	}, nil
}

// follow runs the heat of each laminating session and, where it asks for it,
// moves plies to further sessions. It returns what tells a batch's own working
// time, nil where the resin's sheet cannot be fitted; the plan then falls back on
// the sheet's table and says so.
func (r *Result) follow(resin catalog.Resin, cat catalog.Catalogue, lay programme.Windows, at si.Temp) (mixing.Pot, error) {
	m, err := modelOf(resin.TwoPart, kindOf(resin))
	if err != nil {
		r.Assumptions = append(r.Assumptions, fmt.Sprintf("The cure of %s is not followed, for its sheet cannot be fitted: %v.", resin.Name, err))
		return nil, nil
	}
	r.Assumptions = append(r.Assumptions, fmt.Sprintf("The cure of %s is %s", resin.Name, m.Told()))
	d, ds := r.Job, r.Design
	dose := cmp.Or(d.Choices.Dose, resin.Dose.Typical)
	if err := m.CheckDose(dose); err != nil {
		return nil, nil // package mixing stops on it, and nothing is known of such a mix
	}
	back := lampBack(kindOf(resin))
	in := curing.Input{
		Design: ds, Dish: r.Survey.Class == survey.PartialDepth, Resin: curing.NewResin(m, dose), Sheet: resin.TwoPart, System: d.Choices.System(),
		Air: func(prev *curing.Session) (curing.Air, error) { return airFrom(d, chosen(d), lay, prev, at, back) },
	}
	if ds.Core != nil {
		core, err := cat.Core(ds.Core.Class)
		if err != nil {
			return nil, err
		}
		in.Core = core
		for _, ref := range d.Laminate.Inner {
			c, err := cat.Cloth(ref.Class)
			if err != nil {
				return nil, err
			}
			in.Inner += c.Thickness(resin)
		}
		if in.Inner == 0 {
			in.Inner = laminate.ClassThickness(si.GSM(450), 0.30) // one ply of mat: the least a skin is
		}
	}
	wall := make(chan error, 1)
	var chart []curing.PotLine
	go func() { // the chart for the wall needs nothing of the rest
		var err error
		chart, err = pots(m, d, at, dose)
		wall <- err
	}()
	c, err := curing.Plan(in)
	if err == nil {
		c.Warmth, err = warmth(in, c.Sessions[0], lay, at, back, d)
	}
	if err := cmp.Or(<-wall, err); err != nil {
		return nil, err
	}
	if n := len(c.Sessions); len(d.Site.Days) > 0 && c.Sessions[n-1].Day > len(d.Site.Days) {
		c.Notes = append(c.Notes, fmt.Sprintf("The last session falls on day %d and %d are given: the last of them is taken again for those beyond. Give more days.", c.Sessions[n-1].Day, len(d.Site.Days)))
	}
	if _, c.Vessel, err = vessel(d); err != nil {
		return nil, err
	}
	if resin.Catalysed() && d.Shelf.Vessel == "metal tray" {
		c.Verdicts = append(c.Verdicts, check.Verdict{
			What: "what is mixed in", State: check.Stop, Value: c.Vessel, Limit: "plastic, paper or foam that the resin does not eat",
			Why: "Peroxide must not touch metal: mix in plastic or paper, and set shelf.vessel.", Source: "SDS: of the peroxide in hand",
		})
	}
	c.Pots = chart
	r.Curing = &c
	return pot(m, d)
}

// warmth follows the first session with each way of warming it.
func warmth(in curing.Input, first curing.Session, lay programme.Windows, at si.Temp, back si.Time, d job.Description) ([]curing.Warmth, error) {
	var out []curing.Warmth
	for _, h := range heatings(d) {
		planned := chosen(d)
		w := curing.Warmth{Name: h.name, Words: h.does(d.Choices.System()), Chosen: h.name == planned.name, Assumed: h.assumed}
		if w.Chosen {
			h, w.Words, w.Assumed = planned, planned.does(d.Choices.System()), false
		}
		if h.lasts > 0 {
			w.Words += fmt.Sprintf(" for %.3g h", h.lasts.Hours())
			if back > 0 {
				w.Words += fmt.Sprintf(", from %.3g h after laying", back.Hours())
			}
		}
		found := lay
		if site := lit(d, h, lay.High); len(site) > 0 {
			found = programme.Find(lay.What, site, lay.Low, lay.High)
			w.Open = found.Text()
		}
		switch {
		case w.Open != "" && len(found.Open) == 0: // nothing is laid
		case w.Chosen:
			w.Session = first.Bare()
		default:
			air, err := airFrom(d, h, found, nil, warmedAt(d, h, at), back)
			if err != nil {
				return nil, err
			}
			s, err := curing.First(in, air)
			if err != nil {
				return nil, err
			}
			w.Session = s.Bare()
		}
		out = append(out, w)
	}
	return out, nil
}

// warmedAt is the temperature at hand with another air than the plan's, where no
// days are given.
func warmedAt(d job.Description, h heating, at si.Temp) si.Temp {
	return at.Add(h.air).Add(-chosen(d).air)
}

// pots is the chart for the wall: the day's temperature and 5 K to either side.
func pots(m cure.Model, d job.Description, at si.Temp, dose si.Ratio) ([]curing.PotLine, error) {
	v, _, err := vessel(d)
	if err != nil {
		return nil, err
	}
	var out []curing.PotLine
	mid := 5 * math.Round(at.Celsius()/5)
	for _, t := range []float64{mid - 5, mid, mid + 5} {
		l := curing.PotLine{At: si.Celsius(t)}
		for _, g := range []float64{50, 100, 200, 500} {
			w, err := m.Working(cure.Batch{Mass: si.Grams(g), Vessel: v, Air: l.At, Dose: dose})
			if err != nil {
				return nil, err
			}
			l.Points = append(l.Points, curing.PotPoint{Mass: si.Grams(g), Low: w.Low, Likely: w.Likely, High: w.High, Beyond: w.Extrapolated != ""})
		}
		out = append(out, l)
	}
	return out, nil
}
