package web_test

import (
	"bytes"
	"encoding/json"
	"html"
	"io"
	"mime/multipart"
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"strings"
	"testing"
	"time"

	"scarfwright/internal/web"
	"scarfwright/repair/caution"
	"scarfwright/repair/demo"
	"scarfwright/repair/figure"
)

func noon() time.Time { return time.Date(2026, 5, 4, 12, 0, 0, 0, time.UTC) }

// newSite serves demo jobs, and a data folder if one is given.
func newSite(t testing.TB, folder string) *web.Site {
	t.Helper()
	o := web.Options{Demo: true, Version: "test", Now: noon, Log: testLog{t}}
	if folder != "" {
		root, err := os.OpenRoot(folder)
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { root.Close() })
		o.Data, o.Folder = root, folder
	}
	s, err := web.New(o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

type testLog struct{ testing.TB }

func (l testLog) Write(b []byte) (int, error) { l.Log(string(b)); return len(b), nil }

// ask sends one request as a browser on the page itself would.
func ask(s http.Handler, method, target string, form url.Values) *httptest.ResponseRecorder {
	var body io.Reader
	if form != nil {
		body = strings.NewReader(form.Encode())
	}
	r := httptest.NewRequest(method, "http://127.0.0.1:8321"+target, body)
	if form != nil {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Header.Set("Sec-Fetch-Site", "same-origin")
	}
	w := httptest.NewRecorder()
	s.ServeHTTP(w, r)
	return w
}

func dayLaunch(t testing.TB) string {
	t.Helper()
	return string(demo.Jobs()[0].Data)
}

// pagesOfDemo are all addresses a visitor reaches by links.
func pagesOfDemo() []string {
	out := []string{"/", "/new", "/check", "/check?from=day-launch", "/figures", "/catalogue", "/overcoat", "/overcoat?on=epoxy&lay=gelcoat", "/proof", "/about"}
	for _, j := range demo.Jobs() {
		out = append(out, "/jobs/"+j.Name)
		if j.Name != "work-skiff" && j.Name != "rib-console" { // two seconds each; TestOptions has the skiff
			out = append(out, "/jobs/"+j.Name+"/options")
		}
	}
	for _, c := range figure.All() {
		out = append(out, "/figures/"+c.Name)
	}
	return out
}

func TestRequests(t *testing.T) {
	s := newSite(t, "")
	bad := strings.Replace(dayLaunch(t), "long: 620 mm", "lnog: 620 psi", 1)
	for _, c := range []struct {
		about  string // a sentence
		method string
		target string
		form   url.Values
		status int
		has    []string
		hasNot []string
	}{
		{"the home page lists every demo job with its standing in words", "GET", "/", nil, 200,
			[]string{"Ledge strike", "Refer on first: 2 hard stops", "Not planned, recorded only", "cut-out 300 × 200 mm", "Start here"}, nil},
		{"a plan shows the picture, the doses and the hold points", "GET", "/jobs/day-launch", nil, 200,
			[]string{"<svg", "Hold point A", "Lay it down within", "Matches thickness", "Bending stiffness", "catalyst", "Organic peroxide", "12:1 taken", "job-card.pdf", "/jobs/day-launch?ratio=15"}, []string{"refer on first"}},
		{"the joints stand in a table, with the planned hours against the window and who says so", "GET", "/jobs/day-launch", nil, 200,
			[]string{
				"What goes on what", "Polyester on polyester (tacky), laid 3 h after, window 2.5 to 32.5 h", "If the window is missed, go by polyester on polyester (sanded), watch",
				`href="/overcoat?lay=gelcoat&amp;on=epoxy&#43;filler"`, "GRPBRIEF-nd: pp. 5-7", "Gelcoat on the filler: gelcoat on epoxy filler (sanded)",
			}, nil},
		{"another ratio is planned and its papers carry it", "GET", "/jobs/day-launch?ratio=20", nil, 200,
			[]string{"20:1 taken", "/files/plan.json?ratio=20", "shown with the changes below"}, []string{"12:1 taken"}},
		{"a decimal comma and a colon are read", "GET", "/jobs/day-launch?ratio=12,5:1", nil, 200, []string{"12.5:1 taken"}, nil},
		{"both faces, largest first", "GET", "/jobs/day-launch?ratio=12&taper=both&order=largest+first", nil, 200, []string{"outside and the inside", "largest first"}, nil},
		{"a ratio that reads two ways is asked about", "GET", "/jobs/day-launch?ratio=1,234", nil, 422, []string{"There is a problem", "may be read two ways", `value="1,234"`, "12:1 taken"}, nil},
		{"a ratio out of range says the range and keeps what was typed", "GET", "/jobs/day-launch?ratio=99", nil, 422, []string{"from 5 to 50", `value="99"`}, nil},
		{"a ratio that is no number", "GET", "/jobs/day-launch?ratio=NaN", nil, 422, []string{"is not a ratio"}, nil},
		{"a face that is none", "GET", "/jobs/day-launch?taper=upside", nil, 422, []string{"The taper is one of: outside, inside, both"}, nil},
		{"grinding from a face out of reach is refused over the plan as it was", "GET", "/jobs/sloop?taper=inside", nil, 422, []string{"cannot be ground", "<svg"}, nil},
		{"a hard stop is boxed, names who decides, and no job card is offered", "GET", "/jobs/work-skiff", nil, 200,
			[]string{"Stop: refer on first", "Who must decide: the authority", "Not released", "referral-sheet.pdf"}, []string{"job-card.pdf"}},
		{"one-sided access shows the backing and what was not seen", "GET", "/jobs/sloop", nil, 200, []string{"Backing:", "Inner face not sighted"}, nil},
		{"a surface job has doses for its paste", "GET", "/jobs/club-dinghy", nil, 200, []string{"Paste to mix", "Smallest honest batch", "Organic peroxide"}, []string{"id=\"picture\""}},
		{"a blister crop is recorded, not planned", "GET", "/jobs/trawler-yacht", nil, 200, []string{"Stop: not planned", "blister"}, []string{"job-card.pdf"}},
		{"no such job", "GET", "/jobs/nope", nil, 404, []string{"There is no such page"}, nil},
		{"a path that climbs", "GET", "/jobs/..%2f..%2fetc%2fpasswd", nil, 404, nil, []string{"root:"}},
		{"no such paper", "GET", "/jobs/day-launch/files/nope.pdf", nil, 404, nil, nil},
		{"a paper at an impossible ratio", "GET", "/jobs/day-launch/files/plan.json?ratio=1", nil, 422, []string{"from 5 to 50"}, nil},
		{"the form of the check", "GET", "/check", nil, 200, []string{"<textarea", "multipart/form-data"}, nil},
		{"the check begins with a demo job", "GET", "/check?from=sloop", nil, 200, []string{"Hole beside a bonded tank"}, nil},
		{"the check begins with a job that is not there", "GET", "/check?from=nope", nil, 404, nil, nil},
		{"a bad file is shown with its problems in their lines, and kept", "POST", "/check", url.Values{"text": {bad}}, 422,
			[]string{"<title>Error: ", "lnog", "Did you mean", "id=\"line-", "href=\"#line-", "What may stand there"}, []string{"invalid", "please"}},
		{"an empty file", "POST", "/check", url.Values{"text": {""}}, 422, []string{"This file is empty"}, nil},
		{"markup in a file stays text", "POST", "/check", url.Values{"text": {"<script>alert(1)</script>"}}, 422, []string{"&lt;script&gt;"}, []string{"<script>alert"}},
		{"a clean file leads to its plan", "POST", "/check", url.Values{"text": {dayLaunch(t)}}, 303, nil, nil},
		{"a file of more than 1 MB", "POST", "/check", url.Values{"text": {strings.Repeat("a", 1<<20+100_000)}}, 413, []string{"too big"}, nil},
		{"saving without a data folder", "POST", "/jobs/day-launch/save", url.Values{"as": {"x"}}, 409, []string{"There is no data folder"}, nil},
		{"a new job begins with a demo", "GET", "/new", nil, 200, []string{"/check?from=day-launch", "What to measure first"}, nil},
		{"the figures", "GET", "/figures", nil, 200, []string{"ply-thickness", "first-ply-failure"}, nil},
		{"a figure's empty form shows an example in each label", "GET", "/figures/dose", nil, 200, []string{"such as", `inputmode=`}, []string{"There is a problem"}},
		{"a figure is worked out, with formula and source", "GET", "/figures/dose?resin=350g&percent=1.8%25&catalyst-density=1.13g/ml", nil, 200,
			[]string{"6.300 g", "How it was got", "Sources:", `value="350g"`, "Organic peroxide"}, nil},
		{"a figure with inputs missing names each", "GET", "/figures/dose?resin=350g", nil, 422, []string{"percent is needed", `value="350g"`, "<title>Error: "}, nil},
		{"a figure with the wrong unit says what would do", "GET", "/figures/dose?resin=350mm&percent=1.8%25&catalyst-density=1.13g/ml", nil, 422, []string{"There is a problem", `value="350mm"`}, nil},
		{"a figure with an unknown input", "GET", "/figures/dose?rosin=350g&resin=350g&percent=1.8%25&catalyst-density=1.13g/ml", nil, 422, []string{"rosin", "Did you mean resin"}, nil},
		{"a figure that is none", "GET", "/figures/dosis", nil, 404, []string{"Did you mean dose"}, nil},
		{"the catalogue", "GET", "/catalogue", nil, 200, []string{"csm450", "chopped strand mat", "from memory"}, []string{"%!"}},
		{"what goes on what, whole", "GET", "/overcoat", nil, 200,
			[]string{"148 pairs of the table", `id="on-old-laminate"`, `href="#on-epoxy-filler"`, "Epoxy, epoxy filler, epoxy barrier", "common practice, no source"}, []string{"There is a problem", "Not known."}},
		{"what goes on what, narrowed: who disagrees, and our ruling", "GET", "/overcoat?on=epoxy&lay=gelcoat&state=sanded", nil, 200,
			[]string{
				"Gelcoat on epoxy (sanded): 1 pair of", "<b>Watch</b>", "Sources disagree.", "Gelcoat should not be applied over epoxy.", "GELSHEET-nd: adhesion (read in part)", "Possible for looks",
				"Disputed, and for looks only.", "<option selected>gelcoat", "The whole table",
			}, []string{`id="on-polyester"`}},
		{"a pair with states not known says so in words", "GET", "/overcoat?on=paint&lay=epoxy", nil, 200, []string{"knows nothing of epoxy on paint while the surface is wet or tacky"}, nil},
		{"nothing found is said in words", "GET", "/overcoat?on=paint&lay=epoxy&state=wet", nil, 200, []string{"0 pairs", "knows nothing of epoxy on paint (wet). Not knowing is no leave"}, []string{"<table"}},
		{"an unknown material is refused with the list, over the whole table", "GET", "/overcoat?on=epoxi", nil, 422, []string{"<title>Error: ", "No material to lay on &#34;epoxi&#34;", "vinyl ester", "148 pairs"}, nil},
		{"the proof", "GET", "/proof", nil, 200, []string{" checks, 0 off", "Kaw", "yes"}, []string{"<b>NO</b>"}},
		{"about", "GET", "/about", nil, 200, []string{"Who must decide", "hold point", "Where your data lies"}, nil},
		{"no such page", "GET", "/nope", nil, 404, []string{"There is no such page"}, nil},
		{"a method an address does not take", "POST", "/about", url.Values{}, 405, []string{"does not take POST"}, nil},
		{"deleting", "DELETE", "/jobs/day-launch", nil, 405, nil, nil},
		{"no such asset", "GET", "/static/nope.js", nil, 404, nil, nil},
		{"the plain style is always there", "GET", "/static/plain.css", nil, 200, []string{"table"}, nil},
	} {
		t.Run(c.about, func(t *testing.T) {
			w := ask(s, c.method, c.target, c.form)
			if w.Code != c.status {
				t.Errorf("%s %s: got status %d, want %d", c.method, c.target, w.Code, c.status)
			}
			body := strings.ReplaceAll(w.Body.String(), "\u00a0", " ")
			for _, x := range c.has {
				if !strings.Contains(body, x) {
					t.Errorf("%s %s: got a page without %q", c.method, c.target, x)
				}
			}
			for _, x := range c.hasNot {
				if strings.Contains(body, x) {
					t.Errorf("%s %s: got a page with %q", c.method, c.target, x)
				}
			}
			checkHeaders(t, w)
			if strings.HasPrefix(w.Header().Get("Content-Type"), "text/html") && c.status != 303 {
				checkPage(t, c.target, body)
			}
		})
	}
}

func checkHeaders(t *testing.T, w *httptest.ResponseRecorder) {
	t.Helper()
	h := w.Header()
	csp := h.Get("Content-Security-Policy")
	if !strings.Contains(csp, "default-src 'self'") || !strings.Contains(csp, "frame-ancestors 'none'") || strings.Contains(csp, "unsafe") {
		t.Errorf("got Content-Security-Policy %q", csp)
	}
	if h.Get("X-Content-Type-Options") != "nosniff" || h.Get("Referrer-Policy") == "" {
		t.Errorf("got headers without nosniff or Referrer-Policy: %v", h)
	}
}

// checkPage looks for what no page may have, and for what every page must.
func checkPage(t *testing.T, target, body string) {
	t.Helper()
	for _, x := range []string{"%!", "NaN", "&lt;nil&gt;", "<nil>", "+Inf", "ZgotmplZ", " style=", "onclick", "javascript:"} {
		if strings.Contains(strings.ReplaceAll(body, "&#34;NaN&#34; is not a ratio", ""), x) && !strings.Contains(target, x) {
			t.Errorf("%s: got a page with %q", target, x)
		}
	}
	for _, x := range []string{"safe ", "certified", "guaranteed", "approved", "foolproof"} {
		if strings.Contains(strings.ToLower(body), x) {
			t.Errorf("%s: got a page that says %q", target, x)
		}
	}
	if !strings.Contains(strings.ReplaceAll(body, "&#39;", "'"), caution.General) {
		t.Errorf("%s: got a page without the general caution", target)
	}
	if !strings.HasPrefix(body, "<!doctype html>") || !strings.HasSuffix(strings.TrimSpace(body), "</html>") {
		t.Errorf("%s: got a page that is not whole", target)
	}
}

func TestEveryPageReads(t *testing.T) {
	s := newSite(t, "")
	for _, p := range pagesOfDemo() {
		w := ask(s, "GET", p, nil)
		if w.Code != 200 {
			t.Errorf("%s: got status %d", p, w.Code)
		}
		checkPage(t, p, w.Body.String())
	}
	// Each figure answers the example its own page offers.
	for _, c := range figure.All() {
		form := ask(s, "GET", "/figures/"+c.Name, nil).Body.String()
		_, rest, _ := strings.Cut(form, `href="/figures/`+c.Name+"?")
		query, _, _ := strings.Cut(rest, `"`)
		w := ask(s, "GET", "/figures/"+c.Name+"?"+html.UnescapeString(query), nil)
		if w.Code != 200 || !strings.Contains(w.Body.String(), ">Result<") {
			t.Errorf("figure %s does not answer its own example %s: status %d", c.Name, query, w.Code)
		}
		checkPage(t, c.Name, w.Body.String())
	}
}

func TestEveryPaperOfEveryDemoJob(t *testing.T) {
	s := newSite(t, "")
	jobs := demo.Jobs()
	if testing.Short() {
		jobs = jobs[:1]
	}
	for _, j := range jobs {
		page := ask(s, "GET", "/jobs/"+j.Name, nil).Body.String()
		n := 0
		for _, part := range strings.Split(page, `href="/jobs/`+j.Name+`/files/`)[1:] {
			name, _, _ := strings.Cut(part, `"`)
			w := ask(s, "GET", "/jobs/"+j.Name+"/files/"+name, nil)
			n++
			if w.Code != 200 || w.Body.Len() == 0 {
				t.Errorf("%s %s: got status %d, %d bytes", j.Name, name, w.Code, w.Body.Len())
			}
			checkHeaders(t, w)
			if w.Header().Get("ETag") == "" || !strings.Contains(w.Header().Get("Content-Disposition"), "filename=") {
				t.Errorf("%s %s: got no ETag or Content-Disposition: %v", j.Name, name, w.Header())
			}
			want := map[string]string{"pdf": "application/pdf", "svg": "image/svg+xml", "png": "image/png", "json": "application/json", "yaml": "application/yaml", "dxf": "image/vnd.dxf"}
			if got := w.Header().Get("Content-Type"); got != want[name[strings.LastIndexByte(name, '.')+1:]] {
				t.Errorf("%s %s: got Content-Type %q", j.Name, name, got)
			}
			r := httptest.NewRequest("GET", "http://127.0.0.1/jobs/"+j.Name+"/files/"+name, nil)
			r.Header.Set("If-None-Match", w.Header().Get("ETag"))
			again := httptest.NewRecorder()
			s.ServeHTTP(again, r)
			if again.Code != http.StatusNotModified {
				t.Errorf("%s %s: got status %d with its own ETag, want 304", j.Name, name, again.Code)
			}
		}
		if n < 4 {
			t.Errorf("%s: got %d papers", j.Name, n)
		}
	}
}

func TestTheJobFileIsGivenBackAsItWas(t *testing.T) {
	s := newSite(t, "")
	if got := ask(s, "GET", "/jobs/day-launch/files/job.yaml", nil).Body.String(); got != dayLaunch(t) {
		t.Error("got another job file than the one that was read")
	}
	got := ask(s, "GET", "/jobs/day-launch/files/job.yaml?ratio=20", nil).Body.String()
	if !strings.Contains(got, "ratio: 20") {
		t.Errorf("got a job file that is not the one planned:\n%s", got)
	}
	var plan struct {
		Design struct{ Ratio float64 }
	}
	b := ask(s, "GET", "/jobs/day-launch/files/plan.json?ratio=20", nil).Body.Bytes()
	if err := json.Unmarshal(b, &plan); err != nil || plan.Design.Ratio != 20 {
		t.Errorf("got plan.json with ratio %g, error %v, want 20", plan.Design.Ratio, err)
	}
}

func TestInInches(t *testing.T) {
	s := newSite(t, "")
	text := strings.Replace(dayLaunch(t), "units: metric", "units: us", 1)
	w := ask(s, "GET", ask(s, "POST", "/check", url.Values{"text": {text}}).Header().Get("Location"), nil)
	body := w.Body.String()
	checkPage(t, "in inches", body)
	// 300 mm by 200 mm over 25.4; doses stay in grams and millilitres.
	for _, x := range []string{"11.81 in × 7.87 in", "688\u00a0g", "9.2\u00a0ml"} {
		if !strings.Contains(body, x) {
			t.Errorf("got a page without %q", x)
		}
	}
	if strings.Contains(body, "oz ") && !strings.Contains(body, "oz (mass)") {
		t.Error("got bare ounces")
	}
}

func TestUpload(t *testing.T) {
	s := newSite(t, "")
	send := func(name string, data []byte) *httptest.ResponseRecorder {
		var b bytes.Buffer
		m := multipart.NewWriter(&b)
		m.WriteField("text", "")
		f, _ := m.CreateFormFile("file", name)
		f.Write(data)
		m.Close()
		r := httptest.NewRequest("POST", "http://127.0.0.1/check", &b)
		r.Header.Set("Content-Type", m.FormDataContentType())
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		return w
	}
	w := send("mine.yaml", []byte(dayLaunch(t)))
	if w.Code != http.StatusSeeOther {
		t.Fatalf("got status %d, want 303", w.Code)
	}
	page := ask(s, "GET", w.Header().Get("Location"), nil)
	if page.Code != 200 || !strings.Contains(page.Body.String(), "Pasted, not saved") {
		t.Errorf("got status %d for the pasted job's page", page.Code)
	}
	if w := send("x.yaml", []byte{0xff, 0xfe, 0x00}); w.Code != 422 {
		t.Errorf("got status %d for bytes that are no text, want 422", w.Code)
	}
	if w := send("x.yaml", bytes.Repeat([]byte("a"), 2<<20)); w.Code != 413 {
		t.Errorf("got status %d for 2 MB, want 413", w.Code)
	}
}

func TestStrangersAreRefused(t *testing.T) {
	s := newSite(t, "")
	for _, c := range []struct {
		about, method, host, site, origin string
		status                            int
	}{
		{"a name that is not ours (DNS rebinding)", "GET", "evil.example", "", "", 421},
		{"a name that only begins like ours", "GET", "localhost.evil.example", "", "", 421},
		{"loopback by name", "GET", "localhost:8321", "", "", 200},
		{"loopback by IPv6", "GET", "[::1]:8321", "", "", 200},
		{"an address on the yard's network", "GET", "192.168.1.20:8321", "", "", 200},
		{"a form from another site", "POST", "127.0.0.1:8321", "cross-site", "http://evil.example", 403},
		{"a form from another site, old browser", "POST", "127.0.0.1:8321", "", "http://evil.example", 403},
		{"a form of our own", "POST", "127.0.0.1:8321", "same-origin", "http://127.0.0.1:8321", 422},
	} {
		target := "/"
		if c.method == "POST" {
			target = "/check"
		}
		r := httptest.NewRequest(c.method, "http://127.0.0.1"+target, strings.NewReader("text=x"))
		r.Host = c.host
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		if c.site != "" {
			r.Header.Set("Sec-Fetch-Site", c.site)
		}
		if c.origin != "" {
			r.Header.Set("Origin", c.origin)
		}
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		if w.Code != c.status {
			t.Errorf("%s: got status %d, want %d", c.about, w.Code, c.status)
		}
		checkHeaders(t, w)
	}
}

func BenchmarkPlanPage(b *testing.B) {
	s := newSite(b, "")
	for b.Loop() {
		if w := ask(s, "GET", "/jobs/day-launch", nil); w.Code != 200 {
			b.Fatal(w.Code)
		}
	}
}
