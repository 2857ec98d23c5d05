package geom

import (
	"fmt"
	"math"

	"github.com/tdewolff/canvas"
)

func Union(a, b Shape) (Shape, error) {
	return operate(a, b, (*canvas.Path).Or)
}

func Intersect(a, b Shape) (Shape, error) {
	return operate(a, b, (*canvas.Path).And)
}

func Subtract(a, b Shape) (Shape, error) {
	return operate(a, b, (*canvas.Path).Not)
}

func operate(a, b Shape, op func(p, q *canvas.Path) *canvas.Path) (s Shape, err error) {
	defer func() {
		if x := recover(); x != nil {
			s, err = nil, fmt.Errorf("outlines could not be combined: %v", x)
		}
	}()
	if err := a.finite(); err != nil {
		return nil, err
	}
	if err := b.finite(); err != nil {
		return nil, err
	}
	return fromPath(op(a.path(), b.path())), nil
}

func (s Shape) finite() error {
	for _, r := range s {
		for _, p := range r {
			if err := p.check(); err != nil {
				return err
			}
		}
	}
	return nil
}

func (r Ring) path() *canvas.Path {
	p := &canvas.Path{}
	for i, q := range r {
		if i == 0 {
			p.MoveTo(q.X, q.Y)
		} else {
			p.LineTo(q.X, q.Y)
		}
	}
	p.Close()
	return p
}

func (s Shape) path() *canvas.Path {
	p := &canvas.Path{}
	for _, r := range s {
		p = p.Append(r.path())
	}
	return p.Settle(canvas.EvenOdd)
}

func fromPath(p *canvas.Path) Shape {
	var rings []Ring
	for _, sub := range p.Flatten(Tolerance).Split() {
		var r Ring
		for _, c := range sub.Coords() {
			q := Point{math.Round(c.X/Grid) * Grid, math.Round(c.Y/Grid) * Grid}
			if len(r) == 0 || r[len(r)-1] != q {
				r = append(r, q)
			}
		}
		for len(r) > 1 && r[0] == r[len(r)-1] {
			r = r[:len(r)-1]
		}
		if len(r) >= 3 && math.Abs(r.Area()) > minArea {
			rings = append(rings, r)
		}
	}
	for i, r := range rings {
		in := 0
		p := r.inner()
		for j, q := range rings {
			if i != j && q.Contains(p) {
				in++
			}
		}
		if (in%2 == 0) != (r.Area() > 0) {
			rings[i] = r.Reverse()
		}
	}
	return normal(rings)
}

const minArea = 0.01
