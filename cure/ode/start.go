package ode

import (
	"math"

	"github.com/drywright/drywright/cure/num"
)

// startStep guesses a first step for the interval of the given length from f at its start: Hairer, Norsett and Wanner
// 1993, Solving Ordinary Differential Equations I, 2nd ed., section II.4, "Starting step size". It costs one evaluation,
// more only where the trial state is outside the domain of f.
func (s *Solver) startStep(t, length float64) float64 {
	y, f, trial, ft := s.y0, s.f0, s.y1, s.f1
	d0, d1 := s.tol.norm(y, y, y), s.tol.norm(f, y, y)
	h := 1e-6 * length
	if d0 >= 1e-5 && d1 >= 1e-5 {
		h = 0.01 * d0 / d1
	}
	h = math.Min(h, length)
	for range 8 {
		for i := range trial {
			trial[i] = y[i] + h*f[i]
		}
		s.derivative(t+h, trial, ft)
		if finite(ft) {
			break
		}
		h *= 0.1
	}
	if !finite(ft) {
		return h
	}
	for i := range ft {
		ft[i] -= f[i]
	}
	d2 := s.tol.norm(ft, y, y) / h
	best := math.Max(1e-6*length, 1e-3*h)
	if top := math.Max(d1, d2); top > 1e-15 {
		best = num.Pow(0.01/top, 1/float64(s.opt.Tableau.Order))
	}
	return min(100*h, best, length)
}
