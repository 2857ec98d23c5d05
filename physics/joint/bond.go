package joint

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Ply is one layer of an adherend, as the bond feels it.
type Ply struct {
	Thickness si.Length
	E         si.Pressure // modulus along the load in plane strain, see PlaneStrain
	G         si.Pressure // shear modulus through the thickness (Gxz), about that of the resin
}

// PlaneStrain returns the modulus of a ply that a wide panel keeps from
// narrowing, in pascals:
//
//	E' = Ex / (1 - nuxw^2 Ew/Ex)
//
// with Ew the modulus across the width and nuxw the strain along the width per
// strain along the load, sign turned. It is Ex at nuxw = 0; the denominator must
// be positive (laminate.Lamina.Check has the same rule). Closed form.
func PlaneStrain(Ex, Ew si.Pressure, nuxw float64) si.Pressure {
	return si.Pressure(float64(Ex) / (1 - nuxw*nuxw*float64(Ew/Ex)))
}

// Adhesive is the layer between the adherends: a film of glue, or the resin that
// the first mat of the patch is laid into. E and Nu are those of a block of it.
type Adhesive struct {
	Thickness si.Length // across the bond, not along the laminate
	E         si.Pressure
	Nu        float64 // 0 to 0.49
}

// G returns the shear modulus of the adhesive in pascals.
func (a Adhesive) G() si.Pressure { return si.Pressure(float64(a.E) / (2 * (1 + a.Nu))) }

// Taper is a tapered joint of two laminates of one thickness. Both lists start
// at the face that was ground open, where the patch is widest and runs out to
// its feather edge; the parent's feather edge is at the other face. Height is
// measured from the ground face.
type Taper struct {
	Ratio         float64 // length of the slope per thickness, 12 for 12:1
	Parent, Patch []Ply
	Adhesive      Adhesive
	Rows          int // rows through the thickness; 0 chooses, see Solve
}

// Point is the state of the bond at one height, averaged through the adhesive.
type Point struct {
	Height   si.Length   // from the ground face
	Along    si.Length   // from the patch's feather edge, down the slope
	Shear    si.Pressure // along the slope, positive as the load drives it
	Peel     si.Pressure // across the slope, positive when it opens
	Resolved bool        // false near a feather edge, see Bond.Unresolved
}

// Bond is the answer for a taper under tension.
type Bond struct {
	Points            []Point // one per row, from the patch's feather edge to the parent's
	AtParent, AtPatch []Point // at mid-height of each ply, in the order of the lists
	Peak              Point   // the resolved point with the greatest shear
	MeanShear         si.Pressure
	MeanPeel          si.Pressure
	// Unresolved is the height at either end in which figures aren't to be quoted:
	// a feather edge is a sharp corner between two materials, elasticity gives no
	// finite stress in it, and what a mesh prints there is the mesh. The larger of
	// the adhesive's thickness and one and a half rows.
	Unresolved si.Length
}

// Factor returns the greatest resolved shear over the mean, 1 for an even bond.
func (b Bond) Factor() float64 { return float64(b.Peak.Shear / b.MeanShear) }

const (
	fewestRows   = 42     // through the thickness, unless Rows says otherwise
	mostRows     = 400    // some seconds
	mostTaper    = 200.   // ratio; beyond it adhesive cells are too slender to trust
	leastTaper   = 2.     // ratio; a shorter wedge isn't a row of thin sections
	sameThick    = 1e-6   // relative difference of total thickness that is rounding
	mostNu       = 0.49   // Poisson's ratio: nearer 1/2 the film locks
	mostAdhesive = 1 / 4. // adhesive thickness per laminate thickness
)

