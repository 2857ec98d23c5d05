package web

import (
	"bytes"
	"embed"
	"fmt"
	"html/template"
	"net/http"

	"scarfwright/repair/caution"
)

//go:embed templates/*.html
var templateFiles embed.FS

// pageNames are the pages there must be.
var pageNames = []string{"home", "plan", "options", "check", "new", "save", "figures", "figure", "catalogue", "overcoat", "proof", "about", "error"}

type pages map[string]*template.Template

// loadPages parses the frame, the parts and each page.
func loadPages() (pages, error) {
	frame, err := template.New("frame.html").Funcs(template.FuncMap{
		"sentence": func(s any) string { return sentence(fmt.Sprint(s)) },
	}).Option("missingkey=error").ParseFS(templateFiles, "templates/frame.html", "templates/part-*.html")
	if err != nil {
		return nil, fmt.Errorf("web: %w", err)
	}
	out := pages{}
	for _, name := range pageNames {
		t, err := frame.Clone()
		if err == nil {
			t, err = t.ParseFS(templateFiles, "templates/"+name+".html")
		}
		if err != nil {
			return nil, fmt.Errorf("web: page %s: %w", name, err)
		}
		if t.Lookup("main") == nil {
			return nil, fmt.Errorf("web: page %s defines no main", name)
		}
		out[name] = t
	}
	return out, nil
}

// page is what the frame of every page shows.
type page struct {
	Title   string
	Nav     string // which of the links at the top this page belongs to
	Style   string
	Script  string
	Plain   bool // the style was not built
	Caution string
	Version string
	Folder  string
	Foot    []field // title block at the foot; the plain one if empty
	Body    any
}

// field is one cell of a title block.
type field struct {
	Label, Value string
	Wide         bool
}

// Long reports whether the value is words that want a smaller size.
func (f field) Long() bool { return len([]rune(f.Value)) > 18 }

// render writes one page, whole or not at all.
func (s *Site) render(w http.ResponseWriter, r *http.Request, status int, name string, p page) {
	p.Style, p.Plain = s.assets.link("app.css"), !s.assets.built
	if p.Plain {
		p.Style = s.assets.link("plain.css")
	}
	p.Script = s.assets.link("app.js")
	p.Caution, p.Version, p.Folder = caution.General, s.o.Version, s.o.Folder
	var b bytes.Buffer
	if err := s.pages[name].ExecuteTemplate(&b, "frame.html", p); err != nil {
		panic(fmt.Errorf("page %s: %w", name, err))
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	if r.Method != http.MethodHead {
		w.Write(b.Bytes())
	}
}
