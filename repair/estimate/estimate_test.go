package estimate_test

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
	"scarfwright/repair/estimate"
	"scarfwright/repair/job"
)

func ExampleCheapest() {
	for _, b := range estimate.Cheapest(2600, []estimate.Pack{{1300, 39}, {6500, 162}}) {
		fmt.Printf("%d × %g g at %g\n", b.Count, b.Size, b.Price)
	}
	// Output: 2 × 1300 g at 39
}

// cost of a purchase, and what it holds.
func cost(bs []estimate.Bought) (price, size float64) {
	for _, b := range bs {
		price += float64(b.Count) * b.Price
		size += float64(b.Count) * b.Size
	}
	return
}

// brute tries every count of three sizes up to a limit that is surely enough.
func brute(need float64, packs []estimate.Pack) (price float64) {
	best := math.Inf(1)
	for len(packs) < 3 {
		packs = append(packs, estimate.Pack{Size: 1, Price: math.Inf(1)})
	}
	top := func(p estimate.Pack) int { return int(math.Ceil(need / p.Size)) }
	paid := func(n int, p estimate.Pack) float64 {
		if n == 0 {
			return 0
		}
		return float64(n) * p.Price
	}
	for a := 0; a <= top(packs[0]); a++ {
		for b := 0; b <= top(packs[1]); b++ {
			for c := 0; c <= top(packs[2]); c++ {
				if float64(a)*packs[0].Size+float64(b)*packs[1].Size+float64(c)*packs[2].Size >= need {
					best = min(best, paid(a, packs[0])+paid(b, packs[1])+paid(c, packs[2]))
				}
			}
		}
	}
	return best
}

func TestCheapestAgreesWithTryingEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		need := float64(rapid.IntRange(1, 40).Draw(t, "need"))
		var packs []estimate.Pack
		for range rapid.IntRange(1, 3).Draw(t, "sizes") {
			packs = append(packs, estimate.Pack{
				Size:  float64(rapid.IntRange(1, 15).Draw(t, "size")),
				Price: float64(rapid.IntRange(0, 60).Draw(t, "price")),
			})
		}
		got, size := cost(estimate.Cheapest(need, packs))
		if want := brute(need, packs); got != want || size < need {
			t.Fatalf("need %g from %v: paid %g for %g, want %g", need, packs, got, size, want)
		}
	})
}

func TestCheapestPrefersLessLeftOver(t *testing.T) {
	_, size := cost(estimate.Cheapest(900, []estimate.Pack{{1000, 20}, {2000, 20}}))
	if size != 1000 {
		t.Errorf("1 kg and 2 kg at one price for 900 g: got %g g, want 1000 g", size)
	}
}

func TestCheapestBuysMoreThanAHundredPacks(t *testing.T) {
	price, size := cost(estimate.Cheapest(60, []estimate.Pack{{0.5, 2.2}}))
	if math.Abs(price-264) > 1e-9 || size != 60 {
		t.Errorf("60 m² off the roll by the half: got %g for %g m², want 264 for 60 m² (closed form)", price, size)
	}
}

func TestNothingToBuy(t *testing.T) {
	sold := []estimate.Pack{{1, 1}}
	for name, got := range map[string][]estimate.Bought{
		"no need":         estimate.Cheapest(0, sold),
		"need below zero": estimate.Cheapest(-1, sold),
		"need not known":  estimate.Cheapest(math.NaN(), sold),
		"nothing sold":    estimate.Cheapest(1, nil),
		"a pack of none":  estimate.Cheapest(1, []estimate.Pack{{0, 1}}),
	} {
		if got != nil {
			t.Errorf("%s: got %v, want nothing", name, got)
		}
	}
}

// Twenty sizes at one price a unit is the worst case: no branch is dearer.
func TestManySizesDoNotHoldThePageUp(t *testing.T) {
	var packs []estimate.Pack
	for i := range 20 {
		packs = append(packs, estimate.Pack{Size: 1 + float64(i)*0.37, Price: 2 * (1 + float64(i)*0.37)})
	}
	begin := time.Now()
	_, size := cost(estimate.Cheapest(97.3, packs))
	if took := time.Since(begin); took > time.Second || size < 97.3 {
		t.Errorf("took %v for %g of 97.3", took, size)
	}
}

var rates = []estimate.HourLine{
	{Step: "taper", Hours: estimate.Range{Low: 1, Likely: 2, High: 4}, Source: "from memory"},
	{Step: "laminate", Hours: estimate.Range{Low: 2, Likely: 3, High: 5}, Source: "from memory"},
}

