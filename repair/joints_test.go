package repair_test

import (
	"strings"
	"testing"

	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/catalog"
	"scarfwright/repair/check"
	"scarfwright/repair/demo"
	"scarfwright/repair/job"
	"scarfwright/repair/overcoat"
	"scarfwright/repair/programme"
)

// A session laid on the last is judged by the tacky face where the plan lies inside
// the window, and by the sanded one everywhere else; step and verdict say the same.
func TestSessionOnSession(t *testing.T) {
	for _, c := range []struct {
		about, job string
		change     func(*job.Description)
		inside     bool
		state      check.State
		value      string // of the verdict
		why        string
		step       string // of the second session
	}{
		{
			"polyester as soon as it may go on: no sanding", "day-launch", func(*job.Description) {}, true, check.OK,
			"polyester on polyester (tacky), laid 3 h after, window 2.5 to 32.5 h", "If the window is missed, go by polyester on polyester (sanded), watch: grind with P36",
			"As planned (laid 3 h after, window 2.5 to 32.5 h): lay straight on, if the last session is tacky",
		},
		{
			"epoxy, three sessions in a day: no sanding", "sloop", func(*job.Description) {}, true, check.OK,
			"epoxy on epoxy (tacky), session 2: laid 3 h after, window 2.9 to 10.0 h; session 3: laid 3 h after, window 2.6 to 9.2 h", "If the window is missed",
			"As planned (laid 3 h after, window 2.9 to 10.0 h): lay straight on",
		},
		{
			"epoxy without heat, shut overnight: not before it can be sanded", "sloop", func(d *job.Description) { d.Choices.Heat = "none" }, false, check.OK,
			"too late for the window of 5.3 to 16.0 h", "washed before it was sanded",
			"too late for the window of 5.3 to 16.0 h): let it go hard, then wash with water",
		},
		{
			"no days: as sanded, the window in words", "day-launch", func(d *job.Description) { d.Site.Days = nil }, false, check.Watch,
			"polyester on polyester (sanded), no hour of laying known, window ", "grind with P36",
			"lay straight on (no hour of laying known, window ",
		},
		{
			"one hour of one day for two sessions: the second has none", "day-launch", func(d *job.Description) {
				d.Site.Days = []job.Day{d.Site.Days[0], {Min: si.Celsius(2), Max: si.Celsius(5), Dew: si.Celsius(0)}}
				d.Site.Days[0].Max = si.Celsius(15.6)
			}, false, check.Watch,
			"no open day is left for it, window ", "grind with P36", "lay straight on (no open day is left for it",
		},
	} {
		d, err := demo.Parse(c.job)
		if err != nil {
			t.Fatal(err)
		}
		c.change(&d)
		r, err := repair.Plan(d, catalog.Default())
		if err != nil {
			t.Fatalf("%s: %v", c.about, err)
		}
		var j overcoat.Joint
		for _, x := range r.Joints {
			if strings.HasPrefix(x.What, "next session") {
				j = x
			}
		}
		v := j.Check()
		if j.Inside != c.inside || v.State != c.state || !strings.Contains(v.Value, c.value) || !strings.Contains(v.Why, c.why) {
			t.Errorf("%s: got inside %v, %s %q, %q; want %v, %s with %q and %q", c.about, j.Inside, v.State, v.Value, v.Why, c.inside, c.state, c.value, c.why)
		}
		if step := secondSession(r.Programme); !strings.Contains(step, c.step) {
			t.Errorf("%s: got step %q, want %q in it", c.about, step, c.step)
		}
	}
}

// secondSession is what is done first in the second laminating session.
func secondSession(p programme.Programme) string {
	for _, s := range p.Steps {
		if strings.HasPrefix(s.Name, "Laminate, session 2") {
			return s.Do[0]
		}
	}
	return ""
}

// No session is planned before the window opens: the hours are moved after planning.
func TestTheStepOfASessionThatComesTooEarly(t *testing.T) {
	d, err := demo.Parse("sloop")
	if err != nil {
		t.Fatal(err)
	}
	r, err := repair.Plan(d, catalog.Default())
	if err != nil {
		t.Fatal(err)
	}
	resin, err := catalog.Default().Resin(d.Shelf.Resin)
	if err != nil {
		t.Fatal(err)
	}
	s := r.Curing.Sessions
	s[1].Day, s[1].Hour = s[0].Day, s[0].Hour+2
	p := programme.Plan(programme.Input{
		Job: d, Resin: resin, Survey: r.Survey, Design: r.Design, Curing: r.Curing, Mixing: r.Mixing, Finish: r.Finish, Hours: r.Programme.Hours,
	})
	want := "As planned (laid 2 h after, too early for the window of 2.9 to 10.0 h): wait until the window opens"
	if got := secondSession(p); !strings.Contains(got, want) {
		t.Errorf("got %q, want %q in it", got, want)
	}
}
