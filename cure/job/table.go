package job

import (
	"reflect"
	"strings"
)

// table is Fields and Blocks, without their words, keyed by path pattern.
type table struct {
	fields map[string]*Field
	blocks map[string]*Block
	names  map[reflect.Type][]string // of the fields of structs in JSON: reflection takes its time to tell them
}

func newTable() table {
	fields, blocks := entries(), blockEntries()
	t := table{make(map[string]*Field, len(fields)), make(map[string]*Block, len(blocks)), map[reflect.Type][]string{}}
	t.learn(reflect.TypeFor[Job]())
	for i := range fields {
		t.fields[fields[i].Path] = &fields[i]
	}
	for i := range blocks {
		t.blocks[blocks[i].Path] = &blocks[i]
	}
	return t
}

// learn notes the names of a type's fields, and of those below them.
func (t table) learn(of reflect.Type) {
	switch of.Kind() {
	case reflect.Pointer, reflect.Slice:
		t.learn(of.Elem())
	case reflect.Struct:
		if t.names[of] != nil {
			return
		}
		t.names[of] = members(of)
		for i := range of.NumField() {
			t.learn(of.Field(i).Type)
		}
	}
}

// members lists the JSON names of a struct's fields, in their order.
func members(of reflect.Type) []string {
	names := make([]string, of.NumField())
	for i := range names {
		names[i], _, _ = strings.Cut(of.Field(i).Tag.Get("json"), ",")
	}
	return names
}

// under joins a path and a name.
func under(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// underBoth is under for a path with its pattern, which are mostly the same text.
func underBoth(path, pattern, name string) (at, of string) {
	at = under(path, name)
	if path == pattern {
		return at, at
	}
	return at, under(pattern, name)
}

// isBlock reports whether a pointer leads to an object rather than to an optional number.
func isBlock(pointer reflect.Type) bool { return pointer.Elem().Kind() == reflect.Struct }
