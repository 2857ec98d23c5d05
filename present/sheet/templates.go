package sheet

import (
	"errors"
	"fmt"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"

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
	// The sheets are counted first: each says how many there are in all.
	all := 0
	counts := make([]int, len(pieces))
	scenes := make([]*drawing.Scene, len(pieces))
	for i, piece := range pieces {
		t, err := piece.Scene().Tile(tileOptions(r, o, piece))
		if err != nil {
			return fmt.Errorf("templates: %s: %w", piece.Label, err)
		}
		counts[i] = len(t.Tiles)
		all += counts[i]
		scenes[i] = piece.SceneWithWords(wordsPlace(t, piece.Scene()))
	}
	// The first pages are printed once to be counted, then with the numbers of the
	// pages behind them.
	head := func(first int) *paper {
		p := newPaper(r, o, "TEMPLATES")
		p.stops()
		p.dish()
		p.index(pieces, counts, first)
		return p
	}
	before := head(2).pdf.PageCount()
	p := head(before + 1)
	all += before
	p.stampAll(all)
	for i, piece := range pieces {
		opt := tileOptions(r, o, piece)
		opt.Before, opt.All = before, all
		before += counts[i]
		t, err := scenes[i].Tile(opt)
		if err != nil {
			return fmt.Errorf("templates: %s: %w", piece.Label, err)
		}
		for _, tile := range t.Tiles {
			p.pdf.AddPageFormat("P", fpdf.SizeType{Wd: tile.Scene.Width, Ht: tile.Scene.Height})
			drawing.PlaceInPDF(p.pdf, tile.Scene, 0, 0, 1)
		}
	}
	return p.write(w)
}

// wordsPlace returns where a piece's words fit on one sheet: the middle of what
// the sheet with most of the drawing shows of it, and the room there.
func wordsPlace(t *drawing.Tiling, s *drawing.Scene) (drawing.Point, float64) {
	var best drawing.Box
	for _, tile := range t.Tiles {
		b := tile.Owned
		b = drawing.Box{X0: max(b.X0, 0), Y0: max(b.Y0, 0), X1: min(b.X1, s.Width), Y1: min(b.Y1, s.Height)}
		// A hair more is no reason to leave the upper left, where no mark is.
		if b.Width()*b.Height() > best.Width()*best.Height()*1.05 {
			best = b
		}
	}
	// Inwards, where a round piece is widest and a taper has no rings, but not
	// over the joint.
	const high = 38.0 // half of what the words take
	y := 0.6*(best.Y0+best.Y1)/2 + 0.4*s.Height/2
	if best.Height() > 2*high {
		y = min(max(y, best.Y0+high), best.Y1-high)
	} else {
		y = (best.Y0 + best.Y1) / 2
	}
	const names = 21.0 // the clock points' names inside the outline, and the white edge
	return drawing.P((best.X0+best.X1)/2, y), min(0.8*best.Width(), max(best.Width()/2, best.Width()-2*names))
}

// index is the first pages: how to print, and what is on which page.
func (p *paper) index(pieces []view.Piece, counts []int, page int) {
	p.heading("Before you cut", 20)
	p.bullets(body, []string{
		"Print at 100 % (actual size), never fitted to the page. Measure both 100 mm bars on every sheet: between 99.5 and 100.5 mm, or do not cut.",
		"Sheets of one piece carry row letters and column numbers, A1 at the top left. Lay each on the dashed line of its neighbour so that the ring marks lie on each other.",
		"Every piece carries the cross of the centre of the " + view.Opening(p.r) + " and ticks at the eight clock points (12 up, 3 to the right, as you stand before the ground face): mark the cross and the ticks on the hull, and each piece finds its place.",
		"Each piece is drawn as seen from the face it is laid from, not mirrored, printed face towards you.",
	})
	rows := make([][]string, len(pieces))
	for i, piece := range pieces {
		pages := fmt.Sprintf("%d to %d", page, page+counts[i]-1)
		if counts[i] == 1 {
			pages = fmt.Sprint(page)
		}
		page += counts[i]
		rows[i] = []string{"□", piece.Title, piece.View, fmt.Sprint(counts[i]), pages}
	}
	p.section("Pieces", "", table{cols: []column{{"cut", 0.06, false, false}, {"piece", 0.33, false, true}, {"how it is drawn", 0.39, false, false}, {"sheets", 0.09, true, false}, {"pages", 0.13, true, false}}, heads: true}, rows)
}

func tileOptions(r repair.Result, o Options, piece view.Piece) drawing.TileOptions {
	h := r.Job.Job
	var words []string
	if r.Stopped() {
		words = append(words, stopHead)
	}
	if w := view.DishWords(r); w != "" {
		words = append(words, w)
	}
	return drawing.TileOptions{
		Paper: o.sheet(), Job: h.Number, Revision: h.Revision, Hash: short(r.Hash),
		Date: joined(", ", o.Now.UTC().Format(time.DateOnly), o.Program), View: piece.View + ".",
		Held:     words,
		Cautions: []string{r.Caution, firstCaution(caution.Grinding)},
	}
}

func firstCaution(w caution.Work) string {
	c := caution.For(w)[0]
	return string(c.Signal) + ": " + c.Text
}
