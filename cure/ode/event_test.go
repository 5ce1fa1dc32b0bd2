package ode_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"

	"github.com/drywright/drywright/cure/ode"
	"github.com/drywright/drywright/cure/ode/dense"
)

// clock is y' = 1: y = t exactly, in as few steps as the controller allows.
func clock() *dense.System {
	d := dense.New(1, func(_ float64, _, f []float64) { f[0] = 1 },
		func(_ float64, _ []float64, j *mat.Dense) { j.Set(0, 0, 0) })
	d.Autonomous = true
	return d
}

// circle is y1' = y2, y2' = -y1 from (0, 1): y1 = sin t.
func circle() *dense.System {
	d := dense.New(2, func(_ float64, y, f []float64) { f[0], f[1] = y[1], -y[0] },
		func(_ float64, _ []float64, j *mat.Dense) {
			j.SetRow(0, []float64{0, 1})
			j.SetRow(1, []float64{-1, 0})
		})
	d.Autonomous = true
	return d
}

func solver(t *testing.T, sys ode.System, rel float64) *ode.Solver {
	t.Helper()
	abs := make([]float64, sys.Dim())
	for i := range abs {
		abs[i] = rel
	}
	s, err := ode.NewSolver(sys, ode.Options{RelTol: rel, AbsTol: abs})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestCrossingTimes: the zeros and the levels of the sine, both directions, to 1e-9 at a tolerance that gives the solution
// itself to 1e-10.
func TestCrossingTimes(t *testing.T) {
	s := solver(t, circle(), 1e-12)
	var zeros, up, down []float64
	events := []ode.Event{
		{Name: "zero", G: func(_ float64, y []float64) float64 { return y[0] }, Hit: note(&zeros)},
		{Name: "up", Dir: ode.Rising, G: func(_ float64, y []float64) float64 { return y[0] - 0.5 }, Hit: note(&up)},
		{Name: "down", Dir: ode.Falling, G: func(_ float64, y []float64) float64 { return y[0] - 0.5 }, Hit: note(&down)},
	}
	y := []float64{0, 1}
	if _, err := s.Integrate(0, 13, y, events, nil); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name      string
		got, want []float64
	}{
		// The zero at t = 0 is the start and does not count.
		{"zero", zeros, []float64{math.Pi, 2 * math.Pi, 3 * math.Pi, 4 * math.Pi}},
		{"up", up, []float64{math.Pi / 6, 13 * math.Pi / 6}},
		{"down", down, []float64{5 * math.Pi / 6, 17 * math.Pi / 6}},
	} {
		if !slices.EqualFunc(c.got, c.want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) {
			t.Errorf("%s: got %v, want %v", c.name, c.got, c.want)
		}
	}
}

func note(times *[]float64) func(float64, []float64) {
	return func(t float64, _ []float64) { *times = append(*times, t) }
}

// TestDoubleCrossing: one step covers the whole run; a condition that is true for a fifth of it only must be found, entry
// and exit.
func TestDoubleCrossing(t *testing.T) {
	s := solver(t, clock(), 1e-6)
	s.SetInitialStep(1000)
	const from, to = 600.0, 800.0
	var in, out []float64
	inside := func(_ float64, y []float64) float64 { return (y[0] - from) * (to - y[0]) }
	events := []ode.Event{
		{Name: "in", Dir: ode.Rising, G: inside, Hit: note(&in)},
		{Name: "out", Dir: ode.Falling, G: inside, Hit: note(&out)},
	}
	crossed := false
	_, err := s.Integrate(0, 1000, []float64{0}, events, func(st *ode.Step) bool {
		crossed = crossed || st.T0 < from && st.T1 > to
		return true
	})
	if err != nil {
		t.Fatal(err)
	}
	if !crossed {
		t.Fatal("no single step covers both crossings: the test tests nothing")
	}
	if len(in) != 1 || len(out) != 1 || math.Abs(in[0]-from) > 1e-9*from || math.Abs(out[0]-to) > 1e-9*to {
		t.Errorf("in %v, out %v", in, out)
	}
}

