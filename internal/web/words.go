package web

import (
	"fmt"
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"scarfwright/physics/si"
	"scarfwright/repair"
	"scarfwright/repair/check"
	"scarfwright/repair/survey"
	"scarfwright/repair/working"
)

// units prints quantities the way the job asks for. Doses stay in grams and
// millilitres everywhere: that is what the scale and the syringe show.
type units struct{ us bool }

func unitsOf(r repair.Result) units { return units{r.Job.Choices.Units == "us"} }

func (u units) length(l si.Length) string {
	if u.us {
		return inches(l)
	}
	if math.Abs(l.MM()) >= 100 {
		return fmt.Sprintf("%.0f"+nb+"mm", l.MM())
	}
	return trimmed(l.MM(), 1) + nb + "mm"
}

// inches prints to a hundredth of an inch, which is what a rule shows.
func inches(l si.Length) string {
	digits := 3
	if math.Abs(l.MM()) >= 254 {
		digits = 4
	}
	return si.Show(l, si.US, digits)
}

// nb keeps a number and its unit on one line.
const nb = "\u00a0"

// thin prints a thickness, to a hundredth.
func (u units) thin(l si.Length) string {
	if u.us {
		return si.Show(l, si.US, 3)
	}
	return fmt.Sprintf("%.2f"+nb+"mm", l.MM())
}

func (u units) size(w, h si.Length) string {
	if u.us {
		return inches(w) + " × " + inches(h)
	}
	return fmt.Sprintf("%.0f"+nb+"×"+nb+"%.0f"+nb+"mm", w.MM(), h.MM())
}

func (u units) area(a si.Area) string {
	if u.us {
		return si.Show(a, si.US, 3)
	}
	return working.Num(a.M2(), 3) + nb + "m²"
}

func grams(m si.Mass) string {
	g := m.Grams()
	switch {
	case g == 0:
		return "0" + nb + "g"
	case math.Abs(g) < 10:
		return fmt.Sprintf("%.1f"+nb+"g", g)
	case math.Abs(g) >= 10000:
		return fmt.Sprintf("%.2f"+nb+"kg", g/1000)
	}
	return fmt.Sprintf("%.0f"+nb+"g", g)
}

func ml(v si.Volume) string {
	if x := v.ML(); math.Abs(x) < 100 {
		return fmt.Sprintf("%.1f"+nb+"ml", x)
	}
	return fmt.Sprintf("%.0f"+nb+"ml", v.ML())
}

// trimmed prints x with at most the given decimals.
func trimmed(x float64, decimals int) string {
	s := fmt.Sprintf("%.*f", decimals, x)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

func percent(r si.Ratio) string { return trimmed(r.Percent(), 2) + nb + "%" }

func celsius(t si.Temp) string { return trimmed(t.Celsius(), 1) + nb + "°C" }

func ratioText(x float64) string { return trimmed(x, 2) + ":1" }

func money(currency string, x float64) string { return fmt.Sprintf("%s"+nb+"%.0f", currency, x) }

// sentence begins with a capital letter.
func sentence(s string) string {
	if s == "" {
		return s
	}
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// standing says how a plan stands: a mark for the style, and the words.
func standing(r repair.Result) (mark, text string) {
	stops, watches := 0, 0
	for _, v := range r.Verdicts {
		switch v.State {
		case check.Stop:
			stops++
		case check.Watch:
			watches++
		case check.OK:
		}
	}
	switch {
	case r.Survey.Referred():
		return "stop", "Refer on first: " + counted(len(r.Survey.Referrals), "hard stop")
	case r.Survey.NotPlanned != "":
		return "stop", "Not planned, recorded only"
	case stops > 0:
		return "stop", "Planned, but " + counted(stops, "stop") + " to settle first"
	case watches > 0:
		return "watch", "Planned, " + counted(watches, "thing") + " to watch"
	}
	return "ok", "Planned"
}

func sizeOf(r repair.Result) string {
	u := unitsOf(r)
	switch {
	case r.Design != nil:
		b := r.Design.CutOut.Bounds()
		what := "cut-out "
		if r.Survey.Class == survey.PartialDepth {
			what = "dish "
		}
		return what + u.size(si.MM(b.Width()), si.MM(b.Height()))
	case len(r.Job.Damage.Marks) > 0:
		n := 0
		for _, m := range r.Job.Damage.Marks {
			n += max(1, m.Count)
		}
		return counted(n, "mark")
	case r.Job.Damage.Wetted > 0:
		return u.area(r.Job.Damage.Wetted) + " of bottom"
	}
	return "not known"
}

func priceOf(r repair.Result) string {
	e := r.Estimate
	return fmt.Sprintf("%s (%.0f to %.0f)", money(e.Currency, e.Total.Likely), e.Total.Low, e.Total.High)
}
