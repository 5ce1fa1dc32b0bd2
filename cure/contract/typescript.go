package contract

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
)

// TypeScript writes an interface for each struct type that the roots lead to, in the order in which they are met, and a
// union of words for each named text. Job, Result, Field, Block and Fault come first; more are values of the types to
// add. Two types of one name in different packages: the later one gets its package's name in front. Optional members
// (omitempty) are written with a question mark, pointers as "| null". Members of the job carry their label, unit
// and help, which say puts into a language.
func TypeScript(say func(text string) string, more ...any) []byte {
	w := writer{say: say, names: map[reflect.Type]string{}, taken: map[string]bool{}, declared: map[reflect.Type]bool{},
		fields: map[string]job.Field{}, unions: unions()}
	for _, f := range job.Fields() {
		w.fields[f.Path] = f
	}
	w.out.WriteString("// Generated from the Go types by cure/cmd/schema; do not edit.\n")
	w.declare(reflect.TypeFor[job.Job](), "", true)
	for _, t := range []reflect.Type{reflect.TypeFor[result.Result](), reflect.TypeFor[job.Field](),
		reflect.TypeFor[job.Block](), reflect.TypeFor[fault.Fault]()} {
		w.declare(t, "", false)
	}
	for _, v := range more {
		w.declare(reflect.TypeOf(v), "", false)
	}
	return w.out.Bytes()
}

type writer struct {
	say      func(text string) string
	out      bytes.Buffer
	names    map[reflect.Type]string
	taken    map[string]bool
	declared map[reflect.Type]bool
	fields   map[string]job.Field
	unions   map[reflect.Type][]string
}

// name is the TypeScript name of a type.
func (w *writer) name(t reflect.Type) string {
	if n, ok := w.names[t]; ok {
		return n
	}
	n := t.Name()
	if w.taken[n] {
		_, pkg, _ := strings.Cut(t.PkgPath(), "/cure/")
		n = strings.ToUpper(pkg[:1]) + pkg[1:] + n
	}
	w.taken[n], w.names[t] = true, n
	return n
}

// declare writes the declaration of a named type once, and then those of the types that it mentions. Inside the job the
// members are looked up in the field table by their path pattern.
func (w *writer) declare(t reflect.Type, pattern string, inJob bool) {
	switch t.Kind() {
	case reflect.Pointer:
		w.declare(t.Elem(), pattern, inJob)
		return
	case reflect.Slice, reflect.Array:
		if t != reflect.TypeFor[json.RawMessage]() {
			w.declare(t.Elem(), pattern+"[]", inJob)
		}
		return
	}
	if w.declared[t] || t.PkgPath() == "" {
		return
	}
	w.declared[t] = true
	switch t.Kind() {
	case reflect.String:
		if words := w.unions[t]; len(words) > 0 {
			fmt.Fprintf(&w.out, "\nexport type %s = '%s';\n", w.name(t), strings.Join(words, "' | '"))
		}
	case reflect.Struct:
		fmt.Fprintf(&w.out, "\nexport interface %s {\n", w.name(t))
		members := w.body(t, pattern, inJob)
		w.out.WriteString("}\n")
		for _, m := range members {
			w.declare(m.t, m.pattern, inJob)
		}
	}
}

// inner is a type that a struct mentions, and where.
type inner struct {
	t       reflect.Type
	pattern string
}

// body writes the members of a struct, those of embedded structs among them, and returns their types.
func (w *writer) body(t reflect.Type, pattern string, inJob bool) []inner {
	var all []inner
	for i := range t.NumField() {
		f := t.Field(i)
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous && name == "" {
			all = append(all, w.body(f.Type, pattern, inJob)...)
			continue
		}
		if !f.IsExported() || name == "-" {
			continue
		}
		path := name
		if pattern != "" {
			path = pattern + "." + name
		}
		if entry, ok := w.fields[path]; inJob && ok {
			w.comment(entry)
		}
		mark := ""
		if strings.Contains(options, "omitempty") || strings.Contains(options, "omitzero") {
			mark = "?"
		}
		fmt.Fprintf(&w.out, "  %s%s: %s;\n", name, mark, w.expression(f.Type, mark == "?"))
		all = append(all, inner{f.Type, path})
	}
	return all
}

// comment writes the label, unit and help of a member. A struct that stands in several places (a humidity, a transfer)
// is described as where it is met first.
func (w *writer) comment(f job.Field) {
	unit := ""
	if f.Unit != "" {
		unit = " [" + f.Unit + "]"
	}
	fmt.Fprintf(&w.out, "  /** %s%s. %s */\n", w.say(f.Label), unit, w.say(f.Help))
}

// expression is the TypeScript type of a member; with omitted, a nil pointer is left out rather than null.
func (w *writer) expression(t reflect.Type, omitted bool) string {
	switch t.Kind() {
	case reflect.Pointer:
		if omitted {
			return w.expression(t.Elem(), false)
		}
		return w.expression(t.Elem(), false) + " | null"
	case reflect.Slice, reflect.Array:
		if t == reflect.TypeFor[json.RawMessage]() {
			return "unknown"
		}
		if t.Elem().Kind() == reflect.Pointer {
			return "(" + w.expression(t.Elem(), false) + ")[]"
		}
		return w.expression(t.Elem(), false) + "[]"
	case reflect.Map:
		return "Record<string, " + w.expression(t.Elem(), false) + ">"
	case reflect.Struct:
		return w.name(t)
	case reflect.String:
		if len(w.unions[t]) > 0 {
			return w.name(t)
		}
		return "string"
	case reflect.Bool:
		return "boolean"
	case reflect.Interface:
		return "unknown"
	}
	return "number"
}
