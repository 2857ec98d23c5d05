package job

import (
	"fmt"
	"strings"

	"github.com/goccy/go-yaml/ast"
)

// The few questions the walk asks of the YAML library's nodes.

// unwrap gives the node itself; the library wraps a lone pair.
func unwrap(n ast.Node) ast.Node {
	if v, ok := n.(*ast.MappingKeyNode); ok {
		return v.Value
	}
	return n
}

func isMapping(n ast.Node) bool {
	return n.Type() == ast.MappingType || n.Type() == ast.MappingValueType
}

// entries returns the pairs of a mapping, in the file's order.
func entries(n ast.Node) []*ast.MappingValueNode {
	switch n := n.(type) {
	case *ast.MappingNode:
		return n.Values
	case *ast.MappingValueNode:
		return []*ast.MappingValueNode{n}
	}
	return nil
}

func isScalar(n ast.Node) bool {
	switch n.Type() {
	case ast.StringType, ast.IntegerType, ast.FloatType, ast.BoolType, ast.InfinityType, ast.NanType, ast.NullType, ast.LiteralType:
		return true
	}
	return false
}

// scalarText returns what was typed. YAML's own idea of types is not used: "no"
// is a word here, 007 a text, and whether 12 is a number is for the field to say.
func scalarText(n ast.Node) string {
	switch n := n.(type) {
	case *ast.StringNode:
		return n.Value
	case *ast.LiteralNode:
		return strings.TrimRight(n.Value.Value, "\n")
	case *ast.NullNode:
		return ""
	}
	if !isScalar(n) {
		return ""
	}
	return strings.TrimSpace(n.GetToken().Value)
}

func keyText(n ast.Node) string {
	switch k := n.(type) {
	case *ast.StringNode:
		return k.Value
	case *ast.NullNode:
		return "null"
	}
	return strings.TrimSpace(n.GetToken().Value)
}

// badTableName says what is wrong with a name of the user's own, or "".
func badTableName(key string) string {
	switch {
	case strings.TrimSpace(key) == "":
		return "an empty name stands here."
	case strings.TrimSpace(key) != key || strings.ContainsFunc(key, func(r rune) bool { return forbidden(r) || r == '\n' || r == '\t' }):
		return "a name here begins or ends with a space, or holds a hidden character."
	case len(key) > 80:
		return fmt.Sprintf("the name '%s' is longer than 80 letters.", shorten(key))
	}
	return ""
}

// field returns the field of a key, or nil.
func (s *shape) field(key string) *field {
	for i := range s.fields {
		if s.fields[i].key == key {
			return &s.fields[i]
		}
	}
	return nil
}
