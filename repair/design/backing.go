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

// backing returns the form that goes behind a hole reached from one side only.
//
// A piece goes in lying nearly flat when there is little room behind, so its
// width must pass the hole's narrowest way. Where the clear reach behind the
// hole is as deep as the piece is long, it may go in on edge, and then the
// hole's widest way counts.
func backing(cut geom.Shape, lap, reach si.Length) (Backing, error) {
	outline, err := cut.Offset(lap.MM())
	if err != nil {
		return Backing{}, fmt.Errorf("backing: %w", err)
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
	if opening <= 0 {
		return Backing{}, fmt.Errorf("backing: the hole is %.0f mm at its narrowest; nothing passes it with %.0f mm clear each side", narrow, passingClearance.MM())
	}
	n := int(math.Ceil(across / opening))
	if n == 1 {
		out.Pieces = []geom.Shape{outline}
	} else if out.Pieces, err = outline.SplitStrips(n, angle); err != nil {
		return Backing{}, fmt.Errorf("backing: %w", err)
	}
	out.PieceLong, out.PieceShort = si.MM(longest), si.MM(across/float64(n))
	out.How = fmt.Sprintf("%s of %.0f × %.0f mm, from a thin laminate made beforehand on a waxed sheet bent to the hull's curve; %s; pull up with wires through two small holes, bonded all round by %.0f mm on the abraded inner face.",
		working.Count(n, "piece", "pieces"), out.PieceLong.MM(), out.PieceShort.MM(), how, lap.MM())
	if reach > 0 {
		out.How += fmt.Sprintf(" Clear space behind: %.0f mm.", reach.MM())
	}
	return out, nil
}
