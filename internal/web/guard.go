package web

import (
	"crypto/rand"
	"errors"
	"net"
	"net/http"
	"runtime/debug"
	"slices"
	"strings"
)

// headers stand on every response. Nothing is loaded from elsewhere, nothing
// runs that is not a file of ours, and no other page may frame this one.
var headers = map[string]string{
	"Content-Security-Policy":      "default-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'",
	"X-Content-Type-Options":       "nosniff",
	"X-Frame-Options":              "DENY",
	"Referrer-Policy":              "same-origin",
	"Cross-Origin-Opener-Policy":   "same-origin",
	"Cross-Origin-Resource-Policy": "same-origin",
	"Permissions-Policy":           "camera=(), geolocation=(), microphone=()",
	"Cache-Control":                "no-cache", // a plan re-made must not be shown from yesterday
}

// guard puts the headers on, refuses what does not come from a page of ours,
// and turns a panic into a page.
func (s *Site) guard(next http.Handler) http.Handler {
	cross := http.NewCrossOriginProtection()
	cross.SetDenyHandler(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		s.fail(w, r, http.StatusForbidden, "This form was sent from another site",
			"Open this page from the workshop's own address and send the form from there. Nothing was changed.")
	}))
	next = cross.Handler(next)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		for k, v := range headers {
			w.Header().Set(k, v)
		}
		defer s.caught(w, r)
		if !s.answersTo(r.Host) {
			// A name we do not know may be a stranger's, pointed at this machine
			// (DNS rebinding): its pages could then read the jobs.
			s.fail(w, r, http.StatusMisdirectedRequest, "This address is not one of this program's",
				"Open it by its number, such as http://127.0.0.1:8321, or start it with --addr and the name it shall answer to.")
			return
		}
		next.ServeHTTP(w, r)
	})
}

// caught turns a panic of ours into a page with a number to ask for; what
// happened goes to the log only.
func (s *Site) caught(w http.ResponseWriter, r *http.Request) {
	err := recover()
	if err == nil {
		return
	}
	if e, ok := err.(error); ok && errors.Is(e, http.ErrAbortHandler) {
		panic(err)
	}
	id := strings.ToLower(rand.Text()[:8])
	s.log.Error("panic", "request", id, "method", r.Method, "path", r.URL.Path, "error", err, "stack", string(debug.Stack()))
	s.fail(w, r, http.StatusInternalServerError, "The program made a mistake",
		"This is a fault of ours, not of your file. Nothing was saved. The log has it under request "+id+".")
}

// answersTo reports whether a Host header names this program.
func (s *Site) answersTo(host string) bool {
	name := host
	if h, _, err := net.SplitHostPort(host); err == nil {
		name = h
	}
	name = strings.ToLower(strings.TrimSuffix(strings.Trim(name, "[]"), "."))
	if name == "localhost" || strings.HasSuffix(name, ".localhost") || net.ParseIP(name) != nil {
		return true
	}
	return slices.ContainsFunc(s.o.Hosts, func(h string) bool { return h != "" && strings.EqualFold(h, name) })
}
