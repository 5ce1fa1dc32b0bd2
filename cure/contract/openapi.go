package contract

import (
	"bytes"
	"encoding/json"
	"reflect"
	"slices"
	"strings"

	"github.com/drywright/drywright/cure/job"
)

// About is the head of a description in OpenAPI.
type About struct{ Title, Version, Description, License string }

// Path is one address of a service. Body and Answer name types of the documents; Text is the media type of a body and answer
// that are no JSON; Problem names the type of what goes wrong.
type Path struct {
	Method, Path, Summary, Body, Answer, Text, Problem string
	Query                                              []Parameter
}

// Parameter is one that may stand in the query of an address, out of some words.
type Parameter struct {
	Name, About string
	Words       []string
}

// OpenAPI describes a service (OpenAPI 3.1.0) whose documents are the Go types of the values in named and all types that
// these mention. The same types give the same bytes. The job is described by its own schema, with ranges and units, whose
// words say puts into a language.
func OpenAPI(say func(text string) string, about About, paths []Path, named map[string]any) []byte {
	d := describer{names: map[reflect.Type]string{}, schemas: map[string]any{}, unions: unions()}
	d.schemas["Job"] = json.RawMessage(withoutDialect(Schema(say)))
	d.names[reflect.TypeFor[job.Job]()] = "Job"
	var order []string
	for name := range named {
		order = append(order, name)
	}
	slices.Sort(order)
	for _, name := range order {
		d.names[reflect.TypeOf(named[name])] = name
	}
	// What is asked comes first, and with all that it mentions may leave any member out; what is answered has all of them.
	d.loose = true
	for _, asked := range []bool{true, false} {
		for _, name := range order {
			if asked == slices.ContainsFunc(paths, func(p Path) bool { return p.Body == name }) {
				d.declare(reflect.TypeOf(named[name]))
			}
		}
		d.loose = false
	}
	document := map[string]any{
		"openapi": "3.1.0",
		"info": map[string]any{"title": about.Title, "version": about.Version, "description": about.Description,
			"license": map[string]any{"name": about.License, "identifier": about.License}},
		"paths":      addresses(paths),
		"components": map[string]any{"schemas": d.schemas},
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(document); err != nil {
		panic("contract: the description cannot be written as JSON: " + err.Error())
	}
	return bytes.TrimRight(b.Bytes(), "\n")
}

// withoutDialect takes the members off the job's schema that only a document of its own has.
func withoutDialect(text []byte) []byte {
	var s map[string]json.RawMessage
	if err := json.Unmarshal(text, &s); err != nil {
		panic("contract: the schema of the job is no JSON: " + err.Error())
	}
	delete(s, "$schema")
	delete(s, "$id")
	out, _ := json.Marshal(s) // what has just been read can be written
	return out
}

func addresses(paths []Path) map[string]any {
	content := func(media, schema string) map[string]any {
		if schema == "" {
			return map[string]any{media: map[string]any{}}
		}
		return map[string]any{media: map[string]any{"schema": reference(schema)}}
	}
	all := map[string]any{}
	for _, p := range paths {
		media := "application/json"
		if p.Text != "" {
			media = p.Text
		}
		operation := map[string]any{
			"summary":     p.Summary,
			"operationId": strings.Trim(strings.NewReplacer("/v1/", "", "/", "-", ".json", "").Replace(p.Path), "-"),
			"responses": map[string]any{
				"200": map[string]any{"description": "The answer", "content": content(media, p.Answer)},
				"4XX": map[string]any{"description": "What is wrong, and what to do", "content": content("application/problem+json", p.Problem)},
				"500": map[string]any{"description": "A fault of the service", "content": content("application/problem+json", p.Problem)},
			},
		}
		if p.Body != "" || p.Text != "" {
			operation["requestBody"] = map[string]any{"required": true, "content": content(media, p.Body)}
		}
		var parameters []any
		for _, q := range p.Query {
			parameters = append(parameters, map[string]any{"name": q.Name, "in": "query", "description": q.About,
				"schema": map[string]any{"type": "string", "enum": q.Words}})
		}
		if parameters != nil {
			operation["parameters"] = parameters
		}
		all[p.Path] = map[string]any{p.Method: operation}
	}
	return all
}

func reference(name string) map[string]any {
	return map[string]any{"$ref": "#/components/schemas/" + name}
}

// describer turns Go types into JSON Schemas, each named struct once.
type describer struct {
	names   map[reflect.Type]string
	schemas map[string]any
	unions  map[reflect.Type][]string
	loose   bool // any member may be left out
}

// name is what a struct is called in the description: its own name, with that of its package where another has it.
func (d *describer) name(t reflect.Type) string {
	if n, known := d.names[t]; known {
		return n
	}
	n := t.Name()
	for _, taken := range d.names {
		if taken == n {
			_, pkg, _ := strings.Cut(t.PkgPath(), "/cure/")
			n = strings.ToUpper(pkg[:1]) + pkg[1:] + n
			break
		}
	}
	d.names[t] = n
	return n
}

// declare describes a struct once.
func (d *describer) declare(t reflect.Type) {
	name := d.name(t)
	if _, known := d.schemas[name]; known {
		return
	}
	members, required := map[string]any{}, []string{}
	d.schemas[name] = nil // being described
	d.members(t, members, &required)
	s := map[string]any{"type": "object", "properties": members}
	if len(required) > 0 {
		s["required"] = required
	}
	d.schemas[name] = s
}

// members describes the members of a struct, those of embedded structs among them.
func (d *describer) members(t reflect.Type, members map[string]any, required *[]string) {
	for i := range t.NumField() {
		f := t.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous && name == "" {
			d.members(f.Type, members, required)
			continue
		}
		if !f.IsExported() || name == "-" || name == "" {
			continue
		}
		left := strings.Contains(options, "omitempty") || strings.Contains(options, "omitzero")
		if !left && !d.loose {
			*required = append(*required, name)
		}
		members[name] = d.schema(f.Type, left)
	}
}

// schema describes the type of a member; a pointer or list that is not left out when empty may be null, and a word may be empty.
func (d *describer) schema(t reflect.Type, left bool) any {
	switch t.Kind() {
	case reflect.Pointer:
		return orNull(d.schema(t.Elem(), false), left)
	case reflect.Slice, reflect.Array:
		if t == reflect.TypeFor[json.RawMessage]() {
			return map[string]any{} // a document of its own
		}
		return orNull(map[string]any{"type": "array", "items": d.schema(t.Elem(), false)}, left || t.Kind() == reflect.Array)
	case reflect.Map:
		return map[string]any{"type": "object", "additionalProperties": d.schema(t.Elem(), false)}
	case reflect.Struct:
		d.declare(t)
		return reference(d.name(t))
	case reflect.String:
		if words := d.unions[t]; len(words) > 0 {
			return map[string]any{"type": "string", "enum": append(slices.Clone(words), "")}
		}
		return map[string]any{"type": "string"}
	case reflect.Bool:
		return map[string]any{"type": "boolean"}
	case reflect.Interface:
		return map[string]any{}
	case reflect.Float64, reflect.Float32:
		return map[string]any{"type": "number"}
	}
	return map[string]any{"type": "integer"}
}

// orNull is a schema, or null where nothing is sent so.
func orNull(schema any, never bool) any {
	if never {
		return schema
	}
	return map[string]any{"anyOf": []any{schema, map[string]any{"type": "null"}}}
}
