package ode

import (
	"slices"
	"strconv"

	"github.com/drywright/drywright/cure/fault"
)

// maxStages bounds the stages of a [Tableau], so that a step's scratch numbers stand on the stack.
const maxStages = 8

// Tableau is one Rosenbrock-Wanner method of Rodas form, in the variables of the package documentation. Rodas form means
// that the argument of the last stage is the embedded solution and that adding the last u gives the new state:
//
//	yHat = y0 + sum_(j<s) A[s][j] u_j,  y1 = yHat + u_s,  error estimate u_s.
//
// Such methods are stiffly accurate. Dense output, 0 <= x <= 1:
//
//	y(t0 + x h) = (1-x) y0 + x (y1 + (1-x) (k_1 + x (k_2 + x k_3))),  k_r = sum_j H[r][j] u_j.
type Tableau struct {
	Name   string
	Source string // author, year, title
	// Stages is s; Order that of y1, Embedded that of yHat, DenseOrder that of the dense output.
	Stages, Order, Embedded, DenseOrder int
	Gamma                               float64
	// A and C have s rows of length s; entries on and above the diagonal are not read.
	A, C [][]float64
	// Alpha[i] is the time of stage i as a share of h, D[i] the factor gamma_i of h df/dt.
	Alpha, D []float64
	// H has one to three rows of length s.
	H [][]float64
}

// check reports a tableau whose shape the stepper cannot use.
func (tb *Tableau) check() error {
	s := tb.Stages
	bad := func(what string) error {
		return fault.New(fault.Conflict, "tableau", tb.Name+" "+what, "Use a tableau that this package provides.")
	}
	switch {
	case s < 1 || s > maxStages:
		return bad("has " + strconv.Itoa(s) + " stages, not 1 to " + strconv.Itoa(maxStages))
	case len(tb.A) != s || len(tb.C) != s || len(tb.Alpha) != s || len(tb.D) != s:
		return bad("has rows that do not match its stages")
	case len(tb.H) < 1 || len(tb.H) > 3:
		return bad("has no dense output of one to three rows")
	case !(tb.Gamma > 0) || tb.Embedded < 1 || tb.Order < tb.Embedded:
		return bad("has a gamma that is not above zero or orders that contradict each other")
	}
	for _, rows := range [][][]float64{tb.A, tb.C, tb.H} {
		if slices.ContainsFunc(rows, func(r []float64) bool { return len(r) != s }) {
			return bad("has a row of the wrong length")
		}
	}
	return nil
}

// terms is one row of a tableau without its zeros.
type terms struct {
	index []int
	coef  []float64
}

func nonZero(row []float64) terms {
	var t terms
	for j, v := range row {
		if v != 0 {
			t.index = append(t.index, j)
			t.coef = append(t.coef, v)
		}
	}
	return t
}

// stage is one row of a tableau, ready to run.
type stage struct {
	a, c     terms
	alpha, d float64
	// follows says that the argument is that of the stage before plus its u, so that one addition replaces the sum.
	follows bool
}

func (tb *Tableau) stages() []stage {
	out := make([]stage, tb.Stages)
	for i := range out {
		row := tb.A[i][:i]
		out[i] = stage{a: nonZero(row), c: nonZero(tb.C[i][:i]), alpha: tb.Alpha[i], d: tb.D[i]}
		out[i].follows = i > 0 && row[i-1] == 1 && slices.Equal(row[:i-1], tb.A[i-1][:i-1])
	}
	return out
}
