package job

import (
	"encoding/json"
	"strings"

	"github.com/google/jsonschema-go/jsonschema"
)

// Schema returns the JSON Schema (draft 2020-12) of the job file, for editors
// that complete and check while one types. It is made from the same tags as the
// reader, but says less: limits of quantities stand only in its descriptions,
// for JSON Schema cannot compare "5 mm" with "100 mm".
func Schema() ([]byte, error) {
	s := schemaOf(layout, "one fibreglass repair: what was measured, what was asked, what is on the shelf")
	s.Schema = "https://json-schema.org/draft/2020-12/schema"
	s.Title = "Scarfwright job file, format 1"
	b, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return nil, err
	}
	return append(b, '\n'), nil
}

// patterns are loose on purpose: they show a slip while typing, such as a number
// without a unit, and leave the judgement to the reader.
const (
	quantityPattern = `^\s*[-+]?[0-9].*[A-Za-z%°"'′″]`
	pointPattern    = `^.+,.+[A-Za-z"'′″]`
	plyPattern      = `^[a-z][a-z0-9.-]*(@.+)?$`
	datePattern     = `^[0-9]{4}-[0-9]{2}-[0-9]{2}$`
)

func schemaOf(s *shape, doc string) *jsonschema.Schema {
	out := &jsonschema.Schema{Description: doc}
	switch s.kind {
	case isGroup:
		out.Type = "object"
		out.Properties = map[string]*jsonschema.Schema{}
		out.AdditionalProperties = &jsonschema.Schema{Not: &jsonschema.Schema{}}
		for _, f := range s.fields {
			out.Properties[f.key] = schemaOf(f.shape, f.doc)
			out.PropertyOrder = append(out.PropertyOrder, f.key)
			if f.required {
				out.Required = append(out.Required, f.key)
			}
		}
	case isList:
		out.Type = "array"
		out.Items = schemaOf(s.elem, "")
	case isTable:
		out.Type = "object"
		out.AdditionalProperties = schemaOf(s.elem, "")
	case isNumber, isCount:
		out.Type = "number"
		if s.kind == isCount {
			out.Type = "integer"
		}
		switch {
		case s.min != nil && s.min.open:
			out.ExclusiveMinimum = &s.min.value
		case s.min != nil:
			out.Minimum = &s.min.value
		}
		if s.max != nil {
			out.Maximum = &s.max.value
		}
	case isText:
		textSchema(out, s)
	case isQuantity:
		out.Type = "string"
		out.Pattern = quantityPattern
		switch s.typ.Name() {
		case "Point":
			out.Pattern = pointPattern
		case "PlyRef":
			out.Pattern = plyPattern
		}
		out.Examples = []any{s.example()}
		out.Description = strings.TrimPrefix(doc+"; "+s.allowed(), "; ")
	}
	return out
}

func textSchema(out *jsonschema.Schema, s *shape) {
	switch {
	case s.one != nil:
		out.Type = "string"
		for _, w := range s.one {
			out.Enum = append(out.Enum, w)
		}
	case s.form == "date":
		out.Type = "string"
		out.Pattern = datePattern
	default:
		// "number: 1234" is an integer to an editor and a text to us.
		out.Types = []string{"string", "number"}
	}
}
