package web

import (
	"strings"

	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/design"
	"scarfwright/repair/survey"
)

// designView is the designed laminate.
type designView struct {
	Numbers   []field
	Options   []optionRow
	Proposals []proposalRow
	Plies     []plyRow
	Total     plyRow
	Clocks    []clockRow
	Backing   string
	Core      string
	Worked    worked
}

type optionRow struct {
	Ratio, Link, Edge, Ground, Dust, Bond, Cloth, Left, Fits string
	Chosen                                                   bool
}

type proposalRow struct {
	Name, Code, Thickness, ThicknessRatio, Stiffness string
	Chosen                                           bool
}

type plyRow struct {
	Label, Class, Name, Size, Area, Angle, Step, Glass, Resin, Session, Replaces, Face string
}

type clockRow struct{ Hour, ToCut, ToEdge, Taper, Left, What string }

func designOf(u units, o otherwise, r repair.Result) *designView {
	d := r.Design
	cut, edge := d.CutOut.Bounds(), d.Edge.Bounds()
	inner := "Cut-out, width × height"
	if r.Survey.Class == survey.PartialDepth {
		inner = "Floor of the dish, width × height (do not cut through)"
	}
	v := &designView{Worked: worked{"How these numbers were got", d.Working}}
	v.Numbers = []field{
		{Label: "Original laminate", Value: u.thin(d.Original.Thickness)},
		{Label: "Rebuilt depth", Value: u.thin(d.Depth)},
		{Label: "Repair laminate", Value: u.thin(d.Repair.Thickness)},
		{Label: inner, Value: u.size(si.MM(cut.Width()), si.MM(cut.Height()))},
		{Label: "Taper, ground from the " + facesOf(d.Sides), Value: ratioText(d.Ratio) + " = " + u.length(d.Taper)},
		{Label: "Feather edge, width × height", Value: u.size(si.MM(edge.Width()), si.MM(edge.Height()))},
		{Label: "Plies laid", Value: d.Order},
		{Label: "Cloth", Value: u.area(d.Cloth)},
		{Label: "Glass", Value: grams(d.Glass)},
		{Label: "Resin in the laminate", Value: grams(d.Resin)},
	}
	if d.Sagitta > 0 {
		v.Numbers = append(v.Numbers, field{Label: "Rise of the curve over the feather edge", Value: u.length(d.Sagitta)})
	}
	if d.Filler > 0 {
		v.Numbers = append(v.Numbers, field{Label: "Filler, where the plies end short", Value: u.thin(d.Filler)})
	}
	for _, x := range d.Options {
		v.Options = append(v.Options, optionOf(u, o, x))
	}
	for _, p := range d.Proposals {
		v.Proposals = append(v.Proposals, proposalRow{
			p.Name, strings.ToUpper(p.Code), u.thin(p.Thickness), trimmed(p.ThicknessRatio, 2) + " ×", trimmed(p.StiffnessRatio, 2) + " ×", p.Chosen,
		})
	}
	for _, p := range d.Plies {
		v.Plies = append(v.Plies, plyOf(u, p))
	}
	v.Total = plyRow{Area: u.area(d.Cloth), Glass: grams(d.Glass), Resin: grams(d.Resin)}
	for _, c := range d.Clocks {
		v.Clocks = append(v.Clocks, clockRow{c.Hour, u.length(c.ToCut), u.length(c.ToEdge), u.length(c.Taper), leftOf(u, c.Left), c.What})
	}
	if b := d.Backing; b != nil {
		v.Backing = b.How
	}
	if c := d.Core; c != nil {
		v.Core = c.Name + ", " + u.length(c.Thickness) + " thick, " + u.area(c.Area) + ", bedded in " + grams(c.Paste) + " of paste (both faces)."
	}
	return v
}

func optionOf(u units, o otherwise, x design.Option) optionRow {
	row := optionRow{
		Ratio: ratioText(x.Ratio), Link: o.at(x.Ratio), Edge: u.size(x.Width, x.Height), Ground: u.area(x.Ground),
		Dust: ml(x.Dust), Bond: trimmed(x.BondPerEdge.MM(), 0) + " mm²/mm", Cloth: u.area(x.Cloth), Left: leftOf(u, x.Left),
		Fits: "yes", Chosen: x.Chosen,
	}
	if !x.Fits {
		row.Fits = "no: past the " + x.Nearest
	}
	return row
}

func plyOf(u units, p design.Ply) plyRow {
	return plyRow{
		Label: p.Label, Class: strings.ToUpper(p.Class), Name: p.Name, Size: u.size(p.Width, p.Height), Area: u.area(p.Area),
		Angle: trimmed(p.Angle.Degrees(), 0) + "°", Step: u.length(p.Overlap), Glass: grams(p.Glass), Resin: grams(p.Resin),
		Session: trimmed(float64(p.Session), 0), Replaces: p.Replaces, Face: p.Face,
	}
}

// leftOf says a clearance in words: what is past is not a small number.
func leftOf(u units, l si.Length) string {
	if l < 0 {
		return u.length(-l) + " past it"
	}
	return u.length(l) + " left"
}

func facesOf(sides string) string {
	if sides == "both" {
		return "outside and the inside"
	}
	return sides
}
