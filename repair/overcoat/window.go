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
// counted from mixing, and says in words how that was got. factor is the time
// the cure needs on this hull, in this weather, over the time it needs under
// the sheet's conditions: above 1 in the cold, below 1 in the warmth (modelled
// time to the end of the window over the sheet's is such a factor).
//
//	from = factor * sheetFrom
//	to   = min(factor, Longest) * sheetTo
//
// The beginning is never brought forward or held back by less than the cure:
// laid on too early a coat sinks or overheats. The end is the earlier of what is
// modelled and twice the sheet's. Where cold puts the beginning past the end,
// or the sheet gives no end, there is no window: from and to are both zero, and
// the face is washed and sanded. It panics if the factor is not a positive
// number or the sheet's window is negative.
func Window(sheetFrom, sheetTo si.Time, factor float64) (from, to si.Time, words string) {
	if !(factor > 0) || math.IsInf(factor, 0) {
		panic(fmt.Sprintf("overcoat: the cure takes %g times as long", factor))
	}
	if !(sheetFrom >= 0 && sheetTo >= 0) {
		panic(fmt.Sprintf("overcoat: window from %g s to %g s", float64(sheetFrom), float64(sheetTo)))
	}
	const sand = "wash, let it go hard, and sand before the next coat"
	if sheetTo <= sheetFrom {
		return 0, 0, "the sheet gives no window: " + sand
	}
	from = si.Scale(sheetFrom, factor)
	to = si.Scale(sheetTo, min(factor, Longest))
	if to <= from {
		return 0, 0, fmt.Sprintf("no window: in this cold it is ready after %s, and after %s, twice the sheet's %s, the bond is not trusted: %s",
			hours(from), hours(to), hours(sheetTo), sand)
	}
	how := "the sheet's, at the sheet's temperature"
	switch {
	case factor > Longest:
		how = fmt.Sprintf("the cure takes %.2g times as long as on the sheet, but the end is held to twice the sheet's %s", factor, hours(sheetTo))
	case math.Abs(factor-1) > 0.005:
		how = fmt.Sprintf("the sheet's %s to %s, times %.2g for the temperature", hours(sheetFrom), hours(sheetTo), factor)
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
