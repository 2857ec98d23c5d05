package laminate

import (
	"fmt"
	"math"
)

// PlyFailure is the failure of one ply of a laminate: Ratio is the multiple of the
// applied load at which it happens.
type PlyFailure struct {
	Ply   int   // index in the list of plies, from 0; -1 when nothing is stressed
	Place Place // the face of the ply that fails
	Failure
}

// FirstPlyFailure returns the ply that fails first and the multiple of the load at
// which it does. With no load Ratio is +Inf and Ply is -1. Strengths are one for
// the whole laminate, or one a ply.
//
// Stress runs straight through a ply and the criteria are convex, so the worst is
// at one of its faces; only these are tried.
//
// For glass and polyester, first-ply failure is the start of resin cracking, well
// below the load that breaks the panel.
func FirstPlyFailure(plies []Ply, strengths []Strength, l Load, c Criterion) PlyFailure {
	worst := PlyFailure{Ply: -1, Failure: Failure{Ratio: math.Inf(1)}}
	for _, f := range plyFailures(plies, plies, strengths, l, c) {
		if f.Ratio < worst.Ratio*(1-together) { // of plies that fail together, the first listed
			worst = f
		}
	}
	return worst
}

// Step is one event in the collapse of a laminate.
type Step struct {
	Ratio    float64 // multiple of the applied load reached when these plies go; never falls from step to step
	Failures []PlyFailure
}

// Collapse is the order in which the plies fail as the load grows.
type Collapse []Step

// First returns the multiple of the load at first-ply failure, +Inf if none fails.
func (c Collapse) First() float64 {
	if len(c) == 0 {
		return math.Inf(1)
	}
	return c[0].Ratio
}

// Last returns the multiple of the load at which the last ply fails, +Inf if none
// fails. It is at least First.
func (c Collapse) Last() float64 {
	if len(c) == 0 {
		return math.Inf(1)
	}
	return c[len(c)-1].Ratio
}

// together is how close two strength ratios lie for their plies to count as
// failing at once. It is far above rounding and far below any difference between
// real plies: without it, the two outer plies of a symmetric stack would go one
// after the other and the remainder would curl.
const together = 1e-9

// LastPlyFailure returns the whole collapse of a laminate under a growing load, by
// full discount: a failed ply loses all its stiffness but keeps its place, and the
// load stays on the middle of the sound laminate. Plies that end up unstressed
// never fail and are in no step. Strengths are one for the whole laminate, or one
// a ply.
//
// Kaw2006 ch. 5 (its [0/90/0] is a test). Full discount is the harsh end of the
// usual assumptions: a cracked ply still carries load along its fibres. When a
// step's plies fail below the load already reached, they go at that load.
func LastPlyFailure(plies []Ply, strengths []Strength, l Load, c Criterion) Collapse {
	left := make([]Ply, len(plies))
	copy(left, plies)
	var collapse Collapse
	reached := 0.0
	for {
		failures := plyFailures(plies, left, strengths, l, c)
		first := math.Inf(1)
		for _, f := range failures {
			first = min(first, f.Ratio)
		}
		if math.IsInf(first, 1) {
			return collapse
		}
		reached = max(reached, first)
		step := Step{Ratio: reached}
		for _, f := range failures {
			if f.Ratio <= first*(1+together) {
				step.Failures = append(step.Failures, f)
				left[f.Ply].Lamina = Lamina{} // discounted: no stiffness
			}
		}
		collapse = append(collapse, step)
	}
}

// plyFailures returns the worse face of every ply that still has stiffness.
func plyFailures(plies, left []Ply, strengths []Strength, l Load, c Criterion) []PlyFailure {
	if n := len(strengths); n != 1 && n != len(plies) {
		panic(fmt.Sprintf("laminate: %d strengths for %d plies: want one, or one a ply", n, len(plies)))
	}
	standing := make([]Ply, 0, len(left))
	for _, p := range left {
		if p.Lamina != (Lamina{}) {
			standing = append(standing, p)
		}
	}
	if len(standing) == 0 {
		return nil
	}
	s := NewStiffness(left)
	d := s.Under(l)
	failures := make([]PlyFailure, 0, len(standing))
	z := -s.H / 2
	for i, p := range left {
		below := z
		z += p.Thickness
		if p.Lamina == (Lamina{}) {
			continue
		}
		x := strengths[0]
		if len(strengths) > 1 {
			x = strengths[i]
		}
		lower := FailureOf(c, p.Lamina, x, pointAt(i, p, Bottom, below, d).PlyStress)
		upper := FailureOf(c, p.Lamina, x, pointAt(i, p, Top, z, d).PlyStress)
		f := PlyFailure{i, Bottom, lower}
		if upper.Ratio < lower.Ratio {
			f = PlyFailure{i, Top, upper}
		}
		failures = append(failures, f)
	}
	return failures
}
