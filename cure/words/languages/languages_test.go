package languages

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// messages are the messages of a part of a language file, nested keys joined by a sign that no key has.
func messages(t *testing.T, tag, part string) map[string]string {
	t.Helper()
	text, err := Files.ReadFile(tag + ".json")
	if err != nil {
		t.Fatal(err)
	}
	var file map[string]any
	if err := json.Unmarshal(text, &file); err != nil {
		t.Fatalf("%s.json: %v", tag, err)
	}
	all := map[string]string{}
	var gather func(prefix string, group map[string]any)
	gather = func(prefix string, group map[string]any) {
		for key, value := range group {
			switch v := value.(type) {
			case string:
				all[prefix+key] = v
			case map[string]any:
				gather(prefix+key+" › ", v)
			default:
				t.Errorf("%s.json: %s%s is neither a message nor a group", tag, prefix, key)
			}
		}
	}
	group, _ := file[part].(map[string]any)
	gather("", group)
	return all
}

// ours are the groups of a language's own: templates that English has beside the code, and what grammar needs.
var ours = regexp.MustCompile(`^(faults|grammar|sources) › `)

var argument = regexp.MustCompile(`\{\s*(\w+)\s*[,}]`)

// arguments are the names of a message's arguments, each once.
func arguments(message string) []string {
	var names []string
	for _, m := range argument.FindAllStringSubmatch(message, -1) {
		names = append(names, m[1])
	}
	slices.Sort(names)
	return slices.Compact(names)
}

// Every language has the keys of English, with the same arguments in each message.
func TestLanguagesAreComplete(t *testing.T) {
	for _, part := range []string{"core", "page"} {
		english := messages(t, "en", part)
		if len(english) < 300 {
			t.Fatalf("only %d messages of %s are read", len(english), part)
		}
		for _, tag := range Tags() {
			if tag == "en" {
				continue
			}
			other := messages(t, tag, part)
			for key, message := range english {
				said, known := other[key]
				switch {
				case !known:
					t.Errorf("%s.json, %s: %s is missing: %q", tag, part, key, message)
				case strings.TrimSpace(said) == "" && strings.TrimSpace(message) != "":
					t.Errorf("%s.json, %s: %s is empty", tag, part, key)
				case !slices.Equal(arguments(said), arguments(message)):
					t.Errorf("%s.json, %s: %s has the arguments %v, English %v", tag, part, key, arguments(said), arguments(message))
				}
			}
			for key := range other {
				if _, known := english[key]; !known && !ours.MatchString(key) {
					t.Errorf("%s.json, %s: %s is no key of English", tag, part, key)
				}
			}
		}
	}
}

// Every template that stands in the code in English has its translation in each language, with the same arguments.
func TestTemplatesAreTranslated(t *testing.T) {
	all := templates(t)
	if len(all) < 250 {
		t.Fatalf("only %d templates are found", len(all))
	}
	for _, tag := range Tags() {
		if tag == "en" {
			continue
		}
		known := messages(t, tag, "core")
		for _, template := range all {
			said := known["faults › "+template]
			if said == "" {
				t.Errorf("%s.json, core, faults: no entry for %q", tag, template)
			} else if !slices.Equal(arguments(said), arguments(template)) {
				t.Errorf("%s.json: %q has the arguments %v, English %v", tag, template, arguments(said), arguments(template))
			}
		}
	}
}

// templates collects the first argument of each words.Told of the core, where it is written there.
func templates(t *testing.T) []string {
	t.Helper()
	var all []string
	files := token.NewFileSet()
	visit := func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "cmd" || d.Name() == "validate" || d.Name() == "testdata") {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		parsed, err := parser.ParseFile(files, path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(parsed, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok || len(call.Args) == 0 {
				return true
			}
			if f, ok := call.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "Told" {
				if text, ok := literal(call.Args[0]); ok {
					all = append(all, text)
				}
			}
			return true
		})
		return nil
	}
	if err := filepath.WalkDir(filepath.Join("..", ".."), visit); err != nil {
		t.Fatal(err)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// literal is a text that is written out, in one piece or several.
func literal(e ast.Expr) (string, bool) {
	switch x := e.(type) {
	case *ast.BasicLit:
		text, err := strconv.Unquote(x.Value)
		return text, err == nil
	case *ast.BinaryExpr:
		a, okA := literal(x.X)
		b, okB := literal(x.Y)
		return a + b, okA && okB
	}
	return "", false
}
