package service

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// Every kept request and its answer are as the description says, by the keywords of JSON Schema (draft 2020-12) that it uses.
func TestKeptDocumentsAreDescribed(t *testing.T) {
	var d struct {
		Components struct {
			Schemas map[string]any `json:"schemas"`
		} `json:"components"`
	}
	if err := json.Unmarshal(OpenAPI("1"), &d); err != nil {
		t.Fatal(err)
	}
	check := checker(d.Components.Schemas)
	const folder = "../../../testdata/requests/"
	for kind, pattern := range map[string]string{"Request": "*.json", "Response": "answers/*.json"} {
		files, err := filepath.Glob(folder + pattern)
		if err != nil || len(files) < 20 {
			t.Fatalf("%d files, %v", len(files), err)
		}
		for _, file := range files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			var document any
			if err := json.Unmarshal(text, &document); err != nil {
				t.Fatal(err)
			}
			complaint := check(d.Components.Schemas[kind], document, kind)
			name := filepath.Base(file)
			if wrong := name == "fault-request.json" && kind == "Request"; wrong != (complaint != "") && name != "fault-operation.json" {
				t.Errorf("%s: %q", file, complaint)
			}
		}
	}
	for _, wrong := range []string{`{"ok":"yes"}`, `{"ok":true}`, `7`, `{"ok":true,"version":1,"faults":[{"code":"lost"}],"message":""}`} {
		var document any
		if err := json.Unmarshal([]byte(wrong), &document); err != nil {
			t.Fatal(err)
		}
		if check(d.Components.Schemas["Response"], document, "") == "" {
			t.Errorf("%s passes for an answer", wrong)
		}
	}
}

// checker says where a document is not as a schema has it; empty: nowhere.
func checker(named map[string]any) func(schema, document any, at string) string {
	var check func(schema, document any, at string) string
	check = func(schema, document any, at string) string {
		s, _ := schema.(map[string]any)
		if ref, is := s["$ref"].(string); is {
			return check(named[strings.TrimPrefix(ref, "#/components/schemas/")], document, at)
		}
		if ways, is := s["anyOf"].([]any); is {
			if !slices.ContainsFunc(ways, func(one any) bool { return check(one, document, at) == "" }) {
				return at + ": is none of what it may be"
			}
			return ""
		}
		if words, is := s["enum"].([]any); is && !slices.Contains(words, document) {
			return fmt.Sprintf("%s: %v is not in the list", at, document)
		}
		if kind, is := s["type"].(string); is && kind != kindOf(document, kind) {
			return fmt.Sprintf("%s: is no %s", at, kind)
		}
		switch v := document.(type) {
		case []any:
			for i, one := range v {
				if complaint := check(s["items"], one, fmt.Sprintf("%s[%d]", at, i)); complaint != "" {
					return complaint
				}
			}
		case map[string]any:
			for _, name := range list(s["required"]) {
				if _, there := v[name.(string)]; !there {
					return fmt.Sprintf("%s: %s is missing", at, name)
				}
			}
			members, _ := s["properties"].(map[string]any)
			for name, one := range v {
				of, known := members[name]
				if !known {
					of, known = s["additionalProperties"]
				}
				if !known && members != nil {
					return fmt.Sprintf("%s: %s is not described", at, name)
				}
				if complaint := check(of, one, at+"."+name); complaint != "" {
					return complaint
				}
			}
		}
		return ""
	}
	return check
}

func list(v any) []any { l, _ := v.([]any); return l }

// kindOf is the type of a value in words of JSON Schema; a whole number is an integer where one is wanted.
func kindOf(v any, wanted string) string {
	switch x := v.(type) {
	case nil:
		return "null"
	case bool:
		return "boolean"
	case string:
		return "string"
	case []any:
		return "array"
	case map[string]any:
		return "object"
	case float64:
		if wanted == "integer" && x == float64(int64(x)) {
			return "integer"
		}
	}
	return "number"
}
