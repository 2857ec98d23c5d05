package checks

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"testing"
)

var (
	// cited finds the key of "Kaw2006: ex. 2.6", wherever in a text a citation may start.
	cited = regexp.MustCompile(`(?:^|[\s(\[;,"'])([A-Z][A-Za-z0-9-]+[0-9]{4}[a-z]?):`)
	// entry finds the keys that docs/sources.md lists: a heading, or bold at the start of a line.
	entry = regexp.MustCompile(`(?m)^(?:#+ +(?:\*\*)?|(?:[-*] +)?\*\*)([A-Z][A-Za-z0-9-]+)`)
)

func entries(text string) []string { return firsts(entry, text) }

func citations(text string) []string { return firsts(cited, text) }

// firsts returns what the first group of each match holds.
func firsts(re *regexp.Regexp, text string) (all []string) {
	for _, m := range re.FindAllStringSubmatch(text, -1) {
		all = append(all, m[1])
	}
	return all
}

// TestSources holds every key that code or data cites to docs/sources.md, for a
// source nobody can look up is no source.
func TestSources(t *testing.T) {
	h := theHouse(t)
	text, err := os.ReadFile(filepath.Join(h.root, "docs", "sources.md"))
	if os.IsNotExist(err) {
		t.Skip("docs/sources.md is not written yet")
	}
	if err != nil {
		t.Fatal(err)
	}
	keys := entries(string(text))
	if len(keys) == 0 {
		t.Fatal("no key found in docs/sources.md")
	}
	var found findings
	each(t, func(_ *house, name string, text []byte) {
		for _, s := range shown(name, string(text)) {
			for _, key := range citations(s.text) {
				if !slices.Contains(keys, key) {
					found.add(name+":"+strconv.Itoa(s.line), "cites %s, which docs/sources.md does not list", key)
				}
			}
		}
	})
	found.report(t)
}

func TestSourcesSeeFaults(t *testing.T) {
	keys := entries("# Sources\n\n## Kaw2006\ntext LR2013: x\n\n**LR2013** Lloyd's\n- **BS4994-1987**: tanks\n* **ISO12215-5-2008**\n| **Table2000** |\n")
	for _, k := range []string{"Kaw2006", "LR2013", "BS4994-1987", "ISO12215-5-2008"} {
		if !slices.Contains(keys, k) {
			t.Errorf("%s is not among %v", k, keys)
		}
	}
	if slices.Contains(entries("see **bold** and LR2013: there\n"), "LR2013") {
		t.Error("a mention in the text counts as an entry")
	}
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Kaw2006: ex. 2.6", []string{"Kaw2006"}},
		{"LR2013: Ch 3 s1; Jones1999a: p. 40", []string{"LR2013", "Jones1999a"}},
		{"source: \"ISO12215-5-2008: 10.1\"", []string{"ISO12215-5-2008"}},
		{"common practice, no source", nil},
		{"from memory: about 2020: nothing", nil},
	} {
		if got := citations(c.text); !slices.Equal(got, c.want) {
			t.Errorf("%q: got %v, want %v", c.text, got, c.want)
		}
	}
}
