package joint

import (
	"fmt"
	"math"

	"scarfwright/physics/si"
)

// Step is one tread of a stepped lap: the stiffness of what is left of the parent
// above it and of what the patch has laid so far.
type Step struct {
	Length        si.Length
	Parent, Patch si.LineLoad // E t, N/m
}

// Tread is what one step of the bond carries.
type Tread struct {
	Start, End si.Pressure // shear at its ends, the patch's free edge first
	Mean       si.Pressure
	Load       si.LineLoad // handed over on it, per width
}

// PlySteps returns the steps of two laminates cut ply by ply, both listed from
// the ground face: on tread i the patch has laid plies 0 to i and the parent still has
// plies i+1 to the last. n plies make n-1 treads; the risers, where ply butts
// against ply, are taken to carry nothing, which is on the cautious side. Both
// need the same number of plies; lengths holds n-1 treads, or one for all.
func PlySteps(parent, patch []Ply, lengths ...si.Length) ([]Step, error) {
	n := len(parent)
	if n < 2 || len(patch) != n {
		return nil, fmt.Errorf("steps: %d plies of the parent and %d of the patch: both need the same number, at least 2",
			n, len(patch))
	}
	for _, err := range []error{checkPlies("parent", parent), checkPlies("patch", patch)} {
		if err != nil {
			return nil, err
		}
	}
	if len(lengths) != 1 && len(lengths) != n-1 {
		return nil, fmt.Errorf("steps: %d lengths for %d treads: give one for each, or one for all", len(lengths), n-1)
	}
	var total, laid float64
	for _, p := range parent {
		total += float64(p.E) * float64(p.Thickness)
	}
	steps := make([]Step, n-1)
	for i := range steps {
		total -= float64(parent[i].E) * float64(parent[i].Thickness)
		laid += float64(patch[i].E) * float64(patch[i].Thickness)
		steps[i] = Step{lengths[min(i, len(lengths)-1)], si.LineLoad(total), si.LineLoad(laid)}
	}
	return steps, nil
}

// Stepped returns what each tread of a stepped lap carries, and the greatest shear,
// under the load P per width, the parent loaded at the first tread's side and the
// patch at the last's. On a tread the force N left in the parent obeys
//
//	N'' = w^2 (N - P a/(a+b)),   tau = -N',   w^2 = (G/eta) (1/a + 1/b)
//
// with a, b its stiffnesses of parent and patch; N is continuous from tread to
// tread, and so is the slip between the sheets and with it tau. That gives one
// equation for the force at each riser in terms of its two neighbours: a
// tridiagonal system, solved exactly, without a mesh.
//
// Limits are those of Lap.Shear, of which this is the generalisation. It promises:
// one step is Volkersen's lap (the patch its first sheet); cutting a step in two changes nothing; the loads add
// up to P. Independent of ends being free to bend: it has no bending at all.
func Stepped(steps []Step, a Adhesive, P si.LineLoad) (treads []Tread, peak si.Pressure, err error) {
	if len(steps) == 0 {
		return nil, 0, fmt.Errorf("stepped lap without steps")
	}
	for i, s := range steps {
		if err := (Lap{s.Patch, s.Parent, a, s.Length}).Check(); err != nil {
			return nil, 0, fmt.Errorf("step %d: %w", i+1, err)
		}
	}
	n := len(steps)
	// On a tread from force N0 to N1 with even share F = P a/(a+b), H = w L:
	//	tau(start) = w [(N0-F) coth H - (N1-F)/sinh H]
	//	tau(end)   = w [(N0-F)/sinh H - (N1-F) coth H]
	type piece struct{ w, coth, csch, F float64 }
	pieces := make([]piece, n)
	for i, s := range steps {
		w := Lap{s.Patch, s.Parent, a, s.Length}.Omega()
		H := w * float64(s.Length)
		e := math.Exp(-H)
		den := -math.Expm1(-2 * H)
		pieces[i] = piece{w, (1 + e*e) / den, 2 * e / den, float64(P) * float64(s.Parent/(s.Parent+s.Patch))}
	}
	N := make([]float64, n+1)
	N[0] = float64(P)
	if n > 1 { // Thomas's elimination; the diagonal dominates because coth > csch
		c, d := make([]float64, n), make([]float64, n)
		for i := 1; i < n; i++ {
			l, r := pieces[i-1], pieces[i]
			// tau(end of l) = tau(start of r)
			below, diag, above := -l.w*l.csch, l.w*l.coth+r.w*r.coth, -r.w*r.csch
			rhs := l.w*l.F*(l.coth-l.csch) + r.w*r.F*(r.coth-r.csch)
			if i == 1 {
				rhs -= below * N[0]
				below = 0
			}
			m := diag - below*c[i-1]
			c[i] = above / m
			d[i] = (rhs - below*d[i-1]) / m
		}
		for i := n - 1; i >= 1; i-- {
			N[i] = d[i] - c[i]*N[i+1]
		}
	}
	for i, p := range pieces {
		x, y := N[i]-p.F, N[i+1]-p.F
		t := Tread{
			Start: si.Pressure(p.w * (x*p.coth - y*p.csch)),
			End:   si.Pressure(p.w * (x*p.csch - y*p.coth)),
			Load:  si.LineLoad(N[i] - N[i+1]),
		}
		t.Mean = si.Pressure(float64(t.Load) / float64(steps[i].Length))
		// On a tread tau is a sum of cosh and sinh, which has no maximum inside
		// where it is positive: the ends suffice.
		for _, tau := range []si.Pressure{t.Start, t.End} {
			if math.Abs(float64(tau)) > math.Abs(float64(peak)) {
				peak = tau
			}
		}
		treads = append(treads, t)
	}
	return treads, peak, nil
}
