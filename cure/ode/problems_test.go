package ode_test

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/drywright/drywright/cure/num"
	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/ode/dense"
	"github.com/drywright/drywright/cure/validate"
)

// problem is one problem of the test set (testdata/stiff) with what the tests add to it. Package validate has the equations and
// compares the end values at a tight tolerance; here they serve to measure errors.
type problem struct {
	ID     string
	Start  []float64
	TEnd   float64
	End    []float64
	System *dense.System
	// absShare[i] times the relative tolerance is the absolute one: the size below which component i does not matter.
	absShare []float64
}

func (p *problem) options(rel float64, tb ode.Tableau) ode.Options {
	abs := make([]float64, len(p.absShare))
	for i, v := range p.absShare {
		abs[i] = v * rel
	}
	return ode.Options{RelTol: rel, AbsTol: abs, Tableau: tb}
}

// distance is the error of y in the solver's own norm at the tolerances of opt.
func distance(y, want []float64, opt ode.Options) float64 {
	sum, n := 0.0, 0.0
	for i := range y {
		if w := opt.AbsTol[i]; !math.IsInf(w, 1) {
			e := (y[i] - want[i]) / (w + opt.RelTol*math.Abs(want[i]))
			sum += e * e
			n++
		}
	}
	return math.Sqrt(sum / n)
}

func testSet(tb testing.TB) []problem {
	tb.Helper()
	text, err := os.ReadFile("../../testdata/stiff/rows.json")
	if err != nil {
		tb.Fatal(err)
	}
	var rows []struct {
		ID     string
		Inputs struct {
			Start []float64 `json:"start"`
			TEnd  float64   `json:"t_end"`
		}
		Outputs struct{ End []float64 }
	}
	if err := json.Unmarshal(text, &rows); err != nil {
		tb.Fatal(err)
	}
	// The absolute tolerances follow the size of the components: Robertson's second species never exceeds 4e-5.
	shares := map[string][]float64{
		"robertson": {1e-2, 1e-7, 1e-2},
		"hires":     {1e-2, 1e-2, 1e-2, 1e-2, 1e-2, 1e-2, 1e-2, 1e-2},
		"orego":     {1e-1, 1e-1, 1e-1},
		"vanderpol": {1e-1, 1e-1},
	}
	var problems []problem
	for _, r := range rows {
		name := strings.ToLower(strings.TrimPrefix(r.ID, "IVP-"))
		system := stiffProblem(name)
		if system == nil || shares[name] == nil {
			tb.Fatalf("no system for problem %q", r.ID)
		}
		problems = append(problems, problem{ID: name, Start: r.Inputs.Start, TEnd: r.Inputs.TEnd, End: r.Outputs.End,
			System: system, absShare: shares[name]})
	}
	if len(problems) != len(shares) {
		tb.Fatalf("%d problems, tolerances for %d", len(problems), len(shares))
	}
	return problems
}

// stiffProblem is a problem's equations.
func stiffProblem(name string) *dense.System {
	system, _ := validate.StiffProblem(name)
	return system
}

// tableaux are the methods under test.
func tableaux() []ode.Tableau { return []ode.Tableau{ode.Rodas4P2(), ode.Rodas5P()} }

// film is nonlinear diffusion with evaporation, cut into n cells of equal width, in the algebra of the real film: cell
// contents x_i on (0, 1), a part temperature T and a surface state as border, a conversion per cell as tail. The
// constants are invented; D falls steeply below a kink, as a closing film's does, and the surface flux has a second kink.
//
//	dx_i/dt = (F_(i-1) - F_i)/w, F_i = (K(x_i) - K(x_(i+1)))/w, K = integral of D
//	D = 1 for x >= 0.3, exp(-6 (1 - x/0.3)) below;  surface flux min(0.2, 4 x_n) exp(T - 1)
//	dT/dt = 0.5 (1.5 - T) - 0.4 flux,  db/dt = (T - b)/3,  da_i/dt = exp(3 (T - 1)) (1 - a_i)/(1 + 100 x_i^2)
type film struct {
	*num.Arrow
	n     int
	diff  []float64
	k     []float64
	width float64
}