// Check returns an error that names the field, its value and what is allowed.
func (t Taper) Check() error {
	if !(t.Ratio >= leastTaper && t.Ratio <= mostTaper) {
		return fmt.Errorf("taper %.4g:1: the section model holds from %g:1 to %g:1", t.Ratio, leastTaper, mostTaper)
	}
	if err := checkPlies("parent", t.Parent); err != nil {
		return err
	}
	if err := checkPlies("patch", t.Patch); err != nil {
		return err
	}
	T, Tp := thickness(t.Parent), thickness(t.Patch)
	if math.Abs(T-Tp) > sameThick*T {
		return fmt.Errorf("patch %.4g mm on a parent of %.4g mm: both must be alike thick; "+
			"leave cover plies out, or scale the plies", Tp*1e3, T*1e3)
	}
	a := t.Adhesive
	if !(a.Thickness > 0 && float64(a.Thickness) <= mostAdhesive*T) {
		return fmt.Errorf("adhesive %.4g mm thick: must be more than 0 and at most a quarter of the laminate", a.Thickness.MM())
	}
	if !(a.E > 0) || math.IsInf(float64(a.E), 1) {
		return fmt.Errorf("adhesive E = %.4g Pa: must be positive", a.E.Pa())
	}
	if !(a.Nu >= 0 && a.Nu <= mostNu) {
		return fmt.Errorf("adhesive nu = %.4g: must lie from 0 to %g", a.Nu, mostNu)
	}
	if t.Rows < 0 || t.Rows > mostRows {
		return fmt.Errorf("%d rows: 0 (chosen for you) to %d", t.Rows, mostRows)
	}
	return nil
}

func checkPlies(who string, plies []Ply) error {
	if len(plies) == 0 {
		return fmt.Errorf("%s has no plies", who)
	}
	for i, p := range plies {
		for _, q := range []struct {
			name  string
			value float64
		}{{"thickness", float64(p.Thickness)}, {"E", float64(p.E)}, {"G", float64(p.G)}} {
			if !(q.value > 0) || math.IsInf(q.value, 1) {
				return fmt.Errorf("%s ply %d: %s = %.4g: must be positive", who, i+1, q.name, q.value)
			}
		}
	}
	return nil
}

func thickness(plies []Ply) float64 {
	T := 0.0
	for _, p := range plies {
		T += float64(p.Thickness)
	}
	return T
}

// Solve returns shear and peel along the bond under the mean tension sigma (load
// per width over thickness; negative for compression), with the far ends of the
// laminates, ten thicknesses away, kept from turning but free to shift across.
//
// The model is the one of doc.go. Rows = 0 takes about 42 rows, at least three in
// every layer that ends of plies of either adherend bound. Measured (both independent
// computations): against the two-dimensional table of the project's benchmark, shear
// at every ply's mid-height within 1.2 %, and within 0.5 % with 90 rows; against
// our own two-dimensional elements over ratios of 6 to 20, films of 0.1 to 0.4 mm
// and unlike stacks within 3.5 %, mostly 1 %, part of which is theirs. The error falls
// with the square of the rows' height. Peel is a by-product of sections that keep their
// height: good within some 5 % of the mean shear, so where it is small it says little.
//
// It promises: the mean shear is the closed form of Uniform to 1e-6 for any
// stacks; stresses grow with sigma in proportion; scaling all lengths, or all
// moduli, changes nothing; turning the joint over (each list reversed and the
// lists exchanged) mirrors the result.
func (t Taper) Solve(sigma si.Pressure) (Bond, error) {
	if err := t.Check(); err != nil {
		return Bond{}, err
	}
	if math.IsNaN(float64(sigma)) || math.IsInf(float64(sigma), 0) {
		return Bond{}, fmt.Errorf("mean stress %v: must be a number", float64(sigma))
	}
	s := newSections(t)
	// Unit load, so that the outcome for nought is nought and signs look after themselves.
	if err := s.solve(s.T); err != nil {
		return Bond{}, err
	}
	var b Bond
	alpha := math.Atan(1 / t.Ratio)
	sin, cos := math.Sincos(alpha)
	along := func(y float64) si.Length { return si.Length(y / sin) }
	b.Unresolved = si.Length(max(float64(t.Adhesive.Thickness), 1.5*s.rows[0].dy, 1.5*s.rows[len(s.rows)-1].dy))
	resolved := func(y float64) bool {
		return y >= float64(b.Unresolved) && y <= s.T-float64(b.Unresolved)
	}
	mean, peel := 0.0, 0.0
	b.Points = make([]Point, len(s.rows))
	for j, r := range s.rows {
		sx, sy, txy := s.adhesiveStress(j)
		tau := (sx-sy)*sin*cos - txy*(cos*cos-sin*sin)
		sn := sx*sin*sin + sy*cos*cos - 2*txy*sin*cos
		mean += tau * r.dy / s.T
		peel += sn * r.dy / s.T
		y := r.y + r.dy/2
		b.Points[j] = Point{si.Length(y), along(y), si.Scale(sigma, tau), si.Scale(sigma, sn), resolved(y)}
	}
	smooth(s, b.Points)
	b.MeanShear, b.MeanPeel = si.Scale(sigma, mean), si.Scale(sigma, peel)
	at := func(plies []Ply) (list []Point) {
		y := 0.0
		for _, p := range plies {
			list = append(list, b.at(s, y+float64(p.Thickness)/2))
			y += float64(p.Thickness)
		}
		for i := range list {
			y := float64(list[i].Height)
			list[i].Along, list[i].Resolved = along(y), resolved(y)
		}
		return list
	}
	b.AtParent, b.AtPatch = at(t.Parent), at(t.Patch)
	worst := -1.0
	for _, p := range b.Points {
		if size := math.Abs(float64(p.Shear)); p.Resolved && size > worst {
			worst, b.Peak = size, p
		}
	}
	return b, nil
}

