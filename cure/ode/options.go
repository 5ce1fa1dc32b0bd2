package ode

import (
	"math"
	"strconv"

	"github.com/drywright/drywright/cure/fault"
)

// defaultBudget ends a run that no longer gets anywhere; the film needs some hundreds of steps.
const defaultBudget = 100_000

// Options say how well and with what to integrate.
type Options struct {
	// RelTol is the tolerated local error as a share of |y_i|, 1e-13 to 0.1.
	RelTol float64
	// AbsTol[i] is the tolerated local error of component i where y_i is small, in its unit; above zero, one per component.
	// +Inf leaves the component out of the error norm.
	AbsTol []float64
	// InitialStep is the first step tried; zero: chosen from f by the rule of Hairer, Norsett and Wanner.
	InitialStep float64
	// MaxStep bounds every step; zero: no bound but the interval.
	MaxStep float64
	// StepBudget bounds the steps tried, accepted and rejected, since the last ResetStats; zero: 100 000.
	StepBudget int
	// Tableau is the method; the zero value stands for [Rodas4P2].
	Tableau Tableau
	// Memory is where steps are kept and taken from; nil: every step is computed.
	Memory *Memory
}

// complete checks o for a system of n components and fills in what it leaves open.
func (o Options) complete(n int) (Options, error) {
	if n < 1 {
		return o, fault.New(fault.Range, "system", strconv.Itoa(n)+" components", "A system has one or more components.")
	}
	var faults fault.List
	if !(o.RelTol >= 1e-13 && o.RelTol <= 0.1) {
		faults = append(faults, fault.OutOfRange("rel_tol", o.RelTol, 1e-13, 0.1, "", "1e-5 suits most runs."))
	}
	if len(o.AbsTol) != n {
		faults = append(faults, fault.New(fault.Conflict, "abs_tol", strconv.Itoa(len(o.AbsTol))+" values for "+
			strconv.Itoa(n)+" components", "Give one per component."))
	}
	counted := 0
	for i, a := range o.AbsTol {
		if !(a > 0) {
			faults = append(faults, fault.OutOfRange("abs_tol["+strconv.Itoa(i)+"]", a, 0, math.Inf(1), "",
				"Give a number above zero, in the unit of the component."))
		}
		if !math.IsInf(a, 1) {
			counted++
		}
	}
	if len(o.AbsTol) == n && counted == 0 {
		faults = append(faults, fault.New(fault.Conflict, "abs_tol", "leaves every component out",
			"Give at least one finite value."))
	}
	if !(o.InitialStep >= 0) || math.IsInf(o.InitialStep, 1) {
		faults = append(faults, fault.OutOfRange("initial_step", o.InitialStep, 0, math.MaxFloat64, "",
			"Zero lets the solver choose."))
	}
	if !(o.MaxStep >= 0) {
		faults = append(faults, fault.OutOfRange("max_step", o.MaxStep, 0, math.Inf(1), "", "Zero sets no bound."))
	}
	if o.StepBudget < 0 {
		faults = append(faults, fault.OutOfRange("step_budget", float64(o.StepBudget), 0, math.MaxInt32, "",
			"Zero stands for "+strconv.Itoa(defaultBudget)+"."))
	}
	if o.Tableau.Stages == 0 {
		o.Tableau = Rodas4P2()
	}
	if err := faults.OrNil(); err != nil {
		return o, err
	}
	if o.MaxStep == 0 {
		o.MaxStep = math.Inf(1)
	}
	if o.StepBudget == 0 {
		o.StepBudget = defaultBudget
	}
	return o, o.Tableau.check()
}

// Stats counts the work of a [Solver] since it was made or last reset.
type Stats struct {
	Steps          int // accepted, recalled ones with them; those cost nothing of what follows
	Rejected       int
	Derivatives    int // calls of System.Derivative
	Jacobians      int // calls of System.Linearise
	Factorisations int
	Solves         int
}
