package ode_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"

	"github.com/drywright/drywright/cure/fault"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/ode/dense"
)

// TestErrors: each way to fail says what and where.
func TestErrors(t *testing.T) {
	nan := math.NaN()
	for _, c := range []struct {
		name   string
		t0, t1 float64
		y      []float64
		budget int
		words  []string
	}{
		{"NaN state", 0, 1, []float64{0, nan}, 0, []string{"component 1", "NaN", "start"}},
		{"infinite state", 0, 1, []float64{math.Inf(1), 0}, 0, []string{"component 0", "+Inf"}},
		{"NaN derivative", 0, 1, []float64{1e308, -1e308}, 0, []string{"derivative 0", "start"}},
		{"backward", 1, 0, []float64{0, 1}, 0, []string{"1 to 0", "forward"}},
		{"NaN time", 0, nan, []float64{0, 1}, 0, []string{"NaN"}},
		{"endless", 0, math.Inf(1), []float64{0, 1}, 0, []string{"+Inf"}},
		{"wrong length", 0, 1, []float64{0}, 0, []string{"1 components", "system of 2"}},
		{"budget", 0, 1e6, []float64{0, 1}, 50, []string{"budget of 50 steps", "t = "}},
	} {
		d := dense.New(2, func(_ float64, y, f []float64) { f[0], f[1] = 100*y[1]-100*y[0], -y[0] }, nil)
		if c.name != "NaN derivative" {
			d = circle()
		}
		s, err := ode.NewSolver(d, ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-6, 1e-6}, StepBudget: c.budget})
		if err != nil {
			t.Fatal(err)
		}
		end, err := s.Integrate(c.t0, c.t1, c.y, nil, nil)
		var f *fault.Fault
		code := fault.Numeric
		if c.budget > 0 {
			code = fault.Limit
		}
		if !errors.As(err, &f) || f.Code != code || f.Path != "integration" || f.Advice == "" || end.Reason != ode.Failed {
			t.Errorf("%s: %+v, %v", c.name, end, err)
			continue
		}
		for _, w := range c.words {
			if !strings.Contains(err.Error(), w) {
				t.Errorf("%s: %q lacks %q", c.name, err, w)
			}
		}
		if c.budget > 0 {
			// State and time are those of the last accepted step, and the budget counts until it is reset.
			if math.Abs(c.y[0]-math.Sin(end.T)) > 1e-3 || s.Stats().Steps+s.Stats().Rejected != c.budget {
				t.Errorf("%s: y %v at %v, %+v", c.name, c.y, end.T, s.Stats())
			}
			if _, err = s.Integrate(end.T, end.T+1e-3, c.y, nil, nil); err == nil {
				t.Error("a spent budget must stay spent")
			}
			s.ResetStats()
			if _, err = s.Integrate(end.T, end.T+1e-3, c.y, nil, nil); err != nil {
				t.Error(err)
			}
		}
	}
}

// TestWall: a derivative that is not a number beyond a wall. A solution that stops short of the wall gets through however
// often a trial step looks beyond; one that runs into it ends with an error, close by.
func TestWall(t *testing.T) {
	for _, m := range tableaux() {
		for _, speed := range []float64{1, -1} {
			// y' = speed sqrt(y): y = (1 + speed t/2)^2 reaches the wall y = 0 at t = 2 when speed is -1, with NaN beyond.
			d := dense.New(1, func(_ float64, y, f []float64) { f[0] = speed * math.Sqrt(y[0]-1e-3) },
				func(_ float64, y []float64, j *mat.Dense) { j.Set(0, 0, speed*0.5/math.Sqrt(y[0]-1e-3)) })
			d.Autonomous = true
			s, err := ode.NewSolver(d, ode.Options{RelTol: 1e-3, AbsTol: []float64{1e-3}, InitialStep: 100, Tableau: m})
			if err != nil {
				t.Fatal(err)
			}
			y := []float64{1}
			end, err := s.Integrate(0, 100, y, nil, nil)
			if speed > 0 && (err != nil || s.Stats().Rejected == 0 && s.Stats().Steps < 2) {
				t.Errorf("%s: %v, %+v", m.Name, err, s.Stats())
			}
			if speed < 0 {
				if err == nil || !strings.Contains(err.Error(), "the step fell") || end.T < 1.9 || end.T > 2.1 ||
					!(y[0] > 0 && y[0] < 0.01) {
					t.Errorf("%s: end %+v, y %v, %v", m.Name, end, y, err)
				}
			}
		}
	}
}