// smooth replaces what rows bear by what nodes bear. Equilibrium is kept at the
// nodes, each between two rows, so when the film is much thinner than a row the
// rows may go up and down in turns by some per cent and only their sums mean
// anything. A row's figure becomes the mean of its two nodes, themselves means
// of two rows, never across the end of a ply; the outer rows of a layer follow
// on the straight line.
func smooth(s *sections, p []Point) {
	for i := 0; i < len(p); {
		k := i + 1
		for k < len(p) && s.rows[k].layer == s.rows[i].layer {
			k++
		}
		layer := p[i:k] // three rows or more
		node := make([][2]si.Pressure, len(layer)-1)
		for j := range node {
			node[j] = [2]si.Pressure{(layer[j].Shear + layer[j+1].Shear) / 2, (layer[j].Peel + layer[j+1].Peel) / 2}
		}
		last := len(node) - 1
		for j := range layer {
			a, b := node[max(j-1, 0)], node[min(j, last)]
			switch j {
			case 0:
				a = [2]si.Pressure{2*b[0] - node[1][0], 2*b[1] - node[1][1]}
			case last + 1:
				b = [2]si.Pressure{2*a[0] - node[last-1][0], 2*a[1] - node[last-1][1]}
			}
			layer[j].Shear, layer[j].Peel = (a[0]+b[0])/2, (a[1]+b[1])/2
		}
		i = k
	}
}

// at interpolates between the rows of one layer; across the end of a ply the
// shear has a step that a straight line would smear.
func (b Bond) at(s *sections, y float64) Point {
	j := 0
	for j < len(s.rows)-1 && y > s.rows[j].y+s.rows[j].dy {
		j++
	}
	mid := func(j int) float64 { return s.rows[j].y + s.rows[j].dy/2 }
	k := j + 1
	if y < mid(j) {
		k = j - 1
	}
	p := b.Points[j]
	if k >= 0 && k < len(s.rows) && s.rows[k].layer == s.rows[j].layer {
		w := (y - mid(j)) / (mid(k) - mid(j))
		p.Shear += si.Scale(b.Points[k].Shear-p.Shear, w)
		p.Peel += si.Scale(b.Points[k].Peel-p.Peel, w)
	}
	p.Height = si.Length(y)
	return p
}
