package curing

import (
	"slices"
	"sync"

	"scarfwright/physics/heat"
	"scarfwright/physics/si"
	"scarfwright/repair/design"
)

// Of the possible materials the first so many are followed through the stack, on a
// coarse grid and for as long as a session heats itself: the range needs no more.
// Against all 64 on the full grid the ends move by up to 3 K where the range is 36 K
// wide, and by 1.3 K where it is a few (measured on demo jobs 1, 2, 3 and 6).
const (
	followedDraws = 16
	bandCells     = 12
)

// band is the range of a session's own peak: 10 and 90 % of the possible materials.
func (s *Session) band(plies []design.Ply, under []heat.Layer, r Resin, air Air) error {
	peaks := make([]float64, followedDraws)
	errs := make([]error, 2)
	var done sync.WaitGroup
	for half := range 2 {
		done.Go(func() {
			var w heat.Workspace
			for i := half; i < followedDraws; i += 2 {
				m := r.Model.Drawn(i)
				slab := stack(plies, under, NewResin(m, r.Dose), air, ownHours, bandCells)
				slab.Tolerance = 0.5
				res, err := slab.Run(&w)
				if err != nil {
					errs[half] = err
					return
				}
				peaks[i] = float64(res.PeakIn(0).Temp)
			}
		})
	}
	done.Wait()
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	slices.Sort(peaks)
	at := func(p float64) si.Temp {
		x := p * float64(followedDraws-1)
		i := int(x)
		return si.Temp(peaks[i] + (x-float64(i))*(peaks[min(i+1, followedDraws-1)]-peaks[i]))
	}
	s.OwnLow, s.OwnHigh = min(at(0.1), s.Own), max(at(0.9), s.Own)
	return nil
}
