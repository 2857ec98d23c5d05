package web

import (
	"fmt"
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/caution"
	"scarfwright/repair/mixing"
)

// mixingView is the doses.
type mixingView struct {
	Name     string
	Second   string // "catalyst" or "hardener"
	Ratio    string
	Total    string // resin, for a job that is not released
	Sessions []sessionView
	Losses   string
	Smallest string
	Note     string
	Sizes    []sizeRow
	Doses    []string // heads of the working-time columns
	Rows     []mixRow
	Cautions []caution.Caution
	Worked   worked
}

type sessionView struct {
	Name, Plies, Count string
	Resin, Second      string // big
	SecondML           string
	Measure            string
	Time               string
	HasTime            bool
	Need               string
}

type sizeRow struct{ Resin, Second, ML string }

// mixRow is the working time at one temperature; where the sheet tells none, Words
// say what to do.
type mixRow struct {
	At, Words string
	Cells     []string
}

func mixingOf(r repair.Result) *mixingView {
	m := r.Mixing
	v := &mixingView{Name: m.Name, Second: "hardener", Note: m.Note(), Worked: worked{"How the doses were got", m.Working}}
	works := []caution.Work{caution.Epoxy, caution.Mixing}
	v.Ratio = fmt.Sprintf("100 : %s by mass, 100 : %s by volume", trimmed(m.PerMass, 1), trimmed(m.PerVolume, 1))
	if m.Catalysed {
		v.Second = "catalyst"
		v.Ratio = percent(m.Dose) + " of the resin, by mass"
		works = []caution.Work{caution.Peroxide, caution.Polyester, caution.Mixing}
	}
	v.Total = fmt.Sprintf("The plies hold %s of %s; with losses %s are needed.", grams(m.Total.Laminate), m.Name, grams(m.Total.Mixed))
	v.Cautions = caution.For(works...)
	for i, s := range m.Sessions {
		v.Sessions = append(v.Sessions, sessionOf(s, i+1, len(m.Sessions), v.Second))
	}
	var losses []string
	for _, l := range m.Losses {
		losses = append(losses, l.What+" "+grams(l.Mass))
	}
	v.Losses = strings.Join(losses, ", ")
	v.Smallest = fmt.Sprintf("Smallest batch that can be measured honestly with the scale and syringe given: %s of resin with %s = %s of %s.",
		grams(m.Smallest.Resin), grams(m.Smallest.Second), ml(m.Smallest.SecondVolume), v.Second)
	if t := r.MixTable; t != nil {
		v.table(*t)
	}
	return v
}

func sessionOf(s mixing.Session, n, of int, second string) sessionView {
	b := s.Batches
	var plies []string
	for _, p := range s.Plies {
		plies = append(plies, p.Label)
	}
	v := sessionView{
		Name: fmt.Sprintf("Session %d of %d", n, of), Plies: strings.Join(plies, ", "),
		Count: counted(b.Count, "batch"), Resin: grams(b.Resin), Second: grams(b.Second), SecondML: trimmed(b.SecondVolume.ML(), 1),
		Need: fmt.Sprintf("The plies hold %s; with losses %s are mixed.", grams(s.Need.Laminate), grams(s.Mixed())),
		Time: s.Told(), HasTime: s.WorkingTime > 0,
	}
	if b.Count != 1 {
		v.Count = fmt.Sprintf("%d batches, all alike, each:", b.Count)
	}
	how := "by scale"
	shown := grams(b.Measured.Second)
	if b.Measured.Syringe {
		how, shown = "by syringe", trimmed(b.Measured.SecondVolume.ML(), 2)+nb+"ml"
	}
	v.Measure = fmt.Sprintf("Measure the %s %s: %s. With these tools its true share of the resin is then %s to %s.", second, how, shown, percent(b.Measured.Low), percent(b.Measured.High))
	if b.Measured.Off {
		v.Measure += " That is more than is honest: use a finer scale or a syringe."
	}
	return v
}

func (v *mixingView) table(t mixing.MixTable) {
	for _, a := range t.Sizes {
		v.Sizes = append(v.Sizes, sizeRow{grams(a.Resin), grams(a.Second), trimmed(a.SecondVolume.ML(), 1)})
	}
	for _, row := range t.Rows {
		x := mixRow{At: celsius(row.At), Words: row.Words}
		heads := []string{"Working time"}
		if row.Time > 0 {
			x.Cells = []string{row.Words}
		}
		if len(row.ByDose) > 0 {
			heads = nil
			var cells []string
			for _, d := range row.ByDose {
				heads = append(heads, percent(d.Dose))
				cell := "not on the sheet"
				if d.Time > 0 {
					cell = trimmed(mixing.WholeMinutes(d.Time), 0) + nb + "min"
				}
				cells = append(cells, cell)
			}
			if row.Time > 0 {
				x.Cells = cells
			}
		}
		v.Doses = heads
		v.Rows = append(v.Rows, x)
	}
}

// bandText says the temperatures a material may be laid at.
func bandText(low, high si.Temp) string {
	if high.Given() {
		return celsius(low) + " to " + celsius(high)
	}
	return celsius(low) + " or more"
}
