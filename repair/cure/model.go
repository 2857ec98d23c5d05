package cure

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mat"

	"scarfwright/physics/kinetics"
	"scarfwright/physics/si"
)

// Model is a sheet fitted. Make it with Fit; it is never changed, so it may be shared.
type Model struct {
	problem *problem
	best    resin
	sample  []resin
	z, sd   []float64 // in units of the priors
	costs   []float64 // of each start

	through      float64   // degree meant by through-cured
	throughDraws []float64 // of each draw
}

func newModel(p *problem, o optimum, costs []float64) (Model, error) {
	n := len(o.z)
	contradiction := fmt.Errorf("sheet %q: its numbers contradict each other beyond reason", p.sheet.Name)
	var curvature, root mat.Cholesky
	var cov mat.SymDense
	if !curvature.Factorize(o.jtj) || curvature.InverseTo(&cov) != nil || !root.Factorize(&cov) {
		return Model{}, contradiction
	}
	m := Model{problem: p, best: newResin(p.sheet, o.z), z: o.z, costs: costs, sd: make([]float64, n)}
	for j := range n {
		m.sd[j] = math.Sqrt(cov.At(j, j))
	}
	m.sample = p.draw(o, &root)
	m.through = p.throughDegree(&m.best)
	m.throughDraws = make([]float64, draws)
	for i := range m.sample {
		m.throughDraws[i] = p.throughDegree(&m.sample[i])
	}
	return m, nil
}

// Sheet returns the sheet as fitted, with what was missing filled in.
func (m Model) Sheet() Sheet { return m.problem.sheet }

// Law returns the most likely law, for physics/kinetics and physics/heat. The dose
// is that of catalyst, ignored for a fixed ratio. It is not checked against the
// sheet's band: CheckDose does that.
func (m Model) Law(dose si.Ratio) kinetics.Law { return m.best.law(dose) }

// Heat returns the heat of the whole reaction per kg of mixed resin (not of laminate).
func (m Model) Heat() si.SpecificEnergy { return si.SpecificEnergy(m.best.heat) }

// Density returns the density of the mix.
func (m Model) Density() si.Density { return m.problem.sheet.Density }

// SpecificHeat returns that of the mix.
func (m Model) SpecificHeat() si.SpecificHeat { return m.problem.sheet.SpecificHeat }

// Transfer returns what a thin wall in still air passes, as fitted.
func (m Model) Transfer() si.HeatTransfer { return si.HeatTransfer(wall * m.best.wall) }

// GelAt returns the degree of cure at which it gels.
func (m Model) GelAt() float64 { return m.best.gel }

// SandableAt returns the degree at which it can be sanded.
func (m Model) SandableAt() float64 { return m.best.sand }

// ThroughAt returns the degree needed for through-cured, 95 % of what the sheet's own
// time and temperature reach, or 7 days at 20 °C where it gives none. It is not
// enough: the coat must also be as old as that time (kinetics.EquivalentAge).
func (m Model) ThroughAt() float64 { return m.through }

// Glass returns the glass transition against degree.
func (m Model) Glass() kinetics.DiBenedetto { return usual[m.problem.sheet.Kind].glass.DiBenedetto }

// Costs returns the sum of squares at which each start came to rest.
func (m Model) Costs() []float64 { return append([]float64(nil), m.costs...) }

// ParameterReport says what the fit made of one parameter.
type ParameterReport struct {
	Name, Unit    string
	Value         float64
	SD            float64 // of ln(Value) where Log is set
	Prior         float64 // its median
	PriorSD       float64 // as SD
	Log           bool
	PostOverPrior float64 // 1: the sheet said nothing about it
	Fixed         bool    // held, not fitted
}

// Report lists the fitted parameters and then what was held.
func (m Model) Report() []ParameterReport {
	var out []ParameterReport
	for j, p := range usual[m.problem.sheet.Kind].parameters {
		out = append(out, ParameterReport{
			Name: p.name, Unit: p.unit, Value: p.value(m.z[j]), SD: p.sd * m.sd[j],
			Prior: p.value(0), PriorSD: p.sd, Log: p.log, PostOverPrior: m.sd[j],
		})
	}
	held := func(name, unit string, x float64) {
		out = append(out, ParameterReport{Name: name, Unit: unit, Value: x, Prior: x, PostOverPrior: 1, Fixed: true})
	}
	g := m.Glass()
	held("gel at", "1", m.best.gel)
	held("Tg0", "°C", g.Tg0.Celsius())
	held("Tginf", "°C", g.TgInf.Celsius())
	held("lambda", "1", g.Lambda)
	return out
}

// Misfit is one number of the sheet beside the model's.
type Misfit struct {
	Name         string
	Sheet, Model float64 // s, or K of rise
	Sigmas       float64 // ln(Model/Sheet) in units of what the sheet is believed to
}

// Misfit lists them.
func (m Model) Misfit() []Misfit {
	got := make([]float64, len(m.problem.data))
	m.problem.model(&m.best, got, true)
	var out []Misfit
	for i, d := range m.problem.data {
		out = append(out, Misfit{d.name, d.sheet, got[i], math.Log(got[i]/d.sheet) / d.sigma})
	}
	return out
}
