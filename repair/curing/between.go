package curing

import (
	"fmt"
	"strings"

	"scarfwright/physics/si"
)

// Fit is how the planned laying of a session lies to the recoat window of the one before.
type Fit string

// The fits. Only Inside spares the sanding.
const (
	Inside   Fit = "inside"
	Early    Fit = "too early"
	Late     Fit = "too late"
	NoWindow Fit = "no window"
	NotDated Fit = "not dated" // no days given, or none left
)

// Between is how a session finds the face of the one before.
type Between struct {
	Session int     `json:"session"` // the later one, from 2 on
	Fit     Fit     `json:"fit"`
	Gap     si.Time `json:"gap_s"` // between the hours of laying; 0 where not dated
	Words   string  `json:"words"` // "laid 23 h after, window 2.9 to 35.1 h"
}

// Follows says how session k, from 2 on, finds the face of session k-1 on the days
// planned:
//
//	gap = 24 h (day_k - day_k-1) + hour_k - hour_k-1
//	RecoatFrom <= gap <= RecoatTo
//
// The window counts from mixing, so the hour of laying stands for that of the first
// pot. Sessions for which no open day is left come on the hour of the last one that
// has one: they are not dated. It panics on a session that is not there.
func (r Result) Follows(k int) Between {
	if k < 2 || k > len(r.Sessions) {
		panic(fmt.Sprintf("curing: session %d of %d follows none", k, len(r.Sessions)))
	}
	last, next := r.Sessions[k-2], r.Sessions[k-1]
	b := Between{Session: k, Fit: NotDated}
	window := last.Next()
	days := float64(next.Day - last.Day)
	gap := si.Hours(24*days + next.Hour - last.Hour)
	dated := last.Day > 0 && next.Day > 0 && gap > 0
	if dated {
		b.Gap = gap
	}
	after := fmt.Sprintf("laid %.3g h after, ", gap.Hours())
	switch {
	case last.RecoatTo == 0:
		b.Fit, b.Words = NoWindow, last.RecoatWords
	case last.Day == 0 || next.Day == 0:
		b.Words = "no hour of laying known, window " + window + " after mixing"
	case !dated:
		b.Words = "no open day is left for it, window " + window + " after mixing"
	case gap < last.RecoatFrom:
		b.Fit, b.Words = Early, after+"too early for the window of "+window
	case gap > last.RecoatTo:
		b.Fit, b.Words = Late, after+"too late for the window of "+window
	default:
		b.Fit, b.Words = Inside, after+"window "+window
	}
	return b
}

// NextOnLast says whether every session after the first is laid inside the window
// of the one before it, with the gaps and the windows in words. A job of one
// session is inside, with no words.
func (r Result) NextOnLast() (inside bool, words string) {
	inside = true
	var all []string
	for k := 2; k <= len(r.Sessions); k++ {
		b := r.Follows(k)
		inside = inside && b.Fit == Inside
		w := b.Words
		if len(r.Sessions) > 2 {
			w = fmt.Sprintf("session %d: %s", k, w)
		}
		all = append(all, w)
	}
	return inside, strings.Join(all, "; ")
}
