package web

import (
	"fmt"
	"net/http"

	"scarfwright/repair"
	"scarfwright/repair/job"
)

// homeView is the list of jobs.
type homeView struct {
	Folder  string
	Mine    []jobRow
	Demos   []jobRow
	MaySave bool
}

// jobRow is one job in the list.
type jobRow struct {
	Name, Number, Title, Boat string
	Mark                      string // ok, watch, stop
	State                     string // in words
	Size, Price               string
}

func (s *Site) home(w http.ResponseWriter, r *http.Request) {
	list, err := s.entries()
	if err != nil {
		s.fail(w, r, http.StatusInternalServerError, "The data folder cannot be read", err.Error())
		return
	}
	v := homeView{Folder: s.o.Folder, MaySave: s.o.Data != nil}
	for _, e := range list {
		if row := s.row(e); e.Where == inDemo {
			v.Demos = append(v.Demos, row)
		} else {
			v.Mine = append(v.Mine, row)
		}
	}
	s.render(w, r, http.StatusOK, "home", page{Title: "Jobs", Nav: "jobs", Body: v})
}

// row says in a line how a job stands.
func (s *Site) row(e entry) jobRow {
	row := jobRow{Name: e.Name, Title: e.File, Mark: "stop", Size: "not known", Price: "not priced"}
	d, err := job.Parse(e.File, e.Data)
	if err != nil {
		n := len(problemsOf(err))
		row.State = fmt.Sprintf("Cannot be read: %s", counted(n, "problem"))
		return row
	}
	row.Number, row.Title, row.Boat = d.Job.Number, d.Job.Title, d.Boat.Name
	r, err := repair.Plan(d, s.cat)
	if err != nil {
		row.State = "Cannot be planned: " + err.Error()
		return row
	}
	row.Mark, row.State = standing(r)
	row.Size, row.Price = sizeOf(r), priceOf(r)
	return row
}
