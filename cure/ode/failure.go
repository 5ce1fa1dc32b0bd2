package ode

import (
	"math"
	"strconv"

	"github.com/drywright/drywright/cure/fault"
)

// The faults of a run; all but budgetSpent carry the code fault.Numeric, and all the path "integration".

func failure(got, advice string) error { return fault.New(fault.Numeric, "integration", got, advice) }

// budgetSpent has a code of its own, by which a caller that shares a budget out tells it from the others.
func budgetSpent(t float64, budget int) error {
	return fault.New(fault.Limit, "integration", "the budget of "+strconv.Itoa(budget)+" steps is spent at t = "+fault.Number(t),
		"Loosen the tolerance or shorten the horizon.")
}

func stepUnderflow(t, h float64) error {
	return failure("the step fell to "+fault.Number(h)+" at t = "+fault.Number(t)+" without an acceptable state",
		"Look for an input that drives the state out of its domain there.")
}

func nonFiniteStart(t float64, what string, i int, v float64) error {
	return failure(what+" "+strconv.Itoa(i)+" is "+fault.Number(v)+" at the start, t = "+fault.Number(t),
		"Give a finite start inside the domain of the system.")
}

func badInterval(t0, t1 float64) error {
	return failure("the interval "+fault.Number(t0)+" to "+fault.Number(t1)+" does not run forward",
		"Give finite times, the end not before the start.")
}

func badState(got, want int) error {
	return failure("a state of "+strconv.Itoa(got)+" components for a system of "+strconv.Itoa(want),
		"Give one number per component.")
}

func badEvent(name string, t float64) error {
	return failure("event "+strconv.Quote(name)+" is not a number at t = "+fault.Number(t),
		"Define the condition for every state of the run.")
}

// spacing is the distance from |t| to the next larger number.
func spacing(t float64) float64 {
	t = math.Abs(t)
	return math.Nextafter(t, math.Inf(1)) - t
}
