package ode_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/ode/dense"
)

// TestOneHugeStep: L-stability. From a start far off, one step of 1e12 time constants on y' = -lambda (y - g) lands on the
// slow solution; a method with R(infinity) of 1 would keep the whole distance.
func TestOneHugeStep(t *testing.T) {
	const lambda = 1e12
	g := func(t float64) float64 { return 1 + 0.5*t }
	d := dense.New(1, func(t float64, y, f []float64) { f[0] = -lambda * (y[0] - g(t)) },
		func(_ float64, _ []float64, j *mat.Dense) { j.Set(0, 0, -lambda) })
	d.TimeDerivative = func(_ float64, _, dfdt []float64) { dfdt[0] = lambda * 0.5 }
	for _, m := range tableaux() {
		y := []float64{7}
		opt := ode.Options{RelTol: 0.1, AbsTol: []float64{1e200}, InitialStep: 1, Tableau: m}
		if st := solve(t, d, opt, 0, 1, y); st.Steps != 1 {
			t.Fatalf("%s: %d steps", m.Name, st.Steps)
		}
		// What remains is R(-1e12) of order 1e-12 times the distance of 6, and the lag g'/lambda.
		if e := math.Abs(y[0] - g(1)); e > 1e-9 {
			t.Errorf("%s: off the slow solution by %g", m.Name, e)
		}
	}
}

// TestLinearInvariants: a Rosenbrock method with the exact Jacobian keeps every linear invariant of f, whatever the
// tolerance; only rounding moves it.
func TestLinearInvariants(t *testing.T) {
	for _, p := range testSet(t) {
		var sum func(y []float64) float64
		switch p.ID {
		case "robertson":
			sum = func(y []float64) float64 { return y[0] + y[1] + y[2] }
		case "hires":
			sum = func(y []float64) float64 { return y[6] + y[7] }
		default:
			continue
		}
		for _, m := range tableaux() {
			y := append([]float64(nil), p.Start...)
			solve(t, p.System, p.options(1e-4, m), 0, p.TEnd, y)
			// Robertson's LU loses about four digits in the first steps, whose matrices reach a condition number of 1e8.
			if d := math.Abs(sum(y)/sum(p.Start) - 1); d > 1e-12 {
				t.Errorf("%s %s: invariant off by %.2g", p.ID, m.Name, d)
			}
		}
	}
}

// TestFilmBalance: the same on the structured algebra: a film without surface flux keeps its contents.
func TestFilmBalance(t *testing.T) {
	f := newFilm(48)
	for _, m := range tableaux() {
		y := f.start()
		for i := range f.n {
			y[i] = 0.5 + 0.4*math.Sin(float64(i))
		}
		before := 0.0
		for _, v := range y[:f.n] {
			before += v
		}
		s, err := ode.NewSolver(sealed{f}, filmOptions(f, 1e-4, m))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.Integrate(0, 3, y, nil, nil); err != nil {
			t.Fatal(err)
		}
		after := 0.0
		for _, v := range y[:f.n] {
			after += v
		}
		// Rounding of 48 sums over some tens of steps with off-diagonals of 2304.
		if d := math.Abs(after/before - 1); d > 1e-12 {
			t.Errorf("%s: contents changed by %.2g", m.Name, d)
		}
	}
}

// sealed is the film without its surface flux.
type sealed struct{ *film }

func (s sealed) Derivative(t float64, y, f []float64) {
	s.film.Derivative(t, y, f)
	j, _ := s.flux(y)
	f[s.n-1] += j / s.width
	f[s.n] += 0.4 * j
}

func (s sealed) Linearise(t float64, y, f, dfdt []float64) bool {
	s.film.Linearise(t, y, f, dfdt)
	j, jx := s.flux(y)
	s.Diag[s.n-1] += jx / s.width
	s.Col[0][s.n-1] += j / s.width
	s.Row[0][s.n-1] += 0.4 * jx
	s.Corner[0] += 0.4 * j
	return false
}

// TestJacobians compares every Jacobian of these tests with central differences of its f, so that no other test measures
// a method against a wrong one.
func TestJacobians(t *testing.T) {
	f := newFilm(9)
	fy := f.start()
	for i := range fy {
		fy[i] = 0.2 + 0.7*math.Abs(math.Sin(float64(3*i+1)))
	}
	fy[f.n-1] = 0.04 // on the falling branch of the surface flux
	for name, c := range map[string]struct {
		sys ode.System
		y   []float64
	}{
		"robertson": {stiffProblem("robertson"), []float64{0.8, 3e-5, 0.2}},
		"hires":     {stiffProblem("hires"), []float64{0.7, 0.1, 0.05, 0.2, 0.3, 0.4, 0.003, 0.0027}},
		"orego":     {stiffProblem("orego"), []float64{30, 2, 70}},
		"vanderpol": {stiffProblem("vanderpol"), []float64{1.5, -0.7}},
		"film":      {f, fy},
		"sealed":    {sealed{f}, fy},
		"diffusion": {diffusion(6).system, []float64{1, 2, 3, 2, 1, 2}},
		"kaps":      {kaps(0.1).system, []float64{0.5, 0.4}},
		"bell":      {bell().system, []float64{0.6}},
	} {
		n := c.sys.Dim()
		const at = 0.3
		base, dfdt := make([]float64, n), make([]float64, n)
		c.sys.Derivative(at, c.y, base)
		dependent := c.sys.Linearise(at, c.y, base, dfdt)
		up, down := make([]float64, n), make([]float64, n)
		y := append([]float64(nil), c.y...)
		// (shift I - J) e must be what the algebra's solution of it came from: x = e.
		const shift = 1e3
		if !c.sys.Factorise(shift) {
			t.Fatalf("%s: singular", name)
		}
		for k := range n {
			h := 1e-6 * (1e-3 + math.Abs(y[k]))
			y[k] = c.y[k] + h
			c.sys.Derivative(at, y, up)
			y[k] = c.y[k] - h
			c.sys.Derivative(at, y, down)
			y[k] = c.y[k]
			b := make([]float64, n)
			for i := range b {
				b[i] = -(up[i] - down[i]) / (2 * h)
			}
			b[k] += shift
			c.sys.Solve(b)
			b[k]--
			for i, v := range b {
				// Central differences of these functions are good to some 1e-8 of J, which the solution divides by shift; van der
				// Pol's J of 3e6 leaves the least digits.
				if !(math.Abs(v) < 1e-5) {
					t.Errorf("%s: column %d, row %d: off by %.2g", name, k, i, v)
				}
			}
		}
		if dependent {
			const h = 1e-5
			c.sys.Derivative(at+h, c.y, up)
			c.sys.Derivative(at-h, c.y, down)
			for i := range up {
				// The stiffest, diffusion, has derivatives of 50 to which central differences are good to 1e-9.
				if d := (up[i]-down[i])/(2*h) - dfdt[i]; math.Abs(d) > 1e-6*(1+math.Abs(dfdt[i])) {
					t.Errorf("%s: df/dt %d is %v, off by %.2g", name, i, dfdt[i], d)
				}
			}
		}
	}
}
