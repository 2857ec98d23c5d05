package web

import (
	"errors"
	"io/fs"
	"net/http"

	"scarfwright/repair"
	"scarfwright/repair/job"
)

// plan shows one job's plan, as it stands or as the address asks for it.
func (s *Site) plan(w http.ResponseWriter, r *http.Request) {
	e, ok := s.entryOf(w, r)
	if !ok {
		return
	}
	d, err := job.Parse(e.File, e.Data)
	if err != nil {
		s.showProblems(w, r, e, err)
		return
	}
	o, changed := readOtherwise(r.URL.Query(), d)
	res, err := repair.Plan(changed, s.cat)
	if err != nil && o.changed() && len(o.Problems) == 0 {
		// What was asked for cannot be planned: say so over the plan as it stood.
		o.Problems = append(o.Problems, formProblem{"", err.Error()})
		res, err = repair.Plan(d, s.cat)
	}
	if err != nil {
		s.showProblems(w, r, e, err)
		return
	}
	status := http.StatusOK
	if len(o.Problems) > 0 {
		status = http.StatusUnprocessableEntity
	}
	v := s.planView(e, o, res)
	s.render(w, r, status, "plan", page{Title: v.Title, Nav: "jobs", Foot: v.Block, Body: v})
}

// entryOf finds the job an address names, or answers that there is none.
func (s *Site) entryOf(w http.ResponseWriter, r *http.Request) (entry, bool) {
	e, err := s.find(r.PathValue("name"))
	switch {
	case err == nil:
		return e, true
	case errors.Is(err, fs.ErrNotExist):
		s.notFound(w, r)
	default:
		s.fail(w, r, http.StatusNotFound, "This job cannot be opened", err.Error())
	}
	return entry{}, false
}
