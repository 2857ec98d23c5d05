package ways

import (
	"errors"
	"fmt"
	"math"

	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/design"
	"scarfwright/repair/job"
)

// Laps of what is laid on the face without grinding (common practice, no source).
const (
	plugLap     = 50.0 // mm beyond the hole
	overlayRise = 12.0 // an overlay's lap, in thicknesses of its own
	plugPlies   = 2
)

// plug is the quick way: the hole or dish filled with filler, two plies of cloth
// over it, nothing tapered.
func (c *comparison) plug(face string) (Way, error) {
	var list []job.PlyRef
	for _, p := range c.base.Proposals[0].List() {
		if len(list) < plugPlies {
			list = append(list, p)
		}
	}
	w := Way{
		Key: slug("plug", face), Kind: Plug, Sides: face, List: fmt.Sprintf("the outermost %d plies", len(list)),
		Name:     "filler plug, cloth over it " + face,
		Unsuited: "a butt joint of filler is no structural joint",
		Notes: []string{
			"Filler carries next to no tension, and its butt joint with the old laminate none that counts (class rules do not allow a butt joint in tension): it is reckoned as cracked. All that passes the hole passes through the cloth, bent out of its plane by its lever, and water stands behind the first crack.",
		},
	}
	return w, c.laid(&w, list, plugLap)
}

// overlay is the whole thickness laid on the face, the hole only closed behind it.
func (c *comparison) overlay(face string) (Way, error) {
	p := c.base.Proposals[0]
	t := p.Thickness.MM()
	lap := max(plugLap, overlayRise*t)
	w := Way{
		Key: slug("overlay", face), Kind: Overlay, Sides: face, List: p.Name,
		Name:  fmt.Sprintf("overlay %s, %s lap, no taper", face, si.Show(si.MM(lap), c.d.Choices.System(), 2)),
		Notes: []string{"All the plies lie on the face and stand proud by their thickness; over the hole they bear the load alone, and its lever bends them."},
	}
	return w, c.laid(&w, p.List(), lap)
}

// laid fills a way whose plies lie on a face, lap mm beyond the hole.
func (c *comparison) laid(w *Way, list []job.PlyRef, lap float64) error {
	layers, err := design.Layers(list, c.resin, c.cat)
	if err != nil {
		return err
	}
	patch, err := pliesOf(c.cat, layers, c.resin.Cured.Typical)
	if err != nil {
		return err
	}
	parent, skin, err := c.parent(c.base.Original.Layers, w.Sides)
	if err != nil {
		return err
	}
	edge, err := c.base.CutOut.Offset(lap)
	if err != nil {
		return err
	}
	box := edge.Bounds()
	area := si.MM2(edge.Area())
	cut := si.MM2(c.base.CutOut.Area())
	w.Size = [2]si.Length{si.MM(box.Width()), si.MM(box.Height())}
	w.Taper, w.Thickness = si.MM(lap), depth(patch)
	w.Ground, w.Bond = area-cut, area-cut
	w.Fits, w.Left = true, "lies on the face"
	if p := c.d.Panel; max(box.Max.X, -box.Min.X) >= p.Long.MM()/2 || max(box.Max.Y, -box.Min.Y) >= p.Short.MM()/2 {
		w.Fits, w.Left = false, "its lap passes the panel's edge"
	}
	w.Plies = classes(list)
	w.Outlines = []Outline{{"hole", c.base.CutOut}, {"edge of the overlay", edge}}
	for _, l := range layers {
		w.Cloth += area
		k, err := c.cat.Cloth(l.Class)
		if err != nil {
			return err
		}
		w.Resin += k.Resin().Over(area)
		w.Added += (l.Areal + k.Resin()).Over(area)
	}
	w.Sessions = int(max(1, math.Ceil(float64(wet(c.cat, layers)/c.resin.WetLimit))))
	w.parts = &parts{parent: parent, skin: skin, patch: patch, sides: w.Sides, over: true, hole: true, depth: c.base.Depth}
	hole := cut.Deep(c.base.Depth).ML()
	gone := hole * meanDensity(w.parts.parent).GramsPerML()
	fill := 0.0
	if w.Kind == Plug {
		fill = hole * void(1).density.GramsPerML()
	}
	w.Added += si.Grams(fill - gone)
	_, old := stiffness(parent)
	_, over := stiffness(patch)
	w.Bending = over / old
	if len(w.parts.patch) == 0 {
		return errors.New("no plies to lay over the hole")
	}
	return c.effort(w, len(list), w.Cloth.M2())
}

// wet is the wet weight of layers, by area.
func wet(cat catalog.Catalogue, ls []design.Layer) (sum si.AreaDensity) {
	for _, l := range ls {
		if k, err := cat.Cloth(l.Class); err == nil {
			sum += l.Areal + k.Resin()
		}
	}
	return sum
}

func classes(list []job.PlyRef) string {
	out := make([]string, len(list))
	for i, p := range list {
		out[i] = p.Class
	}
	return design.Code(out)
}
