package ode_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/ode/dense"
)

func TestTinyAndZeroIntervals(t *testing.T) {
	for _, c := range []struct{ t0, t1 float64 }{
		{0, 0}, {5, 5}, {0, 1e-300}, {1, math.Nextafter(1, 2)}, {1e6, 1e6 + 1e-9}, {-1e-12, 1e-12}, {-3, -2.5},
	} {
		for _, m := range tableaux() {
			y := []float64{0, 1}
			opt := ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-6, 1e-6}, Tableau: m}
			solve(t, circle(), opt, c.t0, c.t1, y) // checks that the end is exactly t1
			if want := math.Sin(c.t1 - c.t0); math.Abs(y[0]-want) > 1e-6*(c.t1-c.t0) {
				t.Errorf("%v to %v: y = %v, want %v", c.t0, c.t1, y[0], want)
			}
		}
	}
}

// TestSegments: cutting a run anywhere and carrying the step over changes the result by less than the tolerance, and the
// carried step saves work against starting anew.
func TestSegments(t *testing.T) {
	f := newFilm(24)
	opt := filmOptions(f, 1e-5, ode.Rodas4P2())
	whole := f.start()
	one := solve(t, f, opt, 0, 8, whole)
	run := func(carry bool) ([]float64, ode.Stats) {
		s, err := ode.NewSolver(f, opt)
		if err != nil {
			t.Fatal(err)
		}
		y := f.start()
		for k := range 8 {
			if _, err := s.Integrate(float64(k), float64(k+1), y, nil, nil); err != nil {
				t.Fatal(err)
			}
			if carry {
				s.SetInitialStep(s.SuggestedStep())
			}
		}
		return y, s.Stats()
	}
	anew, anewWork := run(false)
	carried, work := run(true)
	if d := distance(carried, whole, opt); d > 2 {
		t.Errorf("segments differ by %.2f", d)
	}
	if d := distance(anew, whole, opt); d > 2 {
		t.Errorf("segments from scratch differ by %.2f", d)
	}
	if work.Steps >= anewWork.Steps || work.Steps > one.Steps+16 {
		t.Errorf("%d steps in one run, %d carried over, %d anew", one.Steps, work.Steps, anewWork.Steps)
	}
}

// TestShortSegment: a segment far shorter than the step leaves the suggestion as it was.
func TestShortSegment(t *testing.T) {
	f := newFilm(24)
	s := mustFilm(t, f)
	y := f.start()
	if _, err := s.Integrate(0, 1, y, nil, nil); err != nil {
		t.Fatal(err)
	}
	before := s.SuggestedStep()
	s.SetInitialStep(before)
	if _, err := s.Integrate(1, 1+1e-6, y, nil, nil); err != nil {
		t.Fatal(err)
	}
	if after := s.SuggestedStep(); !(before > 1e-3) || after < before {
		t.Errorf("suggested %v before and %v after a segment of 1e-6", before, after)
	}
}

// TestStartBesideWall: where the guess of the first step looks beyond the domain, it comes back.
func TestStartBesideWall(t *testing.T) {
	const goal, wall = 1 - 1e-9, 1 - 1.5e-9
	least := math.Inf(1)
	d := dense.New(1, func(_ float64, y, f []float64) {
		least = min(least, y[0])
		f[0] = goal - y[0]
		if y[0] < wall {
			f[0] = math.NaN()
		}
	}, func(_ float64, _ []float64, j *mat.Dense) { j.Set(0, 0, -1) })
	d.Autonomous = true
	s, err := ode.NewSolver(d, ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-15}})
	if err != nil {
		t.Fatal(err)
	}
	y := []float64{1}
	// The first trial is h0 = 0.01 |y|/|f| = 1e7, cut to the interval of 20; explicit Euler over that goes to 1 - 2e-8.
	if _, err := s.Integrate(0, 20, y, nil, nil); err != nil || !(least < wall) {
		t.Errorf("%v; least y tried %v", err, least)
	}
	if s.Stats().Rejected > 0 {
		t.Errorf("the guess was far off: %+v", s.Stats())
	}
}

