package figure

import (
	"bytes"
	"errors"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml"

	"scarfwright/physics/laminate"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
)

// panelFile is a panel with patches, as its file has it. Lengths are text with a unit.
type panelFile struct {
	Long     string             `yaml:"long"`
	Wide     string             `yaml:"wide"`
	Pressure string             `yaml:"pressure"`
	Edges    string             `yaml:"edges"`
	Theory   string             `yaml:"theory"`
	Plies    map[string]plyFile `yaml:"plies"`
	Base     []string           `yaml:"base"`
	Zones    []zoneFile         `yaml:"zones"`
}

type plyFile struct {
	E1        string  `yaml:"E1"`
	E2        string  `yaml:"E2"`
	Nu12      float64 `yaml:"nu12"`
	G12       string  `yaml:"G12"`
	G13       string  `yaml:"G13"`
	Thickness string  `yaml:"thickness"`
}

type zoneFile struct {
	Name    string     `yaml:"name"`
	Ellipse []string   `yaml:"ellipse"`
	Points  [][]string `yaml:"points"`
	Stack   []string   `yaml:"stack"`
	Offset  string     `yaml:"offset"`
}

func patchedPanel() Calculation {
	return Calculation{
		Name: "patched-panel", Title: "a laminated panel with patches in it, from a file", Inputs: []Input{
			{Key: "panel", Doc: "the file's text; on the command line give the file's name alone. docs/panel-file.md describes it", Unit: PanelExample, File: true},
		}, work: func(r *reader) Answer {
			text := r.text("panel")
			if !r.ok() {
				return Answer{}
			}
			p, large, names, err := readPanel(text)
			if err != nil {
				r.fail("panel", err.Error(), "")
				return Answer{}
			}
			return r.solved(p, large, names)
		},
	}
}

// PanelExample is a panel file: mat and roving under an overlay on the inner face.
//
//nolint:dupword // two plies of roving lie on each other
const PanelExample = `long: 900 mm
wide: 450 mm
pressure: 20 kPa
edges: clamped
theory: large
plies:
  mat: {E1: 7.2 GPa, E2: 7.2 GPa, nu12: 0.33, G12: 2.707 GPa, G13: 2.2 GPa, thickness: 1.10 mm}
  roving: {E1: 14.5 GPa, E2: 14.0 GPa, nu12: 0.15, G12: 3.0 GPa, G13: 2.2 GPa, thickness: 0.95 mm}
base: [mat, roving, mat, roving, mat, roving]
zones:
  - name: overlay
    ellipse: [300 mm, 200 mm]
    stack: [mat, roving, mat, roving, mat, roving, roving, mat, roving, mat]
`

