package web

import "net/http"

// failure is a page that says what went wrong and what to do.
type failure struct {
	Status int
	Title  string
	Text   string
}

func (s *Site) fail(w http.ResponseWriter, r *http.Request, status int, title, text string) {
	s.render(w, r, status, "error", page{Title: title, Body: failure{status, title, text}})
}

func (s *Site) notFound(w http.ResponseWriter, r *http.Request) {
	s.fail(w, r, http.StatusNotFound, "There is no such page",
		"Nothing is kept at this address. A pasted job is forgotten when the program stops; paste its file again. The list of jobs is the first page.")
}

func (s *Site) notAllowed(w http.ResponseWriter, r *http.Request, allow string) {
	w.Header().Set("Allow", allow)
	s.fail(w, r, http.StatusMethodNotAllowed, "This address does not take "+shortMethod(r.Method),
		"It answers to: "+allow+". Nothing was changed.")
}

func shortMethod(m string) string {
	if len(m) > 10 {
		return "that method"
	}
	return m
}

// orErrorPage answers with pages of ours where the mux has none for a request.
func (s *Site) orErrorPage(mux *http.ServeMux) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h, pattern := mux.Handler(r)
		if pattern != "" {
			mux.ServeHTTP(w, r)
			return
		}
		rec := &verdictOnly{header: http.Header{}}
		h.ServeHTTP(rec, r)
		if rec.status == http.StatusMethodNotAllowed {
			s.notAllowed(w, r, rec.header.Get("Allow"))
			return
		}
		s.notFound(w, r)
	})
}

// verdictOnly takes down what the mux would have answered.
type verdictOnly struct {
	header http.Header
	status int
}

func (v *verdictOnly) Header() http.Header         { return v.header }
func (v *verdictOnly) Write(b []byte) (int, error) { return len(b), nil }
func (v *verdictOnly) WriteHeader(status int)      { v.status = status }
