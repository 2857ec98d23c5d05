package cli_test

import (
	"bytes"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"testing"
	"time"

	"scarfwright/internal/cli"
	"scarfwright/repair/figure"
)

// TestThePrintedExampleRuns gives a shell the line that each figure prints, and the
// program what the shell makes of it. Every input of the usage line must be one word too.
func TestThePrintedExampleRuns(t *testing.T) {
	sh, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("no shell here")
	}
	words := func(line string) []string {
		out, err := exec.Command(sh, "-c", `for x in `+line+`; do printf '%s\n' "$x"; done`).Output()
		if err != nil {
			t.Fatalf("%s: %v", line, err)
		}
		return strings.Split(strings.TrimSpace(string(out)), "\n")
	}
	run := func(args ...string) (int, string) {
		var out, bad bytes.Buffer
		p := cli.Program{Out: &out, Err: &bad, Now: func() time.Time { return time.Date(2026, 5, 4, 8, 0, 0, 0, time.UTC) }}
		return p.Run(args), out.String() + bad.String()
	}
	printed := regexp.MustCompile(`(?m)^Example: scarfwright (.*)$`)
	optional := regexp.MustCompile(`\[([A-Za-z0-9-]+=(?:"[^"]*"|[^\]"]*))\]`)
	t.Chdir(t.TempDir())
	if err := os.WriteFile(figure.FileName, []byte(figure.PanelExample), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, c := range figure.All() {
		_, help := run("figure", c.Name, "no-such-input=1")
		m := printed.FindStringSubmatch(help)
		if m == nil {
			t.Errorf("%s prints no example: %s", c.Name, help)
			continue
		}
		if status, out := run(words(m[1])...); status != 0 {
			t.Errorf("%s: status %d: %s", m[1], status, out)
		}
		usage := optional.ReplaceAllString(strings.TrimPrefix(c.Usage(), "Usage: scarfwright figure "+c.Name), "$1")
		if got := words(usage); len(got) != len(c.Inputs) {
			t.Errorf("%s: %d words of %d inputs: %q", c.Name, len(got), len(c.Inputs), got)
		}
	}
}
