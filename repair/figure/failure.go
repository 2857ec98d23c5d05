package figure

import (
	"fmt"
	"math"
	"strings"

	"scarfwright/physics/laminate"
	"scarfwright/physics/si"
	"scarfwright/repair/working"
)

var strengthInputs = []Input{
	{Key: "Xt", Doc: "tensile strength along the fibres", Unit: "1140 MPa"},
	{Key: "Xc", Doc: "compressive strength along the fibres, positive", Unit: "620 MPa"},
	{Key: "Yt", Doc: "tensile strength across the fibres", Unit: "39 MPa"},
	{Key: "Yc", Doc: "compressive strength across the fibres, positive", Unit: "128 MPa"},
	{Key: "S", Doc: "shear strength in the plane", Unit: "89 MPa"},
}

func failureFigures() []Calculation {
	loads := []Input{
		{Key: "nx", Doc: "load along x per width", Unit: "100 N/mm"},
		{Key: "ny", Doc: "load along y per width", Unit: "0 N/mm", Default: "0 N/mm"},
		{Key: "nxy", Doc: "shear load per width", Unit: "0 N/mm", Default: "0 N/mm"},
	}
	join := func(parts ...[]Input) []Input {
		var out []Input
		for _, p := range parts {
			out = append(out, p...)
		}
		return out
	}
	return []Calculation{
		{
			Name: "first-ply-failure", Title: "load at which the first and the last ply of a stack fail, by four criteria",
			Inputs: join(stackInputs, strengthInputs, loads), work: firstPlyFailure,
		},
		{
			Name: "lamina-failure", Title: "how far one lamina is from failing under given stresses, by four criteria",
			Inputs: join(stackInputs[2:], strengthInputs, []Input{
				{Key: "angle", Doc: "angle of the fibres to the stress axes", Unit: "30 deg", Default: "0 deg"},
				{Key: "sx", Doc: "stress along x", Unit: "100 MPa", Default: "0 MPa"},
				{Key: "sy", Doc: "stress along y", Unit: "0 MPa", Default: "0 MPa"},
				{Key: "txy", Doc: "shear stress", Unit: "0 MPa", Default: "0 MPa"},
			}), work: laminaFailure,
		},
	}
}

// criterionKey turns a criterion's name into part of a result key: "tsai_wu".
func criterionKey(c laminate.Criterion) string {
	return strings.NewReplacer(" ", "_", "-", "_").Replace(strings.ToLower(c.String()))
}

func criterionFormula(c laminate.Criterion) (formula, source string) {
	switch c {
	case laminate.MaxStress:
		return "SR = min X/σ", kaw2
	case laminate.MaxStrain:
		return "SR = min (X/E)/ε", kaw2
	case laminate.TsaiHill:
		return "SR = 1/√(σ1²/X² - σ1σ2/X² + σ2²/Y² + τ²/S²)", "Jones1999: ch. 2, from memory"
	default:
		return "a SR² + b SR = 1, F12 = -√(F11 F22)/2", kaw2
	}
}

