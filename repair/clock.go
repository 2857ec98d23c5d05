package repair

import (
	"cmp"
	"fmt"
	"math"
	"sync"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/cure"
	"scarfwright/repair/curing"
	"scarfwright/repair/mixing"
	"scarfwright/repair/programme"
	"scarfwright/repair/survey"
)

// models keeps the sheets that were fitted: a fit takes longer than a plan, and
// the same sheet always gives the same model, so nothing is seen of it but time.
var models sync.Map // string -> fitted

type fitted struct {
	model cure.Model
	err   error
}

// modelOf returns the model fitted to a resin's sheet.
func modelOf(r catalog.Resin) (cure.Model, error) {
	kind := cure.Epoxy
	if r.Catalysed() {
		kind = cure.Polyester
	}
	key := fmt.Sprintf("%+v", r)
	if f, ok := models.Load(key); ok {
		return f.(fitted).model, f.(fitted).err
	}
	m, err := cure.Fit(cure.FromCatalogue(r.TwoPart, kind))
	models.Store(key, fitted{m, err})
	return m, err
}

// The vessels batches are reckoned in.
var (
	cup  = heat.StraightCup(si.MM(75))
	tray = heat.Tray(si.MM(250), si.MM(200))
)

// pot tells a batch's working time from the fitted model.
func pot(m cure.Model) mixing.Pot {
	return func(mixed si.Mass, at si.Temp, dose si.Ratio) (mixing.Own, error) {
		p, err := m.Pot(mixed, cup, at, dose)
		if err != nil {
			return mixing.Own{}, err
		}
		flat, err := m.LikelyPot(mixed, tray, at, dose)
		if err != nil {
			return mixing.Own{}, err
		}
		return mixing.Own{Low: p.Working.Low, Likely: p.Working.Likely, High: p.Working.High, Cup: "a straight cup", Tray: flat, Note: p.Working.Extrapolated}, nil
	}
}

// follow runs the heat of each laminating session and, where it asks for it,
// moves plies to further sessions. It returns what tells a batch's own working
// time, nil where the resin's sheet cannot be fitted; the plan then falls back on
// the sheet's table and says so.
func (r *Result) follow(resin catalog.Resin, cat catalog.Catalogue, site [][24]programme.Hour, lay programme.Windows, at si.Temp) (mixing.Pot, error) {
	m, err := modelOf(resin)
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
	in := curing.Input{
		Design: ds, Dish: r.Survey.Class == survey.PartialDepth, Resin: curing.NewResin(m, dose), Sheet: resin.TwoPart, System: d.Choices.System(),
		Air: func(k int) (curing.Air, error) { return airFrom(site, lay, k, at) },
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
	c, err := curing.Plan(in)
	if err != nil {
		return nil, err
	}
	if c.Pots, err = pots(m, at, dose); err != nil {
		return nil, err
	}
	r.Curing = &c
	return pot(m), nil
}

// pots is the chart for the wall: the day's temperature and 5 K to either side.
func pots(m cure.Model, at si.Temp, dose si.Ratio) ([]curing.PotLine, error) {
	var out []curing.PotLine
	mid := 5 * math.Round(at.Celsius()/5)
	for _, t := range []float64{mid - 5, mid, mid + 5} {
		l := curing.PotLine{At: si.Celsius(t)}
		for _, g := range []float64{50, 100, 200, 500} {
			p, err := m.Pot(si.Grams(g), cup, l.At, dose)
			if err != nil {
				return nil, err
			}
			w := p.Working
			l.Points = append(l.Points, curing.PotPoint{Mass: si.Grams(g), Low: w.Low, Likely: w.Likely, High: w.High, Beyond: w.Extrapolated != ""})
		}
		out = append(out, l)
	}
	return out, nil
}

// firstHour is when a working day begins, where the hull allows it.
const firstHour = 7

// airFrom is the air and the hull from the k-th session on: each session begins
// with the next open window, the last one serving for all that are left. Without
// days the temperature at hand stays.
func airFrom(site [][24]programme.Hour, lay programme.Windows, k int, at si.Temp) (curing.Air, error) {
	if len(site) == 0 || len(lay.Open) == 0 {
		h, err := kinetics.Constant(at)
		return curing.Air{History: heat.Steady(at), Resin: h, Start: at}, err
	}
	open := workable(lay.Open)
	w := open[min(k, len(open))-1]
	var moments []heat.Moment
	var knots []kinetics.Knot
	for i := 0; i <= 8*24; i++ {
		hour := w.From + i
		day := min(w.Day-1+hour/24, len(site)-1) // beyond the days given the last one repeats
		x := site[day][hour%24]
		moments = append(moments, heat.Moment{Time: si.Hours(float64(i)), Temp: x.Air})
		knots = append(knots, kinetics.Knot{Time: si.Hours(float64(i)), Temp: x.Hull})
	}
	h, err := kinetics.NewHistory(knots...)
	return curing.Air{Day: w.Day, Hour: float64(w.From), History: heat.Series(moments...), Resin: h, Start: site[w.Day-1][w.From].Hull}, err
}

// workable returns the windows from the start of the working day on, one a day:
// nobody laminates at midnight where the morning serves as well. Where only the
// night is open it stays.
func workable(open []programme.Window) []programme.Window {
	var out []programme.Window
	for _, w := range open {
		w.From = max(w.From, firstHour)
		if w.From < w.To && (len(out) == 0 || out[len(out)-1].Day != w.Day) {
			out = append(out, w)
		}
	}
	if len(out) == 0 {
		return open
	}
	return out
}
