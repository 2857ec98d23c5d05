package web

import (
	"bytes"
	"fmt"
	"html/template"
	"io"
	"net/http"
	"net/url"

	"scarfwright/present/drawing"
	"scarfwright/present/pack"
	"scarfwright/present/view"
	"scarfwright/repair"
	"scarfwright/repair/job"
)

// This file is all that the pages know of the drawings and the job pack.

func sectionOf(r repair.Result) picture { return pictureOf(view.Section(r)) }
func planOf(r repair.Result) picture    { return pictureOf(view.Plan(r)) }
func optionsOf(r repair.Result) picture { return pictureOf(view.Options(r)) }

// pictureOf puts a scene into the page as it is: our own bytes, whose text the
// scene has escaped.
func pictureOf(s *drawing.Scene) picture {
	var b bytes.Buffer
	if err := s.WriteSVG(&b); err != nil {
		return picture{Missing: "The drawing could not be made: " + err.Error()}
	}
	return picture{SVG: template.HTML(b.String())}
}

// paperView is one file to fetch.
type paperView struct{ Name, Title, Link, Type string }

// paper is one file of a job, to be written when it is asked for.
type paper struct {
	name, title, mime string
	write             func(io.Writer) error
}

// papersOf lists the files of the job pack. The job file is the one that was
// read, remarks and all, unless the plan was made otherwise: then it is the file
// of that plan, so that what is fetched is what was seen.
func (s *Site) papersOf(e entry, changed bool, r repair.Result) []paper {
	var out []paper
	for _, f := range pack.Files(r, s.paperOptions(r.Job)) {
		p := paper{f.Name, f.Title, f.Type, f.Write}
		if p.name == jobFile && !changed {
			p.write = func(w io.Writer) error { _, err := w.Write(e.Data); return err }
		}
		out = append(out, p)
	}
	return out
}

const jobFile = "job.yaml"

func (s *Site) papers(e entry, query string, r repair.Result) []paperView {
	var out []paperView
	for _, p := range s.papersOf(e, query != "", r) {
		out = append(out, paperView{p.name, p.title, "/jobs/" + url.PathEscape(e.Name) + "/files/" + url.PathEscape(p.name) + query, p.mime})
	}
	return out
}

// file sends one paper of a job.
func (s *Site) file(w http.ResponseWriter, r *http.Request) {
	e, ok := s.entryOf(w, r)
	if !ok {
		return
	}
	d, err := job.Parse(e.File, e.Data)
	if err != nil {
		s.showProblems(w, r, e, err)
		return
	}
	o, d := readOtherwise(r.URL.Query(), d)
	if len(o.Problems) > 0 {
		s.fail(w, r, http.StatusUnprocessableEntity, "This paper cannot be made", o.Problems[0].Message)
		return
	}
	res, err := repair.Plan(d, s.cat)
	if err != nil {
		s.fail(w, r, http.StatusUnprocessableEntity, "This paper cannot be made", err.Error())
		return
	}
	for _, p := range s.papersOf(e, o.changed(), res) {
		if p.name != r.PathValue("file") {
			continue
		}
		var b bytes.Buffer
		if err := p.write(&b); err != nil {
			panic(fmt.Errorf("%s of %s: %w", p.name, e.Name, err))
		}
		name := p.name
		if name == jobFile {
			name = e.Name + ".yaml"
		}
		sendDownload(w, r, name, p.mime, b.Bytes())
		return
	}
	s.notFound(w, r)
}
