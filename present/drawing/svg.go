package drawing

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
)

// SVGOptions change how WriteSVGWith writes. The zero value is WriteSVG's.
type SVGOptions struct {
	// TextAsPaths draws the letters instead of naming them, for a cutter or a
	// reader without the font. Text can then not be searched or read aloud.
	TextAsPaths bool
}

// fontList begins with the face that text was measured in and goes on with
// faces that are no wider.
const fontList = "'DejaVu Sans Condensed','Liberation Sans',Arial,sans-serif"

// WriteSVG writes the scene as one SVG element of its true size in mm, to stand
// alone or inside a page. The package comment lists its classes.
func (s *Scene) WriteSVG(w io.Writer) error { return s.WriteSVGWith(w, SVGOptions{}) }

// WriteSVGWith is WriteSVG with options.
func (s *Scene) WriteSVGWith(w io.Writer, opt SVGOptions) error {
	o := &svg{height: s.Height, opt: opt, layer: "0"}
	b := &o.buf
	fmt.Fprintf(b, `<svg xmlns="http://www.w3.org/2000/svg" class="drawing" role="img" width="%smm" height="%smm" viewBox="0 0 %[1]s %[2]s"`,
		svgNum(s.Width), svgNum(s.Height))
	fmt.Fprintf(b, ` fill="none" stroke-linejoin="round" font-family="%s">`, fontList)
	b.WriteString("<title>")
	escape(b, s.Title)
	b.WriteString("</title>")
	if s.Desc != "" {
		b.WriteString("<desc>")
		escape(b, s.Desc)
		b.WriteString("</desc>")
	}
	fmt.Fprintf(b, "\n<path class=\"paper\" fill=\"#fff\" d=\"M0 0H%sV%sH0z\"/>\n", svgNum(s.Width), svgNum(s.Height))
	s.all(o.item)
	o.end()
	if o.layer != "0" {
		b.WriteString("</g>\n")
	}
	b.WriteString("</svg>\n")
	_, err := w.Write(b.Bytes())
	return err
}

type svg struct {
	buf    bytes.Buffer
	height float64
	opt    SVGOptions
	layer  string
	style  svgStyle // of the open path element
	open   bool
}

type svgStyle struct {
	kind  kind
	line  Line
	shade Shade
	ink   Ink
}

func (o *svg) item(it *item) {
	if it.layer != o.layer {
		o.end()
		if o.layer != "0" {
			o.buf.WriteString("</g>\n")
		}
		if o.layer = it.layer; o.layer != "0" {
			fmt.Fprintf(&o.buf, "<g data-layer=\"%s\">\n", o.layer)
		}
	}
	if it.kind == text {
		o.text(it)
		return
	}
	// Neighbours of one style share an element. Fills do not: where two of them
	// overlap the even-odd rule would make a hole.
	st := svgStyle{it.kind, it.line, it.shade, it.ink}
	if !o.open || st != o.style || it.kind == fill {
		o.end()
		o.begin(st)
	}
	for _, p := range it.paths {
		o.path(p)
	}
}

func (o *svg) begin(st svgStyle) {
	o.open, o.style = true, st
	b := &o.buf
	b.WriteString("<path")
	class := inks[st.ink].name
	if st.kind == fill {
		if class != "" && st.shade != Paper {
			class += " "
		}
		if st.shade == Paper {
			class = ""
		}
		class += shades[st.shade].name
	}
	o.inkAttrs(class, st.ink)
	switch {
	case st.kind == stroke:
		fmt.Fprintf(b, ` stroke="currentColor" stroke-width="%s"`, svgNum(st.line.Width()))
		if d := st.line.dashes(); d != nil {
			b.WriteString(` stroke-dasharray="`)
			for i, v := range d {
				if i > 0 {
					b.WriteByte(' ')
				}
				b.WriteString(svgNum(v))
			}
			b.WriteByte('"')
		}
	case st.shade == Solid:
		b.WriteString(` fill="currentColor" fill-rule="evenodd"`)
	default:
		r, g, bl := rgb(st.ink, st.shade)
		fmt.Fprintf(b, ` fill="#%02x%02x%02x" fill-rule="evenodd"`, r, g, bl)
	}
	b.WriteString(` d="`)
}

func (o *svg) inkAttrs(class string, ink Ink) {
	if class != "" {
		fmt.Fprintf(&o.buf, ` class="%s"`, class)
	}
	if ink != Black {
		c := inks[ink]
		fmt.Fprintf(&o.buf, ` color="#%02x%02x%02x"`, c.r, c.g, c.b)
	}
}

