// Command validate prints every published number beside what this build makes of it, and fails when one lies outside its
// tolerance. With -json it writes the same table as a file, with -page a compact one for the page; -quick leaves out what
// takes minutes.
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

// options say what is run and written.
type options struct {
	json, page, build string
	quick             bool
}

func main() {
	var o options
	flag.StringVar(&o.json, "json", "", "write the table to this file too")
	flag.StringVar(&o.page, "page", "", "write the table for the page to this file, and print only its sum")
	flag.StringVar(&o.build, "build", "", "what the page calls this build")
	flag.BoolVar(&o.quick, "quick", false, "leave out what takes minutes")
	flag.Parse()
	failed, err := run(os.Stdout, o)
	if err != nil {
		fmt.Fprintln(os.Stderr, "validate:", err)
		os.Exit(2)
	}
	if failed > 0 {
		os.Exit(1)
	}
}

// run prints the table and returns how many rows miss.
func run(w io.Writer, o options) (failed int, err error) {
	evaluate := validate.Run
	if o.quick {
		evaluate = validate.RunQuick
	}
	report, err := evaluate(testdata.Files.ReadFile)
	if err != nil {
		return 0, fmt.Errorf("the published numbers cannot be read: %w", err)
	}
	out := bufio.NewWriter(w)
	if o.page != "" {
		fmt.Fprintf(out, "%d published numbers, %d missed, in %s\n", len(report.Rows), report.Failed(), o.page)
	} else {
		write(out, &report)
	}
	if err := out.Flush(); err != nil {
		return 0, err
	}
	if o.json != "" {
		text, err := json.Marshal(&report)
		if err != nil {
			return 0, err
		}
		if err := os.WriteFile(o.json, text, 0o644); err != nil {
			return 0, err
		}
	}
	if o.page != "" {
		if err := writePage(o.page, o.build, &report); err != nil {
			return 0, err
		}
	}
	return report.Failed(), nil
}
