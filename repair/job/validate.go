package job

import (
	"fmt"
	"reflect"

	"scarfwright/physics/si"
)

// Validate returns what is wrong with a description by itself, whether a file, a
// page or a program made it: names required, words, limits, and fields that
// contradict each other. It knows no catalogue: whether "csm450" exists, and
// whether the work can be done, is for the planner. Problems carry paths, no lines.
func Validate(d Description) []Problem {
	c := checker{}
	c.group(reflect.ValueOf(d), layout, spot{})
	if d.Format > Format {
		c.add("format", CodeFormat, "This description has format %d; this program knows up to %d.", d.Format, Format)
	}
	c.boat(d)
	c.panel(d.Panel)
	c.laminate(d.Laminate)
	c.damage(d)
	c.site(d.Site)
	c.shelf(d.Shelf)
	return c.problems
}

type checker struct{ problems []Problem }

// add reports a broken rule, once for each path.
func (c *checker) add(path, code, format string, args ...any) {
	for _, p := range c.problems {
		if p.Path == path {
			return
		}
	}
	c.problems = append(c.problems, Problem{Path: path, Code: code, Message: fmt.Sprintf(format, args...)})
}

// group checks the tags of every field below a struct.
func (c *checker) group(v reflect.Value, s *shape, at spot) {
	for i := range s.fields {
		f := &s.fields[i]
		x, here := v.Field(f.index), at.field(f.key, nil)
		switch {
		case f.required && absent(x, f.shape):
			c.add(here.path, CodeMissing, "'%s' is required: %s.", here.path, f.doc)
		case x.IsZero() && !f.required:
			// left out
		default:
			c.value(x, f.shape, here)
		}
	}
}

func (c *checker) value(v reflect.Value, s *shape, at spot) {
	if s.pointer {
		v = v.Elem()
	}
	switch s.kind {
	case isGroup:
		c.group(v, s, at)
	case isList:
		for i := range v.Len() {
			c.value(v.Index(i), s.elem, at.item(i))
		}
	case isTable:
		for it := v.MapRange(); it.Next(); {
			key := it.Key().String()
			if why := badTableName(key); why != "" {
				c.add(at.path, CodeText, "%s: %s", at.path, why)
				continue
			}
			c.value(it.Value(), s.elem, at.field(key, nil))
		}
	default:
		if absent(v, s) {
			c.add(at.path, CodeMissing, "%s must not be empty.", at.name)
			return
		}
		if p := s.check(v, printed(v, s), at.name); p != nil {
			p.Path, p.Text = at.path, printed(v, s)
			c.problems = append(c.problems, *p)
		}
	}
}

// absent reports a required value that was not set. A zero is a value where it
// can be meant: a price of 0, the point 0, 0.
func absent(v reflect.Value, s *shape) bool {
	if s.kind == isText || s.kind == isList || s.typ == reflect.TypeFor[si.Temp]() || s.typ == reflect.TypeFor[PlyRef]() {
		return v.IsZero()
	}
	return s.pointer && v.IsZero()
}

func (c *checker) boat(d Description) {
	b := d.Boat
	if b.Waterline > b.Length && b.Length > 0 {
		c.add("boat.waterline", CodeRule, "The waterline (%s) is longer than the hull (%s).", mm(b.Waterline), mm(b.Length))
	}
}

func (c *checker) panel(p Panel) {
	if p.Short > p.Long {
		c.add("panel.short", CodeRule, "The short span (%s) is longer than the long span (%s). Swap them.", mm(p.Short), mm(p.Long))
	}
	switch {
	case p.Sagitta > 0 && p.Chord == 0:
		c.add("panel.sagitta", CodeRule, "A gap under the batten needs the batten's length. Give 'chord' too.")
	case p.Sagitta > p.Chord/2:
		c.add("panel.sagitta", CodeRule, "The gap under the batten (%s) is more than half the batten (%s). Check both.", mm(p.Sagitta), mm(p.Chord))
	}
	for i, f := range p.Features {
		if f.From == f.To {
			c.add(fmt.Sprintf("panel.features[%d].to", i), CodeRule, "This line begins and ends at the same point.")
		}
	}
}

func (c *checker) laminate(l Laminate) {
	given := len(l.Plies) > 0
	switch {
	case given && l.Thickness.Given():
		c.add("laminate.thickness", CodeRule, "Give either 'plies' or 'thickness', not both: the plies say the thickness.")
	case !given && !l.Thickness.Given():
		c.add("laminate.plies", CodeRule, "The laminate needs 'plies', or 'thickness' where the plies are not known.")
	}
	if len(l.Inner) > 0 && l.Core == nil {
		c.add("laminate.inner", CodeRule, "An inner skin stands behind a core. Give 'core', or list all plies under 'plies'.")
	}
}

