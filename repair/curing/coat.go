package curing

import (
	"cmp"
	"fmt"
	"math"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/cure"
	"scarfwright/repair/mixing"
)

// Coat is what is spread over the laminate: filler, paste, barrier coat, gelcoat.
type Coat struct {
	What  string      `json:"what"`
	Class string      `json:"class"`
	Name  string      `json:"name"`
	Batch si.Mass     `json:"batch_kg"` // of both parts, the largest mixed at once
	Dose  si.Ratio    `json:"dose,omitempty"`
	Day   int         `json:"day"`  // of the days given; 0 where none were
	Hour  float64     `json:"hour"` // clock time of laying
	At    si.Temp     `json:"at_k"` // of air and mix, the warmest of its hours
	Own   *mixing.Own `json:"own,omitempty"`
	Gel   si.Time     `json:"gel_s"`  // of a thin film on this hull, since mixing
	Sand  si.Time     `json:"sand_s"` // the later of model and sheet; 0 not within 14 days
	Why   string      `json:"why"`    // why nothing is told, or what is uncertain
}

// Spread tells a coat's times on a hull, by the model fitted to its sheet. own is
// its working time; of the coat only what it is need be given.
func (c *Coat) Spread(p catalog.TwoPart, m cure.Model, hull kinetics.History) error {
	film, err := m.LikelyReaches(hull, c.Dose)
	if err != nil {
		return err
	}
	wait, err := waits(hull, p.Sandable)
	if err != nil {
		return err
	}
	c.Gel = film.Gel.Likely
	if !film.Sandable.Never {
		c.Sand = max(film.Sandable.Likely, p.Sandable, wait)
	}
	c.Why = film.Gel.Extrapolated
	return nil
}

// Working says how long its batch may be worked.
func (c Coat) Working() string {
	if c.Own == nil {
		return "–"
	}
	return fmt.Sprintf("%.0f to %.0f min", mixing.WholeMinutes(c.Own.Low), c.Own.High.Minutes())
}

// CoatHeads are the heads of the coats' table, and Row its rows, the same on page
// and paper.
var CoatHeads = []string{"coat", "laid in its first open hours", "largest batch", "working time of that batch", "gelled on the hull", "sandable"}

// CoatNote stands under it.
const CoatNote = "From mixing, as if laid in its first open hours of the days given; each by the cure fitted to its own sheet. The working time is of the largest batch, left in a cup, at its warmest hour, eight times in ten: go by the lower figure. Filler spread out on a board and gelcoat in a tray last longer. A hull warmer than 20 °C does not shorten the sheet's own wait before sanding."

// Row is one row of that table.
func (c Coat) Row(sys si.System) []string {
	laid := "at " + Degrees(c.At, sys)
	if c.Day > 0 {
		laid = fmt.Sprintf("day %d, from %02.0f h, up to %s", c.Day, c.Hour, Degrees(c.At, sys))
	}
	batch := si.Show(c.Batch, sys, 2)
	if c.Gel == 0 {
		return []string{cmp.Or(c.Name, c.What), "–", batch, c.Why, "–", "–"}
	}
	sand := "not within 14 days: warm it"
	if c.Sand > 0 {
		sand = inHours(c.Sand)
	}
	return []string{c.Name, laid, batch, c.Working(), inHours(c.Gel), sand}
}

// inHours writes minutes up to two hours, and hours beyond.
func inHours(t si.Time) string {
	if t < si.Hours(2) {
		return fmt.Sprintf("%.0f min", math.Ceil(t.Minutes()))
	}
	return fmt.Sprintf("%.0f h", math.Ceil(t.Hours()))
}
