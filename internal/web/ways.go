package web

import (
	"bytes"
	"fmt"
	"net/http"
	"net/url"
	"strings"

	"scarfwright/present/drawing"
	"scarfwright/present/pack"
	"scarfwright/present/sheet"
	"scarfwright/present/view"
	"scarfwright/repair/caution"
	"scarfwright/repair/job"
	"scarfwright/repair/survey"
	"scarfwright/repair/ways"
)

// waysView is the page that compares the ways to repair one damage.
type waysView struct {
	Title, Name, Query string
	Block              []field
	Mark, State        string
	Reason             string
	Referrals          []survey.Referral
	Otherwise          otherwise
	Plies              string // as typed
	Problems           []formProblem
	Headline           []field
	Rows               []wayRow
	Loads              []ways.Load
	Detail             []wayDetail
	Bars, Field, Slope picture
	FieldWords         string
	Measurements       []measurementRow
	Outside            []string
	Assumed            []string
	Limits             []string
	Cautions           []caution.Caution
	Papers             []paperView
}

// wayRow is one way in the table.
type wayRow struct {
	Name, Plies, Standing, Strength, Stiffness           string
	Size, Ground, Dust, Bond, Weight, Hours, Days, Price string
	Left                                                 string
	Link                                                 string // plan it so; empty where it cannot be
	Taken                                                bool
}

// wayDetail is one way under every load.
type wayDetail struct {
	Name  string
	Notes []string
	Cases []caseRow
}

type caseRow struct {
	Load, Original, Repaired, Ply, Edge, Bond, Core, Strength, Mode, Where, Hand string
}

type measurementRow struct{ What, How, Now string }

// compared is a comparison that an address asks for.
type compared struct {
	entry entry
	o     otherwise
	typed string // plies
	d     job.Description
	r     ways.Result
}

// compareAsked compares the ways to repair a job's damage, as it stands or as the
// address asks for it; it answers by itself, and reports false, where it cannot.
func (s *Site) compareAsked(w http.ResponseWriter, r *http.Request) (compared, bool) {
	e, ok := s.entryOf(w, r)
	if !ok {
		return compared{}, false
	}
	d, err := job.Parse(e.File, e.Data)
	if err != nil {
		s.showProblems(w, r, e, err)
		return compared{}, false
	}
	o, changed := readOtherwise(r.URL.Query(), d)
	typed := strings.TrimSpace(r.URL.Query().Get("plies"))
	if typed != "" && len(o.Problems) == 0 {
		list, err := readPlies(typed)
		if err != nil {
			o.Problems = append(o.Problems, formProblem{"plies", sentence(err.Error())})
		} else {
			changed.Choices.Plies = list
		}
	}
	res, err := ways.Compare(changed, s.cat, s.solved)
	if err != nil && (o.changed() || typed != "") && len(o.Problems) == 0 {
		// What was asked for cannot be compared: say so over the job as it stands.
		o.Problems = append(o.Problems, formProblem{"", err.Error()})
		changed = d
		res, err = ways.Compare(d, s.cat, s.solved)
	}
	if err != nil {
		s.showProblems(w, r, e, err)
		return compared{}, false
	}
	return compared{e, o, typed, changed, res}, true
}

// options is the page that compares the ways.
func (s *Site) options(w http.ResponseWriter, r *http.Request) {
	c, ok := s.compareAsked(w, r)
	if !ok {
		return
	}
	status := http.StatusOK
	if len(c.o.Problems) > 0 {
		status = http.StatusUnprocessableEntity
	}
	v := s.waysView(c.entry, c.o, c.typed, c.d, c.r)
	s.render(w, r, status, "options", page{Title: v.Title, Nav: "jobs", Body: v})
}

// optionFile sends one paper of the comparison.
func (s *Site) optionFile(w http.ResponseWriter, r *http.Request) {
	c, ok := s.compareAsked(w, r)
	if !ok {
		return
	}
	if len(c.o.Problems) > 0 {
		s.fail(w, r, http.StatusUnprocessableEntity, "This paper cannot be made", c.o.Problems[0].Message)
		return
	}
	for _, f := range pack.WaysFiles(c.d, c.r, s.paperOptions(c.d)) {
		if f.Name != r.PathValue("file") {
			continue
		}
		var b bytes.Buffer
		if err := f.Write(&b); err != nil {
			panic(fmt.Errorf("%s of %s: %w", f.Name, c.entry.Name, err))
		}
		sendDownload(w, r, f.Name, f.Type, b.Bytes())
		return
	}
	s.notFound(w, r)
}

// paperOptions are the papers' settings: the job's choices, the clock, this program.
func (s *Site) paperOptions(d job.Description) sheet.Options {
	return sheet.Options{Paper: d.Choices.Paper, Units: d.Choices.Units, Now: s.o.Now(), Program: "scarfwright " + s.o.Version}
}

// readPlies reads "csm450, bxm800@45, csm450", outside to inside.
func readPlies(text string) ([]job.PlyRef, error) {
	var out []job.PlyRef
	for _, word := range strings.FieldsFunc(text, func(c rune) bool { return c == ',' || c == '/' || c == ' ' || c == ';' }) {
		var p job.PlyRef
		if err := p.UnmarshalText([]byte(word)); err != nil {
			return nil, fmt.Errorf("%q is no ply: %w. Write classes outside to inside, such as csm450, bxm800, csm450", word, err)
		}
		out = append(out, p)
	}
	return out, nil
}

