package panel

import (
	"fmt"
	"math"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// Ply is a layer with the two shear moduli through the thickness, which a plate
// needs and a sheet does not: G13 in the plane of the fibres, G23 across them.
type Ply struct {
	laminate.Ply
	G13, G23 si.Pressure
}

// Layup is the laminate of a zone. The first ply lies lowest, at the outer face,
// whose height over the reference plane z = 0 is Bottom (usually negative). The
// reference plane is common to the whole panel, so a patch on the inner face has
// the Bottom of the laminate it lies on.
type Layup struct {
	Plies  []Ply
	Bottom si.Length
	// Shear, when not zero, is the transverse shear stiffness of the section along
	// x and y in N/m, in place of 5/6 of the sum of G t. A sandwich wants G d^2/tc of
	// its core here (Sandwich.ShearStiffness).
	Shear [2]float64
}

// Centred returns the lay-up with z = 0 at the middle of its thickness.
func Centred(plies ...Ply) Layup {
	l := Layup{Plies: plies}
	l.Bottom = -l.Thickness() / 2
	return l
}

// Thickness returns the sum of the plies.
func (l Layup) Thickness() (t si.Length) {
	for _, p := range l.Plies {
		t += p.Thickness
	}
	return t
}

// Zone is a part of the panel with a laminate of its own, from its outline inwards
// to the outline of the next zone.
type Zone struct {
	Name    string
	Outline Outline
	Layup   Layup
}

// Support says how a side of the panel is held.
type Support int

// The supports. The first two hold w = 0, and u and v at zero or at the stretch of
// the panel unless the side slides.
const (
	Clamped         Support = iota // no rotation
	SimplySupported                // free to rotate, immovable in the plane
	Free                           // nothing is held, not even w
)

// String returns the word for a support.
func (s Support) String() string {
	if s < Clamped || s > Free {
		return fmt.Sprintf("support %d", int(s))
	}
	return [...]string{"clamped", "simply supported", "free"}[s]
}

// Edge is the support of one side. Spring, in N m per metre of edge and radian,
// resists both rotations of an edge that is otherwise simply supported: 0 is free
// to turn, and a large one approaches Clamped. Hard holds the rotation along a
// simply supported edge, so that its upright fibres cannot lean sideways, as
// classical theory has it; without it thin panels come out softer by a part of the
// order of thickness over width, and sandwich panels by 10 %. Slides lets the side
// move in the plane of the panel, against the line load Pull (outwards positive).
type Edge struct {
	Support Support
	Spring  float64
	Hard    bool
	Slides  bool
	Pull    si.LineLoad
}

// Sides numbers the edges of a panel.
const (
	Left   = iota // x = -Length/2
	Right         // x = +Length/2
	Bottom        // y = -Width/2
	Top           // y = +Width/2
)

// AllEdges returns the four edges alike.
func AllEdges(e Edge) [4]Edge { return [4]Edge{e, e, e, e} }

// Panel is a rectangular plate, |x| <= Length/2 and |y| <= Width/2, with zones
// nested one inside the other (the outermost first) in a base laminate.
type Panel struct {
	Length, Width si.Length // along x, along y
	Base          Layup
	Zones         []Zone
	Edges         [4]Edge
	Pressure      si.Pressure // on the outer face, pushing towards +z
	// Stretch moves the held sides by these mean strains along x and y, as where the
	// panel is part of a beam that bends. The sides stay straight.
	Stretch [2]float64
}

// Layup returns the laminate of a zone: 0 is the base, k is Zones[k-1].
func (p Panel) Layup(zone int) Layup {
	if zone == 0 {
		return p.Base
	}
	return p.Zones[zone-1].Layup
}

// zoneName names a zone in a message.
func (p Panel) zoneName(zone int) string {
	if zone == 0 {
		return "base"
	}
	if n := p.Zones[zone-1].Name; n != "" {
		return n
	}
	return fmt.Sprintf("zone %d", zone)
}

// Check returns an error for a panel that cannot be computed, with the field, its
// value, and what would do.
func (p Panel) Check() error {
	for _, d := range []struct {
		name string
		v    si.Length
	}{{"Length", p.Length}, {"Width", p.Width}} {
		if !(d.v > 0) || math.IsInf(float64(d.v), 1) {
			return fmt.Errorf("panel %s = %v: must be positive", d.name, d.v)
		}
	}
	if !finite(float64(p.Pressure), p.Stretch[0], p.Stretch[1]) {
		return fmt.Errorf("panel pressure %v or stretch %v: must be a number", p.Pressure, p.Stretch)
	}
	for z := range len(p.Zones) + 1 {
		if err := p.Layup(z).check(); err != nil {
			return fmt.Errorf("panel %s: %w", p.zoneName(z), err)
		}
	}
	held := 0
	for _, e := range p.Edges {
		switch {
		case e.Support == Clamped || e.Support == SimplySupported && e.Spring > 0:
			held += 2
		case e.Support == SimplySupported:
			held++
		}
	}
	if held < 2 {
		return fmt.Errorf("panel edges %v: the panel would swing: clamp a side, or support two", p.Edges)
	}
	for i, e := range p.Edges {
		if !(e.Spring >= 0) || !finite(e.Spring, float64(e.Pull)) {
			return fmt.Errorf("panel edge %d: spring %g N m/m, pull %g N/m: must be numbers, the spring not negative",
				i, e.Spring, float64(e.Pull))
		}
		if e.Support < Clamped || e.Support > Free {
			return fmt.Errorf("panel edge %d: %v: there is Clamped, SimplySupported, Free", i, e.Support)
		}
		if e.Pull != 0 && !e.Slides && e.Support != Free {
			return fmt.Errorf("panel edge %d: a pull of %g N/m on a side that cannot move: set Slides, or use Stretch",
				i, float64(e.Pull))
		}
	}
	return nil
}

func (l Layup) check() error {
	if len(l.Plies) == 0 {
		return fmt.Errorf("no plies")
	}
	for i, p := range l.Plies {
		if !(p.Thickness > 0) || !finite(float64(p.Thickness), float64(p.Angle)) {
			return fmt.Errorf("ply %d: thickness %v: must be positive", i+1, p.Thickness)
		}
		if err := p.Check(); err != nil {
			return fmt.Errorf("ply %d: %w", i+1, err)
		}
		if !(p.G13 > 0 && p.G23 > 0) || !finite(float64(p.G13), float64(p.G23)) {
			return fmt.Errorf("ply %d: G13 = %.4g Pa, G23 = %.4g Pa: a plate needs both, positive",
				i+1, p.G13.Pa(), p.G23.Pa())
		}
	}
	if !(l.Shear[0] >= 0 && l.Shear[1] >= 0) || (l.Shear[0] > 0) != (l.Shear[1] > 0) ||
		!finite(l.Shear[0], l.Shear[1], float64(l.Bottom)) {
		return fmt.Errorf("shear stiffness %v N/m: give both directions, or none", l.Shear)
	}
	return nil
}

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// shearFactor corrects the constant shear strain of first-order theory to the
// parabola of a solid plate. Reissner 1945 has 5/6 (from memory).
const shearFactor = 5.0 / 6

// section is the stiffness of a lay-up about the reference plane, per unit width:
// N = A e + B k, M = B e + D k, Q = S g.
type section struct {
	A, B, D [3][3]float64 // N/m, N, N m
	S       [2][2]float64 // N/m
}

func newSection(l Layup) (s section) {
	z0 := float64(l.Bottom)
	for _, p := range l.Plies {
		z1 := z0 + float64(p.Thickness)
		Q := p.QBar(p.Angle)
		for i := range 3 {
			for j := range 3 {
				s.A[i][j] += Q[i][j] * (z1 - z0)
				s.B[i][j] += Q[i][j] * (z1*z1 - z0*z0) / 2
				s.D[i][j] += Q[i][j] * (z1*z1*z1 - z0*z0*z0) / 3
			}
		}
		sn, cs := math.Sincos(float64(p.Angle))
		g13, g23, t := float64(p.G13), float64(p.G23), shearFactor*(z1-z0)
		s.S[0][0] += t * (cs*cs*g13 + sn*sn*g23)
		s.S[1][1] += t * (sn*sn*g13 + cs*cs*g23)
		s.S[0][1] += t * cs * sn * (g13 - g23)
		z0 = z1
	}
	s.S[1][0] = s.S[0][1]
	if l.Shear[0] > 0 {
		s.S = [2][2]float64{{l.Shear[0], 0}, {0, l.Shear[1]}}
	}
	return s
}

// uncoupled reports whether the section treats x and y as mirrors do: no shear
// from stretching, no twist from bending. Only then is a quarter the whole.
func (s section) uncoupled() bool {
	for _, m := range [][3][3]float64{s.A, s.B, s.D} {
		// B may be near zero as a whole: it is measured against sqrt(A D).
		size := 1e-9 * math.Max(math.Abs(m[0][0]), math.Abs(m[1][1]))
		if b := 1e-9 * math.Sqrt(s.A[0][0]*s.D[0][0]); m == s.B && size < b {
			size = b
		}
		if math.Abs(m[0][2]) > size || math.Abs(m[1][2]) > size {
			return false
		}
	}
	return math.Abs(s.S[0][1]) <= 1e-9*s.S[0][0]
}
