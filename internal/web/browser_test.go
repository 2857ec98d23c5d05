package web_test

import (
	"context"
	"fmt"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// browser starts a browser without a window, or skips where there is none. CI
// must have one.
func browser(t *testing.T) context.Context {
	t.Helper()
	path := ""
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		if p, err := exec.LookPath(name); err == nil {
			path = p
			break
		}
	}
	if path == "" {
		if os.Getenv("CI") != "" {
			t.Fatal("no browser found, and CI is set")
		}
		t.Skip("no browser found")
	}
	opts := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.DisableGPU, chromedp.UserDataDir(t.TempDir()),
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("disable-sync", true))
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), opts...)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	ctx, cancel = context.WithTimeout(ctx, 4*time.Minute)
	t.Cleanup(cancel)
	return ctx
}

// viewport is a screen of that width; a narrow one is a phone's.
func viewport(width int64) chromedp.Action[chromedp.Void] {
	if width < 600 {
		return chromedp.EmulateViewport(width, 900, chromedp.EmulateMobile)
	}
	return chromedp.EmulateViewport(width, 900)
}

// tooWide lists what sticks out of the page sideways.
const tooWide = `(() => {
  const w = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth <= w) return "";
  const out = [];
  for (const e of document.querySelectorAll("body *")) {
    if (e.closest(".scroll, .skip, textarea, svg") && !e.matches(".scroll")) continue;
    if (e.getBoundingClientRect().right > w + 1) out.push(e.tagName + "." + e.className);
  }
  return document.documentElement.scrollWidth + " in " + w + ": " + out.slice(0, 6).join(", ");
})()`

// smallTargets lists links and buttons, outside running text, below 24 px (WCAG 2.2, 2.5.8).
const smallTargets = `(() => [...document.querySelectorAll("button, .button, nav a, input, select, summary")]
  .filter(e => e.offsetParent !== null && !e.closest(".skip") && e.getBoundingClientRect().height < 24)
  .map(e => e.outerHTML.slice(0, 60)).join(" | "))()`

// TestInABrowser opens every page at two widths in three lights. Set
// SCARFWRIGHT_SHOTS to a folder to keep pictures of them.
func TestInABrowser(t *testing.T) {
	ctx := browser(t)
	srv := httptest.NewServer(newSite(t, t.TempDir()))
	defer srv.Close()
	paths := append(pagesOfDemo(), "/figures/dose?resin=350g", "/figures/dose?resin=350g&percent=1.8%25&catalyst-density=1.13g/ml", "/jobs/day-launch?ratio=99", "/nope")
	lights := []string{"light", "dark", "sun"}
	if testing.Short() {
		paths, lights = []string{"/", "/jobs/day-launch", "/jobs/work-skiff"}, lights[:1]
	}
	for _, path := range paths {
		for _, width := range []int64{390, 1280} {
			for _, light := range lights {
				err := chromedp.Do(ctx, viewport(width), chromedp.Navigate(srv.URL+path))
				if err != nil {
					t.Fatalf("%s: %v", path, err)
				}
				look := func(js string) string {
					x, err := chromedp.Run(ctx, chromedp.Evaluate[string](js))
					if err != nil {
						t.Fatalf("%s: %v", path, err)
					}
					return x
				}
				look(`document.documentElement.dataset.theme = "` + light + `"`)
				wide, small := look(tooWide), look(smallTargets)
				if wide != "" {
					t.Errorf("%s at %d px, %s: wider than the screen: %s", path, width, light, wide)
				}
				if small != "" {
					t.Errorf("%s at %d px: targets below 24 px: %s", path, width, small)
				}
				if dir := os.Getenv("SCARFWRIGHT_SHOTS"); dir != "" {
					shoot(t, ctx, filepath.Join(dir, fmt.Sprintf("%s-%d-%s", shotName(path), width, light)), width)
				}
			}
		}
	}
}

func shotName(path string) string {
	s := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' {
			return r
		}
		return '-'
	}, strings.Trim(path, "/"))
	if s == "" {
		return "home"
	}
	return s
}

// shoot keeps a page in slices of 1500 px.
func shoot(t *testing.T, ctx context.Context, name string, width int64) {
	t.Helper()
	height, err := chromedp.Run(ctx, chromedp.Evaluate[float64](`document.documentElement.scrollHeight`))
	if err != nil {
		t.Fatal(err)
	}
	const slice = 1500
	beyond := true
	for i := 0; float64(i*slice) < height; i++ {
		shot, err := chromedp.Call(ctx, page.CaptureScreenshot, page.CaptureScreenshotParams{
			CaptureBeyondViewport: &beyond,
			Clip:                  &page.Viewport{Y: float64(i * slice), Width: float64(width), Height: min(slice, height-float64(i*slice)), Scale: 1},
		})
		if err == nil {
			err = os.WriteFile(fmt.Sprintf("%s-%02d.png", name, i), shot.Data, 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
}

// TestPlanningOtherwiseSwapsThePlan changes the ratio as a visitor would. With
// the script the page is not loaded anew; without it the same address shows the same.
func TestPlanningOtherwiseSwapsThePlan(t *testing.T) {
	site := newSite(t, "")
	if !site.HasStyle() {
		t.Skip("the page script was not built (make web)")
	}
	ctx := browser(t)
	srv := httptest.NewServer(site)
	defer srv.Close()
	if err := chromedp.Do(ctx, viewport(1280), chromedp.Navigate(srv.URL+"/jobs/day-launch")); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Run(ctx, chromedp.Evaluate[bool](`window.sameLoad = true`)); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.SetValue("#ratio", "20"), chromedp.Click("#plan form button")); err != nil {
		t.Fatal(err)
	}
	wait := func(js string) {
		t.Helper()
		if _, err := chromedp.Run(ctx, chromedp.Poll[bool]("("+js+") || null", chromedp.WithPollingTimeout(10*time.Second))); err != nil {
			t.Fatalf("waiting for %s: %v", js, err)
		}
	}
	wait(`document.querySelector("tr.taken th").textContent.includes("20:1")`)
	wait(`document.querySelector("#standing").textContent.includes("shown with the changes")`)
	wait(`document.activeElement.id === "again"`)
	stayed, err := chromedp.Run(ctx, chromedp.Evaluate[bool](`window.sameLoad === true`))
	if err != nil {
		t.Fatal(err)
	}
	where, err := chromedp.Run(ctx, chromedp.Location())
	if err != nil {
		t.Fatal(err)
	}
	if !stayed || !strings.Contains(where, "ratio=20") {
		t.Errorf("got same load %v, address %s; want a swap and ratio=20 in the address", stayed, where)
	}

	// A ratio that cannot be planned is told in the same place.
	if err := chromedp.Do(ctx, chromedp.SetValue("#ratio", "99"), chromedp.Click("#again")); err != nil {
		t.Fatal(err)
	}
	wait(`document.querySelector("#otherwise .problems")?.textContent.includes("from 5 to 50")`)
	wait(`document.querySelector("#ratio").value === "99"`)
}
