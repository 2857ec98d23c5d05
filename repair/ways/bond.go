package ways

import (
	"math"

	"scarfwright/physics/joint"
	"scarfwright/physics/panel"
	"scarfwright/physics/si"
	"scarfwright/repair/catalog"
)

// bond is the shear strength of new resin on old laminate, a mean over a taper or a
// lap, and the layer of resin in it.
type bond struct {
	mat, fabric si.Pressure
	layer       joint.Adhesive
}

// The resin between the old laminate and the first ply (from memory): half a
// millimetre, a mat's resin-rich underside.
var bondLayer = joint.Adhesive{Thickness: si.MM(0.5), E: si.GPa(2.7), Nu: 0.35}

func bondOf(r catalog.Resin) (low, likely, high bond) {
	return bond{r.BondMat.Low, r.BondFabric.Low, bondLayer},
		bond{r.BondMat.Typical, r.BondFabric.Typical, bondLayer},
		bond{r.BondMat.High, r.BondFabric.High, bondLayer}
}

// strength of a bond through a stack: by thickness between mat and fabric.
func (b bond) strength(ps []ply) float64 {
	var sum, t float64
	for _, p := range ps {
		if math.IsInf(p.fails[0], 1) {
			continue
		}
		s := b.fabric
		if p.mat {
			s = b.mat
		}
		sum += float64(s) * float64(p.Thickness)
		t += float64(p.Thickness)
	}
	return sum / t
}

// angles is how many places round the repair are looked at, fractions where up the
// slope.
const angles = 24

var fractions = []float64{0.03, 0.3, 0.5, 0.7, 0.97}

// used returns the share of the bond's strength that is used, and where. On a taper
// of ratio R every height hands its stress sigma across the line of the slope:
//
//	tau = sigma R/(1+R^2)
//
// with sigma the laminate's mean modulus times the strain there, for strengths of
// laps are means over laminates too. An overlay carries what its plies carry over
// the hole, on its lap:
//
//	tau = N/L,  L no more than 8/omega, beyond which a lap gains nothing (joint.Lap)
//
// It is not a number where more than half of the places could not be looked at: a bond
// that was not judged must not pass.
func (b bond) used(r *panel.Result, ps *parts, on *place, taper si.Length) (most float64, at spot) {
	if ps.over {
		return b.lapUsed(r, ps, on, taper)
	}
	R := float64(taper) / float64(ps.perFace())
	old := ps.ground()
	Q := meanStiffness(old)
	if len(ps.patch) > 0 {
		N := meanStiffness(ps.patch)
		for i := range 3 {
			for j := range 3 {
				Q[i][j] = (Q[i][j] + N[i][j]) / 2
			}
		}
	}
	strength := b.strength(old)
	missed := 0
	for _, f := range fractions {
		heights := ps.slopes(f)
		zone := ps.ring(f)
		for k := range angles {
			p, nx, ny, ok := on.point(f*taper.MM(), 2*math.Pi*float64(k)/angles)
			d, err := r.Deformation(p, zone)
			if !ok || err != nil {
				missed++
				continue
			}
			for _, z := range heights {
				tau := math.Abs(across(Q, d.At(z), nx, ny)) * R / (1 + R*R)
				if u := tau / strength; u > most {
					most, at = u, spot{p, zone, -1, "shear"}
				}
			}
		}
	}
	if 2*missed > angles*len(fractions) {
		return math.NaN(), at
	}
	return most, at
}

func (b bond) lapUsed(r *panel.Result, ps *parts, on *place, lap si.Length) (most float64, at spot) {
	zone := 1
	if ps.hole {
		zone = 2
	}
	strength := b.strength(ps.facing())
	length := b.lapLength(ps, lap)
	low := -depth(ps.parent)/2 - depth(ps.patch)
	if ps.sides == "inside" {
		low = depth(ps.parent) / 2
	}
	missed := 0
	for k := range angles {
		p, nx, ny, ok := on.point(0, 2*math.Pi*float64(k)/angles)
		d, err := r.Deformation(p, zone)
		if !ok || err != nil {
			missed++
			continue
		}
		N, z := 0.0, low
		for _, x := range ps.patch {
			N += across(x.QBar(x.Angle), d.At(z+x.Thickness/2), nx, ny) * float64(x.Thickness)
			z += x.Thickness
		}
		if u := math.Abs(N) / length / strength; u > most {
			most, at = u, spot{p, zone, -1, "shear"}
		}
	}
	if 2*missed > angles {
		return math.NaN(), at
	}
	return most, at
}

// lapLength is the length of a lap that counts, in metres.
func (b bond) lapLength(ps *parts, lap si.Length) float64 {
	old, _ := stiffness(ps.parent)
	fresh, _ := stiffness(ps.patch)
	w := joint.Lap{Stiff1: si.LineLoad(old), Stiff2: si.LineLoad(fresh), Adhesive: b.layer, Length: lap}.Omega()
	return math.Min(float64(lap), enough/w)
}

// enough is the length of a lap, times omega, beyond which its peak shear falls no
// further (closed form, see joint.Lap.Enough at 4 parts in 10 000).
const enough = 8

// facing is the ply of the parent that an overlay lies on.
func (p *parts) facing() []ply {
	const skinDeep = si.Length(0.0005)
	if p.sides == "inside" {
		return bottom(p.parent, skinDeep)
	}
	return top(p.parent, skinDeep)
}

// ground is what is ground away of the parent, outside to inside.
func (p *parts) ground() []ply {
	switch p.sides {
	case "inside":
		return bottom(p.parent, p.depth)
	case "both":
		return append(top(p.parent, p.depth/2), bottom(p.parent, p.depth/2)...)
	}
	return top(p.parent, p.depth)
}

// perFace is the depth that one taper climbs.
func (p *parts) perFace() si.Length {
	if p.sides == "both" {
		return p.depth / 2
	}
	return p.depth
}
