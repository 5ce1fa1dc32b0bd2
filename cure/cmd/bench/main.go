// Command bench runs the benchmarks of routes, worked examples and plans natively and in WebAssembly (on Node), keeps what
// each printed for benchstat, and prints a table of both. Run it from the root of the project, on a machine at rest.
//
//	go run ./cure/cmd/bench -out DIRECTORY [-count 3] [-bench REGEXP]
package main

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

// packages hold the benchmarks that the table shows.
var packages = []string{"./cure/sim", "./cure", "./cure/plan"}

// benchTime is how long one run repeats what is measured: a few times for all but a whole surface.
const benchTime = "0.3s"

func main() {
	out := flag.String("out", "", "directory for native.txt and wasm.txt, to be compared by benchstat")
	count := flag.Int("count", 3, "runs of each benchmark; the least time counts")
	pattern := flag.String("bench", "Tunnel|Room|Line|Cells|Zones|Predict|Window|Spread", "which benchmarks")
	flag.Parse()
	if err := run(*out, *count, *pattern); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(out string, count int, pattern string) error {
	if out == "" {
		return fmt.Errorf("state a directory with -out")
	}
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	native, err := measure(filepath.Join(out, "native.txt"), nil, nil, count, pattern)
	if err != nil {
		return err
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return err
	}
	// The start-up area for arguments and environment in WebAssembly is small, hence the bare environment.
	node := "env -i PATH=" + os.Getenv("PATH") + " HOME=" + os.Getenv("HOME") + " " + strings.TrimSpace(string(root)) + "/lib/wasm/go_js_wasm_exec"
	wasm, err := measure(filepath.Join(out, "wasm.txt"), []string{"GOOS=js", "GOARCH=wasm"}, []string{"-exec", node}, count, pattern)
	if err != nil {
		return err
	}
	table(os.Stdout, native, wasm)
	growth(os.Stdout, native, wasm)
	fmt.Printf("\neach time is the least of %d; what was printed lies in %s, for benchstat\n", count, out)
	return nil
}

// measure runs the benchmarks and keeps what they print.
func measure(file string, env, flags []string, count int, pattern string) ([]entry, error) {
	args := append([]string{"test", "-vet=off", "-run", "^$", "-bench", pattern, "-benchtime", benchTime, "-count", strconv.Itoa(count), "-timeout", "60m"}, flags...)
	c := exec.Command("go", append(args, packages...)...)
	c.Env = append(os.Environ(), env...)
	var text, complaints bytes.Buffer
	c.Stdout, c.Stderr = io.MultiWriter(&text, os.Stderr), &complaints
	if err := c.Run(); err != nil {
		return nil, fmt.Errorf("go %s: %w\n%s%s", strings.Join(args, " "), err, text.String(), complaints.String())
	}
	if err := os.WriteFile(file, text.Bytes(), 0o644); err != nil {
		return nil, err
	}
	return parse(text.String()), nil
}
