package contract

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/job"
	"github.com/drywright/drywright/cure/result"
	"github.com/drywright/drywright/cure/words/languages"
)

// accepts is a small validator of the words that Schema uses. It is written from the specification (JSON Schema 2020-12,
// validation vocabulary), not from the generator.
func accepts(s map[string]any, v any) error {
	if types, ok := s["type"]; ok {
		list, many := types.([]any)
		if !many {
			list = []any{types}
		}
		if !slices.ContainsFunc(list, func(t any) bool { return is(v, t.(string)) }) {
			return fmt.Errorf("%v is not of type %v", v, types)
		}
	}
	switch v := v.(type) {
	case float64:
		if low, ok := s["minimum"].(float64); ok && v < low {
			return fmt.Errorf("%g is below %g", v, low)
		}
		if high, ok := s["maximum"].(float64); ok && v > high {
			return fmt.Errorf("%g is above %g", v, high)
		}
	case string:
		if words, ok := s["enum"].([]any); ok && !slices.Contains(words, any(v)) {
			return fmt.Errorf("%q is none of %v", v, words)
		}
		if most, ok := s["maxLength"].(float64); ok && float64(len([]rune(v))) > most {
			return fmt.Errorf("%q is too long", v)
		}
	case []any:
		if low, high := s["minItems"].(float64),
			s["maxItems"].(float64); float64(len(v)) < low || float64(len(v)) > high {
			return fmt.Errorf("%d items", len(v))
		}
		for i, item := range v {
			if err := accepts(s["items"].(map[string]any), item); err != nil {
				return fmt.Errorf("[%d]: %w", i, err)
			}
		}
	case map[string]any:
		return acceptsObject(s, v)
	}
	return nil
}

func acceptsObject(s, v map[string]any) error {
	known, _ := s["properties"].(map[string]any)
	for key, value := range v {
		inner, ok := known[key].(map[string]any)
		if !ok {
			if s["additionalProperties"] == false {
				return fmt.Errorf("%s is not allowed", key)
			}
			continue
		}
		if err := accepts(inner, value); err != nil {
			return fmt.Errorf("%s: %w", key, err)
		}
	}
	required, _ := s["required"].([]any)
	for _, key := range required {
		if _, ok := v[key.(string)]; !ok {
			return fmt.Errorf("%s is missing", key)
		}
	}
	if branches, ok := s["oneOf"].([]any); ok {
		fit := 0
		for _, b := range branches {
			if accepts(b.(map[string]any), v) == nil {
				fit++
			}
		}
		if fit != 1 {
			return fmt.Errorf("%d branches of oneOf fit", fit)
		}
	}
	return nil
}

func is(v any, kind string) bool {
	switch v := v.(type) {
	case nil:
		return kind == "null"
	case bool:
		return kind == "boolean"
	case string:
		return kind == "string"
	case float64:
		return kind == "number" || kind == "integer" && v == math.Trunc(v)
	case []any:
		return kind == "array"
	}
	return kind == "object"
}

func tree(t *testing.T, text []byte) map[string]any {
	t.Helper()
	var v map[string]any
	if err := json.Unmarshal(text, &v); err != nil {
		t.Fatal(err)
	}
	return v
}

