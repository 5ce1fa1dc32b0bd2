package contract

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strings"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/words"
)

// Schema is the JSON Schema (draft 2020-12) of a job document, indented, the same bytes every time. It says what can be
// said of one value at a time: types, ranges, words, lengths, defaults, and that a humidity is one number out of five.
// What values must not contradict each other in, only job.Validate knows. Numbers carry their unit as "x-unit".
// say puts the words of fields and blocks into a language.
func Schema(say func(text string) string) []byte {
	s := schemer{say: say, fields: map[string]job.Field{}, blocks: map[string]job.Block{}}
	for _, f := range job.Fields() {
		s.fields[f.Path] = f
	}
	for _, b := range job.Blocks() {
		s.blocks[b.Path] = b
	}
	root := s.schema(reflect.TypeFor[job.Job](), "")
	root.Dialect = "https://json-schema.org/draft/2020-12/schema"
	root.ID = "urn:drywright:job:1"
	root.Required = []string{"version"}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(root); err != nil {
		panic("contract: the tables of package job cannot be written as JSON: " + err.Error())
	}
	return b.Bytes()
}

// schema is the part of the vocabulary that a job needs, in the order in which it is written.
type schema struct {
	Dialect     string      `json:"$schema,omitempty"`
	ID          string      `json:"$id,omitempty"`
	Title       string      `json:"title,omitempty"`
	Description string      `json:"description,omitempty"`
	Type        any         `json:"type,omitempty"`
	Unit        string      `json:"x-unit,omitempty"`
	Minimum     *float64    `json:"minimum,omitempty"`
	Maximum     *float64    `json:"maximum,omitempty"`
	MaxLength   int         `json:"maxLength,omitempty"`
	Enum        []string    `json:"enum,omitempty"`
	Default     any         `json:"default,omitempty"`
	Properties  *properties `json:"properties,omitempty"`
	Required    []string    `json:"required,omitempty"`
	Additional  *bool       `json:"additionalProperties,omitempty"`
	OneOf       []*schema   `json:"oneOf,omitempty"`
	Items       *schema     `json:"items,omitempty"`
	MinItems    *int        `json:"minItems,omitempty"`
	MaxItems    *int        `json:"maxItems,omitempty"`
}

// properties is an object that keeps the order of its entries.
type properties []property

type property struct {
	name   string
	schema *schema
}

// MarshalJSON implements json.Marshaler.
func (p properties) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, e := range p {
		if i > 0 {
			b.WriteByte(',')
		}
		name, err := json.Marshal(e.name)
		if err != nil {
			return nil, err
		}
		value, err := json.Marshal(e.schema)
		if err != nil {
			return nil, err
		}
		b.Write(name)
		b.WriteByte(':')
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

type schemer struct {
	say    func(text string) string
	fields map[string]job.Field
	blocks map[string]job.Block
}

func (s schemer) schema(t reflect.Type, pattern string) *schema {
	switch t.Kind() {
	case reflect.Pointer:
		out := s.schema(t.Elem(), pattern)
		out.Type = []any{out.Type, "null"}
		if s.blocks[pattern].Absent || s.fields[pattern].Absent {
			out.Default = json.RawMessage("null")
		}
		return out
	case reflect.Struct:
		return s.object(t, pattern)
	case reflect.Slice:
		b := s.blocks[pattern]
		return &schema{Title: s.say(b.Label), Description: s.say(b.Help), Type: "array", Items: s.schema(t.Elem(), pattern+"[]"),
			MinItems: &b.MinItems, MaxItems: &b.MaxItems}
	}
	return s.leaf(s.fields[pattern])
}

func (s schemer) object(t reflect.Type, pattern string) *schema {
	b := s.blocks[pattern]
	closed := false
	out := &schema{Title: s.say(b.Label), Description: s.say(b.Help), Type: "object", Additional: &closed, Properties: &properties{}}
	for i := range t.NumField() {
		name := jsonName(t.Field(i))
		path := name
		if pattern != "" {
			path = pattern + "." + name
		}
		*out.Properties = append(*out.Properties, property{name, s.schema(t.Field(i).Type, path)})
		if b.OneOf {
			number := &schema{Type: "number"}
			out.OneOf = append(out.OneOf, &schema{Required: []string{name}, Properties: &properties{{name, number}}})
		}
	}
	return out
}

func (s schemer) leaf(f job.Field) *schema {
	out := &schema{Title: s.say(f.Label), Description: s.description(f), Unit: f.Unit}
	switch f.Kind {
	case job.KindNumber:
		out.Type, out.Minimum, out.Maximum, out.Default = "number", &f.Low, &f.High, f.Default
		if f.Integer {
			out.Type = "integer"
		}
	case job.KindText:
		out.Type, out.MaxLength, out.Default = "string", int(f.High), words.English(f.Text)
	case job.KindChoice:
		out.Type, out.Default = "string", f.Text
		for _, c := range f.Choices {
			out.Enum = append(out.Enum, c.Value)
		}
	case job.KindSwitch:
		out.Type, out.Default = "boolean", f.On
	}
	return out
}

func (s schemer) description(f job.Field) string {
	if f.Kind == job.KindNumber {
		return s.say(words.Key("schema.number", "help", f.Help, "effect", words.Inside(f.Effect), "source", f.Source))
	}
	return s.say(words.Key("schema.other", "help", f.Help, "source", f.Source))
}

func jsonName(f reflect.StructField) string {
	name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
	return name
}
