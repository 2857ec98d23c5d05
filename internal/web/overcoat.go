package web

import (
	"net/http"
	"strings"

	"scarfwright/repair/overcoat"
)

// overcoatView is the table of what goes on what, or the part of it that was asked for.
type overcoatView struct {
	On, Lay, State []option
	Problem        string
	Narrowed       bool
	Asked          string // in words
	Groups         []overcoatGroup
	Count          int
	NotKnown       string
	Legend         string
}

// option is one option of a select whose empty value asks for all.
type option struct {
	Value string
	Taken bool
}

type overcoatGroup struct {
	Anchor, Name string
	Entries      []overcoatEntry
}

type overcoatEntry struct {
	overcoat.Entry
	Sources string // "3 statements, which disagree"
}

// overcoat shows what may be laid on what. What it is narrowed to stands in the
// address, so that an answer can be kept and sent.
func (s *Site) overcoat(w http.ResponseWriter, r *http.Request) {
	q := r.URL.Query()
	v := overcoatView{Legend: overcoat.Legend}
	title, status := "What goes on what", http.StatusOK
	ask, err := overcoat.Parse(q.Get("on"), q.Get("lay"), q.Get("state"))
	if err != nil {
		title, status, v.Problem = "Error: "+title, http.StatusUnprocessableEntity, sentence(err.Error())+"."
	}
	v.On, v.Lay, v.State = options(overcoat.Sorts(), ask.On), options(overcoat.Laid(), ask.Lay), options(overcoat.States(), ask.State)
	v.Narrowed, v.Asked = ask != overcoat.Ask{}, ask.Words()
	pairs := overcoat.Narrow(ask)
	v.Count = len(pairs)
	v.NotKnown = overcoat.NotKnown(ask, pairs, overcoat.Unknown(ask))
	for _, g := range overcoat.Grouped(pairs) {
		out := overcoatGroup{Anchor: anchor(g.Below), Name: "On " + string(g.Below)}
		for _, e := range g.Entries {
			said := counted(len(e.Statements), "statement")
			if e.Disputed() {
				said += ", which disagree"
			}
			out.Entries = append(out.Entries, overcoatEntry{e, said})
		}
		v.Groups = append(v.Groups, out)
	}
	s.render(w, r, status, "overcoat", page{Title: title, Nav: "overcoat", Body: v})
}

// anchor is where a material's part of the page begins: "on-epoxy-filler".
func anchor(s overcoat.Sort) string { return "on-" + strings.ReplaceAll(string(s), " ", "-") }

func options[T ~string](all []T, taken T) []option {
	var out []option
	for _, x := range all {
		out = append(out, option{string(x), x == taken})
	}
	return out
}
