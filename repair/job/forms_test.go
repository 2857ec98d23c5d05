package job_test

import (
	"testing"

	"pgregory.net/rapid"

	"scarfwright/physics/si"
	"scarfwright/repair/job"
)

func TestForms(t *testing.T) {
	point := func(x, y float64) job.Point { return job.Point{X: si.MM(x), Y: si.MM(y)} }
	span := func(low, high float64) job.Range { return job.Range{Low: si.MM(low), High: si.MM(high)} }
	for _, c := range []struct {
		text string
		got  interface{ UnmarshalText([]byte) error }
		want any
	}{
		{"-310 mm, 190 mm", &job.Point{}, point(-310, 190)},
		{"-310, 190 mm", &job.Point{}, point(-310, 190)},
		{"12,5 mm, 3,5 mm", &job.Point{}, point(12.5, 3.5)},
		{"12,5, 3,5 mm", &job.Point{}, point(12.5, 3.5)},
		{"1 in, 2 in", &job.Point{}, point(25.4, 50.8)},
		{"0 mm, 0 mm", &job.Point{}, point(0, 0)},
		{"5.4 mm", &job.Range{}, span(5.4, 5.4)},
		{"5 mm to 6 mm", &job.Range{}, span(5, 6)},
		{"5 to 6 mm", &job.Range{}, span(5, 6)},
		{"5 mm +- 0,5 mm", &job.Range{}, span(4.5, 5.5)},
		{"5 ± 0.5 mm", &job.Range{}, span(4.5, 5.5)},
		{"csm450", &job.PlyRef{}, job.PlyRef{Class: "csm450"}},
		{"wr600@45", &job.PlyRef{}, job.PlyRef{Class: "wr600", Angle: si.Degrees(45)}},
		{"wr600@-22,5 deg", &job.PlyRef{}, job.PlyRef{Class: "wr600", Angle: si.Degrees(-22.5)}},
		{"my.cloth-2", &job.PlyRef{}, job.PlyRef{Class: "my.cloth-2"}},
	} {
		if err := c.got.UnmarshalText([]byte(c.text)); err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		var got any
		switch x := c.got.(type) {
		case *job.Point:
			got = *x
		case *job.Range:
			got = *x
		case *job.PlyRef:
			got = *x
		}
		if !alike(got, c.want) {
			t.Errorf("%s: got %v, want %v", c.text, got, c.want)
		}
	}
}

// alike compares to a part in 1e12: 12.5 mm - 0.5 mm need not be 12 mm to the bit.
func alike(a, b any) bool {
	near := func(x, y si.Length) bool { return x-y < 1e-12 && y-x < 1e-12 }
	switch a := a.(type) {
	case job.Range:
		b := b.(job.Range)
		return near(a.Low, b.Low) && near(a.High, b.High)
	case job.Point:
		b := b.(job.Point)
		return near(a.X, b.X) && near(a.Y, b.Y)
	}
	return a == b
}

func TestFormsRefuse(t *testing.T) {
	for _, text := range []string{"", "3 mm", "310,190 mm", "1 mm, 2 mm, 3 mm", "1, 2", "1 mm 2 mm", "4, 5 ft 6 in", "1 kg, 2 mm", ", 2 mm"} {
		if p := (job.Point{}); p.UnmarshalText([]byte(text)) == nil {
			t.Errorf("point %q: got %v, want an error", text, p)
		}
	}
	for _, text := range []string{"", "5", "6 mm to 5 mm", "5-6 mm", "5 – 6 mm", "5 mm to", "to 5 mm", "5 mm +- -1 mm", "5 mm to 6 mm to 7 mm", "5 mm to 6 kg"} {
		if r := (job.Range{}); r.UnmarshalText([]byte(text)) == nil {
			t.Errorf("range %q: got %v, want an error", text, r)
		}
	}
	for _, text := range []string{"", "@45", "CSM450", "csm 450", "2x csm450", "csm450@", "csm450@x", "csm450@200", "csm450@45 mm", "450csm", "csm450 "} {
		p := job.PlyRef{}
		err := p.UnmarshalText([]byte(text))
		if text == "csm450 " {
			if err != nil {
				t.Errorf("ply %q: %v", text, err) // a space at the end is no sin
			}
			continue
		}
		if err == nil {
			t.Errorf("ply %q: got %v, want an error", text, p)
		}
	}
}

// Property: each form read back is itself, to the bit.
func TestFormsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.Float64Range(-20, 20)
		p := job.Point{X: si.Length(length.Draw(t, "x")), Y: si.Length(length.Draw(t, "y"))}
		var q job.Point
		if err := q.UnmarshalText([]byte(p.String())); err != nil || q != p {
			t.Fatalf("point %v: got %v, %v", p, q, err)
		}
		r := job.Range{Low: p.X, High: max(p.X, p.Y)}
		var s job.Range
		if err := s.UnmarshalText([]byte(r.String())); err != nil || s != r {
			t.Fatalf("range %v: got %v, %v", r, s, err)
		}
		a := job.PlyRef{Class: "bx600", Angle: si.Degrees(rapid.Float64Range(-180, 180).Draw(t, "angle"))}
		var b job.PlyRef
		if err := b.UnmarshalText([]byte(a.String())); err != nil || b != a {
			t.Fatalf("ply %v: got %v, %v", a, b, err)
		}
	})
}
