package drawing

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"time"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"codeberg.org/go-pdf/fpdf"
)

// Meta is what a PDF says about itself. Created must be given: the bytes of a
// file depend on nothing else than the drawing and this.
type Meta struct {
	Title, Author, Subject string
	Created                time.Time
	Uncompressed           bool // page contents left readable
}

// FontFamily is the family under which AddFonts puts the text faces into a PDF.
const FontFamily = "drawing"

// AddFonts makes the text faces known to a PDF as FontFamily, styles "" and
// "B". Only the letters used are embedded. It may be called more than once.
func AddFonts(pdf *fpdf.Fpdf) {
	pdf.AddUTF8FontFromBytes(FontFamily, "", dejavusanscondensed.TTF)
	pdf.AddUTF8FontFromBytes(FontFamily, "B", dejavusanscondensedbold.TTF)
}

// WritePDF writes the scene as a one-page PDF of the scene's size.
func (s *Scene) WritePDF(w io.Writer, m Meta) error { return WritePDF(w, m, s) }

// WritePDF writes scenes as the pages of one PDF, each of its scene's size at
// 1:1.
func WritePDF(w io.Writer, m Meta, scenes ...*Scene) error {
	if len(scenes) == 0 {
		return errors.New("PDF: no pages given")
	}
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: scenes[0].Width, Ht: scenes[0].Height}})
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	for _, s := range scenes {
		pdf.AddPageFormat("P", fpdf.SizeType{Wd: s.Width, Ht: s.Height})
		PlaceInPDF(pdf, s, 0, 0, 1)
	}
	if m.Title == "" {
		m.Title = scenes[0].Title
	}
	return Output(pdf, w, m)
}

// Output writes an fpdf document with the metadata, with the same bytes for
// the same contents, and with the wish that a viewer print it unscaled. That is
// a wish only (ISO 32000-1:2008, table 150): dialogs may overrule it, so every
// sheet to be cut from needs its check bars.
func Output(pdf *fpdf.Fpdf, w io.Writer, m Meta) error {
	if m.Created.IsZero() {
		return errors.New("PDF: Created is not set: give the date of issue")
	}
	pdf.SetTitle(m.Title, true)
	pdf.SetAuthor(m.Author, true)
	pdf.SetSubject(m.Subject, true)
	pdf.SetProducer("scarfwright", true)
	pdf.SetCreationDate(m.Created.UTC())
	pdf.SetModificationDate(m.Created.UTC())
	pdf.SetCatalogSort(true)
	pdf.SetCompression(!m.Uncompressed)
	var buf bytes.Buffer
	if err := pdf.Output(&buf); err != nil {
		return fmt.Errorf("PDF: %w", err)
	}
	out, err := unscaled(buf.Bytes())
	if err != nil {
		return err
	}
	_, err = w.Write(out)
	return err
}

// unscaled puts /PrintScaling /None into the catalogue, which fpdf cannot. The
// catalogue is its last object, so only the place of the cross-reference table
// moves.
func unscaled(pdf []byte) ([]byte, error) {
	const want = "/ViewerPreferences <</PrintScaling /None>>\n"
	cat := bytes.LastIndex(pdf, []byte("/Type /Catalog\n"))
	xref := bytes.LastIndex(pdf, []byte("\nxref\n")) + 1
	start := bytes.LastIndex(pdf, []byte("startxref\n"))
	if cat < 0 || xref < cat || start < xref {
		return nil, errors.New("PDF: the writer's file is not laid out as expected")
	}
	cut := cat + len("/Type /Catalog\n")
	var out bytes.Buffer
	out.Write(pdf[:cut])
	out.WriteString(want)
	out.Write(pdf[cut:start])
	fmt.Fprintf(&out, "startxref\n%d\n%%%%EOF\n", xref+len(want))
	return out.Bytes(), nil
}

