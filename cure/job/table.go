package job

import (
	"reflect"
	"strings"
)

// table is Fields and Blocks, without their words, keyed by path pattern.
type table struct {
	fields map[string]*Field
	blocks map[string]*Block
}

func newTable() table {
	fields, blocks := entries(), blockEntries()
	t := table{make(map[string]*Field, len(fields)), make(map[string]*Block, len(blocks))}
	for i := range fields {
		t.fields[fields[i].Path] = &fields[i]
	}
	for i := range blocks {
		t.blocks[blocks[i].Path] = &blocks[i]
	}
	return t
}

// member is one field of a Go struct as the document knows it.
type member struct {
	name  string
	value reflect.Value
}

// members lists the fields of a struct value under their JSON names.
func members(v reflect.Value) []member {
	list := make([]member, v.NumField())
	for i := range list {
		name, _, _ := strings.Cut(v.Type().Field(i).Tag.Get("json"), ",")
		list[i] = member{name, v.Field(i)}
	}
	return list
}

// under joins a path and a name.
func under(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

// isBlock reports whether a pointer leads to an object rather than to an optional number.
func isBlock(pointer reflect.Type) bool { return pointer.Elem().Kind() == reflect.Struct }
