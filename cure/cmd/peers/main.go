// Command peers runs the coupon of package coupon with our integrator, natively and in WebAssembly, with CVODE of SUNDIALS
// and with SciPy, each at several tolerances; measures each one's error against a run at 1e-12; and prints work against
// accuracy. Run it from the root of the project, on a machine at rest. It needs a C compiler, SUNDIALS (Debian: libsundials-dev),
// SciPy (Debian: python3-scipy) and Node.
//
//	go run ./cure/cmd/peers -out DIRECTORY [-picture FILE.svg] [-cells 32] [-repeats 15]
package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/drywright/drywright/cure/cmd/peers/coupon"
)

// run is what a peer prints about one run, and what we find in it.
type run struct {
	Solver      string
	Tolerance   float64
	Seconds     float64
	Steps       int
	Derivatives int
	Jacobians   int
	Factors     int
	Marks       []float64
	State       []float64

	markError, stateError float64
}

// source is where this command's files lie.
const source = "cure/cmd/peers"

func main() {
	out := flag.String("out", "", "directory for what is built")
	picture := flag.String("picture", "", "file for the picture of work against accuracy")
	cells := flag.Int("cells", 32, "film cells")
	repeats := flag.Int("repeats", 15, "runs of which the median time counts; SciPy has a fifth of them")
	flag.Parse()
	if err := compare(*out, *picture, *cells, *repeats); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func compare(out, picture string, cells, repeats int) error {
	if out == "" {
		return fmt.Errorf("state a directory with -out")
	}
	out, err := filepath.Abs(out)
	if err != nil {
		return err
	}
	if err := build(out); err != nil {
		return err
	}
	reference, err := ask(out, peer{"ours", []string{filepath.Join(out, "ours")}, 1, nil}, cells, 1, []string{"1e-12"})
	if err != nil {
		return err
	}
	var all [][]run
	for _, p := range peers(out) {
		runs, err := ask(out, p, cells, max(3, repeats/p.share), p.tolerances)
		if err != nil {
			return err
		}
		if err := judge(cells, runs, &reference[0]); err != nil {
			return err
		}
		for i := range runs {
			runs[i].Solver = p.name
		}
		all = append(all, runs)
	}
	table(os.Stdout, all)
	verdict(os.Stdout, all)
	if picture == "" {
		return nil
	}
	return os.WriteFile(picture, draw(all), 0o644)
}

// build compiles the library, CVODE's program and ours, natively and to WebAssembly.
func build(out string) error {
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	at := func(name string) string { return filepath.Join(out, name) }
	steps := []struct {
		env  []string
		args []string
	}{
		{nil, []string{"go", "build", "-o", at("ours"), "./" + source + "/ours"}},
		{[]string{"GOOS=js", "GOARCH=wasm"}, []string{"go", "build", "-o", at("ours.wasm"), "./" + source + "/ours"}},
		{[]string{"CGO_ENABLED=1"}, []string{"go", "build", "-tags", "peers", "-buildmode=c-shared", "-o", at("libcoupon.so"), "./" + source + "/shared"}},
		{nil, []string{"cc", "-O2", "-Wall", "-Wextra", "-I" + out, "-o", at("cvode"), source + "/others/cvode.c", "-L" + out, "-lcoupon",
			"-lsundials_cvode", "-lsundials_nvecserial", "-lsundials_sunmatrixband", "-lsundials_sunlinsolband", "-lsundials_sunmatrixdense",
			"-lsundials_sunlinsoldense", "-lm", "-Wl,-rpath," + out}},
	}
	for _, s := range steps {
		c := exec.Command(s.args[0], s.args[1:]...)
		c.Env = append(os.Environ(), s.env...)
		if text, err := c.CombinedOutput(); err != nil {
			return fmt.Errorf("%s: %w\n%s", strings.Join(s.args, " "), err, text)
		}
	}
	return nil
}

// peer is one solver with the tolerances that bring it to accuracies between 1e-3 and 1e-6 of the marks.
type peer struct {
	name       string
	command    []string
	share      int // of the repeats
	tolerances []string
}

func peers(out string) []peer {
	at := func(name string) string { return filepath.Join(out, name) }
	usual := []string{"1e-3", "1e-4", "1e-5", "1e-6", "1e-7", "1e-8", "1e-9"}
	coarse := usual[:4] // SciPy's Radau takes minutes beyond
	scipy := func(method string) []string {
		return []string{"/usr/bin/python3", source + "/others/scipy_peer.py", at("libcoupon.so"), method}
	}
	return []peer{
		{"ours, native", []string{at("ours")}, 1, usual},
		{"ours, WebAssembly", []string{"bash", goroot() + "/lib/wasm/go_js_wasm_exec", at("ours.wasm")}, 1, usual},
		{"CVODE, banded", []string{at("cvode"), "band"}, 1, usual},
		{"CVODE, dense", []string{at("cvode"), "dense"}, 1, usual},
		{"SciPy BDF", scipy("BDF"), 5, coarse},
		{"SciPy Radau", scipy("Radau"), 5, coarse},
		{"SciPy LSODA", scipy("LSODA"), 5, coarse},
	}
}

func goroot() string {
	text, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return ""
	}
	return strings.TrimSpace(string(text))
}

// ask runs a peer at its tolerances.
func ask(out string, p peer, cells, repeats int, tolerances []string) ([]run, error) {
	args := append(append([]string{}, p.command[1:]...), strconv.Itoa(cells), strconv.Itoa(repeats))
	c := exec.Command(p.command[0], append(args, tolerances...)...)
	var text, complaints bytes.Buffer
	c.Stdout, c.Stderr = &text, &complaints
	// The start-up area for arguments and environment in WebAssembly is small.
	c.Env = []string{"PATH=" + os.Getenv("PATH"), "HOME=" + os.Getenv("HOME")}
	if err := c.Run(); err != nil {
		return nil, fmt.Errorf("%s: %w\n%s", p.name, err, complaints.String())
	}
	var runs []run
	for d := json.NewDecoder(&text); d.More(); {
		var r run
		if err := d.Decode(&r); err != nil {
			return nil, fmt.Errorf("%s: %w", p.name, err)
		}
		runs = append(runs, r)
	}
	return runs, nil
}

// judge finds the errors of runs. Those of other solvers come in the order of the library.
func judge(cells int, runs []run, reference *run) error {
	c, err := coupon.New(cells)
	if err != nil {
		return err
	}
	order := c.Order()
	for i := range runs {
		r := &runs[i]
		state := r.State
		if !strings.HasPrefix(r.Solver, "ours") {
			state = make([]float64, len(r.State))
			for k, at := range order {
				state[at] = r.State[k]
			}
		}
		r.stateError = c.Error(state, reference.State)
		for k, t := range r.Marks {
			r.markError = math.Max(r.markError, math.Abs(t/reference.Marks[k]-1))
		}
	}
	return nil
}
