// Command schema writes the contract of the core for other languages: the TypeScript types, the JSON Schema of the job and, for
// tests of the page, the table of units.
//
//	go run ./cure/cmd/schema -ts site/src/generated/contract.ts -schema site/src/generated/job.schema.json -units site/src/generated/units.json
//
// Any file may be left out. A file that is up to date is left untouched.
package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/cure/contract"
	"github.com/drywright/drywright/cure/unit"
	"github.com/drywright/drywright/cure/words/languages"
)

func main() {
	types := flag.String("ts", "", "file for the TypeScript types")
	schema := flag.String("schema", "", "file for the JSON Schema of the job")
	units := flag.String("units", "", "file for the table of units")
	flag.Parse()
	if flag.NArg() > 0 || *types == "" && *schema == "" && *units == "" {
		flag.Usage()
		os.Exit(2)
	}
	for _, out := range []struct {
		path    string
		content func() []byte
	}{
		{*types, func() []byte { return contract.TypeScript(english, api.Catalogue{}, api.Response{}, api.Request{}) }},
		{*schema, func() []byte { return contract.Schema(english) }},
		{*units, unitTable},
	} {
		if out.path == "" {
			continue
		}
		if err := write(out.path, out.content()); err != nil {
			fmt.Fprintln(os.Stderr, "schema:", err)
			os.Exit(1)
		}
	}
}

// unitTable is the table of units as the catalogue hands it out.
func unitTable() []byte {
	text, err := json.MarshalIndent(unit.Scales(), "", "  ")
	if err != nil {
		panic(err) // numbers and words always encode
	}
	return append(text, '\n')
}

// english says texts on their way; amounts are none among the words of fields.
func english(text string) string { return spoken.Render(text, nil) }

var spoken = languages.English()

// write replaces a file whose content differs, making its folder where there is none.
func write(path string, content []byte) error {
	old, err := os.ReadFile(path)
	if err == nil && bytes.Equal(old, content) {
		return nil
	}
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return err
	}
	return os.WriteFile(path, content, 0o644)
}
