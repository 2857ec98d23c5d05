package web

import (
	"bytes"
	"context"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"
)

func TestAPanicIsAPageWithANumber(t *testing.T) {
	var log bytes.Buffer
	s, err := New(Options{Now: time.Now, Log: &log})
	if err != nil {
		t.Fatal(err)
	}
	h := s.guard(http.HandlerFunc(func(http.ResponseWriter, *http.Request) { panic("the secret cause") }))
	w := httptest.NewRecorder()
	h.ServeHTTP(w, httptest.NewRequest("GET", "http://localhost/", nil))
	if w.Code != 500 || !strings.Contains(w.Body.String(), "under request ") || strings.Contains(w.Body.String(), "secret cause") {
		t.Errorf("got status %d, page:\n%s", w.Code, w.Body)
	}
	if !strings.Contains(log.String(), "the secret cause") {
		t.Error("got a log without the cause")
	}
	if w.Header().Get("Content-Security-Policy") == "" {
		t.Error("got no headers on the page of a panic")
	}
}

func TestWithoutTheBuiltStyleThePagesAreThere(t *testing.T) {
	s, err := New(Options{Now: time.Now})
	if err != nil {
		t.Fatal(err)
	}
	s.assets.built = false
	delete(s.assets.files, "app.css")
	delete(s.assets.files, "app.js")
	w := httptest.NewRecorder()
	s.ServeHTTP(w, httptest.NewRequest("GET", "http://localhost/", nil))
	if !strings.Contains(w.Body.String(), "plain.css?") || !strings.Contains(w.Body.String(), "style was not built") || strings.Contains(w.Body.String(), "<script src") {
		t.Errorf("got:\n%s", w.Body)
	}
}

func TestNamesOfDownloads(t *testing.T) {
	for _, c := range []struct{ name, want string }{
		{"job-card.pdf", `inline; filename="job-card.pdf"`},
		{"Öl \"x\".yaml", `inline; filename="_l _x_.yaml"; filename*=UTF-8''%C3%96l%20%22x%22.yaml`}, // RFC 6266 with RFC 8187, by hand
		{"a\r\nb", `inline; filename="a__b"; filename*=UTF-8''a%0D%0Ab`},
	} {
		if got := disposition("inline", c.name); got != c.want {
			t.Errorf("%q: got %s, want %s", c.name, got, c.want)
		}
	}
}

func TestStopsWithinThreeSeconds(t *testing.T) {
	if testing.Short() {
		t.Skip("waits the whole 3 s")
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	hangs, release := make(chan bool), make(chan bool)
	h := http.HandlerFunc(func(http.ResponseWriter, *http.Request) { hangs <- true; <-release })
	defer close(release)
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan error, 1)
	go func() { done <- Serve(ctx, l, h, &bytes.Buffer{}) }()
	go http.Get("http://" + l.Addr().String())
	<-hangs
	start := time.Now()
	cancel()
	select {
	case err := <-done:
		if err != nil || time.Since(start) > stopTime+time.Second {
			t.Errorf("got error %v after %v", err, time.Since(start))
		}
	case <-time.After(10 * time.Second):
		t.Fatal("did not stop")
	}
}