const (
	filmKink  = 0.3
	filmSteep = 6.0
)

func newFilm(n int) *film {
	tail := make([][]int, n)
	for i := range tail {
		tail[i] = []int{i, n}
	}
	return &film{num.NewArrow(n, 2, n, tail), n, make([]float64, n), make([]float64, n), 1 / float64(n)}
}

func (s *film) start() []float64 {
	y := make([]float64, s.Dim())
	for i := range s.n {
		y[i] = 1
	}
	y[s.n], y[s.n+1] = 1, 1
	return y
}

// conduct fills D and its integral from 0 for every cell.
func (s *film) conduct(y []float64) {
	const below = filmKink / filmSteep
	dry := math.Exp(-filmSteep)
	for i := range s.n {
		if y[i] >= filmKink {
			s.diff[i], s.k[i] = 1, below*(1-dry)+y[i]-filmKink
		} else {
			s.diff[i] = math.Exp(-filmSteep * (1 - y[i]/filmKink))
			s.k[i] = below * (s.diff[i] - dry)
		}
	}
}

func (s *film) flux(y []float64) (flux, byX float64) {
	warm := math.Exp(y[s.n] - 1)
	if x := y[s.n-1]; 4*x < 0.2 {
		return 4 * x * warm, 4 * warm
	}
	return 0.2 * warm, 0
}

func (s *film) Derivative(_ float64, y, f []float64) {
	s.conduct(y)
	n, w2 := s.n, s.width*s.width
	flow := 0.0
	for i := range n - 1 {
		next := (s.k[i] - s.k[i+1]) / w2
		f[i] = flow - next
		flow = next
	}
	j, _ := s.flux(y)
	f[n-1] = flow - j/s.width
	f[n] = 0.5*(1.5-y[n]) - 0.4*j
	f[n+1] = (y[n] - y[n+1]) / 3
	rate := math.Exp(3 * (y[n] - 1))
	for i := range n {
		f[n+2+i] = rate * (1 - y[n+2+i]) / (1 + 100*y[i]*y[i])
	}
}

func (s *film) Linearise(_ float64, y, f, _ []float64) bool {
	s.Clear()
	s.conduct(y)
	n, w2 := s.n, s.width*s.width
	for i := range n {
		d := s.diff[i] / w2
		if i+1 < n {
			s.Diag[i] -= d
			s.Lower[i+1] = d
		}
		if i > 0 {
			s.Diag[i] -= d
			s.Upper[i-1] = d
		}
	}
	j, jx := s.flux(y)
	s.Diag[n-1] -= jx / s.width
	s.Col[0][n-1] = -j / s.width
	s.Row[0][n-1] = -0.4 * jx
	s.Corner[0] = -0.5 - 0.4*j
	s.Corner[2], s.Corner[3] = 1.0/3, -1.0/3
	rate := math.Exp(3 * (y[n] - 1))
	for i := range n {
		hold := 1 + 100*y[i]*y[i]
		s.TailDiag[i] = -rate / hold
		s.TailVal[2*i] = -f[n+2+i] * 200 * y[i] / hold
		s.TailVal[2*i+1] = 3 * f[n+2+i]
	}
	return false
}

func filmOptions(s *film, rel float64, tb ode.Tableau) ode.Options {
	abs := make([]float64, s.Dim())
	for i := range abs {
		abs[i] = 0.1 * rel
	}
	return ode.Options{RelTol: rel, AbsTol: abs, Tableau: tb}
}

// filmEnd is long enough for the film of the tests to dry and cure.
const filmEnd = 20.0

func solve(tb testing.TB, sys ode.System, opt ode.Options, t0, t1 float64, y []float64) ode.Stats {
	tb.Helper()
	s, err := ode.NewSolver(sys, opt)
	if err != nil {
		tb.Fatal(err)
	}
	end, err := s.Integrate(t0, t1, y, nil, nil)
	if err != nil {
		tb.Fatal(err)
	}
	if end.T != t1 || end.Reason != ode.Reached || end.Event != -1 {
		tb.Fatalf("ended at %v (%v), want exactly %v", end.T, end.Reason, t1)
	}
	return s.Stats()
}
