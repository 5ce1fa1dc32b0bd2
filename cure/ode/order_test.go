package ode_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/ode/dense"
)

// exact is a problem with a known solution.
type exact struct {
	name     string
	system   ode.System
	t0, t1   float64
	solution func(t float64, y []float64)
	steps    int // of the coarsest run
}

// kaps is the problem of Kaps, y1 = exp(-2t), y2 = exp(-t) for every eps (Hairer and Wanner 1996, exercise IV.7; Dekker
// and Verwer 1984).
func kaps(eps float64) exact {
	d := dense.New(2, func(_ float64, y, f []float64) {
		f[0] = -(1/eps+2)*y[0] + y[1]*y[1]/eps
		f[1] = y[0] - y[1]*(1+y[1])
	}, func(_ float64, y []float64, j *mat.Dense) {
		j.SetRow(0, []float64{-(1/eps + 2), 2 * y[1] / eps})
		j.SetRow(1, []float64{1, -1 - 2*y[1]})
	})
	d.Autonomous = true
	return exact{"kaps", d, 0, 1, func(t float64, y []float64) { y[0], y[1] = math.Exp(-2*t), math.Exp(-t) }, 5}
}

// bell is y' = -2 t y^2, y = 1/(1+t^2): nonlinear and nonautonomous.
func bell() exact {
	d := dense.New(1, func(t float64, y, f []float64) { f[0] = -2 * t * y[0] * y[0] },
		func(t float64, y []float64, j *mat.Dense) { j.Set(0, 0, -4*t*y[0]) })
	d.TimeDerivative = func(_ float64, y, dfdt []float64) { dfdt[0] = -2 * y[0] * y[0] }
	return exact{"bell", d, 0, 2, func(t float64, y []float64) { y[0] = 1 / (1 + t*t) }, 10}
}

// protheroRobinson is y' = -lambda (y - g) + g' with g = 10 - (10 + t) exp(-t), the classical one (Prothero and Robinson
// 1974, On the stability and accuracy of one-step methods for solving stiff systems, Math. Comp. 28, 145-162).
func protheroRobinson(lambda float64) exact {
	g := func(t float64) float64 { return 10 - (10+t)*math.Exp(-t) }
	g1 := func(t float64) float64 { return (9 + t) * math.Exp(-t) }
	g2 := func(t float64) float64 { return -(8 + t) * math.Exp(-t) }
	d := dense.New(1, func(t float64, y, f []float64) { f[0] = -lambda*(y[0]-g(t)) + g1(t) },
		func(_ float64, _ []float64, j *mat.Dense) { j.Set(0, 0, -lambda) })
	d.TimeDerivative = func(t float64, _, dfdt []float64) { dfdt[0] = lambda*g1(t) + g2(t) }
	return exact{"prothero-robinson", d, 0, 2, func(t float64, y []float64) { y[0] = g(t) }, 8}
}

// rod is u_t = u_xx + s(x, t) on (0, 1) in n interior points with moving boundary values, from u = (1 + x^2) cos t +
// x sin t: central differences are exact for it in x, so that what is left is the error in time, and the boundary values
// are what makes the order of ordinary Runge-Kutta methods drop.
type rod struct {
	*num.Arrow
	n int
	w float64
}

func diffusion(n int) exact {
	r := &rod{num.NewArrow(n, 0, 0, nil), n, 1 / float64(n+1)}
	return exact{"diffusion", r, 0, 1, func(t float64, y []float64) {
		for i := range y {
			y[i] = r.u(float64(i+1)*r.w, t)
		}
	}, 5}
}

func (r *rod) u(x, t float64) float64 { return (1+x*x)*math.Cos(t) + x*math.Sin(t) }

func (r *rod) source(x, t float64) float64 {
	return -(1+x*x)*math.Sin(t) + x*math.Cos(t) - 2*math.Cos(t)
}

func (r *rod) Derivative(t float64, y, f []float64) {
	left := r.u(0, t)
	for i, v := range y {
		right := r.u(1, t)
		if i+1 < r.n {
			right = y[i+1]
		}
		f[i] = (left-2*v+right)/(r.w*r.w) + r.source(float64(i+1)*r.w, t)
		left = v
	}
}

func (r *rod) Linearise(t float64, _, _, dfdt []float64) bool {
	r.Clear()
	for i := range r.n {
		r.Lower[i], r.Diag[i], r.Upper[i] = 1/(r.w*r.w), -2/(r.w*r.w), 1/(r.w*r.w)
		x := float64(i+1) * r.w
		dfdt[i] = -(1+x*x)*math.Cos(t) - x*math.Sin(t) + 2*math.Sin(t)
	}
	dfdt[0] += -math.Sin(t) / (r.w * r.w)                       // du/dt at x = 0
	dfdt[r.n-1] += (-2*math.Sin(t) + math.Cos(t)) / (r.w * r.w) // and at x = 1
	return true
}

