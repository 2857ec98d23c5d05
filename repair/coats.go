package repair

import (
	"cmp"
	"fmt"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/cure"
	"scarfwright/repair/curing"
	"scarfwright/repair/finish"
	"scarfwright/repair/mixing"
	"scarfwright/repair/programme"
)

// largestOf is the largest batch mixed at once where the job does not say.
func largestOf(r Result) si.Mass { return cmp.Or(r.Job.Choices.Batch, mixing.DefaultLargest) }

// coats tells the times of what is spread over the laminate, in the order it is
// laid: each in the first hours its own sheet leaves open on the days given.
func (r *Result) coats(cat catalog.Catalogue, at si.Temp) error {
	f := r.Finish
	if f.FillerMix != "" {
		x, err := cat.Filler(r.Job.Shelf.Filler)
		if err != nil {
			return err
		}
		r.coat("fairing compound", x.TwoPart, cure.Putty, x.Density.Typical.Of(f.Fairing), 0, at)
	}
	if f.Paste != nil {
		x, err := cat.Gelcoat(finish.PasteClass(r.Job))
		if err != nil {
			return err
		}
		r.coat("paste in the marks", x.TwoPart, cure.Polyester, f.Paste.Mixed, f.Paste.Dose, at)
	}
	if b := f.Barrier; b != nil {
		x, err := cat.Barrier(b.Class)
		if err != nil {
			return err
		}
		r.coat("barrier coat", x.TwoPart, cure.Epoxy, si.Scale(x.Density.Typical.Of(b.Volume), 1/float64(b.Coats)), 0, at)
	}
	if c := f.Coat; c != nil {
		x, err := cat.Gelcoat(c.Class)
		if err != nil {
			return err
		}
		r.coat("gelcoat", x.TwoPart, cure.Polyester, si.Scale(c.Mass, 1/float64(c.Coats)), c.Dose, at)
	}
	return nil
}

// coat adds one coat of a mass. What its sheet cannot tell is said in its Why.
func (r *Result) coat(what string, p catalog.TwoPart, kind cure.Kind, mass si.Mass, dose si.Ratio, at si.Temp) {
	c := curing.Coat{What: what, Class: p.Class, Name: p.Name, Batch: min(mass, largestOf(*r)), Dose: dose, At: at}
	if err := r.tellCoat(&c, p, kind, at); err != nil {
		c.Own, c.Gel, c.Sand, c.Why = nil, 0, 0, err.Error()
	}
	r.Coats = append(r.Coats, c)
}

func (r *Result) tellCoat(c *curing.Coat, p catalog.TwoPart, kind cure.Kind, at si.Temp) error {
	d, h := r.Job, chosen(r.Job)
	lay := programme.Windows{What: c.What, Low: p.HullMin, High: p.HullMax}
	if site := lit(d, h, p.HullMax); len(site) > 0 {
		if lay = programme.Find(c.What, site, p.HullMin, p.HullMax); len(lay.Open) == 0 {
			return fmt.Errorf("no hour is open: %s", lay.Reason)
		}
	}
	m, err := modelOf(p, kind)
	if err != nil {
		return fmt.Errorf("its sheet cannot be fitted: %w", err)
	}
	if p.OwnTimes {
		r.Assumptions = append(r.Assumptions, fmt.Sprintf("The cure of %s is %s", p.Name, m.Told()))
	}
	air, err := airFrom(d, h, lay, nil, at, lampBack(kind))
	if err != nil {
		return err
	}
	c.Day, c.Hour, c.At = air.Day, air.Hour, mixTempOf(d, air.Day, air.Hour, at)
	tell, err := pot(m, d)
	if err != nil {
		return err
	}
	own, err := tell(c.Batch, c.At, c.Dose)
	if err != nil {
		return err
	}
	c.Own = &own
	hull, err := air.Film()
	if err != nil {
		return err
	}
	return c.Spread(p, m, hull)
}
