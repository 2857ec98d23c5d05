package sheet

import (
	"fmt"
	"io"
	"regexp"
	"strings"

	"codeberg.org/go-pdf/fpdf"

	"scarfwright/physics/si"
	"scarfwright/present/drawing"
	"scarfwright/repair"
)

// Room on the page, in mm.
const (
	margin  = 15.0
	headEnd = 25.0 // below the head's line
	footTop = 20.0 // from the page's lower edge
)

// Sizes of text, in points.
const (
	tiny  = 7.5
	small = 9.0
	body  = 10.0
	large = 12.5
	pot   = 18.0 // at the bench: read at arm's length with goggles on
	dose  = 40.0
)

// Widths of line, in mm: two, 2:1.
const (
	narrow = 0.25
	wide   = 0.5
)

// paper is a document in the making; y is how far down the page it is filled.
type paper struct {
	pdf  *fpdf.Fpdf
	r    repair.Result
	o    Options
	sys  si.System
	kind string // "JOB CARD"

	w, h   float64 // of the page
	y      float64
	bottom float64 // last y that may be filled
}

func newPaper(r repair.Result, o Options, kind string) *paper {
	s := o.sheet()
	p := &paper{r: r, o: o, sys: o.system(), kind: kind, w: s.Width, h: s.Height, bottom: s.Height - footTop - 2}
	p.pdf = fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: s.Width, Ht: s.Height}})
	p.pdf.SetAutoPageBreak(false, 0)
	p.pdf.SetMargins(0, 0, 0)
	drawing.AddFonts(p.pdf)
	p.page()
	return p
}

// width is the room between the margins.
func (p *paper) width() float64 { return p.w - 2*margin }

func (p *paper) page() {
	p.pdf.AddPage()
	p.y = headEnd + 2
}

// need starts a new page unless high mm are left on this one.
func (p *paper) need(high float64) {
	if p.y+high > p.bottom && p.y > headEnd+3 {
		p.page()
	}
}

// capital is the height of a capital letter of a text size, in mm.
func capital(pt float64) float64 { return pt * 25.4 / 72 * 1493 / 2048 }

// lead is the distance between lines of a text size, in mm.
func lead(pt float64) float64 { return pt * 25.4 / 72 * 1.22 }

func (p *paper) font(pt float64, bold bool) {
	style := ""
	if bold {
		style = "B"
	}
	p.pdf.SetFont(drawing.FontFamily, style, pt)
}

// units finds a number with its unit, and ounces with their "(mass)": they are
// never parted at a line's end.
var units = regexp.MustCompile(`(\d) (mm|mm²|m²|in|ft²|g|kg|ml|l|oz|lb|°C|°F|K|%|h|min|days)\b|(oz) (\(mass\))`)

// joint stands for a space that must not break a line while it is broken.
const joint = "\x01"

// bound joins what must stay on one line.
func bound(s string) string {
	return strings.ReplaceAll(units.ReplaceAllString(s, "$1$3"+joint+"$2$4"), "oz (mass)", "oz"+joint+"(mass)")
}

// wrap breaks a text into lines no wider than width mm.
func wrap(s string, width, pt float64, bold bool) []string {
	lines := drawing.Wrap(bound(s), width, capital(pt), bold)
	for i := range lines {
		lines[i] = strings.ReplaceAll(lines[i], joint, " ")
	}
	return lines
}

func textWidth(s string, pt float64, bold bool) float64 {
	return drawing.TextWidth(capital(pt), bold, s)
}

// at writes one line with its capitals' top at y.
func (p *paper) at(x, y, pt float64, bold bool, s string) {
	if s == "" {
		return
	}
	p.font(pt, bold)
	p.pdf.Text(x, y+capital(pt), s)
}

// para writes wrapped text from x on, width mm wide, at the current height and
// moves down; it turns the page where it must.
func (p *paper) para(x, width, pt float64, bold bool, s string) {
	for _, line := range wrap(s, width, pt, bold) {
		p.need(lead(pt))
		p.at(x, p.y, pt, bold, line)
		p.y += lead(pt)
	}
}

// text writes a paragraph over the whole width.
func (p *paper) text(pt float64, s string) { p.para(margin, p.width(), pt, false, s) }

// bullets writes a list.
func (p *paper) bullets(pt float64, items []string) {
	for _, s := range items {
		p.need(lead(pt))
		p.at(margin+1, p.y, pt, false, "–")
		p.para(margin+5, p.width()-5, pt, false, s)
		p.y += 0.6
	}
}

// heading begins a section; keep is the room that must follow it on the page.
func (p *paper) heading(s string, keep float64) {
	if p.y > headEnd+3 {
		p.y += 5
	}
	p.need(lead(large) + 3 + keep)
	p.line(margin, p.y, p.w-margin, p.y, wide)
	p.y += 2
	p.at(margin, p.y, large, true, s)
	p.y += lead(large) + 1
}