// bounded is a system with a bound that its derivative does not know; refused counts the states it turned down.
type bounded struct {
	*dense.System
	refused *int
}

func (b bounded) Admissible(_ float64, y []float64) bool {
	if y[0] < 0 {
		*b.refused++
		return false
	}
	return true
}

// TestAdmissible: y follows a ramp that ends with a kink at zero; at a loose tolerance some runs step over the kink and
// below zero, unless the system forbids it.
func TestAdmissible(t *testing.T) {
	ramp := dense.New(1, func(t float64, y, f []float64) { f[0] = -50 * (y[0] - max(0, 1-t)) },
		func(_ float64, _ []float64, j *mat.Dense) { j.Set(0, 0, -50) })
	ramp.TimeDerivative = func(t float64, _, dfdt []float64) {
		dfdt[0] = 0
		if t < 1 {
			dfdt[0] = -50
		}
	}
	for _, m := range tableaux() {
		below, refused := 0, 0
		for h := 0.01; h < 2; h *= 1.2 {
			opt := ode.Options{RelTol: 0.1, AbsTol: []float64{0.3}, InitialStep: h, Tableau: m}
			lowest := func(sys ode.System) float64 {
				s, err := ode.NewSolver(sys, opt)
				if err != nil {
					t.Fatal(err)
				}
				low := 0.0
				if _, err := s.Integrate(0, 2, []float64{1}, nil, func(st *ode.Step) bool {
					low = min(low, st.Y1[0])
					return true
				}); err != nil {
					t.Fatal(err)
				}
				return low
			}
			if lowest(ramp) < 0 {
				below++
			}
			if low := lowest(bounded{ramp, &refused}); low < 0 {
				t.Errorf("%s: fell to %v", m.Name, low)
			}
		}
		if below == 0 || refused == 0 {
			t.Errorf("%s: %d free runs below zero, %d refusals: the test tests nothing", m.Name, below, refused)
		}
	}
}

// gap is a system whose matrix is singular for large steps.
type gap struct{ *dense.System }

func (g gap) Factorise(shift float64) bool { return shift > 100 && g.System.Factorise(shift) }

// TestSingular: a singular matrix shortens the step.
func TestSingular(t *testing.T) {
	s, err := ode.NewSolver(gap{circle()}, ode.Options{RelTol: 1e-3, AbsTol: []float64{1e-3, 1e-3}, InitialStep: 1})
	if err != nil {
		t.Fatal(err)
	}
	y := []float64{0, 1}
	if _, err := s.Integrate(0, 1, y, nil, nil); err != nil || math.Abs(y[0]-math.Sin(1)) > 1e-3 || s.Stats().Rejected == 0 {
		t.Errorf("y %v, %+v, %v", y, s.Stats(), err)
	}
}

// TestOptionsRefused: every bad option is named, all at once.
func TestOptionsRefused(t *testing.T) {
	good := func() ode.Options { return ode.Options{RelTol: 1e-5, AbsTol: []float64{1e-5, 1e-5}} }
	for path, spoil := range map[string]func(*ode.Options){
		"rel_tol":      func(o *ode.Options) { o.RelTol = 0 },
		"abs_tol":      func(o *ode.Options) { o.AbsTol = o.AbsTol[1:] },
		"abs_tol[1]":   func(o *ode.Options) { o.AbsTol[1] = 0 },
		"initial_step": func(o *ode.Options) { o.InitialStep = math.NaN() },
		"max_step":     func(o *ode.Options) { o.MaxStep = -1 },
		"step_budget":  func(o *ode.Options) { o.StepBudget = -1 },
	} {
		o := good()
		spoil(&o)
		o.MaxStep = min(o.MaxStep, -1) // a second fault, to see that both are reported
		_, err := ode.NewSolver(circle(), o)
		var list fault.List
		if !errors.As(err, &list) ||
			!slices.ContainsFunc(list, func(f *fault.Fault) bool { return f.Path == path }) ||
			!slices.ContainsFunc(list, func(f *fault.Fault) bool { return f.Path == "max_step" }) {
			t.Errorf("%s: %v", path, err)
		}
	}
	o := good()
	o.AbsTol = []float64{math.Inf(1), math.Inf(1)}
	if _, err := ode.NewSolver(circle(), o); err == nil {
		t.Error("no component counted: accepted")
	}
	o = good()
	o.Tableau = ode.Rodas4P2()
	o.Tableau.A = o.Tableau.A[1:]
	if _, err := ode.NewSolver(circle(), o); err == nil {
		t.Error("a broken tableau: accepted")
	}
}
