package sheet

import (
	"cmp"
	"fmt"
	"io"
	"strings"

	"scarfwright/repair"
	"scarfwright/repair/estimate"
)

// Estimate writes the price: packs to buy against the shelf, hours by step, the
// range and what would move it.
func Estimate(w io.Writer, r repair.Result, o Options) error {
	r, o = settled(r, o)
	p := newPaper(r, o, "ESTIMATE")
	e := r.Estimate
	p.title()
	if !r.Released() {
		p.stopBand()
	}
	p.stops()
	p.headline(e)
	p.items(e)
	p.shopping(e)
	p.hours(e)
	p.unknowns()
	p.heading("Agreed", 30)
	p.text(small, "This is an estimate, not a fixed price. Work stops and asks when the likely figure will be passed or hidden damage is found.")
	p.y += 2
	p.table(table{cols: []column{{"", 0.2, false, true}, {"name and signature", 0.5, false, false}, {"date", 0.3, false, false}}, heads: true}, [][]string{{"owner", empty, empty}, {"yard", empty, empty}})
	return p.finish(w)
}

func money(currency string, x float64) string { return fmt.Sprintf("%s %.0f", currency, x) }

func (p *paper) headline(e estimate.Result) {
	p.need(26)
	sum := fmt.Sprintf("%s to %s, likely %s", money(e.Currency, e.Total.Low), money(e.Currency, e.Total.High), money(e.Currency, e.Total.Likely))
	if e.Rate == 0 {
		// What is missing comes first and largest: the sum alone would be read as the price.
		p.y++
		p.para(margin, p.width(), pot, true, "Materials and extras only; labour is not priced (crew.rate)")
		p.y++
		p.para(margin, p.width(), body, false, sum+" for materials and extras.")
	} else {
		p.at(margin, p.y+1, pot, true, sum)
		p.y += lead(pot) + 2
	}
	text := fmt.Sprintf("%.1f hours, likely; %.1f to %.1f.", e.HoursTotal.Likely, e.HoursTotal.Low, e.HoursTotal.High)
	if e.ShareOfInsured > 0 {
		text += fmt.Sprintf(" The likely sum is %.0f %% of the insured value, %s.", 100*e.ShareOfInsured, money(e.Currency, p.r.Job.Boat.InsuredValue))
	}
	p.text(body, text)
}

func (p *paper) items(e estimate.Result) {
	var rows [][]string
	without := "without tax"
	if e.Rate == 0 {
		without = "without labour, without tax"
	}
	for _, it := range e.Items {
		if it.What == "labour" && e.Rate == 0 {
			rows = append(rows, []string{it.What, "not priced", "not priced", "not priced", fmt.Sprintf("%.1f h, no hourly rate given (crew.rate)", e.HoursTotal.Likely)})
			continue
		}
		rows = append(rows, []string{it.What, money(e.Currency, it.Price.Low), money(e.Currency, it.Price.Likely), money(e.Currency, it.Price.High), it.Note})
	}
	rows = append(rows, []string{"in all", money(e.Currency, e.Total.Low), money(e.Currency, e.Total.Likely), money(e.Currency, e.Total.High), without})
	p.section("Price", "", table{cols: []column{{"", 0.2, false, true}, {"low", 0.12, true, false}, {"likely", 0.12, true, true}, {"high", 0.12, true, false}, {"how", 0.44, false, false}}, heads: true}, rows)
}

// shopping is what must be bought, against what is on the shelf.
func (p *paper) shopping(e estimate.Result) {
	var rows [][]string
	for _, m := range e.Purchases {
		var packs []string
		for _, b := range m.Buy {
			packs = append(packs, fmt.Sprintf("%d × %s at %s", b.Count, p.amount(b.Size, m.Unit), price(e.Currency, b.Price)))
		}
		buy := strings.Join(packs, ", ")
		if m.Short <= 0 {
			buy = "nothing"
		}
		stock := p.amount(m.Stock, m.Unit)
		if m.Stock == 0 {
			stock = cmp.Or(m.StockNote, "none")
			m.StockNote = ""
		}
		cost := ""
		if m.Price > 0 {
			cost = price(e.Currency, m.Price)
		}
		rows = append(rows, []string{"□", m.Name, p.amount(m.Amount, m.Unit), joined(", ", stock, m.StockNote), joined("; ", buy, m.Note), cost})
	}
	if len(rows) == 0 {
		return
	}
	p.section("To buy", "", table{cols: []column{{"", 0.05, false, false}, {"material", 0.24, false, false}, {"needed", 0.15, true, false}, {"on the shelf", 0.18, false, false}, {"buy", 0.27, false, true}, {"cost", 0.11, true, false}}, heads: true}, rows)
}

func price(currency string, x float64) string { return fmt.Sprintf("%s %.2f", currency, x) }

func (p *paper) hours(e estimate.Result) {
	var rows [][]string
	h := func(x float64) string { return fmt.Sprintf("%.1f", x) }
	for _, l := range e.Hours {
		rows = append(rows, []string{stepName(l.Step), h(l.Hours.Low), h(l.Hours.Likely), h(l.Hours.High), cmp.Or(l.Source, "not told")})
	}
	if len(rows) == 0 {
		return
	}
	if len(rows) > 1 {
		rows = append(rows, []string{"in all", h(e.HoursTotal.Low), h(e.HoursTotal.Likely), h(e.HoursTotal.High), ""})
	}
	p.section("Hours by step", "", table{cols: []column{{"step", 0.26, false, false}, {"low", 0.1, true, false}, {"likely", 0.1, true, true}, {"high", 0.1, true, false}, {"where the figure comes from", 0.44, false, false}}, heads: true}, rows)
}