func (s *Site) waysView(e entry, o otherwise, typed string, d job.Description, r ways.Result) waysView {
	u := units{d.Choices.Units == "us"}
	v := waysView{
		Title: "Ways to repair it: " + d.Job.Number, Name: e.Name, Otherwise: o, Plies: typed, Problems: o.Problems,
		Reason: r.Reason, Referrals: r.Referrals, Loads: r.Loads,
		Outside: r.Outside, Assumed: r.Assumptions, Limits: r.Limits, Cautions: r.Cautions,
	}
	v.Query = o.query()
	if typed != "" && len(o.Problems) == 0 {
		join := "?"
		if v.Query != "" {
			join = "&"
		}
		v.Query += join + "plies=" + url.QueryEscape(typed)
	}
	v.Mark, v.State = "watch", "Nothing recommended."
	if r.Recommended >= 0 {
		w := r.Ways[r.Recommended]
		v.Mark, v.State = "ok", "Recommended: "+w.Name+"."
		if w.Strength.Likely < ways.AsBefore {
			v.Mark = "watch"
		}
		v.Headline = waysHeadline(u, d, w)
	}
	if len(r.Referrals) > 0 {
		v.Mark, v.State = "stop", "Referred on."
	}
	chosen := ""
	for _, w := range r.Ways {
		if w.Chosen {
			chosen = w.List
		}
	}
	for _, w := range r.Ways {
		row := s.wayRow(u, d, e, w)
		if w.List != chosen { // the plan would take the chosen list
			row.Link = ""
		}
		v.Rows = append(v.Rows, row)
		if w.Recommended || w.Chosen || w.Kind == ways.Plug {
			v.Detail = append(v.Detail, detailOf(w))
		}
	}
	for to, drawn := range map[*picture]*drawing.Scene{&v.Bars: view.WaysBars(d, r), &v.Field: view.WaysField(d, r), &v.Slope: view.WaysSlope(d, r)} {
		if drawn != nil {
			*to = pictureOf(drawn)
		}
	}
	if len(r.Referrals) > 0 {
		v.Papers = append(v.Papers, paperView{"referral-sheet.pdf", "Referral sheet: who must decide first", "/jobs/" + url.PathEscape(e.Name) + "/files/referral-sheet.pdf", "application/pdf"})
	}
	for _, f := range pack.WaysFiles(d, r, s.paperOptions(d)) {
		v.Papers = append(v.Papers, paperView{f.Name, f.Title, "/jobs/" + url.PathEscape(e.Name) + "/options/" + url.PathEscape(f.Name) + v.Query, f.Type})
	}
	v.FieldWords = "How much of its strength the most strained ply uses, place by place, under pressure."
	for _, m := range r.Measurements {
		v.Measurements = append(v.Measurements, measurementRow{m.What, m.How, "alone it makes " + ways.Num(m.Now.Low) + " to " + ways.Num(m.Now.High)})
	}
	return v
}

func waysHeadline(u units, d job.Description, w ways.Way) []field {
	out := []field{
		{Label: "strength against the original", Value: w.Strength.Text(), Wide: true},
		{Label: "weakest in", Value: w.Weakest(), Wide: true},
		{Label: "stiffness", Value: ways.Num(w.Stiffness.Likely)},
		{Label: "plies, outside to inside", Value: w.Plies, Wide: true},
	}
	if w.Size[0] > 0 {
		out = append(out, field{Label: "size", Value: u.size(w.Size[0], w.Size[1])})
	}
	return append(out,
		field{Label: "ground", Value: u.area(w.Ground)},
		field{Label: "hours", Value: fmt.Sprintf("%.0f to %.0f", w.Hours.Low, w.Hours.High)},
		field{Label: "days, rough", Value: fmt.Sprint(w.Days)},
		field{Label: "error of the arithmetic", Value: fmt.Sprintf("%.1f %%", 100*w.Error)},
	)
}

func (s *Site) wayRow(u units, d job.Description, e entry, w ways.Way) wayRow {
	row := wayRow{
		Name: w.Name, Plies: w.Plies, Standing: w.Standing(), Strength: w.Strength.Text(),
		Stiffness: ways.Num(w.Stiffness.Likely), Size: "–", Ground: u.area(w.Ground), Dust: grams(w.DustMass), Bond: u.area(w.Bond),
		Weight: ways.Weight(w.Added, d.Choices.System()), Hours: trimmed(w.Hours.Likely, 1), Days: fmt.Sprint(w.Days),
		Price: money(currency(d), w.Price), Left: w.Left, Taken: w.Recommended,
	}
	if w.Size[0] > 0 {
		row.Size = u.size(w.Size[0], w.Size[1])
	}
	if w.Ratio > 0 && w.Fits && w.Kind != ways.Stepped && !w.Chosen {
		q := url.Values{"ratio": {trimmed(w.Ratio, 2)}, "taper": {w.Sides}}
		row.Link = "/jobs/" + url.PathEscape(e.Name) + "?" + q.Encode()
	}
	return row
}

func currency(d job.Description) string {
	if d.Crew.Currency == "" {
		return "¤"
	}
	return d.Crew.Currency
}

func detailOf(w ways.Way) wayDetail {
	out := wayDetail{Name: w.Name, Notes: w.Notes}
	share := func(x float64) string { return trimmed(100*x, 0) + nb + "%" }
	for _, c := range w.Cases {
		row := caseRow{
			Load: c.Load, Original: share(c.Original), Repaired: share(c.Repaired), Ply: share(c.Ply), Edge: share(c.Edge),
			Bond: share(c.Bond), Core: "–", Strength: ways.Num(c.Strength), Mode: c.Mode, Where: c.Where, Hand: ways.Num(c.Hand),
		}
		if c.Core > 0 {
			row.Core = share(c.Core)
		}
		out.Cases = append(out.Cases, row)
	}
	return out
}