// PlaceInPDF draws the scene as vectors on the current page, its upper left
// corner at (x, y) in the document's unit, y downwards as fpdf has it, scale
// times as large. The document's font and colours stay as they were.
func PlaceInPDF(pdf *fpdf.Fpdf, s *Scene, x, y, scale float64) {
	AddFonts(pdf)
	family, style := pdf.GetFontFamily(), pdf.GetFontStyle()
	size, _ := pdf.GetFontSize()
	tr, tg, tb := pdf.GetTextColor()

	_, high := pdf.GetPageSize()
	unit := pdf.GetConversionRatio()
	o := &pdfPage{pdf: pdf, k: 72 / 25.4 * scale, unit: unit, high: high * unit, last: label{size: -1}}
	o.x0, o.y0 = x*unit, (high-y)*unit-s.Height*o.k
	s.all(o.item)
	o.flush()

	pdf.SetTextColor(tr, tg, tb)
	if family != "" {
		pdf.SetFont(family, style, size)
	}
}

// pdfPage writes path operators itself, with three decimals instead of fpdf's
// two and in one piece, and leaves text to fpdf, which must know the letters.
type pdfPage struct {
	pdf      *fpdf.Fpdf
	buf      []byte
	x0, y0   float64 // of the scene's lower left corner, points
	k        float64 // points per scene mm
	unit     float64 // points per document unit
	high     float64 // of the page, points
	last     label   // font and
	ink      Ink     // colour set for it
	lastLine Line
	lastInk  Ink
	open     bool
}

func (o *pdfPage) num(v float64) {
	v = math.Round(v*1000) / 1000
	if v == 0 {
		v = 0 // no "-0"
	}
	o.buf = strconv.AppendFloat(o.buf, v, 'f', -1, 64)
	o.buf = append(o.buf, ' ')
}

func (o *pdfPage) op(s string) { o.buf = append(append(o.buf, s...), '\n') }

func (o *pdfPage) flush() {
	if o.open {
		o.op("Q")
		o.pdf.RawWriteStr(string(o.buf[:len(o.buf)-1]))
		o.buf, o.open = o.buf[:0], false
	}
}

func (o *pdfPage) item(it *item) {
	if it.kind == text {
		o.flush()
		o.text(it)
		return
	}
	fresh := !o.open
	if fresh {
		o.open = true
		o.op("q 0 J 1 j")
	}
	if it.kind == fill {
		o.colour(it.ink, it.shade)
		o.op("rg")
		for _, p := range it.paths {
			o.path(p)
		}
		o.op("f*")
		return
	}
	if fresh || it.line != o.lastLine || it.ink != o.lastInk {
		o.lastLine, o.lastInk = it.line, it.ink
		o.colour(it.ink, Solid)
		o.op("RG")
		o.num(it.line.Width() * o.k)
		o.op("w")
		o.buf = append(o.buf, '[')
		for _, d := range it.line.dashes() {
			o.num(d * o.k)
		}
		o.op("] 0 d")
	}
	for _, p := range it.paths {
		o.path(p)
	}
	o.op("S")
}

func (o *pdfPage) colour(ink Ink, shade Shade) {
	r, g, b := rgb(ink, shade)
	o.num(float64(r) / 255)
	o.num(float64(g) / 255)
	o.num(float64(b) / 255)
}

func (o *pdfPage) path(p path) {
	for i, q := range p.pts {
		o.num(o.x0 + q.X*o.k)
		o.num(o.y0 + q.Y*o.k)
		if i == 0 {
			o.op("m")
		} else {
			o.op("l")
		}
	}
	if p.closed {
		o.op("h")
	}
}

func (o *pdfPage) text(it *item) {
	l := it.text
	if l.size != o.last.size || l.bold != o.last.bold {
		style := ""
		if l.bold {
			style = "B"
		}
		o.pdf.SetFont(FontFamily, style, l.size/capHeight*o.k)
	}
	if o.last.size < 0 || it.ink != o.ink {
		r, g, b := rgb(it.ink, Solid)
		o.pdf.SetTextColor(int(r), int(g), int(b))
	}
	o.last, o.ink = l, it.ink
	p := l.start()
	x, y := (o.x0+p.X*o.k)/o.unit, (o.high-o.y0-p.Y*o.k)/o.unit
	if l.turn == 0 {
		o.pdf.Text(x, y, l.s)
		return
	}
	o.pdf.TransformBegin()
	o.pdf.TransformRotate(l.turn, x, y)
	o.pdf.Text(x, y, l.s)
	o.pdf.TransformEnd()
}
