// Command ours runs the coupon with the product's own integrator and prints one line of JSON for each tolerance, as every
// peer does. It is compiled natively and to WebAssembly.
//
//	ours CELLS REPEATS TOLERANCE...
package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"strconv"
	"time"

	"github.com/drywright/drywright/cure/cmd/peers/coupon"
	"github.com/drywright/drywright/cure/ode"
)

// line is what every peer prints about one run.
type line struct {
	Solver      string    `json:"solver"`
	Tolerance   float64   `json:"tolerance"`
	Seconds     float64   `json:"seconds"` // the least of the repeats
	Steps       int       `json:"steps"`
	Derivatives int       `json:"derivatives"`
	Jacobians   int       `json:"jacobians"`
	Factors     int       `json:"factors"`
	Marks       []float64 `json:"marks"`
	State       []float64 `json:"state"`
}

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(args []string) error {
	if len(args) < 3 {
		return fmt.Errorf("give CELLS REPEATS TOLERANCE, and further tolerances")
	}
	cells, err := strconv.Atoi(args[0])
	if err != nil {
		return err
	}
	repeats, err := strconv.Atoi(args[1])
	if err != nil {
		return err
	}
	out := json.NewEncoder(os.Stdout)
	for _, text := range args[2:] {
		tol, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return err
		}
		l, err := measure(cells, repeats, tol)
		if err != nil {
			return err
		}
		if err := out.Encode(l); err != nil {
			return err
		}
	}
	return nil
}

// measure runs the coupon again and again; making the system is part of a run, as it is in the product.
func measure(cells, repeats int, tol float64) (line, error) {
	l := line{Solver: "ours", Tolerance: tol, Marks: make([]float64, len(coupon.Marks))}
	l.Seconds = math.Inf(1)
	for range repeats {
		begun := time.Now()
		c, err := coupon.New(cells)
		if err != nil {
			return l, err
		}
		scale := c.Scale()
		for i := range scale {
			scale[i] *= tol
		}
		solver, err := ode.NewSolver(c.System, ode.Options{RelTol: tol, AbsTol: scale})
		if err != nil {
			return l, err
		}
		y := c.Start()
		if _, err := solver.Integrate(0, coupon.End, y, c.Events(l.Marks), nil); err != nil {
			return l, err
		}
		l.Seconds = math.Min(l.Seconds, time.Since(begun).Seconds())
		s := solver.Stats()
		l.Steps, l.Derivatives, l.Jacobians, l.Factors, l.State = s.Steps, s.Derivatives, s.Jacobians, s.Factorisations, y
	}
	return l, nil
}
