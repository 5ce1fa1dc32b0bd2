package cure_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

const module = "github.com/drywright/drywright/"

// mayImport says, for each package of the core, which other packages of the project it may know. Imports point one way:
// physics knows nothing of jobs, jobs nothing of runs, nothing knows its users. A package that is not listed fails the
// test, so that a new one is given its place on purpose.
var mayImport = map[string][]string{
	"cure/fault":           {"cure/words"},
	"cure/words":           {},
	"cure/words/languages": {"cure/words"},
	"cure/unit":            {"cure/words", "cure/fault"},
	"cure/num":             {"cure/words", "cure/fault"},
	"cure/ode":             {"cure/words", "cure/fault", "cure/num"},
	"cure/ode/dense":       {"cure/ode"},
	"cure/trial":           {"cure/words", "cure/fault", "cure/unit"},
	"cure/regress":         {"cure/words", "cure/fault"},
	"cure/air":             {"cure/words", "cure/fault", "cure/num"},
	"cure/kinetics":        {"cure/words", "cure/fault", "cure/num"},
	"cure/transfer":        {"cure/words", "cure/fault", "cure/num", "cure/air"},
	"cure/film":            {"cure/num", "cure/air", "cure/transfer", "cure/kinetics"},
	"cure/job":             {"cure/fault", "cure/unit", "cure/air", "cure/kinetics", "cure/words"},
	"cure/derive":          {"cure/words", "cure/fault", "cure/unit", "cure/air", "cure/job"},
	"cure/result":          {},
	"cure/plan":            {"cure/words", "cure/fault", "cure/num", "cure/job", "cure/result", "cure/sim"},
	"cure/report":          {"cure/fault", "cure/words", "cure/unit", "cure/result", "cure/job", "cure/plan", "cure/sim"},
	"cure/material":        {"cure/job", "cure/words"},
	"cure/contract":        {"cure/derive", "cure/fault", "cure/job", "cure/plan", "cure/result", "cure/material", "cure/trial", "cure/words"},
	"cure/route":           {"cure/fault", "cure/num", "cure/air", "cure/transfer", "cure/film", "cure/job", "cure/result", "cure/words"},
	"cure/sim":             {"cure/fault", "cure/num", "cure/air", "cure/transfer", "cure/film", "cure/ode", "cure/route", "cure/job", "cure/result", "cure/words"},
	"cure":                 {"cure/job", "cure/plan", "cure/report", "cure/result", "cure/sim", "cure/fit"},
	"cure/api":             {"cure/derive", "cure/words", "cure/unit", "cure", "cure/fault", "cure/job", "cure/plan", "cure/material", "cure/report", "cure/result", "cure/transfer", "cure/contract", "cure/fit", "cure/trial"},
	"cure/validate":        {"cure/num", "cure/ode", "cure/ode/dense", "cure/air", "cure/transfer", "cure/kinetics", "cure/film", "cure/job", "cure/material", "cure/plan", "cure/result", "cure/route", "cure/sim", "cure/regress", "cure/trial", "cure/fit"},
	"cure/cmd/validate":    {"cure/validate", "testdata"},
	"cure/cmd/schema":      {"cure/words/languages", "cure/unit", "cure/api", "cure/contract"},
	"cure/cmd/drywright":   {"wasm/edge/service", "cure/unit", "cure/words/languages", "cure", "cure/api", "cure/fault", "cure/job", "cure/plan", "cure/report", "cure/result", "cure/sim", "site", "cure/fit", "cure/trial"},
	"cure/fit":             {"cure/words", "cure/unit", "cure/fault", "cure/regress", "cure/trial", "cure/kinetics", "cure/film", "cure/job", "cure/result", "cure/sim"},
	"wasm/browser/bridge":  {"cure/api", "cure/words"},
	"wasm/browser/core":    {"cure/api", "wasm/browser/bridge"},
	"wasm/browser/planner": {"wasm/browser/bridge"},
	"wasm/browser/whole":   {"cure/api", "wasm/browser/bridge"},
	"wasm/browser/fitter":  {"cure/api", "wasm/browser/bridge"},
	"site":                 {},
	"testdata":             {},

	"wasm/edge":         {"wasm/edge/service"},
	"wasm/edge/client":  {},
	"wasm/edge/headers": {"wasm/edge/service", "site"},
	"wasm/edge/service": {"cure/api", "cure/contract", "cure/fault", "cure/job", "cure/words", "cure/words/languages"},

	// Tools of the people who work on it.
	"wasm/slim":                {},
	"wasm/slim/testdata/hardy": {},
	"cure/cmd/bench":           {},
	"cure/cmd/peers":           {"cure/cmd/peers/coupon"},
	"cure/cmd/peers/coupon":    {"cure/air", "cure/transfer", "cure/kinetics", "cure/film", "cure/ode"},
	"cure/cmd/peers/ours":      {"cure/cmd/peers/coupon", "cure/ode"},
	"cure/cmd/peers/shared":    {"cure/cmd/peers/coupon"},
}

// pure lists what the core must not touch: it reads and writes nothing, waits for nothing, throws no dice. Commands and
// the browser's entry are the edge and may.
var pure = []string{"os", "io", "net", "time", "log", "math/rand", "math/rand/v2", "syscall", "unsafe", "sync", "context", "runtime"}

func TestImportsPointOneWay(t *testing.T) {
	root, err := filepath.Abs("..")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	visit := func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "node_modules" || d.Name() == "dist" || strings.HasPrefix(d.Name(), ".")) {
			return filepath.SkipDir
		}
		if !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return nil
		}
		relative, err := filepath.Rel(root, filepath.Dir(path))
		if err != nil {
			return err
		}
		pkg := filepath.ToSlash(relative)
		allowed, listed := mayImport[pkg]
		if !listed {
			t.Errorf("%s has no place in the order of imports", pkg)
		}
		seen[pkg] = true
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		edge := strings.HasPrefix(pkg, "cure/cmd/") || !strings.HasPrefix(pkg, "cure")
		for _, i := range file.Imports {
			check(t, pkg, strings.Trim(i.Path.Value, `"`), allowed, edge)
		}
		return nil
	}
	for _, top := range []string{"cure", "wasm", "site", "testdata"} {
		if err := filepath.WalkDir(filepath.Join(root, top), visit); err != nil {
			t.Fatal(err)
		}
	}
	for pkg := range mayImport {
		if !seen[pkg] {
			t.Errorf("%s is listed but does not exist", pkg)
		}
	}
}

func check(t *testing.T, pkg, imported string, allowed []string, edge bool) {
	if own, ok := strings.CutPrefix(imported, module); ok {
		for _, a := range allowed {
			if own == a {
				return
			}
		}
		t.Errorf("%s imports %s, against the order of imports", pkg, own)
		return
	}
	if edge {
		return
	}
	for _, p := range pure {
		if imported == p || strings.HasPrefix(imported, p+"/") {
			t.Errorf("%s imports %s: the core is pure", pkg, imported)
		}
	}
}
