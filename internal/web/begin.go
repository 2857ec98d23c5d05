package web

import (
	"net/http"

	"scarfwright/repair/demo"
	"scarfwright/repair/job"
)

// beginRow is one demo job that may be copied.
type beginRow struct{ Name, Number, Title, Boat, Note string }

// begin offers the demo jobs as something to begin with.
func (s *Site) begin(w http.ResponseWriter, r *http.Request) {
	var rows []beginRow
	for _, j := range demo.Jobs() {
		d, err := job.Parse(j.File, j.Data)
		if err != nil {
			panic(err) // the demo jobs are ours, and tested
		}
		rows = append(rows, beginRow{j.Name, d.Job.Number, d.Job.Title, d.Boat.Kind, d.Damage.Kind + ", reached from " + d.Damage.Access})
	}
	s.render(w, r, http.StatusOK, "new", page{Title: "A new job", Nav: "new", Body: rows})
}