// TestOrderOfEvents: crossings in one step come in order of time; those at the same time in the order of the list, all
// of them past their crossing, and a terminal one among them does not swallow the others.
func TestOrderOfEvents(t *testing.T) {
	s := solver(t, clock(), 1e-6)
	var log []string
	level := func(name string, at, slope float64, terminal bool) ode.Event {
		g := func(_ float64, y []float64) float64 { return slope * (y[0] - at) }
		return ode.Event{Name: name, Terminal: terminal, G: g, Hit: func(tt float64, y []float64) {
			log = append(log, name)
			if g(tt, y)*slope < 0 || math.Abs(tt-at) > 1e-9*at {
				t.Errorf("%s: at %v with y = %v", name, tt, y)
			}
		}}
	}
	events := []ode.Event{
		level("d", 750, 1, false),
		level("c", 740, -3, true),
		level("b", 740, 7, false),
		level("a", 730, 1e-6, false),
		level("e", 740, -1e5, true),
	}
	y := []float64{0}
	end, err := s.Integrate(0, 1000, y, events, nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(log, ""); got != "acbe" {
		t.Errorf("order %q, want acbe", got)
	}
	if end.Reason != ode.Terminated || end.Event != 1 || math.Abs(end.T-740) > 1e-6 || y[0] != end.T && math.Abs(y[0]-end.T) > 1e-9 {
		t.Errorf("end %+v, y %v", end, y)
	}
	if events[0].Fired || !events[1].Fired || !events[4].Fired {
		t.Error("Fired is wrong")
	}
	// Started again from the end, nothing fires a second time and the rest comes.
	log = nil
	if _, err = s.Integrate(end.T, 1000, y, events, nil); err != nil || strings.Join(log, "") != "d" {
		t.Errorf("after the terminal event: %q, %v", log, err)
	}
}

// TestRestartAtEvents: a run that ends at every zero and starts again there finds each zero once.
func TestRestartAtEvents(t *testing.T) {
	s := solver(t, circle(), 1e-10)
	events := []ode.Event{{Name: "zero", Terminal: true, G: func(_ float64, y []float64) float64 { return y[0] }}}
	y := []float64{0, 1}
	at := 0.0
	for k := 1; k <= 20; k++ {
		end, err := s.Integrate(at, 1000, y, events, nil)
		if err != nil || end.Reason != ode.Terminated || end.Event != 0 {
			t.Fatalf("%d: %+v, %v", k, end, err)
		}
		// The error of the solution grows by some 1e-10 per turn.
		if math.Abs(end.T-float64(k)*math.Pi) > 1e-8*float64(k) {
			t.Fatalf("zero %d at %v, want %v", k, end.T, float64(k)*math.Pi)
		}
		at = end.T
		s.SetInitialStep(s.SuggestedStep())
	}
}

// TestStartOfEvents: what is zero or past zero at the start does not fire; a touch of zero at a step's end does, once.
func TestStartOfEvents(t *testing.T) {
	for _, c := range []struct {
		name string
		dir  ode.Direction
		g    func(t float64, y []float64) float64
		want int
	}{
		{"zero at the start", ode.Either, func(_ float64, y []float64) float64 { return y[0] }, 0},
		{"zero and past", ode.Rising, func(_ float64, y []float64) float64 { return y[0] }, 0},
		{"past", ode.Rising, func(_ float64, y []float64) float64 { return y[0] + 1 }, 0},
		{"wrong direction", ode.Falling, func(_ float64, y []float64) float64 { return y[0] - 1 }, 0},
		{"right direction", ode.Rising, func(_ float64, y []float64) float64 { return y[0] - 1 }, 1},
		{"at the end", ode.Rising, func(_ float64, y []float64) float64 { return y[0] - 10 }, 1},
		{"beyond the end", ode.Rising, func(_ float64, y []float64) float64 { return y[0] - 10.0001 }, 0},
		{"of time", ode.Rising, func(t float64, _ []float64) float64 { return t - 4 }, 1},
		{"jump", ode.Rising, func(t float64, _ []float64) float64 { return math.Copysign(1, t-4) }, 1},
		{"down from zero and up again", ode.Rising, func(t float64, _ []float64) float64 { return t * (t - 5) }, 1},
	} {
		s := solver(t, clock(), 1e-6)
		var times []float64
		events := []ode.Event{{Name: c.name, Dir: c.dir, G: c.g, Hit: note(&times)}}
		y := []float64{0}
		if _, err := s.Integrate(0, 10, y, events, nil); err != nil {
			t.Fatal(err)
		}
		// The clock ends at 10 only to rounding, so that the condition there is met to rounding too.
		if c.name == "at the end" && y[0] < 10 {
			c.want = 0
		}
		if len(times) != c.want {
			t.Errorf("%s: fired at %v, want %d times", c.name, times, c.want)
		}
	}
}

// TestOnce: a one-shot event is not even evaluated after its crossing, in this run and in the next.
func TestOnce(t *testing.T) {
	s := solver(t, circle(), 1e-6)
	var last float64
	var times []float64
	events := []ode.Event{{Name: "zero", Once: true, Hit: note(&times),
		G: func(t float64, y []float64) float64 { last = max(last, t); return y[0] }}}
	y := []float64{0, 1}
	for k := range 3 {
		if _, err := s.Integrate(float64(10*k), float64(10*k+10), y, events, nil); err != nil {
			t.Fatal(err)
		}
	}
	if len(times) != 1 || last > 5 {
		t.Errorf("fired at %v, looked at until %v", times, last)
	}
}

// TestObserverAndTerminal: the observer sees each accepted step after its events, the last one cut at the event, and the
// dense output of the cut step still fits.
func TestObserverAndTerminal(t *testing.T) {
	s := solver(t, circle(), 1e-9)
	hit := math.NaN()
	events := []ode.Event{{Name: "half", Terminal: true,
		G:   func(_ float64, y []float64) float64 { return y[0] - 0.5 },
		Hit: func(t float64, _ []float64) { hit = t }}}
	y := []float64{0, 1}
	at, steps := 0.0, 0
	end, err := s.Integrate(0, 10, y, events, func(st *ode.Step) bool {
		steps++
		if st.T0 != at || !(st.T1 > st.T0) {
			t.Errorf("step from %v to %v after %v", st.T0, st.T1, at)
		}
		at = st.T1
		out := make([]float64, 2)
		for _, x := range []float64{0, 0.3, 1} {
			tt := st.T0 + x*(st.T1-st.T0)
			st.At(tt, out)
			for i, want := range []float64{math.Sin(tt), math.Cos(tt)} {
				// The dense output is of lower order than the steps are controlled for; 1e-6 is ample at 1e-9.
				if math.Abs(out[i]-want) > 1e-6 || st.Component(tt, i) != out[i] {
					t.Errorf("component %d at %v: %v and %v, want %v", i, tt, out[i], st.Component(tt, i), want)
				}
			}
		}
		if (st.T1 == hit) != (math.Abs(st.Y1[0]-0.5) < 1e-9) {
			t.Errorf("step to %v, event at %v, y %v", st.T1, hit, st.Y1)
		}
		return true
	})
	if err != nil || end.T != hit || at != hit || steps != s.Stats().Steps || y[0] < 0.5 || y[0] > 0.5+1e-9 {
		t.Errorf("end %+v, last step to %v, event at %v, y %v, %v", end, at, hit, y, err)
	}
}

func TestObserverStops(t *testing.T) {
	s := solver(t, circle(), 1e-6)
	y := []float64{0, 1}
	seen := 0
	end, err := s.Integrate(0, 10, y, nil, func(st *ode.Step) bool { seen++; return st.T1 < 2 })
	if err != nil || end.Reason != ode.Stopped || end.T < 2 || end.T > 4 || seen != s.Stats().Steps {
		t.Errorf("end %+v after %d steps: %v", end, seen, err)
	}
	if math.Abs(y[0]-math.Sin(end.T)) > 1e-4 {
		t.Errorf("y = %v is not the state at %v", y, end.T)
	}
}

func TestEventNotANumber(t *testing.T) {
	for _, from := range []float64{-1, 3} {
		s := solver(t, clock(), 1e-6)
		events := []ode.Event{{Name: "hole", G: func(t float64, _ []float64) float64 { return math.Sqrt(from - t) }}}
		_, err := s.Integrate(0, 10, []float64{0}, events, nil)
		if err == nil || !strings.Contains(err.Error(), `"hole"`) {
			t.Errorf("from %v: %v", from, err)
		}
	}
}

// A condition on the state is located to the tolerance of the dense output, and ends the run there.
func ExampleSolver_Integrate() {
	// Newton's law of cooling towards 20 from 120, one time constant of 100.
	cup := dense.New(1, func(_ float64, y, dydt []float64) { dydt[0] = (20 - y[0]) / 100 }, nil)
	cup.Autonomous = true
	s, err := ode.NewSolver(cup, ode.Options{RelTol: 1e-8, AbsTol: []float64{1e-6}})
	if err != nil {
		fmt.Println(err)
		return
	}
	events := []ode.Event{{
		Name: "below 45", Dir: ode.Falling, Terminal: true,
		G: func(_ float64, y []float64) float64 { return y[0] - 45 },
	}}
	y := []float64{120}
	end, err := s.Integrate(0, 3600, y, events, nil)
	fmt.Printf("%s after %.3f, at %.3f, %v\n", events[end.Event].Name, end.T, y[0], err)
	// Output: below 45 after 138.629, at 45.000, <nil>
}
