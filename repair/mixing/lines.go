package mixing

import (
	"fmt"

	"scarfwright/repair/working"
)

// lines are the worked lines of the headline amounts.
func lines(r Result) []working.Line {
	second := "catalyst"
	dose := fmt.Sprintf("p = %.3g %%", r.Dose.Percent())
	if !r.Catalysed {
		second, dose = "hardener", fmt.Sprintf("100 : %.4g by mass", r.PerMass)
	}
	out := []working.Line{{
		Name: "resin to mix, all sessions", Formula: "m = ml (1 + w)",
		Numbers: fmt.Sprintf("%s g × (1 + %s)", working.Num(r.Total.Laminate.Grams(), 4), working.Num(float64(r.Waste), 3)),
		Value:   r.Total.Mixed.Grams(), Unit: "g", Source: working.CommonPractice,
		Holds: "hand lay-up; the waste is the repairer's choice",
	}}
	for _, s := range r.Sessions {
		b := s.Batches
		if b.Count == 0 {
			continue
		}
		line := working.Line{
			Name: "batches, " + s.Name, Formula: "n = least whole number with m/n <= largest and A/n <= people rate 0.6 t",
			Numbers: fmt.Sprintf("%s g in %d of %s g", working.Num(s.Need.Mixed.Grams(), 4), b.Count, working.Num(b.Mixed.Grams(), 4)),
			Value:   float64(b.Count), Unit: "1", Source: working.FromMemory,
			Holds: "while the working time is known",
		}
		if s.WorkingTime == 0 {
			line.Warning = s.Words
		}
		out = append(out, line, working.Line{
			Name: second + " for one batch, " + s.Name, Formula: "mc = p m",
			Numbers: fmt.Sprintf("%s, m = %s g of resin", dose, working.Num(b.Resin.Grams(), 4)),
			Value:   b.Second.Grams(), Unit: "g", Source: working.Identity,
		}, working.Line{
			Name: second + " for one batch by volume, " + s.Name, Formula: "V = mc/rc",
			Numbers: fmt.Sprintf("%s g / %s g/ml", working.Num(b.Second.Grams(), 4), working.Num(r.Second.GramsPerML(), 4)),
			Value:   b.SecondVolume.ML(), Unit: "ml", Source: working.Identity,
		})
	}
	return out
}
