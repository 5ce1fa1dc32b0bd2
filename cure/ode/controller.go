package ode

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// Limits of the controller; those of Hairer and Wanner's RODAS code.
const (
	safety     = 0.9  // aim below the tolerance, because a rejected step costs a whole one
	maxGrowth  = 6.0  // one step to the next
	maxShrink  = 0.2  // after one rejection
	patience   = 8    // rejections in a row after which each shrinks by as much
	stuck      = 50   // steps of one size in a row after which a shorter one is taken
	retryShare = 0.25 // after a state or derivative that is not finite or not admitted: no error says how much shorter
	// errorFloor keeps one step of tiny error from making the prediction believe in a steep rise.
	errorFloor = 0.01
	// leastOrder bounds the order that two rejections in a row may seem to show.
	leastOrder = 0.3
)

// controller proposes the next step size: the elementary rule h (1/err)^(1/q), and after the first accepted step the
// predictive rule of Gustafsson 1994 (Control-theoretic techniques for stepsize selection in implicit Runge-Kutta
// methods, ACM Trans. Math. Softw. 20, 496-517) where that is the smaller; Hairer and Wanner 1996, equation (IV.8.25).
//
// After a second rejection in a row q is the order that the two errors show, as in the same paper: where a switch of the
// right-hand side leaves a fast transient, the error falls far more slowly than the method's order promises, and the
// elementary rule would creep through two dozen rejections. As long as the step spans all of the transient the error does not fall at
// all; hence patience.
type controller struct {
	exponent     float64 // 1/q with q - 1 the order of the embedded solution
	lastH        float64 // last accepted step, zero before the first
	lastErr      float64
	justRejected bool
	rejectedH    float64 // step and error of the rejection just before, zero when that step gave no usable state
	rejectedErr  float64
	rejections   int // in a row, with such as gave no usable state
	alike        int // steps in a row after which no other size was planned
}

func newController(embedded int) controller { return controller{exponent: 1 / float64(embedded+1)} }

// restart forgets the history, which does not reach across a switch of the right-hand side.
func (c *controller) restart() { *c = controller{exponent: c.exponent} }

// accept takes the error norm (<= 1) of an accepted step h and returns the next step size; full says that it grew by
// as much as is ever allowed.
func (c *controller) accept(h, err float64) (next float64, full bool) {
	growth := maxGrowth
	if err > 0 {
		growth = math.Min(maxGrowth, safety*num.Pow(err, -c.exponent))
	}
	if c.lastH > 0 && err > 0 {
		predicted := safety * h / c.lastH * num.Pow(c.lastErr/(err*err), c.exponent)
		growth = math.Min(growth, predicted)
	}
	growth = math.Max(growth, maxShrink)
	if c.justRejected {
		growth = math.Min(growth, 1)
	}
	c.lastH, c.lastErr, c.justRejected, c.rejectedH, c.rejections = h, math.Max(err, errorFloor), false, 0, 0
	return h * growth, growth == maxGrowth
}

// unstick returns the size next that is planned after a step of the size now, half of it where both have been the same for long. A
// step over a stiff corner of the right-hand side can lead back to where it began with an error that is just tolerated, and sizes in
// notches would then take it for ever; seen with the air of an oven that idles right above the band of its heater.
func (c *controller) unstick(now, next float64) float64 {
	if next != now {
		c.alike = 0
		return next
	}
	if c.alike++; c.alike < stuck {
		return next
	}
	c.alike = 0
	return next / 2
}

// reject takes the error norm (> 1) of a rejected step h and returns the size to retry with.
func (c *controller) reject(h, err float64) float64 {
	exponent := c.exponent
	if c.rejectedH > h {
		shown := num.Log(err/c.rejectedErr) / num.Log(h/c.rejectedH)
		exponent = 1 / math.Max(leastOrder, math.Min(1/exponent, shown))
	}
	c.justRejected, c.rejectedH, c.rejectedErr = true, h, err
	if c.rejections++; c.rejections > patience {
		return h * maxShrink
	}
	return h * math.Max(maxShrink, safety*num.Pow(err, -exponent))
}

// retry returns the size after a step that gave no usable state.
func (c *controller) retry(h float64) float64 {
	c.justRejected, c.rejectedH = true, 0
	c.rejections++
	return h * retryShare
}
