// Command schema writes the contract of the core for other languages: the TypeScript types and the JSON Schema of the job.
//
//	go run ./cure/cmd/schema -ts site/src/generated/contract.ts -schema site/src/generated/job.schema.json
//
// Either file may be left out. A file that is up to date is left untouched.
package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/drywright/drywright/cure/api"
	"github.com/drywright/drywright/cure/contract"
)

func main() {
	types := flag.String("ts", "", "file for the TypeScript types")
	schema := flag.String("schema", "", "file for the JSON Schema of the job")
	flag.Parse()
	if flag.NArg() > 0 || *types == "" && *schema == "" {
		flag.Usage()
		os.Exit(2)
	}
	for _, out := range []struct {
		path    string
		content func() []byte
	}{
		{*types, func() []byte { return contract.TypeScript(api.Catalogue{}, api.Response{}, api.Request{}) }},
		{*schema, contract.Schema},
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
