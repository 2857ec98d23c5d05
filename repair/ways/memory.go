package ways

import (
	"crypto/sha256"
	"fmt"
	"sync"

	"scarfwright/physics/panel"
	"scarfwright/physics/si"
)

// Memory keeps the panels that were solved, so that a small change of a job does
// not solve them all again: one that comes again is not solved, and one with the same
// outlines begins from the shape found before. The zero value is ready; it may be
// shared by goroutines; nil keeps nothing. It forgets everything when it is full.
type Memory struct {
	mu     sync.Mutex
	held   map[[32]byte][]figures
	shapes map[[32]byte][]*panel.Result
}

// mostHeld panels, some twenty jobs' worth; mostShapes of the larger shapes, some
// tens of megabytes.
const (
	mostHeld   = 400
	mostShapes = 60
)

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

// drawn names a panel by its spans and outlines.
func drawn(p panel.Panel) [32]byte {
	text := fmt.Appendf(nil, "%v|%v", p.Length, p.Width)
	for _, z := range p.Zones {
		text = fmt.Appendf(text, "|%+v", z.Outline)
	}
	return sha256.Sum256(text)
}

// like returns solutions of a panel with the same outlines, nil if there are none.
func (m *Memory) like(p panel.Panel) []*panel.Result {
	if m == nil {
		return nil
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.shapes[drawn(p)]
}

func (m *Memory) keep(p panel.Panel, solved []*panel.Result) {
	if m == nil || solved == nil {
		return
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.shapes == nil || len(m.shapes) >= mostShapes {
		m.shapes = map[[32]byte][]*panel.Result{}
	}
	m.shapes[drawn(p)] = solved
}

// name is what decides a way's figures beside its panel. Steps are reckoned from the
// figures of the taper.
func (p *parts) name() string {
	if p == nil {
		return ""
	}
	return fmt.Sprintf("%+v", parts{
		parent: p.parent, was: p.was, patch: p.patch, sides: p.sides, depth: p.depth, last: p.last,
		over: p.over, hole: p.hole, outer: p.outer, coreT: p.coreT,
	})
}
