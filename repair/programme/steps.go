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

// number gives the steps their numbers.
func number(steps []Step) []Step {
	for i := range steps {
		steps[i].Number = i + 1
	}
	return steps
}