func firstPlyFailure(r *reader) Answer {
	l, x := r.lamina(), r.strength()
	stack, plies := r.plies(l)
	n := [3]si.LineLoad{quantity[si.LineLoad](r, "nx", anything), quantity[si.LineLoad](r, "ny", anything), quantity[si.LineLoad](r, "nxy", anything)}
	if r.ok() && n == [3]si.LineLoad{} {
		r.fail("nx", "every load is zero.", "Give at least one of nx, ny, nxy.")
	}
	if !r.ok() {
		return Answer{}
	}
	load := laminate.Load{N: n}
	h := 0.0
	for _, p := range plies {
		h += float64(p.Thickness)
	}
	a := Answer{}
	for _, c := range laminate.Criteria {
		collapse := laminate.LastPlyFailure(plies, []laminate.Strength{x}, load, c)
		first := laminate.FirstPlyFailure(plies, []laminate.Strength{x}, load, c)
		if first.Ply < 0 || math.IsInf(first.Ratio, 1) {
			r.fail("nx", "no ply is stressed by this load.", "")
			return Answer{}
		}
		k := criterionKey(c)
		a.Results = append(a.Results,
			Result{Key: k + "_first_load_ratio", Value: first.Ratio},
			Result{Key: k + "_first_ply_number", Value: float64(first.Ply + 1)},
			Result{Key: k + "_first_mode_words", Text: first.Mode.String()},
			Result{Key: k + "_first_nx_n_per_m", Value: first.Ratio * float64(n[0])},
			Result{Key: k + "_first_ny_n_per_m", Value: first.Ratio * float64(n[1])},
			Result{Key: k + "_first_nxy_n_per_m", Value: first.Ratio * float64(n[2])},
			Result{Key: k + "_first_mean_stress_x_mpa", Value: first.Ratio * float64(n[0]) / h / 1e6},
			Result{Key: k + "_first_mean_stress_y_mpa", Value: first.Ratio * float64(n[1]) / h / 1e6},
			Result{Key: k + "_first_mean_shear_xy_mpa", Value: first.Ratio * float64(n[2]) / h / 1e6},
			Result{Key: k + "_last_load_ratio", Value: collapse.Last()},
			Result{Key: k + "_last_nx_n_per_m", Value: collapse.Last() * float64(n[0])},
			Result{Key: k + "_last_ny_n_per_m", Value: collapse.Last() * float64(n[1])},
			Result{Key: k + "_last_nxy_n_per_m", Value: collapse.Last() * float64(n[2])},
		)
		f, src := criterionFormula(c)
		a.Working = append(a.Working,
			working.Line{
				Name: "first ply failure, " + c.String(), Formula: f, Numbers: fmt.Sprintf("ply %d of %s at its %s, %s", first.Ply+1, stack, first.Place, first.Mode),
				Value: first.Ratio, Unit: "× the load", Source: strings.Replace(src, kaw2, kaw5, 1), Holds: "mechanical load only: no cure stress, no moisture",
			},
			working.Line{
				Name: "last ply failure, " + c.String(), Formula: "failed plies fully discounted, step by step", Numbers: working.Count(len(collapse), "step", "steps"),
				Value: collapse.Last(), Unit: "× the load", Source: kaw5,
			})
	}
	if w := unsymmetric(plies); w != "" {
		a.Warnings = append(a.Warnings, w)
	}
	return a
}

// unsymmetric warns that an unsymmetric stack is taken free to curl.
func unsymmetric(plies []laminate.Ply) string {
	s := laminate.NewStiffness(plies)
	scale := s.A[0][0] * float64(s.H)
	for _, row := range s.B {
		for _, b := range row {
			if math.Abs(b) > 1e-9*scale {
				return "the stack is not symmetric: it is taken as free to curl under the load; held flat, the stresses differ"
			}
		}
	}
	return ""
}

func laminaFailure(r *reader) Answer {
	l, x := r.lamina(), r.strength()
	angle := quantity[si.Angle](r, "angle", anything)
	s := laminate.Stress{quantity[si.Pressure](r, "sx", anything), quantity[si.Pressure](r, "sy", anything), quantity[si.Pressure](r, "txy", anything)}
	if r.ok() && s == (laminate.Stress{}) {
		r.fail("sx", "every stress is zero.", "Give at least one of sx, sy, txy.")
	}
	if !r.ok() {
		return Answer{}
	}
	local := s.InPlyAxes(angle)
	a := Answer{
		Results: Results{{Key: "s1_mpa", Value: local[0].MPa()}, {Key: "s2_mpa", Value: local[1].MPa()}, {Key: "t12_mpa", Value: local[2].MPa()}},
		Working: []working.Line{{
			Name: "stress along the fibres", Formula: "σ1 = σx c² + σy s² + 2 τ s c", Numbers: fmt.Sprintf("angle %s°", num(angle.Degrees())),
			Value: local[0].MPa(), Unit: "MPa", Source: kaw2,
		}},
	}
	for _, c := range laminate.Criteria {
		f := laminate.FailureOf(c, l, x, local)
		formula, src := criterionFormula(c)
		a.Results = append(a.Results, Result{Key: criterionKey(c) + "_strength_ratio", Value: f.Ratio}, Result{Key: criterionKey(c) + "_mode_words", Text: f.Mode.String()})
		a.Working = append(a.Working, working.Line{Name: "strength ratio, " + c.String(), Formula: formula, Numbers: fmt.Sprintf("σ1 %s, σ2 %s, τ12 %s MPa", num(local[0].MPa()), num(local[1].MPa()), num(local[2].MPa())), Value: f.Ratio, Unit: "1", Source: src, Holds: "above 1 the lamina holds"})
	}
	return a
}
