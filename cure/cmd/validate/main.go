// Command validate prints every published number beside what this build makes of it, and fails when one lies outside its
// tolerance. With -json it writes the same table as a file.
package main

import (
	"bufio"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"

	"github.com/drywright/drywright/cure/validate"
	"github.com/drywright/drywright/testdata"
)

func main() {
	path := flag.String("json", "", "write the table to this file too")
	flag.Parse()
	failed, err := run(os.Stdout, *path)
	if err != nil {
		fmt.Fprintln(os.Stderr, "validate:", err)
		os.Exit(2)
	}
	if failed > 0 {
		os.Exit(1)
	}
}

// run prints the table and returns how many rows miss.
func run(w io.Writer, path string) (failed int, err error) {
	report, err := validate.Run(testdata.Files.ReadFile)
	if err != nil {
		return 0, fmt.Errorf("the published numbers cannot be read: %w", err)
	}
	out := bufio.NewWriter(w)
	write(out, &report)
	if err := out.Flush(); err != nil {
		return 0, err
	}
	if path != "" {
		text, err := json.Marshal(&report)
		if err != nil {
			return 0, err
		}
		if err := os.WriteFile(path, text, 0o644); err != nil {
			return 0, err
		}
	}
	return report.Failed(), nil
}