func TestHours(t *testing.T) {
	for _, row := range []struct {
		what string
		own  map[string]float64
		want estimate.Range // closed form: own hours spread by 0.9 and 1.3, the rates as they are
	}{
		{"without a yard's hours the rates stand", nil, estimate.Range{Low: 3, Likely: 5, High: 9}},
		{"a yard's step replaces its rate, the others stay", map[string]float64{"taper": 10}, estimate.Range{Low: 11, Likely: 13, High: 18}},
		{"a step the plan does not have is added", map[string]float64{"survey": 1}, estimate.Range{Low: 3.9, Likely: 6, High: 10.3}},
		{"one total stands for all", map[string]float64{"all": 20}, estimate.Range{Low: 18, Likely: 20, High: 26}},
	} {
		d := job.Description{Crew: job.Crew{Rate: 50, Hours: row.own}}
		got := estimate.Plan(d, nil, rates).HoursTotal
		if math.Abs(got.Low-row.want.Low)+math.Abs(got.Likely-row.want.Likely)+math.Abs(got.High-row.want.High) > 1e-9 {
			t.Errorf("%s: got %v, want %v", row.what, got, row.want)
		}
	}
}

func TestPrice(t *testing.T) {
	d := job.Description{
		Crew:  job.Crew{Rate: 50, Hours: map[string]float64{"all": 10}},
		Shelf: job.Shelf{Markup: si.Percent(20), Extras: map[string]float64{"lift": 180, "tent": 20}},
		Boat:  job.Boat{InsuredValue: 10000},
	}
	needs := []estimate.Need{
		{Class: "a", Amount: 700, Unit: "g", Stock: 200, OnSale: []estimate.Pack{{500, 30}}}, // one pack
		{Class: "b", Amount: 1, Unit: "m²", Stock: 2},                                        // enough
		{Class: "c", Amount: 1, Unit: "m²"},                                                  // nobody sells it
	}
	r := estimate.Plan(d, needs, nil)
	// 10 h × 50 + 30 × 1.2 + 200 (closed form); the range by 0.9, 1.3 and 15 % on materials
	want := estimate.Range{Low: 450 + 36 + 200, Likely: 736, High: 650 + 36*1.15 + 200}
	if math.Abs(r.Total.Low-want.Low)+math.Abs(r.Total.Likely-want.Likely)+math.Abs(r.Total.High-want.High) > 1e-9 {
		t.Errorf("total: got %v, want %v", r.Total, want)
	}
	if math.Abs(r.ShareOfInsured-0.0736) > 1e-12 {
		t.Errorf("share of the insured value: got %v, want 0.0736", r.ShareOfInsured)
	}
	if r.Purchases[1].Short != 0 || r.Purchases[1].Buy != nil {
		t.Errorf("in stock: got %+v, want nothing bought", r.Purchases[1])
	}
	if r.Purchases[2].Note == "" {
		t.Error("a material without a pack carries no note")
	}
	d.Shelf.Materials = 100 // priced by hand, in place of the packs
	if got := estimate.Plan(d, needs, nil).Total.Likely; math.Abs(got-820) > 1e-9 {
		t.Errorf("materials priced by hand: got %v, want 500 + 120 + 200", got)
	}
}

func TestAssumptionsNameWhatIsMissing(t *testing.T) {
	all := strings.Join(estimate.Plan(job.Description{Crew: job.Crew{Hours: map[string]float64{"taper": 1}}}, nil, rates).Assumptions, "\n")
	for _, want := range []string{"Without tax", "No hourly rate", "Hours for laminate are the tool's own"} {
		if !strings.Contains(all, want) {
			t.Errorf("assumptions do not say %q:\n%s", want, all)
		}
	}
}

// Low, likely and high keep their order whatever is priced.
func TestTheRangeIsARange(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := job.Description{Crew: job.Crew{
			Rate:  rapid.Float64Range(0, 1000).Draw(t, "rate"),
			Hours: rapid.MapOf(rapid.SampledFrom([]string{"taper", "laminate", "fair"}), rapid.Float64Range(0, 1e4)).Draw(t, "hours"),
		}}
		d.Shelf.Materials = rapid.Float64Range(0, 1e6).Draw(t, "materials")
		d.Shelf.Markup = si.Ratio(rapid.Float64Range(0, 3).Draw(t, "markup"))
		r := estimate.Plan(d, nil, rates)
		if !(0 <= r.Total.Low && r.Total.Low <= r.Total.Likely && r.Total.Likely <= r.Total.High) {
			t.Fatalf("got %+v", r.Total)
		}
	})
}