// readPanel reads a panel file. Errors name the key, and what would do.
func readPanel(text string) (p panel.Panel, large bool, names []string, err error) {
	var f panelFile
	if err := yaml.NewDecoder(bytes.NewReader([]byte(text)), yaml.Strict()).Decode(&f); err != nil {
		return p, false, nil, fmt.Errorf("not a panel file: %w", err)
	}
	var errs []error
	length := func(key, text string) si.Length {
		l, err := si.Parse[si.Length](text)
		if err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", key, err))
		}
		return l
	}
	p.Length, p.Width = length("long", f.Long), length("wide", f.Wide)
	if p.Pressure, err = si.Parse[si.Pressure](f.Pressure); err != nil {
		errs = append(errs, fmt.Errorf("pressure: %w", err))
	}
	edge := panel.Edge{Support: panel.Clamped}
	switch f.Edges {
	case "", "clamped":
	case "simple":
		edge.Support = panel.SimplySupported
	default:
		errs = append(errs, fmt.Errorf("edges: %q is neither clamped nor simple", f.Edges))
	}
	p.Edges = panel.AllEdges(edge)
	switch f.Theory {
	case "", "large":
		large = true
	case "linear":
	default:
		errs = append(errs, fmt.Errorf("theory: %q is neither linear nor large", f.Theory))
	}
	plies := map[string]panel.Ply{}
	for name, x := range f.Plies {
		ply, err := x.ply()
		if err != nil {
			errs = append(errs, fmt.Errorf("plies, %s: %w", name, err))
		}
		plies[name] = ply
	}
	stack := func(where string, list []string) []panel.Ply {
		var out []panel.Ply
		for _, word := range list {
			name, angle, turned := strings.Cut(word, "@")
			ply, ok := plies[strings.TrimSpace(name)]
			if !ok {
				errs = append(errs, fmt.Errorf("%s: no ply %q among plies", where, name))
			}
			if turned {
				a, err := si.Parse[si.Angle](strings.TrimSpace(angle) + " deg")
				if err != nil {
					errs = append(errs, fmt.Errorf("%s: %q: %w", where, word, err))
				}
				ply.Angle = a
			}
			out = append(out, ply)
		}
		if len(out) == 0 {
			errs = append(errs, fmt.Errorf("%s: a stack has at least one ply", where))
		}
		return out
	}
	p.Base = panel.Centred(stack("base", f.Base)...)
	names = []string{"base"}
	for i, z := range f.Zones {
		where := fmt.Sprintf("zones[%d]", i+1)
		outline, err := z.outline(where)
		if err != nil {
			errs = append(errs, err)
		}
		bottom := p.Base.Bottom
		if z.Offset != "" {
			bottom += length(where+".offset", z.Offset)
		}
		name := z.Name
		if name == "" {
			name = fmt.Sprintf("zone %d", i+1)
		}
		p.Zones = append(p.Zones, panel.Zone{Name: name, Outline: outline, Layup: panel.Layup{Plies: stack(where+".stack", z.Stack), Bottom: bottom}})
		names = append(names, name)
	}
	if len(f.Zones) > 40 {
		errs = append(errs, fmt.Errorf("%d zones are more than 40", len(f.Zones)))
	}
	if err := errors.Join(errs...); err != nil {
		return p, false, nil, errors.New(strings.ReplaceAll(err.Error(), "\n", "; "))
	}
	return p, large, names, p.Check()
}

func (x plyFile) ply() (panel.Ply, error) {
	var p panel.Ply
	var errs []error
	pressure := func(key, text string, to *si.Pressure) {
		v, err := si.Parse[si.Pressure](text)
		if err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", key, err))
		}
		*to = v
	}
	l := laminate.Lamina{Nu12: x.Nu12}
	pressure("E1", x.E1, &l.E1)
	pressure("E2", x.E2, &l.E2)
	pressure("G12", x.G12, &l.G12)
	p.G13 = l.G12
	if x.G13 != "" {
		pressure("G13", x.G13, &p.G13)
	}
	p.G23 = p.G13
	t, err := si.Parse[si.Length](x.Thickness)
	if err != nil {
		errs = append(errs, fmt.Errorf("thickness: %w", err))
	}
	p.Lamina, p.Thickness = l, t
	if len(errs) == 0 {
		errs = append(errs, l.Check())
	}
	return p, errors.Join(errs...)
}

func (z zoneFile) outline(where string) (panel.Outline, error) {
	point := func(key string, list []string) (panel.Point, error) {
		if len(list) != 2 {
			return panel.Point{}, fmt.Errorf("%s.%s: two lengths are wanted, along and across", where, key)
		}
		x, errX := si.Parse[si.Length](list[0])
		y, errY := si.Parse[si.Length](list[1])
		if err := errors.Join(errX, errY); err != nil {
			return panel.Point{}, fmt.Errorf("%s.%s: %w", where, key, err)
		}
		return panel.Point{X: x, Y: y}, nil
	}
	switch {
	case len(z.Ellipse) > 0 && len(z.Points) == 0:
		w, err := point("ellipse", z.Ellipse)
		if err != nil {
			return panel.Outline{}, err
		}
		return panel.Ellipse(panel.Point{}, w.X/2, w.Y/2, 0), nil
	case len(z.Points) >= 3 && len(z.Ellipse) == 0:
		var points []panel.Point
		for _, list := range z.Points {
			p, err := point("points", list)
			if err != nil {
				return panel.Outline{}, err
			}
			points = append(points, p)
		}
		return panel.Polygon(points), nil
	}
	return panel.Outline{}, fmt.Errorf("%s: give its ellipse as two widths, or three points or more", where)
}