// What job.Validate accepts, the schema accepts; and the schema refuses what it can see to be wrong.
func TestSchemaAgreesWithTheDecoder(t *testing.T) {
	s := tree(t, Schema(english))
	carried := job.Demo()
	carried.Part.Carrier = job.NewCarrier()
	jobs := map[string]job.Job{"default": job.Default(), "carried": carried}
	for _, d := range job.Demos() {
		jobs[d.ID] = d.Job
	}
	files, err := filepath.Glob("../../testdata/jobs/*.json")
	if err != nil || len(files) < 3 {
		t.Fatalf("%d golden documents: %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if err := accepts(s, tree(t, text)); err != nil {
			t.Errorf("%s: %v", file, err)
		}
		if jobs[file], err = job.Decode(text); err != nil {
			t.Errorf("%s: %v", file, err)
		}
	}
	for name, j := range jobs {
		text, err := job.Encode(j)
		if err != nil {
			t.Fatal(err)
		}
		if err := accepts(s, tree(t, text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, text := range []string{
		`{}`, `{"version": 2}`, `{"version": 1, "x": 1}`, `{"version": 1, "film": {"wet_coat_kg_per_m2": 5}}`,
		`{"version": 1, "part": {"back": "open"}}`, `{"version": 1, "workshop": null}`,
		`{"version": 1, "tunnel": {"zones": []}}`,
		`{"version": 1, "numerics": {"film_cells": 24.5}}`, `{"version": 1, "static_oven": {"humidity": {}}}`,
		`{"version": 1, "static_oven": {"humidity": {"dew_point_K": 290, "relative_humidity": 0.1}}}`,
		`{"version": 1, "static_oven": {"humidity": {"dew_point_K": null}}}`, `{"version": 1, "name": 7}`,
		`{"version": 1, "part": {"spots": null}}`, `{"version": 1, "part": {"spots": [{},{},{},{},{},{},{},{},{}]}}`,
		`{"version": 1, "workshop": {"space": {"outside": []}}}`, `{"version": 1, "workshop": {"transfer": {"kind": "jets"}}}`,
		`{"version": 1, "static_oven": {"batches": 1.5}}`, `{"version": 1, "tunnel": {"zones": [{"infrared": {"flux_W_per_m2": -1}}]}}`,
	} {
		if accepts(s, tree(t, []byte(text))) == nil {
			t.Errorf("the schema accepts %s", text)
		}
		if _, err := job.Decode([]byte(text)); err == nil {
			t.Errorf("the decoder accepts %s", text)
		}
	}
	for _, text := range []string{`{"version": 1}`, `{"version": 1, "pile": null, "tunnel": {"zones": [{}]}}`,
		`{"version": 1, "workshop": {"space": {"heating": {}, "dehumidifier": {}}}, "tariffs": {}}`,
		`{"version": 1, "tunnel": {"zones": [{"infrared": {}, "air": {}, "transfer": {"kind": "slot_nozzles", "nozzles": {}}}]}}`,
		`{"version": 1, "static_oven": {"humidity": {"dew_point_K": 290, "relative_humidity": null}}}`} {
		if err := accepts(s, tree(t, []byte(text))); err != nil {
			t.Errorf("the schema refuses %s: %v", text, err)
		}
		if _, err := job.Decode([]byte(text)); err != nil {
			t.Errorf("the decoder refuses %s: %v", text, err)
		}
	}
	if !bytes.Equal(Schema(english), Schema(english)) {
		t.Error("the schema changes from call to call")
	}
}

// Every number at its bounds is accepted, and just outside refused.
func TestSchemaBounds(t *testing.T) {
	s := tree(t, Schema(english))
	for _, f := range job.Fields() {
		at := s
		for _, part := range strings.Split(f.Path, ".") {
			name, list := strings.CutSuffix(part, "[]")
			at = at["properties"].(map[string]any)[name].(map[string]any)
			if list {
				at = at["items"].(map[string]any)
			}
		}
		if f.Kind != job.KindNumber {
			continue
		}
		step := 1e-6 * (math.Abs(f.Low) + math.Abs(f.High))
		if accepts(at, f.Low) != nil || accepts(at, f.High) != nil || accepts(at, f.Low-step) == nil || accepts(at,
			f.High+step) == nil {
			t.Errorf("%s: schema %v to %v, field %g to %g", f.Path, at["minimum"], at["maximum"], f.Low, f.High)
		}
		if optional := accepts(at, nil) == nil; optional != f.Optional {
			t.Errorf("%s: null accepted %v", f.Path, optional)
		}
	}
}

// constants reads the text constants of a package by their declared type from its source.
func constants(t *testing.T, folder string) map[string][]string {
	t.Helper()
	files, err := filepath.Glob(folder + "/*.go")
	if err != nil || len(files) == 0 {
		t.Fatalf("no source in %s: %v", folder, err)
	}
	out := map[string][]string{}
	for _, file := range files {
		source, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(source, func(n ast.Node) bool {
			v, ok := n.(*ast.ValueSpec)
			if !ok || len(v.Values) != 1 {
				return true
			}
			name, typed := v.Type.(*ast.Ident)
			text, literal := v.Values[0].(*ast.BasicLit)
			if typed && literal && text.Kind == token.STRING && name.Name != "string" {
				word, err := strconv.Unquote(text.Value)
				if err != nil {
					t.Fatal(err)
				}
				out[name.Name] = append(out[name.Name], word)
			}
			return true
		})
	}
	return out
}

func TestUnionsHoldEveryConstant(t *testing.T) {
	for _, folder := range []string{"job", "result", "fault"} {
		for name, words := range constants(t, "../"+folder) {
			found := false
			for typ, listed := range unions() {
				if typ.Name() != name || !strings.HasSuffix(typ.PkgPath(), "/"+folder) {
					continue
				}
				found = true
				a, b := slices.Clone(listed), slices.Clone(words)
				slices.Sort(a)
				slices.Sort(b)
				if !slices.Equal(a, b) {
					t.Errorf("%s.%s: the union has %v, the source %v", folder, name, a, b)
				}
			}
			if !found {
				t.Errorf("%s.%s has constants but no union", folder, name)
			}
		}
	}
}

// extra has what the job and result do not have: an embedded struct, raw JSON, a map, omitted members, a doubled name.
type extra struct {
	Display
	Raw    json.RawMessage   `json:"raw"`
	Words  map[string]string `json:"words"`
	Maybe  *job.Film         `json:"maybe,omitempty"`
	Hidden string            `json:"-"`
	Any    any               `json:"any"`
	Grid   [][]float64       `json:"grid"`
}

// Display has the name of job.Display.
type Display struct {
	Sum int `json:"sum"`
}

type holder struct {
	Display Display `json:"display"`
}

func TestTypeScript(t *testing.T) {
	text := string(TypeScript(english, extra{}, holder{}))
	for _, want := range []string{
		"export interface Job {", "export interface Result {", "export interface Field {", "export interface Fault {",
		"  pile: Pile | null;", "  zones: Zone[];", "  hindering_water_kg_per_kg: number | null;",
		"  kind: TransferKind;",
		"export type Back = 'exposed' | 'insulated' | 'coated';", "  used_when: Condition | null;",
		"export interface extra {\n  sum: number;\n  raw: unknown;\n  words: Record<string, string>;\n  maybe?: Film;\n  any: unknown;\n" +
			"  grid: number[][];\n}",
		"  display: ContractDisplay;", "export interface ContractDisplay {\n  sum: number;\n}",
		"  /** Wet coat [kg/m²]. ",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing", want)
		}
	}
	if strings.Contains(text, "Hidden") {
		t.Error("a hidden member is written")
	}
	declared := map[string]int{}
	for _, m := range regexp.MustCompile(`(?m)^export (?:interface|type) (\w+)`).FindAllStringSubmatch(text, -1) {
		declared[m[1]]++
	}
	for name, times := range declared {
		if times != 1 {
			t.Errorf("%s is declared %d times", name, times)
		}
	}
	for _, m := range regexp.MustCompile(`(?m)^  \w+\??: ([A-Z]\w+)(?:\[\])*(?: \| null)?;$`).FindAllStringSubmatch(text, -1) {
		if declared[m[1]] == 0 && m[1] != "Record" {
			t.Errorf("%s is used but not declared", m[1])
		}
	}
	if text != string(TypeScript(english, extra{}, holder{})) {
		t.Error("the types change from call to call")
	}
}

// Every member of every struct of the job and the result is written under its JSON name.
func TestTypeScriptHasEveryMember(t *testing.T) {
	text := string(TypeScript(english))
	var visit func(reflect.Type)
	visit = func(r reflect.Type) {
		switch r.Kind() {
		case reflect.Pointer, reflect.Slice:
			visit(r.Elem())
		case reflect.Struct:
			_, body, ok := strings.Cut(text, "export interface "+r.Name()+" {\n")
			if !ok {
				t.Errorf("no interface for %s", r)
				return
			}
			body, _, _ = strings.Cut(body, "\n}")
			for i := range r.NumField() {
				if name := jsonName(r.Field(i)); !strings.Contains("\n"+body, "\n  "+name+": ") {
					t.Errorf("%s.%s is missing", r.Name(), name)
				}
				visit(r.Field(i).Type)
			}
		}
	}
	visit(reflect.TypeFor[job.Job]())
	visit(reflect.TypeFor[result.Result]())
}

func english(text string) string { return spoken.Render(text, nil) }

var spoken = languages.English()
