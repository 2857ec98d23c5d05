package sheet

import (
	"errors"
	"fmt"
	"io"
	"time"

	"scarfwright/present/drawing"
	"scarfwright/present/view"
	"scarfwright/repair"
	"scarfwright/repair/caution"
)

// ErrNoTemplates is returned by Templates for a job that renews no laminate.
var ErrNoTemplates = errors.New("templates: this job has nothing to cut")

// Templates writes every piece at 1:1 on sheets of paper: the cut-out, the
// taper, each ply, backing and core. A job that is not released gets none.
func Templates(w io.Writer, r repair.Result, o Options) error {
	if !r.Released() {
		return ErrNotReleased
	}
	r, o = settled(r, o)
	pieces := view.Templates(r)
	if len(pieces) == 0 {
		return ErrNoTemplates
	}
	var scenes []*drawing.Scene
	for _, piece := range pieces {
		t, err := piece.Scene().Tile(tileOptions(r, o, piece))
		if err != nil {
			return fmt.Errorf("templates: %s: %w", piece.Label, err)
		}
		for _, tile := range t.Tiles {
			scenes = append(scenes, tile.Scene)
		}
	}
	return drawing.WritePDF(w, drawing.Meta{Title: "Templates " + r.Job.Job.Number, Author: r.Job.Job.Yard, Created: o.Now}, scenes...)
}

func tileOptions(r repair.Result, o Options, piece view.Piece) drawing.TileOptions {
	h := r.Job.Job
	return drawing.TileOptions{
		Paper: o.sheet(), Job: h.Number, Revision: h.Revision, Hash: short(r.Hash),
		Date: joined(", ", o.Now.UTC().Format(time.DateOnly), o.Program), View: piece.View + ".",
		Cautions: []string{r.Caution, firstCaution(caution.Grinding)},
	}
}

func firstCaution(w caution.Work) string {
	c := caution.For(w)[0]
	return string(c.Signal) + ": " + c.Text
}
