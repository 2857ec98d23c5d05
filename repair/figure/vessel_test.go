package figure_test

import (
	"strings"
	"testing"
)

// The better a vessel passes heat, the later its batch gels and the cooler it stays;
// poured warm it gels sooner. (Order only: the figures follow physics/heat, which has
// its own checks.)
func TestVesselsInOrder(t *testing.T) {
	base := with(good["cup"], in{"mass": "300 g"})
	delete(base, "diameter")
	last := -1.0
	for _, vessel := range []string{"foam cup", "cup", "tray", "metal tray"} {
		a, err := compute("cup", with(base, in{"vessel": vessel}))
		if err != nil {
			t.Fatal(err)
		}
		gel, _ := a.Results.Get("gel_min")
		if gel <= last {
			t.Errorf("%s gels after %.3g min, the vessel before it after %.3g", vessel, gel, last)
		}
		last = gel
	}
	pot := in{"material": "epoxy-slow", "mass": "200 g", "temperature": "15 °C"}
	low := func(change in) float64 {
		a, err := compute("pot-life", with(pot, change))
		if err != nil {
			t.Fatal(err)
		}
		x, _ := a.Results.Get("working_min")
		return x
	}
	cold, warm, tray := low(in{}), low(in{"start": "25 °C"}), low(in{"vessel": "tray"})
	if !(warm < cold && cold < tray) {
		t.Errorf("working %.3g min poured at 25 °C, %.3g at 15 °C, %.3g in a tray", warm, cold, tray)
	}
	if _, err := compute("cup", with(base, in{"vessel": "bucket"})); err == nil || !strings.Contains(err.Error(), "metal tray") {
		t.Errorf("a bucket: %v", err)
	}
}
