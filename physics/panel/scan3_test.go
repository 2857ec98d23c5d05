package panel

import (
	"fmt"
	"sort"
	"testing"
)

func TestFlops(t *testing.T) {
	for _, k := range []string{"overlay", "scarf"} {
		for _, wh := range []bool{true, false} {
			m, _ := Prepare(referencePanel(k, Clamped), Options{Whole: wh})
			tot, leaf, mem := 0.0, 0.0, 0.0
			var top []string
			fr := append([]front(nil), m.tree.fronts...)
			for _, f := range fr {
				n, c := float64(len(f.rows)), float64(f.cut)
				fl := (n*n*n - (n-c)*(n-c)*(n-c)) / 3
				tot += fl
				if f.element >= 0 {
					leaf += fl
				}
				mem += n * n * 8
			}
			sort.Slice(fr, func(i, j int) bool { return fr[i].pieces > fr[j].pieces })
			for _, f := range fr[:min(14, len(fr))] {
				top = append(top, fmt.Sprintf("%d:%d/%d", f.pieces, f.cut, len(f.rows)))
			}
			fmt.Printf("%s %v elements %d free %d MFlop %.0f leaf %.0f mem %.1f MB  %v\n", k, wh, len(m.mesh.elements), m.tree.free, tot/1e6, leaf/1e6, mem/1e6, top)
		}
	}
}
