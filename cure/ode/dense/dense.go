// Package dense is a system without structure for package ode: a full Jacobian and its LU, for small systems. The product's own
// system has structure; checks and published problems have not.
package dense

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"

	"github.com/drywright/drywright/cure/ode"
)

// System is y' = f(t, y); make it with [New].
type System struct {
	// TimeDerivative, when not nil, writes df/dt; when nil it is formed by a forward difference, unless Autonomous says
	// that f does not depend on t.
	TimeDerivative func(t float64, y, dfdt []float64)
	Autonomous     bool

	n      int
	f      func(t float64, y, dydt []float64)
	jac    func(t float64, y []float64, j *mat.Dense)
	j, a   *mat.Dense
	lu     mat.LU
	x      *mat.VecDense
	trial  []float64
	change []float64
}

// New makes the system y' = f(t, y) of n >= 1 components. jac writes df_i/dy_j into j.At(i, j), every entry of it;
// when nil the Jacobian is formed by forward differences, n evaluations of f.
func New(n int, f func(t float64, y, dydt []float64), jac func(t float64, y []float64, j *mat.Dense)) *System {
	return &System{
		n: n, f: f, jac: jac,
		j: mat.NewDense(n, n, nil), a: mat.NewDense(n, n, nil), x: mat.NewVecDense(n, nil),
		trial: make([]float64, n), change: make([]float64, n),
	}
}

// Dim implements [ode.System].
func (d *System) Dim() int { return d.n }

// Derivative implements [ode.System].
func (d *System) Derivative(t float64, y, dydt []float64) { d.f(t, y, dydt) }

// increment balances the truncation of a forward difference against rounding; the constant is that of Hairer and
// Wanner's RODAS code.
func increment(v float64) float64 { return math.Sqrt(1e-16 * math.Max(1e-5, math.Abs(v))) }

// Linearise implements [ode.System].
func (d *System) Linearise(t float64, y, f, dfdt []float64) bool {
	if d.jac != nil {
		d.jac(t, y, d.j)
	} else {
		copy(d.trial, y)
		for c := range d.n {
			d.trial[c] = y[c] + increment(y[c])
			dy := d.trial[c] - y[c]
			d.f(t, d.trial, d.change)
			for r := range d.n {
				d.j.Set(r, c, (d.change[r]-f[r])/dy)
			}
			d.trial[c] = y[c]
		}
	}
	switch {
	case d.Autonomous:
		return false
	case d.TimeDerivative != nil:
		d.TimeDerivative(t, y, dfdt)
	default:
		later := t + increment(t)
		d.f(later, y, d.change)
		for i := range dfdt {
			dfdt[i] = (d.change[i] - f[i]) / (later - t)
		}
	}
	return true
}

// Factorise implements [ode.System].
func (d *System) Factorise(shift float64) bool {
	d.a.Scale(-1, d.j)
	for i := range d.n {
		v := d.a.At(i, i) + shift
		d.a.Set(i, i, v)
	}
	for _, v := range d.a.RawMatrix().Data {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	d.lu.Factorize(d.a)
	return !math.IsInf(d.lu.Cond(), 0) && !math.IsNaN(d.lu.Cond())
}

// Solve implements [ode.System].
func (d *System) Solve(b []float64) {
	copy(d.x.RawVector().Data, b)
	// A warning of poor conditioning still comes with the solution; a stiff matrix is often scaled badly.
	err := d.lu.SolveVecTo(d.x, false, d.x)
	if poor := mat.Condition(0); err != nil && !errors.As(err, &poor) {
		for i := range b {
			b[i] = math.NaN()
		}
		return
	}
	copy(b, d.x.RawVector().Data)
}

var _ ode.System = (*System)(nil)
