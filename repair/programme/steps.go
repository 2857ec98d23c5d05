// Package programme orders the work: the steps with their numbers to hit, the
// hold points where work stops until somebody signs, and the hours in which
// the hull is warm and dry enough.
package programme

import (
	"scarfwright/physics/si"
	"scarfwright/repair/caution"
	"scarfwright/repair/estimate"
)

// Target is a number to hit, printed beside an empty box for the actual one.
type Target struct {
	What  string `json:"what"`
	Value string `json:"value"`
}

// Hold is a point where work stops until it is released, because the next step
// hides the evidence.
type Hold struct {
	Letter string   `json:"letter"` // A, B, C, D
	What   string   `json:"what"`
	Look   []string `json:"look"` // what is looked at
	Signs  string   `json:"signs"`
}

// Step is one operation.
type Step struct {
	Number   int               `json:"number"`
	Key      string            `json:"key"` // the word hours are booked under: taper, laminate ...
	Name     string            `json:"name"`
	Do       []string          `json:"do"`
	Targets  []Target          `json:"targets"`
	Hours    float64           `json:"hours"` // working hours, without waiting
	Wait     si.Time           `json:"wait_s"`
	WaitWhy  string            `json:"wait_why,omitempty"`
	Cautions []caution.Caution `json:"cautions"`
	Hold     *Hold             `json:"hold,omitempty"` // after the step
}

// Programme is the ordered work with its windows.
type Programme struct {
	Steps   []Step              `json:"steps"`
	Windows []Windows           `json:"windows"`
	Rates   []estimate.HourLine `json:"rates"` // hours by step at the tool's own rates
	Hours   [][24]Hour          `json:"hours,omitempty"`
}

// Book sets each step's hours from the estimate's, shared among the steps of a
// key as the tool's own rates are; a single figure for "all" is shared among all
// steps. Steps the estimate does not know keep the tool's rates.
func (p *Programme) Book(lines []estimate.HourLine) {
	own := map[string]float64{}
	for _, l := range lines {
		own[l.Step] = l.Hours.Likely
	}
	sums, whole := map[string]float64{}, 0.0
	for _, s := range p.Steps {
		sums[s.Key] += s.Hours
		whole += s.Hours
	}
	for i, s := range p.Steps {
		if all, ok := own["all"]; ok && whole > 0 {
			p.Steps[i].Hours *= all / whole
		} else if h, ok := own[s.Key]; ok && sums[s.Key] > 0 {
			p.Steps[i].Hours *= h / sums[s.Key]
		}
	}
}

// number gives the steps their numbers.
func number(steps []Step) []Step {
	for i := range steps {
		steps[i].Number = i + 1
	}
	return steps
}
