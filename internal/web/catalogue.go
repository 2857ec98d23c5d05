package web

import (
	"net/http"

	"scarfwright/repair/catalog"
)

// catalogueView is every material by sort, with its values.
type catalogueView struct {
	Version string
	Groups  []catalogueGroup
}

type catalogueGroup struct {
	Name    string
	Entries []catalogueEntry
}

type catalogueEntry struct {
	Class, Name string
	Facts       []catalog.Fact
}

// catalogue shows the classes a job file may name.
func (s *Site) catalogue(w http.ResponseWriter, r *http.Request) {
	cat := catalog.Default()
	v := catalogueView{Version: cat.Version}
	for _, g := range cat.Groups() {
		out := catalogueGroup{Name: g.Name}
		for _, e := range g.Entries {
			out.Entries = append(out.Entries, catalogueEntry{e.Class, e.Name, catalog.Facts(e.Entry)})
		}
		v.Groups = append(v.Groups, out)
	}
	s.render(w, r, http.StatusOK, "catalogue", page{Title: "Materials by class", Nav: "catalogue", Body: v})
}
