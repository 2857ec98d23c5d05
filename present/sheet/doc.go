// Package sheet prints the papers of a repair as PDF, A4 or Letter: the job
// card, the referral sheet that takes its place at a hard stop, the estimate,
// the working, and the templates at 1:1.
//
//	err := sheet.JobCard(w, r, sheet.Options{Now: now, Program: "scarfwright 1.0"})
//
// Everything printed is in the repair.Result or the options; the same two give
// the same bytes. Every page carries page n of m, the job, its revision, the
// hash of the inputs, the program's version, and the general caution.
//
// # Limits
//
// With US units, sizes, areas and masses are printed in inch-pound units; the
// sentences a result brings along (targets, verdicts, worked lines) keep the
// units they were computed in. Doses are always in grams and millilitres, as
// scales and syringes show them; US units stand beside them.
package sheet

import (
	"cmp"
	"errors"
	"strings"
	"time"

	"scarfwright/physics/si"
	"scarfwright/present/drawing"
	"scarfwright/repair"
)

// Options are what the printer chooses. A zero Paper or Units takes the job's.
type Options struct {
	Paper   string    // "A4" or "Letter"
	Units   string    // "metric" or "us"
	Now     time.Time // printed on every page and set as the file's date; must be given
	Program string    // name and version of the program
}

// ErrNotReleased is returned by JobCard for a job that is referred or that this
// version does not plan: its paper is the referral sheet.
var ErrNotReleased = errors.New("job card: this job is stopped and must be referred; print the referral sheet")

func (o Options) sheet() drawing.Sheet {
	if o.Paper == "Letter" {
		return drawing.Letter
	}
	return drawing.A4
}

// settled fills the options from the job and puts the units into a copy of the
// job, where the pictures look for them.
func settled(r repair.Result, o Options) (repair.Result, Options) {
	o.Paper = cmp.Or(o.Paper, r.Job.Choices.Paper, "A4")
	o.Units = cmp.Or(o.Units, r.Job.Choices.Units, "metric")
	r.Job.Choices.Units = o.Units
	return r, o
}

func (o Options) system() si.System {
	if o.Units == "us" {
		return si.US
	}
	return si.Metric
}

// short cuts a hash to what people compare.
func short(hash string) string {
	hash = strings.TrimPrefix(hash, "sha256:")
	return hash[:min(12, len(hash))]
}