func (o *svg) end() {
	if o.open {
		o.buf.WriteString("\"/>\n")
		o.open = false
	}
}

// path writes one run in steps of 0.01 mm relative to the last point. The
// steps are differences of rounded places, so that rounding never adds up.
func (o *svg) path(p path) {
	x, y := o.grid(p.pts[0])
	b := o.buf.AvailableBuffer()
	b = append(b, 'M')
	b = appendPair(b, x, y)
	first := true
	for _, q := range p.pts[1:] {
		qx, qy := o.grid(q)
		dx, dy := qx-x, qy-y
		if dx == 0 && dy == 0 {
			continue
		}
		if first {
			b = append(b, 'l')
			first = false
		} else if dx >= 0 {
			b = append(b, ' ')
		}
		b = appendPair(b, dx, dy)
		x, y = qx, qy
	}
	if p.closed {
		b = append(b, 'z')
	}
	o.buf.Write(b)
}

func (o *svg) grid(p Point) (x, y int64) {
	return int64(math.Round(p.X * 100)), int64(math.Round((o.height - p.Y) * 100))
}

// appendPair writes two numbers of hundredths, as briefly as SVG allows.
func appendPair(b []byte, x, y int64) []byte {
	b = appendHundredths(b, x)
	if y >= 0 {
		b = append(b, ' ')
	}
	return appendHundredths(b, y)
}

func appendHundredths(b []byte, v int64) []byte {
	if v < 0 {
		b, v = append(b, '-'), -v
	}
	whole, rest := v/100, v%100
	if whole > 0 || rest == 0 {
		b = strconv.AppendInt(b, whole, 10)
	}
	if rest > 0 {
		b = append(b, '.', byte('0'+rest/10))
		if rest%10 > 0 {
			b = append(b, byte('0'+rest%10))
		}
	}
	return b
}

func svgNum(v float64) string {
	return string(appendHundredths(nil, int64(math.Round(v*100))))
}

func (o *svg) text(it *item) {
	o.end()
	b, l := &o.buf, it.text
	if o.opt.TextAsPaths {
		o.letters(it)
		return
	}
	b.WriteString("<text")
	o.inkAttrs(inks[it.ink].name, it.ink)
	x, y := svgNum(l.at.X), svgNum(o.height-l.at.Y)
	if l.turn == 0 {
		fmt.Fprintf(b, ` x="%s" y="%s"`, x, y)
	} else {
		fmt.Fprintf(b, ` transform="translate(%s %s)rotate(%s)"`, x, y, svgNum(-l.turn))
	}
	fmt.Fprintf(b, ` font-size="%s"`, svgNum(l.size/capHeight))
	if l.bold {
		b.WriteString(` font-weight="bold"`)
	}
	if l.h != Left {
		b.WriteString(` text-anchor="` + [...]string{"start", "middle", "end"}[l.h] + `"`)
	}
	b.WriteString(` fill="currentColor">`)
	escape(b, l.s)
	b.WriteString("</text>\n")
}

func (o *svg) letters(it *item) {
	b := &o.buf
	b.WriteString("<path")
	o.inkAttrs(inks[it.ink].name, it.ink)
	b.WriteString(` fill="currentColor" d="`)
	at := func(p Point) string {
		x, y := o.grid(p)
		return string(appendPair(nil, x, y))
	}
	drawing := false
	shut := func() {
		if drawing {
			b.WriteByte('z')
		}
		drawing = true
	}
	it.text.trace(
		func(p Point) { shut(); b.WriteString("M" + at(p)) },
		func(p Point) { b.WriteString("L" + at(p)) },
		func(c, p Point) { b.WriteString("Q" + at(c) + " " + at(p)) })
	b.WriteString("z\"/>\n")
}

// trace calls the functions for the outlines of the letters, in paper mm.
func (l label) trace(move, line func(Point), quad func(c, p Point)) {
	f := faceOf(l.bold)
	size := l.size / capHeight
	sin, cos := math.Sincos(l.turn * math.Pi / 180)
	o, x := l.start(), 0.0
	at := func(p Point) Point { return o.add(Point{x + p.X*size, p.Y * size}.turn(sin, cos)) }
	for _, r := range l.s {
		x += size * f.outline(r,
			func(p Point) { move(at(p)) },
			func(p Point) { line(at(p)) },
			func(c, p Point) { quad(at(c), at(p)) })
	}
}

func escape(b *bytes.Buffer, s string) { _ = xml.EscapeText(b, []byte(s)) }
