// Command validate prints every published number beside what this build makes of it, and fails when one lies outside its
// tolerance.
package main

import (
	"bufio"
	"fmt"
	"os"

	"github.com/drywright/drywright/cure/validate"
	"github.com/drywright/drywright/testdata"
)

func main() {
	report, err := validate.Run(testdata.Files.ReadFile)
	if err != nil {
		fmt.Fprintln(os.Stderr, "drywright: the published numbers cannot be read:", err)
		os.Exit(2)
	}
	out := bufio.NewWriter(os.Stdout)
	write(out, &report)
	if err := out.Flush(); err != nil {
		fmt.Fprintln(os.Stderr, "drywright:", err)
		os.Exit(2)
	}
	if report.Failed() > 0 {
		os.Exit(1)
	}
}
