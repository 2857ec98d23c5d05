package checks

import (
	"go/ast"
	"go/types"
	"slices"
	"strings"
	"testing"
)

// The five shelves, each with the reason why it may not reach to a later one.
var shelves = []struct{ name, why string }{
	{"physics", "it is formulas anybody may reuse, and knows no boat"},
	{"repair", "it is the trade's rules, a description in and a result out, the same on every machine"},
	{"present", "it turns results into bytes, and must not know who asked for them"},
	{"internal", "it is the edge to disk, clock, network and user; commands build on it"},
	{"cmd", "it is a dozen lines that start the program"},
}

func rank(name string) int {
	for i, s := range shelves {
		if s.name == name {
			return i
		}
	}
	return -1
}

// pure reports whether a package stands before internal/.
func pure(path string) bool { r := rank(shelf(path)); return r >= 0 && r < rank("internal") }

// edges are packages of the standard library that reach outside the program.
var edges = []string{"os", "net", "log", "database/sql", "syscall", "crypto/rand", "io/ioutil", "plugin", "runtime/debug"}

// imported says what is wrong with one import, "" if nothing is.
func imported(from, path string) string {
	mine, theirs := shelf(from), shelf(path)
	if rank(mine) < 0 {
		return "this package stands on none of the shelves physics, repair, present, internal, cmd"
	}
	if rank(theirs) > rank(mine) {
		return mine + " may not import " + path + ": " + shelves[rank(mine)].why
	}
	if !pure(from) {
		return ""
	}
	for _, e := range edges {
		if path == e || strings.HasPrefix(path, e+"/") {
			return mine + " may not import " + path + ": disk, network, log and clock are for internal/, so that one description always gives one result"
		}
	}
	first, _, _ := strings.Cut(path, "/")
	if mine == "physics" && theirs == "" && strings.Contains(first, ".") && !strings.HasPrefix(path, "gonum.org/v1/gonum/") {
		return "physics may not import " + path + ": it needs the standard library and one numeric library, gonum"
	}
	return ""
}

func TestShelves(t *testing.T) {
	var found findings
	h := theHouse(t)
	for _, p := range h.pkgs {
		for _, i := range p.imports {
			if wrong := imported(p.path, i); wrong != "" {
				found.add(p.path, "%s", wrong)
			}
		}
	}
	found.report(t)
}

func TestShelvesSeeFaults(t *testing.T) {
	for _, c := range []struct {
		from, path string
		ok         bool
	}{
		{"scarfwright/physics/heat", "scarfwright/physics/si", true},
		{"scarfwright/physics/heat", "scarfwright/repair/job", false},
		{"scarfwright/physics/heat", "gonum.org/v1/gonum/mat", true},
		{"scarfwright/physics/heat", "github.com/alecthomas/kong", false},
		{"scarfwright/physics/heat", "math", true},
		{"scarfwright/repair/job", "scarfwright/physics/si", true},
		{"scarfwright/repair/job", "scarfwright/present/drawing", false},
		{"scarfwright/repair/job", "os", false},
		{"scarfwright/repair/catalog", "embed", true},
		{"scarfwright/repair/catalog", "io/fs", true},
		{"scarfwright/present/pages", "html/template", true},
		{"scarfwright/present/pages", "net/http", false},
		{"scarfwright/present/pages", "net/url", false},
		{"scarfwright/present/pages", "log/slog", false},
		{"scarfwright/present/pages", "scarfwright/internal/web", false},
		{"scarfwright/internal/web", "net/http", true},
		{"scarfwright/internal/web", "scarfwright/cmd/scarfwright", false},
		{"scarfwright/cmd/scarfwright", "scarfwright/internal/cli", true},
		{"scarfwright/util", "fmt", false},
	} {
		if got := imported(c.from, c.path); (got == "") != c.ok {
			t.Errorf("%s importing %s: got %q", c.from, c.path, got)
		}
	}
}

// No clock and no unseeded chance before internal/: time and seed arrive as
// values, so that a job planned again gives the same paper.
func TestClockAndChance(t *testing.T) {
	h := theHouse(t)
	for _, p := range h.pkgs {
		if p.info != nil && pure(p.path) {
			h.clockAndChance(p.info, p.files).report(t)
		}
	}
}

var (
	clock  = []string{"Now", "Since", "Until", "After", "AfterFunc", "Tick", "NewTicker", "NewTimer", "Sleep"}
	seeded = []string{"New", "NewSource", "NewPCG", "NewChaCha8", "NewZipf"}
)

func (h *house) clockAndChance(info *types.Info, files []*ast.File) (found findings) {
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			id, ok := n.(*ast.Ident)
			if !ok {
				return true
			}
			fn, ok := info.Uses[id].(*types.Func)
			if !ok || fn.Pkg() == nil || fn.Signature().Recv() != nil {
				return true
			}
			switch fn.Pkg().Path() {
			case "time":
				if slices.Contains(clock, fn.Name()) {
					found.add(h.at(id.Pos()), "time.%s: no clock before internal/, take the time as a value", fn.Name())
				}
			case "math/rand", "math/rand/v2":
				if !slices.Contains(seeded, fn.Name()) {
					found.add(h.at(id.Pos()), "rand.%s: no unseeded chance before internal/, use rand.New with a seed from the input", fn.Name())
				}
			}
			return true
		})
	}
	return found
}
