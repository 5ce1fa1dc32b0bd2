package validate

import (
	"strings"

	"gonum.org/v1/gonum/mat"

	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/ode/dense"
)

// stiff is the test set of stiff initial value problems, integrated by the integrator of the film.
func stiff() cases {
	return cases{"IVP-*": func(e *entry) {
		system, tolerance := StiffProblem(strings.ToLower(strings.TrimPrefix(e.ID, "IVP-")))
		if system == nil {
			e.fail("no equations for this problem")
			return
		}
		y := append([]float64(nil), e.in("start")...)
		solver, err := ode.NewSolver(system, ode.Options{RelTol: 1e-11, AbsTol: tolerance, StepBudget: 200_000})
		if err == nil {
			_, err = solver.Integrate(0, e.one("t_end"), y, nil, nil)
		}
		if err != nil {
			e.fail(err.Error())
			return
		}
		e.check("end", y...)
	}}
}

// StiffProblem returns the equations of a problem of the test set ("robertson", "hires", "orego", "vanderpol") with their
// exact Jacobian, and the absolute tolerances that resolve its smallest components at a relative tolerance of 1e-11; nil
// for other names.
func StiffProblem(name string) (system *dense.System, tolerance []float64) {
	all := func(n int, v float64) []float64 {
		l := make([]float64, n)
		for i := range l {
			l[i] = v
		}
		return l
	}
	switch name {
	case "robertson": // its first two components end at 2e-8 and 8e-14
		return robertson(), []float64{1e-20, 1e-26, 1e-13}
	case "hires":
		return hires(), all(8, 1e-13)
	case "orego":
		return orego(), all(3, 1e-12)
	case "vanderpol":
		return vanDerPol(), all(2, 1e-12)
	}
	return nil, nil
}

func robertson() *dense.System {
	d := dense.New(3, func(_ float64, y, f []float64) {
		f[0] = -0.04*y[0] + 1e4*y[1]*y[2]
		f[2] = 3e7 * y[1] * y[1]
		f[1] = -f[0] - f[2]
	}, func(_ float64, y []float64, j *mat.Dense) {
		j.SetRow(0, []float64{-0.04, 1e4 * y[2], 1e4 * y[1]})
		j.SetRow(1, []float64{0.04, -1e4*y[2] - 6e7*y[1], -1e4 * y[1]})
		j.SetRow(2, []float64{0, 6e7 * y[1], 0})
	})
	d.Autonomous = true
	return d
}

func hires() *dense.System {
	d := dense.New(8, func(_ float64, y, f []float64) {
		f[0] = -1.71*y[0] + 0.43*y[1] + 8.32*y[2] + 0.0007
		f[1] = 1.71*y[0] - 8.75*y[1]
		f[2] = -10.03*y[2] + 0.43*y[3] + 0.035*y[4]
		f[3] = 8.32*y[1] + 1.71*y[2] - 1.12*y[3]
		f[4] = -1.745*y[4] + 0.43*(y[5]+y[6])
		f[5] = -280*y[5]*y[7] + 0.69*y[3] + 1.71*y[4] - 0.43*y[5] + 0.69*y[6]
		f[6] = 280*y[5]*y[7] - 1.81*y[6]
		f[7] = -f[6]
	}, func(_ float64, y []float64, j *mat.Dense) {
		j.Zero()
		for _, e := range []struct {
			r, c int
			v    float64
		}{
			{0, 0, -1.71}, {0, 1, 0.43}, {0, 2, 8.32},
			{1, 0, 1.71}, {1, 1, -8.75},
			{2, 2, -10.03}, {2, 3, 0.43}, {2, 4, 0.035},
			{3, 1, 8.32}, {3, 2, 1.71}, {3, 3, -1.12},
			{4, 4, -1.745}, {4, 5, 0.43}, {4, 6, 0.43},
			{5, 3, 0.69}, {5, 4, 1.71}, {5, 5, -280*y[7] - 0.43}, {5, 6, 0.69}, {5, 7, -280 * y[5]},
			{6, 5, 280 * y[7]}, {6, 6, -1.81}, {6, 7, 280 * y[5]},
			{7, 5, -280 * y[7]}, {7, 6, 1.81}, {7, 7, -280 * y[5]},
		} {
			j.Set(e.r, e.c, e.v)
		}
	})
	d.Autonomous = true
	return d
}

func orego() *dense.System {
	d := dense.New(3, func(_ float64, y, f []float64) {
		f[0] = 77.27 * (y[1] + y[0]*(1-8.375e-6*y[0]-y[1]))
		f[1] = (y[2] - (1+y[0])*y[1]) / 77.27
		f[2] = 0.161 * (y[0] - y[2])
	}, func(_ float64, y []float64, j *mat.Dense) {
		j.SetRow(0, []float64{77.27 * (1 - 2*8.375e-6*y[0] - y[1]), 77.27 * (1 - y[0]), 0})
		j.SetRow(1, []float64{-y[1] / 77.27, -(1 + y[0]) / 77.27, 1 / 77.27})
		j.SetRow(2, []float64{0.161, 0, -0.161})
	})
	d.Autonomous = true
	return d
}

func vanDerPol() *dense.System {
	const eps = 1e-6
	d := dense.New(2, func(_ float64, y, f []float64) {
		f[0] = y[1]
		f[1] = ((1-y[0]*y[0])*y[1] - y[0]) / eps
	}, func(_ float64, y []float64, j *mat.Dense) {
		j.SetRow(0, []float64{0, 1})
		j.SetRow(1, []float64{(-2*y[0]*y[1] - 1) / eps, (1 - y[0]*y[0]) / eps})
	})
	d.Autonomous = true
	return d
}
