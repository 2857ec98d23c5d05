// Package repair is the whole pipeline on one page: a description in, a planned
// repair out. Every stage is one function with structs in and a struct out; no
// stage reads a clock, a file or the network, so the same description gives the
// same result, byte for byte.
package repair

import (
	"scarfwright/repair/caution"
	"scarfwright/repair/check"
	"scarfwright/repair/curing"
	"scarfwright/repair/design"
	"scarfwright/repair/estimate"
	"scarfwright/repair/finish"
	"scarfwright/repair/job"
	"scarfwright/repair/mixing"
	"scarfwright/repair/overcoat"
	"scarfwright/repair/programme"
	"scarfwright/repair/survey"
	"scarfwright/repair/working"
)

// Result is a planned repair. Design and Mixing are nil where there is no
// laminate to renew: cosmetic damage, or damage this version does not plan.
type Result struct {
	Job         job.Description     `json:"job"`
	Hash        string              `json:"hash"`      // of the description
	Catalogue   string              `json:"catalogue"` // version of the catalogue
	Caution     string              `json:"caution"`   // stands on every export
	Survey      survey.Result       `json:"survey"`
	Design      *design.Result      `json:"design,omitempty"`
	Curing      *curing.Result      `json:"curing,omitempty"` // nil where the resin's sheet cannot be fitted
	Mixing      *mixing.Result      `json:"mixing,omitempty"`
	MixTable    *mixing.MixTable    `json:"mix_table,omitempty"`
	Coats       []curing.Coat       `json:"coats"`  // what is spread over the laminate, with its times
	Joints      []overcoat.Joint    `json:"joints"` // what goes on what, from the boat outwards
	Finish      finish.Result       `json:"finish"`
	Programme   programme.Programme `json:"programme"`
	Estimate    estimate.Result     `json:"estimate"`
	Verdicts    []check.Verdict     `json:"verdicts"`    // of all stages, gathered
	Assumptions []string            `json:"assumptions"` // likewise
	Cautions    []caution.Caution   `json:"cautions"`    // of all work in the job
	Working     []working.Line      `json:"working"`     // likewise
}

// Stops returns the verdicts that must be settled before work begins.
func (r Result) Stops() []check.Verdict {
	var out []check.Verdict
	for _, v := range r.Verdicts {
		if v.State == check.Stop {
			out = append(out, v)
		}
	}
	return out
}

// Stopped reports whether any verdict stops the work until it is settled.
func (r Result) Stopped() bool { return len(r.Stops()) > 0 }

// Released reports whether a job card may be printed: no hard stop, and a plan.
func (r Result) Released() bool { return !r.Survey.Referred() && r.Survey.NotPlanned == "" }