// TestLeftOut: a component with infinite AbsTol costs nothing, is still integrated, and its NaN is still noticed.
func TestLeftOut(t *testing.T) {
	build := func(hole float64) *dense.System {
		d := dense.New(2, func(t float64, y, f []float64) {
			f[0] = -y[0]
			f[1] = 1000 * math.Sin(1000*t) // far too fast for the steps that y0 asks for
			if t > hole {
				f[1] = math.NaN()
			}
		}, func(_ float64, _ []float64, j *mat.Dense) {
			j.SetRow(0, []float64{-1, 0})
			j.SetRow(1, []float64{0, 0})
		})
		d.TimeDerivative = func(t float64, _, dfdt []float64) { dfdt[0], dfdt[1] = 0, 1e6*math.Cos(1000*t) }
		return d
	}
	alone := dense.New(1, func(_ float64, y, f []float64) { f[0] = -y[0] },
		func(_ float64, _ []float64, j *mat.Dense) { j.Set(0, 0, -1) })
	alone.Autonomous = true
	y1 := []float64{1}
	want := solve(t, alone, ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-9}, InitialStep: 1e-3}, 0, 5, y1)
	opt := ode.Options{RelTol: 1e-6, AbsTol: []float64{1e-9, math.Inf(1)}, InitialStep: 1e-3}
	y2 := []float64{1, 0}
	got := solve(t, build(math.Inf(1)), opt, 0, 5, y2)
	if got.Steps != want.Steps || y2[0] != y1[0] || y2[1] == 0 {
		t.Errorf("%+v and %v, want %+v and %v", got, y2, want, y1)
	}
	s, err := ode.NewSolver(build(2), opt)
	if err != nil {
		t.Fatal(err)
	}
	if end, err := s.Integrate(0, 5, []float64{1, 0}, nil, nil); err == nil || math.Abs(end.T-2) > 1e-6 {
		t.Errorf("NaN in a component left out: end %+v, %v", end, err)
	}
}

// TestAllocates: a run with events and observer allocates nothing once the solver has seen the list of events.
func TestAllocates(t *testing.T) {
	f := newFilm(48)
	for _, m := range tableaux() {
		s, err := ode.NewSolver(f, filmOptions(f, 1e-4, m))
		if err != nil {
			t.Fatal(err)
		}
		start, y, out := f.start(), f.start(), f.start()
		events := filmEvents(f, nil)
		observe := func(st *ode.Step) bool { st.At(0.5*(st.T0+st.T1), out); return true }
		if got := testing.AllocsPerRun(3, func() {
			copy(y, start)
			s.ResetStats()
			if _, err := s.Integrate(0, filmEnd, y, events, observe); err != nil {
				t.Error(err)
			}
		}); got != 0 {
			t.Errorf("%s: %v allocations", m.Name, got)
		}
	}
}

// TestRepeats: the same run twice, in a used solver and a new one, gives the same numbers to the last bit.
func TestRepeats(t *testing.T) {
	f := newFilm(48)
	var first []float64
	for _, s := range []func() *ode.Solver{func() *ode.Solver { return mustFilm(t, f) }, func() *ode.Solver {
		s := mustFilm(t, f)
		if _, err := s.Integrate(0, 3, f.start(), nil, nil); err != nil {
			t.Fatal(err)
		}
		return s
	}} {
		y := f.start()
		if _, err := s().Integrate(0, filmEnd, y, nil, nil); err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = y
		} else if !slices.Equal(first, y) {
			t.Error("a used solver gives other numbers than a new one")
		}
	}
}

func mustFilm(t *testing.T, f *film) *ode.Solver {
	t.Helper()
	s, err := ode.NewSolver(f, filmOptions(f, 1e-4, ode.Rodas4P2()))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestRandomLinear: y' = A y with random stable A against the exponential of the matrix.
func TestRandomLinear(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for k := range 60 {
		n := 1 + rng.IntN(6)
		a := mat.NewDense(n, n, nil)
		for i := range n {
			for j := range n {
				a.Set(i, j, rng.NormFloat64())
			}
			a.Set(i, i, -math.Pow(10, 4*rng.Float64())-float64(2*n)) // rows of diagonal dominance: stable, up to 1e4 stiff
		}
		d := dense.New(n, func(_ float64, y, f []float64) {
			v := mat.NewVecDense(n, f)
			v.MulVec(a, mat.NewVecDense(n, append([]float64(nil), y...)))
		}, func(_ float64, _ []float64, j *mat.Dense) { j.Copy(a) })
		d.Autonomous = true
		y, abs := make([]float64, n), make([]float64, n)
		for i := range y {
			y[i], abs[i] = rng.NormFloat64(), 1e-6
		}
		end := 0.5 * rng.Float64()
		var scaled, e mat.Dense
		scaled.Scale(end, a)
		e.Exp(&scaled)
		var want mat.VecDense
		want.MulVec(&e, mat.NewVecDense(n, append([]float64(nil), y...)))
		m := tableaux()[k%2]
		opt := ode.Options{RelTol: 1e-6, AbsTol: abs, Tableau: m}
		solve(t, d, opt, 0, end, y)
		// A contraction does not magnify local errors; 5 as in the other tests.
		if got := distance(y, want.RawVector().Data, opt); !(got < 5) {
			t.Errorf("%s, dimension %d: error %.2f", m.Name, n, got)
		}
	}
}
