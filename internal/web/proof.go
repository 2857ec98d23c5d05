package web

import (
	"net/http"

	"scarfwright/repair/proof"
	"scarfwright/repair/working"
)

// proofView is the table of checks, by group.
type proofView struct {
	Count, Off int
	Groups     []proofGroup
}

type proofGroup struct {
	Name, Source, Known string
	Rows                []proofRow
}

type proofRow struct {
	What, Expected, Ours, Tolerance, Err string
	Pass                                 bool
}

// proof computes every check now: what is shown is what this program does.
func (s *Site) proof(w http.ResponseWriter, r *http.Request) {
	checks := proof.All()
	v := proofView{Count: len(checks), Off: len(proof.Failed(checks))}
	for _, c := range checks {
		n := len(v.Groups)
		if n == 0 || v.Groups[n-1].Name != c.Group || v.Groups[n-1].Source != c.Source || v.Groups[n-1].Known != string(c.Provenance) {
			v.Groups = append(v.Groups, proofGroup{Name: c.Group, Source: c.Source, Known: string(c.Provenance)})
			n++
		}
		unit := ""
		if c.Unit != "" && c.Unit != "1" {
			unit = " " + c.Unit
		}
		v.Groups[n-1].Rows = append(v.Groups[n-1].Rows, proofRow{
			c.What, working.Num(c.Expected, 6) + unit, working.Num(c.Ours, 7), c.Tolerance(), c.Err, c.Pass(),
		})
	}
	s.render(w, r, http.StatusOK, "proof", page{Title: "What the numbers were checked against", Nav: "proof", Body: v})
}
