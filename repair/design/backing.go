package design

import (
	"fmt"
	"math"

	"scarfwright/physics/geom"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

// Lap and clearance of a backing (common practice, no source).
var (
	backingLapDefault = si.MM(40) // bond all round on the inner face
	passingClearance  = si.MM(10) // slack each side for a piece to go through the hole
)

// mostPieces of a backing that can be pulled up and joined without seeing them.
const mostPieces = 4

// plug is what closes a hole too small for a backing to pass.
const plug = "The hole is too small for a backing to pass. Press in a plug of closed-cell foam or waxed card, flush with the inner face and no further: it only keeps the first ply in shape and carries nothing. Or open the hole wider, or make an inspection opening and close it from both faces."

// backing returns the form that goes behind a hole reached from one side only.
//
// A piece goes in lying nearly flat when there is little room behind, so its
// width must pass the hole's narrowest way. Where the clear reach behind the
// hole is as deep as the piece is long, it may go in on edge, and then the
// hole's widest way counts. It reports false where the hole is too small for
// any piece to pass, or would need more pieces than can be joined blind.
func backing(cut geom.Shape, lap, reach si.Length, sys si.System) (Backing, bool, error) {
	outline, err := cut.Offset(lap.MM())
	if err != nil {
		return Backing{}, false, fmt.Errorf("backing: %w", err)
	}
	b := outline.Bounds()
	out := Backing{Outline: outline, Width: si.MM(b.Width()), Height: si.MM(b.Height()), Lap: lap}
	narrow, angle := cut.MinWidth()
	wide, _ := cut.MaxWidth()
	across, _ := outline.MinWidth()
	longest, _ := outline.MaxWidth()

	opening, how := narrow, "each goes through lying flat"
	if reach > 0 && reach.MM() >= longest {
		opening, how = wide, "each goes through on edge, there being room behind"
	}
	opening -= 2 * passingClearance.MM()
	if opening <= 0 || across/opening > mostPieces {
		return Backing{}, false, nil
	}
	n := int(math.Ceil(across / opening))
	if n == 1 {
		out.Pieces = []geom.Shape{outline}
	} else if out.Pieces, err = outline.SplitStrips(n, angle); err != nil {
		return Backing{}, false, fmt.Errorf("backing: %w", err)
	}
	out.PieceLong, out.PieceShort = si.MM(longest), si.MM(across/float64(n))
	long := func(l si.Length) string { return si.Show(l, sys, 3) }
	out.How = fmt.Sprintf("%s of %s × %s, from a thin laminate (two light plies, wetted out on a waxed sheet bent to the hull's curve, set and abraded beforehand; its cloth and resin are not in the amounts); %s; pull up with wires through two small holes, bonded all round by %s on the abraded inner face with resin thickened to a paste.",
		working.Count(n, "piece", "pieces"), long(out.PieceLong), long(out.PieceShort), how, long(lap))
	if reach > 0 {
		out.How += " Clear space behind: " + long(reach) + "."
	}
	return out, true, nil
}
