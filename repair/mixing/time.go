package mixing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/job"
)

// WorkingTime returns how long a 100 g cup may be worked at most, by the sheet's
// own table, at a temperature of the mix and a dose of catalyst (ignored for
// epoxy). Outside the table it returns an error that says what to do instead.
//
//	over temperature   ln t linear in T        "halves every so many degrees"
//	over dose          ln t linear in ln p     gel time goes as a power of the dose
//
// Both forms are the trade's own working forms (from memory); between cells 5 K
// and half a per cent apart the choice matters by about 1 %, less than a sheet
// is good for. Arrhenius in 1/T would change that by a tenth.
//
// It promises: the table's own cells come back; where every dose has
// the same temperatures, time never rises with temperature or dose; nothing is
// answered beyond the table's ends.
func WorkingTime(p catalog.TwoPart, t si.Temp, dose si.Ratio) (si.Time, error) {
	if err := CheckDose(p, dose); err != nil {
		return 0, err
	}
	if !p.PotLife.Given() {
		return 0, fmt.Errorf("the sheet of %s gives no pot life: time a 100 g cup at the temperature of the work, and put it in a sheet of your own", p.Class)
	}
	if !p.Catalysed() {
		dose = 0
	}
	below, above, err := bracket(p, dose)
	if err != nil {
		return 0, err
	}
	slower, faster := column(p.PotLife.Cells, below), column(p.PotLife.Cells, above)
	from := max(slower[0].At, faster[0].At)
	to := min(slower[len(slower)-1].At, faster[len(faster)-1].At)
	if err := inside(p, t, from, to); err != nil {
		return 0, err
	}
	ln := along(slower, t)
	if above > below {
		share := math.Log(float64(dose/below)) / math.Log(float64(above/below))
		ln += share * (along(faster, t) - ln)
	}
	return si.Seconds(math.Exp(ln)), nil
}

// inside returns in words what to do where t is outside the sheet's temperatures.
func inside(p catalog.TwoPart, t, from, to si.Temp) error {
	const slack = 1e-6 // K; 15 °C as typed and as computed are the same temperature
	says := fmt.Sprintf("the sheet of %s gives pot life from %.3g to %.3g °C", p.Class, from.Celsius(), to.Celsius())
	if from == to {
		says = fmt.Sprintf("the sheet of %s gives pot life at %.3g °C only", p.Class, from.Celsius())
	}
	switch {
	case !t.Given() || math.IsNaN(float64(t)):
		return fmt.Errorf("%s; measure the temperature of the resin and the hull", says)
	case float64(t) < float64(from)-slack:
		return fmt.Errorf("%s; at %.3g °C warm the resin and the hull, or change to a %s whose sheet covers it", says, t.Celsius(), secondChoice(p))
	case float64(t) > float64(to)+slack:
		return fmt.Errorf("%s; at %.3g °C cool the resin, work in the shade or at dawn, or change to a %s whose sheet covers it", says, t.Celsius(), secondChoice(p))
	}
	return nil
}

// secondChoice is what can be changed: the hardener of an epoxy, the resin itself
// of a polyester.
func secondChoice(p catalog.TwoPart) string {
	if p.Catalysed() {
		return "resin"
	}
	return "hardener"
}

// bracket returns the two doses of the table round the wanted one, equal where it
// is in the table.
func bracket(p catalog.TwoPart, dose si.Ratio) (below, above si.Ratio, err error) {
	doses := Doses(p)
	const slack = 1e-9
	for i, d := range doses {
		if math.Abs(float64(dose-d)) <= slack {
			return d, d, nil
		}
		if d > dose && i > 0 {
			return doses[i-1], d, nil
		}
	}
	low, high := doses[0].Percent(), doses[len(doses)-1].Percent()
	says := fmt.Sprintf("for %.3g to %.3g %%", low, high)
	if low == high {
		says = fmt.Sprintf("for %.3g %% only", low)
	}
	return 0, 0, fmt.Errorf("the sheet of %s gives pot life %s of catalyst, not for %.3g %%; take a dose it covers, or time a 100 g cup yourself and put it in a sheet of your own",
		p.Class, says, dose.Percent())
}

// Doses lists the doses the sheet's pot-life table covers, rising; a single zero
// for an epoxy.
func Doses(p catalog.TwoPart) []si.Ratio {
	var doses []si.Ratio
	for _, c := range p.PotLife.Cells {
		doses = append(doses, c.Dose)
	}
	slices.Sort(doses)
	return slices.Compact(doses)
}

// inWords writes a working time, rounded down to the minute.
func inWords(t si.Time) string {
	return fmt.Sprintf("at most %.0f min", math.Floor(t.Minutes()+1e-6)) // 27 min less a rounding error are 27
}

// sentence begins an error's text with a capital, to be printed on its own.
func sentence(err error) string {
	text := err.Error()
	return strings.ToUpper(text[:1]) + text[1:]
}

// column returns the cells of one dose by rising temperature.
func column(cells []job.PotLife, dose si.Ratio) []job.PotLife {
	var out []job.PotLife
	for _, c := range cells {
		if c.Dose == dose {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, func(a, b job.PotLife) int {
		if a.At < b.At {
			return -1
		}
		return 1
	})
	return out
}

// along returns ln t [s] at a temperature within a column.
func along(column []job.PotLife, t si.Temp) float64 {
	i := 0
	for i < len(column)-2 && t > column[i+1].At {
		i++
	}
	a := column[i]
	if len(column) == 1 {
		return math.Log(float64(a.Time))
	}
	b := column[i+1]
	share := min(1, max(0, float64(t.Sub(a.At)/b.At.Sub(a.At)))) // within inside's slack
	return math.Log(float64(a.Time)) + share*math.Log(float64(b.Time/a.Time))
}
