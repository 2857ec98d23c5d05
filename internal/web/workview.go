package web

import (
	"fmt"
	"strings"

	"scarfwright/repair"
	"scarfwright/repair/caution"
	"scarfwright/repair/estimate"
	"scarfwright/repair/finish"
	"scarfwright/repair/programme"
)

// windowView is when one material may be laid.
type windowView struct{ What, Band, Open, Reason string }

func windowsOf(r repair.Result) []windowView {
	var out []windowView
	for _, w := range r.Programme.Windows {
		if len(r.Programme.Hours) == 0 {
			continue
		}
		out = append(out, windowView{w.What, bandText(w.Low, w.High), w.Text(), w.Reason})
	}
	return out
}

// stepView is one step of the programme.
type stepView struct {
	Number   int
	Name     string
	Do       []string
	Targets  []programme.Target
	Hours    string
	Wait     string
	Cautions []caution.Caution // those not told at an earlier step
	See      string            // where the others are told
	Hold     *programme.Hold
}

func stepsOf(r repair.Result) []stepView {
	told := map[string]int{}
	var out []stepView
	for _, s := range r.Programme.Steps {
		v := stepView{Number: s.Number, Name: s.Name, Do: s.Do, Targets: s.Targets, Hours: trimmed(s.Hours, 1) + " h of work", Hold: s.Hold, Wait: s.WaitWhy}
		if s.Wait > 0 {
			v.Wait = trimmed(s.Wait.Hours(), 1) + " h " + s.WaitWhy
		}
		var see []string
		for _, c := range s.Cautions {
			if n, ok := told[c.Text]; ok {
				if ref := fmt.Sprintf("%d", n); len(see) == 0 || see[len(see)-1] != ref {
					see = append(see, ref)
				}
				continue
			}
			told[c.Text] = s.Number
			v.Cautions = append(v.Cautions, c)
		}
		v.See = strings.Join(see, " and ")
		out = append(out, v)
	}
	return out
}

// finishView is the surface.
type finishView struct {
	Lines  []field
	Fills  []string
	Grits  []finish.Grit
	Film   []string
	Worked worked
	Any    bool
	Dosed  bool
	Warn   []caution.Caution
}

func finishOf(u units, r repair.Result) finishView {
	f := r.Finish
	v := finishView{Grits: f.Grits, Film: f.Film, Worked: worked{"How the surface's amounts were got", f.Working}, Any: len(f.Grits) > 0 || f.Coat != nil || f.Paste != nil}
	for _, x := range f.Fills {
		v.Fills = append(v.Fills, fmt.Sprintf("%s: %.2f ml", x.What, x.Volume.ML()))
	}
	if p := f.Paste; p != nil {
		v.Dosed = true
		v.Lines = append(v.Lines,
			field{Label: "Paste in the marks, with losses", Value: fmt.Sprintf("%.1f g", p.Needed.Grams())},
			field{Label: "Mix", Value: grams(p.Mixed)},
			field{Label: "Catalyst, " + percent(p.Dose), Value: fmt.Sprintf("%.2f g = %.2f ml, by %s", p.Catalyst.Grams(), p.CatalystVolume.ML(), p.By)},
			field{Label: "True dose, with these tools", Value: percent(p.LowDose) + " to " + percent(p.HighDose)})
	}
	if c := f.Coat; c != nil {
		v.Dosed = true
		v.Lines = append(v.Lines,
			field{Label: "Last coat", Value: c.Name},
			field{Label: "Coats", Value: fmt.Sprintf("%d, %.2f mm wet in all", c.Coats, c.Film.MM())},
			field{Label: "Over", Value: u.area(c.Area)},
			field{Label: "Gelcoat, with losses", Value: grams(c.Mass)},
			field{Label: "Catalyst, " + percent(c.Dose), Value: grams(c.Catalyst) + " = " + ml(c.CatalystVolume) + " in all"})
	}
	if f.Fairing > 0 {
		v.Lines = append(v.Lines, field{Label: "Fairing compound, about", Value: ml(f.Fairing) + " over " + u.area(f.FairArea)})
	}
	if v.Dosed {
		v.Warn = caution.For(caution.Peroxide, caution.Polyester)
		if r.Mixing != nil && !r.Mixing.Catalysed {
			v.Warn = caution.For(caution.Gelcoat, caution.Peroxide, caution.Polyester)
		}
	}
	if r.Mixing != nil && r.Mixing.Catalysed {
		v.Warn = nil // told beside the laminating doses, a screen above
	}
	return v
}

// estimateView is the price.
type estimateView struct {
	Currency string
	Total    moneyRow
	Items    []moneyRow
	Hours    []hourRow
	AllHours hourRow
	Buy      []buyRow
	Stocked  []string
	Share    string
	Assumed  []string
	Worked   worked
}

type moneyRow struct{ What, Low, Likely, High, Note string }

type hourRow struct{ Step, Low, Likely, High, Source string }

type buyRow struct{ Name, Short, Packs, Price, Note string }

func estimateOf(r repair.Result) estimateView {
	e := r.Estimate
	row := func(what string, x estimate.Range, note string) moneyRow {
		f := func(v float64) string { return money(e.Currency, v) }
		return moneyRow{what, f(x.Low), f(x.Likely), f(x.High), note}
	}
	hour := func(h estimate.HourLine) hourRow {
		return hourRow{h.Step, trimmed(h.Hours.Low, 1), trimmed(h.Hours.Likely, 1), trimmed(h.Hours.High, 1), h.Source}
	}
	v := estimateView{Currency: e.Currency, Total: row("Total, without tax", e.Total, ""), Assumed: e.Assumptions, Worked: worked{"How the price was got", e.Working}}
	for _, it := range e.Items {
		v.Items = append(v.Items, row(it.What, it.Price, it.Note))
	}
	for _, h := range e.Hours {
		v.Hours = append(v.Hours, hour(h))
	}
	v.AllHours = hour(estimate.HourLine{Step: "all", Hours: e.HoursTotal})
	for _, p := range e.Purchases {
		if p.Short <= 0 {
			v.Stocked = append(v.Stocked, p.Name+" "+amount(p.Amount, p.Unit))
			continue
		}
		var packs []string
		for _, b := range p.Buy {
			packs = append(packs, fmt.Sprintf("%d × %s", b.Count, amount(b.Size, p.Unit)))
		}
		v.Buy = append(v.Buy, buyRow{p.Name, amount(p.Short, p.Unit), strings.Join(packs, ", "), money(e.Currency, p.Price), strings.TrimSpace(p.Note + " " + p.StockNote)})
	}
	if e.ShareOfInsured > 0 {
		v.Share = fmt.Sprintf("%.0f %% of the insured value", 100*e.ShareOfInsured)
	}
	return v
}

// amount prints grams, millilitres or square metres.
func amount(x float64, unit string) string {
	switch {
	case unit == "g" && x >= 1000:
		return trimmed(x/1000, 2) + " kg"
	case unit == "ml" && x >= 1000:
		return trimmed(x/1000, 2) + " l"
	case x >= 100:
		return trimmed(x, 0) + " " + unit
	}
	return trimmed(x, 2) + " " + unit
}
