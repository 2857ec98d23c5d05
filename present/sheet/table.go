package sheet

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

// rows prints the table. Rows are kept whole.
func (p *paper) table(t table, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	if t.pt == 0 {
		t.pt = small
	}
	if t.frame == 0 {
		t.frame = narrow
	}
	total := 0.0
	for _, c := range t.cols {
		total += c.share
	}
	x := make([]float64, len(t.cols)+1)
	x[0] = margin
	for i, c := range t.cols {
		x[i+1] = x[i] + c.share/total*p.width()
	}
	head := func() {
		if !t.heads {
			p.line(x[0], p.y, x[len(x)-1], p.y, t.frame)
			return
		}
		cells := make([]string, len(t.cols))
		for i, c := range t.cols {
			cells[i] = c.name
		}
		p.row(t, x, cells, true)
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
