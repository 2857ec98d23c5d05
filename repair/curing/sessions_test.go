package curing_test

import (
	"fmt"
	"testing"

	"scarfwright/physics/heat"
	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/cure"
	"scarfwright/repair/curing"
	"scarfwright/repair/design"
)

// thick is a repair of n equal plies of 1.2 mm, all put into one session, on foam or
// on a form.
func thick(n int, foam bool) *design.Result {
	d := &design.Result{}
	for i := range n {
		d.Plies = append(d.Plies, design.Ply{
			Label: fmt.Sprintf("P%d", i+1), Session: 1, Thickness: si.MM(1.2), Area: 0.1, Glass: si.Grams(60), Wet: 1.8,
		})
	}
	if foam {
		d.Core = &design.CorePiece{Thickness: si.MM(15)}
	}
	return d
}

func input(t *testing.T, d *design.Result, celsius float64) curing.Input {
	t.Helper()
	cat := catalog.Default()
	resin, err := cat.Resin("polyester-laminating")
	if err != nil {
		t.Fatal(err)
	}
	m, err := cure.Fit(cure.FromCatalogue(resin.TwoPart, cure.Polyester))
	if err != nil {
		t.Fatal(err)
	}
	hull, err := kinetics.Constant(si.Celsius(celsius))
	if err != nil {
		t.Fatal(err)
	}
	in := curing.Input{
		Design: d, Inner: si.MM(3), Resin: curing.NewResin(m, si.Percent(2)), Sheet: resin.TwoPart,
		Air: func(*curing.Session) (curing.Air, error) {
			return curing.Air{History: heat.Steady(si.Celsius(celsius)), Hull: hull, Start: si.Celsius(celsius)}, nil
		},
	}
	in.Core.Density.Typical = 80
	return in
}

// Plies are moved until no session passes its limit, each session takes as many as it
// can, every ply is laid once, in order; the first session laid with one ply more
// passes the limit.
func TestPliesAreMovedBetweenSessions(t *testing.T) {
	for _, c := range []struct {
		n       int
		foam    bool
		celsius float64
	}{{12, false, 22}, {8, true, 20}, {10, true, 28}, {2, false, 15}} {
		name := fmt.Sprintf("%d plies, foam %v, %g °C", c.n, c.foam, c.celsius)
		d := thick(c.n, c.foam)
		out, err := curing.Plan(input(t, d, c.celsius))
		if err != nil {
			t.Fatal(err)
		}
		laid := 0
		for i, s := range out.Sessions {
			if s.Own > s.Limit && len(s.Plies) > 1 {
				t.Errorf("%s: %s of %d plies comes to %.1f °C over its limit", name, s.Name, len(s.Plies), s.Peak.Celsius())
			}
			if v := out.Verdicts[i]; (v.State == check.Stop) != (s.Own > s.Limit) {
				t.Errorf("%s: %s is judged %s at %.1f °C", name, s.Name, v.State, s.Peak.Celsius())
			}
			for _, label := range s.Plies {
				if p := d.Plies[laid]; p.Label != label || p.Session != i+1 {
					t.Errorf("%s: ply %d is %s of session %d, and stands in session %d as %s", name, laid+1, p.Label, p.Session, i+1, label)
				}
				laid++
			}
		}
		if laid != c.n {
			t.Errorf("%s: %d plies laid", name, laid)
		}
		n := len(out.Sessions[0].Plies)
		if n == c.n {
			continue
		}
		in := input(t, thick(n+1, c.foam), c.celsius)
		air, _ := in.Air(nil)
		s, err := curing.First(in, air)
		if err != nil {
			t.Fatal(err)
		}
		if s.Own <= s.Limit {
			t.Errorf("%s: %d plies in the first session, but %d come only to %.1f °C", name, n, n+1, s.Peak.Celsius())
		}
	}
}

// Foam keeps the heat in: the same plies get hotter on it, and fewer go down at once.
func TestFoamTakesFewerPlies(t *testing.T) {
	at := func(foam bool) curing.Session {
		out, err := curing.Plan(input(t, thick(10, foam), 22))
		if err != nil {
			t.Fatal(err)
		}
		return out.Sessions[0]
	}
	on, off := at(true), at(false)
	if len(on.Plies) >= len(off.Plies) {
		t.Errorf("%d plies at once on foam, %d on a form", len(on.Plies), len(off.Plies))
	}
}
