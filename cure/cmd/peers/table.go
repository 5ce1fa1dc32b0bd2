package main

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
)

// agreement is the error of the marks up to which a run counts.
const agreement = 1e-3

// head, rows and notes are the table, solver by solver as they come.
func head(w io.Writer) {
	fmt.Fprintf(w, "%-22s %9s %10s %10s %9s %8s %8s %8s %8s %9s\n", "solver", "tolerance", "marks off", "state off", "ms", "steps", "rates", "Jacob.", "factor.", "rates off")
}

func rows(w io.Writer, runs []run) {
	for _, r := range runs {
		counts, off := ' ', ""
		if r.markError > agreement {
			counts = '*'
		}
		if r.Disagreement > 0 {
			off = fmt.Sprintf("%.1e", r.Disagreement)
		}
		fmt.Fprintf(w, "%-22s %9.0e %9.1e%c %10.1e %9.2f %8d %8d %8d %8d %9s\n", r.Solver, r.Tolerance, r.markError, counts, r.stateError, r.Seconds*1e3,
			r.Steps, r.Derivatives, r.Jacobians, r.Factors, off)
	}
}

func notes(w io.Writer) {
	fmt.Fprintln(w, "* marks more than 0.1 % off: the time does not count")
	fmt.Fprintln(w, "rates off: difference between the right-hand side written with numpy and ours, as a share of each unknown's largest rate")
}

// list is the table for a file.
func list(all [][]run, made string) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, "# One coated coupon by each integrator, written by make peers. Machine: %s.\n", made)
	fmt.Fprintln(&b, "solver,tolerance,marks_off,state_off,ms,steps,rates,jacobians,factorisations")
	for _, runs := range all {
		for _, r := range runs {
			fmt.Fprintf(&b, "%q,%.0e,%.2e,%.2e,%.2f,%d,%d,%d,%d\n", r.Solver, r.Tolerance, r.markError, r.stateError, r.Seconds*1e3,
				r.Steps, r.Derivatives, r.Jacobians, r.Factors)
		}
	}
	return b.Bytes()
}

// levels are the accuracies at which times are compared.
var levels = []float64{1e-3, 1e-4, 1e-5}

// verdict compares the least times with which each solver has its marks within an accuracy, and says which aims are met.
func verdict(w io.Writer, all [][]run) {
	fmt.Fprintf(w, "\n%-22s", "least time, ms")
	for _, l := range levels {
		fmt.Fprintf(w, " %18s", fmt.Sprintf("marks to %.0e", l))
	}
	fmt.Fprintln(w)
	for _, runs := range all {
		fmt.Fprintf(w, "%-22s", runs[0].Solver)
		for _, l := range levels {
			fmt.Fprintf(w, " %9.2f (%6.2f)", best(runs, l)*1e3, best(runs, l)/best(all[0], l))
		}
		fmt.Fprintln(w)
	}
	fmt.Fprintln(w, "in brackets: times our native time")
	fmt.Fprintln(w)
	for _, a := range aims {
		fmt.Fprintf(w, "%-60s", a.text)
		for _, l := range levels {
			said := "met"
			if !(named(all, a.ours, l) <= a.share*named(all, a.theirs, l)) {
				said = "NOT met"
			}
			fmt.Fprintf(w, " %9s at %.0e", said, l)
		}
		fmt.Fprintln(w)
	}
}

// aims are what the integrator is to reach: its time is at most so much of the least time of those whose names hold theirs.
var aims = []struct {
	text, ours, theirs string
	share              float64
}{
	{"native: at most the time of CVODE", ours, cvode, 1},
	{"WebAssembly: at most 2.5 times the time of CVODE", oursWasm, cvode, 2.5},
	{"native: at most a fiftieth of SciPy's, numpy", ours, withNumpy, 1. / 50},
	{"native: at most a fiftieth of SciPy's, compiled by us", ours, compiled, 1. / 50},
}

// named is the least time at a level of the solvers whose names hold a word.
func named(all [][]run, word string, level float64) float64 {
	least := math.NaN()
	for _, runs := range all {
		if t := best(runs, level); strings.Contains(runs[0].Solver, word) && !(least <= t) && !math.IsNaN(t) {
			least = t
		}
	}
	return least
}

// best is the least time of a solver whose marks are no farther off than level; NaN where no run is.
func best(runs []run, level float64) float64 {
	least := math.NaN()
	for _, r := range runs {
		if r.markError <= level && !(least <= r.Seconds) {
			least = r.Seconds
		}
	}
	return least
}
