package ways

import (
	"crypto/sha256"
	"fmt"
	"sync"

	"scarfwright/physics/panel"
	"scarfwright/physics/si"
)

// Memory keeps the panels that were solved, so that a small change of a job does
// not solve them all again. The zero value is ready; it may be shared by goroutines;
// nil keeps nothing. It forgets everything when it is full.
type Memory struct {
	mu   sync.Mutex
	held map[[32]byte][]figures
}

// mostHeld panels: some twenty jobs' worth, a few hundred kilobytes.
const mostHeld = 400

func (m *Memory) recall(p panel.Panel, ps *parts, loads []load, q si.Pressure, solve func() ([]figures, error)) ([]figures, error) {
	if m == nil {
		return solve()
	}
	key := sha256.Sum256(fmt.Appendf(nil, "%+v|%s|%+v|%v", p, ps.name(), loads, float64(q)))
	m.mu.Lock()
	f, ok := m.held[key]
	m.mu.Unlock()
	if ok {
		return f, nil
	}
	f, err := solve()
	if err != nil {
		return nil, err
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.held == nil || len(m.held) >= mostHeld {
		m.held = map[[32]byte][]figures{}
	}
	m.held[key] = f
	return f, nil
}

// name is what decides a way's figures beside its panel.
func (p *parts) name() string {
	if p == nil {
		return ""
	}
	return fmt.Sprintf("%+v", parts{parent: p.parent, patch: p.patch, sides: p.sides, depth: p.depth, last: p.last, over: p.over, hole: p.hole, outer: p.outer, coreT: p.coreT, stepped: p.stepped})
}
