package checks

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// promises are words that a calculation cannot stand behind. A repair is
// judged by who inspects it, and a sheet of ours may be all that person sees.
var promises = regexp.MustCompile(`(?i)\b(certified|guaranteed|approved|compliant|safe|unsafe)\b`)

// allowed are texts that hold such a word and make no promise: file, text,
// reason. A text stands here as it does in the file.
var allowed = []struct{ file, text, reason string }{}

// TestWords reads what people may be shown: string literals of Go code that is
// not a test, templates, and YAML data without its comments.
func TestWords(t *testing.T) {
	var found findings
	used := map[int]bool{}
	each(t, func(h *house, name string, text []byte) {
		for _, s := range shown(name, string(text)) {
			for i, a := range allowed {
				if a.file == name && strings.Contains(s.text, a.text) {
					used[i] = true
					s.text = strings.ReplaceAll(s.text, a.text, "")
				}
			}
			if word := promises.FindString(s.text); word != "" {
				found.add(name+":"+strconv.Itoa(s.line), "%q promises what no calculation can; say what was computed and what must be looked at (in %.60q)", word, s.text)
			}
		}
	})
	for i, a := range allowed {
		if !used[i] {
			found.add(a.file, "the exception for %q is not needed any more; delete it", a.text)
		}
	}
	found.report(t)
}

type passage struct {
	line int
	text string
}

// shown returns the passages of a file that people may be shown.
func shown(name, text string) (list []passage) {
	switch ext := path.Ext(name); {
	case strings.HasSuffix(name, "_test.go"):
	case ext == ".go":
		return literals(name, text)
	case ext == ".html" || ext == ".tmpl" || ext == ".gohtml":
		return lines(text, func(s string) string { return s })
	case (ext == ".yaml" || ext == ".yml") && !strings.HasPrefix(name, "."):
		return lines(text, func(s string) string {
			if strings.HasPrefix(strings.TrimSpace(s), "#") {
				return ""
			}
			s, _, _ = strings.Cut(s, " #")
			return s
		})
	}
	return list
}

// literals returns the string literals of Go source, import paths apart. A
// file that does not parse has none: TestModuleCompiles says so.
func literals(name, text string) (list []passage) {
	fset := token.NewFileSet()
	f, err := parser.ParseFile(fset, name, text, parser.SkipObjectResolution)
	if f == nil || err != nil {
		return nil
	}
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.BasicLit:
			if n.Kind == token.STRING {
				s, _ := strconv.Unquote(n.Value)
				list = append(list, passage{fset.Position(n.Pos()).Line, s})
			}
		}
		return true
	})
	return list
}

func lines(text string, keep func(string) string) (list []passage) {
	for i, s := range strings.Split(text, "\n") {
		if s = keep(s); s != "" {
			list = append(list, passage{i + 1, s})
		}
	}
	return list
}

func TestWordsSeeFaults(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       int
	}{
		{"a.go", "package a\n\nvar s = \"The repair is Safe.\"", 1},
		{"a.go", "package a\n\nvar s = `not\ncompliant`", 1},
		{"a.go", "package a\n\ntype t struct { X int `doc:\"approved by\"` }", 1},
		{"a.go", "package a // safe\n\nimport _ \"unsafe\"\n\nvar safe = \"safety data sheet\"", 0},
		{"a_test.go", "package a\n\nvar s = \"safe\"", 0},
		{"a.html", "<p>guaranteed</p>", 1},
		{"a.tmpl", "UNSAFE", 1},
		{"data/a.yaml", "note: certified # by whom", 1},
		{"data/a.yaml", "# certified\nnote: x # safe", 0},
		{"a.md", "safe", 0},
	} {
		got := 0
		for _, s := range shown(c.name, c.text) {
			if promises.MatchString(s.text) {
				got++
			}
		}
		if got != c.want {
			t.Errorf("%s %q: got %d, want %d", c.name, c.text, got, c.want)
		}
	}
}
