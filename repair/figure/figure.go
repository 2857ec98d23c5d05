// Package figure lists every single calculation the tool can do by itself:
// its inputs with their units and ranges, and how it is worked.
//
// Each is one row of the catalogue All: a name, its inputs, and a function from
// values to an answer. The command line, the pages and the proof all compute
// through it, so that there is one place where a number is made.
package figure

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"scarfwright/repair/working"
)

// Input is one input of a calculation.
type Input struct {
	Key      string   `json:"key"`
	Doc      string   `json:"doc"`
	Unit     string   `json:"unit"`              // an example of the text it takes: "450 g/m2"
	Range    string   `json:"range,omitempty"`   // in words
	Default  string   `json:"default,omitempty"` // used when left out; empty and not optional: required
	Words    []string `json:"words,omitempty"`   // the words it may be, when it is a word
	Optional bool     `json:"optional,omitempty"`
	File     bool     `json:"file,omitempty"`   // its text is a file's; a command line takes the file's name alone
	Unless   []string `json:"unless,omitempty"` // not needed when one of these is given, "Tg", or chosen, "model=nth"
}

// Needed reports whether the input must be given beside those that are.
func (in Input) Needed(given map[string]string) bool {
	if in.Default != "" || in.Optional {
		return false
	}
	return !slices.ContainsFunc(in.Unless, func(cond string) bool {
		key, word, isWord := strings.Cut(cond, "=")
		return isWord && given[key] == word || !isWord && given[key] != ""
	})
}

// Result is one result. Key ends in the unit Value is in: "thickness_mm".
type Result struct {
	Key   string
	Value float64
	Text  string // set instead of Value for a result in words
}

// Results keeps its order in JSON.
type Results []Result

// MarshalJSON writes an object with the keys in order.
func (rs Results) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, r := range rs {
		if i > 0 {
			b.WriteByte(',')
		}
		key, _ := json.Marshal(r.Key)
		b.Write(key)
		b.WriteByte(':')
		var v []byte
		var err error
		if r.Text != "" {
			v, err = json.Marshal(r.Text)
		} else {
			v, err = json.Marshal(r.Value)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", r.Key, err)
		}
		b.Write(v)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// Get returns the value of a result, and whether there is one of that key.
func (rs Results) Get(key string) (float64, bool) {
	for _, r := range rs {
		if r.Key == key {
			return r.Value, true
		}
	}
	return 0, false
}

// Answer is a computed figure.
type Answer struct {
	Figure   string            `json:"figure"`
	Inputs   map[string]string `json:"inputs"`
	Results  Results           `json:"results"`
	Working  []working.Line    `json:"working"`
	Sources  []string          `json:"sources"`
	Warnings []string          `json:"warnings"`

	fit int // how many of the last lines of Working are of a fit
}

// Lines returns the worked lines that lead to the results, and apart from them those
// that say how a catalogue entry was fitted.
func (a Answer) Lines() (worked, fit []working.Line) {
	n := len(a.Working) - a.fit
	return a.Working[:n:n], a.Working[n:]
}

// Calculation is one row of the catalogue.
type Calculation struct {
	Name   string  `json:"name"`
	Title  string  `json:"title"`
	Inputs []Input `json:"inputs"`
	work   func(*reader) Answer
}

// InputError is an input that cannot be used.
type InputError struct {
	Key  string
	Text string // what was given; empty when nothing was
	Why  string
	Hint string
}

func (e *InputError) Error() string {
	s := e.Key + ": " + e.Why
	if e.Hint != "" {
		s += " " + e.Hint
	}
	return s
}

// All returns every calculation, by subject.
func All() []Calculation {
	return slices.Concat(laminateFigures(), failureFigures(), repairFigures(), mixingFigures(), cureFigures(), heatFigures(), plateFigures(), jointFigures(), scantlingFigures())
}

// Find returns the calculation of that name.
func Find(name string) (Calculation, error) {
	var names []string
	for _, c := range All() {
		if c.Name == name {
			return c, nil
		}
		names = append(names, c.Name)
	}
	return Calculation{}, &InputError{Key: name, Text: name, Why: "there is no such figure.", Hint: didYouMean(name, names) + "The figures are: " + strings.Join(names, ", ") + "."}
}

// Compute reads the inputs and computes the answer. Unknown keys, missing
// inputs, wrong units and values out of range are an *InputError.
func (c Calculation) Compute(given map[string]string) (Answer, error) {
	var keys []string
	for _, in := range c.Inputs {
		keys = append(keys, in.Key)
	}
	for _, key := range slices.Sorted(maps.Keys(given)) {
		if !slices.Contains(keys, key) {
			return Answer{}, &InputError{Key: key, Text: given[key], Why: "is not an input of " + c.Name + ".", Hint: didYouMean(key, keys) + "Its inputs are: " + strings.Join(keys, ", ") + "."}
		}
	}
	r := &reader{inputs: c.Inputs, given: given, used: map[string]string{}}
	a := c.work(r)
	if r.err != nil {
		return Answer{}, r.err
	}
	for _, key := range keys {
		if _, used := r.used[key]; !used && r.has(key) {
			return Answer{}, &InputError{Key: key, Text: given[key], Why: "has no part in this with the other inputs as they are.", Hint: "Leave it out, or choose the model or the form that it belongs to."}
		}
	}
	if !a.finite() {
		key := c.Inputs[0].Key
		return Answer{}, &InputError{Key: key, Text: given[key], Why: "these inputs together give no finite number.", Hint: "Check their sizes and units."}
	}
	a.Figure, a.Inputs = c.Name, r.used
	a.gather()
	return a, nil
}

// finite reports whether every number of the answer is one. Absurd inputs may
// overflow on the way although each is a number itself.
func (a Answer) finite() bool {
	no := func(x float64) bool { return math.IsNaN(x) || math.IsInf(x, 0) }
	return !slices.ContainsFunc(a.Results, func(r Result) bool { return no(r.Value) }) &&
		!slices.ContainsFunc(a.Working, func(l working.Line) bool { return no(l.Value) })
}

// gather collects the sources and warnings of the worked lines, each once.
func (a *Answer) gather() {
	add := func(list []string, s string) []string {
		if s == "" || slices.Contains(list, s) {
			return list
		}
		return append(list, s)
	}
	warnings := a.Warnings
	a.Warnings = []string{}
	a.Sources = []string{}
	for _, l := range a.Working {
		a.Sources = add(a.Sources, l.Source)
		a.Warnings = add(a.Warnings, l.Warning)
	}
	for _, w := range warnings {
		a.Warnings = add(a.Warnings, w)
	}
}

// didYouMean suggests the nearest of the names, as a sentence and a space.
func didYouMean(got string, names []string) string {
	best, least := "", 4
	for _, n := range names {
		if d := distance(got, n); d < least {
			best, least = n, d
		}
	}
	if best == "" {
		return ""
	}
	return "Did you mean " + best + "? "
}

// distance is the number of letters to change, add or drop between two words.
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			next := diagonal
			if a[i] != b[j] {
				next = 1 + min(diagonal, row[j], row[j+1])
			}
			diagonal, row[j+1] = row[j+1], next
		}
	}
	return row[len(b)]
}
