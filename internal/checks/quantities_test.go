package checks

import (
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const si = module + "/physics/si"

// TestQuantities refuses arithmetic between quantities that compiles because
// both sides have one type, but whose result has not that type's unit.
//
// Allowed are a plain constant times a quantity (2*l), sums and differences of
// like quantities, products of ratios, whose unit is 1 either way, and a
// quotient that is at once made a number: float64(l/m), si.Ratio(l/m).
func TestQuantities(t *testing.T) {
	h := theHouse(t)
	for _, p := range h.pkgs {
		if p.types != nil {
			h.quantities(p.types, p.info, p.files).report(t)
		}
	}
}

func (h *house) quantities(pkg *types.Package, info *types.Info, files []*ast.File) (found findings) {
	numbers := map[ast.Expr]bool{} // quotients made a number
	look := func(pos token.Pos, op token.Token, x, y ast.Expr) {
		name := quantity(info.TypeOf(x))
		if name == "" || name != quantity(info.TypeOf(y)) || h.plain(pkg, x) || h.plain(pkg, y) {
			return
		}
		switch {
		case (op == token.MUL || op == token.QUO) && name != "Ratio":
			found.add(h.at(pos), "%s %s %s has not the unit of %s: scale by a number with si.Scale, make a quotient a number"+
				" with float64(x/y), else drop to float64 or use a method of si that names the result", name, op, name, name)
		case (op == token.ADD || op == token.SUB) && name == "Temp" && pkg.Path() != si:
			found.add(h.at(pos), "Temp %s Temp is not a temperature: use Temp.Add with a difference, or Temp.Sub for one", op)
		}
	}
	assign := map[token.Token]token.Token{token.MUL_ASSIGN: token.MUL, token.QUO_ASSIGN: token.QUO,
		token.ADD_ASSIGN: token.ADD, token.SUB_ASSIGN: token.SUB}
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				if tv := info.Types[n.Fun]; tv.IsType() && len(n.Args) == 1 && number(tv.Type) {
					numbers[ast.Unparen(n.Args[0])] = true
				}
			case *ast.BinaryExpr:
				if n.Op != token.QUO || !numbers[n] {
					look(n.OpPos, n.Op, n.X, n.Y)
				}
			case *ast.AssignStmt:
				if op, ok := assign[n.Tok]; ok {
					look(n.TokPos, op, n.Lhs[0], n.Rhs[0])
				}
			}
			return true
		})
	}
	return found
}

// number reports whether a type is float64 or si.Ratio.
func number(t types.Type) bool {
	b, ok := types.Unalias(t).(*types.Basic)
	return ok && b.Kind() == types.Float64 || quantity(t) == "Ratio"
}

// quantity is the name of a type of package si made of a number, "" for any
// other type. A type parameter bound to si.Quantity counts as one.
func quantity(t types.Type) string {
	if p, ok := types.Unalias(t).(*types.TypeParam); ok {
		if c, ok := types.Unalias(p.Constraint()).(*types.Named); ok && of(c, si) && c.Obj().Name() == "Quantity" {
			return p.Obj().Name()
		}
		return ""
	}
	n, ok := types.Unalias(t).(*types.Named)
	if !ok || !of(n, si) {
		return ""
	}
	if b, ok := n.Underlying().(*types.Basic); !ok || b.Kind() != types.Float64 {
		return ""
	}
	return n.Obj().Name()
}

func of(n *types.Named, path string) bool {
	return n.Obj().Pkg() != nil && n.Obj().Pkg().Path() == path
}

// plain reports whether x is a constant without a type of its own. The checker
// gives the 2 of 2*l the type of l, so x is looked at once more by itself.
func (h *house) plain(pkg *types.Package, x ast.Expr) bool {
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	if err := types.CheckExpr(h.fset, pkg, x.Pos(), x, info); err != nil {
		return false // names a local value, so it is no plain constant
	}
	tv := info.Types[x]
	b, ok := tv.Type.(*types.Basic)
	return ok && tv.Value != nil && b.Info()&types.IsUntyped != 0
}

// The faults planted in testdata are found, each on its line, and no others.
func TestPlantedFaults(t *testing.T) {
	h := theHouse(t)
	const name = "testdata/planted/planted.go"
	f, err := parser.ParseFile(h.fset, name, nil, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	pkg, info, err := h.check(module+"/repair/planted", []*ast.File{f})
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for _, group := range f.Comments {
		for _, c := range group.List {
			if what, ok := strings.CutPrefix(c.Text, "// fault: "); ok {
				want = append(want, strconv.Itoa(h.fset.Position(c.Pos()).Line)+": "+what)
			}
		}
	}
	var got []string
	for _, line := range append(h.quantities(pkg, info, []*ast.File{f}), h.clockAndChance(info, []*ast.File{f})...) {
		_, line, _ = strings.Cut(line, ":")
		words := strings.Fields(line)
		got = append(got, strings.Join(words[:min(4, len(words))], " "))
	}
	slices.Sort(got)
	slices.Sort(want)
	for _, w := range want {
		if !slices.ContainsFunc(got, func(g string) bool { return strings.HasPrefix(g, w) }) {
			t.Errorf("not found: line %s", w)
		}
	}
	if len(got) != len(want) || len(want) < 15 {
		t.Errorf("got %d faults, want %d:\n%s", len(got), len(want), strings.Join(got, "\n"))
	}
}
