package catalog

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

// Overlay returns the catalogue with the user's own sheets as further entries,
// each named by the sheet. What the sheet states replaces the class's value in
// the new entry, with the sheet as its source; the class itself stays as it was.
// A sheet with times of its own sets the class's times aside (clock has the rule).
//
// A stated value outside the class's range is kept and warned of: products
// differ, and so do typing slips. What cannot be mixed from, or names no liquid
// of the catalogue, is an error.
func (c Catalogue) Overlay(sheets []job.Sheet) (Catalogue, error) {
	c = c.clone()
	for i, s := range sheets {
		where := fmt.Sprintf("shelf.sheets[%d], %q", i+1, s.Name)
		if strings.TrimSpace(s.Name) == "" {
			return Catalogue{}, fmt.Errorf("shelf.sheets[%d]: it has no name", i+1)
		}
		if slices.Contains(c.Classes(), s.Name) {
			return Catalogue{}, fmt.Errorf("%s: the name is taken; give the sheet a name of its own", where)
		}
		if err := c.overlay(s, where); err != nil {
			return Catalogue{}, fmt.Errorf("%s: %w", where, err)
		}
	}
	return c, nil
}

// overlay adds one sheet to the family its class is in.
func (c *Catalogue) overlay(s job.Sheet, where string) error {
	put := func(t *TwoPart) error {
		odd, err := t.put(s)
		for _, w := range odd {
			c.Warnings = append(c.Warnings, where+": "+w)
		}
		return err
	}
	if x, err := c.Resin(s.Class); err == nil {
		err = put(&x.TwoPart)
		c.Resins = append(c.Resins, x)
		return err
	}
	if x, err := c.Gelcoat(s.Class); err == nil {
		err = put(&x.TwoPart)
		c.Gelcoats = append(c.Gelcoats, x)
		return err
	}
	if x, err := c.Filler(s.Class); err == nil {
		err = put(&x.TwoPart)
		c.Fillers = append(c.Fillers, x)
		return err
	}
	if x, err := c.Barrier(s.Class); err == nil {
		err = put(&x.TwoPart)
		c.Barriers = append(c.Barriers, x)
		return err
	}
	_, err := find("liquid that a sheet can go over", s.Class, c.twoParts())
	return err
}

// put lays a sheet over the entry and tells which of its values are unusual for the class.
func (t *TwoPart) put(s job.Sheet) (odd []string, err error) {
	o := Origin{Source: fmt.Sprintf("your sheet %s, read %s", s.Name, cmp.Or(s.Read, "on a date not given")), Date: s.Read}
	class := t.Class
	t.Over, t.Class, t.Name = class, s.Name, s.Name
	t.Packs = slices.Clone(t.Packs)

	if t.Catalysed() && s.PerHundred != 0 {
		return nil, fmt.Errorf("hardener_per_100: %s takes catalyst by per cent; give dose_low and dose_high", class)
	}
	if !t.Catalysed() && (s.DoseLow != 0 || s.DoseHigh != 0) {
		return nil, fmt.Errorf("dose_low, dose_high: %s takes hardener in a fixed ratio; give hardener_per_100", class)
	}
	over(&t.Density, s.Density, o, "density", &odd)
	over(&t.HardenerDensity, s.PartB, o, "hardener_density", &odd)
	over(&t.Limits.HullMin, s.HullMin, o, "hull_min", &odd)
	over(&t.Limits.HullMax, s.HullMax, o, "hull_max", &odd)
	over(&t.Limits.WetLimit, s.WetPerTurn, o, "wet_limit", &odd)
	if s.PerHundred != 0 {
		over(&t.PerHundred, s.PerHundred, o, "hardener_per_100", &odd)
		t.PerHundred.derived, t.PerHundredVol.derived = false, true
	}
	if s.DoseLow != 0 || s.DoseHigh != 0 {
		low, high := cmp.Or(s.DoseLow, t.Dose.Low), cmp.Or(s.DoseHigh, t.Dose.High)
		if low > high {
			return nil, fmt.Errorf("dose_low %v is above dose_high %v", low, high)
		}
		for _, d := range []si.Ratio{low, high} {
			if !t.Dose.Holds(d) {
				odd = append(odd, fmt.Sprintf("dose %v lies outside what is usual for the class, %v", d, t.Dose))
			}
		}
		t.Dose = between(low, high, o)
	}
	odd = append(odd, t.clock(s, o)...)
	t.settle()
	if l := t.Limits; l.HullMin.Given() && l.HullMax.Given() && t.HullMin >= t.HullMax {
		return nil, fmt.Errorf("hull_min %v is not below hull_max %v", t.HullMin, t.HullMax)
	}
	return odd, t.check()
}

// over replaces a value by the sheet's, where the sheet states one, and notes it
// where the class has a range that does not hold it.
func over[Q ~float64](v *Value[Q], x Q, o Origin, key string, odd *[]string) {
	if x == 0 { // in a sheet zero means "not stated"; none of these can be zero (temperatures are kelvins)
		return
	}
	stated := exactly(x, o)
	if v.Low < v.High && !v.Holds(x) {
		*odd = append(*odd, fmt.Sprintf("%s %v lies outside what is usual for the class, %v", key, stated, *v))
	}
	*v = stated
}
