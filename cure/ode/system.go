package ode

// System is y' = f(t, y) with the linear algebra of its own structure. The solver calls it from one goroutine and keeps
// none of the slices it passes.
type System interface {
	// Dim returns the number of components of y, the same at every call.
	Dim() int
	// Derivative writes f(t, y) into dydt. A state outside the domain of f is answered with NaN: the step is then retried
	// shorter.
	Derivative(t float64, y, dydt []float64)
	// Linearise evaluates the Jacobian df/dy at (t, y) and keeps it; f is f(t, y), already computed. It writes the partial
	// derivative of f by t into dfdt, or returns false when f does not depend on t (dfdt is then not read). The order of
	// the method holds only for the true derivatives; differences of them cost a little of it.
	Linearise(t float64, y, f, dfdt []float64) (timeDependent bool)
	// Factorise prepares the solution of (shift I - J) x = b for the Jacobian kept; false when that matrix is singular.
	// shift is above zero.
	Factorise(shift float64) bool
	// Solve overwrites b with x.
	Solve(b []float64)
}

// Admissible may be implemented by a [System] whose states have bounds that f itself does not enforce: a step that ends
// in a state for which it returns false is rejected and retried shorter.
type Admissible interface {
	Admissible(t float64, y []float64) bool
}
