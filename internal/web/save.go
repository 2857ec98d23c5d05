package web

import (
	"bytes"
	"errors"
	"io/fs"
	"net/http"
	"os"
	"regexp"
	"strings"

	"scarfwright/repair/job"
)

// saveView asks again before a file is overwritten, or for another name.
type saveView struct {
	Name     string // of the job, in the address
	Query    string
	As       string
	Problem  string
	MayForce bool
}

// fileName is what a job may be called: it becomes a file name on any system and
// a word in an address.
var fileName = regexp.MustCompile(`^[a-z0-9][a-z0-9-]{0,59}$`)

// reserved are names a Windows machine keeps for itself.
var reserved = regexp.MustCompile(`^(con|prn|aux|nul|com[0-9]|lpt[0-9])$`)

// slug makes a file name of any text.
func slug(text string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(text) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	s := b.String()
	return strings.Trim(s[:min(len(s), 40)], "-")
}

// save writes a job into the data folder. It never overwrites unasked, and then
// keeps the former file as NAME.yaml.bak.
func (s *Site) save(w http.ResponseWriter, r *http.Request) {
	e, ok := s.entryOf(w, r)
	if !ok {
		return
	}
	r.Body = http.MaxBytesReader(w, r.Body, 64<<10)
	if err := r.ParseForm(); err != nil {
		s.fail(w, r, http.StatusBadRequest, "The form could not be read", "Go back and send it again. Nothing was saved.")
		return
	}
	if s.o.Data == nil {
		s.fail(w, r, http.StatusConflict, "There is no data folder", "Start the program with --data and a folder to keep jobs in. Until then, download the job file.")
		return
	}
	o, data, err := s.toSave(e, r)
	if err != nil {
		s.showProblems(w, r, e, err)
		return
	}
	v := saveView{Name: e.Name, Query: o.query(), As: strings.TrimSpace(r.PostForm.Get("as"))}
	if !fileName.MatchString(v.As) || reserved.MatchString(v.As) {
		v.Problem = "The name has small letters a to z, digits and hyphens, begins with a letter or digit, and has 60 at most. Give one such as sloop-2026-03."
		s.render(w, r, http.StatusUnprocessableEntity, "save", page{Title: "Error: save the job", Nav: "jobs", Body: v})
		return
	}
	err = writeNew(s.o.Data, v.As+".yaml", data, r.PostForm.Get("overwrite") == "yes")
	switch {
	case errors.Is(err, fs.ErrExist):
		v.Problem, v.MayForce = "There is a job "+v.As+" already. Nothing was saved. Give another name, or overwrite it.", true
		s.render(w, r, http.StatusConflict, "save", page{Title: "Error: save the job", Nav: "jobs", Body: v})
	case err != nil:
		s.log.Error("save", "error", err)
		s.fail(w, r, http.StatusInternalServerError, "The job could not be saved", err.Error())
	default:
		http.Redirect(w, r, "/jobs/"+v.As, http.StatusSeeOther)
	}
}

// toSave returns the job file as it is, or the canonical one of a plan that was
// made otherwise.
func (s *Site) toSave(e entry, r *http.Request) (otherwise, []byte, error) {
	d, err := job.Parse(e.File, e.Data)
	if err != nil {
		return otherwise{}, nil, err
	}
	o, d := readOtherwise(r.URL.Query(), d)
	if len(o.Problems) > 0 {
		return o, nil, errors.New(o.Problems[0].Message)
	}
	if !o.changed() {
		return o, e.Data, nil
	}
	var b bytes.Buffer
	if err := job.Write(&b, d); err != nil {
		return o, nil, err
	}
	return o, b.Bytes(), nil
}

// writeNew writes a file that must not be there yet; with force the one that is
// there is kept beside it. What is written is on the disk when it returns.
func writeNew(root *os.Root, name string, data []byte, force bool) error {
	if force {
		if err := root.Rename(name, name+".bak"); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
	}
	f, err := root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err != nil {
		_ = root.Remove(name) // half a job file is worse than none
	}
	return err
}
