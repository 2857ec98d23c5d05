package job

import (
	"fmt"
	"strings"
)

// Key is one name of the job file, for manuals and forms.
type Key struct {
	Path     string // "damage.marks[].long"
	Sort     string // "length such as 12 mm"
	Allowed  string // limits or words, "" where anything of its sort goes
	Doc      string
	Required bool // within its group
	Group    bool // holds other names
}

// Reference lists every name of the job file, in the file's order.
func Reference() []Key { return keysOf(layout, "") }

func keysOf(s *shape, path string) []Key {
	var out []Key
	for _, f := range s.fields {
		k := Key{Path: strings.TrimPrefix(path+"."+f.key, "."), Doc: f.doc, Required: f.required}
		inner := f.shape
		prefix := ""
		if inner.kind == isList {
			inner, prefix = inner.elem, "list of "
			k.Path += "[]"
		}
		switch inner.kind {
		case isGroup:
			k.Group, k.Sort = true, prefix+"group"
		case isTable:
			k.Sort, k.Allowed = "names of your own, each with a "+inner.elem.sort(), inner.elem.limits()
		default:
			k.Sort, k.Allowed = prefix+inner.sort(), inner.limits()
			if inner.one != nil {
				k.Sort, k.Allowed = prefix+"word", listed(inner.one)
			}
			if inner.form == "date" {
				k.Sort = "date"
			}
		}
		out = append(out, k)
		out = append(out, keysOf(inner, k.Path)...)
	}
	return out
}

// Manual returns the reference as Markdown, a table for each group.
func Manual() string {
	var b strings.Builder
	groups := []string{}
	rows := map[string][]Key{}
	for _, k := range Reference() {
		group := ""
		if i := strings.LastIndexByte(k.Path, '.'); i >= 0 {
			group = k.Path[:i]
		}
		if _, ok := rows[group]; !ok {
			groups = append(groups, group)
		}
		rows[group] = append(rows[group], k)
	}
	for _, group := range groups {
		title := "`" + group + "`"
		if group == "" {
			title = "The file"
		}
		fmt.Fprintf(&b, "\n### %s\n\n| name | what stands there | allowed | meaning |\n|---|---|---|---|\n", title)
		for _, k := range rows[group] {
			name := strings.TrimSuffix(k.Path[strings.LastIndexByte(k.Path, '.')+1:], "[]")
			must := ""
			if k.Required {
				must = " (required)"
			}
			fmt.Fprintf(&b, "| `%s`%s | %s | %s | %s |\n", name, must, cell(k.Sort), cell(k.Allowed), cell(k.Doc))
		}
	}
	return b.String()
}

func cell(s string) string { return strings.ReplaceAll(s, "|", "\\|") }
