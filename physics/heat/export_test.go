package heat

// Fixed makes every step h seconds long, without error control.
func (s *Slab) Fixed(h float64) { s.fixed = h }
