package languages

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// Every key of the core is asked for: it stands in the source as a whole, or begins with a text there that ends in a dot, to which
// a name is joined. Keys that nobody asks for would be translated for nothing.
func TestEveryKeyIsUsed(t *testing.T) {
	asked := map[string]bool{}
	visit := func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
				if s, err := strconv.Unquote(l.Value); err == nil {
					asked[s] = true
				}
			}
			return true
		})
		return nil
	}
	if err := filepath.WalkDir("../..", visit); err != nil {
		t.Fatal(err)
	}
	used := func(key string) bool {
		if asked[key] {
			return true
		}
		for i := range key {
			if key[i] == '.' && asked[key[:i+1]] {
				return true
			}
		}
		return false
	}
	w := English()
	if len(w.Keys()) < 1000 || used("nobody.asks") {
		t.Fatal("the search finds too much or too little")
	}
	for _, key := range w.Keys() {
		if !used(key) {
			t.Errorf("nobody asks for %s", key)
		}
	}
}
