package ode

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// advance takes one acceptable step from t, shortening it as often as needed. It leaves the new state in s.y1 and its
// derivative in s.f1 and returns the new time and the size of the step.
func (s *Solver) advance(t, t1 float64) (float64, float64, error) {
	planned, linearised := s.suggested, false
	for range maxRetries {
		if s.stats.Steps+s.stats.Rejected >= s.opt.StepBudget {
			return 0, 0, budgetSpent(t, s.opt.StepBudget)
		}
		tNew, h := place(t, t1, math.Min(planned, s.opt.MaxStep))
		if h < 16*spacing(t) && tNew < t1 {
			return 0, 0, stepUnderflow(t, h)
		}
		err, usable := s.recalled(t, h)
		if !usable {
			if !linearised {
				s.stats.Jacobians++
				s.timeDependent, linearised = s.sys.Linearise(t, s.y0, s.f0, s.dfdt), true
			}
			if err, usable = s.attempt(t, h, tNew); usable && err <= 1 {
				s.keep(t, h, err)
			}
		}
		switch {
		case !usable:
			planned = notch(s.ctl.retry(h))
		case err > 1:
			planned = notch(s.ctl.reject(h, err))
		default:
			next, full := s.ctl.accept(h, err)
			next = notch(next)
			// A step cut short to meet t1 or MaxStep says nothing against the size that was planned.
			if full && next < planned {
				next = planned
			}
			s.suggested = s.ctl.unstick(planned, next)
			s.stats.Steps++
			return tNew, h, nil
		}
		s.stats.Rejected++
	}
	return 0, 0, stepUnderflow(t, planned)
}

// notches is the number of step sizes that the controller may choose to a factor of two.
const notches = 16

// notch rounds a step size down to the nearest of those sizes. Two runs that differ in the last digits of their inputs then take
// the same steps, and their results differ smoothly; free sizes would carry the difference on from step to step until it is as
// large as the tolerance. Whoever searches over runs (a balance, a limit, a slope) needs that. Price: steps 1 % shorter. The quarter
// keeps a size that was cut to the spacing of t where it was.
func notch(h float64) float64 {
	return math.Exp2(math.Floor(num.Log(h)/math.Ln2*notches+0.25) / notches)
}

// place fits a step of size h from t before t1. The last step is stretched by up to a hundredth rather than leave a
// sliver, and the last two are made equal.
func place(t, t1, h float64) (tNew, size float64) {
	rest := t1 - t
	switch {
	case 1.01*h >= rest:
		return t1, rest
	case 2*h > rest:
		h = 0.5 * rest
	}
	// The time that is stored and the size that is used must agree to the last digit.
	tNew = t + h
	return tNew, tNew - t
}

// attempt computes one step of size h from (t, s.y0) to tNew: the new state in s.y1, its derivative in s.f1. It
// returns the norm of the error estimate and whether the step gave a usable state at all.
func (s *Solver) attempt(t, h, tNew float64) (err float64, usable bool) {
	s.stats.Factorisations++
	if !s.sys.Factorise(1 / (h * s.opt.Tableau.Gamma)) {
		return 0, false
	}
	var scaled [maxStages]float64
	y0, arg := s.y0, s.y1
	for i := range s.stages {
		sg, u := &s.stages[i], s.u[i]
		switch {
		case i == 0:
			copy(u, s.f0)
		case sg.follows:
			before := s.u[i-1][:len(arg)]
			for k := range arg {
				arg[k] += before[k]
			}
		default:
			copy(arg, y0)
			combine(arg, s.u, sg.a.index, sg.a.coef)
		}
		if i > 0 {
			at := tNew
			if sg.alpha != 1 {
				at = t + sg.alpha*h
			}
			s.derivative(at, arg, u)
			if !finite(u) {
				return 0, false
			}
		}
		for j, c := range sg.c.coef {
			scaled[j] = c / h
		}
		combine(u, s.u, sg.c.index, scaled[:len(sg.c.coef)])
		if s.timeDependent && sg.d != 0 {
			hd := h * sg.d
			for k, v := range s.dfdt {
				u[k] += hd * v
			}
		}
		s.sys.Solve(u)
	}
	s.stats.Solves += len(s.stages)
	// Rodas form: arg is the embedded solution, the last u the error.
	last := s.u[len(s.u)-1][:len(arg)]
	for k := range arg {
		arg[k] += last[k]
	}
	err = s.tol.norm(last, y0, arg)
	switch {
	case math.IsNaN(err) || math.IsInf(err, 1):
		return 0, false
	case err > 1:
		return err, true
	case !finite(arg):
		return 0, false
	case s.admit != nil && !s.admit.Admissible(tNew, arg):
		return 0, false
	}
	s.derivative(tNew, arg, s.f1)
	return err, finite(s.f1)
}

func (s *Solver) derivative(t float64, y, dydt []float64) {
	s.stats.Derivatives++
	s.sys.Derivative(t, y, dydt)
}
