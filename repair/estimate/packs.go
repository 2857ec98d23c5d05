package estimate

import (
	"cmp"
	"math"
	"slices"
)

// Pack is one size on sale, in the need's own unit (grams, millilitres, m2).
type Pack struct {
	Size  float64 `json:"size"`
	Price float64 `json:"price"`
}

// Bought is so many packs of one size.
type Bought struct {
	Pack
	Count int `json:"count"`
}

// mostTries bounds the search, so that a list of many sizes cannot hold a page
// up. It is never reached by the handful of sizes a material is sold in.
const mostTries = 200_000

// Cheapest returns the packs that cover the need for the least money, and of
// those the ones with the least left over. It returns nil when there is nothing
// to buy or nothing on sale.
//
// It tries the counts of each size, largest first and most of it first, and
// leaves a branch as soon as the rest at the best price a unit would cost more
// than the best so far. That is exact unless mostTries stops it; then it is the
// best found.
func Cheapest(need float64, packs []Pack) []Bought {
	sizes := slices.DeleteFunc(slices.Clone(packs), func(p Pack) bool { return !(p.Size > 0) || p.Price < 0 })
	if !(need > 0) || len(sizes) == 0 {
		return nil
	}
	slices.SortStableFunc(sizes, func(a, b Pack) int { return cmp.Compare(b.Size, a.Size) })
	rate := make([]float64, len(sizes)) // the best price a unit among this size and those after it
	for i := len(sizes) - 1; i >= 0; i-- {
		rate[i] = sizes[i].Price / sizes[i].Size
		if i+1 < len(sizes) {
			rate[i] = min(rate[i], rate[i+1])
		}
	}
	const hair = 1e-9 // of the need: 500 g as computed are the 500 g of the tin
	best, bestCost, bestSize := []int(nil), math.Inf(1), math.Inf(1)
	counts := make([]int, len(sizes))
	tries := 0
	var try func(i int, left, cost, size float64)
	try = func(i int, left, cost, size float64) {
		if tries++; tries > mostTries && best != nil {
			return
		}
		if left <= hair*need {
			if cost < bestCost || cost == bestCost && size < bestSize {
				best, bestCost, bestSize = slices.Clone(counts), cost, size
			}
			return
		}
		if i == len(sizes) || cost+left*rate[i] > bestCost*(1+hair) {
			return
		}
		for n := int(math.Ceil(left/sizes[i].Size - hair)); n >= 0; n-- {
			counts[i] = n
			k := float64(n)
			try(i+1, left-k*sizes[i].Size, cost+k*sizes[i].Price, size+k*sizes[i].Size)
			if tries > mostTries {
				break
			}
		}
		counts[i] = 0
	}
	try(0, need, 0, 0)
	var out []Bought
	for i, n := range best {
		if n > 0 {
			out = append(out, Bought{Pack: sizes[i], Count: n})
		}
	}
	return out
}
