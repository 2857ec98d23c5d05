// Package drawing holds one drawing, in millimetres on paper with y upwards,
// and writes it as SVG, PDF, PNG and DXF.
//
// A Scene is a sheet of paper. Pens draw on it: the scene itself is a pen that
// takes paper millimetres, and View or Fit make pens that take millimetres on
// the boat and place them at a scale, so that a dimension prints what is
// measured on the boat and never what is measured on the paper:
//
//	s := drawing.New(180, 120, "Plan of the repair")
//	v, k := s.Fit(drawing.Box{X0: 20, Y0: 20, X1: 160, Y1: 100}, model)
//	v.Fill(drawing.Light, cutout)
//	v.Ring(drawing.Wide, cutout...)
//	v.DimH(left, right, -10, "")
//	err := s.WriteSVG(w)
//
// Lines are Wide (0.5 mm) or narrow (0.25 mm) and nothing else: two widths in
// the proportion 2:1, wide for visible outlines, narrow for dimensions,
// leaders, hatching, hidden edges and centre lines (ISO 128-2:2020). Text
// height is the height of a capital letter in millimetres, 2.5 at least.
// Colour is never the only sign: an ink comes with a label, a line kind or a
// hatch that says the same.
//
// Tile cuts a drawing at 1:1 into sheets of A4 or Letter. What lies outside a
// sheet's window is cut away, not covered.
//
// # Recolouring an SVG
//
// WriteSVG uses presentation attributes only, so a page with a strict content
// policy may show it and any style sheet may override it. The classes are:
// drawing (the root), paper (the sheet and the blanks under text), the shades
// light, mid, dark and solid, and the inks blue, vermilion, green, purple,
// orange, sky and yellow. Inks set the attribute color and everything is drawn
// in currentColor:
//
//	.drawing         { color: #eee; --paper: #111 }
//	.drawing .paper  { fill: var(--paper) }
//	.drawing .light  { fill: color-mix(in srgb, currentColor 10%, var(--paper)) }
//	.drawing .blue   { color: #56b4e9 }
//
// # Limits
//
// Curves are chords that leave the true curve by 0.01 mm on paper at most. The
// numbers in an SVG are rounded to 0.01 mm, in a PDF to 0.001 point (text to
// 0.01 point), in a DXF to 0.0001 mm. Text is not shaped: Latin, Greek, Cyrillic and signs
// that need no ligatures or joining. A DXF holds no fills; its text is ASCII.
package drawing
