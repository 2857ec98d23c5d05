package drawing

import (
	"fmt"
	"math"
	"slices"
)

// Lint returns what a drawing office would send the drawing back for, nothing
// if all is well: text below 2.5 mm, text across lines or other text, coloured
// text too pale to read, things outside the sheet, empty or cut title fields.
// Line widths need no check: a pen has only the two.
func (s *Scene) Lint() []string {
	faults := slices.Clone(s.faults)
	tell := func(format string, args ...any) { faults = append(faults, fmt.Sprintf(format, args...)) }

	sheet := Box{0, 0, s.Width, s.Height}.Inset(-0.01)
	s.all(func(it *item) {
		if b := it.box(); !sheet.holds(Point{b.X0, b.Y0}) || !sheet.holds(Point{b.X1, b.Y1}) {
			what := "line or area"
			if it.kind == text {
				what = fmt.Sprintf("text %q", it.text.s)
			}
			tell("%s on layer %s leaves the sheet: %.1f, %.1f to %.1f, %.1f mm", what, it.layer, b.X0, b.Y0, b.X1, b.Y1)
		}
		if it.kind != text {
			return
		}
		if it.text.size < TextSmall-1e-9 {
			tell("text %q is %g mm high: 2.5 at least", it.text.s, it.text.size)
		}
		if it.ink != Black && it.ink != Blue {
			tell("text %q in %s is too pale on white", it.text.s, inks[it.ink].name)
		}
	})
	for i := range s.over {
		if s.over[i].kind != text {
			continue
		}
		l := s.over[i].text
		// Letters only: the tails' room below the base line may be crossed.
		own := l.corners(0)
		box := l.box()
		if !l.back {
			for j := range s.items {
				if s.items[j].kind == stroke && crossed(own, box, &s.items[j]) {
					tell("a line crosses text %q at %.1f, %.1f mm", l.s, l.at.X, l.at.Y)
					break
				}
			}
		}
		for j := range s.over[:i] {
			if o := s.over[j]; o.kind == text && overlap(own, o.text.corners(0)) {
				tell("text %q and text %q overlap at %.1f, %.1f mm", o.text.s, l.s, l.at.X, l.at.Y)
			}
		}
	}
	return faults
}

// crossed tells whether a stroke passes through the text's box.
func crossed(ring []Point, box Box, it *item) bool {
	for _, p := range it.paths {
		n := len(p.pts) - 1
		if p.closed {
			n++
		}
		for i := range n {
			a, b := p.pts[i], p.pts[(i+1)%len(p.pts)]
			if !(Box{min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y)}).meets(box) {
				continue
			}
			if overlap(ring, []Point{a, b}) {
				return true
			}
		}
	}
	return false
}

// overlap tells whether two convex rings (or segments) share more than an edge:
// if they do not, the normal of an edge of one of them parts them.
func overlap(a, b []Point) bool {
	for _, r := range [2][]Point{a, b} {
		for i, p := range r {
			n := r[(i+1)%len(r)].sub(p).left()
			size := math.Hypot(n.X, n.Y)
			if size == 0 {
				continue
			}
			a0, a1 := span(a, n)
			b0, b1 := span(b, n)
			if slack := 0.01 * size; a1 <= b0+slack || b1 <= a0+slack {
				return false
			}
		}
	}
	return true
}

// span returns the reach of a ring along n.
func span(ring []Point, n Point) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, p := range ring {
		d := p.X*n.X + p.Y*n.Y
		lo, hi = min(lo, d), max(hi, d)
	}
	return lo, hi
}
