package sheet

import "scarfwright/repair/check"

// joints prints what goes on what in this job. Those that are ok stand here only;
// why the others are not, and who says so, stands among the checks.
func (p *paper) joints() {
	var rows [][]string
	for _, j := range p.r.Joints {
		x := j.Taken()
		first, why := x.Preparation, x.Ruling
		if s := j.Missed(); s != "" {
			first += ". " + s
		}
		if x.Disputed() {
			why += " SOURCES DISAGREE: " + x.Disagreement
		}
		if x.Verdict != check.OK { // its check has all of it but the sources
			why = "See its check."
			if x.Disputed() {
				why = "SOURCES DISAGREE: see its check."
			}
		}
		why += " Source: " + x.Source() + "."
		rows = append(rows, []string{j.What, j.Surface(), stateWords[x.Verdict], first, x.Risk, why})
	}
	p.section("What goes on what", "From the boat outwards. The sheets of both materials go over every line.", table{cols: []column{
		{"joint", 0.12, false, false}, {"surface", 0.15, false, false}, {"", 0.075, false, true}, {"first", 0.23, false, false}, {"risk", 0.145, false, false}, {"why, and who says so", 0.28, false, false},
	}, pt: 8, heads: true}, rows)
}

// inJoints reports whether a check stands in the table of joints and needs no line of its own.
func (p *paper) inJoints(v check.Verdict) bool { return v.State == check.OK && p.r.OfJoint(v) }
