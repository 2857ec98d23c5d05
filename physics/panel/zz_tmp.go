package panel

func (m *Model) SetStretch(along, across float64) {
	m.panel.Stretch = [2]float64{along, across}
	for n, v := range m.mesh.at {
		m.start[dofs*n+dofU] = along * v.x
		m.start[dofs*n+dofV] = across * v.y
	}
	m.factored = false
}