func (c *checker) damage(d Description) {
	x := d.Damage
	outline := x.Seen != nil || x.Dead != nil
	if x.Depth == "partial" && x.Deep == 0 {
		c.add("damage.deep", CodeRule, "A partial depth needs 'deep', the depth at the deepest.")
	}
	if x.Depth == "gelcoat" {
		switch x.Kind {
		case "hole", "delamination", "wet core", "fire":
			c.add("damage.depth", CodeRule, "The depth is 'gelcoat', but a %s goes deeper: say partial, through, or skin and core.", x.Kind)
		case "scratch", "crack", "gouge":
			if len(x.Marks) == 0 {
				c.add("damage.marks", CodeRule, "Damage in the gelcoat needs 'marks': each scratch or ding with its length, width and depth as opened up.")
			}
		}
	}
	if d.Laminate.Core == nil {
		switch {
		case x.Depth == "skin and core":
			c.add("damage.depth", CodeRule, "The depth is 'skin and core', but the laminate has no core.")
		case x.Kind == "wet core":
			c.add("damage.kind", CodeRule, "The damage is a wet core, but the laminate has no core.")
		}
	}
	switch {
	case x.Kind == "scratch" && !outline && len(x.Marks) == 0:
		c.add("damage.marks", CodeRule, "A scratch needs 'marks' with its length, width and depth, or an outline.")
	case x.Kind == "blisters" && !outline && len(x.Counts) == 0:
		c.add("damage.blister_counts", CodeRule, "Blisters need 'blister_counts', or an outline.")
	case x.Kind != "scratch" && x.Kind != "blisters" && x.Kind != "" && !outline:
		c.add("damage.dead", CodeRule, "The damage needs an outline: 'dead' by tap test, or at least 'seen'.")
	}
	if len(x.Counts) > 0 {
		if x.Frame == 0 {
			c.add("damage.blister_frame", CodeRule, "Blister counts need 'blister_frame', the area of one frame.")
		}
		if x.Wetted == 0 {
			c.add("damage.wetted_area", CodeRule, "Blister counts need 'wetted_area', the area they stand for.")
		}
	}
	c.outline(x.Seen, "damage.seen")
	c.outline(x.Dead, "damage.dead")
	c.inside(d)
}

// inside reports an outline that leaves the panel without a word about what it
// crosses. Such damage is real, but then a stiffener is part of the job.
func (c *checker) inside(d Description) {
	o, path, margin := d.Damage.Dead, "damage.dead", d.Damage.Margin
	if o == nil {
		o, path, margin = d.Damage.Seen, "damage.seen", 0
	}
	if o == nil || len(d.Damage.Crosses) > 0 || d.Panel.Long == 0 || d.Panel.Short == 0 {
		return
	}
	x0, y0, x1, y1 := o.Extent()
	at, halfX, halfY := d.Damage.At, d.Panel.Long/2, d.Panel.Short/2
	const hair = si.Length(1e-9)
	for _, e := range []struct {
		edge string
		over si.Length
	}{
		{"forward", at.X + x1 + margin - halfX},
		{"after", -(at.X + x0 - margin) - halfX},
		{"upper", at.Y + y1 + margin - halfY},
		{"lower", -(at.Y + y0 - margin) - halfY},
	} {
		if e.over > hair {
			c.add(path, CodeRule, "The outline runs %s over the panel's %s edge. Name what it crosses under 'crosses', or correct the place, the size or the spans.",
				mm(e.over), e.edge)
		}
	}
}

func (c *checker) site(s Site) {
	for i, day := range s.Days {
		switch {
		case day.Min > day.Max:
			c.add(fmt.Sprintf("site.days[%d].min", i), CodeRule, "The night's minimum is above the day's maximum.")
		case day.Dew > day.Max:
			c.add(fmt.Sprintf("site.days[%d].dew", i), CodeRule, "The dew point is above the day's maximum; the air cannot hold that.")
		}
	}
}

func (c *checker) shelf(s Shelf) {
	for i, x := range s.Stock {
		if amounts(x.Mass, x.Volume, x.Area) != 1 {
			c.add(fmt.Sprintf("shelf.stock[%d]", i), CodeRule, "Stock needs one of 'mass', 'volume' and 'area'.")
		}
	}
	for i, x := range s.Packs {
		if amounts(x.Mass, x.Volume, x.Area) != 1 {
			c.add(fmt.Sprintf("shelf.packs[%d]", i), CodeRule, "A pack needs one of 'mass', 'volume' and 'area'.")
		}
	}
	seen := map[string]bool{}
	for i, x := range s.Sheets {
		path := fmt.Sprintf("shelf.sheets[%d]", i)
		if seen[x.Name] {
			c.add(path+".name", CodeRule, "Two sheets have the name '%s'.", shorten(x.Name))
		}
		c.sheet(x, path)
		seen[x.Name] = true
	}
}

func amounts(m si.Mass, v si.Volume, a si.Area) int {
	n := 0
	for _, given := range [...]bool{m > 0, v > 0, a > 0} {
		if given {
			n++
		}
	}
	return n
}

// mm prints a length for a message, to the tenth of a millimetre.
func mm(x si.Length) string { return fmt.Sprintf("%.4g mm", x.MM()) }