func (p *paper) line(x0, y0, x1, y1, width float64) {
	p.pdf.SetLineWidth(width)
	p.pdf.Line(x0, y0, x1, y1)
}

func (p *paper) box(x, y, w, h, width float64) {
	p.pdf.SetLineWidth(width)
	p.pdf.Rect(x, y, w, h, "D")
}

// scene places a drawing over the width of the page, never enlarged, and a
// little smaller where that saves a page.
func (p *paper) scene(s *drawing.Scene) {
	if s == nil {
		return
	}
	k := min(1, p.width()/s.Width, (p.bottom-headEnd-4)/s.Height)
	if left := (p.bottom - p.y) / s.Height; left < k && left >= leastScale*k {
		k = left
	}
	p.need(s.Height*k - 0.01)
	p.draw(s, k)
}

// leastScale of a drawing that is made smaller to fit: its lettering of 2.5 mm, 9.7
// points, is then 8.3 points, and 8 is the least read at a bench.
const leastScale = 0.85

// draw puts a scene at this height of the page, in the middle, and moves down.
func (p *paper) draw(s *drawing.Scene, k float64) {
	drawing.PlaceInPDF(p.pdf, s, margin+(p.width()-s.Width*k)/2, p.y, k)
	p.y += s.Height*k + 2
}

// finish stamps head and foot on every page, now that their number is known,
// and writes the file.
func (p *paper) finish(w io.Writer) error {
	p.stampAll(p.pdf.PageCount())
	return p.write(w)
}

// stampAll stamps every page there is so far, of n in all. The pages must all be
// of the size of the last one: the library reckons heights by that.
func (p *paper) stampAll(n int) {
	last := p.pdf.PageCount()
	for i := 1; i <= last; i++ {
		p.pdf.SetPage(i)
		p.stamp(i, n)
	}
	p.pdf.SetPage(last)
}

func (p *paper) write(w io.Writer) error {
	return drawing.Output(p.pdf, w, drawing.Meta{
		Title: p.kind + " " + p.r.Job.Job.Number, Author: p.r.Job.Job.Yard, Subject: p.r.Job.Job.Title, Created: p.o.Now,
	})
}

func (p *paper) stamp(i, n int) {
	h := p.r.Job.Job
	p.at(margin, 11, large, true, p.kind)
	page := fmt.Sprintf("page %d of %d", i, n)
	p.at(p.w-margin-textWidth(page, body, true), 11, body, true, page)
	x := margin + textWidth(p.kind, large, true) + 5
	p.at(x, 11.6, body, false, first(joined(" · ", "Job "+h.Number, h.Title), p.w-margin-30-x, body))
	x = margin
	if words := p.heldWords(); words != "" {
		p.pdf.SetTextColor(200, 0, 0)
		p.at(x, 17, body, true, words)
		p.pdf.SetTextColor(0, 0, 0)
		x += textWidth(words, body, true) + 5
	}
	p.at(x, 17.5, small, false, first(joined(" · ", p.r.Job.Boat.Name, p.place(), revision(h.Revision), h.Date), p.w-margin-x, small))
	p.line(margin, headEnd-2.5, p.w-margin, headEnd-2.5, wide)

	y := p.h - footTop + 1
	p.line(margin, y, p.w-margin, y, narrow)
	y += 1.6
	for _, line := range wrap(p.r.Caution, p.width(), tiny, true) {
		p.at(margin, y, tiny, true, line)
		y += lead(tiny)
	}
	p.at(margin, y, tiny, false, p.identity(page))
}

// identity is what ties a printed page to its inputs.
func (p *paper) identity(page string) string {
	h := p.r.Job.Job
	return joined(" · ", "Job "+h.Number, revision(h.Revision), "input hash "+short(p.r.Hash), p.o.Program,
		"catalogue "+p.r.Catalogue, "printed "+p.o.Now.UTC().Format("2006-01-02 15:04 UTC"), page)
}

func revision(s string) string {
	if s == "" {
		return "no revision"
	}
	return "revision " + s
}

// place says where on the boat the damage is.
func (p *paper) place() string {
	return strings.TrimSpace(p.r.Job.Panel.Side + " " + p.r.Job.Panel.Place)
}

// joined joins the parts that are not empty.
func joined(between string, parts ...string) string {
	var out []string
	for _, s := range parts {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return strings.Join(out, between)
}

// first returns a text cut to one line, with three dots where it was longer.
func first(s string, width, pt float64) string {
	lines := wrap(s, width, pt, false)
	if len(lines) <= 1 {
		return s
	}
	lines = wrap(s, width-textWidth(" …", pt, false), pt, false)
	return lines[0] + " …"
}
