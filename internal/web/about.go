package web

import "net/http"

// aboutView is what the page about the program needs to know of it.
type aboutView struct {
	Folder  string
	Version string
}

func (s *Site) about(w http.ResponseWriter, r *http.Request) {
	s.render(w, r, http.StatusOK, "about", page{Title: "What this is, and what it is not", Nav: "about", Body: aboutView{s.o.Folder, s.o.Version}})
}
