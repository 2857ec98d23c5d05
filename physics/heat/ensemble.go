package heat

import (
	"fmt"
	"sync"
	"sync/atomic"
)

// Ensemble runs n members on so many goroutines and returns what they return, in
// their own order whichever finishes first. Each goroutine has one workspace, so
// member must copy what it keeps. The first error in member order is returned.
func Ensemble[R any](n, goroutines int, member func(i int, w *Workspace) (R, error)) ([]R, error) {
	out, errs := make([]R, n), make([]error, n)
	share(n, goroutines, func(i int, w *Workspace) { out[i], errs[i] = member(i, w) })
	for i, err := range errs {
		if err != nil {
			return nil, fmt.Errorf("member %d: %w", i, err)
		}
	}
	return out, nil
}

// share runs member 0..n-1 on so many goroutines, at least one.
func share(n, goroutines int, member func(i int, w *Workspace)) {
	var next atomic.Int64
	var all sync.WaitGroup
	for range max(1, min(n, goroutines)) {
		all.Go(func() {
			w := &Workspace{}
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				member(i, w)
			}
		})
	}
	all.Wait()
}
