// Package web shows planned repairs as pages: made on the server, read on a
// phone, printed on paper, and working without any script.
//
// A handler reads the request into a description, has repair.Plan plan it, puts
// the result into a view struct and hands that to a template. It knows no rule
// of the trade. Each page action has a file of its own.
//
//	/                          the jobs, and where to start
//	/jobs/{name}               one plan; ?ratio=15&taper=both&order= plan it otherwise
//	/jobs/{name}/options       the ways to repair it, compared; ?plies=&ratio= with others
//	/jobs/{name}/files/{file}  the papers, as downloads
//	/jobs/{name}/save          POST: into the data folder
//	/check                     paste or upload a job file; POST shows what is wrong with it
//	/new                       begin with a copy of a demo job
//	/figures, /figures/{name}  the single calculations
//	/catalogue                 materials by class, with sources
//	/overcoat                  what goes on what; ?on=epoxy&lay=gelcoat&state=sanded narrows it
//	/proof, /about             what was checked; what this is and is not
//
// GET changes nothing. Nothing here calls out to the network.
package web

import (
	"fmt"
	"io"
	"log/slog"
	"net/http"
	"os"
	"time"

	"scarfwright/repair/catalog"
	"scarfwright/repair/ways"
)

// Options are what the pages need from outside.
type Options struct {
	Data    *os.Root         // folder of job files; nil: none, and nothing is saved
	Folder  string           // its name, as shown
	Demo    bool             // list the demo jobs (they are also listed when there is no folder)
	Hosts   []string         // host names to answer to, besides loopback names and IP addresses
	Version string           // of the program
	Now     func() time.Time // the time printed on papers
	Log     io.Writer        // where errors are told in full; nil: nowhere
}

// Site answers requests.
type Site struct {
	o      Options
	cat    catalog.Catalogue
	pages  pages
	assets assets
	pasted *pasted
	solved *ways.Memory // panels solved before
	log    *slog.Logger
	root   http.Handler
}

// New returns the site, or an error when a page's template is missing or wrong:
// better not to start than to fail at the page that is needed.
func New(o Options) (*Site, error) {
	p, err := loadPages()
	if err != nil {
		return nil, err
	}
	a, err := loadAssets()
	if err != nil {
		return nil, err
	}
	if o.Now == nil {
		return nil, fmt.Errorf("web: no clock given")
	}
	if o.Log == nil {
		o.Log = io.Discard
	}
	s := &Site{
		o: o, cat: catalog.Default(), pages: p, assets: a, pasted: &pasted{}, solved: &ways.Memory{},
		log: slog.New(slog.NewTextHandler(o.Log, nil)),
	}
	s.root = s.guard(s.routes())
	return s, nil
}

// HasStyle reports whether the page style and script were built into the program.
func (s *Site) HasStyle() bool { return s.assets.built }

func (s *Site) ServeHTTP(w http.ResponseWriter, r *http.Request) { s.root.ServeHTTP(w, r) }

func (s *Site) routes() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /{$}", s.home)
	mux.HandleFunc("GET /jobs/{name}", s.plan)
	mux.HandleFunc("GET /jobs/{name}/options", s.options)
	mux.HandleFunc("GET /jobs/{name}/options/{file}", s.optionFile)
	mux.HandleFunc("GET /jobs/{name}/files/{file}", s.file)
	mux.HandleFunc("POST /jobs/{name}/save", s.save)
	mux.HandleFunc("GET /check", s.checkForm)
	mux.HandleFunc("POST /check", s.check)
	mux.HandleFunc("GET /new", s.begin)
	mux.HandleFunc("GET /figures", s.figures)
	mux.HandleFunc("GET /figures/{name}", s.figure)
	mux.HandleFunc("GET /catalogue", s.catalogue)
	mux.HandleFunc("GET /overcoat", s.overcoat)
	mux.HandleFunc("GET /proof", s.proof)
	mux.HandleFunc("GET /about", s.about)
	mux.HandleFunc("GET /static/{file}", s.static)
	return s.orErrorPage(mux)
}