// fixed returns the largest errors of the solution at the ends of n equal steps and of the dense output inside them.
func (p exact) fixed(tb testing.TB, method ode.Tableau, n int) (atEnds, inside float64) {
	tb.Helper()
	dim := p.system.Dim()
	abs := make([]float64, dim)
	for i := range abs {
		abs[i] = 1e200 // every error is tolerated, so that MaxStep alone sets the steps
	}
	h := (p.t1 - p.t0) / float64(n)
	s, err := ode.NewSolver(p.system, ode.Options{RelTol: 0.1, AbsTol: abs, InitialStep: h, MaxStep: h, Tableau: method})
	if err != nil {
		tb.Fatal(err)
	}
	y, want := make([]float64, dim), make([]float64, dim)
	p.solution(p.t0, y)
	farthest := func(t float64, got []float64) float64 {
		p.solution(t, want)
		worst := 0.0
		for i := range got {
			worst = math.Max(worst, math.Abs(got[i]-want[i]))
		}
		return worst
	}
	out := make([]float64, dim)
	_, err = s.Integrate(p.t0, p.t1, y, nil, func(st *ode.Step) bool {
		atEnds = math.Max(atEnds, farthest(st.T1, st.Y1))
		for _, x := range []float64{0.25, 0.5, 0.75} {
			t := st.T0 + x*(st.T1-st.T0)
			st.At(t, out)
			inside = math.Max(inside, farthest(t, out))
		}
		return true
	})
	if err != nil {
		tb.Fatal(err)
	}
	if got := s.Stats(); got.Steps != n || got.Rejected != 0 {
		tb.Fatalf("%d steps, %d rejected; want %d equal ones", got.Steps, got.Rejected, n)
	}
	return atEnds, inside
}

// TestObservedOrder halves the step four times. On mild problems the slope of the last halving must be within 0.2 of
// theory: the order at the ends, DenseOrder + 1 inside the steps (a dense output of order q errs by h^(q+1)).
func TestObservedOrder(t *testing.T) {
	for _, p := range []exact{bell(), kaps(1), protheroRobinson(1)} {
		for _, m := range tableaux() {
			_, _, slope, slopeInside := halve(t, p, m)
			if want := float64(m.Order); math.Abs(slope-want) > 0.2 {
				t.Errorf("%s %s: order %.2f at the ends, want %v", p.name, m.Name, slope, want)
			}
			if want := float64(m.DenseOrder + 1); math.Abs(slopeInside-want) > 0.2 {
				t.Errorf("%s %s: order %.2f inside, want %v", p.name, m.Name, slopeInside, want)
			}
		}
	}
}

// TestOrderOnStiffProblems: the order does not drop to that of the stages (1), as it does for methods without the
// conditions that these two were built for. Slopes are lower bounds here; the error of the coarsest run bounds the constant.
func TestOrderOnStiffProblems(t *testing.T) {
	for _, c := range []struct {
		problem       exact
		method        ode.Tableau
		ends, inside  float64 // least slopes
		first         float64 // largest error of the coarsest run at the ends
		last, lastIns float64 // and of the finest, at the ends and inside
	}{
		// Parabolic, moving boundary: order 4 of both (Steinebach 2020 for RODAS4P2; the conditions of Lubich and Ostermann 1995).
		{diffusion(20), ode.Rodas4P2(), 3.8, 3.8, 5e-6, 1e-10, 2e-10},
		{diffusion(20), ode.Rodas5P(), 3.8, 3.8, 1e-6, 2e-11, 2e-11},
		// Prothero-Robinson at z = -1e6 h: the error at the ends is O(h^3/lambda), that of the dense output O(h^4).
		{protheroRobinson(1e6), ode.Rodas4P2(), 2.8, 3.8, 1e-9, 1e-12, 2e-9},
		{protheroRobinson(1e6), ode.Rodas5P(), 2.8, 3.8, 1e-9, 1e-12, 2e-10},
		// Kaps at eps = 1e-6: O(eps h^2) at the ends.
		{kaps(1e-6), ode.Rodas4P2(), 1.8, 2.8, 5e-6, 2e-10, 5e-7},
		{kaps(1e-6), ode.Rodas5P(), 1.8, 3.5, 1e-8, 2e-10, 5e-10},
	} {
		ends, inside, slope, slopeInside := halve(t, c.problem, c.method)
		if slope < c.ends || slopeInside < c.inside {
			t.Errorf("%s %s: orders %.2f and %.2f, want %v and %v at least",
				c.problem.name, c.method.Name, slope, slopeInside, c.ends, c.inside)
		}
		if ends[0] > c.first || ends[4] > c.last || inside[4] > c.lastIns {
			t.Errorf("%s %s: errors %.2g, %.2g at the ends", c.problem.name, c.method.Name, ends, inside)
		}
	}
}

// halve runs p with n, 2n, 4n, 8n and 16n steps and returns the errors and the slopes of the last halving whose error
// stands clear of rounding.
func halve(tb testing.TB, p exact, m ode.Tableau) (ends, inside []float64, slope, slopeInside float64) {
	tb.Helper()
	for k := range 5 {
		e, d := p.fixed(tb, m, p.steps<<k)
		ends, inside = append(ends, e), append(inside, d)
	}
	last := func(e []float64) float64 {
		k := 4
		for k > 1 && e[k] < 5e-13 {
			k--
		}
		return math.Log2(e[k-1] / e[k])
	}
	return ends, inside, last(ends), last(inside)
}
