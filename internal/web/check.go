package web

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"net/http"
	"strings"
	"unicode/utf8"

	"scarfwright/repair"
	"scarfwright/repair/job"
)

// checkView is the page where a job file is pasted, and told what is wrong.
type checkView struct {
	Text     string
	File     string // where the text came from, when it was a file
	Checked  bool
	Problems []problemView
	Listing  []line
	From     string // demo job the text was copied from
}

// problemView is one problem with its place.
type problemView struct {
	job.Problem
	Anchor string // of the line in the listing, "" when the place is not known
}

// Place names the line, unless the message does so itself.
func (p problemView) Place() string {
	if p.Line < 1 || strings.HasPrefix(p.Message, "Line ") {
		return ""
	}
	return fmt.Sprintf("Line %d", p.Line)
}

// Next is what to do, unless the message has said it.
func (p problemView) Next() string {
	if strings.Contains(p.Message, strings.TrimSuffix(p.Hint, ".")) {
		return ""
	}
	return p.Hint
}

// line is one line of the listing.
type line struct {
	Number   int
	Text     string
	Problems []problemView
	Gap      bool // lines were left out before this one
}

const (
	mostPosted  = job.MaxBytes + 64<<10 // the file and the form round it
	listedWhole = 600                   // lines; a longer file is shown round its problems only
	listedRound = 3
)

// checkForm shows the empty form, or a demo job to begin with.
func (s *Site) checkForm(w http.ResponseWriter, r *http.Request) {
	v := checkView{}
	if from := r.URL.Query().Get("from"); from != "" {
		e, err := s.find(from)
		if err != nil {
			e, err = demoEntry(from)
		}
		if err != nil {
			s.notFound(w, r)
			return
		}
		v.Text, v.From = string(e.Data), e.Name
	}
	s.render(w, r, http.StatusOK, "check", page{Title: "Check a job file", Nav: "check", Body: v})
}

// check reads a posted job file. A clean one is kept in memory and its plan
// shown; with problems, all of them are, and the text stays in the form.
func (s *Site) check(w http.ResponseWriter, r *http.Request) {
	r.Body = http.MaxBytesReader(w, r.Body, mostPosted)
	text, file, err := posted(r)
	var tooBig *http.MaxBytesError
	switch {
	case errors.As(err, &tooBig) || len(text) > job.MaxBytes:
		s.fail(w, r, http.StatusRequestEntityTooLarge, "This file is too big for a job file",
			"A job file has 1 MB at most; the largest demo job has some 13 kB. Nothing was read.")
		return
	case err != nil:
		s.fail(w, r, http.StatusBadRequest, "The form could not be read", "Send it again from the page of the check. Nothing was read.")
		return
	}
	sum := sha256.Sum256(text)
	e := entry{"pasted-" + hex.EncodeToString(sum[:6]), file, inMemory, text}
	if e.File == "" {
		e.File = "pasted text"
	}
	d, err := job.Parse(e.File, text)
	if err == nil {
		_, err = repair.Plan(d, s.cat)
	}
	if err != nil {
		s.showProblems(w, r, e, err)
		return
	}
	s.pasted.put(e)
	http.Redirect(w, r, "/jobs/"+e.Name, http.StatusSeeOther)
}

// posted returns the uploaded file, or else the pasted text. A browser sends a
// text area's lines with CR and LF; a file is left as it is.
func posted(r *http.Request) (text []byte, file string, err error) {
	if strings.HasPrefix(r.Header.Get("Content-Type"), "multipart/") {
		if err := r.ParseMultipartForm(mostPosted); err != nil {
			return nil, "", err
		}
		f, h, err := r.FormFile("file")
		if err == nil {
			defer f.Close()
			if text, err = io.ReadAll(f); err != nil || len(text) > 0 {
				return text, h.Filename, err
			}
		} else if !errors.Is(err, http.ErrMissingFile) {
			return nil, "", err
		}
	} else if err := r.ParseForm(); err != nil {
		return nil, "", err
	}
	return []byte(strings.ReplaceAll(r.PostFormValue("text"), "\r\n", "\n")), "", nil
}

// showProblems shows what is wrong with a job file, in its own lines.
func (s *Site) showProblems(w http.ResponseWriter, r *http.Request, e entry, err error) {
	v := checkView{Text: string(e.Data), File: e.File, Checked: true}
	if !utf8.Valid(e.Data) {
		v.Text = "" // it would come back changed
	}
	lines := strings.Split(v.Text, "\n")
	for _, p := range problemsOf(err) {
		x := problemView{Problem: p}
		if p.Line >= 1 && p.Line <= len(lines) && v.Text != "" {
			x.Anchor = fmt.Sprintf("line-%d", p.Line)
		}
		v.Problems = append(v.Problems, x)
	}
	if v.Text != "" {
		v.Listing = listing(lines, v.Problems)
	}
	s.render(w, r, http.StatusUnprocessableEntity, "check", page{Title: "Error: " + counted(len(v.Problems), "problem") + " in " + e.File, Nav: "check", Body: v})
}

// problemsOf returns the problems of a job file, or one made of another error.
func problemsOf(err error) []job.Problem {
	var e *job.Errors
	if errors.As(err, &e) {
		return e.Problems
	}
	return []job.Problem{{Message: err.Error(), Hint: "The file reads clean, but it cannot be planned like this."}}
}

func listing(lines []string, problems []problemView) []line {
	at := map[int][]problemView{}
	near := map[int]bool{}
	for _, p := range problems {
		at[p.Line] = append(at[p.Line], p)
		for n := p.Line - listedRound; n <= p.Line+listedRound; n++ {
			near[n] = true
		}
	}
	var out []line
	gap := false
	for i, t := range lines {
		n := i + 1
		if len(lines) > listedWhole && !near[n] {
			gap = true
			continue
		}
		if r := []rune(t); len(r) > 400 {
			t = string(r[:400]) + " ..."
		}
		out = append(out, line{n, t, at[n], gap})
		gap = false
	}
	return out
}
