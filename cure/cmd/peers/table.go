package main

import (
	"fmt"
	"io"
	"math"
)

// agreement is the error of the marks up to which a run counts.
const agreement = 1e-3

func table(w io.Writer, all [][]run) {
	fmt.Fprintf(w, "%-18s %9s %10s %10s %9s %8s %8s %8s %8s\n", "solver", "tolerance", "marks off", "state off", "ms", "steps", "rates", "Jacob.", "factor.")
	for _, runs := range all {
		for _, r := range runs {
			counts := ' '
			if r.markError > agreement {
				counts = '*'
			}
			fmt.Fprintf(w, "%-18s %9.0e %9.1e%c %10.1e %9.2f %8d %8d %8d %8d\n", r.Solver, r.Tolerance, r.markError, counts, r.stateError, r.Seconds*1e3,
				r.Steps, r.Derivatives, r.Jacobians, r.Factors)
		}
	}
	fmt.Fprintln(w, "* marks more than 0.1 % off: the time does not count")
}

// levels are the accuracies at which times are compared.
var levels = []float64{1e-3, 1e-4, 1e-5}

// verdict compares the least times with which each solver has its marks within an accuracy.
func verdict(w io.Writer, all [][]run) {
	fmt.Fprintf(w, "\n%-18s", "least time, ms")
	for _, l := range levels {
		fmt.Fprintf(w, " %16s", fmt.Sprintf("marks to %.0e", l))
	}
	fmt.Fprintln(w)
	for _, runs := range all {
		fmt.Fprintf(w, "%-18s", runs[0].Solver)
		for _, l := range levels {
			ours, theirs := best(all[0], l), best(runs, l)
			fmt.Fprintf(w, " %8.2f (%5.2f)", theirs*1e3, theirs/ours)
		}
		fmt.Fprintln(w)
	}
	fmt.Fprintln(w, "in brackets: times our native time")
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
