package estimate

import (
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

// mostPacks bounds the search over one size: nobody buys more of a small tin
// than would fill it with the next size up a hundred times.
const mostPacks = 100

// Cheapest returns the packs that cover the need for the least money, and of
// those the ones with the least left over. It returns nil when there is nothing
// to buy or nothing on sale.
//
// It tries every count of each size, largest first, which is exact and quick
// for the handful of sizes a material is sold in.
func Cheapest(need float64, packs []Pack) []Bought {
	if need <= 0 || len(packs) == 0 {
		return nil
	}
	sizes := slices.Clone(packs)
	slices.SortStableFunc(sizes, func(a, b Pack) int {
		if a.Size > b.Size {
			return -1
		}
		return 1
	})
	best, bestCost, bestSize := []int(nil), math.Inf(1), math.Inf(1)
	counts := make([]int, len(sizes))
	var try func(i int, left, cost, size float64)
	try = func(i int, left, cost, size float64) {
		if cost > bestCost {
			return
		}
		if left <= 0 {
			if cost < bestCost || size < bestSize {
				best, bestCost, bestSize = slices.Clone(counts), cost, size
			}
			return
		}
		if i == len(sizes) {
			return
		}
		enough := int(math.Ceil(left/sizes[i].Size - 1e-9))
		for n := 0; n <= min(enough, mostPacks); n++ {
			counts[i] = n
			try(i+1, left-float64(n)*sizes[i].Size, cost+float64(n)*sizes[i].Price, size+float64(n)*sizes[i].Size)
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
