package ode

import "math"

// Limits of the controller; those of Hairer and Wanner's RODAS code.
const (
	safety     = 0.9  // aim below the tolerance, because a rejected step costs a whole one
	maxGrowth  = 6.0  // one step to the next
	maxShrink  = 0.2  // after one rejection
	retryShare = 0.25 // after a state or derivative that is not finite or not admitted: no error says how much shorter
	// errorFloor keeps one step of tiny error from making the prediction believe in a steep rise.
	errorFloor = 0.01
)

// controller proposes the next step size: the elementary rule h (1/err)^(1/q), and after the first accepted step the
// predictive rule of Gustafsson 1994 (Control-theoretic techniques for stepsize selection in implicit Runge-Kutta
// methods, ACM Trans. Math. Softw. 20, 496-517) where that is the smaller; Hairer and Wanner 1996, equation (IV.8.25).
type controller struct {
	exponent     float64 // 1/q with q - 1 the order of the embedded solution
	lastH        float64 // last accepted step, zero before the first
	lastErr      float64
	justRejected bool
}

func newController(embedded int) controller { return controller{exponent: 1 / float64(embedded+1)} }

// restart forgets the history, which does not reach across a switch of the right-hand side.
func (c *controller) restart() { c.lastH, c.lastErr, c.justRejected = 0, 0, false }

// accept takes the error norm (<= 1) of an accepted step h and returns the next step size; full says that it grew by
// as much as is ever allowed.
func (c *controller) accept(h, err float64) (next float64, full bool) {
	growth := maxGrowth
	if err > 0 {
		growth = math.Min(maxGrowth, safety*math.Pow(err, -c.exponent))
	}
	if c.lastH > 0 && err > 0 {
		predicted := safety * h / c.lastH * math.Pow(c.lastErr/(err*err), c.exponent)
		growth = math.Min(growth, predicted)
	}
	growth = math.Max(growth, maxShrink)
	if c.justRejected {
		growth = math.Min(growth, 1)
	}
	c.lastH, c.lastErr, c.justRejected = h, math.Max(err, errorFloor), false
	return h * growth, growth == maxGrowth
}

// reject takes the error norm (> 1) of a rejected step h and returns the size to retry with.
func (c *controller) reject(h, err float64) float64 {
	c.justRejected = true
	return h * math.Max(maxShrink, safety*math.Pow(err, -c.exponent))
}

// retry returns the size after a step that gave no usable state.
func (c *controller) retry(h float64) float64 {
	c.justRejected = true
	return h * retryShare
}
