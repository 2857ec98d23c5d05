package proof

import (
	"fmt"
	"io"
	"math"
	"strings"

	"scarfwright/repair/working"
)

// Row is a check as it is written to JSON: with its verdict.
type Row struct {
	Check
	Pass bool `json:"pass"`
}

// Rows adds the verdicts.
func Rows(cs []Check) []Row {
	out := make([]Row, len(cs))
	for i, c := range cs {
		out[i] = Row{c, c.Pass()}
	}
	return out
}

// digits is how many digits of ours are worth printing: to a hundredth of the
// tolerance. What lies below is the solver's and the processor's, and would make a
// committed table differ from one machine to the next.
func (c Check) digits() int {
	tol := max(c.Abs, c.Rel*math.Abs(c.Expected))
	if !(tol > 0) || c.Ours == 0 {
		return 7
	}
	return min(7, max(2, int(math.Floor(math.Log10(math.Abs(c.Ours)/tol)))+3))
}

// WriteMarkdown writes the table as docs/proof.md.
func WriteMarkdown(w io.Writer, cs []Check) {
	fmt.Fprint(w, "# Proof\n\nOur numbers beside published and independent ones. Made by `scarfwright proof --markdown docs/proof.md`;\nthe tests run the same table. A row says how its expected value is known: read in a source, recalled from\nmemory, computed independently, an identity, or common practice. Keys are those of [sources.md](sources.md).\n")
	cell := func(s string) string { return strings.ReplaceAll(s, "|", "\\|") }
	head := ""
	for _, c := range cs {
		if h := c.Group + c.Source + string(c.Provenance); h != head {
			head = h
			fmt.Fprintf(w, "\n**%s**: %s (%s)\n\n| what | expected | ours | tolerance | pass |\n|---|---|---|---|---|\n", cell(c.Group), cell(c.Source), c.Provenance)
		}
		pass := "yes"
		if !c.Pass() {
			pass = "**NO** " + c.Err
		}
		fmt.Fprintf(w, "| %s | %s | %s | %s | %s |\n", cell(c.What), cell(strings.TrimSpace(working.Num(c.Expected, 6)+" "+c.Unit)), working.Num(c.Ours, c.digits()), c.Tolerance(), pass)
	}
	fmt.Fprintf(w, "\n%d checks, %d off.\n", len(cs), len(Failed(cs)))
}
