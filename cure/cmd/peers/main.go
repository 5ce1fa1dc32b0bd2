// Command peers runs the coupon of package coupon with our integrator, natively and in WebAssembly, with CVODE of SUNDIALS
// and with SciPy, each at several tolerances; measures each one's error against a run at 1e-12; and prints work against
// accuracy. Run it from the root of the project, on a machine at rest. It needs a C compiler, SUNDIALS (Debian: libsundials-dev),
// SciPy (Debian: python3-scipy) and Node.
//
// SciPy gets the right-hand side twice: compiled, from the library that CVODE calls too, and written with numpy, as a user of
// SciPy writes it. The second shares no code with ours and is held to it.
//
//	go run ./cure/cmd/peers -out DIRECTORY [-picture FILE.svg] [-cells 32] [-repeats 15]
//
// The picture comes with its table beside it, under the same name with .csv.
package main

import (
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"time"

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
	Failed      bool // the solver gave up before the end
	// Disagreement is how far a right-hand side of a peer's own is from ours, as a share of each unknown's largest rate.
	Disagreement float64

	markError, stateError float64
}

// sameEquations is the Disagreement up to which two right-hand sides count as one: far above rounding and the search for the surface
// (1e-10 of the flux), far below what a solver's tolerance could see.
const sameEquations = 1e-8

// source is where this command's files lie.
const source = "cure/cmd/peers"

func main() {
	out := flag.String("out", "", "directory for what is built")
	picture := flag.String("picture", "", "file for the picture of work against accuracy")
	cells := flag.Int("cells", 32, "film cells")
	repeats := flag.Int("repeats", 15, "runs of which the least time counts; SciPy has a fifth of them")
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
	// Before minutes of runs, not after them.
	if err := os.MkdirAll(filepath.Dir(picture), 0o755); err != nil {
		return err
	}
	if err := build(out); err != nil {
		return err
	}
	reference, err := ask(out, peer{"ours", []string{filepath.Join(out, "ours")}, 1, nil}, cells, 1, []string{"1e-12"})
	if err != nil {
		return err
	}
	head(os.Stdout)
	var all [][]run
	for _, p := range peers(out) {
		runs, err := ask(out, p, cells, max(1, repeats/p.share), p.tolerances)
		if err != nil {
			return err
		}
		runs = slices.DeleteFunc(runs, func(r run) bool {
			if r.Failed {
				fmt.Printf("%-22s %9.0e gave up\n", p.name, r.Tolerance)
			}
			return r.Failed
		})
		if len(runs) == 0 {
			return fmt.Errorf("%s gave up at every tolerance", p.name)
		}
		if err := judge(cells, runs, &reference[0]); err != nil {
			return err
		}
		for i := range runs {
			runs[i].Solver = p.name
		}
		all = append(all, runs)
		rows(os.Stdout, runs)
	}
	notes(os.Stdout)
	verdict(os.Stdout, all)
	if picture == "" {
		return nil
	}
	made := machine(repeats)
	if err := os.WriteFile(strings.TrimSuffix(picture, filepath.Ext(picture))+".csv", list(all, made), 0o644); err != nil {
		return err
	}
	return os.WriteFile(picture, draw(all, made), 0o644)
}

// machine says on what and how the times were taken.
func machine(repeats int) string {
	return fmt.Sprintf("%d cores, %d; each time the least of %d runs, of SciPy's the least of %d", runtime.NumCPU(), time.Now().Year(),
		repeats, max(1, repeats/scipyShare))
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

// judge finds the errors of runs. Those of other solvers come in the order of the library.
func judge(cells int, runs []run, reference *run) error {
	c, err := coupon.New(cells)
	if err != nil {
		return err
	}
	order := c.Order()
	for i := range runs {
		r := &runs[i]
		if !(r.Disagreement <= sameEquations) {
			return fmt.Errorf("%s solves other equations: its rates are %.1e off", r.Solver, r.Disagreement)
		}
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
