// Package estimate prices a repair: packs to buy against the shelf, hours by
// step at the yard's own rates, and a range with the assumptions that would
// move it.
//
// This is a first cut. Rates the yard has not given are the tool's own, rough
// and marked so; money is in the job's own currency and carries no tax.
package estimate

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"scarfwright/repair/job"
	"scarfwright/repair/working"
)

// Need is an amount of one material, in grams, millilitres or m2.
type Need struct {
	Class     string  `json:"class"`
	Name      string  `json:"name"`
	Amount    float64 `json:"amount"` // with losses
	Unit      string  `json:"unit"`   // "g", "ml", "m²"
	Stock     float64 `json:"stock"`
	StockNote string  `json:"stock_note,omitempty"`
	OnSale    []Pack  `json:"on_sale,omitempty"`
}

// Purchase is what must be bought of one material.
type Purchase struct {
	Need
	Short float64  `json:"short"` // what the shelf lacks
	Buy   []Bought `json:"buy,omitempty"`
	Price float64  `json:"price"`
	Note  string   `json:"note,omitempty"`
}

// Range is low, likely and high.
type Range struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

func (r Range) plus(o Range) Range { return Range{r.Low + o.Low, r.Likely + o.Likely, r.High + o.High} }

// HourLine is the hours of one step.
type HourLine struct {
	Step   string `json:"step"`
	Hours  Range  `json:"hours"`
	Source string `json:"source"`
}

// Item is one priced line.
type Item struct {
	What  string `json:"what"`
	Price Range  `json:"price"`
	Note  string `json:"note,omitempty"`
}

// Result is the estimate.
type Result struct {
	Currency       string         `json:"currency"`
	Purchases      []Purchase     `json:"purchases"`
	Hours          []HourLine     `json:"hours"`
	HoursTotal     Range          `json:"hours_total"`
	Rate           float64        `json:"rate"`
	Items          []Item         `json:"items"`
	Total          Range          `json:"total"`
	ShareOfInsured float64        `json:"share_of_insured,omitempty"`
	Assumptions    []string       `json:"assumptions"`
	Working        []working.Line `json:"working"`
}

// Spread of hours about a yard's own figure. Estimates overrun more than they
// undershoot; the two factors are ours, to be replaced by the yard's record.
const (
	hoursLow  = 0.9
	hoursHigh = 1.3
)

// Plan prices the needs and the hours. rates are the tool's own hours by step,
// used for the steps the yard has not given.
func Plan(d job.Description, needs []Need, rates []HourLine) Result {
	r := Result{Currency: cmp.Or(d.Crew.Currency, "¤"), Rate: d.Crew.Rate}
	bought := 0.0
	for _, n := range needs {
		p := Purchase{Need: n, Short: max(0, n.Amount-n.Stock)}
		p.Buy = Cheapest(p.Short, n.OnSale)
		for _, b := range p.Buy {
			p.Price += float64(b.Count) * b.Price
		}
		if p.Short > 0 && len(p.Buy) == 0 {
			p.Note = "no pack size known: price it by hand"
		}
		bought += p.Price
		r.Purchases = append(r.Purchases, p)
	}
	r.Hours = hours(d.Crew.Hours, rates)
	for _, h := range r.Hours {
		r.HoursTotal = r.HoursTotal.plus(h.Hours)
	}
	r.price(d, bought)
	r.assume(d)
	return r
}

const yardsOwn = "the yard's own figure"

// hours takes the yard's own hours where they are given, the rates elsewhere.
// One figure under "all" stands for every step.
func hours(own map[string]float64, rates []HourLine) []HourLine {
	spread := func(step string, h float64) HourLine {
		return HourLine{step, Range{h * hoursLow, h, h * hoursHigh}, yardsOwn}
	}
	if all, ok := own["all"]; ok {
		return []HourLine{spread("all", all)}
	}
	var out []HourLine
	used := map[string]bool{}
	for _, r := range rates {
		if h, ok := own[r.Step]; ok {
			if !used[r.Step] {
				out = append(out, spread(r.Step, h))
			}
			used[r.Step] = true
			continue
		}
		out = append(out, r)
	}
	for _, step := range slices.Sorted(maps.Keys(own)) {
		if !used[step] {
			out = append(out, spread(step, own[step]))
		}
	}
	return out
}

func (r *Result) price(d job.Description, bought float64) {
	labour := Range{r.HoursTotal.Low * r.Rate, r.HoursTotal.Likely * r.Rate, r.HoursTotal.High * r.Rate}
	r.Items = append(r.Items, Item{"labour", labour, fmt.Sprintf("%.1f h at %s %.0f", r.HoursTotal.Likely, r.Currency, r.Rate)})
	materials, note := d.Shelf.Materials, "as priced by hand"
	if materials == 0 {
		materials, note = bought, "packs to buy"
	}
	up := 1 + float64(d.Shelf.Markup)
	r.Items = append(r.Items, Item{"materials", Range{materials * up, materials * up, materials * up * 1.15},
		fmt.Sprintf("%s, %s %.0f + %.0f %%", note, r.Currency, materials, d.Shelf.Markup.Percent())})
	for _, name := range slices.Sorted(maps.Keys(d.Shelf.Extras)) {
		x := d.Shelf.Extras[name]
		r.Items = append(r.Items, Item{name, Range{x, x, x}, ""})
	}
	for _, it := range r.Items {
		r.Total = r.Total.plus(it.Price)
	}
	r.Working = append(r.Working, working.Line{
		Name: "price, likely", Formula: "hours × rate + materials × (1 + markup) + extras",
		Numbers: fmt.Sprintf("%.1f × %.0f + %.0f × %.2f + extras", r.HoursTotal.Likely, r.Rate, materials, up),
		Value:   r.Total.Likely, Unit: r.Currency, Source: "arithmetic",
	})
	if d.Boat.InsuredValue > 0 {
		r.ShareOfInsured = r.Total.Likely / d.Boat.InsuredValue
	}
}

func (r *Result) assume(d job.Description) {
	r.Assumptions = append(r.Assumptions,
		"Without tax. Hidden damage beyond the tapped outline is not in the price.",
	)
	if h := r.HoursTotal; h.Likely > 0 {
		r.Assumptions = append(r.Assumptions, fmt.Sprintf("Range: hours %.0f %% to %.0f %% of the likely figure, materials up to 15 %% more.", 100*h.Low/h.Likely, 100*h.High/h.Likely))
	}
	if d.Crew.Rate == 0 {
		r.Assumptions = append(r.Assumptions, "No hourly rate was given (crew.rate), so labour is not in the price.")
	}
	var rough []string
	for _, h := range r.Hours {
		if h.Source != yardsOwn {
			rough = append(rough, h.Step)
		}
	}
	if len(rough) > 0 {
		r.Assumptions = append(r.Assumptions, "Hours for "+strings.Join(rough, ", ")+" are the tool's own rough rates, not this yard's: set crew.hours.")
	}
}
