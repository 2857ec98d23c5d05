package drawing

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
)

// WriteDXF writes the scene's lines and text as an ASCII DXF of release 12
// (AC1009), one unit a millimetre of paper: draw at 1:1 what is to be cut.
// Fills are left out, text is spelt in ASCII. R12 has no unit of its own and
// some readers pass over $INSUNITS, so two lines of 100 mm stand on layer CHECK
// below the drawing, to be measured after import.
func (s *Scene) WriteDXF(w io.Writer) error {
	o := &dxf{}
	box, ok := s.Extent()
	if !ok {
		box = Box{0, 0, s.Width, s.Height}
	}
	check := Point{box.X0, box.Y0 - 120}

	o.pair(0, "SECTION")
	o.pair(2, "HEADER")
	o.pair(9, "$ACADVER")
	o.pair(1, "AC1009")
	o.pair(9, "$INSUNITS")
	o.pair(70, "4")
	o.pair(9, "$MEASUREMENT")
	o.pair(70, "1")
	o.pair(9, "$EXTMIN")
	o.point(10, check)
	o.pair(9, "$EXTMAX")
	o.point(10, Point{max(box.X1, check.X+100), box.Y1})
	o.pair(0, "ENDSEC")
	o.tables(s)
	o.pair(0, "SECTION")
	o.pair(2, "ENTITIES")
	s.all(o.item)
	narrow := item{kind: stroke, line: Narrow, layer: "CHECK", paths: []path{
		{[]Point{check, check.add(Point{100, 0})}, false},
		{[]Point{check, check.add(Point{0, 100})}, false}}}
	o.item(&narrow)
	o.item(&item{kind: text, layer: "CHECK", text: label{at: check.add(Point{3, 3}), size: 5, s: "CHECK 100 MM BOTH WAYS"}})
	o.pair(0, "ENDSEC")
	o.pair(0, "EOF")
	_, err := w.Write(o.buf.Bytes())
	return err
}

type dxf struct{ buf bytes.Buffer }

func (o *dxf) pair(code int, value string) {
	fmt.Fprintf(&o.buf, "%3d\r\n%s\r\n", code, value)
}

func (o *dxf) num(code int, v float64) {
	t := strconv.FormatFloat(math.Round(v*1e4)/1e4, 'f', -1, 64)
	if t == "-0" {
		t = "0"
	}
	if !strings.Contains(t, ".") {
		t += ".0"
	}
	o.pair(code, t)
}

// point writes x and y under code and code+10.
func (o *dxf) point(code int, p Point) {
	o.num(code, p.X)
	o.num(code+10, p.Y)
	o.num(code+20, 0)
}

var dxfLines = [...]struct {
	line       Line
	name, desc string
}{
	{Wide, "CONTINUOUS", "Solid line"},
	{DashedNarrow, "DASHED", "__ __ __"},
	{ChainNarrow, "CHAIN", "____ . ____ ."},
}

func (o *dxf) tables(s *Scene) {
	o.pair(0, "SECTION")
	o.pair(2, "TABLES")
	o.pair(0, "TABLE")
	o.pair(2, "LTYPE")
	o.pair(70, strconv.Itoa(len(dxfLines)))
	for _, l := range dxfLines {
		o.pair(0, "LTYPE")
		o.pair(2, l.name)
		o.pair(70, "0")
		o.pair(3, l.desc)
		o.pair(72, "65")
		d := l.line.dashes()
		o.pair(73, strconv.Itoa(len(d)))
		sum := 0.0
		for _, v := range d {
			sum += v
		}
		o.num(40, sum)
		for i, v := range d {
			o.num(49, v*float64(1-2*(i%2))) // a gap is negative
		}
	}
	o.pair(0, "ENDTAB")

	// A layer takes the colour of the first thing drawn on it.
	names, colour := []string{"0", "CHECK"}, map[string]int{"0": 7, "CHECK": 1}
	s.all(func(it *item) {
		if _, known := colour[it.layer]; !known {
			names, colour[it.layer] = append(names, it.layer), inks[it.ink].aci
		}
	})
	slices.Sort(names)
	o.pair(0, "TABLE")
	o.pair(2, "LAYER")
	o.pair(70, strconv.Itoa(len(names)))
	for _, n := range names {
		o.pair(0, "LAYER")
		o.pair(2, n)
		o.pair(70, "0")
		o.pair(62, strconv.Itoa(colour[n]))
		o.pair(6, "CONTINUOUS")
	}
	o.pair(0, "ENDTAB")

	o.pair(0, "TABLE")
	o.pair(2, "STYLE")
	o.pair(70, "1")
	o.pair(0, "STYLE")
	o.pair(2, "STANDARD")
	o.pair(70, "0")
	o.num(40, 0)
	o.num(41, 1)
	o.num(50, 0)
	o.pair(71, "0")
	o.num(42, 2.5)
	o.pair(3, "txt")
	o.pair(4, "")
	o.pair(0, "ENDTAB")
	o.pair(0, "ENDSEC")
}

