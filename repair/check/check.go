// Package check is the verdict: one thing looked at, what was found, what is
// allowed, and what follows. A failed check is a verdict, never an error.
package check

import "slices"

// State is how a verdict came out.
type State string

// The three states, in rising order of weight.
const (
	OK    State = "ok"    // within the limit
	Watch State = "watch" // go on, knowing this
	Stop  State = "stop"  // do not go on until it is settled
)

// Verdict is one thing checked.
type Verdict struct {
	What   string `json:"what"`            // "taper at 12 o'clock"
	State  State  `json:"state"`           //
	Value  string `json:"value,omitempty"` // what was found, with its unit
	Limit  string `json:"limit,omitempty"` // what is allowed
	Margin string `json:"margin,omitempty"`
	Why    string `json:"why"`    // why it matters and what to do, in words
	Source string `json:"source"` // document, "common practice, no source", "from memory", ...
}

// Worst returns the heaviest state among the verdicts, OK for none.
func Worst(vs []Verdict) State {
	worst := OK
	order := []State{OK, Watch, Stop}
	for _, v := range vs {
		if slices.Index(order, v.State) > slices.Index(order, worst) {
			worst = v.State
		}
	}
	return worst
}
