package checks

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

const module = "scarfwright"

// pkg is one package of the module, without its tests.
type pkg struct {
	path    string // import path
	dir     string
	files   []*ast.File
	names   []string // of files, from the module's root
	imports []string
	types   *types.Package
	info    *types.Info
	err     error // why it does not compile; then types and info may be in part
}

// house is the whole module.
type house struct {
	root  string
	fset  *token.FileSet
	pkgs  []*pkg // dependencies first
	check func(path string, files []*ast.File) (*types.Package, *types.Info, error)
}

var load = sync.OnceValues(func() (*house, error) {
	root, err := filepath.Abs("../..")
	if err != nil {
		return nil, err
	}
	cmd := exec.Command("go", "list", "-e", "-export", "-deps", "-json=ImportPath,Dir,GoFiles,Imports,Export,Standard,Module,Error", "./...")
	cmd.Dir = root
	var stdout, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	if err := cmd.Run(); err != nil && stdout.Len() == 0 {
		return nil, fmt.Errorf("go list: %w\n%s", err, stderr.String())
	}
	h := &house{root: root, fset: token.NewFileSet()}
	ours, exports := map[string]*types.Package{}, map[string]string{}
	others := importer.ForCompiler(h.fset, "gc", func(path string) (io.ReadCloser, error) {
		if exports[path] == "" {
			return nil, fmt.Errorf("no export data for %s", path)
		}
		return os.Open(exports[path])
	})
	h.check = func(path string, files []*ast.File) (*types.Package, *types.Info, error) {
		info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}}
		var first error
		conf := types.Config{
			Importer: importFunc(func(p string) (*types.Package, error) {
				if t, ok := ours[p]; ok {
					return t, nil
				}
				return others.Import(p)
			}),
			Error: func(err error) {
				if first == nil {
					first = err
				}
			},
		}
		t, _ := conf.Check(path, h.fset, files, info)
		return t, info, first
	}
	for dec := json.NewDecoder(&stdout); ; {
		var l struct {
			ImportPath, Dir, Export string
			GoFiles, Imports        []string
			Standard                bool
			Module                  *struct{ Path string }
			Error                   *struct{ Err string }
		}
		if err := dec.Decode(&l); err == io.EOF {
			return h, nil
		} else if err != nil {
			return nil, err
		}
		exports[l.ImportPath] = l.Export
		if l.Module == nil || l.Module.Path != module {
			continue
		}
		p := &pkg{path: l.ImportPath, dir: l.Dir, imports: l.Imports}
		for _, name := range l.GoFiles {
			f, err := parser.ParseFile(h.fset, filepath.Join(l.Dir, name), nil, parser.ParseComments|parser.SkipObjectResolution)
			if err != nil {
				p.err = err
			}
			if f != nil {
				p.files = append(p.files, f)
				p.names = append(p.names, h.rel(filepath.Join(l.Dir, name)))
			}
		}
		if p.err == nil && len(p.files) > 0 {
			p.types, p.info, p.err = h.check(p.path, p.files)
			ours[p.path] = p.types
		}
		if p.err == nil && l.Error != nil {
			p.err = fmt.Errorf("%s", l.Error.Err)
		}
		h.pkgs = append(h.pkgs, p)
	}
})

type importFunc func(string) (*types.Package, error)

func (f importFunc) Import(path string) (*types.Package, error) { return f(path) }

// rel is a path from the module's root, with forward slashes.
func (h *house) rel(path string) string {
	r, err := filepath.Rel(h.root, path)
	if err != nil {
		return path
	}
	return filepath.ToSlash(r)
}

// at is where a thing stands: "physics/si/si.go:12".
func (h *house) at(pos token.Pos) string {
	p := h.fset.Position(pos)
	return fmt.Sprintf("%s:%d", h.rel(p.Filename), p.Line)
}

// theHouse loads the module for a test. Packages that do not compile are
// reported by TestModuleCompiles alone.
func theHouse(t *testing.T) *house {
	t.Helper()
	h, err := load()
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// A package that cannot be loaded cannot be checked either, so it fails the
// house; but not in -short, for others may be in the middle of writing it.
func TestModuleCompiles(t *testing.T) {
	h := theHouse(t)
	if len(h.pkgs) == 0 {
		t.Fatal("go list found no package of the module")
	}
	for _, p := range h.pkgs {
		switch {
		case p.err != nil && testing.Short():
			t.Logf("%s is not fully checked: %v", p.path, p.err)
		case p.err != nil:
			t.Errorf("%s does not compile, so it is not fully checked: %v", p.path, p.err)
		}
	}
}

// findings are lines like "physics/si/si.go:12: what is wrong".
type findings []string

func (f *findings) add(where, what string, args ...any) {
	*f = append(*f, where+": "+fmt.Sprintf(what, args...))
}

func (f findings) report(t *testing.T) {
	t.Helper()
	for _, line := range f {
		t.Error(line)
	}
}

// shelf is the first folder of a package of ours, "" for a package of others.
func shelf(path string) string {
	rest, ok := strings.CutPrefix(path, module+"/")
	if !ok {
		return ""
	}
	first, _, _ := strings.Cut(rest, "/")
	return first
}
