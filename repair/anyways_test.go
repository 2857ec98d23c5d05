package repair_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"scarfwright/repair/catalog"
	"scarfwright/repair/ways"
)

// Any job that can be described can be compared, or is refused with words: no
// figure is nonsense, what is recommended fits, and nothing is recommended against a
// referral.
func TestAnyJobCompares(t *testing.T) {
	left := 60
	if testing.Short() {
		left = 4
	}
	var memory ways.Memory
	rapid.Check(t, func(t *rapid.T) {
		if left--; left < 0 {
			return // each takes a second: rapid's hundred are too many
		}
		d := anyJob(t)
		r, err := ways.Compare(d, catalog.Default(), &memory)
		if err != nil {
			if err.Error() == "" {
				t.Fatal("an error without words")
			}
			return
		}
		if r.Reason == "" {
			t.Fatal("no reason")
		}
		for i, w := range r.Ways {
			if w.Recommended != (i == r.Recommended) || w.Recommended && (!w.Fits || !w.Computed || len(r.Referrals) > 0) {
				t.Fatalf("way %d of %d recommended: %+v", i, r.Recommended, w)
			}
			if !w.Computed {
				if w.Why == "" {
					t.Fatalf("%s: not computed, and nobody says why", w.Name)
				}
				continue
			}
			s := w.Strength
			if !(s.Low > 0 && s.Low <= s.Likely && s.Likely <= s.High) || math.IsInf(s.High, 0) {
				t.Fatalf("%s: strength %+v", w.Name, s)
			}
			for _, c := range w.Cases {
				if !(c.Original > 0 && c.Repaired > 0 && c.Hand > 0) || math.IsInf(c.Repaired+c.Hand, 0) {
					t.Fatalf("%s, %s: %+v", w.Name, c.Load, c)
				}
			}
			if !(w.Hours.Likely > 0) || w.Days < 1 || !(w.Ground >= 0) || math.IsNaN(w.Price) {
				t.Fatalf("%s: hours %+v, days %d, price %g", w.Name, w.Hours, w.Days, w.Price)
			}
		}
	})
}
