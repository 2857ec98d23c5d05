package drawing

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
)

// Sheet is a size of printing paper, upright, in mm.
type Sheet struct {
	Name          string
	Width, Height float64
}

// The papers of an office printer.
var (
	A4     = Sheet{"A4", 210, 297}
	Letter = Sheet{"Letter", 215.9, 279.4}
)

// TileOptions say how a drawing at 1:1 is cut into sheets, and what each sheet
// says about the work.
type TileOptions struct {
	Paper   Sheet   // A4 if left empty
	Margin  float64 // white border that no printer needs to reach, mm; 0 means 10
	Overlap float64 // that neighbouring sheets share, mm; 0 means 10

	Job, Revision, Hash, Date string

	// Before is the number of pages that stand before this drawing's in a
	// file of several, All the number of pages of that file. Zero: the drawing
	// is alone.
	Before, All int

	// View says from which side the shape is seen ("seen from outside, not
	// mirrored"), because a template can be laid on its back.
	View string
	// Held is what forbids to begin, or to go on as usual: printed in bold on
	// every sheet, before all else.
	Held []string
	// Cautions are printed on every sheet.
	Cautions []string
}

// Tiling is a drawing cut into sheets.
type Tiling struct {
	Title   string
	Columns int // of the grid, with those sheets that hold nothing
	Rows    int
	Tiles   []Tile // those that hold something, row by row from the top left
}

// Tile is one sheet of a tiling.
type Tile struct {
	Name   string // row letter and column number: A1 is top left
	Window Box    // the part of the drawing on this sheet, drawing mm
	Owned  Box    // Window without the overlap that belongs to the sheet above or left
	Scene  *Scene // the sheet itself

	row, col int
}

const (
	sideStrip = 9.0  // left of the window, for the upright bar
	barStrip  = 8.5  // below the window, for the level bar
	mapWide   = 44.0 // page map
	mapGap    = 4.0
	footSize  = TextSmall
	footPitch = 4.2

	checkBar = 100.0
	markSize = 2.0 // radius of a register mark
	around   = 2.0 // kept free around the drawing
)

// Tile cuts a drawing at 1:1 into sheets of paper, upright or lying, whichever
// takes fewer; sheets that would hold nothing are left out. It fails if the
// drawing is empty or the paper too small for a 100 mm bar.
func (s *Scene) Tile(opt TileOptions) (*Tiling, error) {
	if opt.Paper.Width == 0 {
		opt.Paper = A4
	}
	if opt.Margin == 0 {
		opt.Margin = 10
	}
	if opt.Overlap == 0 {
		opt.Overlap = 10
	}
	if opt.Margin < 0 || opt.Overlap < 0 {
		return nil, fmt.Errorf("template: margin %g mm, overlap %g mm: neither may be negative", opt.Margin, opt.Overlap)
	}
	extent, ok := s.Extent()
	if !ok {
		return nil, fmt.Errorf("template %q: nothing is drawn on it", s.Title)
	}
	var best *grid
	for _, lying := range []bool{false, true} {
		g, err := newGrid(s, extent, opt, lying)
		if err != nil {
			if best == nil && lying {
				return nil, err
			}
			continue
		}
		if best == nil || len(g.cells) < len(best.cells) {
			best = g
		}
	}
	t := &Tiling{Title: s.Title, Columns: best.columns, Rows: best.rows}
	for i := range best.cells {
		c := &best.cells[i]
		t.Tiles = append(t.Tiles, Tile{Name: c.name(), Window: c.window, Owned: c.owned,
			Scene: best.sheet(c, i+1), row: c.row, col: c.col})
	}
	return t, nil
}

// WritePDF writes the sheets as a PDF, one page each, at 1:1.
func (t *Tiling) WritePDF(w io.Writer, m Meta) error {
	if m.Title == "" {
		m.Title = t.Title
	}
	scenes := make([]*Scene, len(t.Tiles))
	for i := range t.Tiles {
		scenes[i] = t.Tiles[i].Scene
	}
	return WritePDF(w, m, scenes...)
}

// grid is a drawing laid out on sheets of one orientation.
type grid struct {
	s             *Scene
	opt           TileOptions
	width, height float64 // of the paper
	window        Box     // on the paper
	columns, rows int
	cells         []gridCell
	at            map[[2]int]bool // row and column of the cells
	thumb         []item          // the whole drawing, small, for the page map
	mapBox        Box             // of the page map on the paper, less its grid's offset
	mapScale      float64
	all           Box // the grid, drawing mm
}

type gridCell struct {
	row, col      int
	window, owned Box
	items         []item
}

// name returns the letter of the row, AA after Z, and the number of the column.
func (c *gridCell) name() string { return tileName(c.row, c.col) }

func tileName(row, col int) string {
	letters := ""
	for r := row; r >= 0; r = r/26 - 1 {
		letters = string(rune('A'+r%26)) + letters
	}
	return fmt.Sprint(letters, col+1)
}

