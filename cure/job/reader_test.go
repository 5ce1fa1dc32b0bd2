package job

import (
	"bytes"
	"encoding/json"
	"io"
	"reflect"
	"testing"
	"unicode/utf8"
)

// plainTree is a node as the library gives it: of entries that come twice the last counts.
func plainTree(n node) any {
	switch v := n.(type) {
	case object:
		tree := map[string]any{}
		for _, e := range v {
			tree[e.key] = plainTree(e.value)
		}
		return tree
	case []node:
		list := make([]any, len(v))
		for i, item := range v {
			list[i] = plainTree(item)
		}
		return list
	default:
		return v
	}
}

// FuzzReader: what is JSON is read as encoding/json reads it, and nothing else is read.
func FuzzReader(f *testing.F) {
	for _, text := range []string{"null", " true\n", "[false,\t1e-3 , -0.5]", `{}`, "[]", `{ "a" : [ ] , "b" : { "a" : null } }`,
		`"\"\\\/\b\f\n\r\t\u00e9\ud83d\ude00\ud83d"`, `{"":"","\n":[1,[2,[3]]],"":2}`, `"\\"`, `{"a":1,}`, "[1 2]", "01", "", `"a`} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		got, fault := parse(data)
		d := json.NewDecoder(bytes.NewReader(bytes.TrimPrefix(data, []byte("\ufeff"))))
		d.UseNumber()
		var want any
		err := d.Decode(&want)
		if _, more := d.Token(); err == nil && more != io.EOF || !utf8.Valid(data) {
			return // read by the library, and rightly refused here
		}
		if opened := bytes.Count(data, []byte("[")) + bytes.Count(data, []byte("{")); fault != nil && opened > maxDepth {
			return
		}
		if (fault != nil) != (err != nil) {
			t.Fatalf("%q: %v here, %v there", data, fault, err)
		}
		if err == nil && !reflect.DeepEqual(plainTree(got), want) {
			t.Errorf("%q: %v here, %v there", data, got, want)
		}
	})
}
