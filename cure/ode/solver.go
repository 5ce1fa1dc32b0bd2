package ode

import "math"

// maxRetries ends a run whose step is rejected again and again: 0.25^60 of any first guess is far below all scales.
const maxRetries = 60

// Reason says why a run ended.
type Reason int

// The reasons.
const (
	Failed     Reason = iota // with the error that Integrate returned
	Reached                  // the end of the interval
	Terminated               // a terminal event
	Stopped                  // the observer returned false
)

// End is where and why a run ended.
type End struct {
	T      float64
	Reason Reason
	Event  int // index of the terminal event, else -1
}

// Solver integrates one system; make it with [NewSolver]. It may be used for any number of runs, one at a time.
type Solver struct {
	sys    System
	admit  Admissible // nil: every state is admitted
	opt    Options
	tol    tolerances
	stages []stage
	ctl    controller
	stats  Stats

	y0, y1, f0, f1, dfdt []float64
	u                    [][]float64
	timeDependent        bool
	suggested            float64
	step                 Step
	watch                watch
}

// NewSolver makes a solver for sys. The slice opt.AbsTol is copied.
//
// Errors: a fault.List of every option that is out of its range, or a fault on a tableau of the wrong shape.
func NewSolver(sys System, opt Options) (*Solver, error) {
	n := sys.Dim()
	opt, err := opt.complete(n)
	if err != nil {
		return nil, err
	}
	tb := &opt.Tableau
	s := &Solver{sys: sys, opt: opt, tol: newTolerances(opt.RelTol, opt.AbsTol), stages: tb.stages()}
	s.admit, _ = sys.(Admissible)
	s.ctl = newController(tb.Embedded)
	s.suggested = opt.InitialStep
	vector := func() []float64 { return make([]float64, n) }
	s.y0, s.y1, s.f0, s.f1, s.dfdt = vector(), vector(), vector(), vector(), vector()
	for range tb.Stages {
		s.u = append(s.u, vector())
	}
	s.step.u = s.u
	for _, row := range tb.H {
		s.step.rows = append(s.step.rows, nonZero(row))
		s.step.k = append(s.step.k, vector())
	}
	s.watch.state = vector()
	s.watch.f = s.watch.valueAt
	return s, nil
}

// Stats returns the work done since the solver was made or last reset.
func (s *Solver) Stats() Stats { return s.stats }

// ResetStats sets the counters to zero, and with them the spent part of the step budget.
func (s *Solver) ResetStats() { s.stats = Stats{} }

// SuggestedStep returns the step size that the last run would have tried next; zero before the first. Handed to
// SetInitialStep it carries a run over a switch of the right-hand side without a slow start.
func (s *Solver) SuggestedStep() float64 { return s.suggested }

// SetInitialStep sets Options.InitialStep for the runs to come: zero lets the solver choose. A number that is not finite
// or not above zero counts as zero.
func (s *Solver) SetInitialStep(h float64) {
	if !(h > 0) || math.IsInf(h, 1) {
		h = 0
	}
	s.opt.InitialStep = h
}

// Integrate carries y from t0 to exactly t1 >= t0 and overwrites it with the state at the end. After each accepted step
// the events inside it are delivered, then observe (may be nil) is called; when it returns false the run stops at the
// end of that step. After a terminal event the step that observe sees ends at the event.
//
// Errors (fault.Numeric; fault.Limit for the step budget): an interval that does not run forward, a state of the wrong length, a start that is not
// finite, the step budget spent, the step size below the spacing of numbers at t, an event that is NaN. End.T is then the
// time of the last accepted state, and y that state.
func (s *Solver) Integrate(t0, t1 float64, y []float64, events []Event, observe func(*Step) bool) (End, error) {
	end := End{T: t0, Event: -1}
	if !(t0 <= t1) || math.IsInf(t0, 0) || math.IsInf(t1, 0) {
		return end, badInterval(t0, t1)
	}
	if len(y) != len(s.y0) {
		return end, badState(len(y), len(s.y0))
	}
	copy(s.y0, y)
	if i := firstNonFinite(s.y0); i >= 0 {
		return end, nonFiniteStart(t0, "component", i, y[i])
	}
	s.derivative(t0, s.y0, s.f0)
	if i := firstNonFinite(s.f0); i >= 0 {
		return end, nonFiniteStart(t0, "derivative", i, s.f0[i])
	}
	if err := s.watch.start(events, t0, s.y0); err != nil {
		return end, err
	}
	if t0 == t1 {
		end.Reason = Reached
		return end, nil
	}
	s.ctl.restart()
	h := s.opt.InitialStep
	if h == 0 {
		h = s.startStep(t0, t1-t0)
	}
	s.suggested = h
	end, err := s.run(end, t1, observe)
	copy(y, s.y0)
	return end, err
}

// run takes steps from end.T until something ends the run; s.y0 and s.f0 hold state and derivative there.
func (s *Solver) run(end End, t1 float64, observe func(*Step) bool) (End, error) {
	for end.T < t1 {
		t, h, err := s.advance(end.T, t1)
		if err != nil {
			return end, err
		}
		st := &s.step
		st.T0, st.T1, st.Y0, st.Y1, st.end, st.h, st.current = end.T, t, s.y0, s.y1, s.y1, h, false
		event, x, err := s.watch.scan(st)
		if err != nil {
			return end, err
		}
		if event >= 0 {
			end.Event, end.Reason = event, Terminated
			st.T1, st.Y1 = s.watch.point(x)
		}
		end.T = st.T1
		proceed := observe == nil || observe(st)
		if event >= 0 && x < 1 {
			copy(s.y0, st.Y1)
		} else {
			s.y0, s.y1 = s.y1, s.y0
			s.f0, s.f1 = s.f1, s.f0
		}
		switch {
		case event >= 0:
			return end, nil
		case !proceed:
			end.Reason = Stopped
			return end, nil
		}
	}
	end.Reason = Reached
	return end, nil
}
