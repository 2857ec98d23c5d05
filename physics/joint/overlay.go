package joint

import (
	"math"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
)

// Overlay is a patch laid on one face of a skin, as a strip of unit width.
// Heights run from the skin's free face; the first ply of Patch lies on the skin.
type Overlay struct {
	laminate.Section           // of skin and patch together: NeutralAxis, EA, EI
	Skin             si.Length // thickness of the skin
	// Eccentricity is from the skin's mid-plane to the neutral axis of the repaired
	// strip: the lever by which a load in the plane of the skin bends the repair.
	Eccentricity si.Length
	// B11 couples stretch and bending about the skin's mid-plane: EA times the
	// eccentricity, N.
	B11 float64

	plies []Ply
}

// NewOverlay returns the strip of skin and patch, each listed outwards from the
// skin's free face. Strip formulas (closed form):
//
//	zn  = sum(E t z)/sum(E t)
//	EI  = sum E (t^3/12 + t (z - zn)^2)
//	B11 = sum E t (z - z0)            about the skin's mid-plane z0
func NewOverlay(skin, patch []Ply) (Overlay, error) {
	if err := checkPlies("skin", skin); err != nil {
		return Overlay{}, err
	}
	if err := checkPlies("patch", patch); err != nil {
		return Overlay{}, err
	}
	o := Overlay{Skin: si.Length(thickness(skin))}
	o.plies = append(append(o.plies, skin...), patch...)
	layers := make([]laminate.Layer, len(o.plies))
	for i, p := range o.plies {
		layers[i] = laminate.Layer{Thickness: p.Thickness, Tension: p.E}
	}
	o.Section = laminate.NewSection(layers)
	o.Eccentricity = o.NeutralAxis - o.Skin/2
	o.B11 = o.EA * float64(o.Eccentricity)
	return o, nil
}

// Strain returns the strain at height z from the skin's free face, far from the
// patch's edges, under the load N per width acting in the skin's mid-plane: the two bounds
// between which a real panel lies. Restrained, frames or stiffness around keep the
// strip from turning and it only stretches; free, it bows by N e.
//
//	restrained  N/EA
//	free        N/EA - N e (z - zn)/EI
//
// Small deflections; under tension a thin panel straightens itself and comes nearer to
// restrained as the load grows, under compression farther.
func (o Overlay) Strain(N si.LineLoad, z si.Length) (restrained, free float64) {
	n := float64(N)
	restrained = n / o.EA
	return restrained, restrained - n*float64(o.Eccentricity)*float64(z-o.NeutralAxis)/o.EI
}

// Stress returns the bounds of the stress in the ply at height z, in pascals; at
// the border of two plies that of the one nearer the free face.
func (o Overlay) Stress(N si.LineLoad, z si.Length) (restrained, free si.Pressure) {
	a, b := o.Strain(N, z)
	E, top := o.plies[len(o.plies)-1].E, si.Length(0)
	for _, p := range o.plies {
		if top += p.Thickness; z <= top {
			E = p.E
			break
		}
	}
	return si.Scale(E, a), si.Scale(E, b)
}

// Curvature returns the curvature of the strip that is free to bend, 1/m: N e/EI.
// Positive bows the patch's side in (shorter).
func (o Overlay) Curvature(N si.LineLoad) float64 {
	return float64(N) * float64(o.Eccentricity) / o.EI
}

// Bridged returns how many times the skin's mean stress the overlay bears where it
// alone bridges a hole through a skin of thickness th, by the two bounds:
//
//	restrained  th/tp
//	free        (th/tp) (1 + 6 e/tp),   e = (th + tp)/2
//
// Free is an upper bound, for ends that bend as they like: 7 for a patch as thick as
// the skin, 20 for half as thick. It is why an overlay alone isn't counted as equal
// to the laminate it covers. Closed form, homogeneous patch. Positive thicknesses;
// others give NaN.
func Bridged(th, tp si.Length) (restrained, free float64) {
	if !(th > 0 && tp > 0) {
		return math.NaN(), math.NaN()
	}
	r := float64(th / tp)
	return r, r * (1 + 3*(r+1))
}
