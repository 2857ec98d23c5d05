package drawing

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"math"

	"golang.org/x/image/vector"
)

// maxPixels keeps a slip in the dots per inch from filling the memory.
const maxPixels = 200e6

// WritePNG writes the scene as a picture of dpi dots an inch (254 gives 10
// dots a millimetre), on white.
func (s *Scene) WritePNG(w io.Writer, dpi float64) error {
	img, err := s.Image(dpi)
	if err != nil {
		return err
	}
	return png.Encode(w, img)
}

// Image returns the scene as a picture of dpi dots an inch, on white.
func (s *Scene) Image(dpi float64) (*image.RGBA, error) {
	k := dpi / 25.4
	nx, ny := math.Round(s.Width*k), math.Round(s.Height*k)
	if !(dpi > 0) || !(nx >= 1 && ny >= 1 && nx*ny <= maxPixels) {
		return nil, fmt.Errorf("picture: %g dots an inch make %g x %g dots: allowed are 1 to %g in all", dpi, nx, ny, float64(maxPixels))
	}
	o := &raster{img: image.NewRGBA(image.Rect(0, 0, int(nx), int(ny))), k: k, high: s.Height}
	for i := range o.img.Pix {
		o.img.Pix[i] = 0xff
	}
	s.all(o.item)
	return o.img, nil
}

type raster struct {
	img  *image.RGBA
	k    float64
	high float64
	z    vector.Rasterizer
	o    Point // of the raster's window, pixels
}

func (o *raster) px(p Point) Point { return Point{p.X * o.k, (o.high - p.Y) * o.k} }

// window readies the rasteriser for what lies in b (paper mm) and returns its
// place on the picture, empty if outside.
func (o *raster) window(b Box) image.Rectangle {
	lo, hi := o.px(Point{b.X0, b.Y1}), o.px(Point{b.X1, b.Y0})
	r := image.Rect(int(math.Floor(lo.X))-1, int(math.Floor(lo.Y))-1, int(math.Ceil(hi.X))+2, int(math.Ceil(hi.Y))+2)
	r = r.Intersect(o.img.Bounds())
	if !r.Empty() {
		o.o = Point{float64(r.Min.X), float64(r.Min.Y)}
		o.z.Reset(r.Dx(), r.Dy())
	}
	return r
}

func (o *raster) item(it *item) {
	var r, g, b uint8
	switch it.kind {
	case text:
		win := o.window(it.text.box().Inset(-0.5 * it.text.size))
		if win.Empty() {
			return
		}
		it.text.trace(
			func(p Point) { o.z.ClosePath(); o.move(o.px(p)) },
			func(p Point) { o.line(o.px(p)) },
			func(c, p Point) {
				a, e := o.px(c).sub(o.o), o.px(p).sub(o.o)
				o.z.QuadTo(float32(a.X), float32(a.Y), float32(e.X), float32(e.Y))
			})
		o.z.ClosePath()
		r, g, b = rgb(it.ink, Solid)
		o.paint(win, r, g, b)
	case fill:
		win := o.window(it.box())
		if win.Empty() {
			return
		}
		// The rasteriser adds windings, so holes must run the other way round.
		for i, p := range it.paths {
			depth := 0
			for j, q := range it.paths {
				if i != j && within(p.pts[0], q.pts) {
					depth++
				}
			}
			o.ring(p.pts, (area(p.pts) > 0) != (depth%2 == 1))
		}
		r, g, b = rgb(it.ink, it.shade)
		o.paint(win, r, g, b)
	case stroke:
		win := o.window(it.box().Inset(-1))
		if win.Empty() {
			return
		}
		for _, p := range it.paths {
			for _, run := range dash(p, it.line.dashes()) {
				o.stroke(run, it.line.Width())
			}
		}
		r, g, b = rgb(it.ink, Solid)
		o.paint(win, r, g, b)
	}
}

func (o *raster) paint(win image.Rectangle, r, g, b uint8) {
	o.z.Draw(o.img, win, image.NewUniform(color.RGBA{r, g, b, 0xff}), image.Point{})
}

func (o *raster) move(p Point) { p = p.sub(o.o); o.z.MoveTo(float32(p.X), float32(p.Y)) }
func (o *raster) line(p Point) { p = p.sub(o.o); o.z.LineTo(float32(p.X), float32(p.Y)) }

// ring adds a ring given on paper, as it runs or the other way round.
func (o *raster) ring(pts []Point, forward bool) {
	for i := range pts {
		p := pts[i]
		if !forward {
			p = pts[len(pts)-1-i]
		}
		if i == 0 {
			o.move(o.px(p))
		} else {
			o.line(o.px(p))
		}
	}
	o.z.ClosePath()
}

// stroke adds a run as one box a segment and one round joint a corner, all
// turning the same way so that their windings add up.
func (o *raster) stroke(p path, width float64) {
	n := len(p.pts)
	last := n - 1
	if p.closed {
		last = n
	}
	h := width / 2
	for i := range last {
		a, b := p.pts[i], p.pts[(i+1)%n]
		d := a.dist(b)
		if d == 0 {
			continue
		}
		side := b.sub(a).mul(h / d).left()
		o.ring([]Point{a.sub(side), b.sub(side), b.add(side), a.add(side)}, true)
	}
	for i, q := range p.pts {
		if !p.closed && (i == 0 || i == n-1) {
			continue
		}
		// A joint shows only where the run turns by more than a few degrees.
		a, b := q.sub(p.pts[(i+n-1)%n]), p.pts[(i+1)%n].sub(q)
		if cross := a.X*b.Y - a.Y*b.X; math.Abs(cross) > 0.05*math.Hypot(a.X, a.Y)*math.Hypot(b.X, b.Y) || a.X*b.X+a.Y*b.Y < 0 {
			o.ring(discRing(q, h), true)
		}
	}
}

func discRing(c Point, r float64) []Point {
	pts := make([]Point, 12)
	for i := range pts {
		s, k := math.Sincos(2 * math.Pi * float64(i) / 12)
		pts[i] = c.add(Point{r * k, r * s})
	}
	return pts
}

// dash cuts a run into the dashes of a pattern; no pattern leaves it whole.
func dash(p path, pattern []float64) []path {
	if pattern == nil {
		return []path{p}
	}
	pts := p.pts
	if p.closed {
		pts = append(append([]Point{}, pts...), pts[0])
	}
	var out []path
	i, left := 0, pattern[0]
	run := []Point{pts[0]}
	for n := 1; n < len(pts); n++ {
		a, b := pts[n-1], pts[n]
		for d := a.dist(b); d > left; d = a.dist(b) {
			a = a.add(b.sub(a).mul(left / d))
			if i%2 == 0 {
				out = append(out, path{append(run, a), false})
			}
			run = []Point{a}
			i = (i + 1) % len(pattern)
			left = pattern[i]
		}
		left -= a.dist(b)
		run = append(run, b)
	}
	if i%2 == 0 && len(run) > 1 {
		out = append(out, path{run, false})
	}
	return out
}

// area returns twice the signed area of a ring, positive counter-clockwise.
func area(ring []Point) float64 {
	sum := 0.0
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		sum += a.X*b.Y - b.X*a.Y
	}
	return sum
}

// within tells whether a point is inside a ring, by even and odd crossings.
func within(p Point, ring []Point) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}
