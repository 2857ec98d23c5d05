package web

import (
	"errors"
	"net/http"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"scarfwright/repair/caution"
	"scarfwright/repair/figure"
	"scarfwright/repair/working"
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
	v.Answer, v.Worked = &a, worked{"", a.Working}
	for _, res := range a.Results {
		x := field{Label: res.Key, Value: res.Text}
		if res.Text == "" {
			name, unit := keyUnit(res.Key)
			x = field{Label: name, Value: strings.TrimSpace(working.Num(res.Value, 4) + " " + unit)}
		}
		v.Results = append(v.Results, x)
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
	for _, in := range calc.Inputs {
		switch {
		case in.Optional:
		case len(in.Words) > 0 && !slices.Contains(in.Words, in.Unit):
			q.Set(in.Key, in.Words[0])
		default:
			q.Set(in.Key, in.Unit)
		}
	}
	return "/figures/" + calc.Name + "?" + q.Encode()
}

// unitOf prints the unit a result's key ends in.
var unitOf = map[string]string{
	"mm": "mm", "mm2": "mm²", "mm3": "mm³", "m2": "m²", "g": "g", "kg": "kg", "ml": "ml", "l": "l", "percent": "%",
	"mpa": "MPa", "gpa": "GPa", "pa": "Pa", "gsm": "g/m²", "deg": "°", "nm": "N m", "kgm3": "kg/m³", "min": "min", "h": "h", "c": "°C", "k": "K",
}

// keyUnit splits "outer_radius_mm" into its words and its unit.
func keyUnit(key string) (name, unit string) {
	i := strings.LastIndexByte(key, '_')
	if i < 0 {
		return key, ""
	}
	u, ok := unitOf[strings.ToLower(key[i+1:])]
	if !ok {
		return strings.ReplaceAll(key, "_", " "), ""
	}
	return strings.ReplaceAll(key[:i], "_", " "), u
}
