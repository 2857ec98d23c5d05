package drawing

import "fmt"

// TitleBlock is what the title block says. The first eight are the mandatory
// fields of ISO 7200:2004; Sheets and those below Kind are ours.
type TitleBlock struct {
	Owner    string // legal owner of the drawing
	Number   string // identification number
	Title    string
	Date     string // of issue
	Sheet    int
	Sheets   int
	Creator  string
	Approval string // the person who approves, or what is missing for it
	Kind     string // document type

	Revision   string
	Scale      string // "1:10"; more than one if the drawing has more
	Projection string // "first angle" draws its symbol; "" for one view alone
	Hash       string // of the inputs the drawing was made from
	Note       string
}

const (
	frame      = 5.0  // from the paper's edge to the frame, mm
	rowHigh    = 9.5  // one row of the title block
	cellPad    = 1.0  // between a cell's side and its text
	symbolWide = 12.0 // of the note's width, for the projection symbol
)

type cell struct {
	part        float64 // of the row's width
	name, value string
	size        float64
	bold        bool
}

// TitleBlock draws a frame around the sheet and the title block along its
// bottom, and returns the box that is left for the drawing.
func (s *Scene) TitleBlock(t TitleBlock) Box {
	inner := Box{0, 0, s.Width, s.Height}.Inset(frame)
	p := s.On("TITLE")
	p.Rect(Wide, inner)

	sheet := fmt.Sprint(t.Sheet)
	if t.Sheets > 0 {
		sheet = fmt.Sprintf("%d of %d", t.Sheet, t.Sheets)
	}
	if t.Sheet == 0 {
		sheet = ""
	}
	last := []cell{
		{0.17, "Scale", t.Scale, TextNormal, false},
		{0.25, "Input hash", t.Hash, TextSmall, false},
		{0.58, "Note", t.Note, TextSmall, false},
	}
	rows := [][]cell{
		{{0.44, "Title", t.Title, TextNormal, true}, {0.24, "Document", t.Kind, TextNormal, false},
			{0.20, "Number", t.Number, TextNormal, false}, {0.12, "Sheet", sheet, TextNormal, false}},
		{{0.27, "Owner", t.Owner, TextNormal, false}, {0.21, "Made by", t.Creator, TextNormal, false},
			{0.22, "Approval", t.Approval, TextNormal, false}, {0.18, "Date", t.Date, TextNormal, false},
			{0.12, "Revision", t.Revision, TextNormal, false}},
		last,
	}
	// The note may take three lines; the last row grows with it.
	noteWidth := 0.58*inner.Width() - 2*cellPad
	if t.Projection == "first angle" {
		noteWidth -= symbolWide
	}
	extra := float64(min(3, max(1, len(Wrap(t.Note, noteWidth, TextSmall, false))))-1) * lead * TextSmall
	y := inner.Y0 + rowHigh*float64(len(rows)) + extra
	top := y
	for i, row := range rows {
		rowHigh := rowHigh
		if i == len(rows)-1 {
			rowHigh += extra
		}
		p.Line(Narrow, Point{inner.X0, y}, Point{inner.X1, y})
		x := inner.X0
		for i, c := range row {
			w := c.part * inner.Width()
			if i > 0 {
				p.Line(Narrow, Point{x, y}, Point{x, y - rowHigh})
			}
			b := Box{x, y - rowHigh, x + w, y}
			if c.name == "Note" && t.Projection == "first angle" {
				b.X1 -= symbolWide
				p.firstAngle(Point{inner.X1 - symbolWide/2, y - rowHigh/2})
			}
			s.cell(p, b, c)
			x += w
		}
		y -= rowHigh
	}
	s.checkTitle(t)
	return Box{inner.X0, top, inner.X1, inner.Y1}
}

// cell writes a cell's name above its value. A value that is too long for the
// cell is set smaller, then cut with three dots, which Lint tells of.
func (s *Scene) cell(p Pen, b Box, c cell) {
	w := b.Width() - 2*cellPad
	p.Text(Point{b.X0 + cellPad, b.Y1 - 0.7}, TextSmall, Left|Top, c.name)
	if TextWidth(c.size, c.bold, c.value) > w {
		c.size = TextSmall
	}
	lines := Wrap(c.value, w, c.size, c.bold)
	room := 1 + int((b.Height()-rowHigh+0.01)/(lead*c.size))
	if len(lines) > room {
		s.faults = append(s.faults, fmt.Sprintf("title block: %s %q does not fit", c.name, c.value))
		lines = lines[:room]
		rs := []rune(lines[room-1])
		for len(rs) > 1 && TextWidth(c.size, c.bold, string(rs)+"…") > w {
			rs = rs[:len(rs)-1]
		}
		lines[room-1] = string(rs) + "…"
	}
	for i, line := range lines {
		y := b.Y0 + 1.6 + float64(len(lines)-1-i)*lead*c.size
		p.write(Point{b.X0 + cellPad, y}, c.size, 0, Left, line, c.bold, false)
	}
}

func (s *Scene) checkTitle(t TitleBlock) {
	for _, f := range []struct{ name, value string }{
		{"Owner", t.Owner}, {"Number", t.Number}, {"Title", t.Title}, {"Date", t.Date},
		{"Creator", t.Creator}, {"Approval", t.Approval}, {"Kind", t.Kind}, {"Scale", t.Scale},
	} {
		if f.value == "" {
			s.faults = append(s.faults, "title block: "+f.name+" is empty")
		}
	}
	if t.Sheet < 1 {
		s.faults = append(s.faults, "title block: Sheet is empty")
	}
}

// firstAngle draws the symbol of first-angle projection: a truncated cone lying
// with its small end to the left, and right of it the view from the left.
func (p Pen) firstAngle(c Point) {
	p.Polyline(Narrow, Point{c.X - 5, c.Y}, Point{c.X + 5, c.Y})
	p.Ring(Narrow, Point{c.X - 4.5, c.Y - 1}, Point{c.X - 0.5, c.Y - 2}, Point{c.X - 0.5, c.Y + 2}, Point{c.X - 4.5, c.Y + 1})
	p.Circle(Narrow, Point{c.X + 2.8, c.Y}, 2)
	p.Circle(Narrow, Point{c.X + 2.8, c.Y}, 1)
}
