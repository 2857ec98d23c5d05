package overcoat

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/si"
)

// Longest is how many times its length on the sheet a window may grow in the cold.
//
// Our own rule: a model fitted to a handful of figures may shorten what a sheet
// says, and is not trusted to stretch it far. Dust, damp and blush, which grow
// worse in the cold, are in no model.
const Longest = 2.0

// Window returns from when until when the next coat may go on without sanding,
// counted from mixing, and says in words how that was got. early and late are the
// times the cure needs on this hull, in this weather, to come as far as it does under
// the sheet's conditions at the beginning and at the end of the sheet's window, over
// the sheet's: above 1 in the cold, below 1 in the warmth.
//
//	from = early * sheetFrom
//	to   = min(late, Longest) * sheetTo
//
// The beginning is never brought forward or held back by less than the cure:
// laid on too early a coat sinks or overheats. The end is the earlier of what is
// modelled and twice the sheet's. Where cold puts the beginning past the end,
// or the sheet gives no end, there is no window: from and to are both zero, and
// the face is washed and sanded. It panics if a factor is not a positive
// number or the sheet's window is negative.
func Window(sheetFrom, sheetTo si.Time, early, late float64) (from, to si.Time, words string) {
	if !(early > 0 && late > 0) || math.IsInf(early+late, 0) {
		panic(fmt.Sprintf("overcoat: the cure takes %g and %g times as long", early, late))
	}
	if !(sheetFrom >= 0 && sheetTo >= 0) {
		panic(fmt.Sprintf("overcoat: window from %g s to %g s", float64(sheetFrom), float64(sheetTo)))
	}
	const sand = "wash, let it go hard, and sand before the next coat"
	if sheetTo <= sheetFrom {
		return 0, 0, "the sheet gives no window: " + sand
	}
	from = si.Scale(sheetFrom, early)
	to = si.Scale(sheetTo, min(late, Longest))
	if to <= from {
		return 0, 0, fmt.Sprintf("no window: in this cold it is ready after %s, and after %s, twice the sheet's %s, the bond is not trusted: %s",
			hours(from), hours(to), hours(sheetTo), sand)
	}
	how := "the sheet's, at the sheet's temperature"
	times := fmt.Sprintf("%.2g", early)
	if math.Abs(early-late) > 0.05 {
		times += fmt.Sprintf(" and %.2g", late)
	}
	switch {
	case late > Longest:
		how = fmt.Sprintf("the cure takes %s times as long as on the sheet, but the end is held to twice the sheet's %s", times, hours(sheetTo))
	case math.Abs(early-1) > 0.005 || math.Abs(late-1) > 0.005:
		how = fmt.Sprintf("the sheet's %s to %s, times %s for the temperature", hours(sheetFrom), hours(sheetTo), times)
	}
	return from, to, fmt.Sprintf("from %s, until %s at most after mixing: %s; later, %s", hours(from), hours(to), how, sand)
}

// hours prints a time to 0.1 h, short ones in minutes.
func hours(t si.Time) string {
	if t.Hours() < 1 {
		return fmt.Sprintf("%.0f min", t.Minutes())
	}
	return strings.TrimSuffix(fmt.Sprintf("%.1f", t.Hours()), ".0") + " h"
}