func (o *dxf) entity(name string, it *item) {
	o.pair(0, name)
	o.pair(8, it.layer)
	if it.line == DashedNarrow || it.line == ChainNarrow {
		o.pair(6, dxfLines[it.line-DashedNarrow+1].name)
	}
	o.pair(62, strconv.Itoa(inks[it.ink].aci))
}

func (o *dxf) item(it *item) {
	switch it.kind {
	case text:
		l := it.text
		o.entity("TEXT", it)
		o.point(10, l.start())
		o.num(40, l.size)
		o.pair(1, ASCII(l.s))
		if l.turn != 0 {
			o.num(50, l.turn)
		}
		if l.h != Left {
			// The second point rules once 72 is set: 1 centre, 2 right.
			o.pair(72, strconv.Itoa(int(l.h)))
			o.point(11, l.at)
		}
	case stroke:
		for _, p := range it.paths {
			if len(p.pts) == 2 {
				o.entity("LINE", it)
				o.point(10, p.pts[0])
				o.point(11, p.pts[1])
				continue
			}
			o.entity("POLYLINE", it)
			o.pair(66, "1")
			o.point(10, Point{})
			o.pair(70, map[bool]string{true: "1", false: "0"}[p.closed])
			for _, q := range p.pts {
				o.pair(0, "VERTEX")
				o.pair(8, it.layer)
				o.point(10, q)
			}
			o.pair(0, "SEQEND")
			o.pair(8, it.layer)
		}
	}
}

// ASCII returns text as R12 can hold it: the degree, plus-minus and diameter
// signs as %%d, %%p and %%c, letters with accents without them, the common signs
// spelt out, anything else as a question mark.
func ASCII(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch t, ok := asciiFor[r]; {
		case r == '%':
			b.WriteString("%%%") // a lone %% would start a code
		case r >= ' ' && r < 0x7f:
			b.WriteRune(r)
		case ok:
			b.WriteString(t)
		default:
			b.WriteByte('?')
		}
	}
	return b.String()
}

var asciiFor = func() map[rune]string {
	m := map[rune]string{
		'°': "%%d", '±': "%%p", '⌀': "%%c", 'Ø': "O", '×': "x", '·': ".", '²': "2", '³': "3",
		'–': "-", '—': "-", '−': "-", '‘': "'", '’': "'", '“': "\"", '”': "\"", '…': "...",
		'≤': "<=", '≥': ">=", '≈': "~", '→': "->", '←': "<-", '½': "1/2", '¼': "1/4", '¾': "3/4",
		'µ': "u", 'μ': "u", 'ß': "ss", 'æ': "ae", 'Æ': "AE", 'œ': "oe", 'ø': "o", 'đ': "d", 'ł': "l", 'Ł': "L",
		'\u00a0': " ", '\u2009': " ", '\u202f': " ", '№': "No",
	}
	for _, g := range []struct{ plain, accented string }{
		{"a", "àáâãäåāăą"}, {"A", "ÀÁÂÃÄÅĀĂĄ"}, {"c", "çćč"}, {"C", "ÇĆČ"}, {"e", "èéêëēęě"}, {"E", "ÈÉÊËĒĘĚ"},
		{"i", "ìíîïī"}, {"I", "ÌÍÎÏĪ"}, {"n", "ñńň"}, {"N", "ÑŃŇ"}, {"o", "òóôõöőō"}, {"O", "ÒÓÔÕÖŐŌ"},
		{"s", "śšş"}, {"S", "ŚŠŞ"}, {"u", "ùúûüűūů"}, {"U", "ÙÚÛÜŰŪŮ"}, {"y", "ýÿ"}, {"Y", "Ý"}, {"z", "źżž"}, {"Z", "ŹŻŽ"},
	} {
		for _, r := range g.accented {
			m[r] = g.plain
		}
	}
	return m
}()
