package ways

import (
	"testing"
)

// The book of every demo job comes out, wastes no given number, and its strengths are
// near those of hand.go: it judges a section by its weakest ply at its outermost
// fibre, and so never lies more than a little on the weak side.
func TestCalculation(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop", "trawler-yacht", "work-skiff", "rib-console"} {
		r := compared(t, demoJob(t, name))
		if r.Calculation == nil {
			t.Errorf("%s: no calculation", name)
			continue
		}
		b := r.Calculation.Book
		if b.Err() != nil {
			t.Errorf("%s: %v", name, b.Err())
		}
		for _, s := range b.Orphans() {
			t.Errorf("%s: %s is given and never used", name, s)
		}
		found := 0
		for _, e := range b.Entries {
			switch e.Symbol {
			case "S_h":
				near(t, name+", edges held", e.Value, r.Calculation.Way.Cases[0].Hand, 0.15)
				found++
			case "S_p":
				near(t, name+", pulled along", e.Value, r.Calculation.Way.Cases[2].Hand, 0.02)
				found++
			}
		}
		if found == 0 {
			t.Errorf("%s: the book ends without a strength", name)
		}
	}
}
