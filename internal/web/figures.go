package web

import (
	"errors"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"scarfwright/repair/caution"
	"scarfwright/repair/figure"
)

func (s *Site) figures(w http.ResponseWriter, r *http.Request) {
	s.render(w, r, http.StatusOK, "figures", page{Title: "Single figures", Nav: "figures", Body: figure.All()})
}

// figureView is one calculation: its form, and its answer when it was asked.
type figureView struct {
	Name, Title string
	Fields      []inputView
	Problems    []formProblem
	Results     []field
	Answer      *figure.Answer
	Worked      worked
	Fit         worked // of a catalogue entry, folded
	Cautions    []caution.Caution
	Example     string // the address of a worked example
}

// inputView is one input's field.
type inputView struct {
	figure.Input
	Value   string
	Mode    string // inputmode
	Problem string
}

// Needed reports whether the field must be filled.
func (f inputView) Needed() bool { return f.Input.Needed(nil) }

// figure shows a calculation. Its inputs stand in the address, so that a result
// can be kept and sent.
func (s *Site) figure(w http.ResponseWriter, r *http.Request) {
	calc, err := figure.Find(r.PathValue("name"))
	if err != nil {
		s.fail(w, r, http.StatusNotFound, "There is no such figure", err.Error())
		return
	}
	v := figureView{Name: calc.Name, Title: calc.Title, Example: exampleOf(calc)}
	asked := r.URL.Query()
	given := map[string]string{}
	for k, vs := range asked {
		if len(vs) > 1 {
			v.Problems = append(v.Problems, formProblem{k, k + " is given twice. Keep one."})
		}
		if t := strings.TrimSpace(vs[0]); t != "" {
			given[k] = t
		}
	}
	title, status := calc.Title, http.StatusOK
	if len(asked) > 0 {
		v.compute(calc, given)
		if len(v.Problems) > 0 {
			title, status = "Error: "+title, http.StatusUnprocessableEntity
		}
	}
	for _, in := range calc.Inputs {
		f := inputView{Input: in, Value: asked.Get(in.Key), Mode: "text"}
		if _, err := strconv.ParseFloat(in.Unit, 64); err == nil {
			f.Mode = "decimal" // a plain number; the rest needs letters for the unit
		}
		for _, p := range v.Problems {
			if p.Field == in.Key {
				f.Problem = p.Message
			}
		}
		v.Fields = append(v.Fields, f)
	}
	s.render(w, r, status, "figure", page{Title: title, Nav: "figures", Body: v})
}

func (v *figureView) compute(calc figure.Calculation, given map[string]string) {
	for _, in := range calc.Inputs {
		if given[in.Key] == "" && in.Needed(given) {
			v.Problems = append(v.Problems, formProblem{in.Key, in.Key + " is needed. Give " + in.Doc + ", such as " + in.Unit + "."})
		}
	}
	if len(v.Problems) > 0 {
		return
	}
	a, err := calc.Compute(given)
	var bad *figure.InputError
	switch {
	case errors.As(err, &bad):
		v.Problems = append(v.Problems, formProblem{bad.Key, bad.Error()})
		return
	case err != nil:
		v.Problems = append(v.Problems, formProblem{"", err.Error()})
		return
	}
	lines, fit := a.Lines()
	v.Answer, v.Worked, v.Fit = &a, worked{"", lines}, worked{"How the entry was fitted", fit}
	for _, x := range a.Results.Shown(4) {
		v.Results = append(v.Results, field{Label: x.Name, Value: x.Text})
	}
	if strings.Contains(calc.Name, "dose") || strings.Contains(calc.Name, "gelcoat") || strings.Contains(calc.Name, "batch") {
		v.Cautions = caution.For(caution.Peroxide)
	}
	if calc.Name == "taper" {
		v.Cautions = caution.For(caution.Grinding)
	}
}

// exampleOf is the address that fills a form with its own examples.
func exampleOf(calc figure.Calculation) string {
	q := url.Values{}
	for key, value := range calc.Example() {
		q.Set(key, value)
	}
	return "/figures/" + calc.Name + "?" + q.Encode()
}
