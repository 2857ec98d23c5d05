package sheet

import "strings"

// column is one column of a table. Its width is its share of the room.
type column struct {
	name  string
	share float64
	right bool // numbers: set to the right
	bold  bool
}

// empty marks a cell that is to be filled in by hand: it is drawn as a box.
const empty = "\x00"

// table is a grid of rows under heads that come again on every page.
type table struct {
	cols  []column
	pt    float64
	frame float64 // width of the outer lines, narrow if zero
	heads bool
}

const (
	padX    = 1.2
	padY    = 1.1
	boxHigh = 8.0 // a box one can write in with a pencil
)

// edges returns where the columns begin, and where the last one ends. A column
// gets its share of the page, but at least what its longest word needs: what
// that takes is taken from the columns that have room to spare.
func (p *paper) edges(t table, rows [][]string) []float64 {
	n := len(t.cols)
	total := 0.0
	for _, c := range t.cols {
		total += c.share
	}
	wide, least := make([]float64, n), make([]float64, n)
	lack, spare := 0.0, 0.0
	for i, c := range t.cols {
		wide[i] = c.share / total * p.width()
		if t.heads {
			least[i] = longest(c.name, t.pt, true)
		}
		for _, r := range rows {
			least[i] = max(least[i], longest(r[i], t.pt, c.bold))
		}
		least[i] += 2*padX + 0.1
		lack += max(0, least[i]-wide[i])
		spare += max(0, wide[i]-least[i])
	}
	x := make([]float64, n+1)
	x[0] = margin
	for i := range t.cols {
		switch {
		case lack > spare: // it cannot be had: words are broken
		case wide[i] < least[i]:
			wide[i] = least[i]
		case spare > 0:
			wide[i] -= (wide[i] - least[i]) * lack / spare
		}
		x[i+1] = x[i] + wide[i]
	}
	return x
}

// longest returns the width of the longest part of a text that must not be
// broken.
func longest(s string, pt float64, bold bool) float64 {
	most := 0.0
	for _, word := range strings.FieldsFunc(bound(s), func(r rune) bool { return r == ' ' || r == '\n' }) {
		most = max(most, textWidth(word, pt, bold))
	}
	return most
}

func (t table) settled() table {
	if t.pt == 0 {
		t.pt = small
	}
	if t.frame == 0 {
		t.frame = narrow
	}
	return t
}

func (t table) names() []string {
	out := make([]string, len(t.cols))
	for i, c := range t.cols {
		out[i] = c.name
	}
	return out
}

// high returns the height of a whole table.
func (p *paper) high(t table, rows [][]string) float64 {
	t = t.settled()
	x := p.edges(t, rows)
	sum := 2.0
	if t.heads {
		sum += p.rowHigh(t, x, t.names(), true)
	}
	for _, r := range rows {
		sum += p.rowHigh(t, x, r, false)
	}
	return sum
}

// section prints a heading, a note and a table, on one page where a page of
// its own would hold little else.
func (p *paper) section(name, note string, t table, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	keep := p.high(t, rows)
	if keep > keepWhole || p.y+keep > p.bottom && p.bottom-p.y > splitRoom {
		keep = 25
	}
	if note != "" {
		keep += float64(len(wrap(note, p.width(), small, false)))*lead(small) + 1
	}
	p.heading(name, keep)
	if note != "" {
		p.text(small, note)
		p.y++
	}
	p.table(t, rows)
}

// keepWhole is the height of a table, in mm, that is not split.
const keepWhole = 120.0

// splitRoom is the room on a page, in mm, that is not left empty for the sake of
// keeping a table whole.
const splitRoom = 90.0

// table prints a table. Rows are kept whole.
func (p *paper) table(t table, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	t = t.settled()
	x := p.edges(t, rows)
	head := func() {
		if !t.heads {
			p.line(x[0], p.y, x[len(x)-1], p.y, t.frame)
			return
		}
		p.row(t, x, t.names(), true)
	}
	p.need(p.rowHigh(t, x, rows[0], false) + 10)
	head()
	for _, cells := range rows {
		if high := p.rowHigh(t, x, cells, false); p.y+high > p.bottom {
			p.page()
			head()
		}
		p.row(t, x, cells, false)
	}
	p.y += 2
}

func (p *paper) rowHigh(t table, x []float64, cells []string, head bool) float64 {
	high := 0.0
	for i, s := range cells {
		if s == empty {
			high = max(high, boxHigh)
			continue
		}
		n := len(wrap(s, x[i+1]-x[i]-2*padX, t.pt, head || t.cols[i].bold))
		high = max(high, float64(n)*lead(t.pt)+2*padY)
	}
	return high
}

func (p *paper) row(t table, x []float64, cells []string, head bool) {
	high := p.rowHigh(t, x, cells, head)
	if head {
		p.line(x[0], p.y, x[len(x)-1], p.y, wide)
	}
	for i, s := range cells {
		width := narrow
		if i == 0 {
			width = t.frame
		}
		p.line(x[i], p.y, x[i], p.y+high, width)
		if s == empty {
			continue
		}
		bold := head || t.cols[i].bold
		for j, line := range wrap(s, x[i+1]-x[i]-2*padX, t.pt, bold) {
			at := x[i] + padX
			if t.cols[i].right && !head {
				at = x[i+1] - padX - textWidth(line, t.pt, bold)
			}
			p.at(at, p.y+padY+0.4+float64(j)*lead(t.pt), t.pt, bold, line)
		}
	}
	last := x[len(x)-1]
	p.line(last, p.y, last, p.y+high, t.frame)
	p.y += high
	width := t.frame
	if head {
		width = wide
	}
	p.line(x[0], p.y, last, p.y, width)
}
