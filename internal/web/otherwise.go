package web

import (
	"cmp"
	"fmt"
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"scarfwright/repair/design"
	"scarfwright/repair/job"
)

// otherwise is what a plan's address may change of the job's own choices.
type otherwise struct {
	Ratio, Taper, Order string // as typed
	Problems            []formProblem
}

// formProblem is one field that cannot be used.
type formProblem struct {
	Field   string // id of the field, "" for the whole form
	Message string
}

var (
	taperWords = []string{"outside", "inside", "both"}
	orderWords = []string{"smallest first", "largest first"}
)

// readOtherwise reads the address and applies it to the description. With a
// problem, nothing is applied.
func readOtherwise(q url.Values, d job.Description) (otherwise, job.Description) {
	o := otherwise{Ratio: strings.TrimSpace(q.Get("ratio")), Taper: q.Get("taper"), Order: q.Get("order")}
	was := d
	if o.Ratio != "" {
		x, err := readRatio(o.Ratio)
		if err != nil {
			o.Problems = append(o.Problems, formProblem{"ratio", sentence(err.Error())})
		}
		d.Choices.Ratio = x
	}
	o.word("taper", o.Taper, taperWords, &d.Choices.Taper)
	o.word("order", o.Order, orderWords, &d.Choices.Order)
	if len(o.Problems) > 0 {
		return o, was
	}
	return o, d
}

func (o *otherwise) word(field, got string, words []string, to *string) {
	if got == "" {
		return
	}
	if !slices.Contains(words, got) {
		o.Problems = append(o.Problems, formProblem{field, fmt.Sprintf("The %s is one of: %s. Choose one.", field, strings.Join(words, ", "))})
		return
	}
	*to = got
}

// readRatio reads "15", "15:1" or "12,5". A comma with three digits behind it
// may part thousands and is asked about.
func readRatio(text string) (float64, error) {
	allowed := fmt.Sprintf("Give a number from %d to %d, such as 12 or 12.5: the taper's length for each 1 of thickness.", design.RatioLeast, design.RatioMost)
	t := strings.TrimSpace(strings.TrimSuffix(strings.ReplaceAll(text, " ", ""), ":1"))
	if i := strings.IndexByte(t, ','); i >= 0 && len(t)-i-1 == 3 {
		return 0, fmt.Errorf("%q may be read two ways. %s", text, allowed)
	}
	x, err := strconv.ParseFloat(strings.Replace(t, ",", ".", 1), 64)
	switch {
	case err != nil || math.IsNaN(x):
		return 0, fmt.Errorf("%q is not a ratio. %s", text, allowed)
	case x < design.RatioLeast || x > design.RatioMost:
		return 0, fmt.Errorf("ratio %s is outside what is planned here. %s", text, allowed)
	}
	return x, nil
}

// changed reports whether the address asks for anything.
func (o otherwise) changed() bool { return cmp.Or(o.Ratio, o.Taper, o.Order) != "" }

// query is the address's part behind "?", empty when nothing is asked.
func (o otherwise) query() string {
	q := url.Values{}
	for k, v := range map[string]string{"ratio": o.Ratio, "taper": o.Taper, "order": o.Order} {
		if v != "" {
			q.Set(k, v)
		}
	}
	if len(q) == 0 {
		return ""
	}
	return "?" + q.Encode()
}

// at is the query with another ratio.
func (o otherwise) at(ratio float64) string {
	o.Ratio = trimmed(ratio, 2)
	return o.query()
}