func newGrid(s *Scene, extent Box, opt TileOptions, lying bool) (*grid, error) {
	g := &grid{s: s, opt: opt, width: opt.Paper.Width, height: opt.Paper.Height, at: map[[2]int]bool{}}
	if lying {
		g.width, g.height = g.height, g.width
	}
	m := opt.Margin
	// Room for the most words a sheet may need: wide numbers, many sheets.
	foot, _ := g.footLines(888.8, 888, 888)
	footHigh := max(barStrip+float64(len(foot))*footPitch+TextLarge+3, 38)
	g.window = Box{m + sideStrip, m + footHigh, g.width - m, g.height - m}
	w, h := g.window.Width(), g.window.Height()
	if w < checkBar+5 || h < checkBar+5 {
		return nil, fmt.Errorf("template %q: paper %s with margin %g mm leaves %.0f x %.0f mm: the 100 mm bars do not fit", s.Title, opt.Paper.Name, m, w, h)
	}
	e := extent.Inset(-around)
	fit := func(size, window float64) (n int, total float64) {
		if size > window {
			n = int(math.Ceil((size-opt.Overlap)/(window-opt.Overlap) - 1e-9))
		}
		n = max(n, 1)
		return n, float64(n)*window - float64(n-1)*opt.Overlap
	}
	var tw, th float64
	g.columns, tw = fit(e.Width(), w)
	g.rows, th = fit(e.Height(), h)
	c := e.centre()
	g.all = Box{c.X - tw/2, c.Y - th/2, c.X + tw/2, c.Y + th/2}
	// All text and lines at once per row, then per column: a long outline is
	// not walked through for every sheet.
	source := append(append([]item{}, s.items...), s.over...)
	for row := range g.rows {
		y1 := g.all.Y1 - float64(row)*(h-opt.Overlap)
		band := Box{g.all.X0 - 1, y1 - h, g.all.X1 + 1, y1}
		keep := band
		if row > 0 {
			keep.Y1 -= opt.Overlap
		}
		strip := clipInto(source, band, Box{band.X0, band.Y0 + opt.Overlap, band.X1, band.Y1 - opt.Overlap}, keep)
		if len(strip) == 0 {
			continue
		}
		for col := range g.columns {
			x0 := g.all.X0 + float64(col)*(w-opt.Overlap)
			c := gridCell{row: row, col: col, window: Box{x0, y1 - h, x0 + w, y1}}
			c.owned = c.window
			if col > 0 {
				c.owned.X0 += opt.Overlap
			}
			if row > 0 {
				c.owned.Y1 -= opt.Overlap
			}
			c.items = clipInto(strip, c.window, c.window.Inset(opt.Overlap), Box{c.owned.X0, c.window.Y0, c.owned.X1, c.window.Y1})
			if !drawn(c.items, c.owned) {
				continue
			}
			g.at[[2]int{row, col}] = true
			g.cells = append(g.cells, c)
		}
	}
	g.makeThumb(footHigh)
	return g, nil
}

// drawn tells whether anything but blanks lies in the box.
func drawn(items []item, b Box) bool {
	for _, it := range clip(items, b) {
		if it.kind != fill || it.shade != Paper {
			return true
		}
	}
	return false
}

// warning is on every sheet, in the bold face.
const warning = "Print at 100\u00a0%, do not scale. Measure both bars before cutting: 99.5\u00a0to\u00a0100.5\u00a0mm, or do not cut."

// footLines returns the words at the foot of a sheet, the first bold of them
// bold, for a frame of the given diagonal.
func (g *grid) footLines(diagonal float64, page, pages int) (lines []string, bold int) {
	width := g.width - 2*g.opt.Margin - mapWide - mapGap
	for _, w := range append(slices.Clone(g.opt.Held), warning) {
		lines = append(lines, Wrap(w, width, footSize, true)...)
	}
	bold = len(lines)
	words := append([]string{g.opt.View}, g.opt.Cautions...)
	words = append(words, fmt.Sprintf("Scale 1:1. Frame corner to corner: %.1f mm.", diagonal))
	if pages > 1 {
		words = append(words, "Lay each cut edge on the dashed line of the next sheet; the ring marks must lie on each other.")
	}
	var facts []string
	for _, f := range []struct{ name, value string }{
		{"Job", g.opt.Job}, {"revision", g.opt.Revision}, {"input hash", g.opt.Hash}, {"", g.opt.Date},
	} {
		if f.value != "" {
			facts = append(facts, strings.TrimSpace(f.name+" "+f.value))
		}
	}
	facts = append(facts, fmt.Sprintf("page %d of %d", page, pages))
	words = append(words, strings.Join(facts, " · "))
	for _, w := range words {
		lines = append(lines, Wrap(w, width, footSize, false)...)
	}
	return lines, bold
}

// put returns a place of the drawing on the sheet of a cell.
func (g *grid) put(c *gridCell, p Point) Point {
	return Point{p.X - c.window.X0 + g.window.X0, p.Y - c.window.Y0 + g.window.Y0}
}
