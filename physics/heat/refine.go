package heat

import (
	"fmt"
	"math"
)

// frontShare is the largest difference in degree between neighbours that the grid
// still carries. A reaction front that runs through a hot stack is a fraction of a
// millimetre thick; where it fits between two nodes, the heat it gives off on
// meeting the next one is spread over a whole cell and the peak comes out too low,
// by 60 K in the worst of our cases. Measured over three families of slabs on
// grids of 10 to 1600 cells (TestCoarseGridsAreFound): every peak that was wrong
// by more than 1 K had a difference above 0.4, and most of those within had less.
const frontShare = 0.4

// judge says whether the grid carried the answer.
func (r *Result) judge() {
	k := &r.w.track
	if r.Coarse = k.steepest > frontShare; r.Coarse {
		r.Warning = fmt.Sprintf("the grid of %d cells is too coarse: at %.4g min the degree of cure differs by %.2f from one node to the next, "+
			"so a reaction front fits inside one cell and the peak temperature may be off by tens of kelvin; about %.0f cells are needed",
			r.Cells, k.steepestAfter/60, k.steepest, math.Ceil(float64(r.Cells)*math.Max(2, k.steepest/frontShare)/10)*10)
	}
}

// Resolve runs the slab and, while its grid is too coarse, again with every cell
// halved, up to most cells. What it returns is Coarse still if that wasn't enough.
// Its Change tells how far the peak moved with the last halving.
func (s *Slab) Resolve(w *Workspace, most int) (*Result, error) {
	if w == nil {
		w = &Workspace{}
	}
	fine := *s
	r, err := fine.Run(w)
	for err == nil && r.Coarse && 2*r.Cells <= most {
		before := r.Peak.Temp
		cells := fine.cells()
		fine.Layers = append([]Layer(nil), s.Layers...)
		for i := range fine.Layers {
			fine.Layers[i].Cells = 2 * cells[i]
		}
		if r, err = fine.Run(w); err == nil {
			r.Change = r.Peak.Temp.Sub(before)
		}
	}
	return r, err
}
