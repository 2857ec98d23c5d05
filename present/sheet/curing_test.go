package sheet_test

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"scarfwright/present/internal/planned"
	"scarfwright/present/sheet"
)

// TestACureChartAndItsProfileShareAPage: on either paper, in either system, the
// chart of the hottest session and its profile stand on one page, in lettering
// of 8 points and more.
func TestACureChartAndItsProfileShareAPage(t *testing.T) {
	for _, name := range []string{"day-launch", "sloop", "rib-console"} {
		r := planned.Demo(t, name)
		for _, o := range []sheet.Options{options("A4", "metric"), options("Letter", "metric"), options("A4", "us"), options("Letter", "us")} {
			what := fmt.Sprintf("%s, %s, %s", name, o.Paper, o.Units)
			var b bytes.Buffer
			if err := sheet.JobCard(&b, r, o); err != nil {
				t.Fatalf("%s: %v", what, err)
			}
			chart, profile := 0, 0
			for i, page := range strings.Split(pdftotext(t, b.Bytes()), "\f") {
				if strings.Contains(page, "Heat and cure, session") {
					chart = i + 1
				}
				if strings.Contains(page, "Through the thickness at the peak") {
					profile = i + 1
				}
			}
			if chart == 0 || chart != profile {
				t.Errorf("%s: the chart stands on page %d, the profile on page %d", what, chart, profile)
			}
			if high := lettering(t, b.Bytes(), chart, "temperature,"); high < 8 {
				t.Errorf("%s: the charts' lettering has %.1f points", what, high)
			}
		}
	}
}

// lettering returns the smallest size, in points, in which a page prints a word:
// the height of its box over that of the face, 1.164 (ascent and descent of DejaVu Sans).
func lettering(t *testing.T, pdf []byte, page int, word string) float64 {
	t.Helper()
	n := strconv.Itoa(page)
	box := regexp.MustCompile(`yMin="([0-9.]+)" xMax="[0-9.]+" yMax="([0-9.]+)">` + regexp.QuoteMeta(word) + `<`)
	least := 0.0
	for _, m := range box.FindAllStringSubmatch(pdftotext(t, pdf, "-bbox", "-f", n, "-l", n), -1) {
		top, err := strconv.ParseFloat(m[1], 64)
		if err != nil {
			t.Fatal(err)
		}
		low, err := strconv.ParseFloat(m[2], 64)
		if err != nil {
			t.Fatal(err)
		}
		if high := (low - top) / 1.164; least == 0 || high < least {
			least = high
		}
	}
	return least
}
